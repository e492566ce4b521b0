"""Reads what is cut and from what: pieces, bolts, the maker's kit, results of tests on scraps.

The kit may stand once in a settings file (`ADVISOR_SETTINGS`, else kit.yaml in the user's
configuration folder) under the same keys; a project's own word goes before it.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from functools import partial
from pathlib import Path
from typing import Any

from msgspec.structs import replace

from advisor.errors import nearest, shown
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.project.facts import read_maker_fact
from advisor.project.findings import Findings
from advisor.project.garment import Garment
from advisor.project.making import (
    GRAINS,
    USUAL_ALLOWANCE,
    Bolt,
    Kit,
    Piece,
    Plan,
    Result,
)
from advisor.project.measures import Asker
from advisor.project.names import tidy_name
from advisor.project.shaping import one_shape, read_flounce, read_tiers, read_tucks

SETTINGS_VARIABLE = "ADVISOR_SETTINGS"
_KIT_KEYS = ("feet", "needles", "pins", "pressing", "tools", "threads")


def with_plan(
    garment: Garment, data: Mapping[str, Any], findings: Findings, knowledge: Knowledge
) -> Garment:
    """The garment with its plan; feet that only the kit names count as the maker's."""
    reader = _PlanReader(garment, data, findings, knowledge)
    plan = reader.plan()
    maker = garment.maker
    if maker.feet is None and plan.kit.feet is not None:
        left = tuple(word for word in maker.assumed if word != "feet")
        maker = replace(maker, feet=plan.kit.feet, assumed=left)
    return replace(garment, plan=plan, maker=maker)


def settings_file() -> Path:
    """Where the maker's kit is written once for all projects."""
    named = os.environ.get(SETTINGS_VARIABLE)
    if named:
        return Path(named)
    base = os.environ.get("XDG_CONFIG_HOME") or Path("~/.config").expanduser()
    return Path(base) / "advisor" / "kit.yaml"


