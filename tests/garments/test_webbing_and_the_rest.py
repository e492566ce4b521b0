"""One notion of unknown fibre, a foot that does not reach, and other slips that strangers met."""

from __future__ import annotations

from functools import cache

from msgspec.structs import replace

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, decide, tell
from advisor.answer.press_clause import wait_words
from advisor.claims.byparts import PARTS
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered

LAMPLIGHTER = """\
garment: Lamplighter's procession skirt
fitting: loosely
pattern: tried
maker: {machine: household, overlocker: 3-thread, feet: [standard, gathering]}
fabrics:
  drill: {fabric: drill, fibres: {cotton: 100}, weight: 220 g/m2, width: 150 cm, shrinks: 4 %}
  net: {fabric: net, fibres: {nylon: 100}, weight: 35 g/m2, width: 160 cm}
  shade: {fabric: poplin, fibres: {polyester: 100}, weight: 110 g/m2, width: 120 cm}
seams:
  - {name: side, layers: [drill, drill], length: 80 cm, times: 2}
  - {name: net row, layers: [drill, {use: net, fullness: 4}], length: 110 cm, times: 4, GATHERS}
  - {name: swag, layers: [drill, shade], length: 36 cm, times: 2, PLEATS}
  - {name: hem, layers: [drill], length: 220 cm, edge: hem}
  - {name: ties, layers: [drill, {notion: webbing}], fastening: strap or ties, times: 2}
pieces:
  - {name: gore, fabric: drill, width: 74 cm, height: 84 cm, number: 3}
  - {name: flounce, fabric: net, finished width: WIDE cm, finished height: 25 cm, fullness: 4, ROWS}
  - {name: swag, fabric: shade, width: 55 cm, height: HIGH cm, number: 2}
"""
SAID = {
    "GATHERS": "gathers: {method: gathering foot}",
    "PLEATS": "pleats: {kind: knife, number: 5, depth: 5 cm}",
    "ROWS": "number: 4, allowance: 0 cm, joined: yes",
    "HIGH": "90",
    "WIDE": "110",
}


ASKED = replace(WHOLE, label=Asked())


@cache
def skirt(**other: str) -> tuple[Answer, Work]:
    """What is told of the skirt, and its order, with some of its words changed."""
    text = LAMPLIGHTER
    for word, said in {**SAID, **other}.items():
        text = text.replace(word, said)
    decided = decide(garment_of(parse_yaml(text, "skirt.yaml"), known()), known(), ASKED)
    assert decided.work is not None
    return tell(decided, known(), ASKED), decided.work


def does(work: Work) -> dict[str, str]:
    """The steps of an order, in its order."""
    return {id_: work.tasks[id_].step.does for id_ in work.order}


def checks(**other: str) -> list[str]:
    """Which figures of it do not agree."""
    return [c.text for c in skirt(**other)[0].checks or ()]


def test_a_tie_that_may_bear_no_iron_leaves_the_rest_its_press() -> None:
    """Webbing may be polypropylene; it lies in one place, and the drill is pressed all the same."""
    answer, work = skirt()
    (parted,) = [i for i in answer.instructions if i.kind == PARTS]
    assert list(parted.tender) == ["webbing"]
    last = work.tasks["last press"].step
    assert last.iron is not None
    assert "where no webbing lies under the iron" in last.does


def test_what_the_webbing_is_of_is_asked_first() -> None:
    """Nothing else that is unknown costs the whole garment its iron."""
    first = skirt()[0].unknowns[0]
    assert first.fact.startswith("webbing")
    assert "bounds the iron of the whole" in first.effect
    assert "instead of no iron" in first.effect


def test_the_label_says_what_it_becomes_once_the_webbing_is_known() -> None:
    """The strict line stands, and beside it what one answer of the seller allows."""
    label = skirt()[0].label
    assert label is not None
    (said,) = [line for line in label.care.lines if line.aspect == "care.iron"]
    assert said.answer == "do not iron"
    told = [text for text in label.care.once_known if "webbing" in text]
    assert told
    assert "until then the stricter line stands" in told[0]
    assert any("iron" in text.partition("If it is ")[2] for text in told)


def test_a_foot_that_does_not_reach_gives_way_in_every_view() -> None:
    """4 to 1 is drawn up by rows: sheet, method, order and thread say one thing."""
    answer, work = skirt()
    (row,) = [seam for seam in answer.seams if seam.name == "net row"]
    assert row.built is not None
    assert row.built.fullness is not None
    assert row.built.fullness.method == "hand rows"
    assert work.methods["net row"].id == "gathered-rows-on-a-face"
    assert "two gathering rows" in does(work)["gather net row"]
    assert any("gathering foot does not carry 4 to 1" in text for text in work.remarks)


