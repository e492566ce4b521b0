"""JSON Schema of the forms: made from the models, fits every file that is read, refuses typos."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from advisor.answer.forms import DIALECT, REGISTERS, json_schema, kinds
from advisor.errors import InputError
from advisor.knowledge.place import knowledge_folder
from advisor.textio.yamlfile import read_yaml
from tests.typed import shipped as knowledge


def faults(value: Any, schema: dict[str, Any], root: dict[str, Any], path: str = "") -> list[str]:
    """What of a value a schema refuses: keys, shapes and listed words; enough for our forms."""
    if "$ref" in schema:
        return faults(value, root["$defs"][schema["$ref"].rsplit("/", 1)[1]], root, path)
    if "anyOf" in schema:
        tried = [faults(value, one, root, path) for one in schema["anyOf"]]
        return min(tried, key=len)
    if "enum" in schema and value not in schema["enum"]:
        return [f"{path}: {value!r} is not listed"]
    shapes: dict[str, type | tuple[type, ...]] = {
        "object": dict,
        "array": list,
        "string": str,
        "number": (int, float),
        "null": type(None),
    }
    shape = shapes.get(schema.get("type", ""))
    if shape is not None and not isinstance(value, shape):
        return [f"{path}: {value!r} is no {schema['type']}"]
    if isinstance(value, dict):
        return _keys(value, schema, root, path)
    if isinstance(value, list) and "items" in schema:
        return [
            f for i, v in enumerate(value) for f in faults(v, schema["items"], root, f"{path}/{i}")
        ]
    return []


def _keys(
    value: dict[str, Any], schema: dict[str, Any], root: dict[str, Any], path: str
) -> list[str]:
    known = schema.get("properties", {})
    more = schema.get("additionalProperties", True)
    found = [f"{path}: {key} is missing" for key in schema.get("required", []) if key not in value]
    for key, inner in value.items():
        if key in known:
            found += faults(inner, known[key], root, f"{path}/{key}")
        elif more is False:
            found.append(f"{path}: {key} is unknown")
        elif isinstance(more, dict):
            found += faults(inner, more, root, f"{path}/{key}")
    return found


def files_of(kind: str) -> list[Path]:
    folder = knowledge_folder()
    single = {
        "project": "examples/*.yaml",
        "fabric": "fabrics/*.yaml",
        "notion": "notions/*.yaml",
        "rule": "rules/*/*.yaml",
        "method": "methods/*.yaml",
        "order": "operations.yaml",
    }
    return sorted(folder.glob(single.get(kind, f"{REGISTERS.get(kind, '')}.yaml")))


@pytest.mark.parametrize("kind", [kind for kind in kinds() if kind != "answer"])
def test_every_file_fits_its_schema(kind: str) -> None:
    """Each kind has a schema of its own, and every file that is shipped fits it."""
    schema = json_schema(kind, knowledge())
    assert DIALECT == schema["$schema"]
    files = files_of(kind)
    assert files
    assert [] == [
        f for path in files for f in faults(read_yaml(path).data, schema, schema, path.name)
    ]


def test_a_misspelt_key_is_refused() -> None:
    """The schema refuses a key that the advisor would refuse, and asks for those it needs."""
    schema = json_schema("project", knowledge())
    wrong = {"garment": "x", "fabric": {}, "seams": []}
    found = faults(wrong, schema, schema)
    assert any("fabric is unknown" in f for f in found)
    assert any("fabrics is missing" in f for f in found)


@pytest.mark.parametrize("folder", ["garments/more", "garments"])
def test_every_garment_of_the_tests_fits_the_schema(folder: str) -> None:
    """What the reader takes, an editor takes as well."""
    schema = json_schema("project", knowledge())
    files = sorted((Path(__file__).parents[2] / folder).glob("*.yaml"))
    assert files
    for path in files:
        assert [] == faults(read_yaml(path).data, schema, schema, path.name)


def test_every_key_of_a_project_has_a_sentence_and_its_words() -> None:
    """An editor shows what a key means, and offers the words that the reader knows."""
    schema = json_schema("project", knowledge())
    forms = {"ProjectForm": schema, **schema["$defs"]}
    silent = [
        f"{form}: {key}"
        for form, about in forms.items()
        for key, field in about.get("properties", {}).items()
        if not str(field.get("description", "")).endswith(".")
    ]
    assert [] == silent
    seam = forms["SeamForm"]["properties"]
    assert ["low", "medium", "high"] == seam["stress"]["enum"]
    assert "French seam" in seam["method"]["anyOf"][0]["enum"]
    assert "plain-seam" not in seam["seam"]["anyOf"][0]["enum"]
    assert "coil zip" in forms["LayerForm"]["properties"]["notion"]["anyOf"][0]["enum"]
    wrong = {"name": "side", "layers": ["a"], "stress": "hi"}
    assert faults(wrong, schema["$defs"]["SeamForm"], schema)


def test_an_editor_can_complete_words() -> None:
    """Aspects, traits, strengths and kinds of source are listed word by word."""
    rule = json_schema("rule", knowledge())
    assert list(knowledge().aspects) == rule["$defs"]["ClaimForm"]["properties"]["aspect"]["enum"]
    assert {"must", "should", "may"} == set(
        rule["$defs"]["ClaimForm"]["properties"]["strength"]["enum"]
    )
    fabric = json_schema("fabric", knowledge())
    assert list(knowledge().traits) == fabric["properties"]["traits"]["propertyNames"]["enum"]


def test_an_unknown_form_gets_the_nearest() -> None:
    """A form that there is not is refused with the nearest name."""
    with pytest.raises(InputError, match="Did you mean 'project'"):
        json_schema("projct", knowledge())
