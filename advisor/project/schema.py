"""The form of a project file: which keys there are, and the shape of what stands under them.

The words and quantities themselves are read by `facts`, `cloths` and `colours`, which a
question uses as well; so that a form here says only "a word or a quantity".
"""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, Field

from advisor.knowledge.form import Form
from advisor.knowledge.schema_mine import QuoteForm
from advisor.project.names import (
    LONGEST_NAME,
    LONGEST_PHRASE,
    MOST_FABRICS,
    MOST_LAYERS,
    MOST_PIECES,
    MOST_SEAMS,
    MOST_TIERS,
    tidy_name,
)


def _plain(value: Any) -> Any:
    """A word or a number; only what can be printed on one line."""
    if value is None:
        raise ValueError("nothing is written here; write a word, or leave the line out")
    if isinstance(value, dict | list):
        raise ValueError("must be a word or a quantity, not a list or keys with their values")
    if isinstance(value, str):
        tidy_name(value, LONGEST_PHRASE)
    return value


def _named(value: Any, longest: int = LONGEST_NAME) -> Any:
    # What is no text at all is left to the form, which can tell that a group was meant.
    return tidy_name(value, longest) if isinstance(value, str) else value


def _coloured(value: Any) -> Any:
    if value is None:
        raise ValueError('nothing is written here; text that begins with # needs quotes: "#27455f"')
    return _plain(value)


def _share(value: Any) -> Any:
    return None if value is None else _plain(value)  # whoever reads the shares says it better


Plain = Annotated[Any, BeforeValidator(_plain)]
Share = Annotated[Any, BeforeValidator(_share)]
Colour = Annotated[Any, BeforeValidator(_coloured)]
Name = Annotated[str, BeforeValidator(_named)]
Phrase = Annotated[str, BeforeValidator(partial(_named, longest=LONGEST_PHRASE))]


class MakerForm(Form):
    """What the maker works with."""

    machine: Plain = None
    foot_lift: Plain = None
    overlocker: Plain = None
    feet: list[Plain] | None = None


_FITTED = ("fit", "fitted", "fits")
"""What makers write for how it is fitted."""
_MANY = ("count", "cut", "how many", "quantity")
"""What makers call a number of pieces or of fastenings."""


class ClothForm(Form):
    """One cloth of the garment, or one notion that is described like a cloth."""

    OTHER_WORDS: ClassVar[dict[str, str]] = {
        "cloth": "fabric",
        "composition": "fibres",
        "content": "fibres",
        "gsm": "weight",
        "material": "fabric",
    }

    fabric: Phrase | None = None
    notion: Phrase | None = None
    fibres: dict[str, Share] | list[Name] | Phrase | None = None
    weight: Plain = None
    thickness: Plain = None
    colour: Colour = None
    shade: Plain = None
    care: Plain = None
    detachable: Plain = None
    unwashed: Plain = None
    width: Plain = None
    repeat: Plain = None
    selvage: Plain = None
    shrinks: Plain = None
    shrinks_across: Plain = None
    price: Plain = None
    overhang: Plain = None
    sinks: Plain = None
    traits: dict[str, Plain] | None = None


class LayerForm(Form):
    """A layer of a seam with how it goes in: a cloth of the project, or a notion."""

    OTHER_WORDS: ClassVar[dict[str, str]] = dict.fromkeys(("cloth", "fabric", "layer"), "use")

    use: Name | None = None
    notion: Name | None = None
    fullness: Plain = None
    ease: Plain = None
    stretched: Plain = None
    width: Plain = None
    body: Plain = None


class StripForm(Form):
    """A test strip of gathering: its length before and after."""

    flat: Plain
    gathered: Plain


class GathersForm(Form):
    """How a full edge is drawn up."""

    to: Plain = None
    method: Plain = None
    strip: StripForm | None = None


class PleatsForm(Form):
    """A row of pleats on the last cloth of a seam."""

    kind: Plain
    number: Plain
    depth: Plain
    spacing: Plain = None
    face: Plain = None
    stitched_down: Plain = None
    hip: Plain = None
    waist: Plain = None


class TucksForm(Form):
    """Tucks across a piece: each takes twice its depth."""

    depth: Plain
    number: Plain
    spacing: Plain = None


