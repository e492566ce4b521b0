"""A lined coat of felted wool bound in skin, and a straight skirt of crepe on a shaped band.

All is common practice of the trade.
"""

from __future__ import annotations

import pytest

from advisor.answer.gapwords import told_gaps
from advisor.answer.teller import Teller
from advisor.claims.collect import Place
from advisor.construction.agreement import disagreements
from advisor.construction.backing import backing_of
from advisor.construction.bands import bands_of
from advisor.decide.advise import advise
from advisor.label.care import care_of
from advisor.order.work import Work
from advisor.project.bindings import strip_of
from advisor.project.garment import Garment
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.garments.test_forgotten_places import MISSING
from tests.garments.whole import FILES, FOLDER, advice, known, ordered, places, stands, work

COAT, SKIRT = "more/breakwater_coat", "more/archivist_skirt"
ENDS = "sleeve lining to sleeve hem"


def word(name: str, place: str, aspect: str) -> str:
    """What is picked at a place of a garment."""
    found = advice(name).judgement.verdicts[Place("seam", place)][aspect]
    return found.aspect.words[int(found.pick)] if found.pick is not None else ""


def text_of(name: str) -> str:
    """The file of a garment."""
    return (FOLDER / f"{name}.yaml").read_text(encoding="utf-8")


def does(found: Work, step: str) -> str:
    """What a step says."""
    return next(task.step.does for task in found.tasks.values() if task.id == step)


def clashes(garment: Garment) -> set[str]:
    """What is told not to agree."""
    judged = advise(garment, known()).judgement
    return {row.id for row in disagreements(judged, known())}


def test_the_lining_of_a_sleeve_is_felled_to_its_hem_by_the_line_that_says_so() -> None:
    """The shell is hemmed once, and its lining felled there once."""
    found = work(COAT)
    assert places(found)[ENDS].kind.id == "lining-seam"
    assert stands(found, "sew sleeve hem", f"fell {ENDS}")
    assert "fell the lining at sleeve hem" not in found.order
    assert not [s for s in found.order if s in (f"sew {ENDS}", f"set {ENDS}")]


@pytest.mark.parametrize("name", sorted(MISSING))
def test_the_line_of_a_gap_is_read_as_what_it_is_written_for(name: str) -> None:
    """No seam as a hem, no hem as a seam; and it goes against nothing that stands there."""
    path = next(path for path in FILES if path.stem == name)
    text, garment = path.read_text(encoding="utf-8"), load_project(path, known())
    before, kinds = clashes(garment), known().places.kinds
    for gap in told_gaps(Teller(garment, known())):
        if not gap.line or " or " in gap.line:
            continue
        mended = text.replace("\nseams:\n", f"\nseams:\n  - {gap.line}\n")
        filled = garment_of(parse_yaml(mended, path.name), known())
        (new,) = (s for s in filled.seams if s.name not in {s.name for s in garment.seams})
        assert (new.place == "hem") == ("edge: hem" in gap.line)
        if "kind:" not in gap.line and "edge:" not in gap.line:
            assert kinds[new.place].family != "edge" or "binding" in gap.line
        assert clashes(filled) <= before


def test_what_a_lining_covers_is_pressed_open_and_turned_up() -> None:
    """Unlined it is lapped, and its edge left as it is cut."""
    assert (word(COAT, "side", "seam.kind"), word(COAT, "side", "stitch.type")) == ("plain", "301")
    assert word(COAT, "side", "press.motion") == "lift and lower"
    assert places(work(COAT))["hem"].method.id == "catch-stitched-hem"
    lines = text_of(COAT).replace(", lined: yes", "").splitlines()
    gone = ("lining", "padded", "glide", "parts:")
    bare = [line for line in lines if not any(word in line for word in gone)]
    unlined = places(
        ordered("\n".join(bare).replace(", part: body", "").replace(", part: sleeve", ""))
    )
    assert unlined["side"].method.id == "lapped-seam"
    assert unlined["hem"].method.id == "hem-left-raw"


def test_the_rows_of_a_slit_are_short_and_straight() -> None:
    """In a felted cloth as in any other."""
    found = advice(COAT).judgement.verdicts[Place("seam", "welt pocket")]["stitch.length"]
    assert word(COAT, "welt pocket", "stitch.type") == "301"
    assert found.pick is not None
    assert found.pick <= 2


