"""Applies remedies to a copy of the garment, re-runs it, and keeps those that cure.

A remedy is offered only when its conflict is gone and none is new. What a remedy may change is
a closed list, one function each; the knowledge says which of them, when, and at what price.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from advisor.claims.conflicts import Conflict
from advisor.claims.judgement import Cure, Judgement
from advisor.claims.speakers import YOU, is_heat_need
from advisor.construction.bulk import picked
from advisor.construction.lessen import lessened
from advisor.decide.evaluate import judge
from advisor.knowledge.model import LIMIT_ASPECT, Knowledge, Remedy
from advisor.project.facts import CHOICES
from advisor.project.garment import Cloth, Garment, Seam, Use


def cures_of(
    conflict: Conflict, before: Judgement, knowledge: Knowledge, tried: list[Judgement]
) -> tuple[Cure, ...]:
    """The remedies that were tried and cure a conflict, cheapest first.

    `tried` holds what was judged for other conflicts of the same garment, and grows.
    """
    cures = []
    known = {c.key for c in before.conflicts}
    for remedy in knowledge.remedies:
        if not any(conflict.aspect.startswith(aspect) for aspect in remedy.cures):
            continue
        case = _Case(conflict, before, knowledge, remedy)
        changed = _CHANGES[str(remedy.change["do"])](case) if case.fits() else None
        if changed is None or changed == before.garment:
            continue
        after = next((t for t in tried if t.garment == changed), None)
        if after is None:
            after = judge(changed, knowledge, before)
            tried.append(after)
        left = {c.key for c in after.conflicts}
        if conflict.key not in left and left < known:
            cures.append(Cure(remedy.id, case.words(), after, remedy.effort, remedy.look))
    return tuple(sorted(cures, key=lambda c: (c.effort + 2 * c.look, c.remedy)))


def attempt(
    remedy: Remedy, conflict: Conflict, before: Judgement, knowledge: Knowledge
) -> tuple[Garment, dict[str, str]] | None:
    """A garment with a remedy applied, and the words of its sentence; not judged yet."""
    case = _Case(conflict, before, knowledge, remedy)
    changed = _CHANGES[str(remedy.change["do"])](case) if case.fits() else None
    return None if changed is None or changed == before.garment else (changed, case.words())


class _Case:
    """One conflict and one remedy: who needs, who is tender, and where."""

    def __init__(
        self, conflict: Conflict, before: Judgement, knowledge: Knowledge, remedy: Remedy
    ) -> None:
        self.conflict = conflict
        self.before = before
        self.knowledge = knowledge
        self.remedy = remedy
        self.garment = before.garment
        self.seam = next(
            (
                s
                for s in self.garment.seams
                if conflict.place.scope == "seam" and s.name == conflict.place.name
            ),
            None,
        )
        verdict = before.verdicts[conflict.place].get(conflict.aspect)
        said = verdict.clash if verdict and verdict.clash else conflict.clash
        lids = [s.claim.span[1] for s in conflict.clash if s.claim.span]
        self.needy = _about(
            s.cloths
            for s in said
            if is_heat_need(s.claim) and s.claim.span and s.claim.span[0] > min(lids)
        )
        self.tender = _about(
            s.cloths for s in conflict.clash if s.claim.risk != "result" and s.cloths
        )
        self.chosen = any(s.claim.origin == "maker" for s in conflict.clash)

    def fits(self) -> bool:
        """Whether the remedy's own conditions hold."""
        needs = self.remedy.needs
        if needs.get("a need for heat") == "yes" and not self.needy:
            return False
        if needs.get("a choice of the maker") == "yes" and not self.chosen:
            return False
        if needs.get("place") not in (None, self.conflict.place.scope):
            return False
        kinds = needs.get("notion")
        if kinds is not None and not self.notions(kinds):
            return False
        entries = {self.entry(name).id for name in self.cloths()}
        if entries & set(needs.get("not", ())):
            return False
        if "only" in needs and not entries & set(needs["only"]):
            return False
        families = needs.get("family")
        return families is None or bool(self.of_family(families))

    def notions(self, kinds: list[str]) -> list[str]:
        """The notions of some kinds in the seam."""
        return [name for name in self.cloths() if self.entry(name).kind in kinds]

    def of_family(self, families: list[str]) -> list[str]:
        """The cloths of some families that clash."""
        return [name for name in sorted(self.tender) if self.entry(name).family in families]

    def cloths(self) -> tuple[str, ...]:
        """The cloths of the place."""
        return self.seam.cloths() if self.seam else tuple(sorted(self.garment.cloths))

    def entry(self, name: str):  # type: ignore[no-untyped-def]
        """What a cloth is."""
        return self.knowledge.entries[self.garment.cloths[name].entry]

    def words(self) -> dict[str, str]:
        """What the remedy's sentence may name."""
        notion = [n for n in self.cloths() if self.entry(n).kind != "cloth"]
        fused = _neighbours(self) if self.seam else ""
        return {
            "needy": _join(self.needy),
            "tender": _join(self.tender - self.needy or self.tender),
            "notion": _join(frozenset(notion)),
            "place": self.conflict.place.name,
            "choice": self.conflict.aspect,
            "neighbour": fused,
            "you": ", ".join(s.who for s in self.conflict.clash if s.who != YOU),
        }

    def with_seam(self, seam: Seam, cloths: dict[str, Cloth] | None = None) -> Garment:
        """The garment with this seam changed."""
        seams = tuple(seam if s.name == seam.name else s for s in self.garment.seams)
        return replace(self.garment, seams=seams, cloths=cloths or self.garment.cloths)


