"""The sheet and the answer to a question as plain text: worst first, then what to set, then why.

It reads only the report; it decides nothing. Every line names its sources by number, and the
list at the end says what the numbers are. Colour is never needed to understand it.
"""

from __future__ import annotations

from typing import Any

from advisor.knowledge.model import Knowledge
from advisor.sheet.iron import render_iron
from advisor.sheet.layout import heading, row, wrap
from advisor.sheet.lines import (
    FABRIC_LINES,
    GARMENT_LINES,
    SEAM_LINES,
    by_place,
    deciders,
    line_parts,
)

Report = dict[str, Any]
_SEVERITY = {"injury": "CAN HURT", "damage": "RUINS CLOTH", "result": "WILL NOT WORK"}
_WEAK = frozenset({"memory", "estimate"})


class Numbers:
    """Numbers for sources, in the order in which they are first cited."""

    def __init__(self, report: Report, reasons: bool = False) -> None:
        self.reasons = reasons
        self.kinds = {s["id"]: s["kind"] for s in report["sources"]}
        self.citations = {s["id"]: s["citation"] for s in report["sources"]}
        self.used: dict[str, int] = {}

    def mark(self, sources: list[str]) -> str:
        """`[3, 7]`; one that rests on memory or an estimate alone is marked with a star."""
        ids = list(dict.fromkeys(text.split(" ", 1)[0] for text in sources))
        numbers = [str(self.used.setdefault(id_, len(self.used) + 1)) for id_ in ids]
        star = "*" if ids and all(self.kinds.get(i) in _WEAK for i in ids) else ""
        return f"[{','.join(numbers)}{star}]" if numbers else ""

    def lines(self) -> list[str]:
        """The list of the sources cited."""
        parts = [f"{n} {self.citations[id_]} ({self.kinds[id_]})" for id_, n in self.used.items()]
        return wrap(" · ".join(parts), "  ", "  ")


def render_sheet(report: Report, *, reasons: bool = False, title: str = "handling sheet") -> str:
    """The handling sheet of a project.

    Args:
        reasons: print under each line why it is so.
    """
    numbers = Numbers(report, reasons)
    lines = heading(f"{report['garment']}: {title}", 1)
    lines += _conflicts(report, numbers)
    lines += _cautions(report, numbers)
    places = by_place(report)
    lines += heading("Cloths: prepare, cut, mark")
    for layer in report["layers"]:
        lines += _cloth(layer, places, report, numbers)
    lines += heading("Seams")
    lines += _seams(report, places, numbers)
    lines += _garment(report, places, numbers)
    lines += _tests(report)
    lines += _unknowns(report)
    lines += _sources(numbers)
    return "\n".join(lines) + "\n"


def render_conflicts(report: Report) -> str:
    """The conflicts alone."""
    numbers = Numbers(report)
    lines = heading(report["garment"], 1) + _conflicts(report, numbers)
    if report["conflicts"]:
        lines += _sources(numbers)
    return "\n".join(lines) + "\n"


def render_iron_answer(report: Report, rows: list[dict[str, Any]], knowledge: Knowledge) -> str:
    """The iron across the layers of every place, with what can go wrong and burn."""
    numbers = Numbers(report)
    heat = {**report, "conflicts": [c for c in report["conflicts"] if c["aspect"].startswith("press.")],
            "cautions": [c for c in report["cautions"] if c["kind"] in ("burn", "fire")]}  # fmt: skip
    lines = heading(f"{report['garment']}: the iron across its layers", 1)
    lines += _conflicts(heat, numbers)
    lines += render_iron(rows, report, knowledge)
    lines += _cautions(heat, numbers)
    lines += _unknowns({**report, "unknowns": [u for u in report["unknowns"] if "limit_c" in u]})
    lines += _sources(numbers)
    return "\n".join(lines) + "\n"


def _conflicts(report: Report, numbers: Numbers) -> list[str]:
    lines = heading("What can go wrong")
    if not report["conflicts"]:
        return [*lines, *wrap("Nothing here contradicts itself. Test on scraps all the same.", "  ")]
    for i, conflict in enumerate(report["conflicts"], 1):
        first = f"{i:2} "
        marks = numbers.mark([s for b in conflict["because"] for s in b["sources"]])
        text = f"{conflict['place']}: {conflict['message']} {_SEVERITY[conflict['severity']]} {marks}"
        lines += wrap(text, first)
        for letter, remedy in zip("abcde", conflict["remedies"][:3], strict=False):
            start = "   do instead  " if letter == "a" else "   or          "
            lines += wrap(f"{remedy['text']} {remedy['then']}", start)
        if not conflict["remedies"]:
            lines += wrap("No remedy that we know cures this: change a cloth, or leave it out.",
                          "   ")  # fmt: skip
    return lines


def _cautions(report: Report, numbers: Numbers) -> list[str]:
    if not report["cautions"]:
        return []
    lines = heading("Take care")
    for caution in report["cautions"]:
        about = ", ".join(caution["about"])
        text = f"{caution['text']} ({about}) {numbers.mark(caution['sources'])}"
        lines += row(caution["kind"], text, 2, 8)
    return lines


