"""Tells what was found out about a cloth of unknown fibre, with what to try next and how safely."""

from __future__ import annotations

from itertools import combinations

from advisor.answer.model.identified import (
    Identified,
    ToldFibre,
    ToldFinding,
    ToldOutcome,
    ToldRuledOut,
    ToldSafety,
    ToldSeen,
    ToldTrial,
)
from advisor.answer.model.told import ToldSource
from advisor.answer.wording import mix_text
from advisor.identify.eliminate import LABEL, Finding, Proposal, Seen, proposals
from advisor.knowledge.model import Knowledge, Mix
from advisor.units import System
from advisor.units.sentences import render as in_units

SCHEMA = "advisor.identify/1"
MOST_MIXES = 24
"""Pairs of a warp and a weft that are still written one by one: estimate."""


def _care(kind: str, sources: str, *sentences: str) -> tuple[str, tuple[str, ...], str]:
    return kind, tuple(sources.split()), " ".join(sentences)


FLAME = (
    _care(
        "fire",
        "burn-test-sheet",
        "Practised adults only, never with children or animals about.",
        "Asking the seller burns nothing: do that first.",
    ),
    _care(
        "fire",
        "burn-test-sheet",
        "A snip of {1 cm} in metal tweezers, over a metal dish with water or soda, more water at",
        "hand, outdoors or well aired; nothing near that burns, hair tied back, sleeves up, and",
        "no acetone or other solvent in the room.",
    ),
    _care(
        "burn",
        "fibre-test-page burn-test-sheet",
        "Drips of a synthetic stick to the skin and burn deep: never hold the snip in the",
        "fingers, and let it go cold before you press it.",
    ),
    _care(
        "health",
        "burn-test-sheet common-practice",
        "Do not lean over the smoke. If it smells of chlorine, put it out and leave it.",
    ),
)
SOLVENT = (
    _care(
        "fire",
        "burn-test-sheet common-practice",
        "Acetone and its vapour catch fire: no flame, iron or hot lamp in the room, open the",
        "window, close the bottle, let the snip dry outdoors. Never at the table where you burn.",
    ),
    _care(
        "damage",
        "fibre-test-page",
        "Only ever on a snip cut off from where nobody sees: acetone eats acetate and vinyl.",
        "Acids, bleach and other solvents are for laboratories.",
    ),
)
SAFETY = {"flame": FLAME, "solvent": SOLVENT}
"""How to do what can hurt: the kind of harm, the sources, and the sentence."""


def identified(
    findings: dict[str, Finding],
    knowledge: Knowledge,
    units: System = "metric",
    refused: tuple[str, ...] = (),
) -> Identified:
    """Everything found out about a cloth, for each of its threads that was looked at apart."""
    threads = tuple(_thread(name, found, knowledge, refused) for name, found in findings.items())
    mixes = cloth_mixes(findings)
    kinds = {trial.kind for one in threads for trial in (one.next, one.gentler) if trial}
    kinds |= {  # what was tried may be tried again, until only one fibre is left
        knowledge.observations[s.test].kind
        for f in findings.values()
        for s in f.seen
        if len(f.remain) != 1
    }
    cares = tuple(
        ToldSafety(kind, in_units(text, units), sources)
        for about, rows in SAFETY.items()
        if about in kinds
        for kind, sources, text in rows
    )
    cited = [text for one in threads for text in one.sources]
    cited += [text for care in cares for text in care.sources]
    return Identified(
        SCHEMA,
        units,
        threads,
        tuple(dict(mix) for mix in mixes),
        any(one.contradiction for one in threads),
        min((knowledge.fibres[f].limit for mix in mixes for f, _ in mix), default=None),
        cares,
        _works(cited, knowledge),
    )


def _works(cited: list[str], knowledge: Knowledge) -> tuple[ToldSource, ...]:
    """The works that are cited, by id; of each alone what it is."""
    works = (
        knowledge.sources.get(id_) for id_ in sorted({text.split(" ", 1)[0] for text in cited})
    )
    return tuple(ToldSource(work.id, work.citation, work.kind) for work in works if work)


