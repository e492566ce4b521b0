"""What is only basted to be tried on where nobody has cut the pattern before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from advisor.knowledge import nouns
from advisor.order.kinds import SeamPlace, crosses, related
from advisor.order.namewords import UPPER_ROLES
from advisor.project.methods import FITTINGS, PATTERNS
from advisor.project.placing import POCKETS, singular_words

if TYPE_CHECKING:
    from advisor.order.fitting import Fitting

NEEDLE_HOLES, PILE_LINE, HOLES_FOR_GOOD = "holes", "line", "holes for good"
"""What of a row that is taken out again stays in a cloth."""
HOLED = (NEEDLE_HOLES, HOLES_FOR_GOOD)
DART, CROTCH, INSEAM = "dart", "crotch", "inseam"
TO_BODY: Final = FITTINGS[0]
FACED: Final = "faced-edge"
NOT: Final = FITTINGS[2]
TRIED, NEW = PATTERNS
SIDE, WAIST, SHOULDER = "side", "waist", "shoulder"
PLAIN, YOKE, SEAM = "plain", "yoke", "seam"
ARMHOLE, UNDERARM, PLACKET = "armhole", "underarm", "placket"
CLOSES_A_SLEEVE: Final = frozenset({UNDERARM, "side-and-sleeve"})
TRIM: Final = "trim"
SEWN_IN: Final = frozenset({"join", "lay-on"})
"""How a sleeve goes into its armhole: joined, or lapped over it."""
STAY: Final = "stay"
PANEL, BONING = "panel", "boning"
BEHIND: Final = "back"
"""The word of a seam that lies clear of the canvas, which is in the fronts."""
DOWN_THE_BODY: Final = frozenset({"centre", "panel", "side", "shoulder"})
"""Roles of the seams by which a garment is taken in or let out."""
COVERING: Final = frozenset({"backing", "laid on", "stay"})
"""Families of places that are laid over a dart."""


def dart_may_move(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a dart of what nobody has cut before, and is basted to be tried on.

    Sewn, it leaves its holes, and the point that was pressed stays to be seen. On the bias the
    cloth drops first, whoever cut it before. What is laid over one before the fitting, as canvas or
    lace, has it sewn first; that of a sleeve is not seen there.
    """
    others, moves = fitting.places, fitting.may_move(place) and fitting.concerned(place)
    dropped = any(fitting.drops(p) and set(p.cloths) & set(place.cloths) for p in others)
    if place.op != DART or any(_covers(p, place) for p in others):
        return False
    sleeve = nouns.SLEEVE_DARTS & set(singular_words(place.name))
    return dropped or (moves and not sleeve and not_cut_before(place, fitting))


