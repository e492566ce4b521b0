"""The matching and intersecting of `decide_cases` as production rules for CLIPS.

As in the engine, cloths and fibres speak in every seam that they lie in, everything said is kept
with who said it, musts meet first, and wishes narrow what is left by the standing of their source.
"""

# ruff: noqa: E501 - programs of another language
from __future__ import annotations

from collections.abc import Callable
from typing import Any

import clips

from advisor.claims.speakers import cloth_says
from tests.bench.decide_cases import Case, Tree, fibres_of, garment, known, leaf_name, uses

TEMPLATES = (
    "(deftemplate sub (slot u))",
    "(deftemplate seam (slot s))",
    "(deftemplate own (slot u))",
    "(deftemplate lev (slot u) (slot t) (slot lo) (slot hi))",
    "(deftemplate word (slot u) (slot k) (slot v))",
    "(deftemplate num (slot u) (slot k) (slot lo) (slot hi) (slot mid))",
    "(deftemplate fib (slot u) (slot k) (slot f))",
    "(deftemplate told (slot n) (slot u) (slot sure))",
    "(deftemplate mem (slot s) (slot i) (slot u))",
    "(deftemplate holds (slot c) (slot u) (slot truth))",
    "(deftemplate fire (slot r) (slot s))",
    (
        "(deftemplate own-said (slot u) (slot c) (slot a) (slot kind) (slot rank) (slot lo) (slot hi)"
        " (multislot keep))"
    ),
    (
        "(deftemplate said (slot s) (slot who) (slot c) (slot a) (slot kind) (slot rank) (slot lo)"
        " (slot hi) (multislot keep))"
    ),
    "(deftemplate narrow (slot s) (slot a) (multislot keep))",
    "(deftemplate span (slot s) (slot a) (slot lo) (slot hi))",
    "(deftemplate option (slot s) (slot a) (slot o))",
)
SPEAK = (
    "(defrule cloths-speak (mem (s ?s) (u ?u)) (own-said (u ?u) (c ?c) (a ?a) (kind ?k) (rank ?r)"
    " (lo ?lo) (hi ?hi) (keep $?keep)) => (assert (said (s ?s) (who ?u) (c ?c) (a ?a) (kind ?k)"
    " (rank ?r) (lo ?lo) (hi ?hi) (keep ?keep))))"
)
MEET = (
    SPEAK,
    (
        "(defrule meet-low (declare (salience -10)) (said (s ?s) (a ?a) (kind must) (lo ?x))"
        " ?f <- (span (s ?s) (a ?a) (lo ?y&:(< ?y ?x))) => (modify ?f (lo ?x)))"
    ),
    (
        "(defrule meet-high (declare (salience -10)) (said (s ?s) (a ?a) (kind must) (hi ?x))"
        " ?f <- (span (s ?s) (a ?a) (hi ?y&:(> ?y ?x))) => (modify ?f (hi ?x)))"
    ),
    (
        "(defrule meet-options (declare (salience -10)) (said (s ?s) (a ?a) (kind must) (keep $?keep))"
        " ?f <- (option (s ?s) (a ?a) (o ?o&:(and (> (length$ ?keep) 0) (not (member$ ?o ?keep)))))"
        " => (retract ?f))"
    ),
    *(
        f"(defrule wish-range-{rank} (declare (salience {-20 - rank}))"
        f" (said (s ?s) (a ?a) (kind should) (rank {rank}) (lo ?lo) (hi ?hi) (keep))"
        " ?f <- (span (s ?s) (a ?a) (lo ?x&:(<= ?x ?hi)) (hi ?y&:(>= ?y ?lo)))"
        " (test (or (< ?x ?lo) (> ?y ?hi))) => (modify ?f (lo (max ?x ?lo)) (hi (min ?y ?hi))))"
        for rank in range(6)
    ),
    (
        "(defrule narrow-options (declare (salience 10)) (narrow (s ?s) (a ?a) (keep $?keep))"
        " ?f <- (option (s ?s) (a ?a) (o ?o&:(not (member$ ?o ?keep)))) => (retract ?f))"
    ),
    *(
        f"(defrule wish-options-{rank} (declare (salience {-20 - rank}))"
        f" (said (s ?s) (a ?a) (kind should) (rank {rank}) (keep $?keep&:(> (length$ ?keep) 0)))"
        " (exists (option (s ?s) (a ?a) (o ?k&:(member$ ?k ?keep))))"
        " => (assert (narrow (s ?s) (a ?a) (keep ?keep))))"
        for rank in range(6)
    ),
)


