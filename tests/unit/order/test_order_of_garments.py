"""The order of whole garments: what work there is, what holds it, what the maker may say."""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from advisor.knowledge.ordering import SEWN
from advisor.order.kinds import crosses
from advisor.order.operations import tasks_and_facts
from advisor.order.precedences import precedences_of
from advisor.order.seamplaces import seam_places
from advisor.order.setups import Setups
from advisor.order.work import order_of
from tests.garments.test_trousers_and_shorts import CHORISTER
from tests.garments.test_trousers_of_a_class import QUAYSIDE
from tests.garments.whole import advice as whole_advice
from tests.unit.order.order_cases import by_cp_sat
from tests.unit.order.order_projects import (
    BODICE,
    COSTUME,
    HUNG_FREE,
    KNIT,
    PLEATED,
    RAIN,
    SKIRT,
    SMALL,
    STARRED,
    TAILORED,
    TIERS,
    TROUSERS,
    WHOLE_DRESS,
    advice_of,
    before,
    demo,
    demo_advice,
    demo_names,
    known,
    work_of,
)

NAMES = [
    ("shoulder", "shoulder"),
    ("side seams", "side"),
    ("outseam", "side"),
    ("inside leg", "inseam"),
    ("armhole binding", "binding"),
    ("left armhole", "armhole"),
    ("sleeve underarm", "underarm"),
    ("sleeve hem", "sleeve-hem"),
    ("hem frill", "hem-frill"),
    ("hem", "hem"),
    ("tier 2", "tier"),
    ("patch pocket", "patch-pocket"),
    ("welt pocket", "pocket"),
    ("bones", "bone-channel"),
    ("bust dart", "dart"),
    ("front pleats", "pleat"),
    ("waistband", "waistband"),
    ("waist", "waist"),
    ("concealed zip", "concealed-zip"),
    ("fly zip", "zip"),
    ("collar edge", "collar"),
    ("front facing", "facing"),
    ("neckband", "neckband"),
    ("spark panel", "panel"),
    ("qwerty", "plain"),
    ("inside out", "plain"),
    ("cup seam", "plain"),
    ("cup side seam", "side"),
    ("shirred side", "side"),
]


def one_seam(name: str, more: str = "") -> str:
    return (
        "garment: One\nfabrics:\n  cloth: {fabric: gabardine}\n"
        f"seams:\n  - {{name: {name}, layers: [cloth, cloth]{more}}}\n"
    )


@pytest.mark.parametrize(("name", "kind"), NAMES)
def test_a_name_tells_what_a_seam_is(name: str, kind: str) -> None:
    """The words of the trade, in the singular or the plural; what says nothing is plain."""
    garment = advice_of(one_seam(name)).judgement.garment
    assert kind == seam_places(garment, known())[0].role.id


def test_the_maker_may_say_what_a_seam_is() -> None:
    """`kind:` goes before the name."""
    garment = advice_of(one_seam("qwerty", ", kind: set lining")).judgement.garment
    assert "set-lining" == seam_places(garment, known())[0].role.id


def test_seams_that_share_no_panel_do_not_cross() -> None:
    """With panels named, a sleeve's armhole crosses its own shoulder and no other."""
    text = (
        "garment: Two\nfabrics:\n  cloth: {fabric: gabardine}\nseams:\n"
        "  - {name: left shoulder, layers: [cloth, cloth], joins: [left back, left front]}\n"
        "  - {name: left armhole, layers: [cloth, cloth], joins: [left front, left sleeve]}\n"
        "  - {name: right armhole, layers: [cloth, cloth], joins: [right front, right sleeve]}\n"
    )
    shoulder, left, right = seam_places(advice_of(text).judgement.garment, known())
    assert crosses(left, shoulder)
    assert not crosses(right, shoulder)


