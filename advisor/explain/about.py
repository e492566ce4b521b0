"""Everything that is known about one entry: cloth, fibre, rule, source, aspect, place, method.

A name may stand for several things (leather is a cloth and a fibre); all of them are shown.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

from advisor.answer.lineage import said_by_rules
from advisor.answer.wording import degrees, fibres_text, mix_text, says_text
from advisor.claims.speakers import Said, limit_claim
from advisor.errors import InputError, Problem, nearest, shown
from advisor.explain.listings import LISTS, Told
from advisor.explain.ofplaces import kind_of, tell_kind, tell_method
from advisor.explain.ofwords import tell_aspects, tell_options, tell_term, tell_trait
from advisor.explain.phrases import bare_name, cloth_meant, one_of
from advisor.explain.typed import aspect_names, aspects_named, holding, options, options_named
from advisor.explain.typed import listed as listed_names
from advisor.knowledge.glossary import term_of
from advisor.knowledge.model import (
    Ceiling,
    Claim,
    Entry,
    Fibre,
    Knowledge,
    Remedy,
    Rule,
    Source,
)
from advisor.knowledge.names import plain_name, source_id
from advisor.records import picked
from advisor.render.layout import heading, row, wrap
from advisor.units import System, show_range

_MOST_HELD, _MOST_LISTED = 3, 12
NO_LENDERS: Mapping[str, str] = {}
_POINTS: tuple[str, ...] = ("softens", "sticks", "melts", "scorches", "density", "regain")
_POINTS += ("specific heat", "conductivity")


def explain(name: str, knowledge: Knowledge, units: System) -> Told:
    """What is known about a name, as lines and as data.

    Raises:
        InputError: nothing has that name; with the nearest names.
    """
    knowledge = knowledge.told(units)
    listed = LISTS.get(plain_name(name))
    if listed is not None:
        return listed(knowledge)
    name = bare_name(name)
    asked = matches(name, knowledge) or matches(one_of(name), knowledge) or _meant(name, knowledge)
    if set(asked) == {"answer"}:  # "silk organza" is an interfacing, and a cloth as well
        asked = {**cloth_meant(name, knowledge, wholly=True), **asked}
    lines: list[str] = []
    data: dict[str, Any] = {}
    for kind, found in asked.items():
        part, about = _SHOW[kind](found, knowledge, units)
        lines += ([""] if lines else []) + part
        data[kind] = about
    if not data:
        near = nearest(plain_name(name), _names(knowledge))
        near = tuple(known for known in near if plain_name(known) != plain_name(name))
        expected = f"a name that is printed, or one of {listed_names([*LISTS])} for a list"
        raise InputError(Problem(f"nothing is known as {shown(name)}", None, expected, near))
    return lines, data


def _meant(name: str, knowledge: Knowledge) -> dict[str, Any]:
    """What the names that hold the words stand for, or the cloth that they describe."""
    found = _holding(name, knowledge)
    return found or dict(cloth_meant(name, knowledge))


def _holding(name: str, knowledge: Knowledge) -> dict[str, Any]:
    """What the names stand for that hold every word typed; nothing where they are too many.

    Raises:
        InputError: too many names hold the words; with those.
    """
    held = holding(name, _names(knowledge))
    found: dict[str, Any] = {}
    for longer in held:
        for kind, value in matches(longer, knowledge).items():
            found.setdefault(kind, value)
    if len(held) > _MOST_HELD:
        text = f"{shown(name)} is a part of several names"
        raise InputError(Problem(text, None, f"one of {listed_names(held[:_MOST_LISTED])}"))
    return found


def matches(name: str, knowledge: Knowledge) -> dict[str, Any]:
    """What a name stands for, by the sort of thing it is."""
    plain = plain_name(name)
    rules = {plain_name(rule.id): rule for rule in knowledge.rules}
    remedies = {plain_name(remedy.id): remedy for remedy in knowledge.remedies}
    sources = {plain_name(id_): source for id_, source in knowledge.sources.items()}
    found = {
        "word": term_of(name, knowledge.registers.glossary),
        "entry": knowledge.entries.get(knowledge.names.get(plain, name)),
        "fibre": knowledge.fibres.get(knowledge.fibre_names.get(plain, name)),
        "rule": rules.get(plain),
        "remedy": remedies.get(plain),
        "source": sources.get(plain),
        "trait": next((trait for trait in knowledge.traits if plain_name(trait) == plain), None),
        "aspect": aspects_named(name, knowledge),
        "answer": options_named(name, knowledge),
        "place": kind_of(name, knowledge),
        "method": knowledge.places.named(name),
    }
    return {kind: value for kind, value in found.items() if value}


def _names(knowledge: Knowledge) -> list[str]:
    return [
        *(e.name for e in knowledge.entries.values()),
        *knowledge.names,
        *knowledge.fibre_names,
        *(r.id for r in knowledge.rules),
        *knowledge.sources,
        *aspect_names(knowledge),
        *knowledge.traits,
        *(k.name for k in knowledge.places.kinds.values()),
        *(m.name for m in knowledge.places.methods.values()),
        *(option.label for option in options(knowledge)),
        *(n for t in knowledge.registers.glossary.values() for n in (t.name, *t.also)),
    ]


def _cited(sources: tuple[str, ...] | list[str]) -> str:
    return f"[{', '.join(sources)}]" if sources else ""


def _claims(
    claims: tuple[Claim, ...],
    knowledge: Knowledge,
    units: System,
    said_by: Mapping[str, str] = NO_LENDERS,
) -> list[str]:
    """One row a claim; `said_by` names the entry that lends a claim, by the claim's number."""
    lines: list[str] = []
    for i, claim in enumerate(claims):
        aspect = knowledge.aspects[claim.aspect]
        says = says_text(Said("", claim), aspect, units)
        lender = f" Like {said_by[str(i)]}." if str(i) in said_by else ""
        text = f"{says} ({claim.strength}). {claim.why} {_cited(claim.sources)}{lender}"
        lines += row(aspect.title, text, 2, 20)
    return lines


