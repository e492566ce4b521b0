"""The list of cloths, searched by name, alias, family, structure, trait or fibre."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from advisor.errors import InputError
from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.names import KEPT, plain_name
from advisor.project.phrase import read_phrase
from advisor.project.phrases.tokens import words_of


def search(word: str, knowledge: Knowledge) -> list[tuple[Entry, str]]:
    """The cloths and notions that a word fits, each with what it fits by; names first."""
    hits: dict[str, tuple[Entry, str]] = {}
    for spelt in (plain_name, _bare):
        asked = spelt(word)
        for entry in knowledge.entries.values():
            how = _fit(entry, asked, spelt, knowledge)
            if how is not None:
                hits.setdefault(entry.id, (entry, how))
    if not hits:
        hits = _as_phrase(word, knowledge)
    return sorted(hits.values(), key=lambda hit: (not hit[1].startswith("name"), hit[0].name))


def _as_phrase(word: str, knowledge: Knowledge) -> dict[str, tuple[Entry, str]]:
    """The cloth that some words stand for, with others that their first fibre is sold as."""
    try:
        reading = read_phrase(word, knowledge)
    except InputError:
        return {}
    taken = knowledge.entries[reading.entry]
    hits = {taken.id: (taken, "name: what the words are taken as")}
    for fibre, _ in reading.fibres[:1]:
        sold = f"sold in {knowledge.fibres[fibre].name}"
        for entry in knowledge.entries.values():
            if any(fibre == f for mix in entry.mixes for f, _ in mix):
                hits.setdefault(entry.id, (entry, sold))
    return hits


@lru_cache(maxsize=KEPT)
def _bare(text: str) -> str:
    """A name without the plurals of its words."""
    return " ".join(words_of(text))


def _fit(entry: Entry, word: str, spelt: Callable[[str], str], knowledge: Knowledge) -> str | None:
    if not word or word in spelt(entry.name) or word == spelt(entry.id):
        return "name"
    alias = next((a for a in entry.also if word in spelt(a)), None)
    if alias:
        return f"name: also {alias}"
    if word in map(spelt, (entry.family, entry.structure, entry.weave, entry.kind)):
        return word
    for trait, (_, high) in entry.traits.items():
        words = knowledge.traits[trait]
        if high and word in (trait, f"{trait} {words[high]}"):
            return f"{trait}: {words[high]}"
    fibre = knowledge.fibre_names.get(word)
    if fibre and any(fibre == f for mix in entry.mixes for f, _ in mix):
        return f"sold in {knowledge.fibres[fibre].name}"
    return None