def _cloth(
    layer: dict[str, Any], places: dict[Any, Any], report: Report, numbers: Numbers
) -> list[str]:
    verdicts = places.get(("fabric", layer["name"]), {})
    weight = _weight(layer, report["units"])
    lines = wrap(f"{layer['name']}: {layer['fabric'].replace('-', ' ')}, {layer['text']}{weight}")
    for label, aspects in FABRIC_LINES:
        text = _line(verdicts, aspects, numbers)
        if text:
            lines += row(label, text, 2, 9)
            lines += _reasons(verdicts, aspects, numbers)
    lines += _advice(report, "fabric", layer["name"], numbers)
    return lines


def _weight(layer: dict[str, Any], units: str) -> str:
    from advisor.units import show, show_range

    if not layer["weight"]:
        return ""
    low, high = layer["weight"]
    system = "us" if units == "us" else "metric"
    if low == high:
        return ", " + show("weight", low, system)  # type: ignore[arg-type]
    return f", weight taken as {show_range('weight', low, high, system)}"  # type: ignore[arg-type]


def _line(verdicts: dict[str, Any], aspects: tuple[str, ...], numbers: Numbers) -> str:
    """The phrases of a line, then the sources of all of them."""
    parts = line_parts(verdicts, aspects)
    if not parts:
        return ""
    sources = [s for _, v in parts for b in deciders(v) for s in b["sources"]]
    return f"{'; '.join(text for text, _ in parts)} {numbers.mark(sources)}"


def _reasons(verdicts: dict[str, Any], aspects: tuple[str, ...], numbers: Numbers) -> list[str]:
    """Why a line is so: the sentence of each claim that decides it, once."""
    if not numbers.reasons:
        return []
    said: dict[str, str] = {}
    for _, verdict in line_parts(verdicts, aspects):
        for claim in deciders(verdict):
            if claim["why"]:
                said.setdefault(claim["why"], claim["who"])
    texts = [f"{who}: {why}" for why, who in said.items()]
    return wrap("because " + " ".join(texts), " " * 13, " " * 13) if texts else []


def _seams(report: Report, places: dict[Any, Any], numbers: Numbers) -> list[str]:
    """Every seam; a line that says the same as in an earlier seam refers to it."""
    lines: list[str] = []
    seen: dict[tuple[str, str], str] = {}
    for seam in report["seams"]:
        verdicts = places.get(("seam", seam["name"]), {})
        lines += wrap(f"{seam['name']}: {_stack(seam)}")
        same: dict[str, list[str]] = {}
        for label, aspects in SEAM_LINES:
            text = _line(verdicts, aspects, numbers)
            if not text:
                continue
            earlier = seen.setdefault((label, text), seam["name"])
            if earlier != seam["name"]:
                same.setdefault(earlier, []).append(label)
            else:
                lines += row(label, text, 2, 9)
                lines += _reasons(verdicts, aspects, numbers)
        for earlier, labels in same.items():
            lines += row("as", f"{earlier}: {', '.join(labels)}", 2, 9)
        lines += _given_up(verdicts)
        lines += _advice(report, "seam", seam["name"], numbers)
    return lines


def _stack(seam: dict[str, Any]) -> str:
    facts = seam["facts"]
    about = [str(facts[k]) for k in ("shape", "edge") if k in facts]
    if "stress" in facts:
        about.append(f"{facts['stress']} strain")
    return " + ".join(seam["layers"]) + (f" ({', '.join(about)})" if about else "")


def _given_up(verdicts: dict[str, Any]) -> list[str]:
    """The wishes that could not be met, in a few words."""
    lost = [
        f"{b['who']} would like {b['says']} ({_title(v)})"
        for v in verdicts.values()
        for b in v["given_up"]
        if b["strength"] == "should"
    ]
    return row("not met", "; ".join(dict.fromkeys(lost)), 2, 9) if lost else []


def _title(verdict: dict[str, Any]) -> str:
    return str(verdict["aspect"]).replace(".", " ")


def _advice(report: Report, scope: str, place: str, numbers: Numbers) -> list[str]:
    lines = []
    for item in report["advice"]:
        if item["scope"] == scope and item["place"] == place:
            lines += row("do", f"{item['text']} {numbers.mark(item['sources'])}", 2, 9)
    return lines


def _garment(report: Report, places: dict[Any, Any], numbers: Numbers) -> list[str]:
    verdicts = places.get(("garment", report["garment"]), {})
    lines = heading("The whole garment")
    for label, aspects in GARMENT_LINES:
        text = _line(verdicts, aspects, numbers)
        if text:
            lines += row(label, text, 2, 11)
            lines += _reasons(verdicts, aspects, numbers)
    lines += _advice(report, "garment", report["garment"], numbers)
    return lines


def _tests(report: Report) -> list[str]:
    lines = heading("Try on scraps first")
    for test in report["tests"]:
        places = f" (for {', '.join(test['places'])})" if len(test["places"]) < 4 else ""
        look = test["text"] or "Stitch 20 cm, press as above, and look at both sides."
        lines += wrap(f"{' + '.join(test['layers'])}{places}: {look}", "  - ")
    return lines


def _unknowns(report: Report) -> list[str]:
    if not report["unknowns"]:
        return []
    lines = heading("Not known, or taken for granted")
    for unknown in report["unknowns"]:
        lines += wrap(f"{unknown['fact']}: {unknown['effect']}.", "  - ")
    return lines


def _sources(numbers: Numbers) -> list[str]:
    lines = heading("On whose word")
    lines += numbers.lines()
    if any(numbers.kinds.get(id_) in _WEAK for id_ in numbers.used):
        lines += wrap("* rests on memory or an estimate alone: test before you trust it.", "  ")
    return lines
