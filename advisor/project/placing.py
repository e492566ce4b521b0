"""What is made at each place of a project: as the project says it, else by its edge, notions, name.

The head of a trade name stands last ("leg elastic", "waistband button", "pocket flap"), so of the
words found in a name the one that ends last counts, and of two that end there the longer. A kind
that nobody said is told as assumed.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.places import PLAIN, PlaceKind
from advisor.project import lacewords
from advisor.project.companions import with_companions
from advisor.project.covering import OVER_ZIP, TRIMMED, tape_over_zip, trim_named
from advisor.project.garment import Cloth, Seam
from advisor.project.guesses import with_guesses
from advisor.project.halfwaists import OTHER_HALF, half_a_waist
from advisor.project.headwords import speaks_of, the_words
from advisor.project.hembands import BAND_BELOW, band_below, ends_the_body
from advisor.project.kindnames import named, read_in
from advisor.project.meant import meant_by
from advisor.project.openedges import TWO_LAYERS, as_curved, ends_in_two_layers
from advisor.project.seamends import hemmed_opening
from advisor.project.seampockets import POCKET, SEAM_BAG
from advisor.project.together import seen_together
from advisor.project.waisttabs import hang_from_waist, is_tied
from advisor.project.zipping import with_halves

singular_words = the_words
"""The words of a name, each as one of it."""
GATHERED, SHUT_IN = 1.1, 3
"""The fullness from which an edge is gathered (estimate); layers of a yoke that shuts one in."""
BACKS = frozenset({"sheers", "linings"})
"""Families of cloths that back another, where they lie in the middle of a seam with it."""
SHOWN = frozenset({"feather-trim", "fringe", "bead-trim", "sequin-trim"})
ELASTICS_ON_AN_EDGE = frozenset({"picot-elastic"})
"""Elastics that are made to be sewn to an edge and seen there, whatever the cloth gives."""
OF_THEIR_OWN = frozenset({"fold-over-elastic", "elastic-thread"})
"""Elastics that are neither drawn into a channel nor sewn to an edge as they are."""
LONE = frozenset({"raw-edge", "pleat"})
"""Kinds of one piece by itself: a lone layer there meets no like of its own."""
BONES = ("boning", "boned-seam")
"""Channels of bones by themselves, and a seam that holds them between its edges."""
LAID, LACE_EDGE = "applique", "the lace on its edge"
POCKETS = frozenset({"set-in-pocket", "welt-pocket"})  # their bag hangs inside
BANDED = POCKETS | {"hem", "cuff", "collar"}
"""Kinds that a name may mean where a knit stretched to the edge makes a band of it."""
RIB, RIB_STRETCHED = "neckband", "the knit that is stretched to it"
SINGLE = frozenset({"canvas", "interfacing", "stay-tape", "ribbon"})
"""Kinds that lie on one piece: between two layers they are in a seam, which is the place."""


class Placed(Struct, frozen=True):
    """The kind of a place, and why it was taken for that; "" where the project says it."""

    kind: str
    because: str = ""


INSERTION, JOINED = "lace-insertion", frozenset({"", PLAIN, "yoke"})
"""A lace with two straight edges, and kinds of a place that it lies open in between two pieces."""
BUCKLE, SLIDER = "buckle", "rings-and-sliders"


def with_places(
    seams: Sequence[Seam], kinds: Mapping[str, str], cloths: Mapping[str, Cloth], known: Knowledge
) -> tuple[Seam, ...]:
    """The seams, each with what is made there; `kinds` are those said, by the name of the seam."""
    if not known.places.kinds:
        return tuple(seams)
    entries = {name: known.entries[cloth.entry] for name, cloth in cloths.items()}
    pieces = {name: entry for name, entry in entries.items() if not cloths[name].put_in}
    built = []
    for seam in seams:
        found = placed(seam, kinds.get(seam.name, ""), entries, known)
        stretched = found.because and _band_of_knit(seam, entries)
        if found.kind == "waistband" and stretched and ends_the_body(seam, seams):
            found = Placed(RIB, RIB_STRETCHED)
        if found.kind == "pleat" and found.because and half_a_waist(seam, seams):
            found = Placed("gathered-edge", OTHER_HALF)
        if found.because and tape_over_zip(seam, seams, entries):
            found = Placed(TRIMMED, OVER_ZIP)
        if found.kind == PLAIN and found.because and ends_in_two_layers(seam, seams, pieces):
            turned = replace(seam, facts=seam.facts | {"edge": "turned"})
            built.append(_placed_as(turned, Placed("faced-edge", TWO_LAYERS), ("edge",)))
        elif found.kind in (PLAIN, "yoke") and _shut_in(seam, seams, pieces):
            turned = replace(seam, facts=seam.facts | {"edge": "turned"})
            built.append(_placed_as(turned, Placed("yoke", found.because), ("edge",)))
        else:
            built.append(_placed_as(seam, found))
    whole = with_companions(seen_together(tuple(built), entries, LACE_EDGE), kinds, entries)
    whole = tuple(map(as_curved, whole))
    return with_halves(with_guesses(whole, kinds, entries, known.places.kinds))


def _placed_as(seam: Seam, found: Placed, guessed: tuple[str, ...] = ()) -> Seam:
    assumed = (*seam.assumed, *guessed, *(("kind",) if found.because else ()))
    uses = seam.uses
    if found.kind in LONE and "layers" in assumed:
        uses, assumed = uses[-1:], tuple(word for word in assumed if word != "layers")
    return replace(seam, uses=uses, place=found.kind, placed_by=found.because, assumed=assumed)


def _shut_in(seam: Seam, seams: Sequence[Seam], entries: Mapping[str, Entry]) -> bool:
    """Whether a yoke of two layers takes a third between them, so that none is left to neaten.

    A yoke may be lined with another cloth; a sheer in the middle only backs what lies over it.
    """
    cloths = [u.cloth for u in seam.uses if u.cloth in entries and entries[u.cloth].kind == "cloth"]
    words = {"yoke", "shoulder"} & set(singular_words(seam.name))
    yoked = "yoke" in words or any("yoke" in singular_words(other.name) for other in seams)
    between = cloths[1:2]
    own = yoked and not any(entries[name].family in BACKS for name in between)
    both = len(cloths) == SHUT_IN and (cloths[0] == cloths[-1] or own)
    fixed = {"edge", "finish"} & seam.facts.keys() or any(a == "seam.kind" for a, _ in seam.choices)
    return bool(words) and both and not fixed


def placed(seam: Seam, said: str, entries: Mapping[str, Entry], known: Knowledge) -> Placed:
    """What is made at a place; `said` is the kind in the project, "" where it says none."""
    kinds = known.places.kinds
    about = {name: entries[name] for name in seam.cloths() if name in entries}
    said = POCKET if said == SEAM_BAG else said  # whether it opens there or is the bag, it tells
    if said in kinds:
        return Placed(_full(said, seam))
    if said in families(kinds):
        return Placed(_of_family(said, seam, about, kinds), f"its kind, {spoken(said)}")
    if not said and lace_on_edge(seam, about.get) and LAID in kinds:
        return Placed(LAID, LACE_EDGE)
    on_cloth = not said and lacewords.lace_on_cloth(seam, about, singular_words(seam.name))
    if on_cloth and LAID in kinds:
        return Placed(LAID, "the lace on it")
    if seam.facts.get("edge") == "hem" and not hemmed_opening(seam):
        return Placed("hem")
    called = named(said, kinds) if said else read_in(seam, about, kinds)
    return _placed_by(called, seam, entries, kinds)


def families(kinds: Mapping[str, PlaceKind]) -> frozenset[str]:
    """The families that a project may say as a kind: those that have one to lead them."""
    return frozenset(_family(kind) for kind in kinds.values() if kind.leads) - kinds.keys()


def _of_family(
    said: str, seam: Seam, about: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]
) -> str:
    """The kind of a family that its notion, its name or its layers tell; else what leads it."""
    own = {id_: kind for id_, kind in kinds.items() if _family(kind) == said}
    notions = [entry for entry in about.values() if entry.kind != "cloth"]
    told = [kind for entry in notions if (kind := _of(entry, own)) is not None]
    by_name = named(seam.name, own)
    if told or by_name:
        return told[0] if told else by_name
    if "bow" in own and nouns.BELTS & {*singular_words(seam.name)}:
        return "bow"  # a sash that is only laid on adorns
    faced = seam.facts.get("edge") == "turned" or (len({*seam.cloths()}) > 1 and not notions)
    if "faced-edge" in own and (faced or nouns.NEVER_HEMMED & {*singular_words(seam.name)}):
        return "faced-edge"
    if "interfacing" in own and notions:
        return "interfacing"
    return next(id_ for id_, kind in own.items() if kind.leads)


def _family(kind: PlaceKind) -> str:
    return kind.family.replace(" ", "-")


def spoken(word: str) -> str:
    """A kind of place as it is said and written."""
    return word.replace("-", " ")


def _placed_by(
    words: str, seam: Seam, entries: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]
) -> Placed:
    """What is made where only the name, the notions, the edge and the fullness tell."""
    about = {name: entries[name] for name in seam.cloths() if name in entries}
    words = meant_by(words, seam, about)
    told = _by_layers(words, seam, about, kinds)
    if told is not None:
        return told
    if words == "hem" and band_below(seam, about):
        return Placed(PLAIN, BAND_BELOW)
    if words and not (_made_up(seam, words) or _neck_turned(seam, words) or hang_from_waist(seam)):
        return Placed(_full(words, seam), "its name")
    if seam.facts.get("edge") == "turned":
        return Placed("faced-edge", "its edge, which is turned")
    full = _full(PLAIN, seam)
    return Placed(full, "its fullness" if full != PLAIN else "nothing that says more")


def _by_layers(
    words: str, seam: Seam, about: Mapping[str, Entry], kinds: Mapping[str, PlaceKind]
) -> Placed | None:
    """The kind that what lies in it makes of a place, whatever else its name says."""
    unnamed = not words and "band" in singular_words(seam.name)
    if (unnamed or words in BANDED) and _band_of_knit(seam, about):
        return Placed(RIB, RIB_STRETCHED)
    fastens = words and kinds[words].family == "fastening"
    if fastens and any(_of(e, kinds) == words for e in about.values() if e.kind != "cloth"):
        return Placed(words, "its name")  # what its notion is sewn to besides, a tape, says no more
    if trim := "" if is_tied(seam.name) else trim_named(seam, about, kinds[TRIMMED].notions):
        return Placed(TRIMMED, f"the {trim} in it")
    if inserted := _insertion(seam, about, words):
        return Placed(PLAIN, f"the {inserted} in it")
    by_notion = _by_notion(seam, about, words, kinds)
    if by_notion is not None:
        return by_notion
    if words == "placket" and _lines(seam, about):
        return Placed("lining-seam", "the lining in it")
    if not words and seam.by_hand and _lines(seam, about):
        return Placed("lining-seam", "the lining in it, sewn by hand")
    return None


def _lines(seam: Seam, about: Mapping[str, Entry]) -> bool:
    """Whether a vent or slit is named after the lining that is felled to it, and holds a shell."""
    shell = {name for name, entry in about.items() if entry.kind == "cloth"}
    shell -= {n for n in shell if about[n].family == "linings" or "lining" in singular_words(n)}
    two = len(about) > len(shell) or len(shell) > 1
    return "lining" in singular_words(seam.name) and bool(shell) and two


def _neck_turned(seam: Seam, words: str) -> bool:
    """Whether a neck is turned to the lining: sewn before the armholes, not when all is closed.

    Neck and armholes told as one seam are a lining set all in one, and turned as that is.
    """
    called = set(singular_words(seam.name))
    neck = bool(nouns.NECKS & called) and "armhole" not in called
    return words == "lining-seam" and neck and seam.facts.get("edge") == "turned"


def _made_up(seam: Seam, words: str) -> bool:
    """Whether its edge is turned by itself, whatever its name holds: a collar before it is set."""
    called = singular_words(seam.name)  # "attach collar" sets it on
    alone = words == called[-1] == "collar" and called[0] not in ("attach", "set")
    faced = words == "hem" and len(seam.cloths()) > 1
    strip = any(speaks_of(name, nouns.STRIPS) for name in seam.cloths())
    turned = words == "bound-edge" and not strip  # else its strip is turned over the edge
    tied = words == "bow" and called[-1] == "seam"  # the long seam of what is tied
    return seam.facts.get("edge") == "turned" and (alone or faced or turned or tied)


def lace_on_edge(seam: Seam, entry: Callable[[str], Entry | None]) -> bool:
    """Whether a lace of its own is laid on the edge of a cloth, and so is neither seam nor hem."""
    return lacewords.lace_on_edge(seam, entry, singular_words(seam.name))


def _band_of_knit(seam: Seam, entries: Mapping[str, Entry]) -> bool:
    """Whether a knit is stretched to the edge: a rib welt or a pocket top is no pocket."""
    return any(
        use.stretched > 1.0 and use.cloth in entries and entries[use.cloth].structure == "knit"
        for use in seam.uses
    )


def _full(kind: str, seam: Seam) -> str:
    """A plain seam with a full or pleated layer is a gathered edge."""
    full = any(use.fullness > GATHERED for use in seam.uses) or seam.making.pleats is not None
    return "gathered-edge" if kind == PLAIN and full else kind


def _by_notion(
    seam: Seam, about: Mapping[str, Entry], words: str, kinds: Mapping[str, PlaceKind]
) -> Placed | None:
    """The kind that a notion among the layers makes of the place."""
    notions = {name: entry for name, entry in about.items() if entry.kind != "cloth"}
    cloths = [entry for entry in about.values() if entry.kind == "cloth"]
    joined = {name for name, entry in about.items() if entry.kind == "cloth"}
    plain = not words or kinds[words].family in ("seam", "fastening")
    for name, entry in notions.items():
        why = f"the {name} in it"
        if entry.kind == "elastic" and entry.id not in OF_THEIR_OWN:
            channel = _with_elastic(seam, entry, cloths, joined, words)
            if channel:
                return Placed(channel, why)
        kind = _of(entry, kinds)
        elsewhere = {"button": "buttonhole", TRIMMED: "ties" if is_tied(seam.name) else ""}
        elsewhere[BUCKLE] = "ties" if entry.id == SLIDER and cloths else ""
        if words and elsewhere.get(kind or "") == words:
            continue  # the button goes through them; a ribbon that is tied lies on nothing
        if kind is None or (kind in SINGLE and sum(u.cloth in joined for u in seam.uses) > 1):
            continue
        if kind == "zip" or (plain and (kind not in BONES or not words)):
            return Placed(_boned(kind, seam, joined), why)
        alone = len(cloths) == 1 and (words == LAID or entry.id in SHOWN)
        if kind == TRIMMED and (words == "hem" or alone):
            return Placed(kind, why)  # lace at the hem lies on it; a cuff of feathers is no band
        opening = "opening" in singular_words(seam.name)
        laid = bool(words) and kinds[words].family in ("laid on", "edge", "stay") and not opening
        if kinds[kind].family == "fastening" and len(cloths) == 1 and not laid:
            return Placed(kind, why)  # a part of it lies on the one cloth
        if not words:
            return Placed(kind, why)
    return None


def _insertion(seam: Seam, about: Mapping[str, Entry], words: str) -> str:
    """The lace that lies open between two pieces, whatever those are called; "" for none."""
    between = sum(about[use.cloth].kind == "cloth" for use in seam.uses if use.cloth in about) > 1
    named = words in JOINED or bool(lacewords.BETWEEN & set(singular_words(seam.name)))
    found = (name for name, entry in about.items() if entry.id == INSERTION)
    return next(found, "") if between and named else ""


def _boned(kind: str, seam: Seam, cloths: set[str]) -> str:
    """A seam that holds bones, where its name says no channel and it joins two cloths."""
    two = sum(use.cloth in cloths for use in seam.uses) > 1
    return BONES[1] if kind in BONES and two else kind


def _with_elastic(
    seam: Seam, entry: Entry, cloths: list[Entry], joined: set[str], words: str
) -> str:
    """Elastic sewn to an edge, or drawn into a casing; "" where it does neither."""
    if seam.facts.get("edge") == "folded" and words != "casing":
        return "elastic-edge"
    if words:
        return ""
    ruched = _full(PLAIN, seam) != PLAIN and speaks_of(seam.name, nouns.RUCHED)
    if ruched and "edge" not in seam.facts and _an_edge(seam, joined):
        return "shirring"  # flat inside an allowance that its seam takes in: nothing is turned
    if singular_words(seam.name)[-1:] == ("elastic",) and not any(map(_gives, cloths)):
        return "casing"  # between two layers as well: a part of a band that is drawn in
    if not _an_edge(seam, joined):
        return ""
    if entry.id in ELASTICS_ON_AN_EDGE or any(map(_gives, cloths)):
        return "elastic-edge"
    return "casing" if len(cloths) == 1 else ""


def _an_edge(seam: Seam, cloths: set[str]) -> bool:
    """Whether each cloth lies there once, as at an edge: two pieces of one cloth are a seam."""
    once = [use.cloth for use in seam.uses if use.cloth in cloths]
    return len(once) == len(set(once)) and 0 < len(once) < SHUT_IN


def _gives(entry: Entry) -> bool:
    """Whether elastic is sewn to its edge as it is: what stretches and springs back, or a lace."""
    stretch, springs = (entry.traits.get(trait, (0, 0))[0] for trait in ("stretch", "springy"))
    if lacewords.is_lace(entry):
        return True  # a casing would show through it
    return entry.structure == "knit" and stretch > 1 and springs > 0


def _of(entry: Entry, kinds: Mapping[str, PlaceKind]) -> str | None:
    """The kind that names this notion; its own name before its sort."""
    for key in (entry.id, entry.kind):
        found = next((id_ for id_, kind in kinds.items() if key in kind.notions), None)
        if found is not None:
            return found
    return None


def fastening_kind(word: str, fastenings: Mapping[str, PlaceKind]) -> str:
    """The kind that a word under `fastening:` means: loops are those of buttons; "" for none."""
    if not word.strip():
        return ""
    called = singular_words(f"button {word}")
    ways = (
        id_
        for id_, kind in fastenings.items()
        if called in map(singular_words, kind.words)
        or singular_words(word) == singular_words(kind.name)
    )
    return named(word, fastenings) or next(ways, "")
