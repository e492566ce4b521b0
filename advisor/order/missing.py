"""What a garment file seems to have forgotten: a place that calls for one that stands nowhere.

Whatever might fill a gap does, for a false alarm is worse than silence. Nothing here is a clash,
and nothing is added to the garment: it is told, with the line that says it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from msgspec import Struct

from advisor.construction.cleared import quilted_to_wadding
from advisor.knowledge.gaps import GapRule, Sign
from advisor.knowledge.model import Knowledge
from advisor.order.frilled import ends_as_cut
from advisor.order.gapcloth import cloths_of
from advisor.order.gapfacts import (
    closes_nowhere,
    ends_raw_below,
    halves_not_joined,
    joined_to_nothing,
    lining_in_pieces,
    no_head_passes,
    nothing_for_a_bag,
    open_below,
    opens_above_alone,
    ribbon_band,
    stops_at_a_yoke,
)
from advisor.order.gaphung import open_rings, runs_beside, unopened
from advisor.order.gaplinings import panels_not_joined, skirt_lining_unsewn, sleeve_ends_nowhere
from advisor.order.gapmounts import unmounted
from advisor.order.kinds import SeamPlace
from advisor.order.layering import LENGTHWISE, SLEEVE_HEM, WAIST, lining_ends, lining_ends_at_waist
from advisor.order.rain import RAINWEAR, UNTAPED
from advisor.order.roles import holds_words
from advisor.order.sashes import asks_for_its_seam
from advisor.order.seamplaces import seam_places
from advisor.order.shearing import is_bare
from advisor.order.sleeved import sleeve_goes_in
from advisor.project.buttons import BUTTON, for_show, has_own_loop, holes_of, left_over
from advisor.project.garment import Garment
from advisor.project.placing import singular_words
from advisor.project.strapless import strapless

TO_THE_BODY, BAND = "to the body", "waistband"
UPPER: Final = frozenset({"shoulder", "raglan", "armhole", "collar-attach", "bagged-edge"})
"""Roles of what lies above the armhole, to where a side seam does not reach."""
ABOVE_SIDE: Final = 300.0
"""How far a centre line runs on above the end of a side seam, mm: estimate."""
GIVES: Final = 1
"""From this level of `stretch` on, slight, a cloth may go over shoulders or hips by itself."""
BOTH, LINING, CHILD = "both", "lining", "child"
PILES: Final = "piles"
MOUNTS: Final = "mounted nowhere"
BONE: Final = "bone"
FILMED: Final = "water-resistant-zip"
PARTING: Final = frozenset({"open-ended-zip", "two-way-zip"})
SLEEVED: Final = frozenset({"sleeve-hem", "cuff", "sleeve-vent", "sleeve-head-roll"})


class Gap(Struct, frozen=True):
    """What seems to be missing, the place that calls for it, and the cloths of its layers."""

    rule: GapRule
    place: SeamPlace
    cloths: tuple[str, ...]


def missing(garment: Garment, knowledge: Knowledge) -> list[Gap]:
    """Everything that seems to be missing, the gravest first, each once for shell and lining."""
    if garment.single:
        return []
    search = _Search(garment, knowledge)
    return [gap for rule in knowledge.registers.gaps for gap in search.gaps(rule)]


class _Search:
    def __init__(self, garment: Garment, knowledge: Knowledge) -> None:
        self.garment = garment
        self.knowledge = knowledge
        self.places = seam_places(garment, knowledge)
        self.entries = {n: knowledge.entries[c.entry] for n, c in garment.cloths.items()}
        self.facts: dict[str, Callable[[SeamPlace], bool]] = {
            "woven": self.is_woven,
            "close": self.is_close,
            "overlong": self.is_overlong,
            "narrower than a head": lambda p: no_head_passes(p, garment, self.entries),
            "closing buttons": self.closes,
            "no hole": self.has_no_hole,
            "bears a hole": lambda p: not self.is_open_work(p),
            "tears at a hole": self.is_open_work,
            "holes of other buttons": lambda p: left_over(p.seam, garment),
            "no hole of any": lambda p: self.has_no_hole(p) and not left_over(p.seam, garment),
            "closed end": lambda p: not any(self.entries[n].id in PARTING for n in p.notions),
            "not elastic": lambda p: not any(self.stretches(n) for n in p.seam.cloths()),
            "frays": lambda p: any(self.level(n, "frays") > 0 for n in p.cloths),
            "rain comes in": self.leaks,
            "sleeved": self.is_sleeved,
            "ends nowhere": self.ends_nowhere,
            "hangs from a band": self.hangs_from_band,
            "worn apart": self.is_worn_apart,
            "hangs from nothing": lambda p: strapless(p.seam, garment),
            "frill ends as it is cut": lambda p: ends_as_cut(
                p, self.places, garment, self.entries.__getitem__
            ),
            "pile with nothing inside": self.is_soft_pile,
            "open below": lambda p: open_below(p, self.places, garment),
            "lining in pieces": lambda p: lining_in_pieces(p, garment),
            "stops at a yoke": lambda p: stops_at_a_yoke(p, self.places),
            "shoulders of its own": lambda p: not stops_at_a_yoke(p, self.places),
            MOUNTS: lambda p: bool(unmounted(p, self.places, self.entries)),
            "ribbon band": lambda p: ribbon_band(p, self.entries),
            "band of cloth": lambda p: not ribbon_band(p, self.entries),
            "halves not joined": lambda p: halves_not_joined(p, self.places, garment),
            "panels not joined": lambda p: panels_not_joined(p, self.places, garment),
            "skirt lining unsewn": lambda _: skirt_lining_unsewn(self.places, garment),
            "sleeve ends nowhere": lambda _: sleeve_ends_nowhere(self.places),
            "joined to nothing": lambda p: joined_to_nothing(p, self.places),
            "opens above alone": lambda p: opens_above_alone(p, self.places),
            "ends raw below": lambda p: ends_raw_below(p, self.places, garment),
            "closes nowhere": lambda p: closes_nowhere(p, self.places, garment),
            "raw end in no seam": lambda p: asks_for_its_seam(p, self.places),
            "a layer opens nowhere": lambda p: bool(unopened(p, self.places)),
            "wadding bare": lambda p: is_bare(p, garment),
            "worn by a child": lambda _: garment.maker.worn_by == CHILD,
            "ring not closed": lambda p: bool(open_rings(p, self.places)),
            "no bone anywhere": lambda _: all(e.kind != BONE for e in self.entries.values()),
            "nothing for a bag": lambda p: nothing_for_a_bag(p, garment, self.entries),
        }

    def gaps(self, rule: GapRule) -> list[Gap]:
        """The gaps of one rule: of the shell and of the lining, and of each part worn apart."""
        found: dict[tuple[str, str, str], Gap] = {}
        callers = [place for place in self.places if self.fits(place, rule.at)]
        parts = frozenset(p.seam.part for p in callers if rule.each_part)
        for place in callers:
            part = place.seam.part if rule.each_part else ""
            key = (place.alone, part, LINING if place.unit == LINING else "shell")
            near = [p for p in self.places if self.is_near(p, place, parts)]
            if key in found or not self.calls(place, near, rule):
                continue
            name = rule.write.name if rule.write else ""
            pair = unmounted(place, self.places, self.entries) if MOUNTS in rule.facts else ()
            cloths = pair or self.hanging(rule, place)
            cloths = cloths or cloths_of(name, place, self.garment, self.knowledge)
            found[key] = Gap(rule, place, cloths)
        return list(found.values())

    def hanging(self, rule: GapRule, place: SeamPlace) -> tuple[str, ...]:
        """The cloths that a rule on what hangs there means; none of any other rule."""
        if "a layer opens nowhere" in rule.facts:
            return unopened(place, self.places)
        return open_rings(place, self.places) if "ring not closed" in rule.facts else ()

    def is_near(self, one: SeamPlace, place: SeamPlace, parts: frozenset[str]) -> bool:
        """Whether one may speak for another: it lies in no other of some parts.

        It may, too, where it holds what only the part of that other is cut of.
        """
        if _worn_apart(one, place):
            return False
        layers = {part.name: set(part.layers) for part in self.garment.parts}
        own = layers.get(place.seam.part, set()) - layers.get(one.seam.part, set())
        return not (_apart(one, place) and one.seam.part in parts) or bool(own & set(one.cloths))

    def calls(self, place: SeamPlace, near: Sequence[SeamPlace], rule: GapRule) -> bool:
        """Whether a place calls for what the rule asks, and nothing near it fills it."""
        if not all(any(self.fits(p, sign) for p in near) for sign in rule.beside):
            return False
        if not all(self.facts[fact](place) for fact in rule.facts):
            return False
        here = [p for p in near if p is not place and _same_side(p, place)]
        return not any(
            self.fits(p, sign) and not (sign.same_part and _apart(p, place))
            for p in here
            for sign in rule.filled
        )

    def fits(self, place: SeamPlace, sign: Sign) -> bool:
        """Whether a place is one of those that are meant."""
        return (
            (not sign.roles or place.role.id in sign.roles)
            and (not sign.kinds or place.kind.id in sign.kinds)
            and (not sign.families or place.kind.family in sign.families)
            and (not sign.of or place.unit in (sign.of, BOTH))
            and (not sign.words or _named(place, sign.words))
            and not _named(place, sign.without)
        )

    def level(self, name: str, trait: str) -> int:
        return self.entries[name].traits.get(trait, (0, 0))[1]

    def stretches(self, name: str) -> bool:
        """Whether a cloth or a notion gives by itself."""
        entry = self.entries[name]
        gives = self.level(name, "stretch") > GIVES or "elastic" in entry.id
        return gives or (entry.kind == "cloth" and entry.structure in ("knit", "net"))

    def leaks(self, place: SeamPlace) -> bool:
        """Whether rain comes in beside cloth that keeps it out; a filmed zip slows it at least."""
        pierced = quilted_to_wadding(self.garment)  # rain comes in through its rows anyway
        tight = [n for n in place.cloths if self.level(n, "coated") > 0 and n not in pierced]
        woven = any(self.entries[n].structure == "woven" for n in tight)
        rain = woven or any(self.entries[n].id in RAINWEAR - UNTAPED for n in tight)
        return rain and FILMED not in {self.entries[n].id for n in place.notions}

    def is_woven(self, place: SeamPlace) -> bool:
        """Whether nothing of the shell gives, or is cut on the bias so that it does."""
        shell = [p for p in self.places if p.unit != LINING and not _worn_apart(p, place)]
        gives = any(self.stretches(n) for p in shell for n in p.cloths if self.joins(p))
        return not gives and not any(p.said("bias") == "yes" for p in shell)

    def joins(self, place: SeamPlace) -> bool:
        """Whether it makes the body of the garment, and is no trimming or sleeve of net."""
        return place.kind.family in ("seam", "dart", "band", "backing")

    def is_close(self, place: SeamPlace) -> bool:
        """Whether it is fitted to the body, or sewn flat to a waist."""
        said = place.seam.fitting or self.garment.fitting
        waist = place.role.id == "waist" and place.kind.family == "seam"
        return said == TO_THE_BODY or (not said and waist)

    def is_overlong(self, place: SeamPlace) -> bool:
        """Whether a zip is longer than every line of the shell that it may lie in."""
        length = place.seam.long_mm
        if any(p.seam.long_mm >= length and runs_beside(p) for p in self.places):
            return False
        near = [p for p in self.places if not (_worn_apart(p, place) or _apart(p, place))]
        shell = [p for p in near if p.unit != LINING and p.kind.id == "seam"]
        known = sum(p.seam.long_mm for p in shell if p.role.id in LENGTHWISE)
        other = max((p.seam.long_mm for p in shell if p.role.id not in LENGTHWISE), default=0.0)
        upper = ABOVE_SIDE if any(p.role.id in UPPER for p in near) else 0.0
        plain = bool(place.seam.part and other) and not any(p.role.id == WAIST for p in near)
        return bool(length and (known or plain)) and length > known + max(other, upper)

    def ends_nowhere(self, place: SeamPlace) -> bool:
        """Whether the order of work fells the lower edge of the lining neither at hem nor waist."""
        near = [p for p in self.places if not _worn_apart(p, place)]
        hems = any(lining_ends(p, near) for p in near if p.role.id != SLEEVE_HEM)
        joins = [p for p in near if p.kind.id == "lining-seam"]
        if any(WAIST in singular_words(p.name) for p in joins):
            return False
        tiers = (p for p in near if p.kind.family == "gathers" and p.role.id != WAIST)
        if any(set(place.cloths) & set(p.cloths) - set(p.full) for p in tiers):
            return False  # what is drawn up there hangs from the lower edge and takes it in
        return not hems and not any(lining_ends_at_waist(p, near) for p in joins)

    def hangs_from_band(self, place: SeamPlace) -> bool:
        """Whether its part has a waistband and nothing above it: a skirt, or trousers."""
        own = [p for p in self.places if _together(p, place)]
        roles = {p.role.id for p in own}
        return BAND in roles and not roles & {*UPPER, WAIST}

    def is_worn_apart(self, place: SeamPlace) -> bool:
        """Whether its part is sewn to no other: none of its places holds what others are cut of."""
        part = place.seam.part
        others = {n for p in self.garment.parts if p.name != part for n in p.layers}
        own = [p for p in self.places if p.seam.part == part]
        apart = bool(part and others) and not any(others & set(p.cloths) for p in own)
        return bool(place.alone) or apart

    def is_soft_pile(self, place: SeamPlace) -> bool:
        """Whether it is two layers alone, one of them with a cut pile on a soft ground."""
        return len(place.seam.uses) == len(place.cloths) <= 2 and any(
            self.entries[name].family == PILES for name in place.cloths
        )

    def closes(self, place: SeamPlace) -> bool:
        """Whether its buttons close something, and are not only for show."""
        told = any(BUTTON in self.entries[name].id for name in place.notions)
        button = told or (place.kind.id == BUTTON and not place.notions)
        return button and not for_show(place.seam) and not has_own_loop(place.seam)

    def has_no_hole(self, place: SeamPlace) -> bool:
        """Whether no holes or loops are named that these buttons go through."""
        return not holes_of(place.seam, self.garment)

    def is_open_work(self, place: SeamPlace) -> bool:
        """Whether a cloth of it is a net or a lace, in whose holes no buttonhole is worked."""
        return any(self.entries[name].structure == "net" for name in place.cloths)

    def is_sleeved(self, place: SeamPlace) -> bool:
        """Whether a sleeve goes in: two layers are said, or it is told of elsewhere."""
        return any(p.role.id in SLEEVED for p in self.places) or sleeve_goes_in(place, self.garment)


def _same_side(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both belong to the shell or both to the lining; what joins the two is of each."""
    return BOTH in (one.unit, other.unit) or one.unit == other.unit


def _together(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both lie in one part, or in none that is named and on one thing that is worn."""
    same = one.seam.part == other.seam.part
    return same and (bool(one.seam.part) or one.alone == other.alone)


def _worn_apart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether two lie on things that are joined nowhere, as trousers and a jacket."""
    return one.alone != other.alone and not _together(one, other)


def _apart(one: SeamPlace, other: SeamPlace) -> bool:
    """Whether both name a part, and not the same."""
    parts = {one.seam.part, other.seam.part} - {""}
    return len(parts) > 1


def _named(place: SeamPlace, words: Sequence[str]) -> bool:
    return any(holds_words(place.name, word) for word in words)
