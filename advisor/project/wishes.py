"""Reads what a project says of the order of work, and lengths of time."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import nearest, shown
from advisor.knowledge.ordering import CHANGES
from advisor.project.kindnames import named
from advisor.project.kindwords import known_kinds
from advisor.project.linings import with_lined
from advisor.project.names import tidy_name
from advisor.project.placing import families, fastening_kind, with_places
from advisor.project.stands import seen_at_a_stand
from advisor.project.wished import Added, Pinned, Wishes

if TYPE_CHECKING:
    from advisor.knowledge.model import Knowledge
    from advisor.project.findings import Findings
    from advisor.project.garment import Garment
    from advisor.textio.yamlfile import Steps

BUTTON, HOLES = "button", "buttonhole"
"""Kinds of place: a button, and the hole that its name may say it closes."""
LONGEST_SITTING = 24 * 60.0
DEAREST_CHANGE = 240.0
UNITS = {
    "min": 1.0,
    "minutes": 1.0,
    "minute": 1.0,
    "m": 1.0,
    "h": 60.0,
    "hour": 60.0,
    "hours": 60.0,
}


def with_wishes(garment: Garment, data: Any, findings: Findings, knowledge: Knowledge) -> Garment:
    """The garment with what its file says of the order of work."""
    if not isinstance(data, dict):
        return garment
    reader = _WishReader(findings, knowledge)
    about = data.get("order")
    wishes = reader.order(about) if isinstance(about, dict) else Wishes()
    kinds, joins = reader.seams(data.get("seams"))
    done = reader.names(data.get("done"))
    seams = seen_at_a_stand(with_places(garment.seams, kinds, garment.cloths, knowledge))
    words = reader.fastenings_said(data.get("seams"))
    seams = tuple(replace(seam, fastening=words.get(seam.name, "")) for seam in seams)
    if knowledge.places.kinds:
        entries = {name: knowledge.entries[c.entry] for name, c in garment.cloths.items()}
        seams = with_lined(seams, entries, knowledge.places.kinds)
    own = families(knowledge.places.kinds)
    told = {name: kind for name, kind in kinds.items() if kind not in own}
    wishes = replace(wishes, kinds=told, joins=joins, done=done)
    return replace(garment, seams=seams, wishes=wishes)


def minutes_of(text: object) -> float:
    """Minutes out of `90`, `90 min`, `1.5 h` or `1 h 30 min`.

    Raises:
        ValueError: it is no such time, or not above zero.
    """
    words = str(text).replace(",", " ").split()
    glued = [part for word in words for part in _apart(word)]
    total, number = 0.0, None
    for word in glued:
        if number is None:
            number = float(word)
        else:
            total += number * UNITS[word]
            number = None
    total += number or 0.0
    if not 0 < total <= LONGEST_SITTING:
        raise ValueError(text)
    return total


def _apart(word: str) -> list[str]:
    """`90min` as a number and a unit."""
    digits = len(word.rstrip("abcdefghijklmnopqrstuvwxyz"))
    return [part for part in (word[:digits], word[digits:]) if part]


class _WishReader:
    """Reads what has the right shape; the form of the project names what has not."""

    def __init__(self, findings: Findings, knowledge: Knowledge) -> None:
        self.findings = findings
        kinds = knowledge.places.kinds
        self.fastenings = {id_: k for id_, k in kinds.items() if k.family == "fastening"}
        self.kinds = {word.replace(" ", "-") for word in known_kinds(knowledge)}
        self.by_name = _roles_by_name(knowledge)

    def order(self, about: dict[str, Any]) -> Wishes:
        at: Steps = ("order",)
        sitting = about.get("sitting")
        return Wishes(
            add=tuple(self._added(row, i) for i, row in _rows(about.get("add"))),
            drop=self.names(about.get("drop")),
            tie=tuple(
                (pair[0], pair[1])
                for pair in map(self.names, _lists(about.get("tie")))
                if len(pair) == 2
            ),
            pin=tuple(self._pinned(row) for _, row in _rows(about.get("pin"))),
            after=tuple(
                (earlier, step)
                for step, said in _items(about.get("after"))
                for earlier in self.names(said)
            ),
            costs=self._costs(about.get("costs")),
            sitting=None if sitting is None else self._minutes(sitting, (*at, "sitting")),
        )

    def names(self, said: Any) -> tuple[str, ...]:
        """One name or several."""
        listed = [said] if isinstance(said, str) else said if isinstance(said, list) else []
        return tuple(dict.fromkeys(n for n in map(_name, listed) if n))

    def seams(self, listed: Any) -> tuple[dict[str, str], dict[str, tuple[str, ...]]]:
        """Kinds and panels of seams by the name of the seam."""
        kinds: dict[str, str] = {}
        joins: dict[str, tuple[str, ...]] = {}
        for i, row in _rows(listed):
            name, said = _name(row.get("name")), row.get("kind")
            if not name:
                continue
            fastening = row.get("fastening")
            if isinstance(fastening, str):
                kinds[name] = self._fastening(fastening, i)
                called = [named(word, self.fastenings) for word in (name, str(said or ""))]
                if isinstance(said, str) and not called[1]:
                    self._kind(said, i)
                if kinds[name] == BUTTON and HOLES in called:
                    kinds[name] = HOLES  # the button goes through them, and is sewn on elsewhere
            elif isinstance(said, str) and self._kind(said, i):
                kinds[name] = self._kind_of(said)
            panels = self.names(row.get("joins"))
            if panels:
                joins[name] = panels
        return kinds, joins

    @staticmethod
    def fastenings_said(listed: Any) -> dict[str, str]:
        """What each fastening is called under its own key, by the name of its place."""
        rows = [(_name(row.get("name")), row.get("fastening")) for _, row in _rows(listed)]
        return {
            name: " ".join(said.split()) for name, said in rows if name and isinstance(said, str)
        }

    def _kind(self, said: str, i: int) -> bool:
        known = sorted(kind.replace("-", " ") for kind in self.kinds)
        if not self.kinds or self._kind_of(said) in self.kinds:
            return True
        self.findings.say(
            ("seams", i, "kind"),
            f"'kind': unknown word {shown(said)}",
            "a kind of place; `advisor explain places` lists them",
            (said, known),
        )
        return False

    def _kind_of(self, said: str) -> str:
        word = _kind_name(said)
        return word if word in self.kinds else self.by_name.get(word, word)

    def _fastening(self, said: str, i: int) -> str:
        """The kind of place that a fastening is; "" where the word is no fastening."""
        known = self.fastenings
        found = fastening_kind(said, known)
        if not found:
            self.findings.say(
                ("seams", i, "fastening"),
                f"'fastening': unknown word {shown(said)}",
                f"one of {', '.join(kind.name for kind in known.values())}",
                (said, [kind.name for kind in known.values()]),
            )
        return found

    def _added(self, row: dict[str, Any], i: int) -> Added:
        minutes = row.get("minutes")
        at: Steps = ("order", "add", i, "minutes")
        return Added(
            _name(row.get("step")) or "",
            self.names(row.get("after")),
            self.names(row.get("before")),
            10.0 if minutes is None else self._minutes(minutes, at) or 10.0,
            self.names(row.get("on")),
        )

    @staticmethod
    def _pinned(row: dict[str, Any]) -> Pinned:
        at = row.get("at")
        return Pinned(
            _name(row.get("step")) or "",
            _name(row.get("after")),
            _name(row.get("before")),
            int(at) if isinstance(at, int | float) and not isinstance(at, bool) else None,
        )

    def _costs(self, about: Any) -> dict[str, float]:
        found = {}
        for name, value in _items(about):
            at: Steps = ("order", "costs", name)
            if name not in CHANGES:
                self.findings.say(
                    at,
                    f"no change of set-up is called {shown(str(name))}",
                    f"one of {', '.join(sorted(CHANGES))}",
                    (str(name), sorted(CHANGES)),
                    key=True,
                )
            elif str(value) in ("0", "0.0", "0 min"):
                found[name] = 0.0
            else:
                minutes = self._minutes(value, at, DEAREST_CHANGE)
                found |= {} if minutes is None else {name: minutes}
        return found

    def _minutes(self, value: Any, at: Steps, most: float = LONGEST_SITTING) -> float | None:
        try:
            minutes = minutes_of(value)
            if minutes <= most:
                return minutes
        except (ValueError, KeyError):
            pass
        self.findings.say(
            at,
            f"{shown(str(value))} is no length of time",
            f"minutes such as 90 min or 1.5 h, at most {most:g}",
        )
        return None


def _roles_by_name(knowledge: Knowledge) -> dict[str, str]:
    """Kinds of place by the words for them, and the name under which they are printed."""
    kinds = knowledge.places.kinds.items()
    words = {_kind_name(word): id_ for id_, kind in kinds for word in kind.words}
    return words | {_kind_name(kind.name): id_ for id_, kind in kinds}


def _rows(listed: Any) -> list[tuple[int, dict[str, Any]]]:
    rows = enumerate(listed if isinstance(listed, list) else ())
    return [(i, row) for i, row in rows if isinstance(row, dict)]


def _lists(listed: Any) -> list[Any]:
    return [row for row in (listed if isinstance(listed, list) else ()) if isinstance(row, list)]


def _items(about: Any) -> list[tuple[str, Any]]:
    return list(about.items()) if isinstance(about, dict) else []


def _kind_name(said: str) -> str:
    return "-".join(said.casefold().split())


def _name(value: Any) -> str | None:
    try:
        return tidy_name(value, 160) if isinstance(value, str) else None
    except ValueError:
        return None


def unknown_step(name: str, known: list[str]) -> str:
    """A sentence that says that no step has this name, with the nearest ones."""
    near = nearest(name, known)
    meant = f" Did you mean {' or '.join(shown(n) for n in near)}?" if near else ""
    return f"No step is called {shown(name)}.{meant}"
