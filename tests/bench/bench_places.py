"""What a garment costs as it grows: seconds of work and memory by places, layers and own steps.

Run from the checkout with `python -m tests.bench.bench_places [places ...]`. The aims: 60 places
cost about six times as much as 12, and the largest project that is read comes to an end.
"""

from __future__ import annotations

import resource
import sys
from collections.abc import Callable
from time import process_time
from typing import Any

from advisor.answer.pipeline import Parts, answer
from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.order.work import Work, order_of
from advisor.overlay.cache import load_knowledge
from advisor.project.garment import Garment
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml

CLOTHS = (
    "linen suiting",
    "{fabric: organza, fibres: {nylon: 100}}",
    "{fabric: satin, fibres: {acetate: 100}}",
    "cotton velveteen",
    "silk chiffon",
    "wool flannel",
)


def project(places: int, layers: int = 2, cloths: int = len(CLOTHS), own: int = 0) -> str:
    """A project of so many places, each of so many layers out of so many cloths."""
    lines = ["garment: Big", "fabrics:"]
    lines += [f"  c{i}: {CLOTHS[i % len(CLOTHS)]}" for i in range(cloths)]
    lines.append("seams:")
    for i in range(places):
        some = [f"c{(i + j * (1 + i // cloths)) % cloths}" for j in range(layers)]
        lines.append(
            f"  - {{name: seam {i}, layers: [{', '.join(some)}], length: {10 + i % 7} cm}}"
        )
    if own:
        lines += ["order:", "  add:"]
        lines += [f"    - {{step: own {i}, after: cut c{i % cloths}}}" for i in range(own)]
    return "\n".join(lines) + "\n"


def seconds(work: Callable[[], Any]) -> float:
    """Seconds of work of this process."""
    begun = process_time()
    work()
    return process_time() - begun


def row(known: Knowledge, places: int, layers: int, cloths: int, own: int) -> str:
    """One line of the table."""
    garment: Garment = garment_of(parse_yaml(project(places, layers, cloths, own), "p.yaml"), known)
    decided = seconds(lambda: judge(garment, known))
    advice: list[Advice] = []
    advised = seconds(lambda: advice.append(advise(garment, known)))
    works: list[Work] = []
    ordered = seconds(lambda: works.append(order_of(advice[0], known)))
    whole = seconds(lambda: answer(garment, known, Parts(order=True)))
    plan = works[0].plan
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    steps = len(works[0].order)
    return (
        f"{places:6} {layers:6} {cloths:6} {steps:6} {decided:8.2f} {advised:8.2f} "
        f"{ordered:8.2f} {whole:8.2f} {plan.cost:7.1f} {plan.bound:7.1f} {peak:7.0f}\n"
    )


def main(places: tuple[int, ...] = (12, 24, 60, 200)) -> None:
    """Print the table."""
    known = load_knowledge()
    sys.stdout.write(
        "places layers cloths  steps   decide   advise    order    whole minutes   bound  MB peak\n"
    )
    for number in places:
        sys.stdout.write(row(known, number, 2, len(CLOTHS), 0))
        sys.stdout.flush()
    for number, layers, cloths, own in ((12, 4, 6, 0), (12, 12, 12, 0), (200, 2, 6, 300)):
        if number <= max(places):
            sys.stdout.write(row(known, number, layers, cloths, own))
            sys.stdout.flush()


if __name__ == "__main__":
    main(*([tuple(map(int, sys.argv[1:]))] if sys.argv[1:] else []))
