"""What is typed to a question and is no cloth: a file, or the question itself in words."""

from __future__ import annotations

import re
from collections.abc import Sequence

from advisor.errors import InputError, Problem, for_shell, shown
from advisor.knowledge.model import Knowledge
from advisor.project.phrases.grounds import find_grounds
from advisor.project.phrases.tokens import words_of

_FILE = re.compile(r"\S\.(?:ya?ml|json|png|jpe?g|gif|pdf|txt|docx?|csv|html?)$", re.IGNORECASE)
_QUESTION = re.compile(
    r"^(?:how|what|which|why|when|where|can|could|should|do|does|is|are)\s", re.IGNORECASE
)


def refuse_no_cloths(arguments: Sequence[str], knowledge: Knowledge) -> None:
    """Refuse a file among the cloths, and a question in words, each with what to type.

    Raises:
        InputError: it is one of these.
    """
    for word in arguments:
        if _FILE.search(word.strip()):
            wrong = f"{shown(word)} is a file, and cloths are asked about by their names"
            project = word.strip().lower().endswith((".yaml", ".yml"))
            sheet = f"`advisor sheet {for_shell(word)}`"
            expected = sheet if project else "a fabric in a few words, such as 'nylon organza'"
            raise InputError(Problem(wrong, None, expected))
    said = " ".join(arguments).strip()
    if not _QUESTION.match(said):
        return
    grounds = find_grounds(words_of(said), knowledge)
    if grounds is None:
        return
    cloth = knowledge.entries[grounds.entry].name
    expected = f"the cloths alone, as in `advisor ask {for_shell(cloth)}`; all is told of them"
    raise InputError(Problem(f"a question in words: {shown(said)}", None, expected))
