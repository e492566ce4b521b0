"""The garments that a project may begin from: each is answered without a clash or a circle."""

from __future__ import annotations

import pytest

from advisor.decide.advise import advise
from advisor.order.work import order_of
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, stands
from tests.unit.project.test_begun import TEXTS

ORDERS = {
    "lined-dress": [
        "baste front dart",
        "baste side",
        "fit",
        "stitch front dart",
        "set centre back zip",
        "join side",
        "set facing to lining",
        "sew hem",
    ],
    "gathered-skirt": ["join side", "set side zip", "fit", "join waistband", "sew hem"],
    "trousers": ["set fly zip", "baste crotch", "fit", "join crotch", "join waistband", "sew hem"],
    "tailored-jacket": [
        "baste front canvas",
        "fit",
        "close welt pocket",
        "join front facing",
        "join armhole",
        "set facing to lining",
    ],
    "coat": ["join shoulder", "join collar seam", "fit", "join armhole", "set facing to lining"],
    "blouse": [
        "turn collar edge",
        "join collar stand",
        "join armhole",
        "sew hem",
        "make buttonholes",
    ],
    "knit-top": ["join shoulder", "join armhole", "join side and sleeve", "sew hem"],
    "swimsuit": ["join side", "join lining side", "stretch on leg elastic"],
    "raincoat": [
        "turn storm flap",
        "seal shoulder",
        "join hood to neck",
        "set facing to lining",
        "sew hem",
    ],
    "tutu": ["baste bodice backing", "join bodice princess", "join bodice side", "join waist"],
    "cape": ["join centre back", "join collar seam", "bag bagged lining", "fasten neck clasp"],
    "bias-gown": [
        "baste bodice underlining",
        "fit",
        "join waist",
        "set centre back zip",
        "hang",
        "sew hem",
    ],
}


@pytest.mark.parametrize("name", sorted(TEXTS))
def test_a_usual_garment_is_answered(name: str) -> None:
    """No clash, no circle, and the order of the trade."""
    advice = advise(garment_of(parse_yaml(TEXTS[name], f"{name}.yaml"), known()), known())
    assert () == advice.judgement.conflicts
    found = order_of(advice, known())
    assert () == found.cycles
    assert stands(found, *ORDERS[name]), [s for s in found.order if s in ORDERS[name]]
