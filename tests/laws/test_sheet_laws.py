"""The text and the data of an answer say the same, on garments drawn at random."""

from __future__ import annotations

import re
from typing import Any

from hypothesis import given, settings

from advisor.answer.pipeline import answer
from advisor.project.garment import Garment
from advisor.render.lines import FABRIC_LINES, GARMENT_LINES, NO_WAY, SEAM_LINES, phrase
from advisor.render.printed.detailed import render_detailed
from tests.laws.engine_garments import garments, known
from tests.told import data_of, written

law = settings(max_examples=25, deadline=None, derandomize=True, database=None)
LABELS = [label for label, _ in (*FABRIC_LINES, *SEAM_LINES, *GARMENT_LINES)]
ROW = re.compile(rf"^  ({'|'.join(sorted(LABELS, key=len, reverse=True))}) +(\S.*)$")
MARKS = re.compile(r" \[[\w,* ]+\]$")


def flat(text: str) -> str:
    """A text without its line breaks."""
    return " ".join(text.split())


def settings_shown(text: str, places: list[str]) -> list[tuple[str, str]]:
    """Each line of settings on a sheet as (place, what it says), its continuations joined."""
    rows: list[tuple[str, str]] = []
    place = ""
    for line in text.splitlines():
        named = [name for name in places if re.match(rf"{re.escape(name)}(: | \()", line)]
        if named:
            place = named[0]
        elif line == "THE WHOLE GARMENT":
            place = "coat"
        elif line.isupper():
            place = ""
        elif place and (found := ROW.match(line)):
            rows.append((place, found[2]))
        elif rows and rows[-1][1] and line.startswith(" " * 11):
            rows[-1] = (place, f"{rows[-1][1]} {line.strip()}")
        else:
            rows.append((place, ""))
    return [(where, MARKS.sub("", said)) for where, said in rows if said]


@law
@given(garments())
def test_every_setting_on_the_sheet_is_a_verdict_of_the_data(garment: Garment) -> None:
    """What a line sets is what the data say of that place, word for word, and nothing else.

    How a place is made is its method's own sentence, which the data hold too. Where neither
    washing nor dry cleaning is left the line says so of both at once, or whose word it is that
    neither is needed; those are all in a line that is no verdict's own text.
    """
    told = answer(garment, known())
    text = render_detailed(told, everything=True)
    places = [*garment.cloths, *(seam.name for seam in garment.seams)]
    shown = settings_shown(text, places)
    assert shown, text
    for place, said in shown:
        verdicts = [v for v in told.verdicts if v.place == place]
        phrases = {phrase(v) for v in verdicts} | {v.text for v in verdicts}
        phrases |= {seam.made for seam in told.seams if seam.name == place}
        if {"do not wash", "do not dry clean"} <= {v.text for v in verdicts}:
            phrases.add(NO_WAY)
            phrases |= {
                f"(neither is needed; {said.who}: {said.why.rstrip('.')})"
                for verdict in verdicts
                if verdict.aspect == "care.wash"
                for said in verdict.because
            }
        rest = said
        for known_phrase in sorted(filter(None, phrases), key=len, reverse=True):
            rest = rest.replace(known_phrase, "")
        assert not rest.strip("; "), f"{place}: {said!r} leaves {rest!r}"


@law
@given(garments())
def test_every_conflict_caution_and_unknown_of_the_data_is_on_the_sheet(garment: Garment) -> None:
    """No clash is only in the data, and the three cheapest remedies of each are printed with it."""
    told = answer(garment, known())
    data, text = written(told), flat(render_detailed(told, everything=True))
    for conflict in data["conflicts"]:
        assert flat(f"{conflict['place']}: ") in text
        assert flat(conflict["message"]) in text
        for remedy in conflict["remedies"][:3]:
            assert flat(f"{remedy['text']} {remedy['then']}") in text
    assert bool(data["conflicts"]) != ("Nothing here contradicts itself" in text)
    for caution in data["cautions"]:
        assert flat(caution["text"]) in text
    for unknown in data["unknowns"]:
        assert flat(f"{unknown['fact']}: {unknown['effect']}.") in text


@law
@given(garments())
def test_every_source_that_is_named_is_listed(garment: Garment) -> None:
    """Each source behind a claim, a caution or a remedy stands in the list, and no other."""
    data = data_of(garment, known())
    cited = set(_sources_in({key: value for key, value in data.items() if key != "sources"}))
    assert {s["id"] for s in data["sources"]} == {text.split(" ", 1)[0] for text in cited}


def _sources_in(data: Any) -> list[str]:
    if isinstance(data, dict):
        named = {k for k in data if k == "sources" or k.endswith("_sources")}
        own = [text for k in sorted(named) for text in data[k]]
        return [*own, *(s for k, v in data.items() if k not in named for s in _sources_in(v))]
    if isinstance(data, list):
        return [s for part in data for s in _sources_in(part)]
    return []
