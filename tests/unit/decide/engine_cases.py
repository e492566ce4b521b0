"""Short ways to make claims and garments for the tests of the engine."""

from __future__ import annotations

from typing import Any

from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import Said
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Aspect, Claim, Knowledge, Mix
from advisor.project.garment import Cloth, Garment, Maker, Seam, Use
from tests.unit.knowledge.small_book import small_knowledge

KNOWN: Knowledge = small_knowledge()


def aspect(id_: str) -> Aspect:
    return KNOWN.aspects[id_]


def span(
    low: float,
    high: float,
    strength: str = "must",
    risk: str = "damage",
    *,
    who: str = "a",
    rank: int = 1,
    best: float | None = None,
    of: str = "needle.size",
) -> Said:
    """Somebody says a range, in the ends of the aspect."""
    said_risk = risk if strength == "must" else ""
    claim = Claim(
        of,
        (low, high),
        0,
        best,
        strength,
        said_risk,
        f"{who} says so.",
        ("habit",),
        rank,
        f"fabric {who}",
    )
    return Said(who, claim, (), True, frozenset((who,)))


def options(
    of: str,
    words: list[str],
    strength: str = "must",
    risk: str = "damage",
    *,
    who: str = "a",
    rank: int = 1,
    best: str | None = None,
) -> Said:
    """Somebody says some options of an aspect."""
    known = aspect(of).words
    mask = sum(1 << known.index(word) for word in words)
    said_risk = risk if strength == "must" else ""
    claim = Claim(
        of,
        None,
        mask,
        None if best is None else float(known.index(best)),
        strength,
        said_risk,
        f"{who} says so.",
        ("habit",),
        rank,
        f"fabric {who}",
    )
    return Said(who, claim, (), True, frozenset((who,)))


def cloth(entry: str, *fibres: str, name: str = "", **more: Any) -> Cloth:
    """A cloth by its entry; no fibre named is a fibre unknown, `silk/wool` is a mix of halves."""
    mixes: tuple[Mix, ...] = tuple(
        tuple((part, 100.0 / len(fibre.split("/"))) for part in fibre.split("/"))
        for fibre in fibres
    )
    about = KNOWN.entries[entry]
    more.setdefault("weight", about.weight)
    return Cloth(name or entry, entry, mixes or about.mixes, **more)


def garment(cloths: list[Cloth], *seams: Seam, maker: Maker | None = None, **more: Any) -> Garment:
    """A garment; without seams it has one of all its cloths in the order given."""
    stacks = seams or (Seam("seam", tuple(Use(c.name) for c in cloths)),)
    return Garment("coat", {c.name: c for c in cloths}, stacks, maker or Maker(), **more)


def seam(name: str, *layers: str | Use, **more: Any) -> Seam:
    uses = tuple(Use(layer) if isinstance(layer, str) else layer for layer in layers)
    return Seam(name, uses, **more)


def judged(*cloths: Cloth, **more: Any) -> Judgement:
    return judge(garment(list(cloths), **more), KNOWN)


def verdict(judgement: Judgement, place: str, of: str) -> Verdict:
    """The verdict of a place by its name."""
    found = [v[of] for p, v in judgement.verdicts.items() if p.name == place and of in v]
    assert len(found) == 1, f"{len(found)} verdicts on {of} at {place}"
    return found[0]


def words(found: Verdict, *, advised: bool = False) -> list[str]:
    """The options or the words that a verdict leaves."""
    left: Any = found.advised if advised else found.allowed
    if found.aspect.kind == "options":
        return [found.aspect.words[i] for i in left.options()]
    return list(found.aspect.words[int(left.low) : int(left.high) + 1])


def origins(said: tuple[Said, ...]) -> list[str]:
    return [s.claim.origin for s in said]


def judged_seams(cloths: list[Cloth], *seams: Seam, **more: Any) -> Judgement:
    return judge(garment(cloths, *seams, **more), KNOWN)
