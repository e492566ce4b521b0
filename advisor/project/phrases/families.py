"""The commonest cloth of a fibre or a make that was named alone, and the others to choose from."""

from __future__ import annotations

from msgspec import Struct

from advisor.knowledge.model import Knowledge, Mix
from advisor.project.phrases.composition import Note
from advisor.project.phrases.grounds import LAID_FIRST
from advisor.project.phrases.lexicon import FAMILIES, KNIT_FAMILIES

_KNIT = frozenset({"knit", "knitted"})
_WOVEN = frozenset({"woven", "weave", "shirting", "suiting", "shirt", "trouser", "chino"})
_KNITTED, _FOR_SWIMMING = 4.5, 14.0
"""The shares of elastane from which a cloth is mostly a knit, and one for swimming: estimate."""
_OTHERS = 4
_SYNTHETIC = frozenset({"nylon", "polyester"})
_HAIRS = frozenset({"wool", "cashmere", "camel", "mohair", "alpaca", "angora"})
"""What is spun and woven as wool is, and what strengthens it."""
_SPOKEN = {
    "swim": "swim-knit",
    "swimming": "swim-knit",
    "leotard": "swim-knit",
    "gymnastic": "swim-knit",
    "dancewear": "swim-knit",
    "sportswear": "swim-knit",
    "swimwear": "swim-knit",
    "swimsuit": "swim-knit",
    "legging": "swim-knit",
    "activewear": "swim-knit",
    "shirt": "poplin",
    "suit": "suiting",
    "coat": "coating",
    "veil": "tulle",
    "veiling": "tulle",
    "yoga": "swim-knit",
    "raincoat": "showerproof",
    "scrub": "poplin",
    "stretch": "stretch-woven",
    "pocketing": "poplin",
    "jogging": "sweatshirt-knit",
    "compression": "swim-knit",
    "cycling": "swim-knit",
    "rash": "swim-knit",
    "awning": "canvas",
    "sharkskin": "suiting",
    "tent": "showerproof",
    "umbrella": "showerproof",
    "batik": "poplin",
    "ikat": "poplin",
    "dobby": "poplin",
    "jumper": "sweater-knit",
    "sweater": "sweater-knit",
    "cardigan": "sweater-knit",
    "pullover": "sweater-knit",
    "hoodie": "sweatshirt-knit",
    "tee": "jersey",
    "tshirt": "jersey",
    "baselayer": "jersey",
    "sari": "crepe-de-chine",
    "saree": "crepe-de-chine",
    "kimono": "crepe-de-chine",
    "necktie": "silk-twill",
    "kente": "poplin",
    "shirred": "stretch-woven",
    "smocked": "stretch-woven",
    "towel": "terry",
    "bedsheet": "poplin",
    "pillowcase": "poplin",
    "duvet": "poplin",
    "rain": "showerproof",
    "shower": "showerproof",
    "anorak": "showerproof",
    "chino": "twill",
    "bandana": "poplin",
    "bandanna": "poplin",
    "khaki": "twill",
    "toile": "poplin",
    "zephyr": "gingham",
    "khadi": "poplin",
    "kasuri": "poplin",
    "curtain": "canvas",
}
"""Words that name a whole family of cloths (common practice)."""

WORN_KNITS = frozenset(
    "tee jumper sweater cardigan pullover hoodie legging swimsuit leotard".split()  # noqa: SIM905
)
"""Garments that are knitted, whatever stands beside them."""
WORN = "sweater-knit"
"""What a jumper is of, whatever its fibre is."""
CUT_UP = frozenset({"curtain"})
"""What is no cloth's name and mostly a cloth's use, and is cut up as a cloth: an old curtain."""
TENDER_TOO = {"showerproof": ("vinyl",), "canvas": ("showerproof", "velvet")}
"""What a use may be of as well, and that bears less: a raincoat may be of vinyl, a curtain of
velvet or coated against the light."""
_PAIRS = {
    frozenset({"polyester", "cotton"}): "easy-care-cotton",
    frozenset({"polyester", "viscose"}): "suiting",
    frozenset({"polyester", "viscose", "elastane"}): "suiting",
    frozenset({"polyester", "viscose", "wool"}): "suiting",
    frozenset({"nylon", "elastane"}): "swim-knit",
}
"""The commonest cloth of fibres that were named together (common practice)."""
_OVER_FIBRE = frozenset({"swim-knit", "jersey", "sweatshirt-knit", "coating", "showerproof"})


