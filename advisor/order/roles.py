"""Which role a place has, told by its name, its notions, and what the garment has besides.

A name says better than any fact where a place lies, so the words of the roles are looked for in
it, in the order of the knowledge; what is made there, as a zip or a hem, goes before the name.
"""

from __future__ import annotations

from dataclasses import replace

from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.ordering import SeamKind
from advisor.project.garment import Garment, Seam
from advisor.project.linings import Unit
from advisor.project.placing import BONES, singular_words

HALVES = frozenset({"front", "back"})
"""Words of a name that say on which half of the garment a seam lies."""
BY_KIND = {
    "elastic-edge": "elastic-edge",
    "casing": "casing",
    "pad": "pad",
    "cup": "cup",
    "front-band": "front-band",
    "shirring": "tuck",
    "ties": "strap",
}
"""Roles that follow from the kind of place, whatever the name says where it lies."""
ZIPS = frozenset({"zip", "concealed-zip", "side-zip"})
POCKET_ZIP = "pocket-zip"
"""The role of a zip that closes a pocket: it neither fits the garment nor opens it."""
OPENS = frozenset({"front", "open", "ended"})
"""Words of a zip that opens the front from end to end."""
LOWER = frozenset({"bottom", "hem", "lower", "welt"})
"""Words of a band that say that it closes the lower edge."""
ALL_ROUND = frozenset({"armhole", "bodice", "top", "waist", "upper"})
"""Words of a facing that say that it runs round the body, over its sides."""
ABOVE = frozenset({"shoulder", "bodice", "armhole", "neck", "neckline", "strap"})
"""Words of a name that say that there is a part above the waist."""
HIPS = frozenset({"waist", "hip"})
UPPER_WORDS = ABOVE | {"bust", "collar", "sleeve", "cuff", "lapel", "princess"}
"""Words of a name that say that there is a bodice, whose darts may run anywhere."""
EDGES = frozenset({"edge", "round"})
"""Words of a trimming that say that it lies round the edges of the garment."""
ROUND_MM = 1000.0
"""A trimming from this length on lies round edges and on no one piece, mm: estimate."""
PIECES = frozenset(
    {"skirt", "sleeve", "bodice", "yoke", "pocket", "panel", "leg", "row", "tier", "chest"}
)
"""Words of a trimming that say on which piece it lies."""
PAIR = 2
VENTS = frozenset({"vent", "slit"})


def role_of(
    seam: Seam, kind: str, unit: Unit, about: list[Entry], garment: Garment, knowledge: Knowledge
) -> SeamKind:
    """The role of a place: as the project says, else as its name and its notions tell."""
    roles = knowledge.order.kinds
    wished = garment.wishes.kinds.get(seam.name, "")
    role = roles.get(wished) or _guess(seam, kind, unit, about, roles)
    role = roles.get(_narrower(role.id, seam, garment, kind)) or role
    return _as_here(role, garment, unit, seam.name)


def _narrower(role: str, seam: Seam, garment: Garment, kind: str) -> str:
    """A role of its own for what a word tells of where it lies; "" where none does.

    The darts of a skirt or of trousers run to the waist and meet no side; a trim that belongs to
    no piece lies round the edges; and a lining is not set at a vent but felled to it.
    """
    words = set(_words(seam.name))
    if role == "dart" and (HALVES | HIPS) & words:
        above = any(UPPER_WORDS & set(_words(other.name)) for other in garment.seams)
        return "waist-dart" if HIPS & words or not above else ""
    if kind == "ribbon" and seam.name not in garment.wishes.joins and not seam.making.crosses:
        return "edge-trim" if _round_the_edges(seam, words) else ""
    return "vent-lining" if kind == "lining-seam" and VENTS & words else ""


def _round_the_edges(seam: Seam, words: set[str]) -> bool:
    """Whether a trimming is called after edges, or is too long to lie on one piece.

    One that names its piece is sewn to that, and several rows of it lie on the face.
    """
    long = float(seam.facts.get("length", 0.0)) >= ROUND_MM and seam.making.times <= PAIR
    return bool(EDGES & words) or (long and not PIECES & words)


