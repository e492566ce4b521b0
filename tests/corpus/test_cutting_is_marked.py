"""A step that cuts, pierces, fuses or glues cloth is marked as one that nothing undoes."""

from __future__ import annotations

import re

import pytest

from advisor.order.fitting import staged
from tests.garments.whole import known

ACTS = (
    "cut(?! to)|trim|grade|slash|slit|clip|notch|snip|shear|pierce|punch|push the prongs|"
    "set grommets|melt|sear|fuse|glue"
)
DONE = re.compile(
    rf"(?:^|[,;:.] (?:and |then )?|\b(?:and|then|or) )(?:{ACTS})\b(?! or baste)", re.I
)
"""The words of an act that is asked for, and none of what is cut already or may not be cut."""
LENGTHS = re.compile(r"\bcut (?:the (?:tape|elastic)|a thin cord|all alike|it slantwise)\b", re.I)
"""A length that is cut off something bought by the length, of which there is more."""
WORKS = {op.id: op for op in known().order.operations.values()}
STAGES = {
    f"{method.id}: {op.verb}": op
    for method in known().places.methods.values()
    for stage in method.stages
    for op in [staged(stage, WORKS[stage.work])]
}


@pytest.mark.parametrize("name", [*WORKS, *STAGES])
def test_what_is_cut_is_past_recall(name: str) -> None:
    """Whoever cuts, pierces, fuses or glues as she is told has read that no way leads back."""
    op = WORKS.get(name) or STAGES[name]
    asks = DONE.search(LENGTHS.sub("", op.does)) is not None
    assert not asks or op.undo == "never", op.does


def test_words_of_cutting_are_found() -> None:
    """The reading of the words is no blind one: it finds an act, and leaves out what is none."""
    assert DONE.search("Stitch {name} again beside the first row, and trim to it.")
    assert DONE.search("Cut {name} clean.")
    assert not DONE.search("Turn the cut edges under, clear of the trim.")
    assert not DONE.search("Clip or baste both halves of {name}.")
