"""What finding out a fibre would allow, and what is to be tried on scraps."""

from __future__ import annotations

from advisor.decide.evaluate import judge
from advisor.decide.trials import Trial, find_trials
from advisor.decide.unknowns import Unknown, find_unknowns
from advisor.project.quick import quick_garment
from tests.typed import shipped
from tests.unit.decide.engine_cases import KNOWN, cloth, judged, judged_seams, seam


def test_each_candidate_is_tried_in_its_place() -> None:
    """Organza is ironed at 110 while it may be nylon; known as silk it would bear 150."""
    (found,) = find_unknowns(judged(cloth("organza"), cloth("suiting", "linen")), KNOWN)
    silk, nylon = (("silk", 100.0),), (("nylon", 100.0),)
    assert Unknown("organza", 110, ((silk, 150), (nylon, 110))) == found


def test_a_mix_is_one_candidate() -> None:
    """Jersey of cotton with elastane, or of wool: two candidates, not three fibres."""
    (found,) = find_unknowns(judged(cloth("jersey")), KNOWN)
    assert [120, 150] == [limit for _, limit in found.candidates]
    assert 120 == found.limit


def test_a_known_fibre_is_no_unknown() -> None:
    """Nothing is to be found out about linen."""
    assert [] == find_unknowns(judged(cloth("suiting", "linen")), KNOWN)


def test_an_unknown_is_judged_by_itself() -> None:
    """A nylon beside it lowers the seam and not what finding out would allow."""
    beside = judged(cloth("jersey"), cloth("organza", "nylon"))
    (found,) = find_unknowns(beside, KNOWN)
    assert ("jersey", 120) == (found.cloth, found.limit)


def test_a_cloth_that_is_never_ironed_gains_no_iron() -> None:
    """Stretch panne is opened with a finger whatever it is of; no snip is burnt for its iron."""
    judgement = judge(quick_garment(["stretch panne velvet"], shipped()), shipped())
    (found,) = find_unknowns(judgement, shipped())
    assert {20.0} == {found.limit, *(limit for _, limit in found.candidates)}


VELVET = cloth("velvet", "cotton")
LINING = cloth("lining", "cupro")
SUITING = cloth("suiting", "linen")


def test_each_different_stack_is_tried_once() -> None:
    """Two seams of the same stack are one sandwich; the one with most cloths comes first."""
    found = find_trials(
        judged_seams(
            [VELVET, LINING, SUITING],
            seam("side", "suiting", "suiting"),
            seam("back", "suiting", "suiting"),
            seam("hem", "velvet", "lining"),
        )
    )
    assert [
        Trial(("velvet", "lining"), ("hem",), ("Stitch 20 cm.",)),
        Trial(("suiting", "suiting"), ("side", "back"), ()),
    ] == found


def test_the_order_of_a_stack_makes_another_sandwich() -> None:
    """What lies on top is part of a trial."""
    found = find_trials(
        judged_seams([VELVET, LINING], seam("a", "velvet", "lining"), seam("b", "lining", "velvet"))
    )
    assert {("velvet", "lining"), ("lining", "velvet")} == {t.layers for t in found}


def test_what_is_fused_is_tried_before_what_is_sewn_on_it() -> None:
    """A fine shirting asks for a stitched scrap too; the fused one is made first."""
    asked = quick_garment(["shirting cotton", "woven fusible interfacing"], shipped())
    first, *rest = find_trials(judge(asked, shipped()))[0].look_for
    assert first.startswith("Fuse ")
    assert any(text.startswith("Stitch ") for text in rest)
