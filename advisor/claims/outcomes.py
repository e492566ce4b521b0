"""What each speaker's words came to where, so that a garment much like it need not ask again.

A remedy changes a place or two, and a maker at the page one length. What a rule says at a place
hangs on that place and its layers alone, and what it says of a cloth on the places that the cloth
lies in; where those are as they were, the words are taken over as they stood.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam

Came = tuple[list[Any], ...]
"""What was added to each of some lists."""
Facts = Mapping[str, dict[str, Any]]


@dataclass(slots=True)
class Outcomes:
    """What was said of a garment, by speaker and by what it was said of.

    `lists` are those that speaking adds to. Whoever is asked of several things is noted under
    each of them, and one who was asked and has nothing there had nothing to say.
    """

    garment: Garment
    knowledge: Knowledge
    facts: Facts
    lists: Came = ()
    said: dict[Hashable, dict[Hashable, Came]] = field(default_factory=dict)
    old: dict[Hashable, dict[Hashable, Came]] = field(default_factory=dict)
    same: frozenset[Hashable] = frozenset()

    def after(self, before: Outcomes | None) -> None:
        """Take over from a garment much like it whatever has not changed since."""
        garment = self.garment
        if before is None or before.knowledge is not self.knowledge:
            return
        if (before.garment.name, before.garment.single) != (garment.name, garment.single):
            return
        was = before.garment.cloths
        cloths = {name for name, cloth in garment.cloths.items() if was.get(name) == cloth}
        pairs = {(a, b) for a in cloths for b in cloths}
        kept = self._same_seams(before, cloths)
        alone: set[Hashable] = set()
        if before.garment.apart == garment.apart:
            mine, hers = _places_of(garment), _places_of(before.garment)
            alone = {c for c in cloths if mine[c] == hers[c] and kept.issuperset(mine[c])}
        seams = {_key(name) for name in kept}
        self.old, self.same = before.said, frozenset(alone | pairs | seams)

    def closed(self) -> Outcomes:
        """Without the lists and the garment before it, so that nothing is kept but what came."""
        self.lists, self.old, self.same = (), {}, frozenset()
        return self

    def _same_seams(self, before: Outcomes, cloths: set[str]) -> set[str]:
        """The places where layers, facts and way of working are what they were."""
        was = {seam.name: seam for seam in before.garment.seams}
        return {
            seam.name
            for seam in self.garment.seams
            if was.get(seam.name) == seam
            and cloths.issuperset(seam.cloths())
            and before.facts[seam.name] == self.facts[seam.name]
        }

    def speak(
        self,
        who: Hashable,
        about: Iterable[tuple[Hashable, Any]],
        may: Callable[[list[Any]], Iterable[Any]],
        say: Callable[[Any], None],
    ) -> None:
        """Let somebody speak of some things, or repeat what was said of those that are the same.

        Args:
            who: the speaker.
            about: what there is to speak of, each under its key.
            may: which of some of them there is anything to say of, in their order.
            say: says it, by adding to the lists.
        """
        known, noted = self.old.get(who), self.said.setdefault(who, {})
        same: frozenset[Hashable] = self.same if known is not None else frozenset()
        fresh = [thing for key, thing in about if key not in same]
        if not fresh and not known:
            return
        likely = {id(thing) for thing in may(fresh)} if fresh else ()
        for key, thing in about:
            if known is not None and key in same:
                came = known.get(key)
                if came is None:
                    continue
                for heard, more in zip(self.lists, came, strict=True):
                    heard.extend(more)
            elif id(thing) in likely:
                ends = [len(one) for one in self.lists]
                say(thing)
                came = tuple(one[end:] for one, end in zip(self.lists, ends, strict=True))
            else:
                continue
            if any(came):
                noted[key] = came


def _key(seam: str) -> tuple[str]:
    """The key of a place, which may be called as a cloth is."""
    return (seam,)


def keyed(seams: Iterable[Seam]) -> list[tuple[Hashable, Seam]]:
    """Places under their keys."""
    return [(_key(seam.name), seam) for seam in seams]


def _places_of(garment: Garment) -> dict[str, list[str]]:
    """The places that each cloth lies in."""
    found: dict[str, list[str]] = {name: [] for name in garment.cloths}
    for seam in garment.seams:
        for cloth in seam.cloths():
            found[cloth].append(seam.name)
    return found
