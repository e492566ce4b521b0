"""Parts are pressed by themselves: what a way of working avoids is told and is no conflict."""

from __future__ import annotations

from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.project.quick import quick_garment
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped as known

CLOTHS = """\
garment: test
fabrics:
  shell: {fabric: linen suiting, fibres: {linen: 100}}
  lining: {fabric: satin, fibres: {acetate: 100}}
  frill: {fabric: organza, fibres: {nylon: 100}}
  pile: {fabric: velvet, fibres: {viscose: 100}}
seams:
"""


def garment(*seams: str) -> Garment:
    text = CLOTHS + "".join(f"  - {{name: s{i}, {s}}}\n" for i, s in enumerate(seams))
    return garment_of(parse_yaml(text, "test"), known())


def judged(*seams: str) -> Judgement:
    return judge(garment(*seams), known())


def kinds(found: Judgement) -> set[tuple[str, str, str]]:
    return {
        (i.kind, "+".join(sorted(i.needy)), "+".join(sorted(i.tender))) for i in found.instructions
    }


def test_a_zip_lies_beside_the_iron() -> None:
    """Linen wants more than a nylon coil bears, and the place gets no more than the coil bears."""
    found = judged("layers: [shell, {notion: coil zip}]")
    assert () == found.conflicts
    assert ("part", "shell", "coil zip") in kinds(found)
    (verdict,) = [v["press.temperature"] for p, v in found.verdicts.items() if p.name == "s0"]
    assert isinstance(verdict.allowed, Span)
    assert verdict.allowed.high <= 110


def test_a_lining_is_pressed_alone() -> None:
    """Where shell and lining are joined the cooler iron counts, and nothing is ruined."""
    found = judged("layers: [shell, lining]")
    assert () == found.conflicts
    assert ("lining", "shell", "lining") in kinds(found)


def test_two_cloths_of_one_seam_are_a_conflict_that_only_shows() -> None:
    """A frill can be kept beside no iron; what gives way is the sharp press of the linen."""
    found = judged("layers: [shell, frill]")
    assert ["result"] == [c.severity for c in found.conflicts]


def test_cloths_that_meet_in_no_seam_are_told_of_for_the_last_press() -> None:
    """In the last press each is pressed where it lies by itself."""
    found = judged("layers: [shell, shell]", "layers: [frill, frill]")
    assert () == found.conflicts
    assert ("last", "shell", "frill+lining") in kinds(found)


def test_a_glue_has_to_be_hot_where_it_lies() -> None:
    """A fusible is no part that goes in afterwards: nylon beside it is a conflict."""
    found = judged("layers: [frill, {notion: woven fusible interfacing}]")
    assert found.conflicts
    assert "woven fusible interfacing" not in {n for i in found.instructions for n in i.needy}


def test_one_cause_is_one_conflict_with_all_its_places() -> None:
    """Linen and nylon in two seams: one conflict, and its remedy is written into both."""
    about = garment("layers: [shell, frill]", "layers: [frill, shell]", "layers: [shell, shell]")
    advice = advise(about, known())
    (conflict,) = advice.judgement.conflicts
    assert ("s0", "s1") == conflict.places
    first = advice.cures[conflict.key][0]
    assert {("seams", "s0", "pressed first"), ("seams", "s1", "pressed first")} == {
        line.path for line in first.lines
    }


def test_conflicts_are_numbered_worst_first_and_then_by_place() -> None:
    """The same order whatever is asked."""
    found = judged(
        "layers: [shell, frill]", "layers: [pile, {notion: woven fusible interfacing}, shell]"
    )
    assert ["damage", "result"] == [c.severity for c in found.conflicts]
    assert ["s1", "s0"] == [c.place.name for c in found.conflicts]


def test_finger_pressing_leaves_no_conflict() -> None:
    """A seam that no iron touches asks for no heat."""
    assert () == judged("layers: [shell, frill], pressing: finger-press").conflicts


def test_a_glue_fused_first_to_what_takes_it_is_no_conflict() -> None:
    """Fused to the linen while it is flat; without a layer that takes it the conflict stands."""
    glue = "{notion: woven fusible interfacing}"
    said = "fused first: woven fusible interfacing, pressed first: shell"
    assert () == judged(f"layers: [shell, {glue}, frill], {said}").conflicts
    alone = "fused first: woven fusible interfacing"
    assert judged(f"layers: [frill, {glue}, frill], {alone}").conflicts


def test_what_bones_keep_from_its_iron_is_pressed_before_they_go_in() -> None:
    """A coutil of cotton bears two dots more than plastic boning, and is pressed without it."""
    found = judge(quick_garment(["coutil", "boning"], known()), known()).instructions
    assert [("part", {"coutil"}, {"boning"})] == [
        (one.kind, set(one.needy), set(one.tender)) for one in found
    ]


def test_bones_that_bear_as_much_as_their_cloth_are_no_reason_to_press_earlier() -> None:
    """Nylon organza bears one dot alone, and so does the boning in it."""
    assert () == judge(quick_garment(["nylon organza", "boning"], known()), known()).instructions
