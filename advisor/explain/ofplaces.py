"""What is known of kinds of place and of the methods by which they are made, told in words."""

from __future__ import annotations

from typing import Any

from advisor.explain.listings import Told
from advisor.knowledge.model import Knowledge
from advisor.knowledge.ordering import Operation
from advisor.knowledge.places import Method, PlaceKind, Stage, plain_word
from advisor.order.basting import BASTE, along
from advisor.order.openings import BETWEEN, HAND_WIDE
from advisor.order.waistwords import AT_THE_NECK
from advisor.records import as_data, picked
from advisor.render.layout import heading, row, wrap

UNDO = {
    "free": "undone at no price",
    "easy": "can be unpicked",
    "hard": "hard to undo",
    "never": "no way back",
}
STATES = {
    "seam": "machine, as for the seam",
    "rows": "machine, long rows",
    "finish": "machine, as for the finish",
    "zip": "machine, one-sided foot",
    "lock": "machine, lockstitch",
    "zigzag": "machine, zigzag",
}
IRONS = {"seam": "iron", "fuse": "iron, as hot as the glue wants"}


def kind_of(name: str, knowledge: Knowledge) -> PlaceKind | None:
    """The kind of place of a name or an id."""
    plain = plain_word(name)
    for kind in knowledge.places.kinds.values():
        if plain in (plain_word(kind.id), plain_word(kind.name)):
            return kind
    return None


def tell_method(method: Method, knowledge: Knowledge) -> Told:
    """A method as lines and as data: what it makes, stage by stage, and its limits."""
    places = knowledge.places
    makes = ", ".join(places.kinds[id_].name for id_ in method.makes)
    lines = heading(f"{method.name} (method for a {makes})", 1)
    if method.also:
        lines += row("also called", ", ".join(method.also), 2, 14)
    lines += wrap(method.about, "  ")
    rows = [_stage(stage, knowledge) for stage in method.stages]
    for number, told in enumerate(rows, start=1):
        extra = "; ".join(t for t in (told["needs"], told["undo"], told["only"]) if t)
        lines += row(f"{number}", f"{told['does']} ({extra})", 2, 5)
    if method.limits:
        lines += row("limits", method.limits, 2, 14)
    lines += row("said by", f"[{', '.join(method.sources)}]", 2, 14)
    lines += row("in a file", f"method: {method.name}", 2, 14)
    data = picked(method, "id name also makes about fits")
    return lines, {**data, "stages": rows, **picked(method, "limits sources")}


def _stage(stage: Stage, knowledge: Knowledge) -> dict[str, Any]:
    """A stage with what it needs, and what comes of it."""
    op = knowledge.order.operations[stage.work]
    does = (stage.does or op.does).format_map(
        {
            "name": "the place",
            "cloths": "its layers",
            "how": along(op) if op.id == BASTE else "",
            "marked": "Mark it through its buttonhole, or where it goes, and sew it on",
            "leave": f", and leave {HAND_WIDE} to turn through",
            "between": BETWEEN,
            "foot": "",
            "hung": "",
            "facing": "its cloth",
            "opened": "the place",
            "below": "the other seams",
            "round": "its seam",
            "hang": AT_THE_NECK,
            "host": "what belongs here",
            "channels": "their channels",
        }
    )
    when = stage.when or ()
    past = not (op.let_out if stage.let_out is None else stage.let_out)
    undo = UNDO[stage.undo or op.undo]
    minutes = stage.minutes or op.minutes
    return {
        "work": stage.work,
        "verb": stage.verb or op.verb,
        "does": does[:1].upper() + does[1:],
        "needs": _needs(stage, op),
        "lies": stage.lies,
        "closes": stage.closes,
        "undo": undo + (", past recall for a fitting" if past else ""),
        "let_out": not past,
        "only": " or ".join("only where it is " + ", ".join(facts) for facts in when),
        "minutes": as_data(minutes),
    }


def _needs(stage: Stage, op: Operation) -> str:
    machine, iron = stage.machine or op.machine, stage.iron or op.iron
    parts = [STATES.get(machine, ""), IRONS.get(iron, "")]
    parts = [part for part in parts if part] or ["by hand"]
    if stage.lies != "any":
        parts.append(f"lying {stage.lies}")
    return ", ".join(parts)


def tell_kind(kind: PlaceKind, knowledge: Knowledge) -> Told:
    """A kind of place as lines and as data: what it means, and by what it can be made."""
    methods = [m for m in knowledge.places.methods.values() if kind.id in m.makes]
    asked = [a for a in knowledge.aspects if _asked(a, kind, knowledge)]
    lines = heading(f"{kind.name} (kind of place, {kind.family})", 1)
    lines += wrap(kind.means, "  ")
    if kind.words:
        lines += row("names", ", ".join(kind.words), 2, 14)
    lines += row("asked there", ", ".join(knowledge.aspects[a].title for a in asked), 2, 14)
    lines += row("allowance", "yes" if kind.allowance else "none", 2, 14)
    lines += row("cut edge", "neatened" if kind.finish else "none is left to neaten", 2, 14)
    if kind.unit != "none":
        note = f" ({kind.note})" if kind.note else ""
        lines += row("bought", f"by {kind.unit}{note}", 2, 14)
    usual = [f"{m.name}{' (usual)' if m.id == kind.usual else ''}" for m in methods]
    lines += row("made by", ", ".join(usual), 2, 14)
    lines += row("said by", f"[{', '.join(kind.sources)}]", 2, 14)
    return lines, {
        **picked(kind, "id name family means"),
        "asked": asked,
        **picked(kind, "allowance finish unit"),
        "methods": [m.id for m in methods],
        **picked(kind, "usual sources"),
    }


def _asked(aspect: str, kind: PlaceKind, knowledge: Knowledge) -> bool:
    return "seam" in knowledge.aspects[aspect].scopes and aspect not in kind.drops
