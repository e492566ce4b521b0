"""The laws of a label: figures make 100, no fibre is lost, nothing unknown is written."""

from __future__ import annotations

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.answer.label import Asked
from advisor.answer.pipeline import Parts, answer
from advisor.claims.workarounds import kept_off
from advisor.craft.fibrelabel import Share, Small, content, whole_percents
from advisor.decide.evaluate import judge
from advisor.knowledge.labels import CARE
from advisor.label.care import Care, care_of
from advisor.label.content import fibre_content
from advisor.project.garment import Cloth, Garment, Seam, Use
from tests.laws.engine_garments import cloths, garments, known

NAMES = ("cotton", "linen", "silk", "wool", "nylon", "rayon", "spandex", "acrylic")
SMALL = Small(5, "other fiber", "other fibers", frozenset({"spandex", "wool"}))
markets = st.sampled_from(("eu", "us"))


@st.composite
def mixes(draw: st.DrawFn) -> list[Share]:
    """Up to eight fibres with shares that make 100, some of them tiny."""
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=8, unique=True))
    parts = [draw(st.integers(1, 1000)) for _ in names]
    return [Share(n, n, 100 * part / sum(parts)) for n, part in zip(names, parts, strict=True)]


@given(mixes(), st.sampled_from((None, SMALL)))
def test_figures_make_100_and_no_fibre_is_lost(mix: list[Share], small: Small | None) -> None:
    """The figures of a label make 100, and each fibre is printed or counted among the others."""
    lines = content(mix, small)
    assert 100 == sum(line.percent for line in lines)
    assert all(line.percent >= 1 for line in lines)
    assert sorted(share.fibre for share in mix) == sorted(f for line in lines for f in line.fibres)


@given(mixes(), st.sampled_from((None, SMALL)))
def test_the_heavier_stands_first(mix: list[Share], small: Small | None) -> None:
    """Named fibres stand by weight, in their shares and in their figures; the others stand last."""
    weight = {share.name: share.percent for share in mix}
    lines = content(mix, small)
    named = [line for line in lines if not line.others]
    assert named == sorted(named, key=lambda line: -weight[line.name])
    assert [line.percent for line in named] == sorted((n.percent for n in named), reverse=True)
    assert named == list(lines[: len(named)])


@given(st.lists(st.integers(1, 10_000), min_size=1, max_size=12))
def test_a_figure_is_near_its_weight(parts: list[int]) -> None:
    """No figure is rounded down by one or more, and none is 0."""
    exact = [100 * part / sum(parts) for part in parts]
    figures = whole_percents([float(part) for part in parts])
    assert 100 == sum(figures)
    assert min(figures) >= 1
    if min(exact) >= 1:
        assert all(abs(f - e) < 1 for f, e in zip(figures, exact, strict=True))


def ready(garment: Garment, market: str) -> bool:
    told = answer(garment, known(), Parts(label=Asked(market)))
    assert told.label is not None
    return told.label.ready


@given(garments(), markets)
@settings(max_examples=40)
def test_an_unknown_cloth_never_gives_a_ready_label(garment: Garment, market: str) -> None:
    """Whatever else is in it, a garment with a brocade of unknown fibre has no ready label."""
    entry = known().entries["brocade"]
    gift = Cloth("gift", entry.id, entry.mixes, entry.weight, entry.thickness, assumed=("fibre",))
    assert not ready(added(garment, gift), market)


@given(garments(), markets)
@settings(max_examples=60)
def test_every_cloth_is_written_or_accounted_for(garment: Garment, market: str) -> None:
    """Each cloth stands in a line, among what is missing, left out, or of animals; none twice."""
    about = known().labels.market(market)
    told = fibre_content(judge(garment, known()), known(), about)
    places = [
        *(name for part in told.parts for name in part.cloths),
        *(name for missing in told.missing for name in missing.cloths),
        *(name for left in told.left for name in left.cloths),
        *told.animal,
    ]
    assert sorted(garment.cloths) == sorted(places)
    assert all(sum(line.percent for line in part.lines) == 100 for part in told.parts)


def added(garment: Garment, cloth: Cloth) -> Garment:
    """The garment with one cloth more, sewn to itself in a seam of its own."""
    seam = Seam("one more", (Use(cloth.name), Use(cloth.name)))
    return replace(
        garment, cloths={**garment.cloths, cloth.name: cloth}, seams=(*garment.seams, seam)
    )


def hardness(care: Care) -> dict[str, int]:
    """How hard each treatment is: 0 is the mildest answer; -1 where none suits."""
    found = {}
    for line in care.lines:
        words = known().aspects[line.aspect].words
        if line.word is None:
            found[line.aspect] = -1
            continue
        place = words.index(line.word)
        scale = known().aspects[line.aspect].kind == "scale"
        found[line.aspect] = place if scale else len(words) - 1 - place
    return found


@given(garments(), cloths("gift"))
@settings(max_examples=80)
def test_a_cloth_more_never_loosens_a_care_line(garment: Garment, cloth: Cloth) -> None:
    """With one cloth more each treatment is as mild as before or milder.

    Of buttons or elastics alone there is nothing to iron; beside a cloth the iron goes round them.
    """
    assume(len(kept_off(garment, known())) < len(garment.cloths))
    before = hardness(care_of(judge(garment, known()), known()))
    after = hardness(care_of(judge(added(garment, cloth), known()), known()))
    assert list(CARE) == list(before)
    assert {a: h for a, h in after.items() if h > before[a]} == {}
