"""What was found wrong in a lined gown with a shawl collar and in a suit with a sequinned yoke.

All is common practice of the trade.
"""

from __future__ import annotations

from advisor.answer.model.answer import Answer
from advisor.order.work import Work
from tests.garments.whole import FOLDER, ordered, places, read, stands, work
from tests.typed import typed

SUIT = "more/pierhead_overall"
TEXT = (FOLDER / f"{SUIT}.yaml").read_text(encoding="utf-8")
GOWN = """garment: Gown for a signal box
units: metric
fitting: loosely
maker: {machine: household, overlocker: 3-thread}
fabrics:
  shell: {fabric: cotton flannel, fibres: {cotton: 100}, weight: 190 g/m2, width: 150 cm}
  satin: {fabric: satin, fibres: {acetate: 100}, weight: 130 g/m2, width: 140 cm}
  lining: {fabric: lining, fibres: {polyester: 100}, weight: 70 g/m2, width: 140 cm}
  quilt: {fabric: quilted, fibres: {cotton: 60, polyester: 40}, weight: 280 g/m2, width: 110 cm}
seams:
  - {name: shoulder, layers: [shell, shell], length: 16 cm, times: 2}
  - {name: patch pocket, layers: [shell, quilt], length: 64 cm, shape: corner, times: 2}
  - {name: armhole, layers: [shell, shell], length: 47 cm, shape: curved, times: 2}
  - {name: side and sleeve, layers: [shell, shell], length: 145 cm, times: 2}
  - {name: belt carrier, layers: [shell, shell], length: 9 cm, times: 2}
  - {name: shawl collar edge, layers: [shell, {notion: woven fusible interfacing}, satin],
     length: 250 cm, shape: curved, edge: turned}
  - {name: tie belt, layers: [satin, satin], length: 200 cm, shape: corner, edge: turned,
     left open: 10 cm}
  - {name: lining shoulder, layers: [lining, lining], length: 15 cm, times: 2}
  - {name: lining side and sleeve, layers: [lining, lining], length: 142 cm, times: 2}
  - {name: lining armhole, layers: [lining, lining], length: 46 cm, shape: curved, times: 2}
  - {name: facing to lining, layers: [satin, lining], length: 250 cm, shape: curved}
  - {name: hem, layers: [shell], length: 140 cm, edge: hem}
pieces:
  - {name: back, fabric: shell, width: 62 cm, height: 124 cm}
  - {name: collar support, fabric: woven fusible interfacing, width: 22 cm, height: 130 cm}
  - {name: lining back, fabric: lining, width: 60 cm, height: 118 cm}
"""


def gown(old: str = "", new: str = "") -> Work:
    assert old in GOWN
    return ordered(GOWN.replace(old, new) if old else GOWN)


def does(found: Work, step: str) -> str:
    return found.tasks[step].step.does


def told() -> Answer:
    return read(GOWN)


def test_a_shawl_collar_changes_sides_at_its_break() -> None:
    """Above it the facing is the outside, and a row that holds the facing would be seen."""
    found = gown()
    assert "faced-edge-turned-back" == places(found)["shawl collar edge"].method.id
    assert "understitch shawl collar edge" not in found.order
    assert "above it that of the facing" in does(found, "grade shawl collar edge")
    assert "above it to the under side" in does(found, "turn shawl collar edge")
    assert stands(found, "fit", "join shawl collar edge")  # it lies round the neck, over shoulders


def test_a_taped_lapel_does_so_too_and_a_plain_front_does_not() -> None:
    """Told by the roll line, or by the name; piping stands on its edge as everywhere."""
    assert "above it" in does(work("more/ferryman_blazer"), "turn front facing")
    plain = gown("name: shawl collar edge", "name: front edge facing")
    assert "roll the seam a little to the inside" in does(plain, "turn front edge facing")
    assert "understitch front edge facing" in plain.order
    piped = ordered(GOWN.replace("woven fusible interfacing", "piping cord"))
    assert "stands on the edge" in does(piped, "turn shawl collar edge")


def test_a_glue_that_is_ruled_out_is_one_thing_everywhere() -> None:
    """Nobody buys the glue, or is told what takes its place, before she has settled that."""
    found = gown()
    step = does(found, "interface shawl collar edge")
    assert step.startswith("Settle first what backs shawl collar edge")
    assert "silk organza" not in step
    assert not [n for _, tender in found.hot_near for n in tender if "fusible" in n]


def test_a_piece_is_fused_as_soon_as_it_is_cut() -> None:
    """Before any seam of its cloth; the hot press is cooler over the glue."""
    found = work(SUIT)
    assert stands(found, "fuse shawl collar edge", "baste trouser inseam", "fit")
    assert stands(found, "fuse shawl collar edge", "hot press drill")
    assert "woven fusible interfacing is fused to it, at most 150 °C" in does(
        found, "hot press drill"
    )


def test_a_pocket_that_is_laid_on_clashes_with_nothing() -> None:
    """Each is pressed before; a cuff that is turned does clash."""
    clashing = {place for conflict in told().conflicts for place in conflict.places}
    assert "patch pocket" not in clashing
    assert "shawl collar edge" in clashing
    alone = [one for one in told().instructions if "patch pocket" in one.places]
    assert any("Press the shell pieces by themselves" in one.text for one in alone)


