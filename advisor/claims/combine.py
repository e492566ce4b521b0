"""Lets the claims of one place on one aspect meet, and picks an answer.

Guards and musts meet first; what they leave is `allowed`, and that never widens when somebody
else speaks. Then the wishes, in the order of what they are for, best source first and the gentle
side before the other: one that would leave nothing is given up, and the verdict remembers it.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.claimsets import ValueSet, full_set, insisted, meet, set_of
from advisor.claims.speakers import HEAT_ASPECTS, Said
from advisor.claims.valuesets import Choice, Span
from advisor.knowledge.model import Aspect, Claim
from advisor.knowledge.purposes import PURPOSES

HEARSAY = 4
"""From this rank on a claim rests on memory or an estimate alone."""
UPPER = ("high", "limit")
"""Ways to prefer by which the upper end of what is advised is told."""


class Verdict(Struct, frozen=True):
    """What may be done in one place on one aspect, what is best, and why.

    Attributes:
        allowed: what guards and musts leave, without the needs given up for safety.
        advised: what wishes leave of it.
        pick: one answer in `advised`; None where nothing suits, and among options also where
            several do, nobody names a best and the trade has no usual choice: then any will do.
        because: what was met, by its ends where only one of them was.
        given_up: needs and wishes that gave way, or the end of them that did.
        clash: the guards and musts as they were said, where they leave nothing.
    """

    aspect: Aspect
    allowed: ValueSet
    advised: ValueSet
    pick: float | None
    because: tuple[Said, ...]
    given_up: tuple[Said, ...]
    clash: tuple[Said, ...] = ()


def decide(
    aspect: Aspect,
    said: list[Said],
    *,
    together: bool = False,
    small: frozenset[str] = frozenset(),
) -> Verdict:
    """Combine everything said in one place on one aspect.

    Args:
        aspect: what is decided.
        said: by all who speak there.
        together: whether all that is there lies under one iron.
        small: the layers after which nobody sets the iron or the damp of all.
    """
    ordered = said if len(said) == 1 else sorted(dict.fromkeys(said), key=_order)
    allowed, dropped, clash = _insisted(aspect, ordered)
    under_one = together and aspect.id in HEAT_ASPECTS and not clash
    doubted = _unfounded(ordered, small) if under_one else []
    if doubted:
        ordered = [s for s in ordered if s not in doubted]
        allowed, dropped, clash = _insisted(aspect, ordered)
    wishes = [s for s in ordered if s.claim.strength == "should"]
    tastes = [s for s in ordered if s.claim.strength == "may"]
    advised, lost = _wished(aspect, allowed, wishes)
    # Taste chooses among what is advised and takes nothing away from it.
    heard = [] if lost and aspect.ties == "middle" else tastes  # one cloth's taste breaks no tie
    liked, unliked = _narrow(advised, heard)
    unliked = unliked if heard else tastes
    kept = tuple(
        left
        for s in ordered
        if s not in dropped and s not in unliked and (left := _without(s, lost, aspect, allowed))
    )
    halved = (half for halves in lost.values() for half in halves)
    # What somebody wished is told before a need on nobody's word.
    last = [s for s in doubted if s.claim.strength == "must"]
    given_up = (*(s for s in doubted if s not in last), *dropped, *halved, *last, *unliked)
    if isinstance(liked, Choice):
        kept += _usual(aspect, liked, kept)
    pick = None if liked.is_empty else _pick(aspect, liked, kept, given_up)
    return Verdict(aspect, allowed, advised, pick, kept, given_up, clash)


def _unfounded(said: list[Said], small: frozenset[str]) -> list[Said]:
    """Needs that would take a tender layer past what it starts at by itself, and may not.

    What is only remembered, estimated or for look or habit, as a damp cloth beside one that water
    marks, may say how its own cloth is treated, and no other.
    """
    whole = (s.cloths for s in said if s.cloths - small)
    starts = {who: start for who in whole if (start := start_of(who, said)) is not None}
    return [
        s
        for s in said
        if s.cloths and not s.claim.guards and s.claim.origin != "maker"
        if s.claim.rank >= HEARSAY or s.claim.purposes[0] in ("look", "habit")
        if any(start < span_of(s)[0] for who, start in starts.items() if not who & s.cloths)
    ]


def start_of(cloths: frozenset[str], said: list[Said]) -> float | None:
    """Where a cloth starts by itself: at the least that is best, or at what it needs.

    None where nobody says.
    """
    own = [s for s in said if s.cloths <= cloths]
    mild = min((s.claim.best for s in own if s.claim.best is not None), default=None)
    lid = min((span_of(s)[1] for s in own if s.claim.guards), default=0.0)
    needs = [span_of(s)[0] for s in own if span_of(s)[0] <= lid and not s.claim.guards]
    return None if mild is None else max([mild, *needs])


def _insisted(aspect: Aspect, ordered: list[Said]) -> tuple[ValueSet, list[Said], tuple[Said, ...]]:
    """What guards and needs leave; where that is nothing, the needs that give way to the guards."""
    hard = [(s, left) for s in ordered if (left := insisted(aspect, s.claim)) is not None]
    guards = [(s, left) for s, left in hard if s.claim.guards]
    every = _met(aspect, [left for _, left in hard])
    if not every.is_empty:
        return every, [], ()
    clash = tuple(_only(s, left) for s, left in hard)
    safe = _met(aspect, [left for _, left in guards])
    needs = [s for s, _ in hard if not s.claim.guards]
    if safe.is_empty or not guards:
        return meet(safe, every), needs, clash
    dropped: list[Said] = []
    for said in needs:
        narrowed = meet(safe, set_of(said.claim))
        if narrowed.is_empty:
            dropped.append(said)
        else:
            safe = narrowed
    return safe, dropped, clash


def _only(said: Said, left: ValueSet) -> Said:
    """Somebody's words, without the ends of them that are mere wishes."""
    if not isinstance(left, Span) or said.claim.span == (left.low, left.high):
        return said
    return replace(said, claim=replace(said.claim, span=(left.low, left.high)))


