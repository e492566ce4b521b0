"""Imports point one way, modules stay small, and light modules stay light."""

from __future__ import annotations

import ast
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
PACKAGE = CHECKOUT / "advisor"
LONGEST = 400

# Each room of the house and the rooms whose things it may use. Its own are always allowed.
# The package's own __init__ and __main__ are the doorstep.
GROUND = {"errors", "records", "units"}
KNOWLEDGE = GROUND | {"textio"}
PROJECT = KNOWLEDGE | {"knowledge"}
# Rules never know about files, so nothing that decides may read YAML.
CLAIMS = GROUND | {"knowledge", "project", "craft"}
DECIDE = CLAIMS | {"claims", "construction", "heat"}
ORDER = DECIDE | {"decide"}
ANSWER = ORDER | {"order", "label", "identify"}
# What is printed stands in the answer; the formulas of the dial and of heat are words of its own.
RENDER = GROUND | {"answer", "craft", "heat"}
EXPLAIN = ANSWER | {"answer", "render"}
WRITING = ANSWER | {"answer", "textio", "overlay"}
PAGE = WRITING | {"render", "explain", "writing"}
CLI = PAGE | {"page"}
MAY_USE: dict[str, set[str]] = {
    "errors": set(),
    "records": set(),
    "units": {"errors"},
    "textio": GROUND,
    "knowledge": KNOWLEDGE,
    "project": PROJECT,
    "overlay": PROJECT | {"project"},
    "craft": GROUND,
    "claims": CLAIMS,
    "construction": CLAIMS | {"claims"},
    "heat": CLAIMS | {"claims", "construction"},
    "decide": DECIDE,
    "order": ORDER,
    "label": ORDER,
    "identify": ORDER,
    "answer": ANSWER,
    "render": RENDER,
    "explain": EXPLAIN,
    "writing": WRITING,
    "page": PAGE,
    "cli": CLI,
    "__init__": set(),
    "__main__": {"cli"},
}

# Modules of the quick path: importing one brings in none of the heavy libraries.
LIGHT = (
    "advisor.errors",
    "advisor.units",
    "advisor.textio.yamlfile",
    "advisor.overlay.cache",
    "advisor.project.quick",
    "advisor.decide.advise",
    "advisor.answer.core",
    "advisor.render.printed.detailed",
    "advisor.render.screen.ask",
    "advisor.cli.ask",
)
HEAVY = ("pydantic", "yaml", "rich", "numpy")
# What is told of a garment and never of a question, which is answered sooner without.
OF_GARMENTS = (
    "advisor.answer.model.making",
    "advisor.answer.model.needed",
    "advisor.construction.hemroom",
    "advisor.construction.notionlist",
    "advisor.decide.kit",
    "advisor.order.unsettled",
)


def modules() -> list[Path]:
    """Every module of the package, in a steady order."""
    return sorted(PACKAGE.rglob("*.py"))


def dotted(path: Path) -> str:
    """The dotted name of a module, e.g. ``advisor.heat.model``."""
    return ".".join(path.relative_to(CHECKOUT).with_suffix("").parts)


def room_of(name: str) -> str:
    """The room that a dotted name lies in: the part after ``advisor``."""
    parts = name.split(".")
    return parts[1] if len(parts) > 1 else "__init__"


def named_by_call(node: ast.Call) -> str | None:
    """The module that ``import_module("...")`` or ``__import__("...")`` names in so many words."""
    function = node.func
    called = function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")
    if called not in {"import_module", "__import__"} or not node.args:
        return None
    first = node.args[0]
    return first.value if isinstance(first, ast.Constant) and isinstance(first.value, str) else None


def imports(source: str, module: str) -> Iterator[tuple[int, str]]:
    """Line and dotted name of each import, those in functions and under TYPE_CHECKING included."""
    package = module.split(".")[:-1]
    for node in ast.walk(ast.parse(source)):
        match node:
            case ast.Import(names=names):
                yield from ((node.lineno, alias.name) for alias in names)
            case ast.ImportFrom(names=names, module=origin, level=level):
                above = package[: len(package) - level + 1] if level else []
                base = ".".join([*above, *([origin] if origin else [])])
                # "from advisor import units" names a room only in its second half.
                whole = base == "advisor"
                yield from ((node.lineno, f"{base}.{a.name}" if whole else base) for a in names)
            case ast.Call() if name := named_by_call(node):
                yield node.lineno, name


