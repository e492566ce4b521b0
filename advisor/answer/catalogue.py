"""The list of cloths, searched by name, alias, family, structure, trait or fibre."""

from __future__ import annotations

from advisor.knowledge.model import Entry, Knowledge
from advisor.knowledge.names import plain_name
from advisor.project.phrases.tokens import words_of


def search(word: str, knowledge: Knowledge) -> list[tuple[Entry, str]]:
    """The cloths and notions that a word fits, each with what it fits by; names first."""
    hits: list[tuple[Entry, str]] = []
    for plain in dict.fromkeys((plain_name(word), " ".join(words_of(word)))):
        found = [(entry, _fit(entry, plain, knowledge)) for entry in knowledge.entries.values()]
        hits = hits or [(entry, how) for entry, how in found if how is not None]
    return sorted(hits, key=lambda hit: (not hit[1].startswith("name"), hit[0].name))


def _fit(entry: Entry, word: str, knowledge: Knowledge) -> str | None:
    if not word or word in plain_name(entry.name) or word == plain_name(entry.id):
        return "name"
    alias = next((a for a in entry.also if word in plain_name(a)), None)
    if alias:
        return f"name: also {alias}"
    if word in map(plain_name, (entry.family, entry.structure, entry.weave, entry.kind)):
        return word
    for trait, (_, high) in entry.traits.items():
        words = knowledge.traits[trait]
        if high and word in (trait, f"{trait} {words[high]}"):
            return f"{trait}: {words[high]}"
    fibre = knowledge.fibre_names.get(word)
    if fibre and any(fibre == f for mix in entry.mixes for f, _ in mix):
        return f"sold in {knowledge.fibres[fibre].name}"
    return None