def _about(groups) -> frozenset[str]:  # type: ignore[no-untyped-def]
    return frozenset(name for group in groups for name in group)


def _join(names: frozenset[str]) -> str:
    return " and ".join(sorted(names))


def _press_apart(case: _Case) -> Garment | None:
    """The cloths that need heat get it before anything tender is joined to them."""
    if any(case.entry(n).kind != "cloth" for n in case.needy) or case.needy & case.tender:
        return None
    return _without_needs(case)


def _soften(case: _Case) -> Garment | None:
    """A cloth that cannot have the heat it wants, for its own sake, is pressed as it bears."""
    return _without_needs(case) if case.needy & case.tender else None


def _without_needs(case: _Case) -> Garment:
    """The place pressed as its tender layers allow."""
    if case.seam:
        return case.with_seam(replace(case.seam, apart=case.seam.apart | case.needy))
    return replace(case.garment, apart=case.garment.apart | case.needy)


def _fuse_first(case: _Case) -> Garment | None:
    """The interfacing is fused to a neighbour that bears it before the tender layer is joined."""
    if case.seam is None or not _neighbours(case):
        return None
    return case.with_seam(replace(case.seam, apart=case.seam.apart | case.needy))


def _neighbours(case: _Case) -> str:
    """A layer beside the fusible whose own limit bears what the glue needs."""
    uses = case.seam.uses if case.seam else ()
    for i, use in enumerate(uses):
        if "fusible" not in case.entry(use.cloth).kind:
            continue
        need = max(
            (
                c.span[0]
                for c in case.entry(use.cloth).claims
                if c.aspect == LIMIT_ASPECT and c.span
            ),
            default=0.0,
        )
        for other in (*uses[max(i - 1, 0) : i], *uses[i + 1 : i + 2]):
            if _limit(case, other.cloth) >= need and other.cloth not in case.tender:
                return other.cloth
    return ""


def _limit(case: _Case, name: str) -> float:
    """The iron limit of a cloth by itself."""
    cloth = case.garment.cloths[name]
    alone = Seam("alone", (Use(name),))
    judged = judge(replace(case.garment, seams=(alone,), cloths={name: cloth}), case.knowledge)
    verdict = next(v[LIMIT_ASPECT] for place, v in judged.verdicts.items() if place.scope == "seam")
    return verdict.allowed.high if hasattr(verdict.allowed, "high") else 0.0


