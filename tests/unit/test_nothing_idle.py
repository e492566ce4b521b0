"""What the package defines, the package uses: nothing stands there for its own test alone."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[2] / "advisor"
_NAMES = r"[\w.:]+(?<!html)"
"""A text that may name a function, as a mutant or an entry does; that of a template names none."""
FOR_LAWS = {"trace", "machine_seconds", "iron_seconds"}
"""One stack at its mid values, and the price of one change: laws ask for one, the rooms for all."""


def named(tree: ast.AST) -> Iterator[str]:
    """Every name that a piece of code reads, or writes as a text of one word."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Load):
            yield node.id
        elif isinstance(node, ast.Attribute):
            yield node.attr
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield from re.findall(r"\w+", node.value) if re.fullmatch(_NAMES, node.value) else ()


def test_no_function_of_the_package_is_for_tests_alone() -> None:
    """Each function and class is named in the package again; a decorated one is for who asks it."""
    trees = [ast.parse(path.read_text("utf-8")) for path in PACKAGE.rglob("*.py")]
    used = {name for tree in trees for name in named(tree)}
    used |= {
        word
        for path in PACKAGE.rglob("*.html")
        for word in re.findall(r"\w+", path.read_text("utf-8"))
    }
    defined = {
        node.name
        for tree in trees
        for node in ast.walk(tree)
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef)
        and not (isinstance(node, ast.FunctionDef) and node.decorator_list)
        and not node.name.startswith("__")
    }
    assert len(defined) > 3000
    assert FOR_LAWS == defined - used
