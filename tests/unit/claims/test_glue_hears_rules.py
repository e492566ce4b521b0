"""A glue is fused only to what bears it, by its own file, its fibres and the rules about it."""

from __future__ import annotations

from advisor.claims.asking import LayerAsker
from advisor.claims.glued import lowest_lid, words_of
from advisor.claims.speakers import cloth_says
from advisor.knowledge.model import COLD
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

GLUE = "woven-fusible-interfacing"
"""It is fused through a damp cloth."""


def _bears(cloth: str) -> float:
    text = f"""
garment: Sample
fabrics: {{face: {cloth}}}
seams:
  - {{name: front facing, layers: [face, {{notion: woven fusible interfacing}}, face]}}
"""
    known = shipped()
    garment = garment_of(parse_yaml(text, "project.yaml"), known)
    face, asker = garment.cloths["face"], LayerAsker(garment, known)
    assert lowest_lid([*cloth_says(face, known)], known.entries[GLUE]) > COLD
    return lowest_lid([*words_of(face, asker, known)], known.entries[GLUE])


def test_a_rule_that_bars_the_damp_bars_the_glue() -> None:
    """What a rule says of silk and acetate counts as their own file does."""
    assert (COLD, COLD) == (_bears("pure silk satin"), _bears("pure acetate satin"))


def test_a_face_that_takes_up_no_water_is_fused() -> None:
    """Polyester alone: the rule is about other fibres, and its own limit is left."""
    assert _bears("pure polyester satin") == 150
