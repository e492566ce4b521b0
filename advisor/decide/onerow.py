"""One row of the list for one notion, whether the project names it or a setting or a method asks.

She buys one length of stay tape, not one for the places that name it and one for those that are
advised it. Another width is another tape.
"""

from __future__ import annotations

from msgspec.structs import replace

from advisor.construction.notionlist import lengths_of
from advisor.decide.kit import Need
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name


def one_row(needs: list[Need], knowledge: Knowledge) -> list[Need]:
    """The needs with what is bought by the length of one notion together, where its first stood."""
    found: list[Need] = []
    for need in needs:
        same = (i for i, other in enumerate(found) if _same(other, need, knowledge))
        i = next(same, None)
        if i is None:
            found.append(need)
        else:
            found[i] = _together(found[i], need, knowledge)
    return found


def _same(one: Need, other: Need, knowledge: Knowledge) -> bool:
    if not (one.cut and other.cut) or one.number is not None or other.number is not None:
        return False
    notion = _notion(one, knowledge)
    wide = {need.width.mm for need in (one, other) if need.width is not None}
    return bool(notion) and notion == _notion(other, knowledge) and len(wide) < 2


def _notion(need: Need, knowledge: Knowledge) -> str:
    """The notion that a row is of, by its id or by one of the names that do alike."""
    if need.word in knowledge.entries:
        return need.word
    named = (knowledge.names.get(plain_name(word)) for word in need.word.split(" or "))
    return next((id_ for id_ in named if id_), "")


def _together(one: Need, other: Need, knowledge: Knowledge) -> Need:
    """Two rows as one, under the name that the project gives it."""
    own = one if one.word in knowledge.entries else other
    every = [(each.number, each.each) for need in (one, other) for each in need.cut]
    cut, whole = lengths_of(every)
    return replace(
        own,
        places=tuple(dict.fromkeys((*one.places, *other.places))),
        length=whole,
        cut=cut,
        ends=max(one.ends, other.ends),
        width=own.width or one.width or other.width,
        instead=one.instead or other.instead,
        refused=one.refused or other.refused,
        tried=one.tried or other.tried,
    )
