"""What a page says, read as XML, which forgives nothing."""

from __future__ import annotations

from html import unescape
from xml.etree import ElementTree as ET


def root_of(page: str) -> ET.Element:
    """The page, which has to be well-formed."""
    return ET.fromstring(page.partition("\n")[2])


def said(page: str) -> str:
    """The words of the body."""
    body = root_of(page).find("body")
    assert body is not None
    return " ".join("".join(body.itertext()).split())


def field(page: str, name: str) -> str:
    """What a field holds: its value, or the text in it."""
    for element in root_of(page).iter():
        if element.get("name") == name and element.tag in ("input", "textarea"):
            value = element.get("value")
            return value if value is not None else unescape(element.text or "").removeprefix("\n")
    raise AssertionError(f"no field {name}")
