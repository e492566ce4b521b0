"""The label of a garment as what a template sets: what stands in the way, what to write, duties.

What is said is what `label_text` says; here it stands in rows.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from advisor.answer.model.answer import Answer
from advisor.answer.model.label import ToldApart, ToldCare, ToldLabel
from advisor.render.label_text import (
    CARE,
    UNWASHED,
    care_caution,
    care_heading,
    not_written,
    of_whom,
    own_label,
    said_care,
    silence_text,
)
from advisor.render.plain import without_commands
from advisor.render.printed.numbers import STAR, Numbers
from advisor.render.printed.section import Part


class LabelLine(Struct, frozen=True):
    """A label in front, what is written on the label, and what is said about it."""

    lead: str
    written: str
    about: tuple[Part, ...] = ()


class LabelView(Struct, frozen=True):
    """What the template of a label sets."""

    market: str
    market_name: str
    ready: bool
    closing: str
    lacks: tuple[LabelLine, ...]
    content: tuple[LabelLine, ...]
    rules: tuple[Part, ...]
    care: tuple[LabelLine, ...]
    care_heading: str
    apart: tuple[tuple[str, tuple[LabelLine, ...]], ...]
    care_notes: tuple[Part, ...]
    warnings: tuple[Part, ...]
    duties: tuple[Part, ...]
    sources: tuple[tuple[str, str, str], ...]
    star: str


def label_view(report: Answer, numbers: Numbers | None = None) -> LabelView:
    """The label of an answer that was asked for one; `numbers` are those of a whole booklet.

    Raises:
        ValueError: it was not.
    """
    if report.label is None:
        raise ValueError("the answer was not asked for its label")
    return _LabelMaker(report, report.label, numbers).view()


class _LabelMaker:
    def __init__(self, report: Answer, label: ToldLabel, numbers: Numbers | None) -> None:
        self.report = report
        self.label = label
        self.numbers = numbers or Numbers(report, most=2, short=True)

    def view(self) -> LabelView:
        label, care = self.label, self.label.care
        lacks, content = self.lacks(), self.content()
        rules = tuple(self.part(rule.text, rule.sources) for rule in label.rules)
        lines = self.care(care.lines)
        apart = tuple((own_label(part, care), self.apart(part)) for part in care.apart)
        notes, warnings = self.care_notes(), self.warnings()
        said = (*label.duties, *label.spared, label.authority)
        duties = tuple(self.part(told.text, told.sources) for told in said)
        return LabelView(
            market=label.market,
            market_name=label.market_name,
            ready=label.ready,
            closing=label.closing,
            lacks=lacks,
            content=content,
            rules=rules,
            care=lines,
            care_heading=care_heading(care),
            apart=apart,
            care_notes=notes,
            warnings=warnings,
            duties=duties,
            sources=tuple(self.numbers.entries()),
            star=STAR if self.numbers.starred else "",
        )

    def part(self, text: str, sources: Sequence[str], most: int | None = None) -> Part:
        marks = self.numbers.mark(sources, most) if tuple(sources) != ("derived",) else ""
        return Part(without_commands(text), marks=marks)

    def lacks(self) -> tuple[LabelLine, ...]:
        """What stands in the way, and how it is found out; nothing said twice."""
        told: set[str] = set()
        found = []
        for lack in self.label.missing:
            about = [self.part(f"{lack.text}.", lack.sources)]
            for text, sources in (
                (lack.find, ()),
                *((f"Or else: {o.text}", o.sources) for o in lack.alternatives),
            ):
                if text and text not in told:
                    told.add(text)
                    about.append(self.part(text, sources))
            found.append(LabelLine(", ".join(lack.cloths), "", tuple(about)))
        return tuple(found)

    def content(self) -> tuple[LabelLine, ...]:
        label = self.label
        found = []
        for one in label.content:
            about = [self.part("", one.sources)]
            if one.may_be_left_out:
                about.append(self.part(one.may_be_left_out.text, one.may_be_left_out.sources))
            found.append(LabelLine(of_whom(one, label), one.line, tuple(about)))
        if label.whole:
            about = [self.part(label.whole.text, label.whole.sources)]
            found.append(LabelLine("or as a whole", label.whole.line, tuple(about)))
        nothing = Part("nothing can be written yet, see above")
        found += [LabelLine(cloth, "", (nothing,)) for cloth in not_written(label)]
        animal = label.animal
        if animal:
            maybe = f"If {', '.join(animal.may_be)} is of horn, shell, bone or leather. "
            text = f"{maybe if animal.may_be else ''}{animal.text}"
            about = [self.part(text, animal.sources)]
            found.append(
                LabelLine(", ".join(animal.cloths) or "perhaps", animal.line, tuple(about))
            )
        for left in label.left_out:
            found.append(
                LabelLine(
                    ", ".join(left.cloths),
                    "",
                    (self.part(f"not counted: {left.text}", left.sources),),
                )
            )
        return tuple(found)

    def care(self, lines: Sequence[ToldCare]) -> tuple[LabelLine, ...]:
        return tuple(self.care_line(line) for line in said_care(lines))

    def apart(self, part: ToldApart) -> tuple[LabelLine, ...]:
        unclean = (LabelLine("", "", (Part(UNWASHED),)),) if part.cleaning == "none" else ()
        return (*self.care(part.lines), *unclean)

    def care_line(self, line: ToldCare) -> LabelLine:
        about = []
        if line.line is None:
            about.append(Part("no one instruction suits all parts"))
        elif not line.known:
            about.append(Part("more is not known to be safe"))
        about += [self.part(f"{s.who}: {s.why.rstrip('.')}.", s.sources) for s in line.set_by[:1]]
        return LabelLine(CARE[line.aspect], line.line or "", tuple(about))

    def care_notes(self) -> tuple[Part, ...]:
        care = self.label.care
        found = [Part(text) for text in care.once_known]
        if care.cleaning == "none" and not care.conflicts:
            found.append(Part(UNWASHED))
        for clash in self.report.conflicts:
            if clash.id in care.conflicts:
                text = f"No one care instruction suits all. {clash.message}"
                found.append(self.part(text, clash.cited()))
        if silence := silence_text(care.lines):
            found.append(Part(silence))
        return (*found, self.part(self.label.basis.text, self.label.basis.sources))

    def warnings(self) -> tuple[Part, ...]:
        care = (caution for caution in self.report.cautions if caution.area == "care")
        found = [self.part(care_caution(caution), caution.sources) for caution in care]
        flame, children = self.label.flammability, self.label.children
        if flame:
            found.append(self.part(f"{flame.text} {', '.join(flame.cloths)}", flame.sources))
        return (*found, self.part(children.text, children.sources))
