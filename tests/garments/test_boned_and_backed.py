"""Structure under a tender outside: what carries the load, bears no damp, is laced or tied."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.answer.ordernotes import keep_off_notes
from advisor.answer.pipeline import Parts, answer
from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Advice
from advisor.claims.valuesets import Choice, Span
from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
from advisor.render.bought_words import bought_text
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

HEAD = """garment: Small case
fitting: to the body
{who}
maker: {{machine: household, overlocker: no}}
fabrics:
  face: {{fabric: taffeta, fibres: {{silk: 100}}, weight: 90 g/m2}}
  coutil: {{fabric: coutil, fibres: {{cotton: 100}}, weight: 260 g/m2}}
  crepe: {{fabric: wool crepe, fibres: {{wool: 100}}, weight: 240 g/m2}}
  velvet: {{fabric: velvet, fibres: {{silk: 18, viscose: 82}}, weight: 220 g/m2}}
  linen: {{fabric: linen suiting, fibres: {{linen: 100}}, weight: 200 g/m2}}
  satin: {{fabric: satin, fibres: {{silk: 100}}, weight: 110 g/m2}}
  boiled: {{fabric: boiled wool, fibres: {{wool: 100}}, weight: 380 g/m2}}
  acetate: {{fabric: satin, fibres: {{acetate: 100}}, weight: 110 g/m2}}
  net: {{fabric: net, fibres: {{nylon: 100}}, weight: 60 g/m2}}
  tulle: {{fabric: tulle, fibres: {{nylon: 100}}, weight: 18 g/m2}}
  velveteen: {{fabric: velveteen, fibres: {{cotton: 100}}, weight: 290 g/m2}}
seams:
"""


def written(rows: tuple[str, ...], who: str) -> str:
    """The project of a few places, with the cloths that lie in them."""
    said = "\n".join(f"  - {{name: {row}}}" for row in rows)
    lines = HEAD.format(who=who).splitlines()
    kept = [line for line in lines if "{fabric: " not in line or line.split(":")[0].strip() in said]
    return "\n".join([*kept, said, ""])


@cache
def judged(*rows: str, who: str = "worn by: adult") -> Advice:
    """A garment of a few places."""
    return advise(garment_of(parse_yaml(written(rows, who), "p.yaml"), known()), known())


@cache
def worked(*rows: str, who: str = "worn by: adult") -> Work:
    """Its order of work."""
    return order_of(judged(*rows, who=who), known())


def verdict(found: Advice, place: str, aspect: str) -> Verdict:
    """What is decided of a place."""
    return found.judgement.verdicts[Place("seam", place)][aspect]


def options(found: Advice, place: str, aspect: str) -> set[str]:
    """The words that are advised."""
    one = verdict(found, place, aspect)
    assert isinstance(one.advised, Choice)
    return {one.aspect.words[i] for i in one.advised.options()}


MOUNT = "mounting, layers: [face, coutil], kind: underlining"
PANELS = "panel seams, layers: [face, coutil, coutil, face], length: 34 cm, shape: curved, times: 8"
BONES = "bones, layers: [coutil, {notion: spiral steel boning}, coutil], length: 30 cm, times: 8"
FACE_ALONE = "panel seams, layers: [face, face], length: 34 cm, shape: curved, times: 8"


@pytest.mark.parametrize(
    "rows",
    [(MOUNT, f"{PANELS}, stress: high"), (MOUNT, PANELS, BONES), (MOUNT, FACE_ALONE, BONES)],
    ids=["said to be pulled hard", "boned", "boned, its backing not named"],
)
def test_the_backing_that_carries_the_load_says_how_its_seam_is_sewn(rows: tuple[str, ...]) -> None:
    """Firm thread, a short stitch and the coutil's needle, as far as the silk bears it (85)."""
    found = judged(*rows)
    assert options(found, "panel seams", "thread.fibre") == {"core-spun polyester", "polyester"}
    assert verdict(found, "panel seams", "stitch.length").pick == 2.0
    assert verdict(found, "panel seams", "needle.size").pick == 80.0
    size = verdict(found, "panel seams", "needle.size").allowed
    assert isinstance(size, Span)
    assert size.high == 85.0


