"""How much of each cloth to buy: pieces to cut sizes, then a strip-packing estimate.

Cut sizes are those of `cutting`; packing by `craft.cloth`, which says that it is an estimate.
Width and shrinkage are taken as usual where nobody says them (estimates), and that is said.
"""

from __future__ import annotations

from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.claims.shrinking import SHRINK
from advisor.claims.subjects import subject_of
from advisor.construction.backing import backing_of
from advisor.construction.bulk import picked
from advisor.construction.cutting import Cut, all_on_cloth, cuts_of, on_cloth
from advisor.construction.finishing import allowance_of
from advisor.construction.headtotail import head_to_tail
from advisor.construction.hemroom import with_both_turns
from advisor.construction.matching import rows_of, with_rows
from advisor.construction.notionlist import is_sheet
from advisor.construction.roomy import roomy
from advisor.construction.widths import narrowest_said
from advisor.craft import cloth as lay
from advisor.craft import skins
from advisor.craft.checks import TooWideError
from advisor.craft.lying import Lies, lying
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth
from advisor.project.making import Bolt, Piece

USUAL_WIDTH: Final = 1400.0
"""Width of a cloth of which nobody says it, mm (estimate)."""
INTERFACING_WIDTH: Final = 900.0
SHRINKS: Final = (0.0, 0.02, 0.04, 0.07)
"""What a cloth shrinks along by the level of its trait, a share (estimate); much is over 5 %."""
ACROSS: Final = {"woven": 0.5, "composite": 0.5, "knit": 1.0}
"""What it shrinks across for each part along (estimate): knits as much, others half."""
SELVAGE: Final = 10.0
"""Each edge of a woven or a knit that is not cut from, where nobody says it, mm (estimate)."""
SQUARED: Final = 15.0
"""What squaring both ends of any cloth takes, mm (estimate); no shop cuts true."""
SAVES: Final = 100.0
"""Another lay is told where it saves so much, mm."""
FOLDED: Final = "folded"
BAND: Final = "band"
"""The family of places whose own piece is sewn on by one edge and joined at its ends."""
SKIN: Final = "skin"


class Bought(Struct, frozen=True):
    """Cloth to buy, in mm, and what is cut from it; `wrong` says why there is no figure.

    Attributes:
        shrinks, shrinks_across: shares along and across.
        folded: whether the pieces are laid on the cloth folded along its length.
        open_buy: length when laid open in a single layer, where that saves some.
        turned_buy: length with tapered pieces head to tail, where only a sheen speaks against it.
        too_wide: the piece that does not fit, what it spans and what there is.
        used: the share of the lay that ends in the pieces; the lay is `packed` long.
        if_across: length if the cloth shrinks across too, where nobody said so and it matters.
        laid: where the pieces of `cuts` lie, on the `usable` width of the cloth once shrunk.
        places: the repeat, mm, that placing a matched pattern takes once; 0 where nothing is.
        rows: how many rows of matched pieces lie along the cloth, each with such a repeat.
        area: of skins, which have no length, mm².
        backs: whether the pieces are those of the cloth that it backs, for none of it is said;
            `without` names the places whose pieces were not found.
    """

    cloth: str
    width: float
    shrinks: float
    shrinks_across: float
    one_way: bool
    pieces: int
    assumed: tuple[str, ...]
    length: float | None = None
    buy_metric: float | None = None
    buy_us: float | None = None
    used: float | None = None
    packed: float | None = None
    wrong: str = ""
    too_wide: TooWideError | None = None
    folded: bool = False
    open_buy: lay.Estimate | None = None
    turned_buy: lay.Estimate | None = None
    if_across: lay.Estimate | None = None
    cuts: tuple[Cut, ...] = ()
    sources: tuple[str, ...] = lay.SOURCES
    usable: float = 0.0
    laid: tuple[Lies, ...] = ()
    places: float = 0.0
    rows: int = 1
    area: float | None = None
    backs: bool = False
    without: tuple[str, ...] = ()

    def used_of(self, length: float) -> float | None:
        """The share of so much bought cloth, mm, selvages and all, that ends in the pieces."""
        if self.used is None or self.packed is None or not self.width:
            return None
        return min(1.0, self.used * self.packed * self.usable / (length * self.width))


def cloths_to_buy(judgement: Judgement, knowledge: Knowledge) -> list[Bought]:
    """Every cloth that the project gives pieces for, in the order of its cloths.

    Of an interfacing without pieces those are taken that it backs.
    """
    garment = judgement.garment
    found = []
    for name, cloth in garment.cloths.items():
        pieces = tuple(
            as_sewn(piece, judgement, knowledge)
            for piece in garment.plan.pieces
            if piece.cloth == name
        )
        backs, without = False, tuple[str, ...]()
        if not pieces and is_sheet(knowledge.entries[cloth.entry]):
            backing = backing_of(name, garment, knowledge)
            room = _sold(cloth, judgement, knowledge)[0].usable_mm
            turned = (
                replace(p, grain="crosswise") if p.width > room else p for p in backing.pieces
            )
            pieces, without, backs = tuple(turned), backing.without, True
        if pieces:
            bought = _bought(cloth, list(pieces), judgement, knowledge)
            found.append(replace(bought, backs=backs, without=without))
    return found


