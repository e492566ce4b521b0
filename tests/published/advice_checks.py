"""Looks up in the advice what a published row says that it must hold.

Checks of a row, all on what the sheet says of the layers in `ask`:

    inside     every verdict on the aspect lies inside the options, or between min and max
    pick       the answer that is printed first lies there
    holds      these options or numbers are still among the answers
    refuses    none of these options is left
    lists      these options are named (suits, avoids)
    limit      the iron limit of the seam lies there, °C
    conflict   a conflict on one of these aspects; with `cures`, one of these remedies is offered
    curable    every conflict has a remedy
    says       a sentence with all of these words (as patterns) is in a caution, thing to do, test
               or reason; `caution`, `do` and `test` look in that part only
    explain    what is told about an entry holds the words
    trait      a cloth has at least this level of a trait
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from advisor.answer.pipeline import Parts
from advisor.decide.advise import advise
from advisor.explain.about import explain
from advisor.knowledge.model import Knowledge
from advisor.project.quick import quick_garment
from tests.told import data_of
from tests.typed import shipped

FUSIBLES = {"fusible", "fusible knit", "low-temperature fusible"}
NO_GLUE = {
    "velvet",
    "stretch-velvet",
    "panne-velvet",
    "sequinned",
    "beaded",
    "faux-fur",
    "lame",
    "chiffon",
    "georgette",
    "pleated",
    "vinyl",
    "corded-lace",
}
"""Cloths on which the rows refuse glue: crushed pile, hard trimming, strike-through, film."""


@dataclass(frozen=True)
class Answer:
    """What the tool says of one question: the report as printed, and what is behind it."""

    garment: Any
    told: dict[str, Any]
    iron: list[dict[str, Any]]
    conflicts: tuple[Any, ...]


@cache
def knowledge() -> Knowledge:
    return shipped()


def answer(ask: dict[str, Any]) -> Answer:
    layers = ask.get("layers", ["calico"])
    garment = quick_garment(layers, knowledge(), ask.get("seam"), ask.get("maker"))
    told = data_of(garment, knowledge(), Parts(iron=True))
    return Answer(garment, told, told["iron"], advise(garment, knowledge()).judgement.conflicts)


def verdicts(found: Answer, aspect: str, at: str | None) -> list[dict[str, Any]]:
    """Verdicts on an aspect in the seam and its cloths; care is a matter of each cloth."""
    return [
        v
        for v in found.told["verdicts"]
        if v["aspect"] == aspect and v["scope"] != "garment" and (at is None or v["place"] == at)
    ]


def span_of(aspect: str, value: Any) -> tuple[float, float]:
    """A wanted range, or one wanted value, as numbers; words of a scale as their place."""
    about = knowledge().aspects[aspect]
    if not isinstance(value, dict):
        value = {"min": value, "max": value}

    def number(word: Any) -> float:
        return float(about.words.index(str(word))) if about.words else float(word)

    low = number(value["min"]) if "min" in value else about.low
    return low, number(value["max"]) if "max" in value else about.high


def fits(verdict: dict[str, Any], wanted: Any, part: str) -> bool:
    """Whether a verdict (`inside`) or its pick (`pick`) lies in what is wanted, or `holds` it."""
    aspect = verdict["aspect"]
    if verdict["kind"] == "options":
        words = set(map(str, wanted if isinstance(wanted, list) else [wanted]))
        options = set(verdict["options"])
        if part == "pick":
            # "any of these" agrees where each of them is what the work names.
            return verdict["pick"] in words or (
                verdict["pick"] is None and bool(options) and options <= words
            )
        return bool(options) and (words <= options if part == "holds" else options <= words)
    if verdict["pick"] is None:
        return False
    ends = ("pick", "pick") if part == "pick" else ("low", "high")
    own = [span_of(aspect, verdict[end])[0] for end in ends]
    if part == "holds":
        values = wanted if isinstance(wanted, list) else [wanted]
        return all(own[0] <= span_of(aspect, v)[0] <= own[1] for v in values)
    low, high = span_of(aspect, wanted)
    return low <= own[0] and own[1] <= high


def show(found: list[dict[str, Any]]) -> str:
    return (
        "; ".join(
            f"{v['place']}: {v.get('options') or [v.get('low'), v.get('high')]}, pick {v['pick']}"
            for v in found
        )
        or "no verdict"
    )


def check_verdicts(part: str, wanted: dict[str, Any], found: Answer, at: str | None) -> list[str]:
    misses = []
    for aspect, value in wanted.items():
        here = verdicts(found, aspect, at)
        if part == "refuses":
            good = bool(here) and all(not set(value) & set(v["options"]) for v in here)
        elif part == "lists":
            good = any(set(value) <= set(v["options"]) for v in here)
        else:
            good = bool(here) and all(fits(v, value, part) for v in here)
        if not good:
            misses.append(f"{part} {aspect} {value}, but {show(here)}")
    return misses


def sentences(found: Answer, part: str) -> list[str]:
    """The sentences of one part of the answer, or of all of them."""
    told = found.told
    parts = {
        "caution": [c["text"] for c in told["cautions"]],
        "do": [a["text"] for a in told["advice"]],
        "test": [line for t in told["tests"] for line in t["look_for"]],
        "reason": [s["why"] for v in told["verdicts"] for s in (*v["because"], *v["given_up"])],
        "conflict": [c["message"] for c in told["conflicts"]]
        + [r["text"] for c in told["conflicts"] for r in c["remedies"]],
    }
    return parts[part] if part in parts else [line for lines in parts.values() for line in lines]


def has_words(lines: list[str], words: str) -> bool:
    patterns = [re.compile(rf"\b(?:{word})", re.IGNORECASE) for word in words.split()]
    return any(all(p.search(line) for p in patterns) for line in lines)


def check_words(part: str, wanted: list[str], found: Answer) -> list[str]:
    lines = sentences(found, part)
    return [f"{part}: nothing says '{words}'" for words in wanted if not has_words(lines, words)]


def check_limit(wanted: dict[str, float], found: Answer) -> list[str]:
    limits = [row["range_c"][1] for row in found.iron if row["scope"] == "seam"]
    low, high = wanted.get("min", 0), wanted.get("max", 999)
    if limits and all(low <= limit <= high for limit in limits):
        return []
    return [f"iron limit {limits}, not {wanted}"]


def check_conflict(wanted: list[str], cures: list[str], found: Answer) -> list[str]:
    here = [c for c in found.told["conflicts"] if c["aspect"] in wanted]
    if not here:
        return [f"no conflict on {wanted}, only {[c['aspect'] for c in found.told['conflicts']]}"]
    offered = {r["id"] for c in here for r in c["remedies"]}
    if not cures or offered & set(cures):
        return []
    return [f"cures {sorted(offered)}, none of {cures}"]


def check_trait(wanted: dict[str, str], found: Answer) -> list[str]:
    misses = []
    for cloth in found.garment.cloths.values():
        for trait, level in wanted.items():
            words = knowledge().traits[trait]
            own = knowledge().entries[cloth.entry].traits.get(trait, (0, 0))
            if own[0] < words.index(level):
                misses.append(f"{cloth.name}: {trait} is {words[own[0]]}, not {level}")
    return misses


def check_explain(wanted: dict[str, list[str]]) -> list[str]:
    misses = []
    for name, words in wanted.items():
        text = " ".join(explain(name, knowledge(), "metric")[0])
        lines = re.split(r"(?<=[.:;])\s+", re.sub(r"\s+", " ", text))
        misses += [f"explain {name}: nothing says '{w}'" for w in words if not has_words(lines, w)]
    return misses


def misses_of(ask: dict[str, Any], found: Answer) -> list[str]:
    """What a question's answer lacks of what its row expects."""
    misses: list[str] = []
    at = ask.get("at")
    for part, wanted in ask.items():
        if part in ("inside", "pick", "holds", "refuses", "lists"):
            misses += check_verdicts(part, wanted, found, at)
        elif part in ("says", "caution", "do", "test"):
            misses += check_words(part, wanted, found)
        elif part == "limit":
            misses += check_limit(wanted, found)
        elif part == "conflict":
            misses += check_conflict(wanted, ask.get("cures", []), found)
        elif part == "curable":
            misses += [
                f"no cure for {c['message']}" for c in found.told["conflicts"] if not c["remedies"]
            ]
        elif part == "trait":
            misses += check_trait(wanted, found)
        elif part == "explain":
            misses += check_explain(wanted)
        elif part not in ("layers", "seam", "maker", "at", "cures", "unsafe"):
            misses.append(f"unknown check '{part}'")
    return misses


