"""One reel for what is sewn in one colour, where its places bear it."""

from __future__ import annotations

import pytest

from advisor.claims.collect import Place
from advisor.claims.combine import Verdict
from advisor.construction.rack import SIZE
from advisor.construction.threadshare import colour_of
from advisor.decide.evaluate import judge
from tests.unit.construction.build_cases import garment, known

HEAD = """\
garment: Lined jacket
fabrics:
  tweed: {fabric: wool tweed, fibres: {wool: 100}, weight: 330 g/m2, colour: "#5b5a45"}
  lining: {fabric: lining, fibres: {viscose: 100}, colour: "#4d4a3a"}
  chiffon: {fabric: chiffon, fibres: {silk: 100}, colour: "#5b5a45"}
seams:
  - {name: side, layers: [tweed, tweed], length: 45 cm, times: 2}
  - {name: shoulder, layers: [tweed, tweed], length: 13 cm, times: 2}
"""


def sizes(*lines: str) -> dict[str, Verdict]:
    """What is decided of the size of thread at each place."""
    made = garment("".join(f"  - {{{line}}}\n" for line in lines), HEAD)
    judged = judge(made, known())
    return {seam.name: judged.verdicts[Place("seam", seam.name)][SIZE] for seam in made.seams}


def test_no_reel_is_bought_for_a_size_that_nobody_tells_from_another() -> None:
    """Tex 27 alone is advised where the lining meets the tweed: it is sewn with the tweed's 30."""
    found = sizes("name: facing to lining, layers: [tweed, lining], length: 180 cm")
    assert {30.0} == {verdict.pick for verdict in found.values()}
    ease = found["facing to lining"]
    assert ease.pick in ease.advised
    assert ["lining"] == [said.who for said in ease.given_up if said.claim.span == (16.0, 27.0)]


def test_a_reel_at_hand_of_hardly_another_size_is_used_up_first() -> None:
    """Tex 27 lies in the drawer; nobody is sent for a 30 that nobody tells from it."""
    for at_hand, taken in ((27.0, 27.0), (21.0, 30.0)):
        kit = f'kit: {{threads: ["heather #5b5a45 core-spun polyester tex {at_hand:g}"]}}\n'
        made = garment("", kit + HEAD)
        judged = judge(made, known())
        assert {taken} == {judged.verdicts[Place("seam", s.name)][SIZE].pick for s in made.seams}


def test_a_thread_that_is_another_one_stays_another_reel() -> None:
    """A fine sheer of the tweed's colour is not sewn with what holds the tweed."""
    found = sizes("name: flounce, layers: [chiffon, chiffon], length: 90 cm")
    assert found["flounce"].pick is not None
    assert found["flounce"].pick < 30.0 == found["side"].pick


@pytest.mark.parametrize(
    ("one", "other", "alike"),
    [
        ("navy", "Navy", True),
        ("#1b2a4a", "#1B2A4B", True),
        ("#000", "#000000", True),
        ("#1b2a4a", "#5b5a45", False),
        ("navy", "black", False),
    ],
)
def test_colours_that_nobody_tells_apart_are_one_thread(one: str, other: str, alike: bool) -> None:
    """Letters, codes of three digits and a step of a screen's code make no second reel.

    She may forbid it: with `thread near: 0` each code has its own.
    """
    made = HEAD.replace('"#5b5a45"', f'"{one}"').replace('"#4d4a3a"', f'"{other}"')
    lined = "  - {name: lining side, layers: [lining, lining], length: 40 cm}\n"
    judged = judge(garment(lined, made), known())
    assert alike == (len({colour_of(name, judged) for name in ("tweed", "lining")}) == 1)
    strict = judge(garment(lined, f"kit: {{thread near: 0}}\n{made}"), known())
    apart = len({colour_of(name, strict) for name in ("tweed", "lining")}) == 2
    assert apart == (one.casefold() != other.casefold())