class FlounceForm(Form):
    """A circular flounce: the seam that it covers and how deep it hangs."""

    seam: Plain
    depth: Plain
    pieces: Plain = None
    turn: Plain = None


class TiersForm(Form):
    """Tiers below one another: how many alike, or the height of each."""

    number: Plain = None
    heights: Annotated[list[Plain], Field(min_length=2, max_length=MOST_TIERS)] | None = None
    fullness: Plain = None


class PieceForm(Form):
    """A piece to cut, by its cut sizes or by its finished ones."""

    OTHER_WORDS: ClassVar[dict[str, str]] = {
        **dict.fromkeys(_MANY, "number"),
        **dict.fromkeys(("cloth", "from", "material", "of", "use"), "fabric"),
        **dict.fromkeys(("high", "length", "long"), "height"),
        "wide": "width",
    }

    name: Name
    fabric: Name
    width: Plain = None
    height: Plain = None
    finished_width: Plain = None
    finished_height: Plain = None
    number: Plain = None
    fullness: Plain = None
    hem: Plain = None
    allowance: Plain = None
    grain: Plain = None
    narrow_end: Plain = None
    matched: Plain = None
    joined: Plain = None
    tucks: TucksForm | None = None
    flounce: FlounceForm | None = None
    tiers: TiersForm | None = None
    doubled: Plain = None


class KitForm(Form):
    """What the maker has at home."""

    feet: list[Plain] | None = None
    needles: list[Plain] | None = None
    pins: list[Plain] | None = None
    pressing: list[Plain] | None = None
    tools: list[Plain] | None = None
    threads: list[Plain] | None = None
    thread_near: Plain = None


class ResultForm(Form):
    """What a test on scraps showed."""

    seam: Name
    result: Phrase
    works: Plain = None


class AddedForm(Form):
    """A step of the maker's own in the order of work."""

    step: Phrase
    after: list[Phrase] | Phrase | None = None
    before: list[Phrase] | Phrase | None = None
    on: list[Name] | Name | None = None
    minutes: Plain = None


class PinForm(Form):
    """Where the maker wants a step: after one, before another, or at a place in the list."""

    step: Phrase
    after: Phrase | None = None
    before: Phrase | None = None
    at: Annotated[int, Field(ge=1, le=999)] | None = None


class WishesForm(Form):
    """What the maker says of the order of work."""

    add: Annotated[list[AddedForm], Field(max_length=MOST_PIECES)] | None = None
    drop: list[Phrase] | None = None
    tie: list[Annotated[list[Phrase], Field(min_length=2, max_length=2)]] | None = None
    pin: list[PinForm] | None = None
    after: dict[str, list[Phrase] | Phrase] | None = None
    costs: dict[str, Plain] | None = None
    sitting: Plain = None


Layers = Annotated[list[Name | LayerForm], Field(min_length=1, max_length=MOST_LAYERS)]


_HEAT = (
    "another key, for the heat is worked out of the cloths: 'pressing' says how it is pressed, as "
    "in 'pressing: finger-press', and 'pressed first' which cloths alone, as in "
    "'pressed first: [shell]'"
)


class SeamForm(Form):
    """A place where layers are joined."""

    INSTEAD: ClassVar[dict[str, str]] = {
        **dict.fromkeys(("iron", "ironing", "temperature", "heat", "press"), _HEAT),
        "band": "'kind: cuff', or waistband, collar or front band",
    }
    """What a maker may write that is no key, and what does instead."""
    OTHER_WORDS: ClassVar[dict[str, str]] = {
        **dict.fromkeys(_MANY, "number"),
        **dict.fromkeys(("cloths", "fabrics"), "layers"),
        **dict.fromkeys(("how", "made", "made by", "technique"), "method"),
        **dict.fromkeys(("role", "type"), "kind"),
        **dict.fromkeys(_FITTED, "fitting"),
        "edge finish": "finish",
    }

    name: Name
    layers: Layers | None = None
    on: list[Name] | Name | None = None
    fastening: Plain = None
    number: Plain = None
    length: Plain = None
    allowance: Plain = None
    shape: Plain = None
    edge: Plain = None
    stress: Plain = None
    finish: Plain = None
    seam: Plain = None
    stitch: Plain = None
    needle: Plain = None
    needle_size: Plain = None
    stitched_by: Plain = None
    pressing: Plain = None
    pressed_first: list[Name] | Name | None = None
    fused_first: list[Name] | Name | None = None
    lessen_bulk: list[Plain] | Plain = None
    support: Plain = None
    bias: Plain = None
    lined: Plain = None
    worn_next_to_skin: Plain = None
    times: Plain = None
    moves: Plain = None
    crosses: list[Name] | Name | None = None
    kind: Plain = None
    joins: list[Name] | None = None
    gathers: GathersForm | None = None
    pleats: PleatsForm | None = None
    method: Plain = None
    fitting: Plain = None
    topstitch: Plain = None
    part: Plain = None
    left_open: Plain = None


