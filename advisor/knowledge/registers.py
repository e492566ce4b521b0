"""The registers that only some answers need, each built when it is first asked for.

A plain question needs none of them, and building their values would be a good part of its time.
"""

from __future__ import annotations

from functools import cached_property
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from advisor.knowledge.gaps import GapRule
    from advisor.knowledge.glossary import Term
    from advisor.knowledge.labels import LabelKnowledge
    from advisor.knowledge.mine import Mine
    from advisor.knowledge.observations import Observation
    from advisor.knowledge.ordering import OrderKnowledge
    from advisor.knowledge.places import PlaceKnowledge
    from advisor.knowledge.workshop import Workshop


class Registers:
    """Order of work, workshop, labels and observations, from the compiled data."""

    def __init__(self, raw: dict[str, Any]) -> None:
        """`raw` is what `compiling.to_plain` gave."""
        self._raw = raw

    @cached_property
    def order(self) -> OrderKnowledge:
        """Operations, precedences and the price of changes."""
        from advisor.knowledge.ordering import order_from_plain

        return order_from_plain(self._raw.get("order", {}))

    @cached_property
    def places(self) -> PlaceKnowledge:
        """Kinds of place, and the methods by which they are made."""
        from advisor.knowledge.places import places_from_plain

        return places_from_plain(self._raw.get("places", {}))

    @cached_property
    def workshop(self) -> Workshop:
        """Seam classes, and tools that do instead of others."""
        from advisor.knowledge.workshop import workshop_from_plain

        return workshop_from_plain(self._raw.get("workshop", {}))

    @cached_property
    def glossary(self) -> dict[str, Term]:
        """Trade words and what they mean."""
        from advisor.knowledge.glossary import glossary_from_plain

        return glossary_from_plain(self._raw.get("glossary", {}))

    @cached_property
    def gaps(self) -> tuple[GapRule, ...]:
        """What a garment file may have forgotten, the gravest first."""
        from advisor.knowledge.gaps import gaps_from_plain

        return gaps_from_plain(self._raw.get("gaps", {}))

    @cached_property
    def labels(self) -> LabelKnowledge:
        """What markets ask of a label, and what fibres bear in cleaning."""
        from advisor.knowledge.labels import labels_from_plain

        return labels_from_plain(self._raw.get("labels", {}))

    @cached_property
    def observations(self) -> dict[str, Observation]:
        """What can be seen of a cloth of unknown fibre."""
        from advisor.knowledge.observations import observation_from

        rows = self._raw.get("observations", {})
        return {id_: observation_from(id_, row) for id_, row in rows.items()}

    @cached_property
    def mine(self) -> Mine:
        """The maker's own rack and prices."""
        from advisor.knowledge.mine import Mine
        from advisor.records import from_data

        return from_data(Mine, self._raw.get("mine", {}))
