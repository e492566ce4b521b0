"""A maker's own folder over the shipped one: what is sound counts, what is wrong is named."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.claims.combine import Verdict
from advisor.claims.judgement import Judgement
from advisor.claims.speakers import EASED
from advisor.claims.valuesets import Span
from advisor.decide.evaluate import judge
from advisor.errors import InputError
from advisor.knowledge.model import Knowledge, from_plain
from advisor.overlay.cache import compile_folder
from advisor.overlay.learning import with_result
from advisor.project.quick import quick_garment
from tests.unit.knowledge.small_book import FILES, RULES

CLOTH = "id: gift-organza\nname: gift organza\nlike: organza\nfibres: nylon\nweight: 30\n"


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    folder = tmp_path / "shipped"
    write(folder, {**FILES, **RULES})
    return folder


def write(folder: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")


def laid(shipped: Path, files: dict[str, str]) -> Knowledge:
    own = shipped.parent / "own"
    write(own, files)
    return from_plain(compile_folder(shipped, own))


def judged(knowledge: Knowledge, *layers: str) -> Judgement:
    return judge(quick_garment(list(layers), knowledge), knowledge)


def in_seam(judgement: Judgement, aspect: str) -> Verdict:
    return next(v[aspect] for p, v in judgement.verdicts.items() if p.scope == "seam")


def test_a_cloth_of_hers_is_like_another(shipped: Path) -> None:
    """It has the known cloth's claims and her own name, fibre and weight."""
    known = laid(shipped, {"fabrics/gift-organza.yaml": CLOTH})
    assert () == known.left_out
    entry = known.entries["gift-organza"]
    assert ((("nylon", 100.0),),) == entry.mixes
    assert (30.0, 30.0) == entry.weight
    assert {c.aspect for c in known.entries["organza"].claims} <= {c.aspect for c in entry.claims}
    assert "gift-organza" == known.names["gift organza"]


def test_her_result_counts_before_the_handbook(shipped: Path) -> None:
    """The needle that she found good is the one picked."""
    handbook = in_seam(judged(laid(shipped, {}), "organza"), "needle.size").pick
    text = CLOTH + "results:\n  - {good: {needle.size: 60}, on: May}\n"
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    verdict = in_seam(judged(known, "gift organza"), "needle.size")
    assert handbook != verdict.pick == 60
    assert "own-test" in {s for said in verdict.because for s in said.claim.sources}


def test_her_result_never_goes_over_a_limit(shipped: Path) -> None:
    """An iron that was good but is hotter than the fibre bears stays unused without a reason."""
    text = CLOTH + "results:\n  - {good: {press.temperature: 150}}\n"
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    verdict = in_seam(judged(known, "gift organza"), "press.temperature")
    assert isinstance(verdict.allowed, Span)
    assert 110 == verdict.allowed.high


def test_a_written_reason_opens_her_limit_and_no_other(shipped: Path) -> None:
    """With a reason her cloth bears more; the cloth that it is like does not, nor its neighbour."""
    text = CLOTH + 'results:\n  - {good: {press.temperature: 150}, reason: "three scraps"}\n'
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    hers = in_seam(judged(known, "gift organza"), "press.temperature")
    assert isinstance(hers.allowed, Span)
    assert 150 == hers.allowed.high
    assert any(f"{EASED} three scraps." in said.claim.why for said in hers.because)
    for layers in (("nylon organza",), ("gift organza", "nylon organza")):
        other = in_seam(judged(known, *layers), "press.temperature")
        assert isinstance(other.allowed, Span)
        assert 110 == other.allowed.high


def test_a_shipped_cloth_is_never_loosened(shipped: Path) -> None:
    """A file of hers that takes a shipped cloth's id is left out, and its reason with it."""
    text = CLOTH.replace("id: gift-organza", "id: organza").replace("gift organza", "organza")
    text += 'results:\n  - {good: {press.temperature: 150}, reason: "three scraps"}\n'
    known = laid(shipped, {"fabrics/organza.yaml": text})
    assert any("already" in line for line in known.left_out)
    verdict = in_seam(judged(known, "nylon organza"), "press.temperature")
    assert isinstance(verdict.allowed, Span)
    assert 110 == verdict.allowed.high


def test_a_wrong_setting_loosens_nothing(shipped: Path) -> None:
    """A setting that is not understood is named, and its reason opens no limit."""
    text = CLOTH + 'results:\n  - {good: {press.temperatur: 150}, reason: "three scraps"}\n'
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    assert 1 == len(known.left_out)
    assert "loosened" not in known.entries["gift-organza"].facts


def test_what_spoilt_it_becomes_its_limit(shipped: Path) -> None:
    """A bad iron lowers the limit of this cloth, and a bad moisture bars it."""
    text = CLOTH + "results:\n  - {bad: {press.temperature: 100, press.moisture: steam}}\n"
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    verdict = in_seam(judged(known, "gift organza"), "press.temperature")
    assert isinstance(verdict.allowed, Span)
    assert 95 == verdict.allowed.high


