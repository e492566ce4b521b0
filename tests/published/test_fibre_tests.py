"""The published burn and solvent tables against `identify`: each fibre's own row leaves that fibre.

The rows restate the tables of fibre-test-page and burn-test-pages (the common fibres), and of
iowa-burning and filter-fibre-guide; a row marked memory is no more than that.
"""

from __future__ import annotations

from itertools import combinations, product

import pytest

from advisor.identify.eliminate import Finding, Seen, identify
from advisor.identify.observed import find_observation, read_answer
from tests.typed import shipped as knowledge

# fibres | as it nears the flame | in it | out of it | smell | residue | source
BURN = (
    (
        ("cotton", "linen", "hemp", "ramie"),
        "no shrinking",
        "fast",
        "red afterglow",
        "paper",
        "feathery ash",
        "fibre-test-page",
    ),
    (
        ("viscose", "modal", "lyocell", "cupro"),
        "ignites at once",
        "fast",
        "burns on",
        "paper",
        "almost no ash",
        "burn-test-pages",
    ),
    (
        ("viscose",),
        "ignites",
        "burns quickly",
        "ember",
        "burning paper",
        "soft grey ash",
        "burn-test-pages",
    ),
    (
        ("silk", "wool", "mohair", "cashmere"),
        "curls away",
        "sputters",
        "self-extinguishes",
        "hair",
        "crushable black bead",
        "fibre-test-page",
    ),
    (
        ("silk",),
        "curls away",
        "burns slowly",
        "self-extinguishes",
        "hair",
        "ash skeleton",
        "memory",
    ),
    (
        ("acetate", "triacetate"),
        "fuses away",
        "melts and drips",
        "burns and melts on",
        "vinegar",
        "irregular black bead",
        "fibre-test-page",
    ),
    (
        ("polyester",),
        "fuses",
        "melts",
        "self-extinguishes",
        "sweet",
        "hard round black bead",
        "fibre-test-page",
    ),
    (
        ("polyester",),
        "shrinks",
        "drips",
        "keeps melting",
        "aromatic",
        "hard round brown bead",
        "burn-test-pages",
    ),
    (
        ("nylon", "nylon-6", "nylon-66"),
        "fuses",
        "melts and drips",
        "self-extinguishes",
        "celery",
        "grey bead",
        "fibre-test-page",
    ),
    (("nylon",), "shrinks", "melts", "self-extinguishes", "hair", "tan bead", "jp-tables"),
    (
        ("acrylic",),
        "fuses",
        "sputters and melts",
        "burns and melts on",
        "fishy",
        "hard black crust",
        "fibre-test-page",
    ),
    (
        ("modacrylic",),
        "shrinks",
        "puckers and chars",
        "self-extinguishes",
        "acrid",
        "hard black lump",
        "memory",
    ),
    (
        ("polypropylene", "polyethylene"),
        "shrinks",
        "melts and burns",
        "drips on",
        "paraffin",
        "tan bead",
        "fibre-test-page",
    ),
    (("elastane",), "does not shrink", "melts", "burns on and drips", "musty", "sticky", "memory"),
    (("elastane",), "fuses", "melts", "burns on and drips", "chemical", "bead", "memory"),
    (
        ("chlorofibre", "pvdc"),
        "shrinks",
        "melts",
        "self-extinguishes",
        "chlorine",
        "hard black lump",
        "memory",
    ),
    (
        ("aramid",),
        "no change",
        "chars",
        "self-extinguishes",
        "no smell",
        "black char",
        "filter-fibre-guide",
    ),
    (("polylactide",), "melts", "melts", "keeps melting", "faintly sweet", "grey bead", "memory"),
    (("glass", "metal"), "no change", "glows", "goes out", "no smell", "unchanged", "memory"),
    (("paper",), "ignites", "fast", "burns on", "paper", "grey ash", "memory"),
    (("leather",), "curls", "chars", "stops burning", "hair", "brittle black ash", "memory"),
)
TESTS = ("burn.approach", "burn.flame", "burn.after", "burn.smell", "burn.residue")

# fibres | what acetone does | source. Laboratory solvents are not for a sewing table.
ACETONE = (
    (("acetate",), "dissolves", "fibre-test-page"),
    (("modacrylic",), "dissolves", "fibre-test-page"),
    (("modacrylic",), "no change", "fibre-test-page"),
    (("chlorofibre",), "dissolves", "laundry-page-pvc"),
    (("triacetate",), "no change", "cameo-mfa"),
    (
        ("nylon", "polyester", "cotton", "linen", "viscose", "silk", "wool", "acrylic"),
        "no change",
        "fibre-test-page",
    ),
)

