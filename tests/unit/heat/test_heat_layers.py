"""Layers, stacks and their ranges: what is built, and what is refused."""

from __future__ import annotations

import subprocess
import sys
from typing import Any

import pytest
from msgspec.structs import replace

from advisor.craft.irondial import MARKS
from advisor.heat.model.materials import (
    PACKING,
    FibreHeat,
    Layer,
    Range,
    blend,
    cloth,
    mixture_conductivity,
    thickness,
)
from advisor.heat.model.stack import (
    MOISTURES,
    Stack,
    felt_board,
    press_cloth,
    sole_at,
    sole_for_dots,
    under_iron,
)

COTTON = FibreHeat(1.52, Range(1220, 1285, 1350), Range(0.2, 0.3, 0.5), ("morton-hearle-2008",))
NYLON = FibreHeat(1.14, Range(1430, 1460, 1600), Range(0.2, 0.25, 0.3), ("ht-1-2-0",))
POPLIN = cloth("poplin", 120.0, COTTON)


@pytest.mark.parametrize("ends", [(2.0, 1.0, 3.0), (1.0, 4.0, 3.0), (0.0, 1.0, float("inf"))])
def test_a_range_rises_and_is_finite(ends: tuple[float, float, float]) -> None:
    """A range whose values fall, or that has no end, is refused."""
    with pytest.raises(ValueError, match="range"):
        Range(*ends)


def test_poplin_is_as_thick_as_its_packing_says() -> None:
    """120 g/m2 of cotton at a packing of 0.35 is 0.23 mm; tight is thinner, loose is thicker."""
    assert pytest.approx(POPLIN.thickness_mm.mid, abs=0.005) == 0.226
    assert POPLIN.thickness_mm.low == thickness(120.0, 1.52, 0.45)
    assert POPLIN.thickness_mm.high == thickness(120.0, 1.52, 0.25)


def test_conductivity_lies_between_air_and_fibre() -> None:
    """A cloth conducts better than air and worse than its fibre."""
    assert 0.026 < POPLIN.conductivity.low < POPLIN.conductivity.mid < POPLIN.conductivity.high
    assert POPLIN.conductivity.high < 0.5


def test_given_thickness_is_kept() -> None:
    """A thickness that the maker measured is not replaced by the usual packing."""
    assert Range(0.2, 0.25, 0.3) == cloth("x", 120.0, COTTON, Range(0.2, 0.25, 0.3)).thickness_mm


def test_regain_may_already_be_gone() -> None:
    """The low end of the water is always 0: a cloth just pressed is dry, and heats sooner."""
    moist = cloth("x", 100.0, COTTON, "woven", Range(0.07, 0.075, 0.085))
    assert Range(0.0, 7.5, 8.5) == moist.water_gsm


def test_cloth_keeps_its_sources() -> None:
    """The sources of the fibre and of the mixture formula travel with the layer."""
    assert POPLIN.sources == ("morton-hearle-2008", "baxter-1946", "schuhmeister")


@pytest.mark.parametrize("structure", sorted(PACKING))
def test_every_structure_has_a_body(structure: str) -> None:
    """Each structure gives a thickness above zero."""
    assert cloth("x", 100.0, COTTON, structure).thickness_mm.low > 0.0


def test_unknown_structure_is_refused() -> None:
    """A structure that is not known is named, with those that are."""
    with pytest.raises(ValueError, match="'foil': woven, knit, fleece"):
        cloth("x", 100.0, COTTON, "foil")


def test_cloth_denser_than_its_fibre_is_refused() -> None:
    """A packing above 1 cannot be."""
    with pytest.raises(ValueError, match="between 0 and 1"):
        cloth("x", 400.0, COTTON, Range.exact(0.2))
    with pytest.raises(ValueError, match="between 0 and 1"):
        mixture_conductivity(0.2, 0.0, 0.3)


@pytest.mark.parametrize(
    ("change", "what"),
    [
        ({"mass_gsm": 0.0}, "mass"),
        ({"thickness_mm": Range(0.0, 0.1, 0.2)}, "thickness"),
        ({"conductivity": Range(0.0, 0.1, 0.2)}, "conductivity"),
        ({"specific_heat": Range(-1.0, 0.1, 0.2)}, "specific heat"),
        ({"water_gsm": Range(-1.0, 0.0, 0.0)}, "water"),
    ],
)
def test_impossible_layer_is_refused(change: dict[str, Any], what: str) -> None:
    """A layer without body or with less than no water is refused, and the sentence says which."""
    with pytest.raises(ValueError, match=f"poplin: {what}"):
        replace(POPLIN, **change)


