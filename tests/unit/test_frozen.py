"""A frozen record behaves in every way as the standard library's own."""

from __future__ import annotations

import copy
import dataclasses
import inspect
from dataclasses import field
from typing import Any

import pytest

from advisor import frozen


def made(decorator: Any) -> type:
    """The same record, made by a decorator."""

    class Cloth:
        """A cloth."""

        name: str
        weight: float = 100.0
        fibres: list[str] = field(default_factory=list)
        note: str = field(default="", compare=False, repr=False)
        words: int = field(init=False, default=7)

        def __post_init__(self) -> None:
            if self.weight < 0:
                raise ValueError(self.name)

    found: type = decorator(frozen=True, slots=True)(Cloth)
    return found


OURS, THEIRS = made(frozen.dataclass), made(dataclasses.dataclass)


def both(*given: Any, **named: Any) -> tuple[Any, Any]:
    """One record of each, of the same values."""
    return OURS(*given, **named), THEIRS(*given, **named)


@pytest.mark.parametrize("given", [("lawn",), ("lawn", 80.0), ("lawn", 80.0, ["cotton"], "hers")])
def test_it_holds_and_shows_the_same(given: tuple[Any, ...]) -> None:
    """Fields, defaults and words."""
    ours, theirs = both(*given)
    assert dataclasses.asdict(theirs) == dataclasses.asdict(ours)
    assert repr(theirs) == repr(ours)
    assert not hasattr(ours, "__dict__")


def test_it_is_compared_and_hashed_the_same() -> None:
    """By the fields that are compared; never equal to another kind of record."""
    for kind in (OURS, THEIRS):
        one, other = kind("lawn", fibres=(), note="a"), kind("lawn", fibres=(), note="b")
        assert one == other
        assert hash(one) == hash(("lawn", 100.0, (), 7))
        assert one != kind("voile", fibres=())
    ours, theirs = both("lawn", fibres=())
    assert ours != theirs
    assert hash(ours) == hash(theirs)


def test_a_default_is_made_anew_for_each() -> None:
    """No list is shared."""
    assert OURS("lawn").fibres is not OURS("lawn").fibres


def test_nothing_of_it_can_be_changed() -> None:
    """Nor taken away, nor added."""
    for one in both("lawn"):
        with pytest.raises(dataclasses.FrozenInstanceError):
            one.name = "voile"
        with pytest.raises(dataclasses.FrozenInstanceError):
            del one.name
    ours, _ = both("lawn")
    with pytest.raises(dataclasses.FrozenInstanceError):
        ours.more = 1


@pytest.mark.parametrize("wrong", [(), ("lawn", 1.0, [], "", 3), ("lawn", -1.0)])
def test_what_the_library_refuses_is_refused(wrong: tuple[Any, ...]) -> None:
    """Too few, too many, and what the record itself refuses."""
    found = []
    for kind in (OURS, THEIRS):
        with pytest.raises((TypeError, ValueError)) as caught:
            kind(*wrong)
        found.append(caught.type)
    assert found[0] is found[1]


def test_it_is_replaced_copied_and_asked_for_its_fields() -> None:
    """As `replace`, `copy`, `fields` and a match know a record."""
    ours, theirs = both("lawn", note="hers")
    changed = dataclasses.replace(ours, weight=70.0)
    assert (changed.weight, changed.note) == (70.0, "hers")
    assert copy.deepcopy(ours) == ours
    assert copy.copy(ours) == ours
    names = [[f.name for f in dataclasses.fields(one)] for one in (ours, theirs)]
    assert names[0] == names[1]
    assert THEIRS.__match_args__ == OURS.__match_args__  # type: ignore[attr-defined]
    taken = [list(inspect.signature(kind).parameters) for kind in (OURS, THEIRS)]
    assert taken[0] == taken[1]


@frozen.dataclass(frozen=True, slots=True)
class Trim:
    """A record with a word of its own for what it is."""

    name: str

    def __hash__(self) -> int:
        return 5


@frozen.dataclass(frozen=True, slots=True)
class Braid(Trim):
    """A record of another, with a field more."""

    width: float = 8.0


def test_its_own_methods_are_kept_and_it_may_be_built_upon() -> None:
    """A hash of its own stays; a record upon it has all fields."""
    assert hash(Trim("soutache")) == 5
    braid = Braid("soutache", 3.0)
    assert (braid.name, braid.width) == ("soutache", 3.0)
    assert copy.deepcopy(braid) == braid


def test_any_other_kind_of_record_is_refused() -> None:
    """What can be changed is the library's."""
    with pytest.raises(TypeError):
        frozen.dataclass(frozen=False, slots=True)
