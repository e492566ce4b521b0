"""Who is heard where: scopes, the shapes of rules, and what a way of working makes idle."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.conditions import Fact
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Span
from advisor.project.garment import Maker, Use
from tests.unit.decide.engine_cases import (
    cloth,
    judged,
    judged_seams,
    origins,
    seam,
    verdict,
    words,
)

SUITING = cloth("suiting", "linen")
ORGANZA = cloth("organza", "nylon")
VELVET = cloth("velvet", "cotton")
LINING = cloth("lining", "cupro")


def rules_at(judgement: Judgement, place: str) -> list[str]:
    return sorted({f.rule.id for f in judgement.gathered.fired if f.place.name == place})


def test_a_claim_goes_to_the_places_of_its_aspect() -> None:
    """Grain is the cloth's, the needle the seam's, washing the whole garment's."""
    found = judged(SUITING, ORGANZA)
    scopes = {(p.scope, p.name) for p, by in found.verdicts.items() if "cut.grain" in by}
    assert {("fabric", "suiting")} == scopes
    assert {("seam", "seam")} == {
        (p.scope, p.name) for p, by in found.verdicts.items() if "needle.size" in by
    }
    assert {("garment", "coat")} == {
        (p.scope, p.name) for p, by in found.verdicts.items() if "care.wash" in by
    }


def test_an_iron_limit_is_heard_in_every_seam_and_in_the_last_press() -> None:
    """Nylon lowers the seam that it lies in and the garment, and no seam without it."""
    found = judged_two()
    assert Span(170, 200) == verdict(found, "side", "press.temperature").allowed
    assert Span(20, 110) == verdict(found, "hem", "press.temperature").allowed
    assert Span(20, 110) == verdict(found, "coat", "press.temperature").allowed


def judged_two() -> Judgement:
    return judged_seams(
        [SUITING, ORGANZA], seam("side", "suiting", "suiting"), seam("hem", "suiting", "organza")
    )


def test_a_blend_is_as_tender_as_its_most_tender_fibre() -> None:
    """Half nylon or a twentieth of elastane: the share makes no difference to the limit."""
    mixed = judged(cloth("lining", "wool/nylon"))
    assert 110 == verdict(mixed, "seam", "press.temperature").allowed.high  # type: ignore[union-attr]
    few = judged(replace(cloth("jersey"), mixes=((("cotton", 95.0), ("elastane", 5.0)),)))
    assert 120 == verdict(few, "seam", "press.temperature").allowed.high  # type: ignore[union-attr]


def test_the_strictest_good_source_is_the_limit_and_a_weaker_one_where_to_start() -> None:
    """Wool: 150 by the standard; the shop's 110 is where the iron starts."""
    found = verdict(judged(cloth("jersey", "wool")), "seam", "press.temperature")
    assert 150 == found.allowed.high  # type: ignore[union-attr]
    assert 110 == found.pick


def test_an_unknown_fibre_is_held_to_its_most_tender_candidate() -> None:
    """Organza of silk or nylon is ironed as nylon, and both are named as possible."""
    found = verdict(judged(cloth("organza")), "seam", "press.temperature")
    assert 110 == found.allowed.high  # type: ignore[union-attr]
    assert {"fibre nylon", "fibre silk"} == set(origins(found.because))
    assert {False} == {s.certain for s in found.because}


def test_an_unknown_fibre_guards_and_wishes_nothing() -> None:
    """What may be linen does not ask for linen's water or heat; what may be nylon shuns steam."""
    found = judged(cloth("suiting"), cloth("organza"))
    assert ["dry"] == words(verdict(found, "seam", "press.moisture"))
    assert "fibre linen" not in [
        s.claim.origin for s in verdict(found, "seam", "press.temperature").given_up
    ]


def test_a_layer_rule_speaks_for_its_layer() -> None:
    """The rule on fraying speaks of the velvet and not of the suiting beside it."""
    found = judged(VELVET, SUITING)
    assert ["weights"] == words(verdict(found, "velvet", "cut.hold"), advised=True)
    assert "ravels" in rules_at(found, "velvet")
    assert "ravels" not in rules_at(found, "suiting")


def test_a_denied_fibre_guards_where_it_may_be_another() -> None:
    """`not polyamide` is a yes of linen, a no of nylon, and a maybe of silk or nylon."""
    for about, expected in ((SUITING, [True]), (ORGANZA, []), (cloth("organza"), [False])):
        fired = judged(about).gathered.fired
        assert expected == [f.certain for f in fired if f.rule.id == "never-nylon"]


