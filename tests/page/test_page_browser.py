"""The page in a real browser: from nothing to a printed booklet, narrow, dark, and by axe."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, Route, sync_playwright

from advisor.page.serve import Server

JACKET = "project/jacket.yaml"
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
    f"{JACKET}/label",
    f"{JACKET}/booklet",
    f"{JACKET}/edit",
)
NARROWEST = 320
Opened = Callable[..., BrowserContext]
pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Browser]:
    """The installed browser, started once."""
    with sync_playwright() as driver:
        found = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield found
        found.close()


@pytest.fixture
def elsewhere() -> Iterator[list[str]]:
    """Requests to anywhere but the page; one of them fails the test."""
    found: list[str] = []
    yield found
    assert [] == found


@pytest.fixture
def opened(browser: Browser, server: Server, elsewhere: list[str]) -> Callable[..., BrowserContext]:
    """Opens a window of its own, which reaches nothing but the page."""

    def opening(**about: Any) -> BrowserContext:
        context = browser.new_context(base_url=server.url, **about)

        def only_here(route: Route) -> None:
            if route.request.url.startswith(server.url):
                route.continue_()
            else:
                elsewhere.append(route.request.url)
                route.abort()

        context.route("**/*", only_here)
        return context

    return opening


def faults(page: Page) -> list[str]:
    """What the browser itself complains of: a style or a script that the policy forbids."""
    found: list[str] = []
    page.on("console", lambda m: found.append(m.text) if m.type in ("error", "warning") else None)
    page.on("pageerror", lambda e: found.append(str(e)))
    return found


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_axe_has_nothing_to_say(opened: Opened, theme: str) -> None:
    """Labels, landmarks, headings and contrast of every page, in both themes."""
    context = opened(color_scheme=theme, bypass_csp=True)
    page, axe, found = context.new_page(), Axe(), {}
    for way in WAYS:
        page.goto(f"/{way}")
        said = axe.run(page, options={"resultTypes": ["violations"]}).response["violations"]
        if said:
            found[way] = [(v["id"], v["nodes"][0]["html"][:120]) for v in said]
    context.close()
    assert {} == found


def test_axe_sees_what_is_wrong(opened: Opened) -> None:
    """The check above finds a field without a label and words too pale to read."""
    context = opened(bypass_csp=True)
    page = context.new_page()
    page.goto("/ask")
    page.evaluate(
        "() => { document.querySelector('label').remove();"
        " document.querySelector('h1').style.color = '#ddd'; }"
    )
    said = {v["id"] for v in Axe().run(page).response["violations"]}
    context.close()
    assert {"label", "color-contrast"} <= said


def test_no_page_scrolls_sideways_on_the_narrowest_screen(opened: Opened) -> None:
    """At 320 px, which is also 1280 px at four times the size, all is within the width."""
    context = opened(viewport={"width": NARROWEST, "height": 800})
    page, wide = context.new_page(), {}
    for way in WAYS:
        page.goto(f"/{way}")
        beyond = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        if beyond > 0:
            wide[way] = beyond
    context.close()
    assert {} == wide


def test_the_browser_has_nothing_to_complain_of(opened: Opened) -> None:
    """No page wants a style, a script or a picture that the policy forbids."""
    context = opened()
    page = context.new_page()
    found = faults(page)
    for way in WAYS:
        page.goto(f"/{way}")
        assert page.evaluate("document.styleSheets.length") >= 2
    context.close()
    assert [] == found


def test_from_nothing_to_a_printed_booklet(opened: Opened, folder: Path, tmp_path: Path) -> None:
    """A project is begun, a slip in it mended, a remedy taken, a step ticked, and all printed."""
    context = opened(java_script_enabled=False)
    page = context.new_page()
    page.goto("/")
    page.get_by_role("link", name="Begin a project").click()
    page.get_by_label("What do you call the garment?").fill("Small bag")
    page.get_by_label("Its cloths").fill("out: linen suitng\nfrill: nylon organza")
    page.get_by_label("Its places").fill("mouth: out, frill")
    page.get_by_role("button", name="Write the project").click()
    assert "linen suitng" in page.get_by_label("Its cloths").input_value()
    page.get_by_label("Its cloths").fill("out: linen suiting\nfrill: nylon organza")
    page.get_by_role("button", name="Write the project").click()
    assert page.url.endswith("/project/small-bag.yaml")
    page.get_by_role("button", name="Take this").first.click()
    assert page.get_by_text("Written into the project:").is_visible()
    page.get_by_role("link", name="Order of work").click()
    page.get_by_role("button", name="Tick step 1 off").click()
    assert page.url.endswith("/order#next")
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


def test_the_keyboard_reaches_the_main_part_first(opened: Opened) -> None:
    """The first stop is the way past the navigation; after a slip, the text to be mended."""
    context = opened()
    page = context.new_page()
    page.goto(f"/{JACKET}")
    page.keyboard.press("Tab")
    assert "To the main part" == page.evaluate("document.activeElement.textContent")
    page.goto("/ask?cloths=nylon+organzza")
    assert "q-cloths" == page.evaluate("document.activeElement.id")
    assert "nylon organzza" == page.locator("#q-cloths").input_value()
    context.close()
