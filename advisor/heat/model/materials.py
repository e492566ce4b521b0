"""What a layer is made of, as far as heat is concerned: thickness, mass, conductivity, water.

Every uncertain property is a :class:`Range` (low, mid, high).  Fibre data come in as arguments;
this room reads no file.

Formulas and their sources:

* packing  phi = W / (1000 rho_f t)   and back  t = W / (1000 rho_f phi), W in g/m2, rho_f in
  g/cm3, t in mm (derived); usual phi 0.25-0.45 woven, 0.15-0.25 knit, 0.03-0.10 fleece
  (design-choice);
* conductivity of fibre and air  k = x k_par + (1 - x) k_ser,  k_par = phi k_f + (1 - phi) k_a,
  k_ser = k_f k_a / (phi k_a + (1 - phi) k_f), k_a = 0.026 W/(m K)  (baxter-1946, x = 0.21;
  schuhmeister, x = 1/3; both weights from memory, so the pair is used as a range);
* moist specific heat  c = (c_dry + 4.18 R) / (1 + R)  (derived).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

AIR_CONDUCTIVITY = 0.026  # W/(m K), instrument-maker-k-table
WATER_SPECIFIC_HEAT = 4180.0  # J/(kg K), instrument-maker-k-table
BAXTER_WEIGHT = 0.21  # share of fibre lying along the heat, baxter-1946 (memory)
SCHUHMEISTER_WEIGHT = 1.0 / 3.0  # schuhmeister (memory)

PACKING = {  # design-choice, low / mid / high
    "woven": (0.25, 0.35, 0.45),
    "knit": (0.15, 0.20, 0.25),
    "fleece": (0.03, 0.06, 0.10),
}


class Range(Struct, frozen=True):
    """A value known only within bounds: the least, the likeliest, the greatest.

    Raises ValueError when the three are not finite and in order.
    """

    low: float
    mid: float
    high: float

    def __post_init__(self) -> None:
        if not all(math.isfinite(v) for v in (self.low, self.mid, self.high)):
            raise ValueError(f"a range must be finite, not {self.low}, {self.mid}, {self.high}")
        if not self.low <= self.mid <= self.high:
            raise ValueError(f"a range must rise: {self.low}, {self.mid}, {self.high}")

    @classmethod
    def exact(cls, value: float) -> Range:
        """The range of a value taken as certain."""
        return cls(value, value, value)

    def times(self, factor: float) -> Range:
        """The same range in another unit; the factor is not negative."""
        return Range(self.low * factor, self.mid * factor, self.high * factor)


NOTHING = Range(0.0, 0.0, 0.0)


class FibreHeat(Struct, frozen=True):
    """A fibre's density (g/cm3), dry specific heat (J/(kg K)) and conductivity (W/(m K))."""

    density: float
    specific_heat: Range
    conductivity: Range
    sources: tuple[str, ...] = ()


class Layer(Struct, frozen=True):
    """One slab of the stack.

    ``thickness_mm`` under the pressing load; ``mass_gsm`` DRY mass, g/m2; ``conductivity``
    W/(m K); ``specific_heat`` dry, J/(kg K); ``water_gsm`` water held, g/m2 (regain or damp);
    ``binds_gsm`` what its fibre holds in an ordinary room (65 % rh), g/m2: of its water that much
    and more is bound, and leaves above boiling point only; 0 binds none;
    ``limit_c`` the temperature that it bears, None when it has none; ``role`` one of ply,
    press cloth, fusible, part, board.  Raises ValueError for a layer without thickness or mass.
    """

    name: str
    thickness_mm: Range
    mass_gsm: float
    conductivity: Range
    specific_heat: Range
    water_gsm: Range = NOTHING
    binds_gsm: float = 0.0
    limit_c: float | None = None
    role: str = "ply"
    sources: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        positive = {
            "thickness": self.thickness_mm.low,
            "mass": self.mass_gsm,
            "conductivity": self.conductivity.low,
            "specific heat": self.specific_heat.low,
        }
        for what, value in positive.items():
            if not value > 0.0:
                raise ValueError(f"{self.name}: {what} must be above zero, not {value}")
        if self.water_gsm.low < 0.0 or self.binds_gsm < 0.0:
            raise ValueError(f"{self.name}: water cannot be negative")


