"""Turns what a pydantic schema finds wrong into problems with a line, in plain words.

The schema speaks of locations and error types; a maker needs the line in her file, the name
of the key, what was expected, and the name she probably meant.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any, TypeAlias, get_args

from msgspec import Struct

from advisor.errors import Problem, Where, in_file_order, nearest

if TYPE_CHECKING:
    from pydantic import BaseModel, ValidationError

    from advisor.textio.yamlfile import Data, Positions, Steps

_MARKS = re.compile(r"\s*[+,/&;]\s*|\s+(?:to|and|with|on)\s+")
"""What stands between names that were meant for a list."""
_QUOTED = re.compile(r"'([^']*)'")
_LONGEST_SHOWN = 40
_MANY = 12
_WRONG_SHAPE = 1000

_Reading: TypeAlias = "tuple[Steps, str]"
"""One of several ways to read the value at a place: that place, and the name of the way."""


class _Fault(Struct, frozen=True):
    """One finding of the schema: its type and context, and the way to it in the data."""

    type: str
    steps: Steps
    loc: Steps
    readings: tuple[_Reading, ...]
    value: object
    context: Mapping[str, Any]
    message: str


def problems_from_validation(
    error: ValidationError,
    data: Data,
    positions: Positions,
    file: str,
    *,
    model: type[BaseModel],
) -> tuple[Problem, ...]:
    """Return the problems of a validation error in the order of the file.

    Args:
        error: what validating `data` raised.
        data: the plain data that was validated.
        positions: lines and columns of that data.
        file: the name to put before line and column.
        model: the schema that was used; its fields are the known keys.
    """
    faults = [_fault(found, data) for found in error.errors(include_url=False)]
    problems = [_problem(group, positions, file, model) for group in _merged(_likeliest(faults))]
    unique = dict.fromkeys(problems)
    return tuple(sorted(unique, key=in_file_order))


def slips_of(error: ValidationError, data: Data, model: type[BaseModel]) -> list[tuple[Steps, str]]:
    """The misspelt keys, each with the key that was meant, where only that one is missing."""
    found: dict[Steps, str] = {}
    taken: set[Steps] = set()
    for fault in _likeliest([_fault(item, data) for item in error.errors(include_url=False)]):
        if fault.type != "extra_forbidden" or fault.steps in found:
            continue
        group: Any = data
        for step in fault.steps[:-1]:
            group = group[step]
        close = _meant(model, fault.loc)
        meant = next((name for name in close if name not in group), None)
        if meant is None or (*fault.steps[:-1], meant) in taken or meant != close[0]:
            continue
        found[fault.steps] = meant
        taken.add((*fault.steps[:-1], meant))
    return list(found.items())


def _fault(found: Mapping[str, Any], data: Data) -> _Fault:
    loc = tuple(found["loc"])
    named = loc[:-1] if found["type"] == "missing" else loc
    steps, readings = _way(named, data)
    return _Fault(
        found["type"], steps, loc, readings, found["input"], found.get("ctx", {}), found["msg"]
    )


def _inside(data: Data, step: str | int) -> Data:
    """Return what lies one step further; raises LookupError where there is no such step."""
    if isinstance(data, dict) and step in data:
        return data[step]
    if isinstance(data, list) and isinstance(step, int):
        return data[step]
    raise LookupError(step)


def _way(loc: Steps, data: Data) -> tuple[Steps, tuple[_Reading, ...]]:
    """Return the part of a location that exists in the data, and the alternatives on it.

    Names of alternatives and of validators stand in a location too; they lead nowhere.
    """
    steps: list[str | int] = []
    readings: list[_Reading] = []
    for step in loc:
        try:
            data = _inside(data, step)
        except LookupError:
            readings.append((tuple(steps), str(step)))
        else:
            steps.append(step)
    return tuple(steps), tuple(readings)


def _likeliest(faults: list[_Fault]) -> Iterator[_Fault]:
    """Yield the faults, less those of a reading that was never meant.

    Where a value may be a word or one of several groups, it fails once for each. The reading
    with the fewest faults was meant, and one of the right shape before any of the wrong shape.
    """
    left = list(faults)
    for level in range(max((len(fault.readings) for fault in faults), default=0)):
        left = _likelier(left, level)
    yield from left


def _likelier(faults: list[_Fault], level: int) -> list[_Fault]:
    """The faults less those of a reading that was not meant, of alternatives so deep inside."""
    weights: dict[object, dict[str, int]] = {}
    for fault in faults:
        if level < len(fault.readings):
            place, name = fault.readings[level]
            readings = weights.setdefault((fault.readings[:level], place), {})
            wrong = fault.type in _SHAPES and fault.steps == place
            readings[name] = readings.get(name, 0) + (_WRONG_SHAPE if wrong else 1)
    kept = []
    for fault in faults:
        if level < len(fault.readings):
            place, name = fault.readings[level]
            among = weights[fault.readings[:level], place]
            if among[name] > min(among.values()):
                continue
        kept.append(fault)
    return kept


def _merged(faults: Iterable[_Fault]) -> Iterator[list[_Fault]]:
    """Yield the faults in groups that say one thing: the same lack in readings equally likely."""
    groups: dict[object, list[_Fault]] = {}
    for number, fault in enumerate(faults):
        lack = "shape" if fault.type in _SHAPES else fault.type
        shared = bool(fault.readings) and lack in ("shape", "missing", "extra_forbidden")
        key = (fault.steps, lack) if shared else number
        group = groups.setdefault(key, [])
        if lack != "missing" or fault.readings not in [other.readings for other in group]:
            group.append(fault)
        else:
            groups[number] = [fault]  # a second key that the same reading lacks
    yield from groups.values()


def _problem(
    group: list[_Fault], positions: Positions, file: str, model: type[BaseModel]
) -> Problem:
    fault = group[0]
    at_key = Where(file, *positions.key(fault.steps))
    if fault.type == "missing":
        names = dict.fromkeys(f"'{same.loc[-1]}'" for same in group)
        return Problem(f"missing key {' or '.join(names)}", at_key)
    if fault.type == "extra_forbidden":
        name = str(fault.loc[-1])
        known = tuple(dict.fromkeys(k for same in group for k in _known_keys(model, same.loc[:-1])))
        expected = f"one of {', '.join(known)}" if 0 < len(known) <= _MANY else None
        close = _meant(model, fault.loc)
        instead = _instead(model, name, fault.loc[:-1])
        wanted = instead or (None if close else expected)
        return Problem(f"unknown key '{name}'", at_key, wanted, () if instead else close)
    at_value = Where(file, *positions.value(fault.steps))
    if fault.type in ("literal_error", "enum", "union_tag_invalid"):
        return _unknown_word(fault, at_value)
    if fault.type in _SHAPES:
        shapes = " or ".join(dict.fromkeys(_SHAPES[same.type] for same in group))
        words = f"must be {shapes}, not {_shown(fault.value)}"
        written = _as_written(fault) or _example(fault, model)
        return Problem(f"{_naming(fault)}{words}", at_value, written)
    return Problem(f"{_naming(fault)}{_words(fault)}", at_value)


def _as_written(fault: _Fault) -> str | None:
    """How a list is written as a group of keys or a group as a list; None for all else."""
    if fault.type == "dict_type" and isinstance(fault.value, list):
        return "each on a line of its own as 'its name: {...}', without a dash"
    if fault.type == "list_type" and isinstance(fault.value, dict):
        return "each on a line of its own that begins with a dash, as '- {...}'"
    return None


def _example(fault: _Fault, model: type[BaseModel]) -> str | None:
    """What a key is written like, as its form says; names with marks between are given back."""
    keys = [step for step in fault.steps if isinstance(step, str)]
    written: Mapping[str, str] = getattr(model, "WRITTEN", {})
    key = keys[-1] if keys else ""
    example = written.get(key) or written.get(f"each of {keys[0]}" if keys else "")
    if example is None:
        return None
    if fault.type == "list_type" and isinstance(fault.value, str) and "{" not in example:
        names = [name for name in _MARKS.split(fault.value) if name]
        names = names * 2 if key == "layers" and len(names) == 1 else names
        example = f"[{', '.join(names)}]"
    return f"it as in '{key}: {example}'"


def _instead(model: type[BaseModel], name: str, loc: Steps) -> str | None:
    """What does instead of a key: what its form says of it, or the group that the key is for."""
    here = _models_at(model, loc)
    said = (getattr(form, "INSTEAD", {}).get(name) for form in here)
    groups = (
        f"it under '{group}:', as in '{group}: {{{name}: …}}'"
        for group, inners in _fields(model)
        if group in getattr(model, "WRITTEN", {}) and group not in getattr(model, "LISTED", ())
        for inner in inners
        if name in [field for field, _ in _fields(inner)]
    )
    return next((text for text in (*said, *(groups if here == [model] else ())) if text), None)


def _unknown_word(fault: _Fault, where: Where) -> Problem:
    listed = str(fault.context.get("expected") or fault.context.get("expected_tags") or "")
    known = _QUOTED.findall(listed)
    word = fault.context.get("tag", fault.value)
    return Problem(
        f"{_naming(fault)}unknown word {_shown(word)}",
        where,
        f"one of {', '.join(known)}" if known else listed or None,
        nearest(word, known) if isinstance(word, str) else (),
    )


def _naming(fault: _Fault) -> str:
    named = [step for step in fault.steps if isinstance(step, str)]
    return f"'{named[-1]}': " if named else ""


def _shown(value: object) -> str:
    if isinstance(value, dict):
        return "keys with their values"
    if isinstance(value, list):
        return "a list"
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return str(value).lower()
    text = str(value)
    text = text if len(text) <= _LONGEST_SHOWN else f"{text[:_LONGEST_SHOWN]}…"
    return f"'{text}'" if isinstance(value, str) else text


_SHAPES: Mapping[str, str] = {
    "string_type": "text",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "list_type": "a list",
    "tuple_type": "a list",
    "set_type": "a list",
    "frozen_set_type": "a list",
    "dict_type": "keys with their values",
    "mapping_type": "keys with their values",
    "model_type": "keys with their values",
    "model_attributes_type": "keys with their values",
    "none_required": "nothing",
}
_BOUNDS: Mapping[str, tuple[str, str]] = {
    "greater_than": ("more than", "gt"),
    "greater_than_equal": ("at least", "ge"),
    "less_than": ("less than", "lt"),
    "less_than_equal": ("at most", "le"),
}


def _at_least(fault: _Fault, of_what: str) -> str:
    least = fault.context.get("min_length")
    return "must not be empty" if least == 1 else f"must have at least {least} {of_what}"


_OTHER: Mapping[str, Callable[[_Fault], str]] = {
    "string_too_short": lambda fault: _at_least(fault, "letters"),
    "string_too_long": lambda fault: f"must have at most {fault.context.get('max_length')} letters",
    "string_pattern_mismatch": lambda fault: f"{_shown(fault.value)} is not written as it must be",
    "too_short": lambda fault: _at_least(fault, "entries"),
    "too_long": lambda fault: f"may have at most {fault.context.get('max_length')} entries",
    "finite_number": lambda _: "must be a finite number",
    "union_tag_not_found": lambda fault: f"the key {fault.context.get('discriminator')} is missing",
}


def _words(fault: _Fault) -> str:
    if fault.type in _BOUNDS:
        words, key = _BOUNDS[fault.type]
        return f"must be {words} {_number(fault.context.get(key))}, not {_shown(fault.value)}"
    if fault.type in _OTHER:
        return _OTHER[fault.type](fault)
    if fault.type in ("value_error", "assertion_error"):
        return str(fault.context.get("error") or fault.message)
    return fault.message[:1].lower() + fault.message[1:]


def _number(value: object) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)


def _meant(model: type[BaseModel], loc: Steps) -> tuple[str, ...]:
    """The keys that an unknown one may stand for: what the forms there say, else the nearest."""
    word, known = str(loc[-1]), _known_keys(model, loc[:-1])
    forms = _models_at(model, loc[:-1])
    said = (getattr(form, "OTHER_WORDS", {}).get(word) for form in forms)
    means = next((str(key) for key in said if key in known), None)
    return nearest(word, known) if means is None else (means,)


def _known_keys(model: type[BaseModel], loc: Steps) -> tuple[str, ...]:
    """Return the keys that may stand at a location, in the order of the schema."""
    found = _models_at(model, loc)
    return tuple(dict.fromkeys(name for one in found for name, _ in _fields(one)))


def _models_at(model: type[BaseModel], loc: Steps) -> list[type[BaseModel]]:
    """The forms that may stand at a location."""
    models = [model]
    for step in loc:
        named = [found for found in models if found.__name__ == step]
        inside = [
            inner
            for found in models
            for name, inners in _fields(found)
            if name == step
            for inner in inners
        ]
        # A step that is neither a field nor an alternative is a place in a list or a free key.
        models = inside or named or models
    return models


def _fields(model: type[BaseModel]) -> Iterator[tuple[str, list[type[BaseModel]]]]:
    for name, field in model.model_fields.items():
        yield field.alias or name, list(_models(field.annotation))


def _models(annotation: Any) -> Iterator[type[BaseModel]]:
    """Yield the schemas inside an annotation, through lists, groups and alternatives."""
    from pydantic import BaseModel  # noqa: PLC0415 - heavy, and already loaded by the caller

    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in get_args(annotation):
        yield from _models(inner)
