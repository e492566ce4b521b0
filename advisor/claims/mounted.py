"""What lies under the iron at a place that does not name it: a face, a backing, a pocket's bag.

Channels, stays and eyelets on an underlining name the underlining alone, and the shell that it is
basted to lies under the iron all the same; so does the underlining where a seam names the shell
alone, and the bag of a pocket where a side names neither.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from advisor.claims.edged import edge_cloths
from advisor.claims.loaded import doubled_near, holds_by_backing, mounts_near
from advisor.claims.placefacts import SET_IN
from advisor.claims.speakers import Said, cloth_says, is_heat_limit
from advisor.knowledge import nouns
from advisor.knowledge.model import Claim, Knowledge
from advisor.knowledge.places import PLAIN
from advisor.knowledge.purposes import GUARDS
from advisor.project.companions import felled_over
from advisor.project.garment import Garment, Seam, Use
from advisor.project.placing import POCKETS, singular_words

MOUNTED, QUILTING, BAG, MOISTURE = "underlining", "quilting", "bag", "press.moisture"
SEWN = ("needle.", "stitch.", "machine.", "thread.", "seam.", "hem.")
"""The aspects of how a place is sewn and what its edges come to, by their beginnings."""
CHANNEL, FACED, HOOD = "casing", "faced-edge", "hood"
LAID = ("press.side", "press.surface", "press.motion")
"""What lies under the iron and how that moves."""
THREAD, LOADED = "thread.size", 30.0
"""The thread of a laced or boned seam is of this size at least, tex, where its backing bears it."""
FIRM = ("core-spun polyester", "polyester")
"""The threads that are asked for where a seam is pulled hard, of those that its backing takes."""


def shells(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths to which the backing of a place is basted, where the place does not name them."""
    here = set(seam.cloths())
    found: list[str] = []
    for backing in seam.cloths():
        faces = [names[0] for names in _mounts(seam, garment) if backing in names[1:]]
        found += [] if here & set(faces) else faces
    return tuple(dict.fromkeys(found))