def test_a_layer_rule_with_a_seam_part_speaks_in_the_seams_that_fit() -> None:
    """Gathers on a seam of low strain are stitched long, on another they are not."""
    full = Use("organza", fullness=2.0)
    found = judged_seams(
        [SUITING, ORGANZA],
        seam("frill", "suiting", full, facts={"stress": "low"}),
        seam("waist", "suiting", full, facts={"stress": "high"}),
        seam("side", "suiting", "organza", facts={"stress": "low"}),
    )
    places = {p.name for p, by in found.verdicts.items() if "stitch.length" in by}
    assert {"frill"} == places
    assert "gathered" in rules_at(found, "frill")
    assert "gathered" not in rules_at(found, "waist")


def test_a_pair_rule_wants_two_layers_in_either_order() -> None:
    """Pile and slip creep whichever lies on top; alone neither does."""
    for stack in ((VELVET, LINING), (LINING, VELVET)):
        found = judged(*stack)
        assert ["walking", "roller"] == words(verdict(found, "seam", "machine.foot"))
        (said,) = verdict(found, "seam", "machine.foot").because
        assert ("lining with velvet", {"velvet", "lining"}) == (said.who, said.cloths)
        assert (Fact("velvet", "pile", "short"), Fact("lining", "slippery", "yes")) == said.facts
    assert "creeps" not in rules_at(judged(VELVET), "seam")


def test_a_pair_is_two_layers_and_may_be_of_one_cloth() -> None:
    """A slippery pile creeps on a second layer of itself; one layer alone is no pair."""
    slick = replace(VELVET, name="slick", traits={"slippery": (2, 2)})
    found = judged_seams([slick], seam("two", "slick", "slick"), seam("one", "slick"))
    assert "creeps" in rules_at(found, "two")
    assert "creeps" not in rules_at(found, "one")


def test_an_every_rule_is_broken_by_one_layer() -> None:
    """All woven: universal or sharp; with a knit the rule is silent."""
    assert "all-woven" in rules_at(judged(SUITING, ORGANZA), "seam")
    assert "all-woven" not in rules_at(judged(SUITING, cloth("jersey", "wool")), "seam")


def test_an_every_rule_does_not_ask_notions() -> None:
    """An interfacing in the seam changes nothing, and a seam of notions alone fires nothing."""
    assert "all-woven" in rules_at(judged(SUITING, cloth("cool-fusible")), "seam")
    assert "all-woven" not in rules_at(judged(cloth("iron-on")), "seam")


def test_a_some_rule_needs_one_layer_and_says_which() -> None:
    """One fraying layer is enough to want a finish; it is named, the others are not."""
    found = judged(VELVET, SUITING)
    (fired,) = (f for f in found.gathered.fired if f.rule.id == "raw-edge")
    assert ("velvet",) == fired.cloths
    assert fired.certain
    assert "none" not in words(verdict(found, "seam", "seam.finish"))


def test_a_rule_that_may_hold_is_uncertain_and_still_guards() -> None:
    """A lining of unknown fraying keeps its raw edge finished: a guard, said as a may be."""
    found = judged(LINING, SUITING)
    (fired,) = (f for f in found.gathered.fired if f.rule.id == "raw-edge")
    assert not fired.certain
    assert "none" not in words(verdict(found, "seam", "seam.finish"))
    assert [False] == [
        s.certain
        for s in verdict(found, "seam", "seam.finish").because
        if s.claim.origin == "rule raw-edge"
    ]


def test_a_rule_that_may_hold_wishes_nothing() -> None:
    """A jersey that may be wool is guarded against steam and not asked to be steamed."""
    found = judged(cloth("jersey"))
    told = origins(verdict(found, "seam", "press.moisture").because)
    assert "rule wool-felts" in told
    assert "rule wool-wants-steam" not in told


def test_a_turned_edge_is_not_an_open_one() -> None:
    """A rule about open edges is silent on a turned edge."""
    turned = seam("seam", "velvet", "suiting", facts={"edge": "turned"})
    found = judged_seams([VELVET, SUITING], turned)
    assert "raw-edge" not in rules_at(found, "seam")


def test_a_seam_rule_asks_only_the_seam() -> None:
    """Four layers of anything fire the rule on stacks, three do not."""
    found = judged_seams([SUITING], seam("four", *["suiting"] * 4), seam("three", *["suiting"] * 3))
    assert "long-stack" in rules_at(found, "four")
    assert "long-stack" not in rules_at(found, "three")


def test_a_seam_fact_that_nobody_gave_is_no_certainty() -> None:
    """Of a seam of unknown length a rule on long seams may hold, and is not sure."""
    jersey = cloth("jersey", "wool")
    for facts, expected in (({"length": 400.0}, [True]), ({"length": 200.0}, []), ({}, [False])):
        found = judged_seams([jersey], seam("seam", "jersey", "jersey", facts=facts))
        fired = [f for f in found.gathered.fired if f.rule.id == "grows-long"]
        assert expected == [f.certain for f in fired]


