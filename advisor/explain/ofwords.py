"""What a trade word, an aspect, an answer of an aspect or a trait means, told in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from advisor.explain.listings import Told
from advisor.explain.typed import Option, listed
from advisor.knowledge.glossary import Term
from advisor.knowledge.model import Claim, Knowledge
from advisor.records import picked
from advisor.render.layout import heading, row, wrap
from advisor.units import System

_MOST = 12
_FEW = 3
"""A claim of so few answers names them; one of more only rules the others out."""


def tell_term(term: Term, _knowledge: Knowledge, _units: System) -> Told:
    """A trade word: what it means, and who says so."""
    lines = heading(f"{term.name} (word)", 1)
    if term.also:
        lines += row("also called", ", ".join(term.also), 2, 14)
    lines += wrap(term.means, "  ")
    if term.see:
        lines += row("read on at", listed(term.see), 2, 14)
    lines += row("said by", f"[{', '.join(term.sources)}]", 2, 14)
    return lines, picked(term, "name also means see sources")


def tell_aspects(ids: Sequence[str], knowledge: Knowledge, _units: System) -> Told:
    """What is decided under a name: one aspect or several."""
    told = [_aspect(id_, knowledge) for id_ in ids]
    lines: list[str] = []
    for part, _ in told:
        lines += ([""] if lines else []) + part
    first = dict(told[0][1])
    return lines, first if len(told) == 1 else first | {"aspects": [data for _, data in told]}


def _aspect(id_: str, knowledge: Knowledge) -> Told:
    aspect = knowledge.aspects[id_]
    lines = heading(f"{aspect.id}: {aspect.title} (aspect, {aspect.kind})", 1)
    lines += row("decided for", ", ".join(aspect.scopes), 2, 14)
    if aspect.words:
        lines += row("answers", ", ".join(aspect.labels.get(w, w) for w in aspect.words), 2, 14)
    else:
        lines += row("answers", f"{aspect.low:g} to {aspect.high:g} {aspect.unit}", 2, 14)
    speakers = [e.id for e in knowledge.entries.values() if any(c.aspect == id_ for c in e.claims)]
    rules = [r.id for r in knowledge.rules if any(c.aspect == id_ for c in r.claims)]
    lines += row("rules", ", ".join(rules) or "none", 2, 14)
    lines += row("cloths", f"{len(speakers)} say something about it", 2, 14)
    return lines, {
        **picked(aspect, "id title kind"),
        "answers": list(aspect.words),
        "rules": rules,
        "entries": speakers,
    }


def tell_options(found: Sequence[Option], knowledge: Knowledge, _units: System) -> Told:
    """One answer, or several of one word: where it belongs, and who asks for it or against it."""
    lines: list[str] = []
    data = []
    for option in found:
        aspect = knowledge.aspects[option.aspect]
        lines += ([""] if lines else []) + heading(f"{option.label} ({aspect.title})", 1)
        said = list(_said(option, knowledge))
        for who, claim, wanted in said[:_MOST]:
            how = "for" if wanted else "against"
            lines += row(f"{how} it", f"{who} ({claim.strength}): {claim.why}", 2, 14)
        if len(said) > _MOST:
            lines += row("and", f"{len(said) - _MOST} more", 2, 14)
        if not said:
            lines += wrap("It is a possible answer; nothing on file asks for it by name.", "  ")
        lines += row("belongs to", f"{aspect.id}: {aspect.title}", 2, 14)
        rows = [
            {"who": w, "wants": wanted, "why": c.why, "sources": list(c.sources)}
            for w, c, wanted in said
        ]
        data.append({**picked(option, "aspect word label"), "said": rows})
    return lines, {"answers": data}


def _said(option: Option, knowledge: Knowledge) -> Iterator[tuple[str, Claim, bool]]:
    """Every claim that names an answer, rules before cloths, and whether it wants it."""
    at = knowledge.aspects[option.aspect].words.index(option.word)
    speakers: list[tuple[str, tuple[Claim, ...]]] = [
        *((f"rule {rule.id}", rule.claims) for rule in knowledge.rules),
        *((entry.name, entry.claims) for entry in knowledge.entries.values()),
    ]
    for who, claims in speakers:
        for claim in claims:
            if claim.aspect == option.aspect and (wanted := _wants(claim, at)) is not None:
                yield who, claim, wanted


def _wants(claim: Claim, at: int) -> bool | None:
    """Whether a claim names an answer as good or rules it out; None where it only lets it be."""
    if claim.best is not None and round(claim.best) == at:
        return True
    if claim.span is not None:
        return None if claim.span[0] <= at <= claim.span[1] else False
    if not claim.mask >> at & 1:
        return None if claim.mask.bit_count() <= _FEW else False
    return True if claim.mask.bit_count() <= _FEW else None


def tell_trait(name: str, knowledge: Knowledge, _units: System) -> Told:
    """A trait: what it means, its levels, and the cloths that have it."""
    lines = heading(f"{name} (trait)", 1)
    lines += wrap(f"{knowledge.trait_meanings[name]}.", "  ")
    lines += row("levels", ", ".join(knowledge.traits[name]), 2, 10)
    held = [e.id for e in knowledge.entries.values() if e.traits.get(name, (0, 0))[1] > 0]
    lines += row("cloths", ", ".join(held) or "none", 2, 10)
    return lines, {
        "id": name,
        "means": knowledge.trait_meanings[name],
        "levels": list(knowledge.traits[name]),
        "entries": held,
    }
