"""The closed vocabulary of conditions: how a rule's `when` is read and compiled.

A condition becomes a small tree of lists that JSON can hold and the engine can test:
`["all", …]`, `["any", …]`, `["not", c]`, `["trait", name, low, high]`,
`["word", fact, [words]]`, `["number", fact, low, high, low_open, high_open]`,
`["fibre", [ids], "any" | "mostly" | "only"]`, `["group", [groups]]`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any, get_args

from advisor.knowledge import schema
from advisor.knowledge.factwords import CLOTH_WORDS, SEAM_WORDS, WEARERS, YES_NO

Fail = Callable[[tuple[Any, ...], str, Iterable[str]], None]
"""Reports a problem: the path inside the condition, what is wrong, and the words known there."""

LAYER_WORDS: dict[str, tuple[str, ...]] = {
    "structure": get_args(schema.Structure),
    "kind": ("cloth", *get_args(schema.NotionKind)),
    "fibre known": YES_NO,
    "main fibre known": YES_NO,
    **CLOTH_WORDS,
    "trims": YES_NO,
}
LAYER_NUMBERS = ("weight", "thickness", "fullness", "stretched")
SEAM_SAID: dict[str, tuple[str, ...]] = {
    "allowance given": YES_NO,
    "carries weight": YES_NO,
    "laid in pleats": YES_NO,
    "facing seen": YES_NO,
    "fastening": (
        *("button", "buttonhole", "loop", "toggle", "hook"),
        *("snap", "clasp", "buckle", "zip", "ties"),
    ),
    "backed": YES_NO,
    "lies flat": YES_NO,
    "may be pleated": YES_NO,
    "sleeve head": YES_NO,
    "line on the bias": YES_NO,
    "comes to a point": YES_NO,
    "at hood or neck": YES_NO,
    "beside a velvet": YES_NO,
    "hangs from nothing": YES_NO,
    "holds a cord": YES_NO,
    "holds a pocket": YES_NO,
    "closes a tube": YES_NO,
    "closes the seat": YES_NO,
    "through loops": YES_NO,
    "ends hang free": YES_NO,
    "over a lining": YES_NO,
}
"""What follows from a project's silence, its stress and the kind and name of a place.

