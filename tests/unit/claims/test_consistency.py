"""Answers of one seam go together, and a hem is no seam."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from advisor.claims.consistency import BY_MACHINE, ENCLOSED, ENCLOSING
from advisor.decide.evaluate import judge
from advisor.errors import InputError
from advisor.project.load import load_project
from advisor.project.quick import quick_garment
from tests.typed import shipped as known


def seam_of(layers: list[Any], seam: dict[str, Any] | None = None) -> dict[str, Any]:
    judgement = judge(quick_garment(layers, known(), seam), known())
    return next(v for place, v in judgement.verdicts.items() if place.scope == "seam")


def word(verdicts: dict[str, Any], aspect: str) -> str:
    verdict = verdicts[aspect]
    return str(verdict.aspect.words[int(verdict.pick)])


PAIRS = [
    ["boiled wool", "silk charmeuse"],
    ["silk chiffon"],
    ["nylon organza", "linen suiting"],
    ["cotton voile", "cotton poplin"],
    ["wool crepe", "silk habutai"],
    ["viscose challis"],
]


@pytest.mark.parametrize("layers", PAIRS, ids=" + ".join)
def test_an_edge_is_enclosed_only_by_a_seam_that_encloses(layers: list[str]) -> None:
    """Whoever is told that the edge is shut in is told a seam that shuts it in."""
    verdicts = seam_of(layers)
    if word(verdicts, "seam.finish") == ENCLOSED:
        assert word(verdicts, "seam.kind") in ENCLOSING


def test_glue_that_is_ruled_out_has_no_seconds() -> None:
    """Where velvet rules it out, or acrylic keeps the iron below it, nobody presses for glue."""
    fusible = {"notion": "woven fusible interfacing"}
    fused = seam_of(["wool 100 coating", fusible, "wool 100 coating"])
    too_cool = seam_of(["wool coating", fusible, "wool coating"])  # it may be acrylic: 110 °C
    ruled_out = seam_of(["viscose velvet", fusible, "wool coating"])
    assert ruled_out["interfacing.kind"].clash
    assert too_cool["press.temperature"].clash
    assert "press.dwell" in fused
    assert "press.dwell" not in too_cool
    assert "press.dwell" not in ruled_out


def test_a_glue_that_gets_its_heat_keeps_its_seconds() -> None:
    """Its base of polyester wants a warmer iron too; that wish gives way, the fusing does not."""
    dwell = seam_of(["quilting cotton", "fusible fleece"])["press.dwell"]
    assert (10, 16) == (dwell.advised.low, dwell.advised.high)


def test_what_a_binding_binds_is_neither_enclosed_nor_overcast() -> None:
    """A double gauze asks for a French seam by itself; its edge is bound where a binding lies."""
    assert "French" == word(seam_of(["double gauze cotton"]), "seam.kind")
    bound = seam_of(["double gauze cotton", "bias binding"])
    assert ("plain", "bound") == (word(bound, "seam.kind"), word(bound, "seam.finish"))


def test_a_hem_is_hemmed_and_not_seamed() -> None:
    """At an edge that is a hem the cloth's hem is named, and elsewhere a seam."""
    hem, side = seam_of(["polyester georgette"], {"edge": "hem"}), seam_of(["polyester georgette"])
    assert "hem.kind" in hem
    assert "seam.kind" not in hem
    assert "seam.kind" in side
    assert "hem.kind" not in side


def test_cut_sizes_hold_their_fullness_already(tmp_path: Path) -> None:
    """A piece with cut sizes and a fullness is refused where the fullness stands."""
    file = tmp_path / "skirt.yaml"
    file.write_text(
        "garment: Skirt\n"
        "fabrics: {shell: {fabric: cotton poplin, width: 140 cm}}\n"
        "seams: [{name: side, layers: [shell, shell]}]\n"
        "pieces:\n"
        "  - {name: tier, fabric: shell, width: 60 cm, height: 20 cm, fullness: 2}\n",
        encoding="utf-8",
    )
    with pytest.raises(InputError, match=r"skirt\.yaml:5:\d+.*cut sizes"):
        load_project(file, known())


EDGES = [["lace", "polyester satin"], ["cotton lawn", "cotton lawn"], ["showerproof", "lining"]]


@pytest.mark.parametrize("layers", EDGES, ids=" + ".join)
def test_a_seam_that_encloses_leaves_no_edge_to_neaten(layers: list[str]) -> None:
    """A French or felled seam is not told to be zigzagged or bound as well."""
    verdicts = seam_of(layers)
    assert (word(verdicts, "seam.kind") in ENCLOSING) == (word(verdicts, "seam.finish") == ENCLOSED)