class _PlanReader:
    def __init__(
        self, garment: Garment, data: Mapping[str, Any], findings: Findings, knowledge: Knowledge
    ) -> None:
        self.garment = garment
        self.data = data
        self.findings = findings
        self.knowledge = knowledge
        self.bare = garment.units != "us"
        self.names = {name.casefold(): name for name in garment.cloths}
        self.broken = names_written(data)

    def plan(self) -> Plan:
        bolts = self._bolts()
        listed = self.data.get("pieces")
        groups = enumerate(listed if isinstance(listed, list) else ())
        pieces = [self._piece(about, i, bolts) for i, about in groups if isinstance(about, dict)]
        return Plan(
            tuple(piece for piece in pieces if piece is not None),
            bolts,
            self._kit(),
            self._results(),
        )

    def _bolts(self) -> dict[str, Bolt]:
        fabrics = self.data.get("fabrics")
        found: dict[str, Bolt] = {}
        for key, about in fabrics.items() if isinstance(fabrics, dict) else ():
            name = self.names.get(" ".join(str(key).split()).casefold())
            if name is None or not isinstance(about, dict):
                continue
            ask = Asker(about, ("fabrics", key), self.findings, self.bare)
            shrinks, across = ask.measure("shrinks"), ask.measure("shrinks across")
            kind = self.knowledge.entries[self.garment.cloths[name].entry].kind
            bolt = Bolt(
                ask.measure("width", "bolt" if kind == "cloth" else "notion"),
                ask.measure("repeat") or 0.0,
                ask.measure("selvage"),
                None if shrinks is None else shrinks / 100,
                None if across is None else across / 100,
            )
            if bolt.width is not None and 2 * (bolt.selvage or 0.0) >= bolt.width:
                ask.deny("selvage", "the selvages leave nothing of the cloth")
                bolt = replace(bolt, selvage=None)
            found[name] = bolt
        return found

    def _piece(self, about: dict[str, Any], i: int, bolts: Mapping[str, Bolt]) -> Piece | None:
        ask = Asker(about, ("pieces", i), self.findings, self.bare)
        cloth = self._cloth(about.get("fabric"), ask)
        if not one_shape(ask):
            return None
        if isinstance(about.get("flounce"), dict):
            usable = bolts.get(cloth or "", Bolt()).usable
            name = _tidy(about.get("name"))
            return None if cloth is None else read_flounce(ask, name, cloth, usable)
        cut = any(ask.said(key) for key in ("width", "height"))
        if cut and any(ask.said(key) for key in ("finished width", "finished height")):
            key = next(k for k in ("finished width", "finished height") if ask.said(k))
            ask.deny(
                key,
                "this piece has cut sizes and finished ones",
                "width and height, or finished width and finished height",
            )
            return None
        if cut and ask.said("fullness"):
            ask.deny(
                "fullness",
                "a piece with cut sizes has its fullness in them already",
                "finished width and finished height with a fullness",
            )
            return None
        across, along = ("width", "height") if cut else ("finished width", "finished height")
        wide, high = ask.measure(across), ask.measure(along)
        tiers, tucks = read_tiers(ask, high), read_tucks(ask, wide)
        own = isinstance(about.get("tiers"), dict) and "heights" in about["tiers"]
        self._need_sizes(about, ask, (across,) if own else (across, along))
        if tiers is not None:
            high = sum(tiers.heights)
        shaped = any(isinstance(about.get(key), dict) for key in ("tiers", "tucks"))
        unread = shaped and tiers is None and tucks is None
        if cloth is None or wide is None or high is None or unread:
            return None
        before = len(self.findings.problems)
        piece = self._described(about, ask, cloth, wide, high, cut=cut)
        odd = [k for k in ("fullness", "number", "allowance") if k in about and not ask.said(k)]
        if odd or len(self.findings.problems) > before:
            return None  # what is wrong with it is said, and would be said again as its width
        return self._sound(replace(piece, tucks=tucks, tiers=tiers), ask, bolts)

    def _need_sizes(self, about: dict[str, Any], ask: Asker, keys: tuple[str, ...]) -> None:
        """Note the first size that a piece lacks."""
        missing = [key for key in keys if key not in about]
        if len(missing) == 2 or (
            missing
            and not any(
                k in about for k in ("width", "height", "finished width", "finished height")
            )
        ):
            sizes = "width and height as cut, or finished width and finished height"
            name = shown(str(about.get("name")))
            self.findings.say(ask.steps, f"the piece {name} has no size", sizes)
        elif missing:
            self.findings.say(ask.steps, f"this piece has no '{missing[0]}'")

    def _described(
        self, about: dict[str, Any], ask: Asker, cloth: str, wide: float, high: float, *, cut: bool
    ) -> Piece:
        fullness = ask.measure("fullness")
        number = ask.count("number")
        allowance = ask.measure("allowance")
        return Piece(
            name=_tidy(about.get("name")),
            cloth=cloth,
            width=wide,
            height=high,
            cut=cut,
            number=number if number or fullness else 1,
            fullness=fullness or 1.0,
            hem=ask.measure("hem"),
            allowance=USUAL_ALLOWANCE if allowance is None else allowance,
            own=allowance is not None,
            grain=ask.word("grain", GRAINS) or "lengthwise",
            narrow=ask.measure("narrow end"),
            matched=ask.yes("matched"),
            joined=ask.yes("joined"),
            doubled=ask.yes("doubled"),
        )

    def _sound(self, piece: Piece, ask: Asker, bolts: Mapping[str, Bolt]) -> Piece | None:
        """The piece, unless it cannot be cut from its cloth."""
        if piece.narrow is not None and piece.narrow > piece.width:
            ask.deny(
                "narrow end",
                "the narrow end is wider than the piece",
                f"at most {ask.about.get('width')}",
            )
            return None
        bolt = bolts.get(piece.cloth, Bolt())
        usable = bolt.usable
        if usable is None or piece.tiers is not None:
            return piece
        across = panel_width(piece)
        if piece.grain == "any":
            across = min(across, piece.height)
        plain = piece.narrow is None and piece.tucks is None
        along = piece.grain in ("crosswise", "bias") or (piece.joined and plain)
        if across > usable * (1 + 1e-9) and not along:
            key = "width" if piece.cut else "finished width"
            ask.deny(
                key,
                f"the piece {shown(piece.name)} is {across:.5g} mm wide as cut: wider "
                f"than the cloth {shown(piece.cloth)}",
                f"at most {usable:.5g} mm, or more panels (number:)"
                f"{', or joined: yes where it may have a seam' if plain else ''}",
            )
            return None
        return piece

    def _cloth(self, said: Any, ask: Asker) -> str | None:
        if not isinstance(said, str):
            return None
        asked = " ".join(said.split()).casefold()
        name = self.names.get(asked)
        if name is None and self.broken is not None and not self._unread(asked):
            ask.findings.say(
                (*ask.steps, "fabric"),
                f"no fabric of this project is called {shown(said)}",
                "a name from 'fabrics', or of a notion in a seam",
                (said, self.names.values()),
            )
        return name

    def _unread(self, asked: str) -> bool:
        """Whether a name is one that stands in the project and is not understood, or nearly so."""
        unread = (self.broken or frozenset()) - self.names.keys()
        return asked in unread or bool(nearest(asked, unread))

    def _results(self) -> tuple[Result, ...]:
        seams = {seam.name.casefold(): seam.name for seam in self.garment.seams}
        listed = self.data.get("results")
        found = []
        for i, about in enumerate(listed if isinstance(listed, list) else ()):
            if not isinstance(about, dict) or not isinstance(about.get("seam"), str):
                continue
            ask = Asker(about, ("results", i), self.findings)
            name = seams.get(_tidy(about["seam"]).casefold())
            if name is None and not seams_named(self.data):
                continue
            if name is None:
                self.findings.say(
                    (*ask.steps, "seam"),
                    f"no seam of this project is called {shown(about['seam'])}",
                    "the seam that the scrap stood for",
                    (about["seam"], seams.values()),
                )
                continue
            works = ask.word("works", ("yes", "no")) != "no"
            found.append(Result(name, _tidy(about.get("result")), works))
        return tuple(found)

    def _kit(self) -> Kit:
        kit = read_kit(self.data.get("kit"), self.findings, self.knowledge, ("kit",))
        other = settings_kit(self.knowledge)
        said = {key: getattr(kit, key) for key in (*_KIT_KEYS, "thread_near")}
        return Kit(
            **{key: getattr(other, key) if value is None else value for key, value in said.items()}
        )


