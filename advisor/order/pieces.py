"""What the pieces of a project say to the order of work: their grain, bias strips, tucks.

A project need not list its pieces; then nothing here says anything.
"""

from __future__ import annotations

from advisor.knowledge import nouns
from advisor.project.bindings import strip_of
from advisor.project.garment import Garment
from advisor.project.grain import is_strip
from advisor.project.headwords import speaks_of
from advisor.project.making import Piece

BIAS, STRAIGHT = "bias", ("lengthwise", "crosswise")
ON_THE_BIAS = ", cut on the bias where the pattern is"
OPPOSITE = ", a pair leaning to opposite sides"
"""Left and right of one slant twist round the body: each of a pair lies on the other bias."""
IN_STRIPS = "on the bias, in strips"
STRIPS_TOO, BOUND = "strips on the bias, four times their finished width", "bound-edge"
WHERE_BIAS = "on the bias where the pattern has it"
JOINED = frozenset({"seam", "gathered-edge"})
"""Kinds of place whose bias is that of the pieces; a hem on the bias may be of a flared one."""


def pieces_of(garment: Garment, cloth: str) -> tuple[Piece, ...]:
    """The pieces that are cut from a cloth or notion."""
    return tuple(piece for piece in garment.plan.pieces if piece.cloth == cloth)


def tucked(garment: Garment, cloth: str) -> tuple[Piece, ...]:
    """Its pieces that have tucks."""
    return tuple(piece for piece in pieces_of(garment, cloth) if piece.tucks is not None)


def bias_seams(garment: Garment, cloth: str) -> tuple[str, ...]:
    """Its seams that lie on the bias, where no pieces say how they are cut."""
    if pieces_of(garment, cloth):
        return ()
    return tuple(
        seam.name
        for seam in garment.seams
        if seam.place in JOINED and seam.facts.get("bias") == "yes" and cloth in seam.cloths()
    )


def as_cut(garment: Garment) -> str:
    """How a toile lies on its cloth, where the garment leaves the straight grain."""
    cut = any(p.grain == BIAS and not is_strip(p) for p in garment.plan.pieces)
    return ON_THE_BIAS if cut else ""


def _strips_for(garment: Garment, cloth: str) -> tuple[str, ...]:
    """The edges that strips of it bind, where no pieces say how they are cut."""
    if pieces_of(garment, cloth):
        return ()
    bound = (seam for seam in garment.seams if seam.place == BOUND and len(seam.cloths()) > 1)
    return tuple(seam.name for seam in bound if strip_of(seam, garment) == cloth)


def _binds(garment: Garment, cloth: str) -> bool:
    """Whether a cloth is there for the strips that bind edges: called so, and in no seam."""
    held = any(cloth in seam.cloths() for seam in garment.seams) or pieces_of(garment, cloth)
    return not held and speaks_of(cloth, nouns.STRIPS)


def with_bias(garment: Garment, cloth: str, words: str) -> str:
    """The usual grain of a cloth, and where the pattern leaves it for the bias."""
    if _binds(garment, cloth):
        return IN_STRIPS
    seams, strips = bias_seams(garment, cloth), _strips_for(garment, cloth)
    if not (seams or strips) or words in ("", BIAS):
        return words
    usual = [f"{words} grain" if words in STRAIGHT else words]
    usual += [f"{WHERE_BIAS} ({', '.join(seams)})"] if seams else []
    usual += [f"{STRIPS_TOO} ({', '.join(strips)})"] if strips else []
    return ", ".join(usual)


def sheet_grain(garment: Garment, cloth: str, usual: str) -> str:
    """The grain of a cloth as the sheet has it: any piece that leaves it for the bias is named."""
    told = grain_words(garment, cloth, usual)
    return told if "the bias" in told else with_bias(garment, cloth, usual)


def grain_words(garment: Garment, cloth: str, usual: str) -> str:
    """How its pieces lie: as the project has it, else on the usual grain of the cloth."""
    words = f"{usual} grain" if usual in (*STRAIGHT, BIAS) else usual
    if bias_seams(garment, cloth) or _strips_for(garment, cloth) or _binds(garment, cloth):
        return with_bias(garment, cloth, usual)
    pieces = pieces_of(garment, cloth)
    said = {grain: [p.name for p in pieces if p.grain == grain] for grain in ("crosswise", "bias")}
    paired = any(p.grain == BIAS and (p.number or 1) > 1 and not is_strip(p) for p in pieces)
    told = {"crosswise": "crosswise grain", "bias": f"on the bias{OPPOSITE * paired}"}
    for grain, names in said.items():
        if pieces and len(names) == len(pieces):
            return told[grain]
    rest = [f"{' and '.join(names)} {told[grain]}" for grain, names in said.items() if names]
    return ", ".join([words, *rest]) if rest and words else ", ".join(rest) or words