WRONG = {
    "not YAML": ("fabrics/gift-organza.yaml", "id: [", "gift-organza.yaml"),
    "a misspelt key": ("fabrics/gift-organza.yaml", CLOTH + "colr: red\n", "colr"),
    "an unknown base": (
        "fabrics/gift-organza.yaml",
        CLOTH.replace("like: organza", "like: organa"),
        "'organza'",
    ),
    "an unknown fibre": ("fabrics/gift-organza.yaml", CLOTH.replace("nylon", "nylo"), "nylon"),
    "a name that is taken": (
        "fabrics/gift-organza.yaml",
        CLOTH.replace("name: gift organza", "name: velvet"),
        "velvet",
    ),
    "a shipped id": (
        "fabrics/velvet.yaml",
        CLOTH.replace("id: gift-organza", "id: velvet"),
        "velvet",
    ),
    "a rule without form": ("rules/cut/mine.yaml", "id: mine\n", "claim"),
    "a name for nothing": ("names.yaml", "gran's: velvett\n", "velvet"),
    "a name that means something": ("names.yaml", "velvet: organza\n", "already"),
    "not a mapping": ("names.yaml", "- velvet\n", "mapping"),
    "an unknown source": (
        "fabrics/mine.yaml",
        FILES["fabrics/jersey.yaml"]
        .replace("id: jersey", "id: mine")
        .replace("name: jersey", "name: mine")
        .replace("habit", "habitt"),
        "habitt",
    ),
}


@pytest.mark.parametrize("fault", list(WRONG))
def test_what_is_wrong_is_left_out_and_named(shipped: Path, fault: str) -> None:
    """A fault in her files is named, its entry is missing, and all else is as it was."""
    name, text, said = WRONG[fault]
    known = laid(shipped, {name: text})
    plain = from_plain(compile_folder(shipped))
    assert any(said in line for line in known.left_out), known.left_out
    assert set(plain.entries) == set(known.entries)
    assert plain.entries["velvet"] == known.entries["velvet"]
    assert [r.id for r in plain.rules] == [r.id for r in known.rules]


def test_a_wrong_result_leaves_the_cloth(shipped: Path) -> None:
    """Of two results one is wrong: it is named with its line, and the other counts."""
    text = CLOTH + "results:\n  - {good: {needle.sise: 60}}\n  - {good: {needle.size: 60}}\n"
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    assert 1 == len(known.left_out)
    assert ":7:" in known.left_out[0]
    assert "'needle.size'" in known.left_out[0]
    assert 60 == in_seam(judged(known, "gift organza"), "needle.size").pick


def test_her_rule_tightens(shipped: Path) -> None:
    """A rule of hers is heard like any other."""
    mine = RULES["rules/press/never-nylon.yaml"].replace("never-nylon", "my-iron")
    mine = mine.replace("{layer: {not: {fibre group: polyamide}}}", "{layer: {fibre: linen}}")
    mine = mine.replace(
        "{aspect: press.moisture, max: steam, strength: must}",
        "{aspect: press.temperature, max: 180, strength: must}",
    )
    known = laid(shipped, {"rules/press/my-iron.yaml": mine})
    assert () == known.left_out
    verdict = in_seam(judged(known, "suiting"), "press.temperature")
    assert isinstance(verdict.allowed, Span)
    assert verdict.allowed.high <= 180


def test_another_name(shipped: Path) -> None:
    """Another name of hers leads to the shipped entry."""
    known = laid(shipped, {"names.yaml": "gran's velvet: velvet\n"})
    assert "velvet" == known.names["gran's velvet"]


def test_no_folder_changes_nothing(shipped: Path) -> None:
    """Without a folder of hers the knowledge is the shipped one."""
    assert compile_folder(shipped) == compile_folder(shipped, None)
    missing = compile_folder(shipped, shipped.parent / "nowhere")
    assert [] == missing["left_out"]


def test_a_result_is_added_below_the_others() -> None:
    """Comments and what follows the list stay where they were."""
    before = "id: x\nresults:\n  # the first\n  - {good: {a: 1}}\nnotes: []\n"
    after = "id: x\nresults:\n  # the first\n  - {good: {a: 1}}\n  - {bad: {b: 2}}\nnotes: []\n"
    assert after == with_result(before, "  - {bad: {b: 2}}\n")
    assert "id: x\nresults:\n  - {bad: {b: 2}}\n" == with_result("id: x\n", "  - {bad: {b: 2}}\n")
    with pytest.raises(InputError, match="below one another"):
        with_result("results: []\n", "  - {bad: {b: 2}}\n")


@pytest.mark.parametrize("order", [(0, 1), (1, 0)])
def test_a_reason_never_outweighs_what_she_has_seen_spoil_the_cloth(
    shipped: Path, order: tuple[int, int]
) -> None:
    """Whichever came first: 120 that was bad is no 150 that is hers to use."""
    rows = (
        '  - {good: {press.temperature: 150}, reason: "three scraps"}\n',
        "  - {bad: {press.temperature: 100}}\n",
    )
    text = CLOTH + "results:\n" + "".join(rows[i] for i in order)
    known = laid(shipped, {"fabrics/gift-organza.yaml": text})
    verdict = in_seam(judged(known, "gift organza"), "press.temperature")
    assert isinstance(verdict.allowed, Span)
    assert verdict.allowed.high < 100


@pytest.mark.parametrize("bad", ["hot", "[1, 2]", "steam"])
def test_a_bad_setting_that_is_none_is_named_and_nothing_else_is_lost(
    shipped: Path, bad: str
) -> None:
    """Beside a good one with its reason it is not compared, and her other files still count."""
    rows = (
        '  - {good: {press.temperature: 150}, reason: "three scraps"}\n'
        f"  - {{good: {{press.temperature: 140}}, bad: {{press.temperature: {bad}}}}}\n"
    )
    other = CLOTH.replace("gift-organza", "market-organza").replace(
        "gift organza", "market organza"
    )
    files = {"gift-organza": f"{CLOTH}results:\n{rows}", "market-organza": other}
    known = laid(shipped, {f"fabrics/{id_}.yaml": text for id_, text in files.items()})
    assert 1 == len(known.left_out)
    assert {"gift-organza", "market-organza"} <= set(known.entries)