def _as_spelt(word: str, known: Iterable[str]) -> str:
    """The word that is known by another spelling, `ball-point pins` for `ballpoint pins`."""
    bare = {one.replace("-", "").replace(" ", ""): one for one in known}
    return bare.get(word.replace("-", "").replace(" ", ""), word)


def names_written(data: Mapping[str, Any]) -> frozenset[str] | None:
    """The names of cloths and notions in a project, understood or not; None where none can be."""
    fabrics, seams = data.get("fabrics"), data.get("seams")
    if not isinstance(fabrics, dict) or not isinstance(seams, list):
        return None
    names = [str(name) for name in fabrics]
    for seam in seams:
        layers = (
            seam.get("layers", [] if "on" in seam else None) if isinstance(seam, dict) else None
        )
        if not isinstance(layers, list):
            return None  # a notion may stand there, and the fault is said
        for layer in layers:
            if isinstance(layer, dict) and not isinstance(layer.get("use"), str):
                if not isinstance(layer.get("notion"), str):
                    return None
                names.append(layer["notion"])
    return frozenset(" ".join(name.split()).casefold() for name in names)


def seams_named(data: Mapping[str, Any]) -> bool:
    """Whether every seam of a project has a name that can be read."""
    seams = data.get("seams")
    return isinstance(seams, list) and all(
        isinstance(seam, dict) and isinstance(seam.get("name"), str) for seam in seams
    )


def panel_width(piece: Piece) -> float:
    """How wide one of the pieces is as cut; 0 where its panels are still to be counted.

    Tucks take twice their depth each (`clothing-text-1916`).
    """
    tucked = 2 * piece.tucks.depth * piece.tucks.number if piece.tucks else 0.0
    if piece.cut:
        return piece.width + tucked
    if piece.number is None:
        return 0.0
    share = tucked + piece.width * piece.fullness / (piece.number if piece.fullness > 1 else 1)
    return share + 2 * piece.allowance


def read_kit(about: Any, findings: Findings, knowledge: Knowledge, steps: tuple[str, ...]) -> Kit:
    """What the maker has at home, as a group of lists says it."""
    said: dict[str, tuple[str, ...]] = {}
    for key in _KIT_KEYS if isinstance(about, dict) else ():
        listed = about.get(key)
        if not isinstance(listed, list):
            continue
        words: dict[str, None] = {}
        for i, item in enumerate(listed):
            if not isinstance(item, str | int | float):
                continue
            # A reel keeps its colour code and its measured figures as they are written.
            text = str(item)
            written = " ".join(text.split()) if key == "threads" else plain_name(text)
            word: str | float | None = written
            if key == "pins":
                word = _as_spelt(written, knowledge.aspects["pin.kind"].words)
            if key == "feet":
                read = partial(read_maker_fact, "foot", item, knowledge)
                word = findings.attempt((*steps, key, i), read)
            words |= {str(word): None} if word else {}
        said[key] = tuple(words)
    near = None
    if isinstance(about, dict):
        near = Asker(about, steps, findings, True).measure("thread near")
    return Kit(**said, thread_near=near)


def settings_kit(knowledge: Knowledge) -> Kit:
    """The kit of the settings file; an empty one where there is none.

    Raises:
        InputError: there is one and it cannot be understood.
    """
    path = settings_file()
    if not path.is_file():
        return Kit()
    from pydantic import ValidationError  # noqa: PLC0415 - heavy, and only a file needs it

    from advisor.project.schema import KitForm  # noqa: PLC0415
    from advisor.textio.validation import problems_from_validation  # noqa: PLC0415
    from advisor.textio.yamlfile import read_yaml  # noqa: PLC0415

    document = read_yaml(path)
    findings = Findings(document)
    try:
        KitForm.model_validate(document.data or {})
    except ValidationError as error:
        findings.problems += problems_from_validation(
            error, document.data, document.positions, document.file, model=KitForm
        )
    kit = read_kit(document.data, findings, knowledge, ())
    findings.stop()
    return kit


def _tidy(value: Any) -> str:
    try:
        return tidy_name(value, 200) if isinstance(value, str) else ""
    except ValueError:
        return ""