def test_no_hem_is_finished_through_a_binding_and_no_collar_pressed_beside_one() -> None:
    """The hem is turned up first, and the collar set and pressed."""
    found = work(COAT)
    assert stands(found, "press hem", "bind front facing binding")
    assert stands(found, "press collar seam", "bind collar binding")


@pytest.mark.parametrize("order", ["skin, cloth", "cloth, skin"])
def test_the_strip_of_a_bound_edge_is_known_wherever_it_is_listed(order: str) -> None:
    """It is folded with its cut edges, and no interfacing is cut for it."""
    layers = f"[{order}, {{notion: sew-in interfacing}}, cloth]"
    if order.startswith("cloth"):
        layers = "[cloth, {notion: sew-in interfacing}, cloth, skin]"
    was = "[skin, cloth, {notion: sew-in interfacing}, cloth]"
    text = text_of(COAT)
    assert was in text
    garment = garment_of(parse_yaml(text.replace(was, layers), "p.yaml"), known())
    bound = [seam for seam in garment.seams if seam.place == "bound-edge"]
    assert {strip_of(seam, garment) for seam in bound} == {"skin"}
    assert {p.name for p in backing_of("sew-in interfacing", garment, known()).pieces} == {
        "facing",
        "collar",
    }
    assert (
        places(ordered(text.replace(was, layers)))["collar binding"].method.id == "bound-edge-raw"
    )


def test_the_wadding_is_out_before_an_edge_is_neatened_and_out_of_the_hem() -> None:
    """And the lining that bears an iron is not said to take none."""
    found = work(COAT)
    early = "neaten lining shoulder early"
    steps = [s for s in found.order if s.startswith("neaten") and "lining shoulder" in s]
    assert stands(found, "unpick the wadding at lining shoulder", *(steps or [early]))
    assert "cut the wadding out" in does(found, "sew lining hem")
    assert "glide" not in does(found, found.order[-1])


def test_a_skirt_is_tried_on_in_basted_darts_and_sides() -> None:
    """One that hangs from a bodice, or whose pattern is tried, has its sides sewn first."""
    found = work(SKIRT)
    assert stands(found, "baste front dart", "fit", "stitch front dart", "set concealed zip")
    assert stands(found, "baste side", "fit", "join side")
    tried = ordered(
        text_of(SKIRT).replace(
            "fitting: to the body\nmaker", "fitting: to the body\npattern: tried\nmaker"
        )
    )
    assert stands(tried, "join side", "fit")


def test_the_edges_of_crepe_are_stayed_overlocked_and_hemmed_by_hand() -> None:
    """On the flat of the board, and the crepe shrunk twice over."""
    found = work(SKIRT)
    assert "stay the opening of concealed zip" in found.order
    assert word(SKIRT, "side", "seam.finish") == "overlocked"
    assert word(SKIRT, "hem", "press.surface") == "padded board"
    assert places(found)["hem"].method.id == "catch-stitched-hem"
    assert "twice over" in does(found, "shrink cloth")
    assert "twice over" not in does(found, "shrink lining")


def test_the_pieces_of_a_shaped_band_are_joined_and_no_straight_one_cut() -> None:
    """Where they are not listed it is said how long the band is cut."""
    garment = load_project(FOLDER / f"{SKIRT}.yaml", known())
    band = next(seam for seam in garment.seams if seam.name == "waistband")
    assert not bands_of(band, garment, known())
    assert stands(work(SKIRT), "join the pieces of waistband", "join waistband")
    lines = [line for line in text_of(SKIRT).splitlines() if "contour band" not in line]
    bare = garment_of(parse_yaml("\n".join(lines), "p.yaml"), known())
    assert [one.laps for one in bands_of(band, bare, known())] == [True]


def test_a_label_names_the_cloth_before_a_hook_on_it() -> None:
    """Both bear no bleach."""
    judged = advise(load_project(FOLDER / f"{SKIRT}.yaml", known()), known()).judgement
    bleach = next(row for row in care_of(judged, known()).lines if row.aspect == "care.bleach")
    assert bleach.setters[0].cloths == {"cloth"}
