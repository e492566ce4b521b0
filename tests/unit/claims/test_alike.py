"""The edges of one cloth are finished alike, whatever else lies in the seam."""

from __future__ import annotations

from advisor.claims.collect import Place
from advisor.claims.judgement import Judgement
from advisor.decide.evaluate import judge
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known

SKIRT = """
garment: Skirt
maker: {machine: household, overlocker: 4-thread}
fabrics: {shell: {fabric: wool crepe, fibres: {wool: 100}, weight: 280 g/m2}}
seams:
  - {name: side, layers: [shell, shell], length: 60 cm, times: 2}
  - {name: zip, layers: [shell, {notion: concealed zip}, shell], length: 22 cm, lined: yes}
"""


# A crepe under 250 g/m2 is overlocked under a lining wherever an overlocker stands ready, whatever
# its neighbours are; a heavier one is pinked there by itself.


def _finish(text: str, place: str) -> str:
    judgement: Judgement = judge(garment_of(parse_yaml(text, "skirt.yaml"), known()), known())
    verdict = judgement.verdicts[Place("seam", place)]["seam.finish"]
    assert verdict.pick is not None
    return verdict.aspect.words[int(verdict.pick)]


def test_the_edges_beside_a_zip_are_overlocked_as_the_seam_below_it() -> None:
    """One edge runs on under the tape: nobody pinks its upper end and overlocks the rest."""
    assert ("overlocked", "overlocked") == (_finish(SKIRT, "side"), _finish(SKIRT, "zip"))


def test_another_cloth_s_edge_changes_nothing() -> None:
    other = SKIRT.replace("name: side, layers: [shell, shell]", "name: side, layers: [lawn, lawn]")
    other = other.replace("fabrics: {shell", "fabrics: {lawn: cotton lawn, shell")
    assert "pinked" == _finish(other, "zip")
