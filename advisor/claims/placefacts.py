"""What a rule may ask of a place beyond its own facts: what closes it, and what lies behind it.

A fastening is known by the project's own word, else by the kind of its place; whether something
firm lies behind a buttonhole also by the bands, plackets and facings of the same cloth.
"""

from __future__ import annotations

from typing import Any, Final

from advisor.claims.glued import STIFFENS
from advisor.knowledge import nouns
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.places import PLAIN
from advisor.project.buttons import through_loops
from advisor.project.garment import Garment, Seam
from advisor.project.linings import unit_of
from advisor.project.placing import fastening_kind, singular_words
from advisor.project.strapless import strapless
from advisor.project.wearing import hooded, worn_over
from advisor.project.zipping import runs_into

BANDS: Final = frozenset({"front-band", "placket", "waistband", "cuff", "collar"})
"""Kinds of place that carry buttonholes."""
FOLDED: Final = frozenset({"patch-pocket", "faced-edge", "front-band", "placket", "hem"})
"""Kinds of place whose edges are folded or faced before they are stitched."""
OF_THEIR_OWN: Final = {"button": "toggle", "buttonhole": "loop"}
"""A sort of fastening that is called by its own name, by the kind that it is made as."""
LOOP: Final = "loop"
HEM: Final = "hem"
LINING_SEAM: Final = "lining-seam"
SHELL, LINED, BOTH = "shell", "lining", "both"
SET_IN: Final = "set-in-pocket"
POCKET: Final = "pocket"
TUBES: Final = tuple(
    map(frozenset, (("underarm",), ("inseam",), ("sleeve", "seam"), ("sleeve", "side")))
)
"""Words of a seam that makes a tube of a sleeve or a leg, where all of one row are in its name."""
MOUNTED: Final = "underlining"
VELVETS: Final = "piles"
WOOLS: Final = "wools"
BADLY: Final = 3
"""The family of velvets, and their level of `press marks`."""
PLEAT: Final = "pleat"
TIES: Final = "ties"
BUTTON: Final = "button"
BUTTONHOLE: Final = "buttonhole"
NONE: Final = (0, 0)
"""The level of a trait that nobody mentions."""
ZIP: Final = "zip"


def place_facts(seam: Seam, garment: Garment, knowledge: Knowledge) -> dict[str, Any]:
    """What closes at a place, whether a buttonhole is backed, and what lies flat."""
    fastening = fastening_of(seam, garment, knowledge)
    facts = {
        "fastening": fastening,
        "lies flat": "yes" if _lies_flat(seam) else "no",
        "may be pleated": "yes" if _may_be_pleated(seam) else "no",
        "sleeve head": "yes" if _sleeve_head(seam) else "no",
        "line on the bias": "yes" if _on_bias(seam, garment) else "no",
        "comes to a point": "yes" if nouns.WEDGES & set(_words(seam)) else "no",
        "at hood or neck": "yes" if _at_the_neck(seam, garment) else "no",
        "beside a velvet": "yes" if _beside_velvet(seam, garment, knowledge) else "no",
        "hangs from nothing": "yes" if strapless(seam, garment) else "no",
        "holds a cord": "yes" if _corded(seam, garment) else "no",
        "holds a pocket": "yes" if _holds_a_pocket(seam, garment) else "no",
        "closes a tube": "yes" if any(set(_words(seam)) >= w for w in TUBES) else "no",
        "ends hang free": "yes"
        if seam.place == TIES and nouns.TIED_ENDS & set(_words(seam))
        else "no",
        "through loops": "yes" if seam.place == BUTTON and through_loops(seam, garment) else "no",
        "closes the seat": "yes" if nouns.SEAT & set(_words(seam)) else "no",
        "over a lining": "yes" if _over_a_lining(seam, garment, knowledge) else "no",
    }
    if fastening == BUTTONHOLE:
        facts["backed"] = "yes" if _backed(seam, garment, knowledge) else "no"
    return facts


