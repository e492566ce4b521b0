"""The sets that claims speak of, and how two of them meet.

Two kinds: a `Span` of numbers (a range, or the places of words on a scale) and a `Choice` of
options (a bit mask). Both are meet-semilattices under `&`: the order in which sets meet does not
matter, a set met with itself is itself, and meeting never widens. There is nothing else.
"""

from __future__ import annotations

from msgspec import Struct


class Span(Struct, frozen=True):
    """The numbers from `low` to `high`, both included; empty where low is above high."""

    low: float
    high: float

    @staticmethod
    def between(low: float, high: float) -> Span:
        """The span from low to high."""
        return Span(low, high)

    @property
    def is_empty(self) -> bool:
        """Whether nothing is in it."""
        return self.low > self.high

    def __and__(self, other: Span) -> Span:
        """What is in both."""
        return Span(max(self.low, other.low), min(self.high, other.high))

    def __le__(self, other: Span) -> bool:
        """Whether everything in it is in the other."""
        return self.is_empty or (other.low <= self.low and self.high <= other.high)

    def __contains__(self, value: object) -> bool:
        return isinstance(value, int | float) and self.low <= value <= self.high


class Choice(Struct, frozen=True):
    """A set of options by their numbers, as a bit mask."""

    mask: int

    @staticmethod
    def one_of(*options: int) -> Choice:
        """The set of the options with these numbers."""
        return Choice(sum(1 << option for option in set(options)))

    @staticmethod
    def full(count: int) -> Choice:
        """All of `count` options."""
        return Choice((1 << count) - 1)

    @property
    def is_empty(self) -> bool:
        """Whether no option is left."""
        return self.mask == 0

    def __and__(self, other: Choice) -> Choice:
        """What is in both."""
        return Choice(self.mask & other.mask)

    def __le__(self, other: Choice) -> bool:
        """Whether everything in it is in the other."""
        return self.mask & ~other.mask == 0

    def __contains__(self, option: object) -> bool:
        return isinstance(option, int) and option >= 0 and bool(self.mask >> option & 1)

    def options(self) -> tuple[int, ...]:
        """The numbers of its options, in the order of preference."""
        return tuple(i for i in range(self.mask.bit_length()) if self.mask >> i & 1)
