"""How a garment is built, and what is bought: mm, thread in m, N/cm, sentences in her units."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ToldFineNeedle:
    """A needle that the stack may break, and what the stack wants, NM."""

    nm: float
    wants_nm: float


@dataclass(frozen=True, slots=True)
class ToldSpot:
    """One spot of a seam: its plies and how thick they lie."""

    at: str
    plies: float
    thickness_mm: float
    under_foot_mm: float
    sewn: bool
    complete: bool


@dataclass(frozen=True, slots=True)
class ToldThreadUse:
    """Metres of thread of a seam by thread and by purpose, without wastage."""

    needle: float
    bobbin: float
    looper: float
    total: float
    by: dict[str, float]


@dataclass(frozen=True, slots=True)
class ToldFullness:
    """How a full edge is drawn up."""

    cloth: str
    method: str
    ratio: float
    measured: float | None
    finished_mm: float | None
    cut_mm: float | None
    usual: tuple[float, ...]
    layers: int
    says: str


@dataclass(frozen=True, slots=True)
class ToldClass:
    """The standards' names of stitch and seam; a name from memory is marked."""

    iso_4915: str | None
    iso_4916: str | None
    astm_d6193: str | None
    from_memory: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldBuild:
    """What a place comes to as it is built; a figure that cannot be had is None.

    `band_says` is how long what is stretched to the edge is cut; "" where nothing is.
    """

    times: int
    plies: float
    at: str
    thickness_mm: float | None
    under_foot_mm: float | None
    foot_lift_mm: float | None
    room: str
    squeeze: bool
    fine_needle: ToldFineNeedle | None
    spots: tuple[ToldSpot, ...]
    allowance_mm: float | None
    finish: str | None
    needs_mm: float | None
    short_mm: float | None
    finish_when: str
    grade_mm: tuple[float, ...]
    strength_n_per_cm: float | None
    strength_needs_n_per_cm: float | None
    thread_m: ToldThreadUse | None
    fullness: ToldFullness | None
    class_: ToldClass
    build: str
    band_says: str
    build_says: tuple[str, ...]
    build_warns: tuple[str, ...]
    build_sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldPart:
    """A part of the garment: its cloths from the body outwards, those that hang free, its fit.

    `does` says how a layer that hangs free is made; "" where none does.
    """

    name: str
    layers: tuple[str, ...]
    separate: tuple[str, ...]
    fitting: str
    places: tuple[str, ...]
    does: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldCheck:
    """Quantities that do not agree: both numbers, mm or plain, in words, and the `cloth` bought."""

    id: str
    place: str
    text: str
    values: tuple[float, ...]
    cloth: str = ""


@dataclass(frozen=True, slots=True)
class ToldLies:
    """Pieces that lie together on their cloth, mm from its usable edge (or the fold) and along it.

    `number` pieces are cut there; `outlines_mm` are the corners of each as (across, along), of
    half a piece where it lies on the fold.
    """

    piece: str
    number: int
    across_mm: tuple[float, float]
    along_mm: tuple[float, float]
    way: str
    folded: bool
    outlines_mm: tuple[tuple[tuple[float, float], ...], ...]
    text: str


@dataclass(frozen=True, slots=True)
class ToldLaid:
    """The lay of a cloth's pieces, once it has shrunk: its size in mm, and all of them in order."""

    usable_mm: float
    length_mm: float
    pieces: tuple[ToldLies, ...]
    text: str


@dataclass(frozen=True, slots=True)
class ToldCloth:
    """Cloth to buy; skins by their `area_m2`, which have no length."""

    fabric: str
    width_mm: float | None
    length_mm: float | None
    buy: str
    buy_mm: float | None
    pieces: int
    one_way: bool
    lay: str
    shrinks_percent: float
    shrinks_across_percent: float
    used_percent: float | None
    assumed: tuple[str, ...]
    kind: str
    wrong: str
    says: tuple[str, ...]
    sources: tuple[str, ...]
    laid: ToldLaid | None = None
    area_m2: float | None = None


@dataclass(frozen=True, slots=True)
class ToldHang:
    """What a place carries at rest: g of all its times, N of each, N/cm where it has a length.

    `as_long_m` is how much of the cloth that carries it would weigh as much.
    """

    place: str
    mass_g: float
    newton: float
    n_per_cm: float | None
    carrier: str
    as_long_m: float | None
    holds_n_per_cm: float | None
    heavy: bool
    text: str


@dataclass(frozen=True, slots=True)
class ToldWeight:
    """What the garment weighs as it is cut, g, and what hangs where."""

    low_g: float
    high_g: float
    cloths_g: dict[str, list[float]]
    notions_g: float
    thread_g: float
    unknown: tuple[str, ...]
    uncounted: tuple[str, ...]
    hangs: tuple[ToldHang, ...]
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldTucks:
    """Where the tucks of a piece are folded."""

    number: int
    depth_mm: float
    spacing_mm: float
    first_fold_mm: float
    fold_to_fold_mm: float
    takes_mm: float
    thread_m: float | None


@dataclass(frozen=True, slots=True)
class ToldRing:
    """How the ring of a flounce is drawn."""

    cut_inner_mm: float
    seam_line_mm: float
    cut_outer_mm: float
    hem_mm: float
    hem_fullness: float
    turn: float


@dataclass(frozen=True, slots=True)
class ToldCut:
    """A piece as it is cut."""

    name: str
    fabric: str
    number: int
    width_mm: float
    height_mm: float
    reckoned: bool
    shape: str
    of: str
    fullness: float
    edge_mm: float | None
    usual_fullness: tuple[float, ...] | None
    tucks: ToldTucks | None
    ring: ToldRing | None
    avoids: tuple[str, ...]
    size: str
    marks: str
    says: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldTicket:
    """The number that a thread is sold under."""

    number: float
    of: str


@dataclass(frozen=True, slots=True)
class ToldReel:
    """A reel of the maker's rack that is near a colour, by CIEDE2000.

    `difference` is None where colours are only words; `wrong` says what of it does not suit, and
    `suits` whether it may be taken as it is.
    """

    name: str
    difference: float | None
    darker: bool
    seen: str
    sources: tuple[str, ...]
    wrong: str = ""
    suits: bool = False


@dataclass(frozen=True, slots=True)
class ToldShade:
    """A cloth that is sewn in a colour near its own, with a reel of hers or another's thread."""

    fabric: str
    thread: str
    reel: bool
    difference: float
    darker: bool
    seen: str


@dataclass(frozen=True, slots=True)
class ToldThread:
    """Thread to buy in one colour; wastage is in it.

    `matches` are cloths, and `to_match` the same in words. `needle_nm` is the needle whose eye its
    thickness would suit, `needles_set` those that are set where it is sewn.
    """

    colour: str
    matches: tuple[str, ...]
    fibre: str
    tex: float | None
    needle_m: float
    bobbin_m: float
    looper_m: float
    overlocker_m: float
    total_m: float
    buy: str
    seams: tuple[str, ...]
    not_counted: tuple[str, ...]
    tucks: tuple[str, ...]
    ticket: ToldTicket | None
    needle_nm: float | None
    size_sources: tuple[str, ...]
    rack: tuple[ToldReel, ...]
    shared: tuple[ToldShade, ...]
    sources: tuple[str, ...]
    needles_set: tuple[float, ...] = ()
    to_match: tuple[str, ...] = ()
