"""The answer as plain data: the JSON contract `advisor.answer/1`, which every renderer reads.

Temperatures are °C, lengths mm, weights g/m², whatever the maker's units; only `text`,
`message` and other sentences follow her units.
"""

from __future__ import annotations

from typing import Any

from advisor.answer import wording
from advisor.answer.citing import source_row
from advisor.answer.instructions import instruction_text, lines_fields, take_word
from advisor.answer.own_limits import own_limits
from advisor.answer.unknowns import HARDLY_HOTTER, cheapest
from advisor.claims.collect import Fired, Place
from advisor.claims.combine import Verdict, deciders
from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Advice, Cure, Judgement
from advisor.claims.speakers import Said
from advisor.claims.valuesets import Choice, Span
from advisor.claims.workarounds import Instruction
from advisor.decide.together import cure_all
from advisor.decide.trials import find_trials, guards, weight_of
from advisor.decide.unknowns import Unknown, find_unknowns
from advisor.knowledge.model import LIMIT_ASPECT, Aspect, Knowledge
from advisor.project.garment import Garment
from advisor.units import System, show_range

SCHEMA = "advisor.answer/1"
_CAUTIONS = ("eye", "fire", "burn", "health", "cut", "damage")


def report(advice: Advice, knowledge: Knowledge, *, shopping: bool = False) -> dict[str, Any]:
    """Everything that is to be told about a garment; with `shopping` also what to buy."""
    data = _Reporter(advice, knowledge).whole()
    if not advice.judgement.garment.single:
        from advisor.answer.making import add_build

        add_build(data, advice.judgement, knowledge, shopping=shopping)
    if advice.judgement.garment.units == "us":
        from advisor.answer.prose import in_us

        in_us(data)
    return data


