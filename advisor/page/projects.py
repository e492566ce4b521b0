"""The views of a project: what clashes, the sheet, its places, the iron, order, label, why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldClaim, ToldPlace
from advisor.errors import InputError
from advisor.knowledge.model import Knowledge
from advisor.page.blocks import shown
from advisor.page.desk import Desk, Read
from advisor.page.folder import NoProjectError
from advisor.page.shown import Fields, at, desk_of, page, see
from advisor.render.iron_html import at_the_board, irons_of
from advisor.render.layers_svg import layers_svg, layers_words
from advisor.render.lines import SEAM_LINES, by_place, line_parts
from advisor.render.making_blocks import cloth as cloth_to_buy
from advisor.render.order_svg import KEY, order_svg, order_words
from advisor.render.plain import plain_section, without_commands
from advisor.render.printed.booklet import apart, lays_of
from advisor.render.printed.html import sheet_of
from advisor.render.printed.numbers import Numbers
from advisor.render.printed.parts import degree
from advisor.render.screen.iron import iron_screen
from advisor.writing.remedies import take_remedies
from advisor.writing.ticks import tick_steps

WRITING = ("parts", "settings")
"""The views beside the overview that write, and that a maker goes back to after an undo."""


def overview(request: Request) -> Response:
    """What cannot be reconciled, with remedies that one press takes."""
    read, told, about = opened(request)
    found = {
        "clashes": [(c, degree(c)) for c in told.conflicts],
        "cure_all": told.cure_all if len(told.conflicts) > 1 else None,
        "instructions": told.instructions,
        "checks": told.checks or (),
        "missing": told.missing or (),
        "unknowns": [(u.fact, without_commands(u.effect)) for u in told.unknowns],
        "mark": read.mark,
        "just": desk_of(request).just(read),
    }
    return page(request, "overview.html", {**about, **found})


def take(request: Request, fields: Fields) -> Response:
    """Take a remedy into the file, as the command line does."""
    desk, name = desk_of(request), request.path_params["name"]
    path, before = desk.folder.path(name), desk.folder.text(name)
    taken = take_remedies(path, fields.get("take", ""), desk.known, fields.get("mark", "-"))
    desk.taken[name] = (desk.read(name).mark, before, taken.lines)
    return see(at("project", name))


def undo(request: Request, fields: Fields) -> Response:
    """Put back what stood there before the last press, where nothing was changed since."""
    desk, name = desk_of(request), request.path_params["name"]
    kept = desk.taken.pop(name, None)
    if kept is None:
        raise InputError("there is nothing to take back; the page was started anew since")
    desk.folder.save(name, kept[1], kept[0])
    back = fields.get("back", "")
    return see(at("project", name, back if back in WRITING else ""))


def sheet(request: Request) -> Response:
    """The handling sheet."""
    _, told, about = opened(request, "sheet")
    found = sheet_of(told)
    return page(request, "project_sheet.html", {**about, "sheet": found, "size": found.size})


def places(request: Request) -> Response:
    """Each place cut through, with its settings and the reasons for each."""
    read, told, about = opened(request, "places")
    found = [_place(seam, told, read) for seam in told.seams]
    return page(request, "places.html", {**about, "places": found})


def iron(request: Request) -> Response:
    """The iron across all places, or one place as at the board."""
    read, told, about = opened(request, "iron")
    place = request.query_params.get("place", "")
    blocks = shown(iron_screen(told, place))
    names = [seam.name for seam in told.seams]
    asked = [s for s in told.seams if s.name.casefold() == place.strip().casefold()]
    irons = at_the_board(told, place.strip()) if place else irons_of(told)
    cuts = [(layers_svg(s, told.units, read.colours), layers_words(s, told.units)) for s in asked]
    found = {"place": place, "blocks": blocks, "names": names, "irons": irons, "cuts": cuts}
    return page(request, "project_iron.html", {**about, **found})


def order(request: Request) -> Response:
    """The order of work, to be ticked."""
    _, told, about = opened(request, "order")
    work = told.work
    if work is None:
        raise InputError("the knowledge holds no order of work")
    left = next((i for i, step in enumerate(work.order, 1) if not step.done), 0)
    found = {
        "work": work,
        "left": left,
        "drawing": order_svg(work.order),
        "words": order_words(work.order),
        "caption": KEY,
        "assumed": [without_commands(text) for text in work.assumed],
    }
    return page(request, "order.html", {**about, **found})


def tick(request: Request, fields: Fields) -> Response:
    """Tick a step off, or take its tick away, as the command line does."""
    desk, name = desk_of(request), request.path_params["name"]
    on, off = fields.get("tick", ""), fields.get("untick", "")
    wanted = [on] if on else [], [off] if off else []
    tick_steps(desk.folder.path(name), *wanted, desk.known)
    return see(f"{at('project', name, 'order')}#next" if on else at("project", name, "order"))


def cut(request: Request) -> Response:
    """Cloth to buy, how its pieces are laid, and what is cut."""
    _, told, about = opened(request, "cut")
    numbers = Numbers(told)
    found = {
        "buy": apart(plain_section(section) for section in cloth_to_buy(told, numbers)),
        "lays": lays_of(told),
        "sources": tuple(numbers.entries()),
    }
    return page(request, "cut.html", {**about, **found})


def label(request: Request) -> Response:
    """What the label may honestly say."""
    from advisor.render.label_html import label_view

    _, told, about = labelled(request, "label")
    return page(request, "project_label.html", {**about, "label": label_view(told)})


def why(request: Request) -> Response:
    """Every reason behind one answer."""
    from advisor.explain.reasons import pick_verdicts

    _, told, about = opened(request, "places")
    desk, query = desk_of(request), request.query_params
    place, aspect = query.get("place", ""), query.get("aspect", "")
    verdict = pick_verdicts(told, place, aspect, desk.known)[0]
    found = {
        "verdict": verdict,
        "aspect": desk.known.aspects[verdict.aspect].title,
        "cited": {source.id: source for source in told.sources},
        "explained": _explained((*verdict.because, *verdict.given_up), desk.known),
    }
    return page(request, "why.html", {**about, **found})


def _explained(claims: Sequence[ToldClaim], known: Knowledge) -> dict[str, str]:
    """What is known about those who speak: a rule, a cloth or a fibre, by how they are called."""
    rules = {rule.id for rule in known.rules}
    found = {}
    for claim in claims:
        name = claim.rule.removeprefix("fibre ").removeprefix("fabric ")
        if name in rules or name in known.entries or name in known.fibres:
            found[claim.rule] = name
    return found


def opened(request: Request, view: str = "") -> tuple[Read, Answer, dict[str, Any]]:
    """A project, its answer, and what every page about it is filled with."""
    read, about = begun(request, view)
    return read, desk_of(request).answer(read), about


def begun(request: Request, view: str) -> tuple[Read, dict[str, Any]]:
    """A project and the same about it, for a page that shows nothing of its answer."""
    desk: Desk = desk_of(request)
    name = request.path_params["name"]
    try:
        read = desk.read(name, request.query_params.get("units", ""))
    except NoProjectError:
        raise
    except InputError as error:
        raise UnreadableError(error, name) from None
    called = read.garment.name
    return read, {"title": called, "project": name, "view": view, "garment": called}


def labelled(request: Request, view: str) -> tuple[Read, Answer, dict[str, Any]]:
    """The same with the label for the market that was asked for in its answer."""
    from advisor.answer.label import Asked
    from advisor.project.stated import only_named

    read, about = begun(request, view)
    desk, market = desk_of(request), request.query_params.get("market", "")
    asked = Asked(market or None, read.garment.units, only_named(read.document, desk.known))
    return read, desk.answer(read, asked), about


class UnreadableError(Exception):
    """A project of the folder that cannot be read as it stands: the editor shows where."""

    def __init__(self, error: InputError, name: str) -> None:
        super().__init__(str(error))
        self.error = error
        self.name = name


def _place(seam: ToldPlace, told: Answer, read: Read) -> Mapping[str, Any]:
    """A place as its card shows it: the cut through it, the settings, and where to ask why."""
    verdicts = by_place(told).get(("seam", seam.name), {})
    units = told.units
    iron = next((i.text for i in told.irons if (i.scope, i.place) == ("seam", seam.name)), "")
    rows = []
    for label, aspects in SEAM_LINES:
        parts = [(text, v.aspect) for text, v in line_parts(verdicts, aspects)]
        if parts:
            rows.append((label, parts))
    return {
        "name": seam.name,
        "anchor": quote(seam.name, safe=""),
        "drawing": layers_svg(seam, units, read.colours),
        "words": layers_words(seam, units),
        "iron": iron,
        "rows": rows,
        "cut": seam.built.band_says if seam.built else "",
        "warns": seam.built.build_warns if seam.built else (),
    }
