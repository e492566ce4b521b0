"""How a machine is set where its needle does more than go straight down through one hole.

A zigzag, a buttonhole and a twin needle all strike the foot and the plate that are made for a
straight stitch, as a needle for thick thread may, so each is a set-up of its own and told as one.
"""

from __future__ import annotations

import re
from dataclasses import replace

from advisor.claims.consistency import SWINGING
from advisor.order.kinds import SeamPlace
from advisor.order.setups import Setups
from advisor.order.steps import MachineState

STRAIGHT = "301"
TWIN = "stretch twin"
"""The point of the needle that hems a knit in two rows: `assoc-twin-knit`."""
BUTTONHOLE = "buttonhole"
THICK_NEEDLE = 100
"""The smallest needle, NM, whose eye takes a topstitching thread well: `trade-needle-sizing`."""
TO_MATCH = " to match "
ZIGZAGS, EDGE = re.compile(r"(?<!the )\b[Zz]igzag"), re.compile(r"\bneaten its edge\b")
BY_NEEDLE = "overcast its edge by hand"
HERRINGBONE = "No zigzag is made here: work it by hand in herringbone stitch, which gives as much."
ONE_HOLE_FEET = frozenset({"straight-stitch"})


def straight_machine(setups: Setups, place: SeamPlace) -> MachineState | None:
    """A row that another row encloses: straight, but on the bias, where it has to give."""
    state = setups.lock_machine(place)
    swings = state is not None and state.stitch in SWINGING and place.said("bias") != "yes"
    return replace(state, stitch=STRAIGHT) if state and swings else state


def zigzag_machine(setups: Setups, place: SeamPlace) -> MachineState | None:
    """Always in zigzag, as to sew elastic on; by hand where the machine makes none."""
    state = setups.lock_machine(place)
    if state is None or not setups.zigzags:
        return None
    return state if state.stitch in SWINGING else state.swinging()


def without_zigzag(text: str, setups: Setups) -> str:
    """What is told of work for a needle that swings, where the machine makes no zigzag."""
    if setups.zigzags:
        return text
    text = EDGE.sub(BY_NEEDLE, text)
    return f"{text} {HERRINGBONE}" if ZIGZAGS.search(text) else text


def twin_machine(setups: Setups, place: SeamPlace) -> MachineState | None:
    """Two rows at once: straight, for a zigzag throws two needles further than the slot is wide."""
    state = setups.lock_machine(place)
    return None if state is None else replace(_wide(state), point=TWIN, stitch=STRAIGHT)


def buttonhole_machine(setups: Setups, place: SeamPlace) -> MachineState | None:
    """As the cloth of the buttonholes is sewn flat, with the foot that is made for them."""
    if not place.cloths or setups.machine_name == "hand":
        return None
    state, thread = setups.cloth_machine(place.cloths[0]), setups.thread(place)
    if state is None:
        return None
    sewn = replace(state, thread_above=thread, thread_below=thread)
    return replace(_wide(sewn), foot=BUTTONHOLE, stitch=BUTTONHOLE)


def topstitching_machine(setups: Setups, place: SeamPlace) -> MachineState | None:
    """A thick thread in the needle alone, and a large needle for it; the bobbin keeps its own."""
    state = setups.lock_machine(place)
    if state is None:
        return None
    colour = state.thread_above.partition(TO_MATCH)[2]
    thick = f"for topstitching,{TO_MATCH}{colour}" if colour else "for topstitching"
    size = max(state.size, THICK_NEEDLE)
    return replace(_wide(state), thread_above=thick, point="topstitch", size=size, stitch="301")


def _wide(state: MachineState) -> MachineState:
    foot = "standard" if state.foot in ONE_HOLE_FEET else state.foot
    return replace(state, foot=foot, plate="wide")
