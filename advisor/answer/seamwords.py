"""Sentences about how a seam is built and what to buy, in the maker's units."""

from __future__ import annotations

from advisor.answer.stiffwords import stiff_says
from advisor.construction.bands import UNDERLAP, Band
from advisor.construction.holding import Holding
from advisor.construction.needlestack import ALONG
from advisor.construction.seamwork import (
    CONFLICT,
    FINE,
    UNKNOWN,
    WARNING,
    SeamWork,
)
from advisor.construction.stack import counted
from advisor.craft.shrinkage import TOLERATED
from advisor.units import System, show, show_range, show_size
from advisor.units.factors import MM_PER_INCH, PULL

_FINISHES = {
    "French": "a French seam",
    "mock French": "a mock French seam",
    "felled": "a felled seam",
    "self-bound": "a self-bound seam",
    "double-stitched": "a double-stitched seam",
    "overlocked": "overlocking",
    "pinked": "pinking",
    "none": "a raw edge",
    "trimmed and double-stitched": "double-stitching",
    "bound": "binding",
    "enclosed in the seam": "enclosing the edges",
    "hand overcast": "overcasting",
    "turned and stitched": "turning and stitching",
    "edge sealant": "sealing",
    "Hong Kong": "binding each edge",
}


LEAST_ROLL = 1.0
"""A layer that is longer by less is not told to be, mm."""
LEAST_PARTING = 0.5
"""Edges that part by less are not told to do so, mm."""
SLIP_ALLOWANCE = 15.0
"""What a cloth whose yarns slip wants at least, mm (`memory`)."""
NARROW = frozenset({"placket", "belt-loop", "ties"})
"""Kinds of place too narrow for such an allowance."""


def bulk_clause(work: SeamWork, units: System) -> str:
    """Plies, thickness, and how it goes under the foot."""
    spot = work.spot
    if spot is None:
        return "thickness not known: measure a scrap"
    at = "" if spot.name == "at the stitch line" else f" {spot.name}"
    least = "" if spot.complete else "at least "
    text = f"{counted(spot.plies)}{at}, {least}{thin(spot.lies_mm, units)}"
    if work.no_foot:
        return text
    foot = thin(spot.foot_mm, units).split()[0]
    word = _ROOM[work.room]
    if work.squeeze and work.room == FINE:
        word = "goes in pressed down"
    return f"{text} high, {foot} under the foot: {word}"


def thin(value: float, units: System) -> str:
    """A thickness to a tenth of a millimetre, or to a hundredth of an inch."""
    text = f"{max(value, 0.1):.1f}".removesuffix(".0")
    return f"{text} mm" if units == "metric" else f"{value / MM_PER_INCH:.2f} in"


_TRY_STRENGTH = {
    True: "This place is pulled hard: pull a sewn scrap until you trust it, or sew a second row.",
    False: "Pull a sewn scrap across the seam before you rely on it.",
}

_ROOM = {
    FINE: "fine",
    WARNING: "a lot for this machine",
    CONFLICT: "too thick",
    UNKNOWN: "not all of it known",
}


def seam_says(work: SeamWork, units: System) -> list[str]:
    """What is to be minded in building a seam, worst first."""
    return [
        *_room_says(work, units),
        *_needle_says(work),
        *filter(None, [band_says(work, units)]),
        *_finish_says(work, units),
        *_strength_says(work, units),
        *_flatten_says(work),
        *(work.full.says if work.full else ()),
        *full_says(work, units),
        *_trim_says(work, units),
        *_parting_says(work, units),
        *_lining_says(work, units),
        *stiff_says(work, units),
    ]


def warnings(work: SeamWork, units: System) -> list[str]:
    """What goes against the plan: bulk, short allowance, weak seam."""
    full = work.full.says if work.full else ()
    return [
        *_needle_says(work),
        *_room_says(work, units),
        *_finish_says(work, units, warn=True),
        *_strength_says(work, units, warn=True),
        *full,
        *_parting_says(work, units, warn=True),
    ]


def _room_says(work: SeamWork, units: System) -> list[str]:
    says = [
        f"{name} would be denser than its fibre: measure its weight and thickness again."
        for name in work.too_dense
    ]
    if work.room == WARNING and work.spot:
        says.append(
            "More than half of the foot lift: level the foot behind the step, lengthen the "
            "stitch, and turn the hand wheel over the thickest place."
        )
    if work.squeeze and work.spot and work.lift:
        foot = "foot of the overlocker" if work.overlocked else "foot"
        high = f"It lies {thin(work.spot.lies_mm, units)} high and the {foot} lifts "
        high += f"{show('length', work.lift, units)}"
        if work.placing is not None and work.spot.lies_mm > work.placing:
            says.append(
                f"{high}: thin the allowances, pile or wadding first, and baste the "
                "stack flat by hand before it goes in."
            )
        else:
            says.append(f"{high}: press it flat by hand as it goes in, or hold the lever up.")
    return says


