"""The page in a real browser: from nothing to a printed booklet, narrow, dark, and by axe."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, Route

from advisor.knowledge.model import Knowledge
from advisor.page.serve import Server
from tests.page import pictures
from tests.page.conftest import CHECKOUT, serving

JACKET = "project/jacket.yaml"
CASE = "project/case.yaml"
WAYS = (
    "",
    "ask?cloths=nylon+organza%0Alinen+suiting",
    "iron?cloths=cotton+velveteen%0Aacetate+satin",
    "fabrics?word=slippery",
    "about?name=dupioni",
    "identify?skip=label",
    "examples",
    "new",
    JACKET,
    f"{JACKET}/sheet",
    f"{JACKET}/places",
    f"{JACKET}/why?place=hem+frill&aspect=press.temperature",
    f"{JACKET}/iron",
    f"{JACKET}/iron?place=hem+frill",
    f"{JACKET}/order",
    f"{JACKET}/cut",
    f"{JACKET}/compare?cloth=frill&other=silk+organza",
    "learn",
    f"{JACKET}/label",
    "share",
    f"{JACKET}/booklet",
    f"{JACKET}/parts",
    f"{JACKET}/settings",
    f"{JACKET}/edit",
)
NARROWEST = 320
PHONE = {
    "viewport": {"width": 360, "height": 640},
    "is_mobile": True,
    "has_touch": True,
    "bypass_csp": True,
}
pytestmark = pytest.mark.browser


@pytest.fixture
def elsewhere() -> Iterator[list[str]]:
    """Requests to anywhere but the page; one of them fails the test."""
    found: list[str] = []
    yield found
    assert [] == found


Opening = Callable[..., BrowserContext]


def opener(browser: Browser, server: Server, elsewhere: list[str]) -> Opening:
    """Opens a window of its own, which reaches nothing but the page."""
    own = (server.url, *([server.shared.address] if server.shared else []))

    def opening(**about: Any) -> BrowserContext:
        context = browser.new_context(**{"base_url": server.url, **about})

        def only_here(route: Route) -> None:
            if route.request.url.startswith(own):
                route.continue_()
            else:
                elsewhere.append(route.request.url)
                route.abort()

        context.route("**/*", only_here)
        return context

    return opening


@pytest.fixture
def opened(browser: Browser, server: Server, elsewhere: list[str]) -> Opening:
    """A window onto a page that may be changed."""
    return opener(browser, server, elsewhere)


@pytest.fixture
def reading(browser: Browser, read_server: Server, elsewhere: list[str]) -> Opening:
    """A window onto a page that is only read."""
    return opener(browser, read_server, elsewhere)


def faults(page: Page) -> list[str]:
    """What the browser itself complains of: a style or a script that the policy forbids."""
    found: list[str] = []
    page.on("console", lambda m: found.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: found.append(str(e)))
    return found


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_axe_has_nothing_to_say(reading: Opening, theme: str) -> None:
    """Labels, landmarks, headings and contrast of every page; in the dark its colours differ."""
    context = reading(color_scheme=theme, bypass_csp=True)
    options: dict[str, Any] = {"resultTypes": ["violations"]}
    if theme == "dark":
        options["runOnly"] = ["color-contrast"]
    page, axe, found = context.new_page(), Axe(), {}
    for way in WAYS:
        shown = page.goto(f"/{way.replace(JACKET, CASE)}")  # all kinds of things, few of each
        assert shown is not None
        assert shown.ok
        said = axe.run(page, options=options).response["violations"]
        if said:
            found[way] = [(v["id"], v["nodes"][0]["html"][:120]) for v in said]
    context.close()
    assert {} == found


def test_axe_sees_what_is_wrong(reading: Opening) -> None:
    """The check above finds a field without a label and words too pale to read."""
    context = reading(bypass_csp=True)
    page = context.new_page()
    page.goto("/ask")
    page.evaluate(
        "() => { document.querySelector('label').remove();"
        " document.querySelector('h1').style.color = '#ddd'; }"
    )
    said = {v["id"] for v in Axe().run(page).response["violations"]}
    context.close()
    assert {"label", "color-contrast"} <= said


def test_no_page_scrolls_sideways_on_the_narrowest_screen(reading: Opening) -> None:
    """At 320 px, which is also 1280 px at four times the size, all is within the width."""
    context = reading(viewport={"width": NARROWEST, "height": 800})
    page, wide = context.new_page(), {}
    for way in WAYS:
        page.goto(f"/{way}")
        beyond = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        if beyond > 0:
            wide[way] = beyond
    context.close()
    assert {} == wide


def test_the_browser_has_nothing_to_complain_of(reading: Opening) -> None:
    """No page wants a style, a script or a picture that the policy forbids."""
    context = reading()
    page = context.new_page()
    found = faults(page)
    for way in WAYS:
        page.goto(f"/{way}")
        assert page.evaluate("document.styleSheets.length") >= 2
    context.close()
    assert [] == found


def test_from_nothing_to_a_printed_booklet(opened: Opening, folder: Path, tmp_path: Path) -> None:
    """A project is begun, a slip in it mended, a remedy taken, a step ticked, and all printed."""
    context = opened(java_script_enabled=False)
    page = context.new_page()
    page.goto("/")
    page.get_by_role("link", name="Begin a project").click()
    page.get_by_label("What do you call the garment?").fill("Small bag")
    page.get_by_label("Its cloths").fill("out: linen suitng\nfrill: nylon organza")
    page.get_by_label("Its places").fill("mouth: out, frill")
    with page.expect_navigation():  # a press does not wait for what it asks for
        page.get_by_role("button", name="Write the project").click()
    assert "linen suitng" in page.get_by_label("Its cloths").input_value()
    page.get_by_label("Its cloths").fill("out: linen suiting\nfrill: nylon organza")
    page.get_by_role("button", name="Write the project").click()
    page.wait_for_url("**/project/small-bag.yaml")
    page.get_by_role("button", name="Take this").first.click()
    # A press is answered when the garment is decided anew, so each answer is waited for.
    page.get_by_text("Written into the project:").wait_for(state="visible")
    page.get_by_role("link", name="Order of work").click()
    page.get_by_role("button", name="Tick step 1 off").click()
    page.wait_for_url("**/order#next")
    assert page.get_by_role("button", name="Step 1 is done").count() == 1
    page.reload()
    page.go_back()
    page.goto("/project/small-bag.yaml/booklet?paper=letter")
    out = tmp_path / "bag.pdf"
    page.pdf(path=out, prefer_css_page_size=True)
    context.close()
    boxes = set(re.findall(rb"/MediaBox\s*\[([^\]]*)\]", out.read_bytes()))
    assert {b"0 0 612 792"} == {b" ".join(box.split()) for box in boxes}
    assert "done:" in (folder / "small-bag.yaml").read_text(encoding="utf-8")


def test_a_phone_is_let_in_and_ticks(opened: Opening, server: Server, folder: Path) -> None:
    """The code stands on the maker's page; the phone says it, ticks a step, and she sees it."""
    assert server.shared is not None
    desk, phone = opened(), opened(base_url=server.shared.address, **PHONE)
    page, small = desk.new_page(), phone.new_page()
    page.goto("/share")
    page.get_by_role("button", name="Make a code").click()
    page.get_by_role("button", name="Make another code").wait_for(state="visible")
    small.goto(server.shared.way_in())
    said = Axe().run(small, options={"resultTypes": ["violations"]}).response["violations"]
    assert [] == [v["id"] for v in said]
    small.get_by_role("button", name="Let this phone in").tap()
    small.get_by_role("link", name="order of work of jacket.yaml").tap()
    small.wait_for_url("**/order")  # waits for its load too: the style sheet is in
    box = small.get_by_role("button", name="Tick step 1 off").bounding_box()
    assert box is not None
    assert min(box["width"], box["height"]) >= 44
    small.get_by_role("button", name="Tick step 1 off").tap()
    small.wait_for_url("**/order#next")
    assert small.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
    page.goto(f"/{JACKET}/order")
    assert 1 == page.get_by_role("button", name="Step 1 is done").count()
    page.goto("/share")
    assert page.get_by_text("1 phone is in.").is_visible()
    for context in (desk, phone):
        context.close()


