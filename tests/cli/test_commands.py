"""Every command as it is typed: what it prints, and with which status it ends.

The printed words are compared with tests/cli/expected. After a change that is meant, write them
anew with ADVISOR_WRITE_EXPECTED=1, and read the difference before it is committed.
"""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.typed import typed

CHECKOUT = Path(__file__).resolve().parents[2]
EXPECTED = Path(__file__).parent / "expected"
DEMOS = CHECKOUT / "knowledge" / "examples"
JACKET = "knowledge/examples/bandstand-jacket.yaml"
COAT = "knowledge/examples/lantern-parade-coat.yaml"
VELVETEEN = ("cotton velveteen", "acetate satin", "nylon tulle")
DRESS = "knowledge/examples/allotment-apron-dress.yaml"


PRINTED = {
    "ask-organza-linen": (1, "ask", "nylon organza", "linen suiting 240 g/m2"),
    "ask-organza-linen-60": (1, "ask", "nylon organza", "linen suiting 240 g/m2"),
    "ask-organza-linen-120": (1, "ask", "nylon organza", "linen suiting 240 g/m2"),
    "ask-organza-linen-more": (1, "ask", "nylon organza", "linen suiting 240 g/m2", "--more"),
    "ask-denim": (0, "ask", "cotton 97 elastane 3 denim 340 g/m2"),
    "ask-velvet-us": (0, "ask", "viscose velvet", "--units", "us"),
    "iron-three-layers": (1, "iron", *VELVETEEN),
    "iron-three-layers-all": (
        1,
        "iron",
        "cotton velveteen",
        "acetate satin",
        "nylon tulle",
        "--all",
    ),
    "iron-jacket-80": (1, "iron", JACKET),
    "iron-jacket-hem-frill-60": (1, "iron", JACKET, "hem frill"),
    "check-jacket": (1, "check", JACKET),
    "check-dress": (0, "check", DRESS),
    "sheet-dress": (0, "sheet", DRESS),
    "sheet-jacket": (1, "sheet", JACKET),
    "sheet-coat": (1, "sheet", COAT),
    "sheet-screen-jacket-60": (1, "sheet", JACKET, "--screen"),
    "sheet-screen-jacket-80": (1, "sheet", JACKET, "--screen"),
    "sheet-screen-jacket-120": (1, "sheet", JACKET, "--screen"),
    "sheet-jacket-us": (1, "sheet", JACKET, "--units", "us"),
    "why-hem-frill": (1, "why", JACKET, "hem frill", "press.temperature"),
    "why-collar-interfacing": (1, "why", COAT, "collar edge", "interfacing.kind"),
    "explain-organza": (0, "explain", "organza"),
    "explain-wool": (0, "explain", "wool"),
    "explain-rule": (0, "explain", "pile-on-slippery"),
    "explain-source": (0, "explain", "iso-3758-2012"),
    "explain-aspect": (0, "explain", "needle.size"),
    "explain-trait": (0, "explain", "one way"),
    "fabrics-sheer": (0, "fabrics", "sheer"),
}


@pytest.mark.parametrize("name", PRINTED)
def test_prints_the_expected_words(name: str) -> None:
    """A command prints just what the expected file holds, and ends with its status."""
    status, *arguments = PRINTED[name]
    width = name.rpartition("-")[2]
    done = typed(*map(str, arguments), env={"COLUMNS": width if width.isdigit() else "80"})
    path = EXPECTED / f"{name}.txt"
    if os.environ.get("ADVISOR_WRITE_EXPECTED"):
        path.write_bytes(done.stdout)
    assert done.stdout.decode() == path.read_text(encoding="utf-8")
    assert (done.returncode, done.stderr) == (status, b"")


