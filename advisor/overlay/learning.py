"""Writes into a maker's own knowledge: a cloth of hers, what she found on it, a name, a rule.

Every change is tried on a copy of her folder first: what would be left out is never written, and
she is told why. Her files stay hers: a result is added below what is there, comments and all.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

from msgspec.structs import replace

from advisor.errors import InputError, Problem, Where, nearest, shown
from advisor.knowledge.model import Aspect, Knowledge, Mix, from_plain
from advisor.knowledge.names import plain_name
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.cache import compile_folder
from advisor.project.facts import read_word
from advisor.project.names import tidy_name
from advisor.project.phrase import Reading, read_phrase
from advisor.project.phrases.boundaries import split_cloths
from advisor.textio.files import write_whole
from advisor.textio.flow import quoted
from advisor.textio.locking import locked
from advisor.textio.yamledit import line_end
from advisor.textio.yamlfile import read_text
from advisor.units import parse

HEAD = "# Your own knowledge, written by `advisor learn`; change it as you like.\n"
_KINDS = {
    "°C": "temperature",
    "mm": "length",
    "NM": "needle",
    "tex": "tex",
    "s": "time",
}


def id_of(name: str) -> str:
    """The id that a name makes: letters and digits of the plain name, joined by hyphens.

    Raises:
        InputError: no letter or digit is left.
    """
    found = "-".join(re.findall(r"[a-z0-9]+", plain_name(name)))
    if not found or len(found) > 80:
        raise InputError(Problem(f"{shown(name)} makes no name", None, "a few plain letters"))
    return found


def cloth_text(name: str, like: str, also: list[str], knowledge: Knowledge) -> str:
    """The file of a new cloth of hers, like one that a phrase names.

    Raises:
        InputError: the phrase is not understood.
    """
    reading = read_phrase(like, knowledge)
    if len(split_cloths(like, knowledge)) > 1:
        raise InputError(f"{shown(like)} names more than one cloth; say the one that yours is like")
    id_of(name)
    for word in (name, *also):
        name_text(word)
        _sayable(word, reading.entry, knowledge)
    lines = [HEAD.rstrip(), f"id: {id_of(name)}", f"name: {name_text(name)}"]
    if also:
        lines.append(f"also: [{', '.join(map(name_text, also))}]")
    lines.append(f"like: {reading.entry}")
    if reading.laid:
        raise InputError(f"{shown(like)} names more than one cloth; say the one that yours is like")
    fibres = _own_mix(reading, knowledge)
    if fibres:
        lines.append(f"fibres: {_mix(fibres)}")
    if reading.weight is not None and not reading.weight_in_words:
        lines.append(f"weight: {reading.weight[0]:g}")
    return "\n".join(lines) + "\n"


def not_kept(like: str, knowledge: Knowledge) -> str:
    """What is lost of the words that a cloth of hers is like: fibres whose share nobody said."""
    reading = read_phrase(like, knowledge)
    if not reading.fibres or _own_mix(reading, knowledge):
        return ""
    names = [fibre for fibre, _ in reading.fibres]
    return f"{' and '.join(names)} is not kept, for its share is not said; say it {_as_in(names)}"


def _sayable(name: str, like: str, knowledge: Knowledge) -> None:
    """Refuse a name that a question would take for something else, once it is hers.

    Raises:
        InputError: saying for what.
    """
    new = id_of(name)
    entry = replace(knowledge.entries[like], id=new)
    names = {**knowledge.names, plain_name(name): new}
    trial = dataclasses.replace(knowledge, names=names, entries={**knowledge.entries, new: entry})
    parts = split_cloths(name, knowledge)  # as before it is hers: a tied name parts nothing
    if parts != [name]:
        why = f"it would be taken for {' and '.join(map(shown, parts))}"
        raise InputError(f"{shown(name)} cannot be asked for: {why}")
    try:
        found = read_phrase(name, trial)
        understood = found.entry == new and found.weight is None and not found.stated
    except InputError:
        understood = False
    if not understood:
        why = "a word or a number in it would be read as something else; take other words"
        raise InputError(f"{shown(name)} cannot be asked for: {why}")


def _shares_needed(fibres: list[str]) -> str:
    return f"the shares of {' and '.join(fibres)} are needed, {_as_in(fibres)}"


def _as_in(fibres: list[str]) -> str:
    return f"as in '{fibres[0]} 100'" if len(fibres) == 1 else "as in 'cotton 97 elastane 3'"


def name_text(name: str) -> str:
    """A name as text of her file.

    Raises:
        InputError: it is empty, too long, or cannot be printed.
    """
    try:
        return quoted(tidy_name(name))
    except ValueError as error:
        raise InputError(f"{shown(name)} {error}") from None


def with_name(text: str | None, name: str, means: str) -> str:
    """Her file of other names with one name more."""
    body = HEAD if text is None else text
    body += "" if body.endswith("\n") else "\n"
    return f"{body}{name_text(name)}: {name_text(means)}{line_end(body)}"


def _own_mix(reading: Reading, knowledge: Knowledge) -> Mix:
    """The one mix that her cloth is of; nothing where it may be of any that its like is sold in."""
    if reading.stated or not set(reading.mixes) <= set(knowledge.entries[reading.entry].mixes):
        return reading.fibres
    return reading.mixes[0] if reading.fibres and len(reading.mixes) == 1 else ()


def _mix(mix: tuple[tuple[str, float | None], ...]) -> str:
    if len(mix) == 1:
        return mix[0][0]
    if any(share is None for _, share in mix):
        raise InputError(_shares_needed([fibre for fibre, _ in mix]))
    return " ".join(f"{fibre} {share:g}" for fibre, share in mix)


def read_setting(text: str, knowledge: Knowledge) -> tuple[str, str | float]:
    """An aspect and a setting, as in `needle.size=70` or `press.temperature=250 °F`.

    Raises:
        InputError: with what was not understood and the nearest names.
    """
    name, equals, value = text.partition("=")
    aspect = knowledge.aspects.get(name.strip())
    if not equals or aspect is None:
        known = nearest(name.strip(), knowledge.aspects)
        wanted = None if known else "an aspect and a setting, as in 'needle.size=70'"
        raise InputError(Problem(f"not understood: {shown(text)}", None, wanted, known))
    if aspect.kind != "range":
        return aspect.id, read_word(aspect.id, value.strip(), aspect.words)
    return aspect.id, _number(aspect, value.strip())


def _number(aspect: Aspect, text: str) -> float:
    try:
        return float(text)
    except ValueError:
        pass
    try:
        return parse(_KINDS.get(aspect.unit, "count"), text)
    except (ValueError, KeyError):
        wanted = f"a number of {aspect.unit}" if aspect.unit else "a number"
        what = f"{aspect.id}: not understood: {shown(text)}"
        raise InputError(Problem(what, None, wanted)) from None


def result_text(good: dict[str, Any], bad: dict[str, Any], extra: dict[str, str | None]) -> str:
    """One result as a line of a list; `extra` are its date, note and reason."""
    parts = [f"{word}: {_group(some)}" for word, some in (("good", good), ("bad", bad)) if some]
    parts += [f"{key}: {quoted(value)}" for key, value in extra.items() if value]
    return "  - {" + ", ".join(parts) + "}\n"


def _group(settings: dict[str, Any]) -> str:
    words = [
        f"{k}: {v:g}" if isinstance(v, float) else f"{k}: {quoted(str(v))}"
        for k, v in settings.items()
    ]
    return "{" + ", ".join(words) + "}"


def with_result(text: str, result: str) -> str:
    """A cloth's file with one result more, below those that it has; line ends stay."""
    end = line_end(text)
    body = text.replace("\r\n", "\n")
    body += "" if body.endswith("\n") else "\n"
    if re.search(r"^results:", body, re.MULTILINE) is None:
        return f"{body}results:\n{result}".replace("\n", end)
    at = re.search(r"^results:[^\n]*\n(?:[ \t-][^\n]*\n|\n|#[^\n]*\n)*", body, re.MULTILINE)
    if at is None or re.match(r"results:[ \t]*[^\s#]", at[0]):
        raise InputError("write `results` as a list below one another; then one can be added")
    block = at[0].rstrip("\n") + "\n"
    return (body[: at.start()] + block + result + body[at.start() + len(block) :]).replace(
        "\n", end
    )


def keep(
    folder: Path, name: str, change: Callable[[str | None], str], before: tuple[str, ...] = ()
) -> tuple[Knowledge, tuple[str, ...]]:
    """Change one file of her folder, if all of what it then says is sound.

    One run at a time changes the folder, and each begins with what the one before it wrote.

    Args:
        folder: her own knowledge; made if it is not there.
        name: the path of the file inside the folder.
        change: given what the file says, None where there is none, returns what it shall say.
        before: what is left out already, which is no reason to refuse.

    Returns:
        the knowledge with the change in it, and what could not be kept of the file.

    Raises:
        InputError: with what would have been left out; then nothing is written.
    """
    path = folder / name
    with locked(folder):
        text = change(read_text(path) if path.exists() else None)
        raw = compile_folder(knowledge_folder(), folder, {path: text})
        new = [line for line in raw["left_out"] if line not in before]
        if new:
            problems = [Problem(line) for line in new]
            raise InputError([*problems, Problem("nothing was written")])
        _make(path.parent)
        notes = write_whole(path, text, replace=True)
    return from_plain(raw), notes


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        what = f"cannot make this folder: {error.strerror or 'unknown reason'}"
        raise InputError(Problem(what, Where(str(folder)))) from None
