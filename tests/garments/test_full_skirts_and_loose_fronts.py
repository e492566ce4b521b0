"""A full skirt on a yoke with a petticoat that is a ring of its own; fronts that close loosely.

All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

from advisor.order.work import Work
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, stands

SKIRT = """garment: Lamp lighter's skirt
fabrics:
  over: {fabric: organza, fibres: {polyester: 100}}
  under: {fabric: lawn, fibres: {cotton: 100}}
  petti: {fabric: net, fibres: {nylon: 100}}
  yoke: {fabric: jersey, fibres: {cotton: 95, elastane: 5}}
seams:
  - {name: overskirt side, layers: [over, over], length: 66 cm, times: 2}
  - {name: underskirt side, layers: [under, under], length: 60 cm, times: 2}
  - {name: petticoat side, layers: [petti, petti], length: 35 cm, times: 2}
  - {name: petticoat flounce, layers: [under, {use: petti, fullness: 3}], length: 250 cm}
  - {name: yoke side, layers: [yoke, yoke], length: 18 cm, times: 2}
  - {name: skirt to yoke, layers: [yoke, {use: under, fullness: 2}, {use: over, fullness: 2.5}],
     length: 100 cm}
  - {name: underskirt hem, layers: [under], length: 200 cm, edge: hem}
"""


@cache
def sewn() -> Work:
    """Its order of work."""
    return ordered(SKIRT)


def test_a_skirt_is_joined_to_its_yoke_like_a_waist() -> None:
    """It is no yoke laid on a flat front: each side is closed and pressed before the gathers."""
    found = sewn()
    assert ("gathered-edge", "waist") == (
        places(found)["skirt to yoke"].kind.id,
        places(found)["skirt to yoke"].role.id,
    )
    for side in ("overskirt side", "underskirt side"):
        assert stands(found, f"join {side}", f"press {side}", "gather skirt to yoke")
    assert stands(found, "press yoke side", "join skirt to yoke")


def test_a_flounce_with_sides_of_its_own_is_set_as_a_ring() -> None:
    """The net is closed before it is drawn up, and the skirt before the net hangs on it."""
    found = sewn()
    assert stands(found, "lap petticoat side", "gather petticoat flounce", "join petticoat flounce")
    assert stands(found, "press underskirt side", "join petticoat flounce", "sew underskirt hem")


def test_no_fitting_waits_for_widths_that_are_drawn_up() -> None:
    """What a fitting would change in them goes into the gathers."""
    assert not {"baste overskirt side", "baste petticoat side"} & set(sewn().order)


GILET = """garment: Market gilet
fabrics:
  tweed: {fabric: tweed, fibres: {wool: 100}}
  crepe: {fabric: wool crepe}
seams:
  - {name: shoulder, layers: [tweed, tweed], length: 14 cm, times: 2}
  - {name: side, layers: [tweed, tweed], length: 30 cm, times: 2}
  - {name: front zip, layers: [tweed, {notion: open-end zip}], length: 50 cm}
  - {name: collar, layers: [crepe, tweed], length: 44 cm, shape: curved}
"""


def test_nothing_is_trimmed_that_ends_a_seam_which_may_still_be_changed() -> None:
    """The collar runs over the shoulders, so its allowances are kept until it has been tried on."""
    found = ordered(GILET)
    assert "collar-attach" == places(found)["collar"].role.id
    assert stands(found, "join shoulder", "fit", "grade collar", "close collar")


CARDIGAN = """garment: Ferry pilot's cardigan
fabrics:
  body: {fabric: boucle knit, fibres: {wool: 80, nylon: 20}, weight: 420 g/m2}
seams:
  - {name: side, layers: [body, body], length: 50 cm, times: 2}
  - {name: zip ribbon, layers: [body, {notion: grosgrain ribbon}], length: 62 cm, times: 2}
  - {name: front zip, layers: [body, {notion: open-end zip}], length: 62 cm}
"""


def test_a_ribbon_over_the_tape_comes_after_the_zip() -> None:
    """It hides the tape, which is stitched first."""
    assert stands(ordered(CARDIGAN), "set front zip", "stitch on zip ribbon")


def test_what_a_knit_is_made_of_is_what_she_says() -> None:
    """A woven cloth that lends its name to a knit brings its guards, and no fibres of its own."""
    garment = garment_of(parse_yaml(CARDIGAN, "p.yaml"), known())
    assert [{"wool": 80.0, "nylon": 20.0}] == [dict(mix) for mix in garment.cloths["body"].mixes]


DRESS = """garment: Ferry dress
fitting: to the body
fabrics:
  shell: {fabric: crepe, fibres: {viscose: 100}, weight: 180 g/m2}
  skirt: {fabric: georgette, fibres: {polyester: 100}, weight: 80 g/m2}
seams:
  - {name: shoulder, layers: [shell, shell], length: 10 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 22 cm, times: 2}
  - {name: skirt side, layers: [skirt, skirt], length: 70 cm, times: 2}
  - {name: waist, layers: [shell, {use: skirt, fullness: 2}], length: 70 cm}
  - {name: centre back zip, layers: [shell, {notion: concealed zip}], length: 50 cm}
  - {name: centre back, layers: [skirt, skirt], length: 45 cm}
"""


def test_the_seam_of_a_gathered_skirt_below_a_concealed_zip_stays_open_for_it() -> None:
    """The zip is told by the bodice alone; its line runs on in the skirt that hangs from it."""
    found = ordered(DRESS)
    assert stands(found, "press skirt side", "gather waist", "join waist", "set centre back zip")
    assert stands(found, "set centre back zip", "join centre back")
