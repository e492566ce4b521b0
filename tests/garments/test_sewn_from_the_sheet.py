"""What kept a cutter from sewing eight more garments as they were told, and must not come back.

A bias gown of charmeuse, a ponte dress, lined trousers, a shirt of lawn, an unlined linen jacket,
a velvet cape, a taped raincoat and a child's party dress. All is common practice of the trade; a
law here holds for each of them.
"""

from __future__ import annotations

import pytest

from advisor.answer.label import Asked
from advisor.answer.pipeline import Parts, tell
from advisor.answer.teller import Teller
from advisor.answer.verdicts import told_verdict
from advisor.claims.collect import Place
from advisor.claims.valuesets import Choice, Span
from advisor.claims.workarounds import ROUND
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.label.whole import as_labelled
from advisor.order.tasks import Task
from advisor.render.lines import phrase
from tests.garments.whole import FOLDER, advice, decided, known, places, stands, work

GOWN, PONTE, TROUSERS = "more/charmeuse_gown", "more/ponte_dress", "more/lined_trousers"
SHIRT, JACKET, CAPE = "more/lawn_shirt", "more/linen_jacket", "more/velvet_cape"
RAINCOAT, CHILD = "more/taped_raincoat", "more/party_dress"
ALL = (GOWN, PONTE, TROUSERS, SHIRT, JACKET, CAPE, RAINCOAT, CHILD)
STRAIGHT = ("301", "301, short", "301, long")


def sewn(garment: str) -> list[Task]:
    """The tasks of a garment in their order."""
    found = work(garment)
    return [found.tasks[name] for name in found.order]


@pytest.mark.parametrize("garment", ALL)
def test_a_needle_that_swings_never_meets_the_single_hole(garment: str) -> None:
    """Hurts: zigzag, buttonholes and twin needles have the wide plate, told as a set-up."""
    for task in sewn(garment):
        state = task.step.machine
        if state is not None and (state.stitch not in STRAIGHT or "twin" in state.point):
            assert "single-hole" != state.plate, task.id
            assert "straight-stitch" != state.foot, task.id
        if "twin needle" in task.step.does:
            assert state is not None
            assert ("301", "stretch twin") == (state.stitch, state.point)
        if task.op == "fasten" and task.place is not None and task.place.kind.id == "buttonhole":
            assert state is not None
            assert "buttonhole" == state.stitch


@pytest.mark.parametrize("garment", ALL)
def test_what_is_tried_on_is_stayed_before(garment: str) -> None:
    """A neck or an armhole that hangs from the body unstayed is longer afterwards."""
    steps = sewn(garment)
    own = [k for k, task in enumerate(steps) if task.op == "stay-stitch"]
    fit = [k for k, task in enumerate(steps) if task.op == "fit"]
    assert not own or not fit or max(own) < fit[0]
    for k in own:
        first = [j for j, task in enumerate(steps) if task.op == "baste"]
        alike = [j for j in first if steps[j].place == steps[k].place]
        assert all(k < j for j in alike), steps[k].id


@pytest.mark.parametrize("garment", [PONTE, CHILD, "more/dress"])
def test_a_neck_facing_covers_the_end_of_the_zip(garment: str) -> None:
    """The zip is in before the facing is sewn over its tape."""
    found = work(garment)
    zip_ = next(p.name for p in places(found).values() if p.kind.id == "zip")
    assert stands(found, f"set {zip_}", "join neck facing", "turn neck facing")


NEATENED = {JACKET: ["neaten the edge of front facing"], CHILD: ["neaten the edge of neck facing"]}


@pytest.mark.parametrize("garment", ALL)
def test_the_free_edge_of_a_facing_is_neatened_before_it_is_joined(garment: str) -> None:
    """In an unlined garment it frays inside; a knit that does not fray is left."""
    steps = [task for task in sewn(garment) if task.op == "neaten-facing"]
    assert NEATENED.get(garment, []) == [task.id for task in steps]
    for task in steps:
        assert task.place is not None
        assert stands(work(garment), task.id, f"join {task.place.name}")


def test_elastic_between_two_edges_stays_the_seam() -> None:
    """Clear elastic in a shoulder is caught in its row; nothing is a channel there.

    A dart of what nobody calls tried is basted, and the shoulder that it may end in is with it: the
    elastic is on by then, so that the edge is stayed while it is tried on.
    """
    assert "seam-over-stay-tape" == places(work(PONTE))["shoulder"].method.id
    assert stands(work(PONTE), "tape shoulder", "baste shoulder", "fit", "join shoulder")
    assert stands(work(PONTE), "join shoulder", "join armhole")


def test_a_felled_sleeve_is_set_in_flat() -> None:
    """No row reaches round inside a closed sleeve, so side and sleeve are closed after it."""
    assert stands(work(SHIRT), "join armhole", "fell armhole", "join side", "join cuff")
    assert stands(work(SHIRT), "fell armhole", "join sleeve seam")


