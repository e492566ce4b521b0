"""The forms of the page, filled with what was typed before, and the messages above them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

from advisor.errors import MOST_SHOWN, Problem

_CLOTHS = "One cloth a line: fibres if known, the fabric, a weight if known."
_EXAMPLE = "nylon organza\nlinen suiting 240 g/m2"
_SELECTED = ' selected="selected"'
_NAV = '<nav class="screen" aria-label="Pages"><a href="/">Another question</a></nav>\n'


def home(fields: Mapping[str, str], problems: Sequence[Problem] = (), about: str = "") -> str:
    """The main part with the three forms.

    Args:
        fields: what was typed, by field; kept so that a slip is mended and not typed again.
        problems: what was wrong with it.
        about: the form that it was typed into: ask, sheet or iron.
    """
    kept = fields.get("cloths", "") if about in ("ask", "iron") else ""
    return (
        "<main>\n<h1>Sewing advice for unlike cloths</h1>\n"
        f"{_messages(problems)}"
        f"{_ask(kept if about == 'ask' else '', fields)}"
        f"{_sheet(fields.get('project', ''), fields)}"
        f"{_iron(kept if about == 'iron' else '', fields)}"
        "<p>Guidance for work by hand, no clearance: test on scraps, and follow labels and local "
        "rules. What is typed here stays on this machine and is not kept.</p>\n</main>"
    )


def with_way_back(main: str) -> str:
    """An answer under a way back to the forms, which is not printed."""
    return f"{_NAV}{main}"


def message(title: str, text: str) -> str:
    """A main part that only says something."""
    return f"<main>\n<h1>{escape(title)}</h1>\n<p>{escape(text)}</p>\n</main>"


def _messages(problems: Sequence[Problem]) -> str:
    if not problems:
        return ""
    rows = "".join(f"<li>{escape(str(p))}</li>\n" for p in problems[:MOST_SHOWN])
    unshown = len(problems) - MOST_SHOWN
    rows += f"<li>and {unshown} more</li>\n" if unshown > 0 else ""
    return (
        '<div class="errors" role="alert">\n<p><strong>This could not be used:</strong></p>\n'
        f"<ul>\n{rows}</ul>\n</div>\n"
    )


def _ask(kept: str, fields: Mapping[str, str]) -> str:
    return _form(
        "ask",
        "How do I handle these cloths together?",
        _area("ask", "cloths", _CLOTHS, kept),
        "Ask",
        fields,
    )


def _iron(kept: str, fields: Mapping[str, str]) -> str:
    hint = f"{_CLOTHS} The first lies under the iron."
    return _form(
        "iron",
        "How hot may the iron be?",
        _area("iron", "cloths", hint, kept),
        "Check the iron",
        fields,
    )


def _sheet(kept: str, fields: Mapping[str, str]) -> str:
    chosen = (
        '<p class="hint"><label for="sheet-file">or choose its file</label> '
        '<input type="file" id="sheet-file" name="file" accept=".yaml,.yml,text/plain"/></p>\n'
    )
    area = _area("sheet", "project", "Paste a project (YAML).", kept, rows=10, example="")
    return _form("sheet", "The sheet of a project", area + chosen, "Make the sheet", fields)


def _area(
    form: str, name: str, hint: str, kept: str, *, rows: int = 4, example: str = _EXAMPLE
) -> str:
    return (
        f'<p class="hint"><label for="{form}-{name}">{escape(hint)}</label></p>\n'
        f'<textarea id="{form}-{name}" name="{name}" rows="{rows}" '
        f'placeholder="{escape(example)}" spellcheck="false">\n{escape(kept)}</textarea>\n'
    )


def _form(action: str, title: str, inside: str, button: str, fields: Mapping[str, str]) -> str:
    kind = ' enctype="multipart/form-data"' if action == "sheet" else ""
    return (
        f'<form method="post" action="/{action}"{kind} accept-charset="utf-8">\n<fieldset>\n'
        f"<legend>{escape(title)}</legend>\n{inside}{_units(action, fields.get('units', ''))}"
        f"<button>{escape(button)}</button>\n</fieldset>\n</form>\n"
    )


def _units(form: str, chosen: str) -> str:
    first = "as the project says" if form == "sheet" else "metric"
    options = (("", first), ("metric", "metric"), ("us", "inches and °F"))
    rows = "".join(
        f'<option value="{value}"{_SELECTED if value == chosen else ""}>{text}</option>'
        for value, text in (options if form == "sheet" else (options[1], options[2]))
    )
    return (
        f'<p class="hint"><label for="{form}-units">Units</label> '
        f'<select id="{form}-units" name="units">{rows}</select></p>\n'
    )
