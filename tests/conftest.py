"""What every test shares: how Hypothesis searches, the cache, the checkout, and a browser.

All tests of a run, in whichever worker or process, share one cache folder: the knowledge is
compiled once, and the heat of a stack is worked out once (it depends on nothing but the stack:
`tests/unit/heat/test_heat_answer.py`; what is kept is what would come: `test_heat_kept.py`). The
tests of the heat model itself call it below the cache. Processes that tests start share
bytecode in the same way.
"""

from __future__ import annotations

import gc
import os
import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from msgspec.structs import replace

from advisor.heat.kept import keep_on
from advisor.knowledge import load
from advisor.overlay.shelf import AnswerShelf, heat_shelf
from advisor.textio.yamlfile import Document, read_yaml

# Time limits would fail a law because the machine is busy, not because the law is broken.
settings.register_profile(
    "here", deadline=None, suppress_health_check=[HealthCheck.too_slow], print_blob=True
)
# Derandomised: the same commit gives the same verdict, and nothing is remembered between runs.
settings.register_profile("ci", settings.get_profile("here"), derandomize=True, database=None)
settings.load_profile("ci" if os.environ.get("CI") else "here")


SELDOM = 100_000
"""New things until their garbage is looked for: knowledge and decided garments live all the run."""


def pytest_configure(config: pytest.Config) -> None:
    """Give the run a cache of its own, unless one is named, before any worker is started."""
    # Before numpy comes in: on small matrices its threads only wait for each other.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    gc.set_threshold(SELDOM)
    if hasattr(config, "workerinput"):
        return
    folder = tempfile.mkdtemp(prefix="advisor-tests-")
    config.add_cleanup(lambda: shutil.rmtree(folder, ignore_errors=True))
    os.environ.setdefault("ADVISOR_CACHE", f"{folder}/cache")
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Let the laws over whole garments ask all of one garment before the next.

    Workers get runs of neighbours, so that a garment is decided once and not once for each law.
    """
    stems = {path.stem for path in (Path(__file__).parent / "garments").rglob("*.yaml")}
    of = {item: _garment_of(item, stems) for item in items}
    grouped = sorted((item for item in items if of[item]), key=lambda item: of[item])
    items[:] = [*grouped, *(item for item in items if not of[item])]


def _garment_of(item: pytest.Item, stems: set[str]) -> str:
    """The garment that a test asks about by its parameter; "" where it is no such test."""
    said = getattr(item, "callspec", None)
    for value in said.params.values() if said else ():
        stem = Path(value).stem if isinstance(value, str | Path) else ""
        if stem in stems:
            return stem
    return ""


@pytest.fixture(scope="session")
def _heat_of_the_run() -> AnswerShelf:
    return heat_shelf()


@pytest.fixture(autouse=True)
def _heat_kept(_heat_of_the_run: AnswerShelf) -> None:
    """What the heat model says is kept for all tests, wherever the last one kept it."""
    keep_on(_heat_of_the_run)


@pytest.fixture(scope="session", autouse=True)
def _files_parsed_once() -> Iterator[None]:
    """A knowledge file of the same bytes is parsed once, however often the whole is compiled.

    Parsing is two thirds of compiling. What YAML means is tried by `tests/unit/textio`, which
    calls the parser itself; the test in `tests/unit/knowledge/test_load.py` holds that nobody
    changes what was parsed.
    """
    parsed: dict[bytes, Document] = {}

    def read(path: Path) -> Document:
        try:
            raw = path.read_bytes()
        except OSError:
            return read_yaml(path)
        if raw not in parsed:
            parsed[raw] = read_yaml(path)
        return replace(parsed[raw], file=str(path))

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(load, "read_yaml", read)
        yield


BROWSERS = ("chromium", "chromium-browser")


@pytest.fixture(scope="session")
def checkout() -> Path:
    """The folder that holds README.md, the package and the knowledge."""
    return Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def chromium() -> str:
    """The path of an installed chromium; without one the test is skipped.

    Where ``ADVISOR_BROWSER=required`` a missing browser is a failure, so that a page nobody
    looked at never passes for a page that works.
    """
    for name in BROWSERS:
        if found := shutil.which(name):
            return found
    if os.environ.get("ADVISOR_BROWSER") == "required":
        pytest.fail("a browser is required here, but no chromium is installed")
    pytest.skip("no chromium is installed")
