"""Reads a project file into a garment: everything looked up, or every problem named with its line.

The form refuses wrong keys and shapes; what is left is read here as far as it can be, so that a
file with a misspelt key and an unknown fabric says both at once.
"""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import InputError, Problem, Where, shown
from advisor.knowledge.factwords import CLOTH_WORDS
from advisor.knowledge.model import Knowledge
from advisor.knowledge.names import plain_name
from advisor.project.bending import read_overhang
from advisor.project.building import with_making
from advisor.project.buttons import with_named
from advisor.project.cloths import is_scalar, notion_cloth, read_cloth
from advisor.project.edgewords import told_apart
from advisor.project.facts import (
    SEAM_KEYS,
    make_maker,
    make_seam,
    read_fact,
    read_maker_fact,
    read_measure,
    with_overlocker,
)
from advisor.project.findings import Findings
from advisor.project.garment import Cloth, Garment, Maker, Seam, Use
from advisor.project.garmentparts import with_parts
from advisor.project.glue_first import fusing_flat
from advisor.project.grain import with_bias
from advisor.project.methods import with_methods
from advisor.project.names import MOST_IN_ALL, MOST_SEAMS, tidy_name
from advisor.project.planning import with_plan
from advisor.project.quoting import with_quote
from advisor.project.trims import with_trims
from advisor.project.wishes import with_wishes

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Document, Steps

_WORDS = "a few words, such as 'nylon organza'"
_NEEDS_WORDS = {
    "fabric": _WORDS,
    "notion": "its name, such as 'coil zip'",
    "fibres": "{silk: 100}, or 'unknown' where nobody knows",
}
_ELASTIC = "elastic"
_LAYERS = "layers: [shell, shell], or on: shell for a fastening or a trimming"
CLOTH_KEYS = frozenset(
    {
        "fabric",
        "notion",
        "fibres",
        "weight",
        "thickness",
        "colour",
        "traits",
        "width",
        "repeat",
        "selvage",
        "shrinks",
        "shrinks across",
        "price",
        "overhang",
        "sinks",
        *CLOTH_WORDS,
    }
)


_NO_PROJECT = "this is not a project file: it has no keys such as 'garment:' and 'fabrics:'"
_AS_WRITTEN = "text as `advisor start FILE` writes"


def load_project(path: Path, knowledge: Knowledge) -> Garment:
    """The garment that a project file describes.

    Raises:
        InputError: with every problem of the file, each with line, column and the nearest names.
    """
    from advisor.textio.yamlfile import read_yaml  # noqa: PLC0415 - a question reads no file

    return garment_of(read_yaml(path), knowledge)


def garment_of(document: Document, knowledge: Knowledge) -> Garment:
    """The garment that a project already read describes.

    Raises:
        InputError: with every problem of it.
    """
    from advisor.project.schema import ProjectForm  # noqa: PLC0415 - heavy, only a file needs it
    from advisor.textio.mending import validated  # noqa: PLC0415

    if not isinstance(document.data, dict):
        raise InputError(Problem(_NO_PROJECT, Where(document.file), _AS_WRITTEN))
    document, problems = validated(document, ProjectForm)
    findings = Findings(document, problems)
    garment = _Reader(_in_facts(document.data), findings, knowledge).garment()
    findings.stop()
    return garment


def _in_facts(data: dict[str, Any]) -> dict[str, Any]:
    """The data with each edge said by facts and kinds alone."""
    rows = data.get("seams")
    if not isinstance(rows, list):
        return data
    return data | {"seams": [told_apart(row) if isinstance(row, dict) else row for row in rows]}


