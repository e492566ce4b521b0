"""A task: one step of the order with all that is known of it beyond what the search needs."""

from __future__ import annotations

from msgspec import Struct

from advisor.knowledge.ordering import Operation
from advisor.order.kinds import SeamPlace
from advisor.order.steps import Step


class Task(Struct, frozen=True):
    """One piece of work on something.

    Attributes:
        step: what the search sees: id, words, machine, iron, minutes, customary place.
        operation: its template; None for a step of the maker's own.
        place: the seam that it is about, where it is about one.
        cloths: the cloths and notions that it touches.
        tags: what precedences ask of it (see `schema_order.Tag`).
        how: the setting in a few words, when many steps of one operation are told together.
        needy: of a hot press, the cloth that wants it; `tender` the cloths that cannot bear it.
        meets: of a hot press, the seams in which those meet it.
        glue: of a hot press, how hot it may be where something is fused to its cloth.
        stage: its number among the steps of its place, which stand in this order.
        at_most: the hottest iron that the sheet tells there, °C; None where none is used.
    """

    step: Step
    operation: Operation | None
    place: SeamPlace | None = None
    cloths: tuple[str, ...] = ()
    tags: frozenset[str] = frozenset()
    how: str = ""
    needy: str = ""
    tender: frozenset[str] = frozenset()
    meets: frozenset[str] = frozenset()
    at_most: float | None = None
    stage: int = -1
    glue: str = ""

    @property
    def id(self) -> str:
        """The name of the step."""
        return self.step.id

    @property
    def op(self) -> str:
        """The operation's id; `own` for a step of the maker's."""
        return self.operation.id if self.operation else "own"

    @property
    def hottest(self) -> float:
        """How hot the iron may be set for it, °C: one that starts low may be turned up."""
        start = self.step.iron.temperature_c if self.step.iron else 0.0
        return max(start, self.at_most or 0.0)
