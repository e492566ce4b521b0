"""The tab key goes on with the names that are printed, and each help ends with examples."""

from __future__ import annotations

import pytest

from advisor.cli.examples import EXAMPLES
from advisor.cli.front import COMMANDS
from tests.typed import typed

JACKET = "knowledge/examples/bandstand-jacket.yaml"


def completed(line: str) -> list[str]:
    """What a shell is told that the last word of a line may become."""
    words = {"COMP_WORDS": line, "COMP_CWORD": str(len(line.split()) - 1)}
    return typed(env={**words, "_ADVISOR_COMPLETE": "complete_bash"}).out.splitlines()


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("advisor ask velvete", "velveteen"),
        ("advisor fabrics orga", "organza"),
        ("advisor explain stay-", "stay-stitch"),
        (f"advisor why {JACKET} sho", "shoulder"),
        (f"advisor why {JACKET} shell need", "needle size"),
        (f"advisor order {JACKET} --tick press", "press side"),
        ("advisor start x.yaml --like li", "lined-dress"),
        ("advisor label x.yaml --market e", "eu"),
        ("advisor ask velvet --units me", "metric"),
        ("advisor example ba", "bandstand-jacket"),
    ],
)
def test_the_tab_key_goes_on_with_names(line: str, name: str) -> None:
    """Cloths, words, places, aspects and steps, and nothing that begins otherwise."""
    found = completed(line)
    assert name in found
    begun = line.rpartition(" ")[2]
    assert all(word.startswith(begun) for word in found)


def test_every_command_has_examples() -> None:
    """But `learn`, whose parts have their own help."""
    assert set(COMMANDS) - {"learn"} == set(EXAMPLES)
    assert all(line.split()[0] == command for command, lines in EXAMPLES.items() for line in lines)