def test_answer_has_the_fixed_keys() -> None:
    """The answer of a sheet has every key that other programs rest on."""
    data = json.loads(typed("sheet", COAT, "--json").stdout)
    fixed = {
        "schema",
        "garment",
        "layers",
        "verdicts",
        "conflicts",
        "cautions",
        "tests",
        "unknowns",
        "sources",
    }
    assert fixed <= set(data)
    assert data["schema"] == "advisor.answer/1"
    verdict = data["verdicts"][0]
    assert {"aspect", "scope", "place", "kind", "text", "because", "given_up"} <= set(verdict)
    conflict = data["conflicts"][0]
    keys = {"id", "aspect", "place", "severity", "between", "message", "because", "remedies"}
    assert keys <= set(conflict)
    assert {"id", "text", "price", "then", "checked"} <= set(conflict["remedies"][0])


WRONG = {
    "no-fabric": (("ask", "velvte"), "velvet"),
    "weave-only": (("ask", "woven"), "advisor fabrics"),
    "shares": (("ask", "cotton 97 elastane 5 denim"), "these make 102"),
    "weight": (("ask", "denim 99999 g/m2"), "5 to 3000"),
    "nothing": (("ask", ""), "a few words"),
    "no-argument": (("ask",), "a cloth or more is missing"),
    "no-such-option": (("ask", "--bogus"), "no option '--bogus'"),
    "no-such-command": (("aks", "organza"), "aks"),
    "units": (("ask", "organza", "--units", "cubits"), "metric or us"),
    "no-file": (("sheet", "nowhere.yaml"), "no such file"),
    "a-folder": (("sheet", "tests"), "folder"),
    "no-place": (("why", JACKET, "hem fril", "press.temperature"), "hem frill"),
    "no-aspect": (("why", JACKET, "hem frill", "press.temperatur"), "press.temperature"),
    "unknown-id": (("explain", "organzza"), "organza"),
    "no-match": (("fabrics", "xylophone"), "no cloth fits"),
}


@pytest.mark.parametrize("name", WRONG)
def test_wrong_use_gets_one_clear_message(name: str) -> None:
    """Wrong use ends with 2, says what was wrong, prints no answer and no traceback."""
    arguments, words = WRONG[name]
    done = typed(*arguments)
    said = done.stderr.decode()
    assert done.returncode == 2
    assert words in said
    assert "Traceback" not in said
    assert done.stdout == b""


@pytest.mark.parametrize("demo", sorted(DEMOS.glob("*.yaml")), ids=lambda p: p.stem)
def test_a_dozen_seams_fit_two_printed_pages(demo: Path) -> None:
    """The sheet of each demo is no longer and no wider than two pages hold."""
    from advisor.render.printed.compact import LINES, WIDTH

    lines = typed("sheet", str(demo)).stdout.decode().splitlines()
    assert len(lines) <= LINES["metric"]
    assert max(map(len, lines)) <= WIDTH


def test_file_order_does_not_matter(tmp_path: Path) -> None:
    """Fabrics written in another order give the same verdicts and conflicts."""
    import yaml

    from advisor.textio.yamlfile import read_yaml

    project = read_yaml(CHECKOUT / COAT).data
    project["fabrics"] = dict(reversed(project["fabrics"].items()))
    turned = tmp_path / "turned.yaml"
    turned.write_text(yaml.safe_dump(project, sort_keys=False), encoding="utf-8")
    one = json.loads(typed("sheet", COAT, "--json").stdout)
    other = json.loads(typed("sheet", str(turned), "--json").stdout)
    assert one["verdicts"] == other["verdicts"]
    assert one["conflicts"] == other["conflicts"]


def test_help_of_every_command() -> None:
    """Each command explains itself."""
    for command in ("ask", "sheet", "iron", "check", "why", "explain", "fabrics", "start"):
        done = typed(command, "--help")
        assert done.returncode == 0
        assert b"--help" in done.stdout


def test_the_readme_shows_what_is_really_printed() -> None:
    """The screen in the README is the one that its command prints."""
    readme = (CHECKOUT / "README.md").read_text(encoding="utf-8")
    shown = readme.split("```text\n", 1)[1].split("```", 1)[0]
    done = typed("ask", "nylon organza", "linen suiting")
    assert shown == done.stdout.decode()