def test_without_a_load_the_face_says_how_it_is_sewn() -> None:
    """Silk taffeta keeps its soft thread and its fine needle."""
    found = judged(MOUNT, PANELS)
    assert options(found, "panel seams", "thread.fibre") == {"cotton", "silk"}
    assert verdict(found, "panel seams", "needle.size").pick == 75.0


def test_a_net_that_carries_bones_asks_for_a_firm_thread_and_nothing_else() -> None:
    """It is too fine to say how thick the needle is; a soft net carries nothing."""
    rows = (MOUNT.replace("coutil", "net"), FACE_ALONE, BONES.replace("coutil", "net"))
    found = judged(*rows)
    assert options(found, "panel seams", "thread.fibre") <= {"core-spun polyester", "polyester"}
    assert verdict(found, "panel seams", "needle.size").pick == 70.0
    soft = judged(*(row.replace("net", "tulle") for row in rows))
    assert options(soft, "panel seams", "thread.fibre") == {"cotton", "silk"}


def test_a_loaded_seam_is_sewn_a_second_time_after_the_fitting() -> None:
    """Two rows on one line, the allowances left whole."""
    order = worked(MOUNT, f"{PANELS}, stress: high").order
    assert order.index("fit") < order.index("stitch again panel seams")
    assert "stitch again panel seams" not in worked(MOUNT, PANELS).order


GROMMETS = "lacing grommets, layers: [face, coutil, {notion: grommet}], number: 20"
LACING = "lacing, layers: [face, {notion: lacing cord}]"


def test_a_lacing_is_threaded_last_and_neither_joined_nor_neatened() -> None:
    """Through holes that are there; nothing of a cord is sewn or pressed as a seam."""
    order = worked(MOUNT, f"{PANELS}, stress: high", GROMMETS, LACING).order
    assert {name for name in order if name.endswith(" lacing")} == {"lace up lacing"}
    assert order.index("set lacing grommets") < order.index("lace up lacing")


def strangles(name: str, layers: str, who: str) -> bool:
    """Whether ties of that name are a danger."""
    row = f"{name}, layers: {layers}, length: 25 cm, times: 2"
    conflicts = judged(row, who=who).judgement.conflicts
    return any(c.aspect == "edge.drawn" and c.severity == "injury" for c in conflicts)


RIBBON = "[velvet, {notion: satin ribbon}]"


@pytest.mark.parametrize(
    ("name", "layers", "who", "hurts"),
    [
        ("neck ties", RIBBON, "worn by: child", True),
        ("neck ties", "[face, face]", "worn by: child", True),
        ("hood strings", RIBBON, "worn by: child", True),
        ("neck ties", RIBBON, "worn by: adult", False),
        ("waist ties", RIBBON, "worn by: child", False),
        ("neck strap", "[face, face]", "worn by: child", False),
    ],
)
def test_ties_at_hood_or_neck_of_a_child_hurt(
    name: str, layers: str, who: str, hurts: bool
) -> None:
    """EN 14682: no cord that ties there, a ribbon or a strip of cloth as little as a drawcord."""
    assert strangles(name, layers, who) == hurts


def test_the_order_sews_no_ties_to_the_neck_of_a_child() -> None:
    """It says to leave them off; an adult's ribbon is sewn on, and not turned like a tube."""
    row = f"neck ties, kind: ties, layers: {RIBBON}, length: 25 cm, times: 2"
    assert "settle neck ties" in worked(row, who="worn by: child").order
    adult = worked(row).order
    assert "sew on neck ties" in adult
    assert "turn through neck ties" not in adult


ARMHOLE = "armhole, layers: [{pile}, crepe], length: 44 cm, shape: curved, times: 2"


def test_no_damp_cloth_comes_under_the_iron_beside_a_velvet() -> None:
    """The wool is pressed damp by itself before; velveteen of cotton bears it."""
    found = judged(ARMHOLE.format(pile="velvet"))
    assert verdict(found, "armhole", "press.moisture").pick == 0.0
    told = {(i.kind, *sorted(i.needy), *sorted(i.tender)) for i in found.judgement.instructions}
    assert ("alone", "crepe", "velvet") in told
    assert not found.judgement.conflicts
    beside = judged(ARMHOLE.format(pile="velveteen"))
    assert verdict(beside, "armhole", "press.moisture").pick == 1.0


