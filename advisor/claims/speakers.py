"""Who speaks without being asked: fibres, cloths, notions, machines, and the maker herself."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct, field
from msgspec.structs import replace

from advisor.claims.claimsets import insisted
from advisor.claims.conditions import Fact
from advisor.claims.drawn import drawn_by
from advisor.claims.lighter import as_weighed
from advisor.claims.steaming import as_wish, lies_unpressed
from advisor.claims.valuesets import Span
from advisor.knowledge.model import COLD, LIMIT_ASPECT, Aspect, Claim, Entry, Fibre, Knowledge
from advisor.knowledge.purposes import GUARDS
from advisor.project.garment import Cloth, Garment, Seam
from advisor.project.mainfibre import main_fibre
from advisor.units import show

YOU, OVERLOCKED = "you", "overlocked"
HEAT = "heat model"
"""The origin of what only the calculation of heat through the layers says."""
EASED = "You let it go further, because:"
"""Stands in the reason of every limit that a maker has loosened for her own cloth."""
HOTTEST = 999.0
WALKED_ROUND = frozenset({"zip", "button", "elastic", "hook-and-loop"})
"""Kinds of notion that end at an edge or a row, so that an iron goes round them."""
KEPT_OFF = frozenset({"elastic", "button"})
"""What whoever irons it goes round as well, as the last press does."""
IRONING = "care.iron"
HEAT_ASPECTS = frozenset({LIMIT_ASPECT, "press.moisture"})


class Said(Struct, frozen=True):
    """A claim said in a place: by whom, on what facts, and about which cloths."""

    who: str
    claim: Claim
    facts: tuple[Fact, ...] = ()
    certain: bool = True
    cloths: frozenset[str] = field(default_factory=frozenset)

    def __hash__(self) -> int:
        """Of who and what; on which facts hardly ever makes a difference."""
        return hash((self.who, self.claim, self.cloths))

    @property
    def key(self) -> tuple[str, str, str, str]:
        """A total order that does not depend on any input order."""
        claim = self.claim
        return (claim.origin, self.who, claim.why, f"{claim.span} {claim.mask} {claim.best}")


def asked(aspect: Aspect, seam: Seam) -> bool:
    """Whether a seam is asked an aspect: none of the machine where it is sewn by hand."""
    return aspect.asked_of != ("machine" if seam.by_hand else "hand")


def is_heat_need(claim: Claim) -> bool:
    """Whether a claim asks for heat or moisture, and does not only bound them."""
    return (
        claim.aspect in HEAT_ASPECTS
        and claim.span is not None
        and claim.span[0] > COLD * (claim.aspect == LIMIT_ASPECT)
    )


def holds_back(claim: Claim, aspect: Aspect) -> bool:
    """Whether a claim only keeps from harm or bounds a treatment, and asks for nothing.

    Such a claim counts where its condition merely may hold: unknown is never taken for safe.
    """
    if claim.strength == "must" and claim.risk != "result":
        return True
    if not aspect.milder_safe:
        return GUARDS.issuperset(claim.purposes)
    lowest = COLD if claim.aspect == LIMIT_ASPECT else 0.0
    return claim.span is None or claim.span[0] <= lowest


def held_back(claim: Claim, aspect: Aspect) -> Claim | None:
    """What counts of a claim where its condition only may hold: what guards, and no wish."""
    if holds_back(claim, aspect):
        return claim
    left = insisted(aspect, claim) if claim.guards else None
    return replace(claim, span=(left.low, left.high)) if isinstance(left, Span) else None


def is_heat_limit(claim: Claim) -> bool:
    """Whether a claim guards a layer against too much heat."""
    return claim.aspect == LIMIT_ASPECT and claim.purposes[1] in GUARDS


STEAM_C = 100.0
"""What steam has at the least, °C; a layer that bears less gets none."""
_STEAMED = {
    "press.moisture": "steam",
    "press.motion": "hover with steam",
    "prepare.preshrink": "steam",
}


def no_steam(said: Said, knowledge: Knowledge) -> list[Said]:
    """What a heat limit below 100 °C says of steam; that no iron is used says nothing of it."""
    aspects = knowledge.aspects
    claim = said.claim
    if not is_heat_limit(claim) or not claim.span or not COLD < claim.span[1] < STEAM_C:
        return []
    steam, bears = (show("temperature", c, knowledge.system) for c in (STEAM_C, claim.span[1]))
    why = f"Steam has {steam} and more, and this bears {bears}."
    found = []
    for name, option in _STEAMED.items():
        if name not in aspects:
            continue
        at = aspects[name].words.index(option)
        scale = aspects[name].kind == "scale"
        span = (0.0, float(at - 1)) if scale else None
        mask = 0 if scale else ((1 << len(aspects[name].words)) - 1) & ~(1 << at)
        word = replace(
            claim, aspect=name, span=span, mask=mask, best=None, why=why, ends=("cloth", "cloth")
        )
        found.append(replace(said, claim=word))
    return found


def limit_claim(fibre: Fibre) -> Claim:
    """The iron limit of a fibre as a claim; a lower value of weaker standing is where to start."""
    counting = [c for c in fibre.ceilings if c.good] or list(fibre.ceilings)
    lowest = min(c.max for c in counting)
    strictest = [c for c in counting if c.max == lowest]
    sources = tuple(dict.fromkeys(s for c in strictest for s in c.sources))
    why = f"{fibre.name} is spoilt by a hotter iron".capitalize() + "."
    best = fibre.start if fibre.start < fibre.limit else None
    return Claim(
        LIMIT_ASPECT,
        (COLD, fibre.limit),
        0,
        best,
        "must",
        "damage",
        why,
        sources,
        0,
        f"fibre {fibre.id}",
    )


def cloth_says(cloth: Cloth, knowledge: Knowledge) -> list[Said]:
    """What a cloth says of itself, and what its fibres say, known or possible."""
    entry = knowledge.entries[cloth.entry]
    about = frozenset((cloth.name,))
    said = [Said(cloth.name, claim, (), True, about) for claim in as_weighed(cloth, entry)]
    laid = [knowledge.entries[id_] for id_ in cloth.laid]
    said += [
        Said(cloth.name, heard, (), True, about)
        for other in laid
        for claim in other.claims
        if (heard := held_back(claim, knowledge.aspects[claim.aspect])) is not None
    ]
    lid = min(map(_own_lid, (entry, *laid)))
    unpressed = lies_unpressed(entry, knowledge)
    for word in _fibres_say(cloth, knowledge, about):
        claim = word.claim
        if is_heat_need(claim) and claim.aspect == LIMIT_ASPECT and (claim.span or (0.0,))[0] > lid:
            continue  # a film or foam on cotton is not pressed as cotton is
        wish = unpressed and is_heat_need(claim)
        said.append(replace(word, claim=as_wish(claim)) if wish else word)
    return said


def _own_lid(entry: Entry) -> float:
    """The iron limit that a cloth sets for its own make, whatever its fibres bear, °C."""
    lids = [c.span[1] for c in entry.claims if is_heat_limit(c) and c.span]
    return min(lids, default=HOTTEST)


def _fibres_say(cloth: Cloth, knowledge: Knowledge, about: frozenset[str]) -> list[Said]:
    """Each fibre's limit counts at any share; its wishes only where it is surely the main one."""
    said: list[Said] = []
    main, most = main_fibre(cloth.mixes)
    rules = most >= RULING_SHARE
    limit = min(knowledge.fibres[f].limit for mix in cloth.mixes for f, _ in mix)
    for fibre_id in dict.fromkeys(f for mix in cloth.mixes for f, _ in mix):
        fibre = knowledge.fibres[fibre_id]
        certain = all(any(f == fibre_id for f, _ in mix) for mix in cloth.mixes)
        facts = (Fact(cloth.name, "fibre", fibre.name, certain),)
        said.append(Said(cloth.name, limit_claim(fibre), facts, certain, about))
        for claim in fibre.claims:
            main_says = fibre_id == main and (rules or claim.risk != "result")
            main_says = main_says and not (_needs_more(claim, limit) and len(cloth.mixes) > 1)
            heard = claim if main_says else held_back(claim, knowledge.aspects[claim.aspect])
            if heard is not None:
                said.append(Said(cloth.name, heard, facts, certain, about))
    return said


