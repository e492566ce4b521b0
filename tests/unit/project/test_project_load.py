"""A sound project becomes the garment that it describes."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from msgspec.structs import replace

from advisor.knowledge.factwords import SEAM_WORDS
from advisor.knowledge.when import Reader
from advisor.project.garment import Maker, Use
from advisor.project.load import load_project
from advisor.project.quick import quick_garment
from tests.unit.project import project_cases as cases


def test_a_sound_project_is_read_whole(tmp_path: Path) -> None:
    """Names, units, kit, cloths, layers, facts and fixed answers arrive as they were written."""
    file = tmp_path / "jacket.yaml"
    file.write_text(cases.SOUND, "utf-8")
    garment = load_project(file, cases.knowledge())
    assert "Bandstand jacket" == garment.name
    assert "metric" == garment.units
    assert Maker("household", "4-thread", ("standard", "zip", "walking"), 6.0) == garment.maker
    assert {"shell", "lining", "frill", "cuff", "gift", "woven fusible interfacing"} == set(
        garment.cloths
    )
    facing = garment.seams[1]
    assert (Use("shell"), Use("woven fusible interfacing"), Use("shell")) == facing.uses
    assert {
        "length": 620.0,
        "shape": "curved",
        "edge": "turned",
        "needle size": 70.0,
        "stitch": "301",
    } == facing.facts
    assert (("needle.size", 70.0), ("stitch.type", "301")) == facing.choices
    assert (Use("shell"), Use("frill", fullness=2.5)) == garment.seams[2].uses
    assert Use("cuff", stretched=1.2) == garment.seams[3].uses[1]


def test_cloths_are_as_they_were_described() -> None:
    """Fibres, weight, colour, care and traits of a cloth are those of the file."""
    cloths = cases.garment(cases.SOUND).cloths
    shell, frill = cloths["shell"], cloths["frill"]
    assert (240.0, 240.0) == shell.weight
    assert ("#27455f", "dark", "washable") == (shell.colour, shell.shade, shell.care)
    assert ((("acetate", 100.0),),) == cloths["lining"].mixes
    assert cloths["lining"].detachable
    assert ((("nylon", None),), (("silk", None),)) == frill.mixes
    assert (0.1, 0.1) == frill.thickness
    assert {"pin marks": (1, 1)} == frill.traits
    assert ((("cotton", 95.0), ("elastane", 5.0)),) == cloths["cuff"].mixes
    assert cases.knowledge().entries["brocade"].mixes == cloths["gift"].mixes


def test_what_was_not_given_is_named_as_assumed() -> None:
    """Fibre, weight, length, allowance, shape and machine are marked where the file is silent."""
    bare = cases.garment("garment: g\nfabrics: {a: brocade}\nseams: [{name: s, layers: [a, a]}]\n")
    assert ("fibre", "weight") == bare.cloths["a"].assumed
    assert {"length", "allowance", "shape", "edge", "stress"} <= set(bare.seams[0].assumed)
    assert {"machine", "overlocker", "foot lift", "feet"} == set(bare.maker.assumed)
    full = cases.garment(cases.SOUND)
    assert ("weight",) == full.cloths["lining"].assumed
    assert ("fibre",) == full.cloths["shell"].assumed  # linen suiting may hold cotton or viscose
    assert not {"length", "allowance"} & set(full.seams[0].assumed)
    assert () == full.maker.assumed


def test_unknown_overrules_the_fibre_in_the_name() -> None:
    """A cloth of unknown fibre may be anything that it is sold in, whatever its name says."""
    text = cases.changed(
        "{fabric: linen suiting, weight: 240 g/m2,", "{fabric: linen suiting, fibres: unknown,"
    )
    shell = cases.garment(text).cloths["shell"]
    assert cases.knowledge().entries["linen-suiting"].mixes == shell.mixes
    assert "fibre" in shell.assumed


@pytest.mark.parametrize(
    ("written", "weight"),
    [("240 g/m2", 240.0), ("10 oz", 339.06), ("16 momme", 69.44), ("16 mm", 69.44), ("240", 240.0)],
)
def test_weights_are_read_in_both_systems(written: str, weight: float) -> None:
    """A weight may be in g/m², oz/yd² or momme (1 oz/yd² = 33.906 g/m², 1 momme = 4.340 g/m²)."""
    cloth = cases.garment(cases.changed("240 g/m2", written)).cloths["shell"]
    assert cloth.weight is not None
    assert weight == pytest.approx(cloth.weight[0], abs=0.01)


def test_units_change_only_what_is_printed() -> None:
    """The same garment is read whether it is printed in metric or US units."""
    metric, us = (
        cases.garment(cases.SOUND.replace("units: metric", f"units: {u}")) for u in ("metric", "us")
    )
    assert "us" == us.units
    assert (metric.cloths, metric.seams, metric.maker) == (us.cloths, us.seams, us.maker)


def test_a_lone_layer_is_joined_to_its_like() -> None:
    """A seam of one cloth is that cloth folded or joined to itself, and said to be assumed."""
    text = cases.changed("[shell, shell], length: 13", "[shell], length: 13")
    seam = cases.garment(text).seams[0]
    assert (Use("shell"), Use("shell")) == seam.uses
    assert "layers" in seam.assumed


def test_a_notion_named_as_a_cloth_is_another_cloth() -> None:
    """A notion and a fabric of one name do not become one."""
    text = cases.changed("  gift:", "  elastic: {fabric: rib knit}\n  gift:").replace(
        "{notion: woven fusible interfacing}", "{notion: elastic}"
    )
    cloths = cases.garment(text).cloths
    assert "rib-knit" == cloths["elastic"].entry
    assert "elastic" != cloths["elastic (notion)"].entry
    assert "elastic" == cases.knowledge().entries[cloths["elastic (notion)"].entry].kind


def test_a_seam_by_hand_is_known_as_such() -> None:
    """Hand sewing follows from the seam, or from a maker without a machine."""
    by_seam = cases.garment(cases.changed("finish: zigzag", "stitched by: hand"))
    assert [True, False, False, False] == [seam.by_hand for seam in by_seam.seams]
    by_maker = cases.garment(cases.changed("machine: household", "machine: hand"))
    assert all(seam.by_hand for seam in by_maker.seams)


def test_a_question_and_a_file_agree() -> None:
    """The same words give the same seam and cloths in a question and in a file."""
    seam = {"length": "62 cm", "finish": "zigzag", "shape": "curved"}
    asked = quick_garment(["nylon organza", "linen suiting"], cases.knowledge(), seam)
    read = cases.garment(
        "garment: g\nfabrics:\n  nylon organza: nylon organza\n"
        "  linen suiting: linen suiting\n"
        "seams: [{name: the seam, layers: [nylon organza, linen suiting], length: 62 cm,"
        " finish: zigzag, shape: curved}]\n"
    )
    assert asked.cloths == read.cloths
    bare = [replace(s, place="", placed_by="", assumed=s.assumed[:-1]) for s in read.seams]
    assert list(asked.seams) == bare
    assert [("seam", "kind")] == [(s.place, s.assumed[-1]) for s in read.seams]
    assert asked.maker == read.maker


def test_facts_of_seams_are_those_that_rules_may_ask() -> None:
    """Whatever a project says of a seam in a few words, a rule's condition knows in the same."""
    assert SEAM_WORDS.items() <= Reader({}, (), (), (), {}).seam_words.items()


def test_a_question_needs_no_heavy_library() -> None:
    """Whoever only asks waits neither for pydantic nor for a YAML reader."""
    script = (
        "import sys, advisor.project.quick, advisor.project.start; "
        "print([name for name in ('pydantic', 'yaml', 'rich', 'numpy') "
        "if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        check=True,
        cwd=Path(__file__).parents[3],
    )
    assert "[]" == done.stdout.strip()