LINEN_BODY = (
    "bodice mounting, layers: [linen, coutil], kind: underlining",
    "bodice side, layers: [linen, coutil, coutil, linen], length: 22 cm, times: 2",
    "shoulder, layers: [face, linen], length: 10 cm, times: 2",
    "neck edge, layers: [linen, coutil, linen], length: 60 cm, shape: curved, edge: turned",
)


def notes(work: Work) -> dict[str, str]:
    """What is warned of near each pressing."""
    return keep_off_notes(work, "metric")


def test_silk_that_ends_in_a_hot_seam_is_pressed_as_it_bears_and_covered_by_nothing() -> None:
    """It lies in the seam under the iron, where no towel comes between."""
    told = notes(worked(*LINEN_BODY))["press neck edge"]
    assert told == "Near it face: where it ends in the seam go no hotter than 130 °C, and dry."


def test_what_is_basted_behind_is_not_covered_with_a_towel() -> None:
    """It is a face where it is seen, and lies inside where it backs another."""
    backed = worked("mounting, layers: [linen, face], kind: underlining", *LINEN_BODY[1:2])
    assert "face" not in backed.faces
    assert "linen" in backed.faces


def test_the_iron_says_what_the_order_warns_of() -> None:
    """Both views name what is in by the time that something near it is pressed hotter."""
    garment = garment_of(parse_yaml(written(LINEN_BODY, "worn by: adult"), "p.yaml"), known())
    told = answer(garment, known(), Parts(iron=True))
    near = [item for item in told.instructions if item.kind == "near"]
    assert [("face",)] == [item.tender for item in near][:1]
    assert "neck edge" in near[0].places


def test_the_last_press_starts_at_the_gentlest_cloth() -> None:
    """Silk with linen: 110 as at every seam of the two, and not the 140 that linen would like."""
    found = judged(
        "side, layers: [linen, linen], length: 40 cm, times: 2",
        "waist, layers: [linen, satin], length: 68 cm",
        "hem, layers: [satin], length: 150 cm, edge: hem",
    )
    whole = found.judgement.verdicts[Place("garment", "Small case")]["press.temperature"]
    assert (whole.pick, verdict(found, "waist", "press.temperature").pick) == (110.0, 110.0)


def test_a_lining_or_a_binding_sets_no_iron_of_the_whole() -> None:
    """Linen is pressed as linen at the last, whatever silk binds its edges."""
    rows = (
        "side, layers: [linen, linen], length: 40 cm, times: 2",
        "neck, layers: [linen, satin], length: 60 cm, kind: bound edge",
    )
    whole = judged(*rows).judgement.verdicts[Place("garment", "Small case")]["press.temperature"]
    assert (whole.pick or 0.0) >= 140.0


COLLAR = (
    "shoulder, layers: [velvet, velvet], length: 12 cm, times: 2",
    "side, layers: [velvet, velvet], length: 40 cm, times: 2",
    "stand collar, layers: [velvet, velvet], length: 40 cm, edge: turned",
    "collar to neck, layers: [velvet, velvet], length: 40 cm, shape: curved",
)


def test_a_collar_is_made_first_and_set_with_nothing_cut_before_the_fitting() -> None:
    """Its edge is turned by itself; the seam at the neck is graded when the body fits."""
    order = worked(*COLLAR).order
    assert order.index("turn stand collar") < order.index("join collar to neck")
    assert order.index("fit") < order.index("grade collar to neck")


TABS = "tabs, layers: [velvet, crepe], length: 24 cm, edge: turned, times: 8"
BODY = (*COLLAR[:2], "waist, layers: [velvet, velvet, crepe], length: 68 cm")