def as_sewn(piece: Piece, judgement: Judgement, knowledge: Knowledge) -> Piece:
    """A piece as its places are made: both turns of a double hem, a band with its allowance, room.

    The allowance is that of the place that is called after the band, unless she says another.
    """
    kinds = knowledge.places.kinds
    for seam in judgement.garment.seams if not piece.own else ():
        band = seam.place in kinds and kinds[seam.place].family == BAND
        if band and seam.name.casefold() == piece.name.casefold() and piece.cloth in seam.cloths():
            sewn = allowance_of(seam, judgement.verdicts[Place("seam", seam.name)])
            return replace(piece, allowance=sewn or piece.allowance)
    return roomy(with_both_turns(piece, judgement, knowledge), judgement.garment)


def _bought(
    cloth: Cloth, pieces: list[Piece], judgement: Judgement, knowledge: Knowledge
) -> Bought:
    sold, assumed = _sold(cloth, judgement, knowledge)
    bare = Bought(
        cloth.name,
        sold.width_mm,
        sold.shrinks_long,
        sold.shrinks_wide,
        sold.one_way,
        len(pieces),
        assumed,
        places=sold.repeat_mm if any(piece.matched for piece in pieces) else 0.0,
    )
    sold = replace(sold, ends_mm=sold.ends_mm + bare.places)
    try:
        cuts = _cuts(pieces, sold, is_net(cloth, knowledge))
        if knowledge.entries[cloth.entry].structure == SKIN:
            return _skins(bare, cuts)
        opened = lay.estimate(all_on_cloth(cuts), sold)
        if bare.places and (rows := rows_of(cuts, opened)) > 1:
            bare, sold = replace(bare, rows=rows), with_rows(sold, rows)
            opened = lay.estimate(all_on_cloth(cuts), sold)
    except TooWideError as error:
        return replace(bare, wrong=str(error), too_wide=error)
    except ValueError as error:
        return replace(bare, wrong=str(error))
    found = _on_fold(cuts, sold, judgement, cloth.name) or opened
    saves = opened if found.length_mm - opened.length_mm >= SAVES else None
    return replace(
        bare,
        length=found.length_mm,
        buy_metric=found.buy_metric_mm,
        buy_us=found.buy_us_mm,
        pieces=sum(cut.number for cut in cuts),
        used=found.used,
        packed=found.packed_mm,
        folded=found is not opened,
        open_buy=saves,
        turned_buy=head_to_tail(
            cuts,
            sold,
            found.length_mm,
            knowledge.entries[cloth.entry],
            judgement.verdicts.get(Place("fabric", cloth.name), {}).get("cut.direction"),
        ),
        if_across=_if_across(pieces, sold, found, cloth, judgement, knowledge),
        cuts=cuts,
        usable=sold.usable_mm,
        laid=lying(found.laid, all_on_cloth(cuts)),
    )


def _skins(bare: Bought, cuts: tuple[Cut, ...]) -> Bought:
    """Skins, which are bought by their area."""
    net = sum(cut.number * on_cloth(cut).area_mm2 for cut in cuts)
    area, number = skins.to_buy(net), sum(cut.number for cut in cuts)
    return replace(
        bare, area=area, cuts=cuts, pieces=number, used=net / area, sources=skins.SOURCES
    )


def _sold(
    cloth: Cloth, judgement: Judgement, knowledge: Knowledge
) -> tuple[lay.BoughtCloth, tuple[str, ...]]:
    """A cloth as it is sold, and what of that nobody said."""
    bolt = judgement.garment.plan.bolts.get(cloth.name, Bolt())
    entry = knowledge.entries[cloth.entry]
    firm = entry.structure in ACROSS
    said_width = bolt.width or narrowest_said(cloth.name, judgement.garment)
    assumed = [] if said_width is not None else ["width"]
    usual_width = USUAL_WIDTH if entry.kind == "cloth" else INTERFACING_WIDTH
    long, across = shrinks(cloth, judgement, knowledge)
    if bolt.shrinks is None:
        assumed.append("shrinkage")
    if bolt.shrinks_across is None and long:
        assumed.append("shrinkage across")
    selvage = bolt.selvage
    if selvage is None:
        selvage = SELVAGE if firm else 0.0
        if firm:
            assumed.append("selvages")
    width = said_width or usual_width
    selvage = min(selvage, width / 4)
    one_way = _one_way(cloth, judgement, knowledge)
    sold = lay.BoughtCloth(width, one_way, bolt.repeat, selvage, long, across, SQUARED)
    return sold, tuple(assumed)


