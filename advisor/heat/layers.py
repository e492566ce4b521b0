"""From a cloth of the garment to a layer of the heat model: weight, thickness, fibre, water.

Facts come from the fibre and fabric entries with their sources. Where one is missing the widest
range of its kin stands in (fibres of the same group, else all that are neither metal nor
mineral), and the layer says so: `estimate`. A fibre that is not known is the envelope of all
that it may be, with the least density, which packs the cloth closest and lets heat through
soonest.

A single published number is widened, specific heat by a tenth (it rises with temperature) and
conductivity by a quarter (`estimate`); a weight taken for granted widens the heat that a layer
takes up.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from msgspec.structs import replace

from advisor.heat.model.materials import FibreHeat, Layer, Range, blend, thickness
from advisor.heat.model.materials import cloth as cloth_layer
from advisor.heat.model.stack import press_cloth
from advisor.knowledge.model import Entry, Fibre, Knowledge, Mix
from advisor.project.garment import Cloth

ESTIMATE = "estimate"
TIGHTEST = 0.7  # share of fibre in a cloth under the iron at most, estimate
TAPE_MM = Range(0.4, 0.5, 0.6)  # the tape of a zip or fastener, estimate
TAPE_GSM = 200.0  # estimate
USUAL_DENSITY = 1.35  # g/cm3, about the middle of the textile fibres, estimate
_WIDEN = {"specific heat": 0.10, "conductivity": 0.25}
_NOT_KIN = ("metal", "mineral")
_PACKED = {"knit": "knit", "nonwoven": "fleece"}
FUSIBLES = ("fusible", "low-temperature fusible")
_TAPED = ("zip", "hook-and-loop", "button", "thread")

PARTS_IN = {
    "metal-zip": "metal zip",
    "moulded-zip": "moulded zip",
    "coil-zip": "coil zip",
    "concealed-zip": "coil zip",
    "open-ended-zip": "moulded zip",
    "two-way-zip": "moulded zip",
    "water-resistant-zip": "coil zip",
    "plastic-button": "moulded zip",
    "glass-button": "glass bead",
    "glass-stone": "glass bead",
    "hook-and-eye": "hook",
    "hook-and-bar": "hook",
    "bra-hooks": "hook",
    "clasp": "hook",
}
"""The hard part in a notion, by the names of the heat model; another button counts as metal."""

_SMOOTH = Range(1220.0, 1320.0, 1400.0)  # J/(kg K) of cotton, silk, wool and paper, estimate
_PRESS_CLOTHS = {
    "silk organza cloth": (40.0, Range(0.07, 0.09, 0.12), Range(0.04, 0.05, 0.065)),
    "wool cloth": (200.0, Range(0.6, 0.8, 1.0), Range(0.04, 0.045, 0.055)),
    "brown paper": (80.0, Range(0.09, 0.11, 0.14), Range(0.05, 0.08, 0.12)),
}  # estimate: weight, thickness, conductivity by the mixture formula of baxter-1946


def laid_cloth(word: str, *, damp: bool = False) -> Layer:
    """The press cloth that an answer names; one of cotton where it is no other."""
    usual = press_cloth(damp=damp)
    if word not in _PRESS_CLOTHS:
        return replace(usual, name=word if word and word != "none" else usual.name)
    weight, thick, conducts = _PRESS_CLOTHS[word]
    water = usual.water_gsm.times(weight / usual.mass_gsm)
    binds = usual.binds_gsm * weight / usual.mass_gsm
    return Layer(
        word, thick, weight, conducts, _SMOOTH, water, binds, None, "press cloth", (ESTIMATE,)
    )


def layer_of(
    cloth: Cloth, limit_c: float | None, knowledge: Knowledge, *, moist: bool = False
) -> Layer:
    """A cloth as a layer under the iron.

    `limit_c` is what it bears, None where nobody has said. `moist` says whether its own moisture
    counts; a dry press is taken on cloth pressed dry before, which heats soonest.
    """
    entry = knowledge.entries[cloth.entry]
    heat = heat_of(cloth.mixes, knowledge)
    weight, spread = _weight(cloth, entry, heat)
    body = _body(cloth, entry, weight, heat.density)
    regain = regain_of(cloth.mixes, knowledge) if moist else None
    layer = cloth_layer(cloth.name, weight, heat, body, regain, limit_c)
    warm = layer.specific_heat
    taken = Range(warm.low * spread.low, warm.mid, warm.high * spread.high)
    role = "fusible" if entry.kind in FUSIBLES else "ply"
    return replace(layer, specific_heat=taken, role=role)


def part_in(cloth: Cloth, knowledge: Knowledge) -> str | None:
    """The hard part that a layer holds, by its name in the heat model, or None."""
    entry = knowledge.entries[cloth.entry]
    if entry.id in PARTS_IN:
        return PARTS_IN[entry.id]
    if entry.kind == "button":
        return "metal button"
    hard = knowledge.traits.get("embellished", ())
    level = cloth.traits.get("embellished", entry.traits.get("embellished", (0, 0)))[1]
    if "hard" in hard and level >= hard.index("hard"):
        return "glass bead"
    groups = {knowledge.fibres[f].group for mix in cloth.mixes for f, _ in mix}
    return "metal yarn" if "metal" in groups else None


def assumed_of(cloth: Cloth, knowledge: Knowledge) -> tuple[str, ...]:
    """What was taken for granted of a layer's heat, in words."""
    said = []
    if "weight" in cloth.assumed or cloth.weight is None or cloth.weight[0] < cloth.weight[1]:
        said.append("weight")
    if not cloth.fibre_known:
        said.append("fibre")
    facts = [knowledge.fibres[f].facts for mix in cloth.mixes for f, _ in mix]
    if any(f.get("conductivity") is None or f.get("specific heat") is None for f in facts):
        said.append("how its fibre takes and passes heat")
    return tuple(said)


