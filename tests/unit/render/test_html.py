"""The sheet as a page: whole, well-formed, escaped, and with the same content as the text."""

from __future__ import annotations

import re
from base64 import b64encode
from functools import cache
from hashlib import sha256
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, answer
from advisor.project.load import garment_of
from advisor.project.quick import quick_garment
from advisor.render.iron_html import irons_of
from advisor.render.markup import rendered
from advisor.render.plain import plain_section, without_commands
from advisor.render.printed.blocks import sections
from advisor.render.printed.compact import LINES, fitted_lines, render_sheet
from advisor.render.printed.digest import digest
from advisor.render.printed.html import document, render_html
from advisor.render.printed.numbers import Numbers
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped as known

DEMOS = sorted((Path(__file__).parents[3] / "knowledge" / "examples").glob("*.yaml"))
HOSTILE = "<script>alert(1)</script> \"'&amp; ]]>"


@cache
def told(text: str) -> Answer:
    """The answer to a project."""
    return answer(garment_of(parse_yaml(text, "project"), known()), known(), WHOLE)


def demo(path: Path) -> Answer:
    return told(path.read_text(encoding="utf-8"))


def parsed(page: str) -> ET.Element:
    """The page read as XML, which forgives nothing."""
    return ET.fromstring(page.partition("\n")[2])


def words(element: ET.Element) -> str:
    """All text of an element, spaces made single."""
    return " ".join("".join(element.itertext()).split())


def hostile_project(units: str = "metric") -> str:
    """A project whose names try to become markup."""
    return f"""
garment: {HOSTILE!r}
units: {units}
fabrics:
  "<b>shell": {{fabric: linen suiting}}
  "a&b": {{fabric: organza, fibres: {{nylon: 100}}}}
seams:
  - {{name: '"><img src=x onerror=y>', layers: ["<b>shell", "a&b"]}}
""".replace(repr(HOSTILE), "'" + HOSTILE.replace("'", "''") + "'")


every_demo = pytest.mark.parametrize("path", DEMOS, ids=lambda p: p.stem)


@every_demo
def test_each_demo_is_well_formed_and_needs_nothing_from_outside(path: Path) -> None:
    """A page is XML through and through, in English, without a script, a link out or an image."""
    page = render_html(demo(path))
    root = parsed(page)
    assert "en" == root.get("lang")
    assert page.startswith("<!DOCTYPE html>\n")
    names = {element.tag.rpartition("}")[2] for element in root.iter()}
    assert set() == names & {"script", "link", "img", "iframe", "object", "font", "form"}
    targets = [e.get("href") for e in root.iter() if e.get("href") is not None]
    assert targets
    assert all(str(target).startswith("#") for target in targets)
    outside = re.findall(r"(?:https?:|url\(|@import|src=)[^\"' )]*", page)
    assert {"http://www.w3.org/2000/svg"} == {
        o + "//www.w3.org/2000/svg" if o == "http:" else o for o in outside
    }


def test_a_hostile_name_stays_a_name() -> None:
    """Names that look like markup are printed as they were written and become no element."""
    page = render_html(told(hostile_project()))
    root = parsed(page)
    assert HOSTILE == root.findtext("body/main/h1")
    assert f"{HOSTILE}: handling sheet" == root.findtext("head/title")
    assert '"><img src=x onerror=y>' in words(root)
    assert "<b>shell" in words(root)
    assert "a&b" in words(root)
    tags = [element.tag for element in root.iter()]
    assert "script" not in tags
    assert "img" not in tags


def test_a_hostile_title_cannot_leave_the_head() -> None:
    """The title of any page is escaped."""
    root = parsed(document("</title><script>x</script>", "<main></main>"))
    assert "</title><script>x</script>" == root.findtext("head/title")


@every_demo
def test_headings_go_down_one_step_at_a_time(path: Path) -> None:
    """One first heading, sections named by their second headings, items by their third."""
    root = parsed(render_html(demo(path)))
    levels = [int(e.tag[1]) for e in root.iter() if re.fullmatch(r"h[1-6]", e.tag)]
    assert 1 == levels.count(1)
    assert 1 == levels[0]
    assert all(after <= before + 1 for before, after in pairwise(levels))
    for section in root.iter("section"):
        assert section.get("aria-labelledby") == next(section.iter("h2")).get("id")


@every_demo
def test_ids_are_unique_and_each_mark_leads_to_its_source(path: Path) -> None:
    """No id stands twice, and the raised marks lead to what the list of sources explains."""
    root = parsed(render_html(demo(path)))
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert sorted(set(map(str, ids))) == sorted(map(str, ids))
    wanted = {str(e.get("href"))[1:] for e in root.iter() if e.get("href")}
    assert wanted
    assert set() == wanted - set(map(str, ids))


