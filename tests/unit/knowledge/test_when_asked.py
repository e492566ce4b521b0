"""What is built when it is asked for comes in the order of the data all the same."""

from __future__ import annotations

from typing import Any

from advisor.knowledge.when_asked import WhenAsked


def test_all_of_them_come_in_their_order_and_are_built_once() -> None:
    """Whoever walks over all gets what those had who asked for one, whichever came first."""
    built: list[str] = []

    def make(id_: str, row: dict[str, Any]) -> tuple[str, int]:
        built.append(id_)
        return id_, row["metres"]

    rolls = WhenAsked({"serge": {"metres": 3}, "voile": {"metres": 5}}, make)
    assert ("voile", 5) == rolls["voile"]
    assert [("serge", 3), ("voile", 5)] == list(rolls.values()) == list(rolls.values())
    assert ["voile", "serge"] == built
