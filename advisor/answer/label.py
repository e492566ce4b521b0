"""The label of a garment as plain data: the key `label` of the JSON contract.

`line` is always what stands on the label, in the words of the market; every other sentence follows
the maker's units.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from typing import Any

from advisor.answer.citing import add_sources
from advisor.answer.wording import who_text
from advisor.claims.judgement import Advice
from advisor.errors import InputError
from advisor.knowledge.labels import Market, Told
from advisor.knowledge.model import Knowledge
from advisor.label.care import Care, CareLine, care_of, way_of_cleaning
from advisor.label.content import Content, Missing, fibre_content

Row = dict[str, Any]
FIND = {
    "unknown": "Narrow it down with `advisor identify`; only the seller's word in writing or a "
    "laboratory gives percentages.",
    "share": "Ask the seller or a laboratory, and write the shares into the project",
    "name": "",
    "no cleaning": "Change a part, make it come off, or have a sewn sample of all the layers "
    "cleaned and keep it; then the label has a ground.",
}
"""What finding out takes, by the kind of thing that is missing."""
MOST_SETTERS = 2


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked for besides the garment.

    Attributes:
        market: `eu` or `us`; None for the one that goes with the units of the project.
        units: the units that the project is written in.
        named: cloths whose fibre stands only in their name.
    """

    market: str | None = None
    units: str = "metric"
    named: frozenset[str] = frozenset()


def add_label(data: Row, advice: Advice, knowledge: Knowledge, asked: Asked) -> None:
    """Put the label into a report of the same advice, with the sources that only the label cites.

    Raises:
        InputError: no such market, or no labels in the knowledge.
    """
    market = _market(asked.market, asked.units, knowledge)
    maker = _Label(advice, knowledge, market, asked.named)
    chosen = asked.market is not None
    data["label"] = row = maker.row(asked=chosen, conflicts=data["conflicts"])
    if data["units"] == "us":
        from advisor.answer.prose import in_us

        in_us(row)
    add_sources(data, _cited(data["label"]), knowledge)


def _market(asked: str | None, units: str, knowledge: Knowledge) -> Market:
    known = sorted(knowledge.labels.plain)
    if not known:
        raise InputError("the knowledge holds no labels.yaml, so there is no label")
    wanted = asked or ("us" if units == "us" else "eu")
    if wanted not in known:
        raise InputError(f"unknown market '{wanted}': {' or '.join(known)}")
    return knowledge.labels.market(wanted)


