"""Why a step stands where it stands, as lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from advisor.answer.stepwhy import StepWhy, ToldHold, ToldMove
from advisor.errors import InputError, Problem, shown
from advisor.explain.typed_steps import steps_named
from advisor.render.layout import wrap


def step_typed(word: str, steps: Mapping[str, str]) -> str:
    """The one step that was typed, by number, name or words; `steps` by number, with their words.

    Raises:
        InputError: no such step, or several; with the nearest names.
    """
    found = steps_named([word], steps)
    if len(found) > 1:
        raise InputError(Problem(f"{shown(word)} are several steps", None, "one of them"))
    return found[0]


def render_why_order(told: StepWhy) -> str:
    """Everything that is told of it."""
    lines = wrap(f"{told.step}: step {told.place} of {told.of}. {told.does}")
    for link in told.after:
        lines += _held(f"after {link.before} ({link.strength}): {link.why}", link)
    for link in told.before:
        lines += _held(f"before {link.after} ({link.strength}): {link.why}", link)
    for row in told.and_after:
        lines += wrap(f"and so after {', '.join(row.steps)}: {row.why}", "  ", "      ")
    if not told.after and not told.before:
        lines += wrap("Nothing holds it: it stands where it costs least.", "  ")
    lines += wrap(
        f"In all {len(told.forced_before)} steps have to come before it and "
        f"{len(told.forced_after)} after it.",
        "  ",
    )
    for link in told.given_up:
        pair = f"{link.before} before {link.after} ({link.strength})"
        lines += _held(f"given up: {pair}. {link.why}", link)
    for move in told.moves:
        lines += wrap(_move_text(move), "  move ", "      ")
    for pin in told.pins:
        cannot = f"Your pin cannot be had. {_against(pin.forbidden_by) or pin.remark}"
        text = "It stands where you pinned it." if pin.honoured else cannot
        lines += wrap(text, "  ", "      ")
    return "\n".join(lines) + "\n"


def _held(text: str, link: ToldHold) -> list[str]:
    lines = wrap(text, "  ", "      ")
    for cited in link.cited or ():
        lines += wrap(f"on the word of {cited}", "      ", "        ")
    return lines


def _against(links: Iterable[ToldHold]) -> str:
    return "; ".join(f"{link.before} before {link.after}: {link.why}" for link in links)


def _move_text(move: ToldMove) -> str:
    where = f"before {move.before}" if move.before else f"after {move.after}"
    where = f"{move.what}, {where}"
    if not move.possible:
        return f"{where}: not possible. {_against(move.forbidden_by)}"
    if move.extra_min == 0:
        return f"{where}: costs nothing; it stands here by custom."
    return f"{where}: {move.extra_min:g} min more on changes."