def test_blend_of_one_is_itself() -> None:
    """A blend of a single fibre has that fibre's values."""
    one = blend([(100.0, COTTON)])
    assert one.density == pytest.approx(COTTON.density)
    assert one.conductivity.mid == pytest.approx(COTTON.conductivity.mid)
    assert (one.conductivity.low, one.conductivity.high) == (0.2, 0.5)


def test_blend_encloses_its_fibres() -> None:
    """Half and half by mass lies between in density and heat; its conductivity spans both."""
    half = blend([(1.0, COTTON), (1.0, NYLON)])
    assert pytest.approx(2.0 / (1.0 / 1.52 + 1.0 / 1.14)) == half.density
    assert pytest.approx((1285.0 + 1460.0) / 2.0) == half.specific_heat.mid
    assert (0.2, 0.5) == (half.conductivity.low, half.conductivity.high)
    assert half.sources == ("ht-1-2-0", "morton-hearle-2008")
    with pytest.raises(ValueError, match="at least one"):
        blend([])


def test_setting_is_a_band() -> None:
    """The bands are those of the dial (iec-60311, memory); an iron just up overshoots."""
    assert [(70.0, 120.0), (100.0, 160.0), (140.0, 210.0)] == [
        (band.low, band.high) for band in (sole_for_dots(d) for d in (1, 2, 3))
    ]
    assert [mark.band for mark in MARKS] == [
        (band.low, band.high) for band in (sole_for_dots(d) for d in (1, 2, 3))
    ]
    assert [25.0, 30.0, 35.0] == [
        band.high - band.mid for band in (sole_at(c) for c in (110, 150, 200))
    ]
    assert sole_at(150).high + 40.0 == sole_at(150, settled=False).high
    assert sole_for_dots(2).high + 40.0 == sole_for_dots(2, settled=False).high


def test_stack_lists_from_the_iron_down() -> None:
    """Press cloth first, then the plies as given, then the board's cover and felt."""
    stack = under_iron([POPLIN], sole_at(150), cloth=press_cloth())
    assert ["press cloth", "poplin", "board cover", "board felt"] == [x.name for x in stack.layers]
    assert stack.place_of("poplin") == 1
    with pytest.raises(KeyError):
        stack.place_of("lining")


def test_damp_cloth_is_laid_when_asked() -> None:
    """Asked for damp, a damp cloth lies on top, in place of a dry one; steam adds no cloth."""
    for given in (None, press_cloth()):
        damp = under_iron([POPLIN], sole_at(150), cloth=given, moisture="damp cloth")
        assert damp.layers[0].water_gsm.mid == 100.0
    steamed = under_iron([POPLIN], sole_at(150), moisture="steam")
    assert steamed.layers[0] == POPLIN
    assert steamed.steam_gsm.mid > 0.0


def test_unknown_moisture_is_refused() -> None:
    """A word for moisture that is not known is refused with those that are."""
    with pytest.raises(ValueError, match=", ".join(MOISTURES)):
        under_iron([POPLIN], sole_at(150), moisture="soaked")


def test_lowest_limit_counts() -> None:
    """The limit of a stack is the lowest of all layers, and none where none is known."""
    lining = replace(POPLIN, name="lining", limit_c=110.0)
    shell = replace(POPLIN, limit_c=200.0)
    assert under_iron([shell, lining], sole_at(150)).limit() == 110.0
    assert under_iron([POPLIN], sole_at(150)).limit() is None


@pytest.mark.parametrize(
    ("layers", "change"),
    [
        ((), {}),
        ((POPLIN, POPLIN), {}),
        ((POPLIN,), {"starts_c": (20.0, 30.0)}),
        ((POPLIN,), {"vapour_down": Range(0.0, 0.5, 1.5)}),
    ],
)
def test_impossible_stack_is_refused(layers: tuple[Layer, ...], change: dict[str, Any]) -> None:
    """No layers, missing contacts, starts that do not fit, or more vapour than there is."""
    with pytest.raises(ValueError, match=r"layer|vapour"):
        Stack(layers, sole_at(150), **change)


def test_felt_board_insulates() -> None:
    """The board's felt is thicker than its cover, and none of the board has a limit."""
    cover, felt = felt_board()
    assert felt.thickness_mm.mid > 10.0 * cover.thickness_mm.mid
    assert cover.limit_c is None
    assert felt.limit_c is None


@pytest.mark.parametrize("module", ["", ".materials", ".stack", ".burns"])
def test_light_rooms_do_not_load_numpy(module: str) -> None:
    """The package, its materials, stacks and burns can be read without numpy."""
    code = f"import sys, advisor.heat.model{module}; print('numpy' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
