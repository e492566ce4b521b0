"""A maker's words and values on one line, as YAML 1.2 reads them back."""

from __future__ import annotations

import json
import re
from typing import Any

_BARE = re.compile(r"[^\W\d_](?:[^\W_]|[ '’/().-])*|[0-9]+(?:\.[0-9]+)? [a-z]+")
_NO_WORDS = frozenset({"null", "true", "false", "yes", "no", "on", "off"})
_WORDS = frozenset({"yes", "no"})
"""Words of this tool's files, where they are no truth values."""


def quoted(text: str) -> str:
    """Text as YAML reads it back, in quotes where it needs them."""
    bare = _BARE.fullmatch(text) and text == text.strip() and text.casefold() not in _NO_WORDS
    return text if bare else json.dumps(text, ensure_ascii=False)


def flow(value: Any) -> str:
    """Text, a number, or a list or group of them, on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{flow(k)}: {flow(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(flow(v) for v in value) + "]"
    if isinstance(value, str):
        return value if value in _WORDS else quoted(value)
    return f"{value:g}" if isinstance(value, float) else json.dumps(value)
