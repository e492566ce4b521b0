"""Writes her rack: a reel more, a reel that she says more of, or one that is used up."""

from __future__ import annotations

import re
from typing import Any

from advisor.errors import InputError, Problem, shown
from advisor.knowledge.mine import read_colour
from advisor.knowledge.names import plain_name
from advisor.textio.flow import flow
from advisor.textio.yamledit import line_end
from advisor.textio.yamlfile import parse_yaml

HEAD = "# Your rack of thread, written by `advisor learn thread`; change it as you like.\n"
_REEL = re.compile(r"[ ]*-[ ]*\{.*\}[ ]*(?:#.*)?")


def changed_rack(
    text: str | None, reel: dict[str, Any], near: float | None, *, away: bool = False
) -> str:
    """Her file with a change; comments and line ends stay.

    Args:
        text: what the file says; None where there is none.
        reel: what is said of a reel, by key; empty where only `near` is set.
        near: how near a shared reel has to be; None leaves it.
        away: whether the reel is taken out.

    Raises:
        InputError: there is no such reel to take out, its colour is none that can be measured, or
            the file is not as it was written.
    """
    if reel.get("colour"):
        _check_colour(str(reel["colour"]))
    body = HEAD if text is None else text
    end = line_end(body)
    lines = body.replace("\r\n", "\n").splitlines()
    if near is not None:
        lines = [line for line in lines if not line.startswith("near:")]
        lines.insert(_after_comments(lines), f"near: {near:g}")
    if reel:
        lines = _with_reel(lines, reel, away=away)
    return end.join((*lines, ""))


def _check_colour(said: str) -> None:
    """Refuse a colour in words: it cannot be set beside a cloth, and would be kept for nothing."""
    try:
        read_colour(said)
    except ValueError as error:
        wrong = f"{shown(said)} is no colour that can be measured"
        expected = f"{error}; a word such as navy is the name"
        raise InputError(Problem(wrong, None, expected)) from None


def _after_comments(lines: list[str]) -> int:
    return next((i for i, line in enumerate(lines) if not line.startswith("#")), len(lines))


def _with_reel(lines: list[str], reel: dict[str, Any], *, away: bool) -> list[str]:
    """The lines with a reel more, changed or less; each reel is one line."""
    said = any(line.strip() and not line.startswith("#") for line in lines)
    data = parse_yaml("\n".join(lines) + "\n", "threads.yaml").data if said else {}
    listed = data.get("reels") if isinstance(data, dict) else None
    rows = listed if isinstance(listed, list) else []
    at = [i for i, line in enumerate(lines) if _REEL.fullmatch(line)]
    if len(at) != len(rows) or not all(isinstance(row, dict) for row in rows):
        raise InputError("write each reel on a line of its own, as - {name: navy, …}")
    name = plain_name(str(reel["name"]))
    same = [k for k, row in enumerate(rows) if plain_name(str(row.get("name"))) == name]
    if away:
        if not same:
            raise InputError(f"no reel of yours is called {shown(str(reel['name']))}")
        return [line for i, line in enumerate(lines) if i != at[same[0]]]
    if same:
        whole = {**rows[same[0]], **reel}
        lines[at[same[0]]] = f"  - {flow(whole)}"
        return lines
    head = next((i for i, line in enumerate(lines) if line.startswith("reels:")), None)
    if head is None:
        lines.append("reels:")
        head = len(lines) - 1
    lines.insert((at[-1] if at else head) + 1, f"  - {flow(reel)}")
    return lines
