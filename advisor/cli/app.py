"""The application: every command under its name."""

from __future__ import annotations

import typer

from advisor.cli.ask import ask
from advisor.cli.check import check
from advisor.cli.example import example
from advisor.cli.examples import examples
from advisor.cli.explain import explain
from advisor.cli.fabrics import fabrics
from advisor.cli.front import HELP
from advisor.cli.identify import identify
from advisor.cli.iron import iron
from advisor.cli.label import label
from advisor.cli.learn import learn
from advisor.cli.manual import manual
from advisor.cli.order import order
from advisor.cli.page import page
from advisor.cli.quote import quote
from advisor.cli.schema import schema
from advisor.cli.sheet import sheet
from advisor.cli.start import start
from advisor.cli.why import why

app = typer.Typer(
    name="advisor",
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    help=HELP,
    context_settings={"help_option_names": ["-h", "--help"]},
)
for command in (
    ask,
    sheet,
    iron,
    check,
    order,
    label,
    quote,
    why,
    explain,
    fabrics,
    start,
    identify,
    page,
    example,
    schema,
    manual,
):
    app.command(epilog=examples(command.__name__))(command)
app.add_typer(learn, name="learn")
