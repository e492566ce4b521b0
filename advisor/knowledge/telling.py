"""Where the lines of a rule are told: the closed vocabulary of `told where`, read and compiled.

A rule is heard before anything is decided, but what it says to do, try or mind is told afterwards,
and only where the verdicts allow the act. A condition names aspects, and of each what has to be
left of it: `[options]`, `{not: [options]}`, `{at least: word}` or `{at most: word}`. Where a rule
says nothing its area decides: how to press is told where an iron comes, how to pin where pins are
told, how to stitch where a machine sews. A rule that itself keeps the iron, the pins or the machine
away is told always, for it is the reason why.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import TYPE_CHECKING, Any, Final

from msgspec import Struct

if TYPE_CHECKING:
    from advisor.knowledge import schema

Fail = Callable[[tuple[Any, ...], str, Iterable[str]], None]
Row = list[Any]
"""An aspect, its span, its mask, how they are met, and whether a machine is asked it."""
Aspects = Mapping[str, "schema.AspectForm"]

ALWAYS: Final = "always"
LINES: Final = ("do", "tests", "cautions")
HURTS: Final = frozenset({"eye", "fire", "burn", "health", "cut"})
"""Kinds of cautions that keep people from harm; no default keeps one of them back."""
COOLEST_MARK_C: Final = 110
"""Below the coolest ceiling of a care label no iron comes, °C: ISO 3758:2012, `iso-3758-2012`."""
DEFAULTS: Final[Mapping[str, Mapping[str, Any]]] = {
    "press": {
        "press.temperature": {"at least": COOLEST_MARK_C},
        "press.motion": {"not": ["finger-press"]},
    },
    "pin": {
        "pin.place": {"at least": "allowance only"},
        "pin.kind": {"not": ["sewing clips", "hand basting"]},
    },
    "stitch": {"stitch.type": {"not": ["hand"]}},
}
"""What has to be left for the lines of an area to be told, where a rule does not say it."""


class ToldWhere(Struct, frozen=True):
    """What has to have been decided of one aspect for a line to be told.

    Attributes:
        span: of a range or a scale, what has to meet what is advised.
        mask: of options, those that are spoken of.
        how: `some` of the options is left; `all` are left; `lacks`: one of them is not left.
        machine: whether a seam sewn by hand is not asked the aspect, and then has none of it.
    """

    aspect: str
    span: tuple[float, float] | None
    mask: int
    how: str
    machine: bool


def check_told(aspects: Aspects, form: schema.RuleForm, fail: Fail) -> None:
    """Report every word of a rule's conditions that is not known."""
    for path, raw in conditions_in(form):
        if isinstance(raw, str):
            if raw != ALWAYS:
                fail(
                    path,
                    f"'{raw}' is no condition: write a mapping of aspects, or always",
                    [ALWAYS],
                )
            continue
        if not raw:
            fail(path, "`told where` names an aspect, or says always", ())
        for name, value in raw.items():
            if name not in aspects:
                fail((*path, name), f"unknown aspect '{name}'", aspects)
            else:
                _check_one(aspects[name], name, value, (*path, name), fail)


def conditions_in(form: schema.RuleForm) -> list[tuple[tuple[Any, ...], Any]]:
    """Every condition that a rule says, with its path: of the whole rule and of single lines."""
    found: list[tuple[tuple[Any, ...], Any]] = [(("told where",), form.told_where)]
    for kind in LINES:
        for i, line in enumerate(getattr(form, kind)):
            found.append(((kind, i, "told where"), getattr(line, "told_where", None)))
    return [(path, raw) for path, raw in found if raw is not None]


def _check_one(
    aspect: schema.AspectForm, name: str, value: Any, path: tuple[Any, ...], fail: Fail
) -> None:
    options = aspect.kind == "options"
    keys = ("not",) if options else ("at least", "at most")
    said = value if isinstance(value, dict) else {"": value}
    for key, of_key in said.items():
        if key and key not in keys:
            fail((*path, key), f"'{key}' is not asked of {name}", keys)
        elif options:
            _check_words(aspect, name, of_key, path, fail)
        elif key:
            _check_end(aspect, name, of_key, path, fail)
    if not said or (not options and "" in said):
        wanted = "`not` with a list" if options else "`at least` or `at most`"
        fail(path, f"{name} takes {wanted}", ())