class Rules:
    """Writes the production rules: first which conditions hold of what, then what fires where."""

    def __init__(self, case: Case) -> None:
        self.made = 0
        self.lines: list[str] = []
        for i, tree in enumerate(case.conditions):
            for truth, sure in (("yes", True), ("may", False)):
                self.lines.append(
                    f"(defrule c{i}-{truth} (sub (u ?u)) {self.condition(tree, sure)}"
                    f" => (assert (holds (c {i}) (u ?u) (truth {truth}))))"
                )
        for rule, numbers, seam in case.rules:
            self.rule(rule, numbers, seam)

    def name(self) -> str:
        """A fresh variable."""
        self.made += 1
        return f"?x{self.made}"

    def condition(self, tree: Tree, sure: bool) -> str:
        """A condition element that holds where a node surely, or possibly, holds."""
        kind = tree[0]
        if kind == "not":
            return f"(not {self.condition(tree[1], not sure)})"
        if kind in ("all", "any"):
            inside = " ".join(self.condition(part, sure) for part in tree[1:])
            return f"({'and' if kind == 'all' else 'or'} {inside})"
        if kind == "trait":
            lo, hi = self.name(), self.name()
            first, second = (f">= {lo}", f"<= {hi}") if sure else (f"<= {lo}", f">= {hi}")
            ends = (tree[2], tree[3]) if sure else (tree[3], tree[2])
            return (
                f'(lev (u ?u) (t "{tree[1]}") (lo {lo}&:({first} {ends[0]}))'
                f" (hi {hi}&:({second} {ends[1]})))"
            )
        if kind == "word":
            return f'(word (u ?u) (k "{tree[1]}") (v {_any_of(tree[2])}))'
        if kind == "number":
            return self.measure(tree, sure)
        return self.fibre(tree, sure)

    def measure(self, tree: Tree, sure: bool) -> str:
        """A measure against the ends of a test."""
        _, key, low, high, low_open, high_open = tree
        mid = self.name()
        above, below = (">" if low_open else ">="), ("<" if high_open else "<=")
        passes = (
            f'(num (u ?u) (k "{key}") (mid {mid}&:(and ({above} {mid} {low})'
            f" ({below} {mid} {high}))))"
        )
        if sure:
            return passes
        lo, hi = self.name(), self.name()
        touches = (
            f'(num (u ?u) (k "{key}") (lo {lo}&:(<= {lo} {high}))'
            f" (hi {hi}&:(and (>= {hi} {low}) (<> {hi} {lo}))))"
        )
        return f'(or {passes} {touches} (not (num (u ?u) (k "{key}"))))'

    def fibre(self, tree: Tree, sure: bool) -> str:
        """A fibre or a group, surely where it is in every mix."""
        if tree[0] == "fibre" and tree[2] != "any":
            return f'(told (n "{leaf_name(tree)}") (u ?u){" (sure 1)" if sure else ""})'
        wanted = _any_of(fibres_of(tree))
        some = f"(exists (fib (u ?u) (f {wanted})))"
        if not sure:
            return some
        k = self.name()
        other = f"(not (and (fib (u ?u) (k {k})) (not (fib (u ?u) (k {k}) (f {wanted})))))"
        return f"(and {some} {other})"

    def rule(self, rule: Any, numbers: list[int], seam: int | None) -> None:
        """What fires where, and what it says there."""
        part = f"(holds (c {seam}) (u ?s) (truth may))" if seam is not None else ""
        for truth in ("yes", "may"):

            def held(at: int, who: str, word: str = truth) -> str:
                return f"(holds (c {numbers[at]}) (u {who}) (truth {word}))"

            shapes: dict[str, Callable[[], str]] = {
                "pair": lambda: (
                    f"(mem (s ?s) (i ?i) (u ?u)) (mem (s ?s) (i ?j&~?i) (u ?v)) {held(0, '?u')} {held(1, '?v')}"
                ),
                "garment pair": lambda: (
                    f"(own (u ?u)) (own (u ?v&~?u)) {held(0, '?u')} {held(1, '?v')}"
                ),
                "some": lambda: f"(mem (s ?s) (u ?u)) {held(0, '?u')}",
                "layer": lambda: f"(mem (s ?s) (u ?u)) {held(0, '?u')}",
                "every": lambda: (
                    '(seam (s ?s)) (exists (mem (s ?s) (u ?w)) (word (u ?w) (k "kind") (v "cloth")))'
                    f' (not (and (mem (s ?s) (u ?z)) (word (u ?z) (k "kind") (v "cloth")) (not {held(0, "?z")})))'
                ),
                "seam": lambda: "(seam (s ?s))",
            }
            shape = shapes[rule.shape]()
            place = "whole" if rule.shape == "garment pair" else "?s"
            does = [f'(assert (fire (r "{rule.id}") (s {place})))']
            who = "?u" if "?u" in shape else place
            for claim in rule.claims:
                if truth == "yes" or (claim.strength == "must" and claim.risk != "result"):
                    slots = " ".join(f"({k} {v})" for k, v in _slots(claim).items())
                    does.append(f"(assert (said (s {place}) (who {who}) {slots}))")
            self.lines.append(
                f"(defrule r-{rule.id}-{truth} (declare (salience -5)) {shape} {part} => {' '.join(does)})"
            )


