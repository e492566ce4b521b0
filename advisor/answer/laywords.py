"""How the pieces of a cloth are laid: every outline with its place, and the same in words."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.answer.model.making import ToldLaid, ToldLies
from advisor.construction.clothlist import Bought
from advisor.craft import lying
from advisor.craft.lying import Lies
from advisor.units import System, show

_WAYS = {
    lying.TURNED: "turned a quarter",
    lying.ROW: "head to tail",
    lying.FOLD: "half of it, on the fold",
    lying.BIAS: "on the bias",
    lying.PART: "on the bias, a part of it",
    lying.CORNER: "a corner of it, joined on along the grain",
    lying.STRIPS: "a square to cut the bias strips from",
}


def told_laid(bought: Bought, units: System) -> ToldLaid | None:
    """The lay of a cloth; None where it cannot be laid out."""
    if not bought.laid:
        return None
    found = tuple(_told(lies, bought, units) for lies in bought.laid)
    long = max(lies.y + lies.along for lies in bought.laid)
    return ToldLaid(round(bought.usable, 1), round(long, 1), found, _about(bought, long, units))


def _told(lies: Lies, bought: Bought, units: System) -> ToldLies:
    across, along = (lies.x, lies.x + lies.across), (lies.y, lies.y + lies.along)
    name = bought.cuts[lies.piece].name
    return ToldLies(
        name,
        lies.number,
        _rounded(across),
        _rounded(along),
        lies.way,
        lies.folded,
        tuple(tuple(_rounded(corner) for corner in outline) for outline in lies.outlines),
        _text(name, lies, units),
    )


def _text(name: str, lies: Lies, units: System) -> str:
    """Which pieces lie where: along the cloth, then across it."""
    edge = "fold" if lies.folded else "edge"
    along = _span(lies.y, lies.y + lies.along, units)
    across = _span(lies.x, lies.x + lies.across, units)
    many = f", {lies.number} of it" if lies.number > 1 else ""
    way = f", {_WAYS[lies.way]}" if lies.way in _WAYS else ""
    return f"{name}{many}: {along} along, {across} from the {edge}{way}"


def _span(low: float, high: float, units: System) -> str:
    begin = show("length", low, units) if low > 0 else "0"
    return f"{begin} to {show('length', high, units)}"


def _about(bought: Bought, long: float, units: System) -> str:
    """What is drawn: the size of the cloth, how it lies, and which way the pieces look."""
    wide = show("length", bought.usable / (2 if bought.laid[0].folded else 1), units)
    way = "All pieces look one way." if bought.one_way else "Pieces may look either way."
    folded = {lies.folded for lies in bought.laid}
    how = "in a single layer"
    if folded == {True}:
        how = "folded along its length"
    elif folded == {True, False}:
        opened = min(lies.y for lies in bought.laid if not lies.folded)
        how = f"folded along its length, and from {show('length', opened, units)} on opened out"
    return (
        f"The grain runs along the cloth, which has been shrunk and squared; laid {how}, "
        f"{wide} to cut from and {show('length', long, units)} long. {way}"
    )


def _rounded(pair: Sequence[float]) -> tuple[float, float]:
    return round(pair[0], 1), round(pair[1], 1)
