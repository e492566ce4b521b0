"""A cloak and a doublet as a theatre cutter reads them: what is cut, hung, caught in and felled.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, decide, tell
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

CLOAK = """garment: Ferryman's hooded cloak
fitting: loosely
pattern: new
maker: {machine: household}
fabrics:
  shell: {fabric: velvet, fibres: {cotton: 100}, weight: 280 g/m2}
  satin: {fabric: satin, fibres: {polyester: 100}, weight: 120 g/m2}
  gilt: {fabric: brocade, fibres: {polyester: 85, metallic-film: 15}, weight: 220 g/m2}
  canvas: {fabric: canvas, fibres: {cotton: 100}, weight: 240 g/m2}
parts:
  body: {layers: [satin, canvas, shell, gilt], separate: [satin], fitting: loosely}
seams:
  - {name: side, layers: [shell, shell], length: 130 cm, times: 2, shape: curved}
  - {name: shoulder, layers: [shell, shell], length: 16 cm, times: 2, shape: curved, stress: high}
  - {name: hand slits, layers: [shell, shell], length: 26 cm, times: 2, edge: faced}
  - {name: hood centre, layers: [shell, shell], length: 60 cm, shape: curved}
  - {name: hood to neck, layers: [shell, shell], length: 48 cm, shape: curved}
  - {name: neck stay, layers: [shell, {notion: stay tape}], length: 48 cm}
  - {name: hood edge, layers: [shell, satin], length: 80 cm, edge: turned}
  - {name: front edge, layers: [shell, satin], length: 132 cm, times: 2, edge: turned}
  - {name: lining side, layers: [satin, satin], length: 128 cm, times: 2}
  - {name: lining to neck, layers: [shell, satin], length: 48 cm, shape: curved, stitched by: hand}
  - {name: lining round slits, layers: [shell, satin], length: 52 cm, times: 2, stitched by: hand}
  - {name: hem, layers: [shell], length: 360 cm, edge: hem, shape: curved}
  - {name: lining hem, layers: [satin], length: 350 cm, edge: hem, shape: curved}
  - {name: throat clasp, on: [shell, canvas, gilt], fastening: clasps, number: 1, stress: high}
pieces:
  - {name: back, fabric: shell, width: 80 cm, height: 138 cm, number: 2}
  - {name: front, fabric: shell, width: 80 cm, height: 138 cm, number: 2}
"""
DOUBLET = """garment: Bailiff's doublet
fitting: to the body
pattern: new
maker: {machine: household}
fabrics:
  face: {fabric: brocade, fibres: {polyester: 100}, weight: 240 g/m2}
  firm: {fabric: canvas, fibres: {cotton: 100}, weight: 280 g/m2}
  lining: {fabric: calico, fibres: {cotton: 100}, weight: 130 g/m2}
seams:
  - {name: centre back, layers: [face, firm, firm, face], length: 46 cm, stress: high}
  - {name: side back, layers: [face, firm, firm, face], length: 44 cm, shape: curved, stress: high}
  - {name: side, layers: [face, firm, firm, face], length: 24 cm, times: 2, stress: high}
  - {name: shoulder, layers: [face, firm, firm, face], length: 13 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 24 cm, times: 2}
  - {name: collar seam, layers: [face, face, lining], length: 44 cm, shape: curved}
  - {name: wing edge, layers: [face, lining], length: 34 cm, times: 2, shape: curved, edge: turned}
  - {name: armhole, layers: [face, face, lining], length: 48 cm, times: 2, shape: curved}
  - {name: armhole lining, layers: [face, lining], length: 48 cm, times: 2, stitched by: hand}
  - {name: tab edge, layers: [face, lining], length: 36 cm, times: 8, shape: corner, edge: turned}
  - {name: waist seam, layers: [face, face, lining], length: 92 cm, stress: high}
  - {name: lining to waist, layers: [face, lining], length: 92 cm, stitched by: hand}
  - {name: front boning, layers: [firm, {notion: spiral boning}, lining], length: 48 cm, times: 2}
