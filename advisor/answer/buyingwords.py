"""Cloth to buy as plain data and in words: how long, how it is laid, why it cannot be laid.

Lengths are mm; sentences follow the maker's units.
"""

from __future__ import annotations

from fractions import Fraction

from advisor.answer.laywords import told_laid
from advisor.answer.model.making import ToldCloth
from advisor.answer.teller import Teller
from advisor.construction.clothlist import Bought
from advisor.construction.cutting import Cut
from advisor.craft import lying
from advisor.craft.checks import TooWideError
from advisor.craft.cloth import US_STEP_MM, Estimate
from advisor.craft.skins import SQUARE_FOOT
from advisor.project.garment import Garment
from advisor.units import System, show, show_size

UNDER_CLOTH = ", as told under cloth"
SQUARE_METRE = 1e6
NO_PIECE = "no piece is said; write them under pieces: with width and height to have it reckoned"

APART = frozenset({"open-ended-zip", "two-way-zip"})
"""Zips with a pin and a box at the end, which cannot be cut off."""
SHORTENED = "or the next longer, shortened at its top alone, new stops set before it is sewn in"


def zips_apart(garment: Garment) -> dict[str, str]:
    """What is told of the zips that come apart, where the shop has not just their length."""
    return {name: SHORTENED for name, cloth in garment.cloths.items() if cloth.entry in APART}


def told_cloth(bought: Bought, teller: Teller) -> ToldCloth:
    """Cloth to buy."""
    units = teller.units
    buy = bought.buy_us if units == "us" else bought.buy_metric
    used = bought.used if buy is None else bought.used_of(buy)
    return ToldCloth(
        fabric=bought.cloth,
        width_mm=bought.width,
        length_mm=None if bought.length is None else round(bought.length),
        buy=_buy_text(buy, bought.area, units),
        buy_mm=None if buy is None else round(buy, 2),
        pieces=bought.pieces,
        one_way=bought.one_way,
        lay="folded" if bought.folded else "open",
        shrinks_percent=round(bought.shrinks * 100, 2),
        shrinks_across_percent=round(bought.shrinks_across * 100, 2),
        used_percent=None if used is None else round(used * 100),
        assumed=tuple(bought.assumed),
        kind="estimate",
        wrong=wrong_text(bought, units),
        says=tuple(lay_says(bought, units)),
        sources=teller.cite(bought.sources),
        laid=None if bought.area is not None else told_laid(bought, units),
        area_m2=None if bought.area is None else round(bought.area / SQUARE_METRE, 2),
    )


def without_piece(name: str) -> ToldCloth:
    """A cloth that no piece is said of, so that it is missing from no list."""
    return ToldCloth(
        fabric=name,
        width_mm=None,
        length_mm=None,
        buy="",
        buy_mm=None,
        pieces=0,
        one_way=False,
        lay="open",
        shrinks_percent=0.0,
        shrinks_across_percent=0.0,
        used_percent=None,
        assumed=(),
        kind="estimate",
        wrong=NO_PIECE,
        says=(),
        sources=(),
        laid=None,
    )


def _buy_text(length_mm: float | None, area_mm2: float | None, units: System) -> str:
    """How much is bought; of skins the area, in square feet everywhere."""
    if area_mm2 is not None:
        feet = f"{_in_quarters(area_mm2 / SQUARE_FOOT)} sq ft"
        return feet if units == "us" else f"{area_mm2 / SQUARE_METRE:.2f} m² ({feet})"
    return "" if length_mm is None else sold_text(length_mm, units)


def _in_quarters(feet: float) -> str:
    """A number in quarters: 4 1/4."""
    whole, rest = divmod(round(feet * 4), 4)
    part = f"{Fraction(rest, 4)}" if rest else ""
    return " ".join(filter(None, (str(whole) if whole else "", part)))


def sold_text(length_mm: float, units: System) -> str:
    """A length as the shop cuts it: in m or cm, or in eighths of a yard."""
    if units != "us":
        return show("length", length_mm, units)
    whole, rest = divmod(round(length_mm / US_STEP_MM), 8)
    part = f"{Fraction(rest, 8)}" if rest else ""
    return f"{' '.join(word for word in (str(whole) if whole else '', part) if word)} yd"


