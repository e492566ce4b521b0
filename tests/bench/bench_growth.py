"""What ten times the cloths and rules cost: to compile, and to decide about a garment.

Run from the checkout with `python -m tests.bench.bench_growth [times]`. Every fabric, notion and
rule is written `times` over. A copied rule also asks for a copied cloth, because new rules are
about new cloths; so the garment in question meets every copy and is told nothing by it. The aims:
ten times the knowledge costs at most ten times the compiling and does not slow a decision.
"""

from __future__ import annotations

import json
import shutil
import statistics
import sys
import tempfile
from pathlib import Path
from time import perf_counter
from typing import Any

from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge, from_plain
from advisor.knowledge.place import knowledge_folder
from advisor.overlay.cache import compile_folder
from advisor.textio.yamlfile import read_yaml
from tests.bench.decide_cases import garment

CLOTH = "organza"


def grown(source: Path, target: Path, times: int) -> None:
    """Write the knowledge with every cloth and rule `times` over; both the copies and the rest
    are written in the same style, so that only their number differs.
    """
    shutil.copytree(source, target, ignore=shutil.ignore_patterns("examples"))
    for kind in ("fabrics", "notions", "rules"):
        for path in sorted((target / kind).rglob("*.yaml")):
            data = read_yaml(path).data
            _write(path, data)
            for n in range(1, times):
                copy = _rule(data, n) if kind == "rules" else _cloth(data, n)
                _write(path.with_stem(copy["id"]), copy)


def _write(path: Path, data: dict[str, Any]) -> None:
    """JSON is YAML; long strings in quotes read the same."""
    path.write_text(json.dumps(data, ensure_ascii=False, indent=1), encoding="utf-8")


def _cloth(data: dict[str, Any], n: int) -> dict[str, Any]:
    """A cloth under another name; an alias stands for one thing only."""
    return {**data, "id": f"{data['id']}-copy{n}", "name": f"{data['name']} copy{n}", "also": []}


def _rule(data: dict[str, Any], n: int) -> dict[str, Any]:
    """A rule that also asks for a copied cloth."""
    cloth = {"fabric": f"{CLOTH}-copy{n}"}
    when = dict(data["when"])
    for role in ("layer", "every", "some"):
        if role in when:
            when[role] = {"all": [cloth, when[role]]}
    for role in ("pair", "garment pair"):
        if role in when:
            when[role] = [{"all": [cloth, when[role][0]]}, when[role][1]]
    if not set(when) - {"seam", "maker"}:
        when["some"] = cloth
    return {**data, "id": f"{data['id']}-copy{n}", "when": when}


def compiled(folder: Path) -> tuple[float, Knowledge]:
    """Seconds to compile a folder, and what it is."""
    begun = perf_counter()
    plain = compile_folder(folder)
    return perf_counter() - begun, from_plain(plain)


def decision_ms(known: Knowledge, runs: int = 9) -> float:
    """The median of some decisions in milliseconds."""
    spans = []
    for _ in range(runs):
        begun = perf_counter()
        judge(garment(), known)
        spans.append(perf_counter() - begun)
    return statistics.median(spans) * 1000.0


def main(times: int = 10) -> tuple[float, float]:
    """Print what growing costs and the ratios."""
    with tempfile.TemporaryDirectory() as folder:
        grown(knowledge_folder(), Path(folder) / "small", 1)
        grown(knowledge_folder(), Path(folder) / "big", times)
        small_s, small = compiled(Path(folder) / "small")
        big_s, big = compiled(Path(folder) / "big")
    few, many = decision_ms(small), decision_ms(big)
    sys.stdout.write(
        f"{len(small.entries)} cloths and {len(small.rules)} rules compile in {small_s:.1f} s, "
        f"{len(big.entries)} and {len(big.rules)} in {big_s:.1f} s\n"
        f"ratio of compiling {big_s / small_s:.1f} (aim: at most {times})\n"
        f"ratio of deciding {many / few:.2f}: {few:.1f} ms and {many:.1f} ms\n"
    )
    return big_s / small_s, many / few


if __name__ == "__main__":
    main(*(int(word) for word in sys.argv[1:]))