class FamilyPick(Struct, frozen=True):
    """The cloth that was taken, and the sentence that says so."""

    entry: str
    note: Note
    also: tuple[str, ...] = ()


def family_of(words: list[str], shares: Mix, knowledge: Knowledge) -> FamilyPick | None:
    """The cloth that a fibre or a make alone is taken for; None where nothing says which.

    As much elastane as only a knit holds says that it is one.
    """
    fibres = [fibre for fibre, _ in shares]
    elastane = dict(shares).get("elastane") or 0.0
    woven = any(word in _WOVEN for word in words)
    said_knit = any(word in _KNIT for word in words)
    knit = said_knit or (elastane >= _KNITTED and not woven)
    spoken = next((entry for word, entry in _SPOKEN.items() if word in words), None)
    if elastane >= _FOR_SWIMMING and not woven:
        spoken = spoken or "swim-knit"
    fibre = _leading(shares)
    if fibre is None and not knit and spoken is None:
        return None
    if spoken and (
        spoken == WORN or (not said_knit and (fibre is None or _rather(spoken, fibre, knowledge)))
    ):
        entry = spoken
    elif knit:
        entry = KNIT_FAMILIES.get(fibre or "", KNIT_FAMILIES[""])
    else:
        entry = _PAIRS.get(frozenset(fibres)) or FAMILIES[fibre or ""]
    if entry not in knowledge.entries:
        return None
    said = " ".join(words)
    others = _others(entry, None if entry == spoken else fibre, knowledge)
    effect = f"taken as {knowledge.entries[entry].name}, the commonest"
    if others:
        effect += f"; others are {', '.join(others)}"
    also = TENDER_TOO.get(entry, ()) if entry == spoken and fibre is None else ()
    return FamilyPick(entry, (f"'{said}' names no one cloth", effect), also)


def _leading(shares: Mix) -> str | None:
    """The fibre that a cloth is named by: of the greatest share, else the first of `FAMILIES`.

    Wool or hair that is mixed with a synthetic is spun and woven as wool is, however much of it.
    """
    known = [(share or 0.0, fibre) for fibre, share in shares if fibre in FAMILIES]
    order = list(FAMILIES)
    found = sorted(known, key=lambda pair: (-pair[0], order.index(pair[1])))
    names = [fibre for _, fibre in found]
    hairs = [fibre for fibre in names if fibre in _HAIRS] if _SYNTHETIC & set(names[:1]) else []
    return next(iter((*hairs, *names)), None)


def _rather(entry: str, fibre: str, knowledge: Knowledge) -> bool:
    """Whether a use says more of a cloth than its fibre does: nylon for swimming is no taffeta."""
    spoken, usual = knowledge.entries[entry], knowledge.entries[FAMILIES[fibre]]
    sold = any(f == fibre for mix in spoken.mixes for f, _ in mix)
    return sold and entry in _OVER_FIBRE and spoken.family != usual.family


def _others(entry: str, fibre: str | None, knowledge: Knowledge) -> list[str]:
    if fibre is None:
        family = knowledge.entries[entry].family
        return [e.name for e in knowledge.fabrics() if e.family == family and e.id != entry][
            :_OTHERS
        ]
    sold = [e for e in knowledge.fabrics() if e.id != entry and e.mixes[0][0][0] == fibre]
    sold.sort(key=lambda e: e.family != knowledge.entries[entry].family)
    return [e.name for e in sold if e.family not in LAID_FIRST][:_OTHERS]
