"""The sheet as a page in a browser: how many sheets of paper, what it holds, how wide it gets.

The size of type is the one the browser computes; paper is counted in the file that it prints.
"""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest
from msgspec.structs import replace
from playwright.sync_api import Browser

from advisor.answer.label import Asked
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import WHOLE, answer
from advisor.project.load import load_project
from advisor.render.printed.booklet import render_booklet
from advisor.render.printed.html import render_html
from advisor.units import System
from advisor.writing.pdf import pdf_of
from tests.garments.whole import told
from tests.typed import shipped

CHECKOUT = Path(__file__).resolve().parents[2]
DEMOS = sorted((CHECKOUT / "knowledge" / "examples").glob("*.yaml"))
JACKET = CHECKOUT / "knowledge/examples/bandstand-jacket.yaml"
PHONE = 360
A4_BETWEEN_MARGINS_PX = 688  # 210 mm less two margins of 14 mm, at 96 to the inch
A4 = (210.0, 297.0)
LETTER = (215.9, 279.4)

GARMENTS = CHECKOUT / "tests" / "garments" / "more"
SPILLED = (
    "aerial_catsuit", "bandstand_frock", "boathouse_ball", "boiled_cape", "coat", "corset", "dress",
    "ferry_poncho", "ferryhouse_wrap", "frostfair_skating", "gilet", "larkspur_slip",
)  # fmt: skip
"""Whole garments of up to twenty places that have printed, at one time, a third page."""

pytestmark = pytest.mark.browser
every_demo = pytest.mark.parametrize("demo", [d.stem for d in DEMOS])


def printed_by(browser: Browser, page: str) -> bytes:
    """What the browser prints of a page, on the paper that the page asks for."""
    context = browser.new_context()
    window = context.new_page()
    window.set_content(page)
    raw = window.pdf(prefer_css_page_size=True)
    context.close()
    return raw


def written(path: Path, units: System | None = None) -> tuple[str, Answer]:
    """The page of a project and the report that it is made from, as the command makes them."""
    known = shipped()
    garment = load_project(path, known)
    if units is not None:
        garment = replace(garment, units=units)
    told = answer(garment, known, replace(WHOLE, file=path.name))
    return render_html(told), told


@pytest.fixture(scope="session")
def reports() -> dict[str, Answer]:
    """The report of each demo, filled when its page is made."""
    return {}


@pytest.fixture(scope="session")
def pages(tmp_path_factory: pytest.TempPathFactory, reports: dict[str, Answer]) -> dict[str, Path]:
    """The page of each demo."""
    folder = tmp_path_factory.mktemp("pages")
    found = {}
    for demo in DEMOS:
        page, reports[demo.stem] = written(demo)
        found[demo.stem] = folder / f"{demo.stem}.html"
        found[demo.stem].write_text(page, encoding="utf-8")
    return found


@pytest.fixture(scope="module")
def printed(pages: dict[str, Path], browser: Browser) -> dict[str, bytes]:
    """The same pages as the browser prints them."""
    return {name: printed_by(browser, page.read_text("utf-8")) for name, page in pages.items()}


def sheets_of_paper(pdf: bytes) -> list[tuple[float, float]]:
    """Width and height of every page of a printed file, mm."""
    pages = re.findall(rb"/Type\s*/Page\b(?!s)(.*?)>>\s*endobj", pdf, re.DOTALL)
    boxes = [re.search(rb"/MediaBox\s*\[([^\]]*)\]", page) for page in pages]
    assert all(boxes)
    sizes = [[float(n) for n in box[1].split()] for box in boxes if box]
    return [
        (round((right - left) / 72 * 25.4, 1), round((top - bottom) / 72 * 25.4, 1))
        for left, bottom, right, top in sizes
    ]


def measured(browser: Browser, page: str, width: int, script: str) -> object:
    """What a script returns that looks at a page in a window of some width."""
    context = browser.new_context(viewport={"width": width, "height": 900})
    window = context.new_page()
    window.set_content(page)
    found = window.evaluate(f"() => ({script})(document)")
    context.close()
    return found


