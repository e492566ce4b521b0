"""Published values that the advice rests on, one table per source.

The values are looked up where the tool holds them: in the dial marks, in the knowledge as it was
loaded, and in what it says of a seam. Unit factors and needle sizes have tables of their own.
"""

from __future__ import annotations

from typing import Any

import pytest

from advisor.claims.claimsets import ValueSet
from advisor.claims.combine import Verdict, decide
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.craft.irondial import MARKS, mark_for, overshoot, steam_possible
from advisor.decide.evaluate import judge
from advisor.knowledge.model import LIMIT_ASPECT, Claim
from advisor.project.quick import quick_garment
from advisor.units import parse
from tests.told import data_of
from tests.typed import shipped as knowledge


def source_known(cite: str) -> bool:
    return cite.split(" ", 1)[0] in knowledge().sources


# ---- care-label ceilings: dots, °C up to the 2012 edition, °C from 2023; °F as published ----
LABELS = [
    (1, 110, 230, "iso-3758-2012"),
    (2, 150, 302, "iso-3758-2012"),
    (3, 200, 392, "iso-3758-2012"),
    (1, 120, 248, "iso-3758-2023"),
    (2, 160, 320, "iso-3758-2023"),
    (3, 210, 410, "iso-3758-2023"),
]


@pytest.mark.parametrize(("dots", "celsius", "fahrenheit", "cite"), LABELS)
def test_label_ceilings(dots: int, celsius: int, fahrenheit: int, cite: str) -> None:
    """A dial mark carries the ceilings of both editions of the care-label standard."""
    mark = MARKS[dots - 1]
    assert source_known(cite)
    assert celsius == (mark.ceiling_2023 if cite.endswith("2023") else mark.ceiling)
    assert fahrenheit == pytest.approx(celsius * 1.8 + 32)


# iec-60311 (from memory): dots, band of the thermostat in °C
BANDS = [(1, 70, 120, "iec-60311"), (2, 100, 160, "iec-60311"), (3, 140, 210, "iec-60311")]


@pytest.mark.parametrize(("dots", "low", "high", "cite"), BANDS)
def test_a_mark_is_a_band(dots: int, low: int, high: int, cite: str) -> None:
    """A mark stands for a band of sole temperatures, and the band reaches over the ceiling."""
    mark = MARKS[dots - 1]
    assert ((low, high), True) == (mark.band, source_known(cite))
    assert high - mark.ceiling == overshoot(mark.ceiling) == 10


# standards: the older, lower ceilings count where the edition is not known; °F of one household
# table against the mark that it stands for (us-consumer-iron-table)
MARK_OF = [
    (110, 1, "iso-3758-2012"),
    (149, 2, "us-consumer-iron-table"),
    (150, 2, "iso-3758-2012"),
    (160, 2, "iso-3758-2023"),
    (199, 3, "us-consumer-iron-table"),
    (210, 3, "iso-3758-2023"),
]


@pytest.mark.parametrize(("limit", "dots", "cite"), MARK_OF)
def test_the_mark_for_a_limit(limit: float, dots: int, cite: str) -> None:
    """A limit means the highest mark of the older ceilings that it reaches."""
    mark = mark_for(limit)
    assert source_known(cite)
    assert mark is not None
    assert dots == mark.dots


@pytest.mark.parametrize(
    ("limit", "steam", "cite"),
    [(110, False, "or-4h-320-14"), (120, False, "manual-iron"), (150, True, "or-4h-320-14")],
)
def test_no_steam_at_one_dot(limit: float, steam: bool, cite: str) -> None:
    """At one dot the sole is too cool for steam."""
    assert (steam, True) == (steam_possible(limit), source_known(cite))


