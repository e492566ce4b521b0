"""A strapless boned gown and a bias slip, read by a maker of bridal and evening wear.

Lace that is laid over seams and edges, bones at the fitting, a waist that gathers are sewn into, a
lining that ends with its bodice, and all that hangs on the bias. All is common practice of the
trade unless a source stands beside it.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.claims.collect import Place
from advisor.claims.valuesets import Span
from advisor.construction.agreement import disagreements
from advisor.construction.notionlist import notions_to_buy
from advisor.craft.cloth import BoughtCloth, CutPiece, estimate
from advisor.decide.advise import advise
from advisor.decide.usedup import used_up
from advisor.order.kinds import crosses
from advisor.order.missing import missing
from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FILES, decided, known, ordered, places, read, stands

GOWN = """
garment: Orangery ball gown
units: metric
pattern: new
fitting: to the body
maker: {machine: household, overlocker: "no"}
fabrics:
  shell: {fabric: dupioni, fibres: {silk: 100}, weight: 110 g/m2, width: 137 cm}
  corselet: {fabric: coutil, fibres: {cotton: 100}, weight: 250 g/m2, width: 150 cm}
  lace: {fabric: corded lace, fibres: {viscose: 45, nylon: 55}, weight: 180 g/m2, width: 90 cm}
  skirt: {fabric: satin, fibres: {polyester: 100}, weight: 160 g/m2, width: 140 cm}
  net: {fabric: tulle, fibres: {nylon: 100}, weight: 20 g/m2, width: 150 cm}
  lining: {fabric: habutai, fibres: {silk: 100}, weight: 45 g/m2, width: 114 cm}
parts:
  bodice: {layers: [lining, corselet, shell, lace], separate: [lining], fitting: to the body}
  skirt: {layers: [skirt, net], separate: [net], fitting: loosely}
seams:
  - {name: corselet princess seam, layers: [corselet, corselet], length: 32 cm, shape: curved,
      stress: high, times: 4, part: bodice}
  - {name: corselet side, layers: [corselet, corselet], length: 24 cm, times: 2, part: bodice}
  - {name: bone channels, layers: [corselet, {notion: boning channel}], length: 28 cm, times: 8,
      part: bodice}
  - {name: bones, layers: [corselet, {notion: spiral steel boning}], length: 26 cm, times: 8,
      part: bodice}
  - {name: waist stay, layers: [corselet, {notion: grosgrain ribbon}], length: 68 cm, part: bodice}
  - {name: waist stay hooks, layers: [corselet, {notion: grosgrain ribbon}, {notion: hook and eye}],
      number: 2, part: bodice}
  - {name: bodice princess seam, layers: [shell, shell], length: 32 cm, shape: curved, times: 4,
      part: bodice}
  - {name: bodice side, layers: [shell, shell], length: 24 cm, times: 2, part: bodice}
  - {name: lace overlay, layers: [shell, lace], length: 160 cm, stitched by: hand, part: bodice}
  - {name: lining side, layers: [lining, lining], length: 24 cm, times: 2, part: bodice}
  - {name: top edge, layers: [shell, corselet, lining], length: 84 cm, shape: curved, edge: turned,
      stress: high, part: bodice}
  - {name: lining edge, layers: [lining], length: 70 cm, edge: hem, part: bodice}
  - {name: lace scallop at top edge, layers: [shell, lace], length: 84 cm, stitched by: hand,
      part: bodice}
  - {name: skirt seam, layers: [skirt, skirt], length: 108 cm, times: 2, part: skirt}
  - {name: skirt gathers, layers: [shell, {use: skirt, fullness: 3}], length: 70 cm, part: skirt}
  - {name: net gathers, layers: [skirt, {use: net, fullness: 6}], length: 70 cm, part: skirt}
  - {name: waist seam, layers: [shell, corselet, skirt, net], length: 70 cm, stress: high}
  - {name: centre back zip, layers: [shell, corselet, {notion: concealed zip}], length: 40 cm}
  - {name: centre back below the zip, layers: [skirt, skirt], length: 86 cm, part: skirt}
  - {name: hem, layers: [skirt], length: 210 cm, edge: hem, part: skirt}
  - {name: net hem, layers: [net], length: 420 cm, edge: raw, part: skirt}
pieces:
  - {name: skirt, fabric: skirt, finished width: 70 cm, finished height: 108 cm, fullness: 3}
  - {name: net layer, fabric: net, finished width: 70 cm, finished height: 107 cm, fullness: 6}
