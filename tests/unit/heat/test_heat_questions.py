"""From verdicts to the heat model: layers, limits, settings, ways of pressing, and fusibles."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest
from msgspec.structs import replace

from advisor.claims.judgement import Advice, Judgement
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.decide.gluing import advise_with_heat
from advisor.heat.gluing import FLAT, best_of, trials_of
from advisor.heat.layers import (
    assumed_of,
    fibre_heat,
    heat_of,
    laid_cloth,
    layer_of,
    part_in,
    regain_of,
)
from advisor.heat.model.materials import NOTHING
from advisor.heat.model.stack import DOTS
from advisor.heat.questions import Heat, ask_trials
from advisor.heat.stacks import beds, layer_limits, presses, setting_for
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.project.garment import Cloth
from advisor.project.quick import notion_cloth, quick_garment
from tests.told import with_glue
from tests.typed import shipped as known

LAWN = "cotton lawn 80 g/m2"
COATING = "pure wool coating 500 g/m2"
FUSIBLE = {"notion": "woven fusible interfacing"}


def judged(*layers: Any) -> Judgement:
    return judge(quick_garment(list(layers), known()), known())


@cache
def coat() -> tuple[Advice, Heat]:
    """A fusible between two plies of coating, with what the heat adds to the advice."""
    advice = advise(quick_garment([COATING, FUSIBLE, COATING], known()), known())
    return advise_with_heat(advice, known(), full=False)


def cloth(entry: str, *mixes: tuple[tuple[str, float | None], ...], **more: Any) -> Cloth:
    about = known().entries[entry]
    return Cloth(entry, entry, mixes or about.mixes, **{"weight": about.weight, **more})


def test_only_the_glue_clashes_by_the_heat() -> None:
    """The advice is the same without the courses of the presses."""
    before = advise(quick_garment([COATING, FUSIBLE, COATING], known()), known())
    assert coat()[0] == with_glue(before, known()) != before


# morton-hearle-2008 by way of the knowledge: g/cm3 and kJ/(kg K); widened by a tenth, estimate.
OWN = [("silk", 1.34, 1.38), ("acrylic", 1.19, 1.5), ("wool", 1.31, 1.36)]


@pytest.mark.parametrize(("fibre", "density", "specific"), OWN)
def test_a_published_value_is_taken_and_widened(
    fibre: str, density: float, specific: float
) -> None:
    """A single number becomes a range around it."""
    heat = fibre_heat(known().fibres[fibre], known())
    assert density == heat.density
    assert pytest.approx(specific * 1000.0) == heat.specific_heat.mid
    assert pytest.approx(specific * 900.0) == heat.specific_heat.low


# finishing-heat-page against morton-hearle-2008: kJ/(kg K) at working and at room temperature;
# kawabata (memory) against ht-1-2-0: W/(m K) across the fibre and of the solid.
WARM = [
    ("polyester", (1.03, 1.3), (0.14, 0.16)),
    ("nylon", (1.43, 1.85), (0.17, 0.25)),
    ("nylon-66", (1.46, 1.85), (0.17, 0.25)),
    ("polypropylene", (1.62, 1.98), (0.11, 0.22)),
]


@pytest.mark.parametrize(("fibre", "specific", "conducts"), WARM)
def test_heat_of_a_warm_fibre_is_within_its_range(
    fibre: str, specific: tuple[float, float], conducts: tuple[float, float]
) -> None:
    """The range of a fibre's heat holds its value in a room and under the iron, and both ways."""
    heat = fibre_heat(known().fibres[fibre], known())
    assert (heat.specific_heat.low, heat.specific_heat.high) == pytest.approx(
        tuple(1000.0 * x for x in specific)
    )
    assert (heat.conductivity.low, heat.conductivity.high) == pytest.approx(conducts)


def test_a_dry_fusing_counts_the_water_of_the_room() -> None:
    """The glue is hot later through cloth that lay in the room than through cloth pressed dry."""
    trial = next(t for t in trials_of(judged(LAWN, FUSIBLE), known()) if t.moisture == "dry")
    held = [x.water_gsm for x in trial.stack.layers if x.name == "cotton lawn"]
    assert held
    assert all(w.low == 0.0 for w in held)
    assert all(w.mid > 0.0 for w in held)
    dry = replace(
        trial,
        stack=replace(
            trial.stack,
            layers=tuple(replace(x, water_gsm=NOTHING) for x in trial.stack.layers),
        ),
    )
    lain, pressed = (one.answer.glue for one in ask_trials([trial, dry]))
    assert lain is not None
    assert pressed is not None
    assert lain.hot_after.low == pytest.approx(pressed.hot_after.low, rel=0.1)
    ends = [(x.hot_after.mid or 1e9, x.hot_after.high or 1e9) for x in (pressed, lain)]
    assert ends[0][0] <= ends[1][0]
    assert ends[0][1] <= ends[1][1]


