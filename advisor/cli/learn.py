"""`advisor learn`: a maker's own cloths, names, rules, thread and test results."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Any

import typer

from advisor.cli import common, talk
from advisor.cli.learn_quote import kept, price, took

learn = typer.Typer(
    no_args_is_help=True,
    rich_markup_mode=None,
    help="Write down your own cloths, names, rules, thread, prices, times and test results.",
)
Also = Annotated[list[str] | None, typer.Option("--also", help="Another name for it.")]


@learn.command()
def cloth(
    name: Annotated[str, typer.Argument(help='What you call it: "green velvet".')],
    like: Annotated[str, typer.Option(help='What it is like: "silk velvet 280 g/m2".')],
    also: Also = None,
) -> None:
    """Add a cloth of your own, like one that is known."""
    from advisor.errors import InputError, shown
    from advisor.overlay.cache import own_folder
    from advisor.overlay.learning import cloth_text, id_of, not_kept

    known = common.knowledge()
    path = own_folder() / f"fabrics/{id_of(name)}.yaml"

    def change(text: str | None) -> str:
        if text is not None:
            raise InputError(f"you have {shown(name)} already: {path}")
        return cloth_text(name, like, also or [], known)

    more = f". Call it {shown(name)} in a project or a question."
    kept(f"fabrics/{path.name}", change, known, more, not_kept(like, known))


@learn.command()
def result(  # noqa: PLR0917 - one parameter for each option
    name: Annotated[str, typer.Argument(help="A cloth of your own, or a new name with --like.")],
    good: Annotated[
        list[str] | None,
        typer.Option(help='A setting that was good: "needle.size=70", "press.temperature=120".'),
    ] = None,
    bad: Annotated[list[str] | None, typer.Option(help="A setting that spoilt it.")] = None,
    like: Annotated[str | None, typer.Option(help="What a new cloth is like.")] = None,
    on: Annotated[str | None, typer.Option(help="When you tried it.")] = None,
    note: Annotated[str | None, typer.Option(help="What else you saw.")] = None,
    reason: Annotated[
        str | None,
        typer.Option(help="Why a setting beyond a limit is right; every sheet prints it."),
    ] = None,
) -> None:
    """Keep what you found when you tried a cloth of yours; it counts before the handbook."""
    from advisor.answer.learned import not_used
    from advisor.errors import InputError, shown
    from advisor.overlay.cache import own_folder
    from advisor.overlay.learning import (
        cloth_text,
        id_of,
        read_setting,
        result_text,
        with_result,
    )

    known = common.knowledge()
    settings: dict[str, dict[str, Any]] = {
        word: dict(read_setting(text, known) for text in given or [])
        for word, given in (("good", good), ("bad", bad))
    }
    if not any(settings.values()):
        raise InputError("say at least one setting, such as --good needle.size=70")
    path = own_folder() / f"fabrics/{id_of(name)}.yaml"
    extra = {"on": on, "note": note, "reason": reason}
    line = result_text(settings["good"], settings["bad"], extra)

    def change(text: str | None) -> str:
        if text is None and like is None:
            raise InputError(
                f"{shown(name)} is no cloth of yours yet; say what it is like, as in "
                "--like 'silk velvet'"
            )
        return with_result(text or cloth_text(name, like or "", [], known), line)

    after = kept(f"fabrics/{path.name}", change, known)
    for warning in not_used(id_of(name), settings["good"], after, "metric"):
        talk.tell(warning)


@learn.command()
def thread(
    name: Annotated[str | None, typer.Argument(help='What you call the reel: "navy".')] = None,
    colour: Annotated[
        str | None,
        typer.Option(help='A code such as "#1b2a4a", or measured "17.8 3.1 -20.4" (L*, a*, b*).'),
    ] = None,
    fibre: Annotated[str | None, typer.Option(help="What it is made of.")] = None,
    size: Annotated[str | None, typer.Option(help='"tex 27", "ticket 120", "Nm 80/2".')] = None,
    near: Annotated[
        float | None,
        typer.Option(help="Let places share a reel that is so near (CIEDE2000); 0 for none."),
    ] = None,
    away: Annotated[bool, typer.Option("--away", help="It is used up: take it out.")] = False,
) -> None:
    """Keep a reel of your rack, so that the shopping list says which cloth it suits."""
    from advisor.errors import InputError
    from advisor.overlay.learning_rack import changed_rack

    if name is None and (near is None or colour or fibre or size or away):
        raise InputError("name the reel, as in: advisor learn thread navy --colour '#1b2a4a'")
    reel = {"name": name, "colour": colour, "fibre": fibre, "size": size}
    said = {key: value for key, value in reel.items() if value is not None}
    known = common.knowledge()
    kept("threads.yaml", lambda text: changed_rack(text, said, near, away=away), known)


@learn.command("name")
def also_called(
    name: Annotated[str, typer.Argument(help="The name that you use.")],
    means: Annotated[str, typer.Argument(help="The cloth or notion that it means.")],
) -> None:
    """Add another name for a cloth or notion that is known."""
    from advisor.overlay.learning import with_name

    kept("names.yaml", lambda text: with_name(text, name, means), common.knowledge())


@learn.command()
def rule(
    file: Annotated[Path, typer.Argument(help="A rule file that you wrote.")],
    area: Annotated[str, typer.Option(help="Where it belongs: cut, stitch, press …")] = "stitch",
) -> None:
    """Add a rule of your own; `advisor explain --schema rule` tells its form."""
    from advisor.errors import InputError
    from advisor.knowledge.place import knowledge_folder
    from advisor.textio.yamlfile import parse_yaml, read_text

    areas = sorted(p.name for p in (knowledge_folder() / "rules").iterdir() if p.is_dir())
    if area not in areas:
        raise InputError(f"unknown area '{area}': one of {', '.join(areas)}")
    text = read_text(file)
    data = parse_yaml(text, str(file)).data
    id_ = data.get("id") if isinstance(data, dict) else None
    if not isinstance(id_, str) or not id_.replace("-", "").isalnum():
        raise InputError(f"{file}: a rule needs an id of plain letters and hyphens")
    kept(f"rules/{area}/{id_}.yaml", lambda _: text, common.knowledge())


learn.command()(price)
learn.command()(took)


@learn.command("list")
def listed() -> None:
    """List what is in your own folder, and what of it is left out."""
    from advisor.overlay.cache import own_folder

    common.knowledge()
    folder = own_folder()
    files = sorted(folder.rglob("*.yaml")) if folder.is_dir() else []
    common.print_text("".join(f"{path}\n" for path in files) or f"nothing yet in {folder}\n")