def _rules_on(entry: Entry, knowledge: Knowledge, units: System) -> list[str]:
    """What rules say of a cloth by itself, each row with its rule."""
    lines: list[str] = []
    for said in said_by_rules(entry, knowledge):
        aspect = knowledge.aspects[said.claim.aspect]
        says = says_text(said, aspect, units)
        text = f"{says} ({said.claim.strength}). {said.claim.why} By {said.claim.origin}."
        lines += row(aspect.title, text, 2, 20)
    return [*heading("From rules"), *lines] if lines else []


def _claim_data(claim: Claim, knowledge: Knowledge, units: System) -> dict[str, Any]:
    aspect = knowledge.aspects[claim.aspect]
    says = {"says": says_text(Said("", claim), aspect, units)}
    return {"aspect": claim.aspect, **says, **picked(claim, "strength why sources")}


def _entry(entry: Entry, knowledge: Knowledge, units: System) -> Told:
    what = entry.family or entry.kind
    lines = heading(
        f"{entry.name} ({what}, {entry.weave + ' ' if entry.weave else ''}{entry.structure})", 1
    )
    if entry.also:
        lines += row("also called", ", ".join(entry.also), 2, 14)
    sold = ", ".join(mix_text(mix, knowledge) for mix in entry.mixes)
    lines += row("sold in", f"{sold} {_cited(entry.sold_sources)}", 2, 14)
    for key, span in (("weight", entry.weight), ("thickness", entry.thickness)):
        if span:
            kind = "weight" if key == "weight" else "length"
            cited = _cited(entry.facts[key]["sources"])
            lines += row(key, f"{_span(kind, span, units)} {cited}", 2, 14)
    lent = entry.facts.get("lent", {})
    if entry.facts.get("like"):
        text = f"{entry.facts['like']}; what is not its own names who lends it"
        lines += row("like", text, 2, 14)
    for lender, names in _by_lender(entry.traits, lent).items():
        traits = ", ".join(_trait_text(n, entry.traits[n], knowledge) for n in names)
        cited = _cited(entry.facts.get("traits sources", []))
        tail = f" Like {lender}." if lender else ""
        lines += row("traits", f"{traits} {cited}{tail}", 2, 14)
    lines += ["", *_claims(entry.claims, knowledge, units, lent)]
    if entry.facts.get("limits"):
        lines += row("limits", entry.facts["limits"], 2, 14)
    for note in entry.facts.get("notes", []):
        lines += row("note", f"{note['text']} {_cited(note['sources'])}", 2, 14)
    lines += _rules_on(entry, knowledge, units)
    data = {
        **picked(entry, "id name also structure"),
        "sold_in": fibres_text(entry.mixes, knowledge),
        **picked(entry, "weight thickness facts"),
        "traits": {n: _trait_text(n, pair, knowledge) for n, pair in entry.traits.items()},
        "claims": [
            _claim_data(c, knowledge, units) | {"said by": lent.get(str(i), entry.id)}
            for i, c in enumerate(entry.claims)
        ],
        "rules": [
            _claim_data(said.claim, knowledge, units) | {"said by": said.claim.origin}
            for said in said_by_rules(entry, knowledge)
        ],
    }
    return lines, data