def test_a_missing_value_is_that_of_its_kin_and_says_so() -> None:
    """Linen has no specific heat of its own: cotton's range stands in, marked as an estimate."""
    linen = fibre_heat(known().fibres["linen"], known())
    cotton = fibre_heat(known().fibres["cotton"], known())
    assert cotton.specific_heat == linen.specific_heat
    assert "estimate" in linen.sources
    assert "estimate" not in cotton.sources


def test_an_unknown_fibre_is_the_envelope_of_all_that_it_may_be() -> None:
    """Neither end of any candidate lies outside, and the least density counts."""
    mixes = ((("silk", 100.0),), (("acetate", 100.0),), (("polyester", 100.0),))
    whole = heat_of(mixes, known())
    for mix in mixes:
        one = heat_of((mix,), known())
        assert whole.specific_heat.low <= one.specific_heat.low
        assert one.specific_heat.high <= whole.specific_heat.high
        assert whole.conductivity.low <= one.conductivity.low
        assert one.conductivity.high <= whole.conductivity.high
        assert whole.density <= one.density


def test_a_weight_taken_for_granted_widens_the_heat_taken_up() -> None:
    """A cloth of 50 to 150 g/m2 may take up half or one and a half times what the middle does."""
    sure = layer_of(cloth("lining", (("viscose", 100.0),), weight=(100.0, 100.0)), 150.0, known())
    loose = layer_of(cloth("lining", (("viscose", 100.0),), weight=(50.0, 150.0)), 150.0, known())
    assert sure.mass_gsm == loose.mass_gsm == 100.0
    assert pytest.approx(sure.specific_heat.low * 0.5) == loose.specific_heat.low
    assert pytest.approx(sure.specific_heat.high * 1.5) == loose.specific_heat.high
    assert "weight" in assumed_of(cloth("lining", weight=(50.0, 150.0)), known())


def test_a_heavy_weight_in_a_thin_cloth_is_never_denser_than_its_fibre() -> None:
    """Organza of 600 g/m2 is made thick enough to hold its fibre."""
    made = layer_of(cloth("organza", (("silk", 100.0),), weight=(600.0, 600.0)), 150.0, known())
    assert made.thickness_mm.low >= 600.0 / (1000.0 * 1.34 * 0.7) - 1e-9


def test_a_dry_press_counts_no_moisture_and_a_damp_one_does() -> None:
    """Cloth just pressed is dry and heats soonest; under a damp cloth its own water counts."""
    wool = cloth("coating", (("wool", 100.0),))
    assert layer_of(wool, 150.0, known()).water_gsm.high == 0.0
    assert layer_of(wool, 150.0, known(), moist=True).water_gsm.high > 0.0
    assert regain_of(wool.mixes, known()).low == 0.0


@pytest.mark.parametrize(
    ("notion", "part"),
    [
        ("metal zip", "metal zip"),
        ("coil zip", "coil zip"),
        ("moulded zip", "moulded zip"),
        ("woven fusible interfacing", None),
    ],
)
def test_a_notion_brings_its_hard_part(notion: str, part: str | None) -> None:
    """Zip teeth are waited for; an interfacing has nothing hard in it."""
    assert part == part_in(notion_cloth(notion, notion, known()), known())


def test_a_cloth_with_metal_in_it_has_metal_yarn() -> None:
    """The fibre decides, even where it only may be so."""
    assert part_in(cloth("brocade", (("silk", 90.0), ("metal", 10.0))), known()) == "metal yarn"
    assert part_in(cloth("poplin", (("cotton", 100.0),)), known()) is None


def test_press_cloths_differ() -> None:
    """Organza is thin, wool thick, a damp cloth holds water, and another word is cotton."""
    organza, wool = laid_cloth("silk organza cloth"), laid_cloth("wool cloth")
    assert organza.thickness_mm.high < wool.thickness_mm.low
    assert laid_cloth("cotton cloth", damp=True).water_gsm.mid > 0.0
    assert laid_cloth("self-fabric").mass_gsm == laid_cloth("cotton cloth").mass_gsm


def test_limits_are_those_of_the_layers_and_never_above_the_whole() -> None:
    """Each layer bears what its fibre bears; the lowest of them is the place's limit."""
    judgement = judged("pure linen suiting", "nylon organza")
    place = next(p for p in judgement.verdicts if p.scope == "seam")
    verdict = judgement.verdicts[place][LIMIT_ASPECT]
    limits = layer_limits(verdict, ("pure linen suiting", "nylon organza"))
    assert {"pure linen suiting": 200.0, "nylon organza": 110.0} == limits
    assert min(x for x in limits.values() if x) == verdict.allowed.high  # type: ignore[union-attr]


