"""Boned bodices, lace let in, frills and pleats: found wrong by a reader of two evening gowns.

What is right instead is common practice of the trade, but where a test names its source.
"""

from __future__ import annotations

import pytest

from advisor.construction.twice import said_twice
from advisor.decide.advise import advise
from advisor.order.missing import missing
from advisor.order.work import Work, order_of
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, changed, known, places, stands, work

GOWN = "more/regatta_gown"
CLOTHS = """
garment: Sample
fitting: to the body
fabrics:
  wool: {fabric: wool gabardine}
  sheer: {fabric: georgette, fibres: {polyester: 100}}
  net: {fabric: tulle, fibres: {nylon: 100}}
  base: {fabric: coutil, fibres: {cotton: 100}}
seams:
"""
SKIRT = """\
  - {name: skirt panels, layers: [wool, wool], length: 62 cm, times: 2}
  - name: skirt pleats
    layers: [wool]
    pleats: {kind: knife, number: 24, depth: 3 cm, face: 3 cm}
  - {name: side, layers: [wool, wool], length: 62 cm, times: 2}
  - {name: waistband, layers: [wool, wool], length: 72 cm}
  - {name: hem, layers: [wool], length: 240 cm, edge: hem}
"""


def _garment(rows: str, first: str = "") -> Garment:
    return garment_of(parse_yaml(first + CLOTHS + rows, "sample.yaml"), known())


def _made(rows: str, first: str = "") -> Work:
    return order_of(advise(_garment(rows, first), known()), known())


def _gaps(garment: Garment) -> list[tuple[str, str]]:
    return [(gap.rule.id, gap.place.name) for gap in missing(garment, known())]


def _does(found: Work, step: str) -> str:
    return found.tasks[step].step.does


def test_nothing_is_cut_away_behind_a_lace_before_it_is_fitted() -> None:
    """The lace can be taken off again, the cloth behind it is gone; the lining covers it after."""
    lace = "lace inset"
    steps = (f"stitch on {lace}", f"press {lace}", "join bodice side", "fit")
    assert stands(work(GOWN), *steps, f"cut away behind {lace}", "join top edge")


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("garment: Regatta", "pattern: tried\ngarment: Regatta"),
        ("fitting: to the body\nmaker", "fitting: loosely\nmaker"),
    ],
)
def test_what_is_settled_is_cut_out_at_once(old: str, new: str) -> None:
    """A pattern that is tried has settled where the lace lies; what is loose is moved nowhere."""
    text = (FOLDER / f"{GOWN}.yaml").read_text(encoding="utf-8").replace(old, new)
    text = text.replace("[lining, foundation, taffeta], fitting: to the body", "[taffeta]")
    found = order_of(advise(garment_of(parse_yaml(text, "p.yaml"), known()), known()), known())
    assert stands(found, "cut away behind lace inset", "join bodice side")


def test_an_insertion_is_let_into_a_sleeve_while_that_is_flat() -> None:
    """It is no armhole, though its name holds the sleeve; nothing there waits for the fitting."""
    found = _made(
        "  - {name: sleeve insertion, layers: [sheer, {notion: lace insertion}], length: 50 cm}\n"
        "  - {name: bodice side, layers: [sheer, sheer], length: 24 cm, times: 2}\n"
        "  - {name: sleeve seam, layers: [sheer, sheer], length: 46 cm, times: 2}\n"
        "  - {name: armhole, layers: [sheer, {use: sheer, fullness: 1.5}], length: 46 cm}\n"
    )
    assert "applied" == places(found)["sleeve insertion"].role.id
    assert stands(found, "cut away behind sleeve insertion", "baste sleeve seam", "fit")


def test_a_strapless_edge_is_eased_to_one_tape_after_the_fitting() -> None:
    """No pattern says how far: the edge has to lie against the body; then it is closed over it."""
    found = work(GOWN)
    assert stands(found, "join bodice side", "fit", "stay top edge", "join top edge")
    assert "10 to 20 mm shorter altogether" in _does(found, "stay top edge")


def test_an_edge_that_hangs_from_straps_is_not_eased() -> None:
    """Straps hold it up, so that no stay is asked for, nor one round the waist."""
    row = "  - {name: straps, kind: fastening, fastening: ties, on: taffeta, number: 2}\n"
    strapped = changed(GOWN, "  - {name: bodice side,", f"{row}  - {{name: bodice side,")
    assert "stay top edge" not in strapped.tasks