def shrinks(cloth: Cloth, judgement: Judgement, knowledge: Knowledge) -> tuple[float, float]:
    """What a cloth shrinks along and across, shares; as usual for it where nobody says."""
    bolt = judgement.garment.plan.bolts.get(cloth.name, Bolt())
    structure = knowledge.entries[cloth.entry].structure
    long = usual_shrinkage(cloth, knowledge) if bolt.shrinks is None else bolt.shrinks
    if bolt.shrinks_across is not None:
        return long, bolt.shrinks_across
    # Of a woven whose length was measured nobody knows the width: it is told, and not added.
    measured = structure == "woven" and bolt.shrinks is not None
    return long, 0.0 if measured else long * ACROSS.get(structure, 0.0)


def _cuts(pieces: list[Piece], sold: lay.BoughtCloth, raw: bool) -> tuple[Cut, ...]:
    """All pieces as they are cut.

    Raises:
        TooWideError: one does not fit; its name is in the error.
    """
    found: list[Cut] = []
    for piece in pieces:
        try:
            cuts = cuts_of(piece, sold.usable_mm, raw=raw)
            for cut in cuts:
                lay.refuse_too_wide(on_cloth(cut), sold.usable_mm)
        except TooWideError as error:
            raise TooWideError(error.across, error.usable, error.bias, piece.name) from None
        found += cuts
    return tuple(found)


def _on_fold(
    cuts: tuple[Cut, ...], sold: lay.BoughtCloth, judgement: Judgement, name: str
) -> lay.Estimate | None:
    """The lay on the fold, where the sheet folds this cloth and its pieces let it."""
    verdicts = judgement.verdicts.get(Place("fabric", name), {})
    if not picked(verdicts, "cut.lay").startswith(FOLDED):
        return None
    if any(cut.piece.matched or cut.piece.grain == "bias" for cut in cuts):
        return None
    try:
        return lay.estimate(all_on_cloth(cuts), sold, folded=True)
    except TooWideError:
        return None


def _if_across(
    pieces: list[Piece],
    sold: lay.BoughtCloth,
    found: lay.Estimate,
    cloth: Cloth,
    judgement: Judgement,
    knowledge: Knowledge,
) -> lay.Estimate | None:
    """What to buy if a woven of which only the length was measured shrinks across as well."""
    bolt = judgement.garment.plan.bolts.get(cloth.name, Bolt())
    share = ACROSS.get(knowledge.entries[cloth.entry].structure, 0.0) * sold.shrinks_long
    if bolt.shrinks_across is not None or sold.shrinks_wide or not share:
        return None
    narrower = replace(sold, shrinks_wide=share)
    try:
        cuts = _cuts(pieces, narrower, is_net(cloth, knowledge))
        again = lay.estimate(all_on_cloth(cuts), narrower)
    except ValueError:
        return None
    return again if again.length_mm > found.buy_metric_mm else None


def too_wide_in(judgement: Judgement, knowledge: Knowledge) -> list[tuple[str, TooWideError]]:
    """Cloths with a piece that they cannot hold, and what it spans; nothing is packed for this."""
    found = []
    for name, cloth in judgement.garment.cloths.items():
        planned = judgement.garment.plan.pieces
        pieces = [roomy(piece, judgement.garment) for piece in planned if piece.cloth == name]
        sold, _ = _sold(cloth, judgement, knowledge)
        try:
            _cuts(pieces, sold, is_net(cloth, knowledge))
        except TooWideError as error:
            found.append((name, error))
        except ValueError:
            continue
    return found


def is_net(cloth: Cloth, knowledge: Knowledge) -> bool:
    """Whether a cloth is a net, which is left raw where nobody says a hem."""
    return knowledge.entries[cloth.entry].structure == "net"


def usual_shrinkage(cloth: Cloth, knowledge: Knowledge) -> float:
    """What a cloth of this kind shrinks, a share; the worse where nobody can say.

    What is never wetted before it is cut takes nothing for shrinking, whatever its fibre would.
    """
    nothing = 1 << knowledge.aspects[SHRINK].words.index("nothing")
    said = (c for c in knowledge.entries[cloth.entry].claims if c.aspect == SHRINK)
    if any(c.mask == nothing and c.strength != "may" for c in said):
        return 0.0
    level = subject_of(cloth, None, knowledge).levels.get("shrinks", (0, 0))[1]
    return SHRINKS[min(level, len(SHRINKS) - 1)]


def _one_way(cloth: Cloth, judgement: Judgement, knowledge: Knowledge) -> bool:
    """Whether all pieces lie the same way up: by the verdict on direction, else by the trait."""
    verdicts = judgement.verdicts.get(Place("fabric", cloth.name), {})
    direction = picked(verdicts, "cut.direction")
    if direction:
        return direction.startswith("one way")
    return subject_of(cloth, None, knowledge).levels.get("one way", (0, 0))[1] > 0
