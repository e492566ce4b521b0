"""Asks conditions of layers, each different layer once.

Two seams that use a cloth in the same way get the same answer without asking again.
"""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from advisor.claims.conditions import Fact, layer_facts, test_layer
from advisor.claims.subjects import Subject, Truth, subject_of
from advisor.knowledge.model import Knowledge, Rule
from advisor.project.garment import Garment, Seam, Use


class LayerAsker:
    """The layers of one garment and the answers given so far.

    Attributes:
        own: each cloth by itself, in no seam.
    """

    def __init__(
        self, garment: Garment, knowledge: Knowledge, before: LayerAsker | None = None
    ) -> None:
        """`before` asked of a garment much like it; what it knows of the same layers is kept."""
        self.knowledge = knowledge
        self._cloths = garment.cloths
        self._before = before
        self.own = {name: Use(name) for name in sorted(garment.cloths)}
        every = [*self.own.values(), *(use for seam in garment.seams for use in seam.uses)]
        place = {use: i for i, use in enumerate(dict.fromkeys(every))}
        self._known = [None if before is None else before.known(use, garment) for use in place]
        self._subjects = [
            subject_of(garment.cloths[use.cloth], use, knowledge)
            if known is None or before is None
            else before.asked_of(known)
            for use, known in zip(place, self._known, strict=True)
        ]
        self._where = place
        self._of_cloth = {
            name: tuple(i for use, i in place.items() if use.cloth == name) for name in self.own
        }
        # Hashing a use on every question would cost more than the question.
        self._place = {id(use): place[use] for use in every}
        self._kept = every  # an id means nothing once its use is gone
        # A bit for each different layer, so that most rules are ruled out without asking.
        self._cloth_bits = {n: sum(1 << i for i in at) for n, at in self._of_cloth.items()}
        self._seam_bits = {
            seam.name: sum(1 << i for i in {place[use] for use in seam.uses})
            for seam in garment.seams
        }
        self._masks: dict[int, int] = {}
        self._answers: dict[int, list[Truth]] = {}
        self._facts: dict[tuple[int, int], list[Fact]] = {}

    def stand_alone(self) -> None:
        """Take over all that is known of the same layers, and let go of where it is known from.

        One garment after another comes to a page, and each begins from the one before.
        """
        before, self._before = self._before, None
        if before is None or None in self._known:
            return
        now = {was: at for at, was in enumerate(self._known) if was is not None}
        for tree, old in before._answers.items():
            self._answers.setdefault(tree, [old[was] for was in now])
        for (tree, was), facts in before._facts.items():
            if was in now:
                self._facts.setdefault((tree, now[was]), facts)

    def known(self, use: Use, garment: Garment) -> int | None:
        """Which of its layers is this use of the same cloth; None where none is."""
        same = garment.cloths[use.cloth] == self._cloths.get(use.cloth)
        return self._where.get(use) if same else None

    def asked_of(self, known: int) -> Subject:
        """What can be asked of one of its layers."""
        return self._subjects[known]

    def given(self, tree: list[Any]) -> list[Truth] | None:
        """The answers to a condition, if it was asked before."""
        return self._answers.get(id(tree))

    def subject(self, use: Use) -> Subject:
        """What can be asked of a use of a cloth: one of `own` or of a seam of the garment."""
        return self._subjects[self._place[id(use)]]

    def answers(self, tree: list[Any]) -> list[Truth]:
        """Whether a condition holds, for each different use."""
        found = self._answers.get(id(tree))
        if found is None:
            old = self._before.given(tree) if self._before is not None else None
            if old is None:
                found = [test_layer(tree, subject, self.knowledge) for subject in self._subjects]
            else:
                found = [
                    test_layer(tree, subject, self.knowledge) if known is None else old[known]
                    for subject, known in zip(self._subjects, self._known, strict=True)
                ]
            self._answers[id(tree)] = found
        return found

    def facts_given(self, tree: list[Any], i: int) -> list[Fact] | None:
        """What made a condition hold of one of its layers, if that was asked before."""
        return self._facts.get((id(tree), i))

    def mask(self, tree: list[Any]) -> int:
        """The layers of which a condition can hold, a bit each."""
        found = self._masks.get(id(tree))
        if found is None:
            found = 0
            for i, truth in enumerate(self.answers(tree)):
                if truth:
                    found |= 1 << i
            self._masks[id(tree)] = found
        return found

    def rules(self) -> list[Rule]:
        """The rules that some layer of the garment may be about."""
        return self.knowledge.index.worth_asking(s.words for s in self._subjects)

    def among(self, rule: Rule, pairs: list[tuple[str, str]]) -> list[tuple[str, str]]:
        """The pairs of cloths, all or none, where each condition of a rule can hold of a layer."""
        return pairs if all(map(self.mask, _trees(rule))) else []

    def may_hold(self, rule: Rule, seams: list[Seam]) -> list[Seam]:
        """The seams in which each condition of a rule can hold of some layer; no other fires it."""
        bits = self._seam_bits
        for tree in _trees(rule) if rule.shape != "seam" else ():
            mask = self.mask(tree)
            seams = [seam for seam in seams if mask & bits[seam.name]] if mask else []
        return seams

    def touched(self, rule: Rule, cloths: list[str]) -> list[str]:
        """The cloths of which a rule about layers can hold in any of their uses."""
        mask, bits = self.mask(rule.parts["layer"]), self._cloth_bits
        return [cloth for cloth in cloths if mask & bits[cloth]] if mask else []

    def asked(self, tree: list[Any], uses: tuple[Use, ...]) -> list[Truth]:
        """Whether a condition holds, for each of some uses."""
        found, place = self.answers(tree), self._place
        return [found[place[id(use)]] for use in uses]

    def base(self, tree: list[Any], cloth: str) -> Truth:
        """Whether a condition holds of a cloth by itself."""
        return self.answers(tree)[self._place[id(self.own[cloth])]]

    def best_use(self, tree: list[Any], seam: Seam, cloth: str) -> Truth:
        """The surest answer among the uses of a cloth in a seam."""
        found, place = self.answers(tree), self._place
        return max([found[place[id(use)]] for use in seam.uses if use.cloth == cloth])

    def facts(self, tree: list[Any], cloth: str) -> tuple[Fact, ...]:
        """What makes a condition hold of a cloth, in any of its uses."""
        found = [
            fact
            for i, truth in enumerate(self.answers(tree))
            if truth and self._subjects[i].name == cloth
            for fact in self._facts_at(tree, i)
        ]
        return tuple(dict.fromkeys(found))

    def _facts_at(self, tree: list[Any], i: int) -> list[Fact]:
        found = self._facts.get((id(tree), i))
        if found is None:
            known = self._known[i]
            if known is not None and self._before is not None:
                found = self._before.facts_given(tree, known)
            if found is None:
                found = layer_facts(tree, self._subjects[i], self.knowledge)
            self._facts[id(tree), i] = found
        return found

    def facts_of_uses(self, rule: Rule, uses: tuple[Use, ...]) -> tuple[Fact, ...]:
        """What makes a rule about a seam hold of the layers that it was found true of."""
        part = rule.parts.get(rule.shape)
        if not uses or part is None:
            return ()
        trees = part if "pair" in rule.shape else [part] * len(uses)
        found = [
            fact
            for tree, use in zip(trees, uses, strict=False)
            for fact in self._facts_at(tree, self._place[id(use)])
        ]
        return tuple(dict.fromkeys(found))

    def best_pair(
        self, trees: list[list[Any]], uses: tuple[Use, ...]
    ) -> tuple[Truth, tuple[Use, ...]]:
        """The surest pair of different layers, the first fitting the first condition."""
        first = self.asked(trees[0], uses)
        if not any(first):
            return Truth.NO, ()
        second = self.asked(trees[1], uses)
        if not any(second):
            return Truth.NO, ()
        best: tuple[int, tuple[str, str], tuple[Use, Use]] | None = None
        for i, a in enumerate(uses):
            for j, b in enumerate(uses):
                if i == j or not (first[i] and second[j]):
                    continue
                if a.cloth == b.cloth and not self._one_cloth_is_both(trees, a, b):
                    continue
                truth = min(first[i], second[j])
                found = (-int(truth), (a.cloth, b.cloth), (a, b))
                if best is None or found[:2] < best[:2]:
                    best = found
        return (Truth(-best[0]), best[2]) if best else (Truth.NO, ())

    def _one_cloth_is_both(self, trees: list[list[Any]], a: Use, b: Use) -> bool:
        """Whether one mix of a cloth fits both conditions; two layers of it are never unlike."""
        cloth = self._cloths[a.cloth]
        if len(cloth.mixes) < 2:
            return True
        worlds = [replace(cloth, mixes=(mix,)) for mix in cloth.mixes]
        return any(
            all(
                test_layer(tree, subject_of(world, use, self.knowledge), self.knowledge)
                for tree, use in zip(trees, (a, b), strict=True)
            )
            for world in worlds
        )

    def every(self, tree: list[Any], uses: tuple[Use, ...]) -> tuple[Truth, tuple[Use, ...]]:
        """Whether a condition holds of every cloth of a seam; notions are not asked."""
        cloths = tuple(u for u in uses if self.subject(u).entry.kind == "cloth")
        if not cloths:
            return Truth.NO, ()
        return min(self.asked(tree, cloths)), tuple(dict.fromkeys(cloths))

    def some(self, tree: list[Any], uses: tuple[Use, ...]) -> tuple[Truth, tuple[Use, ...]]:
        """Whether a condition holds of at least one layer, and of which."""
        answers = self.asked(tree, uses)
        best = max(answers)
        if not best:
            return best, ()
        fitting = [use for use, truth in zip(uses, answers, strict=True) if truth is best]
        return best, tuple(dict.fromkeys(fitting))


def _trees(rule: Rule) -> list[list[Any]]:
    """The conditions of a rule about layers."""
    part = rule.parts[rule.shape]
    return part if "pair" in rule.shape else [part]
