"""Why a step stands where it stands: what holds it, what moving it costs, what became of pins."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from advisor.errors import InputError, Problem, shown
from advisor.records import picked
from advisor.render.layout import wrap

if TYPE_CHECKING:
    from advisor.claims.judgement import Advice
    from advisor.knowledge.model import Knowledge
    from advisor.order.explain import Moved
    from advisor.order.steps import Precedence
    from advisor.order.work import Work

_USUAL = frozenset({"shrink", "test", "cut", "mark", "stay-stitch"})


def why_order(advice: Advice, step: str, knowledge: Knowledge) -> dict[str, Any]:
    """What is to be said about the place of a step, as data.

    Raises:
        InputError: no such step; with the nearest names.
    """
    from advisor.order.work import order_of

    work = order_of(advice, knowledge)
    numbered = sorted(work.order, key=work.numbers.__getitem__)
    step = _typed(step, {name: work.tasks[name].step.does for name in numbered})
    order = list(work.order)
    after = [p for items in work.reasons.values() for p in items if p.before == step]
    after.sort(key=lambda p: order.index(p.after))
    return {
        "schema": "advisor.answer/1",
        "garment": advice.judgement.garment.name,
        "step": step,
        "does": work.tasks[step].step.does,
        "place": work.numbers[step],
        "of": len(order),
        "after": [_link(p, knowledge) for p in work.reasons.get(step, ())],
        "before": [_link(p, knowledge) for p in after],
        "and_after": _by_why(work, step),
        "forced_before": list(work.graph.forced_before(step)),
        "forced_after": list(work.graph.forced_after(step)),
        "given_up": [_link(p, knowledge) for p in work.given_up if step in (p.before, p.after)],
        "moves": [] if step in work.done else _moves(work, step),
        "pins": [
            {
                "honoured": not a.forbidden_by and not a.remark,
                "remark": a.remark,
                "forbidden_by": [_link(p, knowledge) for p in a.forbidden_by],
            }
            for a in work.pins
            if a.pin.step == step
        ],
    }


def _typed(word: str, steps: dict[str, str]) -> str:
    """The one step that was typed, by number, name or words."""
    from advisor.render.typed_steps import steps_named

    found = steps_named([word], steps)
    if len(found) > 1:
        raise InputError(Problem(f"{shown(word)} are several steps", None, "one of them"))
    return found[0]


def _by_why(work: Work, step: str) -> list[dict[str, Any]]:
    """Direct reasons that follow from others as well, those of the same words together."""
    told = work.reasons.get(step, ())
    groups: dict[str, list[str]] = {}
    for item in work.graph.precedences:
        if item.after == step and item not in told and work.tasks[item.before].op not in _USUAL:
            groups.setdefault(item.why, []).append(item.before)
    return [{"steps": list(dict.fromkeys(names)), "why": why} for why, names in groups.items()]


def _link(item: Precedence, knowledge: Knowledge) -> dict[str, Any]:
    cited = []
    for text in item.sources:
        id_, _, place = text.partition(" ")
        source = knowledge.sources.get(id_)
        if source is not None:
            cited.append(f"{source.citation}{', ' + place if place else ''} ({source.kind})")
    return {**picked(item, "before after why strength sources"), "cited": cited}


def _moves(work: Work, step: str) -> list[dict[str, Any]]:
    """The step one place earlier and later, and as early and as late as anything allows."""
    left = list(work.left())
    at = left.index(step)
    earlier = [n for n in left[:at] if n not in work.graph.forced_before(step)]
    later = [n for n in left[at + 1 :] if n not in work.graph.forced_after(step)]
    wanted: dict[tuple[str, str], str] = {}
    if at:
        wanted[("before", left[at - 1])] = "one place earlier"
    if at + 1 < len(left):
        wanted[("after", left[at + 1])] = "one place later"
    if earlier:
        wanted.setdefault(("before", earlier[0]), "as early as it can stand")
    if later:
        wanted.setdefault(("after", later[-1]), "as late as it can stand")
    return [_move(work, step, side, other, what) for (side, other), what in wanted.items()]


def _move(work: Work, step: str, side: str, other: str, what: str) -> dict[str, Any]:
    from advisor.order.explain import Pin, moved
    from advisor.order.graph import build
    from advisor.order.work import QUICK

    alive = [
        p for p in work.graph.precedences if p.before not in work.done and p.after not in work.done
    ]
    graph = build([work.tasks[name].step for name in work.left()], alive)
    pin = Pin(step, before=other) if side == "before" else Pin(step, after=other)
    found = moved(graph, work.plan, pin, work.setting, QUICK)
    return {"what": what, side: other, **_answer(found)}


def _answer(found: Moved) -> dict[str, Any]:
    if found.plan is None:
        links = [picked(link, "before after why") for link in found.forbidden_by]
        return {"possible": False, "extra_min": None, "forbidden_by": links}
    extra = round(found.extra or 0.0, 2)
    return {"possible": True, "extra_min": extra, "forbidden_by": []}


def render_why_order(data: dict[str, Any]) -> str:
    """The same as text."""
    lines = wrap(f"{data['step']}: step {data['place']} of {data['of']}. {data['does']}")
    for title, key, side in (("after", "after", "before"), ("before", "before", "after")):
        for link in data[key]:
            lines += _told(f"{title} {link[side]} ({link['strength']}): {link['why']}", link)
    for row in data["and_after"]:
        lines += wrap(f"and so after {', '.join(row['steps'])}: {row['why']}", "  ", "      ")
    if not data["after"] and not data["before"]:
        lines += wrap("Nothing holds it: it stands where it costs least.", "  ")
    lines += wrap(
        f"In all {len(data['forced_before'])} steps have to come before it and "
        f"{len(data['forced_after'])} after it.",
        "  ",
    )
    for link in data["given_up"]:
        pair = f"{link['before']} before {link['after']} ({link['strength']})"
        lines += _told(f"given up: {pair}. {link['why']}", link)
    for move in data["moves"]:
        lines += wrap(_move_text(move), "  move ", "      ")
    for pin in data["pins"]:
        against = "; ".join(
            f"{p['before']} before {p['after']}: {p['why']}" for p in pin["forbidden_by"]
        )
        text = (
            "It stands where you pinned it."
            if pin["honoured"]
            else (f"Your pin cannot be had. {against or pin['remark']}")
        )
        lines += wrap(text, "  ", "      ")
    return "\n".join(lines) + "\n"


def _told(text: str, link: dict[str, Any]) -> list[str]:
    lines = wrap(text, "  ", "      ")
    for cited in link["cited"]:
        lines += wrap(f"on the word of {cited}", "      ", "        ")
    return lines


def _move_text(move: dict[str, Any]) -> str:
    side = "before" if "before" in move else "after"
    where = f"{move['what']}, {side} {move[side]}"
    if not move["possible"]:
        links = "; ".join(
            f"{p['before']} before {p['after']}: {p['why']}" for p in move["forbidden_by"]
        )
        return f"{where}: not possible. {links}"
    if move["extra_min"] == 0:
        return f"{where}: costs nothing; it stands here by custom."
    return f"{where}: {move['extra_min']:g} min more on changes."
