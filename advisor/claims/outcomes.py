"""What each speaker's words came to where, so that a garment much like it need not ask again.

A remedy changes a place or two, and a maker at the page one length. What a rule says at a place
hangs on that place and its layers alone, and what it says of a cloth on the places that the cloth
lies in; where those are as they were, the words are taken over as they stood.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping
from functools import partial
from typing import Any, Final, TypeVar

from msgspec import Struct, field

from advisor.knowledge.model import Knowledge, Rule
from advisor.project.garment import Garment, Seam

Came = tuple[list[Any], ...]
"""What was added to each of some lists."""
Facts = Mapping[str, dict[str, Any]]
NOTHING: Final[dict[Hashable, Came]] = {}
"""What came of a rule that was asked and had nothing to say."""
ITSELF: Final = ""
"""Who speaks where a cloth speaks for itself; no rule is called so."""
T = TypeVar("T")


class Outcomes(Struct):
    """What was said of a garment, by speaker and by what it was said of.

    `lists` are those that speaking adds to. A rule that was asked and has nothing noted of a thing
    had nothing to say of it.
    """

    garment: Garment
    knowledge: Knowledge
    facts: Facts
    lists: Came = ()
    said: dict[str, dict[Hashable, Came]] = field(default_factory=dict)
    old: dict[str, dict[Hashable, Came]] = field(default_factory=dict)
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
        rule: Rule,
        about: Mapping[Any, T],
        may: Callable[[Rule, list[T]], list[T]],
        say: Callable[[Rule, T], None],
    ) -> None:
        """Let a rule speak of some things, or repeat what it said of those that are the same.

        Args:
            rule: the speaker.
            about: what there is to speak of, by its key.
            may: of which of some of them it may have anything to say.
            say: says it, by adding to the lists.
        """
        known = self.old.get(rule.id)
        if known is None:
            likely = may(rule, list(about.values()))
            if not likely:
                self.said[rule.id] = NOTHING
                return
        else:
            fresh = [thing for key, thing in about.items() if key not in self.same]
            likely = may(rule, fresh) if fresh else []
            if not likely and not known:
                self.said[rule.id] = NOTHING
                return
        noted = self.said[rule.id] = {}
        at = set(map(id, likely))
        for key, thing in about.items():
            if known is not None and key in self.same:
                self._repeat(noted, key, known.get(key))
            elif id(thing) in at:
                self._note(noted, key, partial(say, rule, thing))

    def of_itself(self, cloth: str, say: Callable[[], None]) -> None:
        """Let a cloth speak, or repeat what it said."""
        noted = self.said.setdefault(ITSELF, {})
        came = self.old.get(ITSELF, NOTHING).get(cloth) if cloth in self.same else None
        if came is None:
            self._note(noted, cloth, say)
        self._repeat(noted, cloth, came)

    def _repeat(self, noted: dict[Hashable, Came], key: Hashable, came: Came | None) -> None:
        """Add once more what came before, if anything did."""
        if came is not None:
            noted[key] = came
            for heard, more in zip(self.lists, came, strict=True):
                heard.extend(more)

    def _note(self, noted: dict[Hashable, Came], key: Hashable, say: Callable[[], None]) -> None:
        """Keep what is added to the lists, if anything is."""
        ends = [len(one) for one in self.lists]
        say()
        came = tuple(one[end:] for one, end in zip(self.lists, ends, strict=True))
        if any(came):
            noted[key] = came


def _key(seam: str) -> tuple[str]:
    """The key of a place, which may be called as a cloth is."""
    return (seam,)


def keyed(seams: Iterable[Seam]) -> dict[Hashable, Seam]:
    """Places by their keys."""
    return {_key(seam.name): seam for seam in seams}


def _places_of(garment: Garment) -> dict[str, list[str]]:
    """The places that each cloth lies in."""
    found: dict[str, list[str]] = {name: [] for name in garment.cloths}
    for seam in garment.seams:
        for cloth in seam.cloths():
            found[cloth].append(seam.name)
    return found