def wrong_text(bought: Bought, units: System) -> str:
    """Why a cloth cannot be laid out; nothing where it can."""
    return bought.wrong if bought.too_wide is None else too_wide_text(bought.too_wide, units)


def too_wide_text(error: TooWideError, units: System) -> str:
    """A piece that its cloth cannot hold, with both widths."""
    across, usable = (show_size(v, units) for v in (error.across, error.usable))
    who = error.name or "a piece"
    if error.bias:
        return (
            f"{who} spans {across} on the bias, and {usable} of the width can be cut: take wider "
            "cloth or narrower panels, or say joined: yes if it may have a seam"
        )
    return (
        f"{who} is {across} wide, and {usable} of the width can be cut: take more panels, or say "
        "joined: yes if it may have a seam"
    )


def lay_says(bought: Bought, units: System) -> list[str]:
    """How the pieces are laid, and what would change the length."""
    says = []
    if bought.area is not None:
        says.append(_skin_says(bought, units))
    if bought.backs:
        cuts = _named(bought, units)
        says.append(f"No piece of it is said, so by what it backs: {cuts}.")
    if bought.without:
        says.append(f"Not in it, for no piece is called so: {', '.join(bought.without)}.")
    if bought.places:
        repeat = show("length", bought.places, units)
        each = f", for each of {bought.rows} rows of matched pieces" if bought.rows > 1 else ""
        shop = "the shop cuts anywhere in the pattern"
        says.append(f"One repeat of {repeat} is in it{each}, for {shop}.")
    says += _pieced_says(bought)
    if bought.folded:
        says.append("Folded along its length, odd pieces on the fold.")
    if bought.open_buy is not None:
        says.append(f"Opened out in a single layer, {_buy(bought.open_buy, units)} would do.")
    if bought.turned_buy is not None:
        says.append(
            f"Laid head to tail {_buy(bought.turned_buy, units)} would do, where two lengths, one "
            "of them upside down, look alike across the room."
        )
    if bought.if_across is not None:
        says.append(
            f"If it shrinks across as well, {_buy(bought.if_across, units)}: measure a washed "
            "square both ways before you buy."
        )
    return says


def _pieced_says(bought: Bought) -> list[str]:
    """Which panels on the bias are put together, and how."""
    pieced = dict.fromkeys((bought.cuts[lies.piece].name, lies.way) for lies in bought.laid)
    corners = " and ".join(name for name, way in pieced if way == lying.CORNER)
    parts = " and ".join(name for name, way in pieced if way == lying.PART)
    says = []
    if corners:
        says.append(
            f"Two corners of {corners} reach past the cloth on the bias: cut them apart, and join "
            "them on along the grain."
        )
    if parts:
        says.append(f"The parts of {parts} are joined across.")
    return says


def _skin_says(bought: Bought, units: System) -> str:
    """What skins are bought for besides the pieces, and how large each has to be."""
    longest = max(bought.cuts, key=lambda cut: (max(cut.width, cut.height), _area(cut)))
    largest = max(bought.cuts, key=_area)
    told = [
        f"{cut.name} is {show_size(cut.width, units)} × {show_size(cut.height, units)}"
        for cut in (largest, longest)
    ]
    return (
        f"A third of a skin goes for its shape and its holes. Each piece lies within one skin, so "
        f"ask how large they are: {' and '.join(dict.fromkeys(told))}."
    )


def _area(cut: Cut) -> float:
    return cut.width * cut.height


def _named(bought: Bought, units: System) -> str:
    """The pieces with their numbers and sizes."""
    return ", ".join(
        f"{cut.name} ({cut.number} of {show_size(cut.width, units)} × "
        f"{show_size(cut.height, units)})"
        for cut in bought.cuts
    )


def _buy(found: Estimate, units: System) -> str:
    return sold_text(found.buy_us_mm if units == "us" else found.buy_metric_mm, units)
