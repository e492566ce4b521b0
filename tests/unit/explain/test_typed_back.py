"""Whatever is printed as a name or a number is understood by the command that it belongs to."""

from __future__ import annotations

from contextlib import suppress
from functools import cache
from pathlib import Path

import pytest

from advisor.answer.catalogue import search
from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer
from advisor.errors import InputError
from advisor.explain.about import explain, matches
from advisor.explain.listings import LISTS
from advisor.explain.reasons import pick_verdicts
from advisor.explain.typed import ROWS, aspects_named, options
from advisor.explain.typed_steps import steps_named
from advisor.project.kindwords import known_kinds
from advisor.project.load import load_project
from advisor.render.screen.ask import CUTTING, SETTINGS
from tests.typed import shipped as knowledge

DEMOS = sorted((Path(__file__).parents[3] / "knowledge" / "examples").glob("*.yaml"))
STEPS = {
    "join side": "Join side: shell + shell.",
    "fit": "Try on and correct: side may still be changed.",
    "press side": "Press side.",
    "join armhole": "Join armhole: shell + shell.",
}


def _plural(name: str) -> str:
    return name if name.endswith(("s", "i")) else f"{name}s"


@cache
def told(demo: Path) -> Answer:
    """What is answered of an example, its order of work too."""
    return answer(load_project(demo, knowledge()), knowledge(), Parts(order=True, file=demo.name))


@pytest.mark.parametrize("demo", DEMOS, ids=[demo.stem for demo in DEMOS])
def test_every_place_and_aspect_of_a_sheet_is_taken_by_why(demo: Path) -> None:
    """By the name of the place in capitals, and by the aspect's title, id and row."""
    report = told(demo)
    assert len(report.verdicts) > 100
    for verdict in report.verdicts:
        title = knowledge().aspects[verdict.aspect].title
        rows = [label for label, ids in (*SETTINGS, *CUTTING) if verdict.aspect in ids]
        for name in (title, title.upper(), verdict.aspect, *rows):
            found = pick_verdicts(report, verdict.place.upper(), name, knowledge())
            assert any(v.aspect == verdict.aspect or name in ROWS for v in found), (verdict, name)


@pytest.mark.parametrize("demo", DEMOS, ids=[demo.stem for demo in DEMOS])
def test_every_step_is_taken_by_its_number_its_name_and_its_sentence(demo: Path) -> None:
    """In any case; the numbers are those that are printed."""
    work = told(demo).work
    assert work is not None
    steps = {row.step: row.does for row in work.order}
    assert len(steps) > 20
    for number, (name, does) in enumerate(steps.items(), 1):
        for typed in (str(number), f"{number}.", name, name.upper(), does):
            assert [name] == steps_named([typed], steps), typed
    assert list(steps) == steps_named([f"1-{len(steps)}"], steps)


def test_the_numbers_of_the_customary_order_have_a_letter() -> None:
    """So that "p2" of `--plain` is never taken for step 2 of the other order."""
    customary = dict(reversed(STEPS.items()))
    assert ["press side"] == steps_named(["p2"], STEPS, lambda: customary)
    assert ["join armhole", "press side"] == steps_named(["p1-p2"], STEPS, lambda: customary)
    assert ["fit"] == steps_named(["2"], STEPS, lambda: customary)


@pytest.mark.parametrize(
    ("typed", "steps"),
    [
        ("2", ["fit"]),
        ("1-2", ["join side", "fit"]),
        ("1, 3", ["join side", "press side"]),
        ("Join Side", ["join side"]),
        ("try on and correct", ["fit"]),
        ("join side: shell + shell", ["join side"]),
        ("armholes", ["join armhole"]),
    ],
)
def test_a_step_is_known_by_what_is_printed(typed: str, steps: list[str]) -> None:
    """A number, a span, some of its words."""
    assert steps == steps_named([typed], STEPS)


@pytest.mark.parametrize(
    ("typed", "said"),
    [("join", "may be several steps"), ("0", "no step has the number"), ("7-5", "1 to 4")],
)
def test_what_may_be_several_steps_is_refused(typed: str, said: str) -> None:
    """With those that it may be."""
    with pytest.raises(InputError, match=said):
        steps_named([typed], STEPS)


def _printed_names() -> list[str]:
    known = knowledge()
    return [
        *(n for e in known.entries.values() for n in (e.id, e.name, *e.also)),
        *(n for f in known.fibres.values() for n in (f.id, f.name)),
        *(rule.id for rule in known.rules),
        *(remedy.id for remedy in known.remedies),
        *known.sources,
        *known.traits,
        *(n for a in known.aspects.values() for n in (a.id, a.title)),
        *(option.label for option in options(known)),
        *(k.name for k in known.places.kinds.values()),
        *(m.name for m in known.places.methods.values()),
        *(n for t in known.registers.glossary.values() for n in (t.name, *t.also, *t.see)),
    ]


