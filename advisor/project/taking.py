"""Writes remedies into a project file: whole or not at all, and nothing else of it is changed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from advisor.project.lines import Line, Steps
from advisor.textio.editing import Edit, edited
from advisor.textio.yamlfile import Data, parse_yaml


def with_lines(text: str, lines: Sequence[Line], file: str) -> str:
    """The text of a project with some lines written into it; comments and line ends stay.

    Raises:
        InputError: a line has no place in it.
    """
    return edited(text, list(_edits(lines, parse_yaml(text, file).data)), file)


def _edits(lines: Sequence[Line], data: Data) -> Iterator[Edit]:
    """The lines as edits of this file: seams by their place, a bare phrase as a group of keys."""
    names = [" ".join(str(s.get("name", "")).split()) for s in data["seams"]]
    # Entries of a list are taken away from its end, so that the others keep their places.
    kept = [line for line in lines if not _is_entry_gone(line)]
    gone = [line for line in lines if _is_entry_gone(line)]
    for line in (*kept, *sorted(gone, key=lambda x: [str(s) for s in x.path], reverse=True)):
        way: Steps = line.path
        if way[0] == "seams":
            way = _as_written(("seams", names.index(str(way[1])), *way[2:]), data)
        if way[0] == "fabrics":
            known = {" ".join(key.split()).casefold(): key for key in data["fabrics"]}
            key = known.get(str(way[1]).casefold())
            if key is None:
                continue  # a notion that is named in its seam alone
            if isinstance(data["fabrics"][key], str) and len(way) > 2:
                whole = {"fabric": data["fabrics"][key], str(way[2]): line.value}
                yield ("fabrics", key), whole
                continue
            way = ("fabrics", key, *way[2:])
        if way == ("maker", "feet") and "maker" not in data:
            yield ("maker",), {"feet": line.value}
            continue
        yield way, line.value
    yield from _left_over(lines, data, names)


def _as_written(way: Steps, data: Data) -> Steps:
    """The way to a layer of a place that says its layers with `on`, one name or a list of them."""
    seam = data["seams"][way[1]]
    if way[2:3] != ("layers",) or "layers" in seam or seam.get("on") is None:
        return way
    rest = way[3:] if isinstance(seam["on"], list) else way[4:]
    return (*way[:2], "on", *rest)


def _layers(seam: Data) -> list[Data]:
    """The layers of a place as they are written."""
    if "layers" in seam:
        return seam["layers"] or []
    on = seam.get("on")
    return on if isinstance(on, list) else [on]


def _left_over(lines: Sequence[Line], data: Data, names: list[str]) -> Iterator[Edit]:
    """Notions among the fabrics that no layer names any more: a garment has what it is made of."""
    changed = {
        (names.index(str(line.path[1])), line.path[3]): line.value
        for line in lines
        if line.path[2:3] == ("layers",)
    }
    left: set[str] = set()
    gone: dict[str, Data] = {}
    for i, seam in enumerate(data["seams"]):
        for j, layer in enumerate(_layers(seam)):
            name = layer.get("use", layer.get("notion")) if isinstance(layer, dict) else layer
            called = " ".join(str(name or "").split()).casefold()
            if (i, j) in changed:
                gone[called] = changed[i, j]
            else:
                left.add(called)
    for at, piece in reversed([*enumerate(data.get("pieces") or ())]):
        called = " ".join(str(piece.get("fabric", "")).split()).casefold()
        if called in gone.keys() - left:
            now = gone[called]
            whole = now is None or not isinstance(now, dict)
            yield (("pieces", at), None) if whole else (("pieces", at, "fabric"), now["notion"])
    for key, about in data["fabrics"].items():
        named = " ".join(key.split()).casefold()
        if named in gone.keys() - left and isinstance(about, dict) and "notion" in about:
            yield ("fabrics", key), None


def _is_entry_gone(line: Line) -> bool:
    return line.value is None and isinstance(line.path[-1], int)
