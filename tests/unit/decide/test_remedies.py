"""Each thing that a remedy can do cures what it is offered for, or is not offered."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.judgement import Advice, Cure
from advisor.claims.valuesets import Span
from advisor.decide.advise import advise
from advisor.decide.changes import CHANGES
from advisor.decide.evaluate import judge
from advisor.project.garment import Cloth, Garment, Maker
from tests.unit.decide.engine_cases import KNOWN, cloth, garment, seam, verdict, words

LINEN = cloth("suiting", "linen")
COTTON = cloth("suiting", "cotton", name="canvas")
ORGANZA = cloth("organza", "nylon")
SILK = cloth("organza", "silk", name="silk")
GLUE = cloth("iron-on")
VELVET = cloth("velvet", "cotton")
LINING = cloth("lining", "cupro")
HEAT = ("seam", "press.temperature")


def cures(about: Garment, key: tuple[str, str]) -> dict[str, Cure]:
    """The cures offered for a conflict that has to be there, cheapest first."""
    advice = advise(about, KNOWN)
    conflict = advice.judgement.clashes[key]
    return {cure.remedy: cure for cure in advice.cures[conflict.key]}


def stack(*cloths: Cloth, **more: object) -> Garment:
    """A garment of one seam of these layers."""
    layers = seam("seam", *(c.name for c in cloths), **more)
    return garment(list(cloths), layers, single=True)


def test_the_small_knowledge_has_a_remedy_of_every_kind() -> None:
    """No kind of change goes without a test here."""
    assert set(CHANGES) == {str(r.change["do"]) for r in KNOWN.remedies}


def test_pressing_first_lets_the_tender_layer_decide() -> None:
    """Linen pressed before the nylon is joined: the place bears 110 and the clash is gone."""
    cure = cures(stack(LINEN, ORGANZA), HEAT)["press-first"]
    assert Span(20, 110) == verdict(cure.after, "seam", "press.temperature").allowed
    assert ("suiting", "organza") == (cure.words["needy"], cure.words["tender"])
    assert frozenset({"suiting"}) == cure.after.garment.seams[0].apart


def test_a_cloth_at_odds_with_itself_keeps_a_soft_crease_and_is_no_conflict() -> None:
    """Linen with some nylon in it bears 110; that it then lies less sharp ruins nothing."""
    mixed = replace(LINEN, mixes=((("linen", 85.0), ("nylon", 15.0)),))
    found = judge(stack(mixed), KNOWN)
    assert () == found.conflicts
    assert Span(20, 110) == verdict(found, "seam", "press.temperature").allowed


def test_a_notion_is_not_pressed_apart() -> None:
    """Glue that needs heat has to be ironed in place, so pressing it first is not offered."""
    offered = cures(stack(GLUE, ORGANZA), HEAT)
    assert "press-first" not in offered


def test_fusing_first_needs_a_neighbour_that_bears_it() -> None:
    """Fused to the cotton beside it before the nylon is joined; the cotton is named."""
    cure = cures(stack(COTTON, GLUE, ORGANZA), HEAT)["fuse-first"]
    assert "canvas" == cure.words["neighbour"]
    assert "iron-on" == cure.words["notion"]


def test_fusing_first_is_not_offered_between_tender_layers() -> None:
    """Between two layers of nylon no neighbour bears the glue; a cotton further off is no help."""
    assert "fuse-first" not in cures(stack(ORGANZA, GLUE), HEAT)
    assert "fuse-first" not in cures(stack(GLUE, ORGANZA, COTTON), HEAT)


def test_another_notion_is_swapped_in() -> None:
    """A glue that melts at 90 instead of 140: nylon bears it, and it lies in the same place."""
    cure = cures(stack(COTTON, GLUE, ORGANZA), HEAT)["other-glue"]
    assert ("canvas", "cool fusible", "organza") == cure.after.garment.seams[0].cloths()
    assert Span(90, 110) == verdict(cure.after, "seam", "press.temperature").allowed


def test_a_swap_that_still_clashes_is_not_offered() -> None:
    """Where a cloth bears no heat at all, neither glue will do."""
    nothing = cloth("organza", "nylon", name="film")
    cold = stack(GLUE, nothing, choices=(("press.temperature", 20.0),))
    assert "other-glue" not in cures(cold, HEAT)


def test_a_notion_is_left_out() -> None:
    """Without the glue nobody needs heat."""
    cure = cures(stack(COTTON, GLUE, ORGANZA), HEAT)["leave-out"]
    assert ("canvas", "organza") == cure.after.garment.seams[0].cloths()


def test_a_seam_of_nothing_but_a_notion_cannot_lose_it() -> None:
    """Leaving out the only layer is no remedy."""
    alone = replace(GLUE, mixes=((("nylon", 100.0),),))
    assert "leave-out" not in cures(stack(alone), HEAT)


def test_finger_pressing_takes_the_iron_away() -> None:
    """A cold iron harms nobody, and no need for heat is heard."""
    cure = cures(stack(LINEN, ORGANZA), HEAT)["fingers"]
    assert Span(20, 20) == verdict(cure.after, "seam", "press.temperature").allowed


def test_sewing_by_hand_silences_the_machine() -> None:
    """No foot in the kit feeds pile on slip evenly: sewn by hand, no foot is asked."""
    about = replace(stack(VELVET, LINING), maker=Maker(feet=()))
    offered = cures(about, ("seam", "machine.foot"))
    assert ["hand"] == words(verdict(offered["by-hand"].after, "seam", "stitch.type"))


def test_the_foot_that_is_wanted_is_bought() -> None:
    """The first foot that would do is added to the kit; the others she has stay."""
    about = replace(stack(VELVET, LINING), maker=Maker(feet=()))
    cure = cures(about, ("seam", "machine.foot"))["buy-foot"]
    assert ("walking",) == cure.after.garment.maker.feet
    assert ["walking"] == words(verdict(cure.after, "seam", "machine.foot"))


def test_a_choice_of_hers_is_given_up() -> None:
    """She left a fraying edge raw; giving that up cures it."""
    about = stack(VELVET, COTTON, choices=(("seam.finish", "none"),), facts={"finish": "none"})
    cure = cures(about, ("seam", "seam.finish"))["give-up"]
    assert () == cure.after.garment.seams[0].choices
    assert "finish" not in cure.after.garment.seams[0].facts
    assert "seam.finish" == cure.words["choice"]


def test_giving_up_is_offered_only_where_she_chose() -> None:
    """Linen against nylon is no choice of hers."""
    assert "give-up" not in cures(stack(LINEN, ORGANZA), HEAT)


def test_what_clashes_in_the_garment_is_made_to_come_off() -> None:
    """Organza that comes off is not washed with the velvet."""
    about = garment([cloth("organza", "silk"), VELVET])
    offered = cures(about, ("coat", "care.method"))
    loose = [c.name for c in offered["take-off"].after.garment.cloths.values() if c.detachable]
    assert ["organza"] == loose


def test_a_notion_is_bought_of_the_first_fibre_that_rules_nothing_out() -> None:
    """Silk is not washed and rubber not dry cleaned: the braid is bought of cotton alone."""
    about = garment([cloth("organza", "silk"), cloth("braid")])
    cure = cures(about, ("coat", "care.method"))["other-fibre"]
    bought = cure.after.garment.cloths[cure.words["bought"]]
    assert ("braid", ((("cotton", 100.0),),)) == (bought.entry, bought.mixes)
    assert "braid" == cure.words["notion"]


def test_the_cloth_that_the_garment_is_made_of_never_comes_off() -> None:
    """Organza in every seam stays; it is the velvet panel that is made to come off, or nothing."""
    panel = seam("panel", "organza", "velvet")
    about = garment([cloth("organza", "silk"), VELVET], seam("side", "organza", "organza"), panel)
    for cure in cures(about, ("coat", "care.method")).values():
        assert not cure.after.garment.cloths["organza"].detachable


def test_cheapest_first_and_looks_count_double() -> None:
    """A little more work comes before a worse look, and equal prices go by name."""
    about = stack(COTTON, GLUE, ORGANZA)
    offered = list(cures(about, HEAT).values())
    prices = [c.effort + 2 * c.look for c in offered]
    assert sorted(prices) == prices
    assert ["fuse-first", "other-glue", "leave-out"] == [c.remedy for c in offered]


def test_no_remedy_brings_a_new_conflict() -> None:
    """Sewing by hand would cure the needle, but her machine stitch then clashes with the hand."""
    thick = replace(cloth("velvet", "cotton"), name="thick")
    about = stack(thick, LINING, choices=(("seam.finish", "none"), ("stitch.type", "504")))
    advice = advise(about, KNOWN)
    before = {c.key for c in advice.judgement.conflicts}
    for key, found in advice.cures.items():
        for cure in found:
            left = {c.key for c in cure.after.conflicts}
            assert key not in left
            assert left < before


def test_a_cure_is_what_judging_again_says() -> None:
    """Nothing in a cure is guessed: its garment judged anew gives its judgement."""
    advice: Advice = advise(stack(COTTON, GLUE, ORGANZA), KNOWN)
    for found in advice.cures.values():
        for cure in found:
            assert judge(cure.after.garment, KNOWN) == cure.after


def test_without_a_conflict_nothing_is_tried() -> None:
    """Cotton on cotton needs no remedy."""
    assert {} == advise(stack(COTTON, cloth("suiting", "cotton", name="b")), KNOWN).cures