def test_a_foot_that_a_strip_shows_to_reach_is_kept() -> None:
    """What was measured goes before what a foot usually does."""
    strip = "gathers: {method: gathering foot, strip: {flat: 40 cm, gathered: 10 cm}}"
    work = skirt(GATHERS=strip)[1]
    assert "with the gathering foot" in does(work)["gather net row"]
    assert work.methods["net row"].id == "gathered-by-foot"


def test_the_advice_for_a_wide_strip_can_be_followed() -> None:
    """440 cm each is cut of several widths, and as so many pieces the file is read again."""
    (text,) = checks()
    assert "For 110 cm each write finished width: 440 cm and number: 12" in text
    assert checks(WIDE="440", ROWS="number: 12, allowance: 0 cm, joined: yes") == []


def test_pleats_may_lie_along_either_side_of_their_piece() -> None:
    """5 pleats of 5 cm twice take 172 cm: two pieces 90 cm high give them, 70 cm do not."""
    assert not [text for text in checks() if "pleats" in text]
    assert [text for text in checks(HIGH="70") if "the pleats of swag take 172 cm" in text]


def test_ties_of_webbing_are_stitched_as_the_sheet_sets_the_machine() -> None:
    """It is pulled hard; a ribbon is sewn on by hand, and then no machine is set for it."""
    work = skirt()[1]
    assert "in a box with a cross" in does(work)["stitch on ties"]
    assert work.tasks["stitch on ties"].step.machine is not None
    assert known().places.methods["ties-of-ribbon"].by_hand


def test_a_wait_that_nobody_can_foretell_is_no_figure() -> None:
    """Where the longest is many times the likely one it is said so, with the warning."""
    assert (
        wait_words((1.0, 10.0, 1380.0)) == "likely about 10 s, much longer after many in one place"
    )
    assert wait_words((5.0, 60.0, 240.0)).endswith("after many in one place up to 4 minutes")


REEL = """garment: Reel caller's knit top
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 4-thread}
fabrics:
  knit: {fabric: interlock, fibres: {cotton: 95, elastane: 5}, weight: 220 g/m2, width: 150 cm}
  mesh: {fabric: power mesh, fibres: {nylon: 85, elastane: 15}, weight: 110 g/m2, width: 150 cm}
seams:
  - {name: side, layers: [knit, knit], length: 40 cm, times: 2}
  - {name: yoke, layers: [knit, mesh], length: 34 cm, shape: curved, times: 2}
  - {name: shoulder, layers: [mesh, mesh], length: 9 cm, times: 2}
"""


def test_a_yoke_under_the_knife_is_basted_as_its_neighbours_are() -> None:
    """What an overlocker trims cannot be let out, whichever method it belongs to."""
    found = ordered(REEL)
    steps = list(found.order)
    assert found.tasks["join yoke"].step.machine is not None
    assert found.tasks["join yoke"].step.machine.machine == "overlocker"
    assert steps.index("baste yoke") < steps.index("fit") < steps.index("join yoke")


PILOT = """garment: Ferry pilot's jacket
fitting: loosely
pattern: tried
maker: {machine: household, feet: [standard, zip]}
fabrics:
  shell: {fabric: gabardine, fibres: {wool: 100}, weight: 260 g/m2, width: 150 cm}
  lining: {fabric: lining, fibres: {viscose: 100}, weight: 80 g/m2, width: 140 cm}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 48 cm, times: 2}
  - {name: collar edge, layers: [shell, shell], length: 70 cm, shape: corner, edge: turned}
  - {name: collar seam, layers: [shell, shell], length: 46 cm, shape: curved}
  - {name: front zip, layers: [shell, {notion: two-way zip}, shell], length: 66 cm, times: 2}
  - {name: facing to lining, layers: [shell, lining], length: 140 cm, left open: 25 cm}
"""


def test_a_front_zip_waits_for_the_collar_that_it_runs_into() -> None:
    """It is set after the fitting and the neck, and topstitched when the front is turned."""
    found = ordered(PILOT)
    steps = list(found.order)
    before = ("fit", "join shoulder", "join collar seam")
    assert max(map(steps.index, before)) < steps.index("set front zip")
    assert steps.index("turn through facing to lining") < steps.index("topstitch front zip")