def _any_of(words: list[str]) -> str:
    return "|".join(f'"{word}"' for word in words)


def _slots(claim: Any) -> dict[str, str]:
    """What a claim says, as the text of slots."""
    low, high = claim.span or (-1e9, 1e9)
    count = len(known().aspects[claim.aspect].words)
    kept = [i for i in range(count) if claim.mask >> i & 1] if claim.span is None else []
    return {
        "c": f'"{claim.origin} {claim.span} {claim.mask}"',
        "a": f'"{claim.aspect}"',
        "kind": claim.strength,
        "rank": str(claim.rank),
        "lo": str(low),
        "hi": str(high),
        "keep": " ".join(map(str, kept)),
    }


def _own_claims() -> list[tuple[str, Any]]:
    """What each cloth says by itself and through its fibres, by the number of its use."""
    return [
        (f"u{i}", said.claim)
        for i, use in enumerate(uses())
        for said in cloth_says(garment().cloths[use.cloth], known())
    ]


def prepare(case: Case) -> tuple[clips.Environment, list[tuple[str, dict[str, Any]]]]:
    """An environment that knows every rule, and the facts of the garment to be asserted."""
    environment = clips.Environment()
    for text in (*TEMPLATES, *Rules(case).lines, *MEET):
        environment.build(text)
    subjects = sorted({row[0] for row in case.words})
    symbol = clips.Symbol
    seams = [s for s in subjects if s.startswith("s")]
    rows: list[tuple[str, dict[str, Any]]] = [("sub", {"u": symbol(s)}) for s in subjects]
    rows += [("seam", {"s": symbol(s)}) for s in seams]
    rows += [("own", {"u": symbol(f"u{i}")}) for i in range(6)]
    rows += [("lev", {"u": symbol(u), "t": t, "lo": lo, "hi": hi}) for u, t, lo, hi in case.levels]
    rows += [("word", {"u": symbol(u), "k": k, "v": v}) for u, k, v in case.words]
    rows += [
        ("num", {"u": symbol(u), "k": k, "lo": a, "hi": b, "mid": (a + b) / 2})
        for u, k, a, b in case.numbers
    ]
    rows += [("fib", {"u": symbol(u), "k": k, "f": f}) for u, k, f in case.fibres]
    rows += [("told", {"n": n, "u": symbol(u), "sure": int(sure)}) for n, u, sure in case.told]
    rows += [("mem", {"s": symbol(s), "i": i, "u": symbol(u)}) for s, i, u in case.members]
    for u, claim in _own_claims():
        slots = _slots(claim)
        rows.append(
            (
                "own-said",
                {
                    "u": symbol(u),
                    "c": slots["c"].strip('"'),
                    "a": claim.aspect,
                    "kind": symbol(claim.strength),
                    "rank": claim.rank,
                    "lo": float(slots["lo"]),
                    "hi": float(slots["hi"]),
                    "keep": [int(word) for word in slots["keep"].split()],
                },
            )
        )
    for aspect in known().aspects.values():
        for place in (*seams, "whole"):
            name = {"s": symbol(place), "a": aspect.id}
            if aspect.kind == "options":
                rows += [("option", {**name, "o": i}) for i in range(len(aspect.words))]
            else:
                rows.append(("span", {**name, "lo": aspect.low, "hi": aspect.high}))
    return environment, rows


def work(
    prepared: tuple[clips.Environment, list[tuple[str, dict[str, Any]]]],
) -> set[tuple[str, str]]:
    """Match and intersect; the rules that fired, by place."""
    environment, rows = prepared
    environment.reset()
    templates = {name: environment.find_template(name) for name in {name for name, _ in rows}}
    for name, slots in rows:
        templates[name].assert_fact(**slots)
    environment.run()
    fired = environment.find_template("fire")
    return {(str(fact["r"]), str(fact["s"])) for fact in fired.facts()}
