"""An unknown fibre step by step: what was seen stands in the address, and can be gone back to."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.wording import degrees
from advisor.errors import InputError
from advisor.identify.eliminate import LABEL, Finding, Seen, proposals
from advisor.identify.eliminate import identify as eliminate
from advisor.identify.observed import WHOLE, read_answer, read_label, read_saw
from advisor.knowledge.model import COLD, Knowledge
from advisor.knowledge.observations import Observation
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of
from advisor.render.identify_talk import FIRST
from advisor.render.identify_text import CAVEAT, SAFETY, SAME, cloth_mixes, told
from advisor.units.sentences import render as sentence

MOST_SEEN = 60
MOST_LETTERS = 300


@dataclass(frozen=True, slots=True)
class Question:
    """What to look at next: how to do it safely, and the answers there are."""

    test: str
    ask: str
    how: str
    answers: tuple[str, ...]
    label: bool
    cares: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """What an address says: what was seen, what was left out, and what she will not do."""

    saw: tuple[str, ...]
    skip: tuple[str, ...]
    refuse: tuple[str, ...]


def identify(request: Request) -> Response:
    """What remains after all that was seen, and what to look at next."""
    desk, asked = desk_of(request), _asked(request)
    known = desk.known.told("metric")
    about: dict[str, Any] = {"title": "What may it be made of?", "asked": asked}
    try:
        seen = _seen(asked.saw, known)
    except InputError as error:
        blank = {"part": None, "question": None, "found": None, "notes": ()}
        slips = slips_of(error, desk)
        return page(request, "identify.html", {**about, **blank, "slips": slips}, 400)
    finding = eliminate(seen, list(known.fibres), known.observations)
    data = told({WHOLE: finding}, known, "metric", asked.refuse)
    limit = data["iron_limit_c"]
    about |= {
        "part": data["threads"][0],
        "found": data,
        "limit": "" if limit is None else _limit(limit),
        "question": _next(finding, asked, known),
        "notes": (CAVEAT,),
        "same": SAME,
        "projects": desk.folder.names(),
        "saw": [
            (known.observations[one.test].title, one.answer, _without(asked, text))
            for text, one in zip(asked.saw, seen, strict=True)
        ],
    }
    return page(request, "identify.html", about)


def into(request: Request, fields: Fields) -> Response:
    """Write what remains into a cloth of a project."""
    from advisor.project.fibres_into import write_fibres

    desk = desk_of(request)
    name, fabric = fields.get("project", ""), fields.get("fabric", "").strip()
    saw = [line for line in fields.get("saw", "").splitlines() if line][:MOST_SEEN]
    finding = eliminate(_seen(saw, desk.known), list(desk.known.fibres), desk.known.observations)
    mixes = cloth_mixes({WHOLE: finding})
    if not mixes:
        raise InputError("what was seen contradicts itself; nothing was written")
    write_fibres(desk.folder.path(name), fabric, mixes, desk.known)
    return see(at("project", name))


def _asked(request: Request) -> Asked:
    query = request.query_params
    saw = [text for text in query.getlist("saw") if text.strip()]
    label = query.get("label", "").strip()
    if label:
        saw.append(f"{LABEL}={label}")
    every = [x[:MOST_LETTERS] for x in dict.fromkeys(saw)][:MOST_SEEN]
    refuse = tuple(kind for kind in query.getlist("refuse") if kind in SAFETY)
    return Asked(tuple(every), tuple(query.getlist("skip")[:MOST_SEEN]), refuse)


def _seen(saw: Sequence[str], known: Knowledge) -> list[Seen]:
    found = []
    for text in saw:
        _, test, answer = read_saw(text, known)
        if test == LABEL:
            found.append(Seen(test, answer, read_label(answer, known)))
        else:
            found.append(Seen(test, read_answer(known.observations[test], answer)))
    return found


def _next(finding: Finding, asked: Asked, known: Knowledge) -> Question | None:
    """First what is only looked at, then the gentlest test that parts what remains."""
    over = {*asked.skip, *(s.test for s in finding.seen)}
    for test in FIRST:
        if test not in over:
            return _question(known.observations[test])
    if finding.blend or len(finding.remain) < 2:
        return None
    left = proposals(finding, known.observations, (*asked.refuse, *over))
    left.sort(key=lambda p: known.observations[p.test].kind in SAFETY)
    return _question(known.observations[left[0].test]) if left else None


def _question(about: Observation) -> Question:
    cares = tuple(sentence(text, "metric") for _, _, text in SAFETY.get(about.kind, ()))
    label = about.id == LABEL
    answers = () if label else tuple(about.answers)
    return Question(about.id, about.ask, about.how, answers, label, cares)


def _limit(celsius: float) -> str:
    return "no iron at all" if celsius <= COLD else f"no iron above {degrees(celsius, 'metric')}"


def _without(asked: Asked, text: str) -> list[tuple[str, str]]:
    """The query without one of the things that were seen."""
    kept = [("saw", saw) for saw in asked.saw if saw != text]
    return [*kept, *(("skip", x) for x in asked.skip), *(("refuse", x) for x in asked.refuse)]