@pytest.mark.parametrize("name", SMALL)
def test_every_must_is_kept(name: str) -> None:
    """No precedence that was not given up is broken, and every step stands once."""
    work = work_of(SMALL[name])
    assert sorted(work.order) == sorted(set(work.order)) == sorted(work.tasks)
    assert all(before(work, p.before, p.after) for p in work.graph.precedences)
    assert () == work.cycles
    assert all(p.strength != "must" for p in work.given_up)


@pytest.mark.parametrize("name", SMALL)
def test_a_small_garment_is_proved_and_never_dearer_than_custom(name: str) -> None:
    """The quick effort is enough for a proof, and custom is never cheaper."""
    work = work_of(SMALL[name])
    assert work.plan.optimal
    assert work.plan.cost == work.plan.bound <= work.plan.plain_cost
    assert work.plan.plain_cost == work_of(SMALL[name], plain=True).plan.cost


@pytest.mark.parametrize("name", demo_names())
def test_the_demo_projects_cost_what_cp_sat_says(name: str) -> None:
    """The same least price as OR-Tools CP-SAT, which proves it."""
    work = demo(name)
    least, proved = by_cp_sat(work.graph.steps, work.graph.reduced(), work.setting.table, 120.0)
    assert proved
    assert work.plan.optimal
    assert least == round(work.plan.cost * 60)


def test_the_linen_is_pressed_before_the_lace_is_in() -> None:
    """The remedy "press before joining" is a step that stands before the tender cloth comes in."""
    work = work_of(COSTUME)
    hot = work.tasks["hot press linen"]
    assert hot.step.iron is not None
    assert {"lace", "sparks"} & hot.tender
    assert before(work, "hot press linen", "join lace yoke")
    iron = work.tasks["press lace yoke"].step.iron
    assert iron is None or iron.temperature_c < hot.step.iron.temperature_c


@pytest.mark.parametrize("name", demo_names())
def test_no_iron_is_set_hotter_than_a_seam_allows(name: str) -> None:
    """Whatever stands in the order, the iron for a seam never goes above that seam's limit."""
    advice = demo_advice(name)
    setups = Setups(advice, known())
    checked = 0
    for task in order_of(advice, known()).tasks.values():
        if task.op in ("press", "turn") and task.place and task.step.iron:
            limit = setups.limit(Place("seam", task.place.name))
            assert limit is not None
            assert task.step.iron.temperature_c <= limit
            checked += 1
    assert checked


def test_what_is_pressed_open_is_neatened_before_and_what_is_closed_after() -> None:
    """Single edges while flat; closed allowances, and those that a fitting may move, after it."""
    work = work_of(BODICE)
    assert before(work, "neaten shoulder", "join shoulder")
    assert before(work, "join armhole", "neaten armhole")
    assert before(work, "fit", "neaten side")


def test_the_lining_waits_for_the_fitting() -> None:
    """So that what is changed in the shell is changed in the lining too."""
    assert before(work_of(BODICE), "fit", "join lining side")


def test_a_knit_hangs_and_a_woven_does_not() -> None:
    """A day of hanging where the edge would drop: a knit, a bias edge, and nothing else."""
    assert before(work_of(KNIT), "hang", "sew hem")
    assert before(work_of(TIERS), "hang", "sew hem")
    assert "hang" not in work_of(SKIRT).order


def test_the_fusible_is_fused_first() -> None:
    """Interfacing is fused to a single piece, hotter than the seams may be pressed later on."""
    work = work_of(SKIRT)
    assert before(work, "fuse waistband", "join waistband")


