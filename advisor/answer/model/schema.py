"""The JSON Schema of the answer, made from its own types by pydantic, as `coding` writes them."""

from __future__ import annotations

from dataclasses import fields, is_dataclass
from typing import Any

from advisor.answer.model import answer, heat, label, making, needed, order, plan, quote, told
from advisor.records import FLAT, NEVER, WRITTEN, json_name, left_out

_MODULES = (answer, heat, label, making, needed, order, plan, quote, told)


def answer_schema() -> dict[str, Any]:
    """What `--json` of an answer holds: every key with its type, and which may be left out."""
    from pydantic import TypeAdapter

    adapter = TypeAdapter(answer.Answer)
    adapter.rebuild(_types_namespace=_types())
    schema = adapter.json_schema()
    defs = schema.setdefault("$defs", {})
    for name, kind in _types().items():
        node = schema if name == "Answer" else defs.get(name)
        if node is not None:
            _as_written(node, kind, defs)
    return {key: value for key, value in schema.items() if key != "title"}


def _types() -> dict[str, type]:
    return {
        name: kind
        for module in _MODULES
        for name, kind in vars(module).items()
        if isinstance(kind, type) and is_dataclass(kind)
    }


def _as_written(node: dict[str, Any], kind: type, defs: dict[str, Any]) -> None:
    """Give a type's fields the names they are written under; flatten; say which may lack."""
    properties, required = {}, []
    optional = hasattr(kind, WRITTEN)
    for one in fields(kind):
        known = node["properties"].get(one.name, {})
        if one.metadata.get(NEVER):
            continue
        if one.metadata.get(FLAT):
            properties.update(_inside(known, defs))
            continue
        properties[json_name(one.name)] = known
        if not (optional or left_out(one)):
            required.append(json_name(one.name))
    node["properties"], node["required"] = properties, required


def _inside(known: dict[str, Any], defs: dict[str, Any]) -> dict[str, Any]:
    """The fields of a type that is written among its owner's."""
    links = [part["$ref"] for part in known.get("anyOf", [known]) if "$ref" in part]
    found: dict[str, Any] = {}
    for link in links:
        inner = defs[link.rpartition("/")[2]]["properties"]
        found |= {json_name(name): value for name, value in inner.items()}
    return found
