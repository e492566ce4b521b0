"""The form of `glossary.yaml`: what a trade word means, and who says so."""

from __future__ import annotations

from advisor.knowledge.form import Form, Sources, Text, Word


class TermForm(Form):
    """A trade word in plain words."""

    means: Text
    also: tuple[Word, ...] = ()
    see: tuple[Word, ...] = ()
    sources: Sources
