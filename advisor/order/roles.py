"""The role of a place: told by what is made there, else by its name, else by its shape."""

from __future__ import annotations

from msgspec.structs import replace

from advisor.knowledge import nouns
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.ordering import SeamKind
from advisor.order import namewords as called
from advisor.order.edgetrims import trim_role
from advisor.order.frontgathers import TO_WAIST, WRAP, ends_at_waist, on_the_fronts
from advisor.order.lacerole import edging_role, lace_role
from advisor.order.legwords import on_a_leg, with_both_seams
from advisor.order.rolewords import holds, read_role, words_of_place
from advisor.project.garment import Garment, Seam
from advisor.project.grain import hangs_on_the_bias
from advisor.project.halfwaists import OTHER_HALF
from advisor.project.headwords import head_of, speaks_of
from advisor.project.hembands import ends_the_body, runs_to_the_zip
from advisor.project.linings import LINING, Unit, ends_short, of_a_part, of_part
from advisor.project.partjoins import hangs_a_part
from advisor.project.placing import BONES, singular_words
from advisor.project.pleated_hem import hemmed_before_pleats, pleats_run_down
from advisor.project.seamends import ends_a_seam
from advisor.project.seampockets import SEAM_BAG, is_bag_of_one
from advisor.project.stands import SET_BY
from advisor.project.stripes import STRIPE, caught_in_its_seam
from advisor.project.tiecollars import makes_up_a_collar
from advisor.project.together import FACES_A_WAIST
from advisor.project.unjoined import drawn_up

BY_KIND = {
    "elastic-edge": "elastic-edge",
    "casing": "casing",
    "pad": "pad",
    "cup": "cup",
    "collar": "collar-attach",
    "front-band": "front-band",
    "shirring": "tuck",
    "stones": "stones",
    "bow": "stones",
    "ties": "strap",
}
"""Roles that follow from the kind of place, whatever the name says where it lies."""
NAMED_SO = frozenset({"waistband", "neckband"})
"""Roles that a name tells better than what is made there, but for what is laid on them last."""
SEWN_LAST = frozenset({"stones", "bow"})
POCKET_ZIP = "pocket-zip"
"""The role of a zip that closes a pocket: it neither fits the garment nor opens it."""
PART_HEM = "part-lining-hem"
"""The role of the lower edge of a half lining, which no hem of the shell levels."""
PLEATED_HEM = "pleated-hem"
"""The role of a hem that is sewn before the pleats are laid, so that none comes last."""
WELTS = frozenset({"pocket", "hem-band", "collar", "collar-attach"})
"""Roles of a name that a rib stretched to the edge takes over."""
NECKBAND, FRONT_BAND = "neckband", "front-band"
APRON_HEM = "apron-hem"
HEMMED_FLAT = frozenset({"sleeve-hem", "top-edge", "hood-edge", "foundation-hem", APRON_HEM})
"""Roles of a hem that no floor levels: it ends nothing that hangs."""
FASTENED = frozenset({"button", "buttonhole", "hook", "snap", "clasp", "hook-and-loop"})
LIES_AT = {
    "ribbon": frozenset({"armhole", "cuff"}),
    "applique": frozenset(
        {"cuff", "armhole", "shoulder", "side", "underarm", "panel", "centre", "godet"}
    ),
}
"""Seams after which what is sewn on top of a piece is called, and joins nothing there."""
SLEEVE_HEAD, ROLL = "sleeve-head", "sleeve-head-roll"
GUSSET = "gusset"
BONED = frozenset({"bone-channel"})
"""What the edge of an opening runs beside and never over: both lie upright."""
INSET = "inset"
HEM_FACING = ("hem", "facing")
"""The last words of a hem that is faced: it lies at the lower edge, and not at a neck."""
FLAP, POCKET_FLAP = "flap", "pocket-flap"