def cloth_mixes(findings: dict[str, Finding]) -> tuple[Mix, ...]:
    """What the cloth may be: every pair of its warp and its weft, or the whole as it is."""
    if any(not finding.mixes() for finding in findings.values()):
        return ()
    sets = [finding.mixes() for finding in findings.values()]
    if len(sets) == 1:
        return sets[0]
    pairs = {
        tuple(sorted({f for mix in (one, other) for f, _ in mix}))
        for one in sets[0]
        for other in sets[1]
    }
    if len(pairs) > MOST_MIXES:  # the tenderest decides all the same
        single = {fibre for pair in pairs for fibre in pair}
        return tuple(((fibre, None),) for fibre in sorted(single))
    return tuple(tuple((fibre, None) for fibre in pair) for pair in sorted(pairs))


def _thread(
    name: str, finding: Finding, knowledge: Knowledge, refused: tuple[str, ...]
) -> ToldFinding:
    order = list(knowledge.observations)
    seen = sorted(finding.seen, key=lambda s: order.index(s.test))
    tests = proposals(finding, knowledge.observations, refused)
    best = tests[0] if tests else None
    gentle = next((t for t in tests if knowledge.observations[t.test].kind not in SAFETY), None)
    fibres = [knowledge.fibres[fibre] for fibre in finding.remain]
    return ToldFinding(
        name=name,
        saw=tuple(_seen(s, knowledge) for s in seen),
        remain=tuple(ToldFibre(fibre.id, fibre.name, fibre.group) for fibre in fibres),
        blend=dict(finding.blend),
        ruled_out=tuple(
            ToldRuledOut(
                fibre,
                tuple(f"{s.test}={s.answer}" for s in against),
                fibre in finding.weak,
                knowledge.fibres[fibre].name,
            )
            for fibre, against in finding.out.items()
        ),
        contradiction=tuple(_seen(s, knowledge) for s in finding.clash),
        blends=_blends(finding, knowledge),
        next=_trial(best, knowledge),
        gentler=None if gentle == best else _trial(gentle, knowledge),
        sources=tuple(sorted({src for s in finding.seen for src in _sources(s, knowledge)})),
        mix=mix_text(finding.blend, knowledge) if finding.blend else "",
        first=knowledge.observations[LABEL].how if all(s.test != LABEL for s in seen) else "",
    )


def _seen(seen: Seen, knowledge: Knowledge) -> ToldSeen:
    about = knowledge.observations[seen.test]
    note = "" if seen.mix or seen.test == LABEL else about.answers[seen.answer].note
    hint = seen.test != LABEL and not about.answers[seen.answer].fibres
    return ToldSeen(seen.test, about.title, seen.answer, note, hint)


def _sources(seen: Seen, knowledge: Knowledge) -> tuple[str, ...]:
    answers = knowledge.observations[seen.test].answers
    return answers[seen.answer].sources if seen.answer in answers else ()


def _blends(finding: Finding, knowledge: Knowledge) -> tuple[str, ...]:
    """Which kinds of fibre together would explain a contradiction, those that are sold so."""
    groups = {_groups((a, b), knowledge) for a, b in finding.pairs}
    sold = {
        _groups((a, b), knowledge)
        for entry in knowledge.entries.values()
        for mix in entry.mixes
        for (a, _), (b, _) in combinations(mix, 2)
    }
    return tuple(" with ".join(pair) for pair in sorted(groups & sold or groups))


def _groups(fibres: tuple[str, str], knowledge: Knowledge) -> tuple[str, ...]:
    return tuple(sorted(knowledge.fibres[f].group for f in fibres))


def _trial(proposal: Proposal | None, knowledge: Knowledge) -> ToldTrial | None:
    if proposal is None:
        return None
    about = knowledge.observations[proposal.test]
    outcomes = tuple(
        ToldOutcome(words, kept, tuple(knowledge.fibres[fibre].name for fibre in kept))
        for words, kept in proposal.outcomes
    )
    said = about.title, about.kind, about.ask, about.how
    return ToldTrial(about.id, *said, proposal.worst, outcomes)
