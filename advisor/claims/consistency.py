"""Lets answers of one seam agree that were picked one by one.

Every verdict is right by itself, yet two picks may not go together: an edge enclosed in a seam
that encloses nothing, the seconds of a glue that the cloths rule out, or how an iron moves where
none may be used. What one answer makes idle is said no more; no clash is made or unmade here.
"""

from __future__ import annotations

from typing import Final

from msgspec.structs import replace

from advisor.claims.alike import finish_alike
from advisor.claims.athand import at_hand
from advisor.claims.collect import Place
from advisor.claims.combine import (
    HERE,
    Verdict,
    decide,
    narrowed,
    picking,
    picking_number,
)
from advisor.claims.glued import GLUES
from advisor.claims.hovered import (
    STEAMY,
    for_some,
    gets_no_steam,
    nothing_between,
    steamed_all_the_same,
    unmarked,
)
from advisor.claims.idleglue import fused_here, idle_glue
from advisor.claims.laidalong import stay_bears
from advisor.claims.speakers import OVERLOCKS, Said, is_heat_need
from advisor.claims.steaming import HOVER
from advisor.claims.valuesets import Choice, Span
from advisor.craft.irondial import starts_too_cool, steam_possible
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Claim, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.project.lacewords import LACE
from advisor.project.placing import LAID
from advisor.project.zipping import ZIP

KIND, FINISH, STITCH, DWELL = "seam.kind", "seam.finish", "stitch.type", "press.dwell"
MOTION, MOISTURE = "press.motion", "press.moisture"
PINS, FOOT = "pin.kind", "machine.foot"
HEM: Final = "hem.kind"
LENGTH: Final = "stitch.length"
ALLOWANCE: Final = "seam.allowance"
STEAM: Final = HOVER
NARROW: Final = "straight-stitch"
SWINGING: Final = frozenset({"304", "308"})
FINGERS: Final = "finger-press"
UNRESTED: Final = frozenset({FINGERS, STEAM})
"""How a place is pressed with no iron set down."""
DAMP: Final = 1.0
DRIPS: Final = ("iso-3758-2012", "or-4h-320-14")
OVERLOCKED: Final = "overlocked"
ENCLOSED: Final = "enclosed in the seam"
ENCLOSING: Final = frozenset({"French", "mock French", "felled", "self-bound"})
"""Kinds of seam that shut in their own edges."""
TWIN: Final = "twin-needle"
DOUBLE: Final = "double-stitched"
BESIDES: Final = frozenset(
    {"bound", "Hong Kong", "overlocked", "zigzag", "turned and stitched", "hand overcast"}
)
"""Finishes that have no edge left to neaten once a second row is stitched and trimmed to."""
UNPINNED: Final = frozenset({"hand basting", "sewing clips"})
BY_MACHINE: Final = frozenset(
    {"overlocked", "zigzag", "turned and stitched", "trimmed and double-stitched"}
)


def agree(
    garment: Garment, verdicts: dict[Place, dict[str, Verdict]], knowledge: Knowledge
) -> None:
    """Bring the picks of every seam into line."""
    zips = {seam.name for seam in garment.seams if seam.place == ZIP}
    apart = {seam.name: seam.apart for seam in garment.seams}
    kinds = {name: knowledge.entries[cloth.entry].kind for name, cloth in garment.cloths.items()}
    glues = frozenset(name for name, kind in kinds.items() if kind in GLUES)
    covered = {seam.name for seam in garment.seams if _cut_edge_laid_on(seam, garment, knowledge)}
    for place, by_aspect in verdicts.items():
        stay_bears(place, by_aspect, knowledge)
        fused = fused_here(by_aspect, glues)
        _no_iron(by_aspect)
        _iron_moves(by_aspect)
        _below_steam(by_aspect, place.scope)
        _too_cool_for_steam(by_aspect)
        _left_to_fingers(by_aspect, fused)
        nothing_between(by_aspect)
        if place.scope == "seam":
            _by_hand(by_aspect)
            _two_needles(by_aspect)
            _faced_hem(by_aspect)
            _no_row_after_the_knife(by_aspect)
            _in_one_pass(by_aspect)
            _room_to_swing(by_aspect)
            _edges(by_aspect)
            _clear_of_the_knife(by_aspect)
            at_hand(by_aspect, garment.plan.kit.pins)
            _no_pins(by_aspect)
            if place.name in covered:
                _covering_zigzag(by_aspect)
            if place.name in zips:
                _beside_a_zip(by_aspect)
            idle_glue(garment, apart[place.name], by_aspect, knowledge)
    finish_alike(garment, verdicts, knowledge.entries)