def backings(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths that are basted behind those of a place, where the place names none of them."""
    here = set(seam.cloths())
    found: list[str] = []
    for face in seam.cloths():
        behind = [n for names in _mounts(seam, garment) if names[0] == face for n in names[1:]]
        found += [] if here & set(behind) else behind
    return tuple(dict.fromkeys(found))


def _mounts(seam: Seam, garment: Garment) -> list[tuple[str, ...]]:
    """The layers of every mounted piece, face first; none for the place where it is mounted.

    Two cloths that lie doubled in seam after seam lie on each other as well, told or not.
    """
    if seam.place in ("", MOUNTED):
        return []
    told = [names for names in mounts_near(seam, garment) if len(names) > 1]
    return told + [pair for pair in doubled_near(seam, garment) if pair not in told]


def under_bag(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths that lie under the closed bag of a pocket: its front, and what backs that."""
    if seam.place not in POCKETS or BAG not in singular_words(seam.name):
        return ()
    fronts = {
        s.cloths()[0]
        for s in garment.seams
        if s.place in POCKETS and BAG not in singular_words(s.name)
    }
    mounts = [s.cloths() for s in garment.seams if s.place == MOUNTED and fronts & set(s.cloths())]
    return tuple(sorted(fronts.union(*mounts) - set(seam.cloths())))


def bags_in(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths of pockets that are set in this very seam: it is pressed over their bags."""
    here = nouns.IN_A_SEAM & set(singular_words(seam.name)) if seam.place == PLAIN else frozenset()
    pockets = (s for s in garment.seams if s.place == SET_IN)
    lying = [s for s in pockets if here & set(singular_words(s.name))]
    shared = any(set(s.cloths()) & set(seam.cloths()) for s in lying)
    return tuple(sorted({n for s in lying for n in s.cloths()} - set(seam.cloths()))) * shared


def _faced_with(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths that face the edge of a hood, along which its channel runs."""
    faced = (s for s in garment.seams if s.place == FACED and HOOD in singular_words(s.name))
    edges = [s for s in faced if set(s.cloths()) & set(seam.cloths())]
    along = seam.place == CHANNEL and HOOD in singular_words(seam.name)
    return tuple(sorted({n for s in edges for n in s.cloths()} - set(seam.cloths()))) * along


def _felled_over(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """The cloths of the seam over which a lining is felled: its iron lies on them."""
    found = {n for s in garment.seams if s.name in felled_over(seam) for n in s.cloths()}
    return tuple(sorted(found - set(seam.cloths())))


def quilted_behind(seam: Seam, garment: Garment) -> tuple[str, ...]:
    """What a lining is quilted to: it lies right behind every seam of that lining."""
    here = set(seam.cloths())
    rows = (s.cloths() for s in garment.seams if s.place == QUILTING and s is not seam)
    found = {n for names in rows if here & set(names[1:]) and names[0] not in here for n in names}
    return tuple(sorted(found - here))


def drop_backing(
    seam: Seam, said: dict[str, list[Said]], garment: Garment, knowledge: Knowledge
) -> None:
    """A mounted piece is sewn as its shell: what backs it only guards itself, unless it holds."""
    here = set(seam.cloths())
    mounts = mounts_near(seam, garment)
    behind = frozenset(n for names in mounts if here & set(names[:1]) for n in names[1:])
    held = holds_by_backing(seam, garment, knowledge)
    if THREAD in held:  # the strength of the backing's seam decides, not the look of its face
        said[THREAD] = [s for s in said[THREAD] if s.cloths & behind or _of_a_rule(s)]
    if any(s.claim.strength == "must" and not s.claim.guards for s in said.get(MOISTURE, ())):
        said[MOISTURE] = [
            _bears(s) if s.cloths and s.cloths <= behind else s for s in said[MOISTURE]
        ]
    for aspect in [a for a in said if a.startswith(SEWN) and behind & here]:
        own = [s for s in said[aspect] if s.cloths and s.cloths <= behind]
        kept = [s for s in said[aspect] if s.claim.guards or s not in own]
        kept += [_holds(s, knowledge) for s in own if aspect in held and s not in kept]
        said[aspect] = kept
        if not kept:
            del said[aspect]


def _bears(said: Said) -> Said:
    """What a hidden cloth bears, and not how it is pressed best: that gives way to a need."""
    return replace(said, claim=replace(said.claim, best=None))


def _of_a_rule(said: Said) -> bool:
    """Whether it guards, or is what a rule or the maker says of these very layers."""
    return said.claim.guards or not said.claim.origin.startswith("fabric")


def _holds(said: Said, knowledge: Knowledge) -> Said:
    """What a backing wishes where it carries the load: so that the seam holds, before any look."""
    claim, words = said.claim, knowledge.aspects[said.claim.aspect].words
    if claim.strength != "should":
        return said
    if claim.aspect == THREAD and claim.span and claim.span[1] >= LOADED:
        claim = replace(claim, span=(max(claim.span[0], LOADED), claim.span[1]))
    firm = claim.mask & sum(1 << words.index(word) for word in FIRM if word in words)
    why = f"The backing is the firmest layer here. {claim.why}"
    held = replace(claim, ends=("seam", "seam"), why=why, mask=firm or claim.mask)
    return replace(said, claim=held)


def with_shells(seam: Seam, garment: Garment) -> Seam:
    """A place with those cloths among its layers."""
    return replace(seam, uses=(*seam.uses, *map(Use, shells(seam, garment))))


def mounted_says(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Said]:
    """What face and backing of a mounted piece bear, said of a place that names the other alone."""
    for name in shells(seam, garment):
        for said in cloth_says(garment.cloths[name], knowledge):
            if is_heat_limit(said.claim) or _keeps_dry(said.claim) or _spares_face(said.claim):
                why = f"It lies on {name}, to which it is basted. {said.claim.why}"
                yield replace(said, claim=replace(said.claim, why=why))
    yield from _behind(seam, garment, knowledge)
    near = [(n, f"The bag is pressed where it hangs, over {n}.") for n in under_bag(seam, garment)]
    near += [(n, f"A pocket lies in it, and its bag of {n}.") for n in bags_in(seam, garment)]
    near += [(n, f"It is quilted to {n}.") for n in quilted_behind(seam, garment)]
    near += [(n, f"It runs along a faced edge, over {n}.") for n in _faced_with(seam, garment)]
    near += [
        (n, f"The seam that it is felled over holds {n}.") for n in _felled_over(seam, garment)
    ]
    near += [(n, f"The edge that it lies on holds {n}.") for n in edge_cloths(seam, garment)]
    for name, why in near:
        for said in cloth_says(garment.cloths[name], knowledge):
            if is_heat_limit(said.claim) or _keeps_dry(said.claim):
                yield replace(said, claim=replace(said.claim, why=f"{why} {said.claim.why}"))


def _behind(seam: Seam, garment: Garment, knowledge: Knowledge) -> Iterator[Said]:
    """What is hidden behind a seam: the iron reaches it, so its limit stays a must; it may hold."""
    held = holds_by_backing(seam, garment, knowledge)
    for name in backings(seam, garment):
        for said in cloth_says(garment.cloths[name], knowledge):
            if is_heat_limit(said.claim) or _keeps_dry(said.claim):
                why = f"{name} is basted behind it. {said.claim.why}"
                yield replace(said, claim=replace(said.claim, why=why))
            elif said.claim.aspect in held:
                yield _holds(said, knowledge)


def _spares_face(claim: Claim) -> bool:
    """Whether a claim guards how a face lies under the iron: its side, its surface, no gliding."""
    return claim.aspect in LAID and claim.strength == "must" and claim.guards


def _keeps_dry(claim: Claim) -> bool:
    """Whether a claim guards a layer against too much moisture, and asks for none."""
    bounded = claim.aspect == MOISTURE and claim.span is not None and claim.span[0] <= 0
    return bounded and claim.purposes[1] in GUARDS
