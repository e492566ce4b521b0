"""What a garment costs: reckoned again by hand, and laws that hold for any prices."""

from __future__ import annotations

from datetime import date
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from advisor.answer.model.answer import Answer
from advisor.answer.pipeline import Parts, answer, decide, tell
from advisor.answer.quote import stage_of, told_quote
from advisor.answer.teller import Teller
from advisor.construction.costing import costs_of
from advisor.knowledge.pricing import Finished, Price, Quoting, laid_over, read_price
from advisor.project.garment import Garment
from advisor.project.quoting import job_minutes
from advisor.render.quote_html import render_quote_page
from advisor.render.quote_text import render_customer, render_quote
from tests.unit.construction.build_cases import judged, known

HEAD = (
    "garment: Pinafore\nfabrics:\n"
    "  body: {fabric: poplin, fibres: {cotton: 100}, width: 150 cm, shrinks: 0 %, "
    "shrinks across: 0 %, selvage: 0 cm, price: 12.40 per m}\n"
    "  lining: {fabric: lawn, fibres: {cotton: 100}, width: 140 cm}\nseams:\n"
)
PROJECT = (
    "  - {name: side, layers: [body, body], length: 80 cm, times: 2}\n"
    "  - {name: neck, layers: [body, lining], length: 60 cm, edge: turned}\n"
    "  - {name: back zip, layers: [body, {notion: coil zip}, body], length: 50 cm}\n"
    "pieces:\n  - {name: front, fabric: body, width: 70 cm, height: 90 cm, number: 2}\n"
    "  - {name: facing, fabric: lining, width: 60 cm, height: 10 cm}\n"
    "quote:\n  currency: EUR\n  hour: 20\n  margin: 25 %\n"
    "  prices: {lawn: 9, reel: 2.5, cone: 4, coil zip: 3.10 each}\n  others: {parcel: 5}\n"
)
DAY = date(2026, 11, 28)


def asked(text: str = PROJECT, head: str = HEAD) -> Answer:
    """The answer to a project that was asked what it costs."""
    return answer(judged(text, head).garment, known(), Parts(order=True, quote=True))


@cache
def told() -> Answer:
    """The pinafore."""
    return asked()


@cache
def decided():  # type: ignore[no-untyped-def]
    """The pinafore decided once, to be told with many prices."""
    return decide(judged(PROJECT, HEAD).garment, known(), Parts(order=True))


def with_quote(quote: Quoting) -> Answer:
    """The pinafore with other prices and times."""
    found = decided()
    judgement = found.advice.judgement
    garment: Garment = replace(judgement.garment, plan=replace(judgement.garment.plan, quote=quote))
    advice = replace(found.advice, judgement=replace(judgement, garment=garment))
    return tell(replace(found, advice=advice), known(), Parts(order=True, quote=True))


def test_the_pinafore_by_hand() -> None:
    """Two fronts side by side: 0.9 m and square ends, so 1 m is bought at 12.40."""
    quote = told().quote
    assert quote is not None
    rows = {line.name: line for line in quote.lines}
    body = rows["body"]
    assert (1.0, 12.4, 12.4) == (body.amount, body.price, body.cost)
    # 2 × 0.7 × 0.9 m² of the 1 × 1.5 m² that are paid for is used.
    assert body.wasted == pytest.approx((1 - 1.26 / 1.5) * 12.4, abs=0.02)
    assert (1, 3.1) == (rows["coil zip"].amount, rows["coil zip"].cost)
    assert 5.0 == rows["parcel"].cost
    assert quote.things == pytest.approx(sum(line.cost or 0 for line in quote.lines))
    minutes = sum(stage.minutes for stage in quote.stages)
    assert minutes == pytest.approx(quote.minutes, abs=0.3)
    work = told().work
    assert work is not None
    assert minutes == pytest.approx(sum(s.work_min + s.change_min for s in work.order), abs=0.3)
    assert quote.work is not None
    assert quote.work.likely == pytest.approx(minutes / 60 * 20, abs=0.15)
    assert quote.total.likely == pytest.approx((quote.things + quote.work.likely) * 1.25, abs=0.01)
    assert quote.complete


def test_what_has_no_price_is_never_nothing() -> None:
    """A zip without a price is named, and the total is told as the least that it can be."""
    found = asked(PROJECT.replace(", coil zip: 3.10 each", ""))
    assert found.quote is not None
    assert ("coil zip (no price said)",) == found.quote.missing
    assert "at least" in render_quote(found)
    assert "Not ready to hand over" in render_customer(found, DAY)
    assert "Not ready to hand over" in render_quote_page(found, DAY)


def test_a_price_for_another_unit_is_no_price() -> None:
    """A zip priced by the metre, or a cloth by the piece, is told and not reckoned."""
    found = asked(PROJECT.replace("coil zip: 3.10 each", "coil zip: 3.10 per m"))
    assert found.quote is not None
    assert ("coil zip (its price is for a metre)",) == found.quote.missing


def test_her_times_count_first() -> None:
    """Each step has her time where she says one, by its name before its piece of work."""
    quote = Quoting(minutes={"press": 1.0, "press side": 30.0, "polish": 5.0})
    found = with_quote(quote)
    assert found.quote is not None
    assert found.work is not None
    pressed = [s for s in found.work.order if s.operation == "press"]
    plain = with_quote(Quoting()).quote
    assert plain is not None
    less = sum(s.work_min for s in pressed) - 30.0 - (len(pressed) - 1)
    assert found.quote.minutes == pytest.approx(plain.minutes - less, abs=0.3)
    assert any("'polish'" in text for text in found.quote.says)
    assert len(pressed) == sum(stage.own for stage in found.quote.stages)


