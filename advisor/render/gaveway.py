"""What somebody wanted at a place and does not get: by name, the gravest first."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from advisor.answer.model.answer import Answer
from advisor.answer.model.told import ToldVerdict
from advisor.render.lines import Verdicts, by_place, is_cold, phrase_of, told_when_cold
from advisor.render.printed.section import Item, Part, Section

TITLE = "Had to give way"
WANTED = {
    "needle.point": "needle {}",
    "thread.size": "thread {}",
    "stitch.length": "stitch {}",
    "seam.bulk": "{} under the foot",
}
"""What a wish is about, where its words say it only beside what is set."""
FOR_ITSELF = ("press.temperature", "press.moisture", "press.motion", "press.surface")
"""What a cloth that is pressed by itself gets there after all."""
GRAVEST = (
    "needle.size",
    "needle.point",
    "press.temperature",
    "press.moisture",
    "stitch.type",
    "seam.kind",
    "thread.size",
    "thread.fibre",
)
"""What breaks a needle, spoils cloth or lets a seam burst, in this order; the rest only shows."""
MOST_WANTED, FEW = 3, 2
"""So many things that would have done are told; of more the first few."""
MOST = 4
"""So many are told; where room is short fewer, the gravest."""


def lost(verdicts: Verdicts, answer: Answer, place: str) -> list[str]:
    """Wishes that gave way, by name, one for each aspect; those under the iron first.

    Not of an iron that does not come, and not who is told to be pressed by itself.
    """
    pressed_first = sorted(
        _lost(verdicts, _alone(answer, place)),
        key=lambda found: not found[0].aspect.startswith("press."),
    )
    return list(dict.fromkeys(text for _, text in pressed_first))


def gave_way(answer: Answer, most: int = MOST) -> Section:
    """The gravest wishes of all places that gave way, each once with its places and what is set.

    What goes against the maker's own choice is told at its place.
    """
    places = by_place(answer)
    notions = tuple(layer.name for layer in answer.layers if layer.kind != "cloth")
    alike: dict[tuple[int, str], list[str]] = {}
    for seam in answer.seams:
        found = places.get(("seam", seam.name), {})
        for verdict, text in _lost(found, _alone(answer, seam.name)):
            if text.startswith(notions) or verdict.aspect not in GRAVEST or _of_its_mix(verdict):
                continue  # what a glue or a zip would rather have is told with how it goes in
            if not any(b.rule == "maker" for b in verdict.because):
                said = f"{text}; set: {phrase_of(verdict.aspect, verdict.text)}."
                alike.setdefault((GRAVEST.index(verdict.aspect), said), []).append(seam.name)
    ranked = sorted(alike.items(), key=lambda found: (found[0][0], -len(found[1])))
    first = {_harm(found[0][0]): found for found in reversed(ranked)}.values()  # one of each harm
    gravest = [*first, *(found for found in ranked if found not in first)]
    rows = sorted(gravest[:MOST], key=ranked.index)
    items = tuple(Item(", ".join(names), parts=(Part(text),)) for (_, text), names in rows[:most])
    more = f"{len(rows) - most} more: advisor check FILE." if len(rows) > most else ""
    return Section("gave-way", TITLE, items, close=more)


def _alone(answer: Answer, place: str) -> set[str]:
    """Who is told to be pressed by itself before a place, and so loses nothing there."""
    return {n for item in answer.instructions if place in item.places for n in item.needy}


def _of_its_mix(verdict: ToldVerdict) -> bool:
    """Whether a cloth keeps its own wish for heat or damp from itself, whatever else lies there."""
    claim = verdict.given_up[0]
    own = claim.who.split(" (")[0]
    return verdict.aspect in FOR_ITSELF[:2] and own in {
        who.split(" (")[0] for who in claim.to or ()
    }


def _harm(rank: int) -> str:
    """What a wish guards: the needle, the cloth by heat or by moisture, or the seam's strength."""
    aspect = GRAVEST[rank]
    room = aspect.partition(".")[0]
    return aspect if room == "press" else room if room == "needle" else "strength"


def _lost(verdicts: Verdicts, alone: Collection[str]) -> Iterator[tuple[ToldVerdict, str]]:
    """Each wish that gave way, with its answer; `alone` are pressed by themselves."""
    idle = {v.aspect for v in verdicts.values()} - {v.aspect for v in told_when_cold(verdicts)}
    for aspect, verdict in verdicts.items():
        if is_cold(verdicts) and aspect in idle:
            continue
        for claim in verdict.given_up[:1]:
            pressed_alone = aspect in FOR_ITSELF and claim.who.split(" (")[0] in alone
            if claim.strength == "should" and not pressed_alone:
                says, more = _without_the_rest(claim.says, verdict)
                said = WANTED.get(aspect, "{}").format(phrase_of(aspect, says))
                yield verdict, f"{claim.who} wanted {said}{more}"


def _without_the_rest(says: str, verdict: ToldVerdict) -> tuple[str, str]:
    """Of many things that somebody does not want, the one that is set here all the same.

    Of many that would have done the first few, and that there are more.
    """
    here = f"not {verdict.pick}"
    if here in says.split(", "):
        return here, ""
    would_do = says.split(" or ")
    if len(would_do) <= MOST_WANTED:
        return says, ""
    return " or ".join(would_do[:FEW]), " or the like"
