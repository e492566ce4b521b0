"""What is told of a cloth of unknown fibre: as plain data (`advisor.identify/1`) and as lines."""

from __future__ import annotations

from itertools import combinations
from typing import Any

from advisor.answer import wording
from advisor.identify.eliminate import LABEL, Finding, Proposal, Seen, proposals
from advisor.knowledge.model import COLD, Knowledge
from advisor.knowledge.observations import Observation
from advisor.records import picked
from advisor.render.layout import heading, row, wrap
from advisor.units import System
from advisor.units.sentences import render as in_units

SCHEMA = "advisor.identify/1"
MOST_MIXES = 24
"""Pairs of a warp and a weft that are still written one by one: estimate."""
THREADS = {"": "the cloth", "warp": "the warp", "weft": "the weft"}


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
CAVEAT = (
    "Blends, dyes and finishes mislead: burn warp and weft apart, and believe two tests that agree "
    "before you believe one."
)
SAME = (
    "Nothing that is safe at a table parts these; handle the cloth as the tenderest of them, or "
    "ask a laboratory."
)


def told(
    findings: dict[str, Finding],
    knowledge: Knowledge,
    units: System = "metric",
    refused: tuple[str, ...] = (),
) -> dict[str, Any]:
    """Everything found out about a cloth, for each of its threads that was looked at apart."""
    parts = [_part(name, finding, knowledge, refused) for name, finding in findings.items()]
    mixes = cloth_mixes(findings)
    kinds = {t["kind"] for p in parts for t in (p["next"], p["gentler"]) if t}
    kinds |= {  # what was tried may be tried again, until only one fibre is left
        knowledge.observations[s.test].kind
        for f in findings.values()
        for s in f.seen
        if len(f.remain) != 1
    }
    cautions = [
        {"kind": kind, "text": in_units(text, units), "sources": list(sources)}
        for about in ("flame", "solvent")
        if about in kinds
        for kind, sources, text in SAFETY[about]
    ]
    limit = min((knowledge.fibres[f].limit for mix in mixes for f, _ in mix), default=None)
    data: dict[str, Any] = {
        "schema": SCHEMA,
        "units": units,
        "threads": parts,
        "may_be": [dict(mix) for mix in mixes],
        "contradicted": any(p["contradiction"] for p in parts),
        "iron_limit_c": limit,
        "cautions": cautions,
    }
    cited = [s for p in parts for s in p["sources"]] + [s for c in cautions for s in c["sources"]]
    ids = dict.fromkeys(text.split(" ", 1)[0] for text in cited)
    data["sources"] = [
        picked(knowledge.sources[id_], "id citation kind")
        for id_ in sorted(ids)
        if id_ in knowledge.sources
    ]
    return data


def cloth_mixes(findings: dict[str, Finding]) -> tuple[Any, ...]:
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


def _part(
    name: str, finding: Finding, knowledge: Knowledge, refused: tuple[str, ...]
) -> dict[str, Any]:
    order = list(knowledge.observations)
    seen = sorted(finding.seen, key=lambda s: order.index(s.test))
    tests = proposals(finding, knowledge.observations, refused)
    best = tests[0] if tests else None
    gentle = next((t for t in tests if knowledge.observations[t.test].kind not in SAFETY), None)
    return {
        "name": name,
        "saw": [_seen(s, knowledge) for s in seen],
        "remain": [picked(knowledge.fibres[fibre], "id name group") for fibre in finding.remain],
        "blend": dict(finding.blend),
        "ruled_out": [
            {
                "fibre": f,
                "by": [f"{s.test}={s.answer}" for s in against],
                "memory_only": f in finding.weak,
            }
            for f, against in finding.out.items()
        ],
        "contradiction": [_seen(s, knowledge) for s in finding.clash],
        "blends": _blends(finding, knowledge),
        "next": _test(best, knowledge),
        "gentler": None if gentle == best else _test(gentle, knowledge),
        "sources": sorted({src for s in finding.seen for src in _sources(s, knowledge)}),
    }


def _seen(seen: Seen, knowledge: Knowledge) -> dict[str, Any]:
    about = knowledge.observations[seen.test]
    note = "" if seen.mix or seen.test == LABEL else about.answers[seen.answer].note
    return {
        "test": seen.test,
        "title": about.title,
        "answer": seen.answer,
        "note": note,
        "hint": seen.test != LABEL and not about.answers[seen.answer].fibres,
    }


def _sources(seen: Seen, knowledge: Knowledge) -> tuple[str, ...]:
    answers = knowledge.observations[seen.test].answers
    return answers[seen.answer].sources if seen.answer in answers else ()


def _blends(finding: Finding, knowledge: Knowledge) -> list[str]:
    """Which kinds of fibre together would explain a contradiction, those that are sold so."""
    groups = {_groups((a, b), knowledge) for a, b in finding.pairs}
    sold = {
        _groups((a, b), knowledge)
        for entry in knowledge.entries.values()
        for mix in entry.mixes
        for (a, _), (b, _) in combinations(mix, 2)
    }
    return [" with ".join(pair) for pair in sorted(groups & sold or groups)]


def _groups(fibres: tuple[str, str], knowledge: Knowledge) -> tuple[str, ...]:
    return tuple(sorted(knowledge.fibres[f].group for f in fibres))


