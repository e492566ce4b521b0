"""One conflict and one remedy: who needs, who is tender, where they meet, what may change."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from typing import Any

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import YOU, Said, interfacing_kind, is_heat_need
from advisor.claims.workarounds import GLUED
from advisor.decide.apart import judge_apart
from advisor.knowledge.model import LIMIT_ASPECT, Entry, Knowledge, Remedy
from advisor.project.facts import CHOICES, NO_IRON, TAKEN
from advisor.project.garment import Cloth, Garment, Seam, Use

SEAMED = frozenset({"seam", "yoke", "dart"})
"""Kinds of place that hold a garment together: what is sewn in there never comes off."""
NO_YARNS = frozenset({"skin", "film"})
"""Structures of what keeps every hole."""
BASTED_IN = "basted in by hand"
HELD_BY_NO_NEEDLE = "held in the allowance by clips or a touch of glue"
KEY_OF = {aspect: key for key, aspect in CHOICES.items()}


class Case:
    """A conflict, a remedy, and the garment as it is when the remedy comes to it.

    `garment` may already be changed by other remedies; who needs and who is tender is read of
    the judgement in which the conflict was found.
    """

    def __init__(
        self,
        conflict: Conflict,
        before: Judgement,
        knowledge: Knowledge,
        remedy: Remedy,
        garment: Garment | None = None,
    ) -> None:
        self.conflict = conflict
        self.before = before
        self.knowledge = knowledge
        self.remedy = remedy
        self.garment = garment or before.garment
        self.bought = self.replaced = ""
        names = set(conflict.places) if conflict.place.scope == "seam" else set()
        self.seams = tuple(s for s in self.garment.seams if s.name in names)
        self.needy: frozenset[str] = frozenset()
        self.tender: frozenset[str] = frozenset()
        for one in (conflict, *conflict.also):
            needy, tender = _sides(one, before)
            self.needy, self.tender = self.needy | needy, self.tender | tender
        glues = frozenset(n for n, c in self.garment.cloths.items() if _glued(c, knowledge))
        # A glue and a cloth that both want heat are two causes, each with its own remedy.
        of_glue = any(s.cloths & glues or s.who in glues for s in conflict.clash)
        self.needy = self.needy & glues if of_glue else self.needy - glues
        here = self.garment.cloths.keys()
        self.needy, self.tender = self.needy & here, self.tender & here
        self.chosen = frozenset(
            one.aspect
            for one in (conflict, *conflict.also)
            if any(s.claim.origin == "maker" for s in one.clash)
        )

    @property
    def seam(self) -> Seam | None:
        """The seam where it is worst."""
        return next((s for s in self.seams if s.name == self.conflict.place.name), None)

    def fits(self) -> bool:
        """Whether the remedy's own conditions hold."""
        needs = self.remedy.needs
        if needs.get("a need for heat") == "yes" and not self.needy:
            return False
        if needs.get("a choice of the maker") == "yes" and not self.chosen:
            return False
        if needs.get("place") not in (None, self.conflict.place.scope):
            return False
        if not self._suits(needs):
            return False
        kinds = needs.get("notion")
        if kinds is not None and not self.notions(kinds):
            return False
        entries = {self.entry(name).id for name in self.cloths()}
        if entries & set(needs.get("not", ())):
            return False
        return "only" not in needs or bool(entries & set(needs["only"]))

    def _suits(self, needs: Mapping[str, Any]) -> bool:
        """Whether it is meant for the kind of these places, and for cloth as heavy as theirs."""
        at = needs.get("at")
        if at is not None and not {seam.place for seam in self.seams} <= set(at):
            return False
        heaviest = max((self._weight(n) for n in self.cloths()), default=0.0)
        most, least = needs.get("cloth at most", math.inf), needs.get("cloth at least", 0)
        return float(least) <= heaviest <= float(most)

    def _weight(self, name: str) -> float:
        """What a cloth weighs at least, g/m2; nothing where it is a notion or nobody says."""
        entry, own = self.entry(name), self.garment.cloths[name].weight
        weight = own or entry.weight
        return weight[0] if weight and entry.kind == "cloth" else 0.0

    def notions(self, kinds: Iterable[str]) -> list[str]:
        """The notions of some kinds in the seams."""
        return [name for name in self.cloths() if self.entry(name).kind in kinds]

    def cloths(self) -> tuple[str, ...]:
        """The cloths of the places."""
        if not self.seams:
            return tuple(sorted(self.garment.cloths))
        return tuple(dict.fromkeys(name for seam in self.seams for name in seam.cloths()))

    def entry(self, name: str) -> Entry:
        """What a cloth is."""
        return self.knowledge.entries[self.garment.cloths[name].entry]

    def limit(self, name: str) -> float:
        """The iron limit of a cloth by itself, °C."""
        alone = Seam("alone", (Use(name),))
        cloths = {name: self.garment.cloths[name]}
        garment = replace(self.garment, seams=(alone,), cloths=cloths)
        judged = judge_apart(garment, self.knowledge)
        found = next(v for place, v in judged.verdicts.items() if place.scope == "seam")
        allowed = found[LIMIT_ASPECT].allowed
        return allowed.high if hasattr(allowed, "high") else 0.0

    def words(self) -> dict[str, str]:
        """What the remedy's sentence may name."""
        notions = [n for n in self.cloths() if self.entry(n).kind != "cloth"]
        wanted = self.remedy.needs.get("notion")
        if wanted is not None:
            notions = self.notions(wanted)
        return {
            "needy": listed(self.needy),
            "tender": listed(self.tender - self.needy or self.tender),
            "loose": listed(self.loose()[:1]),
            "notion": self.replaced or listed(notions),
            "bought": self.bought,
            "held": self._held(),
            "place": listed(self.conflict.places),
            "choice": self.conflict.aspect,
            "neighbour": listed(dict.fromkeys(filter(None, map(self.neighbour, self.seams)))),
            "you": ", ".join(s.who for s in self.conflict.clash if s.who != YOU),
        }

    def _held(self) -> str:
        """How what stiffens is held to its piece: by no needle where all of them keep its holes."""
        cloths = [name for name in self.cloths() if self.entry(name).kind == "cloth"]
        holed = cloths and all(self.entry(name).structure in NO_YARNS for name in cloths)
        return HELD_BY_NO_NEEDLE if holed else BASTED_IN

    def loose(self) -> list[str]:
        """The cloths that clash and could come off: not what the garment is made of or sewn into.

        What is seamed to another cloth holds the garment together; a collar, a cuff, a frill laid
        on or a lining can be buttoned in.
        """
        counts = Counter(name for seam in self.garment.seams for name in seam.cloths())
        most = [name for name, number in counts.items() if number == max(counts.values())]
        held = {name for seam in self.garment.seams for name in self._seamed(seam)}
        names = (self.tender or self.needy) - (set(most) if len(most) == 1 else set()) - held
        return [name for name in sorted(names) if self.entry(name).kind == "cloth"]

    def _seamed(self, seam: Seam) -> Iterable[str]:
        cloths = [name for name in seam.cloths() if self.entry(name).kind == "cloth"]
        return cloths if seam.place in SEAMED and len(cloths) > 1 else ()

    def _rules_out(self, cloth: str, glue: str, seam: Seam) -> bool:
        """Whether a cloth may not be fused to, whatever heat it bears."""
        verdict = self.before.verdicts.get(Place("seam", seam.name), {}).get("interfacing.kind")
        if verdict is None:
            return False
        kind = interfacing_kind(self.entry(glue))
        at = next((i for i, word in enumerate(verdict.aspect.words) if word == kind), None)
        said = (*verdict.because, *verdict.given_up, *verdict.clash)
        return at is not None and any(
            cloth in s.cloths and s.claim.strength == "must" and not s.claim.mask >> at & 1
            for s in said
        )

    def neighbour(self, seam: Seam) -> str:
        """A layer beside the fusible of a seam whose own limit bears what the glue needs."""
        for i, use in enumerate(seam.uses):
            if "fusible" not in self.entry(use.cloth).kind:
                continue
            claims = self.entry(use.cloth).claims
            needs = [c.span[0] for c in claims if c.aspect == LIMIT_ASPECT and c.span]
            for other in (*seam.uses[max(i - 1, 0) : i], *seam.uses[i + 1 : i + 2]):
                if other.cloth in self.tender or self._rules_out(other.cloth, use.cloth, seam):
                    continue
                if self.limit(other.cloth) >= max(needs, default=0.0):
                    return other.cloth
        return ""

    def each(
        self, change: Callable[[Seam], Seam | None], whole: Iterable[Seam] = ()
    ) -> Garment | None:
        """The garment with the seams of the conflict changed; None where one cannot be.

        `whole` are those that are changed where it is a conflict of no seam.
        """
        changed = {seam.name: change(seam) for seam in self.seams or whole}
        if not changed or None in changed.values():
            return None
        seams = tuple(changed.get(s.name) or s for s in self.garment.seams)
        return replace(self.garment, seams=seams)