@every_demo
def test_every_clash_danger_and_seam_is_there(path: Path) -> None:
    """Nothing that can hurt or spoil is left out, and each seam has its row in the table."""
    report = demo(path)
    root = parsed(render_html(report))
    said = words(root)
    seams = [e.text.strip() for e in root.iter("th") if e.get("scope") == "rowgroup" and e.text]
    assert [seam.name for seam in report.seams] == seams
    clashes = next(e for e in root.iter("section") if e.get("class") == "conflicts")
    for conflict in report.conflicts:
        assert conflict.place in words(clashes)
        assert conflict.remedies == () or conflict.remedies[0].text in words(clashes)
    for caution in report.cautions:
        assert caution.kind == "damage" or caution.text in said


@every_demo
def test_page_and_text_say_the_same(path: Path) -> None:
    """Every part of the sheet's sections is on the page and in the text, word for word."""
    report = demo(path)
    _, room = fitted_lines(report, LINES["metric"])
    root = parsed(render_html(report))
    for mark in root.iter("sup"):
        mark[:], mark.text = [], ""
    page = re.sub(r"\s+", "", words(root))
    text = re.sub(r"\[[\dcdem,*]+\]|\s+", "", render_sheet(report))
    found = sections(report, Numbers(report, most=2, short=True), digest(report), room)
    for section in found:
        for item, on_page in zip(section.items, plain_section(section).items, strict=True):
            for part, shown in zip(item.parts, on_page.parts, strict=True):
                assert re.sub(r"\s+", "", shown.text) in page
                assert re.sub(r"\s+", "", part.text) in text


@every_demo
def test_tables_say_what_their_heads_are_for(path: Path) -> None:
    """Every head cell of every table has a scope."""
    root = parsed(render_html(demo(path)))
    heads = list(root.iter("th"))
    assert heads
    assert {"col", "rowgroup"} == {head.get("scope") for head in heads}


def test_the_drawing_says_in_words_what_it_shows() -> None:
    """The drawing has a title and a description with every cloth's limit, and is an image."""
    report = demo(DEMOS[-1])
    root = parsed(render_html(report))
    svg = next(e for e in root.iter() if e.tag.endswith("}svg"))
    assert "img" == svg.get("role")
    said = {e.tag.rpartition("}")[2]: e.text or "" for e in svg if not e.tag.endswith("}g")}
    assert "What iron each cloth bears" == said["title"]
    names = {layer.name for place in report.iron or () for layer in place.layers}
    assert names
    for name in names:
        assert f"{name}: " in said["desc"]


def test_tests_are_boxes_to_tick() -> None:
    """Each test on scraps has an empty box before it."""
    root = parsed(render_html(demo(DEMOS[-1])))
    tests = next(e for e in root.iter("section") if e.get("class") == "tests")
    items = list(tests.iter("li"))
    assert items
    assert all("box" == item[0].get("class") for item in items)


def test_the_paper_follows_the_units() -> None:
    """Metric sheets are set on A4 and the others on US letter."""
    assert "@page{size:A4" in render_html(told(hostile_project()))
    assert "@page{size:letter" in render_html(told(hostile_project("us")))


def test_the_same_answer_gives_the_same_bytes() -> None:
    """Two pages of one answer are equal."""
    assert render_html(demo(DEMOS[0])) == render_html(demo(DEMOS[0]))


def test_the_iron_page_is_whole_and_names_every_layer() -> None:
    """The iron across layers has a drawing and a table whose rows are the layers."""
    garment = quick_garment(["cotton velveteen", "acetate satin", "nylon tulle"], known())
    irons = irons_of(answer(garment, known(), WHOLE))
    root = parsed(document("iron", f"<main>{rendered('iron.html', {'irons': irons})}</main>"))
    heads = [e.text for e in root.iter("th") if e.get("scope") == "row"]
    assert ["cotton velveteen", "acetate satin", "nylon tulle"] == heads
    assert 1 == len([e for e in root.iter() if e.tag.endswith("}svg")])


@every_demo
def test_no_command_is_named_on_paper(path: Path) -> None:
    """What is only typed at a command line stands on no sheet."""
    said = words(parsed(render_html(demo(path))))
    assert [] == re.findall(r"--[a-z]+|advisor (?:check|sheet|order|why|iron|explain)", said)


def test_only_the_sentence_that_names_a_command_is_left_out() -> None:
    """What is said beside it stays, and a text without one is untouched."""
    text = "3 lesser things are left out: --all prints them. Test on scraps first."
    assert "Test on scraps first." == without_commands(text)
    assert "12 steps; next: pin." == without_commands("advisor order x.yaml: 12 steps; next: pin.")
    assert "Pin - then sew." == without_commands("Pin - then sew.")


def test_the_style_of_a_page_is_the_only_one_it_allows() -> None:
    """The page's own policy names the hash of its style, and there is no style on any element."""
    page = render_html(demo(DEMOS[0]))
    style = page[page.index("<style>") + 7 : page.index("</style>")]
    held = b64encode(sha256(style.encode()).digest()).decode()
    assert f"style-src 'sha256-{held}'" in page.replace("&#39;", "'")
    assert " style=" not in page