def _check_words(
    aspect: schema.AspectForm, name: str, words: Any, path: tuple[Any, ...], fail: Fail
) -> None:
    if not isinstance(words, list) or not words:
        fail(path, f"{name} takes a list of options, or `not` with one", ())
        return
    for word in words:
        if str(word) not in aspect.options:
            fail(path, f"'{word}' is no option of {name}", aspect.options)


def _check_end(
    aspect: schema.AspectForm, name: str, end: Any, path: tuple[Any, ...], fail: Fail
) -> None:
    if aspect.kind == "scale":
        if str(end) not in aspect.words:
            fail(path, f"'{end}' is no word of {name}", aspect.words)
        return
    low, high = aspect.low or 0.0, aspect.high or 0.0
    if isinstance(end, bool) or not isinstance(end, int | float) or not low <= end <= high:
        fail(path, f"{name} takes a number from {low:g} to {high:g}", ())


def compile_told(
    aspects: Aspects, area: str, form: schema.RuleForm, claims: list[Row]
) -> dict[str, list[Row]]:
    """The conditions of a rule, by line.

    Args:
        aspects: every aspect by id.
        area: the rule's; it decides where the rule says nothing.
        form: a rule that was checked.
        claims: its own claims as they are compiled: aspect, span, mask and more.

    Returns:
        by `do`, `tests` and `cautions` what holds of each of them, and by `do 0`, `cautions 1` and
        so on what holds of a line instead.
    """
    if form.told_where is None:
        usual = [
            row
            for name, value in DEFAULTS.get(area, {}).items()
            if name in aspects and _fits(aspects[name], value)
            for row in _rows({name: value}, aspects)
            if not any(_keeps_away(claim, row) for claim in claims)
        ]
    else:
        usual = _rows(form.told_where, aspects)
    found = {kind: usual for kind in LINES if usual}
    for i, caution in enumerate(form.cautions):
        if form.told_where is None and usual and caution.kind in HURTS:
            found[f"cautions {i}"] = []
    for kind in LINES:
        for i, line in enumerate(getattr(form, kind)):
            own = getattr(line, "told_where", None)
            if own is not None:
                found[f"{kind} {i}"] = _rows(own, aspects)
    return found


def _fits(aspect: schema.AspectForm, value: Any) -> bool:
    """Whether a default can be said of an aspect; a small folder may declare it otherwise."""
    problems: list[str] = []
    _check_one(aspect, "", value, (), lambda _path, text, _known: problems.append(text))
    return not problems


def _rows(raw: Any, aspects: Aspects) -> list[Row]:
    if raw == ALWAYS:
        return []
    return [_row(name, value, aspects[name]) for name, value in raw.items()]


def _row(name: str, value: Any, aspect: schema.AspectForm) -> Row:
    machine = aspect.asked_of == "machine"
    if aspect.kind != "options":
        words = [str(word) for word in aspect.words]

        def number(end: Any) -> float:
            return float(words.index(str(end))) if aspect.kind == "scale" else float(end)

        low = 0.0 if aspect.kind == "scale" else aspect.low or 0.0
        high = len(words) - 1.0 if aspect.kind == "scale" else aspect.high or 0.0
        span = [number(value.get("at least", words[0] if words else low))]
        span.append(number(value.get("at most", words[-1] if words else high)))
        return [name, span, 0, "some", machine]
    without = isinstance(value, dict)
    mask = sum(1 << aspect.options.index(str(w)) for w in (value["not"] if without else value))
    if aspect.lists == "excluded":  # what is left of it is what is not on the list
        return [name, None, mask, "all" if without else "lacks", machine]
    full = (1 << len(aspect.options)) - 1
    return [name, None, full & ~mask if without else mask, "some", machine]


def _keeps_away(claim: Row, row: Row) -> bool:
    """Whether a claim is itself why an act is not done."""
    aspect, span, mask = claim[:3]
    if aspect != row[0]:
        return False
    if row[1] is not None:
        return span is not None and (span[1] < row[1][0] or span[0] > row[1][1])
    return not mask & row[2]


def told_from(raw: Mapping[str, list[Row]]) -> dict[str, tuple[ToldWhere, ...]]:
    """The conditions of a rule as the engine sees them."""
    return {
        line: tuple(
            ToldWhere(aspect, (span[0], span[1]) if span else None, mask, how, machine)
            for aspect, span, mask, how, machine in rows
        )
        for line, rows in raw.items()
    }
