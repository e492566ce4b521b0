"""The care of the whole garment as every part of an answer tells it: what its label may say.

A sheet that allows a bleach which the label forbids would have the maker promise what she cannot
keep. So silence counts on the sheet as it counts on the label, and what nobody but a fibre speaks
of is told on both. What clashes stays the clash that it is.
"""

from __future__ import annotations

from msgspec.structs import replace

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict, decide
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import Said
from advisor.knowledge.labels import CARE
from advisor.knowledge.model import Aspect, Claim, Knowledge
from advisor.label.care import IRON, ORIGIN, QUIET, CareLine, staying_lines

SILENT = "Nobody says how it bears this, and silence is no permission."
LABEL = "the label"
USUAL_IRON, WITHOUT_STEAM = "110", "110 no steam"


def as_labelled(judgement: Judgement, knowledge: Knowledge) -> Judgement:
    """A judgement in which the care of the garment is that of its label.

    Args:
        judgement: of a garment; a mere question has no label.
        knowledge: with the aspects, and what fibres bear in cleaning.
    """
    place = Place("garment", judgement.garment.name)
    said = dict(judgement.verdicts.get(place, {}))
    for line in staying_lines(judgement, knowledge):
        if line.word is not None:
            said[line.aspect] = verdict_of(line, knowledge.aspects[line.aspect])
    care = {aspect: said.pop(aspect) for aspect in CARE if aspect in said}
    return replace(judgement, verdicts={**judgement.verdicts, place: {**said, **care}})


def verdict_of(line: CareLine, aspect: Aspect) -> Verdict:
    """The verdict behind a line of the label, with everybody whom it heard.

    Raises:
        ValueError: a line whose parts clash has no answer.
    """
    if line.word is None:
        raise ValueError(f"the parts clash in {line.aspect}")
    at = aspect.words.index(_said(line))
    heard = [*line.heard, *(_silence(aspect, name) for name in line.silent)]
    found = decide(aspect, heard)
    if found.pick == at:
        return found
    # A label names the hardest treatment that all parts bear, whatever somebody would rather.
    return decide(aspect, [*heard, _up_to(LABEL, aspect, at, "It is what a label may say.", at)])


def _said(line: CareLine) -> str:
    """The answer with what the label adds to it, where the aspect has a word for that."""
    steamless = line.aspect == IRON and line.no_steam and line.word == USUAL_IRON
    return WITHOUT_STEAM if steamless else str(line.word)


def _silence(aspect: Aspect, name: str) -> Said:
    quiet = aspect.words.index(QUIET[aspect.id])
    said = _up_to(name, aspect, quiet, SILENT, None)
    return replace(said, cloths=frozenset((name,)))


def _up_to(who: str, aspect: Aspect, at: int, why: str, best: int | None) -> Said:
    """Somebody allows nothing harder than a word: scales rise to it, options come down to it."""
    span = (0.0, float(at)) if aspect.kind == "scale" else None
    mask = 0 if span else ((1 << len(aspect.words)) - 1) & ~((1 << at) - 1)
    wanted = None if best is None else float(best)
    claim = Claim(aspect.id, span, mask, wanted, "must", "damage", why, ("derived",), 2, ORIGIN)
    return Said(who, claim)
