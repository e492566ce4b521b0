"""Two cloths for one role side by side: the same garment answered with each, and what differs."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace
from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.model.answer import Answer
from advisor.errors import InputError, Problem, nearest
from advisor.knowledge.model import Knowledge
from advisor.page.desk import Desk, Read
from advisor.page.projects import opened
from advisor.page.shown import desk_of, page, slips_of
from advisor.project.garment import Garment
from advisor.project.names import LONGEST_PHRASE
from advisor.render.lines import FABRIC_LINES, GARMENT_LINES, SEAM_LINES, by_place, line_parts
from advisor.render.plain import without_commands
from advisor.render.printed.parts import degree

NOW = "as it is now"
Lines = Sequence[tuple[str, tuple[str, ...]]]


class Differs(Struct, frozen=True):
    """A line in which two answers differ: where it stands, what it is, and what each says."""

    place: str
    label: str
    texts: tuple[str, str]


def compare(request: Request) -> Response:
    """One cloth of a project as it is, or another, beside another still."""
    read, told, about = opened(request, "compare")
    desk, query = desk_of(request), request.query_params
    role, one, other = (query.get(key, "").strip() for key in ("cloth", "one", "other"))
    about |= {
        "cloths": tuple(read.garment.cloths),
        "asked": {"cloth": role, "one": one, "other": other, "units": query.get("units", "")},
        "rows": (),
        "same": 0,
        "heads": (),
        "clashes": (),
    }
    if not other:
        return page(request, "compare.html", about)
    try:
        answers = [_with(desk, read, told, role, phrase) for phrase in (one, other)]
    except InputError as error:
        slips = slips_of(error, desk)
        return page(request, "compare.html", {**about, "slips": slips}, 400)
    rows, same = differences(answers[0], answers[1], role)
    about |= {
        "rows": rows,
        "same": same,
        "heads": (one or NOW, other),
        "clashes": [[(c, degree(c)) for c in answer.conflicts] for answer in answers],
    }
    return page(request, "compare.html", about)


def _with(desk: Desk, read: Read, told: Answer, role: str, phrase: str) -> Answer:
    """The answer with another cloth in a role; with none, as it is."""
    garment = read.garment
    if role not in garment.cloths:
        names = tuple(garment.cloths)
        raise InputError(Problem("the project has no such cloth", None, None, nearest(role, names)))
    if not phrase:
        return told
    if len(phrase) > LONGEST_PHRASE:
        raise InputError(f"a cloth has at most {LONGEST_PHRASE} letters")
    changed = with_cloth(garment, role, phrase, desk.known)
    return desk.answer_to(changed, ("compare", read.mark, role, phrase))


def with_cloth(garment: Garment, role: str, phrase: str, known: Knowledge) -> Garment:
    """A garment with another cloth in one role; how wide that one lies nobody has said yet.

    Raises:
        InputError: the phrase is not understood.
    """
    from advisor.project.quick import quick_garment

    found = next(iter(quick_garment([phrase], known).cloths.values()))
    named = replace(found, name=role, colour=garment.cloths[role].colour)
    bolts = {name: bolt for name, bolt in garment.plan.bolts.items() if name != role}
    return replace(
        garment,
        cloths={name: named if name == role else old for name, old in garment.cloths.items()},
        plan=replace(garment.plan, bolts=bolts),
    )


def differences(one: Answer, other: Answer, role: str) -> tuple[tuple[Differs, ...], int]:
    """Every line that differs wherever the cloth is, and how many lines are the same."""
    first, then = _lines(one, role), _lines(other, role)
    keys = list(dict.fromkeys([*first, *then]))
    found = [Differs(*key, (first.get(key, ""), then.get(key, ""))) for key in keys]
    rows = tuple(row for row in found if row.texts[0] != row.texts[1])
    return rows, len(found) - len(rows)


def _lines(told: Answer, role: str) -> dict[tuple[str, str], str]:
    """What is told of a cloth, of every place that it goes into, and of the whole."""
    verdicts = by_place(told)
    found = dict(_bought(told, role))
    found |= _of(role, FABRIC_LINES, verdicts.get(("fabric", role), {}))
    for seam in told.seams:
        if role in seam.layers:
            iron = [i.text for i in told.irons if (i.scope, i.place) == ("seam", seam.name)]
            found[seam.name, "iron"] = "; ".join(iron)
            found |= _of(seam.name, SEAM_LINES, verdicts.get(("seam", seam.name), {}))
            if seam.built:
                found[seam.name, "cut"] = seam.built.band_says
                found[seam.name, "take care"] = " ".join(seam.built.build_warns)
    whole = next((v for (scope, _), v in verdicts.items() if scope == "garment"), {})
    found |= _of("the whole", GARMENT_LINES, whole)
    for unknown in told.unknowns:
        if unknown.fact.startswith(role):
            found["not known", unknown.fact] = without_commands(unknown.effect)
    return {key: text for key, text in found.items() if text}


def _of(place: str, lines: Lines, verdicts: Mapping[str, object]) -> dict[tuple[str, str], str]:
    return {
        (place, label): ", ".join(text for text, _ in line_parts(verdicts, aspects))  # type: ignore[arg-type]
        for label, aspects in lines
    }


def _bought(told: Answer, role: str) -> list[tuple[tuple[str, str], str]]:
    rows = [row for row in told.cloth or () if row.fabric == role]
    made = [layer.text for layer in told.layers if layer.name == role]
    found = [((role, "is"), text) for text in made]
    return found + [((role, "buy"), row.buy or row.wrong) for row in rows]
