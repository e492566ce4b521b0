"""A weight without a unit is grams only where the cloth can weigh so little."""

from __future__ import annotations

import pytest

from tests.unit.project.project_cases import SOUND, garment, problems

SHELL = "{fabric: linen suiting, weight: 240 g/m2,"


def project(cloth: str, weight: str) -> str:
    """The sound project with another shell."""
    assert SHELL in SOUND
    return SOUND.replace(SHELL, f"{{fabric: {cloth}, weight: {weight},")


@pytest.mark.parametrize(
    ("cloth", "weight", "line"),
    [
        ("silk habotai", "7", "'weight: 7 momme' or 'weight: 7 g/m2'"),
        ("silk habotai", '"7"', "'weight: 7 momme' or 'weight: 7 g/m2'"),
        ("silk satin", "30", "'weight: 30 momme' or 'weight: 30 g/m2'"),
        ("denim", "12", "'weight: 12 oz' or 'weight: 12 g/m2'"),
        ("linen suiting", "5.3", "'weight: 5.3 oz' or 'weight: 5.3 g/m2'"),
        ("cotton poplin", "4.5", "'weight: 4.5 oz' or 'weight: 4.5 g/m2'"),
        ("wool coating", "90", "'weight: 90 g/m2'"),
    ],
)
def test_a_number_that_is_hardly_grams_is_refused(cloth: str, weight: str, line: str) -> None:
    """The lines to write are told, the likeliest unit first."""
    (problem,) = problems(project(cloth, weight))
    assert "has no unit" in problem.message
    assert str(problem.expected).startswith(line)


@pytest.mark.parametrize(
    ("cloth", "weight", "grams"),
    [
        ("silk habotai", "30", 30),
        ("silk habotai", "7 mm", 30.38),
        ("silk habotai", "7 g/m2", 7),
        ("tulle", "8", 8),
        ("denim", "150", 150),
        ("linen suiting", "240", 240),
    ],
)
def test_a_likely_number_is_grams(cloth: str, weight: str, grams: float) -> None:
    """What the cloth may well weigh needs no unit, and a unit is always believed."""
    shell = garment(project(cloth, weight)).cloths["shell"]
    assert shell.weight is not None
    assert grams == pytest.approx(shell.weight[0], abs=0.01)
