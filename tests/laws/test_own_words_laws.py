"""What a maker calls a cloth says nothing of what is made of it: a law over all garments at hand.

A cloth may be called after what it is for, `quilt` or `cuff`, and its places after the cloth
(`quilt shoulder`). The same garment with a cloth of a name that means nothing is the same garment.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from advisor.order.seamplaces import seam_places
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.garments.whole import FILES, NAMES, known, ordered

NEUTRAL = "quill"
"""A word of no trade, which stands in the alphabet where `quilt` does."""
TRADE = ("quilt", "cuff", "band", "collar", "tab", "pocket", "hem", "yoke", "frill", "strap")
BODY = {"shoulder", "armhole", "sleeve seam", "crotch", "inseam", "dart", "bust dart", "waist dart"}
"""Places that no piece of a garment has but its body, sleeves and legs."""


def renamed(text: str, word: str) -> str:
    """A project whose most used cloth is called `word`, and its own places of the body after it."""
    data = parse_yaml(text, "project.yaml").data
    cloths = list(data["fabrics"])
    main = max(cloths, key=lambda c: sum(_of(row) == {c} for row in data["seams"]))
    calls = {
        row["name"]: f"{word} {row['name']}"
        for row in data["seams"]
        if _of(row) == {main} and row["name"].casefold() in BODY and "kind" not in row
    }
    new = _spelt(data, main, word, calls)
    new["fabrics"] = {word if c == main else c: about for c, about in data["fabrics"].items()}
    return str(yaml.dump(new, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True))


def _of(row: dict[str, Any]) -> set[str]:
    """The cloths of a place."""
    said = row.get("layers", row.get("on"))
    layers = said if isinstance(said, list) else [said]
    uses = (use.get("use") if isinstance(use, dict) else use for use in layers)
    return {str(use) for use in uses if use}


def _spelt(data: Any, main: str, word: str, calls: dict[str, str], key: str = "") -> Any:
    """The data with the cloth and its places called anew wherever they are named."""
    if isinstance(data, dict):
        return {k: _spelt(v, main, word, calls, str(k)) for k, v in data.items()}
    if isinstance(data, list):
        return [_spelt(item, main, word, calls, key) for item in data]
    if data == main and key in {"layers", "on", "use", "fabric", "separate", "pressed first"}:
        return word
    return calls.get(data, data) if isinstance(data, str) else data


def places(text: str) -> list[tuple[str, str, str]]:
    """What each place of a project is taken for."""
    garment = garment_of(parse_yaml(text, "project.yaml"), known())
    return [(p.kind.id, p.role.id, p.unit) for p in seam_places(garment, known())]


@pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)
def test_places_called_after_their_cloth_are_what_they_were(file: Path) -> None:
    """No kind, role or layer comes of the word by which a cloth is called."""
    text = file.read_text(encoding="utf-8")
    said = places(renamed(text, NEUTRAL))
    words = [word for word in TRADE if word not in text.casefold()]
    assert words
    assert dict.fromkeys(words, said) == {word: places(renamed(text, word)) for word in words}


@pytest.mark.parametrize("name", NAMES)
def test_the_order_of_work_is_the_same_whatever_a_cloth_is_called(name: str) -> None:
    """With its places called after it, as with a name that means nothing."""
    text = next(f for f in FILES if f.stem == name).read_text(encoding="utf-8")
    said = ordered(renamed(text, NEUTRAL))
    got = ordered(renamed(text, "quilt"))
    assert [step.replace(NEUTRAL, "quilt") for step in said.order] == list(got.order)
    assert [m.id for m in said.methods.values()] == [m.id for m in got.methods.values()]
