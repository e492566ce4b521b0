"""Who is told to be pressed by itself has a step for it, with its own heat and in time."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.answer.ownheat import with_irons
from advisor.claims.collect import Place
from advisor.claims.judgement import Advice
from advisor.claims.workarounds import ALONE, LINING, Instruction
from advisor.decide.advise import advise
from advisor.knowledge.model import LIMIT_ASPECT
from advisor.order.bastedin import NEAR
from advisor.order.tasks import Task
from advisor.order.work import Work, order_of
from advisor.project.load import load_project
from tests.garments.whole import FILES, decided, known, read, stands
from tests.garments.whole import ordered as order_from

BY_ITSELF = (ALONE, LINING)
ON_ITS_OWN_PIECE = frozenset({"stay", "tape"})
"""What is laid on one piece brings no other cloth near it; what melts has its own rule."""


def alone(work: Work) -> dict[str, Task]:
    """The steps of an order that press a cloth by itself, by cloth."""
    return {t.needy: t for t in work.tasks.values() if t.op == "press-alone"}


def told(advice: Advice) -> list[Instruction]:
    """Who is told to be pressed alone, and before what."""
    return [one for one in advice.judgement.instructions if one.kind in BY_ITSELF]


def early(advice: Advice) -> set[str]:
    """The cloths that the maker presses first, or that a conflict says to."""
    judgement = advice.judgement
    said = {n for seam in judgement.garment.seams for n in seam.apart}
    return said | {n for c in judgement.conflicts for clash in c.clash for n in clash.cloths}


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_each_cloth_told_to_be_pressed_by_itself_has_a_step_for_it_in_time(file: Path) -> None:
    """And each such step is told, with the iron that the step is set to."""
    advice = advise(load_project(file, known()), known())
    work = order_of(advice, known())
    steps, entries = alone(work), known().entries
    cloths = {n: entries[c.entry].kind for n, c in advice.judgement.garment.cloths.items()}
    for one in told(advice):
        before = {n for n in one.tender if cloths[n] == "cloth"}
        for name in one.needy if one.kind == ALONE else ():
            assert name in steps, f"no step presses {name} before {sorted(one.tender)}"
            assert steps[name].step.iron is not None
            assert before <= steps[name].tender
    late = [
        (task.id, other.id)
        for task in steps.values()
        for other in map(work.tasks.get, work.order[: work.order.index(task.id)])
        if other is not None and other.place is not None
        if other.place.name in task.meets and other.op in {*NEAR, "baste"} - ON_ITS_OWN_PIECE
    ]
    assert [] == late
    after = told(with_irons(advice, work))
    irons = {i.cloth: i for one in after for i in one.irons}
    assert {n for one in told(advice) for n in one.needy} == {n for one in after for n in one.needy}
    assert set(steps) <= set(irons) | early(advice)
    for name, iron in irons.items():
        state = steps[name].step.iron
        assert state is not None
        assert (state.temperature_c, state.moisture) == (iron.start, iron.moisture)
        assert steps[name].at_most == iron.most


WINDOW = """
garment: Osier cutter's gilet
fitting: loosely
fabrics:
  shell: {fabric: waxed cotton, fibres: {cotton: 100}}
  rib: {fabric: rib knit, fibres: {acrylic: 60, wool: 40}}
  bag: {fabric: ripstop, fibres: {nylon: 100}}
seams:
  - {name: pocket zip, layers: [shell, {notion: coil zip}, bag], length: 18 cm, times: 2}
  - {name: pocket bag, layers: [bag, bag], length: 60 cm, times: 2}
  - {name: side panel, layers: [shell, rib], length: 46 cm, times: 4}
"""


def test_a_bag_is_pressed_before_the_zip_that_joins_it_to_a_waxed_cloth() -> None:
    """A zip alone is walked round; where its place holds the wax, the iron would melt that."""
    work = order_from(WINDOW)
    assert stands(work, "hot press bag", "stitch the window of pocket zip", "set pocket zip")


def test_every_view_says_how_hot_a_cloth_is_pressed_by_itself() -> None:
    """'Press the rib pieces by themselves' alone leaves her without a setting."""
    lines = [one.text for one in read(WINDOW).instructions if one.kind == ALONE]
    assert any("joined: rib at most 110 °C (one dot, low end), dry" in line for line in lines)


TROUSERS = """
garment: Cooper's half-lined trousers
fitting: to the body
fabrics:
  cloth: {fabric: suiting, fibres: {linen: 55, wool: 45}, weight: 270 g/m2}
  knee: {fabric: habutai, fibres: {silk: 100}}
  pocketing: {fabric: cotton twill, fibres: {cotton: 100}}