def test_a_boned_bodice_that_hangs_from_nothing_needs_a_waist_stay() -> None:
    """It is asked for by its line; one that is there, or a lacing, is enough."""
    text = (FOLDER / f"{GOWN}.yaml").read_text(encoding="utf-8")
    gap = ("nothing-holds-it-up", "top edge")
    assert gap in _gaps(garment_of(parse_yaml(text, "p.yaml"), known()))
    for row in (
        "{name: waist stay, layers: [foundation, {notion: grosgrain ribbon}], length: 72 cm}",
        "{name: back lacing, layers: [foundation, {notion: lacing cord}]}",
    ):
        full = f"{text}  - {row}\n"
        assert gap not in _gaps(garment_of(parse_yaml(full, "p.yaml"), known()))


def test_straight_widths_of_a_sure_length_are_hemmed_before_they_are_pleated() -> None:
    """All but the ends beside the seams that are closed later: `clothing-text-1916`."""
    found = _made(SKIRT, "pattern: tried")
    steps = ("join skirt panels", "sew hem", "press hem", "lay skirt pleats", "join side")
    assert stands(found, *steps, "finish hem", "last press")
    assert "hem" not in found.tasks, "and no lower edge is hemmed a second time"
    assert "press the folds over hem" not in found.tasks


@pytest.mark.parametrize(
    ("first", "old", "new"),
    [
        ("", "", ""),
        ("pattern: new", "", ""),
        ("pattern: tried", "edge: hem}", "edge: hem, shape: curved}"),
        ("pattern: tried", "number: 24", "number: 2"),
        ("pattern: tried", "name: skirt pleats", "name: bib pleats"),
    ],
)
def test_a_hem_whose_length_is_not_sure_comes_last(first: str, old: str, new: str) -> None:
    """So does one on a curve, below two pleats alone, or below those of a bib."""
    found = _made(SKIRT.replace(old, new), first)
    assert stands(found, "join side", "sew hem")
    assert "finish hem" not in found.tasks


def test_straight_gathered_widths_do_not_hang_out() -> None:
    """They hang from every thread alike; cut on a curve, or of a knit, the edge drops."""
    rows = (
        "  - {name: side, layers: [sheer, sheer], length: 60 cm, times: 2}\n"
        "  - {name: waistband, layers: [base, {use: sheer, fullness: 2.5}], length: 72 cm}\n"
        "  - {name: hem, layers: [sheer], length: 170 cm, edge: hem}\n"
    )
    assert "hang" not in _made(rows).tasks
    assert "hang" in _made(rows.replace("{use: sheer, fullness: 2.5}", "sheer")).tasks
    assert "hang" in _made(rows.replace("edge: hem", "edge: hem, shape: curved")).tasks


FOUNDATION = """\
  - {name: foundation side, layers: [base, base], length: 30 cm, times: 2}
  - {name: bones, layers: [base, {notion: spiral boning}], length: 28 cm, times: 8}
  - {name: foundation hem, layers: [base], length: 90 cm, edge: hem}
  - {name: net to foundation, layers: [base, {use: net, fullness: 3}], length: 90 cm}
  - {name: top edge, layers: [wool, base], length: 90 cm, shape: curved, edge: turned}
"""


def test_a_foundation_is_hemmed_and_pressed_before_a_net_hangs_on_it() -> None:
    """Its hem is no floor's; and no machine runs over a bone, so those go in after both."""
    steps = ("sew foundation hem", "press foundation hem", "join net to foundation")
    assert stands(_made(FOUNDATION), "join foundation side", *steps, "insert bones in bones")


def test_a_row_over_the_end_of_a_channel_is_sewn_clear_of_its_bone() -> None:
    """The bones were in for the fitting, their channels open: each is drawn back first."""
    found = work(GOWN)
    assert stands(found, "insert bones in bones", "neaten waist", "close bones")
    for step in ("join waist", "neaten waist"):
        assert "drawn back clear" in _does(found, step)
    assert "drawn back" not in _does(found, "join skirt panels")


FRILL = "  - {name: wrist frill, layers: [sheer, {use: sheer, fullness: 2}], length: 20 cm}\n"
SEAM = "  - {name: sleeve seam, layers: [sheer, sheer], length: 46 cm}\n"
FRAYS = ("frill-edge-not-finished", "wrist frill")


def test_a_frill_whose_edge_frays_is_asked_how_that_is_finished() -> None:
    """It would be forgotten until it is drawn up, when no hemmer takes it any more."""
    assert FRAYS in _gaps(_garment(FRILL + SEAM))