def test_a_bag_is_closed_once_and_behind_its_opening() -> None:
    """The opening and the bag are two places, and nothing of a pocket is made twice."""
    found = work(TROUSERS)
    assert "pocket-bag-closed" == places(found)["pocket bag"].method.id
    assert stands(found, "topstitch front pocket edge", "close pocket bag", "join outseam")
    assert "close front pocket edge" not in found.tasks
    assert "understitch pocket bag" not in found.tasks


def test_frogs_are_sewn_by_hand_to_the_finished_edge() -> None:
    """They are a fastening and no seam."""
    found = work(CAPE)
    assert found.tasks["fasten frogs"].step.machine is None
    assert stands(found, "set facing to lining", "sew hem", "fasten frogs", "last press")


@pytest.mark.parametrize("place", ["shoulder", "side", "armhole", "hood centre"])
def test_a_seam_with_sealing_tape_is_sealed(place: str) -> None:
    """Whatever is known of the cloth: the maker who lays tape on a seam wants it tight."""
    assert stands(work(RAINCOAT), f"join {place}", f"trim {place}", f"seal {place}")
    thread = advice(RAINCOAT).judgement.verdicts[Place("seam", place)]["thread.fibre"]
    assert isinstance(thread.advised, Choice)
    assert "cotton" not in {thread.aspect.words[i] for i in thread.advised.options()}


def test_no_armhole_runs_over_a_seam_of_the_skirt() -> None:
    """What lies above the waist and what lies below it share no piece."""
    found = places(work(CHILD))
    reasons = [r for rows in work(CHILD).reasons.values() for r in rows]
    upper = {n for n, p in found.items() if p.role.id in ("armhole", "shoulder", "underarm")}
    skirt = {n for n in found if "skirt" in n}
    mixed = [r for r in reasons if "runs over" in r.why and any(n in r.why for n in skirt)]
    assert skirt
    assert not [r for r in mixed if any(f" {n} " in r.why for n in upper)]


@pytest.mark.parametrize("garment", ALL)
def test_no_iron_is_set_where_fingers_press(garment: str) -> None:
    """How it moves and how hot it is are one answer: fingers have no dial, steam hovers moist."""
    judgement = advice(garment).judgement
    for place, verdicts in judgement.verdicts.items():
        heat, motion = verdicts.get(LIMIT_ASPECT), verdicts.get("press.motion")
        if heat is None or motion is None or motion.pick is None or heat.clash:
            continue
        word = motion.aspect.words[int(motion.pick)]
        assert isinstance(heat.advised, Span)
        assert "finger-press" != word or mark_for(heat.advised.high) is None, place
        for task in sewn(garment) if word == "hover with steam" else ():
            if task.op == "press" and task.place is not None and task.place.name == place.name:
                assert task.step.iron is not None
                assert "dry" != task.step.iron.moisture, task.id


@pytest.mark.parametrize("garment", ALL)
def test_the_last_press_goes_round_what_ends_at_an_edge(garment: str) -> None:
    """A button, a zip or elastic cools no last press; it is named, and the label keeps its heat.

    An elastic lies along one line, so the label names it as well and goes round it.
    """
    judgement = advice(garment).judgement
    whole = judgement.verdicts[Place("garment", judgement.garment.name)]
    heat = whole[LIMIT_ASPECT]
    label = as_labelled(judgement, known()).verdicts[Place("garment", judgement.garment.name)]
    assert isinstance(heat.advised, Span)
    lids: dict[str, float] = {}
    for said in judgement.gathered.beside:
        for name in said.cloths:
            if said.claim.aspect == LIMIT_ASPECT and said.claim.span:
                lids[name] = min(said.claim.span[1], lids.get(name, said.claim.span[1]))
    cooler = {name for name, most in lids.items() if most < heat.advised.high}
    ironed = mark_for(heat.advised.high) is not None
    told = {n for i in judgement.instructions if i.kind in (ROUND, "part") for n in i.tender}
    assert not ironed or cooler <= told
    last = work(garment).tasks["last press"].step
    assert not ironed or all(name in last.does for name in cooler)
    ironing = label["care.iron"]
    assert ironing.pick is not None
    bears = ironing.aspect.words[int(ironing.pick)].split()[0]
    label_line = _ironing_on_the_label(garment)
    ironed_over = {name for name in cooler if f"not over the {name}" not in label_line}
    assert not ironed_over or not bears.isdigit() or int(bears) <= min(lids[n] for n in ironed_over)


def _ironing_on_the_label(garment: str) -> str:
    """The line of the label on ironing, with the elastics that it keeps the iron off."""
    parts = Parts(label=Asked())
    label = tell(decided(FOLDER / f"{garment}.yaml"), known(), parts).label
    assert label is not None
    return next(line.line or "" for line in label.care.lines if line.aspect == "care.iron")


def test_linen_is_pressed_as_linen_at_the_last() -> None:
    """Its buttons bear 110 °C, at which linen takes no press."""
    last = work(JACKET).tasks["last press"].step
    assert last.iron is not None
    assert 140 <= last.iron.temperature_c
    assert "go round the natural button" in last.does


