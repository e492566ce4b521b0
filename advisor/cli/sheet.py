"""`advisor sheet FILE`: the handling sheet of a project."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from advisor.cli import common
from advisor.cli.label import label_asked
from advisor.cli.webpage import (
    PDF,
    Booklet,
    Html,
    Paper,
    Pdf,
    Replace,
    booklet_page,
    check_alone,
    check_pdf,
    sheet_page,
    write_page,
    write_pdf,
)

if TYPE_CHECKING:
    from advisor.answer.model.answer import Answer

SECTIONS = (
    "conflicts",
    "cautions",
    "cloths",
    "seams",
    "garment",
    "tests",
    "unknowns",
    "shopping",
    "cloth",
    "thread",
    "kit",
)


def sheet(
    file: Annotated[Path, typer.Argument(help="A project file.")],
    *,
    json: common.Json = False,
    reasons: Annotated[bool, typer.Option(help="Print under each line why it is so.")] = False,
    everything: Annotated[
        bool, typer.Option("--all", help="Print all that can be done and tried.")
    ] = False,
    only: Annotated[
        str | None, typer.Option(help=f"Print one section: {', '.join(SECTIONS)}.")
    ] = None,
    screen: Annotated[
        bool | None,
        typer.Option(
            "--screen/--no-screen",
            help="Short for a screen, as in a terminal, or as long as on paper, as in a pipe.",
        ),
    ] = None,
    html: Html = None,
    pdf: Pdf = None,
    booklet: Booklet = None,
    paper: Paper = None,
    replace: Replace = False,
    units: common.Units = None,
) -> None:
    """Print the handling sheet of a project: what can go wrong, then what to set, then why."""
    from advisor.answer.pipeline import Parts, answer
    from advisor.project.load import garment_of
    from advisor.textio.yamlfile import read_yaml

    pages = {"--html": html, "--pdf": pdf, "--booklet": booklet}
    outs = {name: out for name, out in pages.items() if out is not None}
    named = list(outs)
    if named:
        check_alone(named[0], json, reasons, everything, only, named[1:])
    prints = pdf is not None or (booklet or "").casefold().endswith(PDF)
    if prints:
        check_pdf(outs[named[0]], replace=replace)
    known, document = common.knowledge(), read_yaml(file)
    garment = garment_of(document, known)
    label = None if booklet is None else label_asked(None, garment, document, known)
    garment = common.with_units(garment, units)
    parts = Parts(
        shopping=True, heat=True, ways=json, iron=True, order=True, label=label, file=file.name
    )
    told = answer(garment, known, parts)
    if named:
        page = sheet_page(told) if booklet is None else booklet_page(told, paper, garment)
        write = write_pdf if prints else write_page
        write(outs[named[0]], page, replace=replace)
    elif json:
        common.print_answer(told)
    elif only is not None:
        from advisor.render.printed.only import render_only

        common.print_text(render_only(told, _section(only)))
    else:
        _print(told, reasons=reasons, everything=everything, screen=screen)
    common.leave(told)


def _section(word: str) -> str:
    """The name of a section.

    Raises:
        InputError: there is none of that name.
    """
    from advisor.errors import InputError, Problem, nearest

    if word not in SECTIONS:
        known = f"one of {', '.join(SECTIONS)}"
        raise InputError(Problem(f"no section '{word}'", None, known, nearest(word, SECTIONS)))
    return word


def _print(told: Answer, *, reasons: bool, everything: bool, screen: bool | None) -> None:
    """Short in a terminal; as on paper in a pipe, and wherever more is asked for."""
    from advisor.cli.output import print_fitted
    from advisor.cli.window import window

    if not (reasons or everything) and (window().person if screen is None else screen):
        from advisor.render.screen.sheet import sheet_text

        print_fitted(lambda width, colour: sheet_text(told, width, colour=colour))
    else:
        common.print_text(_text(told, reasons=reasons, everything=everything))


def _text(told: Answer, *, reasons: bool, everything: bool) -> str:
    """Two close pages, unless more is asked for."""
    if reasons or everything:
        from advisor.render.printed.detailed import render_detailed

        return render_detailed(told, reasons=reasons, everything=everything)
    from advisor.render.printed.compact import render_sheet

    return render_sheet(told)
