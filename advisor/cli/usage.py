"""What is told where a command was typed wrongly: one line, with what to type instead."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from advisor.cli.examples import EXAMPLES
from advisor.cli.front import COMMANDS
from advisor.errors import InputError, Problem, for_shell, nearest, shown

_WANTED = {
    "fabrics": "a cloth or more",
    "file": "a project file",
    "what": "a project file, or a cloth or more",
    "place": "a place of the garment, or a cloth of it",
    "aspect": "the word of the sheet that is asked about",
    "name": "a name",
}
"""What is missing, by the name of the argument."""
_OF_FILES = ("sheet", "check", "order", "label", "quote", "why")
_NOT_THERE = "no such file"
_ENDINGS = (".yaml", ".yml")


def wrong_usage(error: Exception, words: Sequence[str]) -> str:
    """What the option parser found wrong, in one line."""
    kind, command = type(error).__name__, _command(error, words)
    param, message = getattr(error, "param", None), _message(error)
    if kind == "MissingParameter" and param is not None:
        wanted = _WANTED.get(str(param.name), f"'{param.name}'")
        return str(Problem(f"{command}: {wanted} is missing", None, _as_in(command)))
    if kind == "NoSuchOption":
        option = str(getattr(error, "option_name", ""))
        near = tuple(getattr(error, "possibilities", None) or ())[:3]
        more = f"one of those that `{command} -h` lists"
        return str(Problem(f"{command}: no option {shown(option)}", None, more, near))
    if message.startswith("No such command") and words:
        return _no_command(command, words)
    if message.startswith("Got unexpected extra"):
        return _too_much(command, message.rpartition("(")[2].rstrip(")"), words)
    if kind == "BadOptionUsage":
        option = str(getattr(error, "option_name", ""))
        lacking = f"{option} lacks its value" if "requires" in message else message
        wrong = f"{command}: {lacking}"
        return str(Problem(wrong, None, _as_in(command, option)))
    said = message.removeprefix("Invalid value: ").partition(", unable to")[0]
    return str(Problem(f"{command}: {said[:1].lower()}{said[1:]}", None, _as_in(command)))


def with_cloths_asked(error: InputError, words: Sequence[str]) -> str:
    """A refusal, with the command that was meant where cloths stand in the place of a file."""
    said = str(error)
    meant = next((file for word in words[1:] if (file := _file_of(word)) != word and file), "")
    if meant:
        return (
            f"{said.rstrip('.')}. There is a file {meant}: `advisor {words[0]} {for_shell(meant)}`"
        )
    if not said.endswith(_NOT_THERE) or words[:1] not in [[name] for name in _OF_FILES]:
        return said
    cloths = [word for word in words[1:] if not word.startswith("-")]
    if not _are_cloths(cloths):
        return said
    return f"{said}. Cloths by themselves are asked about: {_asking(cloths)}"


def _file_of(word: str) -> str:
    """The project file that a word names, with its ending or without; "" where there is none."""
    found = (name for name in (word, f"{word}.yaml", f"{word}.yml") if name.endswith(_ENDINGS))
    try:
        return next((name for name in found if Path(name).is_file()), "")
    except (OSError, ValueError):
        return ""


def _no_command(command: str, words: Sequence[str]) -> str:
    typed = words[len(command.split()) - 1 :]
    wrong = f"no command {shown(typed[0])}"
    if file := _file_of(typed[0]):
        return str(
            Problem(wrong, None, f"what to do with the file: `advisor sheet {for_shell(file)}`")
        )
    if command == "advisor" and not nearest(typed[0], COMMANDS) and _are_cloths(typed):
        return str(Problem(wrong, None, f"what to do with the cloths, as in {_asking(typed)}"))
    known = COMMANDS if command == "advisor" else ()
    return str(Problem(wrong, None, f"one that `{command} -h` lists", nearest(typed[0], known)))


def _too_much(command: str, extra: str, words: Sequence[str]) -> str:
    wrong = f"{command}: too much was typed: {shown(extra)}"
    cloths = [word for word in words[1:] if not word.startswith("-")]
    if command.removeprefix("advisor ") in _OF_FILES and _are_cloths(cloths):
        return str(
            Problem(wrong, None, f"a project file; cloths are asked about: {_asking(cloths)}")
        )
    return str(Problem(wrong, None, _as_in(command)))


def _asking(cloths: Sequence[str]) -> str:
    return f"`advisor ask {' '.join(for_shell(cloth) for cloth in cloths)}`"


def _are_cloths(words: Sequence[str]) -> bool:
    """Whether what was typed would be understood as cloths."""
    from advisor.overlay.cache import load_knowledge
    from advisor.project.phrase import read_phrase
    from advisor.project.phrases.boundaries import cloths_said

    try:
        known = load_knowledge()
        found, _ = cloths_said(list(words), known)
        return bool(found) and all(read_phrase(cloth, known) for cloth in found)
    except InputError:
        return False


def _command(error: Exception, words: Sequence[str]) -> str:
    context = getattr(error, "ctx", None)
    if context is not None:
        return str(context.command_path)
    return f"advisor {words[0]}" if words and words[0] in COMMANDS else "advisor"


def _message(error: Exception) -> str:
    format_message = getattr(error, "format_message", None)
    return str(format_message() if format_message else error).rstrip(".")


def _as_in(command: str, option: str = "") -> str:
    """What the command is typed like; where there is no example, its help."""
    lines = EXAMPLES.get(command.removeprefix("advisor").strip(), ())
    line = next((line for line in lines if option in line), "")
    return f"it as in `advisor {line}`" if line else f"what `{command} -h` tells"
