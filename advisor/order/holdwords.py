"""How layers are held that keep each hole: by clips, tape or glue, and never by pins or basting."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Final

from advisor.claims.collect import Place
from advisor.claims.valuesets import Choice
from advisor.claims.workarounds import INTERFACING
from advisor.order.ascut import NO_YARNS, holed_for_good

if TYPE_CHECKING:
    from collections.abc import Sequence

    from advisor.knowledge.ordering import Operation
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace

BASTING: Final = re.compile(r"(?<!no )\b([Bb])ast(e|ed|ing)\b")
IN_PLACE: Final = {"Baste": "Tape", "baste": "tape", "basted": "taped", "basting": "tape"}
BOUND: Final = "bound-edge"
STAYS_A_SLIT: Final = "stay the slit of"
SHUT_IN: Final = "; baste it between the two rows alone, for every other hole leaks"
PRESSED_OVER: Final = "press it open"
"""What no iron does over a tape."""
OPENED: Final = "finger-press it open"
ALONE: Final = (
    "Hold {how} on its piece for {name} by clips, or a touch of glue in the allowance: no needle "
    "goes through it twice."
)


def without_holes(text: str) -> str:
    """A step that bastes or takes a basting out, told for what no needle goes through twice."""
    told = BASTING.sub(lambda word: IN_PLACE[word[0]], text)
    return told.replace(PRESSED_OVER, OPENED) if told != text else text


def is_clipped(place: SeamPlace, facts: Facts) -> bool:
    """Whether it is held by clips for the fitting: each hole would stay, or leak."""
    return holed_for_good(place, facts) or any(map(facts.proofed, place.cloths))


def between_the_rows(op: Operation, place: SeamPlace, facts: Facts) -> str:
    """Where what stays a slit is basted on a cloth that leaks: there it is cut away or shut in."""
    slit = op.verb == STAYS_A_SLIT and any(map(facts.proofed, place.lies_on))
    return SHUT_IN if slit else ""


def taken_off(places: Sequence[SeamPlace], facts: Facts) -> str:
    """How what was held for the fitting is opened again: a basting, or clips."""
    clipped = all(is_clipped(place, facts) for place in places)
    names = [place.name for place in places]
    listed = " and ".join([", ".join(names[:-1]), names[-1]] if names[1:] else names)
    return f"take the clips off {listed}" if clipped else f"open the basting of {listed}"


def skins_alone(place: SeamPlace, facts: Facts) -> bool:
    """Whether what stiffens has no piece of cloth beside it that it could be basted to."""
    return all(facts.entry(name).structure in NO_YARNS for name in place.cloths)


def clear_of_skins(place: SeamPlace, facts: Facts) -> str:
    """Which piece of a place what stiffens is basted to where another one keeps every hole."""
    strip = facts.setups.strips(place) if place.kind.id == BOUND else frozenset()
    skins = [name for name in place.cloths if facts.entry(name).structure in NO_YARNS]
    others = [name for name in place.cloths if name not in skins]
    skins = [name for name in skins if name not in strip]  # that is no piece which is backed
    told = " and ".join(dict.fromkeys(skins))
    return f", on {others[-1]}: no needle through {told}" if skins and others else ""


def left_as_cut(place: SeamPlace, facts: Facts) -> str:
    """Which layer of an edge that is neatened has no yarns, and is left as it was cut."""
    skins = [name for name in place.cloths if facts.entry(name).structure in NO_YARNS]
    told = " and ".join(dict.fromkeys(skins))
    return f", {told} left as it is cut" if skins and not skins_alone(place, facts) else ""


def instead(place: SeamPlace, facts: Facts) -> str:
    """What comes in place of a glue that is ruled out: what the check tells first, or the sheet."""
    advice, remedies = facts.setups.advice, {r.id: r for r in facts.knowledge.remedies}
    clashes = (c.key for c in advice.judgement.conflicts if place.name in c.places)
    cures = (remedies[cures[0].remedy] for key in clashes if (cures := advice.cures.get(key)))
    told = next((str(kind) for cure in cures if (kind := cure.change.get("kind"))), "")
    kinds = facts.setups.judged(Place("seam", place.name)).get(INTERFACING)
    if told or kinds is None or not isinstance(kinds.advised, Choice) or kinds.advised.is_empty:
        return told or "what the sheet names"
    return " or ".join(kinds.aspect.words[i] for i in kinds.advised.options())
