"""A cloth that is like another: what is lent, what is its own, and where every line stands."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.knowledge.load import read_book
from advisor.knowledge.model import Entry, Knowledge, from_plain
from advisor.knowledge.vocabulary import check_book
from advisor.overlay.cache import compile_folder
from tests.unit.knowledge.small_book import write_book

BASE = """\
id: plush
name: plush
family: piles
structure: woven
weave: plain
sold in: {fibres: [silk], sources: [habit]}
weight: {min: 200, max: 300, sources: [habit]}
traits: {pile: deep, frays: a little}
traits sources: [habit]
claims:
  - {aspect: cut.grain, of: [lengthwise], why: It shades., sources: [habit]}
  - {aspect: needle.size, max: 90, strength: must, why: It holes., sources: [habit]}
  - {aspect: needle.size, min: 70, max: 80, why: Fine., sources: [habit]}
  - {aspect: press.moisture, max: dry, why: It flattens., sources: [habit]}
limits: Of silk plush.
"""
HEAD = """\
id: mohair
name: mohair
like: plush
sold in: {fibres: [wool], sources: [habit]}
"""


def known(tmp_path: Path, **files: str) -> Knowledge:
    """The small book with plush, mohair and what else is given."""
    return from_plain(compile_folder(folder(tmp_path, **files)))


def folder(tmp_path: Path, **files: str) -> Path:
    """The folder of it."""
    shelf = {"plush": BASE, "mohair": HEAD, **files}
    return write_book(tmp_path, {f"fabrics/{id_}.yaml": text for id_, text in shelf.items()})


def problems(tmp_path: Path, **files: str) -> list[str]:
    """What the check says of it, without the folder."""
    where = folder(tmp_path, **files)
    return [str(p).replace(f"{where}/", "") for p in check_book(read_book(where))]


def said(entry: Entry) -> list[tuple[str, str, str]]:
    """Aspect, strength and reason of its claims."""
    return [(c.aspect, c.strength, c.why) for c in entry.claims]


def test_what_is_not_said_is_lent(tmp_path: Path) -> None:
    """Build, family, traits and claims are those of the base; the speaker is the cloth itself."""
    found = known(tmp_path).entries
    plush, mohair = found["plush"], found["mohair"]
    assert ("piles", "woven", "plain") == (mohair.family, mohair.structure, mohair.weave)
    assert plush.traits == mohair.traits
    assert said(plush) == said(mohair)
    assert {"fabric mohair"} == {c.origin for c in mohair.claims}


def test_names_fibres_measures_and_limits_are_its_own(tmp_path: Path) -> None:
    """A weight that nobody said of this cloth stays unknown."""
    mohair = known(tmp_path).entries["mohair"]
    assert ((("wool", 100.0),),) == mohair.mixes
    assert mohair.weight is None
    assert "limits" not in mohair.facts


def test_a_should_takes_the_place_of_a_should_and_leaves_the_must(tmp_path: Path) -> None:
    """No guard of the base is lost because another wish stands on its aspect."""
    text = HEAD + "claims: [{aspect: needle.size, max: 75, why: Finer still., sources: [habit]}]\n"
    mohair = known(tmp_path, mohair=text).entries["mohair"]
    assert [
        ("cut.grain", "should", "It shades."),
        ("needle.size", "must", "It holes."),
        ("needle.size", "should", "Finer still."),
        ("press.moisture", "should", "It flattens."),
    ] == said(mohair)


def test_what_it_does_without_is_gone(tmp_path: Path) -> None:
    """An aspect, the shoulds or the musts on it, a trait or the weave."""
    text = HEAD + "without: [cut.grain, needle.size must, frays, weave]\n"
    mohair = known(tmp_path, mohair=text).entries["mohair"]
    assert ["needle.size", "press.moisture"] == [c.aspect for c in mohair.claims]
    assert {"should"} == {c.strength for c in mohair.claims}
    assert {"pile"} == set(mohair.traits)
    assert "" == mohair.weave


def test_a_chain_hands_on(tmp_path: Path) -> None:
    """A base may itself be like another; what it does without is not handed on."""
    text = HEAD + "without: [cut.grain]\ntraits: {pile: short}\ntraits sources: [guess]\n"
    alpaca = HEAD.replace("mohair", "alpaca").replace("plush", "mohair")
    found = known(tmp_path, mohair=text, alpaca=alpaca).entries["alpaca"]
    assert ["needle.size", "needle.size", "press.moisture"] == [c.aspect for c in found.claims]
    assert {"pile": (1, 1), "frays": (1, 1)} == found.traits


def test_the_claims_carry_who_says_them(tmp_path: Path) -> None:
    """Through a chain, each is traced to the file where it stands."""
    mohair = HEAD + "claims: [{aspect: cut.grain, of: [bias], why: It hangs., sources: [habit]}]\n"
    alpaca = HEAD.replace("mohair", "alpaca").replace("plush", "mohair")
    found = known(tmp_path, mohair=mohair, alpaca=alpaca).entries["alpaca"]
    assert "mohair" == found.facts["like"]
    lenders = [found.facts["lent"].get(str(i)) for i in range(len(found.claims))]
    assert ["mohair", "plush", "plush", "plush"] == lenders
    assert "plush" == found.facts["lent"]["pile"]
    assert "lent" not in known(tmp_path).entries["plush"].facts


def test_a_fault_in_a_base_is_told_once_and_where_it_stands(tmp_path: Path) -> None:
    """Whoever borrows a wrong line is not at fault."""
    base = BASE.replace("[lengthwise]", "[lengthways]")
    (line,) = problems(tmp_path, plush=base)
    assert line.startswith("fabrics/plush.yaml:11:5: ")
    assert "'lengthways'" in line
    assert "'lengthwise'" in line


def test_a_fault_of_its_own_stands_in_its_own_file(tmp_path: Path) -> None:
    """The number of a claim in the whole is not its number in the file."""
    text = HEAD + "claims:\n  - {aspect: press.moisture, max: wet, why: No., sources: [habit]}\n"
    (line,) = problems(tmp_path, mohair=text)
    assert line.startswith("fabrics/mohair.yaml:6:5: ")


WRONG = {
    "an unknown base": (HEAD.replace("like: plush", "like: plusch"), "3:7", "plusch", "plush"),
    "itself": (HEAD.replace("like: plush", "like: mohair"), "3:7", "ring", ""),
    "nothing to remove": (HEAD + "without: [cut.grian]\n", "5:11", "cut.grian", "cut.grain"),
    "a strength that is not there": (
        HEAD + "without: [cut.grain must]\n",
        "5:11",
        "cut.grain must",
        "cut.grain",
    ),
    "no base at all": (HEAD.replace("like: plush\n", ""), "1:1", "structure", ""),
    "without and no base": (
        HEAD.replace("like: plush", "family: piles\nstructure: woven") + "without: [pile]\n",
        "1:1",
        "without",
        "",
    ),
}


@pytest.mark.parametrize("case", WRONG)
def test_a_wrong_likeness_is_refused_at_its_place(tmp_path: Path, case: str) -> None:
    """With file, line and column, and the nearest name where there is one."""
    text, place, word, near = WRONG[case]
    (line,) = problems(tmp_path, mohair=text)
    assert line.startswith(f"fabrics/mohair.yaml:{place}: ")
    assert word in line
    assert near in line


def test_a_ring_of_bases_is_told(tmp_path: Path) -> None:
    """Two cloths that lean on each other stand on nothing."""
    ring = HEAD.replace("id: mohair\nname: mohair", "id: plush\nname: plush")
    lines = problems(tmp_path, plush=ring.replace("like: plush", "like: mohair"))
    assert any("ring: mohair like plush like mohair" in line for line in lines)