def _met(aspect: Aspect, sets: list[ValueSet]) -> ValueSet:
    left = full_set(aspect)
    for other in sets:
        left = meet(left, other)
    return left


def _wished(
    aspect: Aspect, allowed: ValueSet, wishes: list[Said]
) -> tuple[ValueSet, dict[Said, list[Said]]]:
    """What wishes leave of what is allowed, and the ends of them that are given up."""
    halves = [(half, said) for said in wishes for half in _halves(aspect, said)]
    halves.sort(key=lambda pair: _rank(pair[0]))
    apart = _apart(aspect, allowed, [half for half, _ in halves])
    left, lost = allowed, dict[Said, list[Said]]()
    for half, said in halves:
        narrowed = meet(left, set_of(half.claim))
        if not narrowed.is_empty and half not in apart:
            left = narrowed
        elif not half.claim.guards:  # guards that clash are told as a clash
            lost.setdefault(said, []).append(half)
    return left, lost


def _apart(aspect: Aspect, allowed: ValueSet, halves: list[Said]) -> set[Said]:
    """Wishes of equal rank that do not meet, where neither is to win: the outermost give way."""
    found: set[Said] = set()
    if aspect.ties != "middle":
        return found
    able = [s for s in halves if not meet(allowed, set_of(s.claim)).is_empty]
    while able:
        floor = max(able, key=lambda s: (span_of(s)[0], s.key))
        ceiling = min(able, key=lambda s: (span_of(s)[1], s.key))
        if span_of(floor)[0] <= span_of(ceiling)[1]:
            break
        one, two = (_PURPOSE[s.claim.purposes[0]] for s in (floor, ceiling))
        given = {floor, ceiling} if one == two else {ceiling if one < two else floor}
        found |= given
        able = [s for s in able if s not in given]
    return found


def span_of(said: Said) -> tuple[float, float]:
    """The ends of what somebody says of a range, 0 and 0 where it is of options."""
    return said.claim.span or (0.0, 0.0)


