"""What a maker calls an answer besides its name here, and the key that a word was meant for."""

from __future__ import annotations

from collections.abc import Mapping

from advisor.errors import InputError, Problem
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name

SAME_WORDS: Mapping[str, Mapping[str, str]] = {
    "stitch": {
        "straight": "301",
        "straight stitch": "301",
        "lockstitch": "301",
        "zigzag": "304",
        "zig-zag": "304",
        "zigzag stitch": "304",
        "three-step": "308",
        "stretch stitch": "straight stretch",
        "chainstitch": "401",
        "overlock": "514",
        "overlocked": "514",
        "serged": "514",
        "3-thread overlock": "504",
        "4-thread overlock": "514",
        "5-thread overlock": "516",
    },
    "seam": {
        "plain seam": "plain",
        "french seam": "French",
        "mock french seam": "mock French",
        "felled seam": "felled",
        "flat felled": "felled",
        "flat-felled": "felled",
        "flat felled seam": "felled",
        "flat-felled seam": "felled",
        "run and fell": "felled",
        "lapped seam": "lapped",
        "double stitched": "double-stitched",
        "double-stitched seam": "double-stitched",
        "overlocked seam": "overlocked",
        "serged": "overlocked",
    },
    "finish": {
        "overlock": "overlocked",
        "serged": "overlocked",
        "zig-zag": "zigzag",
        "pinked edges": "pinked",
        "hong kong finish": "Hong Kong",
        "bias bound": "bound",
        "turned under": "turned and stitched",
        "overcast by hand": "hand overcast",
        "raw": "none",
        "left raw": "none",
    },
    "shape": {"round": "curved", "curve": "curved"},
    "worn by": {"me": "adult", "myself": "adult", "a child": "child"},
}
"""By key, what its words are called as well (common practice); an overlocker mostly has four
threads."""


def with_meant_key(error: InputError, key: str, text: str, knowledge: Knowledge) -> InputError:
    """A refusal that names the key by which a word would have been understood, if there is one."""
    meant = next((k for k, words in _words(knowledge) if k != key and text in words), None)
    if key == "needle" and text.removeprefix("nm").strip().replace("/", "").isdigit():
        meant = "needle size"
    if meant is None:
        return error
    problem = error.problems[0]
    expected = f"'{meant}: {text}', for it is a word of that key, or {problem.expected}"
    return InputError(Problem(problem.message, problem.where, expected))


def _words(knowledge: Knowledge) -> list[tuple[str, frozenset[str]]]:
    """By key of a place, the words that it takes."""
    from advisor.knowledge.factwords import SEAM_WORDS
    from advisor.project.facts import CHOICES
    from advisor.project.kindwords import known_kinds

    methods = (method.name for method in knowledge.places.methods.values())
    found = [("kind", known_kinds(knowledge)), ("method", tuple(methods)), *SEAM_WORDS.items()]
    found += [(key, knowledge.aspects[id_].words) for key, id_ in CHOICES.items()]
    return [(key, frozenset(map(plain_name, words))) for key, words in found]
