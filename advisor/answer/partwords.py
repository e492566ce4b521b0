"""The parts of a garment in words: what lies over what, and what of it hangs free."""

from __future__ import annotations

from advisor.answer.model.making import ToldPart
from advisor.answer.teller import Teller
from advisor.project.garment import Garment, GarmentPart

_FREE = (
    "{free} free: seam, press, level and hem each layer by itself, and join them only where they "
    "hang from"
)
_AT_A_ZIP = "; the zip is set in the layer that it closes, and the opening of {free} finished apart"


def told_parts(garment: Garment, teller: Teller) -> tuple[ToldPart, ...] | None:
    """Every part that the project names; None where it names none."""
    if not garment.parts:
        return None
    return tuple(
        ToldPart(
            name=part.name,
            layers=part.layers,
            separate=part.separate,
            fitting=part.fitting,
            places=tuple(seam.name for seam in garment.seams if seam.part == part.name),
            does=_free(part, garment),
            sources=teller.cite(("common-practice",)) if part.separate else (),
        )
        for part in garment.parts
    )


def _free(part: GarmentPart, garment: Garment) -> str:
    if not part.separate:
        return ""
    names = " and ".join(part.separate)
    hangs = f"{names} {'hangs' if len(part.separate) == 1 else 'hang'}"
    zipped = any(seam.part == part.name and seam.place == "zip" for seam in garment.seams)
    text = _FREE.format(free=hangs[:1].upper() + hangs[1:])
    return f"{text}{_AT_A_ZIP.format(free=names)}." if zipped else f"{text}."
