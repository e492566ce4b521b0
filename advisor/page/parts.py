"""Choosing by one press, and undone: a cloth, a part or a place more, another or less."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from advisor.errors import InputError
from advisor.knowledge.factwords import SEAM_WORDS
from advisor.page.projects import opened
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of
from advisor.project.kindwords import known_kinds
from advisor.project.methods import FITTINGS
from advisor.writing import parts as writing

LAYERS = ("layer1", "layer2", "layer3", "layer4", "layer5", "layer6")
OF_A_PART = ("lies1", "lies2", "lies3", "lies4")
OF_A_CLOTH = ("colour", "width")
OF_A_PLACE = ("kind", "length", "shape", "edge", "part")
"""Facts that the forms ask for beside what has to be said; the rest stands in the text."""
KEPT = (
    *("name", "phrase", *OF_A_CLOTH, "called", *OF_A_PART, "free", "fitting"),
    *("place", "notion", *LAYERS, *OF_A_PLACE),
)


def parts(request: Request) -> Response:
    """The cloths and places of a project, and a form for one more of each."""
    return _page(request, {})


def change(request: Request, fields: Fields) -> Response:
    """Make one change, and remember what stood there before."""
    desk, name = desk_of(request), request.path_params["name"]
    path, before = desk.folder.path(name), desk.folder.text(name)
    said = {key: " ".join(fields.get(key, "").split()) for key in KEPT}
    try:
        made, told = _change(said, fields)
        writing.change_parts(path, made, desk.known, fields.get("mark", "-"))
    except InputError as error:
        return _page(request, said, error)
    desk.taken[name] = (desk.read(name).mark, before, (told,))
    return see(at("project", name, "parts"))


def _change(said: Mapping[str, str], fields: Fields) -> tuple[writing.Change, str]:
    """What is asked for, and how it is told when it is done."""
    match fields.get("do", ""):
        case "cloth":
            if not said["name"] or not said["phrase"]:
                raise InputError("say what you call the cloth, and what it is")
            more = {key: said[key] for key in OF_A_CLOTH}
            made = writing.cloth(said["name"], said["phrase"], more)
            return made, f"{said['name']}: {said['phrase']}"
        case "part":
            lies = [said[key] for key in OF_A_PART if said[key]]
            if not said["called"]:
                raise InputError("say what you call the part")
            free = [said["free"]] if said["free"] else []
            return writing.part(said["called"], lies, free, said["fitting"]), said["called"]
        case "place":
            layers = [said[key] for key in LAYERS if said[key]]
            if not said["place"] or not layers:
                raise InputError("say what you call the place, and which cloths lie there")
            more = {key: said[key] for key in OF_A_PLACE}
            made = writing.place(said["place"], layers, said["notion"], more)
            listed = [*layers, *([said["notion"]] if said["notion"] else [])]
            return made, f"{said['place']}: {', '.join(listed)}"
    if found := " ".join(fields.get("no-cloth", "").split()):
        return writing.without_cloth(found), f"{found} is taken out"
    if found := " ".join(fields.get("no-part", "").split()):
        return writing.without_part(found), f"{found} is taken out"
    if found := " ".join(fields.get("no-place", "").split()):
        return writing.without_place(found), f"{found} is taken out"
    raise InputError("there is no such change")


def _parts(data: Mapping[str, Any]) -> list[tuple[str, Mapping[str, Any]]]:
    """The parts of a project by name."""
    return [(" ".join(str(name).split()), part) for name, part in (data.get("parts") or {}).items()]


def _about(part: Mapping[str, Any]) -> str:
    """What a project says of a part, on one line."""
    said = []
    for key in ("layers", "separate", "fitting"):
        value = part.get(key)
        words = ", ".join(map(str, value)) if isinstance(value, list) else value
        if words:
            said.append(words if key == "layers" else f"{key} {words}")
    return "; ".join(said)


def _page(request: Request, said: Mapping[str, str], error: InputError | None = None) -> Response:
    read, told, about = opened(request, "parts")
    desk = desk_of(request)
    own = tuple(" ".join(name.split()) for name in read.document.data["fabrics"])
    found = {
        "cloths": [(layer.name, layer.fabric, layer.text) for layer in told.layers],
        "own": own,
        "choices": ("", *own),
        "parts": [(name, _about(part)) for name, part in _parts(read.document.data)],
        "options": {
            "kind": ("", *sorted(known_kinds(desk.known))),
            "shape": ("", *SEAM_WORDS["shape"]),
            "edge": ("", *SEAM_WORDS["edge"]),
            "part": ("", *(name for name, _ in _parts(read.document.data))),
            "fitting": ("", *FITTINGS),
        },
        "of_a_part": OF_A_PART,
        "places": [(seam.name, seam.layers) for seam in told.seams],
        "mark": read.mark,
        "kept": dict.fromkeys(KEPT, "") | dict(said),
        "layers": LAYERS,
        "just": desk.just(read),
        "slips": slips_of(error, desk) if error else (),
    }
    return page(request, "parts.html", {**about, **found}, 400 if error else 200)
