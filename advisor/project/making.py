"""How a garment is built and what it is cut from: fullness, pieces, bolts, kit, results of tests.

Light frozen values beside `garment`; nothing here is needed to ask how cloths go together.
Lengths are mm, shares plain numbers (0.03 is 3 %).
"""

from __future__ import annotations

from msgspec import Struct, field

from advisor.knowledge.pricing import Quoting

USUAL_ALLOWANCE = 15.0
PLEAT_KINDS = ("knife", "box", "inverted")
LESS_BULK = {
    "offset the crossing": "offset",
    "press the crossing open": "open",
    "grade inside the hem": "grade",
    "level the foot": "shim",
    "gather to a stay": "stay",
}
"""What a project says under `lessen bulk`, and the short name of each way."""
GRAINS = ("lengthwise", "crosswise", "bias", "any")


class Gathers(Struct, frozen=True):
    """How a full edge is drawn up.

    `flat` and `gathered` are what a test strip measured, `planned` the fullness that was said.
    """

    method: str = ""
    to: float | None = None
    flat: float | None = None
    gathered: float | None = None
    planned: float = 1.0

    @property
    def measured(self) -> float | None:
        """The fullness that the strip showed."""
        return self.flat / self.gathered if self.flat and self.gathered else None


OVERLAPS = 4
"""Over how many of its neighbours a knife pleat may lie, as in a kilt (`craft.pleats`)."""


class Pleats(Struct, frozen=True):
    """A row of pleats on the last cloth of a seam: face, depth and spacing as in `craft.pleats`."""

    kind: str
    number: int
    depth: float
    face: float
    spacing: float
    ratio: float
    stitched_down: float | None = None
    hip: float | None = None
    waist: float | None = None


class Making(Struct, frozen=True):
    """How one seam is built.

    Attributes:
        times: how often the garment has it (two side seams); `counted` where the project says it.
        crosses: other seams that it runs over; `crosses_said` also where none are said (`[]`).
        topstitch: how many rows of topstitching it has.
        left_open: the opening that is left in it to turn the garment through, mm; 0 where none is.
        moves: whether the place is worked at every step, as a low waist on the hip.
        helps: what a remedy does for its bulk.
    """

    times: int = 1
    counted: bool = False
    gathers: Gathers | None = None
    pleats: Pleats | None = None
    crosses: tuple[str, ...] = ()
    crosses_said: bool = False
    moves: bool = False
    topstitch: int = 0
    left_open: float = 0.0
    helps: frozenset[str] = frozenset()


class Bolt(Struct, frozen=True):
    """A cloth as it is sold: width, repeat, selvage, what it shrinks; None where not said.

    `shrinks` is along its length, `shrinks_across` over its width.
    """

    width: float | None = None
    repeat: float = 0.0
    selvage: float | None = None
    shrinks: float | None = None
    shrinks_across: float | None = None

    @property
    def usable(self) -> float | None:
        """What the selvages leave of the width; None where it is not said."""
        return None if self.width is None else self.width - 2 * (self.selvage or 0.0)


class Tucks(Struct, frozen=True):
    """Tucks along a piece: depth of each, how many, from stitching to stitching."""

    depth: float
    number: int
    spacing: float


class Flounce(Struct, frozen=True):
    """A circular flounce: the seam it covers, how deep it hangs, rings, share of a circle each."""

    seam: float
    depth: float
    pieces: int = 1
    turn: float = 1.0


class Tiers(Struct, frozen=True):
    """Tiers below one another, the top one first: finished heights, one fullness for each seam."""

    heights: tuple[float, ...]
    fullness: float


class Piece(Struct, frozen=True):
    """A piece to cut: `width` across and `height` along the grain, each as cut or as finished.

    The cloth that tucks, fullness or tiers take comes on top; a flounce has its seam for a width
    and its depth for a height.

    Attributes:
        cut: whether width and height are as cut; else seams, hem and fullness come on top.
        number: how many; None where the panels are still to be counted.
        hem: what is turned up below; None where nobody says it.
        narrow: the width of the narrow end of a tapered panel.
        joined: whether it may be put together of shorter ones, where its cloth asks for it.
        own: whether she says its allowance herself.
        doubled: whether it is folded double along its length, as a ruffle of two layers.
    """

    name: str
    cloth: str
    width: float
    height: float
    cut: bool = True
    number: int | None = 1
    fullness: float = 1.0
    hem: float | None = None
    allowance: float = USUAL_ALLOWANCE
    own: bool = False
    grain: str = "lengthwise"
    narrow: float | None = None
    matched: bool = False
    joined: bool = False
    doubled: bool = False
    tucks: Tucks | None = None
    flounce: Flounce | None = None
    tiers: Tiers | None = None


class Kit(Struct, frozen=True):
    """What the maker has; None where she has not said.

    `thread_near` is the difference of colour (CIEDE2000) up to which places share a thread.
    """

    feet: tuple[str, ...] | None = None
    needles: tuple[str, ...] | None = None
    pins: tuple[str, ...] | None = None
    pressing: tuple[str, ...] | None = None
    tools: tuple[str, ...] | None = None
    threads: tuple[str, ...] | None = None
    thread_near: float | None = None


class Result(Struct, frozen=True):
    """What a test on scraps showed at a seam."""

    seam: str
    text: str
    works: bool = True


class Plan(Struct, frozen=True):
    """What is cut, from which bolts, with which kit, and what was tried already."""

    pieces: tuple[Piece, ...] = ()
    bolts: dict[str, Bolt] = field(default_factory=dict)
    kit: Kit = field(default_factory=Kit)
    results: tuple[Result, ...] = ()
    quote: Quoting = field(default_factory=Quoting)
