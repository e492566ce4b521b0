"""The answer to a question, apart from the option parser.

The parser and what it imports take longer than the whole answer, so a question in plain words
never meets them.
"""

from __future__ import annotations

from collections.abc import Sequence

from advisor.cli.output import knowledge, print_answer, print_fitted, print_text, with_units


def plain_question(words: Sequence[str]) -> list[str] | None:
    """The cloths of `ask CLOTH...`; None for every other command and wherever there are options."""
    if len(words) < 2 or words[0] != "ask" or any(word.startswith("-") for word in words):
        return None
    return list(words[1:])


def tell(
    fabrics: Sequence[str],
    *,
    json: bool = False,
    more: bool = False,
    everything: bool = False,
    units: str | None = None,
) -> int:
    """Print how to handle some cloths together.

    Returns:
        the exit code: 1 where a conflict was found.

    Raises:
        InputError: a cloth is not understood.
    """
    from advisor.answer.pipeline import Parts, answer
    from advisor.project.quick import asked_garment

    known = knowledge()
    told = answer(with_units(asked_garment(fabrics, known), units), known, Parts(timed=not json))
    if json:
        print_answer(told)
    elif not (more or everything):
        from advisor.render.screen.ask import ask_text

        print_fitted(lambda width, colour: ask_text(told, width, colour=colour))
    else:
        from advisor.render.printed.detailed import render_detailed

        print_text(
            render_detailed(told, reasons=True, everything=everything, title="how to handle it")
        )
    return told.code