def fastening_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> str:
    """The kind of fastening that a place is; a toggle and a loop are sorts of their own."""
    kinds = knowledge.places.kinds
    closing = {id_: kind for id_, kind in kinds.items() if kind.family == "fastening"}
    kind = seam.place if seam.place in closing else fastening_kind(seam.fastening, closing)
    if not kind and ZIP in _kinds_of(seam, garment, knowledge):
        return ZIP
    called = {*singular_words(seam.fastening), *singular_words(seam.name)}
    own = OF_THEIR_OWN.get(kind, kind)
    return own if own in called or (own == LOOP and "rouleau" in called) else kind


def _kinds_of(seam: Seam, garment: Garment, knowledge: Knowledge) -> set[str]:
    return {knowledge.entries[garment.cloths[name].entry].kind for name in seam.cloths()}


def _lies_flat(seam: Seam) -> bool:
    """Whether it is stitched along a folded edge, so that nothing pulls across it."""
    return seam.place in FOLDED or seam.facts.get("edge") in ("turned", "folded", "hem")


def _may_be_pleated(seam: Seam) -> bool:
    """Whether its fullness is laid in pleats, or in a question may be; else it is gathered."""
    said = seam.making.pleats is not None or PLEAT in _words(seam)
    return said or not seam.place or seam.place == PLEAT


def _sleeve_head(seam: Seam) -> bool:
    """Whether a sleeve is set in here; a frill of a sleeve is a frill."""
    words = set(_words(seam))
    return (
        bool(nouns.SLEEVE_HEAD & words)
        and not nouns.FULL_ENDS & words
        and not seam.facts.get("edge")
    )


def _at_the_neck(seam: Seam, garment: Garment) -> bool:
    """Whether it lies at hood or neck; of a garment with a hood also where nobody says where."""
    words = {*_words(seam), *singular_words(seam.part)}
    if words & (nouns.ROUND_THE_HEAD | nouns.BELOW_THE_NECK):
        return bool(words & nouns.ROUND_THE_HEAD)
    return hooded(garment)


