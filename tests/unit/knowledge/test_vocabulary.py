"""Every kind of mistake in the knowledge is told with file, line, column and the nearest word."""

from __future__ import annotations

from pathlib import Path

import pytest

from advisor.errors import InputError, Problem
from advisor.knowledge.load import read_book
from advisor.knowledge.names import source_id
from advisor.knowledge.vocabulary import check_book, parse_mix
from advisor.overlay.cache import compile_folder
from tests.unit.knowledge.small_book import FILES, RULES, rule, write_book


def problems_of(folder: Path, changes: dict[str, str | None]) -> list[Problem]:
    """What is wrong with the small knowledge once some files are changed."""
    return check_book(read_book(write_book(folder, changes)))


def changed(name: str, old: str, new: str) -> dict[str, str | None]:
    """One file of the small knowledge with a mistake put into it."""
    text = (FILES | RULES)[name]
    assert old in text, f"{old!r} is not in {name}"
    return {name: text.replace(old, new, 1)}


def test_the_small_knowledge_is_sound(tmp_path: Path) -> None:
    """Nothing is found wrong where nothing is."""
    assert [] == problems_of(tmp_path, {})


CREEPS = "rules/stitch/creeps.yaml"
MISTAKES = [
    # file, what stands there, the mistake, the message, the word meant
    ("fabrics/velvet.yaml", "pile: short", "piel: short", "unknown trait 'piel'", "pile"),
    ("fabrics/velvet.yaml", "pile: short", "pile: shrot", "'shrot' is no level of pile", "short"),
    (
        "fabrics/velvet.yaml",
        "traits sources: [habit]",
        "traits sources: [habti]",
        "unknown source 'habti'",
        "habit",
    ),
    (
        "fabrics/velvet.yaml",
        "fibres: [silk, cotton]",
        "fibres: [silk, coton]",
        "unknown fibre 'coton'",
        "cotton",
    ),
    (
        "fabrics/velvet.yaml",
        "sources: [habit]}\ntraits:",
        "sources: [habti]}\ntraits:",
        "unknown source 'habti'",
        "habit",
    ),
    (
        "fabrics/jersey.yaml",
        "cotton 95 elastane 5",
        "cotton 95 elastane 6",
        "do not sum to 100",
        "",
    ),
    ("fabrics/jersey.yaml", "cotton 95 elastane 5", "cotton 95 elastane", "do not sum to 100", ""),
    (
        "fabrics/velvet.yaml",
        "min: 150, max: 350",
        "min: 350, max: 150",
        "the weight starts above its end",
        "",
    ),
    (
        "fabrics/velvet.yaml",
        "sources: [guess]",
        "sources: [gues]",
        "unknown source 'gues'",
        "guess",
    ),
    (
        "fabrics/organza.yaml",
        "aspect: needle.size, max: 80",
        "aspect: needle.sise, max: 80",
        "unknown aspect 'needle.sise'",
        "needle.size",
    ),
    (
        "fabrics/organza.yaml",
        "needle.size, max: 80",
        "needle.size, of: [fine], max: 80",
        "is a range: write `min` or `max`",
        "",
    ),
    (
        "fabrics/organza.yaml",
        "needle.size, max: 80, strength: must",
        "needle.size, strength: must",
        "needs `min` or `max`",
        "",
    ),
    ("fabrics/organza.yaml", "max: 80,", "max: 800,", "takes a number from 55 to 130", ""),
    ("fabrics/organza.yaml", "max: 80,", "max: fine,", "takes a number from 55 to 130", ""),
    ("fabrics/organza.yaml", "max: 80,", "min: 90, max: 80,", "`min` is above `max`", ""),
    (
        "fabrics/organza.yaml",
        "not: [fusible, fusible knit]",
        "not: [fusibel, fusible knit]",
        "'fusibel' is no option of interfacing.kind",
        "fusible",
    ),
    (
        "fabrics/organza.yaml",
        "interfacing.kind, not: [fusible, fusible knit]",
        "interfacing.kind, of: [none], max: fusible",
        "has options: write `of` or `not`",
        "",
    ),
    (
        "fabrics/organza.yaml",
        "interfacing.kind, not: [fusible, fusible knit],",
        "interfacing.kind,",
        "needs `of` or `not`",
        "",
    ),
    (
        "fabrics/organza.yaml",
        "max: do not wash",
        "max: do not wahs",
        "'do not wahs' is no option of care.wash",
        "do not wash",
    ),
    (
        "fabrics/organza.yaml",
        "max: 70, best: 65,",
        "max: 70, best: 65, risk: damage,",
        "only a `must` has a risk",
        "",
    ),
    ("fabrics/organza.yaml", ", why: Holes stay.", "", "a claim needs `why`", ""),
    (
        "fabrics/organza.yaml",
        "why: Holes stay., sources: [habit]",
        "why: Holes stay.",
        "a claim needs `sources`",
        "",
    ),
    (
        "fabrics/organza.yaml",
        "Holes stay., sources: [habit]",
        "Holes stay., sources: [habti]",
        "unknown source 'habti'",
        "habit",
    ),
    (
        "fabrics/jersey.yaml",
        "of: [ballpoint]",
        "of: [balpoint]",
        "'balpoint' is no option of needle.point",
        "ballpoint",
    ),
    (
        "fabrics/jersey.yaml",
        "of: [ballpoint]",
        "of: [ballpoint], best: sharpe",
        "'sharpe' is no option",
        "sharp",
    ),
    (
        "fibres.yaml",
        "press.moisture, max: dry",
        "press.moisture, max: dri",
        "'dri' is no word of press.moisture",
        "dry",
    ),
    (
        "fibres.yaml",
        "iron: [{max: 180, sources: [norm]}]",
        "iron: []",
        "needs at least one iron ceiling",
        "",
    ),
    (
        "fibres.yaml",
        "{max: 180, sources: [norm]}",
        "{max: 180, sources: [nrm]}",
        "unknown source 'nrm'",
        "norm",
    ),
    (
        "fibres.yaml",
        "traits: {water marks: yes}",
        "traits: {water mraks: yes}",
        "unknown trait 'water mraks'",
        "water marks",
    ),
    (
        "machines.yaml",
        "needle.size, max: 110",
        "needle.sice, max: 110",
        "unknown aspect 'needle.sice'",
        "needle.size",
    ),
    ("remedies.yaml", "sources: [habit]", "sources: [habti]", "unknown source 'habti'", "habit"),
    (
        CREEPS,
        "pile: at least short",
        "piel: at least short",
        "unknown fact 'piel' of a layer",
        "pile",
    ),
    (CREEPS, "pile: at least short", "pile: shrot", "is no level of 'pile'", "short"),
    (
        CREEPS,
        "{pair: [{pile: at least short}, {slippery: at least a little}]}",
        "{pair: [{pile: short}]}",
        "takes a list of two conditions",
        "",
    ),
    (CREEPS, "{pair:", "{pare:", "unknown part 'pare' of `when`", "pair"),
    (CREEPS, "{pair:", "{layer: {pile: short}, pair:", "`when` has one of layer, pair", ""),
    (
        CREEPS,
        "of: [walking, roller]",
        "of: [waking, roller]",
        "'waking' is no option of machine.foot",
        "walking",
    ),
    (CREEPS, "sources: [habit]", "sources: [habti]", "unknown source 'habti'", "habit"),
    (
        "rules/press/wool-felts.yaml",
        "{fibre: wool}",
        "{fibre: wol}",
        "'wol' is not known as 'fibre'",
        "wool",
    ),
    (
        "rules/seam/raw-edge.yaml",
        "{edge: open}",
        "{edge: opne}",
        "'opne' is not known as 'edge'",
        "open",
    ),
    (
        "rules/seam/raw-edge.yaml",
        "{edge: open}",
        "{egde: open}",
        "unknown fact 'egde' of a seam",
        "edge",
    ),
    (
        "rules/stitch/no-overlocker.yaml",
        "{overlocker: no}",
        "{overloker: no}",
        "unknown fact 'overloker'",
        "overlocker",
    ),
    (
        "rules/seam/long-stack.yaml",
        "layers: at least 4",
        "layers: lots",
        "is no test of a number",
        "",
    ),
]


