"""The one place where text becomes markup: templates in which everything is escaped unasked.

Templates lie in `advisor/render/templates`; the page lays its own folder over them. What nobody
can see, or what turns the direction of reading, is spelled out, as on the command line.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from advisor.errors import visible

FOLDER = Path(__file__).parent / "templates"


@cache
def environment(*folders: Path) -> Environment:
    """The templates of some folders, and then those of the renderers."""
    found = Environment(
        loader=FileSystemLoader([*folders, FOLDER], encoding="utf-8"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        finalize=_seen,
    )
    found.filters["capital"] = capital
    found.filters["marks"] = marks
    found.filters["trusted_svg"] = Markup
    return found


def rendered(template: str, about: Mapping[str, Any], *folders: Path) -> Markup:
    """A template filled in; of it everything that came from outside is escaped."""
    return Markup(environment(*folders).get_template(template).render(**about))


def whole_page(title: str, main: str, style: str) -> str:
    """A page that stands by itself in a file: its style inside, and nothing else allowed."""
    held = b64encode(sha256(style.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{held}'; base-uri 'none'; form-action 'none'"
    about = {"title": title, "main": Markup(main), "style": Markup(style), "policy": policy}
    return str(rendered("standalone.html", about))


def css_string(text: str) -> str:
    """A text as a string of CSS, every sign that could end it written by its number."""
    plain = visible(text)
    return '"' + "".join(c if c.isalnum() or c == " " else f"\\{ord(c):x} " for c in plain) + '"'


def capital(text: str) -> str:
    """A text with its first letter as a capital."""
    return text[:1].upper() + text[1:]


def marks(text: str) -> list[tuple[str, str]]:
    """`[3,c*]` as what is printed, each with the source that it leads to."""
    return [(mark, mark.rstrip("*")) for mark in text.strip("[]").split(",") if mark]


def _seen(value: object) -> object:
    if not isinstance(value, str) or isinstance(value, Markup):
        return value
    return visible(value.replace("\r\n", "\n"))  # the line ends of a form are no hidden sign
