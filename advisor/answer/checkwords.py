"""Figures that do not agree, in words: both numbers, in the maker's units."""

from __future__ import annotations

from advisor.answer.buyingwords import too_wide_text
from advisor.answer.model.making import ToldCheck
from advisor.answer.teller import Teller
from advisor.claims.judgement import Judgement
from advisor.construction.agreement import disagreements
from advisor.construction.disagreement import Disagreement, Figure
from advisor.units import System, show_size

_AND_SO = {
    "fullness": "write the same fullness in both, and the hem as wide as what hangs from it",
    "flare": "where it flares, write the width of the hem for the piece, and its upper edge as "
    "narrow end",
    "both edges": "write that fullness here, or the narrow end of the piece where it is shaped",
    "width": "the finished width of the piece is that of the whole place, and its number says in "
    "how many panels it is cut",
    "band": "one of the two is a slip, unless it is stretched to its edge",
    "drawn up": "write the same length in both",
    "lining width": "lay what is over in darts or soft pleats, as a place of their own",
    "lining ease": "a woven lining gives less than its shell; cut it wider by a soft pleat "
    "at centre back, or every reach of the arms tears it",
    "pleats": "change the pleats or the piece",
    "hem": "write that hem for the piece, or a deep one here, as method: blind hem",
    "hem twice": "so much is cut and bought here; write both turns as the hem of the piece",
    "piping strip": "cut the strip wider, or say a narrower allowance where it is piped",
    "shallow hem": "write that hem for the piece, or a finer one here, as method: hand-rolled hem",
    "ring": "write the hem as long as the outer edge, or change the depth or the share of a circle",
    "stretched": "cut it anew, or change how far it is stretched",
    "slack": "say what the body measures where it lies, or how far it is stretched",
    "height": "one of the two is a slip; look for a lost fraction or another unit before you buy",
    "slit": "the opening runs on through the seam below it: leave that open there, and the waist "
    "that lies between, or make the slit shorter than the piece",
    "buttons": "as many of the one as of the other",
}


def told_checks(judgement: Judgement, teller: Teller) -> tuple[ToldCheck, ...]:
    """Every disagreement between the quantities of a project."""
    return tuple(
        ToldCheck(
            id=found.id,
            place=found.place,
            text=_text(found, teller.units),
            values=tuple(round(figure.value, 2) for figure in found.figures),
            cloth=found.cloth,
        )
        for found in disagreements(judgement, teller.knowledge)
    )


def _text(found: Disagreement, units: System) -> str:
    if found.too_wide is not None:
        return f"{too_wide_text(found.too_wide, units)}."
    if not found.figures:
        return f"{found.place} {found.text}."
    said = ", ".join(_said(figure, units) for figure in found.figures)
    and_so = _together(*found.together, units) if found.together else _AND_SO[found.id]
    return f"{said}: {and_so}."


def _together(width: float, number: int, panels: int, units: System) -> str:
    """That a finished width is of all the pieces, and what it would be if it is meant of each."""
    whole, each, more = (show_size(w, units) for w in (width, width / number, width * number))
    text = (
        f"the finished width of the piece is that of the whole place, of all {number} pieces "
        f"together: {whole} makes each {each}. For {whole} each write finished width: {more}"
    )
    if panels == 1:
        return text
    return f"{text} and number: {number * panels}, {panels} widths of the cloth to each"


def _said(figure: Figure, units: System) -> str:
    if figure.kind == "length":
        return f"{figure.what} {show_size(figure.value, units)}"
    if figure.kind == "ratio":
        return f"{figure.what} {figure.value:.3g} to 1"
    return f"{figure.value:.0f} {figure.what}"
