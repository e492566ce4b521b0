"""A value on one line, as YAML 1.2 reads it back."""

from __future__ import annotations

import json
from typing import Any

from advisor.textio.yamltext import quoted

_WORDS = frozenset({"yes", "no"})
"""Words of this tool's files, where they are no truth values."""


def flow(value: Any) -> str:
    """Text, a number, or a list or group of them, on one line."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{flow(k)}: {flow(v)}" for k, v in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(flow(v) for v in value) + "]"
    if isinstance(value, str):
        return value if value in _WORDS else quoted(value)
    return f"{value:g}" if isinstance(value, float) else json.dumps(value)