def _needle_says(work: SeamWork) -> list[str]:
    """A needle that the cloths keep finer than the stack wants: it may break."""
    if work.fine_needle is None or work.spot is None:
        return []
    pick, wants, borne = work.fine_needle
    held = f"the cloths want no needle above {pick:g}, and so many plies may bend and break one"
    only = f"the seam takes {pick:g}; so many plies may break one"
    whole = work.spot.name in ALONG
    there = f"; {wants:g} there alone, if borne" if borne and not whole else ""
    wheel = "Eye: over the thickest place turn the hand wheel, with glasses on: "
    return [f"{wheel}{held if whole else only} below {wants:g} (estimate){there}."]


def _flatten_says(work: SeamWork) -> list[str]:
    """Where the stack is high, gathers and allowances lie flatter once they are overlocked."""
    if work.no_foot or not work.overlocker or work.spot is None or work.lift is None:
        return []
    if not work.squeeze and work.room not in (WARNING, CONFLICT):
        return []
    full = work.full is not None and work.full.ratio > 1
    edge = "the gathered edge by itself" if full else "each edge by itself"
    return [f"Overlock {edge} before you join it: the allowance lies flatter and feeds better."]


def band_says(work: SeamWork, units: System) -> str:
    """How long a band or an elastic is cut that is stretched to its edge; "" where none is."""
    return " ".join(_band_says(band, units) for band in work.bands)


def _band_says(band: Band, units: System) -> str:
    long = show("length", band.length, units)
    if band.laps:
        lap = show_range("length", *UNDERLAP, units)
        more = f"{lap} more for the end that lies under, with an allowance at each end"
        return f"Cut the band {long} long and {more}."
    if band.ends is not None:
        more = show_size(band.ends, units)
        half = ", round half of the body that is said," if band.half else ""
        if band.round_ is not None:
            body, flat = (show("length", each, units) for each in band.round_)
            half = f", for what is left of {body} beside the {flat} that stay flat,"
        return f"Cut {band.cloth} {long} long{half} and {more} more for its ends; try it on first."
    ends = "with an allowance at each end"
    if band.pieces > 1:
        each = show("length", band.length / band.pieces, units)
        ends = f"as {band.pieces} pieces of {each}, {ends} of each"
    return f"Cut {band.cloth} {long} long, {ends}."


def _finish_says(work: SeamWork, units: System, *, warn: bool = False) -> list[str]:
    found = work.finishing
    if found is None:
        return []
    says = []
    name = _FINISHES.get(found.finish, f"a {found.finish} finish")
    if found.short > 0:
        need = show("length", found.needs, units)
        if found.own:
            other = f"; {' or '.join(found.instead)} has room" if found.instead else ""
            says.append(
                f"Your allowance of {show('length', found.allowance, units)} is short: "
                f"{name} wants {need}{other}."
            )
            if found.narrower is not None:
                first, second = (show("length", row, units) for row in found.narrower)
                says.append(
                    f"A narrow French seam has room: first row at {first}, second at {second}."
                )
        else:
            says.append(f"Cut {need} of allowance: {name} wants it.")
    if not found.curves:
        other = f": {' or '.join(found.instead)} does" if found.instead else ""
        says.append(f"{name.capitalize()} does not lie well on a curve{other}.")
    if found.when and not warn and found.when != "in the seam itself":
        says.append(f"Finish the edges {found.when}.")
    return says


def _strength_says(work: SeamWork, units: System, *, warn: bool = False) -> list[str]:
    held, (share, unit) = work.holding, PULL[units]
    pulled = work.seam.facts.get("stress") == "high"
    says = []
    if held.enough is False and held.has is not None:
        fix = "let tape or a stay take the pull"
        fix = f"a stronger thread, or {fix}" if held.thicker else fix
        if held.by_cloth:
            fix = "the cloth itself holds no more, so let tape, a stay or a lining take the pull"
        elif held.shorten_to is not None:
            fix = f"shorten the stitch to {show('stitch length', held.shorten_to, units)}, or {fix}"
        says.append(
            f"It holds {_most(held)} {held.has * share:.0f} {unit} and this place asks for about "
            f"{held.needs * share:.0f}: {fix}."
        )
    elif held.has is not None and not warn:
        says.append(
            f"It holds {_most(held)} {held.has * share:.0f} {unit}; the place asks for about "
            f"{held.needs * share:.0f}."
        )
    elif held.has is None and held.why_not and (pulled or not warn):
        says.append(f"Strength not known ({held.why_not}). {_TRY_STRENGTH[pulled]}")
    short = work.finishing is None or work.finishing.allowance < SLIP_ALLOWANCE
    strained = work.seam.facts.get("stress") == "high" and work.seam.place not in NARROW
    if held.slips and strained and (short or not warn):
        names = " and ".join(held.slips)
        says.append(
            f"The yarns of {names} part from the stitches: keep "
            f"{show('length', 15, units)} of allowance, and stay the seam."
        )
    return says


