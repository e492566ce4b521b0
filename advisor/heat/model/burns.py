"""How hot a surface may be touched, for how long, and the words for the workroom.

The thresholds follow ISO 13732-1, whose text was not read: every value is second-hand or from
memory and says so in its row.  Where sources differ the row holds both ends and the lower one
counts.  Between rows the threshold is straight in the logarithm of time (derived); for a
shorter contact than the first row, the first row's value counts, so that it is never raised.
Scope of the standard (abstract): healthy skin, less than about a tenth of the body, no pain
data, contacts of 0.5 s and longer; not for steam or liquids.
"""

from __future__ import annotations

import math
from itertools import pairwise

from msgspec import Struct


class Threshold(Struct, frozen=True):
    """One row: a contact of ``seconds`` burns from somewhere between ``low`` and ``high`` C."""

    material: str
    seconds: float
    low: float
    high: float
    sources: tuple[str, ...]
    standing: str  # second-hand or memory


_VENDOR = ("iso-13732-1", "insulation-vendor-table")
THRESHOLDS = (
    Threshold("metal", 1.0, 62.0, 70.0, (*_VENDOR, "en-563"), "second-hand"),
    Threshold("metal", 2.0, 60.0, 64.0, _VENDOR, "second-hand"),
    Threshold("metal", 5.0, 56.0, 61.0, _VENDOR, "second-hand"),
    Threshold("metal", 10.0, 55.0, 55.0, ("iso-13732-1",), "memory"),
    Threshold("metal", 60.0, 51.0, 51.0, _VENDOR, "second-hand"),
    Threshold("plastic", 60.0, 60.0, 60.0, _VENDOR, "second-hand"),
    Threshold("wood", 1.0, 110.0, 135.0, _VENDOR, "second-hand"),
    Threshold("wood", 60.0, 60.0, 60.0, _VENDOR, "second-hand"),
    *(
        Threshold(material, seconds, value, value, _VENDOR, "second-hand")
        for material in ("metal", "plastic", "wood")
        for seconds, value in ((600.0, 48.0), (28800.0, 43.0))
    ),
)

FLAG_LINE_C = 60.0  # hot metal is flagged from here, however short the touch: design-choice
HANDLING_S = 60.0  # the consumer contact of astm-c1055: a garment picked up and held
MATERIALS = ("metal", "plastic", "wood", "cloth")


class Caution(Struct, frozen=True):
    """A sentence for the workroom, with its sources."""

    id: str
    kind: str
    text: str
    sources: tuple[str, ...]


CAUTIONS = (
    Caution(
        "metal-stays-hot",
        "burn",
        "Metal teeth, hooks, buttons and pins stay hot after the cloth has cooled; let them lie, "
        "then touch with the back of a finger first.",
        ("iso-13732-1", "insulation-vendor-table"),
    ),
    Caution(
        "steam-burns-deep",
        "burn",
        "Steam burns faster and deeper than dry heat as hot: keep hands off a steaming press.",
        ("zhai-2018", "empa-2018"),
    ),
    Caution(
        "hot-board",
        "burn",
        "The board, the clapper and the cloth under a long press are hot as well; wood may be "
        "held at a temperature at which metal burns.",
        ("iso-13732-1", "insulation-vendor-table"),
    ),
    Caution(
        "iron-off-still-burns",
        "burn",
        "An iron that is switched off still burns: a third of treated iron burns came from one. "
        "Leave it out of reach for 30 to 60 minutes.",
        ("burns-2002", "gaffney-2000", "design-choice"),
    ),
    Caution(
        "first-aid",
        "burn",
        "Cool a burn under running water for 20 minutes, no ice, no grease; see a doctor for face, "
        "hand, child, or a blister larger than the palm.",
        ("nhs-burns", "empa-2018"),
    ),
)


def rows(material: str) -> tuple[Threshold, ...]:
    """The rows that count for a material, by rising contact time.

    Cloth has no row in what could be read: it counts as plastic.  Any unknown material counts
    as metal, the strictest.
    """
    known = {"cloth": "plastic"}.get(material, material if material in MATERIALS else "metal")
    return tuple(sorted((r for r in THRESHOLDS if r.material == known), key=lambda r: r.seconds))


def touch_limit(material: str, seconds: float = HANDLING_S) -> float:
    """The surface temperature, degrees C, that is taken as touchable for so long.

    Never above FLAG_LINE_C for metal or what is not known.  Raises ValueError for a time that
    is not above zero.
    """
    if not seconds > 0.0:
        raise ValueError(f"a contact lasts longer than {seconds} s")
    table = rows(material)
    limit = _log_time(table, seconds)
    return min(limit, FLAG_LINE_C) if table[0].material == "metal" else limit


def _log_time(table: tuple[Threshold, ...], seconds: float) -> float:
    """The lower threshold, straight in log time between rows and level beyond them."""
    if seconds <= table[0].seconds:
        return table[0].low
    for shorter, longer in pairwise(table):
        if seconds <= longer.seconds:
            part = math.log(seconds / shorter.seconds) / math.log(longer.seconds / shorter.seconds)
            return shorter.low + part * (longer.low - shorter.low)
    return table[-1].low
