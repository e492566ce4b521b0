"""A step that cuts, pierces, fuses or glues cloth is marked as one that nothing undoes."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.ordering import NEVER, NO_ACT
from advisor.knowledge.place import knowledge_folder
from advisor.order.staging import staged
from advisor.overlay.cache import compile_folder
from advisor.render.order_text import render_order
from tests.garments.whole import known, read

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
STALL = """
garment: Market stall collar
fabrics: {o: cotton poplin, i: woven fusible interfacing}
seams:
  - {name: NAME, layers: [o, i], length: 40 cm, method: interfacing-fused}
"""
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
    assert not asks or op.undo == NEVER, op.does
    assert op.undo != NEVER or op.act, "what nothing undoes has a name"


def test_what_is_past_recall_is_named_by_its_act() -> None:
    """No name of a place is taken for an act."""
    for name in ("backing", "clip backing"):
        text = render_order(read(STALL.replace("NAME", name)))
        assert "No way back after ! (shrink, cut, fuse)." in text


@pytest.mark.parametrize("stage", ["operations", "methods"])
def test_work_past_recall_without_an_act_is_refused(stage: str, tmp_path: Path) -> None:
    """With the line of it, in the table and in a method."""
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    file, line = {
        "operations": ("operations.yaml", "    act: shear\n"),
        "methods": ("methods/collar-with-stand.yaml", "    act: grade\n"),
    }[stage]
    path = folder / file
    path.write_text(path.read_text("utf-8").replace(line, ""), "utf-8")
    with pytest.raises(InputError) as caught:
        compile_folder(folder)
    assert [NO_ACT] == [p.message for p in caught.value.problems]
