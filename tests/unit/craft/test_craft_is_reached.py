"""Every function and class of the craft is reached from a room that answers, not by tests alone."""

from __future__ import annotations

import ast
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[3] / "advisor"
# The formulas live in the craft and in the model of heat.
CRAFT = ("advisor.craft", "advisor.heat.model")
Name = tuple[str, str]

# One stack at its mid values, for the oracles: the rooms ask for many at once.
FOR_THE_ORACLES = {("advisor.heat.model.solve", name) for name in ("trace", "trace_grid")}


def modules() -> dict[str, ast.Module]:
    """Every module of the package by its dotted name."""
    return {
        ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts): ast.parse(
            path.read_text(encoding="utf-8")
        )
        for path in PACKAGE.rglob("*.py")
    }


def used(module: str, tree: ast.Module, part: ast.AST, every: dict[str, ast.Module]) -> set[Name]:
    """The names of the craft that a part of a module comes to."""
    rooms: dict[str, str] = {}
    names: dict[str, Name] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and (node.module or "").startswith(CRAFT):
            for alias in node.names:
                whole = f"{node.module}.{alias.name}"
                if whole in every:
                    rooms[alias.asname or alias.name] = whole
                else:
                    names[alias.asname or alias.name] = (str(node.module), alias.name)
    found: set[Name] = set()
    for node in ast.walk(part):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            if node.value.id in rooms:
                found.add((rooms[node.value.id], node.attr))
        elif isinstance(node, ast.Name):
            found.add(names.get(node.id, (module, node.id)))
    return found


def defined(trees: dict[str, ast.Module]) -> dict[Name, ast.stmt]:
    """Everything that stands at the top of a module of the craft."""
    found: dict[Name, ast.stmt] = {}
    for module, tree in trees.items():
        for node in tree.body if module.startswith(CRAFT) else ():
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                found[module, node.name] = node
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                found[module, node.target.id] = node
            elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
                found[module, node.targets[0].id] = node
    return found


def test_no_function_of_the_craft_is_for_tests_alone() -> None:
    """Each is used outside the craft, or by something that is."""
    trees = modules()
    craft = defined(trees)
    left: set[Name] = set()
    for module, tree in trees.items():
        if not module.startswith(CRAFT):
            left |= used(module, tree, tree, trees)
    reached: set[Name] = set()
    while left:
        name = left.pop()
        if name in craft and name not in reached:
            reached.add(name)
            left |= used(name[0], trees[name[0]], craft[name], trees)
    idle = {
        name
        for name, node in craft.items()
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not name[1].startswith("_")
    } - reached
    assert len(reached) > 150
    assert FOR_THE_ORACLES == idle