def test_explain_takes_every_name_that_is_printed() -> None:
    """Ids and labels, in capitals as well."""
    names = list(dict.fromkeys(_printed_names()))
    assert len(names) > 1500
    typed = [word for name in names for word in (name, name.upper())]
    assert [] == [word for word in typed if not matches(word, knowledge())]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("walking", "walking (foot)"),
        ("walking foot", "(word)"),
        ("Hong Kong", "Hong Kong (edge finish)"),
        ("301", "straight lockstitch (301) (stitch)"),
        ("French seam", "French (seam)"),
        ("needle", "needle.point: needle point"),
        ("stay stitching", "stay-stitch (word)"),
        ("patch pockets", "patch pocket"),
        ("one dot", "dots of the iron (word)"),
        ("single-hole plate", "single-hole plate (word)"),
    ],
)
def test_a_trade_word_is_explained(typed: str, said: str) -> None:
    """As a maker says it."""
    assert said in "\n".join(explain(typed, knowledge(), "metric")[0])


@pytest.mark.parametrize("typed", ["fine silk pins", "zip foot", "concealed zip foot"])
def test_what_is_no_cloth_is_not_explained_as_one(typed: str) -> None:
    """A pin or a foot whose name holds a fibre or a notion stands for itself alone."""
    assert {"answer"} == set(explain(typed, knowledge(), "metric")[1])


def test_what_is_a_cloth_too_is_explained_as_both() -> None:
    """Silk organza is an interfacing as well."""
    assert {"entry", "answer"} <= set(explain("silk organza", knowledge(), "metric")[1])


def test_a_refusal_names_another_word() -> None:
    """Never the one that was typed, and the lists that there are."""
    with pytest.raises(InputError) as caught:
        explain("walkign", knowledge(), "metric")
    assert "'walking'" in str(caught.value)
    assert all(f"'{name}'" in str(caught.value) for name in LISTS)


def test_the_glossary_is_large_and_every_term_is_listed() -> None:
    """Sixty words and more, each with who says so."""
    terms = knowledge().registers.glossary
    assert len(terms) >= 60
    lines, data = explain("words", knowledge(), "metric")
    assert [term["name"] for term in data["words"]] == list(terms)
    assert all(term["sources"] for term in data["words"])
    assert "nap" in "\n".join(lines)


def test_every_aspect_is_listed() -> None:
    """With its id, by which `why` knows it as well."""
    lines, data = explain("aspects", knowledge(), "metric")
    assert [row["id"] for row in data["aspects"]] == list(knowledge().aspects)
    assert all(any(id_ in line for line in lines) for id_ in knowledge().aspects)


@pytest.mark.parametrize("word", sorted(ROWS))
def test_every_label_of_a_row_stands_for_aspects(word: str) -> None:
    """In the plural as well."""
    assert aspects_named(word, knowledge())
    assert aspects_named(word, knowledge()) == aspects_named(_plural(word).upper(), knowledge())


def test_fabrics_finds_every_cloth_by_its_names() -> None:
    """Id, label, other names, singular and plural."""
    for entry in knowledge().entries.values():
        for name in (entry.id, entry.name, *entry.also, _plural(entry.name)):
            assert entry.id in [found.id for found, _ in search(name, knowledge())], name


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ("what is ease", "ease (word)"),
        ("What's a Hong Kong finish?", "Hong Kong finish (word)"),
        ("cotton elastane 95 5 jersey", "jersey (knits, single jersey knit)"),
        ("velvet nap", "velvet (piles, pile woven)"),
    ],
)
def test_a_question_in_words_is_explained(asked: str, told: str) -> None:
    """With the words of a question before it, and a phrase as the cloth that it stands for."""
    assert told == explain(asked, knowledge(), "metric")[0][0]


def test_cloths_are_found_by_a_phrase() -> None:
    """A name from abroad, or words in another order, find the cloth that they stand for first."""
    for typed, name in (("baumwolle", "poplin"), ("crepe de chine silk", "crepe de chine")):
        assert name == search(typed, knowledge())[0][0].name
    assert [] == search("nonsense here", knowledge())


def test_every_kind_and_method_is_explained_or_asked_back() -> None:
    """No sentence of a stage names what only a garment could tell."""
    methods = knowledge().places.methods.values()
    names = {n for m in methods for n in (m.id, m.name, *m.also)}
    for name in sorted(names | {*known_kinds(knowledge())}):
        with suppress(InputError):
            assert explain(name, knowledge(), "metric")[0]