# A burn test cannot part these (burn-test-notes).
INSEPARABLE = (("cotton", "linen"), ("silk", "wool"))


def found(seen: dict[str, str]) -> Finding:
    known = knowledge()
    given = []
    for test, answer in seen.items():
        observation = find_observation(test, known)
        given.append(Seen(observation.id, read_answer(observation, answer)))
    return identify(given, list(known.fibres), known.observations)


def burn_rows() -> list[tuple[str, dict[str, str]]]:
    return [(fibre, dict(zip(TESTS, row[1:6], strict=True))) for row in BURN for fibre in row[0]]


@pytest.mark.parametrize(("fibre", "row"), burn_rows())
def test_a_fibre_remains_after_its_own_row(fibre: str, row: dict[str, str]) -> None:
    """Seen to burn as its own row says, a fibre is among those that remain."""
    assert fibre in found(row).remain


@pytest.mark.parametrize(("fibre", "row"), burn_rows())
def test_a_fibre_remains_after_any_part_of_its_row(fibre: str, row: dict[str, str]) -> None:
    """Any two cells of its row, seen alone, leave the fibre as well."""
    for some in combinations(row.items(), 2):
        assert fibre in found(dict(some)).remain


# Every word of the burn tables of fibre-test-page and burn-test-pages (what they do not say is of
# iowa-burning, filter-fibre-guide, jp-tables, clothing-text-1916 or memory), disputed ones too:
# fibres | nearing the flame | in it | out of it | smell | residue
WORDS = (
    (
        ("cotton", "linen", "hemp", "ramie"),
        ("no shrinking", "ignites"),
        ("fast", "yellow flame"),
        ("burns on", "red afterglow", "glows"),
        ("paper", "leaves"),
        ("soft grey ash", "feathery ash", "ash"),
    ),
    (
        ("viscose", "modal", "lyocell", "cupro"),
        ("ignites at once",),
        ("fast", "yellow flame"),
        ("burns on", "no afterglow", "ember", "glows"),
        ("paper",),
        ("almost no ash", "ash"),
    ),
    (
        ("silk", "wool", "mohair", "cashmere"),
        ("curls away", "curls", "shrinks"),
        ("slow", "sputters", "burns slowly"),
        ("self-extinguishes",),
        ("hair",),
        ("bead", "black bead", "crushable black bead", "ash"),
    ),
    (("silk",), ("curls",), ("slow",), ("glows",), ("hair",), ("ash skeleton",)),
    (
        ("acetate", "triacetate"),
        ("fuses away", "shrinks"),
        ("fast", "melts", "sputters", "drips"),
        ("burns on", "burns and melts on"),
        ("vinegar",),
        ("irregular black bead", "bead", "black bead"),
    ),
    (
        ("polyester",),
        ("fuses", "shrinks"),
        ("slow", "melts", "drips"),
        ("burns with difficulty", "self-extinguishes", "burns on"),
        ("sweet", "aromatic"),
        ("hard round black bead", "hard round brown bead", "bead", "black bead"),
    ),
    (
        ("nylon",),
        ("fuses", "shrinks"),
        ("slow", "melts", "drips"),
        ("self-extinguishes", "burns on"),
        ("celery", "hair"),
        ("grey bead", "tan bead", "bead"),
    ),
    (
        ("acrylic",),
        ("fuses",),
        ("rapid", "sputters", "melts", "fast"),
        ("burns on", "burns and melts on"),
        ("acrid", "fishy"),
        ("irregular crust", "bead", "black bead"),
    ),
    (
        ("modacrylic",),
        ("shrinks",),
        ("puckers and chars", "chars", "hard to light"),
        ("self-extinguishes",),
        ("acrid", "chemical"),
        ("hard black lump", "black bead"),
    ),
    (
        ("polypropylene", "polyethylene"),
        ("shrinks", "curls"),
        ("melts", "drips", "burns fast"),
        ("burns on",),
        ("candle", "paraffin"),
        ("tan bead", "bead"),
    ),
    (
        ("elastane",),
        ("fuses", "does not shrink"),
        ("melts", "burns fast"),
        ("burns on",),
        ("musty", "chemical"),
        ("sticky", "black ash", "bead"),
    ),
    (
        ("chlorofibre",),
        ("shrinks", "curls"),
        ("melts", "slow"),
        ("self-extinguishes",),
        ("chlorine", "acrid"),
        ("hard black lump", "black bead"),
    ),
    (("aramid",), ("no change",), ("glows", "chars"), ("self-extinguishes",), ("none",), ("char",)),
    (
        ("polylactide",),
        ("melts",),
        ("slow", "melts"),
        ("burns on",),
        ("sweet",),
        ("grey bead", "bead"),
    ),
    (
        ("glass", "metal"),
        ("no change",),
        ("glows", "melts"),
        ("goes out", "glows"),
        ("none",),
        ("unchanged", "bead"),
    ),
    (("leather",), ("curls",), ("chars",), ("stops burning",), ("hair",), ("brittle black ash",)),
)


