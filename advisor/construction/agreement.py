"""Quantities of a project that check each other, and what does not agree, with both numbers.

Nothing here is a conflict of cloths: it is a slip of the pen, or a change that was made in one
line and not in the other. What lies within `NEAR` of each other agrees, since nobody cuts closer
(`estimate`). Lengths are mm.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Final

from advisor.claims.judgement import Judgement
from advisor.construction.bandlength import unlike_its_band
from advisor.construction.belonging import half_of, may_belong, namesakes, too_tall
from advisor.construction.clothlist import too_wide_in
from advisor.construction.disagreement import Disagreement, Figure
from advisor.construction.elastics import slack
from advisor.construction.fewlayers import too_few_layers
from advisor.construction.fullness import fullness_of
from advisor.construction.halves import unjoined_halves, unjoined_widths
from advisor.construction.hemroom import deep_in_narrow, too_short_for_two
from advisor.construction.inrows import LACING, apart_of, holes_for, is_row, number_in
from advisor.construction.liningease import tight_across
from advisor.construction.liningroom import too_wide_a_lining
from advisor.construction.needlessgap import needless_gap
from advisor.construction.nostrip import no_strip
from advisor.construction.openinglength import slit_past_its_piece
from advisor.construction.partsagree import against_its_part, unended
from advisor.construction.pipedstrip import too_narrow_for_its_cord
from advisor.construction.twice import (
    channel_said_twice,
    drawn_into_a_waist,
    pocket_at_a_zip,
    said_twice,
    told_once_more,
    zip_that_crosses_nothing,
)
from advisor.craft import fullness as table
from advisor.knowledge.model import Knowledge
from advisor.project.buttons import (
    HOLES,
    alike,
    buttons_of,
    half_for_show,
    holes_of,
    on_a_strap,
    without_holes,
)
from advisor.project.folded import PLEAT
from advisor.project.garment import Garment, Seam, Use
from advisor.project.linings import unit_of
from advisor.project.making import Bolt, Piece
from advisor.project.placing import singular_words

NEAR: Final = 0.05
"""A share by which two numbers may differ and still agree (estimate) ..."""
CLOSE: Final = 0.03
"""... and by which the finished length of one edge may, said once for its place and once for its
piece, whatever either is drawn up from (estimate)."""
ENDS: Final = 35.0
"""What the joins of a band may take on top of its length, mm: two allowances and a little."""


def disagreements(judgement: Judgement, knowledge: Knowledge) -> list[Disagreement]:
    """Everything that does not agree, in the order of the places and then of the cloths."""
    garment = judgement.garment
    found: list[Disagreement] = []
    for seam in garment.seams:
        found += _fullness(seam, garment)
        found += too_few_layers(seam, garment)
        found += _pleats(seam, garment, knowledge)
        found += _stretched(seam, garment)
        found += _slack(seam, garment, knowledge)
    found += unlike_its_band(garment, knowledge)
    found += _too_tall(garment)
    found += slit_past_its_piece(garment)
    found += _ring_hems(garment)
    found += deep_in_narrow(judgement, knowledge)
    found += too_short_for_two(judgement, knowledge)
    found += too_narrow_for_its_cord(judgement, knowledge)
    found += _buttons(garment, knowledge)
    found += _uncounted(garment, knowledge)
    found += _loose_lining(garment, knowledge)
    found += needless_gap(garment, knowledge)
    found += unjoined_halves(garment)
    found += unjoined_widths(garment)
    found += too_wide_a_lining(garment, knowledge)
    found += tight_across(garment, knowledge)
    found += _unused(garment, knowledge)
    found += no_strip(garment, knowledge)
    found += said_twice(garment, knowledge)
    found += drawn_into_a_waist(garment, knowledge)
    found += told_once_more(garment)
    found += channel_said_twice(garment)
    found += pocket_at_a_zip(garment)
    found += zip_that_crosses_nothing(garment, knowledge)
    found += unended(garment, knowledge)
    for seam in garment.seams:
        found += against_its_part(seam, garment, knowledge)
    found += (
        Disagreement("too-wide", name, (), too_wide=error)
        for name, error in too_wide_in(judgement, knowledge)
    )
    return found


def _far(one: float, other: float, share: float = NEAR) -> bool:
    return abs(one - other) > share * max(abs(one), abs(other))


def _full_pieces(use: Use, garment: Garment) -> list[Piece]:
    """Pieces of a cloth that are gathered up, by their finished sizes."""
    return [p for p in garment.plan.pieces if p.cloth == use.cloth and p.fullness > 1 and not p.cut]


def _too_tall(garment: Garment) -> Iterator[Disagreement]:
    """The height of a piece against the seam that runs down it."""
    for seam, piece in too_tall(garment):
        said = Figure(f"{seam.name} is said to be", float(seam.facts["length"]))
        high = Figure(f"the piece {piece.name} is high", piece.height)
        yield Disagreement("height", seam.name, (said, high), cloth=piece.cloth)


def _fullness(seam: Seam, garment: Garment) -> Iterator[Disagreement]:
    """Fullness of the seam against that of its piece, and both against the hem."""
    length = seam.facts.get("length")
    full = [use for use in dict.fromkeys(seam.uses) if use.fullness > 1]
    if length is None or seam.making.pleats is not None:
        return
    for use in full:
        pieces = [p for p in _full_pieces(use, garment) if may_belong(p, seam, garment)]
        near = [p for p in pieces if not _far(p.width, _along(seam))]
        if len(pieces) == 1 or len(near) == 1:
            piece = (near or pieces)[0]
            yield from _compared(seam, use, piece, garment)


def _along(seam: Seam) -> float:
    """The length of a place, as often as the garment has it."""
    return float(seam.facts["length"]) * seam.making.times


def _compared(seam: Seam, use: Use, piece: Piece, garment: Garment) -> Iterator[Disagreement]:
    asks = table.cut_width(_along(seam), use.fullness)
    gives = table.cut_width(piece.width, piece.fullness)
    edges = [
        s
        for s in garment.seams
        if s.facts.get("edge") == "hem" and s.cloths() == (use.cloth,) and "length" in s.facts
        if may_belong(piece, s, garment)
    ]
    hems = [Figure(f"{s.name} is said to be", _along(s)) for s in edges]
    wrong = [hem for hem in hems if _far(hem.value, gives)] if len(hems) == 1 else []
    other = _other_edge(seam, use, piece, garment)
    if other is not None:
        yield from _at_both_edges(seam, use, piece, other)
        return
    if not _far(asks, gives) and not wrong:
        yield from _drawn_to(seam, use, piece)
        return
    ratio, number = not _far(use.fullness, piece.fullness), piece.number or 1
    meant = (asks, *(hem.value for hem in hems))
    each = ratio and number > 1 and not any(_far(one, gives * number) for one in meant)
    alike = each or (ratio and not wrong)
    flared = not _far(asks, gives) and any(map(_flares, edges)) and hems[0].value > gives
    odd = "flare" if flared and ratio else "fullness"
    often = f", {seam.making.times} times," if seam.making.times > 1 else ""
    yield Disagreement(
        "width" if alike else odd,
        seam.name,
        (
            Figure(f"{seam.name}{often} asks of {use.cloth}", use.fullness, "ratio"),
            Figure("that is", asks),
            Figure(f"the piece {piece.name} gives", piece.fullness, "ratio"),
            Figure("that is", gives),
            *(() if each else wrong),
        ),
        cloth=use.cloth,
        together=(piece.width, number, _panels(piece, garment)) if each else None,
    )


def _drawn_to(seam: Seam, use: Use, piece: Piece) -> Iterator[Disagreement]:
    """The length of an edge against that to which its piece is said to be drawn up."""
    if not _far(use.fullness, piece.fullness) and _far(_along(seam), piece.width, CLOSE):
        long = Figure(f"{seam.name} is said to be", _along(seam))
        drawn = Figure(f"the piece {piece.name} is drawn up to", piece.width)
        yield Disagreement("drawn up", seam.name, (long, drawn), cloth=use.cloth)


def _flares(hem: Seam) -> bool:
    """Whether a hem hangs from a piece that widens towards it: it is curved or runs on the bias."""
    return hem.facts.get("bias") == "yes" or hem.facts.get("shape") == "curved"


def _panels(piece: Piece, garment: Garment) -> int:
    """Of how many panels each piece is put together, where its finished width is of each."""
    usable = garment.plan.bolts.get(piece.cloth, Bolt()).usable
    room = math.inf if usable is None else usable - 2 * piece.allowance
    return max(1, math.ceil(piece.width * piece.fullness / room - 1e-9)) if room > 0 else 1


def _other_edge(seam: Seam, use: Use, piece: Piece, garment: Garment) -> Seam | None:
    """The place at the other edge of a piece, where the piece has the fullness of that one."""
    if not _far(use.fullness, piece.fullness):
        return None
    return next(
        (
            other
            for other in garment.seams
            if other != seam and "length" in other.facts and not _far(_along(other), piece.width)
            for drawn in other.uses
            if drawn.cloth == piece.cloth and not _far(drawn.fullness, piece.fullness)
        ),
        None,
    )


def _at_both_edges(seam: Seam, use: Use, piece: Piece, other: Seam) -> Iterator[Disagreement]:
    """A piece that is drawn up at both edges: each has its own fullness, of one width of cloth."""
    wide = piece.width if piece.narrow is None else piece.narrow
    has, asks = wide * piece.fullness, table.cut_width(_along(seam), use.fullness)
    if _far(has, asks):
        yield Disagreement(
            "both edges",
            seam.name,
            (
                Figure(f"{seam.name} asks of {use.cloth}", asks),
                Figure(f"the piece {piece.name}, which agrees with {other.name}, has", has),
                Figure(f"drawn up to {seam.name} that is", has / _along(seam), "ratio"),
            ),
            cloth=use.cloth,
        )


def _ring_hems(garment: Garment) -> Iterator[Disagreement]:
    """The hem of a flounce against the outer edge of the ring that it is cut as."""
    for piece in garment.plan.pieces:
        said = piece.flounce
        hems = [
            seam
            for seam in garment.seams
            if seam.facts.get("edge") == "hem"
            and seam.cloths() == (piece.cloth,)
            and "length" in seam.facts
        ]
        named = [s for s in hems if set(singular_words(piece.name)) & set(singular_words(s.name))]
        if said is None or len(named or hems) != 1:
            continue
        (hem,) = named or hems
        ring = table.flounce(said.seam, said.depth, pieces=said.pieces, turn=said.turn)
        gives, has = ring.hem_length * (piece.number or 1), _along(hem)
        if _far(has, gives):
            yield Disagreement(
                "ring",
                hem.name,
                (
                    Figure(f"{hem.name} is said to be", has),
                    Figure(f"the ring of {piece.name} has at its outer edge", gives),
                ),
                cloth=piece.cloth,
            )


def _pleats(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """The width that pleats take against the only piece of their cloth, half or name."""
    if seam.making.pleats is None:
        return
    full = fullness_of(seam, garment, knowledge)
    if full is None or full.cut is None:
        return
    pieces = half_of(seam, [p for p in garment.plan.pieces if p.cloth == full.cloth])
    pieces = namesakes(seam, pieces) if pieces[1:] else pieces
    if len(pieces) != 1 or pieces[0].grain == "crosswise" or not pieces[0].number:
        return
    (piece,) = pieces
    number = piece.number or 1
    takes = full.cut * seam.making.times
    off = 2 * piece.allowance * number if piece.cut else 0.0
    has = piece.width * piece.fullness * (number if piece.fullness == 1 else 1) - off
    if seam.place == PLEAT and takes <= has:
        return  # a pleat in the middle of its piece need not take all of it
    if _far(has, takes) and _far(piece.height * number - off, takes):  # folded along either side
        yield Disagreement(
            "pleats",
            seam.name,
            (
                Figure(f"the pleats of {seam.name} take", takes),
                Figure(f"{piece.name} has, seams off,", has),
            ),
            cloth=piece.cloth,
        )


def _stretched(seam: Seam, garment: Garment) -> Iterator[Disagreement]:
    """A band that is stretched on: its cut length against its piece."""
    length = seam.facts.get("length")
    for use in seam.uses:
        pieces = [p for p in garment.plan.pieces if p.cloth == use.cloth]
        if length is None or use.stretched <= 1 or len(pieces) != 1:
            continue
        net = float(length) / use.stretched
        sizes = (pieces[0].width, pieces[0].height)
        most = net + (ENDS if pieces[0].cut else 0.0)
        has = min(sizes, key=lambda size: abs(size - most))
        if has < net * (1 - NEAR) or has > most * (1 + NEAR):
            yield Disagreement(
                "stretched",
                seam.name,
                (
                    Figure(f"{seam.name} asks of {use.cloth}, seams not counted,", net),
                    Figure(f"the piece {pieces[0].name} has", has),
                ),
                cloth=use.cloth,
            )


def _slack(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """An elastic that is as long as its channel draws nothing in."""
    for use in seam.uses:
        cut = slack(
            knowledge.entries[garment.cloths[use.cloth].entry], seam, use.cloth, garment.seams
        )
        if cut is not None:
            figures = (
                Figure(f"{use.cloth} draws nothing in; from the body that is said it is cut", cut),
                Figure(f"{seam.name} has", seam.long_mm),
            )
            yield Disagreement("slack", seam.name, figures)


def _buttons(garment: Garment, _knowledge: Knowledge) -> Iterator[Disagreement]:
    """As many of holes as of their buttons; twice as many make a double-breasted front."""
    for hole in garment.seams:
        if hole.place != HOLES:
            continue
        buttons = buttons_of(hole, garment) or without_holes(garment)
        if len(buttons) != 1 or len(holes_of(buttons[0], garment)) > 1:
            continue
        button, holes = buttons[0], hole.making.times
        counted, number = button.making.counted, button.making.times
        if not counted or number == holes or half_for_show(button, holes):
            continue
        if on_a_strap(hole) and holes % number == 0:
            continue
        if alike(hole, button, garment):
            figures = tuple(Figure(s.name, s.making.times, "count") for s in (hole, button))
            yield Disagreement("buttons", button.name, figures)
        else:
            text = f"there are {holes}, and no buttons of a like name, only {number} {button.name}"
            yield Disagreement("buttons", hole.name, (), text)


def _uncounted(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """Fastenings of which a place may hold a row, where nobody said their number."""
    for seam in garment.seams:
        for name in seam.cloths():
            entry = knowledge.entries[garment.cloths[name].entry]
            sure = seam.making.counted or holes_for(seam, entry, garment) is not None
            if apart_of(entry) is None or "length" not in seam.facts or sure:
                continue
            row, times = is_row(seam, entry), number_in(seam, entry, garment)
            both = f" ({times // 2} on each edge)" if seam.place == LACING else ""
            what = f"a row of {name}, taken as {times}{both}" if row else f"one or more of {name}"
            text = f"has {what}, and nobody said how many: write times: {times}"
            yield Disagreement("uncounted", seam.name, (), text)


def _loose_lining(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A lining with seams of its own that meets the shell nowhere."""
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    units = [(seam, unit_of(seam, entries)) for seam in garment.seams]
    own = [seam for seam, unit in units if unit == "lining"]
    if len(own) in (0, len(units)):
        return
    linings = {use.cloth for seam in own for use in seam.uses}
    met = any({use.cloth for use in s.uses} & linings for s, unit in units if unit == "shell")
    if not met and not any(unit == "both" for _, unit in units):
        cloth = own[0].uses[0].cloth
        text = (
            f"meets the shell nowhere: write {cloth} among the layers of the waistband or the "
            f"binding that takes it in, or a place such as 'facing to lining' with both cloths"
        )
        yield Disagreement("loose lining", own[0].name, (), text)


def _unused(garment: Garment, knowledge: Knowledge) -> Iterator[Disagreement]:
    """A cloth that is sewn while no piece is cut from it, where pieces are given at all."""
    cut = {piece.cloth for piece in garment.plan.pieces}
    sewn = {name for seam in garment.seams for name in seam.cloths()}
    for name, cloth in garment.cloths.items() if cut else ():
        if knowledge.entries[cloth.entry].kind != "cloth" or name in cut:
            continue
        text = "is sewn, but no piece is cut from it, so none is bought"
        if name not in sewn:
            text = "is in no place and in no piece"
        yield Disagreement("unused", name, (), text)
