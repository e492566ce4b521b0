"""The detailed text: worst first, then what to set, then why, a line a setting.

It reads only the report; it decides nothing. Every line names its sources by number, and the
list at the end says what the numbers are. Colour is never needed to understand it.
"""

from __future__ import annotations

from collections.abc import Sequence

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldLayer, ToldPlace, ToldUnknown
from advisor.answer.press_clause import press_clauses
from advisor.render.gap_text import gap_lines
from advisor.render.gaveway import gave_way
from advisor.render.guess_text import guess_lines
from advisor.render.layout import heading, row, wrap
from advisor.render.lines import (
    FABRIC_LINES,
    GARMENT_LINES,
    SEAM_LINES,
    Verdicts,
    by_place,
    deciders,
    is_cold,
    line_parts,
    phrase,
    seam_line,
    told_when_cold,
)
from advisor.render.order_text import order_line
from advisor.render.printed.blocks import NO_CLASH
from advisor.render.printed.digest import Digest, Todo, digest
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.parts import SETTINGS, about_seam, degree, layer_title

_COLUMN = 9
NO_OUTRIGHT_CLASH = (
    "Nothing here contradicts itself outright; what a cloth has to give up in the seam stands "
    "under 'had to give way' below. Test on scraps all the same."
)


def render_detailed(
    report: Answer,
    *,
    reasons: bool = False,
    everything: bool = False,
    title: str = "handling sheet",
) -> str:
    """Everything of a garment, a line a setting: for a question, and for a sheet with reasons.

    Args:
        report: the answer as data.
        reasons: print under each line why it is so.
        everything: print all that can be done and tried, not only what matters most.
        title: what stands behind the garment's name.
    """
    sheet = _Sheet(report, Numbers(report, reasons=reasons), digest(report, everything=everything))
    return "\n".join(sheet.whole(title)) + "\n"


def conflict_lines(report: Answer, numbers: Numbers) -> list[str]:
    """What cannot be reconciled, worst first, each with what to do instead."""
    lines = heading("What can go wrong")
    if not report.conflicts:
        lines += wrap(NO_OUTRIGHT_CLASH if gave_way(report).items else NO_CLASH, "  ")
    for conflict in report.conflicts:
        text = f"{degree(conflict)}. {conflict.message} {numbers.mark(conflict.cited())}"
        lines += wrap(f"{', '.join(conflict.places)}: {text}", f"{conflict.number:2} ")
        for j, remedy in enumerate(conflict.remedies[:3]):
            start = "   or          " if j else "   do instead  "
            lines += wrap(f"{remedy.text} {remedy.then or ''}".strip(), start)
        lines += wrap(conflict.no_cure, "   ") if conflict.no_cure else []
    return lines


def gave_way_lines(report: Answer) -> list[str]:
    """The gravest wishes that gave way."""
    wishes = gave_way(report)
    lines = heading(wishes.title) if wishes.items else []
    for item in wishes.items:
        lines += wrap(f"{item.lead}: {item.parts[0].text}", "  - ")
    return lines


def check_lines(report: Answer) -> list[str]:
    """Figures of the project that do not agree."""
    if not report.checks:
        return []
    lines = heading("Figures that do not agree")
    for check in report.checks:
        lines += wrap(check.text, "  - ")
    return lines


def caution_lines(report: Answer, numbers: Numbers) -> list[str]:
    """What can hurt or spoil, with what it is about."""
    if not report.cautions:
        return []
    lines = heading("Take care")
    for caution in report.cautions:
        about = caution.about
        named = f" ({', '.join(about)})" if 0 < len(about) <= 4 else ""
        harm = caution.kind != "damage"
        text = f"{caution.text}{named} {numbers.mark(caution.sources, harm=harm)}"
        lines += row(caution.kind, text, 2, _COLUMN)
    return lines


def unknown_lines(unknowns: Sequence[ToldUnknown]) -> list[str]:
    """What nobody has said, and what knowing it would change."""
    if not unknowns:
        return []
    lines = heading("Not known, or taken for granted")
    for unknown in unknowns:
        lines += wrap(f"{unknown.fact}: {unknown.effect}.", "  - ")
    return lines