@every_demo
def test_a_sheet_prints_on_two_pages_of_a4(demo: str, printed: dict[str, bytes]) -> None:
    """Every demo, the nasty one with twelve seams as well, takes at most two pages of A4."""
    paper = sheets_of_paper(printed[demo])
    assert 1 <= len(paper) <= 2
    for width, height in paper:
        assert A4 == pytest.approx((width, height), abs=1)


@pytest.mark.parametrize("name", SPILLED)
def test_a_sheet_that_spilled_onto_a_third_page_keeps_to_two(browser: Browser, name: str) -> None:
    """Type and room are chosen by what the paper holds, not by letters or lines alone."""
    page = render_html(told(GARMENTS / f"{name}.yaml"))
    assert len(sheets_of_paper(printed_by(browser, page))) <= 2


def test_a_sheet_in_inches_is_set_on_letter(chromium: str) -> None:
    """With US units the paper is US letter, and a jacket takes two pages, as the command prints."""
    raw = pdf_of(written(JACKET, "us")[0], date(2026, 3, 1))
    assert b"/CreationDate (D:20260301000000+00'00')" in raw
    paper = sheets_of_paper(raw)
    assert len(paper) <= 2
    for width, height in paper:
        assert LETTER == pytest.approx((width, height), abs=1)


def test_the_counting_of_pages_sees_a_third(browser: Browser) -> None:
    """A page of three sheets counts as three."""
    page = "<p style='break-after:page'>1<p style='break-after:page'>2<p>3"
    assert 3 == len(sheets_of_paper(printed_by(browser, page)))


@every_demo
def test_a_telephone_needs_no_sideways_scrolling(
    demo: str, pages: dict[str, Path], browser: Browser
) -> None:
    """At the width of a telephone nothing of the page stands out to the right."""
    script = (
        "d => ({wide: d.documentElement.scrollWidth - d.documentElement.clientWidth, out: "
        "[...d.body.querySelectorAll('*')].filter(e => e.getBoundingClientRect().right > "
        "d.documentElement.clientWidth + 1 && !e.closest('thead')).map(e => e.tagName), "
        "all: d.body.querySelectorAll('*').length})"
    )
    page = pages[demo].read_text(encoding="utf-8")
    found = measured(browser, page, PHONE, script)
    assert isinstance(found, dict)
    assert found["all"] > 50
    assert {"wide": 0, "out": [], "all": found["all"]} == found


@every_demo
def test_the_browser_holds_every_clash_and_seam(
    demo: str,
    pages: dict[str, Path],
    reports: dict[str, Answer],
    browser: Browser,
) -> None:
    """In the browser's own tree stand all seams as rows and all clashes with what to do."""
    script = (
        "d => ({seams: [...d.querySelectorAll('th[scope=rowgroup]')].map(e => "
        "e.firstChild.textContent.trim()), "
        "clashes: [...d.querySelectorAll('.conflicts h3')].map(e => e.textContent), "
        "cures: d.querySelectorAll('.conflicts .do').length})"
    )
    page = pages[demo].read_text(encoding="utf-8")
    found = measured(browser, page, 1000, script)
    assert isinstance(found, dict)
    report = reports[demo]
    assert [seam.name for seam in report.seams] == found["seams"]
    told = {place for text in found["clashes"] for place in text.split(", ")}
    assert {place for c in report.conflicts for place in c.places} == told
    assert found["cures"] >= len(found["clashes"])


def booklet(demo: Path, paper: str = "a4") -> str:
    """The booklet of a project on some day, with everything in it."""
    known = shipped()
    parts = replace(WHOLE, label=Asked("eu"))
    told = answer(load_project(demo, known), known, parts)
    return render_booklet(told, date(2026, 3, 1), paper)


@pytest.mark.parametrize(("paper", "size"), [("a4", A4), ("letter", LETTER)])
def test_a_booklet_prints_on_both_papers(
    paper: str, size: tuple[float, float], browser: Browser
) -> None:
    """All pages have the size that was asked for, and there are at most 20 of a busy jacket."""
    found = sheets_of_paper(printed_by(browser, booklet(JACKET, paper)))
    assert 8 <= len(found) <= 20
    for width, height in found:
        assert size == pytest.approx((width, height), abs=1)