"""
SLIP = """
garment: Boathouse slip
units: metric
pattern: new
fitting: to the body
maker: {machine: household, overlocker: 3-thread}
fabrics:
  satin: {fabric: silk satin, fibres: {silk: 100}, weight: 82 g/m2, width: 140 cm}
  lace: {fabric: chantilly lace, fibres: {nylon: 70, viscose: 30}, weight: 70 g/m2, width: 90 cm}
  inner: {fabric: georgette, fibres: {polyester: 100}, weight: 70 g/m2, width: 150 cm}
  strip: {fabric: organza, fibres: {silk: 100}, weight: 25 g/m2, width: 112 cm}
parts:
  dress: {layers: [inner, strip, satin, lace], fitting: to the body}
  half lining: {layers: [inner], separate: [inner], fitting: loosely}
seams:
  - {name: right side, layers: [satin, satin], length: 105 cm, bias: yes, allowance: 25 mm,
      part: dress}
  - {name: left side, layers: [satin, satin], length: 75 cm, bias: yes, part: dress}
  - {name: centre back, layers: [satin, satin], length: 100 cm, bias: yes, part: dress}
  - {name: set-in lace panel, layers: [satin, lace], length: 64 cm, shape: curved, bias: yes,
      times: 2, part: dress}
  - {name: lace godet, layers: [satin, lace], length: 45 cm, shape: corner, bias: yes, times: 8,
      part: dress}
  - {name: left side zip, layers: [satin, strip, {notion: concealed zip}], length: 30 cm, bias: yes,
      part: dress}
  - {name: neck stay, layers: [satin, strip], length: 70 cm, shape: curved, bias: yes, part: dress}
  - {name: neck edge, layers: [satin, inner], length: 70 cm, shape: curved, edge: turned, bias: yes,
      part: dress}
  - {name: underarm edge, layers: [satin, inner], length: 22 cm, shape: curved, edge: turned,
      bias: yes, times: 2, part: dress}
  - {name: rouleau strap, layers: [satin, satin], length: 42 cm, bias: yes, times: 2, part: dress}
  - {name: half lining side, layers: [inner, inner], length: 55 cm, bias: yes, seam: French,
      times: 2, part: half lining}
  - {name: half lining hem, layers: [inner], length: 120 cm, edge: hem, part: half lining}
  - {name: hem, layers: [satin], length: 180 cm, edge: hem, bias: yes, method: rolled hem,
      part: dress}
  - {name: godet hem, layers: [lace], length: 50 cm, edge: raw, times: 4, part: dress}
pieces:
  - {name: front, fabric: satin, width: 62 cm, height: 120 cm, grain: bias}
  - {name: back, fabric: satin, width: 34 cm, height: 115 cm, number: 2, grain: bias}
  - {name: inner half, fabric: inner, width: 60 cm, height: 62 cm, number: 2, grain: bias}
