"""What a lining that is felled or hemmed by itself, and a strip, have no say in at a shell's hem.

The hem is turned up and pressed before the lining is felled to it, so that the iron is set for the
shell. The lining hangs near all the same: it is told what heat it bears, and where it bears less
than the shell the iron is set for both. So it is where the lining is quilted to its shell, and at a
place that begins with the lining: there it is felled, and pressed afterwards.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from advisor.claims.bound_hem import OF_THE_SHELL
from advisor.claims.speakers import HOTTEST, Said, is_heat_limit
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Entry
from advisor.project.garment import Garment, Seam
from advisor.project.hemstrips import hem_strip
from advisor.project.linings import hung_apart

HEM: Final = "hem.kind"
PRESSED: Final = "press."
QUILTING: Final = "quilting"


def drop_lining(
    seam: Seam, said: dict[str, list[Said]], garment: Garment, entries: Mapping[str, Entry]
) -> None:
    """The shell says how its hem is made and pressed; a lining beside it and a strip do not."""
    lining = hung_apart(seam, garment.seams, entries)
    apart = {HEM: lining} if HEM in said else {}
    if strip := hem_strip(seam, garment, entries):
        apart = dict.fromkeys(OF_THE_SHELL & said.keys(), frozenset((strip,)))
    for aspect, cloths in apart.items():
        said[aspect] = [
            s for s in said[aspect] if not _of(s, cloths) or (aspect != HEM and s.claim.guards)
        ]
        if not said[aspect]:
            del said[aspect]
    inner = lining - _quilted(garment.seams)
    if inner and seam.uses[0].cloth not in lining and _bears(said, inner):
        for aspect in [name for name in said if name.startswith(PRESSED)]:
            kept = [s for s in said[aspect] if not _of(s, inner) or is_heat_limit(s.claim)]
            said[aspect] = kept or said[aspect]


def _quilted(seams: Sequence[Seam]) -> frozenset[str]:
    """The cloths of what is quilted: such a lining lies in the hem before it is pressed."""
    return frozenset(c for seam in seams if seam.place == QUILTING for c in seam.cloths())


def _of(said: Said, cloths: frozenset[str]) -> bool:
    """Whether nothing but these cloths says it."""
    return bool(said.cloths) and said.cloths <= cloths


def _bears(said: Mapping[str, list[Said]], lining: frozenset[str]) -> bool:
    """Whether a lining bears the iron of its shell."""
    lids = [
        (s.claim.span[1], _of(s, lining))
        for s in said.get(LIMIT_ASPECT, ())
        if s.claim.span and is_heat_limit(s.claim)
    ]
    own = min((lid for lid, inner in lids if inner), default=COLD)
    return own >= min((lid for lid, inner in lids if not inner), default=HOTTEST)
