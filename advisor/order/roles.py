"""The role of a place: told by what is made there, else by its name, else by its shape."""

from __future__ import annotations

from advisor.knowledge.model import Entry
from advisor.knowledge.ordering import SeamKind
from advisor.project.garment import Seam
from advisor.project.linings import Unit, of_part
from advisor.project.placing import BONES, singular_words

BY_KIND = {
    "elastic-edge": "elastic-edge",
    "casing": "casing",
    "pad": "pad",
    "cup": "cup",
    "front-band": "front-band",
    "shirring": "tuck",
}
"""Roles that follow from the kind of place, whatever the name says where it lies."""
POCKET_ZIP = "pocket-zip"
"""The role of a zip that closes a pocket: it neither fits the garment nor opens it."""
NECKBAND = "neckband"
SLEEVE_HEAD, ROLL = "sleeve-head", "sleeve-head-roll"
FLAP, POCKET_FLAP = "flap", "pocket-flap"


def guessed(
    seam: Seam, kind: str, unit: Unit, about: list[Entry], roles: dict[str, SeamKind]
) -> SeamKind:
    """The role of a place that nobody says one of."""
    words = of_part(_words(seam.name), unit)
    found = next((k for k in roles.values() if any(_holds(words, w) for w in k.words)), None)
    sewn_on = NECKBAND if kind == "front-band" and of_another_cloth(seam, about) else ""
    fixed = sewn_on or _special(kind, about, found, words) or _by_kind(kind, about, found)
    return roles.get(fixed) or found or roles.get(_by_shape(seam, kind)) or roles["plain"]


def of_another_cloth(seam: Seam, about: list[Entry]) -> bool:
    """Whether a band is sewn on, and so runs on round the neck: it ends in another cloth.

    One that is folded back, its support within, begins and ends in the cloth of the front.
    """
    kinds = dict(zip(seam.cloths(), about, strict=True))
    cloths = [use.cloth for use in seam.uses if kinds[use.cloth].kind == "cloth"]
    return bool(cloths) and cloths[0] != cloths[-1] and seam.facts.get("edge") != "folded"


def _special(kind: str, about: list[Entry], found: SeamKind | None, words: tuple[str, ...]) -> str:
    """A role that lies elsewhere than others of its kind do; "" where it has none such."""
    if kind == "zip" and "pocket" in words:
        return POCKET_ZIP
    if kind == "pad" and any(e.id == SLEEVE_HEAD for e in about):
        return ROLL  # it lies along the cap, and the pad against it
    return POCKET_FLAP if kind == "faced-edge" and words[-1:] == (FLAP,) and not found else ""


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
    if kind == "applique":
        return "applied"
    return "facing" if kind == "faced-edge" or seam.facts.get("edge") == "turned" else "plain"


_words = singular_words


def holds_words(name: str, phrase: str) -> bool:
    """Whether a name holds the words of a phrase side by side."""
    return _holds(_words(name), phrase)


def _holds(words: tuple[str, ...], phrase: str) -> bool:
    wanted = _words(phrase)
    return any(words[i : i + len(wanted)] == wanted for i in range(len(words)))