def role_of(
    seam: Seam, kind: str, unit: Unit, about: list[Entry], garment: Garment, knowledge: Knowledge
) -> SeamKind:
    """The role of a place: as the project says, else as its name and its notions tell."""
    roles = knowledge.order.kinds
    wished = garment.wishes.kinds.get(seam.name, "")
    role = _guessed(seam, kind, unit, about, roles)
    told = wished == "hem" and role.id in HEMMED_FLAT  # a hem, and still that of a sleeve
    if not told and not (wished == SEAM_BAG and not is_bag_of_one(seam, garment.seams)):
        role = roles.get(wished) or role
    lower = role.id == "hem" or kind == "raw-edge"
    short = of_a_part(seam) or ends_short(seam.cloths(), garment)
    of_part_only = lower and unit == LINING and short and not hangs_on_the_bias(seam, garment)
    leg = on_a_leg(role.id, _words(seam.name))
    lapped = TO_WAIST if role.id == WRAP and ends_at_waist(seam, garment) else ""
    narrow = PART_HEM if of_part_only else leg or lapped
    narrow = narrow or _narrower(role.id, seam, garment, kind)
    role = with_both_seams(roles.get(narrow) or role, _words(seam.name))
    if role.id == FRONT_BAND and seam.long_mm >= called.WHOLE_FRONT_MM:
        return replace(role, crosses=(*role.crosses, "waist"))
    return _as_here(role, garment, unit, seam.name)


def _guessed(
    seam: Seam, kind: str, unit: Unit, about: list[Entry], roles: dict[str, SeamKind]
) -> SeamKind:
    """The role of a place that nobody says one of."""
    words = of_part(head_of(_words(seam.name)), unit)
    entries = dict(zip(seam.cloths(), about, strict=True))
    found = read_role(words, seam, entries, roles.values())
    sewn_on = NECKBAND if kind == "front-band" and of_another_cloth(seam, about) else ""
    if kind == "gathered-edge" and found and found.id in ("tier", "waist") and on_the_fronts(seam):
        sewn_on = called.BUST_GATHERS
    if kind == "waistband" and any(e.id in FACES_A_WAIST for e in about):
        sewn_on = kind  # a ribbon at the waist joins nothing there: it ends what runs into it
    fixed = sewn_on or _special(kind, about, found, words) or _by_kind(kind, about, found, words)
    return roles.get(fixed) or found or roles.get(_by_shape(seam, kind)) or roles["plain"]


def of_another_cloth(seam: Seam, about: list[Entry]) -> bool:
    """Whether a band is sewn on, and so runs on round the neck: it ends in another cloth.

    One that is folded back, its support within, begins and ends in the cloth of the front.
    """
    kinds = dict(zip(seam.cloths(), about, strict=True))
    cloths = [use.cloth for use in seam.uses if kinds[use.cloth].kind == "cloth"]
    return bool(cloths) and cloths[0] != cloths[-1] and seam.facts.get("edge") != "folded"


def _special(kind: str, about: list[Entry], found: SeamKind | None, words: tuple[str, ...]) -> str:
    """A role that lies elsewhere than others of its kind do; "" where it has none such."""
    if kind == "zip" and "pocket" in words:
        return POCKET_ZIP
    if (
        kind == "gathered-edge"
        and nouns.FRILLED & set(words[-1:])
        and found
        and found.id == "armhole"
    ):
        return "tier"  # a frill of a sleeve lies at its end; only the sleeve itself at its head
    if at_once := _while_flat(kind, found, words):
        return at_once
    if kind == "hem" and nouns.NECKS & set(words):
        return "facing"  # hemmed in the flat, and levelled on no hanger
    if "pocket" in words and (
        kind in ("bound-edge", "hem") or (kind == "faced-edge" and nouns.POCKET_TOPS & {*words})
    ):
        return "pocket-edge"
    if kind == "faced-edge" and (faced := _faced(found, words)):
        return faced
    if kind == "pad" and any(e.id == SLEEVE_HEAD for e in about):
        return ROLL  # it lies along the cap, and the pad against it
    return ""


def _while_flat(kind: str, found: SeamKind | None, words: tuple[str, ...]) -> str:
    """What is laid on a flat piece or let into one by a seam; a lace is let in otherwise."""
    if found is not None and found.id in LIES_AT.get(kind, ()):
        return "applied"
    if kind == "raw-edge" and words[-2:] == (called.SLEEVE, "edge"):
        return "sleeve-hem"  # cut while the sleeve is apart
    return "panel" if kind == "seam" and found is None and INSET in words else ""


