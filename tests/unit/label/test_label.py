"""What a label may say of a garment: content, what is left out, what is not known, and care."""

from __future__ import annotations

import pytest

from advisor.claims.judgement import Judgement
from advisor.decide.advise import advise
from advisor.label.care import Care, care_of
from advisor.label.content import Content, fibre_content
from advisor.project.load import garment_of
from advisor.project.stated import only_named
from advisor.textio.yamlfile import Document, parse_yaml
from tests.typed import shipped as known


def project(fabrics: str, layers: str, units: str = "metric") -> Document:
    text = f"garment: test\nunits: {units}\nfabrics: {{{fabrics}}}\n"
    return parse_yaml(f"{text}seams: [{{name: side, layers: [{layers}]}}]\n", "test.yaml")


def judged(document: Document) -> Judgement:
    return advise(garment_of(document, known()), known()).judgement


def content_of(fabrics: str, layers: str, market: str = "eu") -> Content:
    document = project(fabrics, layers)
    about = known().labels.market(market)
    return fibre_content(judged(document), known(), about, only_named(document, known()))


def care(fabrics: str, layers: str) -> Care:
    return care_of(judged(project(fabrics, layers)), known())


def answers(told: Care) -> dict[str, str | None]:
    return {line.aspect.removeprefix("care."): line.word for line in told.lines}


WHOLE = "shell: {fabric: poplin, fibres: {cotton: 97, elastane: 3}}"


@pytest.mark.parametrize(
    ("market", "text"),
    [("eu", "97 % cotton, 3 % elastane"), ("us", "97% cotton, 3% spandex")],
)
def test_the_market_names_the_fibres(market: str, text: str) -> None:
    """One cloth is written in the words of each market."""
    assert [text] == [part.text for part in content_of(WHOLE, "shell", market).parts]


@pytest.mark.parametrize(
    ("fibres", "kind"),
    [
        ("fibres: unknown", "unknown"),
        ("fibres: [silk, polyester]", "unknown"),
        ("fibres: wool polyester", "share"),
        ("fibres: silk", "share"),
        ("fibres: {cotton: 60, polyurethane: 40}", "name"),
    ],
)
def test_what_is_not_known_is_not_written(fibres: str, kind: str) -> None:
    """A cloth of unknown fibre, of unknown share or without a name gives no line."""
    content = content_of(f"shell: {{fabric: brocade, {fibres}}}", "shell")
    assert () == content.parts
    assert [kind] == [missing.kind for missing in content.missing]


def test_a_fibre_in_the_name_is_no_share() -> None:
    """Who says linen suiting has not said what else is in it; who says 100 has."""
    assert ["unknown"] == [m.kind for m in content_of("shell: linen suiting", "shell").missing]
    said = content_of("shell: {fabric: linen suiting, fibres: {linen: 100}}", "shell")
    assert ["100 % linen"] == [part.text for part in said.parts]


def test_candidates_of_one_name_are_known_enough() -> None:
    """A cloth that is one nylon or the other is nylon on a label."""
    content = content_of("shell: {fabric: tulle, fibres: [nylon-6 100, nylon-66 100]}", "shell")
    assert ["100 % nylon"] == [part.text for part in content.parts]


def test_cloths_of_one_content_share_a_line_and_notions_are_left_out() -> None:
    """Like cloths stand together; interfacing and zip are not counted, and it says why."""
    fabrics = f"{WHOLE}, yoke: {{fabric: poplin, fibres: {{cotton: 97, elastane: 3}}}}"
    content = content_of(
        fabrics, "shell, yoke, {notion: woven fusible interfacing}, {notion: coil zip}"
    )
    assert [("shell", "yoke")] == [part.cloths for part in content.parts]
    left = {name: left.why.text for left in content.left for name in left.cloths}
    assert {"woven fusible interfacing": "interlining", "coil zip": "accessory"} == left


def test_a_filling_for_warmth_is_counted() -> None:
    """Wadding is a part of the garment, and its fibres have to be known."""
    content = content_of(WHOLE, "shell, {notion: wadding}")
    assert [("wadding",)] == [missing.cloths for missing in content.missing]


def test_skin_is_told_and_not_counted() -> None:
    """Leather stands in no percentage and has its own phrase; an odd button is asked after."""
    content = content_of(f"{WHOLE}, trim: leather", "shell, trim, {notion: natural button}")
    assert ("trim",) == content.animal
    assert ("natural button",) == content.animal_may_be
    assert [("shell",)] == [part.cloths for part in content.parts]


