"""Published orders of construction of whole garments against the order of work that comes out.

Each row is one published sequence, as far as its text was seen, in the names of our steps. What we
do otherwise stands beside it with the reason; a step that is named so may stand anywhere.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from advisor.construction.agreement import disagreements
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FOLDER, known, work
from tests.unit.project.test_begun import TEXTS


@dataclass(frozen=True)
class Published:
    """A published order: its source, our garment, its steps, and what we do otherwise and why."""

    source: str
    garment: str
    steps: tuple[str, ...]
    otherwise: tuple[tuple[str, str], ...] = ()


ORDERS = (
    Published(
        "trade-skirt-lining",
        "more/lined_skirt",
        (
            "join side",
            "join lining side",
            "fell the lining to centre back zip",
            "join waistband",
            "sew hem",
            "sew lining hem",
        ),
        (("sew lining hem", "whichever hem the machine is set for comes first"),),
    ),
    Published(
        "sewing-shirts-ch6",
        "more/shirt",
        (
            "stitch on breast pocket",
            "join yoke",
            "join shoulder",
            "close sleeve placket",
            "join armhole",
            "join side and sleeve",
        ),
        (
            (
                "stitch on breast pocket",
                "it lies on the front alone, so it may wait for the iron",
            ),
            ("close sleeve placket", "it lies on the sleeve alone, so it may be first of all"),
        ),
    ),
    Published(
        "jacket-in-units",
        "tailored-jacket",
        (
            "turn welt pocket",
            "join shoulder",
            "join collar seam",
            "join side",
            "join armhole",
            "sew in shoulder pads",
            "set facing to lining",
            "sew hem",
            "make buttonholes",
            "last press",
        ),
        (
            (
                "join collar seam",
                "the units are of a tried pattern; here the shoulders are fitted before the neck",
            ),
            (
                "sew hem",
                "the shell's hem is pressed before a lining hangs beside it; there it hangs first",
            ),
        ),
    ),
    Published(
        "swimsuits-and-leotards",
        "swimsuit",
        ("join side", "join crotch", "stretch on leg elastic"),
        (("join crotch", "sides and crotch are named together, and either may be first"),),
    ),
    Published(
        "complete-course-4",
        "blouse",
        ("fold front band", "join shoulder", "join collar stand", "join side"),
        (("join shoulder", "band and shoulder do not meet, so either may be first"),),
    ),
    Published(
        "corset-month",
        "more/corset",
        (
            "close in the loops of busk",
            "join panel",
            "join bone channels",
            "insert bones in bone channels",
        ),
        (("close in the loops of busk", "the busk lies in a seam of its own, so it may wait"),),
    ),
    Published(
        "sewing-book-ch4",
        "lined-dress",
        ("join side", "fit", "join armhole", "fasten hook at the neck"),
        (("join side", "nobody calls its pattern tried, so darts and sides are basted first"),),
    ),
    Published(
        "trade-shirtmaking",
        "01_blouse",
        (
            "stitch front band",
            "join shoulder",
            "join collar seam",
            "close cuff",
            "make buttonholes",
        ),
    ),
)
BASQUE = """
garment: Basque dress
fabrics:
  taffeta: silk taffeta
seams:
  - {name: front dart, layers: [taffeta], length: 20 cm, times: 2}
  - {name: shoulder, layers: [taffeta, taffeta], length: 12 cm, seam: French, times: 2}
  - {name: armhole, layers: [taffeta, taffeta], length: 44 cm, times: 2, method: sleeve set in flat}
  - {name: underarm and side, layers: [taffeta, taffeta], length: 90 cm, seam: French, times: 2}
  - {name: collar seam, layers: [taffeta, taffeta], length: 40 cm, shape: curved}
  - {name: waist, layers: [taffeta, {use: taffeta, fullness: 2}], length: 70 cm}
  - {name: hem, layers: [taffeta], length: 200 cm, edge: hem}
"""


def of(garment: str) -> Work:
    """The order of work of a usual garment, or of one in `tests/garments`."""
    if garment in TEXTS:
        made = garment_of(parse_yaml(TEXTS[garment], f"{garment}.yaml"), known())
        return order_of(advise(made, known()), known())
    return work(garment)


@pytest.mark.parametrize("published", ORDERS, ids=lambda p: p.source)
def test_a_published_order_comes_out(published: Published) -> None:
    """Step by step, but for what is named as done otherwise."""
    assert published.source in known().sources
    free = {step for step, _ in published.otherwise}
    ours = of(published.garment).order
    expected = [step for step in published.steps if step not in free]
    assert not [step for step in expected if step not in ours]
    assert expected == [step for step in ours if step in expected]


def test_every_difference_has_its_reason() -> None:
    """What we do otherwise is a step of that row, and says why."""
    for published in ORDERS:
        for step, why in published.otherwise:
            assert step in published.steps
            assert len(why.split()) > 3


def test_the_basque_dress_of_1922() -> None:
    """`complete-course-6`: darts, shoulders, the sleeve flat, then underarm and side in one run.

    Otherwise: there the seams are closed at once, here a French seam waits for the fitting.
    """
    made = garment_of(parse_yaml(BASQUE, "basque.yaml"), known())
    ours = order_of(advise(made, known()), known()).order
    steps = ["stitch front dart", "fit", "join shoulder", "join armhole", "join underarm and side"]
    assert steps == [step for step in ours if step in steps]


def test_a_lining_that_meets_nothing_is_told() -> None:
    """`trade-skirt-lining`: it is taken in by the band; where no place says so, we ask."""
    old = "{notion: woven fusible interfacing}, wool, lining]"
    text = (FOLDER / "more" / "lined_skirt.yaml").read_text(encoding="utf-8")
    assert old in text
    loose = parse_yaml(text.replace(old, old.replace(", lining", "")), "skirt.yaml")
    found = disagreements(judge(garment_of(loose, known()), known()), known())
    assert ["lining pleats"] == [d.place for d in found if d.id == "loose lining"]