def test_a_maker_rule_asks_what_she_works_with() -> None:
    """Without an overlocker edges are not overlocked; with one the rule is silent."""
    assert "no-overlocker" in rules_at(judged(SUITING), "seam")
    assert "no-overlocker" not in rules_at(
        judged(SUITING, maker=Maker(overlocker="4-thread")), "seam"
    )


def test_a_garment_pair_need_not_meet() -> None:
    """Velvet and organza in different seams still make the pair, and it is the garment's."""
    found = judged_seams(
        [VELVET, ORGANZA], seam("a", "velvet", "velvet"), seam("b", "organza", "organza")
    )
    assert ["dyed-apart"] == rules_at(found, "coat")
    grain = verdict(found, "organza", "cut.grain")
    assert ["rule dyed-apart"] == origins(grain.because)
    assert grain.aspect.words.index("bias") == grain.pick
    assert not any(p.name == "velvet" and "cut.grain" in by for p, by in found.verdicts.items())


def test_the_machine_bounds_what_it_can_do() -> None:
    """A household machine sews to size 110 and makes its own stitches only."""
    found = judged(SUITING)
    assert 110 == verdict(found, "seam", "needle.size").allowed.high  # type: ignore[union-attr]
    assert ["301", "304"] == words(verdict(found, "seam", "stitch.type"))
    more = judged(SUITING, maker=Maker(overlocker="4-thread"))
    assert ["301", "304", "504"] == words(verdict(more, "seam", "stitch.type"))


def test_the_kit_bounds_the_foot() -> None:
    """Feet count once she has said which she has; the standard one comes with the machine."""
    assert "machine.foot" not in next(
        by for p, by in judged(SUITING).verdicts.items() if p.scope == "seam"
    )
    found = judged(SUITING, maker=Maker(feet=("walking",)))
    assert ["standard", "walking"] == words(verdict(found, "seam", "machine.foot"))


def test_what_the_maker_has_chosen_binds_the_seam() -> None:
    """Her finish is the only one left; on a scale and on a number it is one point."""
    chosen = (("seam.finish", "pinked"), ("press.moisture", "damp cloth"), ("stitch.length", 3.0))
    found = judged_seams([SUITING], seam("seam", "suiting", choices=chosen))
    assert ["pinked"] == words(verdict(found, "seam", "seam.finish"))
    assert ["damp cloth"] == words(verdict(found, "seam", "press.moisture"))
    assert Span(3.0, 3.0) == verdict(found, "seam", "stitch.length").allowed


def test_a_seam_sewn_by_hand_asks_no_machine() -> None:
    """No needle size, foot or machine stitch counts; the stitch is the hand's."""
    found = judged_seams([VELVET, LINING], seam("seam", "velvet", "lining", by_hand=True))
    here = found.verdicts[Place("seam", "seam")]
    assert ["hand"] == words(here["stitch.type"])
    assert not {"needle.size", "machine.foot", "stitch.length"} & set(here)


def test_a_seam_that_gets_no_iron_asks_for_no_heat() -> None:
    """Finger-pressing leaves only the cold iron, and linen's needs are idle."""
    found = judged_seams([SUITING], seam("seam", "suiting", cold=True))
    assert Span(20, 20) == verdict(found, "seam", "press.temperature").allowed
    assert "press.temperature" not in {c.aspect for c in found.conflicts if c.place.scope == "seam"}


def test_a_cloth_pressed_apart_keeps_its_limit_and_drops_its_need() -> None:
    """Linen pressed beforehand needs nothing in the seam; its own 200 still counts."""
    found = judged_seams([SUITING], seam("seam", "suiting", apart=frozenset({"suiting"})))
    assert Span(20, 200) == verdict(found, "seam", "press.temperature").allowed


def test_interfacing_counts_only_where_there_is_some() -> None:
    """A seam without interfacing has no verdict on it; one with it has the notion's kind."""
    plain = judged(SUITING)
    assert not any(
        "interfacing.kind" in by for p, by in plain.verdicts.items() if p.scope == "seam"
    )
    glued = judged(SUITING, cloth("iron-on"))
    here = glued.verdicts[Place("seam", "seam")]
    assert ["fusible"] == words(here["interfacing.kind"])


def test_what_comes_off_is_cared_for_by_itself() -> None:
    """A detachable cloth has no say in the washing of the garment."""
    worn = judged(SUITING, replace(ORGANZA, detachable=True))
    assert not any("care.wash" in by for p, by in worn.verdicts.items() if p.scope == "garment")


def test_every_place_is_there_even_if_nobody_speaks_of_it() -> None:
    """Cloths by name, then seams in the order of the project, then the garment."""
    found = judged_two()
    assert [
        ("fabric", "organza"),
        ("fabric", "suiting"),
        ("seam", "side"),
        ("seam", "hem"),
        ("garment", "coat"),
    ] == [(p.scope, p.name) for p in found.verdicts]
