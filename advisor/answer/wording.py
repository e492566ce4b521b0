"""Every sentence about a verdict, a claim or a conflict that a person reads.

Numbers are printed in the maker's units; a limit is never rounded up.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.conflicts import NO_METHOD, Conflict
from advisor.claims.speakers import HEAT, YOU, Said
from advisor.claims.valuesets import Choice, Span
from advisor.craft.irondial import MARKS, mark_for, starting, starts_too_cool
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Aspect, Knowledge, Mix
from advisor.project.garment import Cloth
from advisor.project.mainfibre import vouched_for
from advisor.units import System, fahrenheit, needle, show, show_range
from advisor.units.factors import MM_PER_INCH

MOST_OPTIONS = 3
DRAWN = "edge.drawn"
"""The aspect of which a clash is a danger, and told as one: its reason says what to do."""
SAME = 2.0
"""Starting so few K below the most is starting at it."""
_EIGHTH = MM_PER_INCH / 8
"""Allowances are cut to an eighth of an inch, mm."""
_KINDS = {"mm": "length", "s": "time", "tex": "tex"}


def sentence(text: str) -> str:
    """A text with a capital first letter and a full stop."""
    return f"{text[:1].upper()}{text[1:].rstrip('.')}."


def degrees(celsius: float, units: System) -> str:
    """A temperature that is a limit: never rounded up."""
    if units == "us":
        return f"{math.floor(fahrenheit(celsius) + 1e-9)} °F"
    return f"{math.floor(celsius + 1e-9)} °C"


def difference(kelvin: float, units: System) -> str:
    """A difference of temperatures."""
    return f"{kelvin * 1.8:.0f} °F" if units == "us" else f"{kelvin:.0f} K"


def heat_text(celsius: float, units: System) -> str:
    """A limit of the iron, or that there is to be none."""
    return "no iron" if celsius <= COLD else degrees(celsius, units)


def number_text(aspect: Aspect, value: float, units: System) -> str:
    """One number of a range aspect."""
    if aspect.unit == "NM":
        return needle(value)
    if aspect.unit == "°C":
        return heat_text(value, units)
    if aspect.id == "stitch.length":
        return show("stitch length", value, units)
    if aspect.unit == "tex":
        return f"tex {value:g}"
    return show(_KINDS[aspect.unit], value, units)


def span_text(aspect: Aspect, span: Span, units: System) -> str:  # noqa: PLR0911 - one a unit
    """A range as a claim says it: at least, at most, or from and to."""
    if aspect.kind == "scale":
        return _scale_text(aspect, span)
    if aspect.unit == "°C" and span.high <= COLD:
        return "no iron"
    if span.low == span.high:
        return number_text(aspect, span.low, units)
    most, least = "at most", "at least"
    if aspect.id == "stitch.length" and units == "us":  # the shorter a stitch, the more of them
        most, least = least, most
    if span.low <= aspect.low:
        return f"{most} {number_text(aspect, span.high, units)}"
    if span.high >= aspect.high:
        return f"{least} {number_text(aspect, span.low, units)}"
    if aspect.unit == "NM":
        return show_range("needle", span.low, span.high, units)
    if aspect.unit == "°C":
        return f"{degrees(span.low, units).split()[0]} to {degrees(span.high, units)}"
    if aspect.unit == "tex":
        return f"tex {span.low:g} to {span.high:g}"
    kind = "stitch length" if aspect.id == "stitch.length" else _KINDS[aspect.unit]
    return show_range(kind, span.low, span.high, units)


def _scale_text(aspect: Aspect, span: Span) -> str:
    low, high = aspect.words[int(span.low)], aspect.words[int(span.high)]
    if low == high:
        return low
    if span.low <= aspect.low:
        return f"at most {high}"
    return f"at least {low}" if span.high >= aspect.high else f"{low} to {high}"


def option_words(aspect: Aspect, choice: Choice) -> list[str]:
    """The options of a set, as a person reads them."""
    return [aspect.labels.get(aspect.words[i], aspect.words[i]) for i in choice.options()]


def says_text(said: Said, aspect: Aspect, units: System) -> str:
    """What a claim says of its aspect."""
    claim = said.claim
    if claim.span is not None:
        return _WANTS.get((aspect.id, claim.span)) or span_text(aspect, Span(*claim.span), units)
    words = option_words(aspect, Choice(claim.mask))
    full = (1 << len(aspect.words)) - 1
    others = option_words(aspect, Choice(full & ~claim.mask))
    if aspect.excluded:
        return "avoid " + ", ".join(others)
    if len(words) <= len(others) or not others:
        return " or ".join(words)
    denied = (w.removeprefix("not ") if w.startswith("not ") else f"not {w}" for w in others)
    return ", ".join(denied)


_WANTS = {("pin.place", (1.0, 2.0)): "some pins, if only in the allowance"}
"""What a claim wants that would read oddly as a part of its scale."""


def verdict_text(verdict: Verdict, units: System) -> str:
    """The answer of a verdict: what to set."""
    aspect, advised = verdict.aspect, verdict.advised
    if advised.is_empty:
        return "nothing suits all layers"
    if isinstance(advised, Choice):
        return _options_text(verdict, advised)
    if verdict.pick is None:
        return "nothing suits all layers"
    if aspect.id == LIMIT_ASPECT:
        return iron_text(verdict, units)
    if aspect.id == "press.dwell":
        return span_text(aspect, advised, units)
    if aspect.kind == "scale":
        word = aspect.words[int(verdict.pick)]
        return aspect.labels.get(word, word)
    if aspect.id == "seam.allowance" and units == "us" and isinstance(advised, Span):
        eighth = round(verdict.pick / _EIGHTH) * _EIGHTH
        return number_text(aspect, eighth if eighth in advised else verdict.pick, units)
    return number_text(aspect, verdict.pick, units)


def _options_text(verdict: Verdict, advised: Choice) -> str:
    aspect = verdict.aspect
    if aspect.excluded:
        full = (1 << len(aspect.words)) - 1
        return ", ".join(option_words(aspect, Choice(full & ~advised.mask)))
    if verdict.pick is None:
        words = option_words(aspect, advised)
        if aspect.id.startswith("design."):
            return ", ".join(words)
        return f"any of {', '.join(words[:-1])} or {words[-1]}"
    pick = verdict.pick
    first = aspect.labels.get(aspect.words[int(pick)], aspect.words[int(pick)])
    if not aspect.several or advised.mask == (1 << len(aspect.words)) - 1:
        return first
    shown = [first]
    for word in option_words(aspect, advised):
        # "pins or pins in the allowance" says one of them twice.
        pairs = ((a, b) for said in shown for a, b in ((word, said), (said, word)))
        if not any(a == b or a.startswith(f"{b} in ") for a, b in pairs):
            shown.append(word)
    if not aspect.id.startswith("design."):
        shown = shown[:MOST_OPTIONS]
    if aspect.id.startswith("design.") or len(shown) == 1:
        return ", ".join(shown)
    return f"{', '.join(shown[:-1])} or {shown[-1]}"


def dial_text(most_c: float) -> str:
    """The dial's mark for a limit, and its low end where the mark's band reaches beyond it."""
    mark = mark_for(most_c)
    if mark is None:
        return "below one dot"
    return f"{mark.name}, low end" if mark.band[1] > most_c else mark.name


def iron_text(verdict: Verdict, units: System) -> str:
    """The iron setting: where to start, up to what, and which dial mark that is."""
    span = verdict.advised
    assert isinstance(span, Span)
    if span.high <= COLD:
        return "no iron"
    if mark_for(span.high) is None:
        return f"no iron: at most {degrees(span.high, units)}, and no mark is that low"
    return setting_text(span.high if verdict.pick is None else verdict.pick, span.high, units)


def no_iron(celsius: float) -> bool:
    """Whether a limit means that no iron is used at all."""
    return celsius <= COLD


def setting_text(start_c: float, most_c: float, units: System) -> str:
    """Where the iron starts and on which mark, if not at the most, and up to what."""
    limit = f"at most {degrees(most_c, units)} ({dial_text(most_c)})"
    if not COLD < start_c < most_c - SAME:
        return limit
    lower = starts_too_cool(start_c) and mark_for(most_c) != MARKS[0]
    mark = f"{starting(start_c)}, " if lower else "at "
    return f"start {mark}{degrees(start_c, units)}, {limit}"


def iron_left(verdicts: Mapping[Place, Mapping[str, Verdict]], place: Place) -> str:
    """What may still be done with an iron at a place, in a few words."""
    heat = verdicts.get(place, {}).get(LIMIT_ASPECT)
    if heat is None or not isinstance(heat.advised, Span) or mark_for(heat.advised.high):
        return "the cooler iron"
    return "fingers and no iron"


def mix_text(mix: Mix, knowledge: Knowledge) -> str:
    """A mix of fibres as a label would have it."""
    if len(mix) == 1:
        return knowledge.fibres[mix[0][0]].name
    return ", ".join(
        f"{knowledge.fibres[fibre].name} {share:g} %"
        if share is not None
        else knowledge.fibres[fibre].name
        for fibre, share in mix
    )


def fibres_text(mixes: tuple[Mix, ...], knowledge: Knowledge) -> str:
    """What a cloth is made of, or may be."""
    if len(mixes) == 1:
        return mix_text(mixes[0], knowledge)
    return (
        "fibre unknown: "
        + ", ".join(mix_text(m, knowledge) for m in mixes[:-1])
        + (f" or {mix_text(mixes[-1], knowledge)}")
    )


def made_of_text(cloth: Cloth, knowledge: Knowledge) -> str:
    """What a cloth is made of; where its main fibre is known, what else may be in it."""
    main = vouched_for(cloth)
    others = {f for mix in cloth.mixes for f, _ in mix} - {main}
    if cloth.fibre_known or main is None or not others:
        return fibres_text(cloth.mixes, knowledge)
    names = sorted(knowledge.fibres[fibre].name for fibre in others)
    return f"mainly {knowledge.fibres[main].name}, perhaps with {or_listed(names)}"


def or_listed(names: list[str]) -> str:
    """Names with "or" before the last."""
    return f"{', '.join(names[:-1])} or {names[-1]}" if len(names) > 1 else names[0]


def who_text(said: Said) -> str:
    """Who says it, with what makes them say so: the fibre, where a fibre does."""
    fibres = [f for f in said.facts if f.fact == "fibre"]
    if said.claim.origin.startswith("fibre") and fibres:
        value = fibres[0].value
        if value in said.who:
            return said.who
        return f"{said.who} ({value if fibres[0].certain else 'may be ' + value})"
    return said.who


def conflict_message(conflict: Conflict, knowledge: Knowledge, units: System) -> str:
    """A clash in a few sentences: what clashes, and what else clashes for the same cause."""
    said: dict[str, str] = {}
    for one in (conflict, *conflict.also):
        if one.aspect not in said:
            said[one.aspect] = _one_message(one, knowledge, units)
    return " ".join(dict.fromkeys(said.values()))


def _one_message(conflict: Conflict, knowledge: Knowledge, units: System) -> str:
    """A clash in one or two sentences."""
    if conflict.aspect == NO_METHOD:
        parts = [
            f"{who_text(s)} cannot be {word}"
            for s, word in zip(conflict.clash, ("washed", "dry cleaned"), strict=False)
        ]
        return f"Nothing cleans this garment: {' and '.join(parts)}."
    aspect = knowledge.aspects[conflict.aspect]
    if conflict.clash[0].claim.origin == HEAT:
        return conflict.clash[0].claim.why
    if conflict.aspect == LIMIT_ASPECT and len(conflict.clash) == 2:
        return _iron_clash(conflict.clash, aspect, units)
    if conflict.aspect == "seam.bulk" and len(conflict.clash) == 2:
        return _bulk_clash(conflict.clash, aspect, units)
    if len(conflict.clash) == 2 and aspect.kind == "options":
        chosen = [s for s in conflict.clash if s.claim.origin == "maker"]
        others = [s for s in conflict.clash if s.claim.origin != "maker"]
        if len(chosen) == 1:
            return _choice_clash(chosen[0], others[0], aspect, units)
        yours = next((s for s in chosen if s.who == YOU), None)
        if yours is not None and not others:  # her machines against what she wants
            other = next(s for s in chosen if s is not yours)
            return (
                f"{aspect.title.capitalize()}: you want {says_text(yours, aspect, units)}. "
                f"{other.claim.why}"
            )
    parts = [f"{who_text(s)} asks for {says_text(s, aspect, units)}" for s in conflict.clash]
    reasons = " ".join(dict.fromkeys(s.claim.why for s in conflict.clash if s.claim.why))
    return f"{aspect.title.capitalize()}: {', but '.join(parts)}. {reasons}".strip()


def _bulk_clash(clash: tuple[Said, ...], aspect: Aspect, units: System) -> str:
    """A stack that is too thick for the machine: where, how thick, and what the machine takes."""
    stack, machine = clash
    thick = number_text(aspect, (stack.claim.span or (0, 0))[0], units)
    return (
        f"{stack.claim.why.rstrip('.')}, {thick} under the foot, and that is too much for the "
        f"{machine.who}. {machine.claim.why}"
    )


def _choice_clash(chosen: Said, other: Said, aspect: Aspect, units: System) -> str:
    """What the project or the kit brings, against a cloth that rules it out."""
    brought = says_text(chosen, aspect, units)
    wanted = option_words(aspect, Choice(other.claim.mask))
    instead = f"; it wants {', '.join(wanted[:4])}" if len(wanted) <= 4 else ""
    if aspect.id == DRAWN:
        return f"{chosen.claim.why} {other.claim.why}"
    return (
        f"{aspect.title.capitalize()}: {who_text(other)} rules out {brought}. "
        f"{chosen.claim.why.rstrip('.')}{instead}. {other.claim.why}"
    )


def _iron_clash(clash: tuple[Said, ...], aspect: Aspect, units: System) -> str:
    floor, ceiling = clash
    low = number_text(aspect, (floor.claim.span or (0, 0))[0], units)
    high = (ceiling.claim.span or (0, 0))[1]
    bears = "no iron at all" if high <= COLD else f"{degrees(high, units)} at most"
    subject = who_text(ceiling)
    if floor.who == ceiling.who:
        inside = [f.value for f in ceiling.facts if f.fact == "fibre"]
        subject = f"its {inside[0]}" if inside else "the cloth itself"
    if floor.claim.origin == "maker":
        return f"{who_text(ceiling)} bears {bears}, and you want {low}."
    verb = _verb(ceiling, "bear")
    if high <= COLD and ceiling.claim.strength != "must":
        verb, bears = _verb(ceiling, "ask"), "for no iron"
    return (
        f"{who_text(floor)} {_verb(floor, 'need')} at least {low}, but {subject} "
        f"{verb} {bears}. {ceiling.claim.why}"
    )


def _verb(said: Said, verb: str) -> str:
    """The verb as it follows one speaker or several."""
    return verb if len(said.cloths) > 1 and " and " in said.who else f"{verb}s"