def packing(weight_gsm: float, thickness_mm: float, density: float) -> float:
    """The share of a cloth's volume that is fibre (0 to 1); weight g/m2, density g/cm3."""
    return weight_gsm / (1000.0 * density * thickness_mm)


def thickness(weight_gsm: float, density: float, share: float) -> float:
    """The thickness in mm of a cloth of that weight (g/m2), fibre density (g/cm3), packing."""
    return weight_gsm / (1000.0 * density * share)


def mixture_conductivity(
    fibre: float, share: float, weight: float, air: float = AIR_CONDUCTIVITY
) -> float:
    """Conductivity W/(m K) of fibre and air mixed; baxter-1946 and schuhmeister (see above)."""
    if not 0.0 < share <= 1.0:
        raise ValueError(f"packing must lie between 0 and 1, not {share:.3g}")
    along = share * fibre + (1.0 - share) * air
    across = fibre * air / (share * air + (1.0 - share) * fibre)
    return weight * along + (1.0 - weight) * across


def blend(shares: Sequence[tuple[float, FibreHeat]]) -> FibreHeat:
    """A blend as one fibre: heat by mass, volume by mass over density, conductivity enclosing.

    ``shares`` are mass parts of any sum above zero.  The conductivity range reaches from the
    least to the greatest of the blend, because nothing says how the fibres lie.
    """
    total = sum(part for part, _ in shares)
    if not total > 0.0:
        raise ValueError("a blend needs at least one fibre")
    parts = [(part / total, fibre) for part, fibre in shares]
    density = 1.0 / sum(part / fibre.density for part, fibre in parts)
    heat = Range(
        sum(p * f.specific_heat.low for p, f in parts),
        sum(p * f.specific_heat.mid for p, f in parts),
        sum(p * f.specific_heat.high for p, f in parts),
    )
    conductivity = Range(
        min(f.conductivity.low for _, f in parts),
        sum(p * density / f.density * f.conductivity.mid for p, f in parts),
        max(f.conductivity.high for _, f in parts),
    )
    sources = tuple(sorted({s for _, f in parts for s in f.sources}))
    return FibreHeat(density, heat, conductivity, sources)


def cloth(
    name: str,
    weight_gsm: float,
    fibre: FibreHeat,
    body: Range | str = "woven",
    regain: Range | None = None,
    limit_c: float | None = None,
) -> Layer:
    """A ply of cloth from what the maker knows: weight, fibre, and thickness or structure.

    ``weight_gsm`` is taken as dry; ``body`` is a thickness in mm or a word of PACKING;
    ``regain`` is water as a fraction of the weight.  Its low end is put at 0, because a cloth
    just pressed is dry, and dry cloth heats soonest.  Raises ValueError for an unknown word or
    a cloth denser than its fibre.
    """
    thick = _thickness_of(body, weight_gsm, fibre.density)
    tight, usual, loose = (
        packing(weight_gsm, t, fibre.density) for t in (thick.low, thick.mid, thick.high)
    )
    k = fibre.conductivity
    middle = (BAXTER_WEIGHT + SCHUHMEISTER_WEIGHT) / 2.0
    conductivity = Range(
        mixture_conductivity(k.low, loose, BAXTER_WEIGHT),
        mixture_conductivity(k.mid, usual, middle),
        mixture_conductivity(k.high, tight, SCHUHMEISTER_WEIGHT),
    )
    held = NOTHING if regain is None else Range(0.0, regain.mid, regain.high)
    sources = (*fibre.sources, "baxter-1946", "schuhmeister")
    heat, water = fibre.specific_heat, held.times(weight_gsm)
    return Layer(
        name,
        thick,
        weight_gsm,
        conductivity,
        heat,
        water,
        water.mid,
        limit_c=limit_c,
        sources=sources,
    )


def _thickness_of(body: Range | str, weight_gsm: float, density: float) -> Range:
    """The thickness in mm: as given, or from the structure's usual packing."""
    if isinstance(body, Range):
        return body
    if body not in PACKING:
        raise ValueError(f"no packing known for {body!r}: {', '.join(PACKING)}")
    loose, usual, tight = PACKING[body]
    return Range(*(thickness(weight_gsm, density, share) for share in (tight, usual, loose)))
