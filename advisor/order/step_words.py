"""What a step says beyond its template: which layers, how, how long a stitch, how near a bone."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

from advisor.claims.byparts import lines_all
from advisor.claims.collect import Place
from advisor.claims.glued import STIFFENS
from advisor.construction.cleared import cleared
from advisor.knowledge.model import COLD, Knowledge
from advisor.knowledge.ordering import Operation
from advisor.knowledge.places import PLAIN
from advisor.order.ascut import holed_for_good
from advisor.order.backed import (
    BEHIND,
    as_worked,
    backed_with,
    slid_in,
)
from advisor.order.basting import BASTE, along
from advisor.order.beside import STRIPS, marked, pleats_above
from advisor.order.bodicelining import past_stay
from advisor.order.clipped import to_one_width
from advisor.order.cuffs import faced_with
from advisor.order.drawnup import SET_IN, drawn_up, listed, rows_sewn
from advisor.order.easing import ease_of, eased_in
from advisor.order.facedrun import with_the_front
from advisor.order.facings import facing_finish
from advisor.order.facts import Facts
from advisor.order.fusing import DWELL, fused_onto, fusing_time
from advisor.order.hemsmeet import LEFT_RAW, beside_raw
from advisor.order.holdwords import ALONE, left_as_cut, skins_alone, without_holes
from advisor.order.hosts import filled_by_another, host_words
from advisor.order.kinds import SeamPlace
from advisor.order.layering import LININGS, lining_cloths, takes_in_lining
from advisor.order.letout import left_whole
from advisor.order.madeup import padded_in
from advisor.order.namewords import LAID_ON
from advisor.order.openings import free_at_zip, opening_fields, zips_over
from advisor.order.rain import off_the_tape, seal_words
from advisor.order.sashes import laid_in
from advisor.order.seambags import run_round
from advisor.order.shearing import deep_pile, laid_out, wadded
from advisor.order.sheeredge import laid_to_a_side
from advisor.order.stepends import end_of
from advisor.order.supports import stayed_alone, supports
from advisor.order.swings import without_zigzag
from advisor.order.topstitching import rows_told
from advisor.order.trimmed import lace_edge, rows_over, seams_under
from advisor.order.untried import lining_waits
from advisor.order.waistwords import hung_by
from advisor.project.garment import Garment
from advisor.project.lacewords import is_lace
from advisor.project.linings import LINING
from advisor.project.making import Piece
from advisor.project.placing import singular_words
from advisor.project.strapless import strapless
from advisor.units import System, show, show_range

STAY_MM = (1.5, 2.0)
"""The stitch of a stay row, mm: `trade-staystitch`."""
EASED_OFF_MM = (10.0, 20.0)
"""How much shorter than a strapless edge its stay is, mm in all: `common-practice`."""
ON_ONE_EDGE = """on one of its edges only{edge}, never a gathered or eased one: cut it for each \
piece as long as the line of that is on the pattern, and hold it inside the allowance. This seam \
takes it in, and those that end here take in its ends"""
ON_STRAPLESS = """from one end of it to the other, {less} shorter altogether: ease the edge to it \
over the bust, flat under the arms, and hold it by hand inside the allowance. It must lie against \
the body; this seam takes it in"""
STAY_FROM_SEAM = 3.0
"""How far outside the seam line it runs, mm: `trade-staystitch`."""
LAID_AFTER = frozenset({"sealing-tape", "belt-stiffener", "hook-and-loop-tape", "set-snap"})
"""What is laid on by itself, before a seam is stitched or after it, and is not caught in it."""
BONES_CLEAR = 6.0
"""How far a bone ends from any seam at the least, mm: common practice."""
BY_HAND = "with the fingers: no iron here"
CURTAINED = "band-with-curtain"
FACE = "face"
"""What the stage is called that sews the outer edge of a band to its facing."""
LINING_AFTER = "fell-hem"
"""The piece of work by which the lining is brought to a hem."""
EDGE_ALONE = ", at the cut edge alone, nothing trimmed off"
STRIPPED = frozenset({"Hong Kong", "bound"})
SOFT = """, but leave the folds soft for {high} above the edge until that is hemmed; where the \
length is sure, a straight skirt is hemmed before its pleats are laid, and its length taken at \
the waist"""
SOFT_MM = 200.0
"""How far above an unfinished edge a fold is not set yet, mm: estimate."""
NO_LAST_IRON = "Smooth the whole garment with the hands: no iron suits all of it"
LINING_OUT, SHELL_ALONE = ", the lining left out", " in the outer cloth alone"
LINED = """Hang the whole garment up and let the creases drop: {} lies behind all of it and takes \
no iron, so the shell has had its last press before that went in"""
HUNG_LINED = "Hang the whole garment up and let the creases drop: no one iron suits all of it"
ROUND_MOTIFS = ", round its motifs"
LEVEL = "Trim both allowances of {name} to one width: they are neatened as one."
"""In place of grading, after which no row would catch both edges."""
CLIPS = {"pin": "clip", "Pin": "Clip", "pinned": "clipped"}
PINNED = re.compile(r"(?<!no )(?<!a )\b(?:pinned|[pP]in)\b")
"""What is held by pins, and no word of one that may not be, or that lifts hairs."""
LEVELLED, TRUED = "Level {name}", "True {name} to its pattern"
UPPER_HEMS = frozenset({"top-edge", "hood-edge", "facing"})
"""Roles of a hem at the upper end of a piece: no floor tells how it lies."""
CLIPPED = {"curved": " and clip or notch them", "corner": " and cut the corners off"}


def step_words(op: Operation, place: SeamPlace, facts: Facts, *, ironed: bool) -> str:
    """The sentence of a step on a seam; `ironed` says whether an iron is used for it."""
    facing = _facing(place, facts)
    apart = _falls_apart(op, place, facts)
    layers = _layers(op, place, facts, facing, apart)
    how = along(op, place, facts) if op.id == BASTE else _how(op.id, place, facts, ironed=ironed)
    how += _lining_left_out(place, facts) if op.verb == BASTE == op.id else ""
    how = laid_in(op, place, facts.places) or how
    if apart:
        how = f": {listed(list(dict.fromkeys(layers)))} alone, no stitch through the lining"
    does = LEVEL if op.id == "grade" and to_one_width(place, facts) else op.does
    holed = holed_for_good(place, facts)
    alone = holed and op.id == "interface" and skins_alone(place, facts)
    does = ALONE if alone and not facts.setups.glues_left_out(place) else does
    does = slid_in(op, place, facts) or lace_edge(op, place, facts) or does
    does = does.replace(LEVELLED, TRUED) if place.role.id in UPPER_HEMS else does
    text = does.format(
        name=place.name, cloths=" + ".join(layers), how=how, **_fields(op, place, facts, facing)
    )
    gap = end_of(op, place, facts, alone=does == ALONE)
    text = f"{text.removesuffix('.')}{gap}." if gap else text
    if facts.setups.word(Place("seam", place.name), "pin.place") == "no pins":
        text = PINNED.sub(lambda pin: CLIPS[pin[0]], text)
    text = without_holes(text) if holed and op.id != "interface" else text
    text = without_zigzag(text, facts.setups)
    return text[:1].upper() + text[1:]


def _lining_left_out(place: SeamPlace, facts: Facts) -> str:
    """What a basting is told whose lining has no seam sewn before the fitting."""
    inner = linings_at(place, facts)
    own = [p for p in facts.places if p.unit == "lining" and inner & set(p.cloths)]
    if not any(lining_waits(p, facts.fitting) for p in own):
        return ""
    shell = [use for use in place.seam.uses if use.cloth in set(place.cloths) - inner]
    return LINING_OUT if shell[1:] else SHELL_ALONE


def _facing(place: SeamPlace, facts: Facts) -> str:
    """What faces a band; one named by the maker hangs whatever else the band holds."""
    faced = faced_with(place, facts.places, facts.garment)
    return faced or place.cloths[-1] if place.method.id == CURTAINED else faced


def _layers(
    op: Operation, place: SeamPlace, facts: Facts, facing: str, apart: frozenset[str]
) -> list[str]:
    """The layers that a step takes in: no bones, nor what hangs apart or is laid on afterwards."""
    absent = facts.setups.bones(place) | facts.ruled_out(place) | apart
    if op.id == "join":
        absent |= {name for name in place.notions if facts.entry(name).id in LAID_AFTER}
        absent |= padded_in(place, facts)
        absent |= linings_at(place, facts) if felled_at_it(place, facts) else set()
        if any(stage.verb == FACE for stage in place.method.stages):
            absent |= {facing}
    sewn = cleared(place.seam, facts.garment, facts.knowledge)
    return [use.cloth for use in sewn.uses if use.cloth not in absent]


def _fields(op: Operation, place: SeamPlace, facts: Facts, facing: str) -> dict[str, str]:
    """What the sentence of a step may name besides its place and its layers."""
    fields = opening_fields(place, facts.places, facts.garment.units) | {"facing": facing}
    fields |= host_words(place)
    fields["hang"] = hung_by(place, facts.places)
    fields["round"] = listed([p.name for p in run_round(place, facts.places)])
    fields["marked"] = marked(place, facts) if "{marked}" in op.does else ""
    return fields


def _falls_apart(op: Operation, place: SeamPlace, facts: Facts) -> frozenset[str]:
    """The lining at a hem: the outer cloth is hemmed alone, unless the lining faces it."""
    works = {stage.work for stage in place.method.stages}
    return linings_at(place, facts) if op.id == "hem" and LINING_AFTER in works else frozenset()


def felled_at_it(cuff: SeamPlace, facts: Facts) -> bool:
    """Whether another place fells the lining over the seam of a cuff, which leaves it hanging."""
    felled = (p for p in facts.places if p.method.id == FELLED_AT_A_CUFF)
    return cuff.kind.id == CUFF and any(set(p.cloths) & set(cuff.cloths) for p in felled)


def linings_at(place: SeamPlace, facts: Facts) -> frozenset[str]:
    """The cloths of a place that line what else it holds; none where it holds nothing else."""
    if not takes_in_lining(place, facts.places):
        return frozenset()
    called = {n for n in place.cloths if LINING in singular_words(n)}
    called |= {n for n in place.cloths if facts.entry(n).family == LININGS}
    inner = called or lining_cloths(facts.places) & set(place.cloths)
    return frozenset(inner if inner != set(place.cloths) else ())


def tuck_words(op: Operation, piece: Piece, garment: Garment, *, ironed: bool) -> str:
    """The sentence of the step that stitches the tucks of a piece."""
    units = garment.units
    press = "press" if ironed else "finger-press"
    number, deep = (piece.tucks.number, piece.tucks.depth) if piece.tucks else (0, 0.0)
    how = f"{press} and stitch the {number} tucks" if number > 1 else f"{press} and stitch the tuck"
    return op.does.format(name=piece.name, how=how, cloths=show("length", deep, units))


WITH_LINING = "the lining, and what cannot be parted from it,"
"""What the last press comes on first where the shell is pressed without its lining."""


def no_last_iron(
    garment: Garment, knowledge: Knowledge, bears: Callable[[str], float | None]
) -> str:
    """What is done in place of a last press: where a lining forbids it the shell was pressed."""
    there = sorted(lines_all(garment, knowledge))
    behind = [name for name in there if (bears(name) or COLD) <= COLD]
    if behind:
        return LINED.format(listed(behind))
    return HUNG_LINED if there else NO_LAST_IRON


def by_parts(pressed: Iterable[str], tender: Iterable[str], hung: Iterable[str]) -> str:
    """The last press where a part of the garment takes no iron, and one may hang instead."""
    kept = sorted(tender)
    lies = " or ".join((*kept, *hung))
    return (
        f"Press it part by part, {listed(sorted(pressed))}, dry, where no {lies} lies under the "
        f"iron; smooth {listed(kept)} with the hands"
    )


def _how(op: str, place: SeamPlace, facts: Facts, *, ironed: bool) -> str:
    units = facts.garment.units
    if op == "hem":
        return beside_raw(place, facts.places) if place.method.id == LEFT_RAW else ""
    if op in ("fuse", "interface"):
        return _interfacing(op, place, facts)
    if op in ("press", "turn", "join", "fold-under"):
        soft = op == "press" and any(place in pleats_above(p, facts) for p in facts.places)
        left = SOFT.format(high=show("length", SOFT_MM, units)) if soft else ""
        left += laid_to_a_side(place, facts) if op == "press" else ""
        left += off_the_tape(place, facts.places) if ironed and op != "join" else ""
        return _boned(op, place, facts, ironed=ironed) + left
    if op == "neaten-facing":
        return _finish(facing_finish(facts, place)) + with_the_front(place, facts.places)
    if op.startswith("neaten"):
        whole = op == "neaten-early" and left_whole(place, facts)
        return _finish(facts.setups.finish(place)) + left_as_cut(place, facts) + EDGE_ALONE * whole
    words = {
        "lay-on": lambda: _over_seams(place, facts),
        "stay-stitch": lambda: as_worked(stayed_alone(place, facts), facts) + _stay(place, units),
        "press-folds": lambda: listed([p.name for p in pleats_above(place, facts)]),
        "shear": lambda: listed(deep_pile(place, facts, knitted=True)),
        "baste-backing": lambda: laid_out(place, facts.garment),
        "unwad": lambda: listed(wadded(place, facts)),
        "clear": lambda: listed(list(facts.hard(place))),
        "sew-back": lambda: listed(list(facts.hard(place))),
        "finish-free-opening": lambda: listed(list(free_at_zip(place, facts.garment))),
        "thin": lambda: listed(list(zips_over(place, facts.places))),
        "bone": lambda: show("length", BONES_CLEAR, units),
        "gather": lambda: rows_sewn(place, facts),
        "draw-up": lambda: drawn_up(place, units, facts) if place.full else ease_of(place, units),
        "lay-pleats": lambda: listed(list(place.full)),
        "stay": lambda: _laid_along(place, facts),
        "stay-opening": lambda: BEHIND_ZIP.get(
            facts.setups.word(Place("seam", place.name), "seam.support"), STEADY
        ),
        "topstitch": lambda: rows_told(place),
        "trim": lambda: ROUND_MOTIFS * any(is_lace(facts.entry(c)) for c in place.cloths),
        "seal": lambda: seal_words(place, ironed=ironed),
        "fell-hem": lambda: past_stay(op, place, facts.places, units),
        "set-lining": lambda: (
            past_stay(op, place, facts.places, units)
            or TEETH
            * (place.method.id == BY_HAND_SET and any(p.kind.id == "zip" for p in facts.places))
        ),
        "grade": lambda: CLIPPED.get(place.said("shape"), ""),
    }
    return words[op]() if op in words else ""


BY_HAND_SET = "hand-set-lining"
TEETH = ", clear of the teeth of a zip"
CLOSED_OVER = " (the last of them; the others were joined first), over the ends of {rows}"
ALL_BUT_ONE = " (first join and press all but one of {seams}, for it runs over them in one length)"


CUFF, FELLED_AT_A_CUFF = "cuff", "lining-felled-at-a-cuff"
PATCH, REINFORCED = "patch-pocket", " over a bit of tape or firm cloth behind it"
"""A pocket that is pulled at, and what keeps its corners from tearing out."""


def _over_seams(place: SeamPlace, facts: Facts) -> str:
    """What is joined before rows of ribbon go on that are longer than a piece."""
    if place.kind.id == PATCH and place.said("stress") == "high":
        return REINFORCED
    seams = seams_under(place, facts)
    return ALL_BUT_ONE.format(seams=listed([p.name for p in seams])) if seams else ""


BEHIND_ZIP = {
    "self-fabric strip": "of organza or of the selvedge on the straight grain",
    "stay tape": "or a stay tape",
}
STEADY = "of organza or of an interfacing that the cloth bears"
"""What holds the edges of an opening, by what the sheet advises."""


def _finish(finish: str) -> str:
    """A finish in words that say what is done where its name does not."""
    return f"{finish}, in a strip on the bias" if finish in STRIPPED else finish


def _interfacing(op: str, place: SeamPlace, facts: Facts) -> str:
    ruled_out = facts.setups.glues_left_out(place)
    if op == "interface" and ruled_out:  # nobody has settled what does instead
        return listed(sorted(ruled_out))
    bones = facts.setups.bones(place)
    names = [n for n in place.notions if n not in bones and facts.entry(n).kind in STIFFENS]
    names += supports(place, facts) if op != "fuse" else ()
    dwell = facts.setups.judged(Place("seam", place.name)).get(DWELL)
    if op != "fuse":
        return listed(names)
    time = fusing_time([facts.entry(name) for name in names], dwell)
    iron, beside = facts.setups.fuse_iron(place), facts.setups.fused_to(place)
    touched = [name for name in place.cloths if name in beside]
    onto = "".join(f" onto {n}" for n in fused_onto(touched, iron, facts.setups.bears_alone))
    return f"{listed(names)}{onto}" + (f", {time} in each spot without gliding" if time else "")


def _boned(op: str, place: SeamPlace, facts: Facts, *, ironed: bool) -> str:
    """How a seam is joined or pressed; bones go in only when both are done."""
    boned = bool(facts.setups.bones(place)) or filled_by_another(place, facts)
    if op == "join":
        by_hand = " by hand" if facts.setups.seam_machine(place) is None else ""
        if place.role.id in LAID_ON and place.said("edge") == "turned":
            by_hand += ", its edges turned under and pressed first"
        by_hand += eased_in(place, facts.garment)
        over = rows_over(place, facts)
        by_hand += CLOSED_OVER.format(rows=listed(over)) if over else ""
        return by_hand + (_channels(place, facts) if boned else "")
    steamed = facts.steamed(place)
    alone = " with steam held above it, no iron on it" if steamed else f" {BY_HAND}"
    fingers = "" if ironed else alone
    return fingers + (", no bones in it yet" if boned else "")


def _channels(place: SeamPlace, facts: Facts) -> str:
    """How the channels of bones are sewn: on a mounted cloth through that and no further."""
    empty = ", the channels left empty and one end open"
    return empty + (BEHIND if backed_with(place, facts.places) else "")


def _stay(place: SeamPlace, units: System) -> str:
    out = show("length", STAY_FROM_SEAM, units)
    length = show_range("stitch length", *STAY_MM, units)
    only = place.binds or place.kind.id == "waistband"
    where = "the edge of the garment only" if only else "each piece by itself"
    if place.role.id == SET_IN and place.kind.id == PLAIN:  # the head of a sleeve has to ease
        where = "the armhole and not the head of a sleeve"
    return f", {where}, {out} outside the seam line, straight stitches, {length}"


def _laid_along(place: SeamPlace, facts: Facts) -> str:
    """What is laid along a line that has to keep its length, where, and how long it is cut."""
    strip = STRIPS[facts.setups.word(Place("seam", place.name), "seam.support")]
    along = f"{strip} along the seam line of {place.name}, "
    if not strapless(place.seam, facts.garment):
        return along + ON_ONE_EDGE.format(edge=_giving_edge(place, facts))
    less = show_range("length", *EASED_OFF_MM, facts.garment.units)
    return along + ON_STRAPLESS.format(less=less)


def _giving_edge(place: SeamPlace, facts: Facts) -> str:
    """Which edge of a seam a stay is laid along, where only one of them gives: that of the knit."""
    knits = [n for n in dict.fromkeys(place.cloths) if facts.entry(n).structure == "knit"]
    return f", that of {knits[0]}" if len(knits) == 1 and knits != list(set(place.cloths)) else ""
