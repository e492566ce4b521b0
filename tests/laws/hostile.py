"""Projects that nobody meant: the demos with something wrong in them, and what the schema allows.

Every case comes from its number alone, so that one that fails can be made again.
"""

from __future__ import annotations

import copy
import random
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from advisor.answer.forms import json_schema
from advisor.knowledge.model import Knowledge
from advisor.textio.yamlfile import read_yaml

CHECKOUT = Path(__file__).resolve().parents[2]
DEMOS = sorted((CHECKOUT / "knowledge/examples").glob("*.yaml"))
ODD: tuple[Any, ...] = (
    None, True, False, 0, 1, -1, 2, 3, 100, 1e-9, 1e9, 1e300, 10**30, 0.5, "", " ", "no", "none",
    "unknown", "100", "0", "-5 mm", "1e3 cm", "13 cm", "2 yd", "5/0 in", "nan", "inf", "300 °C",
    "-40 °F", "240 g/m2", "cotton", "cotton 100", "cotton 120", "silk 50 wool 50", "elastane",
    "silk velvet", "brocade, fibre unknown", "self", "shell", "lining", "zip", "hem", "a" * 300,
    "\u202eabc", "a\u200bb", "\x1b[31m", "é𝄞", "💎", "a: b", "[", "{", "-", "#27455f", "'", '"',
    "\\", "../../x", "--html", "yes", [], {}, [[]], [None], {"": ""}, [1, 2], ["shell"],
    {"use": "shell"},
    {"notion": "zip"}, {"fullness": 2.5}, {"use": "shell", "fullness": 99}, ["shell"] * 13,
    {"cotton": 100}, {"cotton": 50, "silk": 50.5}, {"unknown": 100}, {"number": 4, "depth": "2 cm"},
)  # fmt: skip


@cache
def demos() -> tuple[Any, ...]:
    return tuple(read_yaml(path).data for path in DEMOS)


@cache
def _demo_texts() -> tuple[str, ...]:
    return tuple(path.read_text("utf-8") for path in DEMOS)


@cache
def _words() -> tuple[Any, ...]:
    """Every value of the demos, to be put where it does not belong."""
    return tuple(value for demo in demos() for _, value in _ways(demo))


@cache
def _alike() -> dict[str, list[Any]]:
    """What the demos say under each key, wherever it stands."""
    found: dict[str, list[Any]] = {}
    for demo in demos():
        for way, value in _ways(demo):
            if way and isinstance(way[-1], str):
                found.setdefault(way[-1], []).append(value)
    return found


@cache
def _keys() -> tuple[str, ...]:
    found = {step for demo in demos() for way, _ in _ways(demo) for step in way}
    return tuple(sorted(step for step in found if isinstance(step, str)))


def _ways(data: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], Any]]:
    """Every place of a document and what stands there."""
    yield way, data
    if isinstance(data, (dict, list)):
        pairs = list(data.items() if isinstance(data, dict) else enumerate(data))
        for step, value in pairs:
            yield from _ways(value, (*way, step))


def case(number: int, knowledge: Knowledge) -> str:
    """The text of one case."""
    chance = random.Random(f"advisor {number}")
    kind = number % 4
    if kind == 0:
        return _torn(chance)
    data = _from_schema(chance, knowledge) if kind == 1 else _mutated(chance)
    return str(yaml.safe_dump(data, sort_keys=False, allow_unicode=True, width=1000))


def _mutated(chance: random.Random) -> Any:
    data = copy.deepcopy(chance.choice(demos()))
    for _ in range(chance.choice((1, 1, 1, 2, 3, 6))):
        ways = [way for way, _ in _ways(data) if way]
        if ways:
            _change(data, chance.choice(ways), chance)
    return data


def _change(data: Any, way: tuple[Any, ...], chance: random.Random) -> None:
    holder = data
    for step in way[:-1]:
        holder = holder[step]
    alike = _alike().get(str(way[-1]), ())
    if alike and chance.random() < 0.5:
        holder[way[-1]] = copy.deepcopy(chance.choice(alike))
    else:
        _spoil(holder, way[-1], chance)


