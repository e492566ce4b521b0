"""What is heard of a claim that only may hold, and what a low heat limit says of steam."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from advisor.claims.claimsets import insisted
from advisor.claims.speakers import Said, eased, held_back, is_heat_limit, no_steam
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import Claim
from tests.laws.engine_garments import known
from tests.unit.decide.engine_cases import aspect, options, span

IRON = aspect("press.temperature")
SIZE = aspect("needle.size")


def of_ends(said: Said, low: str, high: str) -> Claim:
    return replace(said.claim, ends=(low, high))


def test_a_must_insists_on_all_and_a_wish_on_its_guarding_end() -> None:
    """110 to 150: as a must both ends stand, as a wish whose cap guards only the cap."""
    both = span(110, 150, "should", of=IRON.id)
    assert Span(110, 150) == insisted(IRON, span(110, 150, of=IRON.id).claim)
    assert Span(20, 150) == insisted(IRON, of_ends(both, "seam", "cloth"))
    assert Span(110, 210) == insisted(IRON, of_ends(both, "machine", "look"))
    assert insisted(IRON, of_ends(both, "seam", "look")) is None
    assert insisted(IRON, of_ends(span(110, 210, "should", of=IRON.id), "seam", "cloth")) is None


def test_options_that_guard_insist_on_their_options() -> None:
    """`not fusible` that keeps a cloth whole is as firm as a must."""
    said = options("needle.point", ["sharp"], "should")
    assert insisted(aspect("needle.point"), said.claim) is None
    assert Choice(0b10) == insisted(aspect("needle.point"), of_ends(said, "cloth", "cloth"))


def test_of_a_claim_that_may_hold_only_the_guarding_end_is_heard() -> None:
    """A needle that may be too fine is heard, the size that it should have is not."""
    said = span(90, 100, "should")
    heard = held_back(of_ends(said, "machine", "look"), SIZE)
    assert heard is not None
    assert (90, 130) == heard.span
    assert held_back(of_ends(said, "seam", "look"), SIZE) is None
    both = held_back(of_ends(span(110, 150, "should", of=IRON.id), "seam", "cloth"), IRON)
    assert both is not None
    assert (20, 150) == both.span
    must = span(70, 80).claim
    assert must is held_back(must, SIZE)


@pytest.mark.parametrize(("limit", "steamed"), [(93, False), (99, False), (100, True), (20, True)])
def test_steam_counts_as_a_hundred_degrees(limit: float, steamed: bool) -> None:
    """Rubber bears 93 °C, so no steam; a cloth that is not ironed says nothing of steam."""
    said = span(20, limit, of=IRON.id, who="elastic")
    found = {s.claim.aspect: s.claim for s in no_steam(said, known())}
    assert ({} if steamed else {"press.moisture", "press.motion", "prepare.preshrink"}) == (
        set(found) if found else {}
    )
    if not steamed:
        assert (0.0, 1.0) == found["press.moisture"].span
        motion = known().aspects["press.motion"].words.index("hover with steam")
        assert not found["press.motion"].mask >> motion & 1
        assert all(claim.guards for claim in found.values())


def test_only_a_heat_limit_speaks_of_steam() -> None:
    """A need for heat and a wish say nothing of it."""
    need = span(90, 210, risk="result", of=IRON.id)
    assert not is_heat_limit(need.claim)
    assert [] == no_steam(need, known())
    wish = span(20, 93, "should", of=IRON.id)
    assert [] == no_steam(wish, known())
    assert no_steam(replace(wish, claim=of_ends(wish, "cloth", "cloth")), known())


def test_what_a_maker_loosens_opens_a_wish_that_guards_as_well() -> None:
    """Her written reason counts against every guard, and against no need."""
    reason = [("press.temperature", 130.0, "I tried it")]
    wish = span(20, 110, "should", of=IRON.id)
    guard = replace(wish, claim=of_ends(wish, "cloth", "cloth"))
    assert (20, 130) == eased(guard, reason).claim.span
    assert wish == eased(wish, reason)
