"""The label of a garment as a page of text: what stands in the way, what to write, what to add."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.answer.model.answer import Answer
from advisor.answer.model.label import (
    ToldAnimal,
    ToldApart,
    ToldCare,
    ToldCaring,
    ToldContent,
    ToldLabel,
)
from advisor.answer.model.told import ToldCaution
from advisor.render.layout import heading, row, wrap
from advisor.render.printed.numbers import Numbers

_COLUMN = 14
CARE = {
    "care.wash": "wash",
    "care.bleach": "bleach",
    "care.dry": "dry",
    "care.iron": "iron",
    "care.professional": "dry clean",
}
_MOST_CURES = 3
_MOST_NAMES = 5
UNWASHED = (
    "Neither washing nor dry cleaning is left, and the label has to say just that. Tell the buyer "
    "before she pays, or let what forbids it come off."
)


def care_heading(care: ToldCaring) -> str:
    """Of what the lines of care are: of the whole, or of garments that nothing joins."""
    return f"Care of {'the whole' if care.lines else 'each'}, in this order"


def own_label(part: ToldApart, care: ToldCaring) -> str:
    """What stands above the care of a part: beside a whole it comes off that."""
    off = " comes off and" if care.lines else ""
    return f"{part.cloth}{off} has a care label of its own:"


def render_label(report: Answer) -> str:
    """The page of a label."""
    return "\n".join(_Page(report).lines()) + "\n"


class _Page:
    def __init__(self, report: Answer) -> None:
        self.report = report
        if report.label is None:
            raise ValueError("the answer was not asked for its label")
        self.label: ToldLabel = report.label
        self.numbers = Numbers(report, most=2, short=True)

    def lines(self) -> list[str]:
        label = self.label
        lines = heading(f"{self.report.garment}: the label", 1)
        lines += wrap(
            f"{self._state()} For the market: {label.market_name} "
            f"({self._chosen()}). {label.closing}"
        )
        lines += self._missing() + self._content() + self._care() + self._warnings()
        lines += self._duties()
        return lines + self.numbers.lines()

    def _state(self) -> str:
        if self.label.ready:
            return "It can be written from what the project says."
        return "NOT READY: it cannot be written honestly yet."

    def _chosen(self) -> str:
        if self.label.market_asked:
            return "as you asked"
        other = "eu" if self.label.market == "us" else "us"
        return f"from the units of the project; --market {other} for the other"

    def _missing(self) -> list[str]:
        if not self.label.missing:
            return []
        lines = heading("What stands in the way")
        told: set[str] = set()
        for i, lack in enumerate(self.label.missing, 1):
            text = lack.text
            if lack.cloths:
                text = f"{_names(lack.cloths)}: {text}."
            find = lack.find if lack.find not in told else ""
            told.add(lack.find)
            mark = self._mark(lack.sources) if lack.sources != ("derived",) else ""
            lines += wrap(" ".join(filter(None, (text, mark, find))), f"{i:2} ")
            for other in lack.alternatives:
                if other.text not in told:
                    told.add(other.text)
                    lines += wrap(f"{other.text} {self._mark(other.sources)}", "   or else  ")
        return lines

    def _content(self) -> list[str]:
        label = self.label
        lines = heading("Fibres, as the label has to say them")
        gaps = not_written(label)
        for part in label.content:
            text = f"{part.line} {self._mark(part.sources)}"
            spared = part.may_be_left_out
            if spared:
                text += f" ({spared.text} {self._mark(spared.sources)})"
            lines += row(of_whom(part, label), text, 2, _COLUMN)
        if label.whole:
            text = f"{label.whole.line} {self._mark(label.whole.sources)} ({label.whole.text})"
            lines += row("or as a whole", text, 2, _COLUMN)
        for cloth in gaps:
            lines += row(cloth, "- nothing can be written yet, see above", 2, _COLUMN)
        if label.animal:
            lines += row("and", self._animal(label.animal), 2, _COLUMN)
        if label.left_out:
            text = "; ".join(
                f"{', '.join(left.cloths)} ({left.text}) {self._mark(left.sources)}"
                for left in label.left_out
            )
            lines += row("not counted", f"{text}; sewing thread likewise", 2, _COLUMN)
        rules = [f"{rule.text} {self._mark(rule.sources)}" for rule in label.rules]
        return lines + wrap(" ".join(rules), "  - ")

    def _animal(self, about: ToldAnimal) -> str:
        """What is said of parts of animals, and of what may be one: she can look at it."""
        told = []
        if about.cloths:
            told.append(f"{about.line} ({_names(about.cloths)}).")
        if about.may_be:
            told.append(
                f"If {_names(about.may_be)} is of horn, shell, bone or leather, add: {about.line}."
            )
        return f"{' '.join(told)} {about.text} {self._mark(about.sources)}"

    def _care(self) -> list[str]:
        care = self.label.care
        lines = heading(care_heading(care))
        for text in care.once_known:  # what to settle first, for it may change the lines below
            lines += wrap(text, "  - ")
        lines += [line for about in said_care(care.lines) for line in self._care_line(about)]
        if care.cleaning == "none" and not care.conflicts:
            lines += wrap(UNWASHED, "  - ")
        lines += self._clashes(care.conflicts)
        for part in care.apart:
            lines += wrap(own_label(part, care), "  ")
            lines += [line for about in said_care(part.lines) for line in self._care_line(about, 4)]
            lines += wrap(UNWASHED, "    - ") if part.cleaning == "none" else []
        silence = silence_text(care.lines)
        if silence:
            lines += wrap(silence, "  - ")
        basis = self.label.basis
        return lines + wrap(f"{basis.text} {self._mark(basis.sources)}", "  - ")

    def _care_line(self, about: ToldCare, indent: int = 2) -> list[str]:
        if about.line is None:
            text = "no one instruction suits all parts"
        elif not about.known:
            text = f"{about.line} (more is not known to be safe)"
        else:
            text = f"{about.line} {self._mark(about.sources, 1)}"
        told = [f"{s.who}: {s.why.rstrip('.')} {self._mark(s.sources)}" for s in about.set_by[:1]]
        text = " - ".join([text, *told])
        return row(CARE[about.aspect], text, indent, _COLUMN + 2 - indent)

    def _clashes(self, ids: Sequence[str]) -> list[str]:
        lines: list[str] = []
        for conflict in self.report.conflicts:
            if conflict.id not in ids:
                continue
            marks = self._mark([s for b in conflict.because for s in b.sources])
            lines += wrap(f"No one care instruction suits all. {conflict.message} {marks}", "  ! ")
            for j, cure in enumerate(conflict.remedies[:_MOST_CURES]):
                start = "    or          " if j else "    do instead  "
                lines += wrap(f"{cure.text} {cure.then}", start)
            lines += wrap(conflict.no_cure, "    ") if conflict.no_cure else []
        return lines

    def _warnings(self) -> list[str]:
        label = self.label
        lines = []
        for caution in self.report.cautions:
            if caution.area == "care":
                lines += wrap(f"{care_caution(caution)} {self._mark(caution.sources)}", "  - ")
        flame = label.flammability
        if flame:
            text = f"{flame.text} {', '.join(flame.cloths)} {self._mark(flame.sources)}"
            lines += wrap(text, "  - ")
        children = label.children
        lines += wrap(f"{children.text} {self._mark(children.sources)}", "  - ")
        return heading("Warn of, and watch") + lines

    def _duties(self) -> list[str]:
        label = self.label
        lines = heading("What you have to add, and who is spared")
        for told in (*label.duties, *label.spared, label.authority):
            lines += wrap(f"{told.text} {self._mark(told.sources)}", "  - ")
        return lines

    def _mark(self, sources: Sequence[str], most: int | None = None) -> str:
        return self.numbers.mark(sources, most)


def not_written(label: ToldLabel) -> list[str]:
    """The cloths of which nothing can be written yet."""
    kinds = ("unknown", "share", "name")
    return [cloth for lack in label.missing if lack.kind in kinds for cloth in lack.cloths]


def of_whom(part: ToldContent, label: ToldLabel) -> str:
    """The cloths that a line of the content speaks of."""
    whole = len(label.content) == 1 and not not_written(label)
    return "all parts" if whole and len(part.cloths) > 1 else _names(part.cloths)


def silence_text(lines: Sequence[ToldCare]) -> str:
    """Of what it is not known how it bears a way of cleaning; empty where all is known."""
    silent = {
        CARE[line.aspect]: _names(line.silent)
        for line in said_care(lines)
        if line.silent and line.line is not None
    }
    told = "; ".join(f"{what}: {names}" for what, names in silent.items())
    text = f"Silence is no permission: nothing is known of how these bear it - {told}."
    return f"{text} A sewn sample, cleaned, may allow more." if silent else ""


def care_caution(caution: ToldCaution) -> str:
    """A caution of the care, with what it is about where that is few."""
    about = caution.about
    return f"{caution.text} ({_names(about)})" if 0 < len(about) <= _MOST_NAMES else caution.text


def said_care(lines: Sequence[ToldCare]) -> Sequence[ToldCare]:
    """The care lines that a label carries: what is never washed is not dried either."""
    unwashed = any(x.aspect == "care.wash" and x.answer == "do not wash" for x in lines)
    return [x for x in lines if not (unwashed and x.aspect == "care.dry")]


def _names(names: Sequence[str]) -> str:
    return ", ".join(names)