def _halves(aspect: Aspect, said: Said) -> list[Said]:
    """A claim, by its ends where they are for different things; one may be met alone."""
    claim = said.claim
    low, high = claim.purposes
    if claim.span is None or (low == high and aspect.ties != "middle"):
        return [said]
    ends = (
        (low, (claim.span[0], aspect.high), claim.span[0] > aspect.low),
        (high, (aspect.low, claim.span[1]), claim.span[1] < aspect.high),
    )
    found = [
        replace(said, claim=replace(claim, span=span, ends=(end, end)))
        for end, span, bounds in ends
        if bounds
    ]
    return found if len(found) > 1 else [said]


def _without(
    said: Said, lost: dict[Said, list[Said]], aspect: Aspect, allowed: ValueSet
) -> Said | None:
    """What is left of a claim once some of its ends are given up, if that still bounds anything."""
    if said not in lost:
        return said
    for half in _halves(aspect, said):
        if half not in lost[said] and meet(allowed, set_of(half.claim)) != allowed:
            # What it would like best lay in the whole of it.
            return replace(half, claim=replace(half.claim, best=None))
    return None


def _narrow(start: ValueSet, tastes: list[Said]) -> tuple[ValueSet, list[Said]]:
    """Let tastes meet in their order; one that would leave nothing is given up."""
    left, lost = start, []
    for taste in tastes:
        narrowed = meet(left, set_of(taste.claim))
        if narrowed.is_empty:
            lost.append(taste)
        else:
            left = narrowed
    return left, lost


_STRENGTHS = {"must": 0, "should": 1, "may": 2}
_PURPOSE = {purpose: at for at, purpose in enumerate(PURPOSES)}


def _order(said: Said) -> tuple[object, ...]:
    """Strength, then purpose, standing of the source, the gentle side, then words."""
    return (_STRENGTHS[said.claim.strength], *_rank(said))


def _rank(said: Said) -> tuple[object, ...]:
    """What a claim is for, then standing of its source, then the gentle side, then words."""
    claim = said.claim
    lean = float(claim.mask.bit_count()) if claim.span is None else claim.span[1]
    low, high = claim.purposes
    first = min(_PURPOSE[low], _PURPOSE[high])
    return (first, claim.rank, lean, said.key)


HERE = "here"
USUAL = "usual practice"
"""Who speaks where nobody names a best and the trade has a usual choice."""


def _usual(aspect: Aspect, liked: Choice, kept: tuple[Said, ...]) -> tuple[Said, ...]:
    """The trade's usual choice among several that are left, where nobody names a best."""
    named = any(s.claim.best is not None and int(s.claim.best) in liked for s in kept)
    option = next((i for i in aspect.usually if i in liked), None)
    if named or option is None or len(liked.options()) == 1:
        return ()
    return (_single(USUAL, aspect, option, aspect.usually_why, aspect.usually_sources),)


def _pick(
    aspect: Aspect, advised: ValueSet, kept: tuple[Said, ...], given_up: tuple[Said, ...]
) -> float | None:
    if isinstance(advised, Choice):
        for said in kept:
            best = said.claim.best
            if best is not None and int(best) in advised:
                return best
        only = advised.options()
        return float(only[0]) if len(only) == 1 else None
    wanted = _end(aspect, advised) if aspect.usual is None else aspect.usual
    if aspect.gentle:
        # Whoever wants least is heard, however weak the source: too much is what harms.
        heard = (*kept, *given_up)
        mild = [s.claim.best for s in heard if s.claim.best is not None]
        mild += [s.claim.span[1] for s in heard if s.claim.strength == "may" and s.claim.span]
        return min(max(min(mild, default=wanted), advised.low), advised.high)
    for best in (s.claim.best for s in kept):
        if best is not None and best in advised:
            return best
    if aspect.ties == "middle":
        wanted = _between(aspect, given_up, wanted)
    return _sold(aspect, advised, min(max(wanted, advised.low), advised.high), given_up)


def _between(aspect: Aspect, given_up: tuple[Said, ...], otherwise: float) -> float:
    """What lies between the wishes that did not meet, or next to the one that was not met."""
    wishes = [span_of(s) for s in given_up if s.claim.strength == "should"]
    floors = [low for low, _ in wishes if low > aspect.low]
    ceilings = [high for _, high in wishes if high < aspect.high]
    ends = [*([min(floors)] if floors else []), *([max(ceilings)] if ceilings else [])]
    return sum(ends) / len(ends) if ends else otherwise


