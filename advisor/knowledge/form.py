"""What every form of a file is made from: a closed model, and the words that it holds.

It stands apart from the forms themselves, so that reading a project makes none of the knowledge's.
"""

from __future__ import annotations

from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

Text = Annotated[str, StringConstraints(min_length=1, max_length=600, strip_whitespace=True)]
Word = Annotated[str, StringConstraints(min_length=1, max_length=80, strip_whitespace=True)]
Id = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
Sources = Annotated[tuple[Word, ...], Field(min_length=1)]


def _spaced(name: str) -> str:
    """A file writes `sold in`; Python needs `sold_in`."""
    return name.rstrip("_").replace("_", " ")


class Form(BaseModel):
    """A closed, frozen form whose keys may have spaces."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", alias_generator=_spaced, populate_by_name=False
    )
