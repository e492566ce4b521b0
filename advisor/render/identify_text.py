"""What is told of a cloth of unknown fibre, as lines."""

from __future__ import annotations

from advisor.answer.model.identified import Identified, ToldFibre, ToldFinding, ToldTrial
from advisor.answer.wording import degrees, no_iron
from advisor.render.layout import heading, row, wrap

THREADS = {"": "the cloth", "warp": "the warp", "weft": "the weft"}
CAVEAT = (
    "Blends, dyes and finishes mislead: burn warp and weft apart, and believe two tests that agree "
    "before you believe one."
)
SAME = (
    "Nothing that is safe at a table parts these; handle the cloth as the tenderest of them, or "
    "ask a laboratory."
)


def render(told: Identified) -> str:
    """The answer as text: what remains, why, and what to try next."""
    lines: list[str] = heading("What it may be made of", 1)
    one = len(told.threads) == 1
    for part in told.threads:
        lines += _verdict_lines(part, one=one)
    limit = iron_limit(told)
    if limit:
        tender = "as the tenderest that remains wants it"
        lines += ["", *wrap(f"Until you know more: {limit}, {tender}.")]
    for part in told.threads:
        lines += _evidence_lines(part, one=one)
    if told.cautions:
        lines += heading("Take care")
        for caution in told.cautions:
            lines += row(caution.kind, caution.text, 2, 9)
    lines += ["", *wrap(CAVEAT)]
    if told.sources:
        lines += heading("Sources")
        lines += [x for s in told.sources for x in wrap(f"{s.citation} ({s.kind})", "  ", "    ")]
    return "\n".join(lines) + "\n"


def iron_limit(told: Identified) -> str:
    """What the iron may do until more is known; "" where nothing remains that could tell."""
    if told.iron_limit_c is None:
        return ""
    if no_iron(told.iron_limit_c):
        return "no iron at all"
    return f"no iron above {degrees(told.iron_limit_c, told.units)}"


def _verdict_lines(part: ToldFinding, *, one: bool) -> list[str]:
    """What it may be."""
    lines = [] if one else heading(THREADS[part.name])
    if part.blend:
        lines += wrap(f"The label's {part.mix} explains all of it.", "  ")
    elif part.contradiction:
        lines += _contradiction(part)
    else:
        lines += wrap(_remain_text(part.remain), "  ")
    return lines


def _evidence_lines(part: ToldFinding, *, one: bool) -> list[str]:
    """What it rests on, and what would tell more."""
    lines = heading("Because" if one else f"{THREADS[part.name]}: because") if part.saw else [""]
    for seen in part.saw:
        hint = f" {seen.note}" if seen.note else ""
        lines += wrap(f"{seen.title}: {seen.answer}.{hint}", "  saw  ")
    weak = [fibre.name for fibre in part.ruled_out if fibre.memory_only]
    if weak:
        lines += wrap(f"On memory alone are ruled out: {', '.join(weak)}.", "  ")
    further = _next_lines(part)
    return lines + (heading("Try next") + further if further else [])


def _contradiction(part: ToldFinding) -> list[str]:
    said = " and ".join(f"'{s.answer}' ({s.title})" for s in part.contradiction)
    text = (
        f"These contradict each other: {said}. No one fibre does both, so it is a blend, or a "
        "finish or a slip misleads. Look at warp and weft apart, then try again."
    )
    lines = wrap(text, "  ")
    if 0 < len(part.blends) <= 12:
        lines += wrap(f"Together these would explain it: {'; '.join(part.blends)}.", "  ")
    return lines


def _remain_text(remain: tuple[ToldFibre, ...]) -> str:
    if len(remain) == 1:
        return f"Only {remain[0].name} remains."
    return f"{len(remain)} remain: {_names(remain)}."


def _names(remain: tuple[ToldFibre, ...]) -> str:
    """The fibres, those of one kind together."""
    groups: dict[str, list[str]] = {}
    for fibre in remain:
        groups.setdefault(fibre.group, []).append(fibre.name)
    return "; ".join(", ".join(names) for names in groups.values())


def _next_lines(part: ToldFinding) -> list[str]:
    if part.contradiction or part.blend or len(part.remain) < 2:
        return []
    lines: list[str] = []
    if part.first:
        lines += wrap(part.first, "  first  ")
    if part.next is None:
        return lines + wrap(SAME, "  next  ")
    # What harms nobody stands first, though another test may part more.
    count, label = len(part.remain), "  next  "
    if part.gentler:
        lines += _test_lines(part.gentler, label, count)
        label = "  or, surer but not harmless:  "
    lines += _test_lines(part.next, label, count)
    return lines


def _test_lines(test: ToldTrial, start: str, now: int) -> list[str]:
    most = test.at_most
    gain = f"leaves at most {most} of {now}" if most < now else "may or may not part them"
    lines = wrap(f"{test.ask} {test.how} ({gain})", start, "        ")
    for outcome in test.outcomes:
        names = outcome.names
        more = f" and {len(names) - 6} more" if len(names) > 6 else ""
        lines += wrap(
            f"{' / '.join(outcome.answers)}: {', '.join(names[:6])}{more}",
            "        - ",
            "          ",
        )
    return lines
