"""What a label can honestly say of a garment: its fibres part by part, and what is not known.

Nothing is invented: a cloth of which the fibre or the share is not known gives no line.
"""

from __future__ import annotations

from collections.abc import Collection

from msgspec import Struct

from advisor.claims.judgement import Judgement
from advisor.craft.fibrelabel import FibreLine, Share, Small, content, content_text, without_test
from advisor.knowledge.labels import Market, Told
from advisor.knowledge.model import Knowledge, Mix
from advisor.label.nicknames import misnamed
from advisor.project.garment import Cloth

SMOOTH = ("satin",)
"""Weaves that look different upside down by their sheen alone; a knit does by its loops."""
BRUSHED = ("sweatshirt-knit", "sweater-knit")
"""Knits that are often sold with a raised side (common practice): not spared unless tested."""


class Missing(Struct, frozen=True):
    """Why a part cannot be labelled, and what finding out takes: `find` is a kind of answer."""

    cloths: tuple[str, ...]
    kind: str
    fact: str
    sources: tuple[str, ...] = ("derived",)


class LabelledPart(Struct, frozen=True):
    """Cloths of one content, and the line that is written for them."""

    cloths: tuple[str, ...]
    lines: tuple[FibreLine, ...]
    text: str
    sources: tuple[str, ...]
    trim: bool = False


class Left(Struct, frozen=True):
    """Parts that are not counted among the fibres, and why."""

    cloths: tuple[str, ...]
    why: Told


class Content(Struct, frozen=True):
    """The fibre content of a garment as one market wants it."""

    missing: tuple[Missing, ...]
    parts: tuple[LabelledPart, ...]
    left: tuple[Left, ...]
    animal: tuple[str, ...]
    animal_may_be: tuple[str, ...]
    told: tuple[Told, ...]
    flame: tuple[str, ...]


def fibre_content(
    judgement: Judgement, knowledge: Knowledge, market: Market, named: Collection[str] = ()
) -> Content:
    """The fibre content of a garment, part by part.

    Args:
        judgement: of the garment.
        knowledge: where cloths and fibres are looked up.
        market: whose names and rules count.
        named: cloths whose fibre stands only in their name.
    """
    return _ContentGatherer(judgement, knowledge, market, frozenset(named)).content()


