"""A small vocabulary of acts, read from the words of a line, and where a verdict forbids them.

It knows nothing of `told where`: it reads what a maker would read, a line and the verdicts of the
place beside each other. What is forbidden, done elsewhere or only spoken of counts as no act.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from advisor.claims.combine import Verdict
from advisor.claims.valuesets import Choice, Span

Verdicts = dict[str, Verdict]
SENTENCE = re.compile(r"[;:.]")
CLAUSE = re.compile(r",| and | then | or (?=[a-z]+ )")
ELSEWHERE = re.compile(r"\b(before|other cloths?|flat (cloth|pieces)|if|where)\b")
"""What makes of a sentence something that is done to another cloth, or earlier, or perhaps."""
NOT = re.compile(r"\b(never|not|no|instead|would)\b")
"""What makes of a clause something that is not done."""


def _picked(verdicts: Verdicts, aspect: str) -> set[str]:
    """What a maker reads of options: the pick, or all that are left where several serve."""
    verdict = verdicts.get(aspect)
    if verdict is None or not isinstance(verdict.advised, Choice):
        return set()
    words = verdict.aspect.words
    if verdict.pick is not None and not verdict.aspect.several:
        return {words[int(verdict.pick)]}
    return {words[i] for i in verdict.advised.options()}


def _most(verdicts: Verdicts, aspect: str) -> float:
    verdict = verdicts.get(aspect)
    if verdict is None or not isinstance(verdict.advised, Span):
        return 1e9
    return verdict.advised.high


def _no_iron(v: Verdicts) -> bool:
    return _most(v, "press.temperature") < 108 or _picked(v, "press.motion") == {"finger-press"}


def _no_steam(v: Verdicts) -> bool:
    """A length may be steamed by itself before it is cut, though no seam of it is."""
    steamed = "steam" in _picked(v, "prepare.preshrink")
    return _most(v, "press.moisture") < 2 and not steamed


def _no_damp(v: Verdicts) -> bool:
    return _no_iron(v) or _most(v, "press.moisture") < 1


def _no_pins(v: Verdicts) -> bool:
    return _most(v, "pin.place") < 1 or _picked(v, "pin.kind") in (
        {"sewing clips"},
        {"hand basting"},
    )


def _no_fusible(v: Verdicts) -> bool:
    left = _picked(v, "interfacing.kind")
    return bool(left) and not any("fusible" in word for word in left)


def _avoided(word: str) -> Callable[[Verdicts], bool]:
    def test(v: Verdicts) -> bool:
        verdict = v.get("design.avoids")
        if verdict is None or not isinstance(verdict.advised, Choice):
            return False
        return verdict.aspect.words.index(word) not in verdict.advised

    return test


def _no_buttonhole(v: Verdicts) -> bool:
    left = _picked(v, "closure.kind")
    closed = bool(left) and "machine buttonholes" not in left
    return closed or _avoided("machine buttonholes")(v)


def _by_hand(v: Verdicts) -> bool:
    return _picked(v, "stitch.type") == {"hand"} or ("machine.foot" not in v and "seam.kind" in v)


ACTS: dict[str, tuple[re.Pattern[str], Callable[[Verdicts], bool]]] = {
    "iron": (
        re.compile(r"^(press|iron(?! burn)|touch .* iron|lift the iron|begin with the iron)\b"),
        _no_iron,
    ),
    "steam": (
        re.compile(r"^(steam (a|the|it)|hover|hold(ing)? steam|(lift|take) .*by (holding )?steam)"),
        _no_steam,
    ),
    "damp": (
        re.compile(r"\bdamp press|through a (barely )?damp cloth|cloth that is barely damp"),
        _no_damp,
    ),
    "pin": (
        re.compile(r"^(only then )?(pin|set pins|turn each pin|take (every|the) pins?)\b"),
        _no_pins,
    ),
    "fusible": (
        re.compile(r"^(fuse|cut the fusible|choose a fusible|try the fusible)\b"),
        _no_fusible,
    ),
    "buttonhole": (
        re.compile(r"^(work (a )?buttonholes?|put .* behind each .*buttonhole)"),
        _no_buttonhole,
    ),
    "pressed pleats": (re.compile(r"^(press|fold) .*\bpleats?\b"), _avoided("pressed pleats")),
    "soft pleats": (
        re.compile(r"^(fold|lay) .*\bpleats?\b|\bpleats fall soft\b"),
        _avoided("soft pleats"),
    ),
    "gathers": (re.compile(r"^(or )?gather\b"), _avoided("gathers")),
    "machine": (
        re.compile(
            r"differential feed|plate\b|\b(hand ?wheel|turn the wheel|bobbin)\b"
            r"|(needle|looper)s? (that )?(strikes?|breaks?|knocks?)"
        ),
        _by_hand,
    ),
}
"""An act, the words at the start of a clause that ask for it, and where nobody may."""


def acts(line: str) -> set[str]:
    """What a line asks for."""
    found = set()
    spoken = [s for s in SENTENCE.split(line.lower()) if not ELSEWHERE.search(s)]
    for clause in (c.strip() for sentence in spoken for c in CLAUSE.split(sentence)):
        words = "" if NOT.search(clause) else clause
        found |= {name for name, (pattern, _) in ACTS.items() if pattern.search(words)}
    return found


def forbidden(line: str, verdicts: Verdicts) -> set[str]:
    """The acts of a line that its place does not allow."""
    return {name for name in acts(line) if ACTS[name][1](verdicts)}