Of these nobody writes any but the fastening.
"""
SEAM_NUMBERS = ("plies", "length", "allowance", "layers")
MAKER_WORDS: dict[str, tuple[str, ...]] = {
    "machine": ("household", "industrial", "hand"),
    "overlocker": YES_NO,
    "worn by": WEARERS,
    "outer garment": YES_NO,
    "hooded": YES_NO,
    "has shoulders": YES_NO,
    "has sleeves": YES_NO,
    "hangs from shoulders": YES_NO,
    "sheer body": YES_NO,
}
ROLES = ("layer", "pair", "every", "some", "seam", "maker", "garment pair")

_NUMBER = re.compile(
    r"^(?:(at least|at most|over|under)\s+)?(\d+(?:\.\d+)?)(?:\s+to\s+(\d+(?:\.\d+)?))?$"
)
_FAR = 1e9


def number_test(text: str) -> tuple[float, float, bool, bool] | None:
    """Read `under 90`, `at least 300`, `90 to 150` or `4`; None when it is none of them."""
    found = _NUMBER.match(text.strip())
    if found is None:
        return None
    how, first, last = found.group(1), float(found.group(2)), found.group(3)
    if last is not None:
        return None if how else (first, float(last), False, False)
    return {
        "at least": (first, _FAR, False, False),
        "at most": (-_FAR, first, False, False),
        "over": (first, _FAR, True, False),
        "under": (-_FAR, first, False, True),
        None: (first, first, False, False),
    }[how]


class Reader:
    """Compiles conditions against the vocabulary of one knowledge base."""

    def __init__(
        self,
        traits: dict[str, tuple[str, ...]],
        fibres: Iterable[str],
        entries: Iterable[str],
        weaves: Iterable[str],
        options: dict[str, tuple[str, ...]],
        places: Iterable[str] = (),
    ) -> None:
        self.traits = traits
        self.fibres = tuple(fibres)
        self.groups: tuple[str, ...] = get_args(schema.FibreGroup)
        self.layer_words = LAYER_WORDS | {
            "weave": tuple(weaves),
            "family": get_args(schema.Family),
            "fabric": tuple(entries),
            "notion": tuple(entries),
        }
        self.seam_words = {
            **SEAM_WORDS,
            "finish": options.get("seam.finish", ()),
            "seam": options.get("seam.kind", ()),
            **SEAM_SAID,
            "place": tuple(places),
        }

    def layer(self, raw: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        """Compile a condition about one layer."""
        return self._tree(raw, path, fail, self._layer_leaf)

    def seam(self, raw: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        """Compile a condition about a seam."""
        return self._tree(raw, path, fail, self._seam_leaf)

    def maker(self, raw: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        """Compile a condition about the maker's machine."""

        def leaf(key: str, value: Any, here: tuple[Any, ...]) -> list[Any]:
            if key not in MAKER_WORDS:
                fail(here, f"unknown fact '{key}' of the maker", MAKER_WORDS)
                return ["all"]
            return self._words(key, value, MAKER_WORDS[key], here, fail)

        return self._tree(raw, path, fail, lambda k, v, h, _: leaf(k, v, h))

    def _tree(self, raw: Any, path: tuple[Any, ...], fail: Fail, leaf: Any) -> list[Any]:
        if not isinstance(raw, dict) or not raw:
            fail(path, "a condition is a mapping of facts to tests", ())
            return ["all"]
        parts: list[Any] = []
        for key, value in raw.items():
            here = (*path, key)
            if key in ("all", "any"):
                if not isinstance(value, list) or not value:
                    fail(here, f"`{key}` takes a list of conditions", ())
                    continue
                inner = [self._tree(v, (*here, i), fail, leaf) for i, v in enumerate(value)]
                parts.append([key, *inner])
            elif key == "not":
                parts.append(["not", self._tree(value, here, fail, leaf)])
            else:
                parts.append(leaf(key, value, here, fail))
        return parts[0] if len(parts) == 1 else ["all", *parts]

    def _layer_leaf(self, key: str, value: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        if key in self.traits:
            return self._trait(key, value, path, fail)
        if key in ("fibre", "mostly", "only"):
            how = "any" if key == "fibre" else key
            words = self._words(key, value, self.fibres, path, fail)[2]
            return ["fibre", words, how]
        if key == "fibre group":
            return ["group", self._words(key, value, self.groups, path, fail)[2]]
        if key in self.layer_words:
            return self._words(key, value, self.layer_words[key], path, fail)
        if key in LAYER_NUMBERS:
            return self._number(key, value, path, fail)
        known = (
            *self.traits,
            *self.layer_words,
            *LAYER_NUMBERS,
            "fibre",
            "mostly",
            "only",
            "fibre group",
            "all",
            "any",
            "not",
        )
        fail(path, f"unknown fact '{key}' of a layer", known)
        return ["all"]

    def _seam_leaf(self, key: str, value: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        if key in self.seam_words:
            return self._words(key, value, self.seam_words[key], path, fail)
        if key in SEAM_NUMBERS:
            return self._number(key, value, path, fail)
        fail(path, f"unknown fact '{key}' of a seam", (*self.seam_words, *SEAM_NUMBERS))
        return ["all"]

    def _trait(self, key: str, value: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        words = self.traits[key]
        text = {True: "yes", False: "no"}.get(value, value) if isinstance(value, bool) else value
        text = str(text)
        last = len(words) - 1
        for prefix in ("at least ", "at most ", ""):
            if text.startswith(prefix):
                word = text[len(prefix) :]
                if word in words:
                    at = words.index(word)
                    low = 0 if prefix == "at most " else at
                    high = last if prefix == "at least " else at
                    return ["trait", key, low, high]
        bare = text.removeprefix("at least ").removeprefix("at most ")
        fail(path, f"'{bare}' is no level of '{key}'", words)
        return ["all"]

    def _words(
        self, key: str, value: Any, known: tuple[str, ...], path: tuple[Any, ...], fail: Fail
    ) -> list[Any]:
        values = value if isinstance(value, list) else [value]
        for word in values:
            if word not in known:
                fail(path, f"'{word}' is not known as '{key}'", known)
        return ["word", key, [str(word) for word in values]]

    def _number(self, key: str, value: Any, path: tuple[Any, ...], fail: Fail) -> list[Any]:
        test = number_test(str(value))
        if test is None:
            fail(path, f"'{value}' is no test of a number: write 'under 90' or '90 to 150'", ())
            return ["all"]
        return ["number", key, *test]
