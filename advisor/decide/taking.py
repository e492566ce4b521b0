"""Which remedies the maker means by what she types, and whether they may be taken together."""

from __future__ import annotations

import re

from advisor.claims.judgement import Advice
from advisor.decide.together import Pick, Together, cure_all, taken_together
from advisor.errors import InputError, Problem
from advisor.knowledge.model import Knowledge

ALL = "all"
_WORD = re.compile(r"(\d{1,4})(?:\.(\d{1,4}))?")


def chosen(advice: Advice, words: str, knowledge: Knowledge) -> Together:
    """The remedies that some words name, proved together.

    Args:
        advice: the garment with its conflicts and their cures.
        words: `2`, `1,3` or `1.2,3` (the second remedy of the first conflict), or `all`.
        knowledge: what the garment is judged by.

    Raises:
        InputError: there is no such conflict or remedy, or they do not cure together.
    """
    if not advice.judgement.conflicts:
        raise InputError(
            "this project has no conflict that a remedy cures, so there is nothing to take; what "
            "clashes in the order of work is changed in the file"
        )
    if words.strip().casefold() == ALL:
        found = cure_all(advice, knowledge)
        if found is None:
            raise InputError(
                Problem(
                    "no set of remedies that we know leaves no conflict; nothing is written",
                    None,
                    "the number of one conflict",
                )
            )
        return found
    picks = _picks(advice, words)
    found = taken_together(advice, picks, knowledge)
    if found is None:
        raise InputError(
            Problem(
                "these remedies spoil each other's cure; nothing is written",
                None,
                "one of them at a time",
            )
        )
    return found


def _picks(advice: Advice, words: str) -> list[Pick]:
    """The numbers of conflicts and remedies, each of them there."""
    picks: dict[int, int] = {}
    for word in words.split(","):
        match = _WORD.fullmatch(word.strip())
        if match is None:
            raise InputError(
                Problem(f"'{word.strip()}' is no number of a conflict", None, "2, 1,3, 1.2 or all")
            )
        number, which = int(match[1]), int(match[2] or 1)
        conflicts = advice.judgement.conflicts
        if not 1 <= number <= len(conflicts):
            raise InputError(
                Problem(f"there is no conflict {number}", None, f"1 to {len(conflicts)}")
            )
        offered = advice.cures.get(conflicts[number - 1].key, ())
        if not offered:
            raise InputError(f"no remedy that we know cures conflict {number}; change a cloth")
        if not 1 <= which <= len(offered):
            raise InputError(
                Problem(f"conflict {number} has no remedy {which}", None, f"1 to {len(offered)}")
            )
        if number in picks:
            raise InputError(f"conflict {number} is named twice")
        picks[number] = which
    return sorted(picks.items())
