"""The last press of a lined garment: its lining by itself, its shell damp where none lies under."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.combine import span_of
from advisor.claims.lifted import LIFTED
from advisor.claims.workarounds import Instruction
from tests.garments.whole import FOLDER, advice, changed, told, work

SKIRT, JACKET, KILT = "more/lined_skirt", "more/ferryman_blazer", "more/kilt"


def _parted(name: str) -> list[Instruction]:
    return [i for i in advice(name).judgement.instructions if i.kind == LIFTED]


def test_wool_is_pressed_damp_at_last_and_its_lining_dry() -> None:
    """The step and its iron keep to the lining; the wool has its own words and its own limit."""
    (one,) = _parted(SKIRT)
    assert (one.needy, one.tender) == ({"wool"}, {"lining"})
    step = work(SKIRT).tasks["last press"].step
    assert step.iron is not None
    assert step.iron.moisture == "dry"
    assert "Press the lining, and what cannot be parted from it, once more, dry" in step.does
    damp = "the wool from its right side through a damp cloth, at most 150 °C, where no lining lies"
    assert damp in step.does


def test_no_shell_passes_what_its_own_seams_bear() -> None:
    """What is told of the shell is no hotter than any place of it alone is pressed."""
    for name, shell in ((SKIRT, "wool"), (JACKET, "tweed"), (KILT, "tartan")):
        (one,) = _parted(name)
        judged = advice(name).judgement
        for seam in judged.garment.seams:
            if set(seam.cloths()) == {shell}:
                heat = judged.verdicts[Place("seam", seam.name)]["press.temperature"]
                tops = [span_of(s)[1] for s in heat.because if s.claim.guards]
                assert one.alone is not None
                assert one.alone <= min(tops), f"{name}: {seam.name}"


def test_the_whole_keeps_to_its_gentlest_layer() -> None:
    """The guard of the garment stands: parting says how the work goes and loosens nothing."""
    (one,) = _parted(JACKET)
    step = work(JACKET).tasks["last press"].step
    assert step.iron is not None
    assert step.iron.temperature_c <= 110 == one.most
    assert {"lining", "sleevelining", "pads"} <= one.tender


def test_every_view_tells_it_once() -> None:
    """The iron's row, the last press of the sheet and the instructions say the same."""
    answer = told(FOLDER / f"{SKIRT}.yaml")
    last = next(iron for iron in answer.irons if iron.scope == "garment")
    assert last.text.endswith("lies under the iron: lift the lining away from it")
    verdict = next(
        v for v in answer.verdicts if (v.scope, v.aspect) == ("garment", "press.temperature")
    )
    assert verdict.text.endswith("wool apart")
    (text,) = [i.text for i in answer.instructions if i.kind == LIFTED]
    assert "through a damp cloth, at most 150 °C" in text
    kept = [i.text for i in answer.instructions if i.kind == "lining"]
    assert not any("in the last press" in text for text in kept)


def test_layers_that_cannot_be_parted_are_pressed_as_the_gentler_one() -> None:
    """A lining that backs its shell, and a pile that the iron would flatten."""
    backed = "  - {name: side, layers: [wool, wool], length: 60 cm, times: 2}\n"
    held = "  - {name: skirt backing, kind: underlining, layers: [wool, lining], length: 60 cm}\n"
    last = changed(SKIRT, backed, f"{held}{backed}").tasks["last press"].step
    assert "once more, dry" in last.does
    assert "damp" not in last.does
    piled = changed(SKIRT, "gabardine, fibres: {wool: 100}", "velveteen, fibres: {cotton: 100}")
    assert "damp cloth" not in piled.tasks["last press"].step.does
