"""Reads what a maker charges by, from the `quote` of a project or from her own `quote.yaml`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import Problem, shown
from advisor.knowledge.names import plain_name
from advisor.knowledge.pricing import ACCEPTED, Finished, Price, Quoting, read_price
from advisor.project.findings import Findings
from advisor.project.wishes import minutes_of
from advisor.units import parse

if TYPE_CHECKING:
    from advisor.project.garment import Garment

MOST_MARGIN = 500.0
"""The largest margin that is no slip of the keyboard, percent (estimate)."""
PLAIN = ("currency", "hour", "margin")
"""Keys that hold one plain value."""
Say = Callable[[tuple[str | int, ...], str, str], None]
"""Notes what is wrong at a place, and what is expected there."""


def with_quote(garment: Garment, data: Any, findings: Findings) -> Garment:
    """The garment with what its file says of prices and times."""
    about = data.get("quote") if isinstance(data, dict) else None
    fabrics = data.get("fabrics") if isinstance(data, dict) else None
    found = read_quote(about, findings.say, ("quote",)) if isinstance(about, dict) else Quoting()
    prices = {}
    for name, cloth in fabrics.items() if isinstance(fabrics, dict) else ():
        if isinstance(cloth, dict) and cloth.get("price") is not None:
            price = _price(cloth["price"], ("fabrics", name, "price"), findings.say)
            if price is not None:
                prices[plain_name(" ".join(str(name).split()))] = price
    quote = replace(found, prices={**found.prices, **prices})
    return replace(garment, plan=replace(garment.plan, quote=quote))


def read_quote(about: Mapping[str, Any], say: Say, at: tuple[str | int, ...] = ()) -> Quoting:
    """What a group of keys says; each thing that is wrong is noted at its place."""
    prices, minutes, others = (_group(about, key) for key in ("prices", "minutes", "others"))
    read = {
        plain_name(str(k)): price
        for k, v in prices.items()
        if (price := _price(v, (*at, "prices", k), say)) is not None
    }
    times = {
        plain_name(str(k)): time
        for k, v in minutes.items()
        if (time := _time(v, (*at, "minutes", k), say)) is not None
    }
    hour, currency = about.get("hour"), about.get("currency")
    return Quoting(
        " ".join(str(currency).split()) if isinstance(currency, str) else "",
        float(hour) if isinstance(hour, int | float) and _is_number(hour) else None,
        _margin(about.get("margin"), (*at, "margin"), say),
        read,
        times,
        {str(k): float(v) for k, v in others.items() if _is_number(v)},
        tuple(_finished(about.get("finished"), at, say)),
    )


def _group(about: Mapping[str, Any], key: str) -> dict[Any, Any]:
    found = about.get(key)
    return found if isinstance(found, dict) else {}


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and value >= 0


def _price(value: Any, at: tuple[str | int, ...], say: Say) -> Price | None:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        return None
    try:
        return read_price(f"{value}")
    except ValueError:
        say(at, f"{shown(str(value))} is no price", ACCEPTED)
        return None


def _time(value: Any, at: tuple[str | int, ...], say: Say) -> float | None:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        return None
    try:
        return minutes_of(value)
    except (ValueError, KeyError):
        say(at, f"{shown(str(value))} is no time", "minutes, or 25 min or 1.5 h, of a day at most")
        return None


def _margin(value: Any, at: tuple[str | int, ...], say: Say) -> float | None:
    if not isinstance(value, str | int | float) or isinstance(value, bool):
        return None
    try:
        share = parse("percent", value)
        if share > MOST_MARGIN:
            raise ValueError(value)
    except ValueError:
        say(at, f"{shown(str(value))} is no margin", f"from 0 to {MOST_MARGIN:g} %, as in 15 %")
        return None
    return share / 100


def _finished(listed: Any, at: tuple[str | int, ...], say: Say) -> list[Finished]:
    found = []
    for i, row in enumerate(listed if isinstance(listed, list) else ()):
        if isinstance(row, dict):
            where = (*at, "finished", i)
            times = [_long_time(row.get(k), (*where, k), say) for k in ("reckoned", "took")]
            if times[0] is not None and times[1] is not None:
                found.append(Finished(str(row.get("garment")), times[0], times[1]))
    return found


LONGEST_JOB = 5000.0
"""The longest that a garment may have taken, hours (estimate)."""


def _long_time(value: Any, at: tuple[str | int, ...], say: Say) -> float | None:
    try:
        return job_minutes(value)
    except ValueError as error:
        say(at, str(error), "hours and minutes, as in 14 h 30 min")
        return None


def job_minutes(value: Any) -> float:
    """Minutes of a whole garment out of `14 h`, `14 h 30 min` or a plain number of minutes.

    Raises:
        ValueError: it is no such time.
    """
    text = " ".join(str(value).split())
    hours, _, rest = text.partition("h")
    try:
        whole = parse("time", f"{hours} h") if rest or text.endswith("h") else 0.0
        rest = rest if whole else text
        rest = rest.removeprefix("ours").removeprefix("our").removeprefix("rs").strip()
        minutes = (whole + (parse("time", rest, "min") if rest else 0.0)) / 60
    except ValueError:
        raise ValueError(f"{shown(text)} is no length of time") from None
    if not 0 < minutes <= LONGEST_JOB * 60:
        raise ValueError(f"{shown(text)} is no length of time for a garment")
    return minutes


def problems_of(quote: Any, where: Callable[..., Any]) -> tuple[Quoting, list[Problem]]:
    """Her own file read, and what of it is wrong."""
    problems: list[Problem] = []

    def say(at: tuple[str | int, ...], what: str, expected: str) -> None:
        problems.append(Problem(what, where(*at), expected))

    return read_quote(quote, say), problems
