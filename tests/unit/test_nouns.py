"""The table of what makers call places: spelt as names are read, and the only one of its sort."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Final

import pytest

import advisor
from advisor.knowledge import nouns
from advisor.project.headwords import the_words

PACKAGE: Final = Path(advisor.__file__).parent
GROUPS: Final = {k: v for k, v in vars(nouns).items() if isinstance(v, frozenset)}
ASKED: Final = re.compile(r"(?<!\.)\b(?:words|the_words|singular_words|_words|called|named)\b")
"""How the rooms call the words of a name where they match them."""
MANY: Final = 3
LEFT: Final = {
    "cli/main.py LIVING_LONG": "words of a command line",
    "cli/usage.py _OF_FILES": "words of a command line",
    "order/namewords.py ALL_TOLD": "families of kinds",
    "order/namewords.py AT_THE_WAIST": "ids of roles",
    "order/namewords.py ENDS_ANYWHERE": "ids of roles",
    "order/namewords.py OF_THE_BODY": "ids of roles",
    "order/namewords.py TURNS": "ids of roles",
    "order/namewords.py UPPER_ROLES": "ids of roles",
    "order/namewords.py WIDTHS": "ids of roles",
    "project/placing.py BANDED": "ids of kinds",
}
"""Tables that stand beside a name's words and are matched with something else."""


@pytest.mark.parametrize("group", sorted(GROUPS))
def test_a_word_stands_as_names_are_read(group: str) -> None:
    """No plural, no capital and no word for which another stands is in a group."""
    assert [(word,) for word in sorted(GROUPS[group])] == [
        the_words(word) for word in sorted(GROUPS[group])
    ]


def test_no_two_groups_are_the_same() -> None:
    """What holds the same words is one group."""
    assert len(GROUPS) == len(set(GROUPS.values()))


def test_every_group_is_asked_for() -> None:
    """A group that no room asks for, and no other group is made of, is struck."""
    text = "\n".join(path.read_text(encoding="utf-8") for path in PACKAGE.rglob("*.py"))
    table = Path(nouns.__file__).read_text(encoding="utf-8")
    own = {g for g in GROUPS if len(re.findall(rf"\b{g}\b", table)) > 1}
    assert [] == [g for g in GROUPS if g not in own and not re.search(rf"nouns\.{g}\b", text)]


def test_no_room_keeps_words_of_its_own() -> None:
    """Three words or more that are matched with a name stand in the table, and nowhere else."""
    assert sorted(LEFT) == sorted(set(_tables()))


def _tables() -> Iterator[str]:
    for path in sorted(PACKAGE.rglob("*.py")):
        where = str(path.relative_to(PACKAGE))
        if "phrases" in path.parts or where == "knowledge/nouns.py":
            continue
        tree = ast.parse(path.read_text(encoding="utf-8"))
        own = {name for name, value in _constants(tree) if _is_table(value)}
        for match in filter(_matches_a_name, ast.walk(tree)):
            for node in ast.walk(match):
                if isinstance(node, ast.Name) and node.id in own:
                    yield f"{where} {node.id}"
                elif isinstance(node, ast.Attribute) and not _is(node.value, "nouns"):
                    yield from _of_another(node, tree)
                elif isinstance(node, ast.Set | ast.Tuple | ast.List) and _is_table(node):
                    yield f"{where} {ast.unparse(node)}"


def _of_another(node: ast.Attribute, tree: ast.Module) -> Iterator[str]:
    """The table of another module that is asked for as `module.TABLE`."""
    lines = [at for at in tree.body if isinstance(at, ast.ImportFrom)]
    for line, name in ((at, name) for at in lines for name in at.names):
        where = f"{line.module}.{name.name}".replace(".", "/")
        path = PACKAGE.parent / f"{where}.py"
        if _is(node.value, name.asname or name.name) and path.exists():
            other = ast.parse(path.read_text(encoding="utf-8"))
            tables = {called for called, value in _constants(other) if _is_table(value)}
            yield from [f"{path.relative_to(PACKAGE)} {node.attr}"] * (node.attr in tables)


def _matches_a_name(node: ast.AST) -> bool:
    matched = isinstance(node, ast.Compare) or (
        isinstance(node, ast.BinOp) and isinstance(node.op, ast.BitAnd | ast.Sub)
    )
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
        matched = node.func.attr in ("isdisjoint", "intersection")
    if isinstance(node, ast.Call) and _is(node.func, "speaks_of"):
        return True
    return matched and bool(ASKED.search(ast.unparse(node)))


def _constants(tree: ast.Module) -> Iterator[tuple[str, ast.expr]]:
    for node in tree.body:
        if isinstance(node, ast.AnnAssign) and node.value and isinstance(node.target, ast.Name):
            yield node.target.id, node.value
        elif isinstance(node, ast.Assign):
            target, value = node.targets[0], node.value
            if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
                pairs = zip(target.elts, value.elts, strict=False)
                yield from ((one.id, of) for one, of in pairs if isinstance(one, ast.Name))
            elif isinstance(target, ast.Name):
                yield target.id, value


def _is_table(node: ast.expr) -> bool:
    """Whether it is a set or a row of words: three of them and more, each a plain one."""
    if isinstance(node, ast.Call) and _is(node.func, "frozenset") and node.args:
        node = node.args[0]
    if isinstance(node, ast.BinOp):
        return _is_table(node.left) or _is_table(node.right)
    if not isinstance(node, ast.Set | ast.Tuple | ast.List):
        return False
    words = [n.value for n in ast.walk(node) if isinstance(n, ast.Constant)]
    return sum(isinstance(w, str) and w.isalpha() and w.islower() for w in words) >= MANY


def _is(node: ast.AST, name: str) -> bool:
    return isinstance(node, ast.Name) and node.id == name