def _faced(found: SeamKind | None, words: tuple[str, ...]) -> str:
    """Where a faced edge lies, if its name tells it better than its role; "" otherwise."""
    if words[-2:] == HEM_FACING:
        return "sleeve-hem" if called.SLEEVE in words else "hem"
    if found is not None and found.id in ("set-lining", "underarm"):
        return "facing"  # a neck that is turned to the lining closes nothing yet, nor an armhole
    return POCKET_FLAP if words[-1:] == (FLAP,) and not found else ""


def _by_kind(kind: str, about: list[Entry], found: SeamKind | None, words: tuple[str, ...]) -> str:
    """The role that what is made here has wherever it lies; "" where the name tells."""
    if kind == "zip":
        hidden = any("concealed" in e.id for e in about) or (found and found.id == "concealed-zip")
        beside = "side-zip" if found and found.id == "side-zip" else "zip"
        return "concealed-zip" if hidden else beside
    lower = kind == "hem" or (kind == "raw-edge" and bool(({"hem"} | nouns.SKIRTS) & set(words)))
    if lower and (found is None or not (found.last or found.id in HEMMED_FLAT)):
        return "hem"
    if kind in FASTENED:
        return "fastening"
    if kind == "placket" and found is not None and (found.closes or found.id == "cuff"):
        return "placket"  # at the end of a side seam it closes nothing; above a cuff it lies flat
    if kind in BONES and (found is None or found.id == "casing"):
        return "bone-channel"
    if kind == "lining-seam":
        return "set-lining"
    if kind == "neckband" and (found is None or found.id in WELTS or found.last):
        return "neckband"  # a welt of rib, or the rib that closes the lower edge
    own = found is not None and found.id in NAMED_SO and kind not in SEWN_LAST
    return "" if own else BY_KIND.get(kind, "")


def _by_shape(seam: Seam, kind: str) -> str:
    """A role for a name that says nothing."""
    if kind == "gathered-edge":
        return "tier"
    if kind == "applique":
        return "applied"
    if kind == "seam" and _hangs_skirt(seam):
        return "waist"
    return "facing" if kind == "faced-edge" or seam.facts.get("edge") == "turned" else "plain"


def _hangs_skirt(seam: Seam) -> bool:
    """Whether a seam of two cloths is called after the skirt that it joins to what is above it."""
    return bool(nouns.SKIRTED & set(_words(seam.name)[-1:])) and len(set(seam.cloths())) > 1


_words = singular_words


def holds_words(name: str, phrase: str) -> bool:
    """Whether a name holds the words of a phrase side by side."""
    return holds(_words(name), phrase)


def _narrower(role: str, seam: Seam, garment: Garment, kind: str) -> str:
    """A role of its own for what a word tells of where it lies; "" where none does.

    The darts of a skirt or of trousers run to the waist and meet no side; a trim that belongs to
    no piece lies round the edges; a channel of the hood lies round the face; and a lining is not
    set at a vent but felled to it.
    """
    words = set(singular_words(seam.name))
    lace = lace_role(seam, garment) if kind == "applique" else edging_role(seam, garment)
    beside = lace or (
        NECKBAND if _at_the_foot(role, seam, garment, kind) else _of_a_frill(role, seam, garment)
    )
    if beside := beside or _told_apart(role, seam, garment):
        return beside
    if GUSSET in words and (nouns.ARMS & words or role in ("crotch", "inseam")):
        return _gusset(words, seam, garment)
    if role in ("centre", "side") and len(nouns.HALVES & words) == 1 and _beside_the_middle(seam):
        return "panel"
    if role == "armhole" and _of_the_sleeve(words, seam, garment):
        return "underarm"
    if role == "casing" and called.HOOD in words:
        return "hood-casing"
    if role == "dart" and (nouns.HALVES | nouns.HIPS) & words:
        above = any(nouns.WITH_A_BODICE & words_of_place(other) for other in garment.seams)
        return "waist-dart" if nouns.HIPS & words or not above else ""
    if kind == "ribbon" and seam.name not in garment.wishes.joins and not seam.making.crosses:
        return trim_role(seam, garment)
    return "vent-lining" if kind == "lining-seam" and nouns.VENTS & words else ""


