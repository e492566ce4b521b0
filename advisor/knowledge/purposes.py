"""What a claim is for, and what that makes of it: a guard or a wish.

In the order of what counts most: hands and eyes, needle and machine, cloth, the seam holds, look,
habit. The first three are guards: they only tighten, and are never given up for a wish. A claim
may say what it is `for`; where it does not, this is the one place that decides it:

1. a must of risk injury is for hands, of risk damage for cloth, of risk result for the seam;
2. a may is habit;
3. of a should, each end by itself is for what its aspect declares (`for: {at most: cloth}` in
   aspects.yaml: too hot, wet or long harms, too cool does not), and else for the look.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from advisor.knowledge import schema

PURPOSES: Final = ("hands", "machine", "cloth", "seam", "look", "habit")
"""What a claim may be for, what counts most first."""
GUARDS: Final = frozenset(PURPOSES[:3])
"""The purposes that keep fingers, needle or cloth whole."""
Ends = tuple[str, str]
"""What the lower and the upper end of a claim are for; of options both are the same."""
_OF_A_RISK: Final = {"injury": "hands", "damage": "cloth", "result": "seam"}


def unsaid(strength: str, risk: str) -> str:
    """What a claim is for that nobody declares."""
    if strength == "must":
        return _OF_A_RISK[risk]
    return "look" if strength == "should" else "habit"


def ends_of(claim: schema.ClaimForm, aspect: schema.AspectForm, bounds: tuple[bool, bool]) -> Ends:
    """What the two ends of a claim are for.

    Args:
        claim: as it stands in its file.
        aspect: what it speaks of.
        bounds: whether its lower and its upper end bound anything; one that does not is for
            what the other is for.
    """
    if claim.for_ is not None:
        return (claim.for_, claim.for_)
    plain = unsaid(claim.strength, claim.risk or "damage")
    if claim.strength != "should":
        return (plain, plain)
    if aspect.kind == "options":
        purpose = aspect.for_.get("not" if claim.of is None else "of", plain)
        return (purpose, purpose)
    low, high = (aspect.for_.get(end, plain) for end in ("at least", "at most"))
    if not any(bounds):
        return (plain, plain)
    return (low if bounds[0] else high, high if bounds[1] else low)