def test_a_seam_gives_way_to_an_edge_that_may_not_be_shut_in() -> None:
    """Inside a turned edge nothing is enclosed, so the French seam that sheers like is none."""
    verdicts = seam_of(["eyelet", "dotted swiss"], {"edge": "turned"})
    assert word(verdicts, "seam.kind") in {"plain", "double-stitched"}
    assert "seam.finish" not in verdicts


@pytest.mark.parametrize(
    ("layers", "expected"),
    [
        (["vinyl", "cotton canvas"], "finger-press"),
        (["beaded", "wool gabardine"], "finger-press"),
        (["cotton poplin", "linen suiting"], "lift and lower"),
    ],
)
def test_no_iron_is_moved_where_none_is_used(layers: list[str], expected: str) -> None:
    """Where no mark of the dial is low enough the fingers are left; elsewhere the iron moves."""
    assert expected == word(seam_of(layers), "press.motion")


def test_a_place_that_only_the_hand_sews_sets_no_machine() -> None:
    """Metal rings break a machine's needle: no needle, foot or zigzagged edge is told."""
    verdicts = seam_of(["metal mesh", "jersey"])
    assert "hand" == word(verdicts, "stitch.type")
    assert not {"needle.size", "needle.point", "machine.foot", "stitch.length"} & set(verdicts)
    assert word(verdicts, "seam.finish") not in BY_MACHINE


@pytest.mark.parametrize(
    ("layers", "cloth", "expected"),
    [
        (["wool flannel", "cotton poplin"], "cotton poplin", "steam"),
        (["cotton denim", "cotton poplin"], "cotton poplin", "wash as it will be washed"),
        (["lace", "polyester satin"], "polyester satin", "wash as it will be washed"),
    ],
)
def test_a_cloth_is_shrunk_as_its_garment_is_cleaned(
    layers: list[str], cloth: str, expected: str
) -> None:
    """assoc-prep-fabrics: prepare as it will be cared for; what is not washed is not told so."""
    judgement = judge(quick_garment(layers, known(), None), known())
    found = {place.name: v for place, v in judgement.verdicts.items() if place.scope == "fabric"}
    assert expected == word(found[cloth], "prepare.preshrink")


def test_a_cloth_is_cut_as_its_pieces_lie(tmp_path: Path) -> None:
    """A binding of which every piece is cut on the bias is told so, whatever the cloth likes."""
    text = """
garment: Armhole
fabrics:
  body: {fabric: chambray, fibres: {cotton: 100}}
  binding: {fabric: lawn, fibres: {cotton: 100}}
seams:
  - {name: armhole, layers: [body, binding], length: 40 cm}
pieces:
  - {name: front, fabric: body, width: 40 cm, height: 60 cm}
  - {name: strip, fabric: binding, width: 4 cm, height: 40 cm, grain: bias}
"""
    path = tmp_path / "armhole.yaml"
    path.write_text(text)
    judgement = judge(load_project(path, known()), known())
    found = {place.name: v for place, v in judgement.verdicts.items() if place.scope == "fabric"}
    grains = {name: word(found[name], "cut.grain") for name in ("body", "binding")}
    assert {"body": "lengthwise", "binding": "bias"} == grains


@pytest.mark.parametrize(
    ("layers", "expected"),
    [(["cotton velveteen", "cotton velveteen"], None), (["wool coating", "wool coating"], 40.0)],
)
def test_a_hem_has_no_allowance_of_a_seam(layers: list[str], expected: float | None) -> None:
    """What is usual for seams is not said of a hem; a rule that is about hems is heard."""
    verdicts = seam_of(layers, {"edge": "hem"})
    found = verdicts.get("seam.allowance")
    assert expected == (None if found is None else found.advised.low)


KNITS = sorted(entry.name for entry in known().fabrics() if entry.structure == "knit")


@pytest.mark.parametrize("knit", KNITS)
def test_a_zip_between_two_edges_of_a_knit_is_sewn_in_straight(knit: str) -> None:
    """Its tape gives nothing, however far the knit on both sides of it stretches."""
    assert "301" == word(seam_of([knit, "coil zip", knit]), "stitch.type")


def test_a_shirring_thread_is_sewn_with_its_own_long_stitch() -> None:
    """The short stitch that a fine lawn would like holds the cloth, and nothing draws in."""
    length = seam_of(["cotton lawn", "elastic thread"])["stitch.length"]
    assert (3, 4) == (length.advised.low, length.advised.high)