@pytest.mark.parametrize(
    "rows",
    [
        FRILL + SEAM + "  - {name: frill hem, layers: [sheer], length: 40 cm, edge: hem}\n",
        FRILL.replace("20 cm}", "20 cm, edge: folded}") + SEAM,
        FRILL.replace("{use: sheer", "{use: net") + SEAM,
        FRILL.replace("wrist frill", "skirt waist") + SEAM,
        FRILL + "  - {name: lower edge, layers: [sheer], length: 40 cm, edge: hem}\n",
    ],
)
def test_a_frill_that_is_finished_or_needs_nothing_is_not_asked_about(rows: str) -> None:
    """Hemmed, folded, of net, no frill at all, or of a cloth that has no other edge."""
    assert not [gap for gap in _gaps(_garment(rows)) if gap[0] == FRAYS[0]]


def test_a_frill_is_hemmed_while_its_strip_is_long_and_flat() -> None:
    """Its hem runs over no place where that very strip is drawn up."""
    hem = "  - {name: wrist frill hem, layers: [sheer], length: 40 cm, edge: hem}\n"
    assert stands(_made(FRILL + SEAM + hem), "press wrist frill hem", "gather wrist frill")


RUFF = """\
parts: {body: {layers: [wool]}, ruff: {layers: [sheer]}}
"""
WORN = """\
  - {name: side, layers: [wool, wool], length: 60 cm, part: body}
  - {name: ruff, layers: [base, {use: sheer, fullness: 5}], length: 38 cm, edge: folded, part: ruff}
"""
LOOSE = ("worn-apart-not-closed", "ruff")


def test_a_ruff_that_is_put_on_by_itself_has_to_close() -> None:
    """One that is sewn to the neck, or has its hook, is not asked about."""
    assert LOOSE in _gaps(_garment(WORN, RUFF))
    hook = "  - {name: hook for ruff, layers: [base, {notion: hook and eye}], part: ruff}\n"
    assert LOOSE not in _gaps(_garment(WORN + hook, RUFF))
    assert LOOSE not in _gaps(_garment(WORN.replace("[base, {use", "[wool, {use"), RUFF))


def _twice(first: str, second: str) -> list[str]:
    names = (first, second)
    rows = "".join(f"  - {{name: {n}, layers: [wool, wool], length: 60 cm}}\n" for n in names)
    return [found.place for found in said_twice(_garment(rows), known())]


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("side", "side seams"),
        ("side seam", "outside leg"),
        ("inseam", "inside leg"),
        ("centre back", "back seam"),
        ("skirt panels", "skirt panel seam"),
    ],
)
def test_a_place_said_under_two_names_is_asked_about(first: str, second: str) -> None:
    """Sewn twice in the order and bought for twice, it would stand there as two seams."""
    assert [second] == _twice(first, second)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("centre back", "centre front"),
        ("left side", "right side"),
        ("bodice side", "skirt side"),
        ("armhole", "sleeve"),
        ("side", "shoulder"),
    ],
)
def test_places_that_only_sound_alike_are_left_alone(first: str, second: str) -> None:
    """Front and back, left and right, another piece: each is a seam of its own."""
    assert [] == _twice(first, second)


TOP = """\
  - {name: shoulder, layers: [wool, wool], length: 12 cm, times: 2}
  - {name: side, layers: [wool, wool], length: 40 cm, times: 2}
  - {name: front buttons, layers: [wool, {notion: shell button}], times: 6}
  - {name: hem, layers: [wool], length: 100 cm, edge: hem}
"""
ARM = """\
  - {name: armhole, layers: [wool, wool], length: 46 cm, times: 2}
  - {name: underarm, layers: [wool, wool], length: 40 cm, times: 2}
"""


@pytest.mark.parametrize(
    ("edge", "gap", "left"),
    [
        ("{name: scoop, layers: [wool, {notion: bias binding}]}", "neck", False),
        ("{name: arm binding, layers: [wool, {notion: bias binding}]}", "neck", True),
        ("{name: hem binding, layers: [wool, {notion: bias binding}]}", "neck", True),
        ("{name: forearm casing, layers: [wool, {notion: flat elastic}]}", "sleeve-end", False),
        ("{name: back waist casing, layers: [wool, {notion: flat elastic}]}", "sleeve-end", True),
    ],
)
def test_an_edge_fills_a_gap_by_what_it_is_and_not_by_its_name(
    edge: str, gap: str, left: bool
) -> None:
    """A bound edge that is called a scoop is the neck; one that is called otherwise is not."""
    found = {rule for rule, _ in _gaps(_garment(f"{TOP}{ARM}  - {edge}\n"))}
    assert left == (f"{gap}-not-finished" in found)