def heat_of(mixes: Iterable[Mix], knowledge: Knowledge) -> FibreHeat:
    """Density, specific heat and conductivity of a cloth that may be any of some mixes."""
    found = [_mix_heat(mix, knowledge) for mix in mixes]
    if len(found) == 1:
        return found[0]
    return FibreHeat(
        min(f.density for f in found),
        _envelope([f.specific_heat for f in found]),
        _envelope([f.conductivity for f in found]),
        tuple(sorted({s for f in found for s in (*f.sources, ESTIMATE)})),
    )


def regain_of(mixes: Iterable[Mix], knowledge: Knowledge) -> Range:
    """Water that a cloth holds in a usual room, as a share of its weight; 0 where unknown."""
    held = [_mix_regain(mix, knowledge) for mix in mixes]
    return Range(0.0, sum(h.mid for h in held) / len(held), max(h.high for h in held))


def _mix_regain(mix: Mix, knowledge: Knowledge) -> Range:
    shares = _shares(mix)
    mid = high = 0.0
    for fibre, share in shares:
        rows = knowledge.fibres[fibre].facts.get("regain") or ()
        numbers = [r[k] for r in rows for k in ("value", "min", "max") if r.get(k) is not None]
        if numbers:
            mid += share * sum(numbers) / len(numbers) / 100.0
            high += share * max(numbers) / 100.0
    return Range(0.0, min(mid, high), high)


def _mix_heat(mix: Mix, knowledge: Knowledge) -> FibreHeat:
    """A mix as one fibre; metal in it is left out, being a part of its own, unless it is all."""
    shares = _shares(mix)
    soft = [(f, s) for f, s in shares if knowledge.fibres[f].id != "metal" and s > 0.0]
    return blend([(s, fibre_heat(knowledge.fibres[f], knowledge)) for f, s in soft or shares])


def _shares(mix: Mix) -> list[tuple[str, float]]:
    """Shares of one; even ones where none is given."""
    return [(f, (100.0 / len(mix) if s is None else s) / 100.0) for f, s in mix]


def fibre_heat(fibre: Fibre, knowledge: Knowledge) -> FibreHeat:
    """One fibre's heat data, its kin's where a value is missing."""
    heat, heat_from = _fact(fibre, "specific heat", knowledge)
    conducts, conducts_from = _fact(fibre, "conductivity", knowledge)
    dense = fibre.facts.get("density")
    density = USUAL_DENSITY if dense is None else _bounds(dense)[1]
    dense_from = (ESTIMATE,) if dense is None else tuple(dense["sources"])
    sources = tuple(dict.fromkeys((*heat_from, *conducts_from, *dense_from)))
    return FibreHeat(density, heat.times(1000.0), conducts, sources)


def _fact(fibre: Fibre, name: str, knowledge: Knowledge) -> tuple[Range, tuple[str, ...]]:
    """A fibre's own value, or the envelope of its kin's."""
    own = fibre.facts.get(name)
    if own is not None:
        return _widened(own, name), tuple(own["sources"])
    having = [f for f in knowledge.fibres.values() if f.facts.get(name) is not None]
    kin = [f for f in having if f.group == fibre.group and f.group not in _NOT_KIN]
    kin = kin or [f for f in having if f.group not in _NOT_KIN]
    return _envelope([_widened(f.facts[name], name) for f in kin]), (ESTIMATE,)


def _bounds(fact: dict[str, Any]) -> tuple[float, float, float]:
    if fact.get("value") is not None:
        return (fact["value"],) * 3
    return fact["min"], (fact["min"] + fact["max"]) / 2.0, fact["max"]


def _widened(fact: dict[str, Any], name: str) -> Range:
    low, mid, high = _bounds(fact)
    if low == high:
        low, high = mid * (1.0 - _WIDEN[name]), mid * (1.0 + _WIDEN[name])
    return Range(low, mid, high)


def _envelope(ranges: list[Range]) -> Range:
    low, high = min(r.low for r in ranges), max(r.high for r in ranges)
    return Range(low, min(max(sum(r.mid for r in ranges) / len(ranges), low), high), high)


def _weight(cloth: Cloth, entry: Entry, heat: FibreHeat) -> tuple[float, Range]:
    """Dry weight in g/m2, and by what factors it may be wrong."""
    given = cloth.weight or entry.weight
    if entry.kind in _TAPED:
        return TAPE_GSM, Range(0.8, 1.0, 1.2)
    if given is None:
        thick = cloth.thickness or entry.thickness or (0.3, 0.5)
        share = 0.35  # usual packing of a woven, design-choice
        weight = 1000.0 * heat.density * share * (thick[0] + thick[1]) / 2.0
        return weight, Range(0.7, 1.0, 1.3)
    weight = (given[0] + given[1]) / 2.0
    return weight, Range(given[0] / weight, 1.0, given[1] / weight)


def _body(cloth: Cloth, entry: Entry, weight: float, density: float) -> Range | str:
    """Thickness in mm, never thinner than the fibre packs; else the structure's usual packing."""
    if entry.kind in _TAPED:
        return TAPE_MM
    thick = cloth.thickness or entry.thickness
    if thick is None:
        return _PACKED.get(entry.structure, "woven")
    low, high = thick if thick[0] < thick[1] else (thick[0] * 0.9, thick[0] * 1.1)
    least = thickness(weight, density, TIGHTEST)
    low = max(low, least)
    high = max(high, low)
    return Range(low, (low + high) / 2.0, high)
