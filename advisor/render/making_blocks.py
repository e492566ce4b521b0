"""The build of the seams and the shopping list as sections of a sheet, short and in full."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from advisor.answer.buyingwords import UNDER_CLOTH
from advisor.answer.model.answer import Answer
from advisor.answer.model.making import (
    ToldBuild,
    ToldClass,
    ToldCloth,
    ToldCut,
    ToldThread,
)
from advisor.answer.model.needed import ToldNeed
from advisor.answer.model.told import ToldPlace, ToldVerdict
from advisor.answer.seamwords import thin
from advisor.render import weight_blocks
from advisor.render.bought_words import IN_THE_SEAM, bought_text, strip_text, uncut_text
from advisor.render.lines import PLAIN_TEST, by_place, is_cold, phrase, told_when_cold
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.section import Item, Part, Section
from advisor.render.thread_blocks import long, thread_item, thread_short
from advisor.units import System, needle, show
from advisor.units.factors import MM_PER_INCH
from advisor.units.sentences import said

STANDS_FOR = "stands for "
"""What leads the places that one test on scraps is made for."""
MOST_WARNINGS = 1
"""Warnings of one seam on the close sheet; `--only seams` prints all."""
SEVERAL = 3
"""A warning of so many places is told once for all of them."""
MOST_TOOLS = 5
MOST_NOTIONS = 8
MOST_CUTS = 6
EVERYDAY = "As in any workroom; look whether yours has it"
SHAPED = frozenset({"tucks", "flounce", "tiers"})
"""Shapes that the close sheet tells of; `--only shopping` tells every size that is reckoned."""
MOST_LOOKS = 5


def seam_parts(seam: ToldPlace, numbers: Numbers, told: Collection[str] = ()) -> list[Part]:
    """Bulk of a seam in a clause, what is cut for it, and the worst that goes against its plan.

    Args:
        seam: the place.
        numbers: what marks the sources.
        told: warnings that were told of several places at once.
    """
    built = seam.built
    if built is None:
        return []
    marks = "" if built.room == "fine" else numbers.mark(["design-choice", "derived"])
    full = built.fullness.says if built.fullness else ""
    parts = [Part(f"{built.build}.", marks=marks)]
    parts += [Part(text) for text in (built.band_says, full) if text]
    return parts + [Part(text) for text in built.build_warns[:MOST_WARNINGS] if text not in told]


def shared_warnings(places: Sequence[ToldPlace]) -> dict[str, list[str]]:
    """Warnings that several places have alike, each with the names of those places."""
    found: dict[str, list[str]] = {}
    for place in places:
        for text in place.built.build_warns[:MOST_WARNINGS] if place.built else ():
            found.setdefault(text, []).append(place.name)
    return {text: names for text, names in found.items() if len(names) >= SEVERAL}


def to_buy(report: Answer, numbers: Numbers) -> Section:
    """A few lines of what to buy; nothing where the project gives neither pieces nor lengths."""
    notions = {row.item for row in report.kit or () if row.group == IN_THE_SEAM}
    cloths = [row for row in (report.cloth or ()) if row.pieces and row.fabric not in notions]
    threads = [row for row in (report.thread or ()) if row.total_m > 0]
    items = []
    if cloths:
        text = "; ".join(_cloth_short(row, report.units) for row in cloths)
        marks = numbers.mark(["estimate"])
        items.append(
            Item("cloth", parts=(Part(f"{text}. An estimate: lay out first.", marks=marks),))
        )
    if threads:
        text = "; ".join(thread_short(rows, report.units) for rows in _by_colour(threads))
        items.append(Item("thread", parts=(Part(f"{text}."),)))
    items += _notions(report)
    items += weight_blocks.heavy(report)
    shaped = [row for row in (report.cut or ()) if row.of in SHAPED]
    items += [_cut_short(row, numbers) for row in shaped[:MOST_CUTS]]
    missing = [row for row in (report.kit or ()) if row.state == "missing"]
    if missing and items:
        text = "; ".join(_tool_short(row) for row in missing[:MOST_TOOLS])
        rest = len(missing) - MOST_TOOLS
        more = f"; {rest} more" if rest > 0 else ""
        items.append(Item("not in your kit", parts=(Part(f"{text}{more}."),)))
    close = "All of it: advisor sheet FILE --only shopping." if items else ""
    return Section("shopping", "To buy", tuple(items), close=close)


def _notions(report: Answer) -> list[Item]:
    """Zips, buttons, tapes and whatever else goes in, with how many or how much of each."""
    units = report.units
    rows = [row for row in report.kit or () if row.group == IN_THE_SEAM and row.state != "have"]
    like_cloth = [row for row in rows if row.least_mm is not None and not row.buy]
    others = (row for row in rows if row not in like_cloth)
    told = [
        f"{row.item}, {text.removesuffix(UNDER_CLOTH)}"
        for row in others
        if (text := _not_yet(row, report) or bought_text(row, units))
    ]
    more = f"; {len(told) - MOST_NOTIONS} more" if len(told) > MOST_NOTIONS else ""
    text = "; ".join(told[:MOST_NOTIONS]) + more
    if like_cloth:
        text += f"{'; ' if text else ''}{uncut_text(like_cloth, units)}"
    return [Item("notions", parts=(Part(f"{text}."),))] if text else []


def _by_colour(threads: list[ToldThread]) -> list[list[ToldThread]]:
    groups: dict[str, list[ToldThread]] = {}
    for row in threads:
        groups.setdefault(row.colour, []).append(row)
    return list(groups.values())


def shopping(report: Answer, numbers: Numbers) -> list[Section]:
    """The whole shopping list: cloth, thread, kit; what is not known is said."""
    return [
        *cloth(report, numbers),
        *thread(report, numbers),
        *weight_blocks.weight(report, numbers),
        *kit(report, numbers),
    ]


def cloth(report: Answer, numbers: Numbers) -> list[Section]:
    """Cloth to buy, or how to have it reckoned."""
    units = report.units
    rows = report.cloth or ()
    items = tuple(_cloth_item(row, report, numbers) for row in rows if row.pieces)
    unsaid = [row for row in rows if not row.pieces]
    if unsaid:
        names = ", ".join(row.fabric for row in unsaid)
        items += (Item("not reckoned", parts=(Part(f"{names}: {unsaid[0].wrong}."),)),)
    if not items:
        text = "The project gives no pieces: write them under pieces: to have cloth reckoned."
        return [Section("cloth", "Cloth", (), text), *_cutting(report, numbers)]
    selvage, ends = said(1, "cm", units), said(15, "mm", units)
    close = (
        f"An estimate: pieces are packed as rectangles, with {selvage} left out at each selvage "
        f"and {ends} for square ends where nothing was said. Lay out before you buy."
    )
    close = close if any(row.pieces and row.area_m2 is None for row in rows) else ""
    return [Section("cloth", "Cloth", items, close=close), *_cutting(report, numbers)]


def _cutting(report: Answer, numbers: Numbers) -> list[Section]:
    """Sizes that were reckoned, with their marks; bands, and full edges that have no piece."""
    rows = [row for row in (report.cut or ()) if row.reckoned]
    items = tuple(Item(row.name, row.fabric, tuple(_cut_parts(row, numbers))) for row in rows)
    close = "Sizes as cut, seams and hems in them, from cloth that has been shrunk." if rows else ""
    told = {row.fabric for row in report.cut or ()}
    built = [(seam.name, seam.built) for seam in report.seams if seam.built]
    named = {row.name for row in rows}
    bands = ((name, one.band_says) for name, one in built if name not in named)
    items += tuple(Item(name, parts=(Part(text),)) for name, text in bands if text)
    full = [(name, one.fullness) for name, one in built]
    items += tuple(
        Item(name, parts=(Part(one.says),))
        for name, one in full
        if one is not None and one.says and one.cloth not in told
    )
    return [Section("cut", "Cut and mark", items, close=close)] if items else []


def _cut_short(row: ToldCut, numbers: Numbers) -> Item:
    """A shaped piece on the close sheet: size and marks in one, then the first thing to mind."""
    text = "; ".join(filter(None, (row.size, row.marks)))
    parts = [Part(f"{text}.", marks=numbers.mark(row.sources))]
    return Item(row.name, parts=(*parts, *(Part(each) for each in row.says[:1])))


def _cut_parts(row: ToldCut, numbers: Numbers) -> list[Part]:
    """The size of a piece, its marks, and what to mind."""
    marks = numbers.mark(row.sources)
    parts = [Part(row.size, "cut", "" if row.marks else marks)]
    if row.marks:
        parts.append(Part(row.marks, "mark", marks))
    return parts + [Part(text) for text in row.says]


def thread(report: Answer, numbers: Numbers) -> list[Section]:
    """Thread to buy, by colour."""
    units = report.units
    items = tuple(thread_item(row, units, numbers) for row in (report.thread or ()))
    close = "15 % for wastage is in it."
    if any(row.overlocker_m for row in report.thread or ()):
        close += " One set of cones serves where its colour does not show."
    return [Section("thread", "Thread", items, close=close)] if items else []


def kit(report: Answer, numbers: Numbers) -> list[Section]:
    """What the project calls for: what is missing first, with what does instead."""
    rows = report.kit or ()
    missing = [row for row in rows if row.state == "missing"]
    unsaid = [row for row in rows if row.state == "not said"]
    have = [row for row in rows if row.state == "have"]
    everyday = ", ".join(row.item for row in rows if row.state == "everyday")
    items = [_tool_item(row, report, numbers) for row in missing]
    found = [Section("kit", "Not in your kit", tuple(items))]
    items = [_tool_item(row, report, numbers) for row in unsaid]
    found.append(
        Section(
            "kit",
            "Called for",
            tuple(items),
            close=(
                "Write what you have under kit: in the project or your settings, "
                "and this list grows short."
                if unsaid
                else ""
            ),
        )
    )
    if have:
        text = ", ".join(row.item for row in have)
        found.append(Section("kit", "At hand", (Item(text),)))
    if everyday:
        found.append(Section("kit", EVERYDAY, (Item(everyday),)))
    return [section for section in found if section.items]


def seams_in_full(report: Answer, numbers: Numbers) -> Section:
    """Every seam as it is built, with all its places, figures and steps."""
    units = report.units
    items = []
    for seam in report.seams:
        built = seam.built
        if built is None:
            continue
        parts = [Part(built.build, "bulk", numbers.mark(built.build_sources))]
        if len(built.spots) > 1:
            parts.append(Part(_spots_text(built, units), "places"))
        parts.append(Part(_class_text(built.class_), "in the standards"))
        parts += [Part(text) for text in built.build_says]
        if built.thread_m:
            by = ", ".join(f"{k} {long(v, units)}" for k, v in built.thread_m.by.items())
            times = f" ({built.times} times)" if built.times > 1 else ""
            parts.append(Part(f"{by}{times}", "thread"))
        about = " + ".join(seam.layers)
        items.append(Item(seam.name, about, tuple(p for p in parts if p.text)))
    return Section("seams", "Seams as they are built", tuple(items))


def tests_in_full(report: Answer, numbers: Numbers) -> Section:
    """Each length, then every sandwich: settings, what to look for, its result or a line for it."""
    del numbers
    items = []
    places = by_place(report)
    asked: set[str] = set()
    for test in sorted(report.tests, key=lambda test: bool(test.places)):
        verdicts = places.get(("seam", test.places[0]), {}) if test.places else {}
        said = told_when_cold(verdicts) if is_cold(verdicts) else verdicts.values()
        known = {v.aspect: v for v in said if _told(v)}
        told = [known[aspect] for aspect in test.settings or () if aspect in known]
        set_to = ", ".join(phrase(verdict) for verdict in told)
        fresh = [text for text in test.look_for if text not in asked][:MOST_LOOKS]
        asked.update(fresh)
        look = " ".join(fresh) or PLAIN_TEST
        parts = [Part(set_to, "set"), Part(look.rstrip("."), "look")]
        results = test.results or ()
        for row in results:
            how = "" if row.works else "it failed: "
            parts.append(Part(f"{how}{row.result.rstrip('.')}", "result"))
        if not results:
            parts.append(Part("____________________", "result"))
        about = f"{STANDS_FOR}{', '.join(test.places)}" if test.places else "before it is cut"
        items.append(Item(test.stack, about, tuple(p for p in parts if p.text)))
    return Section(
        "tests_full",
        "Try on scraps first",
        tuple(items),
        close=("Write what you saw under results: in the project, and it is printed here."),
    )


def _cloth_short(row: ToldCloth, units: System) -> str:
    if row.wrong:
        return f"{row.fabric} cannot be laid out, as figures that do not agree say"
    of = "" if row.area_m2 is not None else f" of {_wide(row, units)}"
    return f"{row.fabric} {row.buy}{of}"


def _wide(row: ToldCloth, units: System) -> str:
    """The width of a cloth as shops say it."""
    if row.width_mm is None:
        return "a width that is not said"
    if units == "us":
        return f"{row.width_mm / MM_PER_INCH:.0f} in"
    return f"{row.width_mm / 10:g} cm"


def _cloth_item(row: ToldCloth, report: Answer, numbers: Numbers) -> Item:
    about = "" if row.area_m2 is not None else f"{_wide(row, report.units)} wide"
    if about and "width" in row.assumed:
        about += ", taken for granted"
    if row.wrong:
        return Item(row.fabric, about, (Part(f"cannot be laid out: {row.wrong}"),))
    parts = [Part(row.buy, "buy", numbers.mark(["estimate"]))]
    way = "all pieces one way" if row.one_way else "pieces either way"
    shrinks = f"{row.shrinks_percent:g} % for shrinking"
    if "shrinkage" in row.assumed:
        shrinks += " (as usual for such cloth)"
    number = f"{row.pieces} piece{'s' if row.pieces != 1 else ''}"
    if row.area_m2 is not None:
        shrinks = "nothing for shrinking"
    parts.append(Part(f"{number}, {way}, {shrinks}; {row.used_percent:.0f} % of it is used."))
    parts += [Part(sentence) for sentence in row.says]
    needs = (need for need in report.kit or () if need.item == row.fabric)
    parts += [Part(f"{text.capitalize()}.") for need in needs if (text := _not_yet(need, report))]
    parts += [
        Part(check.text.rstrip("."), "before you buy, for it does not agree")
        for check in report.checks or ()
        if check.cloth == row.fabric
    ]
    return Item(row.fabric, about, tuple(parts))


def _tool_short(row: ToldNeed) -> str:
    instead = f" (or {row.instead[0].text})" if row.instead else ""
    return f"{_tool_name(row)}{instead}"


def _tool_name(row: ToldNeed) -> str:
    """A tool; a needle with the number of the other system."""
    if row.group != "needles":
        return str(row.item)
    point, _, size = row.item.rpartition(" ")
    return f"{point} needle {needle(float(size))}"


def _not_yet(row: ToldNeed, report: Answer) -> str:
    """That what hurts somebody, or is ruled out, is not bought before its conflict is settled."""
    for one in report.conflicts:
        if one.bars_buying(row.item, row.for_):
            return f"not to be bought before number {one.number} of what can go wrong is settled"
    return ""


def _tool_item(row: ToldNeed, report: Answer, numbers: Numbers) -> Item:
    name, units = _tool_name(row), report.units
    about = ", ".join(row.for_[:4]) + (" and more" if len(row.for_) > 4 else "")
    parts = []
    if row.strip:
        parts.append(
            Part(strip_text(row, row.strip, units), "cut", numbers.mark(row.strip.sources))
        )
    elif warned := _not_yet(row, report):
        parts.append(Part(f"{warned.capitalize()}."))
    elif bought := bought_text(row, units):
        parts.append(Part(bought, "buy"))
    for bend in row.bends:
        thick, radius = (show("length", v, units) for v in (bend.thickness_mm, bend.radius_mm))
        text = f"{bend.of.capitalize()} {thick} thick bends no tighter than a radius of {radius}."
        parts.append(Part(text, marks=numbers.mark(bend.sources)))
    parts += [Part(s.text, "or", numbers.mark(s.sources)) for s in row.instead[:2]]
    if row.ruled_out and not row.instead:
        parts.append(Part(f"The cloths rule out {row.ruled_out[0]}."))
    return Item(name, about, tuple(parts))


def _spots_text(seam: ToldBuild, units: System) -> str:
    return ", ".join(
        f"{spot.at} {spot.plies:.3g} ({thin(spot.thickness_mm, units)})" for spot in seam.spots
    )


def _class_text(named: ToldClass) -> str:
    rows = (
        ("iso_4915", "stitch ISO 4915", named.iso_4915),
        ("iso_4916", "seam ISO 4916", named.iso_4916),
        ("astm_d6193", "ASTM D6193", named.astm_d6193),
    )
    return ", ".join(
        f"{words} {value}{' (from memory)' if key in named.from_memory else ''}"
        for key, words, value in rows
        if value
    )


def _told(verdict: ToldVerdict) -> bool:
    """Whether a setting is worth printing: no press cloth goes without saying."""
    return (verdict.aspect, verdict.text) != ("press.cloth", "none")