@pytest.mark.parametrize(
    ("name", "old", "new", "message", "meant"),
    MISTAKES,
    ids=[f"{m[0].split('/')[-1]}-{m[3]}" for m in MISTAKES],
)
def test_a_mistake_is_told_with_its_place(
    tmp_path: Path, name: str, old: str, new: str, message: str, meant: str
) -> None:
    """One mistake gives one problem: in its file, near its word, with the word that was meant."""
    (found,) = problems_of(tmp_path, changed(name, old, new))
    assert message in found.message
    assert found.where is not None
    assert str(tmp_path / name) == found.where.file
    sound = (FILES | RULES)[name]
    assert sound[: sound.index(old)].count("\n") + 1 == found.where.line
    assert found.where.column is not None
    assert not meant or meant in found.nearest
    assert f"{tmp_path / name}:{found.where.line}:{found.where.column}: " in str(found)


def test_traits_need_sources(tmp_path: Path) -> None:
    """What is said of a cloth rests on somebody's word; the traits are pointed at."""
    (found,) = problems_of(
        tmp_path, changed("fabrics/velvet.yaml", "traits sources: [habit]\n", "")
    )
    assert "traits need `traits sources`" in found.message
    assert found.where is not None
    assert 7 == found.where.line


def test_a_level_after_at_least_has_a_nearest_word(tmp_path: Path) -> None:
    """`at least shrot` means `at least short`."""
    (found,) = problems_of(tmp_path, changed(CREEPS, "at least short", "at least shrot"))
    assert "short" in found.nearest