def test_tabs_all_round_are_the_lower_edge() -> None:
    """They are made up, turned and caught in the waist; below them nothing is left to hem."""
    order = worked(*BODY, TABS).order
    assert "turn through tabs" in order
    assert "hem" not in order
    assert "hem" in worked(*BODY, TABS.replace("tabs, l", "shoulder tabs, l")).order


def test_no_tape_holds_a_gusset() -> None:
    """It has to give; a neck of the same felted cloth is taped."""
    row = "{}, layers: [boiled, boiled], length: 30 cm, stress: high"
    for name, held in (("gusset", False), ("neck seam", True)):
        steps = [s for s in worked(row.format(name)).order if s.startswith("stay ")]
        assert bool(steps) == held


INTERFACED = "collar interfacing, layers: [{cloth}, {{notion: woven fusible interfacing}}]"


def test_nothing_is_fused_to_a_velvet_also_where_the_interfacing_has_a_place_of_its_own() -> None:
    """The clash rules the glue out, so the order bastes what is named instead; wool is fused."""
    assert "interface collar interfacing" in worked(INTERFACED.format(cloth="velvet")).order
    assert "fuse collar interfacing" not in worked(INTERFACED.format(cloth="velvet")).order
    assert "fuse collar interfacing" in worked(INTERFACED.format(cloth="satin")).order


def test_a_zip_that_comes_apart_is_shortened_at_its_top_alone() -> None:
    """Its pin and box cannot be cut off; a closed one is cut at its end by whoever likes."""
    rows = (
        "front zip, layers: [crepe, {notion: open-ended zip}], length: 62 cm",
        "pocket zip, layers: [crepe, {notion: coil zip}], length: 15 cm",
    )
    garment = garment_of(parse_yaml(written(rows, "worn by: adult"), "p.yaml"), known())
    kit = answer(garment, known(), Parts(shopping=True)).kit or ()
    told = {need.item: bought_text(need, "metric") for need in kit if need.cut_mm}
    assert "shortened at its top alone" in told["open-ended zip"]
    assert told["coil zip"] == "1 of 15 cm, or the next longer that the shop has"


SEAT = "seat backing, layers: [crepe, acetate], kind: underlining"
SIDE = "skirt side, layers: [crepe, crepe], length: 70 cm, times: 2"


def behind(*rows: str) -> list[tuple[float | None, float | None]]:
    """What the iron is where a backing lies and where it ends before, of each such line."""
    found = judged(*rows).judgement.instructions
    return [(item.most, item.alone) for item in found if item.kind == "behind"]


def test_what_may_be_backed_half_way_is_told_with_both_settings() -> None:
    """Acetate behind wool crepe: 110 as far as it reaches, 150 where there is none."""
    assert behind(SEAT, SIDE) == [(110.0, 150.0)]


def test_one_setting_is_told_where_the_seam_names_its_backing_or_both_bear_alike() -> None:
    """Named, it lies there; silk behind wool is pressed as the wool is."""
    assert behind(SEAT, SIDE.replace("[crepe, crepe]", "[crepe, acetate, acetate, crepe]")) == []
    assert behind(SEAT.replace("acetate", "satin"), SIDE) == []


def test_a_modesty_panel_is_made_up_by_itself_and_holds_up_no_bones() -> None:
    """A lined panel behind the lacing: the bones are in their channels when it is tried on."""
    panel = "modesty panel, layers: [linen, face], length: 33 cm, edge: turned"
    order = worked(MOUNT, f"{PANELS}, stress: high", BONES, panel).order
    assert "turn through modesty panel" in order
    assert order.index("insert bones in bones") < order.index("fit")


def test_a_face_that_is_not_named_is_spared_all_the_same() -> None:
    """Under a stay or a channel on the backing lies silk, which spots, or velvet that crushes."""
    stay = "waist stay, layers: [coutil, {notion: stay tape}], length: 64 cm"
    assert verdict(judged(MOUNT, stay), "waist stay", "press.moisture").pick == 0.0
    assert verdict(judged(stay), "waist stay", "press.moisture").pick == 1.0
    velvet = judged(MOUNT.replace("face", "velvet"), BONES)
    board = {"hard board", "padded board", "ham or roll"}
    assert not board & options(velvet, "bones", "press.surface")