"""
MOUNTING = "  - {name: mounting, layers: [face, firm], length: 300 cm}\n  - {name: centre back,"


@cache
def told(text: str) -> Answer:
    """All that is told of a project but its label."""
    garment = garment_of(parse_yaml(text, "p.yaml"), known())
    return tell(decide(garment, known(), WHOLE), known(), WHOLE)


@pytest.mark.parametrize("name", ["hand slits", "arm slit", "sleeve slit", "keyhole"])
def test_a_slit_that_is_faced_is_slashed(name: str) -> None:
    """No edge is there to be turned before the slit is cut between the rows of its facing."""
    work = ordered(CLOAK.replace("hand slits", name))
    assert "placket-faced" == places(work)[name].method.id
    assert stands(work, f"face {name}", f"slash {name}", f"turn {name}")


def test_a_slit_is_cut_where_the_fitting_finds_the_hand() -> None:
    """Nothing moves it afterwards, and the lining is cut to match once it hangs."""
    work = ordered(CLOAK)
    assert stands(work, "fit", "face hand slits")
    assert stands(work, "turn hand slits", "hang", "slash lining round slits")
    assert stands(work, "slash lining round slits", "fell lining round slits")
    assert "strip" not in work.tasks["slash lining round slits"].step.does


def test_a_hood_is_tried_before_its_neck_is_closed() -> None:
    """Shoulder and hood are basted; the tape and the edge round the face wait for the fitting."""
    work = ordered(CLOAK)
    for basted in ("baste shoulder", "baste hood to neck"):
        assert stands(work, basted, "fit")
    for waits in ("join shoulder", "tape neck stay", "grade hood edge", "join hood to neck"):
        assert stands(work, "fit", waits)
    assert stands(work, "turn hood edge", "hold the lining at hood to neck", "join hood to neck")


def test_a_tried_pattern_has_settled_how_deep_its_hood_is() -> None:
    """The near miss: what was cut before needs no basted hood."""
    work = ordered(CLOAK.replace("pattern: new", "pattern: tried"))
    assert "baste hood to neck" not in work.tasks


def test_shell_and_lining_hang_apart_before_they_are_joined() -> None:
    """Joined at neck and front before the cloth has dropped, one drags the other."""
    work = ordered(CLOAK)
    assert stands(work, "hang", "fell lining to neck")
    assert stands(work, "hang", "join front edge")
    assert "each by itself" in work.tasks["hang"].step.does


def test_a_lining_felled_by_hand_has_nothing_to_grade() -> None:
    """Its edge is turned under: there is no allowance to trim, and no zip to keep clear of."""
    work = ordered(CLOAK)
    assert "hand-set-lining" == places(work)["lining to neck"].method.id
    assert "grade lining to neck" not in work.tasks
    assert "zip" not in work.tasks["fell lining to neck"].step.does


def test_the_clasp_of_a_cloak_carries_it_and_is_never_pressed() -> None:
    """It lies on the face, sewn through all layers, and no conflict is made of its cloths' heat."""
    answer = told(CLOAK)
    assert () == tuple(answer.conflicts)
    assert answer.weight is not None
    assert {"neck stay", "throat clasp"} == {hang.place for hang in answer.weight.hangs}
    work = ordered(CLOAK)
    assert "never through" not in work.tasks["fasten throat clasp"].step.does
    assert "through all layers" in work.tasks["fasten throat clasp"].step.does


def test_the_clasp_of_a_coat_is_sewn_to_what_is_behind_its_edge() -> None:
    """The near miss: sleeves and shoulders carry a coat, so nothing shows on its face."""
    sleeve = "  - {name: armhole, layers: [shell, shell], length: 50 cm, times: 2}\n  - {name: hem,"
    work = ordered(CLOAK.replace("  - {name: hem,", sleeve))
    assert "never through to the face" in work.tasks["fasten throat clasp"].step.does


@pytest.mark.parametrize("name", ["wing edge", "shoulder wing", "epaulettes"])
def test_a_wing_is_made_before_the_armhole_that_holds_it(name: str) -> None:
    """Whatever it is called, the seam takes in its open edge, which is basted on for that."""
    work = ordered(DOUBLET.replace("wing edge", name))
    assert stands(work, f"turn {name}", f"baste on {name}", "join armhole")
    assert stands(work, "press shoulder", f"baste on {name}")


@pytest.mark.parametrize("name", ["tab edge", "waist tab", "tabs"])
def test_tabs_are_caught_in_the_waist_once_it_is_fitted(name: str) -> None:
    """Not in the collar; and they are the lower edge, so that none is left to hem."""
    work = ordered(DOUBLET.replace("tab edge", name))
    assert stands(work, "fit", f"baste on {name}", "join waist seam")
    assert "hem" not in work.tasks