def _by_lender(names: Iterable[str], lent: dict[str, str]) -> dict[str, list[str]]:
    """Names grouped by who lends them; what is its own stands first, under no name."""
    groups: dict[str, list[str]] = {}
    for name in sorted(names, key=lambda name: name in lent):
        groups.setdefault(lent.get(name, ""), []).append(name)
    return groups


def _span(kind: str, span: tuple[float, float], units: System) -> str:
    if kind == "length":
        return f"{span[0]:g} to {span[1]:g} mm"
    return show_range(kind, span[0], span[1], units)


def _trait_text(name: str, pair: tuple[int, int], knowledge: Knowledge) -> str:
    words = knowledge.traits[name]
    level = words[pair[0]] if pair[0] == pair[1] else "unknown"
    return name if level == "yes" else f"{name}: {level}"


def _fibre(fibre: Fibre, knowledge: Knowledge, units: System) -> Told:
    lines = heading(f"{fibre.name} (fibre, {fibre.group})", 1)
    if fibre.facts.get("also"):
        lines += row("also called", ", ".join(fibre.facts["also"]), 2, 16)
    claim = limit_claim(fibre)
    lines += row(
        "iron limit",
        f"{degrees(fibre.limit, units)}; start at {degrees(fibre.start, units)} "
        f"{_cited(claim.sources)}",
        2,
        16,
    )
    for ceiling in sorted(fibre.ceilings, key=lambda c: c.max):
        standing = "" if ceiling.good else ", weaker standing"
        note = f" ({ceiling.note})" if ceiling.note else ""
        most = degrees(ceiling.max, units)
        lines += row("published", f"{most}{standing}{note} {_cited(ceiling.sources)}", 2, 16)
    for key in _POINTS:
        found = fibre.facts.get(key, [])
        for value in found if isinstance(found, list) else [found]:
            lines += row(key, _point(value), 2, 16)
    traits = ", ".join(_trait_text(n, (v, v), knowledge) for n, v in fibre.traits.items())
    if traits:
        cited = _cited(fibre.facts.get("traits sources", []))
        lines += row("gives a cloth", f"{traits} {cited}", 2, 16)
    lines += ["", *_claims(fibre.claims, knowledge, units)]
    for note in fibre.facts.get("notes", []):
        lines += row("note", f"{note['text']} {_cited(note['sources'])}", 2, 14)
    data = {
        **picked(fibre, "id name group"),
        "limit_c": fibre.limit,
        "start_c": fibre.start,
        "facts": fibre.facts,
        "published": [
            {"max_c": c.max, "sources": list(c.sources), "note": c.note, "counts": c.good}
            for c in fibre.ceilings
        ],
        "claims": [_claim_data(c, knowledge, units) for c in fibre.claims],
    }
    return lines, data