def ceiling_of(found: Answer, names: list[str]) -> float:
    """The strictest published ceiling of good standing of all fibres that may be there, °C."""
    limits = []
    own = found.garment.cloths  # a stay that is advised beside them has its limit from the rules
    for name in (n for n in names if n in own):
        for mix in own[name].mixes:
            for fibre, _ in mix:
                ceilings = knowledge().fibres[fibre].ceilings
                good = [c.max for c in ceilings if c.good] or [c.max for c in ceilings]
                limits.append(min(good))
    return min(limits, default=250.0)


def is_skin(entry: str) -> bool:
    about = knowledge().entries[entry]
    return about.structure in ("skin", "film") or about.family in ("skins", "coated")


def unsafe_in_general(found: Answer) -> list[str]:
    """Harm that no row may bring, whatever it is about."""
    entries = [cloth.entry for cloth in found.garment.cloths.values()]
    cloths = [e for e in entries if knowledge().entries[e].kind == "cloth"]
    harm = []
    for row in found.iron:
        names = [layer["name"] for layer in row["layers"]]
        if row["range_c"][1] > ceiling_of(found, names):
            harm.append(f"iron {row['range_c'][1]} at {row['place']}: a layer bears less")
    skins = [e for e in cloths if is_skin(e)]
    tender = {name for name, c in found.garment.cloths.items() if c.entry in NO_GLUE}
    standing = set(entries) & NO_GLUE - {"panne-velvet"}  # panne is ironed flat on purpose
    for v in found.told["verdicts"]:
        aspect, options = v["aspect"], set(v.get("options") or [])
        if aspect == "needle.point" and "leather" in options and len(skins) < len(cloths):
            harm.append("a cutting point is allowed on cloth")
        if aspect == "pin.place" and skins and v["high"] == "anywhere":
            harm.append("pins anywhere on a skin or film")
        here = v["scope"] == "seam" or v["place"] in tender
        if aspect == "interfacing.kind" and tender and here and options & FUSIBLES:
            harm.append(f"glue is allowed on {sorted(tender)} at {v['place']}")
        if aspect == "press.motion" and standing and here and "glide" in options:
            harm.append(f"a sliding iron is allowed on {sorted(standing)}")
    return harm


def unsafe_by_row(ask: dict[str, Any], found: Answer) -> list[str]:
    """Harm that a row itself names: a hotter iron than it says, an option it forbids."""
    about = ask.get("unsafe", {})
    harm = []
    if "iron over" in about:
        harm += [
            f"iron {row['range_c'][1]} over {about['iron over']}"
            for row in found.iron
            if row["range_c"][1] > about["iron over"]
        ]
    for aspect, options in about.get("allows", {}).items():
        words = [options] if isinstance(options, str) else options
        for v in verdicts(found, aspect, ask.get("at")):
            left = set(v.get("options") or [v.get("high")]) & set(words)
            harm += [f"{aspect} allows {sorted(left)} at {v['place']}"] if left else []
    lines = sentences(found, "all")
    harm += [f"nothing warns of '{w}'" for w in about.get("silent", []) if not has_words(lines, w)]
    return harm
