"""Structure under a tender outside: what carries the load, bears no damp, is laced or tied."""

from __future__ import annotations

from functools import cache

import pytest

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.claims.judgement import Advice
from advisor.claims.valuesets import Choice, Span
from advisor.decide.advise import advise
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of
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
  velveteen: {{fabric: velveteen, fibres: {{cotton: 100}}, weight: 290 g/m2}}
seams:
"""


@cache
def judged(*rows: str, who: str = "worn by: adult") -> Advice:
    """A garment of a few places."""
    text = HEAD.format(who=who) + "\n".join(f"  - {{name: {row}}}" for row in rows) + "\n"
    return advise(garment_of(parse_yaml(text, "p.yaml"), known()), known())


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
    row = f"{name}, kind: ties, layers: {layers}, length: 25 cm, times: 2"
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