def _spoil(holder: Any, last: Any, chance: random.Random) -> None:
    old = holder[last]
    what = chance.randrange(8)
    if what == 0:
        del holder[last]
    elif what <= 2:
        holder[last] = copy.deepcopy(chance.choice(ODD))
    elif what == 3:
        holder[last] = copy.deepcopy(chance.choice(_words()))
    elif what == 4 and isinstance(holder, list):
        holder.append(copy.deepcopy(old))
    elif what == 4:
        holder[chance.choice(_keys())] = copy.deepcopy(old)
    elif what == 5 and isinstance(old, str) and old:
        at = chance.randrange(len(old))
        holder[last] = old[:at] + chance.choice(("", "x", " ", "é", old[at] * 2)) + old[at + 1 :]
    elif what == 6 and isinstance(holder, dict):
        holder[chance.choice(_keys())] = copy.deepcopy(chance.choice((*ODD, *_words())))
    elif isinstance(old, (int, float)) and not isinstance(old, bool):
        holder[last] = old * chance.choice((-1, 0, 0.001, 7, 1000, 1e12))
    else:
        holder[last] = [old] if chance.random() < 0.5 else {chance.choice(_keys()): old}


def _torn(chance: random.Random) -> str:
    """A demo's text with letters and lines lost, doubled or changed."""
    text = chance.choice(_demo_texts())
    for _ in range(chance.choice((1, 1, 2, 4))):
        lines = text.split("\n")
        at, what = chance.randrange(len(lines)), chance.randrange(6)
        if what == 0:
            del lines[at]
        elif what == 1:
            lines.insert(at, lines[chance.randrange(len(lines))])
        elif what == 2:
            lines[at] = " " * chance.randrange(4) + lines[at].lstrip()
        elif what == 3 and lines[at]:
            cut = chance.randrange(len(lines[at]))
            lines[at] = lines[at][:cut] + chance.choice(":{}[],#&*!|>'\"%@`\t\x85é\u2028")
            lines[at] += lines[at][cut + 1 :]
        elif what == 4:
            lines = lines[: at + 1]
        else:
            words = lines[at].split(" ")
            chance.shuffle(words)
            lines[at] = " ".join(words)
        text = "\n".join(lines) or "x"
    return text


@cache
def _schema_of(knowledge_id: int) -> list[Any]:
    return []


def _from_schema(chance: random.Random, knowledge: Knowledge) -> Any:
    """A project made from the published schema, with words of the demos where it says text."""
    known = _schema_of(id(knowledge))
    if not known:
        known.append(json_schema("project", knowledge))
    schema = known[0]
    data = _value(schema, schema, chance, 0)
    if chance.random() < 0.8 and isinstance(data, dict):
        demo = copy.deepcopy(chance.choice(demos()))
        kept = {key: demo[key] for key in ("garment", "fabrics", "seams") if key in demo}
        extra = [key for key in data if key not in kept]
        data = {**kept, **{key: data[key] for key in chance.sample(extra, min(2, len(extra)))}}
        seams = schema.get("$defs", {}).get("Seam") or schema.get("$defs", {}).get("SeamForm")
        if seams and isinstance(data["seams"], list):
            made = _value(seams, schema, chance, 1)
            if isinstance(made, dict):
                at = chance.randrange(len(data["seams"]))
                some = chance.sample(list(made), min(3, len(made)))
                data["seams"][at] |= {key: made[key] for key in some if key != "name"}
    return data


def _value(form: Any, root: Any, chance: random.Random, depth: int) -> Any:
    while "$ref" in form:
        form = root["$defs"][form["$ref"].rsplit("/", 1)[1]]
    for key in ("anyOf", "oneOf", "allOf"):
        if key in form:
            return _value(chance.choice(form[key]), root, chance, depth)
    if "const" in form:
        return form["const"]
    if "enum" in form:
        return chance.choice(form["enum"])
    if chance.random() < 0.03 or depth > 6:
        return copy.deepcopy(chance.choice(ODD))
    return _of_kind(form, root, chance, depth)


def _of_kind(form: Any, root: Any, chance: random.Random, depth: int) -> Any:
    kind = form.get("type")
    if kind == "object" or "properties" in form:
        return _group(form, root, chance, depth)
    if kind == "array":
        some = form.get("items", {}), range(chance.choice((0, 1, 1, 2, 3)))
        return [_value(some[0], root, chance, depth + 1) for _ in some[1]]
    if kind == "boolean":
        return chance.random() < 0.5
    if kind in ("integer", "number"):
        return chance.choice((0, 1, 2, 3, 5, 12, 100, 2.5, -1))
    texts = [word for word in _words() if isinstance(word, str)]
    return chance.choice(texts) if chance.random() < 0.9 else copy.deepcopy(chance.choice(ODD))


def _group(form: Any, root: Any, chance: random.Random, depth: int) -> Any:
    found = {}
    needed = form.get("required", [])
    for key, inner in form.get("properties", {}).items():
        if key in needed or chance.random() < 0.25:
            found[key] = _value(inner, root, chance, depth + 1)
    more = form.get("additionalProperties")
    if isinstance(more, dict):
        for _ in range(chance.choice((1, 2, 3))):
            found[chance.choice(_keys())] = _value(more, root, chance, depth + 1)
    return found
