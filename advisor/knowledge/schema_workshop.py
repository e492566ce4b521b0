"""The forms of `seams.yaml` (classes of the standards) and `kit.yaml` (what does instead)."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from advisor.knowledge.form import Form, Sources, Text, Word


class SeamClassForm(Form):
    """A kind of seam in the words of ASTM D6193 and ISO 4916."""

    name: Text
    astm: str = ""
    astm_sources: Sources
    iso: str = ""
    iso_sources: Sources
    note: str = ""


class SubstituteForm(Form):
    """What does instead of a tool."""

    word: str = ""
    text: Text
    sources: Sources


class ToolForm(Form):
    """A tool that an answer calls for by its word, or whatever is told in some words."""

    aspect: Word | None = None
    word: Word | None = None
    name: Word
    instead: tuple[SubstituteForm, ...] = ()
    told_as: tuple[Word, ...] = ()
    """Beginnings of words, by which a step or a line of the sheet asks for it."""
    everyday: Literal["yes", "no"] = "no"
    """Whether it lies in any workroom, so that nobody has to buy it for this garment."""

    @model_validator(mode="after")
    def _asked_for(self) -> Self:
        """An answer asks for it, and something does instead; or a sentence does."""
        by_answer = self.aspect is not None and self.word is not None and bool(self.instead)
        if by_answer == bool(self.told_as):
            raise ValueError("needs `aspect`, `word` and `instead`, or `told as`, and not both")
        return self
