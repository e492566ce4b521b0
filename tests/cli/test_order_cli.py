"""`advisor order` and `advisor why FILE STEP order` as they are typed."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tests.typed import typed

CHECKOUT = Path(__file__).resolve().parents[2]
JACKET = CHECKOUT / "knowledge" / "examples" / "bandstand-jacket.yaml"


def data_of(*words: str) -> dict[str, Any]:
    found: dict[str, Any] = json.loads(typed("order", *words, "--json").out)
    return found


@pytest.fixture
def jacket(tmp_path: Path) -> Path:
    file = tmp_path / "jacket.yaml"
    file.write_text(JACKET.read_text("utf-8"), "utf-8")
    return file


def test_the_data_have_the_agreed_keys() -> None:
    """Each step with machine and iron, what it waits for and why; the price with its bound."""
    data = data_of(str(JACKET))
    assert "advisor.answer/1" == data["schema"]
    agreed = {"step", "does", "on", "machine", "iron", "after", "because", "change_min"}
    assert all(agreed <= row.keys() for row in data["order"])
    cost = data["order_cost"]
    assert {"changes", "minutes", "bound", "optimal"} <= cost.keys()
    assert cost["optimal"]
    assert cost["bound"] == cost["minutes"] <= cost["plain"]
    assert cost["minutes"] == pytest.approx(sum(row["change_min"] for row in data["order"]))
    assert cost["changes"] == sum(1 for row in data["order"] if row["change"])
    place = {row["step"]: k for k, row in enumerate(data["order"])}
    assert all(place[a] < place[row["step"]] for row in data["order"] for a in row["after"])


def test_the_exit_status_is_that_of_the_clashes() -> None:
    """Nothing against it is 0; a clash is 1, and the order says which it cannot settle."""
    dress = CHECKOUT / "knowledge" / "examples" / "allotment-apron-dress.yaml"
    assert 0 == typed("order", str(dress)).returncode
    data = data_of(str(JACKET))
    assert 1 == typed("order", str(JACKET)).returncode
    assert {"hem frill"} <= {row["place"] for row in data["settled"]}
    assert not {row["place"] for row in data["settled"]} & {r["place"] for r in data["unsettled"]}


def test_the_text_says_first_what_it_costs_and_has_a_box_for_each_step() -> None:
    """A checklist with a number and a box for every step."""
    text, data = typed("order", str(JACKET)).out, data_of(str(JACKET))
    assert len(data["order"]) == text.count("[ ]")
    assert f"{len(data['order'])} steps, {data['order_cost']['changes']} changes" in text
    assert "hot" not in text or "Press shell now with the heat and moisture that it wants" in text
    assert max(map(len, text.splitlines())) <= 110


def test_the_plain_order_is_dearer_or_equal() -> None:
    """--plain prices the custom of the trade, which is never cheaper."""
    plain, best = data_of(str(JACKET), "--plain"), data_of(str(JACKET))
    assert plain["order_cost"]["minutes"] == best["order_cost"]["plain"]
    assert best["order_cost"]["minutes"] <= plain["order_cost"]["minutes"]
    assert {r["step"] for r in plain["order"]} == {r["step"] for r in best["order"]}


def test_sittings_hold_every_step_once() -> None:
    """Cut into sittings of 90 minutes; none is longer unless nothing may break it."""
    data = data_of(str(JACKET), "--sitting", "90min")
    steps = [name for sitting in data["sittings"] for name in sitting["steps"]]
    assert [row["step"] for row in data["order"]] == steps
    assert all(s["minutes"] <= 90 or s["over"] > 0 for s in data["sittings"])
    assert "SITTING 2" in typed("order", str(JACKET), "--sitting", "1.5h").out


def test_a_tick_is_written_and_the_rest_stays(jacket: Path) -> None:
    """The file gains two lines and loses none; the step stands ticked at the top."""
    before = jacket.read_text("utf-8")
    done = typed("order", str(jacket), "--tick", "shrink shell")
    assert 1 == done.returncode  # the jacket has clashes, as every command says
    assert f"{before}done:\n  - shrink shell\n" == jacket.read_text("utf-8")
    assert "[x]" in done.out
    assert 1 == typed("order", str(jacket), "--untick", "shrink shell").returncode
    assert before == jacket.read_text("utf-8")


def test_a_step_that_is_none_is_not_ticked(jacket: Path) -> None:
    """Exit 2 with the nearest name, and the file as it was."""
    before = jacket.read_text("utf-8")
    done = typed("order", str(jacket), "--tick", "shrink shel")
    assert (2, "") == (done.returncode, done.out)
    assert "'shrink shell'" in done.err
    assert before == jacket.read_text("utf-8")


def test_a_sitting_that_is_no_time_is_refused() -> None:
    """Exit 2, and what to write."""
    done = typed("order", str(JACKET), "--sitting", "soon")
    assert 2 == done.returncode
    assert "90min" in done.err


def test_why_a_step_stands_where_it_stands() -> None:
    """What is before and after it, and what moving it costs."""
    done = typed("why", str(JACKET), "hot press shell", "order")
    assert 1 == done.returncode
    assert "wants more heat or moisture than lining bears" in " ".join(done.out.split())
    assert "move as late as it can stand" in done.out
    data = json.loads(typed("why", str(JACKET), "hot press shell", "order", "--json").out)
    assert {"after", "before", "forced_before", "forced_after", "moves"} <= data.keys()
    assert all(m["extra_min"] is None or m["extra_min"] >= 0 for m in data["moves"])


def test_why_knows_no_other_steps() -> None:
    """Exit 2 with the nearest names."""
    done = typed("why", str(JACKET), "hot press shel", "order")
    assert 2 == done.returncode
    assert "hot press shell" in done.err


def test_a_cycle_ends_with_one_and_check_names_it(tmp_path: Path) -> None:
    """Two seams that cross each other: a conflict for order and for check."""
    file = tmp_path / "knot.yaml"
    file.write_text(
        "garment: Knot\nfabrics:\n  cloth: {fabric: gabardine}\nseams:\n"
        "  - {name: first, layers: [cloth, cloth], crosses: second}\n"
        "  - {name: second, layers: [cloth, cloth], crosses: first}\n",
        "utf-8",
    )
    for command in ("order", "check"):
        done = typed(command, str(file))
        assert 1 == done.returncode
        told = " ".join(done.out.split())
        assert "No order can have join first before join second" in told
        assert "Take 'first' out of the seams that 'second' crosses." in told


def test_a_pin_that_cannot_be_had_ends_with_one(jacket: Path) -> None:
    """The reason stands at the top."""
    pin = "order:\n  pin: [{step: join side, before: cut shell}]\n"
    jacket.write_text(jacket.read_text("utf-8") + pin, "utf-8")
    done = typed("order", str(jacket))
    assert 1 == done.returncode
    assert "'join side' cannot stand where your project wants it" in done.out


def test_the_sheet_has_one_line_of_it() -> None:
    """The command, the steps, the changes and the minutes; the whole only in the data."""
    text = typed("sheet", str(JACKET)).out
    cost = data_of(str(JACKET))["order_cost"]
    line = " ".join(text[text.index("Order: ") :].split()[:40])
    assert f"{cost['changes']} changes of set-up" in line
    sheet = json.loads(typed("sheet", str(JACKET), "--json").out)
    assert sheet["order_cost"] == cost
    assert data_of(str(JACKET))["order"] == sheet["order"]


def test_a_ticked_half_of_a_sitting_leaves_every_command_working(jacket: Path) -> None:
    """A step whose partner in one sitting is still to do can be ticked, and the work goes on."""
    steps = [row["step"] for row in data_of(str(jacket))["order"]]
    assert "join shoulder" in steps
    for name in ("join shoulder", steps[0], steps[len(steps) // 2]):
        ticked = typed("order", str(jacket), "--tick", name)
        assert (1, "") == (ticked.returncode, ticked.err)
        for command in ("order", "sheet", "check"):
            after = typed(command, str(jacket))
            assert (1, "") == (after.returncode, after.err), command
    done = [row["step"] for row in data_of(str(jacket))["order"] if row["done"]]
    assert {"join shoulder", steps[0], steps[len(steps) // 2]} == set(done)
