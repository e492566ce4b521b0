"""What a formula tells, done again by hand: strips cut and joined, pleats folded, layers rolled.

Nothing here is shared with `advisor.craft`: a strip is cut from its square and measured, a pleat is
walked along, fold by fold, a bone is bent in small pieces.
"""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from advisor.craft import allowance, boning, cloth, fullness, pleats
from advisor.craft.cloth import BoughtCloth, CutPiece
from advisor.craft.pleats import Pleat

JOIN = 12 * math.sqrt(2)
"""What a join takes of the length of a strip: two allowances of 6 mm on the straight grain."""
DONE = settings(max_examples=150, deadline=None)


def strips_of(wide: float, long: float, width: float) -> float:
    """Length of strip out of a rectangle, mm: cut beside a line at 45° from its middle, joined.

    A strip is as long as the shorter of its two edges and half of what the longer has more, for
    its ends are cut on the grain; what is no longer than a join is thrown away.
    """

    def edge(far: float) -> float:
        """How long a line at 45° lies within, so far from the line through the first corner."""
        shift = far * math.sqrt(2)
        left, right = max(0.0, -shift), min(wide, long - shift)
        return max(0.0, right - left) * math.sqrt(2)

    out: list[float] = []
    for way in (1, -1):
        for number in itertools.count():
            near, then = edge(way * number * width), edge(way * (number + 1) * width)
            if not then:
                break
            out.append((near + then) / 2)
    kept = [one for one in out if one > JOIN]
    return sum(kept) - JOIN * max(0, len(kept) - 1)


@DONE
@given(st.floats(100, 20_000), st.floats(15, 80))
def test_a_square_gives_the_strip_that_is_asked_of_it(long: float, wide: float) -> None:
    """Cut and joined, never less than is asked, and no more than two of its longest strips over."""
    side = allowance.strip_square(long, wide)
    given_ = strips_of(side, side, wide)
    assert long - 1e-6 <= given_
    assert given_ <= long + 2 * side * math.sqrt(2)


@DONE
@given(st.floats(300, 20_000), st.floats(15, 60), st.floats(300, 1500))
def test_the_cloth_told_gives_a_joined_piece(long: float, wide: float, across: float) -> None:
    """Whether it is a square or as wide as the cloth, the lay is never too short for the strip."""
    found = cloth.estimate([CutPiece(wide, long, bias=True, joined=True)], BoughtCloth(across))
    side = min(allowance.strip_square(long, wide), across)
    assert long - 0.5 <= strips_of(side, found.packed_mm, wide)


def walked(kind: Pleat, number: int, face: float, depth: float, gap: float) -> list[float]:
    """Where cloth runs as pleats are laid: the places of its folds, mm along the finished edge."""
    room = face + gap
    steps = {
        Pleat.KNIFE: [room + depth, -depth],
        Pleat.BOX: [gap / 2 + depth, -depth, face, -depth, depth + gap / 2],
        Pleat.INVERTED: [room / 2, -depth, 2 * depth, -depth, room / 2],
    }[kind]
    return list(itertools.accumulate([*steps * number], initial=0.0))


@DONE
@given(
    st.sampled_from(Pleat),
    st.integers(1, 30),
    st.floats(5, 100),
    st.floats(0.05, 0.99),
    st.floats(0, 50),
)
def test_pleats_take_the_cloth_that_is_walked_along_them(
    kind: Pleat, number: int, face: float, part: float, gap: float
) -> None:
    """Cut and finished width, fold by fold; and in the middle of the row the plies are counted."""
    depth = part * pleats.deepest(kind, face, gap)
    row = pleats.pleats(kind, number, face, depth, spacing=gap)
    folds = walked(kind, number, face, depth, gap)
    assert row.cut == pytest.approx(sum(abs(b - a) for a, b in itertools.pairwise(folds)))
    assert row.finished == pytest.approx(folds[-1])
    many = walked(kind, 30, face, depth, gap)
    places = (15 * (face + gap) + (face + gap) * i / 97.3 for i in range(97))
    least = 1e-6  # folds that only touch lie over nothing
    most = max(
        sum(min(e) + least < x < max(e) - least for e in itertools.pairwise(many)) for x in places
    )
    assert most <= pleats.layers(kind, face, depth, gap)


@DONE
@given(st.floats(0.1, 6), st.floats(0.001, 0.05))
def test_a_bone_bent_in_small_pieces_is_strained_as_told(thick: float, strain: float) -> None:
    """The outside of a ring of 10 000 chords against its middle, at the least radius told."""
    radius = boning.least_radius(thick, strain)
    turn = 2 * math.pi / 10_000
    outside, middle = (2 * r * math.sin(turn / 2) for r in (radius + thick / 2, radius))
    assert strain == pytest.approx(outside / middle - 1, rel=1e-6)


@DONE
@given(st.floats(100, 3000), st.floats(1, 4), st.floats(0, 20), st.floats(700, 1600))
def test_panels_sewn_up_and_drawn_in_make_their_edge(
    edge: float, full: float, seam: float, across: float
) -> None:
    """Each panel loses a seam at both sides, and what is left is drawn up to the edge."""
    made = fullness.panels(edge, full, across, seam)
    sewn = sum(made.panel_width - seam - seam for _ in range(made.number))
    assert edge == pytest.approx(sewn / full)
    fewer = made.number - 1
    # The first and the last edge of what is sewn up need their seams besides.
    needed = edge * full + 2 * seam
    assert not fewer or fewer * (across - 2 * seam) < needed * (1 + 1e-9)