def _sold(aspect: Aspect, advised: Span, wanted: float, given_up: tuple[Said, ...] = ()) -> float:
    """The size nearest to what is wanted that exists and is allowed.

    Of two as near, the one nearer to the middle of what those who gave way like best.
    """
    fitting = [step for step in aspect.steps if step in advised]
    bests = [s.claim.best for s in given_up if s.claim.best is not None]
    liked = (min(bests) + max(bests)) / 2 if bests else wanted
    near = ((abs(step - wanted), abs(step - liked), step) for step in fitting)
    return min(near)[2] if fitting else wanted


def _end(aspect: Aspect, advised: Span) -> float:
    if aspect.prefer == "low":
        return advised.low
    if aspect.prefer in UPPER:
        return advised.high
    middle = (advised.low + advised.high) / 2
    return float(int(middle)) if aspect.kind == "scale" else middle


def narrowed(verdict: Verdict, words: Iterable[str], why: str) -> Verdict:
    """The verdict anew, if what another answer of the garment leaves is wished first of all.

    Args:
        verdict: of an aspect of options.
        words: the options that are left.
        why: what the other answer is, in a sentence.
    """
    mask = sum(1 << verdict.aspect.words.index(word) for word in words)
    claim = Claim(
        verdict.aspect.id,
        None,
        mask,
        None,
        "should",
        "result",
        why,
        ("derived",),
        0,
        "this garment",
        ends=("seam", "seam"),
    )
    heard = [*verdict.because, *verdict.given_up]
    heard = [s for s in heard if not (s.who in (USUAL, HERE) and s.claim.strength == "may")]
    return decide(verdict.aspect, [*heard, Said(HERE, claim)])


def picking(verdict: Verdict, option: int, why: str) -> Verdict:
    """The verdict with another of its advised options picked, and why.

    Tastes that it is not to are given up.
    """
    heard = [s for s in verdict.because if s.who != USUAL]
    unliked = [s for s in heard if not s.claim.mask >> option & 1]
    kept = [s for s in heard if s not in unliked]
    if not any(s.claim.best == option for s in kept):
        kept.append(_single(HERE, verdict.aspect, option, why, ("derived",)))
    given_up = (*verdict.given_up, *unliked)
    return replace(verdict, pick=float(option), because=tuple(kept), given_up=given_up)


def only(verdict: Verdict, option: int, why: str) -> Verdict:
    """The verdict where one option alone is left, because of how the place is made."""
    left = Choice.one_of(option)
    said = _single(HERE, verdict.aspect, option, why, ("derived",))
    return Verdict(verdict.aspect, left, left, float(option), (said,), ())


def picking_number(verdict: Verdict, value: float, why: str) -> Verdict:
    """The verdict with another of its allowed values picked, and why.

    Tastes that it is not to are given up, and wishes where it is not among what is advised.
    """
    about = verdict.aspect.id
    claim = Claim(
        about, (value, value), 0, value, "may", "", why, ("derived",), 2, f"aspect {about}"
    )
    kept = tuple(s for s in verdict.because if value in set_of(s.claim))
    given_up = (*verdict.given_up, *(s for s in verdict.because if s not in kept))
    advised = verdict.advised
    if value not in advised:
        wishes = [set_of(s.claim) for s in kept if s.claim.strength == "should"]
        advised = meet(verdict.allowed, _met(verdict.aspect, wishes))
    because = (*kept, Said(HERE, claim))
    return replace(verdict, advised=advised, pick=value, because=because, given_up=given_up)


def _single(
    who: str, aspect: Aspect, option: int, why: str, sources: tuple[str, ...], rank: int = 2
) -> Said:
    """Somebody would take one option of several."""
    about = (aspect.id, None, 1 << option, float(option), "may", "", why)
    return Said(who, Claim(*about, sources, rank, f"aspect {aspect.id}"))