def _as_here(role: SeamKind, garment: Garment, unit: Unit, name: str) -> SeamKind:
    """The role with what it crosses in this garment.

    A zip runs over the waist only where the garment goes on above it; and where a concealed zip
    does, the seam below the zip is closed after both, so the waist does not cross it. An edge
    that is turned to the lining ends beside the zip: it is joined while the pieces lie flat, and
    the lining is felled to the tape afterwards. A band at an armhole runs over its side seam, and
    so does a facing that goes round the body.
    """
    if unit == "both" and role.id == "facing":
        return replace(role, crosses=tuple(id_ for id_ in role.crosses if id_ not in ZIPS))
    round_the_body = role.id == "neckband" and "armhole" in _words(name)
    if round_the_body or (role.id == "facing" and ALL_ROUND & set(_words(name))):
        return replace(role, crosses=(*role.crosses, "side", "underarm"))
    if role.id == "zip" and OPENS & set(_words(name)):
        return replace(role, crosses=(*role.crosses, "neckband"))
    if role.id == "crotch" and not any("side" in _words(n) for n in _zips(garment)):
        return replace(role, crosses=(*role.crosses, "concealed-zip"))
    if role.id == "neckband" and LOWER & set(_words(name)):
        return replace(role, crosses=(*role.crosses, "side", "side-and-sleeve", "centre"))
    bodice = any(ABOVE & set(_words(seam.name)) for seam in garment.seams)
    zips = [
        seam
        for seam in garment.seams
        if any(garment.cloths[name].entry == "concealed-zip" for name in seam.cloths())
    ]
    not_here = {"waist"} if role.id in ZIPS and not bodice else set()
    if role.id == "waist" and bodice and zips:
        beside = any("side" in _words(seam.name) for seam in zips)
        not_here = {"side" if beside else "centre"}
    left = tuple(id_ for id_ in role.crosses if id_ not in not_here)
    return role if left == role.crosses else replace(role, crosses=left)


def _zips(garment: Garment) -> list[str]:
    """The names of the places where a concealed zip lies."""
    return [
        seam.name
        for seam in garment.seams
        if any(garment.cloths[name].entry == "concealed-zip" for name in seam.cloths())
    ]


def _guess(
    seam: Seam, kind: str, unit: Unit, about: list[Entry], roles: dict[str, SeamKind]
) -> SeamKind:
    words = _words(seam.name)
    if unit == "lining" and words[:1] == ("lining",):
        words = words[1:]
    found = next((k for k in roles.values() if any(_holds(words, w) for w in k.words)), None)
    fixed = POCKET_ZIP if kind == "zip" and "pocket" in words else _by_kind(kind, about, found)
    return roles.get(fixed) or found or roles.get(_by_shape(seam, kind)) or roles["plain"]


def _by_kind(kind: str, about: list[Entry], found: SeamKind | None) -> str:
    """The role that what is made here has wherever it lies; "" where the name tells."""
    if kind == "zip":
        hidden = any("concealed" in e.id for e in about) or (found and found.id == "concealed-zip")
        beside = "side-zip" if found and found.id == "side-zip" else "zip"
        return "concealed-zip" if hidden else beside
    if (
        kind == "hem"
        and (found is None or not found.last)
        and (found is None or found.id != "sleeve-hem")
    ):
        return "hem"
    if kind in ("button", "buttonhole", "hook", "snap", "hook-and-loop"):
        return "fastening"
    if kind == "placket" and found is not None and found.closes:
        return "placket"  # an opening at the end of a side seam closes nothing
    if kind in BONES and (found is None or found.id == "casing"):
        return "bone-channel"
    if kind == "lining-seam":
        return "set-lining"
    if kind == "neckband" and (found is None or found.id == "pocket" or found.last):
        return "neckband"  # a welt of rib, or the rib that closes the lower edge
    return BY_KIND.get(kind, "") if found is None or found.id != "waistband" else ""


def _by_shape(seam: Seam, kind: str) -> str:
    """A role for a name that says nothing."""
    if kind == "gathered-edge":
        return "tier"
    return "facing" if kind == "faced-edge" or seam.facts.get("edge") == "turned" else "plain"


_words = singular_words


def holds_words(name: str, phrase: str) -> bool:
    """Whether a name holds the words of a phrase side by side."""
    return _holds(_words(name), phrase)


def _holds(words: tuple[str, ...], phrase: str) -> bool:
    wanted = _words(phrase)
    return any(words[i : i + len(wanted)] == wanted for i in range(len(words)))
