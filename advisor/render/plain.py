"""The words of an answer without what is only typed at a command line, for page and paper."""

from __future__ import annotations

import re

from msgspec.structs import replace

from advisor.render.printed.section import Section

_COMMANDS = "ask|check|explain|fabrics|iron|label|learn|order|quote|schema|sheet|start|why"
_TYPED = re.compile(rf"--[a-z]|\badvisor (?:{_COMMANDS})\b")
_LEAD = re.compile(r"^advisor order .*?: (?=all \d|\d+ steps)")
_IDENTIFY = re.compile(r"`?advisor identify`?")
_SENTENCE = re.compile(r"(?<=[.!?;])\s+")


def without_commands(text: str) -> str:
    """A text less its sentences that name a command; the tests of fibres keep their mention."""
    text = _IDENTIFY.sub("the tests for an unknown fibre", _LEAD.sub("", text))
    if not _TYPED.search(text):
        return text
    kept = [part for part in _SENTENCE.split(text) if not _TYPED.search(part)]
    return " ".join(kept).rstrip("; ")


def plain_section(section: Section) -> Section:
    """A section with every text of it so."""
    items = tuple(
        replace(
            item,
            parts=tuple(replace(p, text=without_commands(p.text)) for p in item.parts),
        )
        for item in section.items
    )
    intro, close = without_commands(section.intro), without_commands(section.close)
    return replace(section, items=items, intro=intro, close=close)