def _needs_more(claim: Claim, limit: float) -> bool:
    """Whether a need of heat goes beyond what something else that may be in the cloth bears."""
    return (
        is_heat_need(claim)
        and claim.strength == "must"
        and claim.aspect == LIMIT_ASPECT
        and (claim.span or (0.0,))[0] > limit
    )


RULING_SHARE = 80.0
"""From this percentage on a fibre has to be pressed as itself, whatever is mixed in (estimate)."""


FINISH, ZIGZAG = "seam.finish", "304"
OVERLOCKS = frozenset({"503", "504", "514", "516"})
"""Stitches whose knife trims the edge that they sew."""
STAYS = {"stay-tape": "stay tape", "clear-elastic": "clear elastic"}
"""What a notion among the layers of a seam is to it."""
STITCHED_FLAT = frozenset({"casing", "laid on", "shirring"})
"""Families of places, and a kind, that are stitched through the cloth and not along its edge."""


def seam_says(
    seam: Seam, garment: Garment, knowledge: Knowledge, machine: list[Said]
) -> list[Said]:
    """What the machine, the kit, the notions in the seam and the maker's own choices say."""
    said: list[Said] = []
    if seam.by_hand:
        said.append(option("stitch.type", ["hand"], "It is sewn by hand.", knowledge))
    else:
        said += machine
    about = knowledge.places.kinds.get(seam.place)
    if about is not None and {about.family, about.id} & STITCHED_FLAT and not seam.by_hand:
        said.append(_stitched_flat(about.name, knowledge))
        if about.id == "applique":
            said.append(_zigzagged(about.name, knowledge))
    cord, why = drawn_by(seam, garment, knowledge)
    if cord:
        said.append(option("edge.drawn", ["cord"], why, knowledge, cord))
    for cloth in seam.cloths():
        said += _put_here(cloth, knowledge.entries[garment.cloths[cloth].entry], knowledge)
    if seam.cold:
        cold = _choice(LIMIT_ASPECT, COLD, knowledge)
        by_fingers = replace(cold.claim, best=None, why="It is finger-pressed.")
        said.append(replace(cold, claim=by_fingers))
    for aspect, answer in seam.choices:
        if asked(knowledge.aspects[aspect], seam):
            said.append(_choice(aspect, answer, knowledge))
    return said