def _parting_says(work: SeamWork, units: System, *, warn: bool = False) -> list[str]:
    """What the cloths part by in the first wash; a warning where the sheet leaves it so."""
    found = work.parting
    still = found is not None and found.still > TOLERATED
    if found is None or (warn and not still):
        return []
    ways = ((found.along, "with the grain"), (found.across, "across it"))
    both = [f"{show('length', v, units)} {way}" for v, way in ways if v >= LEAST_PARTING]
    usual = "" if found.said else ", as such cloths usually shrink"
    far = f"; up to {_percent(TOLERATED)} is called normal" if found.share > TOLERATED else ""
    text = (
        f"Washed unshrunk, {found.more} ends {' or '.join(both)} shorter here than {found.less} "
        f"({_percent(found.share)} apart{usual}{far})"
    )
    if still:
        return [f"{text}: wash a square of each, measure, and shrink both before you cut."]
    return [f"{text}: prepare both as the sheet says."] if both else []


def _percent(share: float) -> str:
    return f"{share * 100:.2g} %"


def _lining_says(work: SeamWork, units: System) -> list[str]:
    """What a lining is cut longer by than its shell."""
    ease = work.lining
    if ease is None:
        return []
    fold = show("length", ease.fold, units)
    text = f"Cut the lining {fold} longer than the shell is finished, for a fold of ease at the hem"
    if ease.more >= 1:
        text += f", and {show('length', ease.more, units)} more, because it shrinks more"
    return [f"{text}."]


def _most(held: Holding) -> str:
    return "at the very most" if held.by_cloth else "about"


def full_says(work: SeamWork, units: System) -> list[str]:
    """How long a full edge is cut; nothing where no length is said."""
    full = work.full
    if full is None or full.cut is None or full.finished is None:
        return []
    wide, edge = show_size(full.cut, units), show_size(full.finished, units)
    how = f"{full.ratio:.3g} to 1, by {full.method.replace('hand rows', 'long rows')}"
    if full.pitch is not None:
        how += f", {show('length', full.pitch, units)} from pleat to pleat"
    if full.layers > 1:
        all_of_it = show_size(full.cut * full.layers, units)
        how += f", {full.layers} layers, so {all_of_it} together"
    return [f"Cut {full.cloth} {wide} long for {edge}, {how}; its own joins and ends come on top."]


def _trim_says(work: SeamWork, units: System) -> list[str]:
    trim = work.trimming
    says = []
    if trim.grade:
        widths = ", ".join(show("length", w, units) for w in trim.grade)
        says.append(f"Grade the allowances, the one next to the outside widest: {widths}.")
    if trim.clips:
        low, high, most = trim.clips
        says.append(
            f"Clip an inward curve or notch an outward one every "
            f"{show_range('length', low, high, units)}, at most {most} times."
        )
    if trim.understitch and trim.favour:
        over = show_range("length", *trim.favour, units)
        row = show_range("length", *trim.understitch, units)
        says.append(f"Roll the outside over by {over}, and understitch {row} from the seam.")
    if trim.through and trim.through[0][1] >= LEAST_ROLL:
        rolled = [f"{name} {show('length', more, units)}" for name, more in trim.through]
        says.append(
            f"Through the stack: cut {' and '.join(rolled)} longer across the roll than the layer "
            "that lies inside, and prove it over the hand before you trim."
        )
    elif trim.turn and trim.turn >= 1.0:
        says.append(f"The fold takes {show('length', trim.turn, units)} more of the outer layer.")
    return says


def reels_text(reels: tuple[tuple[int, float], ...], cones: int, units: System) -> str:
    """What thread to buy; a reel says its metres also where yards are sold."""
    yards = {size: f"{size / 0.9144:.0f} yd ({size:g} m)" for _, size in reels}
    holds = yards if units == "us" else {size: f"{size:g} m" for _, size in reels}
    parts = [f"{n} reel{'s' if n > 1 else ''} of {holds[size]}" for n, size in reels]
    if cones:
        parts.append(f"{cones} cones for the overlocker")
    return ", ".join(parts)