def _told_apart(role: str, seam: Seam, garment: Garment) -> str:
    """What is half of a thing whose other half is a place of its own; "" where it is whole."""
    if is_bag_of_one(seam, garment.seams):
        return SEAM_BAG
    if ends_a_seam(seam, garment.seams):
        return "seam-end"
    if makes_up_a_collar(seam, garment):
        return "collar"
    half = seam.placed_by == OTHER_HALF
    hung = "waist" if half or (role == "plain" and hangs_a_part(seam, garment)) else ""
    return "stand" if seam.placed_by == SET_BY else hung


def _at_the_foot(role: str, seam: Seam, garment: Garment, kind: str) -> bool:
    """Whether a band at the waist is the lower edge of a jacket, over whose end its zip runs."""
    if role not in nouns.LOW_BANDS or not ends_the_body(seam, garment.seams):
        return False
    return kind == NECKBAND or (kind == "waistband" and runs_to_the_zip(seam, garment.seams))


def _gusset(words: set[str], seam: Seam, garment: Garment) -> str:
    """A gusset below an arm, or between the legs; "" where it is the crotch itself."""
    if nouns.ARMS & words:
        return "arm-gusset"
    return GUSSET if _legs_beside(seam, garment) else ""


def _of_a_frill(role: str, seam: Seam, garment: Garment) -> str:
    """What is hemmed before it is drawn up or pleated, a ring that is set when all is round."""
    if role == "hem" and hemmed_before_pleats(seam, garment):
        return PLEATED_HEM
    if role == STRIPE and caught_in_its_seam(seam, garment):
        return "applied"
    if role == "tier":
        return "ring-tier" if _closed_by_itself(seam, garment) else ""
    frilled = role == "hem" and nouns.FRILLED & set(singular_words(seam.name))
    return "frill-hem" if frilled and _drawn_up_elsewhere(seam, garment) else ""


def _legs_beside(gusset: Seam, garment: Garment) -> bool:
    """Whether seams of the legs run over the ends of a gusset; else it is the crotch itself."""
    others = (set(singular_words(other.name)) for other in garment.seams if other is not gusset)
    return any(nouns.LEG_SEAMS & words and GUSSET not in words for words in others)


def _beside_the_middle(seam: Seam) -> bool:
    """Whether it is called side back or side front: no side, it runs down a back or a front."""
    return any(holds_words(seam.name, f"side {half}") for half in nouns.HALVES)


def _drawn_up_elsewhere(hem: Seam, garment: Garment) -> bool:
    """Whether a straight strip of this cloth is gathered or pleated on: a ring hangs out first."""
    drawn = (set(drawn_up(seam)) for seam in garment.seams if seam.name != hem.name)
    return hem.facts.get("shape") != "curved" and any(set(hem.cloths()) <= d for d in drawn)


def _closed_by_itself(tier: Seam, garment: Garment) -> bool:
    """Whether what is drawn up has side seams of its own: a ring, set when all is round.

    A tier is, too, where the sides hold only the cloth that it hangs from: none runs on over it;
    and so are rows that stand one above another on a base, which lie across its seams.
    """
    full = set(drawn_up(tier))
    flat = {use.cloth for use in tier.uses if use.fullness <= called.GATHERED}
    hung = "tier" in singular_words(tier.name) or tier.making.times > called.PAIR
    own, above = full - flat, flat - full if hung else set()
    seams = [
        set(other.cloths())
        for other in garment.seams
        if other is not tier and "side" in singular_words(other.name) and _beside(other, tier)
    ]
    through = any(own and above and own | above <= cloths for cloths in seams)
    return not through and any(cloths <= own or (above and cloths <= above) for cloths in seams)


def _beside(one: Seam, other: Seam) -> bool:
    """Whether both may lie in one part, and both in the lining or both in the shell."""
    lined = {LINING in singular_words(seam.name) for seam in (one, other)}
    parts = {one.part, other.part} - {""}
    return len(parts) <= 1 and len(lined) == 1


