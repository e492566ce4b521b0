"""What a project has to say for one garment to become another: the lines to write into its file."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam, Use
from advisor.project.glue_first import fusing_flat
from advisor.project.making import LESS_BULK
from advisor.project.placing import placed
from advisor.textio.flow import flow

Steps = tuple[str | int, ...]


class Line(Struct, frozen=True):
    """One change of a project: the way to a key, with seams by their names, and what it is to say.

    A value of None takes the key, or the entry of a list, away.
    """

    path: Steps
    value: Any

    @property
    def text(self) -> str:
        """The line in words: where it goes and what it says."""
        *way, last = self.path
        where = ", ".join(str(step) for step in way)
        if isinstance(last, int):
            what = "is taken out" if self.value is None else f"becomes {flow(self.value)}"
            return f"{where}: number {last + 1} {what}"
        if self.value is None:
            return f"{where}: '{last}' is taken out"
        return f"{where}: {last}: {flow(self.value)}"


def as_yaml(lines: Iterable[Line]) -> str:
    """Lines as they are written into a project; what is not said in a key stands as a comment."""
    groups: dict[tuple[str, str], list[Line]] = {}
    for line in lines:
        groups.setdefault((str(line.path[0]), str(line.path[1])), []).append(line)
    told: dict[str, list[str]] = {}
    for (top, name), found in groups.items():
        text = told.setdefault(top, [f"{top}:"])
        if top == "maker":
            text += [f"  {line.path[1]}: {flow(line.value)}" for line in found]
            continue
        text.append(f"  - name: {flow(name)}" if top == "seams" else f"  {flow(name)}:")
        text += [f"    {_inner(line)}" for line in found]
    return "\n".join(line for text in told.values() for line in text)


def _inner(line: Line) -> str:
    inside = line.path[2:]
    if len(inside) == 1 and line.value is not None:
        return f"{inside[0]}: {flow(line.value)}"
    shown = Line(inside or line.path, line.value).text.lstrip(": ")
    return f"# {shown}"


def lines_between(old: Garment, new: Garment, knowledge: Knowledge) -> tuple[Line, ...]:
    """The lines that make of the project of one garment that of another.

    Args:
        old: the garment as its project says it.
        new: the same with a remedy applied; no seam is added or taken away.
        knowledge: which of its cloths are notions.
    """
    found: list[Line] = []
    unsaid = fusing_flat(
        replace(new, seams=tuple(replace(seam, apart=frozenset()) for seam in new.seams)), knowledge
    )
    for before, after, read in zip(old.seams, new.seams, unsaid.seams, strict=True):
        if before != after:
            said = replace(after, apart=after.apart - read.apart)
            found += _seam_lines(before, said, old, new, knowledge)
    found += _cloth_lines(old, new)
    if old.maker.feet != new.maker.feet:
        found.append(Line(("maker", "feet"), list(new.maker.feet or ())))
    return tuple(found)


def _seam_lines(
    old: Seam, new: Seam, was: Garment, garment: Garment, knowledge: Knowledge
) -> Iterator[Line]:
    here: Steps = ("seams", new.name)
    kinds = {n: knowledge.entries[c.entry].kind for n, c in garment.cloths.items()}
    for key in dict.fromkeys((*old.facts, *new.facts)):
        if old.facts.get(key) != new.facts.get(key):
            yield Line((*here, key), new.facts.get(key))
    first = sorted(
        new.apart & set(new.cloths())
    )  # one remedy may have left out what another presses
    for key, names in (
        ("pressed first", [n for n in first if kinds[n] == "cloth"]),
        ("fused first", [n for n in first if kinds[n] != "cloth"]),
    ):
        if names and not set(names) <= old.apart:
            yield Line((*here, key), names)
    if old.making.helps != new.making.helps:
        words = [w for w, short in LESS_BULK.items() if short in new.making.helps]
        yield Line((*here, "lessen bulk"), words)
    named = {n for n in was.cloths if kinds.get(n) == "cloth"}
    yield from _layer_lines(old, new, named, here)
    if old.uses != new.uses and "kind" in new.assumed:
        known = {n: knowledge.entries[c.entry] for n, c in (was.cloths | garment.cloths).items()}
        before, after = (placed(seam, "", known, knowledge).kind for seam in (old, new))
        if before == new.place != after:
            yield Line((*here, "kind"), new.place.replace("-", " "))


def _layer_lines(old: Seam, new: Seam, named: set[str], here: Steps) -> Iterator[Line]:
    was = old.uses[:1] if "layers" in old.assumed else old.uses
    now = new.uses[:1] if "layers" in new.assumed else new.uses
    if len(was) == len(now):
        for i, (before, after) in enumerate(zip(was, now, strict=True)):
            way = (*here, "layers", i)
            if before.cloth != after.cloth:
                yield Line(way, _layer(after, named))
            elif before.fullness != after.fullness:
                yield Line((*way, "fullness"), after.fullness)
        return
    left = list(now)
    for i in reversed(range(len(was))):
        if left and left[-1] == was[i]:
            left.pop()
        else:
            yield Line((*here, "layers", i), None)


def _layer(use: Use, named: set[str]) -> Any:
    """A layer as a project writes it; a cloth that it has no name for goes in as a notion."""
    return use.cloth if use.cloth in named else {"notion": use.cloth.removesuffix(" (notion)")}


def _cloth_lines(old: Garment, new: Garment) -> Iterator[Line]:
    for name, after in new.cloths.items():
        before = old.cloths.get(name)
        if before is None or before == after:
            continue
        if before.detachable != after.detachable:
            yield Line(("fabrics", name, "detachable"), "yes" if after.detachable else "no")
