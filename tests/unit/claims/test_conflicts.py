"""A clash is named by the smallest set of claims that already leaves nothing."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import decide
from advisor.claims.conflicts import NO_METHOD, find_conflicts, severity_of, smallest_clash
from advisor.claims.speakers import Said
from tests.unit.decide.engine_cases import aspect, cloth, judged, options, origins, span

SIZE = aspect("needle.size")
STITCH = aspect("stitch.type")
SEAM = Place("seam", "hem")


def test_a_range_clash_is_the_highest_floor_and_the_lowest_ceiling() -> None:
    """Of four claims the two that lie furthest apart are named."""
    said = (
        span(55, 80, who="a"),
        span(55, 70, who="b"),
        span(90, 130, who="c"),
        span(75, 130, who="d"),
    )
    assert ["fabric c", "fabric b"] == origins(smallest_clash(SIZE, said))


def test_equal_ends_are_named_by_the_better_source() -> None:
    """Two ceilings of 70: the better founded one is named, then the one first by name."""
    said = (span(55, 70, who="z", rank=0), span(55, 70, who="a", rank=3), span(90, 130, who="c"))
    assert ["fabric c", "fabric z"] == origins(smallest_clash(SIZE, said))
    said = (span(55, 70, who="z"), span(55, 70, who="a"), span(90, 130, who="c"))
    assert ["fabric c", "fabric a"] == origins(smallest_clash(SIZE, said))


def _three() -> tuple[Said, ...]:
    return (
        options(STITCH.id, ["301", "304"], who="a"),
        options(STITCH.id, ["304", "504"], who="b"),
        options(STITCH.id, ["301", "504"], who="c"),
        options(STITCH.id, ["301", "304", "504"], who="d"),
    )


def test_options_may_clash_by_threes() -> None:
    """Each two of a, b, c share a stitch and all three share none; d has no part in it."""
    assert ["fabric a", "fabric b", "fabric c"] == origins(smallest_clash(STITCH, _three()))


def test_a_pair_is_named_where_a_pair_already_clashes() -> None:
    """A smaller set is found although a larger one clashes too."""
    said = (*_three(), options(STITCH.id, ["hand"], who="e"))
    assert ["fabric a", "fabric e"] == origins(smallest_clash(STITCH, said))


def test_a_claim_that_allows_nothing_clashes_by_itself() -> None:
    """An empty set of options needs no second."""
    said = (*_three(), options(STITCH.id, [], who="e"))
    assert ["fabric e"] == origins(smallest_clash(STITCH, said))


def test_the_order_of_speaking_names_the_same_clash() -> None:
    """A clash does not depend on who was heard first."""
    assert smallest_clash(STITCH, _three()) == smallest_clash(STITCH, _three()[::-1])


def test_no_clash_no_conflict() -> None:
    """Wishes that cannot be met are no conflict."""
    verdict = decide(SIZE, [span(55, 80), span(90, 100, "should", who="b")])
    assert [] == find_conflicts({SEAM: {SIZE.id: verdict}})


def test_a_conflict_is_as_grave_as_what_is_lost() -> None:
    """The graver guard is kept, and what gives way to it is what the clash costs."""
    for risks, expected in (
        (("result", "damage"), "result"),
        (("result", "injury"), "result"),
        (("damage", "injury"), "damage"),
        (("injury", "injury"), "injury"),
        (("result", "result"), "result"),
    ):
        said = [span(55, 70, risk=risks[0], who="a"), span(80, 130, risk=risks[1], who="b")]
        (found,) = find_conflicts({SEAM: {SIZE.id: decide(SIZE, said)}})
        assert expected == found.severity


def test_what_she_has_fixed_herself_is_as_grave_as_the_worst_of_it() -> None:
    """She will do what her project says, and no guard keeps her from it."""
    hers, sheer = span(90, 130, risk="result", who="you"), span(55, 70, who="sheer")
    fixed = replace(hers, claim=replace(hers.claim, origin="maker"))
    assert "result" == severity_of((hers, sheer))
    assert "damage" == severity_of((fixed, sheer))


def test_a_conflict_says_where_what_and_between_whom() -> None:
    """Its key is place and aspect, its id is made of both, and it names the two cloths."""
    said = [span(55, 70, who="sheer"), span(80, 130, who="denim")]
    (found,) = find_conflicts({SEAM: {SIZE.id: decide(SIZE, said)}})
    assert ("hem", "needle.size") == found.key
    assert "needle-size-at-hem" == found.id
    assert ("denim", "sheer") == found.between


def test_a_garment_that_nothing_cleans_is_a_conflict() -> None:
    """One cloth refuses water and another the cleaner: each verdict has an answer, both none."""
    found = [
        c
        for c in judged(cloth("organza", "silk"), cloth("velvet", "cotton")).conflicts
        if c.aspect == NO_METHOD
    ]
    assert [("organza", "velvet")] == [c.between for c in found]
    assert ["damage"] == [c.severity for c in found]


def test_a_garment_that_can_be_dry_cleaned_is_cleaned() -> None:
    """Without the velvet the organza may go to the cleaner."""
    found = judged(cloth("organza", "silk"), cloth("suiting", "cotton")).conflicts
    assert NO_METHOD not in {c.aspect for c in found}