def _no_iron(by_aspect: dict[str, Verdict]) -> None:
    """Where no iron is used, fingers are left, and steam where every layer bears it."""
    heat, motion, moist = (by_aspect.get(name) for name in (LIMIT_ASPECT, MOTION, MOISTURE))
    if heat is None or motion is None or motion.clash or not unmarked(heat):
        return
    left = ["finger-press"] if moist and gets_no_steam(moist) else ["finger-press", STEAM]
    # How an iron would have to move is nobody's wish where there is none.
    words = motion.aspect.words
    moves = sum(1 << at for at, word in enumerate(words) if word not in UNRESTED)
    idle = {
        s
        for s in (*motion.because, *motion.given_up)
        if s.claim.strength != "must" and s.claim.mask & moves
    }
    kept = replace(
        motion,
        because=tuple(s for s in motion.because if s not in idle),
        given_up=tuple(s for s in motion.given_up if s not in idle),
    )
    by_aspect[MOTION] = narrowed(kept, left, "No iron is used here.")


def _iron_moves(by_aspect: dict[str, Verdict]) -> None:
    """Where an iron is used it moves as an iron does: a place is not finger-pressed as well."""
    heat, motion = by_aspect.get(LIMIT_ASPECT), by_aspect.get(MOTION)
    if heat is None or motion is None or motion.clash or unmarked(heat):
        return
    if _word(motion) != FINGERS:
        return
    others = [word for word in _options(motion) if word not in UNRESTED]
    if others:
        why = "The iron may be used here, so it is not pressed by fingers alone."
        option = motion.aspect.words.index(others[0])
        by_aspect[MOTION] = picking(motion, option, why)


def _left_to_fingers(by_aspect: dict[str, Verdict], glues: frozenset[str]) -> None:
    """Where no way is left to move an iron, and no steam, none is set: fingers press it.

    A cloth that needs the iron gets it before, by itself; a glue gets it here or does not hold.
    """
    heat, motion = by_aspect.get(LIMIT_ASPECT), by_aspect.get(MOTION)
    if heat is None or motion is None or motion.clash or unmarked(heat):
        return
    heard = [*heat.because, *heat.given_up]
    needs = [s for s in heat.because if s.claim.strength == "must" and is_heat_need(s.claim)]
    if any(s.cloths <= glues for s in needs) or _word(motion) != FINGERS:
        return
    if set(_options(motion)) - UNRESTED:
        return
    why = "It may not be rested on and gets no steam, so fingers press it."
    about = (LIMIT_ASPECT, (COLD, COLD), 0, None, "should", "damage", why, ("derived",))
    claim = Claim(*about, 0, "this garment", ends=("seam", "seam"))
    rests = sum(1 << at for at, word in enumerate(motion.aspect.words) if word not in UNRESTED)
    barred = {name for s in motion.because if not s.claim.mask & rests for name in s.cloths}
    own = [s for s in heard if s.cloths & barred and is_heat_need(s.claim)]
    heard = [s for s in heard if s not in needs and s not in own]
    cold = decide(heat.aspect, [*heard, Said(HERE, claim)], together=True)
    by_aspect[LIMIT_ASPECT] = replace(cold, given_up=(*needs, *cold.given_up))


