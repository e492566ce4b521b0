"""What a checked book is compiled to: plain data that says the same."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.compiling import to_plain
from advisor.knowledge.load import read_book
from advisor.knowledge.model import FORMAT, Ceiling, Claim, Knowledge, from_plain
from advisor.overlay.cache import compile_folder
from tests.unit.knowledge.small_book import FILES, small_knowledge, write_book

KNOWN: Knowledge = small_knowledge()


def claim_of(entry: str, aspect: str, at: int = 0) -> Claim:
    """One claim of a cloth."""
    return [c for c in KNOWN.entries[entry].claims if c.aspect == aspect][at]


def options(claim: Claim) -> list[str]:
    """The options that a claim leaves."""
    words = KNOWN.aspects[claim.aspect].words
    return [word for i, word in enumerate(words) if claim.mask >> i & 1]


def test_compiled_knowledge_is_data_that_json_holds(tmp_path: Path) -> None:
    """Written as JSON and read back it is the same data, and the same knowledge."""
    plain = to_plain(read_book(write_book(tmp_path)))
    back = json.loads(json.dumps(plain))
    assert back.items() <= compile_folder(tmp_path).items()
    assert KNOWN == from_plain(back)
    assert FORMAT == back["format"]


def test_a_range_is_open_where_a_claim_says_nothing() -> None:
    """At most 80 begins where the aspect begins."""
    assert (55.0, 80.0) == claim_of("organza", "needle.size").span
    assert (80.0, 100.0) == claim_of("suiting", "needle.size").span
    assert 90.0 == claim_of("suiting", "needle.size").best


def test_a_scale_is_counted_from_its_first_word() -> None:
    """Dry is 0: at most dry is 0 to 0, at least damp is 1 to the end."""
    (dry,) = KNOWN.fibres["nylon"].claims
    assert (0.0, 0.0) == dry.span
    damp = next(c for c in KNOWN.fibres["linen"].claims if c.aspect == "press.moisture")
    assert (1.0, 2.0) == damp.span


def test_options_are_a_mask_of_what_is_left() -> None:
    """`of` names what is left, `not` what is taken away."""
    assert ["ballpoint"] == options(claim_of("jersey", "needle.point"))
    assert ["none", "sew-in woven", "low-temperature fusible", "hair canvas"] == options(
        claim_of("organza", "interfacing.kind")
    )


def test_what_is_to_be_avoided_is_taken_away(tmp_path: Path) -> None:
    """A claim on an aspect that lists what is excluded names what it excludes."""
    text = FILES["fabrics/velvet.yaml"] + (
        "  - {aspect: design.avoids, of: [tucks], why: They crush., sources: [habit]}\n"
    )
    found = from_plain(compile_folder(write_book(tmp_path, {"fabrics/velvet.yaml": text})))
    claim = next(c for c in found.entries["velvet"].claims if c.aspect == "design.avoids")
    assert 0b101 == claim.mask


def test_a_milder_treatment_is_always_allowed(tmp_path: Path) -> None:
    """At most 40 normal is that, hand wash, and no wash at all; hotter is not."""
    text = FILES["fabrics/velvet.yaml"] + (
        "  - {aspect: care.wash, max: 40 normal, why: It fades., sources: [habit]}\n"
    )
    found = from_plain(compile_folder(write_book(tmp_path, {"fabrics/velvet.yaml": text})))
    claim = next(c for c in found.entries["velvet"].claims if c.aspect == "care.wash")
    assert ["40 normal", "hand wash", "do not wash"] == options(claim)


def test_a_must_harms_unless_it_says_otherwise() -> None:
    """The risk of a must is damage by default; a should has none."""
    assert "damage" == claim_of("organza", "needle.size").risk
    assert "result" == claim_of("iron-on", "press.temperature").risk
    assert "" == claim_of("suiting", "needle.size").risk


@pytest.mark.parametrize(
    ("fibre", "limit", "start"),
    [
        ("linen", 200, 200),  # a standard says 200; the shop's 230 raises nothing
        ("wool", 150, 110),  # the shop's 110 is where to start and not the limit
        ("elastane", 120, 120),  # only a shop speaks, so it counts
        ("nylon", 110, 110),
    ],
)
def test_the_strictest_good_source_is_the_limit(fibre: str, limit: float, start: float) -> None:
    """A weaker source counts where there is no better, and else only lowers the start."""
    found = KNOWN.fibres[fibre]
    assert (limit, start) == (found.limit, found.start)


def test_every_published_ceiling_is_kept() -> None:
    """The one that did not count is still there to be shown."""
    assert (
        Ceiling(150, ("norm",), "", True),
        Ceiling(110, ("page",), "", False),
    ) == KNOWN.fibres["wool"].ceilings


def test_no_limit_lies_above_three_dots(tmp_path: Path) -> None:
    """200 °C is the most that a care label allows up to ISO 3758:2012."""
    text = FILES["fibres.yaml"].replace("max: 180, sources: [norm]", "max: 230, sources: [norm]")
    found = from_plain(compile_folder(write_book(tmp_path, {"fibres.yaml": text})))
    assert 200 == found.fibres["cupro"].limit
    assert 230 == found.fibres["cupro"].ceilings[0].max


def test_a_source_read_only_from_memory_is_not_of_good_standing(tmp_path: Path) -> None:
    """A standard that nobody has looked at again counts as memory does."""
    text = FILES["sources.yaml"].replace("kind: standard", "kind: standard, read: memory")
    found = from_plain(compile_folder(write_book(tmp_path, {"sources.yaml": text})))
    assert not found.sources["norm"].good
    assert 110 == found.fibres["wool"].limit
    assert found.sources["norm"].rank > found.sources["habit"].rank


def test_a_slip_in_the_sources_is_one_message(tmp_path: Path) -> None:
    """Every claim names a source; none is called unknown where their file cannot be read."""
    text = FILES["sources.yaml"] + "norm: {title: The same again, kind: standard}\n"
    with pytest.raises(InputError) as caught:
        compile_folder(write_book(tmp_path, {"sources.yaml": text}))
    assert ["the key 'norm' is here and already on line 1"] == [
        problem.message for problem in caught.value.problems
    ]


def test_a_claim_stands_as_high_as_its_best_source() -> None:
    """A standard is first, a page of a shop near the end."""
    ranks = {id_: source.rank for id_, source in KNOWN.sources.items()}
    assert ranks["norm"] < ranks["habit"] < ranks["page"] < ranks["guess"]
    assert ranks["habit"] == claim_of("suiting", "needle.size").rank


def test_unknown_traits_may_be_anything() -> None:
    """A known level is one point, an unknown one the whole scale."""
    assert (1, 1) == KNOWN.entries["velvet"].traits["pile"]
    assert (0, 2) == KNOWN.entries["lining"].traits["frays"]


def test_a_cloth_is_sold_in_mixes() -> None:
    """A fibre by itself is a hundred percent of it."""
    assert (
        (("nylon", 100.0),),
        (("cupro", 100.0),),
        (("wool", 50.0), ("nylon", 50.0)),
    ) == KNOWN.entries["lining"].mixes


def test_names_and_aliases_lead_to_their_entry() -> None:
    """Hyphens and capitals aside, each name finds its cloth or fibre."""
    assert "suiting" == KNOWN.names["linen cloth"]
    assert "iron-on" == KNOWN.names["iron on"]
    assert "linen" == KNOWN.fibre_names["flax"]


def test_a_rule_knows_its_shape() -> None:
    """What a rule asks of layers gives its shape; one that asks none is of the seam."""
    shapes = {rule.id: rule.shape for rule in KNOWN.rules}
    assert ("layer", "pair", "every", "some", "garment pair", "seam", "seam") == tuple(
        shapes[id_]
        for id_ in (
            "ravels",
            "creeps",
            "all-woven",
            "raw-edge",
            "dyed-apart",
            "long-stack",
            "no-overlocker",
        )
    )


def test_a_claim_of_a_rule_takes_its_reason_and_sources_from_the_rule() -> None:
    """What a claim does not say itself, its rule says."""
    rule = next(r for r in KNOWN.rules if r.id == "creeps")
    (claim,) = rule.claims
    assert ("creeps is so.", ("habit",), "rule creeps") == (claim.why, claim.sources, claim.origin)


def test_rules_stand_in_the_order_of_their_ids() -> None:
    """The order of files on a disk decides nothing."""
    ids = [rule.id for rule in KNOWN.rules]
    assert sorted(ids) == ids


def test_cloths_and_notions_are_told_apart() -> None:
    """Notions are entries, and no fabrics."""
    assert "notion iron-on" == KNOWN.entries["iron-on"].claims[0].origin
    assert {"suiting", "organza", "velvet", "lining", "jersey"} == {e.id for e in KNOWN.fabrics()}
