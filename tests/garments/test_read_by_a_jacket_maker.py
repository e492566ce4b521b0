"""A jacket quilted to its silk and a parka of waxed cotton, as who makes outerwear reads them.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from advisor.claims.collect import Place
from advisor.claims.valuesets import Span
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.order.missing import missing
from advisor.order.work import Work
from tests.garments.whole import FOLDER, advice, changed, known, places, stands, told, work
from tests.typed import typed

JACKET, PARKA = "more/weir_jacket", "more/lightship_parka"


def says(found: Work, step: str) -> str:
    """What a step says."""
    return found.tasks[step].step.does


@cache
def shopping(name: str) -> str:
    """The shopping list of a garment, in one line."""
    sheet = typed("sheet", "--only", "shopping", str(Path(FOLDER / f"{name}.yaml"))).out
    return " ".join(sheet.split())


def gaps(name: str) -> dict[str, str]:
    """What seems to be missing, by its rule: the place that calls for it."""
    garment = advice(name).judgement.garment
    return {gap.rule.id: gap.place.name for gap in missing(garment, known())}


@pytest.mark.parametrize("seam", ["shoulder", "side", "princess seam"])
def test_what_is_quilted_for_good_is_tried_on_first(seam: str) -> None:
    """Basted and fitted in the shell; then quilted on flat pieces, cut, and only then sewn."""
    found = work(JACKET)
    quilted = ("baste front quilting", "cut to the pattern front quilting")
    assert stands(found, f"baste {seam}", "fit", *quilted, f"join {seam}")
    assert "open the basting of shoulder, side and princess seam" in says(found, "fit")


def test_a_known_pattern_is_quilted_at_once() -> None:
    """Nothing waits for a fitting that changes no piece."""
    found = changed(JACKET, "pattern: new", "pattern: tried")
    assert stands(found, "baste front quilting", "cut to the pattern front quilting", "fit")


def test_rows_stop_where_shell_and_lining_are_sewn_apart() -> None:
    """Each is joined alone; where one layer has no seam of its own the rows run to the edge."""
    found = work(JACKET)
    assert "three fingers short of each seam" in says(
        found, "quilt as far as the seams front quilting"
    )
    assert "wadding" not in says(found, "baste front quilting")
    padded = work("more/quilted_jacket")
    assert not any("three fingers short" in task.step.does for task in padded.tasks.values())


def test_holes_are_bound_in_the_single_shell() -> None:
    """Quilted to its lining it takes no strip through it."""
    assert stands(
        work(JACKET), "fit", "bind buttonholes", "turn buttonholes", "baste front quilting"
    )


@pytest.mark.parametrize("seam", ["shoulder", "side"])
def test_a_quilted_lining_is_felled_over_a_finished_seam(seam: str) -> None:
    """One edge flat, the other folded over it by hand: no neatening, and no iron after it."""
    found = work(JACKET)
    assert stands(found, f"press {seam}", f"neaten {seam}", f"fell lining {seam}")
    assert f"neaten lining {seam}" not in found.order


@pytest.mark.parametrize("seam", ["lining shoulder", "lining side", "sleeve lining to body lining"])
def test_a_lining_is_pressed_as_what_lies_behind_it_bears(seam: str) -> None:
    """The tweed that it is quilted to lies right behind every seam of it."""
    verdicts = advice(JACKET).judgement.verdicts
    behind = verdicts[Place("seam", "side")][LIMIT_ASPECT].allowed
    here = verdicts[Place("seam", seam)][LIMIT_ASPECT].allowed
    assert isinstance(behind, Span)
    assert isinstance(here, Span)
    assert behind.high >= here.high


@pytest.mark.parametrize("edge", ["front edge", "neck edge"])
def test_an_edge_by_hand_is_turned_in_and_its_lining_felled(edge: str) -> None:
    """No row, no grading and no understitching: the lining is felled inside the edge."""
    found = work(JACKET)
    assert stands(found, f"turn in {edge}", f"press {edge}", f"fell {edge}")
    assert not {f"understitch {edge}", f"grade {edge}", f"turn {edge}"} & set(found.order)


def test_a_mount_is_basted_once_and_a_neck_taped_once() -> None:
    """What is basted behind whole pieces has no edge by itself, and a tape of its own is enough."""
    found = work(JACKET)
    assert "baste mount" in found.order
    twice = {
        "interface neck edge",
        "interface front edge",
        "stay-stitch neck edge",
        "stay neck edge",
    }
    assert not twice & set(found.order)


def test_an_inner_sleeve_seam_is_pressed_before_the_outer_is_joined() -> None:
    """The outer one makes a tube of the sleeve, and is pressed over a roll."""
    found = work(JACKET)
    assert stands(
        found, "join front sleeve seam", "press front sleeve seam", "join back sleeve seam"
    )
    assert "a roll in the sleeve" in says(found, "press back sleeve seam")


def test_no_silk_of_the_body_lies_near_a_seam_of_a_sleeve() -> None:
    """It is pressed while it lies apart from the body."""
    near = {step for step, _ in work(JACKET).damp_near}
    assert "press shoulder" in near
    assert not {step for step in near if "sleeve seam" in step}


def test_trims_lie_on_what_is_finished() -> None:
    """Fringe on the hem of the sleeve, the chain last, on the lining felled above the hem."""
    found = work(JACKET)
    assert "edge-trim" == places(found)["fringe at wrists"].role.id
    assert stands(found, "sew sleeve hem", "press sleeve hem", "sew on fringe at wrists")
    assert stands(found, "fell the lining at hem", "sew on hem chain")
    assert "on the lining, just above its felled edge" in says(found, "sew on hem chain")
    sheet = next(s for s in told(Path(FOLDER / f"{JACKET}.yaml")).seams if s.name == "hem chain")
    assert "in yes" not in str(sheet)


def test_no_seam_is_closed_over_a_trim_that_comes_later() -> None:
    """Braid round finished edges has no end in a seam, and no body edge a foot in a sleeve."""
    for name in (JACKET, PARKA):
        texts = {step: task.step.does for step, task in work(name).tasks.items()}
        assert not [step for step, text in texts.items() if "over the ends of" in text]
        assert not [s for s, t in texts.items() if "sleeve hem" in s and "the foot of" in t]
        assert not [s for s, t in texts.items() if "foot of" in t and "neck edge" in t]


def test_a_trim_at_a_cuff_makes_no_cuff() -> None:
    """And the silk princess seam that the pieces call for is asked for."""
    found = gaps(JACKET)
    assert "lining-ends-at-a-cuff" not in found
    assert "lining side" == found["lining-panels-not-joined"]


def test_each_row_of_matched_pieces_has_its_repeat() -> None:
    """Quantities are never too small: a pattern may fall anywhere in each."""
    assert "One repeat of 80 mm is in it, for each of" in shopping(JACKET)


def test_a_hem_of_a_sleeve_stays_one_where_its_kind_is_said() -> None:
    """`kind: hem` says how it ends, and nothing of where it lies."""
    for name in (JACKET, PARKA):
        assert "sleeve-hem" == places(work(name))["sleeve hem"].role.id


def test_a_bellows_pocket_is_laid_on() -> None:
    """Its gusset is sewn to it first; the flap belongs to it and not to the welt beside it."""
    found = work(PARKA)
    assert "patch-pocket" == places(found)["bellows pocket"].kind.id
    assert stands(found, "set the gusset to bellows pocket", "stitch on bellows pocket")
    assert "lay the flap at chest welt pocket" not in found.order
    assert any("above the top of bellows pocket" in t.step.does for t in found.tasks.values())


@pytest.mark.parametrize("snaps", ["pocket snaps", "storm flap snaps"])
def test_a_fastening_says_how_snaps_are_put_on(snaps: str) -> None:
    """Set, with their dies, and bought so; layers or `on` beside it change nothing."""
    assert "snaps-set" == places(work(PARKA))[snaps].method.id
    assert "set snap (pocket snaps, storm flap snaps). Buy: 10" in shopping(PARKA)
    assert "sew-on snap" not in shopping(PARKA)


def test_snaps_of_a_pocket_are_set_while_it_lies_by_itself() -> None:
    """Through the finished flap, and before a piece lies behind the pocket."""
    found = work(PARKA)
    assert stands(found, "turn pocket flap", "set pocket snaps", "stitch on bellows pocket")
    assert stands(found, "sew hem", "set storm flap snaps")


def test_holes_for_the_cord_wait_for_the_level() -> None:
    """The waist is seen on the body; the strip is laid on before the zip takes its ends in."""
    found = work(PARKA)
    assert "mark the level of waist drawcord channel" in says(found, "fit")
    channel = "stitch down waist drawcord channel"
    assert stands(found, "fit", "make the openings of waist drawcord channel", channel)
    assert stands(found, "join side", channel, "set front zip")


def test_a_channel_runs_along_a_finished_face_edge() -> None:
    """It is stitched, and its cord drawn in, when the edge is turned."""
    found = work(PARKA)
    assert "hood-edge" == places(found)["hood face edge"].role.id
    casing = ("stitch hood drawcord casing", "draw through hood drawcord casing")
    assert stands(found, "turn hood face edge", *casing)


def test_a_felled_side_runs_on_into_the_sleeve() -> None:
    """Who says that the side runs over the armhole sets the sleeve in flat."""
    found = work(PARKA)
    assert stands(found, "join armhole", "join side", "join underarm sleeve seam", "press side")
    assert "the row of side run on into the sleeve" in says(found, "join underarm sleeve seam")


@pytest.mark.parametrize("seam", ["lining shoulder", "lining side"])
def test_a_lining_is_closed_as_the_shell_was_fitted(seam: str) -> None:
    """However loosely: of a new pattern the shoulder of the lining waits as well."""
    assert stands(work(PARKA), "fit", f"join {seam}")


def test_nothing_made_by_itself_waits_for_the_iron_of_the_lining() -> None:
    """A flap lies apart until it is sewn on, and the lining until it is set."""
    reasons = work(PARKA).graph.precedences
    hot = [p for p in reasons if "pressed hotter than" in p.why and "lining" in p.before]
    assert not [p.after for p in hot if "flap" in p.after]


def test_the_ends_of_a_lining_are_asked_for() -> None:
    """A rib ends the sleeve lining, and nothing holds that; no channel ends the body's."""
    assert "sleeve lining seam" == gaps(PARKA)["sleeve-lining-ends-nowhere"]
    assert "fell the lining at hem" in work(PARKA).order


