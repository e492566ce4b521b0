"""Two more whole garments against the order in which the trade builds them (`common-practice`)."""

from __future__ import annotations

import pytest

from tests.garments.whole import stands, work

DRESS, COAT = "more/dress", "more/coat"

ORDERS = [
    (DRESS, ["baste bodice underlining", "stitch bust dart", "join shoulder", "join bodice side"]),
    (DRESS, ["baste bodice princess", "baste bodice side", "fit", "join bodice princess"]),
    (DRESS, ["fit", "join bodice side", "join waist", "set centre back zip", "join centre back"]),
    (DRESS, ["fit", "grade neck facing", "turn neck facing"]),
    (DRESS, ["join veil side", "enclose veil side", "gather waist"]),
    (DRESS, ["press open the coil of centre back zip", "set centre back zip"]),
    (DRESS, ["set centre back zip", "set facing to lining", "fell the lining to centre back zip"]),
    (DRESS, ["fit", "join lining side", "set facing to lining", "sew hem"]),
    (COAT, ["stitch front dart", "baste front canvas", "pad front canvas", "join front facing"]),
    (COAT, ["tape roll line", "join front facing", "turn front facing"]),
    (
        COAT,
        ["turn bound buttonholes", "join front facing", "open the facing behind bound buttonholes"],
    ),
    (COAT, ["tape shoulder", "join shoulder", "join collar seam"]),
    (COAT, ["baste shoulder", "baste side", "fit", "slash welt pocket", "close welt pocket"]),
    (COAT, ["close welt pocket", "join side", "join armhole", "trim armhole"]),
    (COAT, ["join armhole", "sew sleeve hem", "set facing to lining"]),
    (COAT, ["join armhole", "sew in shoulder pads", "set facing to lining"]),
    (
        COAT,
        [
            "press hem",
            "set facing to lining",
            "fell the lining at hem",
            "fasten buttons",
            "last press",
        ],
    ),
]


@pytest.mark.parametrize(("garment", "steps"), ORDERS)
def test_the_order_of_the_trade_comes_out(garment: str, steps: list[str]) -> None:
    """Step by step as handbooks have it, with nothing that chases itself."""
    found = work(garment)
    assert () == found.cycles
    assert stands(found, *steps), [s for s in found.order if s in steps]


@pytest.mark.parametrize("garment", [DRESS, COAT])
def test_nothing_is_lost_for_the_fitting(garment: str) -> None:
    """What is tried on is sewn or basted by then, and the lining is mended with the shell."""
    found = work(garment)
    fit = found.order.index("fit")
    assert any("side" in step for step in found.order[:fit])
    assert "in the lining as well" in found.tasks["fit"].step.does