def _put_here(name: str, entry: Entry, knowledge: Knowledge) -> Iterator[Said]:
    """What a notion is to its seam: a stay or an interfacing."""
    why = f"The project puts {name} here."
    if stay := STAYS.get(entry.id):
        yield _laid_in(stay, name, knowledge)
    if kind := interfacing_kind(entry):
        yield option("interfacing.kind", [kind], why, knowledge, name)


def _laid_in(stay: str, name: str, knowledge: Knowledge) -> Said:
    """The stay among the layers of a seam is the one: none is laid beside it."""
    said = option("seam.support", [stay], f"The project puts {name} here.", knowledge, name)
    return replace(said, claim=replace(said.claim, strength="should", risk="", rank=0))


def _stitched_flat(name: str, knowledge: Knowledge) -> Said:
    """A channel or a pocket is stitched along its edge, which an overlocker would cut off."""
    rest = [word for word in knowledge.aspects["stitch.type"].words if word not in OVERLOCKS]
    said = option("stitch.type", rest, "It is stitched flat, along its edge.", knowledge)
    claim = replace(said.claim, strength="should", origin="place", sources=("common-practice",))
    return Said(name, claim)


def _zigzagged(name: str, knowledge: Knowledge) -> Said:
    """A cut edge that is laid on is covered by a zigzag, where its cloth bears that."""
    why = "A zigzag covers the cut edge of what is laid on."
    said = option("stitch.type", ["304", "hand"], why, knowledge)
    claim = replace(said.claim, strength="may", risk="", origin="place")
    return Said(name, replace(claim, sources=("common-practice",)))


