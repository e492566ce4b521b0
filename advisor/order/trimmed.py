"""What ribbon, cord and lace ask of a place: a band that is a ribbon, a cord to cover, an edge."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Final

from advisor.order.covering import COVER, covered_neck, covered_zip, zip_edge_open
from advisor.order.gapfacts import ribbon_band
from advisor.order.layering import lining_cloths
from advisor.order.legs import STRIPE
from advisor.project.lacewords import finished_below, is_lace, spread
from advisor.project.placing import lace_on_edge, singular_words
from advisor.project.stripes import caught_in_its_seam
from advisor.project.together import over_its_mount, ribbon_as_band, ribbon_at_the_waist
from advisor.project.tucked import tucks_on_a_piece

if TYPE_CHECKING:
    from advisor.knowledge.ordering import Operation
    from advisor.order.facts import Facts
    from advisor.order.kinds import SeamPlace
    from advisor.project.making import Piece

RIBBON: Final = "ribbon"
WAIST: Final = "waist"
CHANNELS: Final = frozenset({"casing", "channel"})
"""Words of what an elastic is drawn through."""
EDGES: Final = "edge-trim"
POCKET_EDGE: Final = "pocket-edge"
"""The role of the top of a pocket that is finished while the pocket lies by itself."""
LACES: Final = "lace"
CORD: Final = "piping-cord"
CLOSED_OVER: Final = frozenset({"side", "centre", "inseam", "panel", "plain"})
"""Roles of the seams that a row round a skirt runs over."""
PAIR: Final = 2


def on_the_lining(place: SeamPlace, facts: Facts) -> bool:
    """Whether what is laid on is said to lie on the lining, and on nothing of the shell."""
    linings = lining_cloths(facts.places)
    return bool(place.cloths) and set(place.cloths) <= linings


def answers(place: SeamPlace, facts: Facts) -> dict[str, Callable[[], bool]]:
    """The facts of a place that are told here."""
    return {
        "band is a ribbon": lambda: ribbon_band(
            place, {n: facts.entry(n) for n in place.seam.cloths()}
        ),
        "ribbon is the band": lambda: ribbon_as_band(
            place.seam,
            facts.garment.plan.pieces,
            {n: facts.entry(n) for n in place.seam.cloths()},
        ),
        "top of the pocket open": lambda: not _top_finished(place, facts),
        "top of the pocket finished": lambda: _top_finished(place, facts),
        "elastic lies on a seam": lambda: _elastic_on_seam(place, facts),
        "edge of the zip open": lambda: (
            zip_edge_open(place, facts.places) and bool(facts.setups.finish(place))
        ),
        "covers what is sewn": lambda: (
            covered_zip(place, facts.places) or covered_neck(place, facts.places)
        ),
        "lies on the lining": lambda: on_the_lining(place, facts),
        "lace alone": lambda: _of_lace_alone(place, facts),
        "cord to be covered": lambda: bool(cover_of(place, facts)),
        "lace on an edge": lambda: (
            _lace_edge(place, facts) and not _mounted(place, facts) and not _finished(place, facts)
        ),
        "plain net": lambda: bool(place.cloths) and all(_plain_net(c, facts) for c in place.cloths),
        "stays an edge": lambda: len(set(place.cloths)) > 1 and _finished(place, facts),
        "lace on a finished edge": lambda: _lace_edge(place, facts) and _finished(place, facts),
        "lace laid over seams": lambda: (
            spread(singular_words(place.name)) and place.said("stitched by") != "machine"
        ),
        "ribbon faces the waist": lambda: bool(
            ribbon_at_the_waist(place.seam, {n: facts.entry(n) for n in place.seam.cloths()})
        ),
        "skirts in one another": lambda: len(set(place.cloths)) > 1,
        "tucks of no piece": lambda: tucks_on_a_piece(place.seam, facts.garment) is None,
        "lace over its mount": lambda: _lace_edge(place, facts) and _mounted(place, facts),
    }


def _plain_net(cloth: str, facts: Facts) -> bool:
    """Whether a cloth is a net with no motifs to cut round, of which no edge ravels."""
    entry = facts.entry(cloth)
    return entry.structure == "net" and not is_lace(entry) and facts.stays_cut(cloth)


def _lace_edge(place: SeamPlace, facts: Facts) -> bool:
    return lace_on_edge(place.seam, facts.entry)


def _mounted(place: SeamPlace, facts: Facts) -> bool:
    return over_its_mount(place.seam, facts.garment.seams)


def _finished(place: SeamPlace, facts: Facts) -> bool:
    """Whether the edge that it lies on is turned or bound as a place of its own."""
    return finished_below(place.seam, facts.garment.seams, singular_words) is not None


SCALLOPED: Final = (
    "Level {name}. Where the scalloped border of the lace lies along it, cut nothing; else trim it "
    "round its motifs."
)


def lace_edge(op: Operation, place: SeamPlace, facts: Facts) -> str:
    """The sentence of a lace edge that is left as it is; "" of every other edge and work."""
    laces = all(is_lace(facts.entry(c)) and facts.entry(c).family == LACES for c in place.cloths)
    raw = op.id == "trim" and place.kind.id == "raw-edge" and bool(place.cloths)
    return SCALLOPED if raw and laces else ""


def _of_lace_alone(place: SeamPlace, facts: Facts) -> bool:
    """Whether motifs are lapped on motifs: what is cut off is seen only once they are sewn."""
    return bool(place.cloths) and all(is_lace(facts.entry(c)) for c in place.cloths)


def cover_of(place: SeamPlace, facts: Facts) -> str:
    """The cloth in which the cord of a piped seam is covered: cut on the bias for nothing else."""
    corded = any(facts.entry(n).id == CORD for n in place.notions)
    strips = {p.cloth for p in facts.garment.plan.pieces if p.grain == "bias"}
    return next((n for n in place.cloths if corded and n in strips), "")


def _elastic_on_seam(place: SeamPlace, facts: Facts) -> bool:
    """Whether it draws in a waist at which a seam hangs a skirt: no edge is there to fold.

    What is called a casing is one: a strip over the seam, or its allowances stitched down.
    """
    elastic = any(facts.entry(n).kind == "elastic" for n in place.notions)
    seams = (
        p for p in facts.places if p.role.id == WAIST and p.kind.id in ("seam", "gathered-edge")
    )
    joined = any(set(p.cloths) & set(place.cloths) for p in seams)
    words = set(singular_words(place.name))
    laid = WAIST in words and not words & CHANNELS and place.unit != "lining"
    return elastic and joined and laid


def _top_finished(pocket: SeamPlace, facts: Facts) -> bool:
    """Whether a place of its own binds or faces the top of a pocket that is laid on."""
    tops = (p for p in facts.places if p.role.id == POCKET_EDGE)
    return any(set(p.cloths) <= set(pocket.cloths) for p in tops)


def seams_under(rows: SeamPlace, facts: Facts) -> list[SeamPlace]:
    """The seams of a piece, two or more alike, that rows of ribbon run over in one length.

    A stripe that lies along the seam of a leg crosses none, nor does a tape over a seam; what is
    sewn round finished edges comes when every seam is closed.
    """
    if rows.kind.id != RIBBON or rows.role.id in (STRIPE, COVER, EDGES):
        return []
    if caught_in_its_seam(rows.seam, facts.garment):
        return []
    pieces = [p for p in facts.garment.plan.pieces if p.cloth in rows.cloths]
    wide = max(map(_wide, pieces), default=0.0)
    if not wide or rows.seam.long_mm <= wide:
        return []
    many = (p for p in facts.places if p.kind.id == "seam" and p.seam.making.times >= PAIR)
    near = (p for p in many if set(p.cloths) <= set(rows.cloths) and p.seam.part == rows.seam.part)
    near = (p for p in near if p.name not in (rows.crosses or ()))  # it is sewn over closed seams
    return [p for p in near if p.role.id in CLOSED_OVER and p.unit == rows.unit]


def _wide(piece: Piece) -> float:
    """How wide a piece lies flat; what is drawn up is one width for all its panels."""
    panels = (piece.number or 1) if piece.fullness > 1 and not piece.cut else 1
    return piece.width * piece.fullness / panels


def rows_over(seam: SeamPlace, facts: Facts) -> list[str]:
    """The rows of ribbon over whose ends the last of some seams is closed."""
    return [p.name for p in facts.places if seam in seams_under(p, facts)]
