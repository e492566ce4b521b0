"""What is told only after it was decided: a line is said where the verdicts allow its act.

Everybody who tells something of a rule that fired asks here, after the last verdict has fallen.
"""

from __future__ import annotations

from collections.abc import Iterator

from advisor.claims.collect import Fired, Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.places import SEWN_ON
from advisor.knowledge.telling import HURTS, ToldWhere
from advisor.project.garment import Seam

PRESS = "press."
CARE = "care."
"""What is asked of the whole garment, and holds for every line about a part of it."""
Around = tuple[bool, dict[str, Verdict], list[dict[str, Verdict]], frozenset[str]]
"""Whether a place is sewn by hand, its own verdicts, those of the cloths of a rule in it, and what
other places are asked and it is not."""


def told_lines(
    fired: Fired, kind: str, judgement: Judgement, places: frozenset[str] | None = None
) -> list[int]:
    """Which lines of a rule that fired are told, by their number.

    Args:
        fired: the rule with the place and the cloths that it is about.
        kind: `do`, `tests` or `cautions`.
        judgement: with the final verdicts.
        places: the seams that alone are asked; None for every seam that the rule is about.
    """
    rule = fired.rule
    around: list[Around] | None = None
    found = []
    for i in range(len(getattr(rule, kind))):
        conditions = rule.told.get(f"{kind} {i}", rule.told.get(kind, ()))
        hurts = kind == "cautions" and rule.cautions[i]["kind"] in HURTS
        if conditions and around is None:
            around = list(_around(fired, judgement, places))
        if not conditions or any(
            all(_holds(one, here, open_holds=hurts) for one in conditions) for here in around or ()
        ):
            found.append(i)
    return found


def _around(fired: Fired, judgement: Judgement, places: frozenset[str] | None) -> Iterator[Around]:
    """Every seam that a rule is about: its own, or those in which its cloths lie."""
    verdicts = judgement.verdicts
    own = [verdicts.get(Place("fabric", name), {}) for name in fired.cloths]
    seams = [by_aspect for place, by_aspect in verdicts.items() if place.scope == "seam"]
    asked = frozenset[str]().union(*seams)
    worn = verdicts.get(Place("garment", judgement.garment.name), {})
    care = {name: one for name, one in worn.items() if name.startswith(CARE)}
    nowhere = True
    for seam in judgement.garment.seams:
        if fired.place.scope == "seam":
            about = seam.name == fired.place.name
        else:
            about = not set(fired.cloths).isdisjoint(seam.cloths())
        if about and (places is None or seam.name in places):
            nowhere = False
            here = {**care, **_asked_at(seam, judgement)}
            yield seam.by_hand, here, own, asked - here.keys()
    if nowhere:
        yield False, care, own, frozenset()


def _asked_at(seam: Seam, judgement: Judgement) -> dict[str, Verdict]:
    """What is decided at a seam: of pressing nothing where a hook or a clasp is only sewn on."""
    own = judgement.verdicts.get(Place("seam", seam.name), {})
    if judgement.garment.single or seam.place not in SEWN_ON:
        return own
    return {name: one for name, one in own.items() if not name.startswith(PRESS)}


def _holds(condition: ToldWhere, here: Around, *, open_holds: bool) -> bool:
    """Whether what was decided allows an act; where nobody decided anything it is allowed.

    Of options that a line wants none is left in a place that is not asked for them.
    """
    by_hand, of_seam, of_cloths, unasked = here
    if condition.machine and by_hand:
        return False
    name = condition.aspect
    if name in unasked and condition.span is None and condition.how != "lacks":
        return False
    if name in of_seam and not _allows(of_seam[name], condition, open_holds=open_holds):
        return False
    said = [v[name] for v in of_cloths if name in v]
    return not said or any(_allows(v, condition, open_holds=open_holds) for v in said)


def _allows(verdict: Verdict, condition: ToldWhere, *, open_holds: bool) -> bool:
    advised = verdict.advised
    if advised.is_empty:  # a clash: nothing is decided, and nobody is to come to harm by that
        return open_holds
    if isinstance(advised, Choice):
        return _left(verdict, advised, condition)
    if condition.span is None:
        return True
    return not (advised & Span(*condition.span)).is_empty


def _left(verdict: Verdict, advised: Choice, condition: ToldWhere) -> bool:
    """Of options that exclude each other the picked one counts, of others all that are left."""
    aspect = verdict.aspect
    one = verdict.pick is not None and not aspect.several
    left = 1 << int(verdict.pick or 0) if one else advised.mask
    if condition.how == "some":
        return bool(left & condition.mask)
    return (left & condition.mask == condition.mask) == (condition.how == "all")