def test_a_bias_seam_drops_before_it_is_fitted() -> None:
    """Basted, hung for a day, tried on, only then sewn; and hung again before it is hemmed."""
    steps = ("baste side", "hang the basted seams", "fit", "join side", "hang", "sew hem")
    assert stands(work(GOWN), *steps)
    assert "hang the basted seams" not in work(JACKET).tasks


def test_the_grain_says_where_the_pattern_leaves_it() -> None:
    """Sheet and order tell that the pieces of a bias seam are no pieces of the straight grain."""
    said = "lengthwise grain, on the bias where the pattern has it (side)"
    assert said in work(GOWN).tasks["cut silk"].step.does
    judgement = advice(GOWN).judgement
    grain = judgement.verdicts[Place("fabric", "silk")]["cut.grain"]
    told = told_verdict(Place("fabric", "silk"), grain, Teller(judgement.garment, known()))
    assert said == phrase(told)


def test_hems_are_turned_as_their_cloth_hangs() -> None:
    """Rolled narrow on the bias of a light cloth, and a lining hem apart and shorter."""
    assert "narrow-rolled-hem" == places(work(GOWN))["hem"].method.id
    for garment in (CAPE, TROUSERS):
        assert "lining-hem" == places(work(garment))["lining hem"].method.id
    assert "lining-hem" != places(work(TROUSERS))["hem"].method.id


@pytest.mark.parametrize(("garment", "seam"), [(GOWN, "side"), (CHILD, "centre back")])
def test_the_seam_below_a_zip_is_not_shut_in(garment: str, seam: str) -> None:
    """Each allowance carries half of the zip, so that neither can be turned into a French seam."""
    found = advice(garment).judgement.verdicts[Place("seam", seam)]["seam.kind"]
    assert found.pick is not None
    assert "plain" == found.aspect.words[int(found.pick)]
    kinds = {p.name: p.method.id for p in places(work(garment)).values()}
    assert "french-seam" in kinds.values()


def test_a_concealed_zip_goes_in_before_its_side_is_closed() -> None:
    """At a side as at the centre back, and the edge above is bound when the sides are closed."""
    steps = ("baste side", "fit", "set side zip", "join side", "press side")
    assert stands(work(GOWN), *steps, "join neck and armhole binding")
    assert () == work(GOWN).cycles


@pytest.mark.parametrize(("garment", "seam"), [(GOWN, "side"), (PONTE, "centre back")])
def test_an_edge_is_neatened_before_a_zip_lies_on_it(garment: str, seam: str) -> None:
    """The edge of the seam runs on beside the zip, where nothing encloses it."""
    found = work(garment)
    zip_ = next(p.name for p in places(found).values() if p.kind.id == "zip")
    assert stands(found, f"neaten {seam}", f"set {zip_}", f"join {seam}")
    finish = advice(garment).judgement.verdicts[Place("seam", zip_)]["seam.finish"]
    assert finish.pick is not None
    assert "enclosed in the seam" != finish.aspect.words[int(finish.pick)]


def test_a_knit_that_stretches_may_be_fused_cool() -> None:
    """Its few elastane threads forbid no glue; the nylon asks for one that takes at 110 °C."""
    (clash,) = advice(PONTE).judgement.conflicts
    assert LIMIT_ASPECT == clash.aspect
    offered = {cure.remedy for cures in advice(PONTE).cures.values() for cure in cures}
    assert "low-temperature-fusible-instead" in offered


@pytest.mark.parametrize("garment", [TROUSERS, "more/lined_skirt"])
def test_a_lining_hangs_in_the_waist_before_the_band_takes_it_in(garment: str) -> None:
    """It is whole, put in, felled to the opening, and levelled by the hem of the shell."""
    found = work(garment)
    felled = next(name for name in found.order if name.startswith("fell the lining to"))
    side = "lining outseam" if garment == TROUSERS else "lining side"
    steps = (f"join {side}", "hang the lining at waistband", felled, "join waistband")
    assert stands(found, *steps, "sew hem", "sew lining hem")
    assert () == found.cycles


def test_a_cloth_for_binding_is_cut_in_strips_on_the_bias() -> None:
    """It lies in no seam of the file; the edges that it binds say what becomes of it."""
    tasks = work(JACKET).tasks
    assert "on the bias, in strips" in tasks["cut binding"].step.does
    assert "(Hong Kong, in a strip on the bias, at the cut edge alone" in (
        tasks["neaten shoulder"].step.does
    )
    judgement = advice(JACKET).judgement
    place = Place("fabric", "binding")
    grain = judgement.verdicts[place]["cut.grain"]
    told = told_verdict(place, grain, Teller(judgement.garment, known()))
    assert "on the bias, in strips" == phrase(told)


def test_no_opening_is_basted_shut_before_it_is_tried_on() -> None:
    """Where the zip comes after the fitting, the opening is left for whoever has to get in."""
    assert stands(work(CHILD), "fit", "baste shut back zip", "set back zip", "join neck facing")
