"""Asks conditions of layers, each different layer once.

Two seams that use a cloth in the same way get the same answer without asking again.
"""

from __future__ import annotations

from typing import Any

from advisor.engine.conditions import Fact, layer_facts, test_layer
from advisor.engine.subjects import Subject, Truth, subject_of
from advisor.knowledge.model import Knowledge, Rule
from advisor.project.garment import Garment, Seam, Use


class LayerAsker:
    """The layers of one garment and the answers given so far."""

    def __init__(self, garment: Garment, knowledge: Knowledge) -> None:
        self.garment = garment
        self.knowledge = knowledge
        self._subjects: dict[Use, Subject] = {}
        self._answers: dict[tuple[int, Use], Truth] = {}

    def subject(self, use: Use) -> Subject:
        """What can be asked of a use of a cloth."""
        found = self._subjects.get(use)
        if found is None:
            found = subject_of(self.garment.cloths[use.cloth], use, self.knowledge)
            self._subjects[use] = found
        return found

    def ask(self, tree: list[Any], use: Use) -> Truth:
        """Whether a condition holds of a use."""
        key = (id(tree), use)
        answer = self._answers.get(key)
        if answer is None:
            answer = test_layer(tree, self.subject(use), self.knowledge)
            self._answers[key] = answer
        return answer

    def base(self, tree: list[Any], cloth: str) -> Truth:
        """Whether a condition holds of a cloth by itself."""
        return self.ask(tree, Use(cloth))

    def best_use(self, tree: list[Any], seam: Seam, cloth: str) -> Truth:
        """The surest answer among the uses of a cloth in a seam."""
        return max(self.ask(tree, use) for use in seam.uses if use.cloth == cloth)

    def facts(self, tree: list[Any], cloth: str) -> tuple[Fact, ...]:
        """What makes a condition hold of a cloth, in any of its uses."""
        uses = [use for use in self._subjects if use.cloth == cloth]
        found = [f for use in uses or [Use(cloth)] if self.ask(tree, use)
                 for f in layer_facts(tree, self.subject(use), self.knowledge)]  # fmt: skip
        return tuple(dict.fromkeys(found))

    def facts_of_uses(self, rule: Rule, uses: tuple[Use, ...]) -> tuple[Fact, ...]:
        """What makes a rule about a seam hold of the layers that it was found true of."""
        part = rule.parts.get(rule.shape)
        if not uses or part is None:
            return ()
        trees = part if "pair" in rule.shape else [part] * len(uses)
        found = [
            fact
            for tree, use in zip(trees, uses, strict=False)
            for fact in layer_facts(tree, self.subject(use), self.knowledge)
        ]
        return tuple(dict.fromkeys(found))

    def best_pair(
        self, trees: list[list[Any]], uses: tuple[Use, ...]
    ) -> tuple[Truth, tuple[Use, ...]]:
        """The surest pair of different layers, the first fitting the first condition."""
        first = [(self.ask(trees[0], use), use) for use in uses]
        if not any(truth for truth, _ in first):
            return Truth.NO, ()
        second = [(self.ask(trees[1], use), use) for use in uses]
        best: tuple[int, tuple[str, str], tuple[Use, Use]] | None = None
        for i, (truth_a, a) in enumerate(first):
            for j, (truth_b, b) in enumerate(second):
                truth = min(truth_a, truth_b)
                if i == j or not truth:
                    continue
                found = (-int(truth), (a.cloth, b.cloth), (a, b))
                if best is None or found[:2] < best[:2]:
                    best = found
        return (Truth(-best[0]), best[2]) if best else (Truth.NO, ())

    def every(self, tree: list[Any], uses: tuple[Use, ...]) -> tuple[Truth, tuple[Use, ...]]:
        """Whether a condition holds of every cloth of a seam; notions are not asked."""
        cloths = tuple(u for u in uses if self.subject(u).entry.kind == "cloth")
        if not cloths:
            return Truth.NO, ()
        return min(self.ask(tree, use) for use in cloths), tuple(dict.fromkeys(cloths))

    def some(self, tree: list[Any], uses: tuple[Use, ...]) -> tuple[Truth, tuple[Use, ...]]:
        """Whether a condition holds of at least one layer, and of which."""
        answers = [(self.ask(tree, use), use) for use in dict.fromkeys(uses)]
        best = max(truth for truth, _ in answers)
        return best, tuple(use for truth, use in answers if truth is best and truth)
