"""Words that mean the same make the same garment, whichever of them its maker uses."""

from __future__ import annotations

import re

import pytest

from tests.garments.whole import ordered, places

DRESS = """\
garment: Harvest dress
fitting: to the body
fabrics:
  shell: cotton poplin
  lining: cotton lawn
seams:
  - {name: shoulder, layers: [shell, shell], length: 12 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 40 cm, times: 2}
  - {name: lining side, layers: [lining, lining], length: 40 cm, times: 2}
  - {name: waist dart, layers: [shell], length: 12 cm, times: 4}
  - {name: neck edge, layers: [shell, lining], edge: turned, length: 62 cm}
  - {name: armhole edge, layers: [shell, lining], edge: turned, length: 44 cm, times: 2}
  - {name: waist, layers: [shell, {use: shell, fullness: 1.5}], length: 76 cm}
  - {name: centre back zip, layers: [shell, {notion: concealed zip}], length: 50 cm}
  - {name: centre back, layers: [shell, shell], length: 30 cm}
  - {name: hem frill, layers: [shell, {use: shell, fullness: 1.8}], length: 180 cm}
  - {name: frill hem, layers: [shell], edge: hem, length: 320 cm}
"""
JACKET = """\
garment: Ferry jacket
fabrics:
  shell: wool flannel
  lining: viscose lining
seams:
  - {name: shoulder, layers: [shell, shell], length: 13 cm, times: 2}
  - {name: side, layers: [shell, shell], length: 44 cm, times: 2}
  - {name: armhole, layers: [shell, {use: shell, fullness: 1.05}], length: 50 cm, times: 2}
  - {name: sleeve seam, layers: [shell, shell], length: 45 cm, times: 2}
  - {name: lapel facing, layers: [shell, shell], edge: turned, length: 70 cm, times: 2}
  - {name: collar at the neck, layers: [shell, shell], length: 42 cm}
  - {name: sleeve hem, layers: [shell], edge: hem, length: 28 cm, times: 2}
  - {name: hem, layers: [shell], edge: hem, length: 104 cm}
"""
SUIT = """\
garment: Orchard shirt and trousers
fabrics:
  shell: linen suiting
seams:
  - {name: shirt side, layers: [shell, shell], length: 50 cm, times: 2}
  - {name: shoulder, layers: [shell, shell], length: 13 cm, times: 2}
  - {name: trouser side, layers: [shell, shell], length: 100 cm, times: 2}
  - {name: crotch, layers: [shell, shell], length: 64 cm}
  - {name: trouser hem, layers: [shell], edge: hem, length: 40 cm, times: 2}
  - {name: shirt hem, layers: [shell], edge: hem, length: 100 cm}
"""


@pytest.mark.parametrize(
    ("text", "word", "other"),
    [
        (DRESS, "neck", "neckline"),
        (DRESS, "armhole", "armscye"),
        (DRESS, "armhole", "scye"),
        (DRESS, "waist", "waistline"),
        (DRESS, "centre back", "center back"),
        (DRESS, "centre back", "CB"),
        (DRESS, "zip", "zipper"),
        (DRESS, "frill", "ruffle"),
        (JACKET, "armhole", "scye"),
        (JACKET, "lapel", "revers"),
        (JACKET, "neck", "neckline"),
        (SUIT, "trouser", "pants"),
        (SUIT, "trouser", "shorts"),
        (SUIT, "crotch", "crutch"),
    ],
)
def test_another_word_makes_the_same_garment(text: str, word: str, other: str) -> None:
    """Kind, role and method of every place, and all the work of it, stay as they are."""
    said = re.sub(rf"(?<=name: )([^,]*)\b{word}\b", rf"\g<1>{other}", text)
    assert said != text
    assert _made(text) == _made(said)


def test_a_short_shirt_is_no_leg() -> None:
    """Shorts are worn below; what is only short is worn wherever else its name says."""
    there = places(ordered(SUIT.replace("shirt hem", "short tail hem")))
    assert ("", "trousers") == (there["short tail hem"].alone, there["trouser hem"].alone)


@pytest.mark.parametrize("strip", ["bias", "binding", "strip"])
def test_a_strip_is_known_by_any_of_its_words(strip: str) -> None:
    """A word that ends as a plural does is still that word: a bias is no bia."""
    text = DRESS.replace("  lining: cotton lawn", f"  lining: cotton lawn\n  {strip}: cotton lawn")
    text += f"  - {{name: pocket binding, layers: [shell, {strip}], edge: turned, length: 14 cm}}\n"
    assert "bound-edge" == places(ordered(text))["pocket binding"].kind.id


def _made(text: str) -> tuple[list[tuple[str, str, str]], list[tuple[str, int]]]:
    work = ordered(text)
    names, there = re.findall(r"name: ([^,]*),", text), places(work)
    every = [there[name] for name in names]
    made = [(t.op, names.index(t.place.name)) for t in work.tasks.values() if t.place is not None]
    return [(p.kind.id, p.role.id, p.method.id) for p in every], sorted(made)