def _swap_notion(case: _Case) -> Garment | None:
    """Another notion instead of the one that clashes."""
    to = case.knowledge.entries.get(str(case.remedy.change.get("to")))
    kinds = case.remedy.needs.get("notion", [])
    old = next(iter(case.notions(kinds)), None)
    if case.seam is None or to is None or old is None or case.entry(old).id == to.id:
        return None
    cloths = dict(case.garment.cloths)
    cloths[to.name] = Cloth(to.name, to.id, to.mixes, to.weight, to.thickness)
    uses = tuple(replace(u, cloth=to.name) if u.cloth == old else u for u in case.seam.uses)
    return case.with_seam(replace(case.seam, uses=uses), cloths)


def _drop_notion(case: _Case) -> Garment | None:
    """The seam without the notion that clashes."""
    old = next(iter(case.notions(case.remedy.needs.get("notion", []))), None)
    if case.seam is None or old is None:
        return None
    uses = tuple(use for use in case.seam.uses if use.cloth != old)
    return case.with_seam(replace(case.seam, uses=uses)) if uses else None


def _finger_press(case: _Case) -> Garment | None:
    """No iron on this seam at all."""
    return case.with_seam(replace(case.seam, cold=True)) if case.seam else None


def _hand_sew(case: _Case) -> Garment | None:
    """The seam is sewn by hand, so that no machine has a say."""
    return case.with_seam(replace(case.seam, by_hand=True)) if case.seam else None


def _free_choice(case: _Case) -> Garment | None:
    """The maker gives up what she had fixed on this aspect."""
    if case.seam is None:
        return None
    freed = case.conflict.aspect
    kept = tuple(c for c in case.seam.choices if c[0] != freed)
    facts = {k: v for k, v in case.seam.facts.items() if CHOICES.get(k) != freed}
    return case.with_seam(replace(case.seam, choices=kept, facts=facts))


def _get_foot(case: _Case) -> Garment | None:
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


def _detach(case: _Case) -> Garment | None:
    """What clashes in the whole garment is made to come off."""
    names = case.tender or case.needy
    loose = [n for n in sorted(names) if case.entry(n).family != "" or n in case.needy]
    if case.conflict.place.scope != "garment" or not loose or len(case.garment.cloths) < 2:
        return None
    cloths = {
        name: replace(cloth, detachable=True) if name == loose[0] else cloth
        for name, cloth in case.garment.cloths.items()
    }
    return replace(case.garment, cloths=cloths)


def _another_fibre(case: _Case) -> Garment | None:
    """The tender cloth in another fibre that it is sold in."""
    fibre = str(case.remedy.change.get("to"))
    names = case.of_family(case.remedy.needs.get("family", []))
    if not names or fibre not in {f for mix in case.entry(names[0]).mixes for f, _ in mix}:
        return None
    cloths = dict(case.garment.cloths)
    cloths[names[0]] = replace(cloths[names[0]], mixes=(((fibre, 100.0),),))
    return replace(case.garment, cloths=cloths)


def _lessen_bulk(case: _Case) -> Garment | None:
    """The seam built so that less lies under the foot, or sewn so that more can."""
    if case.seam is None:
        return None
    how = str(case.remedy.change.get("how"))
    if how == "overlock" and not case.garment.maker.overlocker:
        return None
    kind = picked(case.before.verdicts[case.conflict.place], "seam.kind")
    seam = lessened(case.seam, how, kind)
    return None if seam is None else case.with_seam(seam)


_CHANGES: dict[str, Callable[[_Case], Garment | None]] = {
    "press apart": _press_apart,
    "fuse first": _fuse_first,
    "swap notion": _swap_notion,
    "drop notion": _drop_notion,
    "finger-press": _finger_press,
    "hand-sew": _hand_sew,
    "free choice": _free_choice,
    "get foot": _get_foot,
    "detach": _detach,
    "another fibre": _another_fibre,
    "soften": _soften,
    "lessen bulk": _lessen_bulk,
}
CHANGES = frozenset(_CHANGES)
"""Everything that a remedy can do."""