@pytest.mark.parametrize("row", WORDS, ids=lambda row: row[0][0])
def test_the_truth_is_never_lost_over_all_published_words(row: tuple[tuple[str, ...], ...]) -> None:
    """However a table says it, and whichever tables are put together, the fibre remains."""
    fibres, *columns = row
    for words in product(*columns):
        remain = found(dict(zip(TESTS, words, strict=True))).remain
        assert set(fibres) <= set(remain), words


def test_burns_on_means_no_more_than_going_on() -> None:
    """It rules out what goes out by itself, and neither cotton nor viscose nor acetate."""
    remain = set(found({"burn.after": "burns on"}).remain)
    assert {"cotton", "linen", "viscose", "acetate", "acrylic", "polypropylene"} <= remain
    assert not {"wool", "silk", "aramid", "leather"} & remain


@pytest.mark.parametrize(("fibres", "answer", "source"), ACETONE)
def test_acetone_leaves_what_it_does_so_to(
    fibres: tuple[str, ...], answer: str, source: str
) -> None:
    """A fibre that acetone is published to treat so remains."""
    assert source in knowledge().sources
    assert set(fibres) <= set(found({"acetone": answer}).remain)


def test_acetone_rules_out_what_it_does_not_dissolve() -> None:
    """A snip that dissolves in acetone is none of the common fibres that do not."""
    gone = {"triacetate", "nylon", "polyester", "cotton", "linen", "viscose", "silk", "wool"}
    assert set() == gone & set(found({"acetone": "dissolves"}).remain)


@pytest.mark.parametrize(("one", "other"), INSEPARABLE)
def test_the_inseparable_stay_together(one: str, other: str) -> None:
    """No row of the burn table parts cotton from linen or silk from wool."""
    for fibre, row in burn_rows():
        if fibre in (one, other) and row["burn.residue"] != "ash skeleton":
            assert {one, other} <= set(found(row).remain)


def test_each_common_fibre_is_told_from_the_others() -> None:
    """The whole row rules out every fibre of another class: plant, animal, acetate, synthetic."""
    classes = {
        "cotton": {"silk", "wool", "acetate", "polyester", "nylon", "acrylic", "polypropylene"},
        "silk": {"cotton", "viscose", "acetate", "polyester", "nylon", "polypropylene"},
        "acetate": {"cotton", "silk", "polyester", "nylon", "acrylic", "polypropylene"},
        "polyester": {"cotton", "silk", "acetate", "nylon", "polypropylene"},
        "polypropylene": {"cotton", "silk", "acetate", "polyester", "nylon", "acrylic"},
    }
    for fibre, row in burn_rows():
        if fibre in classes and row["burn.residue"] not in ("ash skeleton", "soft grey ash"):
            assert set() == classes[fibre] & set(found(row).remain), fibre


def test_no_laboratory_chemical_is_ever_proposed() -> None:
    """Acids, alkalis, bleach and other solvents than acetone stand in no test."""
    words = ("acid", "cresol", "bleach", "hypochlorite", "chloride", "formamide", "xylene", "lye")
    for observation in knowledge().observations.values():
        told = f"{observation.ask} {observation.how} {observation.id}".lower()
        assert [] == [word for word in words if word in told]
    kinds = {o.id for o in knowledge().observations.values() if o.kind == "solvent"}
    assert {"acetone"} == kinds


def test_every_source_of_the_tables_is_known() -> None:
    """The tables cite works of the register."""
    cited = {row[-1] for row in BURN} | {row[-1] for row in ACETONE} | {"burn-test-notes"}
    assert set() == cited - set(knowledge().sources)