def test_finished_garments_correct_the_estimate() -> None:
    """A maker whose garments took twice as long is told nearly twice the hours; see her folder."""
    plain = with_quote(Quoting()).quote
    jobs = tuple(Finished(f"job {i}", 300.0, 600.0) for i in range(8))
    assert plain is not None
    work = told().work
    lines = costs_of(decided().advice.judgement, (), (), Quoting(), known())
    teller = Teller(decided().advice.judgement.garment, known())
    twice = told_quote(lines, work, Quoting(finished=jobs), teller)
    assert 8 == twice.finished
    assert 1.9 < twice.hours.likely / plain.hours.likely < 2.0
    assert twice.hours.high / twice.hours.low < plain.hours.high / plain.hours.low
    assert jobs == laid_over(Quoting(), Quoting(finished=jobs)).finished


@settings(max_examples=25, deadline=None)
@given(
    st.floats(0.01, 500),
    st.floats(0.01, 500),
    st.floats(0, 200),
    st.floats(0, 3),
    st.floats(1, 3),
)
def test_dearer_never_costs_less(
    cloth: float, reel: float, hour: float, margin: float, more: float
) -> None:
    """Parts sum to the whole, and no price that rises lets it fall."""

    def cost(times: float) -> tuple[float, float]:
        prices = {"body": Price(cloth * times, "m"), "reel": Price(reel * times)}
        found = with_quote(Quoting(hour=hour * times, margin=margin, prices=prices)).quote
        assert found is not None
        assert found.things == pytest.approx(sum(line.cost or 0.0 for line in found.lines))
        assert all(line.wasted <= (line.cost or 0.0) for line in found.lines)
        assert found.total.low <= found.total.likely <= found.total.high
        return found.things, found.total.likely

    (things, total), (dearer, whole) = cost(1.0), cost(more)
    assert things <= dearer
    assert total <= whole + 0.01


def test_units_do_not_matter() -> None:
    """A price for a metre and the same for a yard cost the same for the same cloth."""
    metre, yard = read_price("9.144 per m"), read_price("8.3612736 per yd")
    assert metre.amount == pytest.approx(yard.amount)
    assert "m" == metre.per == yard.per
    assert Price(3.0, "each") == read_price("3 each")
    assert Price(3.0) == read_price("3")


@pytest.mark.parametrize("text", ["", "abc", "-3", "3 per furlong", "1e9", "12 per", "nan"])
def test_what_is_no_price_is_refused(text: str) -> None:
    """One clear message."""
    with pytest.raises(ValueError, match="is no price"):
        read_price(text)


@pytest.mark.parametrize(
    ("text", "minutes"), [("14 h", 840), ("9 h 30 min", 570), ("90", 90), ("1.5 hours", 90)]
)
def test_the_time_of_a_whole_garment(text: str, minutes: float) -> None:
    """Hours, hours and minutes, or minutes alone."""
    assert minutes == job_minutes(text)


@pytest.mark.parametrize("text", ["", "soon", "-3 h", "0", "9000 h", "3 h 5 days"])
def test_what_is_no_time_is_refused(text: str) -> None:
    """One clear message."""
    with pytest.raises(ValueError, match="no length of time"):
        job_minutes(text)


def test_the_customers_rows_sum_to_her_total() -> None:
    """What comes on top stands within the work, so that the rows make the whole."""
    found = told()
    page = render_customer(found, DAY)
    costs = [
        float(line.rsplit(" ", 2)[1].replace(",", ""))
        for line in page.splitlines()
        if line.endswith(" EUR")
    ]
    assert costs[-1] == pytest.approx(sum(costs[:-1]), abs=0.005)
    assert "28 November 2026" in page
    assert "25 %" not in page
    assert "25 %" in render_quote(found)
    html = render_quote_page(found, DAY)
    assert "<script" not in html
    assert f"{costs[-1]:.2f} EUR" in html


def test_a_name_is_escaped_on_the_page() -> None:
    """What she calls a cloth is no markup on the customer's page."""
    odd = PROJECT.replace("parcel", "'<b>parcel</b>'")
    assert "<b>parcel" not in render_quote_page(asked(odd), DAY)


def test_every_step_has_a_stage() -> None:
    """The stages of the pinafore hold all its steps."""
    work, quote = told().work, told().quote
    assert work is not None
    assert quote is not None
    held = sum(s.steps for s in quote.stages if s.stage != "changes of set-up")
    assert len(work.order) == held
    assert {stage_of(step) for step in work.order} <= {s.stage for s in quote.stages}


def test_whatever_the_list_has_in_the_seam_is_in_the_quote() -> None:
    """A stay that the sheet advises and buttons that nobody named cost something as well."""
    text = PROJECT.replace(
        "pieces:\n",
        "  - {name: buttonholes, kind: buttonhole, layers: [body, body], number: 5}\npieces:\n",
        1,
    )
    found = answer(
        judged(text, HEAD).garment, known(), Parts(shopping=True, order=True, quote=True)
    )
    assert found.quote is not None
    lines = {line.name: line for line in found.quote.lines}
    wanted = [row for row in found.kit or () if row.group == "in the seam" and row.strip is None]
    assert {"coil zip", "button"} <= {row.item.split(" (")[0] for row in wanted}
    for row in wanted:
        assert row.item.split(" (")[0] in lines
    (button,) = (row for row in wanted if row.item.startswith("button"))
    assert (5, 1) == (button.number, button.spare)
    # What is bought to spare is paid for too.
    assert (5 + 1, None, "no price said") == (
        lines["button"].amount,
        lines["button"].cost,
        lines["button"].lacks,
    )