def _point(value: dict[str, Any]) -> str:
    numbers = [f"{value[k]:g}" for k in ("at", "value") if value.get(k) is not None]
    ends = [f"{value[k]:g}" for k in ("from", "min", "to", "max") if value.get(k) is not None]
    note = f" ({value['note']})" if value.get("note") else ""
    return f"{' to '.join(numbers or ends)}{note} {_cited(value['sources'])}"


def _rule(rule: Rule, knowledge: Knowledge, units: System) -> Told:
    lines = heading(f"{rule.id} (rule, {rule.area})", 1)
    lines += wrap(rule.claim, "  ")
    lines += wrap(rule.why, "  ")
    lines += ["", *_claims(rule.claims, knowledge, units)]
    for text in rule.do:
        lines += row("do", text, 2, 20)
    for caution in rule.cautions:
        lines += row(f"caution: {caution['kind']}", caution["text"], 2, 20)
    for text in rule.tests:
        lines += row("test", text, 2, 20)
    if rule.limits:
        lines += row("limits", rule.limits, 2, 20)
    lines += row("sources", _cited(rule.sources), 2, 20)
    return lines, {
        **picked(rule, "id area claim why"),
        "claims": [_claim_data(c, knowledge, units) for c in rule.claims],
        **picked(rule, "do cautions tests limits sources"),
    }


def _remedy(remedy: Remedy, _knowledge: Knowledge, _units: System) -> Told:
    lines = heading(f"{remedy.id} (remedy)", 1)
    lines += wrap(remedy.text, "  ")
    price = f"effort {remedy.effort}, look {remedy.look}"
    lines += wrap(f"Cures a clash of {', '.join(remedy.cures)}; {price}.", "  ")
    return lines, picked(remedy, "id text cures")


def _source(source: Source, knowledge: Knowledge, _units: System) -> Told:
    lines = heading(f"{source.id} (source)", 1)
    lines += wrap(source.citation, "  ")
    # An address must stay whole to be opened, so it is never wrapped.
    lines.append(f"  where: {source.where}" if source.where else f"  no place: {source.nowhere}")
    standing = "of good standing" if source.good else "of weaker standing"
    lines += wrap(f"{source.kind}, read: {source.read}, {standing}. {source.note}", "  ")
    used = used_by(source.id, knowledge)
    lines += row("used by", ", ".join(used) or "nothing", 2, 10)
    about = picked(source, "id citation kind where nowhere read note")
    return lines, {**about, "used_by": used}


def used_by(id_: str, knowledge: Knowledge) -> list[str]:
    """Everything whose claims cite a source."""

    def cites(*cited: Claim | Ceiling | Rule) -> bool:
        return any(source_id(text) == id_ for one in cited for text in one.sources)

    fibres = (f for f in knowledge.fibres.values() if cites(*f.claims, *f.ceilings))
    entries = [e.id for e in knowledge.entries.values() if cites(*e.claims)]
    rules = [f"rule {r.id}" for r in knowledge.rules if cites(*r.claims, r)]
    return [*(f"fibre {f.id}" for f in fibres), *entries, *rules]


_SHOW: dict[str, Callable[[Any, Knowledge, System], Told]] = {
    "entry": _entry,
    "fibre": _fibre,
    "rule": _rule,
    "remedy": _remedy,
    "source": _source,
    "aspect": tell_aspects,
    "answer": tell_options,
    "word": tell_term,
    "place": lambda kind, knowledge, _: tell_kind(kind, knowledge),
    "method": lambda method, knowledge, _: tell_method(method, knowledge),
    "trait": tell_trait,
}
