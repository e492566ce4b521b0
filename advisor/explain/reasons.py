"""The tree of reasons of one verdict: what was said, on what facts, on whose word."""

from __future__ import annotations

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldClaim, ToldVerdict
from advisor.answer.wording import degrees
from advisor.errors import InputError, Problem, nearest, shown
from advisor.explain.typed import aspect_names, aspects_named, holding, listed, places_named, same
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge
from advisor.render.layout import wrap


def pick_verdicts(
    report: Answer, place: str, aspect: str, knowledge: Knowledge
) -> tuple[ToldVerdict, ...]:
    """The verdicts that somebody asks about, under any name that is printed.

    Raises:
        InputError: no such place or aspect, or nothing is said there; with what could be meant.
    """
    places = list(dict.fromkeys(v.place for v in report.verdicts))
    here = places_named(place, report, knowledge)
    if not here:
        known = _other(place, places)
        text = f"no place {shown(place)} in this garment"
        raise InputError(Problem(text, None, f"one of {listed([*places, 'garment'])}", known))
    asked = aspects_named(aspect, knowledge)
    if not asked:
        known = _other(aspect, aspect_names(knowledge))
        expected = "a word of the sheet such as 'iron' or 'needle'; `advisor explain aspects` lists"
        text = f"nothing is decided that is called {shown(aspect)}"
        raise InputError(Problem(text, None, f"{expected} them all", known))
    found = [v for a in asked for v in report.verdicts if v.place in here and v.aspect == a]
    if not found:
        raise _nobody(report, here, aspect, asked, knowledge)
    return tuple(found)


def _other(word: str, names: list[str]) -> tuple[str, ...]:
    """The names that hold the word, else the likest; never the same one again."""
    found = holding(word, names)[:3] or nearest(word, names)
    return tuple(name for name in found if same(name) != same(word))


def _nobody(
    report: Answer, here: tuple[str, ...], word: str, asked: tuple[str, ...], knowledge: Knowledge
) -> InputError:
    """At which places this is decided instead, or else what is at these."""
    text = f"nothing is said of {shown(word)} at {' and '.join(here)}"
    where = list(dict.fromkeys(v.place for v in report.verdicts if v.aspect in asked))
    said = [knowledge.aspects[v.aspect].title for v in report.verdicts if v.place in here]
    if where:
        text += f"; it is decided at {listed(where)}"
        return InputError(Problem(text))
    return InputError(Problem(text, None, f"one of {listed(list(dict.fromkeys(said)))}"))


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