class _Sheet:
    def __init__(self, report: Answer, numbers: Numbers, chosen: Digest) -> None:
        self.report = report
        self.numbers = numbers
        self.chosen = chosen
        self.places = by_place(report)
        self.units = report.units

    def whole(self, title: str) -> list[str]:
        report = self.report
        lines = heading(f"{report.garment}: {title}", 1)
        lines += conflict_lines(report, self.numbers) + check_lines(report)
        lines += guess_lines(report) + gap_lines(report)
        lines += caution_lines(report, self.numbers) + gave_way_lines(report)
        lines += heading("Cloths: prepare, cut, mark")
        for layer in report.layers:
            lines += self.cloth(layer)
        lines += heading("Seams")
        lines += self.seams()
        lines += self.garment() + self.tests() + unknown_lines(report.unknowns)
        if self.chosen.left_out:
            text = f"{self.chosen.left_out} lesser things to do are left out; --all prints them."
            lines += ["", *wrap(text, "  ")]
        return lines + self.numbers.lines()

    def cloth(self, layer: ToldLayer) -> list[str]:
        verdicts = self.places.get(("fabric", layer.name), {})
        lines = wrap(layer_title(layer, self.units))
        for label, aspects in FABRIC_LINES:
            lines += self.line(label, verdicts, aspects, layer.name)
        return lines + self.todos("fabric", layer.name)

    def line(
        self,
        label: str,
        verdicts: Verdicts,
        aspects: Sequence[str],
        place: str,
        column: int = _COLUMN,
        lead: str = "",
    ) -> list[str]:
        """One line of settings with its sources, and with its reasons where they are asked for."""
        text = self.line_text(verdicts, aspects, lead)
        if not text:
            return []
        return row(label, text, 2, column) + self.why(verdicts, aspects, place, column)

    def line_text(self, verdicts: Verdicts, aspects: Sequence[str], lead: str = "") -> str:
        parts = line_parts(verdicts, aspects)
        if not parts:
            return lead
        sources = [s for _, v in parts for b in deciders(v) for s in b.sources]
        told = "; ".join(filter(None, (lead, *(text for text, _ in parts))))
        return f"{told} {self.numbers.mark(sources)}"

    def why(self, verdicts: Verdicts, aspects: Sequence[str], place: str, column: int) -> list[str]:
        """Why a line is so: the sentence of each claim that decides it, once."""
        if not self.numbers.reasons:
            return []
        said: dict[str, str] = {}
        for _, verdict in line_parts(verdicts, aspects):
            for claim in deciders(verdict)[:1]:
                if claim.why:
                    said.setdefault(claim.why, claim.who)
        texts = [why if who == place else f"{who}: {why}" for why, who in said.items()]
        indent = " " * (column + 4)
        return wrap(f"because {' '.join(texts)}", indent, indent) if texts else []

    def seams(self) -> list[str]:
        """Every seam; a line that says the same as in an earlier seam refers to it."""
        lines: list[str] = []
        seen: dict[tuple[str, str], str] = {}
        for seam in self.report.seams:
            name = seam.name
            verdicts = self.places.get(("seam", name), {})
            lines += wrap(f"{name}: {about_seam(seam)}")
            same: dict[str, list[str]] = {}
            for label, every in SEAM_LINES:
                lead, aspects = seam_line(seam, label, every)
                text = self.line_text(verdicts, aspects, lead)
                earlier = seen.setdefault((label, text), name) if text else name
                if earlier != name:
                    same.setdefault(earlier, []).append(label)
                else:
                    lines += self.line(label, verdicts, aspects, name, lead=lead)
            for earlier, labels in same.items():
                lines += row("as in", f"{earlier}: {', '.join(labels)}", 2, _COLUMN)
            for text in press_clauses(self.report, name):
                lines += row("heat", text, 2, _COLUMN)
            lines += self.build(seam) + _not_met(verdicts) + self.todos("seam", name)
        return lines

    def build(self, seam: ToldPlace) -> list[str]:
        """What the seam comes to, and what is to be minded in building it."""
        built = seam.built
        if built is None:
            return []  # a question has no lengths to build from
        marks = self.numbers.mark(built.build_sources)
        return row("build", " ".join((f"{built.build}.", *built.build_says, marks)), 2, _COLUMN)

    def todos(self, scope: str, place: str) -> list[str]:
        lines: list[str] = []
        for todo in self.chosen.by_place.get((scope, place), ()):
            lines += self.todo("do", todo)
        return lines

    def todo(self, label: str, todo: Todo) -> list[str]:
        few = 1 < len(todo.places) <= 3
        named = f" ({', '.join(todo.places)})" if few else ""
        return row(label, f"{todo.text}{named} {self.numbers.mark(todo.sources)}", 2, _COLUMN)

    def garment(self) -> list[str]:
        name = self.report.garment
        verdicts = self.places.get(("garment", name), {})
        lines = heading("The whole garment")
        for label, aspects in GARMENT_LINES:
            lines += self.line(label, verdicts, aspects, name, 11)
        lines += self.todos("garment", name)
        for todo in self.chosen.general:
            lines += self.todo("do", todo)
        if self.report.work is not None:
            line = order_line(self.report.work, self.report.file)
            lines += row("order", line, 2, _COLUMN)
        return lines

    def tests(self) -> list[str]:
        lines = heading("Try on scraps first")
        for test, look in self.chosen.tests:
            verdicts = self.places.get(("seam", test.places[0]), {}) if test.places else {}
            set_to = [phrase(verdicts[a]) for a in SETTINGS if a in verdicts]
            text = f"{test.stack}: {', '.join(set_to)}." if set_to else f"{test.stack}:"
            lines += wrap(f"{text} {' '.join(look)}".strip(), "  - ")
        return lines


def _not_met(verdicts: Verdicts) -> list[str]:
    """The wishes that could not be met, in a few words."""
    told = told_when_cold(verdicts) if is_cold(verdicts) else list(verdicts.values())
    lost = [
        f"{claim.who}: {claim.says} ({verdict.aspect.replace('.', ' ')})"
        for verdict in told
        for claim in verdict.given_up
        if claim.strength == "should"
    ]
    return row("gave way", "; ".join(dict.fromkeys(lost)), 2, _COLUMN) if lost else []
