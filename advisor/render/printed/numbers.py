"""Short marks for sources: a number each in the order of citing, a letter for the general ones."""

from __future__ import annotations

from collections.abc import Sequence

from advisor.answer.model.answer import Answer
from advisor.render.layout import WIDTH, heading, wrap

LETTERS = {
    "common-practice": ("c", "common practice of the trade"),
    "derived": ("d", "follows by arithmetic or logic from other values"),
    "memory": ("m", "from memory, not seen in a text"),
    "estimate": ("e", "our own estimate"),
    "design-choice": ("e", "our own estimate"),
    "own-test": ("y", "your own test"),
}
STAR = (
    "* only memory or an estimate, or a danger that no work of good standing was found for: test "
    "before you trust it, and take the danger no less seriously"
)
_UNPROVED = 2  # the first standing that is no published work of good standing
_REMEMBERED = 4  # the standing of memory and estimates, and of a work that is only remembered
_KINDS = {"trade-page": "trade page", "trade-journal": "trade journal"}


class Numbers:
    """The marks of one sheet."""

    def __init__(
        self, report: Answer, *, reasons: bool = False, most: int = 99, short: bool = False
    ) -> None:
        """Prepare to mark.

        Args:
            report: the answer as data; its sources are those that can be cited.
            reasons: whether the sheet prints reasons under its lines.
            most: how many sources a mark names at most, the best first.
            short: whether the list gives ids only; `advisor explain ID` gives the citation.
        """
        self.reasons = reasons
        self.most = most
        self.short = short
        self.sources = {s.id: s for s in report.sources}
        self.used: dict[str, int] = {}
        self.letters: dict[str, str] = {}
        self.starred = False

    def mark(self, sources: Sequence[str], most: int | None = None, *, harm: bool = False) -> str:
        """`[3,7]`; a star where memory or an estimate is all that stands behind it.

        Args:
            sources: ids, each perhaps with its place.
            most: how many to name here, where it is fewer than elsewhere.
            harm: whether it says what can hurt somebody; then what the trade says, without a work
                of good standing behind it, gets the star as well.
        """
        ids = list(dict.fromkeys(text.split(" ", 1)[0] for text in sources))
        best = sorted(ids, key=lambda i: self.sources[i].rank)[: most or self.most]
        marks = dict.fromkeys(self._one(id_) for id_ in ids if id_ in best)
        cited = [self.sources[i] for i in ids]
        weak = all(s.rank >= (_UNPROVED if harm else _REMEMBERED) for s in cited)
        star = "*" if ids and weak else ""
        self.starred = self.starred or bool(star)
        return f"[{','.join(marks)}{star}]" if marks else ""

    def _one(self, id_: str) -> str:
        if id_ in LETTERS:
            letter, meaning = LETTERS[id_]
            self.letters[letter] = meaning
            return letter
        return str(self.used.setdefault(id_, len(self.used) + 1))

    def entries(self) -> list[tuple[str, str, str]]:
        """Each mark, what it stands for, and, where that is only an id, the whole citation."""
        rows = [
            (str(n), self._cite(id_), self._whole(id_) if self.short else "")
            for id_, n in self.used.items()
        ]
        return rows + [(letter, meaning, "") for letter, meaning in sorted(self.letters.items())]

    def lines(self, width: int = WIDTH) -> list[str]:
        """The list of what the marks stand for."""
        lines = heading("On whose word")
        parts = [f"{mark} {text}" for mark, text, _ in self.entries()]
        if self.starred:
            parts.append(STAR)
        if self.short:
            parts.append("`advisor explain` and such a name gives the whole citation")
        return lines + wrap(" · ".join(parts), "  ", "  ", width)

    def _cite(self, id_: str) -> str:
        return id_ if self.short else self._whole(id_)

    def _whole(self, id_: str) -> str:
        source = self.sources[id_]
        kind = _KINDS.get(source.kind, source.kind)
        seen = f", {source.read}" if source.read else ""
        return f"{source.citation} ({kind}{seen})"