class _Reader:
    """Reads whatever part of the data has the right shape; the form has named the rest."""

    def __init__(self, data: dict[str, Any], findings: Findings, knowledge: Knowledge) -> None:
        self.data = data
        self.findings = findings
        self.knowledge = knowledge
        self.bare = data.get("units") != "us"
        self.cloths: dict[str, Cloth] = {}
        self.spelled: dict[str, str] = {}  # every name of a cloth, understood or not
        self.notions: dict[str, str] = {}

    def garment(self) -> Garment:
        maker = self._maker()
        self._fabrics()
        seams = self._seams(maker)
        maker = with_overlocker(maker, seams)
        in_all = sum(len(seam.uses) for seam in seams)
        if in_all > MOST_IN_ALL and len(seams) <= MOST_SEAMS:
            self.findings.say(
                ("seams",),
                f"{in_all} layers in all places together",
                f"at most {MOST_IN_ALL}; write so large a garment as several projects",
            )
            self.findings.stop()
        seams = with_making(seams, self.data.get("seams"), self.findings, bare=self.bare)
        garment = Garment(
            _name(self.data.get("garment")) or "",
            self.cloths,
            seams,
            maker,
            "metric" if self.bare else "us",
        )
        garment = with_plan(garment, self.data, self.findings, self.knowledge)
        garment = with_quote(garment, self.data, self.findings)
        garment = with_wishes(garment, self.data, self.findings, self.knowledge)
        garment = with_methods(garment, self.data, self.findings, self.knowledge)
        garment = with_parts(garment, self.data, self.findings, self.knowledge)
        garment = with_bias(with_trims(garment, self.knowledge))
        return fusing_flat(garment, self.knowledge)

    def _maker(self) -> Maker:
        about = self.data.get("maker")
        said: dict[str, Any] = {}
        if isinstance(about, dict):
            for key in ("machine", "overlocker", "foot lift"):
                if is_scalar(about.get(key)):
                    self._read(said, key, about[key], ("maker", key), read_maker_fact)
            if isinstance(about.get("feet"), list):
                said["feet"] = self._feet(about["feet"])
        if is_scalar(self.data.get("worn by")):
            self._read(said, "worn by", self.data["worn by"], ("worn by",), read_maker_fact)
        return make_maker(said)

    def _feet(self, feet: list[Any]) -> tuple[str, ...]:
        found: dict[str, Any] = {}
        for i, foot in enumerate(feet):
            if is_scalar(foot):
                word = self.findings.attempt(
                    ("maker", "feet", i), partial(read_maker_fact, "foot", foot, self.knowledge)
                )
                found |= {str(word): None} if word else {}
        return tuple(found)

    def _fabrics(self) -> None:
        fabrics = self.data.get("fabrics")
        for key, said in fabrics.items() if isinstance(fabrics, dict) else ():
            steps: Steps = ("fabrics", key)
            name = self._new_name(key, steps)
            about = {"fabric": said} if isinstance(said, str) else said
            if name is None or not isinstance(about, dict):
                continue
            self._one_fabric(about, steps)
            cloth = read_cloth(name, about, steps, self.findings, self.knowledge, bare=self.bare)
            if cloth is not None:
                bent = read_overhang(about, steps, self.findings, bare=self.bare)
                self.cloths[name] = replace(cloth, overhang=bent)

    def _one_fabric(self, about: dict[str, Any], steps: Steps) -> None:
        for key, words in _NEEDS_WORDS.items():
            if about.get(key, "") is None:
                self.findings.say((*steps, key), f"'{key}' says nothing", words, key=True)
        if ("fabric" in about) == ("notion" in about):
            if not about.keys() <= CLOTH_KEYS:
                return  # a misspelt key is named already, and may well be this one
            what = "both 'fabric' and 'notion'" if "fabric" in about else "no 'fabric'"
            self.findings.say(
                steps,
                f"{shown(str(steps[-1]))} has {what}",
                f"fabric: and {_WORDS}",
            )

    def _new_name(self, key: str, steps: Steps) -> str | None:
        name = _name(key)
        if name is None:
            self.findings.say(steps, "the name of a fabric must be short printable text", key=True)
        elif name.casefold() in self.spelled:
            message = f"the name {shown(key)} is too like {shown(self.spelled[name.casefold()])}"
            expected = "names that differ by more than capitals and spaces"
            self.findings.say(steps, message, expected, key=True)
            name = None
        else:
            self.spelled[name.casefold()] = name
        return name

    def _seams(self, maker: Maker) -> tuple[Seam, ...]:
        listed = self.data.get("seams")
        seams: list[Seam] = []
        rows: list[dict[str, Any]] = []
        names: dict[str, int] = {}
        for i, about in enumerate(listed if isinstance(listed, list) else ()):
            if not isinstance(about, dict):
                continue
            name = _name(about.get("name")) or ""
            if name and name.casefold() in names:
                line = self._line(names[name.casefold()])
                self.findings.say(
                    ("seams", i, "name"),
                    f"a second seam called {shown(name)}; the first is on line {line}",
                    "each name once",
                )
            names.setdefault(name.casefold(), i)
            uses = self._layers(about, i)
            seams.append(make_seam(name, uses, self._facts(about, i), maker))
            rows.append(about)
        return with_named(seams, rows, self._button)

    def _layers(self, about: dict[str, Any], i: int) -> tuple[Use, ...]:
        """The layers of a place, or the cloths that it is made on."""
        on = about.get("on")
        if "layers" in about or on is None:
            if "layers" not in about and "name" in about:
                self.findings.say(
                    ("seams", i),
                    f"{shown(str(about['name']))} has no 'layers'",
                    _LAYERS,
                )
            if about.get("layers", "") is None:
                self.findings.say(
                    ("seams", i, "layers"), "'layers' says nothing", _LAYERS, key=True
                )
            return self._uses(about.get("layers"), ("seams", i, "layers"))
        return self._uses([on] if isinstance(on, str) else on, ("seams", i, "on"))

    def _button(self, said: str) -> str | None:
        """The name of a button's cloth; None where her words name no button that is known."""
        entry = self.knowledge.names.get(plain_name(said)) or self.knowledge.names.get(
            plain_name(said.removesuffix("s"))
        )
        return None if entry is None else self._notion(said, ("seams",))

    def _line(self, seam: int) -> int:
        document = self.findings.document
        return document.positions.value(("seams", seam, "name"))[0] if document else 0

    def _facts(self, about: dict[str, Any], i: int) -> dict[str, Any]:
        said: dict[str, Any] = {}
        for key in SEAM_KEYS:
            if is_scalar(about.get(key)):
                self._read(said, key, about[key], ("seams", i, key), read_fact)
        return said

    def _read(self, said: dict[str, Any], key: str, value: Any, steps: Steps, read: Any) -> None:
        found = self.findings.attempt(
            steps, partial(read, key, value, self.knowledge, bare=self.bare)
        )
        if found is not None:
            said[key] = found

    def _uses(self, layers: Any, steps: Steps) -> tuple[Use, ...]:
        if not isinstance(layers, list) or not layers:
            return ()
        before = len(self.findings.problems)
        found = [self._use(layer, (*steps, i)) for i, layer in enumerate(layers)]
        uses = tuple(use for use in found if use is not None)
        named = any(use.cloth not in self.notions.values() for use in uses)
        named = named or not isinstance(self.data.get("fabrics"), dict)
        if uses and not named and len(self.findings.problems) == before:
            self.findings.say(
                steps,
                "this seam names no fabric of the project",
                f"one of {', '.join(self.spelled.values())}",
            )
        return uses

    def _use(self, layer: Any, steps: Steps) -> Use | None:
        about = {"use": layer} if isinstance(layer, str) else layer
        if not isinstance(about, dict):
            return None
        if ("use" in about) == ("notion" in about):
            what = "both 'use' and 'notion'" if "use" in about else "neither 'use' nor 'notion'"
            self.findings.say(steps, f"this layer has {what}", "one of the two")
            return None
        key = "use" if "use" in about else "notion"
        if about[key] is None:
            expected = f"{key}: and a name" if key == "notion" else "use: and a name from 'fabrics'"
            self.findings.say((*steps, key), f"'{key}' says nothing", expected, key=True)
        said = _name(about[key])
        if said is None:
            return None
        here = steps if isinstance(layer, str) else (*steps, key)
        name = self._fabric(said, here) if key == "use" else self._notion(said, here)
        measures: dict[str, Any] = {}
        for what, default in (
            ("fullness", 1.0),
            ("stretched", 1.0),
            ("width", None),
            ("body", None),
        ):
            value = about.get(what)
            if is_scalar(value):
                read = partial(read_measure, what, value, bare=self.bare)
                measures[what] = self.findings.attempt((*steps, what), read) or default
        if name is None:
            return None
        cloth = self.cloths.get(name)
        kind = None if cloth is None else self.knowledge.entries[cloth.entry].kind
        if "width" in measures and kind == "cloth":
            expected = (
                "the width of the cloth under fabrics:, or of what is cut of it under pieces:"
            )
            self.findings.say((*steps, "width"), "a cloth has no width in a place", expected)
        if measures.get("body") and kind not in (None, _ELASTIC):
            self.findings.say((*steps, "body"), "only an elastic is cut from the body")
        return Use(name, **measures)

    def _fabric(self, said: str, steps: Steps) -> str | None:
        name = self.spelled.get(said.casefold())
        if name is not None or not isinstance(self.data.get("fabrics"), dict):
            return name
        known = self.knowledge.names.get(plain_name(said))
        expected = "a name from 'fabrics'"
        if known is not None:
            kind = self.knowledge.entries[known].kind
            expected += " (add this one there" + (
                ")" if kind == "cloth" else f", or write {{notion: {said}}})"
            )
        self.findings.say(
            steps,
            f"no fabric of this project is called {shown(said)}",
            expected,
            (said, self.spelled.values()),
        )
        return None

    def _notion(self, said: str, steps: Steps) -> str | None:
        """The name of the notion's cloth, which is made the first time that it is named."""
        if said.casefold() in self.notions:
            return self.notions[said.casefold()]
        name = said if said.casefold() not in self.spelled else f"{said} (notion)"
        cloth = self.findings.attempt(steps, partial(notion_cloth, name, said, self.knowledge))
        if cloth is None:
            return None
        self.cloths[name] = cloth
        self.notions[said.casefold()] = name
        return name


def _name(value: Any) -> str | None:
    """A name as the form accepts it, or None."""
    try:
        return tidy_name(value) if isinstance(value, str) else None
    except ValueError:
        return None