class _Reporter:
    def __init__(self, advice: Advice, knowledge: Knowledge) -> None:
        self.advice = advice
        self.judgement: Judgement = advice.judgement
        self.garment: Garment = self.judgement.garment
        self.knowledge = knowledge
        self.units: System = "us" if self.garment.units == "us" else "metric"
        self.cited: dict[str, None] = {}

    def whole(self) -> dict[str, Any]:
        unknowns = find_unknowns(self.judgement, self.knowledge)
        data: dict[str, Any] = {
            "schema": SCHEMA,
            "garment": self.garment.name,
            "units": self.garment.units,
            "layers": [self._layer(name) for name in sorted(self.garment.cloths)],
            "seams": [
                {
                    "name": s.name,
                    "layers": [u.cloth for u in s.uses],
                    "facts": dict(s.facts),
                    "assumed": list(s.assumed),
                }
                for s in self.garment.seams
            ],
            "verdicts": [
                self._verdict(place, verdict)
                for place, by_aspect in self.judgement.verdicts.items()
                for verdict in by_aspect.values()
            ],
            "conflicts": [self._conflict(i, c) for i, c in enumerate(self.judgement.conflicts, 1)],
            "cure_all": self._cure_all(),
            "instructions": [self._instruction(i) for i in self.judgement.instructions],
            "cautions": [
                *own_limits(self.judgement, self.knowledge, self.units, self._cite),
                *self._cautions(),
            ],
            "advice": self._advice(),
            "tests": [
                {
                    "text": " ".join(t.look_for),
                    "layers": list(t.layers),
                    "places": list(t.places),
                    "look_for": list(t.look_for),
                }
                for t in find_trials(self.judgement)
            ],
            "unknowns": [row for u in unknowns for row in self._unknown(u)] + self._assumed(),
        }
        data["sources"] = [source_row(id_, self.knowledge) for id_ in self.cited]
        return data

    def _cite(self, ids: tuple[str, ...]) -> list[str]:
        """Note the sources as cited and give them back as they were written."""
        for text in ids:
            self.cited[text.split(" ", 1)[0]] = None
        return list(ids)

    def _layer(self, name: str) -> dict[str, Any]:
        cloth = self.garment.cloths[name]
        known = cloth.mixes[0] if cloth.fibre_known else None
        return {
            "name": name,
            "fabric": cloth.entry,
            "kind": self.knowledge.entries[cloth.entry].kind,
            "fibres": dict(known) if known else "unknown",
            "may_be": [] if known else [dict(mix) for mix in cloth.mixes],
            "weight": list(cloth.weight) if cloth.weight else None,
            "text": wording.fibres_text(cloth.mixes, self.knowledge),
            "assumed": list(cloth.assumed),
        }

    def _verdict(self, place: Place, verdict: Verdict) -> dict[str, Any]:
        aspect = verdict.aspect
        row: dict[str, Any] = {
            "aspect": aspect.id,
            "scope": place.scope,
            "place": place.name,
            "kind": aspect.kind,
        }
        row |= _set_fields(aspect, verdict)
        row["text"] = wording.verdict_text(verdict, self.units)
        first = deciders(verdict)
        row["because"] = [
            {**self._said(s, aspect), "decides": s in first}
            for s in (*first, *(s for s in verdict.because if s not in first))
        ]
        row["given_up"] = [self._said(s, aspect) for s in verdict.given_up]
        return row

    def _said(self, said: Said, aspect: Aspect) -> dict[str, Any]:
        claim = said.claim
        return {
            "who": wording.who_text(said),
            "says": wording.says_text(said, aspect, self.units),
            "strength": claim.strength,
            "why": claim.why,
            "rule": claim.origin,
            "certain": said.certain,
            "facts": [{"who": f.who, "fact": f.fact, "value": f.value} for f in said.facts],
            "sources": self._cite(claim.sources),
        }

    def _conflict(self, number: int, conflict: Conflict) -> dict[str, Any]:
        aspect = self.knowledge.aspects.get(conflict.aspect)
        shown = aspect or self.knowledge.aspects["care.wash"]
        claims = dict.fromkeys(s for c in (conflict, *conflict.also) for s in c.clash)
        return {
            "number": number,
            "id": conflict.id,
            "aspect": conflict.aspect,
            "aspects": list(conflict.aspects),
            "place": conflict.place.name,
            "places": list(conflict.places),
            "scope": conflict.place.scope,
            "severity": conflict.severity,
            "between": list(conflict.between),
            "message": wording.conflict_message(conflict, self.knowledge, self.units),
            "because": [
                self._said(s, self.knowledge.aspects.get(s.claim.aspect, shown)) for s in claims
            ],
            "remedies": [
                {"take": take_word(number, i), **self._cure(cure, conflict)}
                for i, cure in enumerate(self.advice.cures.get(conflict.key, ()), 1)
            ],
        }

    def _cure_all(self) -> dict[str, Any] | None:
        """The cheapest remedies that between them leave no conflict; None where there are none."""
        found = None if self.garment.single else cure_all(self.advice, self.knowledge)
        if found is None:
            return None
        return {
            "takes": [take_word(*pick) for pick in found.picks],
            "remedies": [cure.remedy for cure in found.cures],
            "price": {
                "effort": sum(c.effort for c in found.cures),
                "look": sum(c.look for c in found.cures),
            },
            "checked": True,
            **lines_fields(found.lines, self.garment),
        }

    def _instruction(self, item: Instruction) -> dict[str, Any]:
        """How the work goes so that two layers never clash under one iron."""
        return {
            "kind": item.kind,
            "needy": sorted(item.needy),
            "tender": sorted(item.tender),
            "places": [place.name for place in item.places],
            "text": instruction_text(item, self.garment, self.knowledge, self.units),
            "sources": self._cite(("common-practice",)),
        }

    def _cure(self, cure: Cure, conflict: Conflict) -> dict[str, Any]:
        remedy = next(r for r in self.knowledge.remedies if r.id == cure.remedy)
        after = cure.after.verdicts.get(conflict.place, {}).get(conflict.aspect)
        then = f" {wording.sentence(wording.verdict_text(after, self.units))}" if after else ""
        words = {**cure.words, "after": wording.iron_left(cure.after.verdicts, conflict.place)}
        return {
            "id": cure.remedy,
            "text": remedy.text.format_map(words),
            "price": {"effort": cure.effort, "look": cure.look},
            "then": remedy.then + then,
            "earlier": remedy.earlier,
            "checked": True,
            **lines_fields(cure.lines, self.garment),
            "sources": self._cite(remedy.sources),
        }

    def _cautions(self) -> list[dict[str, Any]]:
        """Each caution once, with every place and cloth that it is about."""
        rows: dict[tuple[str, str], dict[str, Any]] = {}
        for fired in self.judgement.gathered.fired:
            for caution in fired.rule.cautions:
                key = (fired.rule.id, caution["text"])
                row = rows.setdefault(
                    key,
                    {
                        "id": fired.rule.id,
                        "area": fired.rule.area,
                        "kind": caution["kind"],
                        "text": caution["text"],
                        "about": [],
                        "sources": self._cite(tuple(caution["sources"])),
                    },
                )
                for name in _about(fired):
                    if name not in row["about"]:
                        row["about"].append(name)
        return sorted(rows.values(), key=lambda r: (_CAUTIONS.index(r["kind"]), r["id"]))

    def _advice(self) -> list[dict[str, Any]]:
        """Things to do that are no setting."""
        ways = [
            {
                "place": place.name,
                "scope": place.scope,
                "text": instruction_text(item, self.garment, self.knowledge, self.units),
                "rule": "",
                "certain": True,
                "weight": (0, 0, ""),
                "sources": self._cite(("common-practice",)),
            }
            for item in self.judgement.instructions
            for place in item.places
        ]
        return ways + [
            {
                "place": fired.place.name,
                "scope": fired.place.scope,
                "text": text,
                "rule": fired.rule.id,
                "certain": fired.certain,
                "weight": weight_of(fired),
                "sources": self._cite(fired.rule.sources),
            }
            for fired in sorted(self.judgement.gathered.fired, key=weight_of)
            if fired.certain or guards(fired)
            for text in fired.rule.do
        ]

    def _unknown(self, unknown: Unknown) -> list[dict[str, Any]]:
        """What naming the fibre of a cloth would allow."""
        cloth = self.garment.cloths[unknown.cloth]
        gains: dict[float, list[str]] = {}
        for mix, limit in unknown.candidates:
            gains.setdefault(limit, []).append(wording.mix_text(mix, self.knowledge))
        parts = [
            f"if it is {' or '.join(names)}: {wording.degrees(limit, self.units)} instead of "
            f"{wording.degrees(unknown.limit, self.units)}"
            for limit, names in sorted(gains.items())
            if limit - unknown.limit > HARDLY_HOTTER
        ]
        if self.knowledge.entries[cloth.entry].kind != "cloth":
            return []
        effect = "; ".join(parts) or "every candidate bears the same iron"
        about = wording.fibres_text(cloth.mixes, self.knowledge)
        row = {"fact": f"{unknown.cloth}: {about}", "effect": effect, "limit_c": unknown.limit}
        if not parts:
            return [row]
        return [row | cheapest(unknown, effect, self.knowledge, self.units)]

    def _assumed(self) -> list[dict[str, Any]]:
        """What was taken for granted: one row for the weights, one for what seams leave out."""
        rows = []
        weights = [
            f"{name} {show_range('weight', *cloth.weight, self.units)}"
            for name, cloth in sorted(self.garment.cloths.items())
            if "weight" in cloth.assumed
            and cloth.weight
            and self.knowledge.entries[cloth.entry].kind == "cloth"
        ]
        if weights:
            effect = f"taken as usual, {', '.join(weights)}; needle and thread follow it"
            rows.append({"fact": "weight not given", "effect": effect})
        maker = self.garment.maker
        taken = ["a household zigzag machine"] if "machine" in maker.assumed else []
        if "overlocker" in maker.assumed:
            own = self.knowledge.machines[maker.overlocker].name if maker.overlocker else ""
            taken.append(own or "no overlocker")
        if taken:
            named = "machine" if "machine" in maker.assumed else "overlocker"
            effect = f"taken as {', '.join(taken)}"
            rows.append({"fact": f"your {named} is not named", "effect": effect})
        return rows