class PartForm(Form):
    """A part of the garment: its layers from the body outwards, and how it is fitted."""

    OTHER_WORDS: ClassVar[dict[str, str]] = dict.fromkeys(_FITTED, "fitting")

    layers: Annotated[list[Name], Field(min_length=1, max_length=MOST_LAYERS)] | None = None
    separate: list[Name] | Name | None = None
    fitting: Plain = None


class ProjectForm(Form):
    """A whole project file."""

    OTHER_WORDS: ClassVar[dict[str, str]] = {
        "cloths": "fabrics",
        **dict.fromkeys(_FITTED, "fitting"),
        "materials": "fabrics",
        "name": "garment",
        "places": "seams",
        "title": "garment",
    }
    """What a maker may write for a key; it is told, never taken. So in every form."""
    LISTED: ClassVar[tuple[str, ...]] = ("fabrics", "parts", "seams", "pieces", "results")
    """The groups of many; a key of one of them stands under no one name."""
    WRITTEN: ClassVar[dict[str, str]] = {
        "maker": "{machine: household, feet: [standard, zip]}",
        "fabrics": "{shell: linen suiting, lining: cupro satin}",
        "each of fabrics": "{fabric: linen suiting, weight: 240 g/m2}",
        "parts": "{bodice: {layers: [shell, lining]}}",
        "each of parts": "{layers: [shell, lining]}",
        "seams": "[{name: shoulder, layers: [shell, shell]}]",
        "each of seams": "{name: shoulder, layers: [shell, shell]}",
        "layers": "[shell, shell]",
        "on": "[shell]",
        "pieces": "[{name: front, fabric: shell, width: 40 cm, height: 70 cm}]",
        "each of pieces": "{name: front, fabric: shell, width: 40 cm, height: 70 cm}",
        "kit": "{feet: [walking], needles: [sharp 70]}",
        "feet": "[standard, zip]",
        "needles": "[sharp 70, jeans 90]",
        "pins": "[dressmaking pins]",
        "threads": "[navy polyester tex 27]",
        "results": "[{seam: shoulder, result: it lies flat}]",
        "order": "{drop: [hang], sitting: 90 min}",
        "quote": "{currency: EUR, hour: 20}",
        "done": "[join shoulder]",
        "joins": "[shoulder, side]",
        "gathers": "{to: 40 cm}",
        "pleats": "{kind: knife, number: 8, depth: 3 cm}",
        "tucks": "{depth: 5 mm, number: 6}",
        "fabric": "linen suiting",
        "notion": "coil zip",
        "name": "shoulder",
    }
    """What the keys are written like that hold more than a word."""

    garment: Name
    units: Literal["metric", "us"] = "metric"
    fitting: Plain = None
    pattern: Plain = None
    worn_by: Plain = None
    maker: MakerForm | None = None
    fabrics: Annotated[dict[str, ClothForm | Phrase], Field(min_length=1, max_length=MOST_FABRICS)]
    parts: Annotated[dict[Name, PartForm], Field(min_length=1, max_length=MOST_PIECES)] | None = (
        None
    )
    seams: Annotated[list[SeamForm], Field(min_length=1, max_length=MOST_SEAMS)]
    pieces: Annotated[list[PieceForm], Field(max_length=MOST_PIECES)] | None = None
    kit: KitForm | None = None
    results: Annotated[list[ResultForm], Field(max_length=MOST_PIECES)] | None = None
    order: WishesForm | None = None
    quote: QuoteForm | None = None
    done: list[Phrase] | None = None