# ---- iron ceilings by fibre, °C; a Fahrenheit dial figure stands beside its source ----
CEILINGS = [
    # kept as published; only sources of good standing bind (checked below)
    ("cotton", 204, "iron-chart"),
    ("cotton", 200, "jis-groups"),
    ("cotton", 218, "kadolph-textiles"),
    ("linen", 230, "iron-chart"),
    ("linen", 200, "iso-3758-2012"),
    ("linen", 210, "iso-3758-2023"),
    ("linen", 232, "kadolph-textiles"),
    ("cotton", 200, "trade-hot-pressing"),
    ("silk", 148, "iron-chart"),
    ("silk", 149, "kadolph-textiles"),
    ("silk", 150, "jis-groups"),
    ("wool", 148, "iron-chart"),
    ("wool", 110, "jis-groups"),
    ("wool", 149, "kadolph-textiles"),
    ("wool", 160, "trade-hot-pressing"),
    ("viscose", 190, "iron-chart"),
    ("viscose", 150, "jis-groups"),
    ("viscose", 191, "kadolph-textiles"),
    ("viscose", 160, "trade-hot-pressing"),
    ("acetate", 110, "lcn-reducing-risks-3"),
    ("acetate", 143, "iron-chart"),
    ("acetate", 120, "trade-hot-pressing"),
    ("acetate", 135, "kadolph-textiles"),
    ("triacetate", 200, "iron-chart"),
    ("triacetate", 110, "jis-groups"),
    ("polyester", 148, "iron-chart"),
    ("polyester", 150, "jis-groups"),
    ("polyester", 163, "kadolph-textiles"),
    ("nylon-6", 130, "nylon-iron-page"),
    ("nylon-6", 135, "iron-chart"),
    ("nylon-6", 150, "jis-groups"),
    ("nylon-6", 120, "trade-hot-pressing"),
    ("nylon-66", 177, "kadolph-textiles"),
    ("acrylic", 135, "iron-chart"),
    ("acrylic", 110, "jis-groups"),
    ("acrylic", 149, "kadolph-textiles"),
    ("modacrylic", 116, "trade-modacrylic"),
    ("elastane", 149, "elastane-textbook-card"),
    ("elastane", 135, "iron-chart"),
    ("elastane", 110, "jis-groups"),
    ("nylon-66", 191, "aatcc-safe-iron"),
    ("polyester", 191, "aatcc-safe-iron"),
    ("silk", 163, "aatcc-safe-iron"),
    ("cotton", 210, "iso-3758-2023"),
]


@pytest.mark.parametrize(("fibre", "celsius", "cite"), CEILINGS)
def test_every_published_ceiling_is_kept(fibre: str, celsius: float, cite: str) -> None:
    """Each published ceiling stands in the knowledge with its source, also where others differ."""
    kept = [
        (c.max, s.split(" ", 1)[0]) for c in knowledge().fibres[fibre].ceilings for s in c.sources
    ]
    assert (celsius, cite) in kept


# standards, ceilings by fibre and dots; polypropylene and PVC are not ironed (cold iron)
LIMITS = [
    ("linen", 200),
    ("cotton", 200),
    ("viscose", 150),
    ("lyocell", 150),
    ("modal", 150),
    ("wool", 150),
    ("silk", 150),
    ("polyester", 150),
    ("nylon-6", 110),
    ("nylon-66", 110),
    ("acetate", 110),
    ("acrylic", 110),
    ("polypropylene", 20),
    ("chlorofibre", 20),
    ("metallic-film", 110),
]


@pytest.mark.parametrize(("fibre", "celsius"), LIMITS)
def test_the_limit_in_force(fibre: str, celsius: float) -> None:
    """The limit in force is the suggested ceiling in dots, or stricter (ginetex-fibre-dots)."""
    assert celsius == knowledge().fibres[fibre].limit


@pytest.mark.parametrize("fibre", sorted(knowledge().fibres))
def test_the_strictest_of_good_standing_counts(fibre: str) -> None:
    """The limit is the lowest published figure of good standing, or of any where none is good."""
    found = knowledge().fibres[fibre]
    good = [c.max for c in found.ceilings if c.good] or [c.max for c in found.ceilings]
    assert min([*good, 200.0]) == found.limit
    assert min([c.max for c in found.ceilings] + [found.limit]) == found.start


# ---- melting and softening, °C ----
POINTS = [
    ("polyester", "melts", 255, 260, "jp-tables"),
    ("polyester", "melts", 250, 260, "gv-tables"),
    ("polyester", "softens", 238, 240, "jp-tables"),
    ("nylon-6", "melts", 215, 220, "jp-tables"),
    ("nylon-6", "softens", 180, 180, "jp-tables"),
    ("nylon-6", "melts", 225, 225, "nylon-maker-sheet"),
    ("nylon-66", "melts", 250, 260, "jp-tables"),
    ("nylon-66", "softens", 230, 235, "jp-tables"),
    ("acetate", "melts", 260, 260, "gv-tables"),
    ("acetate", "melts", 232, 232, "britannica-acetate"),
    ("triacetate", "melts", 300, 300, "cameo-mfa"),
    ("polypropylene", "melts", 165, 173, "jp-tables"),
    ("polypropylene", "softens", 140, 160, "jp-tables"),
    ("acrylic", "sticks", 190, 240, "jp-tables"),
    ("elastane", "melts", 230, 230, "elastane-trade-page"),
    ("elastane", "softens", 170, 200, "elastane-trade-page"),
    ("chlorofibre", "softens", 60, 60, "laundry-page-pvc"),
    ("leather", "softens", 100, 120, "conservation-science"),
    ("leather", "softens", 58, 64, "conservation-science"),
]


