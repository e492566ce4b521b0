"""The label of a garment as it is told: content, care, duties, and what stands in its way.

`line` is always what stands on the label, in the words of the market; every other sentence follows
the maker's units.
"""

from __future__ import annotations

from msgspec import Struct

from advisor.answer.instructions import over
from advisor.answer.model.label import (
    ToldAnimal,
    ToldApart,
    ToldCare,
    ToldCaring,
    ToldContent,
    ToldDuty,
    ToldEntry,
    ToldLabel,
    ToldLack,
    ToldLeft,
    ToldSetter,
    ToldWhole,
)
from advisor.answer.model.told import ToldConflict
from advisor.answer.teller import Teller
from advisor.answer.wording import mix_text, or_listed, who_text
from advisor.claims.judgement import Judgement
from advisor.craft.fibrelabel import whole_percents
from advisor.errors import InputError
from advisor.knowledge.labels import Market, Told
from advisor.knowledge.model import Knowledge
from advisor.label.care import HAND_WASH, Care, CareLine, care_of, way_of_cleaning
from advisor.label.content import Content, Missing, fibre_content
from advisor.label.garments import labels_of
from advisor.label.known import OnceKnown, once_known
from advisor.label.mass import LESSER, SOURCES, whole_content
from advisor.units import fahrenheit

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


class Asked(Struct, frozen=True):
    """What is asked for besides the garment.

    Attributes:
        market: `eu` or `us`; None for the one that goes with the units of the project.
        units: the units that the project is written in.
        named: cloths whose fibre stands only in their name.
    """

    market: str | None = None
    units: str = "metric"
    named: frozenset[str] = frozenset()


def told_label(
    judgement: Judgement, conflicts: tuple[ToldConflict, ...], asked: Asked, teller: Teller
) -> ToldLabel:
    """The label of a garment for the market that is asked for.

    Raises:
        InputError: no such market, or no labels in the knowledge.
    """
    market = _market(asked.market, asked.units, teller.knowledge)
    return _Label(judgement, teller, market, asked).told(conflicts)


def _market(asked: str | None, units: str, knowledge: Knowledge) -> Market:
    known = sorted(knowledge.labels.plain)
    if not known:
        raise InputError("the knowledge holds no labels.yaml, so there is no label")
    wanted = asked or ("us" if units == "us" else "eu")
    if wanted not in known:
        raise InputError(f"unknown market '{wanted}': {' or '.join(known)}")
    return knowledge.labels.market(wanted)


