"""The iron across the layers of each place as the main part of a page.

The words are those of `iron`; the drawing stands beside a table that says the same.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from html import escape

from advisor.answer.model.answer import Answer
from advisor.answer.model.heat import ToldIron
from advisor.knowledge.model import Knowledge
from advisor.render.iron_picture import iron_svg, layers_at
from advisor.render.iron_text import alike, common_text, layer_texts, presses
from advisor.render.printed.blocks import sections
from advisor.render.printed.digest import digest
from advisor.render.printed.html import PICTURE, headed, section_html, sources_html
from advisor.render.printed.numbers import Numbers
from advisor.units import System


def heat_only(report: Answer) -> Answer:
    """The part of a report that is about the iron."""
    return replace(
        report,
        conflicts=tuple(c for c in report.conflicts if c.aspect.startswith("press.")),
        cautions=tuple(c for c in report.cautions if c.kind == "burn" or c.area == "press"),
        unknowns=tuple(u for u in report.unknowns if u.limit_c is not None),
    )


def iron_main(report: Answer, knowledge: Knowledge) -> str:
    """What can go wrong under the iron, the layers of each place, and what burns."""
    heat = heat_only(report)
    numbers = Numbers(heat, most=2, short=True)
    units: System = "us" if report.units == "us" else "metric"
    found = {s.id: s for s in sections(heat, numbers, digest(heat))}
    parts = [section_html(found[k]) for k in ("conflicts",) if k in found]
    parts += [
        headed(
            f"place-{i}",
            ", ".join(str(p.place) for p in places),
            _place(places, report, units, knowledge),
        )
        for i, places in enumerate(alike(report.iron or ()), 1)
    ]
    parts += [section_html(found[k]) for k in ("cautions", "unknowns") if k in found]
    title = escape(f"{report.garment}: the iron across its layers")
    return (
        f'<main class="medium">\n<h1>{title}</h1>\n{"".join(parts)}{sources_html(numbers)}</main>'
    )


def _place(places: Sequence[ToldIron], report: Answer, units: System, knowledge: Knowledge) -> str:
    """Drawing, table, what all layers bear together, and the rest of the press."""
    place = places[0]
    drawing = iron_svg(layers_at(place), f"Iron limits: {place.place}", units)
    rows = ""
    for layer in place.layers:
        bears, why = layer_texts(layer, units, knowledge)
        rows += (
            f'<tr><th scope="row">{escape(layer.name)}</th><td data-label="Bears">'
            f'{escape(bears)}</td><td data-label="Why">{escape(why)}</td></tr>\n'
        )
    press = "".join(
        f'<p><span class="label">Press{escape(f" ({names})" if names else "")}:</span> '
        f"{escape(how)}.</p>\n"
        for how, names in presses(places, report)
    )
    return (
        f"<figure>{drawing}<figcaption>{PICTURE}</figcaption></figure>\n"
        '<table>\n<thead><tr><th scope="col">Layer</th><th scope="col">Bears</th>'
        f'<th scope="col">Why, and on whose word</th></tr></thead>\n<tbody>\n{rows}</tbody>\n'
        f"</table>\n<p>{escape(common_text(place, units))}</p>\n{press}"
    )
