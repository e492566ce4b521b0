"""The published order of sewing against the order of work that comes out for small projects."""

from __future__ import annotations

import pytest

from advisor.order.explain import Pin, moved
from tests.unit.order.order_projects import (
    BODICE,
    SKIRT,
    SMALL,
    TIERS,
    TROUSERS,
    before,
    work_of,
)

# The sequence of the unit method for a bodice: back darts, centre seam to the zip, zip in while
# flat, front darts, shoulders, neck facing, sides, sleeves (underarm, hem) set in, length, hem.
UNIT_METHOD_BODICE = (
    ("stitch back dart", "unit-method-text"),
    ("join centre back", "unit-method-text"),
    ("set centre back zip", "unit-method-text"),
    ("stitch front dart", "unit-method-text"),
    ("join shoulder", "unit-method-text"),
    ("join neck facing", "unit-method-text"),
    ("join side", "unit-method-text"),
    ("join sleeve underarm", "unit-method-text"),
    ("sew sleeve hem", "unit-method-text"),
    ("join armhole", "unit-method-text"),
    ("sew hem", "unit-method-text"),
)
UNIT_METHOD_SKIRT = (
    ("stitch back dart", "unit-method-text"),
    ("join centre back", "unit-method-text"),
    ("set zip", "unit-method-text"),
    ("stitch front dart", "unit-method-text"),
    ("join side", "unit-method-text"),
    ("join waistband", "unit-method-text"),
    ("sew hem", "clothing-handbook"),
)
FRONT_DART = "stitch front dart"

# One row a published rule: garment, what comes before what, and on whose word.
PUBLISHED_RULES = [
    ("bodice", "stay-stitch neck facing", "join shoulder", "trade-staystitch"),
    ("bodice", "stay-stitch armhole", "join side", "trade-staystitch"),
    ("bodice", "stitch front dart", "join side", "or-4h-92132"),
    ("bodice", "press shoulder", "join neck facing", "clothing-handbook"),
    ("bodice", "press side", "join armhole", "clothing-handbook"),
    ("bodice", "join neck facing", "join side", "crawford-order"),
    ("bodice", "set centre back zip", "join side", "unit-method-text"),
    ("bodice", "fit", "join armhole", "sewing-book-ch4"),
    ("bodice", "fit", "sew hem", "clothing-handbook"),
    ("bodice", "grade neck facing", "turn neck facing", "apparel-1-3-03"),
    ("bodice", "join lining side", "set facing to lining", "memory"),
    ("bodice", "shrink lining", "cut lining", "assoc-prep-fabrics"),
    ("bodice", "test", "cut shell", "siemsen-chiffon"),
    ("trousers", "lay pleats", "join outseam", "new-dressmaker-1921 p. 98"),
    ("trousers", "join inseam", "join crotch", "memory"),
    ("trousers", "sew hems", "fasten waistband button", "sewing-book-ch4"),
    ("tiers", "gather tier 1 to tier 2", "join tier 1 to tier 2", "sca-11-215"),
    ("tiers", "hang", "sew hem", "memory"),
    ("concealed", "set zip", "join centre back", "trade-concealed-zip"),
    ("concealed", "fold waist", "join waist", "new-dressmaker-1921 p. 98"),
]


@pytest.mark.parametrize(
    ("text", "published"), [(BODICE, UNIT_METHOD_BODICE), (SKIRT, UNIT_METHOD_SKIRT)]
)
def test_the_unit_method_comes_out(text: str, published: tuple[tuple[str, str], ...]) -> None:
    """Step by step the published sequence, but that the front darts are sewn with the back's."""
    steps = [step for step, _ in published]
    ours = [step for step in work_of(text).order if step in steps]
    assert [s for s in steps if s != FRONT_DART] == [s for s in ours if s != FRONT_DART]
    assert ours.index("join side") > ours.index(FRONT_DART)


@pytest.mark.parametrize("text", [BODICE, SKIRT])
def test_the_front_dart_may_wait_as_published_at_no_price(text: str) -> None:
    """Back and front are two units, so sewing the front darts after the zip costs no change."""
    work = work_of(text)
    zipped = next(step for step in work.order if step.startswith("set ") and "zip" in step)
    found = moved(work.graph, work.plan, Pin(FRONT_DART, after=zipped), work.setting)
    assert found.plan is not None
    assert 0.0 <= (found.extra or 0.0) <= 2 * work.setting.table.foot
    assert () == found.forbidden_by


@pytest.mark.parametrize(("garment", "first", "second", "source"), PUBLISHED_RULES)
def test_a_published_rule_is_kept(garment: str, first: str, second: str, source: str) -> None:
    """What the source puts first stands first."""
    assert source
    assert before(work_of(SMALL[garment]), first, second)


def test_the_last_published_rule_of_all() -> None:
    """The hem comes last but for fastenings, the last press and the label (`clothing-handbook`)."""
    after = {"press hem", "fell the lining at hem", "last press", "label"}
    for text in (BODICE, SKIRT, TIERS):
        order = work_of(text).order
        assert set(order[order.index("sew hem") + 1 :]) <= after
    order = work_of(TROUSERS).order
    late = {"press hems", "fasten waistband button", "last press", "label"}
    assert set(order[order.index("sew hems") + 1 :]) <= late
