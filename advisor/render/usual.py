"""What most seams of a garment have in common, said once, so that a seam says what is its own.

An answer is usual when every seam has an answer of its kind and more than half have this one.
A seam that differs always says so, even where its own answer would else go without saying.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from advisor.answer.asked import SEWN, unasked
from advisor.answer.model.told import ToldVerdict
from advisor.render.lines import SILENT, Verdicts, is_cold, line_parts, phrase_of

FEWEST = 4
"""With fewer seams than this there is nothing to gather."""
OWN = frozenset(
    {
        "needle.size",
        "needle.point",
        "press.temperature",
        "press.moisture",
        "press.cloth",
    }
)
"""What a seam says itself however many share it: looked up wrong, these spoil cloth."""


def usual_answers(places: Sequence[Verdicts], aspects: Iterable[str]) -> dict[str, str]:
    """The answer that more than half of the places share, by aspect."""
    found: dict[str, str] = {}
    if len(places) < FEWEST:
        return found
    for aspect in aspects:
        # "Every seam" says nothing of pins for a button; of edges it must hold for all of them.
        # Where no iron comes, nothing is said of one: such a place has a press line of its own.
        asked = [v for v in places if aspect not in SEWN or not unasked(v, aspect)]
        if aspect.startswith("press."):
            asked = [v for v in asked if not is_cold(v)]
        texts = [text for text in (_text(v, aspect) for v in asked) if text]
        if aspect in OWN or len(texts) < max(len(asked), 1):
            continue
        text, count = Counter(texts).most_common(1)[0]
        told = any(aspect in v and plain_text(v[aspect]) == text for v in asked)
        if told and 2 * count > len(places):
            found[aspect] = text
    return found


def own_parts(
    verdicts: Verdicts, aspects: Sequence[str], usual: dict[str, str]
) -> list[tuple[str, ToldVerdict | None]]:
    """The phrases of a line that are not the usual ones."""
    parts: list[tuple[str, ToldVerdict | None]] = []
    said = {verdict.aspect: (text, verdict) for text, verdict in line_parts(verdicts, aspects)}
    for aspect in aspects:
        cold = aspect.startswith("press.") and is_cold(verdicts)
        if unasked(verdicts, aspect):
            continue
        if not cold and usual.get(aspect) == _text(verdicts, aspect):
            continue
        if aspect in said:
            parts.append(said[aspect])
        elif aspect in usual and not cold:
            text = _text(verdicts, aspect)
            parts.append((phrase_of(aspect, text), verdicts.get(aspect)))
    return [(text, verdict) for text, verdict in parts if text]


def plain_text(verdict: ToldVerdict) -> str:
    """An answer to compare: of two threads to choose from the order does not matter."""
    text = str(verdict.text)
    return " or ".join(sorted(two_threads(text))) if verdict.aspect == "thread.fibre" else text


def two_threads(text: str) -> list[str]:
    """The first two of a list of threads."""
    return text.replace(" or ", ", ").split(", ")[:2]


def _text(verdicts: Verdicts, aspect: str) -> str:
    """The answer of a place; where nobody has claimed anything, what goes without saying."""
    return plain_text(verdicts[aspect]) if aspect in verdicts else SILENT.get(aspect, "")
