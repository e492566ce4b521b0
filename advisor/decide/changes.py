"""What a remedy may change, one function each: from a case to another garment, or to none.

A garment that comes out is just what its project says once the remedy's lines are written into
it: nothing is changed here that a project file cannot say.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.valuesets import Choice
from advisor.claims.workarounds import GLUED
from advisor.construction.bulk import picked
from advisor.construction.lessen import lessened
from advisor.decide.apart import judge_apart
from advisor.decide.case import Case, stated, without_unused
from advisor.errors import InputError
from advisor.project.cloths import notion_cloth
from advisor.project.facts import NO_IRON
from advisor.project.garment import Cloth, Garment, Seam, Use
from advisor.project.glue_first import fusing_flat
from advisor.project.placing import LONE


def _press_apart(case: Case) -> Garment | None:
    """The cloths that need heat get it before anything tender is joined to them."""
    if any(case.entry(n).kind != "cloth" for n in case.needy) or case.needy & case.tender:
        return None
    return case.each(lambda seam: _earlier(seam, case.needy))


def _earlier(seam: Seam, needy: frozenset[str]) -> Seam | None:
    here = needy & set(seam.cloths())
    return replace(seam, apart=seam.apart | here) if here else None


def _fuse_first(case: Case) -> Garment | None:
    """The interfacing is fused to a neighbour that bears it before the tender layer is joined."""
    glues = frozenset(case.notions(GLUED))
    if not all(case.neighbour(seam) for seam in case.seams):
        return None
    return case.each(lambda seam: _earlier(seam, glues))


def _swap_notion(case: Case) -> Garment | None:
    """Another notion instead of the one that clashes."""
    to = case.knowledge.entries.get(str(case.remedy.change.get("to")))
    olds = set(case.notions(case.remedy.needs.get("notion", [])))
    if to is None or not olds or any(case.entry(old).id == to.id for old in olds):
        return None
    said = str(case.remedy.change.get("named", to.name))
    new = notion_cloth(said, said, case.knowledge)
    there = case.before.garment.cloths.get(said, new)
    if there.entry == to.id and case.knowledge.entries[to.id].kind != "cloth":
        new = there  # the same is in another place already
    elif there != new:  # hers has that name already
        new = replace(new, name=f"{said} (notion)")
    return _instead(case, olds, new)


def _instead(case: Case, olds: set[str], new: Cloth) -> Garment | None:
    """The garment with a new notion wherever the old ones are; None where one seam has none."""

    def swapped(seam: Seam) -> Seam | None:
        uses = tuple(Use(new.name) if u.cloth in olds else u for u in seam.uses)
        return replace(seam, uses=uses, apart=seam.apart - olds) if uses != seam.uses else None

    changed = case.each(swapped, [s for s in case.garment.seams if olds & set(s.cloths())])
    if changed is None:
        return None
    changed = replace(changed, cloths={**changed.cloths, new.name: new})
    if not changed.single:  # a project that is read says of itself what is fused flat
        changed = fusing_flat(changed, case.knowledge)
    return without_unused(changed, case.knowledge)


def _buy_of(case: Case) -> Garment | None:
    """A notion that rules a treatment out, of the first fibre that it is sold in and does not."""
    against = {s.claim.aspect: s.cloths for s in case.conflict.clash}
    for name in case.notions(case.remedy.needs.get("notion", [])):
        barred = [aspect for aspect, names in against.items() if name in names]
        for mix in case.entry(name).mixes if barred else ():
            shares = (f"{s:g} % {case.knowledge.fibres[fibre].name}" for fibre, s in mix if s)
            said = f"{case.entry(name).name} of {', '.join(shares)}"
            new = _sold_as(said, case)
            if new is not None and not any(_rules_out(new, aspect, case) for aspect in barred):
                case.bought, case.replaced = new.name, name
                return _instead(case, {name}, new)
    return None


def _sold_as(said: str, case: Case) -> Cloth | None:
    """A notion of a fibre; None where a project could not say it so."""
    try:
        return notion_cloth(said, said, case.knowledge)
    except InputError:
        return None


def _rules_out(cloth: Cloth, aspect: str, case: Case) -> bool:
    """Whether a cloth by itself is to have none of a treatment: the last word of the aspect."""
    seam = Seam("alone", (Use(cloth.name),))
    alone = replace(case.garment, seams=(seam,), cloths={cloth.name: cloth})
    found = next(
        v for p, v in judge_apart(alone, case.knowledge).verdicts.items() if p.scope == "garment"
    )
    verdict = found.get(aspect)
    return verdict is not None and verdict.advised == Choice(1 << len(verdict.aspect.words) - 1)


def _drop_notion(case: Case) -> Garment | None:
    """The seams without the notion that clashes."""
    olds = set(case.notions(case.remedy.needs.get("notion", [])))

    def dropped(seam: Seam) -> Seam | None:
        uses = tuple(use for use in seam.uses if use.cloth not in olds)
        if not uses or uses == seam.uses or not _fastens(seam.place, uses):
            return None
        if len(uses) == 1 and seam.place not in LONE:  # read anew, it is folded on itself
            assumed = ("layers", *(a for a in seam.assumed if a != "layers"))
            return replace(seam, uses=uses * 2, assumed=assumed)
        return replace(seam, uses=uses)

    def _fastens(place: str, uses: tuple[Use, ...]) -> bool:
        """Whether a fastening still has something to fasten with."""
        kind = case.knowledge.places.kinds.get(place)
        of_cloth = all(case.entry(use.cloth).kind == "cloth" for use in uses)
        return kind is None or kind.family != "fastening" or not of_cloth

    changed = case.each(dropped)
    return None if changed is None else without_unused(changed, case.knowledge)


def _finger_press(case: Case) -> Garment | None:
    """No iron on these seams at all; never where a glue would then not take."""
    motion = case.knowledge.aspects.get("press.motion")
    known = motion is not None and NO_IRON in motion.words

    def cold(seam: Seam) -> Seam | None:
        if any(case.entry(n).kind in GLUED and n not in seam.apart for n in seam.cloths()):
            return None
        return stated(seam, "pressing", NO_IRON) if known else replace(seam, cold=True)

    return case.each(cold)


def _hand_sew(case: Case) -> Garment | None:
    """The seams are sewn by hand, so that no machine has a say."""
    return case.each(lambda seam: stated(seam, "stitched by", "hand"))


def _free_choice(case: Case) -> Garment | None:
    """The maker gives up what she had fixed on these aspects."""

    def freed(seam: Seam) -> Seam | None:
        for key in _keys_of(case.chosen, seam):
            seam = stated(seam, key, None)
        return replace(seam, choices=tuple(c for c in seam.choices if c[0] not in case.chosen))

    return case.each(freed)


def _keys_of(aspects: frozenset[str], seam: Seam) -> list[str]:
    from advisor.project.facts import CHOICES

    return [key for key, aspect in CHOICES.items() if aspect in aspects and key in seam.facts]


def _get_foot(case: Case) -> Garment | None:
    """The foot that the seam wants is borrowed or bought."""
    maker = case.garment.maker
    wanted = [
        case.knowledge.aspects["machine.foot"].words[i]
        for said in case.conflict.clash
        if said.claim.origin != "maker"
        for i in range(said.claim.mask.bit_length())
        if said.claim.mask >> i & 1
    ]
    if maker.feet is None or not wanted:
        return None
    return replace(case.garment, maker=replace(maker, feet=(*maker.feet, wanted[0])))


def _detach(case: Case) -> Garment | None:
    """What clashes in the whole garment is made to come off; never the cloth it is made of."""
    loose = case.loose()
    if case.conflict.place.scope != "garment" or not loose or len(case.garment.cloths) < 2:
        return None
    cloths = {
        name: replace(cloth, detachable=True) if name == loose[0] else cloth
        for name, cloth in case.garment.cloths.items()
    }
    return replace(case.garment, cloths=cloths)


def _lessen_bulk(case: Case) -> Garment | None:
    """The seam built so that less lies under the foot, or sewn so that more can."""
    how = str(case.remedy.change.get("how"))
    if how == "overlock" and not case.garment.maker.overlocker:
        return None
    kind = picked(case.before.verdicts[case.conflict.place], "seam.kind")
    changed = case.each(lambda seam: lessened(seam, how, kind))
    return _crossed_plain(case, changed) if changed is not None and how == "open" else changed


def _crossed_plain(case: Case, garment: Garment) -> Garment:
    """The seams that are crossed made plain, where they fold their allowances in."""
    crossed = {name for seam in case.seams for name in seam.making.crosses}

    def plain(seam: Seam) -> Seam:
        if seam.name not in crossed:
            return seam
        kind = picked(case.before.verdicts[Place("seam", seam.name)], "seam.kind")
        return lessened(seam, "plain", kind) or seam

    return replace(garment, seams=tuple(map(plain, garment.seams)))


CHANGES: dict[str, Callable[[Case], Garment | None]] = {
    "press apart": _press_apart,
    "fuse first": _fuse_first,
    "swap notion": _swap_notion,
    "buy of": _buy_of,
    "drop notion": _drop_notion,
    "finger-press": _finger_press,
    "hand-sew": _hand_sew,
    "free choice": _free_choice,
    "get foot": _get_foot,
    "detach": _detach,
    "lessen bulk": _lessen_bulk,
}
"""Everything that a remedy can do."""
REPLACING = frozenset({"swap notion", "buy of", "drop notion"})
"""Changes after which a notion is no longer there, or is bought as another."""