@pytest.mark.parametrize(("limit", "dots"), [(110.0, 1), (149.0, 2), (150.0, 2), (210.0, 3)])
def test_the_setting_is_the_highest_mark_within_the_limit(limit: float, dots: int) -> None:
    """149 stands for the 150 mark; below one dot there is no setting at all."""
    setting = setting_for(limit)
    assert setting is not None
    assert (dots, DOTS[dots][0]) == (setting.dots, setting.sole.mid)
    assert setting_for(100.0) is None


def test_a_clash_is_asked_at_both_marks() -> None:
    """Linen over nylon: at one dot as advised, and at the three dots that linen wants."""
    found, asked = presses(judged("pure linen suiting", "nylon organza"), known())
    assert len(found) == 1
    dots = {p.way: p.setting.dots for p in asked}
    assert (1, 3, 3) == (dots["advised"], dots["wanted"], dots["turned"])
    wanted = next(p for p in asked if p.way == "wanted")
    assert ("pure linen suiting",) == wanted.setting.wanted_by


def test_the_same_stack_is_asked_once() -> None:
    """Seams of the same cloths in the same order share their answer; reversed they do not."""
    garment = quick_garment(["cotton poplin", "viscose lining"], known())
    seam = garment.seams[0]
    twice = replace(
        garment,
        seams=(seam, replace(seam, name="again"), replace(seam, name="over", uses=seam.uses[::-1])),
    )
    places = [bed.places for bed in beds(judge(twice, known()))]
    assert [("the seam", "again"), ("over",)] == places


def test_no_iron_no_question() -> None:
    """Sequins bear no iron, so no course is drawn for them."""
    found, asked = presses(judged("pure wool coating", "polyester sequinned"), known())
    assert len(found) == 1
    assert [] == asked


def test_a_fusible_is_tried_in_the_seam_both_ways_and_flat() -> None:
    """The same two plies on both sides need no turning; the flat way has the iron on it."""
    ways = [t.way for t in trials_of(judged(COATING, FUSIBLE, COATING), known())]
    assert "as laid" in ways
    assert FLAT in ways
    assert "turned over" not in ways
    other = [t.way for t in trials_of(judged(COATING, FUSIBLE, "cotton poplin"), known())]
    assert "turned over" in other


def test_no_trial_is_hotter_than_its_layers_bear() -> None:
    """The iron of every way stands at the lowest limit of its layers, or below."""
    for trial in trials_of(judged(COATING, FUSIBLE, "nylon organza"), known()):
        limits = [x.limit_c for x in trial.stack.layers if x.limit_c is not None]
        assert trial.stack.sole.mid <= min(limits)


def test_a_glue_that_never_gets_hot_is_a_clash_with_checked_cures() -> None:
    """Through 500 g/m2 of coating no iron that all bear melts the glue; fusing flat first cures."""
    advice, _ = coat()
    clash = [c for c in advice.judgement.conflicts if c.clash[0].claim.origin == "heat model"]
    assert [("the seam", LIMIT_ASPECT)] == [c.key for c in clash]
    assert clash[0].severity == "result"
    assert "computed, not measured" in clash[0].clash[0].claim.why
    cures = {c.remedy: c for c in advice.cures[clash[0].key]}
    assert {"fuse-before-joining", "sew-in-instead"} <= set(cures)
    assert cures["fuse-before-joining"].words["tender"] == "the other layer"


def test_the_cure_of_fusing_first_was_asked_of_the_model() -> None:
    """Flat on its neighbour the same glue may get hot within the longest dwell."""
    _, heat = coat()
    flat = best_of(list(heat.fused), (FLAT,))
    assert flat is not None
    assert not flat.hopeless
    again = ask_trials([flat.trial])[0]
    assert again.soonest == pytest.approx(flat.soonest)


def test_a_known_clash_of_temperatures_is_not_told_twice() -> None:
    """Where the limits clash already, the heat adds nothing to it."""
    garment = quick_garment([COATING, FUSIBLE, "acetate lining"], known())
    advice = advise(garment, known())
    after, _ = advise_with_heat(advice, known(), full=False)
    assert [c.key for c in advice.judgement.conflicts] == [c.key for c in after.judgement.conflicts]


def test_a_thin_face_is_no_clash() -> None:
    """Through a cotton lawn the glue may get hot, and nothing is held against it."""
    advice = advise(quick_garment(["cotton lawn 80 g/m2", FUSIBLE], known()), known())
    after, heat = advise_with_heat(advice, known(), full=False)
    assert advice.judgement.conflicts == after.judgement.conflicts
    assert heat.fused