@pytest.mark.parametrize("view", ["iron?place=hem+frill", "order"])
def test_the_page_at_the_board_says_whether_the_screen_stays_on(
    reading: Opening, view: str
) -> None:
    """Its one script runs under the policy, asks the browser, and tells what came of it."""
    context = reading()
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.goto(f"/{JACKET}/{view}")
    told = page.locator("#awake")
    told.wait_for(state="visible")
    assert "screen" in str(told.text_content())
    assert [] == faults
    context.close()


def test_the_pictures_of_the_readme_are_taken_and_shown(
    browser: Browser, folder: Path, known: Knowledge, tmp_path: Path
) -> None:
    """The script takes each picture that the README shows, and those alone lie beside it."""
    (folder / "jacket.yaml").rename(folder / pictures.JACKET)
    with serving(folder, known) as server:
        taken = pictures.take(browser, server, tmp_path)
    assert all(path.read_bytes().startswith(b"\x89PNG") for path in taken)
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    shown = re.findall(r"\(tests/page/pictures/(\w+)\.png\)", readme)
    assert sorted(path.stem for path in taken) == sorted(shown)
    assert sorted(shown) == sorted(path.stem for path in pictures.FOLDER.glob("*"))


def test_the_keyboard_reaches_the_main_part_first(reading: Opening) -> None:
    """The first stop is the way past the navigation; after a slip, the text to be mended."""
    context = reading()
    page = context.new_page()
    page.goto(f"/{JACKET}")
    page.keyboard.press("Tab")
    assert "To the main part" == page.evaluate("document.activeElement.textContent")
    page.goto("/ask?cloths=nylon+organzza")
    page.wait_for_function("document.activeElement.id === 'q-cloths'")  # given once it is drawn
    assert "nylon organzza" == page.locator("#q-cloths").input_value()
    context.close()
