"""The forms of `seams.yaml` (classes of the standards) and `kit.yaml` (what does instead)."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from advisor.knowledge.schema import Form, Sources, Text, Word


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
    """A tool that an answer calls for."""

    aspect: Word
    word: Word
    name: Word
    instead: Annotated[tuple[SubstituteForm, ...], Field(min_length=1)]