def test_every_template_of_the_order_is_needed_somewhere() -> None:
    """Each operation and each precedence speaks of at least one garment here."""
    advices = [*map(advice_of, SMALL.values()), *map(demo_advice, demo_names())]
    advices += [
        advice_of(text)
        for text in (
            TAILORED,
            RAIN,
            WHOLE_DRESS,
            STARRED,
            PLEATED,
            HUNG_FREE,
            QUAYSIDE,
            CHORISTER,
        )
    ]
    more = (
        "lined_skirt",
        "linen_jacket",
        "charmeuse_gown",
        "stage_gown",
        "ringers_waistcoat",
        "crew_fleece",
        "boned_satin",
        "bib_dungarees",
        "slip_on_straps",
        "reedcutter_gilet",
        "bandmaster_skirt",
        "skating_jacket",
        "glasshouse_dress",
        "harbour_overshirt",
        "regatta_gown",
        "orchard_dungarees",
        "lantern_captain",
        "pierhead_overall",
    )
    advices += [whole_advice(name) for name in ("01_blouse", *(f"more/{m}" for m in more))]
    garments = [(tasks_and_facts(a, known())[0], Setups(a, known())) for a in advices]
    used = {task.op for tasks, _ in garments for task in tasks}
    assert set() == set(known().order.operations) - used
    silent = [
        rule.id
        for rule in known().order.precedences
        if not any(precedences_of(tasks, [rule], setups) for tasks, setups in garments)
    ]
    assert [] == silent


def with_order(order: str, text: str = SKIRT) -> str:
    return f"{text}order:\n{order}"


def test_a_dropped_step_is_gone_and_its_order_stays() -> None:
    """What had to come before it still comes before what came after it."""
    work = work_of(with_order("  drop: [press centre back]\n"))
    assert "press centre back" not in work.order
    assert before(work, "join centre back", "set zip")


def test_an_added_step_stands_where_it_was_said() -> None:
    """After one step, before another, with its own minutes."""
    said = "  add: [{step: sew on beads, after: press side, before: fit, minutes: 45 min}]\n"
    work = work_of(with_order(said))
    place = work.order.index("sew on beads")
    assert work.order.index("press side") < place < work.order.index("fit")
    assert 45.0 == work.tasks["sew on beads"].step.minutes


def test_tied_steps_stay_in_one_sitting() -> None:
    """No sitting ends between them."""
    work = work_of(with_order("  tie: [[join side, join waistband]]\n"))
    for sitting in work.sittings(30):
        assert ("join side" in sitting.steps) == ("join waistband" in sitting.steps)


def test_a_pin_is_honoured() -> None:
    """The step stands where it is wanted."""
    work = work_of(with_order("  pin: [{step: stitch front dart, after: set zip}]\n"))
    assert before(work, "set zip", "stitch front dart")
    assert () == work.pins[0].forbidden_by


def test_a_pin_that_cannot_be_had_says_why() -> None:
    """The chain of precedences that stands against it."""
    work = work_of(with_order("  pin: [{step: stitch back dart, after: join side}]\n"))
    chain = work.pins[0].forbidden_by
    assert [("stitch back dart", "join side")] == [(p.before, p.after) for p in chain]
    assert before(work, "stitch back dart", "join side")


def test_a_name_that_is_no_step_is_told() -> None:
    """With the nearest names, and nothing else happens."""
    work = work_of(with_order("  drop: [press sid]\n"))
    assert "No step is called 'press sid'. Did you mean 'press side'" in work.remarks[0]
    assert sorted(work_of(SKIRT).order) == sorted(work.order)


def test_musts_that_chase_each_other_are_a_conflict_with_remedies() -> None:
    """The smallest cycle is named, and what ends it; the rest is planned all the same."""
    text = (
        "garment: Knot\nfabrics:\n  cloth: {fabric: gabardine}\nseams:\n"
        "  - {name: first, layers: [cloth, cloth], crosses: second}\n"
        "  - {name: second, layers: [cloth, cloth], crosses: first}\n"
    )
    work = work_of(text)
    assert [("join first", "join second"), ("join second", "join first")] == [
        (p.before, p.after) for p in work.cycles[0].links
    ]
    assert 1 == len(work.cycles)
    assert (
        "Take 'first' out of the seams that 'second' crosses.",
        "Take 'second' out of the seams that 'first' crosses.",
    ) == work.cycles[0].remedies
    assert {"join first", "join second"} <= set(work.order)


