"""A garment of twelve seams and six cloths, and the matching of its rules as facts and conditions.

The facts are what the engine asks: one subject for each different use of a cloth and for each
seam. What another engine would be slow or awkward at (shares of a mix, the maker's machine) is
answered for it beforehand, so that the comparison errs in its favour.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any

from advisor.claims.conditions import maker_facts, seam_facts, test_facts
from advisor.claims.placefacts import garment_facts, place_facts
from advisor.claims.subjects import has_fibre, subject_of
from advisor.knowledge.model import Claim, Knowledge, Rule
from advisor.overlay.cache import load_knowledge
from advisor.project.garment import Garment, Seam, Use
from advisor.project.quick import quick_garment

PHRASES = (
    "linen suiting 240 g/m2",
    "nylon organza",
    "viscose velvet",
    "acetate lining",
    "wool jersey",
    "brocade, fibre unknown",
)
NAMES = ("shell", "frill", "collar", "lining", "cuff", "gift")
Tree = list[Any]


@cache
def known() -> Knowledge:
    """The shipped knowledge."""
    return load_knowledge()


@cache
def garment() -> Garment:
    """Twelve seams of six cloths, some gathered, stretched, curved or turned."""
    cloths = {}
    for name, phrase in zip(NAMES, PHRASES, strict=True):
        (cloth,) = quick_garment([phrase], known()).cloths.values()
        cloths[name] = type(cloth)(name, cloth.entry, cloth.mixes, cloth.weight, cloth.thickness)
    pairs = [
        (0, 0),
        (0, 1),
        (0, 2),
        (0, 3),
        (0, 4),
        (0, 5),
        (3, 3),
        (1, 1),
        (2, 2),
        (3, 4),
        (2, 3),
        (5, 5),
    ]
    shapes = ("straight", "curved", "corner")
    seams = tuple(
        Seam(
            f"seam {i}",
            (Use(NAMES[a]), Use(NAMES[b], fullness=2.0 if i == 1 else 1.0), Use(NAMES[a])),
            {"shape": shapes[i % 3], "edge": ("open", "turned")[i % 2]},
        )
        for i, (a, b) in enumerate(pairs)
    )
    return Garment("coat", cloths, seams)


@dataclass(frozen=True)
class Case:
    """What is given to another engine.

    Attributes:
        levels, words, numbers, fibres: facts by subject; a fibre row is (mix, fibre).
        told: leaves answered beforehand, (leaf, subject, surely).
        members: the uses in each seam, by position.
        conditions: every condition that is asked, by its number.
        rules: each rule with the numbers of its conditions and of its seam part.
    """

    levels: list[tuple[str, str, int, int]]
    words: list[tuple[str, str, str]]
    numbers: list[tuple[str, str, float, float]]
    fibres: list[tuple[str, int, str]]
    told: list[tuple[str, str, bool]]
    members: list[tuple[str, int, str]]
    conditions: list[Tree]
    rules: list[tuple[Rule, list[int], int | None]]


@cache
def case() -> Case:
    """The garment and every rule as plain facts and conditions."""
    what = Case([], [], [], [], [], [], [], [])
    names = {use: f"u{i}" for i, use in enumerate(uses())}
    for use, name in names.items():
        _subject(what, use, name)
    for i, seam in enumerate(garment().seams):
        facts = seam_facts(seam) | place_facts(seam, garment(), known())
        for key, value in facts.items():
            if isinstance(value, str):
                what.words.append((f"s{i}", key, value))
            else:
                what.numbers.append((f"s{i}", key, value, value))
        for at, use in enumerate(seam.uses):
            what.members.append((f"s{i}", at, names[use]))
    maker = maker_facts(garment().maker) | garment_facts(garment(), known())
    for rule in known().rules:
        part = rule.parts.get("maker")
        if part is None or test_facts(part, maker):
            _rule(what, rule)
    for tree in what.conditions:
        _tell_shares(what, tree, names)
    return what


def uses() -> list[Use]:
    """Every different use of a cloth, first each by itself."""
    own = [Use(name) for name in NAMES]
    return list(dict.fromkeys([*own, *(u for s in garment().seams for u in s.uses)]))


def _subject(what: Case, use: Use, name: str) -> None:
    about = subject_of(garment().cloths[use.cloth], use, known())
    for trait in known().traits:
        what.levels.append((name, trait, *about.levels.get(trait, (0, 0))))
    what.words.extend((name, key, value) for key, value in about.words.items())
    what.numbers.extend((name, key, *span) for key, span in about.numbers.items())
    what.fibres.extend(
        (name, k, fibre) for k, mix in enumerate(about.cloth.mixes) for fibre, _ in mix
    )


def _rule(what: Case, rule: Rule) -> None:
    main = rule.parts.get(rule.shape) if rule.shape != "seam" else None
    trees = main if "pair" in rule.shape else [main] if main else []
    numbers = []
    for tree in trees or []:
        what.conditions.append(tree)
        numbers.append(len(what.conditions) - 1)
    part = rule.parts.get("seam")
    seam_number = None
    if part is not None:
        what.conditions.append(part)
        seam_number = len(what.conditions) - 1
    what.rules.append((rule, numbers, seam_number))


def leaf_name(tree: Tree) -> str:
    """A name for a leaf that is answered beforehand."""
    return f"{tree[2]} {' '.join(tree[1])}"


def _tell_shares(what: Case, tree: Tree, names: dict[Use, str]) -> None:
    if tree[0] == "fibre" and tree[2] != "any":
        for use, name in names.items():
            about = subject_of(garment().cloths[use.cloth], use, known())
            truth = has_fibre(about, tree[1], tree[2])
            if truth:
                what.told.append((leaf_name(tree), name, int(truth) == 2))
    for part in tree[1:]:
        if (
            isinstance(part, list)
            and part
            and isinstance(part[0], str)
            and tree[0]
            in (
                "all",
                "any",
                "not",
            )
        ):
            _tell_shares(what, part, names)


def fibres_of(tree: Tree) -> list[str]:
    """The fibres that a leaf on fibres or on groups names."""
    if tree[0] == "fibre":
        return list(tree[1])
    return [id_ for id_, fibre in known().fibres.items() if fibre.group in tree[1]]


def musts(rule: Rule) -> list[Claim]:
    """The claims of a rule that meet first."""
    return [c for c in rule.claims if c.strength == "must"]