def _below_steam(by_aspect: dict[str, Verdict], scope: str) -> None:
    """Steam is held above a place that may have steam, and above no other."""
    motion, moist = by_aspect.get(MOTION), by_aspect.get(MOISTURE)
    if motion is None or moist is None or motion.clash or _word(motion) != STEAM:
        return
    if scope == "seam" and not set(_options(motion)) - UNRESTED:
        moist = steamed_all_the_same(moist, motion)
    left = [word for word in motion.aspect.words if word != STEAM]
    drier = gets_no_steam(moist)
    if not drier and not (for_some(by_aspect) and set(_options(motion)) - UNRESTED):
        by_aspect[MOISTURE] = picking_number(
            moist, STEAMY, "Steam held above it is what presses it."
        )
        return
    why = "It gets no steam here." if drier else "Not all that lies here is to be steamed."
    by_aspect[MOTION] = narrowed(motion, left, why)


def _too_cool_for_steam(by_aspect: dict[str, Verdict]) -> None:
    """An iron at one dot drips, also where it only starts there: moisture is of a damp cloth."""
    heat, moist, motion = (by_aspect.get(name) for name in (LIMIT_ASPECT, MOISTURE, MOTION))
    if heat is None or moist is None or moist.clash or (motion and _word(motion) == STEAM):
        return
    span = heat.advised
    if not isinstance(span, Span) or span.is_empty or gets_no_steam(moist):
        return
    cool = heat.pick is not None and starts_too_cool(heat.pick)
    if steam_possible(span.high) and not cool:
        return
    why = "An iron set no hotter than this gives no proper steam and drips."
    about = (MOISTURE, (0.0, DAMP), 0, None, "should", "damage", why, DRIPS)
    claim = Claim(*about, 0, "this garment", ends=("seam", "seam"))
    heard = [*moist.because, *moist.given_up, Said(HERE, claim)]
    by_aspect[MOISTURE] = decide(moist.aspect, heard, together=True)


def _clear_of_the_knife(by_aspect: dict[str, Verdict]) -> None:
    """What an overlocker sews is clipped or basted where its cloths bear that."""
    kind, stitch = by_aspect.get(PINS), by_aspect.get(STITCH)
    if kind is None or stitch is None or kind.clash or _word(stitch) not in OVERLOCKS:
        return
    able = [word for word in _options(kind) if word in UNPINNED]
    if able and _word(kind) not in UNPINNED:
        why = "The knife of the overlocker breaks a pin in the allowance."
        by_aspect[PINS] = picking(kind, kind.aspect.words.index(able[0]), why)


def _no_pins(by_aspect: dict[str, Verdict]) -> None:
    """What is basted or clipped is not pinned, so nobody says how a pin goes in."""
    kind = by_aspect.get(PINS)
    if kind is not None and _word(kind) in UNPINNED:
        by_aspect.pop("pin.insertion", None)


def _by_hand(by_aspect: dict[str, Verdict]) -> None:
    """Where nothing but the hand may sew, the machine is not set and neats no edge."""
    stitch, finish = by_aspect.get(STITCH), by_aspect.get(FINISH)
    if stitch is None or _options(stitch) != ["hand"]:
        return
    for aspect, verdict in list(by_aspect.items()):
        if verdict.aspect.asked_of == "machine" and aspect != STITCH:
            del by_aspect[aspect]
    if finish is not None and not finish.clash:
        left = [w for w in finish.aspect.words if w not in BY_MACHINE]
        by_aspect[FINISH] = narrowed(finish, left, "This place is sewn by hand.")


def _two_needles(by_aspect: dict[str, Verdict]) -> None:
    """A twin needle sews straight: swung as wide as one, two would strike foot and plate."""
    hem, stitch = by_aspect.get(HEM), by_aspect.get(STITCH)
    if hem is None or stitch is None or _word(hem) != TWIN or stitch.clash:
        return
    why = "A twin needle sews straight rows, and the zigzag of its bobbin thread gives."
    by_aspect[STITCH] = narrowed(stitch, ["301"], why)


