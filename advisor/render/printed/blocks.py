"""What stands on a sheet, as sections of short pieces that the text and the page both set.

The choice and the words are made once, here: worst first; clashes that are the same in several
places told once, and a reason told once not told again; a cloth or a seam is one item, and a
line that is the same as an earlier one refers to it. Nothing here knows of columns or tags.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldConflict, ToldPlace, ToldVerdict
from advisor.render.gap_text import not_said
from advisor.render.gaveway import MOST, gave_way
from advisor.render.lines import (
    CARE_LINE,
    FABRIC_PARAGRAPH,
    LAST_PRESS_LINE,
    PLAIN_TEST,
    SEAM_LINES,
    STILL_OPEN,
    Verdicts,
    by_place,
    deciders,
    is_cold,
    said_once,
    seam_line,
)
from advisor.render.order_text import order_line
from advisor.render.printed.digest import Digest, Todo
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.parts import about_layer, about_seam, degree, press_anew
from advisor.render.printed.section import Item, Part, Section
from advisor.render.usual import own_parts, plain_text, two_threads, usual_answers

NO_CLASH = "Nothing here contradicts itself. Test on scraps all the same."
TIGHTEST = 5


class Room(NamedTuple):
    """How much of what is no danger and no setting is left out of a sheet.

    `step` 0 (nothing) to TIGHTEST; of the things to do that the step leaves out the gravest
    `spare` are told all the same.
    """

    step: int = 0
    spare: int = 0


WHOLE = Room()
OF_GARMENT = (7, 5, 3, 2, 2, 2)
"""Things to do for the whole garment that are told, by how tight it is."""
OWN_UNTIL = {"fabric": 3, "seam": 4}
"""From how tight on nothing to do is told of a cloth or a seam by itself."""


EXCEPT = "unless it says otherwise"
_UNKNOWN = "fibre unknown"
LOOKED_FOR = frozenset({"needle.size", "press.temperature"})


def sections(report: Answer, numbers: Numbers, chosen: Digest, room: Room = WHOLE) -> list[Section]:
    """Everything on the sheet but the list of sources, in the order of reading.

    Args:
        report: the answer as data.
        numbers: what marks the sources.
        chosen: what of many things to do and to try is printed.
        room: how much is left out to save room: never a danger or a setting.
    """
    return _Builder(report, numbers, chosen, room).whole()


class _Builder:
    def __init__(self, report: Answer, numbers: Numbers, chosen: Digest, room: Room) -> None:
        self.report = report
        self.tight, spare = room
        # What is for the whole garment goes before what is for one cloth or one place.
        self.for_garment = min(spare, OF_GARMENT[0] - OF_GARMENT[self.tight])
        self.dropped = 0
        self.numbers = numbers
        self.chosen = chosen
        self.places = by_place(report)
        self.units = report.units
        self.shared = self.warnings()
        self.favoured = self._favoured(spare - self.for_garment)

    def warnings(self) -> dict[str, list[str]]:
        """What several seams are warned of alike, told once for all of them."""
        from advisor.render.making_blocks import shared_warnings

        return shared_warnings(self.report.seams)

    def whole(self) -> list[Section]:
        found = [
            self.conflicts(),
            self.checks(),
            *not_said(self.report),
            self.cautions(),
            gave_way(self.report, min(MOST, TIGHTEST + 1 - self.tight)),
            self.parts(),
            self.cloths(),
            self.seams(),
            self.garment(),
            self.tests(),
            self.to_buy(),
            self.unknowns(),
        ]
        return [section for section in found if section.items or section.intro or section.close]

    def conflicts(self) -> Section:
        """Every clash once, with all the places where it is the same one."""
        told: set[str] = set()
        items = tuple(self._clash(c, told) for c in self.report.conflicts)
        intro = "" if items else NO_CLASH
        return Section("conflicts", "What can go wrong", items, intro, self._taken())

    def _taken(self) -> str:
        """How the first remedies get into the project; nothing where none can be written."""
        found = [c.remedies[0] for c in self.report.conflicts if c.remedies]
        offered = [remedy.take for remedy in found if remedy.take and remedy.lines]
        if not offered:
            return ""
        whole = len(offered) > 1 and self.report.cure_all is not None
        more = ", --take all the cheapest that cure every one" if whole else ""
        said = f"writes the remedy of {offered[0]} into the project"
        return f"advisor check FILE --take {offered[0]} {said}{more}."

    def checks(self) -> Section:
        """Quantities of the project that do not agree."""
        alike = said_once(self.report.checks or ())
        items = tuple(Item(", ".join(at), parts=(Part(text),)) for text, at in alike.items())
        return Section("checks", "Figures that do not agree", items)

    def _clash(self, conflict: ToldConflict, told: set[str]) -> Item:
        marks = self.numbers.mark(conflict.cited())
        parts = (Part(_news(conflict, told), marks=marks), Part(_remedies(conflict), "do instead"))
        return Item(", ".join(conflict.places), degree(conflict), parts, number=conflict.number)

    def cautions(self) -> Section:
        kinds: dict[str, list[Part]] = {}
        for caution, about in self.chosen.cautions:
            named = f" ({about})" if about else ""
            harm = caution.kind != "damage"
            marks = self.numbers.mark(caution.sources, most=1, harm=harm)
            part = Part(f"{caution.text}{named}", marks=marks)
            kinds.setdefault(caution.kind, []).append(part)
        items = tuple(Item(kind, parts=tuple(parts)) for kind, parts in kinds.items())
        return Section("cautions", "Take care", items)

    def parts(self) -> Section:
        """What lies over what in each part that the project names."""
        items = []
        for part in self.report.parts or ():
            over = f"From the body outwards: {', '.join(part.layers)}." if part.layers else ""
            fitted = f"Fitted {part.fitting}." if part.fitting else ""
            said = [Part(text) for text in (over, fitted) if text]
            if part.does:
                said.append(Part(part.does, marks=self.numbers.mark(part.sources, most=1)))
            items.append(Item(part.name, parts=tuple(said)))
        return Section("parts", "How it is layered", tuple(items))

    def cloths(self) -> Section:
        seen: dict[tuple[str, str], str] = {}
        items = []
        for layer in self.report.layers:
            name = layer.name
            said = FABRIC_PARAGRAPH if self.tight < TIGHTEST else FABRIC_PARAGRAPH[:-1]
            parts = self.lines(("fabric", name), said, seen)
            parts += self.own(("fabric", name))
            items.append(Item(name, about_layer(layer, self.units), tuple(parts)))
        return Section("cloths", "Cloths", tuple(items))

    def seams(self) -> Section:
        """Every seam; what is the same as in an earlier one refers to it."""
        seen: dict[tuple[str, str], str] = {}
        usual = self.usual()
        items = [self.every_seam(usual)] if usual else []
        items += [
            Item(", ".join(names), parts=(Part(text),)) for text, names in self.shared.items()
        ]
        for seam in self.report.seams:
            place = ("seam", seam.name)
            parts = self.lines(place, SEAM_LINES, seen, usual, seam)
            parts += [Part(text) for text in consequences(self.places.get(place, {}))]
            parts += [Part(text) for text in press_anew(self.report, seam.name, parts)]
            parts += self.bulk(seam)
            parts += self.own(place)
            items.append(Item(seam.name, about_seam(seam), tuple(parts)))
        return Section("seams", "Seams", tuple(items))

    def usual(self) -> dict[str, str]:
        """What most seams share, by aspect."""
        seams = [self.places.get(("seam", s.name), {}) for s in self.report.seams]
        every = [a for _, aspects in SEAM_LINES for a in aspects]
        if all(map(is_cold, seams)):
            every = [a for a in every if not a.startswith("press.")]
        return usual_answers(seams, every)

    def every_seam(self, usual: dict[str, str]) -> Item:
        """The usual answers as an item of their own, each from the first seam that has it."""
        model = {
            aspect: next(
                v
                for v in self.report.verdicts
                if v.scope == "seam" and v.aspect == aspect and plain_text(v) == text
            )
            for aspect, text in usual.items()
        }
        found = [self.settings(model, label, aspects, {}) for label, aspects in SEAM_LINES]
        return Item("every seam", EXCEPT, tuple(p for p in found if p))

    def lines(
        self,
        place: tuple[str, str],
        labelled: Iterable[tuple[str, Sequence[str]]],
        seen: dict[tuple[str, str], str],
        usual: dict[str, str] | None = None,
        seam: ToldPlace | None = None,
    ) -> list[Part]:
        """The settings of a place, by label; a line told before names where."""
        parts = []
        for label, every in labelled:
            lead, aspects = seam_line(seam, label, every) if seam else ("", every)
            part = self.settings(self.places.get(place, {}), label, aspects, usual or {}, lead)
            if part is None:
                continue
            earlier = seen.setdefault((label, part.text), place[1])
            short = len(part.text) <= len(earlier) + len(" as for ")
            if earlier == place[1] or short:
                parts.append(part)
            else:
                parts.append(Part("", label, same=earlier))
        return parts

    def settings(
        self,
        verdicts: Verdicts,
        label: str,
        aspects: Sequence[str],
        usual: dict[str, str],
        lead: str = "",
    ) -> Part | None:
        """One line of settings with its sources, less what is usual here; `lead` comes first."""
        parts = own_parts(verdicts, aspects, usual)
        text = ", ".join(filter(None, (lead, *(_trimmed(text, v) for text, v in parts))))
        if not text:
            return None
        sources = [s for _, v in parts if v is not None for b in deciders(v) for s in b.sources]
        key = "".join(text for text, v in parts[:1] if v is not None and v.aspect in LOOKED_FOR)
        return Part(text, label, self.numbers.mark(sources, most=1), head=key)

    def todos(self, todos: Iterable[Todo]) -> list[Part]:
        """Things to do that are no setting."""
        return [Part(todo.text, marks=self.numbers.mark(todo.sources, most=1)) for todo in todos]

    def own(self, place: tuple[str, str]) -> list[Part]:
        """The first thing to do at a place, where there is room for it; the rest is counted."""
        todos = self.chosen.by_place.get(place, ())[:1]
        harms = self.tight < TIGHTEST and any(t.harms for t in todos)
        grave = place in self.favoured or harms
        return self._kept(todos, int(grave or self._roomy(place)))

    def _roomy(self, place: tuple[str, str]) -> bool:
        return self.tight < OWN_UNTIL[place[0]]

    def _favoured(self, spare: int) -> frozenset[tuple[str, str]]:
        """The places of which something is told though the step leaves it out: the gravest."""
        first = {p: todos[0].weight for p, todos in self.chosen.by_place.items() if todos}
        out = [p for p in first if p[0] in OWN_UNTIL and not self._roomy(p)]
        return frozenset(sorted(out, key=lambda p: (first[p], p))[:spare])

    def _kept(self, todos: Sequence[Todo], most: int) -> list[Part]:
        kept = todos[:most]
        self.dropped += len(todos) - len(kept)
        return self.todos(kept)

    def bulk(self, seam: ToldPlace) -> list[Part]:
        """What is to be minded in building a seam, and how thick it is where that is not fine."""
        if seam.built is None:
            return []  # a question has no lengths to build from
        from advisor.render.making_blocks import seam_parts

        fine = seam.built.room == "fine" and not seam.built.squeeze
        return seam_parts(seam, self.numbers, self.shared)[int(fine) :]

    def to_buy(self) -> Section:
        """The shopping list; where room is short, the cloth and where the rest is."""
        from advisor.render.making_blocks import to_buy

        section = to_buy(self.report, self.numbers)
        rest = [item.lead for item in section.items[1:] if item.lead in ("thread", "notions")]
        if self.tight < 2 or not rest:
            return section
        close = section.close.replace("All of it", f"{', '.join(rest).capitalize()} and all else")
        return replace(section, items=section.items[:1], close=close)

    def garment(self) -> Section:
        key = ("garment", self.report.garment)
        found = [
            self.settings(self.places.get(key, {}), label, aspects, {})
            for label, aspects in (LAST_PRESS_LINE, CARE_LINE)
        ]
        items = [
            Item(part.label, parts=(Part(part.text, marks=part.marks),)) for part in found if part
        ]
        lone, general = self.chosen.by_place.get(key, ())[:2], self.chosen.general
        told = OF_GARMENT[self.tight] + self.for_garment
        first = general[: told < len(lone) + 1]  # of the last press its own line tells as well
        todos = tuple(self._kept((*first, *lone, *general[len(first) :]), told))
        if todos:
            items.append(Item("do", parts=todos))
        if self.report.bulk and not self.tight:
            items.append(Item("bulk", parts=(Part(f"{self.report.bulk}."),)))
        if self.report.work is not None:
            part = Part(order_line(self.report.work, self.report.file))
            items.append(Item("order", parts=(part,)))
        return Section("garment", "The whole garment", tuple(items))

    def tests(self) -> Section:
        """What to try, one line each: the lengths before they are cut, then the sandwiches.

        Those with nothing special to look for stand together.
        """
        items, plain = [], []
        for test, look in sorted(self.chosen.tests, key=lambda row: bool(row[0].places)):
            if look:
                place = test.places[0] if test.places else ""
                items.append(Item(test.stack, place, (Part(look[0]),)))
            elif test.places:
                plain.append(test.stack)
        if plain:
            items.append(Item(", ".join(dict.fromkeys(plain)), parts=(Part(PLAIN_TEST),)))
        return Section("tests", "Try on scraps first, set as for the seam", tuple(items))

    def unknowns(self) -> Section:
        told = ((_short_fact(u.fact), Part(f"{u.effect}.")) for u in self.report.unknowns)
        items = tuple(Item(fact, parts=(effect,)) for fact, effect in told)
        left = self.chosen.left_out + self.dropped
        close = (
            f"{left} lesser cautions and things to do are left out: --all prints them, --reasons "
            "why."
            if left
            else ""
        )
        return Section("unknowns", "Not known, or taken for granted", items, close=close)


def consequences(verdicts: Verdicts) -> list[str]:
    """What the maker's own choices go against: respected, and said."""
    return [
        f"Your choice ({verdict.text}): {claim.who} would rather have {claim.says}."
        for verdict in verdicts.values()
        if any(b.rule == "maker" and b.who == "you" for b in verdict.because)
        for claim in verdict.given_up[:1]
        if claim.who != "you"
    ]