def machine_says(garment: Garment, knowledge: Knowledge) -> list[Said]:
    """What the machine and the kit say of every seam that they sew."""
    maker = garment.maker
    machine = knowledge.machines[maker.machine]
    said = [Said(machine.name, claim) for claim in machine.claims]
    stitches = list(machine.stitches)
    why = "Your machines make no other stitch."
    if ZIGZAG not in stitches and maker.machine != "hand":
        rest = [word for word in knowledge.aspects[FINISH].words if word != "zigzag"]
        said.append(option(FINISH, rest, f"{why[:-1]}: no zigzag.", knowledge, machine.name))
    if maker.overlocker:
        stitches += knowledge.machines[maker.overlocker].stitches
    else:
        said += _no_overlocker(garment, knowledge, machine.name)
    said.append(option("stitch.type", stitches, why, knowledge, machine.name))
    if maker.feet is not None:
        why = "These are the feet that you have."
        known = knowledge.aspects["machine.foot"].words
        feet = dict.fromkeys(["standard", *(foot for foot in maker.feet if foot in known)])
        said.append(option("machine.foot", list(feet), why, knowledge, "your kit"))
    return said


def _no_overlocker(garment: Garment, knowledge: Knowledge, machine: str) -> list[Said]:
    """Edges are overlocked by an overlocker: where none is named none is counted on.

    Who has an edge overlocked and names no overlocker has one all the same.
    """
    stated = "overlocker" not in garment.maker.assumed
    chosen = (answer for seam in garment.seams for _, answer in seam.choices)
    if not stated and OVERLOCKED in chosen:
        return []
    why = "You have no overlocker." if stated else "No overlocker is named."
    said = []
    for aspect in ("seam.kind", FINISH):
        rest = [word for word in knowledge.aspects[aspect].words if word != OVERLOCKED]
        said.append(option(aspect, rest, why, knowledge, machine))
    return said


def interfacing_kind(entry: Entry) -> str:
    """The interfacing that a notion is."""
    if entry.kind == "fusible":
        return "fusible knit" if entry.structure == "knit" else "fusible"
    if entry.kind == "sew-in":
        return "sew-in woven" if entry.structure == "woven" else "sew-in non-woven"
    return {"low-temperature fusible": "low-temperature fusible", "canvas": "hair canvas"}.get(
        entry.kind, ""
    )


def option(aspect: str, words: list[str], why: str, knowledge: Knowledge, who: str = YOU) -> Said:
    """What somebody asks for of an aspect: these words of its list, as a must of the maker's."""
    options = knowledge.aspects[aspect].words
    mask = sum(1 << options.index(word) for word in dict.fromkeys(words) if word in options)
    claim = Claim(aspect, None, mask, None, "must", "result", why, ("derived",), 2, "maker")
    return Said(who, claim)


def _choice(aspect: str, answer: str | float, knowledge: Knowledge) -> Said:
    """What the maker has fixed; only a must stands against it."""
    about = knowledge.aspects[aspect]
    if about.kind == "options":
        return option(aspect, [str(answer)], "You have chosen it.", knowledge)
    at = float(about.words.index(str(answer))) if about.kind == "scale" else float(answer)
    claim = Claim(
        aspect, (at, at), 0, at, "must", "result", "You have chosen it.", ("derived",), 2, "maker"
    )
    return Said(YOU, claim)


def eased(said: Said, loosened: list[tuple[str, float, str]]) -> Said:
    """A limit of a cloth, opened as far as its maker wants it with a written reason.

    Args:
        said: what is said of the cloth.
        loosened: aspect, value (a number, or the place of a word) and reason.
    """
    claim = said.claim
    if not claim.guards:
        return said
    for aspect, value, reason in loosened:
        if aspect != claim.aspect:
            continue
        if claim.span is None:
            mask, span = claim.mask | 1 << int(value), None
        else:
            mask, span = 0, (min(claim.span[0], value), max(claim.span[1], value))
        if (mask, span) != (claim.mask, claim.span):
            why = f"{claim.why} {EASED} {reason.rstrip('.')}."
            claim = replace(claim, mask=mask, span=span, why=why)
    return replace(said, claim=claim)
