"""Trousers with a flat front, an elastic back, a stripe down the side and a hem band that is faced.

What a sewing teacher asks of them. All is common practice of the trade.
"""

from __future__ import annotations

from functools import cache

from advisor.construction.bands import bands_of
from advisor.order.work import Work
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import known, ordered, places, read, stands

QUAYSIDE = """
garment: Quayside trousers
fitting: to the body
pattern: tried
maker: {machine: household, overlocker: 4-thread, feet: [standard, walking, edge]}
fabrics:
  twill: {fabric: linen suiting, fibres: {linen: 100}, weight: 200 g/m2, width: 140 cm, colour: "#223355"}
  stripe: {fabric: satin, fibres: {polyester: 100}, weight: 110 g/m2, colour: "#111111"}
  pile: {fabric: velveteen, fibres: {cotton: 100}, weight: 270 g/m2, colour: "#401020"}
  pocketing: {fabric: pure cotton lawn}
seams:
  - {name: side stripe, layers: [stripe, twill], length: 104 cm, topstitch: 1, times: 2, kind: trimming}
  - {name: back dart, layers: [twill, twill], length: 10 cm, times: 2}
  - {name: pocket opening, layers: [stripe, twill, {notion: stay tape}, pocketing], length: 18 cm, edge: turned, times: 2}
  - {name: pocket bag, layers: [pocketing, pocketing], length: 55 cm, shape: curved, times: 2}
  - {name: side seam, layers: [stripe, twill, twill], length: 104 cm, allowance: 15 mm, times: 2}
  - {name: inseam, layers: [twill, twill], length: 76 cm, allowance: 15 mm, times: 2}
  - {name: crotch seam, layers: [twill, twill], length: 70 cm, shape: curved, stress: high, crosses: inseam}
  - {name: front waistband, layers: [twill, {notion: woven fusible interfacing}, twill], length: 44 cm, edge: folded, crosses: crotch seam}
  - {name: back waistband casing, layers: [twill, {notion: elastic, width: 40 mm, body: 76 cm}, twill], length: 62 cm, edge: folded, crosses: [crotch seam, back dart]}
  - {name: waistband side seam, layers: [twill, twill], length: 10 cm, times: 2}
  - {name: band seam, layers: [pile, pile], length: 12 cm, times: 4}
  - {name: hem band, layers: [twill, pile], length: 70 cm, times: 2, crosses: [side seam, inseam, side stripe]}
  - {name: hem band facing, layers: [pile, pocketing], length: 70 cm, edge: turned, times: 2}
  - {name: facing hem, layers: [pocketing, twill], length: 70 cm, edge: folded, stitched by: hand, times: 2}
pieces:
  - {name: front waistband, fabric: twill, width: 46 cm, height: 11 cm}
  - {name: back waistband, fabric: twill, width: 64 cm, height: 11 cm}
"""  # noqa: E501


def quayside(text: str = QUAYSIDE) -> Garment:
    return garment_of(parse_yaml(text, "project.yaml"), known())


@cache
def made(text: str = QUAYSIDE) -> Work:
    return ordered(text)


def before(*steps: str) -> bool:
    return stands(made(), *steps)


def test_a_stripe_that_its_seam_holds_is_laid_on_before_that_seam() -> None:
    """And before the pocket, whose mouth a later row would close; one over a closed seam is not."""
    assert before("stitch on side stripe", "join pocket opening", "join side seam")
    over = QUAYSIDE.replace("[stripe, twill, twill]", "[twill, twill]")
    assert stands(made(over), "join side seam", "stitch on side stripe")


def test_what_is_stitched_along_both_edges_has_its_topstitching() -> None:
    """One row asked for is one of those two; three are one more."""
    assert "topstitch side stripe" not in made().tasks
    assert "topstitch side stripe" in made(QUAYSIDE.replace("topstitch: 1", "topstitch: 3")).tasks