seams:
  - {name: half lining, layers: [cloth, knee], length: 60 cm, kind: underlining, times: 2}
  - {name: front pocket edge, layers: [cloth, pocketing], length: 18 cm, edge: turned, times: 2}
  - {name: pocket bag, layers: [pocketing, pocketing], length: 48 cm, times: 2}
  - {name: outseam, layers: [cloth, cloth], length: 106 cm, times: 2}
  - {name: crotch, layers: [cloth, cloth], length: 62 cm, shape: curved}
  - {name: waist hook, layers: [cloth, {notion: hook and bar}]}
"""


def test_legs_are_pressed_damp_before_the_silk_is_mounted_and_pocketing_waits_for_nothing() -> None:
    """Pocketing is joined to no silk, and the iron walks round a hook."""
    work = order_from(TROUSERS)
    assert stands(work, "hot press cloth", "baste half lining")
    assert "hot press pocketing" not in work.order
    lines = [one.text for one in read(TROUSERS).instructions if one.kind == ALONE]
    assert lines
    assert not any("hook" in line or "pocketing" in line for line in lines)


COAT = """
garment: Pilot's coat
fabrics:
  coat: {fabric: camel hair coating, fibres: {wool: 70, camel: 30}}
  pile: {fabric: stretch velvet, fibres: {polyester: 90, elastane: 10}}
seams:
  - {name: side, layers: [coat, coat], length: 90 cm, times: 2}
  - {name: collar seam, layers: [pile, pile], length: 40 cm}
"""


@pytest.mark.parametrize("place", ["side", "collar seam"])
def test_what_is_only_steamed_is_told_so_where_it_is_pressed(place: str) -> None:
    """Sheet and step say how far off the iron is held, and whence steam comes at a cool dial."""
    found = read(COAT)
    motion = next(v for v in found.verdicts if (v.place, v.aspect) == (place, "press.motion"))
    assert "held 12 mm off, below two dots with a steamer" == motion.text
    assert found.work is not None
    assert [f"the iron {motion.text}."] == [
        step.does.split("; ")[-1] for step in found.work.order if step.step == f"press {place}"
    ]


def test_nobody_is_told_to_touch_a_pile_that_is_only_steamed() -> None:
    """'So that it touches the back of the seam' belongs to an iron that is set down."""
    lines = " ".join(line.text for line in read(COAT).advice)
    assert "touches the back" not in lines
    assert "until it is cool and dry" in lines


SMOCK = """
garment: Beekeeper's smock
fabrics:
  shell: {fabric: linen suiting, fibres: {linen: 100}}
  pocket: {fabric: organza, fibres: {nylon: 100}}
seams:
  - {name: shoulder, layers: [shell, shell], length: 14 cm, times: 2}
  - {name: patch pocket, layers: [shell, pocket], length: 45 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 70 cm, times: 2}
  - {name: hem, layers: [shell], length: 120 cm, edge: hem}
"""


def test_a_shell_is_pressed_hot_before_a_tender_pocket_is_laid_on() -> None:
    """The pocket is the only place where the two meet, and no conflict speaks of it."""
    work = order_from(SMOCK)
    assert stands(work, "press shoulder", "hot press shell", "stitch on patch pocket", "join side")


TROUSER_FILE = next(file for file in FILES if file.stem == "conductor_trousers")


def test_sheet_and_order_hold_a_seam_to_one_number() -> None:
    """300 °F beside the 150 mark: the cooler of the two stands in both."""
    found = decided(TROUSER_FILE)
    assert found.work is not None
    tasks = [t for t in found.work.tasks.values() if t.op in ("press", "turn") and t.place]
    unlike = []
    for task in tasks:
        assert task.place is not None
        heat = found.advice.judgement.verdicts[Place("seam", task.place.name)][LIMIT_ASPECT]
        high = getattr(heat.advised, "high", None)
        if task.at_most is not None and high is not None and 0 < abs(high - task.at_most) <= 2:
            unlike.append((task.id, high, task.at_most))
    assert [] == unlike
    assert any(task.at_most == 149 for task in tasks)