@pytest.mark.parametrize(("fibre", "what", "low", "high", "cite"), POINTS)
def test_melting_and_softening_points(
    fibre: str, what: str, low: float, high: float, cite: str
) -> None:
    """Every published point is kept with its source, and the iron limit lies below it."""
    points = knowledge().fibres[fibre].facts[what]
    kept = [
        (p.get("from", p.get("at")), p.get("to", p.get("at")), s.split(" ", 1)[0])
        for p in points
        for s in p["sources"]
    ]
    assert (low, high, cite) in kept
    if fibre != "leather":  # its points are those of wet leather, which is not ironed at all
        assert knowledge().fibres[fibre].limit < low


def test_no_natural_fibre_melts() -> None:
    """Cotton, linen, silk, wool and viscose char and do not melt (jp-tables, gv-tables)."""
    for fibre in ("cotton", "linen", "silk", "wool", "viscose"):
        assert not knowledge().fibres[fibre].facts.get("melts")


# ---- blends: the most heat-sensitive fibre decides, whatever its share (uky-ct-lmh-019) ----
BLENDS = [
    ("cotton 50 nylon 50 poplin", 110, "jis-groups"),
    ("cotton 97 polyester 3 poplin", 150, "or-4h-320-14"),
    ("cotton 65 polyester 35 poplin", 150, "unnamed-trade-page"),
    ("wool 95 acrylic 5 tweed", 110, "uky-ct-lmh-019"),
    ("linen 99 acetate 1 twill", 110, "uky-ct-lmh-019"),
    ("silk 98 metallic-film 2 brocade", 110, "osu-b533"),
]


@pytest.mark.parametrize(("cloth", "celsius", "cite"), BLENDS)
def test_a_blend_has_the_limit_of_its_tenderest_fibre(
    cloth: str, celsius: float, cite: str
) -> None:
    """One per cent of a tender fibre sets the iron for the whole cloth."""
    assert source_known(cite)
    assert celsius == limit_of([cloth])


def told(layers: list[Any]) -> dict[str, Any]:
    """Everything that the tool says of a garment of one seam."""
    return data_of(quick_garment(layers, knowledge()), knowledge())


def limit_of(layers: list[Any]) -> float:
    judgement = judge(quick_garment(layers, knowledge()), knowledge())
    found = [v[LIMIT_ASPECT] for place, v in judgement.verdicts.items() if place.scope == "seam"]
    allowed = found[0].allowed
    assert isinstance(allowed, Span)
    return allowed.high


# ---- standards, the five rules best supported ----
def test_the_place_has_the_limit_of_its_tenderest_layer() -> None:
    """R2: the lowest layer that the iron can heat decides (or-4h-320-14, uky-ct-lmh-019)."""
    both = limit_of(["linen suiting", "acetate lining"])
    assert 110 == both == min(limit_of(["linen suiting"]), limit_of(["acetate lining"]))


def test_the_older_edition_counts_where_nobody_knows() -> None:
    """R3: with no edition named, 110, 150 and 200 count, and one dot means no steam."""
    older = (110.0, 150.0, 200.0)
    assert older == tuple(mark.ceiling for mark in MARKS)
    assert not steam_possible(110)


def test_the_band_is_told_with_its_margin() -> None:
    """R4: the dot is a band; how far it reaches over the limit is told."""
    assert 10 == overshoot(150)
    assert 11 == overshoot(149)


def test_hot_metal_is_warned_of() -> None:
    """R5: any setting heats metal parts far above what skin bears (iso-13732-1)."""
    assert "burn" in {c["kind"] for c in told(["denim", {"notion": "metal zip"}])["cautions"]}


# R1 and section 3: the mildest of the components in each process (iso-3758-2012, ginetex-table)
MILDER = [
    ("care.wash", "60 mild", "40 normal", "40 mild"),
    ("care.wash", "40 very mild", "60 normal", "40 very mild"),
    ("care.wash", "30 normal", "40 very mild", "30 very mild"),
    ("care.wash", "hand wash", "60 normal", "hand wash"),
    ("care.wash", "do not wash", "hand wash", "do not wash"),
    ("care.professional", "P mild", "F normal", "F mild"),
    ("care.professional", "P normal", "F mild", "F mild"),
    ("care.professional", "do not dry clean", "P normal", "do not dry clean"),
    ("care.bleach", "no bleach", "any bleach", "no bleach"),
    ("care.bleach", "oxygen bleach only", "any bleach", "oxygen bleach only"),
    ("care.dry", "tumble low", "tumble normal", "tumble low"),
    ("care.dry", "flat", "tumble normal", "flat"),
    ("care.iron", "110", "200", "110"),
    ("care.iron", "110 no steam", "150", "110 no steam"),
    ("care.iron", "do not iron", "110", "do not iron"),
]


