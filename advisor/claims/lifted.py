"""The last press of a lined garment whose shell wants more damp or heat than its lining bears.

The two are not fastened to each other over their breadth, so the lining is lifted away: it is
pressed by itself at its own setting, and the shell from its right side through a cloth (common
practice). The whole keeps to the gentler setting wherever they cannot be parted.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from msgspec.structs import replace

from advisor.claims.byparts import length_of, top_of
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, span_of
from advisor.claims.workarounds import Instruction, is_lining
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry, Knowledge
from advisor.project.garment import Garment, Seam
from advisor.units import System, show

LIFTED = "lifted"
MOISTURE, LAST, LINING = "press.moisture", "last", "lining"
WOOLS, SHORT = "wools", 1
BACKED = "backing"
"""The family of places where two cloths are held as one, and cannot be parted."""

Verdicts = Mapping[Place, Mapping[str, Verdict]]


def lining_lifted(
    garment: Garment, verdicts: Verdicts, found: Sequence[Instruction], knowledge: Knowledge
) -> tuple[Instruction, ...]:
    """The instructions anew, with how shell and lining are parted for the last press."""
    whole = Place("garment", garment.name)
    cool = top_of(whole, verdicts)
    entries = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items()}
    linings = {n for n, e in entries.items() if e.kind == "cloth" and is_lining(n, e)}
    ways = [i for i in found if i.kind in (LINING, LAST) and i.tender <= linings]
    own = _own_seams(garment, entries.keys() - linings)
    shell = max(own, key=lambda n: (sum(map(length_of, own[n])), n), default="")
    if not any(shell in i.needy for i in ways) or mark_for(cool) is None:
        return tuple(found)
    if _crushes(entries[shell]) or _held(garment, shell, linings, knowledge):
        return tuple(found)
    places = [Place("seam", seam.name) for seam in own[shell]]
    hot = min((t for p in places if mark_for(t := top_of(p, verdicts))), default=COLD)
    damp = min(_damp(p, verdicts) for p in places)
    if hot < cool or damp <= _damp(whole, verdicts):
        return tuple(found)
    tender = (_gentler(verdicts[whole], hot) | linings) - {shell}
    parted = Instruction(LIFTED, frozenset((shell,)), frozenset(tender), (whole,), cool, hot)
    kept = [i for i in found if i.kind != LAST or i not in ways or i.needy != {shell}]
    joined = (replace(i, alone=hot) if i in ways and i.kind == LINING else i for i in kept)
    return (parted, *joined)


def _crushes(shell: Entry) -> bool:
    """Whether a pile stands on the right side; the short nap of a wool is pressed with it."""
    pile = shell.traits.get("pile", (0, 0))[1]
    return pile > (SHORT if shell.family == WOOLS else 0)


def _own_seams(garment: Garment, cloths: Collection[str]) -> dict[str, list[Seam]]:
    """The places of one cloth alone, of each cloth that has any."""
    found: dict[str, list[Seam]] = {}
    for seam in garment.seams:
        names = set(seam.cloths())
        if len(names) == 1 and names <= set(cloths):
            found.setdefault(names.pop(), []).append(seam)
    return found


def _held(garment: Garment, shell: str, linings: set[str], knowledge: Knowledge) -> bool:
    """Whether the lining is held to its shell over its breadth, as an underlining is."""
    kinds = knowledge.places.kinds
    held = (s for s in garment.seams if s.place in kinds and kinds[s.place].family == BACKED)
    return any(shell in s.cloths() and linings & set(s.cloths()) for s in held)


def _damp(place: Place, verdicts: Verdicts) -> float:
    found = verdicts.get(place, {}).get(MOISTURE)
    return 0.0 if found is None else found.pick or 0.0


def _gentler(whole: Mapping[str, Verdict], hot: float) -> set[str]:
    """Whatever bears less than the shell by itself, or no damp."""
    lids = ((LIMIT_ASPECT, hot), (MOISTURE, 1.0))
    said = [(s, least) for a, least in lids if a in whole for s in whole[a].because]
    low = (s for s, least in said if s.claim.guards and span_of(s)[1] < least)
    return {name for s in low for name in s.cloths}


def lifted_text(item: Instruction, units: System) -> str:
    """How the shell is pressed at last, without a stop."""
    (shell,), most = item.needy, show("temperature", item.alone or COLD, units)
    *first, last = sorted(item.tender)
    tender = f"{', '.join(first)} or {last}" if first else last
    return (
        f"the {shell} from its right side through a damp cloth, at most {most}, where no {tender} "
        "lies under the iron: lift the lining away from it"
    )
