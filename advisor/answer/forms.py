"""JSON Schema of every form that a maker or an editor of the knowledge writes.

It is made from the same models that read the files, so that an editor completes and refuses what
the advisor does. A register (many entries in one file) is described as a whole file.
"""

from __future__ import annotations

from typing import Any

from advisor.errors import InputError, Problem, nearest
from advisor.knowledge.model import Knowledge

DIALECT = "https://json-schema.org/draft/2020-12/schema"
REGISTERS = {
    "fibre": "fibres",
    "source": "sources",
    "aspect": "aspects",
    "trait": "traits",
    "remedy": "remedies",
    "machine": "machines",
    "seam class": "seams",
    "tool": "kit",
    "observation": "observations",
    "place": "places",
    "word": "glossary",
}
"""Kinds of which one file holds many, with the name of that file."""


def kinds() -> tuple[str, ...]:
    """Every kind that there is a form of."""
    return ("answer", "project", "fabric", "notion", "rule", "method", "order", *REGISTERS)


def json_schema(kind: str, knowledge: Knowledge) -> dict[str, Any]:
    """The JSON Schema of the answer, of a project file or of a knowledge file.

    Args:
        kind: one of `kinds`.
        knowledge: whose aspects, traits and fibres are listed, so that an editor completes them.

    Raises:
        InputError: there is no such form.
    """
    word = kind.strip().casefold().replace("-", " ")
    if word not in kinds():
        known = nearest(word, kinds())
        listed = None if known else f"one of {', '.join(kinds())}"
        raise InputError(Problem(f"no form of '{kind}'", None, listed, known))
    if word == "answer":
        from advisor.answer.model.schema import answer_schema

        return {"$schema": DIALECT, "title": "advisor answer"} | answer_schema()
    schema = _form(word).model_json_schema(by_alias=True)
    if word in REGISTERS:
        schema = _register(schema, REGISTERS[word])
    _list_words(schema, knowledge)
    if word == "project":
        _explain(schema, knowledge)
    return {"$schema": DIALECT, "title": f"advisor {word}"} | {
        key: value for key, value in schema.items() if key != "title"
    }


def _form(kind: str) -> Any:
    if kind == "project":
        from advisor.project.schema import ProjectForm

        return ProjectForm
    if kind == "order":
        from advisor.knowledge.schema_order import OrderForm

        return OrderForm
    from advisor.knowledge import load, schema, schema_notions, schema_places

    single: dict[str, Any] = {
        "fabric": schema.FabricForm,
        "notion": schema_notions.NotionForm,
        "rule": schema.RuleForm,
        "method": schema_places.MethodForm,
    }
    return single[kind] if kind in single else load.REGISTERS[REGISTERS[kind]]


def _register(entry: dict[str, Any], name: str) -> dict[str, Any]:
    """A whole register: any id leads to one entry."""
    defs = entry.pop("$defs", {})
    return {
        "type": "object",
        "description": f"{name}.yaml: a mapping of ids to entries.",
        "additionalProperties": entry,
        **({"$defs": defs} if defs else {}),
    }


def _explain(schema: dict[str, Any], knowledge: Knowledge) -> None:
    """A sentence for each key of a project, and the words that it takes."""
    from advisor.knowledge.factwords import YES_NO
    from advisor.project.keyhelp import sentence, words_of

    for form, about in (("ProjectForm", schema), *schema.get("$defs", {}).items()):
        words = words_of(form, knowledge)
        for key, field in about.get("properties", {}).items():
            field.pop("title", None)
            if told := sentence(form, key, knowledge):
                field["description"] = told
            if key in words:
                _offer(field, list(words[key].words), closed=words[key].closed)
            if key in words and set(YES_NO) <= set(words[key].words):
                field["enum"] += [True, False]  # as YAML 1.1 reads yes and no


def _offer(field: dict[str, Any], words: list[str], *, closed: bool) -> None:
    """List words for a key: no others, or beside what else may stand there."""
    items = next((way for way in field.get("anyOf", ()) if way.get("type") == "array"), None)
    if items is not None:
        items["items"] = {"anyOf": [{"enum": words}, {}]}
    elif closed:
        field["enum"] = words
    else:
        field["anyOf"] = [{"enum": words}, *field.get("anyOf", [{}])]


def _list_words(schema: dict[str, Any], knowledge: Knowledge) -> None:
    """Names that only the knowledge holds: which aspects and traits there are."""
    pending: list[Any] = [schema]
    while pending:
        node = pending.pop()
        if isinstance(node, list):
            pending += node
        elif isinstance(node, dict):
            fields = node.get("properties", {})
            if "strength" in fields and "aspect" in fields:
                fields["aspect"] = {"type": "string", "enum": list(knowledge.aspects)}
            if isinstance(fields.get("traits"), dict):
                fields["traits"]["propertyNames"] = {"enum": list(knowledge.traits)}
            pending += node.values()
