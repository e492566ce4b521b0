"""Takes the pictures of the README: a sheet as it is printed, and the page as it is used.

Run from the checkout with `python -m tests.page.pictures`; it needs an installed chromium. The
pictures lie beside this file, so that the README shows what the code of the same commit does.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path
from typing import Literal

from playwright.sync_api import Browser, sync_playwright

from advisor.page.serve import Server
from tests.page.conftest import CHECKOUT, serving
from tests.typed import shipped

FOLDER = Path(__file__).parent / "pictures"
JACKET = "bandstand-jacket.yaml"
Medium = Literal["print", "screen"]
PICTURES: dict[str, tuple[str, Medium, int]] = {
    "sheet": (f"project/{JACKET}/sheet", "print", 1060),
    "iron": (f"project/{JACKET}/iron?place=hem+frill", "screen", 900),
    "order": (f"project/{JACKET}/order", "screen", 900),
}
"""By name: what is looked at, on paper or on a screen, and how many dots of its height."""
WIDTH = 820


def take(browser: Browser, server: Server, folder: Path) -> list[Path]:
    """Take every picture into a folder."""
    taken = []
    for name, (way, medium, height) in PICTURES.items():
        page = browser.new_page(viewport={"width": WIDTH, "height": height})
        page.emulate_media(media=medium, color_scheme="light", reduced_motion="reduce")
        page.goto(server.url + way)
        taken.append(folder / f"{name}.png")
        page.screenshot(path=taken[-1])
        page.close()
    return taken


def main() -> None:
    """Take the pictures anew."""
    chromium = shutil.which("chromium")
    if chromium is None:
        sys.exit("no chromium is installed")
    mine = Path(tempfile.mkdtemp())
    shutil.copy(CHECKOUT / "knowledge/examples" / JACKET, mine)
    with serving(mine, shipped()) as server, sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        FOLDER.mkdir(exist_ok=True)
        for path in take(browser, server, FOLDER):
            sys.stdout.write(f"{path.relative_to(CHECKOUT)}\n")
        browser.close()


if __name__ == "__main__":
    main()