def test_a_tab_that_is_no_hem_goes_where_it_did() -> None:
    """The near miss: two tabs at a shoulder hang from no waist, and the lower edge is hemmed."""
    work = ordered(DOUBLET.replace("{name: tab edge,", "{name: shoulder tab,").replace("8,", "2,"))
    assert "hem" in work.tasks


def test_a_lining_is_felled_over_the_seam_that_it_covers() -> None:
    """Felled by hand it has no edge to pink or to grade, and it waits for the seam below it."""
    work = ordered(DOUBLET)
    assert stands(work, "join waist seam", "fell lining to waist")
    for name in ("armhole lining", "lining to waist"):
        assert not {f"neaten {name}", f"grade {name}"} & work.tasks.keys()


def test_bones_are_tried_on_after_the_first_fitting() -> None:
    """At the first one the seams are basted; at the second they are sewn, and the bones are in."""
    work = ordered(DOUBLET)
    steps = ("fit", "join side", "insert bones in front boning", "try on with bones")
    assert stands(work, *steps, "close front boning")
    assert stands(work, "press lining side", "insert bones in front boning")


def test_two_cloths_in_every_seam_are_asked_for_their_mounting() -> None:
    """Nobody bastes them to one unless a line says so; with it nothing is asked."""
    asked = {gap.line for gap in told(DOUBLET).missing or ()}
    assert "{name: mounting, layers: [face, firm]}" in asked
    mounted = told(DOUBLET.replace("  - {name: centre back,", MOUNTING))
    assert not any("mounting" in gap.line for gap in mounted.missing or ())


@pytest.mark.parametrize("line", ["", MOUNTING])
def test_a_firm_backing_stays_the_seams_that_it_lies_in(line: str) -> None:
    """A strip of the cloth on top would add plies where there are too many, and hold nothing."""
    work = ordered(DOUBLET.replace("  - {name: centre back,", line) if line else DOUBLET)
    assert not {"stay centre back", "stay side back", "stay side"} & work.tasks.keys()
    text = DOUBLET.replace("  - {name: centre back,", line) if line else DOUBLET
    for seam in told(text).seams:
        assert ("stay the seam" in str(seam)) == (seam.name == "waist seam")


def test_a_clasp_has_no_iron_and_no_allowance() -> None:
    """It is sewn on when all is pressed: no seam of it is pressed open, and none can slip."""
    side = "{name: side, layers: [shell, shell]"  # plain, for the iron comes on no turned velvet
    answer = told(CLOAK.replace(side, "{name: side, layers: [shell, canvas, shell]"))
    opened = [t.place for t in answer.advice if "flat as stitched, then open" in t.text]
    assert opened
    assert "throat clasp" not in opened
    clasp = next(place for place in answer.seams if place.name == "throat clasp")
    assert "part from the stitches" not in str(clasp)


def test_a_seam_of_the_slipping_cloth_alone_is_stayed() -> None:
    """The near miss: where no canvas lies in the seam, a strip takes the pull."""
    assert "stay waist seam" in ordered(DOUBLET).tasks


def test_a_doublet_hangs_from_its_shoulders() -> None:
    """No ribbon round the waist has to carry it; without shoulders one is told of."""
    stay = "waist stay of grosgrain ribbon"
    assert stay not in str(told(DOUBLET))
    hung = "  - {name: shoulder, layers: [face, firm, firm, face], length: 13 cm, times: 2}\n"
    assert stay in str(told(DOUBLET.replace(hung, "")))


PIPED = """
  - {name: neck facing, layers: [face, lining, {notion: piping cord}, lining], length: 40 cm, edge: turned, allowance: 20 mm}
pieces:
  - {name: piping strip, fabric: lining, width: WIDE, height: 140 cm, grain: bias, number: 6, joined: yes}
"""  # noqa: E501


@pytest.mark.parametrize(("wide", "narrow"), [("4 cm", True), ("5.3 cm", False), ("7 cm", False)])
def test_a_strip_covers_its_cord_and_two_allowances(wide: str, narrow: bool) -> None:
    """Round a cord of 4 mm, with 20 mm on each side, a strip takes 40 + 4 pi = 52.6 mm."""
    answer = told(DOUBLET.rstrip() + PIPED.replace("WIDE", wide))
    found = [check for check in answer.checks or () if check.id == "piping strip"]
    assert narrow == bool(found)
    assert all(52.57 == check.values[1] for check in found)


