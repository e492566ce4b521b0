"""A jacket that the maker quilts herself, and loops that its edge catches: common practice.

The layers are quilted while each piece is roomy, and cut to the pattern only then; what is caught
in an edge lies there before the edge is sewn; a collar is set to a neck that is whole.
"""

from __future__ import annotations

from tests.garments.whole import advice, stands, work

JACKET = "more/quilted_jacket"


def test_a_piece_is_quilted_and_cut_before_anything_is_sewn_of_it() -> None:
    """Quilting draws the cloth in, so nothing else comes before its last cut."""
    found = work(JACKET)
    last = "cut to the pattern quilting"
    assert stands(found, "baste quilting", "quilt quilting", last)
    steps = ("join shoulder", "join armhole", "join side and sleeve", "stitch on patch pockets")
    assert all(stands(found, last, step) for step in steps)
    assert "stay-stitch armhole" not in found.tasks
    assert found.tasks["quilt quilting"].step.machine is not None


def test_quilted_layers_are_told_to_be_cut_roomy() -> None:
    """She reads it before she cuts."""
    methods = work(JACKET).methods
    assert "larger than the pattern" in methods["quilting"].says


def test_loops_are_caught_in_an_edge_and_buttons_come_after() -> None:
    """No slit is cut for a loop, so nothing is stiffened behind it either."""
    found = work(JACKET)
    assert "button-loops-caught-in" == found.methods["front loops"].id
    assert stands(found, "baste on front loops", "fasten front buttons")
    fired = {f.rule.id for f in advice(JACKET).judgement.gathered.fired}
    assert "buttonhole-with-nothing-behind" not in fired


def test_a_collar_is_set_to_a_whole_neck() -> None:
    """It shares no cloth with the shoulder and is set after it all the same."""
    found = work(JACKET)
    assert stands(found, "press shoulder", "join collar seam")
