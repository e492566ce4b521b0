"""What a maker is told of a result that she has just written: how far it counts."""

from __future__ import annotations

from typing import Any

from advisor.answer import wording
from advisor.claims.valuesets import Choice, Span
from advisor.decide.evaluate import judge
from advisor.knowledge.model import Knowledge
from advisor.project.garment import Garment, Seam, Use
from advisor.project.phrase import make_cloth
from advisor.units import System


def not_used(entry_id: str, good: dict[str, Any], knowledge: Knowledge, units: System) -> list[str]:
    """Settings that were good but lie beyond a limit, each with who sets it.

    Args:
        entry_id: her cloth.
        good: the settings, as they stand in the file.
        knowledge: with the cloth and its results in it.
        units: how the limit is printed.
    """
    entry = knowledge.entries[entry_id]
    cloth = make_cloth(entry.id, entry, (), None)
    place = Seam(entry.id, (Use(entry.id), Use(entry.id)))
    judgement = judge(Garment(entry.id, {entry.id: cloth}, (place,), single=True), knowledge)
    lines = []
    for by_aspect in judgement.verdicts.values():
        for aspect, value in good.items():
            verdict = by_aspect.get(aspect)
            if verdict is None:
                continue
            about = knowledge.aspects[aspect]
            at = value if isinstance(value, float) else float(about.words.index(str(value)))
            allowed = verdict.allowed
            inside = int(at) in allowed if isinstance(allowed, Choice) else _holds(allowed, at)
            if not inside:
                text = wording.verdict_text(verdict, units)
                lines.append(
                    f"{aspect}: kept, but not used, for it is beyond a limit ({text}). A written "
                    "--reason would use it, and stand on every sheet."
                )
    return list(dict.fromkeys(lines))


def _holds(span: Span, value: float) -> bool:
    return span.low <= value <= span.high