class _ContentGatherer:
    def __init__(
        self, judgement: Judgement, knowledge: Knowledge, market: Market, named: frozenset[str]
    ) -> None:
        self.cloths = judgement.garment.cloths
        self.knowledge = knowledge
        self.market = market
        self.named = named
        few = market.small_amounts
        self.small = Small(few.below, few.one, few.more, few.named) if few else None
        self.missing: list[Missing] = []
        self.animal: list[str] = []

    def content(self) -> Content:
        counted = [c for c in self.cloths.values() if self._counts(c)]
        found: dict[str, list[str]] = {}
        lines: dict[str, tuple[FibreLine, ...]] = {}
        sources: dict[str, list[str]] = {}
        for cloth in counted:
            if self._is_skin(cloth):
                self.animal.append(cloth.name)
                continue
            said = self._lines(cloth)
            if said is None:
                continue
            key = content_text(said, self.market.joint)
            found.setdefault(key, []).append(cloth.name)
            lines[key] = said
            sources.setdefault(key, []).extend(self._sources(said))
        return Content(
            tuple(self.missing),
            tuple(
                LabelledPart(
                    tuple(names),
                    lines[key],
                    key,
                    tuple(dict.fromkeys(sources[key])),
                    all(self._is_trim(name) for name in names),
                )
                for key, names in found.items()
            ),
            self._left(),
            tuple(self.animal),
            tuple(c.name for c in self.cloths.values() if c.entry in self.market.animal.may_be),
            self._told(counted),
            self._flame(counted),
        )

    def _counts(self, cloth: Cloth) -> bool:
        entry = self.knowledge.entries[cloth.entry]
        return entry.kind == "cloth" or entry.id in self.market.fillings

    def _is_skin(self, cloth: Cloth) -> bool:
        """Whether it is the skin of an animal, whatever it is finished with."""
        skins = self.market.animal.fibres
        return all(any(fibre in skins for fibre, _ in mix) for mix in cloth.mixes)

    def _is_trim(self, name: str) -> bool:
        words = name.casefold().replace("_", " ").split()
        trims = self.market.trims
        return trims is not None and any(word in trims.words for word in words)

    def _lines(self, cloth: Cloth) -> tuple[FibreLine, ...] | None:
        """What is written for a cloth; None where it is not known, and that is noted."""
        if any(fibre in self.market.animal.fibres for mix in cloth.mixes for fibre, _ in mix):
            self._lack(cloth, "unknown", "nobody knows whether it is skin or cloth")
            return None
        if "fibre" in cloth.assumed:
            self._lack(
                cloth,
                "unknown",
                self._not_sure(cloth)
                if len(cloth.mixes) > 1
                else "nobody has said its fibre; it is only sold in one",
            )
            return None
        if self._share_unsaid(cloth):
            names = " and ".join(
                dict.fromkeys(self.knowledge.fibres[f].name for f, _ in cloth.mixes[0])
            )
            self._lack(cloth, "share", f"{names} is named, but not how much of it")
            return None
        if len({frozenset(self._name(f) for f, _ in mix) for mix in cloth.mixes}) > 1:
            self._lack(cloth, "unknown", "it may be one of several things")
            return None
        for fibre in dict.fromkeys(f for mix in cloth.mixes for f, _ in mix):
            name = self.market.names.get(fibre)
            if name is None or not name.say:
                why = name.none if name else "no name is known for this fibre on this market"
                fact = f"it has {self.knowledge.fibres[fibre].name} in it. {why.rstrip('.')}"
                self._lack(cloth, "name", fact, name.sources if name else ("derived",))
                return None
        said = {content_text(lines, ""): lines for lines in map(self._written, cloth.mixes)}
        if len(said) > 1:
            self._lack(cloth, "unknown", "it may be one of several mixes")
            return None
        return next(iter(said.values()))

    def _share_unsaid(self, cloth: Cloth) -> bool:
        """Whether fibres are named and nobody has said how much of each there is."""
        unsaid = any(share is None for mix in cloth.mixes for _, share in mix)
        one = len(cloth.mixes) == 1
        return "shares" in cloth.assumed or (one and (unsaid or cloth.name in self.named))

    def _written(self, mix: Mix) -> tuple[FibreLine, ...]:
        shares = [
            Share(fibre, self._name(fibre), share or 0.0) for fibre, share in mix if share != 0
        ]
        return content(shares, self.small)

    def _name(self, fibre: str) -> str:
        name = self.market.names.get(fibre)
        return name.say if name and name.say else fibre

    def _sources(self, lines: tuple[FibreLine, ...]) -> list[str]:
        """What the names and the order of a line rest on."""
        market = self.market
        ids = [s for line in lines for f in line.fibres for s in market.names[f].sources]
        if market.small_amounts and any(line.others for line in lines):
            ids += market.small_amounts.sources
        return ids

    def _not_sure(self, cloth: Cloth) -> str:
        """What is to be asked of a cloth that several mixes are sold as."""
        named = " and ".join(sorted(self.knowledge.fibres[f].name for f in cloth.named))
        said = (
            f"its name says {named}, and it is sold in other mixes too: ask, and write the shares"
        )
        return said if named else "its fibre is not known"

    def _lack(
        self, cloth: Cloth, kind: str, fact: str, sources: tuple[str, ...] = ("derived",)
    ) -> None:
        self.missing.append(Missing((cloth.name,), kind, fact, sources))

    def _left(self) -> tuple[Left, ...]:
        rows: dict[Told, list[str]] = {}
        for cloth in self.cloths.values():
            if not self._counts(cloth):
                kind = self.knowledge.entries[cloth.entry].kind
                rows.setdefault(self.market.not_counted[kind], []).append(cloth.name)
        return tuple(Left(tuple(names), why) for why, names in rows.items())

    def _told(self, counted: list[Cloth]) -> tuple[Told, ...]:
        """The rules of the market that this garment calls for."""
        market = self.market
        entries = [self.knowledge.entries[cloth.entry] for cloth in counted]
        fibres = {fibre for cloth in counted for mix in cloth.mixes for fibre, _ in mix}
        told = list(market.whole)
        if len({cloth.mixes for cloth in counted}) > 1:
            told += market.parts
        if any(
            e.family == "piles" and any(len(mix) > 1 for mix in c.mixes)
            for e, c in zip(entries, counted, strict=True)
        ):
            told.append(market.pile)
        if any(e.family == "embellished" for e in entries):
            told.append(market.decoration)
        if market.small_amounts and any(
            (share or 100.0) < market.small_amounts.below
            for cloth in counted
            for mix in cloth.mixes
            for _, share in mix
        ):
            few = market.small_amounts
            told.append(Told(few.note, few.sources))
        if market.wool and fibres & {"wool", "mohair", "cashmere", "alpaca", "camel"}:
            told.append(market.wool)
        return (*misnamed(counted, self.knowledge), *told)

    def _flame(self, counted: list[Cloth]) -> tuple[str, ...]:
        """The cloths that are not spared the flame test, as far as the project tells."""
        test = self.market.flammability
        if test is None:
            return ()
        return tuple(
            cloth.name
            for cloth in counted
            if not self._is_skin(cloth)
            and not without_test(
                {fibre for mix in cloth.mixes for fibre, _ in mix},
                cloth.weight[0] if cloth.weight else None,
                raised=self._raised(cloth),
                spared=test.spared,
                heavy=test.plain_from,
            )
        )

    def _raised(self, cloth: Cloth) -> bool:
        """Whether the surface has a pile or a nap, or may have: it burns faster than plain."""
        entry = self.knowledge.entries[cloth.entry]
        levels = {**entry.traits, **cloth.traits}
        pile, one_way = (levels.get(trait, (0, 0))[1] for trait in ("pile", "one way"))
        if entry.structure == "knit":
            # A knit runs one way by its loops too; only what she saw on it, or its kind, tells nap.
            return pile > 0 or entry.id in BRUSHED or cloth.traits.get("one way", (0, 0))[1] > 0
        napped = entry.structure == "woven" and entry.weave not in SMOOTH
        return pile > 0 or (one_way > 0 and napped)