def _test(proposal: Proposal | None, knowledge: Knowledge) -> dict[str, Any] | None:
    if proposal is None:
        return None
    about: Observation = knowledge.observations[proposal.test]
    return {
        "test": about.id,
        **picked(about, "title kind ask how"),
        "at_most": proposal.worst,
        "outcomes": [
            {"answers": list(words), "remain": list(kept)} for words, kept in proposal.outcomes
        ],
    }


def render(data: dict[str, Any], knowledge: Knowledge) -> str:
    """The answer as text: what remains, why, and what to try next."""
    units: System = "us" if data["units"] == "us" else "metric"
    lines: list[str] = heading("What it may be made of", 1)
    one = len(data["threads"]) == 1
    for part in data["threads"]:
        lines += _verdict_lines(part, knowledge, one=one)
    if data["iron_limit_c"] is not None:
        cold = data["iron_limit_c"] <= COLD
        limit = wording.degrees(data["iron_limit_c"], units)
        told_limit = "no iron at all" if cold else f"no iron above {limit}"
        lines += [
            "",
            *wrap(f"Until you know more: {told_limit}, as the tenderest that remains wants it."),
        ]
    for part in data["threads"]:
        lines += _evidence_lines(part, knowledge, one=one)
    if data["cautions"]:
        lines += heading("Take care")
        for caution in data["cautions"]:
            lines += row(caution["kind"], caution["text"], 2, 9)
    lines += ["", *wrap(CAVEAT)]
    if data["sources"]:
        lines += heading("Sources")
        lines += [
            x for s in data["sources"] for x in wrap(f"{s['citation']} ({s['kind']})", "  ", "    ")
        ]
    return "\n".join(lines) + "\n"


def _verdict_lines(part: dict[str, Any], knowledge: Knowledge, *, one: bool) -> list[str]:
    """What it may be."""
    lines = [] if one else heading(THREADS[part["name"]])
    if part["blend"]:
        mix = wording.mix_text(tuple(part["blend"].items()), knowledge)
        lines += wrap(f"The label's {mix} explains all of it.", "  ")
    elif part["contradiction"]:
        lines += _contradiction(part)
    else:
        lines += wrap(_remain_text(part["remain"]), "  ")
    return lines


def _evidence_lines(part: dict[str, Any], knowledge: Knowledge, *, one: bool) -> list[str]:
    """What it rests on, and what would tell more."""
    lines = (
        heading("Because" if one else f"{THREADS[part['name']]}: because") if part["saw"] else [""]
    )
    for seen in part["saw"]:
        hint = f" {seen['note']}" if seen["note"] else ""
        lines += wrap(f"{seen['title']}: {seen['answer']}.{hint}", "  saw  ")
    weak = [knowledge.fibres[r["fibre"]].name for r in part["ruled_out"] if r["memory_only"]]
    if weak:
        lines += wrap(f"On memory alone are ruled out: {', '.join(weak)}.", "  ")
    further = _next_lines(part, knowledge)
    return lines + (heading("Try next") + further if further else [])


def _contradiction(part: dict[str, Any]) -> list[str]:
    said = " and ".join(f"'{s['answer']}' ({s['title']})" for s in part["contradiction"])
    text = (
        f"These contradict each other: {said}. No one fibre does both, so it is a blend, or a "
        "finish or a slip misleads. Look at warp and weft apart, then try again."
    )
    lines = wrap(text, "  ")
    if 0 < len(part["blends"]) <= 12:
        lines += wrap(f"Together these would explain it: {'; '.join(part['blends'])}.", "  ")
    return lines


def _remain_text(remain: list[dict[str, Any]]) -> str:
    if len(remain) == 1:
        return f"Only {remain[0]['name']} remains."
    return f"{len(remain)} remain: {_names(remain)}."


def _names(remain: list[dict[str, Any]]) -> str:
    """The fibres, those of one kind together."""
    groups: dict[str, list[str]] = {}
    for fibre in remain:
        groups.setdefault(fibre["group"], []).append(fibre["name"])
    return "; ".join(", ".join(names) for names in groups.values())


def _next_lines(part: dict[str, Any], knowledge: Knowledge) -> list[str]:
    if part["contradiction"] or part["blend"] or len(part["remain"]) < 2:
        return []
    lines: list[str] = []
    if not any(s["test"] == LABEL for s in part["saw"]):
        lines += wrap(knowledge.observations[LABEL].how, "  first  ")
    if part["next"] is None:
        return lines + wrap(SAME, "  next  ")
    # What harms nobody stands first, though another test may part more.
    count, label = len(part["remain"]), "  next  "
    if part["gentler"]:
        lines += _test_lines(part["gentler"], label, count, knowledge)
        label = "  or, surer but not harmless:  "
    lines += _test_lines(part["next"], label, count, knowledge)
    return lines


def _test_lines(test: dict[str, Any], start: str, now: int, knowledge: Knowledge) -> list[str]:
    most = test["at_most"]
    gain = f"leaves at most {most} of {now}" if most < now else "may or may not part them"
    lines = wrap(f"{test['ask']} {test['how']} ({gain})", start, "        ")
    for outcome in test["outcomes"]:
        names = [knowledge.fibres[f].name for f in outcome["remain"]]
        more = f" and {len(names) - 6} more" if len(names) > 6 else ""
        lines += wrap(
            f"{' / '.join(outcome['answers'])}: {', '.join(names[:6])}{more}",
            "        - ",
            "          ",
        )
    return lines