def test_the_list_of_the_parka_is_whole() -> None:
    """Eyelets and cord ends are on it, wax stands on it once, and its grease is spoken of."""
    listed = shopping(PARKA)
    assert "eyelets with their setter" in listed
    assert "cord locks or cord ends" in listed
    assert 1 == listed.count("reproofing wax")
    cautions = " ".join(c.text for c in told(Path(FOLDER / f"{PARKA}.yaml")).cautions)
    assert "greases what is sewn next" in cautions


def test_what_leaks_is_clipped_and_not_basted() -> None:
    """For the fitting its seams are clipped, and so opened; a strip is basted where it is cut."""
    found = work(PARKA)
    assert "clip it shut along the line of front zip" in says(found, "fit")
    assert "take the clips off" in says(found, "fit")
    assert "open the basting" not in says(found, "fit")
    assert "between the two rows alone" in says(found, "stay the slit of chest welt pocket")


def test_ease_of_wool_is_shrunk_though_its_iron_stays_cool() -> None:
    """A little nylon keeps the iron at one dot: the steam comes from a steamer held above."""
    found = work(JACKET)
    assert stands(
        found, "draw up the ease of armhole", "shrink the ease of armhole", "join armhole"
    )
    assert "a steamer held above it" in says(found, "shrink the ease of armhole")
