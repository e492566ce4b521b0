"""The knowledge as a whole: every value has a source, and nothing contradicts itself in silence."""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

import pytest

from advisor.knowledge.names import source_id
from tests.corpus import audit

# Plausible shares of fibre in a cloth as it lies (estimate). The usual ones are 0.25-0.45 woven,
# 0.15-0.25 knit, 0.03-0.10 raised; crinkled and open weaves lie at half of that, calendered and
# filament ones above. Round fibres packed as densely as can be fill 0.91.
PLAUSIBLE = {
    "woven": (0.11, 0.56),
    "lofty": (0.05, 0.45),
    "pile": (0.05, 0.25),
    "deep pile": (0.02, 0.15),
    "knit": (0.09, 0.36),
    "net": (0.04, 0.36),
    "nonwoven": (0.08, 0.35),
    "composite": (0.02, 0.45),
    "skin": (0.5, 0.91),
    "film": (0.3, 0.91),
}
MOST_WEAK = 0.20


def test_every_value_has_a_source() -> None:
    """No number, choice or note stands in the knowledge without a source."""
    assert "" == audit.report(audit.values_without_source())


def test_every_source_is_known() -> None:
    """No value names a source that is not in the register."""
    named = {source_id(s) for v in audit.values() for s in v.sources}
    assert set() == named - set(audit.book().sources)


def test_every_source_is_used(checkout: Path) -> None:
    """No source is listed that no value, formula or published check rests on."""
    assert "" == audit.report(audit.unused_sources(checkout))


def test_little_rests_on_memory(capsys: pytest.CaptureFixture[str]) -> None:
    """At most one value in five rests on memory or estimate alone."""
    weak, all_values = audit.weak_values(), audit.values()
    share = len(weak) / len(all_values)
    worst = Counter(f"{v.shelf} {v.entry}" for v in weak).most_common(12)
    with capsys.disabled():
        sys.stdout.write(f"\n{len(weak)} of {len(all_values)} values rest on memory or estimate\n")
    assert share <= MOST_WEAK, audit.report(f"{n} in {entry}" for entry, n in worst)


def test_no_two_rules_say_the_same() -> None:
    """No two rules make one claim of the same layers, nor say one sentence."""
    assert "" == audit.report(audit.rules_alike())


def test_no_cloth_conflicts_with_itself() -> None:
    """No cloth sewn to itself clashes, in any fibre that it is sold in, unless it says why."""
    assert "" == audit.report(audit.self_conflicts())


def test_no_iron_limit_above_a_published_one() -> None:
    """No cloth may be ironed hotter than the strictest good figure of any of its fibres."""
    assert "" == audit.report(audit.iron_limits_too_high())


def test_every_limit_of_a_fibre_is_its_strictest() -> None:
    """The limit of a fibre is no higher than any published figure of good standing, or of any."""
    for fibre in audit.knowledge().fibres.values():
        good = [c.max for c in fibre.ceilings if c.good] or [c.max for c in fibre.ceilings]
        assert fibre.limit <= min(good), fibre.id
        assert fibre.start <= min(c.max for c in fibre.ceilings), fibre.id


def test_no_name_means_two_things() -> None:
    """A name leads to one entry only; a cloth may be called by the fibre that it is of."""
    assert "" == audit.report(audit.names_of_two())


def test_every_trait_is_asked_for() -> None:
    """No trait is kept that no rule uses."""
    assert [] == audit.traits_without_rule()


def cloths_with_measures() -> list[str]:
    return [e.id for e in audit.knowledge().fabrics() if audit.packings(e)]


@pytest.mark.parametrize("id_", cloths_with_measures())
def test_weight_thickness_and_density_agree(id_: str) -> None:
    """The share of fibre in a cloth, from its weight, thickness and fibre, is one that exists."""
    entry = audit.knowledge().entries[id_]
    low, high = PLAUSIBLE[audit.kind_of_packing(entry)]
    shares = audit.packings(entry)
    assert low <= min(shares) <= max(shares) <= high, f"{[f'{s:.2f}' for s in shares]}"


def test_nearly_every_cloth_has_measures() -> None:
    """Weight, thickness and fibre density are known for all but a few cloths."""
    fabrics = audit.knowledge().fabrics()
    without = [e.id for e in fabrics if not audit.packings(e)]
    assert len(without) <= 0.05 * len(fabrics), without