@pytest.mark.parametrize(("aspect", "one", "other", "both"), MILDER)
def test_the_mildest_component_decides(aspect: str, one: str, other: str, both: str) -> None:
    """R1: of two care processes the garment gets the one that both bear."""
    for first, second in ((one, other), (other, one)):
        verdict = decide(knowledge().aspects[aspect], [borne(aspect, first), borne(aspect, second)])
        assert both == most(verdict)


def borne(aspect: str, word: str) -> Said:
    """Somebody who bears a process and everything milder."""
    about = knowledge().aspects[aspect]
    span, mask = None, 0
    if about.kind == "options":
        mask = sum(1 << about.words.index(w) for w in milder(aspect, word))
    else:
        span = (0.0, float(about.words.index(word)))
    claim = Claim(aspect, span, mask, None, "must", "damage", "", ("derived",), 0, word)
    return Said(word, claim)


def milder(aspect: str, word: str) -> set[str]:
    """A process and all that is milder, by the standard's two axes and not by the knowledge."""
    axes = wash_axes if aspect == "care.wash" else solvent_axes
    words = knowledge().aspects[aspect].words
    return {w for w in words if all(a <= b for a, b in zip(axes(w), axes(word), strict=True))}


def solvent_axes(word: str) -> tuple[int, int]:
    if word == "do not dry clean":
        return (0, 0)
    solvent, action = word.split()
    return (["F", "P"].index(solvent) + 1, ["mild", "normal"].index(action))


def wash_axes(word: str) -> tuple[int, int]:
    if word in ("do not wash", "hand wash"):
        return (0, ["do not wash", "hand wash"].index(word))
    celsius, action = word.split(" ", 1)
    return (int(celsius), 2 + ["very mild", "mild", "normal"].index(action))


def most(verdict: Verdict) -> str:
    """The severest process that is left."""
    advised: ValueSet = verdict.advised
    words = verdict.aspect.words
    if isinstance(advised, Choice):
        return words[advised.options()[0]]
    return words[int(advised.high)]


# cfr-16-1610: plain cloth of 2.6 oz/yd2 or more is excused from the burning test
def test_the_weight_that_is_excused_from_the_flammability_test() -> None:
    """2.6 oz/yd2 is 88.2 g/m2, and the caution begins just below it (cfr-16-1610)."""
    assert 88.2 == pytest.approx(parse("weight", "2.6 oz/yd2"), abs=0.05)
    rule = "thin-cloth-near-flame"
    assert rule in {c["id"] for c in told(["cotton lawn 88 g/m2"])["cautions"]}
    assert rule not in {c["id"] for c in told(["cotton lawn 89 g/m2"])["cautions"]}


# cfr-16-1610: excused at any weight, where it is made of these alone
EXCUSED = ["acrylic", "modacrylic", "nylon", "polyester", "wool"]
NOT_EXCUSED = ["cotton", "linen", "viscose", "silk", "acetate"]


@pytest.mark.parametrize("fibre", [*EXCUSED, *NOT_EXCUSED])
def test_fibres_that_are_excused(fibre: str) -> None:
    """Light cloth of plant fibre, silk or acetate is warned of; five fibres are excused."""
    cautions = {c["id"] for c in told([f"100 {fibre} lawn 60 g/m2"])["cautions"]}
    assert (fibre in NOT_EXCUSED) == ("thin-cloth-near-flame" in cautions)


# trade-stitch-length: stitches per inch, millimetres as printed, to one digit after the point
STITCHES = [(12, 2.1), (10, 2.5), (8, 3.2), (6, 4.2), (15, 1.7), (20, 1.3)]


@pytest.mark.parametrize(("spi", "mm"), STITCHES)
def test_stitch_length_is_an_inch_divided(spi: int, mm: float) -> None:
    """A stitch length is 25.4 mm over the stitches per inch."""
    assert 25.4 / spi == pytest.approx(parse("stitch length", f"{spi} spi"))
    assert mm == pytest.approx(parse("stitch length", f"{spi} spi"), abs=0.05)
