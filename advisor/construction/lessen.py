"""What lessens the bulk of a seam, one way each; a remedy tries it on a copy of the garment."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace

from advisor.construction.stack import FOLDED_SEAMS
from advisor.project.garment import Seam

FULLEST = 1.5
"""What gathers are brought down to: the usual fullness of a heavy cloth (`trade-fullness`)."""


def lessened(seam: Seam, how: str, kind: str) -> Seam | None:
    """The seam with its bulk lessened; None where this way has nothing to work on.

    Args:
        seam: the seam as it is.
        how: a key of `WAYS`.
        kind: the kind of seam that was picked.
    """
    return WAYS[how](seam, kind)


def _helped(seam: Seam, help_: str) -> Seam:
    return replace(seam, making=replace(seam.making, helps=seam.making.helps | {help_}))


def _full(seam: Seam) -> bool:
    return any(use.fullness > 1 for use in seam.uses)


def _offset(seam: Seam, _kind: str) -> Seam | None:
    return _helped(seam, "offset") if seam.making.crosses else None


def _open(seam: Seam, _kind: str) -> Seam | None:
    return _helped(seam, "open") if seam.making.crosses else None


def _grade(seam: Seam, _kind: str) -> Seam | None:
    return _helped(seam, "grade") if seam.facts.get("edge") == "hem" else None


def _shim(seam: Seam, _kind: str) -> Seam | None:
    return _helped(seam, "shim")


def _stay(seam: Seam, _kind: str) -> Seam | None:
    return _helped(seam, "stay") if _full(seam) and seam.making.pleats is None else None


def _plain(seam: Seam, kind: str) -> Seam | None:
    """A plain seam instead of one that folds its allowances in."""
    if kind not in FOLDED_SEAMS:
        return None
    return _made(seam, "plain")


def _made(seam: Seam, kind: str) -> Seam:
    """The seam made as another kind, its finish left open."""
    kept = tuple(c for c in seam.choices if c[0] not in ("seam.kind", "seam.finish"))
    facts = {k: v for k, v in seam.facts.items() if k not in ("seam", "finish")}
    return replace(seam, choices=(*kept, ("seam.kind", kind)), facts={**facts, "seam": kind})


def _overlock(seam: Seam, kind: str) -> Seam | None:
    """Joined and trimmed by the overlocker at once, instead of folding the allowances in."""
    if kind not in FOLDED_SEAMS:
        return None
    return _made(seam, "overlocked")


def _less_full(seam: Seam, _kind: str) -> Seam | None:
    """The gathers at what a heavy cloth usually gets."""
    if seam.making.pleats is not None or not any(use.fullness > FULLEST for use in seam.uses):
        return None
    uses = tuple(replace(use, fullness=min(use.fullness, FULLEST)) for use in seam.uses)
    return replace(seam, uses=uses)


WAYS: dict[str, Callable[[Seam, str], Seam | None]] = {
    "offset": _offset,
    "open": _open,
    "grade": _grade,
    "shim": _shim,
    "stay": _stay,
    "plain": _plain,
    "less full": _less_full,
    "overlock": _overlock,
}
