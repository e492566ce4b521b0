"""What the page takes at the server: its first page, an answer after a change, fifty at once.

Run from the checkout with `python -m tests.bench.bench_page`. No browser and no network: requests
go straight to the application. Times are told beside the ratio to deciding the same garment once,
which is what a change costs at the least. The aims: a first page under 100 ms, an answer after a
change of a project of twelve places under 150 ms, fifty requests at once without an error.
"""

from __future__ import annotations

import re
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from time import perf_counter

from starlette.testclient import TestClient

from advisor.decide.evaluate import judge
from advisor.overlay.cache import load_knowledge
from advisor.project.load import garment_of
from advisor.textio.yamlfile import parse_yaml
from tests.bench.bench_places import project
from tests.page.conftest import client_of

AT_ONCE = 50
NAME = "big.yaml"
ONE = f"/project/{NAME}"


def seconds(client: TestClient, way: str) -> float:
    """How long one page takes to be answered whole."""
    begun = perf_counter()
    reply = client.get(way)
    if reply.status_code != 200:
        raise SystemExit(f"{way} ended with {reply.status_code}")
    return perf_counter() - begun


def changed(client: TestClient, text: str, length: str) -> float:
    """How long a project takes to be saved with another length, and then to be answered."""
    page = client.get(f"{ONE}/edit").text
    mark = re.search(r'name="mark" value="([^"]*)"', page)
    assert mark is not None
    now = re.sub(r"length: \d+ cm", f"length: {length}", text, count=1)
    begun = perf_counter()
    client.post(f"{ONE}/edit", data={"mark": mark[1], "text": now, "do": "save"})
    return perf_counter() - begun + seconds(client, ONE)


def main(places: int = 12) -> None:
    """Print the times and the ratios."""
    known = load_knowledge()
    text = project(places)
    garment = garment_of(parse_yaml(text, NAME), known)
    begun = perf_counter()
    judge(garment, known)
    decided = perf_counter() - begun
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / NAME).write_text(text, encoding="utf-8")
        client = client_of(Path(folder), known)
        rows = [
            ("first page", seconds(client, "/")),
            ("answer at first", seconds(client, ONE)),
            ("answer again", seconds(client, ONE)),
            ("answer after a change", min(changed(client, text, f"{x} cm") for x in (21, 22, 23))),
        ]
        begun = perf_counter()
        with ThreadPoolExecutor(AT_ONCE) as many:
            list(many.map(lambda _: seconds(client, ONE), range(AT_ONCE)))
        rows.append((f"{AT_ONCE} at once, each", (perf_counter() - begun) / AT_ONCE))
    for what, took in rows:
        sys.stdout.write(
            f"{what:24} {took * 1000:8.0f} ms, ratio to deciding {took / decided:.2f}\n"
        )


if __name__ == "__main__":
    main(*map(int, sys.argv[1:]))
