"""What is known of seam classes and of tools that do instead of others: checked, compiled, light.

`seams.yaml` and `kit.yaml` are registers that a folder may do without. The values here carry no
pydantic, so that a warm start reads them from the cache.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Any

from msgspec import Struct, field

from advisor.records import from_data

if TYPE_CHECKING:
    from advisor.errors import Problem
    from advisor.knowledge.book import BookItem

FILES = ("seams", "kit")


class SeamClass(Struct, frozen=True):
    """A kind of seam in the words of the standards; "" where no class was found."""

    id: str
    name: str
    astm: str
    astm_sources: tuple[str, ...]
    iso: str
    iso_sources: tuple[str, ...]
    note: str


class Substitute(Struct, frozen=True):
    """What does instead of a tool; `word` is the answer to try, "" where the setting stays."""

    word: str
    text: str
    sources: tuple[str, ...]


class Tool(Struct, frozen=True):
    """A tool that an answer calls for, and what does instead, best first."""

    id: str
    aspect: str
    word: str
    name: str
    instead: tuple[Substitute, ...]


class RoomThing(Struct, frozen=True):
    """What a sentence asks for in one of these words; `everyday` where any workroom has it."""

    name: str
    words: tuple[str, ...]
    everyday: bool


class Workshop(Struct, frozen=True):
    """Seam classes by kind of seam, tools by the answer that calls for them, things of the room."""

    classes: dict[str, SeamClass] = field(default_factory=dict)
    tools: dict[tuple[str, str], Tool] = field(default_factory=dict)
    things: tuple[RoomThing, ...] = ()


def check_workshop(
    seams: Mapping[str, BookItem],
    kit: Mapping[str, BookItem],
    aspects: Mapping[str, BookItem],
    sources: Mapping[str, BookItem],
) -> list[Problem]:
    """Words of the two registers that are known nowhere else."""
    problems: list[Problem] = []
    kinds = aspects["seam.kind"].form.options if "seam.kind" in aspects else ()
    for item in seams.values():
        problems += item.unknown((), (item.id,), kinds, "kind of seam")
        problems += item.uncited((), (*item.form.astm_sources, *item.form.iso_sources), sources)
    for item in (each for each in kit.values() if each.form.aspect is not None):
        form = item.form
        problems += item.unknown(("aspect",), (form.aspect,), aspects, "aspect")
        if form.aspect not in aspects:
            continue
        options = aspects[form.aspect].form.options
        problems += item.unknown(("word",), (form.word,), options, f"option of {form.aspect}")
        for i, other in enumerate(form.instead):
            at = ("instead", i)
            problems += item.unknown((*at, "word"), filter(None, (other.word,)), options, "option")
            problems += item.uncited((*at, "sources"), other.sources, sources)
    return problems


def compile_workshop(seams: Mapping[str, BookItem], kit: Mapping[str, BookItem]) -> dict[str, Any]:
    """Both registers as plain data."""
    return {
        "classes": {id_: item.form.model_dump(mode="json") for id_, item in seams.items()},
        "tools": {
            id_: item.form.model_dump(mode="json")
            for id_, item in kit.items()
            if item.form.aspect is not None
        },
        "things": [
            {"name": form.name, "words": form.told_as, "everyday": form.everyday}
            for form in (item.form for item in kit.values())
            if form.told_as
        ],
    }


def workshop_from_plain(raw: dict[str, Any]) -> Workshop:
    """Build it from the compiled data; an empty one where there is none."""
    classes = {
        id_: from_data(SeamClass, row, id=id_) for id_, row in raw.get("classes", {}).items()
    }
    tools = [from_data(Tool, row, id=id_) for id_, row in raw.get("tools", {}).items()]
    things = tuple(from_data(RoomThing, row) for row in raw.get("things", []))
    return Workshop(classes, {(tool.aspect, tool.word): tool for tool in tools}, things)
