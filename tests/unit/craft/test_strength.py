"""Unit tests of seam strength."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from advisor.craft import strength
from advisor.craft.strength import Stress


def test_thinner_bobbin_thread_governs() -> None:
    """The under thread sets the strength when it is weaker."""
    seam = strength.seam_strength(2.5, 11.6, 6.0)
    assert "under thread" == seam.gives_first
    assert 4 * 6.0 * 1.5 == pytest.approx(seam.n_per_cm)


def test_weak_cloth_governs() -> None:
    """A cloth that gives way first is the seam's strength."""
    seam = strength.seam_strength(2.5, 11.6, cloth_n_per_cm=20)
    assert ("cloth", 20) == (seam.gives_first, seam.n_per_cm)


def test_no_seam_is_stronger_than_its_cloth() -> None:
    """40 g/m² of silk at 0.38 N/tex: 76 N/cm at the very most (derived, see the module)."""
    assert 76 == pytest.approx(strength.cloth_limit(40, strength.FIBRE_TENACITY["silk"]))
    mixed = strength.fibre_tenacity({"cotton": 50, "polyester": 50})
    assert 0.395 == pytest.approx(mixed)
    assert strength.fibre_tenacity({"silk": 60, "moonbeam": 40}) is None


def test_chainstitch_is_stronger() -> None:
    """The same thread and length hold 1.7 / 1.5 as much in a chainstitch."""
    lock, chain = (strength.seam_strength(2.5, 10, stitch=each).n_per_cm for each in (301, 401))
    assert 1.7 / 1.5 == pytest.approx(chain / lock)


def test_moving_place_asks_a_step_more() -> None:
    """A place that moves is judged one step harder, the hardest stays."""
    assert strength.needed(Stress.HIGH) == strength.needed(Stress.NORMAL, moves=True)
    assert strength.needed(Stress.HIGH) == strength.needed(Stress.HIGH, moves=True)


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: strength.thread_limit(4, 10, 504), "no published strength factor"),
        (lambda: strength.thread_strength(30, "paper"), "no tenacity known"),
        (lambda: strength.stitches_per_cm(0), "stitch length"),
        (lambda: strength.seam_strength(2.5, 10, -1), "under thread"),
        (lambda: strength.seam_strength(2.5, 10, cloth_n_per_cm=0), "strength of the cloth"),
    ],
)
def test_bad_numbers(call: Callable[[], object], message: str) -> None:
    """What is not known or cannot be is refused, not guessed."""
    with pytest.raises(ValueError, match=message):
        call()
