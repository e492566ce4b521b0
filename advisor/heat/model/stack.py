"""What lies under the iron: sole plate, press cloth, plies, fusible, board, and the gaps.

Layers are listed from the iron downwards; the order matters.  Values and their sources:

* a setting is a band, never a number: nominal 95, 130, 175 degrees at one, two, three dots, plus
  or minus 25, 30, 35 K (iec-60311, from memory), as where the mark is told (irondial);
  first overswing 10-40 K above the mean (memory), gone after two or three lamp cycles;
* sole to cloth 250-500-1000 W/(m2 K) at hand pressure (memory), so 0.001-0.002-0.004 m2 K/W;
  cloth to cloth 0.0005-0.001-0.002 m2 K/W (memory);
* press cloth: cotton, 120 g/m2, 0.30 mm, 0.06 W/(m K) (estimate, as in the computed
  illustration that the tests hold); wrung damp it holds about 100 g/m2 of water (estimate);
* felt board: 6 mm, 0.045 W/(m K), 900 g/m2 (estimate, mixture formula of baxter-1946;
  ht-1-2-0 lists felt underlay at 0.05 and density 120-200), cover of cotton;
* specific heats: cotton 1220-1350 (morton-hearle-2008), felt underlay 1300 (ht-1-2-0);
* steam from the iron: 5-10-20 g/m2 at the start of a press (estimate).
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from advisor.heat.model.materials import NOTHING, Layer, Range

ROOM_C = 20.0
OVERSWING_K = 40.0  # upper end of 10-40 K, memory
SOLE_CONTACT = Range(1.0 / 1000.0, 1.0 / 500.0, 1.0 / 250.0)
CLOTH_CONTACT = Range(0.5e-3, 1.0e-3, 2.0e-3)
STEAM_GSM = Range(5.0, 10.0, 20.0)
VAPOUR_DOWN = Range(0.0, 0.3, 0.7)  # share of driven-off steam that goes down, estimate
COTTON_REGAIN = 0.075  # at 65 % rh, morton-hearle-2008 (7 to 8 %)
DOTS = {1: (95.0, 25.0), 2: (130.0, 30.0), 3: (175.0, 35.0)}
MOISTURES = ("dry", "damp cloth", "steam")


class Stack(Struct, frozen=True):
    """Layers from the iron down, with what holds at both ends.

    ``contacts`` has one resistance (m2 K/W) fewer than ``layers``; ``back_h`` W/(m2 K) to the
    room below the board, 0 for insulated (the cautious choice); ``starts_c`` optional starting
    temperature of each layer (a hot board), else the room's.  Raises ValueError when lengths
    do not fit.
    """

    layers: tuple[Layer, ...]
    sole: Range
    sole_contact: Range = SOLE_CONTACT
    contacts: tuple[Range, ...] = ()
    back_h: float = 0.0
    ambient_c: float = ROOM_C
    starts_c: tuple[float, ...] | None = None
    steam_gsm: Range = NOTHING
    vapour_down: Range = VAPOUR_DOWN

    def __post_init__(self) -> None:
        if not self.layers:
            raise ValueError("a stack needs at least one layer")
        if len(self.contacts) != len(self.layers) - 1:
            raise ValueError(f"{len(self.layers)} layers need {len(self.layers) - 1} contacts")
        if self.starts_c is not None and len(self.starts_c) != len(self.layers):
            raise ValueError("each layer needs its own starting temperature")
        if not 0.0 <= self.vapour_down.low <= self.vapour_down.high <= 1.0:
            raise ValueError("the share of vapour going down lies between 0 and 1")

    @property
    def moist(self) -> bool:
        """Whether anything in it may hold water or is given steam."""
        return self.steam_gsm.high > 0.0 or any(x.water_gsm.high > 0.0 for x in self.layers)

    def at(self, sole: Range) -> Stack:
        """The same stack under another sole temperature."""
        return replace(self, sole=sole)

    def place_of(self, name: str) -> int:
        """Where the layer of that name lies, counted from the iron; KeyError if it does not."""
        for place, layer in enumerate(self.layers):
            if layer.name == name:
                return place
        raise KeyError(name)

    def limit(self) -> float | None:
        """The lowest limit of all layers, hidden ones included, or None where none is known."""
        limits = [layer.limit_c for layer in self.layers if layer.limit_c is not None]
        return min(limits, default=None)


def sole_for_dots(dots: int, *, settled: bool = True) -> Range:
    """The sole's band in degrees for a dial mark of one to three dots."""
    nominal, swing = DOTS[dots]
    return Range(nominal - swing, nominal, nominal + swing + (0.0 if settled else OVERSWING_K))


def sole_at(setting_c: float, *, settled: bool = True) -> Range:
    """The sole's band round a temperature that the maker set: a household iron swings."""
    swing = 25.0 if setting_c <= 112.0 else 30.0 if setting_c <= 152.0 else 35.0
    return Range(
        setting_c - swing, setting_c, setting_c + swing + (0.0 if settled else OVERSWING_K)
    )


def press_cloth(*, damp: bool = False) -> Layer:
    """A cotton press cloth, dry (its regain ignored: cautious) or wrung out of water."""
    water = Range(50.0, 100.0, 150.0) if damp else NOTHING
    return Layer(
        "press cloth",
        Range(0.20, 0.30, 0.40),
        120.0,
        Range(0.05, 0.06, 0.075),
        Range(1220.0, 1300.0, 1350.0),
        water,
        120.0 * COTTON_REGAIN,
        None,
        "press cloth",
        ("estimate",),
    )


def felt_board() -> tuple[Layer, ...]:
    """An ironing board: cotton cover on felt; what is below counts as insulated."""
    cover = Layer(
        "board cover",
        Range(0.20, 0.30, 0.40),
        150.0,
        Range(0.05, 0.06, 0.075),
        Range(1220.0, 1300.0, 1350.0),
        binds_gsm=150.0 * COTTON_REGAIN,
        role="board",
        sources=("estimate",),
    )
    felt = Layer(
        "board felt",
        Range(4.0, 6.0, 8.0),
        900.0,
        Range(0.038, 0.045, 0.06),
        Range(1250.0, 1300.0, 1360.0),
        role="board",
        sources=("baxter-1946", "ht-1-2-0"),
    )
    return cover, felt


def under_iron(
    plies: Iterable[Layer],
    sole: Range,
    *,
    cloth: Layer | None = None,
    moisture: str = "dry",
    board: tuple[Layer, ...] | None = None,
) -> Stack:
    """The whole stack for plies given from the iron down.

    ``moisture`` is dry, damp cloth or steam; "damp cloth" without a cloth lays a damp one.
    Raises ValueError for another word.
    """
    if moisture not in MOISTURES:
        raise ValueError(f"moisture is one of {', '.join(MOISTURES)}, not {moisture!r}")
    if moisture == "damp cloth" and (cloth is None or cloth.water_gsm.high == 0.0):
        cloth = press_cloth(damp=True)
    top = () if cloth is None else (cloth,)
    layers = (*top, *plies, *(felt_board() if board is None else board))
    steam = STEAM_GSM if moisture == "steam" else NOTHING
    return Stack(layers, sole, contacts=(CLOTH_CONTACT,) * (len(layers) - 1), steam_gsm=steam)