def _trimmed(text: str, verdict: ToldVerdict | None) -> str:
    """An answer as short as a sheet has it: two threads to choose from; what is still open."""
    if verdict is None:
        return text
    if verdict.aspect == "thread.fibre":
        return " or ".join(two_threads(text))
    if verdict.aspect == "design.avoids":
        return ", ".join(word for word in text.split(", ") if word in STILL_OPEN)
    return text


def _short_fact(fact: str) -> str:
    """A fact without the fibres that a cloth may be, which stand with the cloth."""
    return fact[: fact.index(_UNKNOWN) + len(_UNKNOWN)] if _UNKNOWN in fact else fact


def _news(conflict: ToldConflict, told: set[str]) -> str:
    """The message without the reasons that an earlier clash has given already."""
    text = str(conflict.message)
    for claim in conflict.because:
        why = claim.why
        if why and why in told:
            text = text.replace(why, "").strip()
        elif why:
            told.add(why)
    return text.replace("  ", " ")


def _remedies(conflict: ToldConflict) -> str:
    """The cheapest remedy in full, the others by name."""
    remedies = conflict.remedies
    if not remedies:
        return conflict.no_cure
    others = [r.id.replace("-", " ") for r in remedies[1:3] if r.id]
    more = f" Or: {', or '.join(others)}." if others else ""
    return f"{remedies[0].text}{more}"
