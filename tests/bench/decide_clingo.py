"""The matching and intersecting of `decide_cases` as a logic program for clingo."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import clingo

from tests.bench.decide_cases import Case, Tree, fibres_of, known, leaf_name, musts

MOST = 100_000_000


def number(value: float) -> int:
    """A measure in hundredths, within what the solver's whole numbers hold."""
    return int(max(-MOST, min(MOST, value * 100)))


class Program:
    """Writes the program: one predicate for surely (y) and one for possibly (m)."""

    def __init__(self, case: Case) -> None:
        self.case = case
        self.lines: list[str] = []
        self.made = 0
        for i, tree in enumerate(case.conditions):
            inner = self.condition(tree)
            self.lines += [f"yes({i},U) :- y({inner},U).", f"may({i},U) :- m({inner},U)."]
        for rule, numbers, seam in case.rules:
            self.rule(rule, numbers, seam)
        self.lines += [
            "floor(P,A,X) :- X = #max{L,C : said(P,C), lower(C,A,L)}, at(P,A).",
            "roof(P,A,X) :- X = #min{H,C : said(P,C), upper(C,A,H)}, at(P,A).",
            "at(P,A) :- said(P,C), lower(C,A,_).",
            "gone(P,A,O) :- said(P,C), drops(C,A,O).",
            "left(P,A,O) :- said(P,C), keeps(C,A,O), not gone(P,A,O).",
            "#show fire/2. #show floor/3. #show roof/3. #show left/3.",
        ]

    def condition(self, tree: Tree) -> int:
        """The number of a node, with the lines that define it."""
        self.made += 1
        me, kind = self.made, tree[0]
        add = self.lines.append
        if kind == "trait":
            add(f'y({me},U) :- lev(U,"{tree[1]}",L,H), L >= {tree[2]}, H <= {tree[3]}.')
            add(f'm({me},U) :- lev(U,"{tree[1]}",L,H), H >= {tree[2]}, L <= {tree[3]}.')
        elif kind == "word":
            for word in tree[2]:
                add(f'y({me},U) :- word(U,"{tree[1]}","{word}").')
            add(f"m({me},U) :- y({me},U).")
        elif kind == "number":
            self.measure(me, tree)
        elif kind in ("fibre", "group"):
            self.fibre(me, tree)
        elif kind == "not":
            inner = self.condition(tree[1])
            add(f"y({me},U) :- sub(U), not m({inner},U).")
            add(f"m({me},U) :- sub(U), not y({inner},U).")
        else:
            inside = [self.condition(part) for part in tree[1:]]
            for p in "ym":
                if kind == "all":
                    body = "".join(f", {p}({i},U)" for i in inside)
                    add(f"{p}({me},U) :- sub(U){body}.")
                else:
                    self.lines += [f"{p}({me},U) :- {p}({i},U)." for i in inside]
        return me

    def measure(self, me: int, tree: Tree) -> None:
        """A measure against the ends of a test."""
        low, high = number(tree[2]), number(tree[3])
        above, below = (">" if tree[4] else ">="), ("<" if tree[5] else "<=")
        key = tree[1]
        self.lines += [
            f'y({me},U) :- num(U,"{key}",_,_,M), M {above} {low}, M {below} {high}.',
            f"m({me},U) :- y({me},U).",
            f'm({me},U) :- num(U,"{key}",L,H,_), H >= {low}, L <= {high}, L != H.',
            f'm({me},U) :- sub(U), not has(U,"{key}").',
        ]

    def fibre(self, me: int, tree: Tree) -> None:
        """A fibre or a group, surely where it is in every mix."""
        if tree[0] == "fibre" and tree[2] != "any":
            name = leaf_name(tree)
            self.lines += [f'y({me},U) :- told("{name}",U,1).', f'm({me},U) :- told("{name}",U,_).']
            return
        self.lines += [f'in({me},U,K) :- fib(U,K,"{f}").' for f in fibres_of(tree)]
        self.lines += [
            f"m({me},U) :- in({me},U,_).",
            f"out({me},U) :- fib(U,K,_), not in({me},U,K).",
            f"y({me},U) :- in({me},U,_), not out({me},U).",
        ]

    def rule(self, rule: Any, numbers: list[int], seam: int | None) -> None:
        """What fires where, and what it says there."""
        part = f", may({seam},S)" if seam is not None else ""
        id_ = f'"{rule.id}"'
        for truth, certain in (("yes", 1), ("may", 0)):
            heads: dict[str, Callable[[str], str]] = {
                "pair": lambda t: (
                    f"mem(S,I,U), mem(S,J,V), I != J, {t}({numbers[0]},U), {t}({numbers[1]},V)"
                ),
                "garment pair": lambda t: (
                    f"own(U), own(V), U != V, {t}({numbers[0]},U), {t}({numbers[1]},V)"
                ),
                "some": lambda t: f"mem(S,_,U), {t}({numbers[0]},U)",
                "layer": lambda t: f"mem(S,_,U), {t}({numbers[0]},U)",
                "every": lambda t: (
                    f'seam(S), {t}({numbers[0]},W) : mem(S,_,W), word(W,"kind","cloth")'
                ),
                "seam": lambda _: "seam(S)",
            }
            body = heads[rule.shape](truth)
            place = "whole" if rule.shape == "garment pair" else "S"
            if rule.shape == "every":
                body = body.replace("seam(S), ", "") + "; seam(S)"
                body += part.replace(", ", "; ")
            else:
                body += part
            self.lines.append(f"fire({id_},{place}) :- {body}.")
            claims = [c for c in musts(rule) if certain or c.risk != "result"]
            for claim in claims:
                self.claim(rule.id, claim, f"{place}", body)

    def claim(self, rule: str, claim: Any, place: str, body: str) -> None:
        """What a claim says, where its rule fires."""
        id_ = f'"{rule} {claim.aspect} {claim.span} {claim.mask}"'
        self.lines.append(f"said({place},{id_}) :- {body}.")
        if claim.span is not None:
            low, high = (number(x) for x in claim.span)
            self.lines.append(
                f'lower({id_},"{claim.aspect}",{low}). upper({id_},"{claim.aspect}",{high}).'
            )
            return
        for i in range(len(known().aspects[claim.aspect].words)):
            kept = "keeps" if claim.mask >> i & 1 else "drops"
            self.lines.append(f'{kept}({id_},"{claim.aspect}",{i}).')

    def facts(self) -> str:
        """The garment."""
        case = self.case
        subjects = sorted({row[0] for row in case.words})
        rows = [f"sub({s})." for s in subjects]
        rows += [f"seam({s})." for s in subjects if s.startswith("s")]
        rows += [f"own(u{i})." for i in range(6)]
        rows += [f'lev({u},"{t}",{low},{high}).' for u, t, low, high in case.levels]
        rows += [f'word({u},"{k}","{v}").' for u, k, v in case.words]
        rows += [
            f'num({u},"{k}",{number(a)},{number(b)},{number((a + b) / 2)}). has({u},"{k}").'
            for u, k, a, b in case.numbers
        ]
        rows += [f'fib({u},{k},"{f}").' for u, k, f in case.fibres]
        rows += [f'told("{n}",{u},{int(sure)}).' for n, u, sure in case.told]
        rows += [f"mem({s},{i},{u})." for s, i, u in case.members]
        return "\n".join(rows)


def prepare(case: Case) -> clingo.Control:
    """A solver with the whole program read but nothing worked out."""
    program = Program(case)
    control = clingo.Control(["--warn=none"])
    control.add("base", [], program.facts() + "\n" + "\n".join(program.lines))
    return control


def work(control: clingo.Control) -> set[tuple[str, str]]:
    """Match and intersect; the rules that fired, by place."""
    control.ground([("base", [])])
    fired: set[tuple[str, str]] = set()
    with control.solve(yield_=True) as handle:
        for model in handle:
            fired = {
                (str(a.arguments[0]).strip('"'), str(a.arguments[1]))
                for a in model.symbols(shown=True)
                if a.name == "fire"
            }
    return fired
