"""Short marks for sources: a number each in the order of citing, a letter for the general ones."""

from __future__ import annotations

from typing import Any

from advisor.sheet.layout import heading, wrap

LETTERS = {
    "common-practice": ("c", "common practice of the trade"),
    "derived": ("d", "follows by arithmetic or logic from other values"),
    "memory": ("m", "from memory, not seen in a text"),
    "estimate": ("e", "our own estimate"),
    "design-choice": ("e", "our own estimate"),
}
_WEAK = frozenset({"memory", "estimate"})
_KINDS = {"trade-page": "trade page", "trade-journal": "trade journal"}


class Numbers:
    """The marks of one sheet."""

    def __init__(self, report: dict[str, Any], *, reasons: bool = False) -> None:
        self.reasons = reasons
        self.sources = {s["id"]: s for s in report["sources"]}
        self.used: dict[str, int] = {}
        self.letters: dict[str, str] = {}

    def mark(self, sources: list[str] | tuple[str, ...]) -> str:
        """`[3,7]`; a star where memory or an estimate is all that stands behind it."""
        ids = list(dict.fromkeys(text.split(" ", 1)[0] for text in sources))
        marks = dict.fromkeys(self._one(id_) for id_ in ids)
        star = "*" if ids and all(self.sources[i]["kind"] in _WEAK for i in ids) else ""
        return f"[{','.join(marks)}{star}]" if marks else ""

    def _one(self, id_: str) -> str:
        if id_ in LETTERS:
            letter, meaning = LETTERS[id_]
            self.letters[letter] = meaning
            return letter
        return str(self.used.setdefault(id_, len(self.used) + 1))

    def lines(self) -> list[str]:
        """The list of what the marks stand for."""
        lines = heading("On whose word")
        parts = [f"{n} {self._cite(id_)}" for id_, n in self.used.items()]
        parts += [f"{letter} {meaning}" for letter, meaning in sorted(self.letters.items())]
        lines += wrap(" · ".join(parts), "  ", "  ")
        if {"m", "e"} & set(self.letters):
            lines += wrap("* only memory or an estimate: test before you trust it.", "  ")
        return lines

    def _cite(self, id_: str) -> str:
        source = self.sources[id_]
        kind = _KINDS.get(source["kind"], source["kind"])
        seen = f", {source['read']}" if source.get("read") else ""
        return f"{source['citation']} ({kind}{seen})"
