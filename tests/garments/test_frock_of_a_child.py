"""A child's frock as a maker reads it: no pin on the child, each piece held against its own place.

What the fitting of a pleated waist needs, the lace at a hem, and sizes in the units of the file:
common practice.
"""

from __future__ import annotations

import pytest

from advisor.errors import InputError
from advisor.units.factors import PULL
from tests.garments.whole import FOLDER, changed, ordered, read, stands, told, work

FROCK = "more/bandstand_frock"
FILE = FOLDER / f"{FROCK}.yaml"


def _checks(text: str) -> dict[str, str]:
    """What does not agree, by the place and the kind of it."""
    return {f"{c.place}: {c.id}": c.text for c in read(text).checks or ()}


def _notes(text: str) -> list[str]:
    """What is told of how each seam is made."""
    return [says for seam in read(text).seams if seam.built for says in seam.built.build_says]


def test_nothing_is_pinned_on_a_child() -> None:
    """An adult stands still; a child is stuck."""
    does = work(FROCK).tasks["fit"].step.does
    assert "pin the basted sleeves in" not in does
    assert "baste the sleeves in" in does
    assert "count the pins" in does
    grown = changed(FROCK, "worn by: child", "worn by: adult").tasks["fit"].step.does
    assert "pin the basted sleeves in" in grown
    assert "count the pins" not in grown


def test_pleats_are_laid_over_joined_widths_before_the_waist_is_tried_on() -> None:
    """A waist cannot be basted to a flat width that is half as long again."""
    steps = ("join skirt side", "press skirt side", "fold waist", "baste waist", "fit")
    assert stands(work(FROCK), *steps)


def test_a_waist_is_neatened_before_its_stay_lies_on_it() -> None:
    """The knife would cut the petersham."""
    pairs = {(p.before, p.after) for p in work(FROCK).graph.precedences}
    assert ("neaten waist", "tack in waist stay") in pairs
    assert stands(work(FROCK), "join waist", "neaten waist", "tack in waist stay")


def test_lace_is_sewn_to_the_hemmed_edge() -> None:
    """It is not rolled into the hem: its heading lies on the finished edge, its ends joined."""
    found = work(FROCK)
    assert stands(found, "sew hem lace", "press hem lace", "stitch the edging to hem lace")
    assert "lace edging" not in found.tasks["sew hem lace"].step.does
    assert "join its two ends" in found.tasks["stitch the edging to hem lace"].step.does
    alone = changed(FROCK, ", {notion: lace edging, width: 2 cm}]", "]")
    assert "stitch the edging to hem lace" not in alone.tasks


def test_an_armhole_is_not_held_against_the_skirt_of_its_cloth() -> None:
    """Sleeve and overskirt are of one voile: only the skirt is gathered at the waist."""
    found = {f"{c.place}: {c.id}" for c in told(FILE).checks or ()}
    assert not any(name.startswith(("armhole:", "overskirt to waist:")) for name in found)
    text = FILE.read_text(encoding="utf-8").replace(
        "{use: voile, fullness: 2.5}", "{use: voile, fullness: 3}"
    )
    assert "overskirt to waist: fullness" in _checks(text)


def test_a_sleeve_ten_times_as_high_as_its_seam_is_a_slip() -> None:
    """62 cm on a seam of 8; 20 cm with its cap and a hem is right."""
    text = FILE.read_text(encoding="utf-8")
    said = _checks(text)["sleeve seam: height"]
    assert "80 mm" in said
    assert "62 cm" in said
    assert "sleeve seam: height" not in _checks(text.replace("height: 62 cm", "height: 20 cm"))


def test_the_gathered_armhole_of_a_half_sheer_has_no_finish_that_nothing_makes() -> None:
    """Gathers are not folded inside a mock French seam, so its edges are neatened."""
    found = changed(FROCK, "{fabric: voile,", "{fabric: batiste,")
    assert "neaten armhole" in found.tasks
    assert "grade armhole" not in found.tasks


SLIP = """garment: Slip
units: us
fabrics: {shell: {fabric: cotton poplin, fibres: {cotton: 100}}}
seams:
  - name: waist
    layers: [shell, shell]
    length: 28 in
    pleats: {kind: box, number: 9, depth: 3 in}
"""


def test_a_refusal_speaks_the_units_of_the_file() -> None:
    """Inches in a file of inches, mm in another."""
    with pytest.raises(InputError) as us:
        ordered(SLIP)
    assert "'depth': 3 in is deeper" in str(us.value)
    assert " mm" not in str(us.value)
    with pytest.raises(InputError) as metric:
        ordered(SLIP.replace("units: us\n", ""))
    assert "'depth': 76.2 mm is deeper" in str(metric.value)


STAYED = """garment: Bodice
fabrics:
  shell: {fabric: batiste, fibres: {cotton: 100}}
  knit: {fabric: jersey, fibres: {cotton: 100}}
seams:
  - {name: side, layers: [shell, shell], length: 20 cm, times: 2}
  - {name: waist, layers: [shell, knit, {use: shell, fullness: 2.5}], length: 60 cm}
  - {name: back zip, layers: [shell, {notion: concealed zip}], length: 40 cm}
"""


def test_a_stay_lies_on_each_piece_and_its_ends_go_into_the_seams() -> None:
    """Shoulders and sides are still open when it is laid, so it cannot be one length."""
    does = ordered(STAYED).tasks["stay waist"].step.does
    assert "on one of its edges only" in does
    assert "cut it for each piece" in does
    assert "those that end here take in its ends" in does


def test_the_pull_of_a_seam_is_said_in_the_units_of_the_file() -> None:
    """1 N/cm is 0.571 pounds per inch: 2.54 N on an inch, over 4.448 N to the pound."""
    share, unit = PULL["us"]
    assert share == pytest.approx(0.571, abs=0.0005)
    text = FILE.read_text(encoding="utf-8")
    metric = [note for note in _notes(text) if " N/cm" in note]
    us = _notes(text.replace("units: metric", "units: us"))
    assert metric
    assert not any(" N/cm" in note for note in us)
    assert len(metric) == sum(f" {unit}" in note for note in us)