def _beside_velvet(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a flat or napped cloth meets a woven pile here that every pressing marks badly."""
    every = [knowledge.entries[garment.cloths[name].entry] for name in seam.cloths()]
    cloths = [entry for entry in every if entry.kind == "cloth"]
    levels = [(_least(e, "pile"), _least(e, "press marks"), e) for e in cloths]
    velvets = [e for pile, marks, e in levels if pile and marks >= BADLY and e.family == VELVETS]
    flat = any(not pile or entry.family == WOOLS for pile, _, entry in levels)
    return flat and any(entry.structure == "woven" for entry in velvets)


def _least(entry: Entry, trait: str) -> int:
    return entry.traits.get(trait, (0, 0))[0]


def _on_bias(seam: Seam, garment: Garment) -> bool:
    """Whether a place lies on the bias, or a zip in the line of a seam that does."""
    line = (seam, *(other for other in garment.seams if runs_into(other, seam)))
    return any(one.facts.get("bias") == "yes" for one in line)


def _over_a_lining(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a lining ends at this hem of the shell, hemmed by itself or felled to it."""
    if seam.place != HEM:
        return False
    entries = {name: knowledge.entries[cloth.entry] for name, cloth in garment.cloths.items()}
    sleeve = bool(nouns.ON_SLEEVE & set(_words(seam)))
    ends = (
        s
        for s in garment.seams
        if s.place in (HEM, LINING_SEAM) and HEM in _words(s) and s.name != seam.name
    )
    alike = [s for s in ends if bool(nouns.ON_SLEEVE & set(_words(s))) == sleeve]
    own = unit_of(seam, entries)
    below = any(s.place == LINING_SEAM or unit_of(s, entries) == LINED for s in alike)
    return own == BOTH or (own == SHELL and below)


def _holds_a_pocket(seam: Seam, garment: Garment) -> bool:
    """Whether a pocket is set into a seam, by the name of either."""
    here = set(_words(seam))
    if seam.place != PLAIN or POCKET in here:
        return seam.place == PLAIN
    pockets = (
        s for s in garment.seams if s.place == SET_IN and set(s.cloths()) & set(seam.cloths())
    )
    return any(here & nouns.IN_A_SEAM & set(_words(pocket)) for pocket in pockets)


def garment_facts(garment: Garment, knowledge: Knowledge) -> dict[str, str]:
    """What a rule may ask of whom it is made for, beyond who that is: how it is worn."""
    over = garment.maker.worn_over or ("yes" if worn_over(garment, knowledge) else "no")
    return {
        "outer garment": over,
        "hooded": "yes" if hooded(garment) else "no",
        "has shoulders": "yes" if garment.single or _shouldered(garment) else "no",
        "has sleeves": "yes" if garment.single or _sleeved(garment) else "no",
        "hangs from shoulders": "yes" if _hung(garment) else "no",
        "sheer body": "yes" if garment.single or _sheer_body(garment, knowledge) else "no",
    }


def _shouldered(garment: Garment) -> bool:
    """Whether a place of it is called after a shoulder, or after what is joined to one."""
    return any(nouns.SHOULDERED & set(_words(seam)) for seam in garment.seams)


def _sleeved(garment: Garment) -> bool:
    """Whether a place of it is called after a sleeve."""
    return any("sleeve" in _words(seam) for seam in garment.seams)


def _corded(seam: Seam, garment: Garment) -> bool:
    """Whether a covered cord is sewn in, so that what covers it shows no row on its face."""
    return any(garment.cloths[name].entry == "piping-cord" for name in seam.cloths())


def _hung(garment: Garment) -> bool:
    """Whether a garment has shoulder seams to hang from; from straps alone a bodice slips."""
    return not garment.single and any("shoulder" in _words(seam) for seam in garment.seams)


def _sheer_body(garment: Garment, knowledge: Knowledge) -> bool:
    """Whether a sheer makes a bodice or a skirt; sleeves, frills and what hangs free do not.

    One that is mounted already needs no word of it, nor does one that lines, nor an openwork.
    """
    free = {name for part in garment.parts for name in part.separate}
    free |= {n for seam in garment.seams if seam.place == MOUNTED for n in seam.cloths()}
    free |= {name for name in garment.cloths if "lining" in singular_words(name)}
    traits = {n: knowledge.entries[c.entry].traits for n, c in garment.cloths.items()}
    sheers = {
        name
        for name, levels in traits.items()
        if name not in free and levels.get("sheer", NONE)[1] and not levels.get("openwork", NONE)[0]
    }
    behind = {n for n, c in garment.cloths.items() if not c.detachable} - free - sheers
    kinds = (knowledge.entries[garment.cloths[name].entry].kind for name in behind)
    if garment.parts and "cloth" not in kinds:
        return False  # what lies beneath it is a garment or a layer that hangs by itself
    return any(
        set(seam.cloths()) & sheers
        and nouns.OF_A_BODY & set(_words(seam))
        and not nouns.LOOSE & set(_words(seam))
        for seam in garment.seams
    )


def _backed(seam: Seam, garment: Garment, knowledge: Knowledge) -> bool:
    """Whether an interfacing lies in a place, or where the cloths of it carry buttonholes."""

    def stiffened(one: Seam) -> bool:
        entries = (knowledge.entries[garment.cloths[name].entry] for name in one.cloths())
        return any(entry.kind in STIFFENS for entry in entries)

    mine = set(seam.cloths())
    return any(
        stiffened(one)
        for one in garment.seams
        if one.name == seam.name
        or (
            mine & set(one.cloths())
            and (one.place in BANDS or nouns.STIFF_ENOUGH & set(_words(one)))
        )
    )


def _words(seam: Seam) -> tuple[str, ...]:
    return singular_words(seam.name)