"""
HANG, FIT = "hang", "fit"


def words(found: Work, step: str) -> str:
    return found.tasks[step].step.does


@cache
def asked(text: str) -> tuple[tuple[str, str], ...]:
    judgement = advise(garment_of(parse_yaml(text, "project.yaml"), known()), known()).judgement
    return tuple((one.place, one.text) for one in disagreements(judgement, known()))


def verdict(text: str, place: str, aspect: str) -> str:
    found = (
        v
        for v in read(text).verdicts
        if v.scope == "seam" and v.place == place and v.aspect == aspect
    )
    return next((v.text for v in found), "")


def test_lace_is_lapped_over_an_edge_that_is_finished() -> None:
    """Cut away behind, it would bare the corselet: the edge is turned first, and nothing is cut."""
    found = ordered(GOWN)
    assert stands(found, "turn top edge", "lap lace scallop at top edge")
    assert not [s for s in found.order if s.startswith("cut away behind")]


def test_lace_with_no_edge_of_its_own_is_still_cut_away_behind() -> None:
    """On a hem that nothing else finishes the cloth would show through the lace."""
    lace = GOWN.replace("{name: hem, layers: [skirt]", "{name: lace hem, layers: [skirt, lace]")
    assert "cut away behind lace hem" in ordered(lace).order


@pytest.mark.parametrize("edge", ["lace hem", "lace inset"])
def test_what_is_stitched_by_hand_is_told_by_hand(edge: str) -> None:
    """No zigzag in its words and no machine in its step, whatever the method is usually sewn by."""
    text = GOWN.replace(
        "{name: hem, layers: [skirt], length: 210 cm, edge: hem,",
        f"{{name: {edge}, layers: [skirt, lace], length: 210 cm, stitched by: hand,",
    )
    steps = [t for t in ordered(text).tasks.values() if t.place and t.place.name == edge]
    assert steps
    assert not [t.id for t in steps if "zigzag" in t.step.does or t.step.machine]


def test_an_overlay_waits_for_the_seams_beneath_it() -> None:
    """It is laid across them when they are fitted, sewn, pressed and neatened, before the waist."""
    found = ordered(GOWN)
    lay = "lay lace overlay"
    assert stands(found, FIT, "join bodice princess seam", "press bodice princess seam", lay)
    assert stands(found, "press bodice side", lay, "cut the lapped lace of lace overlay")
    assert stands(found, lay, "join waist seam")


def test_an_overlay_has_neither_allowance_nor_binding() -> None:
    """It joins no edges; by machine it is no hand work."""
    assert ("", "") == tuple(
        verdict(GOWN, "lace overlay", a) for a in ("seam.allowance", "seam.finish")
    )
    assert "applique" == places(ordered(GOWN))["lace overlay"].kind.id
    sewn = GOWN.replace("160 cm, stitched by: hand", "160 cm, stitched by: machine")
    assert "lace-overlay" != places(ordered(sewn))["lace overlay"].method.id


def test_a_boned_bodice_is_fitted_in_its_bones() -> None:
    """Basted in before the first fitting of a new pattern; where it is known they are sewn in."""
    found = ordered(GOWN)
    bones = "baste the bones in"
    assert stands(found, "baste corselet side", bones, FIT, "insert bones in bones")
    assert "side cutters" in words(found, bones)
    assert "side cutters" not in words(found, "insert bones in bones")
    assert bones not in ordered(GOWN.replace("pattern: new", "pattern: tried")).order


def test_a_channel_tape_is_pressed_as_every_view_says() -> None:
    """The tape lies in its place when that is pressed, so the iron of the order is no hotter."""
    found = ordered(GOWN)
    step = found.tasks["press bone channels"].step
    judgement = advise(garment_of(parse_yaml(GOWN, "project.yaml"), known()), known()).judgement
    said = judgement.verdicts[Place("seam", "bone channels")]["press.temperature"].advised
    assert isinstance(said, Span)
    assert step.iron is not None
    assert step.iron.temperature_c <= said.high


def test_what_is_gathered_into_a_waist_is_sewn_once() -> None:
    """Drawn up before the waist is basted, sewn with that, and never before the bodice is."""
    found = ordered(GOWN)
    assert not {"join skirt gathers", "join net gathers", "neaten skirt gathers"} & {*found.order}
    assert stands(found, "gather skirt gathers", "draw up skirt gathers", "baste waist seam")
    assert stands(found, "join bodice side", "join waist seam")
    assert stands(found, "join waist seam", "draw the cord out of net gathers")


def test_gathers_on_the_line_of_a_waist_are_asked_about() -> None:
    """Both places, with what to write; one of another length is a line of its own."""
    told = [place for place, text in asked(GOWN) if "waist seam" in text]
    assert ["skirt gathers", "net gathers"] == told
    apart = GOWN.replace("fullness: 3}], length: 70 cm", "fullness: 3}], length: 96 cm")
    assert ["net gathers"] == [place for place, text in asked(apart) if "waist seam" in text]
    assert "join skirt gathers" in ordered(apart).order


def test_the_lining_of_a_bodice_is_felled_at_its_waist() -> None:
    """No floor levels it, and no chain holds it to a hem; a lining that runs on is hemmed."""
    found = ordered(GOWN)
    assert stands(found, "turn top edge", "fell lining edge")
    assert stands(found, "join waist seam", "tack in waist stay", "fell lining edge")
    assert not [s for s in found.order if s.startswith("chain")]
    long = GOWN.replace("[lining, lining], length: 24 cm", "[lining, lining], length: 120 cm")
    assert "lining-felled-at-the-waist" != places(ordered(long))["lining edge"].method.id


def test_hooks_on_a_ribbon_are_hooks_and_are_bought_once() -> None:
    """No row runs along the ribbon, which is as long as the stay; its hooks are counted."""
    found = ordered(GOWN)
    assert "hook" == places(found)["waist stay hooks"].kind.id
    garment = garment_of(parse_yaml(GOWN, "project.yaml"), known())
    ribbons = [row for row in notions_to_buy(garment, known()) if row.name == "grosgrain ribbon"]
    assert [680.0] == [row.whole for row in ribbons]
    methods = {name: place.method for name, place in places(found).items()}
    assert not [need for need in used_up(garment, methods, known()) if "waist stay" in need.item]


def test_all_that_is_gathered_to_a_waist_hangs_from_it() -> None:
    """The net is called no skirt, and weighs on the waist as much as one."""
    weight = read(GOWN).weight
    assert weight is not None
    masses = {hang.place: hang.mass_g for hang in weight.hangs}
    assert masses["waist seam"] > masses["skirt gathers"]


def test_what_hangs_on_the_bias_is_hemmed_when_it_has_hung() -> None:
    """A half lining too, after its sides; godets are cut with the skirt that they hang in."""
    found = ordered(SLIP)
    assert stands(found, "press half lining side", HANG, "sew half lining hem")
    assert stands(found, "join lace godet", HANG, "cut godet hem")
    assert stands(found, FIT, "join lace godet")


@pytest.mark.parametrize("file", FILES, ids=lambda path: path.stem)
def test_a_hem_comes_after_the_seams_that_it_runs_over(file) -> None:  # type: ignore[no-untyped-def]
    """A law of every garment at hand: no edge is hemmed or cut across a seam that is still open."""
    work = decided(file).work
    assert work is not None
    at = {step: k for k, step in enumerate(work.order)}
    done: dict[str, list[tuple[str, int]]] = {}
    for task in work.tasks.values():
        if task.place is not None:
            done.setdefault(task.place.name, []).append((task.op, at[task.id]))
    every = places(work)
    wrong = [
        (hem.name, seam.name)
        for hem in every.values()
        for seam in every.values()
        if hem.role.last and hem.kind.id in ("hem", "raw-edge") and seam.kind.family == "seam"
        if crosses(hem, seam) and not crosses(seam, hem)
        for first in [min((k for op, k in done[hem.name] if op in ("hem", "trim")), default=None)]
        for joined in [max((k for op, k in done[seam.name] if op == "join"), default=None)]
        if first is not None and joined is not None and joined > first
    ]
    assert [] == wrong


def test_a_lace_edge_keeps_its_scallops() -> None:
    """A lace is laid with its border at the edge; net is cut clean in long strokes."""
    assert "scallop" in words(ordered(SLIP), "cut godet hem")
    assert "long strokes" in words(ordered(GOWN), "cut net hem")


def test_a_bias_neck_is_stayed_before_it_hangs() -> None:
    """By hand and in its allowance: a row along both edges would show through the satin."""
    found = ordered(SLIP)
    assert stands(found, "tape neck stay", "baste right side", "hang the basted seams")
    assert found.tasks["tape neck stay"].step.machine is None
    assert "allowance alone" in words(found, "tape neck stay")


def test_the_lining_is_closed_before_an_edge_takes_it_in() -> None:
    """Under the arm as at the neck."""
    found = ordered(SLIP)
    before = found.graph.forced_before("join underarm edge")
    assert {"press half lining side", "press right side"} <= {*before}


def test_a_lace_panel_is_set_in_over_its_cloth() -> None:
    """Sewn along its motifs, and the cloth cut away behind when the fitting has found its place."""
    found = ordered(SLIP)
    assert "lace-inset" == places(found)["set-in lace panel"].method.id
    assert stands(found, "stitch on set-in lace panel", FIT, "cut away behind set-in lace panel")
    assert "" == verdict(SLIP, "set-in lace panel", "seam.allowance")


def picked(place: str, aspect: str) -> float | str | None:
    """What is picked at a place of the slip; None where it is not asked."""
    told = (v for v in read(SLIP).verdicts if (v.place, v.aspect) == (place, aspect))
    return next((v.pick for v in told), None)


def test_what_is_said_of_a_bias_seam_is_said_of_no_edge() -> None:
    """A rolled hem and a turned neck are sewn straight, and 25 mm is the allowance of a side."""
    assert "304" == picked("right side", "stitch.type")
    for edge in ("hem", "neck edge", "underarm edge"):
        assert picked(edge, "stitch.type") == "301", edge
    assert "304" == picked("rouleau strap", "stitch.type")  # it carries, and gives with its bias
    assert picked("neck edge", "seam.allowance") != picked("right side", "seam.allowance") == 25


def test_a_zip_at_the_side_has_no_middle_seam_below_it() -> None:
    """The centre back is closed when it is easiest; the left side waits for its zip."""
    found = ordered(SLIP)
    assert "set left side zip" not in found.graph.forced_before("join centre back")
    assert "set left side zip" in found.graph.forced_before("join left side")


def test_a_rouleau_stays_round() -> None:
    """Drawn through and hung; a flat strap is pressed."""
    found = ordered(SLIP)
    assert "draw out rouleau strap" in found.order
    assert "turn through rouleau strap" not in found.order
    flat = ordered(SLIP.replace("name: rouleau strap", "name: shoulder strap"))
    assert "turn through shoulder strap" in flat.order


def test_a_toile_and_a_pair_lie_on_the_bias_as_the_dress_does() -> None:
    """What is fitted on the straight grain fits no bias; both sides of one slant twist."""
    found = ordered(SLIP)
    assert "on the bias" in words(found, "toile")
    assert "opposite sides" in words(found, "cut satin")
    assert "on the bias" not in words(ordered(GOWN), "toile")


def test_a_pair_on_the_bias_leans_to_both_sides() -> None:
    """Two that lean one way nest; left and right do not, and never take less cloth."""
    sold = BoughtCloth(width_mm=1400)
    pair, back = (CutPiece(340, 1150, count, bias=True) for count in (2, 1))
    laid = estimate([pair], sold).laid[0].packing.places
    one, other = ((p.down, p.width - p.down) for p in laid)
    assert one == pytest.approx(other[::-1], abs=0.01)
    assert estimate([back, back], sold).length_mm <= estimate([pair], sold).length_mm


def test_a_hidden_foundation_shows_nothing() -> None:
    """Its own cloth is pressed hot on its pieces; under dupion no cooler press is ever seen."""
    judgement = advise(garment_of(parse_yaml(GOWN, "project.yaml"), known()), known()).judgement
    assert [] == [c for c in judgement.conflicts if c.place.name == "waist seam"]
    alone = [i for i in judgement.instructions if i.kind == "alone" and "corselet" in i.needy]
    assert alone
    seen = GOWN.replace("[lining, corselet, shell, lace]", "[lining, shell, lace, corselet]")
    shown = advise(garment_of(parse_yaml(seen, "project.yaml"), known()), known()).judgement
    assert "waist seam" in {c.place.name for c in shown.conflicts}


def test_a_length_to_the_floor_is_marked_on_the_body() -> None:
    """In her shoes, when all above is done; a slip to the calf and trousers need no such step."""
    found = ordered(GOWN)
    assert stands(found, "join waist seam", "try on for the length", "sew hem")
    assert stands(found, "try on for the length", "cut net hem")
    assert "try on for the length" not in ordered(SLIP).order


def test_no_seam_is_left_in_the_middle_of_a_front() -> None:
    """Two widths with a seam behind meet in front too: that is told; of three, or closed, not."""

    def told(text: str, name: str) -> bool:
        cuts = (cut for cut in read(text).cut or () if cut.name == name)
        return any("middle of the front" in says for cut in cuts for says in cut.says)

    assert told(GOWN, "skirt")
    assert not told(GOWN, "net layer")
    assert not told(GOWN.replace("centre back below the zip", "left side below"), "skirt")


def test_channels_without_bones_are_asked_about() -> None:
    """A tape is no bone: nobody slides in or buys what the file does not name."""

    def told(text: str) -> set[str]:
        found = missing(garment_of(parse_yaml(text, "project.yaml"), known()), known())
        return {gap.rule.id for gap in found}

    bones = (
        "  - {name: bones, layers: [corselet, {notion: spiral steel boning}], length: 26 cm, "
        "times: 8,\n      part: bodice}\n"
    )
    assert bones in GOWN
    assert "channel-without-bones" in told(GOWN.replace(bones, ""))
    assert "channel-without-bones" not in told(GOWN)


def test_a_stay_at_an_edge_is_no_layer_of_its_part() -> None:
    """A strip at neck and zip need not be listed; a cloth in a seam of the part is asked about."""
    strip = SLIP.replace("layers: [inner, strip, satin, lace]", "layers: [inner, satin, lace]")
    assert not [text for _, text in asked(strip) if "strip" in text]
    seamed = strip.replace(
        "centre back, layers: [satin, satin]", "centre back, layers: [satin, strip]"
    )
    assert [text for _, text in asked(seamed) if "strip" in text]
