"""The care of a whole garment as a label may state it: no more than every part is known to bear.

The claims are those of the engine. Two things are added. A cloth of which nobody says how it bears
a treatment rules that treatment out, because silence is no permission (what its fibres are known to
bear is asked first); and the iron limit of the cloths bounds the ironing line.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from msgspec import Struct
from msgspec.structs import replace

from advisor.claims.byparts import PARTS, smoothed, spared
from advisor.claims.claimsets import ValueSet, full_set, meet, set_of
from advisor.claims.collect import Place
from advisor.claims.combine import HERE, Verdict
from advisor.claims.conflicts import Conflict
from advisor.claims.hovered import unmarked
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import Said, is_heat_limit
from advisor.claims.valuesets import Span
from advisor.claims.workarounds import kept_off
from advisor.decide.evaluate import judge
from advisor.knowledge.labels import CARE
from advisor.knowledge.model import LIMIT_ASPECT, Aspect, Claim, Knowledge
from advisor.project.garment import Cloth, Garment, Seam, Use

WASH, BLEACH, DRY, IRON, CLEAN = CARE
QUIET = {WASH: "do not wash", BLEACH: "no bleach", DRY: "on a line", CLEAN: "do not dry clean"}
"""What a cloth may have done to it of which nobody speaks; drying in the air is no treatment."""
NEVER = {WASH: "do not wash", CLEAN: "do not dry clean"}
MARKS = ((200.0, "200"), (150.0, "150"), (110.0, "110"))
"""Iron marks up to ISO 3758:2012, °C; a limit between two is written as the lower."""
ORIGIN = "labels"


UNIRONED = "No iron comes on the whole in its last press, and so none later."
HAND_WASH = 40
"""The warmest water of a hand wash, °C (iso-3758-2012)."""


class CareLine(Struct, frozen=True):
    """One treatment: the answer (None where the parts clash), who sets it, and who is silent.

    Attributes:
        word: the answer in the words of the aspect.
        unknown: whether silence alone rules out more.
        setters: the claims that bound it, best founded first.
        silent: cloths of which nobody says how they bear it.
        heard: every claim that was heard.
        at_most: the water of a hand wash, °C, where a part bears less than the usual.
        kept_off: the elastics, buttons and tender cloths that an iron goes round.
    """

    aspect: str
    word: str | None
    unknown: bool
    setters: tuple[Said, ...]
    silent: tuple[str, ...]
    no_steam: bool = False
    at_most: int | None = None
    heard: tuple[Said, ...] = ()
    kept_off: tuple[str, ...] = ()


class Care(Struct, frozen=True):
    """The care of what stays on, of each part that comes off, and where the parts clash."""

    lines: tuple[CareLine, ...]
    apart: dict[str, tuple[CareLine, ...]]
    clashes: tuple[Conflict, ...]

    @property
    def cleaning(self) -> str:
        """`some` where a method is known, `none` where none may be used, else `unknown`.

        Where every part comes off there is no whole to clean: each is told by itself.
        """
        return way_of_cleaning(self.lines) if self.lines or not self.apart else "some"


def way_of_cleaning(lines: tuple[CareLine, ...]) -> str:
    """Whether a garment can be cleaned at all, as far as is known."""
    methods = [line for line in lines if line.aspect in NEVER]
    if any(line.word not in (None, NEVER[line.aspect]) for line in methods):
        return "some"
    return "unknown" if any(line.unknown for line in methods) else "none"


def care_of(judgement: Judgement, knowledge: Knowledge) -> Care:
    """The care of a garment.

    Args:
        judgement: of the garment.
        knowledge: with the aspects, and what fibres bear in cleaning.
    """
    cloths = judgement.garment.cloths
    detached = {name: cloth for name, cloth in cloths.items() if cloth.detachable}
    clashes = tuple(
        c
        for c in judgement.conflicts
        if c.place.scope == "garment" and c.aspect.startswith("care.")
    )
    whole = _loose_parts(judgement.garment)
    apart = {name: _together(seams, judgement, knowledge) for name, seams in whole.items()}
    held = {cloth for seams in whole.values() for seam in seams for cloth in seam.cloths()}
    apart |= {
        name: _alone(cloth, judgement, knowledge)
        for name, cloth in detached.items()
        if name not in held
    }
    return Care(staying_lines(judgement, knowledge), apart, clashes)


def staying_lines(judgement: Judgement, knowledge: Knowledge) -> tuple[CareLine, ...]:
    """The care of what stays on; nothing where every part comes off."""
    staying = [cloth for cloth in judgement.garment.cloths.values() if not cloth.detachable]
    return _lines(judgement, staying, knowledge) if staying else ()


def _loose_parts(garment: Garment) -> dict[str, tuple[Seam, ...]]:
    """The places of each part that comes off whole, as a petticoat does: one label serves it."""
    found = {}
    for part in garment.parts:
        seams = tuple(seam for seam in garment.seams if seam.part == part.name)
        cloths = {cloth for seam in seams for cloth in seam.cloths()}
        if len(cloths) > 1 and all(garment.cloths[name].detachable for name in cloths):
            found[part.name] = seams
    return found


def _together(
    seams: tuple[Seam, ...], judgement: Judgement, knowledge: Knowledge
) -> tuple[CareLine, ...]:
    """The care of a part that comes off whole: its cloths are cleaned together."""
    names = dict.fromkeys(cloth for seam in seams for cloth in seam.cloths())
    cloths = {name: replace(judgement.garment.cloths[name], detachable=False) for name in names}
    garment = replace(judgement.garment, cloths=cloths, seams=seams, parts=())
    return _lines(judge(garment, knowledge), cloths.values(), knowledge)


def _alone(cloth: Cloth, judgement: Judgement, knowledge: Knowledge) -> tuple[CareLine, ...]:
    """The care of a part that comes off: it is cleaned by itself."""
    own = replace(cloth, detachable=False)
    seam = Seam(cloth.name, (Use(cloth.name), Use(cloth.name)))
    garment = replace(judgement.garment, cloths={cloth.name: own}, seams=(seam,))
    return _lines(judge(garment, knowledge), [own], knowledge)


def _lines(
    judgement: Judgement, cloths: Iterable[Cloth], knowledge: Knowledge
) -> tuple[CareLine, ...]:
    place = Place("garment", judgement.garment.name)
    said, kept = judgement.gathered.said[place], list(cloths)
    garment = judgement.garment
    parted = next((i for i in judgement.instructions if i.kind == PARTS), None)
    by_hand = smoothed(parted, garment, knowledge)
    round_it = tuple(sorted({*kept_off(garment, knowledge), *by_hand}))
    beside = [s for s in judgement.gathered.beside if not s.cloths & set(round_it)]
    lines = []
    for id_ in CARE:
        aspect = knowledge.aspects[id_]
        claims = list(said.get(id_, ()))
        if id_ == IRON:
            # Who irons it at home goes round an elastic or a button: the rest counts here. So she
            # does round what only asks to be smoothed with the hands; its must counts all the same.
            heat, moist = (
                [*said.get(about, ()), *(s for s in beside if s.claim.aspect == about)]
                for about in (LIMIT_ASPECT, "press.moisture")
            )
            heat = [s for s in heat if s.claim.strength == "must" or not _of(s, by_hand)]
            line = _ironing(aspect, claims, heat, moist, knowledge)
            hands = _left_to_hands(aspect, judgement.verdicts.get(place, {}))
            if line.word not in (None, aspect.words[0]) and parted is None and hands:
                line = _ironing(aspect, [*claims, *hands], heat, moist, knowledge)
            ironed = line.word not in (None, aspect.words[0])
            off = tuple(sorted({*round_it, *spared(parted)})) if ironed else ()
            lines.append(replace(line, kept_off=off))
        else:
            lines.append(_line(aspect, claims, kept, knowledge))
    return tuple(lines)


def _line(
    aspect: Aspect, claims: list[Said], cloths: list[Cloth], knowledge: Knowledge
) -> CareLine:
    """A treatment that is bounded by claims and by silence."""
    # What is said of two cloths together tells nothing of how the one bears it.
    heard = {name for said in claims if len(said.cloths) == 1 for name in said.cloths}
    silent = []
    for cloth in cloths:
        if cloth.name not in heard:
            known = _known_to_bear(aspect, cloth, knowledge)
            claims += known
            silent += [] if known else [cloth.name]
    aside = {cloth.name for cloth in cloths if cloth.put_in}
    line = _met(aspect, claims, silent)
    # What is true of the cloth itself says more than what is true of a hook on it.
    first = sorted(line.setters, key=lambda said: bool(said.cloths) and said.cloths <= aside)
    line = replace(line, setters=tuple(first) if line.word is not None else line.setters)
    return replace(line, at_most=_hand_warm(aspect, claims), heard=tuple(claims))


def _hand_warm(aspect: Aspect, claims: list[Said]) -> int | None:
    """The coolest water that a part is said to bear, °C, where a hand wash may be warmer."""
    if aspect.id != WASH:
        return None
    words = (aspect.words[_strongest(set_of(said.claim))] for said in claims)
    degrees = [int(word.split()[0]) for word in words if word.split()[0].isdigit()]
    coolest = min(degrees, default=HAND_WASH)
    return coolest if coolest < HAND_WASH else None


def _met(aspect: Aspect, claims: list[Said], silent: list[str]) -> CareLine:
    """What the claims leave of a treatment, and what silence leaves of that."""
    left = _meet(aspect, claims)
    if left.is_empty:
        return CareLine(aspect.id, None, False, _bounds(aspect, claims), tuple(silent))
    spoken = _strongest(left)
    if not silent:
        return CareLine(
            aspect.id, aspect.words[spoken], False, _setters(aspect, claims, spoken), ()
        )
    quiet = aspect.words.index(QUIET[aspect.id])
    milder = _milder(aspect, spoken, quiet)
    if milder == spoken:
        return CareLine(
            aspect.id, aspect.words[spoken], False, _setters(aspect, claims, spoken), tuple(silent)
        )
    return CareLine(aspect.id, aspect.words[milder], True, (), tuple(silent))


def _milder(aspect: Aspect, one: int, other: int) -> int:
    """The milder of two answers: options are listed from the hardest, scales from the mildest."""
    return max(one, other) if aspect.kind == "options" else min(one, other)


def _meet(aspect: Aspect, claims: Iterable[Said]) -> ValueSet:
    left = full_set(aspect)
    for said in claims:
        left = meet(left, set_of(said.claim))
    return left


def _strongest(left: ValueSet) -> int:
    """The hardest treatment of a set."""
    if isinstance(left, Span):
        return int(left.high)
    return left.options()[0]


def _setters(aspect: Aspect, claims: list[Said], word: int) -> tuple[Said, ...]:
    """The claims that keep a treatment from being harder; none where nothing does."""
    found = [s for s in _bounds(aspect, claims) if _strongest(set_of(s.claim)) == word]
    return tuple(found) or _bounds(aspect, claims)[:2]


def _bounds(aspect: Aspect, claims: Iterable[Said]) -> tuple[Said, ...]:
    """The claims by their weight: the mildest answer, musts, what is sure, then the source."""
    strength = {"must": 0, "should": 1, "may": 2}
    sign = 1 if aspect.kind == "scale" else -1

    def key(said: Said) -> tuple[object, ...]:
        hardest = sign * _strongest(set_of(said.claim))
        weight = (strength[said.claim.strength], not said.certain, said.claim.rank)
        return (hardest, *weight, said.key)

    return tuple(sorted(dict.fromkeys(claims), key=key))


def _known_to_bear(aspect: Aspect, cloth: Cloth, knowledge: Knowledge) -> list[Said]:
    """What every fibre that a cloth may hold is known to bear; nothing where one is not known."""
    found = []
    about = frozenset((cloth.name,))
    for fibre in dict.fromkeys(f for mix in cloth.mixes for f, _ in mix):
        rows = [r for r in knowledge.labels.bears.get(fibre, ()) if r[0] == aspect.id]
        if not rows:
            return []
        for row in rows:
            span = tuple(row[1]) if row[1] else None
            claim = Claim(
                row[0],
                span,
                row[2],
                None,
                row[4],
                row[5],
                row[6],
                tuple(row[7]),
                row[8],
                f"fibre {fibre}",
            )
            found.append(Said(cloth.name, claim, (), True, about))
    return found


def _left_to_hands(aspect: Aspect, whole: Mapping[str, Verdict]) -> list[Said]:
    """What the last press says of every later one, where no iron comes on the whole."""
    heat = whole.get(LIMIT_ASPECT)
    if heat is None or not unmarked(heat):
        return []
    about = (aspect.id, (0.0, 0.0), 0, None, "should", "damage", UNIRONED, ("derived",))
    return [Said(HERE, Claim(*about, 0, "this garment", ends=("seam", "seam")))]


def _ironing(
    aspect: Aspect,
    claims: list[Said],
    heat: Iterable[Said],
    moisture: Iterable[Said],
    knowledge: Knowledge,
) -> CareLine:
    """The ironing line: what is said of it, and the lowest iron limit of any part."""
    limits = sorted(
        (s for s in heat if is_heat_limit(s.claim)),
        key=lambda s: (_highest(s), not s.certain, s.claim.rank, s.key),
    )
    if limits:
        word = next((w for limit, w in MARKS if _highest(limits[0]) >= limit), aspect.words[0])
        at = float(aspect.words.index(word))
        claims = [
            *claims,
            *(_as_ironing(aspect, s, at) for s in limits if _highest(s) == _highest(limits[0])),
        ]
    if not claims:
        return CareLine(aspect.id, aspect.words[0], True, (), ())
    left = _meet(aspect, claims)
    if left.is_empty:
        return CareLine(aspect.id, None, False, _bounds(aspect, claims), ())
    spoken = _strongest(left)
    steam = float(knowledge.aspects["press.moisture"].words.index("steam"))
    dry = any(
        s.claim.strength == "must"
        and s.claim.risk != "result"
        and s.claim.span
        and s.claim.span[1] < steam
        for s in moisture
    )
    return CareLine(
        aspect.id,
        aspect.words[spoken],
        False,
        _setters(aspect, claims, spoken),
        (),
        dry,
        heard=tuple(claims),
    )


def _of(said: Said, names: frozenset[str]) -> bool:
    return bool(said.cloths) and said.cloths <= names


def _highest(said: Said) -> float:
    return (said.claim.span or (0.0, 0.0))[1]


def _as_ironing(aspect: Aspect, said: Said, at: float) -> Said:
    """A limit of the iron as a mark of the label, and why that is lower where it is."""
    limit, marks = _highest(said), [mark for mark, _ in MARKS]
    above = min((mark for mark in marks if mark > limit), default=limit)
    why = said.claim.why
    if limit not in marks and limit > min(marks) and why:
        why = f"{why} It bears {{{limit:g} °C}}, less than the mark of {{{above:g} °C}}."
    claim = replace(said.claim, aspect=aspect.id, span=(0.0, at), best=None, why=why)
    return replace(said, claim=claim)
