"""The handling sheet of a project, set close so that a dozen seams fit two printed pages.

Worst first; clashes that are the same in several places are told once; a cloth or a seam is one
paragraph; each paragraph is marked with its best sources. `detailed` prints the rest.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from advisor.sheet.digest import Digest, digest
from advisor.sheet.layout import heading, wrap
from advisor.sheet.lines import (
    CARE_LINE,
    FABRIC_PARAGRAPH,
    LAST_PRESS_LINE,
    SEAM_LINES,
    Verdicts,
    by_place,
    deciders,
    line_parts,
    phrase,
)
from advisor.sheet.numbers import Numbers
from advisor.sheet.parts import SEVERITY, SETTINGS, about_seam, layer_title
from advisor.units import System

Report = dict[str, Any]
WIDTH = 120
LINES_A_PAGE = 94
"""What an A4 page takes at 7.5 point on 8.5 point with margins of 8 mm."""


def render_sheet(report: Report) -> str:
    """The sheet."""
    numbers = Numbers(report, most=2, short=True)
    return "\n".join(_Compact(report, numbers, digest(report)).whole()) + "\n"


class _Compact:
    def __init__(self, report: Report, numbers: Numbers, chosen: Digest) -> None:
        self.report = report
        self.numbers = numbers
        self.chosen = chosen
        self.places = by_place(report)
        self.units: System = "us" if report["units"] == "us" else "metric"

    def whole(self) -> list[str]:
        lines = heading(f"{self.report['garment']}: handling sheet", 1)
        lines += self.conflicts() + self.cautions()
        lines += heading("Cloths")
        for layer in self.report["layers"]:
            lines += self.cloth(layer)
        lines += heading("Seams")
        lines += self.seams() + self.garment() + self.tests() + self.unknowns()
        return lines + self.numbers.lines(WIDTH)

    def para(self, text: str, first: str = "  ", rest: str = "    ") -> list[str]:
        return wrap(text, first, rest, WIDTH)

    def conflicts(self) -> list[str]:
        """Every clash once, with all the places where it is the same one."""
        lines = heading("What can go wrong")
        if not self.report["conflicts"]:
            text = "Nothing here contradicts itself. Test on scraps all the same."
            return lines + self.para(text)
        for i, group in enumerate(same_conflicts(self.report["conflicts"]), 1):
            marks = self.numbers.mark([s for c in group for b in c["because"] for s in b["sources"]])
            where = ", ".join(dict.fromkeys(c["place"] for c in group))
            told = " ".join(dict.fromkeys(c["message"] for c in group))
            lines += self.para(f"{where}: {SEVERITY[group[0]['severity']]}. {told} {marks}",
                               f"{i:2} ")  # fmt: skip
            lines += self.para(_remedies(group), "    > ", "      ")
        return lines

    def cautions(self) -> list[str]:
        lines = heading("Take care")
        kinds: dict[str, list[str]] = {}
        for caution, about in self.chosen.cautions:
            named = f" ({about})" if about else ""
            marks = self.numbers.mark(caution["sources"])
            kinds.setdefault(caution["kind"], []).append(f"{caution['text']}{named} {marks}")
        for kind, texts in kinds.items():
            lines += self.para(f"{kind}: {' '.join(texts)}")
        return lines

    def cloth(self, layer: dict[str, Any]) -> list[str]:
        verdicts = self.places.get(("fabric", layer["name"]), {})
        parts = [f"{layer_title(layer, self.units)}."]
        for label, aspects in FABRIC_PARAGRAPH:
            text = self.settings(verdicts, aspects)
            if text:
                parts.append(f"{label.capitalize()}: {text}.")
        parts += [
            f"{todo.text} {self.numbers.mark(todo.sources)}"
            for todo in self.chosen.by_place.get(("fabric", layer["name"]), ())[:1]
        ]
        return self.para(" ".join(parts))

    def settings(self, verdicts: Verdicts, aspects: Sequence[str]) -> str:
        parts = line_parts(verdicts, aspects)
        sources = [s for _, v in parts for b in deciders(v) for s in b["sources"]]
        text = ", ".join(text for text, _ in parts)
        return f"{text} {self.numbers.mark(sources)}" if parts else ""

    def seams(self) -> list[str]:
        """Every seam; what is the same as in an earlier one refers to it."""
        lines: list[str] = []
        seen: dict[tuple[str, str], str] = {}
        for seam in self.report["seams"]:
            name = seam["name"]
            verdicts = self.places.get(("seam", name), {})
            parts: list[str] = []
            same: dict[str, list[str]] = {}
            for label, aspects in SEAM_LINES:
                text = self.settings(verdicts, aspects)
                if not text:
                    continue
                earlier = seen.setdefault((label, text), name)
                if earlier != name:
                    same.setdefault(earlier, []).append(label)
                else:
                    parts.append(f"{label.capitalize()}: {text}.")
            parts += [f"{' and '.join(v).capitalize()} as in {k}." for k, v in same.items()]
            parts += consequences(verdicts)
            parts += [
                f"{todo.text} {self.numbers.mark(todo.sources)}"
                for todo in self.chosen.by_place.get(("seam", name), ())[:1]
            ]
            lines += self.para(f"{name} ({about_seam(seam)}). {' '.join(parts)}")
        return lines

    def garment(self) -> list[str]:
        verdicts = self.places.get(("garment", self.report["garment"]), {})
        lines = heading("The whole garment")
        for label, aspects in (LAST_PRESS_LINE, CARE_LINE):
            text = self.settings(verdicts, aspects)
            lines += self.para(f"{label.capitalize()}: {text}.") if text else []
        lone = self.chosen.by_place.get(("garment", self.report["garment"]), ())[:2]
        todos = [f"{t.text} {self.numbers.mark(t.sources)}" for t in (*lone, *self.chosen.general)]
        return lines + (self.para(f"Do: {' '.join(todos)}") if todos else [])

    def tests(self) -> list[str]:
        lines = heading("Try on scraps first")
        for test, look in self.chosen.tests:
            verdicts = self.places.get(("seam", test["places"][0]), {})
            set_to = [phrase(verdicts[a]) for a in SETTINGS if a in verdicts]
            text = f"[ ] {' + '.join(test['layers'])}: {', '.join(set_to)}. {' '.join(look[:1])}"
            lines += self.para(text.strip())
        return lines

    def unknowns(self) -> list[str]:
        unknowns = self.report["unknowns"]
        lines = heading("Not known, or taken for granted") if unknowns else []
        for unknown in unknowns:
            lines += self.para(f"{unknown['fact']}: {unknown['effect']}.")
        left = self.chosen.left_out
        return lines + self.para(
            f"{left} lesser cautions and things to do are left out; --all prints them, --reasons "
            "the reasons, `advisor why` the whole tree of one answer."
        ) if left else lines


def same_conflicts(conflicts: list[dict[str, Any]]) -> list[list[dict[str, Any]]]:
    """Conflicts that are told together: one message in several places, or one place, one cure."""
    alike: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for conflict in conflicts:
        cures = [r["text"] for r in conflict["remedies"][:1]]
        alike.setdefault((conflict["message"], conflict["scope"], *cures), []).append(conflict)
    groups: dict[tuple[str, ...], list[dict[str, Any]]] = {}
    for group in alike.values():
        cure = group[0]["remedies"][0]["text"] if group[0]["remedies"] else group[0]["message"]
        key = (cure, *(c["place"] for c in group))
        groups.setdefault(key, []).extend(group)
    return list(groups.values())


def consequences(verdicts: Verdicts) -> list[str]:
    """What the maker's own choices go against: respected, and said."""
    return [
        f"Your choice ({verdict['text']}): {claim['who']} would rather have {claim['says']}."
        for verdict in verdicts.values()
        if any(b["rule"] == "maker" and b["who"] == "you" for b in verdict["because"])
        for claim in verdict["given_up"][:1]
    ]


def _remedies(group: list[dict[str, Any]]) -> str:
    """The cheapest remedy in full, the others by name."""
    remedies = group[0]["remedies"]
    if not remedies:
        return "No single remedy that we know cures this: change a cloth, or leave it out."
    others = [r["id"].replace("-", " ") for r in remedies[1:3]]
    more = f" Or: {', or '.join(others)}." if others else ""
    return f"{remedies[0]['text']}{more}"
