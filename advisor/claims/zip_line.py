"""A seam in whose line a zip lies: its allowances open for the tape, so they are not shut in.

What is sewn as a French or a felled seam turns both allowances to one side; above, each of them
carries one half of the zip. So the seam below is plain and each edge is neatened by itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from advisor.claims.speakers import Said
from advisor.knowledge.model import Claim, Knowledge
from advisor.knowledge.places import PLAIN
from advisor.project.garment import Garment, Seam
from advisor.project.zipping import runs_into

KIND = "seam.kind"
WHY = "A zip lies in its line, and each allowance carries one half of it."
NOT_SHUT_IN = ("plain", "topstitched")


def zip_line_says(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Said]:
    """What a zip says of the seam in whose line it lies."""
    if seam.place != PLAIN or KIND not in knowledge.aspects:
        return
    found = next((other for other in garment.seams if runs_into(seam, other)), None)
    if found is None:
        return
    options = knowledge.aspects[KIND].words
    mask = sum(1 << options.index(word) for word in NOT_SHUT_IN if word in options)
    about = (KIND, None, mask, None, "should", "result", WHY, ("common-practice",))
    yield Said(found.name, Claim(*about, 0, "this garment", ends=("seam", "seam")))
