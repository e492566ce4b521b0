"""Damp beside what water marks, and the iron near velvet: one voice in every view."""

from __future__ import annotations

import pytest

from tests.garments.whole import read

SKIRT = """
garment: Signal box skirt
fitting: to the body
maker: {machine: household, feet: [standard, zip, concealed zip, walking]}
fabrics:
  shell: {fabric: tweed, fibres: {wool: 100}, weight: 320 g/m2, width: 150 cm}
  lining: {fabric: lining, fibres: {FIBRE: 100}, width: 140 cm}
seams:
  - {name: side seam, layers: [shell, shell], length: 60 cm, times: 2}
  - {name: zip, layers: [shell, {notion: concealed zip}], length: 20 cm}
  - {name: lining side seam, layers: [lining, lining], length: 60 cm, times: 2}
  - {name: lining to zip, layers: [lining, shell], length: 20 cm, times: 2}
  - {name: lining to waist, layers: [shell, lining], length: 72 cm}
  - {name: hem, layers: [shell], length: 120 cm, edge: hem}
"""


@pytest.mark.parametrize("fibre", ["viscose", "acetate"])
def test_a_wool_is_pressed_damp_by_itself_and_dry_where_its_lining_is_joined(fibre: str) -> None:
    """The order presses the wool damp before, and neither the seam nor the last press is damp."""
    answer = read(SKIRT.replace("FIBRE", fibre))
    damp = {v.place: v.text for v in answer.verdicts if v.aspect == "press.moisture"}
    assert "damp cloth" == damp["side seam"]
    assert ["dry"] * 3 == [damp[n] for n in ("lining to zip", "lining to waist", answer.garment)]
    assert answer.work is not None
    irons = {one.step: one.iron.moisture for one in answer.work.order if one.iron is not None}
    assert ["damp cloth", "dry", "dry"] == [
        irons[step] for step in ("hot press shell", "press lining to waist", "last press")
    ]


GOWN = """
garment: Gaslight gown
fitting: to the body
maker: {machine: household, feet: [standard, zip, walking]}
fabrics:
  satin: {fabric: duchesse satin, fibres: {silk: 100}, width: 140 cm}
  velvet: {fabric: velvet, fibres: {viscose: 82, silk: 18}, width: 114 cm}
  lining: {fabric: lining, fibres: {acetate: 100}, width: 140 cm}
seams:
  - {name: bodice side, layers: [satin, satin], length: 25 cm, times: 2}
  - {name: bodice lining side, layers: [lining, lining], length: 25 cm, times: 2}
  - {name: skirt side, layers: [velvet, velvet], length: 105 cm, times: 2}
  - {name: waist, layers: [satin, velvet], length: 74 cm}
  - {name: collar, kind: collar, layers: [velvet, satin], length: 40 cm}
  - {name: back hooks, layers: [velvet, {notion: hooks and eyes}], length: 20 cm}
  - {name: skirt hem, layers: [velvet], length: 240 cm, edge: hem}
"""


def test_the_last_press_leaves_out_a_velvet_whose_label_forbids_the_iron() -> None:
    """Order, sheet and iron say so, and none of them lays the rest on the board of the velvet."""
    answer = read(GOWN)
    assert answer.work is not None
    last = next(one for one in answer.work.order if one.step == "last press")
    assert "velvet up" in last.does
    assert "rest once more, dry, where no velvet lies under the iron" in last.does
    assert last.iron is not None
    assert "padded board" == last.iron.surface
    assert ["velvet"] == [
        n for one in answer.instructions if one.kind == "hung" for n in one.tender
    ]
    whole = {one.aspect: one.text for one in answer.verdicts if one.place == answer.garment}
    assert "do not iron" == whole["care.iron"]
    assert whole["press.temperature"].endswith("not over the velvet")
    assert next(i.text for i in answer.irons if i.scope == "garment").endswith(
        "not over the velvet"
    )


def test_a_garment_of_velvet_alone_is_hung_up_at_last() -> None:
    """Nothing of it is pressed when it is whole."""
    text = GOWN.replace(
        "satin: {fabric: duchesse satin, fibres: {silk: 100}", "satin: {fabric: velvet"
    )
    answer = read(
        text.replace("lining: {fabric: lining, fibres: {acetate: 100}", "lining: {fabric: velvet")
    )
    assert answer.work is not None
    last = next(one for one in answer.work.order if one.step == "last press")
    assert last.iron is None
    assert last.does.startswith("Hang the ")
    assert not [i for i in answer.irons if i.scope == "garment"]


def test_a_velvet_lies_in_its_pile_or_wires_and_no_iron_comes_on_its_hooks() -> None:
    """A towel is no bed for it, with whatever cloth it is joined, and a hook would be printed."""
    answer = read(GOWN)
    beds = {v.place: v.pick for v in answer.verdicts if v.aspect == "press.surface"}
    assert {"needle board"} == {beds[name] for name in ("skirt side", "skirt hem")}
    assert {"self-fabric pile up"} == {
        beds[name] for name in ("waist", "collar")
    }  # no wires on satin
    irons = {one.place: one.text for one in answer.irons}
    assert irons["back hooks"].startswith("no iron")
    assert irons["skirt side"].startswith("start")


def test_a_velvet_is_steamed_from_behind_before_it_is_cut() -> None:
    """What is pressed dry is no less steamed once, with nothing on its pile."""
    answer = read(GOWN)
    assert answer.work is not None
    steps = {one.step: one.does for one in answer.work.order}
    assert "steam held off its back while it hangs" in steps["shrink velvet"]