def test_type_in_a_booklet_is_at_least_ten_point(browser: Browser) -> None:
    """Whatever of it holds text, a mark or a number of a source too, is set in 10 point or more.

    The rules for paper are put in force on the screen, where the browser tells what they come to.
    """
    page = (
        booklet(JACKET)
        .replace("@media print{", "@media all{")
        .replace("@media screen", "@media tv")
    )
    page = re.sub(r'<meta http-equiv="Content-Security-Policy"[^>]*>', "", page)
    script = (
        "d => [...d.body.querySelectorAll('*')].filter(e => !e.closest('svg') && "
        "[...e.childNodes].some(n => n.nodeType == 3 && n.data.trim()))"
        ".map(e => parseFloat(d.defaultView.getComputedStyle(e).fontSize) * 0.75)"
    )
    sizes = measured(browser, page, 1000, script)
    assert isinstance(sizes, list)
    assert len(sizes) > 200
    assert round(min(sizes), 2) >= 10
    drawn = measured(
        browser,
        page,
        A4_BETWEEN_MARGINS_PX,
        "d => [...d.querySelectorAll('figure svg')].map(s => Math.min(...[...s.querySelectorAll("
        "'text')].map(t => parseFloat(d.defaultView.getComputedStyle(t).fontSize))) * 0.75 * "
        "s.getBoundingClientRect().width / s.viewBox.baseVal.width)",
    )
    assert isinstance(drawn, list)
    assert len(drawn) >= 2
    assert round(min(drawn), 2) >= 10


@every_demo
def test_a_booklet_holds_all_that_is_ticked_bought_and_tried(demo: str) -> None:
    """Order with a box for each step, cloth, label, a swatch for each test, marks, and notes."""
    path = next(d for d in DEMOS if d.stem == demo)
    known = shipped()
    told = answer(load_project(path, known), known, replace(WHOLE, label=Asked("eu")))
    page = booklet(path)
    root = ET.fromstring(page.partition("\n")[2])
    text = " ".join("".join(root.itertext()).split())
    assert told.work is not None
    steps = [e for e in root.iter("li") if e.get("class") == "step"]
    assert len(told.work.order) == len(steps)
    for step, shown in zip(told.work.order, steps, strict=True):
        assert step.does in " ".join("".join(shown.itertext()).split())
        assert "tickbox" == shown[0].get("class")
    swatches = [e for e in root.iter("div") if e.get("class") == "swatch"]
    assert len([test for test in told.tests if test.places]) == len(swatches)
    trials = [e for e in root.iter("div") if e.get("class") == "trial"]
    lengths_first = sorted(told.tests, key=lambda test: bool(test.places))
    assert [test.stack for test in lengths_first] == [e.findtext("h3") for e in trials]
    cuts = [e for e in root.iter("div") if e.get("class") == "cut"]
    assert [seam.name for seam in told.seams] == [e.findtext("h3") for e in cuts]
    for words in ("What the marks mean", "To buy", "Label", "Record of the scrap tests", "Notes"):
        assert words in text
    assert [] == re.findall(r"--[a-z]+|advisor (?:check|sheet|order|why|iron|explain)", text)
    assert "1 March 2026" in text
    style = page.partition("<style>")[2].partition("</style>")[0]
    assert '@top-right{content:"1 March 2026"' in style
    assert "counter(page)" in style
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))


@every_demo
def test_type_on_paper_is_at_least_eight_point(demo: str, pages: dict[str, Path]) -> None:
    """The body of a printed sheet is set in 8 point or more."""
    page = pages[demo].read_text(encoding="utf-8")
    size = re.search(r'<main class="(\w+)">', page)
    assert size
    points = re.search(rf"\.{size[1]}\{{font-size:(\d+)pt\}}", page)
    assert points
    assert int(points[1]) >= 8