def _cut_edge_laid_on(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a cloth is laid on with its edge cut, which a zigzag covers; a lace has motifs."""
    entries = (knowledge.entries[garment.cloths[name].entry] for name in seam.cloths())
    lace = any(entry.traits.get("openwork", (0, 0))[0] >= LACE for entry in entries)
    return seam.place == LAID and seam.facts.get("edge") != "turned" and not lace


def _covering_zigzag(by_aspect: dict[str, Verdict]) -> None:
    """A zigzag that covers a cut edge is as close as satin stitch, whatever a seam would have."""
    stitch, length = by_aspect.get(STITCH), by_aspect.get(LENGTH)
    if stitch is None or length is None or _word(stitch) not in SWINGING:
        return
    if any(s.claim.origin == "maker" for s in length.because):
        return
    why = "The zigzag covers the cut edge, so its stitches lie side by side."
    about = (LENGTH, SATIN_MM, 0, CLOSE_MM, "should", "result", why, ("common-practice",))
    claim = Claim(*about, 0, "this garment", ends=("seam", "seam"))
    by_aspect[LENGTH] = decide(length.aspect, [Said(HERE, claim)])


SATIN_MM, CLOSE_MM = (0.3, 0.5), 0.4
"""How long the stitches are that cover an edge, mm (common practice)."""
FACED_MM: Final = (10.0, 15.0)
"""What is allowed where a facing is sewn to the edge of a hem, mm (common practice)."""


def _faced_hem(by_aspect: dict[str, Verdict]) -> None:
    """A facing is sewn to the edge with a seam's allowance: no depth of a hem is turned up."""
    hem, room = by_aspect.get(HEM), by_aspect.get(ALLOWANCE)
    if hem is None or room is None or _word(hem) != "faced":
        return
    if any(s.claim.origin == "maker" for s in room.because):
        return
    why = "The facing is sewn to the edge, so no depth of hem is allowed."
    about = (ALLOWANCE, FACED_MM, 0, FACED_MM[1], "should", "result", why, ("common-practice",))
    claim = Claim(*about, 0, "this garment", ends=("seam", "seam"))
    by_aspect[ALLOWANCE] = decide(room.aspect, [Said(HERE, claim)])


def _no_row_after_the_knife(by_aspect: dict[str, Verdict]) -> None:
    """The knife of an overlocker leaves no allowance for a second row, nor anything to trim."""
    kind, stitch, finish = (by_aspect.get(aspect) for aspect in (KIND, STITCH, FINISH))
    if kind is None or stitch is None or _word(kind) != DOUBLE or _word(stitch) not in OVERLOCKS:
        return
    if OVERLOCKED not in _options(kind):
        rest = [word for word in _options(stitch) if word not in OVERLOCKS]
        if rest:
            by_aspect[STITCH] = narrowed(stitch, rest, "Two rows need an allowance left whole.")
        return
    why = "Its stitch cuts both edges and neatens them in the run that joins them."
    by_aspect[KIND] = picking(kind, kind.aspect.words.index(OVERLOCKED), why)
    if finish is not None and OVERLOCKED in _options(finish):
        by_aspect[FINISH] = picking(finish, finish.aspect.words.index(OVERLOCKED), why)


def _in_one_pass(by_aspect: dict[str, Verdict]) -> None:
    """What is sewn and neatened in one pass is sewn by an overlock stitch, else it is plain."""
    kind, stitch = by_aspect.get(KIND), by_aspect.get(STITCH)
    if kind is None or stitch is None or _word(kind) != OVERLOCKED or stitch.pick is None:
        return
    if _word(stitch) in OVERLOCKS:
        return
    able = [word for word in _options(stitch) if word in OVERLOCKS]
    if able:
        why = "It sews the seam and neatens its edges in one pass."
        by_aspect[STITCH] = picking(stitch, stitch.aspect.words.index(able[0]), why)
    else:
        left = [word for word in kind.aspect.words if word != OVERLOCKED]
        why = "Nothing that overlocks is to sew it, so it is joined first and neatened apart."
        by_aspect[KIND] = narrowed(kind, left, why)


def _room_to_swing(by_aspect: dict[str, Verdict]) -> None:
    """A needle that swings strikes the narrow foot: another is set, or the seam sewn straight."""
    foot, stitch = by_aspect.get(FOOT), by_aspect.get(STITCH)
    if foot is None or stitch is None or _word(stitch) not in SWINGING:
        return
    wide = [word for word in _options(foot) if word != NARROW]
    others = wide or [word for word in foot.aspect.words if word != NARROW]
    by_aspect[FOOT] = moved = narrowed(foot, others, "The needle swings here and would strike it.")
    if _word(moved) == NARROW:
        straight = [word for word in _options(stitch) if word not in SWINGING]
        by_aspect[STITCH] = narrowed(stitch, straight, "No other foot is left, so nothing swings.")


def _edges(by_aspect: dict[str, Verdict]) -> None:
    """An edge is enclosed in a seam that encloses it, and in no other."""
    kind, finish = by_aspect.get(KIND), by_aspect.get(FINISH)
    if kind is None or finish is None or kind.pick is None or finish.pick is None:
        return
    pairs = [
        *((_word(kind), f) for f in _options(finish)),
        *((k, _word(finish)) for k in _options(kind)),
        *((k, f) for k in _options(kind) for f in _options(finish)),
    ]
    words = next((pair for pair in pairs if _fit(*pair)), None)
    if words is None:
        _forced(by_aspect, kind, finish)
        return
    for verdict, word in zip((kind, finish), words, strict=True):
        if word != _word(verdict):
            other = words[0] if verdict is finish else words[1]
            why = f"It goes with the {'seam' if verdict is finish else 'edge'}: {other}."
            option = verdict.aspect.words.index(word)
            by_aspect[verdict.aspect.id] = picking(verdict, option, why)


def _beside_a_zip(by_aspect: dict[str, Verdict]) -> None:
    """No seam encloses the edges beside a zip: each is neatened by itself."""
    finish = by_aspect.get(FINISH)
    if finish is not None and not finish.clash and _word(finish) == ENCLOSED:
        left = [word for word in finish.aspect.words if word != ENCLOSED]
        by_aspect[FINISH] = narrowed(finish, left, "Beside a zip nothing encloses an edge.")


def _forced(by_aspect: dict[str, Verdict], kind: Verdict, finish: Verdict) -> None:
    """No wishes go together: the edge follows the seam, or the seam the edge if that may not."""
    left = [f for f in finish.aspect.words if _fit(_word(kind), f)]
    moved = narrowed(finish, left, f"The edges of a {_word(kind)} seam lie so.")
    if _fit(_word(kind), _word(moved)):
        by_aspect[FINISH] = moved
        return
    kinds = [k for k in kind.aspect.words if _fit(k, _word(finish))]
    by_aspect[KIND] = narrowed(kind, kinds, "The edges here may not lie shut in.")


def _fit(kind: str, finish: str) -> bool:
    """Whether a finish goes with a kind of seam; a second row trimmed close is a finish itself."""
    if (kind in ENCLOSING) != (finish == ENCLOSED):
        return False
    return kind != DOUBLE or finish not in BESIDES


def _word(verdict: Verdict) -> str:
    return "" if verdict.pick is None else verdict.aspect.words[int(verdict.pick)]


def _options(verdict: Verdict) -> list[str]:
    """The words that are advised: the pick first, and what taste is against last."""
    if not isinstance(verdict.advised, Choice):
        return []
    tastes = [s.claim.mask for s in verdict.because if s.claim.strength == "may"]
    wide = [mask for mask in tastes if mask & (mask - 1)]  # one option alone is a pick, no taste
    words = verdict.aspect.words
    ordered = sorted(
        verdict.advised.options(),
        key=lambda i: (words[i] != _word(verdict), not all(mask >> i & 1 for mask in wide)),
    )
    return [words[i] for i in ordered]
