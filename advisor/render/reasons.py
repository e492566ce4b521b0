"""The tree of reasons of one verdict: what was said, on what facts, on whose word."""

from __future__ import annotations

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldClaim, ToldVerdict
from advisor.answer.wording import degrees
from advisor.errors import InputError, Problem, nearest
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.render.layout import wrap


def pick_verdict(report: Answer, place: str, aspect: str, knowledge: Knowledge) -> ToldVerdict:
    """The verdict that somebody asks about.

    Raises:
        InputError: no such place or aspect; with the nearest names.
    """
    places = list(dict.fromkeys(v.place for v in report.verdicts))
    if place not in places:
        known = nearest(place, places)
        text = f"no place '{place}' in this garment"
        raise InputError(Problem(text, None, "one of " + ", ".join(places), known))
    if aspect not in knowledge.aspects:
        known = nearest(aspect, list(knowledge.aspects))
        raise InputError(Problem(f"unknown aspect '{aspect}'", None, None, known))
    found = [v for v in report.verdicts if v.place == place and v.aspect == aspect]
    if not found:
        asked = [v.aspect for v in report.verdicts if v.place == place]
        text = f"nobody says anything about {aspect} at {place}"
        raise InputError(Problem(text, None, "one of " + ", ".join(asked)))
    return found[0]


def render_reasons(verdict: ToldVerdict, knowledge: Knowledge) -> list[str]:
    """Draw the tree: the answer, then every claim with its facts, sources and disagreements."""
    title = knowledge.aspects[verdict.aspect].title
    lines = wrap(f"{verdict.place}, {title}: {verdict.text}")
    for claim in verdict.because:
        lines += _claim(claim, "because", verdict, knowledge)
    for claim in verdict.given_up:
        lines += _claim(claim, "given up", verdict, knowledge)
    return lines


def _claim(claim: ToldClaim, label: str, verdict: ToldVerdict, knowledge: Knowledge) -> list[str]:
    first = f"  {label} {claim.who}: {claim.says} ({claim.strength}, {claim.rule})"
    if claim.to:
        first += f", gives way to {' and '.join(claim.to)}"
    lines = wrap(first, "", "      ")
    if claim.why:
        lines += wrap(claim.why, "      ")
    for fact in claim.facts:
        certain = "" if claim.certain else " (may be)"
        lines += wrap(f"given {fact.who}: {fact.fact} {fact.value}{certain}", "      ")
    for text in claim.sources:
        id_, _, place = text.partition(" ")
        source = knowledge.sources[id_]
        seen = "" if source.read in ("whole", "part") else f", read: {source.read}"
        at = f", {place}" if place else ""
        lines += wrap(f"on the word of {source.citation}{at} ({source.kind}{seen})", "      ")
    limits = claim.strength == "must" and claim.says.startswith("at most")
    if verdict.aspect == LIMIT_ASPECT and claim.rule.startswith("fibre ") and limits:
        lines += _published(claim.rule.removeprefix("fibre "), knowledge)
    return lines


def _published(fibre: str, knowledge: Knowledge) -> list[str]:
    """Every published ceiling of a fibre, so that a disagreement is seen."""
    lines: list[str] = []
    for ceiling in sorted(knowledge.fibres[fibre].ceilings, key=lambda c: c.max):
        standing = "counts" if ceiling.good else "of weaker standing"
        note = f", {ceiling.note}" if ceiling.note else ""
        most = degrees(ceiling.max, knowledge.system)
        lines += wrap(
            f"published {most}, {standing}: {', '.join(ceiling.sources)}{note}",
            "        ",
        )
    return lines
