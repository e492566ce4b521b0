"""Her own knowledge on the page: what a test showed, a cloth of hers, a name, a reel of thread.

What is written is what the command line writes, tried as a whole before; then the page answers
from it at once.
"""

from __future__ import annotations

import os
from collections.abc import Mapping
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from advisor.errors import InputError, Problem, shown
from advisor.page.desk import Desk
from advisor.page.shown import Fields, Slip, desk_of, page, see, slips_of

FIELDS = {
    "result": ("of", "like", "good", "bad", "on", "note"),
    "cloth": ("name", "like", "also"),
    "name": ("name", "means"),
    "thread": ("name", "colour", "fibre", "size"),
}
"""What each form holds."""
_TOLD = {
    "result": "It is kept, and counts from now on.",
    "cloth": "It is kept: call it by its name in a project or a question.",
    "name": "It is kept: the name is understood from now on.",
    "thread": "It is kept: the shopping list says which cloth it suits.",
}


def learn(request: Request) -> Response:
    """What is kept, and a form for each kind of it."""
    done = request.query_params.get("done", "")
    return _page(request, "", {}, told=_TOLD.get(done, ""))


def keep(request: Request, fields: Fields) -> Response:
    """Keep what one of the forms says."""
    desk, form = desk_of(request), fields.get("form", "")
    if form not in FIELDS:
        raise InputError("there is no such form")
    said = {key: " ".join(fields.get(key, "").split()) for key in FIELDS[form]}
    try:
        warnings = _KEEPERS[form](desk, said)
    except InputError as error:
        slips = tuple(Slip(_bare(slip.text)) for slip in slips_of(error, desk))
        return _page(request, form, said, slips=slips, status=400)
    if warnings:
        return _page(request, "", {}, told=" ".join([_TOLD[form], *map(_bare, warnings)]))
    return see(f"/learn?done={form}")


def _page(
    request: Request,
    form: str,
    said: Mapping[str, str],
    *,
    told: str = "",
    slips: tuple[Slip, ...] = (),
    status: int = 200,
) -> Response:
    known = desk_of(request).known
    empty = {name: dict.fromkeys(keys, "") for name, keys in FIELDS.items()}
    about = {
        "title": "What you have found out yourself",
        "told": told,
        "kept": empty | ({form: dict(said)} if form else {}),
        "slips": slips,
        "wrong": form,
        "cloths": [known.entries[id_].name for id_ in _own_cloths() if id_ in known.entries],
        "reels": known.registers.mine.reels,
        "left_out": tuple(map(_bare, known.left_out)),
    }
    return page(request, "learn.html", about, status)


def _own_cloths() -> list[str]:
    from advisor.overlay.cache import own_folder

    return sorted(path.stem for path in (own_folder() / "fabrics").glob("*.yaml"))


def _bare(text: str) -> str:
    """A message without the way to her folder."""
    from advisor.overlay.cache import own_folder

    return text.replace(f"{own_folder()}{os.sep}", "")


def _changed(desk: Desk, name: str, change: Any) -> None:
    from advisor.overlay.cache import own_folder
    from advisor.overlay.learning import keep as kept

    known, _ = kept(own_folder(), name, change, desk.known.left_out)
    desk.know(known)


def _cloth(desk: Desk, said: Mapping[str, str]) -> list[str]:
    from advisor.overlay.learning import cloth_text, id_of

    def change(text: str | None) -> str:
        if text is not None:
            raise InputError(f"you have {shown(said['name'])} already")
        also = [one.strip() for one in said["also"].split(",") if one.strip()]
        return cloth_text(said["name"], said["like"], also, desk.known)

    _changed(desk, f"fabrics/{id_of(said['name'])}.yaml", change)
    return []


def _result(desk: Desk, said: Mapping[str, str]) -> list[str]:
    from advisor.answer.learned import not_used
    from advisor.overlay.learning import cloth_text, id_of, read_setting, result_text, with_result

    known = desk.known
    good, bad = (
        dict(read_setting(one.strip(), known) for one in said[word].split(",") if one.strip())
        for word in ("good", "bad")
    )
    if not good and not bad:
        raise InputError("say at least one setting, such as needle.size=70")
    line = result_text(good, bad, {"on": said["on"], "note": said["note"], "reason": None})

    def change(text: str | None) -> str:
        if text is None and not said["like"]:
            unknown = f"{shown(said['of'])} is no cloth of yours yet"
            raise InputError(Problem(unknown, None, "what it is like, such as silk velvet"))
        return with_result(text or cloth_text(said["of"], said["like"], [], known), line)

    id_ = id_of(said["of"])
    _changed(desk, f"fabrics/{id_}.yaml", change)
    return not_used(id_, good, desk.known, "metric")


def _name(desk: Desk, said: Mapping[str, str]) -> list[str]:
    from advisor.overlay.learning import with_name

    _changed(desk, "names.yaml", lambda text: with_name(text, said["name"], said["means"]))
    return []


def _thread(desk: Desk, said: Mapping[str, str]) -> list[str]:
    from advisor.overlay.learning_rack import changed_rack

    if not said["name"]:
        raise InputError("a reel needs a name")
    reel = {key: value for key, value in said.items() if value}
    _changed(desk, "threads.yaml", lambda text: changed_rack(text, reel, None))
    return []


_KEEPERS = {"result": _result, "cloth": _cloth, "name": _name, "thread": _thread}