def test_a_wish_that_goes_round_is_the_first_to_be_given_up() -> None:
    """The maker's own link is taken out, and she is told to take it out."""
    work = work_of(with_order("  after: {stitch back dart: [sew hem]}\n"))
    assert ("sew hem", "stitch back dart") == (
        work.cycles[0].given_up.before,
        work.cycles[0].given_up.after,
    )
    wanted = "Take out of your order that 'sew hem' comes before 'stitch back dart'."
    assert wanted in work.cycles[0].remedies


def test_done_steps_stand_first_and_cost_nothing() -> None:
    """Ticked steps come first; the plan is of what is left."""
    done = list(work_of(SKIRT).order[:20])
    listed = "".join(f"  - {name}\n" for name in reversed(done))
    work = work_of(f"{SKIRT}done:\n{listed}")
    assert set(done) == set(work.order[:20]) == set(work.done)
    assert set(work.plan.order) == set(work.order) - set(done)
    assert work.plan.cost <= work_of(SKIRT).plan.cost


def test_a_tick_out_of_turn_is_told() -> None:
    """A step that is ticked before what it has to wait for."""
    work = work_of(f"{SKIRT}done: [sew hem]\n")
    assert any("'sew hem' is ticked, but" in remark for remark in work.remarks)


def test_her_own_prices_count() -> None:
    """A foot that is quick to change makes the same order cheaper by just that."""
    free = work_of(with_order("  costs: {foot: 0}\n"))
    assert free.setting.table.foot == 0
    assert free.plan.cost < work_of(SKIRT).plan.cost


def test_a_sitting_ends_where_the_garment_hangs() -> None:
    """Nobody waits a day in one sitting."""
    sittings = work_of(KNIT).sittings(1000)
    assert "hang" == sittings[0].steps[-1]
    assert 2 == len(sittings)


def test_rows_are_drawn_up_in_the_sitting_in_which_they_are_joined() -> None:
    """Nobody may stop between drawing up and joining, or between a seam and its pressing."""
    work = work_of(TIERS)
    stops = work.stops()
    assert "draw up tier 1 to tier 2" not in stops
    assert "join side" not in stops
    assert "press side" in stops


def test_trousers_have_their_legs_before_their_crotch() -> None:
    """Inseams, then the crotch, then the waistband, and the button at the end."""
    order = [s for s in work_of(TROUSERS).order if s.split()[0] in ("join", "set", "fasten")]
    assert ["join inseam", "join crotch", "join waistband", "fasten waistband button"] == order[-4:]


def test_only_seams_are_sewn() -> None:
    """A group word of the precedences means the operations that sew."""
    assert set(SEWN) <= set(known().order.operations)


WAISTED = """\
garment: Harvest dress
fitting: %s
fabrics:
  shell: {fabric: crepe, fibres: {viscose: 100}}
seams:
  - {name: bust dart, layers: [shell], length: 12 cm}
  - {name: shoulder, layers: [shell, shell], length: 12 cm}
  - {name: side, layers: [shell, shell], length: 60 cm}
  - {name: waist, layers: [shell, shell], length: 72 cm}
  - {name: centre back zip, layers: [shell, {notion: concealed zip}], length: 50 cm}
  - {name: centre back, layers: [shell, shell], length: 50 cm}
"""


def test_the_skirt_hangs_from_its_waist_at_the_fitting() -> None:
    """Common practice: basted once dart and sides are basted, and sewn after the fitting."""
    work = work_of(WAISTED % "to the body")
    basted = ["baste bust dart", "baste side", "baste waist"]
    sewn = ["stitch bust dart", "join side", "neaten side", "join waist", "set centre back zip"]
    wanted = [*basted, "fit", *sewn]
    assert wanted == [name for name in work.order if name in wanted]


def test_a_loose_waist_is_not_basted() -> None:
    """Nobody takes it in."""
    assert "baste waist" not in work_of(WAISTED % "loosely").tasks
