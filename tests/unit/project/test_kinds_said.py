"""What a project may say as a kind: the groups of the design too, and how each is understood."""

from __future__ import annotations

import pytest

from advisor.errors import InputError
from advisor.project.garment import Seam
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

PROJECT = """garment: Coat
fabrics:
  shell: wool coating
  lining: habutai
  trim: silk velvet
seams:
  - {name: NAME, kind: KIND, layers: LAYERS}
"""


def seam(name: str, kind: str, layers: str) -> Seam:
    """A place of a project as it is read."""
    text = PROJECT.replace("NAME", name).replace("KIND", kind).replace("LAYERS", f"[{layers}]")
    return garment_of(parse_yaml(text, "project.yaml"), shipped()).seams[0]


@pytest.mark.parametrize(
    ("name", "kind", "layers", "place"),
    [
        ("body", "backing", "shell, lining", "underlining"),
        ("lapel", "backing", "shell, {notion: woven fusible interfacing}", "interfacing"),
        ("front", "backing", "shell, {notion: hair canvas}", "canvas"),
        ("neck", "edge", "shell, lining", "faced-edge"),
        ("bottom", "edge", "shell", "hem"),
        ("neck binding", "edge", "shell, trim", "bound-edge"),
        ("sleeve cuff", "band", "shell, trim", "cuff"),
        ("top", "band", "shell, trim", "waistband"),
        ("stripe", "laid on", "shell, trim", "applique"),
        ("braid", "laid on", "shell, {notion: braid}", "ribbon"),
        ("side pocket", "laid on", "shell, trim", "set-in-pocket"),
        ("shaping", "tuck or pleat", "shell", "pleat"),
        ("shaping", "fold", "shell", "pleat"),
        ("shoulder line", "stay", "shell", "stay-tape"),
        ("body", "mounting", "shell, lining", "underlining"),
    ],
)
def test_a_group_is_understood_by_notion_name_and_layers(
    name: str, kind: str, layers: str, place: str
) -> None:
    """What only the group tells is said to be assumed; a word for one kind is not."""
    found = seam(name, kind, layers)
    assert place == found.place
    groups = ("backing", "edge", "band", "laid on", "fold", "stay")
    assert (kind in groups) == found.placed_by.startswith("its kind")


@pytest.mark.parametrize("word", ["loops", "button loops", "rouleau loops"])
def test_loops_fasten_as_buttonholes_do(word: str) -> None:
    """Loops are caught in the edge, by a method of their own, with no slit to be stiffened."""
    text = PROJECT.partition("  - {name")[0]
    text += f"  - {{name: back, fastening: {word}, on: lining, number: 6}}\n"
    found = garment_of(parse_yaml(text, "project.yaml"), shipped()).seams[0]
    assert "buttonhole" == found.place


def test_a_misspelt_kind_is_said_beside_a_fastening_too() -> None:
    """A slip in a key that another one makes needless is a slip still, and no long list follows."""
    with pytest.raises(InputError) as caught:
        seam("front", "fastning, fastening: buttonholes, on: shell", "shell")
    assert "'kind': unknown word 'fastning'" in str(caught.value)
    assert "'fastening'" in str(caught.value)
    assert len(str(caught.value)) < 200