def test_a_band_in_two_parts_is_one_ring_before_it_is_set_on() -> None:
    """What stiffens the front is on it by then, the fitting has told its length, no end is left."""
    assert before("fuse front waistband", "join waistband side seam", "join front waistband")
    assert before("fit", "join waistband side seam", "join back waistband casing")
    assert before(
        "join back waistband casing",
        "fold back waistband casing",
        "stitch back waistband casing",
        "draw through back waistband casing",
    )
    assert "close the ends of front waistband" not in made().tasks


def test_an_elastic_goes_round_what_a_flat_front_leaves_of_the_body() -> None:
    """76 cm less 44 are 32, a tenth less for the hold: 28.8, and not half of the body."""
    trousers = quayside()
    (channel,) = [s for s in trousers.seams if s.name == "back waistband casing"]
    (band,) = bands_of(channel, trousers, known())
    assert 288 == round(band.length)
    assert (760, 440) == band.round_
    (built,) = [w.built for w in read(QUAYSIDE).seams if w.name == channel.name]
    assert built is not None
    assert "for what is left of 76 cm beside the 44 cm that stay flat" in built.band_says


def test_without_a_flat_front_it_lies_round_half() -> None:
    """No band in front is said: it lies round half, as behind in any garment."""
    lone = quayside(QUAYSIDE.replace("front waistband, layers", "front facing, layers"))
    (channel,) = [s for s in lone.seams if s.name == "back waistband casing"]
    (band,) = bands_of(channel, lone, known())
    assert (380, True) == (round(band.length), band.half)


def test_the_length_is_marked_before_the_band_that_ends_it() -> None:
    """The waist is on by then, and nothing levels the band once it is joined and faced."""
    waist = ("draw through back waistband casing", "mark the length", "join hem band")
    assert before(*waist)
    assert "fell facing hem" in made().tasks
    assert not [t for t in made().tasks.values() if t.step.does.startswith("Level")]
    skirt = QUAYSIDE.replace("name: hem band,", "name: trouser hem,")
    assert "mark the length" not in made(skirt).tasks


def test_what_a_band_shuts_in_is_not_overlocked() -> None:
    """Folded over its sides, or faced over its seam, a band leaves no edge to a knife."""
    for name in ("waistband side seam", "hem band", "band seam"):
        assert not [step for step in made().tasks if step == f"neaten {name}"], name
    bare = "\n".join(line for line in QUAYSIDE.splitlines() if "facing" not in line)
    assert "neaten hem band" in made(bare).tasks
    assert "seam" == places(made())["hem band"].kind.id


def test_a_pile_takes_the_needle_that_is_published_for_it() -> None:
    """80 for velveteen, and no finer one because other piles are finer."""
    picks = {v.place: v.pick for v in read(QUAYSIDE).verdicts if v.aspect == "needle.size"}
    assert (80, 80) == (picks["band seam"], picks["hem band"])


def test_what_is_pulled_hard_is_not_sewn_with_cotton_thread() -> None:
    """Nothing is published of its strength; where nothing pulls, cotton is as good."""
    found = {v.place: v for v in read(QUAYSIDE).verdicts if v.aspect == "thread.fibre"}
    hard = read(QUAYSIDE.replace("length: 55 cm, shape", "stress: high, length: 55 cm, shape"))
    (bag,) = [v for v in hard.verdicts if (v.place, v.aspect) == ("pocket bag", "thread.fibre")]
    assert "cotton" in (found["pocket bag"].options or ())
    assert "cotton" not in (bag.options or ("cotton",))


def test_an_iron_that_may_be_turned_up_is_kept_off_what_bears_only_its_start() -> None:
    """The side starts at 110 °C and may go to 150; the tape of the pocket bears 110."""
    satin = QUAYSIDE.replace("fibres: {linen: 100}", "fibres: {linen: 55, viscose: 45}")
    task = made(satin).tasks["press side seam"]
    assert task.step.iron is not None
    assert (110, 110) == (task.step.iron.temperature_c, task.hottest)
    assert "stay tape" in dict(made(satin).capped)["press side seam"]