def test_a_canvas_in_one_place_is_basted_to_its_piece() -> None:
    """It makes nothing of its own, so something has to hold it; one that is mounted is held."""
    canvassed = CLOAK.replace("{name: hand slits, layers: [shell, shell]", SLIT_WITH_CANVAS)
    does = ordered(canvassed).tasks["interface hand slits"].step.does
    assert "Baste canvas to its piece" in does
    assert "interface hand slits" not in ordered(CLOAK).tasks
    assert not any(step.startswith("interface") for step in ordered(DOUBLET).tasks)


SLIT_WITH_CANVAS = "{name: hand slits, layers: [shell, canvas, shell]"


BORDERED = """  - {name: front border, layers: [gilt, shell], length: 132 cm, times: 2}
  - {name: front edge, layers: [gilt, shell, satin], length: 132 cm, times: 2, edge: turned}
"""
EDGE = "  - {name: front edge, layers: [shell, satin], length: 132 cm, times: 2, edge: turned}\n"


def test_a_border_lies_on_the_edge_that_is_turned_over_it() -> None:
    """It has an inner edge to sew and corners to mitre, and no allowance to overlock."""
    work = ordered(CLOAK.replace(EDGE, BORDERED))
    assert "border-laid-on" == places(work)["front border"].method.id
    assert stands(work, "turn under front border", "sew on front border", "join front edge")
    assert "neaten front border" not in work.tasks


def test_a_border_without_such_an_edge_is_joined_as_before() -> None:
    """The near miss: where no turned edge holds both cloths it may be a band of its own."""
    work = ordered(CLOAK.replace(EDGE, BORDERED.split("\n", maxsplit=1)[0] + "\n" + EDGE))
    assert "join front border" in work.tasks


def test_a_covered_cord_is_sewn_with_the_thread_of_its_seams() -> None:
    """Over a cord no row shows on the silk, and the place is pulled; alone silk asks for silk."""
    silk = "  silk: {fabric: taffeta, fibres: {silk: 100}, weight: 90 g/m2}\nseams:"
    cord = "\n  - {name: edge, layers: [face, silk, {notion: piping cord}, lining], edge: turned}\n"
    text = DOUBLET.replace("seams:", silk).rstrip() + cord
    text += "  - {name: puff, layers: [silk, silk], length: 30 cm}\n"
    picks = {v.place: v.text for v in told(text).verdicts if v.aspect == "thread.fibre"}
    assert "silk" not in picks["edge"]
    assert "cotton" not in picks["edge"]
    assert "silk" in picks["puff"]


TAPERED = "  - {name: gore, fabric: satin, width: 82 cm, height: 140 cm, number: 4, NARROW}"


@pytest.mark.parametrize(
    ("cloth", "taper", "told_so"),
    [("satin", True, True), ("satin", False, False), ("shell", True, False)],
)
def test_tapered_pieces_of_a_plain_satin_may_lie_head_to_tail(
    cloth: str, taper: bool, told_so: bool
) -> None:
    """Of 82 and 26 cm two want 108 cm of a width, head to tail; a pile keeps its way."""
    piece = TAPERED.replace("fabric: satin", f"fabric: {cloth}")
    end = "narrow end: 26 cm" if taper else "finished: no"
    piece = piece.replace("NARROW", end).replace(", finished: no", "")
    answer = told(CLOAK.rstrip() + "\n" + piece)
    says = [line for bought in answer.cloth or () for line in bought.says]
    assert told_so == any("head to tail" in line for line in says)


def test_a_seam_down_the_whole_length_is_not_stay_stitched() -> None:
    """Its curve is slight, and the row marks a pile; a shoulder and a short side give."""
    tasks = ordered(CLOAK).tasks
    assert "stay-stitch side" not in tasks
    assert "stay-stitch shoulder" in tasks
    short = CLOAK.replace("{name: side, layers: [shell, shell], length: 130 cm", SHORT_SIDE)
    assert "stay-stitch side" in ordered(short).tasks


SHORT_SIDE = "{name: side, layers: [shell, shell], length: 40 cm"