def test_the_flame_test_is_asked_after_in_the_us() -> None:
    """A light cotton is named, a polyester and a heavy plain cotton are not (cfr-16-1610)."""
    fabrics = (
        "veil: {fabric: voile, fibres: {cotton: 100}, weight: 60 g/m2}, "
        "net: {fabric: tulle, fibres: {polyester: 100}, weight: 30 g/m2}, "
        "coat: {fabric: canvas, fibres: {cotton: 100}, weight: 300 g/m2}"
    )
    assert ("veil",) == content_of(fabrics, "veil, net, coat", "us").flame
    assert () == content_of(fabrics, "veil, net, coat", "eu").flame


def test_a_brushed_knit_is_not_spared_the_flame_test() -> None:
    """Heavy or not: a sweatshirt knit is often raised inside, a jersey only if she saw it so."""
    fabrics = (
        "sweat: {fabric: sweatshirt knit, fibres: {cotton: 100}, weight: 300 g/m2}, "
        "plain: {fabric: jersey, fibres: {cotton: 100}, weight: 300 g/m2}, "
        "napped: {fabric: jersey, fibres: {cotton: 100}, weight: 300 g/m2, traits: {one way: yes}}"
    )
    assert ("sweat", "napped") == content_of(fabrics, "sweat, plain, napped", "us").flame


def test_a_hand_wash_is_as_cool_as_the_tenderest_part() -> None:
    """Acetate bears 30 °C, so the silk that is washed with it by hand is washed at 30, not 40."""
    both = (
        "silk: {fabric: habotai, fibres: {silk: 100}}, lin: {fabric: satin, fibres: {acetate: 100}}"
    )
    (line,) = [line for line in care(both, "silk, lin").lines if line.aspect == "care.wash"]
    assert ("hand wash", 30) == (line.word, line.at_most)


def test_care_is_set_by_the_tenderest() -> None:
    """Acetate and wool bring a garment of cotton down to their own care."""
    told = answers(
        care(f"{WHOLE}, lining: {{fabric: lining, fibres: {{acetate: 100}}}}", "shell, lining")
    )
    assert ("hand wash", "110") == (told["wash"], told["iron"])


def test_silence_is_no_permission() -> None:
    """Where nobody says how cotton bears bleach or a dryer, neither is allowed, and it says so."""
    told = care("shell: {fabric: poplin, fibres: {cotton: 100}}", "shell")
    quiet = {line.aspect: line.word for line in told.lines if line.unknown}
    assert {"care.bleach": "no bleach", "care.dry": "on a line"} == quiet
    assert all(line.silent == ("shell",) for line in told.lines if line.unknown)


def test_a_cloth_that_nobody_speaks_of_rules_a_treatment_out() -> None:
    """Next to cotton, aramid of which no washing is known stops the washing of the whole."""
    told = care(f"{WHOLE}, patch: {{fabric: canvas, fibres: {{aramid: 100}}}}", "shell, patch")
    wash = told.lines[0]
    assert ("do not wash", True, ("patch",)) == (wash.word, wash.unknown, wash.silent)
    assert "unknown" == told.cleaning


def test_the_sellers_word_stops_the_wash() -> None:
    """A cloth sold as dry clean only keeps the whole out of the tub, known to wash or not."""
    told = care("shell: {fabric: poplin, fibres: {cotton: 100}, care: dry clean only}", "shell")
    assert "do not wash" == answers(told)["wash"]


def test_a_part_that_comes_off_has_its_own_care() -> None:
    """A detachable collar of acetate leaves the cotton to its own care."""
    collar = "collar: {fabric: lining, fibres: {acetate: 100}, detachable: yes}"
    told = care(f"{WHOLE}, {collar}", "shell, collar")
    assert "200" != answers(told)["iron"] == "110"  # elastane in the shell
    own = {line.aspect: line.word for line in told.apart["collar"]}
    assert "hand wash" == own["care.wash"]
    assert "hand wash" != answers(told)["wash"]


def test_nothing_cleans_it() -> None:
    """Vinyl on a dry-clean-only cloth is a clash of care, and no method is left."""
    told = care(
        "shell: {fabric: vinyl, fibres: {chlorofibre: 100}}, "
        "lining: {fabric: lining, fibres: {acetate: 100}, care: dry clean only}",
        "shell, lining",
    )
    assert ["care.method"] == [clash.aspect for clash in told.clashes]
    assert "none" == told.cleaning