def in_a_line_that_drops(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it faces the edges of an opening in a seam on the bias, which hangs and is fitted.

    The seam below it and its edges are one line: made before, it holds up what is to drop.
    """
    here = nouns.FACED_CLOSINGS & set(singular_words(place.name))
    if place.kind.id != FACED or not here:
        return False
    return any(fitting.drops(p) and here & set(singular_words(p.name)) for p in fitting.places)


def not_cut_before(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether a pattern is new, or she fits the place to the body and does not call it tried."""
    pattern, garment = fitting.garment.pattern, fitting.garment
    said = TO_BODY in {place.seam.fitting, garment.fitting, *(p.fitting for p in garment.parts)}
    return pattern == NEW or (said and pattern != TRIED)


def settled_curve(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a seam between panels of which the pattern has been tried."""
    return place.role.id == PANEL and fitting.garment.pattern == TRIED


def settled_under_bones(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is sewn and trimmed before it is tried on: a known pattern, bones on its cloth.

    Those are tried on in their channels, over seams that are felled; what can still be let out
    beside them is basted as ever.
    """
    trimmed = TRIM in {op.id for op in fitting.stages(place)}
    body = place.role.id in DOWN_THE_BODY and place.op == "join" and trimmed
    boned = any(p.kind.id == BONING and set(p.cloths) & set(place.cloths) for p in fitting.places)
    return body and boned and fitting.garment.pattern == TRIED


def under_canvas(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether a canvas is laid over a seam of a front: its edges are not come at any more then.

    Where nobody has cut the pattern before it is basted, tried on and sewn before the canvas is in.
    """
    canvas = any(p.kind.id == "canvas" for p in fitting.places)
    return canvas and BEHIND not in singular_words(place.name) and place.unit != "lining"


def canvas_waits(fitting: Fitting) -> bool:
    """Whether a front is tried on in basted seams, and its canvas padded over them after that."""
    return any(under_canvas(p, fitting) and fitting.shapes(p) for p in fitting.places)


def pierced_once(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a seam or a dart of what keeps each hole, which a fitting may still move.

    A skin or a film takes one row for good, so it is only held for the fitting, and not sewn. What
    is laid over a dart has it sewn first.
    """
    sewn = place.op in (DART, *SEWN_IN) and fitting.keeps(place) == HOLES_FOR_GOOD
    close = (place.seam.fitting or fitting.degree) == TO_BODY
    if not (sewn and close and fitting.may_move(place) and fitting.concerned(place)):
        return False
    body = place.role.fitted or place.op == DART or place.role.id in DOWN_THE_BODY
    body = body or runs_across(place)
    clear = place.op != DART and BEHIND in singular_words(place.name)  # the canvas is in front
    others = (p for p in fitting.places if not (clear and p.kind.id == "canvas"))
    return body and not any(_covers(p, place) for p in others if p.kind.family != STAY)


def runs_across(place: SeamPlace) -> bool:
    """Whether it joins a piece to the back or the front, below the shoulder, as a yoke is."""
    named = place.role.id == PLAIN and nouns.HALVES & set(singular_words(place.name))
    return place.kind.id in (YOKE, SEAM) and (place.role.id == YOKE or bool(named))


def off_again(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it hangs the back on a front that is cut into after the fitting, then padded."""
    ours = [p for p in fitting.places if set(p.cloths) & set(place.cloths)]
    pockets = (p for p in ours if p.kind.id in POCKETS)
    padded = any(p.kind.id == "canvas" for p in ours)
    return place.role.id == SHOULDER and padded and any(map(fitting.cut_into, pockets))


def toile_first(fitting: Fitting) -> bool:
    """Whether a toile is sewn: of a new pattern, and of a skin unless the pattern is known."""
    if fitting.garment.pattern or fitting.degree != TO_BODY:
        return fitting.garment.pattern == NEW and fitting.degree != NOT
    return any(pierced_once(place, fitting) for place in fitting.places)


def _covers(over: SeamPlace, dart: SeamPlace) -> bool:
    flat = over.kind.family in COVERING and over.kind.id not in POCKETS
    return over.kind.id == "canvas" or (flat and crosses(over, dart))


def closes_the_body(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it is a side, a seam of a leg or a seat of trousers that are fitted to the body.

    So is the side of a skirt that darts shape and that hangs from no bodice. The sides of a dress
    are sewn before it is tried on (`sewing-book-ch4`), and let out there.
    """
    legs = any(p.role.id == CROTCH for p in fitting.places) or _skirt_with_darts(fitting)
    fitted = place.role.fitted or place.role.id == INSEAM
    round_it = fitted and (place.role.closes or place.role.id == CROTCH)
    close = (place.seam.fitting or fitting.degree) == TO_BODY and fitting.concerned(place)
    return legs and round_it and close and place.op == "join" and place.unit != "lining"


def _skirt_with_darts(fitting: Fitting) -> bool:
    """Whether a skirt is shaped by darts and hangs by itself from the waist."""
    shell = [p for p in fitting.places if p.unit != "lining"]
    above = any(p.role.id in UPPER_ROLES or p.role.id == WAIST for p in shell)
    return not above and any(p.op == DART for p in shell) and any(p.role.id == SIDE for p in shell)


def sleeve_tried(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it closes a sleeve that has to hang in its armhole at the fitting.

    So it does where its own seam or that of the armhole, as one that is lapped over a cut edge or
    piped, is past recall once it is sewn.
    """
    if place.role.id != UNDERARM or place.unit == "lining" or place.op != "join":
        return False
    heads = (p for p in fitting.places if hangs_a_sleeve(p))
    return any(p.op in fitting.past_of(p) for p in (place, *heads))


def shuts_a_slit(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether it closes a sleeve whose slit is cut and bound only once it has been tried on."""
    slits = (p for p in fitting.places if p.kind.id == p.role.id == PLACKET and fitting.cut_into(p))
    return place.role.id in CLOSES_A_SLEEVE and any(related(place, slit) for slit in slits)


def hangs_a_sleeve(place: SeamPlace) -> bool:
    """Whether a sleeve hangs from it at the fitting; one with ease is only pinned in there."""
    head = place.role.id == ARMHOLE and place.unit != "lining" and place.op in SEWN_IN
    return head and all(stage.work != "gather" for stage in place.method.stages)


def lining_waits(place: SeamPlace, fitting: Fitting) -> bool:
    """Whether a seam of the lining is closed as the shell was fitted, for the pattern is new."""
    body = place.role.id in DOWN_THE_BODY and fitting.degree != NOT
    new = fitting.cut_anew or (body and fitting.garment.pattern == NEW)
    return place.unit == "lining" and new
