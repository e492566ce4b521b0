"""A jacket that the maker quilts herself, and loops that its edge catches: common practice.

The layers are quilted while each piece is roomy, and cut to the pattern only then; what is caught
in an edge lies there before the edge is sewn; a collar is set to a neck that is whole.
"""

from __future__ import annotations

from advisor.answer.pipeline import WHOLE, Parts, answer
from advisor.decide.advise import advise
from advisor.order.work import order_of
from advisor.project.load import garment_of, load_project
from advisor.render.printed.compact import render_sheet
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, advice, known, stands, work

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


UNTOLD = """garment: Smock
fabrics: {linen: handkerchief linen}
seams:
  - {name: yoke to body, kind: gathered edge, layers: [linen, linen], length: 90 cm}
  - {name: side, layers: [linen, linen], length: 60 cm}
"""


def test_an_edge_that_is_gathered_is_drawn_up_though_nobody_says_how_full() -> None:
    """Sheet and order agree that it is gathered; how full it is stands under what is not known."""
    garment = garment_of(parse_yaml(UNTOLD, "project.yaml"), known())
    found = order_of(advise(garment, known()), known())
    assert stands(found, "gather yoke to body", "join yoke to body")
    facts = [u.fact for u in answer(garment, known(), Parts(order=True)).unknowns]
    assert "yoke to body: how full it is gathered" in facts


def test_the_sheet_that_is_printed_names_what_else_is_bought() -> None:
    """Buttons by number; of what is cut like a cloth, how long its longest place is."""
    told = answer(load_project(FOLDER / f"{JACKET}.yaml", known()), known(), WHOLE)
    assert "Notions: button, 6, and 1 to spare; wadding (180 cm or more)" in " ".join(
        render_sheet(told).split()
    )
