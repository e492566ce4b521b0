"""How strong a seam is, and how strong its place asks it to be.

Strength (N/cm) = stitches/cm × thread strength (N) × 1.5 for a lockstitch (301), 1.7 for a
two-thread chainstitch (401): a rule of thumb for superimposed woven seams
(`thread-spi-bulletin`, `thread-spi-select`); metric form `derived`. What a place needs is
our own `estimate`. No seam is stronger than its cloth: half the weight of a balanced cloth lies
across the seam, so 1 cm of it is 5 × weight (g/m²) tex, times the tenacity of its fibre (`derived`;
tenacities of textile fibres `morton-hearle-2008`, their figures from `memory`). Slippage of the
yarns gives way sooner still.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Final

from msgspec import Struct

from advisor.craft import checks

SOURCES: Final[tuple[str, ...]] = (
    "thread-spi-bulletin",
    "thread-spi-select",
    "thread-seam-strength-2017",
    "derived",
)
NEED_SOURCES: Final[tuple[str, ...]] = ("estimate",)

STITCH_FACTOR: Final[dict[int, float]] = {301: 1.5, 401: 1.7}
#: Tenacity in N per tex, worked back from the published thread strengths (`derived`).
TENACITY: Final[dict[str, float]] = {"spun polyester": 0.36, "core-spun polyester": 0.48}


#: Tenacity of fibres in N/tex, dry, of the ordinary kinds; the middle of a fibre's grades.
FIBRE_TENACITY: Final[dict[str, float]] = {
    "cotton": 0.32,
    "linen": 0.54,
    "hemp": 0.47,
    "ramie": 0.59,
    "jute": 0.31,
    "silk": 0.38,
    "wool": 0.14,
    "viscose": 0.20,
    "modal": 0.34,
    "lyocell": 0.38,
    "cupro": 0.17,
    "acetate": 0.13,
    "triacetate": 0.12,
    "polyester": 0.47,
    "nylon": 0.47,
    "acrylic": 0.27,
    "modacrylic": 0.22,
    "elastane": 0.07,
}
FIBRE_SOURCES: Final[tuple[str, ...]] = ("morton-hearle-2008", "memory", "derived")


class Stress(StrEnum):
    """How hard a place is pulled in wear."""

    LOW = "low"
    NORMAL = "normal"
    HIGH = "high"


#: N/cm. Estimates only: a hem ruffle; a side seam; a seat, an armhole, a tight low waist.
NEED_N_PER_CM: Final[dict[Stress, float]] = {
    Stress.LOW: 15.0,
    Stress.NORMAL: 35.0,
    Stress.HIGH: 60.0,
}


class SeamStrength(Struct, frozen=True):
    """Strength of a seam in N/cm, and which part of it gives way first."""

    n_per_cm: float
    gives_first: str
    sources: tuple[str, ...] = SOURCES


def thread_strength(tex: float, kind: str) -> float:
    """Breaking strength of a thread in N, tex × tenacity.

    Raises ValueError for a kind whose tenacity is not known: it is not guessed.
    """
    if kind not in TENACITY:
        raise ValueError(f"no tenacity known for {kind!r}; known: {', '.join(TENACITY)}")
    return checks.above("tex", tex) * TENACITY[kind]


def stitches_per_cm(stitch_length_mm: float) -> float:
    """Stitches in a centimetre from the stitch length in mm."""
    return 10.0 / checks.above("stitch length", stitch_length_mm)


def thread_limit(stitches: float, thread: float, stitch: int = 301) -> float:
    """What the thread of a seam holds: stitches × thread strength × factor.

    Any units, the answer in the thread's unit of force over the stitches' unit of length.
    Raises ValueError for a stitch without a published factor.
    """
    if stitch not in STITCH_FACTOR:
        raise ValueError(f"no published strength factor for stitch {stitch}, only 301 and 401")
    per_length = checks.above("stitches per length", stitches)
    return per_length * checks.above("thread strength", thread) * STITCH_FACTOR[stitch]


def seam_strength(
    stitch_length_mm: float,
    needle_n: float,
    under_n: float | None = None,
    *,
    stitch: int = 301,
    cloth_n_per_cm: float | None = None,
) -> SeamStrength:
    """Strength of a seam in N/cm: the weaker thread governs, unless the cloth is weaker.

    `under_n` is the bobbin or looper thread (the same as the needle's when missing);
    `cloth_n_per_cm` the strength of the cloth, or what it bears before its yarns slip.
    """
    under = needle_n if under_n is None else checks.above("strength of the under thread", under_n)
    weaker = min(needle_n, under)
    held = thread_limit(stitches_per_cm(stitch_length_mm), weaker, stitch)
    if cloth_n_per_cm is not None and checks.above("strength of the cloth", cloth_n_per_cm) < held:
        return SeamStrength(cloth_n_per_cm, "cloth")
    return SeamStrength(held, "under thread" if under < needle_n else "thread")


def fibre_tenacity(shares: Mapping[str, float]) -> float | None:
    """Tenacity in N/tex of a mix of fibres (shares of 1); None where one of them is not known.

    The mean by shares, which a yarn of unlike fibres does not even reach.
    """
    if not shares or any(fibre not in FIBRE_TENACITY for fibre in shares):
        return None
    whole = sum(shares.values())
    return sum(FIBRE_TENACITY[fibre] * share for fibre, share in shares.items()) / whole


def cloth_limit(weight_g_m2: float, tenacity_n_tex: float) -> float:
    """The very most that one ply of a cloth holds across a seam, N/cm: 5 × weight × tenacity."""
    weight = checks.above("weight", weight_g_m2)
    return weight / 2 * 10 * checks.above("tenacity", tenacity_n_tex)


def needed(stress: Stress, *, moves: bool = False) -> float:
    """What a place asks of its seam in N/cm (estimate).

    `moves` lifts it one step: a low waist seam on the hip is worked at every step and sit.
    """
    steps = list(Stress)
    place = steps.index(stress) + (1 if moves else 0)
    return NEED_N_PER_CM[steps[min(place, len(steps) - 1)]]
