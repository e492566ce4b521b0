"""What is cut and how it is marked, in the maker's units: sizes, tucks, rings, what to mind."""

from __future__ import annotations

from advisor.answer.model.making import ToldCut, ToldRing, ToldTucks
from advisor.answer.teller import Teller
from advisor.construction.cutnotes import CutNote
from advisor.construction.cutting import Ring, TuckMarks
from advisor.craft import fullness as table
from advisor.units import System, show_size

_TURNS = {
    1.0: "full circle",
    0.75: "three-quarter circle",
    0.5: "half circle",
    0.25: "quarter circle",
}
_SOURCES = {
    "tucks": ("clothing-text-1916", "common-practice"),
    "flounce": ("derived", "clothing-text-1916", "common-practice"),
}
_FULLER = 1.2
FRONT_SEAM = (
    "{number} equal widths with {seam} behind put a seam down the middle of the front: cut a whole "
    "width for the front and halve one for the back."
)
EASES = 0.03
"""The share that most woven cloth eases in along a curved edge (memory)."""


def told_cut(note: CutNote, teller: Teller) -> ToldCut:
    """A piece as it is cut; lengths in mm."""
    cut = note.cut
    piece = cut.piece
    return ToldCut(
        name=cut.name,
        fabric=piece.cloth,
        number=cut.number,
        width_mm=round(cut.width, 1),
        height_mm=round(cut.height, 1),
        reckoned=not piece.cut or bool(note.shape) or cut.parts > 1,
        shape=note.shape,
        of="tiers" if piece.tiers is not None else note.shape,
        fullness=cut.fullness,
        edge_mm=None if cut.edge is None else round(cut.edge, 1),
        usual_fullness=None
        if note.usual is None
        else (round(note.usual.low, 2), round(note.usual.high, 2)),
        tucks=None if cut.tucks is None else _tucks(cut.tucks, note),
        ring=None if cut.ring is None else _ring(cut.ring),
        avoids=tuple(note.avoids),
        size=size_text(note, teller.units),
        marks=marks_text(note, teller.units),
        says=tuple(map(teller.say, cut_says(note, teller.units))),
        sources=teller.cite(cut_sources(note)),
    )


def _tucks(marks: TuckMarks, note: CutNote) -> ToldTucks:
    return ToldTucks(
        number=marks.number,
        depth_mm=marks.depth,
        spacing_mm=round(marks.spacing, 1),
        first_fold_mm=round(marks.first, 1),
        fold_to_fold_mm=round(marks.fold_to_fold, 1),
        takes_mm=round(marks.takes, 1),
        thread_m=None if note.thread is None else round(note.thread.total / 1000, 2),
    )


def _ring(ring: Ring) -> ToldRing:
    return ToldRing(
        cut_inner_mm=round(ring.cut_inner, 1),
        seam_line_mm=round(ring.seam_line, 1),
        cut_outer_mm=round(ring.cut_outer, 1),
        hem_mm=round(ring.hem, 1),
        hem_fullness=round(ring.hem_fullness, 2),
        turn=ring.turn,
    )


def cut_sources(note: CutNote) -> tuple[str, ...]:
    """What a piece's sizes and marks rest on."""
    if note.usual is not None:
        tiers = ("trade-tiers",) if note.cut.piece.tiers is not None else ()
        return ("derived", *tiers, *note.usual.sources)
    return _SOURCES.get(note.shape, ("derived",))


def size_text(note: CutNote, units: System) -> str:
    """How many, and how wide and long each is cut."""
    cut = note.cut
    wide, long = show_size(cut.width, units), show_size(cut.height, units)
    if cut.ring is not None:
        word = _TURNS.get(cut.ring.turn, f"{cut.ring.turn:.3g} of a circle")
        each = ", each" if cut.number > 1 else ""
        return f"{cut.number} × {word}{each} from a piece of {wide} × {long}"
    text = f"{cut.number} of {wide} wide × {long} long"
    if cut.parts > 1:
        text += f", {cut.parts} joined into one of {show_size(cut.whole, units)}"
    if cut.piece.doubled:
        text += ", to be folded double"
    if cut.edge is not None:
        text += f", {cut.fullness:.3g} to 1 on {show_size(cut.edge, units)}"
    return text


def marks_text(note: CutNote, units: System) -> str:
    """Where tucks are folded or a ring is drawn; nothing for a plain piece."""

    def length(value: float) -> str:
        return show_size(value, units)

    tucks, ring = note.cut.tucks, note.cut.ring
    if tucks is not None:
        text = f"{tucks.number} tucks {length(tucks.depth)} deep take {length(tucks.takes)}: first "
        text += f"fold {length(tucks.first)} from the cut edge"
        if tucks.number > 1:
            text += f", then {length(tucks.fold_to_fold)} from fold to fold"
        return f"{text}, stitched {length(tucks.depth)} from each fold"
    if ring is not None:
        return (
            f"radius {length(ring.cut_inner)} for the inner edge, {length(ring.seam_line)} for its "
            f"seam line, {length(ring.cut_outer)} for the outer edge; the hem line is "
            f"{length(ring.hem)} long in all, {ring.hem_fullness:.2g} times the seam line"
        )
    return ""


def _curved_hem(hem: float, ring: Ring, units: System) -> str:
    """What the hem of a ring has too much, and how deep it may be."""
    edge = ring.cut_outer - hem
    surplus = table.hem_surplus(hem, edge) * 100
    deepest = show_size(table.deepest_hem(edge, EASES), units)
    if hem <= table.deepest_hem(edge, EASES):
        return f"Its hem has {surplus:.1f} % to ease in; most cloth eases one of up to {deepest}."
    much = f"{surplus:.1f} %" if surplus < 100 else "far"
    return (
        f"Its hem has {much} too much to ease in: turn up {deepest} at most, or face it, "
        "bind it or roll it."
    )


def cut_says(note: CutNote, units: System) -> list[str]:
    """What to mind, cautions first."""
    says = []
    cloth = note.cut.piece.cloth
    if note.avoids:
        words = " and ".join(note.avoids)
        says.append(f"Caution: {cloth} avoids {words}; make one on a scrap before you cut.")
    if note.shape == "tucks":
        says.append("Stitch the tucks first, then cut the piece to its outline.")
        if note.thread is None:
            says.append(f"No seam holds {cloth}, so the thread of its tucks is not counted.")
    ring = note.cut.ring
    if ring is not None and note.cut.piece.hem:
        says.append(_curved_hem(note.cut.piece.hem, ring, units))
    if note.shape == "flounce":
        stay = "Staystitch or tape the inner edge before you clip it, let the flounce hang, and "
        says.append(f"{stay}make the hem narrow.")
    if note.opens:
        says.append(FRONT_SEAM.format(number=note.cut.number, seam=note.opens))
    return says + _fullness_says(note)


def _fullness_says(note: CutNote) -> list[str]:
    """Where the fullness is more than is usual for the cloth and its grain."""
    if note.usual is None or note.cut.fullness <= note.usual.high * _FULLER:
        return []
    grain = "a bias ruffle" if note.cut.piece.grain == "bias" else "this weight"
    return [f"Fuller than {grain} usually is ({note.usual.high:.3g} to 1), so bulky at its seam."]
