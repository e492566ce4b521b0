"""Groups the verdicts of a place into the few lines that a maker works from.

A line joins the aspects that are set together: needle point and size, pins and where they go.
Each answer is followed by who decides it and the numbers of the sources.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldClaim, ToldPlace, ToldVerdict

if TYPE_CHECKING:
    from advisor.answer.model.making import ToldCheck

Verdicts = dict[str, ToldVerdict]

FABRIC_LINES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("prepare", ("prepare.preshrink",)),
    ("cut", ("cut.direction", "cut.lay", "cut.grain", "cut.tool", "cut.hold")),
    ("mark", ("mark.method",)),
    ("make up", ("interfacing.kind", "closure.kind", "hem.kind")),
    ("suits", ("design.suits",)),
    ("avoid", ("design.avoids",)),
)
PRESSING = (
    *("press.moisture", "press.side", "press.cloth"),
    *("press.surface", "press.motion", "press.dwell"),
)
"""All of a press but how hot the iron is."""
SEAM_LINES: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("made", ()),
    ("pin", ("pin.kind", "pin.place", "pin.insertion")),
    (
        "stitch",
        (
            "needle.size",
            "needle.point",
            "thread.fibre",
            "thread.size",
            "stitch.type",
            "stitch.length",
            "stitch.tension",
        ),
    ),
    ("machine", ("machine.foot", "machine.pressure")),
    (
        "seam",
        (
            "hem.kind",
            "seam.kind",
            "seam.allowance",
            "seam.finish",
            "seam.support",
            "interfacing.kind",
        ),
    ),
    ("press", ("press.temperature", *PRESSING)),
)
KIND_ASPECTS = ("seam.kind", "hem.kind")
"""What a place is not asked where its method is told instead."""

PLAIN_TEST = (
    "Stitch a hand's length, pull it, and look at both faces for puckers, loops and skipped "
    "stitches."
)
"""What a scrap is sewn for where no rule names anything to look for."""


def seam_line(seam: ToldPlace, label: str, aspects: Sequence[str]) -> tuple[str, Sequence[str]]:
    """What leads a line of a place, and what is left of its aspects: the method says its kind."""
    if label == "made":
        return seam.made, ()
    if label != "seam":
        return "", aspects
    dropped = set(KIND_ASPECTS) if seam.made else set()
    if seam.allowance_as:
        dropped.add("seam.allowance")
    lead = f"allowance {seam.allowance_as}" if seam.allowance_as else ""
    return lead, [a for a in aspects if a not in dropped]


LAST_PRESS_LINE = ("last press", ("press.temperature", *PRESSING))
CARE_LINE = (
    "care",
    ("care.wash", "care.bleach", "care.dry", "care.iron", "care.professional"),
)
GARMENT_LINES = (LAST_PRESS_LINE, CARE_LINE)
FABRIC_PARAGRAPH: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("prepare", ("prepare.preshrink",)),
    ("cut", ("cut.direction", "cut.lay", "cut.grain", "cut.hold")),
    ("mark", ("mark.method",)),
    ("avoid", ("design.avoids",)),
)
"""What a sheet says of a cloth; its design is settled by then."""
STILL_OPEN = frozenset(
    {
        "pressed pleats",
        "tucks",
        "ease",
        "darts",
        "topstitching",
        "bias cut",
        "machine buttonholes",
        "pulling under strain",
    }
)
"""What a maker may still do to a cloth at the table, however its design is settled."""
SILENT = {
    "machine.foot": "standard",
    "seam.support": "none",
    "press.cloth": "none",
    "press.surface": "padded board",
    "pin.place": "anywhere",
    "stitch.tension": "balanced",
    "machine.pressure": "medium",
    "interfacing.kind": "none",
}
"""Answers that go without saying when every reason for them is only a wish."""
_PHRASES = {
    "needle.size": "needle {}",
    "needle.point": "{}",
    "thread.fibre": "thread {}",
    "thread.size": "{}",
    "stitch.length": "{}",
    "stitch.tension": "tension {}",
    "machine.foot": "{} foot",
    "machine.pressure": "{} pressure",
    "seam.kind": "{} seam",
    "seam.allowance": "{} allowance",
    "seam.finish": "edges {}",
    "seam.support": "{}",
    "pin.place": "{}",
    "press.temperature": "iron {}",
    "press.side": "from the {}",
    "press.cloth": "through a {}",
    "press.surface": "on a {}",
    "press.dwell": "{} at a time",
    "cut.grain": "{} grain",
    "cut.tool": "{}",
    "cut.hold": "hold with {}",
    "interfacing.kind": "interfacing {}",
    "closure.kind": "closure {}",
    "hem.kind": "hem: {}",
    "care.wash": "wash {}",
    "care.dry": "dry {}",
    "care.iron": "iron {}",
    "care.professional": "dry clean {}",
}
_WHOLE = {
    ("press.dwell", "0 s"): "never left standing",
    ("press.cloth", "none"): "no press cloth needed",
    ("press.surface", "self-fabric pile up"): "on a piece of its own pile or nap, face up",
    ("press.surface", "ham or roll"): "over a ham or roll",
    ("seam.kind", "hand-sewn"): "sewn by hand",
    ("seam.finish", "none"): "edges left raw",
    ("seam.finish", "enclosed in the seam"): "edges enclosed in the seam",
    ("seam.finish", "edge sealant"): "edge sealant on the edges",
    ("seam.finish", "trimmed and double-stitched"): "trimmed, second row of stitching",
    ("seam.support", "none"): "no stay",
    ("cut.grain", "stretch round the body"): "stretch round the body",
    ("cut.grain", "spine of the skin"): "along the spine of the skin",
    ("cut.grain", "any way"): "any grain",
    ("cut.grain", "bias"): "bias",
    ("pin.place", "anywhere"): "pins anywhere",
    ("pin.place", "allowance only"): "in the allowance only",
    ("pin.place", "no pins"): "no pins in the cloth",
    ("pin.insertion", "not pinned"): "",
    ("care.wash", "do not wash"): "do not wash (air and brush it, and ask a cleaner about stains)",
    ("care.professional", "do not dry clean"): "do not dry clean",
    ("care.iron", "do not iron"): "do not iron",
    ("press.temperature", "no iron"): "no iron",
    ("seam.finish", "Hong Kong"): "edges bound singly (Hong Kong)",
    ("press.moisture", "damp cloth"): "damp cloth",
}


NO_WAY = (
    "do not dry clean (no way of a care label is left: ask a specialist cleaner before you sew, or "
    "let what forbids it come off)"
)
WITH = " with "
"""Stands between two cloths of which something is said only together."""
NOTHING_SUITS = "nothing suits all layers"


def by_place(report: Answer) -> dict[tuple[str, str], Verdicts]:
    """The verdicts of each scope and place, by aspect."""
    places: dict[tuple[str, str], Verdicts] = {}
    for verdict in report.verdicts:
        places.setdefault((verdict.scope, verdict.place), {})[verdict.aspect] = verdict
    return places


def phrase(verdict: ToldVerdict) -> str:
    """One answer as part of a line."""
    return phrase_of(verdict.aspect, verdict.text)


def phrase_of(aspect: str, text: str) -> str:
    """The words of one answer as part of a line."""
    whole = _WHOLE.get((aspect, text))
    if aspect == "press.temperature" and text.startswith("no iron"):
        return str(text)
    if aspect == "cut.grain" and "the bias" in text:
        return text
    if text == NOTHING_SUITS:
        return f"{aspect.replace('.', ' ')}: {text}"
    return whole if whole is not None else _PHRASES.get(aspect, "{}").format(text)


def deciders(verdict: ToldVerdict) -> tuple[ToldClaim, ...]:
    """The claims that make an answer what it is."""
    return verdict.deciders()


def worth_saying(verdict: ToldVerdict) -> bool:
    """Whether an answer is news to somebody who sews."""
    if verdict.text == SILENT.get(verdict.aspect):
        return bool(verdict.given_up)
    return bool(verdict.text)


def line_parts(verdicts: Verdicts, aspects: Iterable[str]) -> list[tuple[str, ToldVerdict]]:
    """The phrases of a line with the verdicts that they come from."""
    found = [verdicts[a] for a in aspects if a in verdicts and worth_saying(verdicts[a])]
    cold = is_cold(verdicts)
    told = []
    for verdict in found:
        pressing = cold and verdict.aspect.startswith("press.")
        if verdict.aspect == "care.dry" and _unwashed(verdicts):
            continue
        if verdict.aspect == "care.wash" and _own_way(verdicts):
            told.append((verdict.text, verdict))
        elif verdict.aspect == "care.professional" and _uncleaned(verdicts):
            told.append((_own_way(verdicts) or NO_WAY, verdict))
        elif not pressing or verdict.aspect in _COLD_ASPECTS:
            told.append((phrase(verdict), verdict))
    return [(text, verdict) for text, verdict in told if text]


_COLD_ASPECTS = ("press.temperature", "press.motion")
_IDLE_WHEN_COLD = ("press.side", "press.cloth", "press.surface", "press.dwell", "press.moisture")


def is_cold(verdicts: Verdicts) -> bool:
    """Whether no iron may be used at a place."""
    heat = verdicts.get("press.temperature")
    return heat is not None and heat.text.startswith("no iron")


def told_when_cold(verdicts: Verdicts) -> list[ToldVerdict]:
    """The verdicts of a place that say anything where no iron is used."""
    return [v for aspect, v in verdicts.items() if aspect not in _IDLE_WHEN_COLD]


def _uncleaned(verdicts: Verdicts) -> bool:
    """Whether no treatment that a care label knows is left."""
    clean = str(verdicts["care.professional"].text)
    return _unwashed(verdicts) and clean == "do not dry clean"


def _own_way(verdicts: Verdicts) -> str:
    """How a cloth that bears no treatment is cleaned all the same; "" where another stops it."""
    if "care.professional" not in verdicts or not _uncleaned(verdicts):
        return ""
    wash, clean = verdicts["care.wash"], verdicts["care.professional"]
    never = {c.who for c in clean.because if c.says == "do not dry clean"}
    alone = [c for c in wash.because if c.says == "do not wash" and WITH not in c.who]
    if not alone or any(c.who not in never or c.strength == "must" for c in alone):
        return ""
    return f"do not dry clean (neither is needed; {alone[0].who}: {alone[0].why.rstrip('.')})"


def _unwashed(verdicts: Verdicts) -> bool:
    """What is never wetted is not dried either."""
    wash = verdicts.get("care.wash")
    return wash is not None and wash.text == "do not wash"


def said_once(checks: Iterable[ToldCheck]) -> dict[str, list[str]]:
    """Figures that do not agree, without the name they begin with, each with its places."""
    alike: dict[str, list[str]] = {}
    for check in checks:
        alike.setdefault(check.text.removeprefix(f"{check.place} "), []).append(check.place)
    return {
        f"each {text}" if text.startswith("is ") and len(places) > 1 else text: places
        for text, places in alike.items()
    }