def _of_the_sleeve(words: set[str], seam: Seam, garment: Garment) -> bool:
    """Whether "sleeve" is its own seam, for another place of shell or lining is the armhole."""
    others = (set(singular_words(other.name)) for other in garment.seams if other is not seam)
    alike = (other for other in others if (LINING in other) == (LINING in words))
    return words <= {called.SLEEVE, LINING} and any("armhole" in other for other in alike)


def _as_here(role: SeamKind, garment: Garment, unit: Unit, name: str) -> SeamKind:
    """The role with what it crosses in this garment.

    A zip runs over the waist only where the garment goes on above it; and where a concealed zip
    does, the seam below the zip is closed after both, so the waist does not cross it; nor does that
    of a suit cross its crotch, where a zip runs down into that. An edge
    that is turned to the lining ends beside the zip: it is joined while the pieces lie flat, and
    the lining is felled to the tape afterwards. A band at an armhole runs over its side seam, and
    so does a facing that goes round the body.
    """
    zips, words = _zips(garment), set(singular_words(name))
    if role.id == "facing" and (unit == "both" or _clear_of(zips, words)):
        return replace(role, crosses=tuple(id_ for id_ in role.crosses if id_ not in called.ZIPS))
    if role.id == "facing" and nouns.HALVES & words and "edge" in words:
        role = replace(role, crosses=tuple(id_ for id_ in role.crosses if id_ not in BONED))
    round_the_body = role.id == "neckband" and "armhole" in words
    if round_the_body or (role.id == "facing" and nouns.ALL_ROUND & words):
        return replace(role, crosses=(*role.crosses, "side", "underarm"))
    if role.id in ("panel", "pleat") and any(map(_all_round, garment.seams)):
        over = [id_ for id_ in role.crosses if id_ != "pleat"]
        return replace(role, crosses=(*over, "panel") if role.id == "pleat" else tuple(over))
    if role.id == "zip" and nouns.OPENS & words and not nouns.PARTLY & words:
        return replace(role, crosses=(*role.crosses, "neckband"))
    if role.id == "crotch" and not any("side" in singular_words(n) for n in zips):
        return replace(role, crosses=(*role.crosses, "concealed-zip"))
    if role.id == NECKBAND and ((nouns.LOWER | {"welt"}) | nouns.LOW_BANDS) & words:
        return replace(role, crosses=(*role.crosses, "side", "side-and-sleeve", "centre"))
    bodice = any(speaks_of(seam.name, nouns.ABOVE) for seam in garment.seams)
    not_here = {"waist"} if role.id in called.ZIPS and not bodice else set()
    if role.id == "waist" and bodice and zips:
        beside = any("side" in singular_words(n) for n in zips)
        not_here = {"side" if beside else "centre"}
    if role.id == "waist" and bodice and _zipped_behind(garment):
        not_here |= {"crotch"}
    left = tuple(id_ for id_ in role.crosses if id_ not in not_here)
    return role if left == role.crosses else replace(role, crosses=left)


def _all_round(seam: Seam) -> bool:
    """Whether a skirt is pleated all round: its widths are joined before any fold is laid."""
    many = seam.place == "pleat" and seam.making.times >= called.PLEATS_ROUND
    return (many and "pleat" in singular_words(seam.name)) or pleats_run_down(seam)


def _clear_of(zips: list[str], words: set[str]) -> bool:
    """Whether it is the facing of a neck, and every zip lies in a side."""
    neck = bool(nouns.NECKS & words) and not nouns.ALL_ROUND & words
    return neck and bool(zips) and all("side" in singular_words(name) for name in zips)


def _zipped_behind(garment: Garment) -> bool:
    """Whether a zip runs over the waist into the crotch, which is closed below it afterwards."""
    zips = (set(singular_words(seam.name)) for seam in garment.seams if seam.place == "zip")
    return any((nouns.HALVES | {"centre"}) & words for words in zips)


def _zips(garment: Garment) -> list[str]:
    """The names of the places where a concealed zip lies."""
    return [
        seam.name
        for seam in garment.seams
        if any(garment.cloths[name].entry == "concealed-zip" for name in seam.cloths())
    ]
