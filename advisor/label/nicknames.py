"""Names that a project gives its cloths and that no label may take over: they claim another stuff.

The parts of a label are called as the project calls them, and whoever calls an acrylic pile "fur"
would sell it as fur.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from advisor.knowledge.labels import Told
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Cloth
from advisor.project.placing import singular_words

SKINS: Final = frozenset({"fur", "leather", "suede"})
"""Words of stuffs that are no fibre, but the skin of an animal."""


def misnamed(cloths: Iterable[Cloth], knowledge: Knowledge) -> tuple[Told, ...]:
    """For each cloth that is called after a stuff that it does not hold: what to call it."""
    stuffs = SKINS | {fibre.name for fibre in knowledge.fibres.values()}
    return tuple(
        Told(
            f"'{word}' is your own word for what holds no {word}: on the label call that part by "
            "where it lies, as collar or cuff, or by what it is "
            f"({knowledge.entries[cloth.entry].name}).",
            ("derived",),
        )
        for cloth in cloths
        for word in singular_words(cloth.name)
        if word in stuffs and word not in _held(cloth, knowledge)
    )


def _held(cloth: Cloth, knowledge: Knowledge) -> frozenset[str]:
    """The words that are true of what it may be made of: silk of a tussah, nylon of nylon 6."""
    fibres = {fibre for mix in cloth.mixes for fibre, _ in mix}
    skins = SKINS if "leather" in fibres else frozenset()
    return skins.union(*(knowledge.fibres[fibre].name.split() for fibre in fibres))
