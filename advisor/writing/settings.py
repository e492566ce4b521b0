"""Puts what holds for a whole project into its file: units, fitting, who wears it, the machine."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from advisor.textio.editing import Edit
from advisor.writing.parts import Change

Value = str | tuple[str, ...]
OF_THE_MAKER = ("machine", "foot lift", "overlocker", "feet")
"""What stands under `maker`; everything else stands at the head of the file."""


def settings(wanted: Mapping[str, Value]) -> Change:
    """The edits that make a project say what is wanted of it.

    Args:
        wanted: by key, the words; a key with none is taken out, and one that is not named stays.
    """

    def change(data: Any) -> Sequence[Edit]:
        heads: list[Edit] = [
            ((key,), value or None) for key, value in wanted.items() if key not in OF_THE_MAKER
        ]
        return [*heads, *_of_the_maker(data.get("maker"), wanted)]

    return change


def _of_the_maker(said: Any, wanted: Mapping[str, Value]) -> Sequence[Edit]:
    """Key by key where a maker is written already, so that what she noted beside it stays."""
    asked = {key: _plain(wanted[key]) for key in OF_THE_MAKER if key in wanted}
    left = {**(said if isinstance(said, dict) else {}), **asked}
    full = {key: value for key, value in left.items() if value}
    if not full:
        return [(("maker",), None)]
    if not isinstance(said, dict) or not said:
        return [(("maker",), full)]
    return [(("maker", key), value or None) for key, value in asked.items()]


def _plain(value: Value) -> str | list[str]:
    return value if isinstance(value, str) else list(value)
