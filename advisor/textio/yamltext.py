"""A maker's words as text of a YAML file: bare where YAML reads them back, else in quotes."""

from __future__ import annotations

import json
import re

_BARE = re.compile(r"[^\W\d_](?:[^\W_]|[ '’/().-])*|[0-9]+(?:\.[0-9]+)? [a-z]+")
_NO_WORDS = frozenset({"null", "true", "false", "yes", "no", "on", "off"})


def quoted(text: str) -> str:
    """Text as YAML reads it back, in quotes where it needs them."""
    bare = _BARE.fullmatch(text) and text == text.strip() and text.casefold() not in _NO_WORDS
    return text if bare else json.dumps(text, ensure_ascii=False)