def offences(source: str, module: str) -> list[str]:
    """What a module imports against the order of the house, one sentence each."""
    here = room_of(module)
    if here not in MAY_USE:
        return [f"{module}: the room {here!r} is not in the order of the house"]
    # A name that is no room ("from advisor import __version__") belongs to the package itself;
    # a room that is not in the table is named above, by its own modules.
    allowed = MAY_USE[here] | {here, "__init__"}
    wrong = {
        f"{module}:{line} imports {name}; {here} may use {', '.join(sorted(MAY_USE[here])) or '-'}"
        for line, name in imports(source, module)
        if name.split(".")[0] == "advisor" and room_of(name) in MAY_USE.keys() - allowed
    }
    return sorted(wrong)


def test_imports_point_one_way() -> None:
    """No module of the package imports from a room above its own."""
    found = modules()
    wrong = [line for p in found for line in offences(p.read_text("utf-8"), dotted(p))]
    assert found
    assert [] == wrong


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("advisor.units", "from advisor.textio.yamlfile import load"),
        ("advisor.errors", "from advisor import units"),
        ("advisor.craft.strip", "import advisor.knowledge.schema"),
        ("advisor.craft.strip", "def f():\n    from advisor.claims import combine"),
        ("advisor.claims.collect", "from advisor.textio.yamlfile import load"),
        (
            "advisor.project.load",
            "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    import advisor.order.planner",
        ),
        ("advisor.knowledge.load", "from ..render import text"),
        ("advisor.render.text", "from .. import page"),
        ("advisor.render.lines", "from advisor.knowledge.places import GROUPS"),
        ("advisor.page.serve", "import importlib\nimportlib.import_module('advisor.cli.main')"),
        ("advisor.attic", "pass"),
    ],
)
def test_an_upward_import_is_found_however_it_is_written(module: str, source: str) -> None:
    """An upward import is named once, be it absolute, relative, late, typed-only or by string."""
    found = offences(source, module)
    assert 1 == len(found)
    assert found[0].startswith(module)


@pytest.mark.parametrize(
    ("module", "source"),
    [
        ("advisor.textio.yamlfile", "from advisor import errors, units"),
        ("advisor.heat.model", "import math\nfrom advisor.craft.bulk import thickness"),
        ("advisor.claims.combine", "from advisor.project.garment import Garment"),
        ("advisor.render.printed.html", "from . import wording\nfrom advisor.answer import core"),
        ("advisor.cli.ask", "from advisor.page import serve"),
        ("advisor.knowledge.load", "from advisories import page"),
        ("advisor.errors", "from advisor import __version__"),
    ],
)
def test_an_import_from_below_or_beside_is_fine(module: str, source: str) -> None:
    """A module may use its own room and those below it."""
    assert [] == offences(source, module)


def test_a_class_has_its_name_to_itself() -> None:
    """One word means one thing: no two modules define classes of one name."""
    found: dict[str, list[str]] = {}
    for path in modules():
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            if isinstance(node, ast.ClassDef):
                found.setdefault(node.name, []).append(dotted(path))
    assert len(found) > 300
    assert {} == {name: where for name, where in found.items() if len(where) > 1}


def test_no_module_is_too_long() -> None:
    """No module of the package has more than 400 lines."""
    lengths = {dotted(p): len(p.read_text("utf-8").splitlines()) for p in modules()}
    assert {} == {name: n for name, n in lengths.items() if n > LONGEST}


def held_after_importing(module: str, asked: tuple[str, ...] = HEAVY) -> list[str]:
    """The modules among some that a fresh interpreter holds after importing one."""
    script = (
        f"import sys, json; sys.path.insert(0, {str(CHECKOUT)!r}); import {module}; "
        f"print(json.dumps([name for name in {asked!r} if name in sys.modules]))"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=False
    )
    assert 0 == done.returncode, done.stderr
    loaded: list[str] = json.loads(done.stdout)
    return loaded


@pytest.mark.parametrize("module", LIGHT)
def test_a_light_module_imports_no_heavy_library(module: str) -> None:
    """A module of the quick path is imported without pydantic, yaml, rich or numpy."""
    assert [] == held_after_importing(module)


@pytest.mark.parametrize("library", HEAVY)
def test_a_heavy_library_is_noticed(library: str) -> None:
    """The check above does see each heavy library when one is imported."""
    assert library in held_after_importing(library)


@pytest.mark.parametrize("module", ["advisor.answer.pipeline", "advisor.render.screen.ask"])
def test_a_question_is_answered_without_what_only_a_garment_is_told(module: str) -> None:
    """How a garment is built, and what is bought for it, is loaded where there is one."""
    assert [] == held_after_importing(module, OF_GARMENTS)
    assert [OF_GARMENTS[0]] == held_after_importing(OF_GARMENTS[0], OF_GARMENTS)
