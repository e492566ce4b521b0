"""An unknown fibre step by step: what was seen stands in the address, and can be gone back to."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace
from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.identified import SAFETY, cloth_mixes, identified
from advisor.errors import InputError
from advisor.identify.eliminate import FIRST, LABEL, Finding, Seen, proposals
from advisor.identify.eliminate import identify as eliminate
from advisor.identify.observed import WHOLE, read_saw, seen_of
from advisor.knowledge.model import Knowledge
from advisor.knowledge.observations import Observation
from advisor.page.shown import Fields, at, desk_of, page, see, slips_of
from advisor.render.identify_text import CAVEAT, SAME, THREADS, iron_limit
from advisor.units.sentences import render as sentence

MOST_SEEN = 60
MOST_LETTERS = 300


class SightQuestion(Struct, frozen=True):
    """What to look at next: how to do it safely, and the answers there are."""

    test: str
    ask: str
    how: str
    answers: tuple[str, ...]
    label: bool
    cares: tuple[str, ...]


class SightsAsked(Struct, frozen=True):
    """What an address says: what was seen, what was left out, what she will not do, and of what."""

    saw: tuple[str, ...]
    skip: tuple[str, ...]
    refuse: tuple[str, ...]
    threads: str = WHOLE

    @property
    def lead(self) -> str:
        """What stands before an answer about the warp or the weft alone."""
        return f"{self.threads} " if self.threads else ""


def identify(request: Request) -> Response:
    """What remains after all that was seen, and what to look at next."""
    desk, asked = desk_of(request), _asked(request)
    known = desk.known.told("metric")
    about: dict[str, Any] = {"title": "What may it be made of?", "asked": asked, "parts": ()}
    try:
        seen = _seen(asked.saw, known)
    except InputError as error:
        return page(request, "identify.html", {**about, "slips": slips_of(error, desk)}, 400)
    findings = _findings(seen, asked.threads, known)
    told = identified(findings, known, "metric", asked.refuse)
    about |= {
        "parts": told.threads,
        "names": THREADS,
        "limit": iron_limit(told),
        "contradicted": told.contradicted,
        "question": _next(findings[asked.threads], asked, known),
        "notes": (CAVEAT,),
        "same": SAME,
        "projects": desk.folder.names(),
        "saw": [
            (
                f"{threads} {known.observations[one.test].title}".strip(),
                one.answer,
                _without(asked, text),
            )
            for text, (threads, one) in zip(asked.saw, seen, strict=True)
        ],
        "ways": [
            (threads, name, _query(replace(asked, threads=threads)))
            for threads, name in THREADS.items()
        ],
    }
    return page(request, "identify.html", about)


def into(request: Request, fields: Fields) -> Response:
    """Write what remains into a cloth of a project."""
    from advisor.project.fibres_into import write_fibres

    desk = desk_of(request)
    name, fabric = fields.get("project", ""), fields.get("fabric", "").strip()
    saw = [line for line in fields.get("saw", "").splitlines() if line][:MOST_SEEN]
    mixes = cloth_mixes(_findings(_seen(saw, desk.known), "", desk.known))
    if not mixes:
        raise InputError("what was seen contradicts itself; nothing was written")
    write_fibres(desk.folder.path(name), fabric, mixes, desk.known)
    return see(at("project", name))


def _asked(request: Request) -> SightsAsked:
    query = request.query_params
    saw = [text for text in query.getlist("saw") if text.strip()]
    label = query.get("label", "").strip()
    if label:
        saw.append(f"{LABEL}={label}")  # a label speaks of the whole cloth
    every = [x[:MOST_LETTERS] for x in dict.fromkeys(saw)][:MOST_SEEN]
    refuse = tuple(kind for kind in query.getlist("refuse") if kind in SAFETY)
    threads = query.get("threads", WHOLE)
    if threads not in THREADS:
        raise InputError("look at warp, at weft, or at the whole cloth")
    return SightsAsked(tuple(every), tuple(query.getlist("skip")[:MOST_SEEN]), refuse, threads)


def _seen(saw: Sequence[str], known: Knowledge) -> list[tuple[str, Seen]]:
    """What was seen, each with the threads that it was seen of."""
    found = []
    for text in saw:
        threads, test, answer = read_saw(text, known)
        found.append((threads, seen_of(known.observations[test], answer, known)))
    return found


def _findings(seen: Sequence[tuple[str, Seen]], now: str, known: Knowledge) -> dict[str, Finding]:
    """What remains of each; what was seen of the whole cloth holds of warp and weft too."""
    apart = {threads for threads, _ in seen if threads} | ({now} if now else set())
    names = [t for t in THREADS if t in apart] or [WHOLE]
    if not now and apart:
        names = [WHOLE, *names]
    return {
        name: eliminate(
            [one for threads, one in seen if threads in (name, WHOLE)],
            list(known.fibres),
            known.observations,
        )
        for name in names
    }


def _next(finding: Finding, asked: SightsAsked, known: Knowledge) -> SightQuestion | None:
    """First what is only looked at, then the gentlest test that parts what remains."""
    left_out = {x.removeprefix(asked.lead) for x in asked.skip}
    over = {*left_out, *(s.test for s in finding.seen)}
    for test in FIRST:
        if test not in over:
            return _question(known.observations[test])
    if finding.blend or len(finding.remain) < 2:
        return None
    left = proposals(finding, known.observations, (*asked.refuse, *over))
    left.sort(key=lambda p: known.observations[p.test].kind in SAFETY)
    return _question(known.observations[left[0].test]) if left else None


def _question(about: Observation) -> SightQuestion:
    cares = tuple(sentence(text, "metric") for _, _, text in SAFETY.get(about.kind, ()))
    label = about.id == LABEL
    answers = () if label else tuple(about.answers)
    return SightQuestion(about.id, about.ask, about.how, answers, label, cares)


def _without(asked: SightsAsked, text: str) -> list[tuple[str, str]]:
    """The query without one of the things that were seen."""
    return _query(replace(asked, saw=tuple(saw for saw in asked.saw if saw != text)))


def _query(asked: SightsAsked) -> list[tuple[str, str]]:
    """What an address says, as the pairs of its query."""
    return [
        *(("saw", x) for x in asked.saw),
        *(("skip", x) for x in asked.skip),
        *(("refuse", x) for x in asked.refuse),
        *([("threads", asked.threads)] if asked.threads else []),
    ]