class _Label:
    def __init__(self, judgement: Judgement, teller: Teller, market: Market, asked: Asked) -> None:
        self.teller = teller
        self.market = market
        self.asked = asked.market is not None
        self.judgement = judgement
        self.cloths = judgement.garment.cloths
        self.content: Content = fibre_content(judgement, teller.knowledge, market, asked.named)
        self.care: Care = care_of(judgement, teller.knowledge)

    def told(self, conflicts: tuple[ToldConflict, ...]) -> ToldLabel:
        missing, market = self._missing(), self.market
        flame = market.flammability if self.content.flame else None
        apart = labels_of(self.judgement.garment, self.teller.knowledge)
        own = (ToldDuty(f"{apart}.", self.teller.cite(("derived",))),) if apart else ()
        adult = self.judgement.garment.maker.worn_by == "adult"
        return ToldLabel(
            market=market.id,
            market_name=market.name,
            market_asked=self.asked,
            ready=not missing,
            missing=missing,
            content=self._content(),
            left_out=tuple(self._left(tuple(left.cloths), left.why) for left in self.content.left),
            animal=self._animal(),
            rules=(*own, *map(self._told, self.content.told)),
            care=self._caring(conflicts),
            duties=tuple(map(self._told, market.duties)),
            spared=tuple(map(self._told, market.spared)),
            basis=self._told(market.basis),
            flammability=self._left(tuple(self.content.flame), flame) if flame else None,
            children=self._told(market.adults if adult else market.children),
            authority=self._told(market.authority),
            closing=self.teller.say(market.closing),
            whole=None if apart else self._whole(),
        )

    def _whole(self) -> ToldWhole | None:
        """The content of the whole by mass, where the parts need not be told apart."""
        knowledge = self.teller.knowledge
        found = whole_content(self.judgement, knowledge, self.market, self.content)
        if found is None:
            return None
        parts = {name: round(share * 100, 1) for name, share in found.parts}
        figures: list[float] = [*whole_percents([share for _, share in found.parts])]
        if any(figure >= LESSER * 100 > parts[n] for n, figure in zip(parts, figures, strict=True)):
            figures = [*parts.values()]  # none is told as 30 that does not reach it
        shares = ", ".join(f"{n} {figure:g} %" for n, figure in zip(parts, figures, strict=True))
        text = f"By weight of the pieces as cut: {shares}. No part but the main one is a main "
        text += "lining or reaches 30 % of the weight, so this may stand for all of them"
        usual = "; the weights are only usual ones, so weigh a scrap of each first"
        return ToldWhole(
            found.text,
            parts,
            f"{text}{usual if found.usual else ''}.",
            self.teller.cite(SOURCES),
        )

    def _told(self, told: Told) -> ToldDuty:
        return ToldDuty(self.teller.say(told.text), self.teller.cite(told.sources))

    def _left(self, cloths: tuple[str, ...], told: Told) -> ToldLeft:
        return ToldLeft(cloths, self.teller.say(told.text), self.teller.cite(told.sources))

    def _animal(self) -> ToldAnimal | None:
        if not (self.content.animal or self.content.animal_may_be):
            return None
        animal = self.market.animal
        return ToldAnimal(
            cloths=tuple(self.content.animal),
            may_be=tuple(self.content.animal_may_be),
            line=animal.phrase,
            text=self.teller.say(animal.note),
            sources=self.teller.cite(animal.sources),
        )

    def _caring(self, conflicts: tuple[ToldConflict, ...]) -> ToldCaring:
        return ToldCaring(
            lines=self._lines(self.care.lines),
            apart=tuple(
                ToldApart(name, self._lines(lines), way_of_cleaning(lines))
                for name, lines in self.care.apart.items()
            ),
            cleaning=self.care.cleaning,
            conflicts=tuple(
                c.id for c in conflicts if c.scope == "garment" and c.aspect.startswith("care.")
            ),
            once_known=tuple(map(self._once, once_known(self.judgement, self.teller.knowledge))),
        )

    def _once(self, known: OnceKnown) -> str:
        """What stands on the label instead once somebody knows what a notion is made of."""
        fibres = or_listed([mix_text(mix, self.teller.knowledge) for mix in known.mixes])
        lines = "; ".join(self._printed(line) or "" for line in known.lines)
        text = (
            f"Ask what {known.cloth} is made of before you write this; until then the stricter "
            "line stands. If it is "
        )
        return self.teller.say(f"{text}{fibres}: {lines[:1].lower()}{lines[1:]}.")

    def _missing(self) -> tuple[ToldLack, ...]:
        """What stands in the way of the label: fibres first, then care."""
        rows = [self._lack(m) for m in self.content.missing]
        if self.care.clashes:
            text = "No one care instruction suits all parts; see below."
            rows.append(ToldLack((), "care clash", text, "", (), self.teller.cite(("derived",))))
        elif self.care.lines:
            rows += self._uncleanable("", self.care.lines)
        for name, lines in self.care.apart.items():
            rows += self._uncleanable(name, lines)
        return tuple(rows)

    def _uncleanable(self, cloth: str, lines: tuple[CareLine, ...]) -> list[ToldLack]:
        way = way_of_cleaning(lines)
        # A label may honestly say that nothing cleans it; only what is not known holds it back.
        if way == "some" or (way == "none" and all(line.word is not None for line in lines)):
            return []
        if any(line.word is None for line in lines):
            text = "no one care instruction suits it"
        else:
            text = "no way to clean it is known to be safe"
        return [
            ToldLack(
                cloths=(cloth,) if cloth else (),
                kind="no cleaning",
                text=text if cloth else f"{text[:1].upper()}{text[1:]}.",
                find=FIND["no cleaning"],
                alternatives=(),
                sources=self.teller.cite(self.market.basis.sources),
            )
        ]

    def _lack(self, missing: Missing) -> ToldLack:
        find = FIND[missing.kind]
        if missing.kind == "share":
            mix = self.cloths[missing.cloths[0]].mixes[0]
            find += (
                f"; if there is nothing else in it, fibres: {{{mix[0][0]}: 100}}." * (len(mix) == 1)
                or "."
            )
        unknown = self.market.unknown if missing.kind == "unknown" else ()
        return ToldLack(
            cloths=tuple(missing.cloths),
            kind=missing.kind,
            text=missing.fact,
            find=find,
            alternatives=tuple(map(self._told, unknown)),
            sources=self.teller.cite(missing.sources),
        )

    def _content(self) -> tuple[ToldContent, ...]:
        trims = self.market.trims
        return tuple(
            ToldContent(
                cloths=tuple(part.cloths),
                line=part.text,
                entries=tuple(
                    ToldEntry(line.name, line.percent, tuple(line.fibres), line.others)
                    for line in part.lines
                ),
                may_be_left_out=self._told(trims) if part.trim and trims else None,
                sources=self.teller.cite(part.sources),
            )
            for part in self.content.parts
        )

    def _lines(self, lines: tuple[CareLine, ...]) -> tuple[ToldCare, ...]:
        return tuple(self._line(line) for line in lines)

    def _line(self, line: CareLine) -> ToldCare:
        words = self.market.care[line.aspect]
        setters = [s for s in line.setters if s.claim.why][:MOST_SETTERS]
        return ToldCare(
            aspect=line.aspect,
            answer=line.word,
            line=self._printed(line),
            known=not line.unknown,
            set_by=tuple(
                ToldSetter(
                    who_text(s),
                    self.teller.say(s.claim.why),
                    s.claim.strength,
                    s.certain,
                    self.teller.cite(s.claim.sources),
                )
                for s in setters
            ),
            silent=tuple(line.silent),
            sources=self.teller.cite(words.sources),
        )

    def _printed(self, line: CareLine) -> str | None:
        words = self.market.care[line.aspect]
        if line.word is None:
            return None
        if line.unknown:
            return words.unknown
        text = words.words[line.word]
        if line.word == "hand wash" and line.at_most is not None:
            text = _cooler(text, line.at_most)
        if line.no_steam and "steam" not in text and line.word != "do not iron":
            text = f"{text}, {self.market.no_steam}"
        return f"{text}{over(line.kept_off)}"


def _cooler(text: str, at_most: int) -> str:
    """The words of a hand wash with the coolest water that a part bears, in either scale."""
    for usual, now, scale in (
        (HAND_WASH, at_most, "C"),
        (round(fahrenheit(HAND_WASH)), round(fahrenheit(at_most)), "F"),
    ):
        text = text.replace(f"{usual} °{scale}", f"{now} °{scale}")
    return text