class _Label:
    def __init__(
        self, advice: Advice, knowledge: Knowledge, market: Market, named: Collection[str]
    ) -> None:
        self.knowledge = knowledge
        self.market = market
        self.cloths = advice.judgement.garment.cloths
        self.content: Content = fibre_content(advice.judgement, knowledge, market, named)
        self.care: Care = care_of(advice.judgement, knowledge)

    def row(self, *, asked: bool, conflicts: list[Row]) -> Row:
        missing = self._missing()
        market = self.market
        return {
            "market": market.id,
            "market_name": market.name,
            "market_asked": asked,
            "ready": not missing,
            "missing": missing,
            "content": self._content(),
            "left_out": [
                {"cloths": list(left.cloths), **_told(left.why)} for left in self.content.left
            ],
            "animal": {
                "cloths": list(self.content.animal),
                "may_be": list(self.content.animal_may_be),
                "line": market.animal.text,
                "text": market.animal_note,
                "sources": list(market.animal.sources),
            }
            if self.content.animal or self.content.animal_may_be
            else None,
            "rules": [_told(told) for told in self.content.told],
            "care": {
                "lines": self._care(self.care.lines),
                "apart": [
                    {"cloth": name, "lines": self._care(lines)}
                    for name, lines in self.care.apart.items()
                ],
                "cleaning": self.care.cleaning,
                "conflicts": [
                    c["id"]
                    for c in conflicts
                    if c["scope"] == "garment" and c["aspect"].startswith("care.")
                ],
            },
            "duties": [_told(told) for told in market.duties],
            "spared": [_told(told) for told in market.spared],
            "basis": _told(market.basis),
            "flammability": {"cloths": list(self.content.flame), **_told(market.flammability)}
            if market.flammability and self.content.flame
            else None,
            "children": _told(market.children),
            "authority": _told(market.authority),
            "closing": market.closing,
        }

    def _missing(self) -> list[Row]:
        """What stands in the way of the label: fibres first, then care."""
        rows = [self._lack(m) for m in self.content.missing]
        if self.care.clashes:
            text = "No one care instruction suits all parts; see below."
            rows.append(
                {
                    "cloths": [],
                    "kind": "care clash",
                    "text": text,
                    "find": "",
                    "alternatives": [],
                    "sources": ["derived"],
                }
            )
        elif self.care.lines:
            rows += self._uncleanable("", self.care.lines)
        for name, lines in self.care.apart.items():
            rows += self._uncleanable(name, lines)
        return rows

    def _uncleanable(self, cloth: str, lines: tuple[CareLine, ...]) -> list[Row]:
        way = way_of_cleaning(lines)
        # A label may honestly say that nothing cleans it; only what is not known holds it back.
        if way == "some" or (way == "none" and all(line.word is not None for line in lines)):
            return []
        if any(line.word is None for line in lines):
            text = "no one care instruction suits it"
        else:
            text = "no way to clean it is known to be safe"
        return [
            {
                "cloths": [cloth] if cloth else [],
                "kind": "no cleaning",
                "text": text if cloth else f"{text[:1].upper()}{text[1:]}.",
                "find": FIND["no cleaning"],
                "alternatives": [],
                "sources": list(self.market.basis.sources),
            }
        ]

    def _lack(self, missing: Missing) -> Row:
        find = FIND[missing.kind]
        if missing.kind == "share":
            mix = self.cloths[missing.cloths[0]].mixes[0]
            find += (
                f"; if there is nothing else in it, fibres: {{{mix[0][0]}: 100}}." * (len(mix) == 1)
                or "."
            )
        return {
            "cloths": list(missing.cloths),
            "kind": missing.kind,
            "text": missing.fact,
            "find": find,
            "alternatives": [_told(t) for t in self.market.unknown]
            if missing.kind == "unknown"
            else [],
            "sources": list(missing.sources),
        }

    def _content(self) -> list[Row]:
        trims = self.market.trims
        return [
            {
                "cloths": list(part.cloths),
                "line": part.text,
                "entries": [
                    {
                        "name": line.name,
                        "percent": line.percent,
                        "fibres": list(line.fibres),
                        "others": line.others,
                    }
                    for line in part.lines
                ],
                "may_be_left_out": {**_told(trims)} if part.trim and trims else None,
                "sources": list(part.sources),
            }
            for part in self.content.parts
        ]

    def _care(self, lines: tuple[CareLine, ...]) -> list[Row]:
        return [self._care_row(line) for line in lines]

    def _care_row(self, line: CareLine) -> Row:
        words = self.market.care[line.aspect]
        sources = list(words.sources)
        if line.word is None:
            text: str | None = None
        elif line.unknown:
            text = words.unknown
        else:
            text = words.words[line.word]
            if line.no_steam and "steam" not in text and line.word not in ("do not iron",):
                text += f", {self.market.no_steam}"
        setters = [s for s in line.setters if s.claim.why][:MOST_SETTERS]
        return {
            "aspect": line.aspect,
            "answer": line.word,
            "line": text,
            "known": not line.unknown,
            "set_by": [
                {
                    "who": who_text(s),
                    "why": s.claim.why,
                    "strength": s.claim.strength,
                    "certain": s.certain,
                    "sources": list(s.claim.sources),
                }
                for s in setters
            ],
            "silent": list(line.silent),
            "sources": sources,
        }


def _told(told: Told) -> Row:
    return {"text": told.text, "sources": list(told.sources)}


def _cited(raw: Any) -> Iterable[str]:
    if isinstance(raw, dict):
        for key, inner in raw.items():
            if key == "sources":
                yield from inner
            else:
                yield from _cited(inner)
    elif isinstance(raw, list):
        for inner in raw:
            yield from _cited(inner)