def _sides(conflict: Conflict, before: Judgement) -> tuple[frozenset[str], frozenset[str]]:
    """Who wants more heat or moisture than another layer bears, and who does not bear it."""
    verdict = before.verdicts[conflict.place].get(conflict.aspect)
    said = verdict.clash if verdict and verdict.clash else conflict.clash
    lids = [s.claim.span[1] for s in conflict.clash if s.claim.span]
    needy = _about(
        s
        for s in said
        if is_heat_need(s.claim) and s.claim.span and s.claim.span[0] > min(lids, default=0.0)
    )
    return needy, _about(s for s in conflict.clash if s.claim.risk != "result")


def _glued(cloth: Cloth, knowledge: Knowledge) -> bool:
    return knowledge.entries[cloth.entry].kind in GLUED


def _about(said: Iterable[Said]) -> frozenset[str]:
    return frozenset(name for one in said for name in one.cloths)


def listed(names: Iterable[str]) -> str:
    """Names in a sentence, in one order whatever they came in."""
    words = sorted(names)
    return " and ".join([", ".join(words[:-1]), words[-1]] if words[1:] else words)


def stated(seam: Seam, key: str, value: str | None) -> Seam:
    """The seam as it reads with another word under a key of the project, or without that key."""
    facts = {k: v for k, v in seam.facts.items() if k != key}
    choices = {a: v for a, v in seam.choices if a != CHOICES.get(key)}
    if value is not None:
        facts[key] = value
        choices |= {CHOICES[key]: value} if key in CHOICES else {}
    taken = [k for k in TAKEN if k in seam.assumed or (k == key and value is None)]
    assumed = [k for k in taken if not (k == key and value is not None)]
    lone = ["layers"] if "layers" in seam.assumed else []
    return replace(
        seam,
        facts=facts,
        choices=tuple(sorted(choices.items(), key=lambda c: KEY_OF.get(c[0], c[0]))),
        cold=value == NO_IRON if key == "pressing" else seam.cold,
        by_hand=value == "hand" if key == "stitched by" else seam.by_hand,
        assumed=(*lone, *assumed),
    )


def without_unused(garment: Garment, knowledge: Knowledge) -> Garment:
    """The garment without the notions that no seam holds any more."""
    used = {name for seam in garment.seams for name in seam.cloths()}

    def kept(name: str, cloth: Cloth) -> bool:
        return name in used or knowledge.entries[cloth.entry].kind == "cloth"

    return replace(garment, cloths={n: c for n, c in garment.cloths.items() if kept(n, c)})