def test_wadding_comes_out_of_the_allowances_of_a_pocket() -> None:
    """Before they are turned under."""
    found = gown()
    assert stands(found, "unpick the wadding at patch pocket", "turn under patch pocket")
    bare = gown("quilt: {fabric: quilted,", "quilt: {fabric: cotton twill,")
    assert "unpick the wadding at patch pocket" not in bare.order


def test_a_label_goes_round_what_only_wants_the_hands(tmp_path) -> None:  # type: ignore[no-untyped-def]
    """Two pockets keep no iron from a gown; sequins do."""
    file = tmp_path / "gown.yaml"
    file.write_text(GOWN, encoding="utf-8")
    assert "Iron at most 110 °C, without steam, not over the quilt" in " ".join(
        typed("label", str(file)).out.split()
    )
    assert "Do not iron" in typed("label", str(FOLDER / f"{SUIT}.yaml")).out


def test_the_gap_of_a_belt_is_closed_once() -> None:
    """By the stage of its own method."""
    found = gown()
    assert "close the gap of tie belt" in found.order
    assert "close the opening of tie belt" not in found.order


def test_an_adults_nightwear_has_rules_too() -> None:
    """Not only that of a child."""
    texts = [caution.text for caution in told().cautions if caution.kind == "fire"]
    assert any("an adult's too" in text and "ask the authority" in text for text in texts)


def test_carriers_wait_for_the_sides_of_the_shell_alone() -> None:
    """They lie on the outside, and the lining is sewn whenever that suits."""
    found = gown()
    (bar,) = [t.id for t in found.tasks.values() if t.op == "lay-on" and "carrier" in t.id]
    before = [link.before for link in found.reasons[bar]]
    assert any("side and sleeve" in step for step in before)
    assert not [step for step in before if "lining" in step]


def test_a_lining_cut_narrower_than_its_back_is_told() -> None:
    """It wants a fold there; one that is wider has it."""
    checks = {check.id for check in told().checks or ()}
    wider = read(GOWN.replace("width: 60 cm, height: 118", "width: 66 cm, height: 118"))
    assert "lining ease" in checks
    assert "lining ease" not in {check.id for check in wider.checks or ()}


def test_a_pile_on_a_knitted_ground_hangs_while_the_rest_is_pressed() -> None:
    """No board carries it: steam from above, and never the sole."""
    last = next(task.step.does for task in work(SUIT).tasks.values() if task.op == "last-press")
    assert last.startswith("Hang the velvet up")
    assert "velvet lies under the iron" in last


def test_a_crotch_stays_open_where_a_zip_runs_down_into_it() -> None:
    """The words of the two agree; a fly starts its crotch by itself."""
    found = work(SUIT)
    assert "where centre back zip is to end it stays open" in does(found, "join crotch")
    assert "the seam below still open" not in does(found, "set centre back zip")
    side = ordered(TEXT.replace("name: centre back zip", "name: side zip"))
    assert "stays open" not in does(side, "join crotch")


def test_a_strip_that_is_called_binding_binds() -> None:
    """Though the edge is said to be turned; a facing so called is turned."""
    found = work(SUIT)
    assert "bound-edge" == places(found)["neck binding"].kind.id
    assert "grade neck binding" not in found.order


def test_sequins_are_cleared_in_one_line_and_sewn_back_after_the_fitting() -> None:
    """The bald line is covered when nothing moves it any more; cut rims are bound."""
    out = typed("order", str(FOLDER / f"{SUIT}.yaml")).out
    assert 1 == out.count("Clear the sequins")
    found = work(SUIT)
    assert stands(found, "fit", "cover shoulder")
    finish = {v.place: v.text for v in read(TEXT).verdicts if v.aspect == "seam.finish"}
    assert "bound" == finish["shoulder"]


def test_a_waist_that_has_its_stay_is_advised_no_other() -> None:
    """It would have no step; without one the seam is."""
    stays = {v.place: v.text for v in read(TEXT).verdicts if v.aspect == "seam.support"}
    assert "waist" not in stays
    row = "  - {name: waist stay, layers: [drill, {notion: stay tape}], length: 76 cm}\n"
    assert row in TEXT
    bare = read(TEXT.replace(row, ""))
    assert (
        "stay tape"
        == {v.place: v.text for v in bare.verdicts if v.aspect == "seam.support"}["waist"]
    )


def test_a_lining_that_stops_at_a_yoke_is_caught_there() -> None:
    """No shoulders are asked for; sewn in with the yoke, nothing is."""
    loose = TEXT.replace("[velvet, net, mesh]", "[velvet, net]")
    assert loose != TEXT
    said = [gap.text for gap in read(loose).missing or ()]
    assert any("stops at the yoke" in text for text in said)
    assert not any("shoulders are joined nowhere" in text for text in said)
    assert not read(TEXT).missing


def test_the_iron_at_the_hem_of_a_long_leg_is_far_from_the_bodice() -> None:
    """A collar and a lining lie a leg's length away."""
    near = {
        n for name, tender in work(SUIT).hot_near if name == "press trouser hem" for n in tender
    }
    assert not near & {"mesh", "satin", "net"}