def test_a_name_stands_for_one_thing(tmp_path: Path) -> None:
    """An alias that is another cloth's name is refused, hyphens and capitals aside."""
    (found,) = problems_of(tmp_path, changed("fabrics/suiting.yaml", "linen cloth", "Velvet"))
    assert "also stands for" in found.message
    assert "velvet" in found.message.casefold()


def test_a_rule_has_to_say_something(tmp_path: Path) -> None:
    """A rule with neither claims, things to do, cautions nor tests is refused."""
    (found,) = problems_of(tmp_path, {**rule("seam", "mute", "{seam: {shape: curved}}")})
    assert "a rule has to say something" in found.message


def test_all_problems_are_told_at_once(tmp_path: Path) -> None:
    """Mistakes of form, of words and of YAML in several files come together, in one error."""
    write_book(
        tmp_path,
        {
            **changed("fabrics/velvet.yaml", "pile: short", "piel: short"),
            **changed("fabrics/jersey.yaml", "structure: knit", "structur: knit"),
            **changed(CREEPS, "walking", "waking"),
            "fabrics/broken.yaml": "id: [broken\n",
            "fabrics/empty.yaml": "",
        },
    )
    with pytest.raises(InputError) as caught:
        compile_folder(tmp_path)
    files = {Path(p.where.file).name for p in caught.value.problems if p.where}
    assert {"velvet.yaml", "jersey.yaml", "creeps.yaml", "broken.yaml", "empty.yaml"} == files


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("silk", [("silk", 100.0)]),
        ("cotton 97 elastane 3", [("cotton", 97.0), ("elastane", 3.0)]),
        ("wool 33.3 silk 66.7", [("wool", 33.3), ("silk", 66.7)]),
        ("cotton 97 elastane 2", None),
        ("cotton 97 elastane", None),
        ("cotton elastane", None),
        ("97 cotton 3 elastane", None),
    ],
)
def test_a_mix_is_written_with_its_shares(
    text: str, expected: list[tuple[str, float]] | None
) -> None:
    """One fibre by itself, or fibres each followed by its share, 100 together."""
    assert expected == parse_mix(text)


def test_a_source_is_followed_by_the_place_in_it() -> None:
    """The id is the first word."""
    assert "gw-apparel-2012" == source_id("gw-apparel-2012 p. 468")
    assert "habit" == source_id("habit")