def _about(fired: Fired) -> tuple[str, ...]:
    if fired.place.scope == "seam":
        return (fired.place.name,)
    return fired.cloths


def _set_fields(aspect: Aspect, verdict: Verdict) -> dict[str, Any]:
    """Low, high and pick, or options and pick, in the words and units of the aspect."""
    advised, pick = verdict.advised, verdict.pick
    if isinstance(advised, Choice):
        mask = advised.mask
        if aspect.excluded:
            mask = ((1 << len(aspect.words)) - 1) & ~mask
        words = [aspect.words[i] for i in Choice(mask).options()]
        chosen = None if pick is None or aspect.excluded else aspect.words[int(pick)]
        return {"options": words, "pick": chosen}
    if advised.is_empty:
        return {"unit": aspect.unit, "low": None, "high": None, "pick": None}
    if aspect.kind == "scale":
        return {
            "low": aspect.words[int(advised.low)],
            "high": aspect.words[int(advised.high)],
            "pick": None if pick is None else aspect.words[int(pick)],
        }
    fields: dict[str, Any] = {
        "unit": aspect.unit,
        "low": advised.low,
        "high": advised.high,
        "pick": pick,
    }
    if aspect.id == LIMIT_ASPECT and isinstance(verdict.allowed, Span):
        fields["limit"] = verdict.allowed.high
    return fields
