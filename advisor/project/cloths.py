"""Reads what is said of one cloth or notion: a phrase, or a group of keys with a phrase in it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from typing import TYPE_CHECKING, Any

from msgspec.structs import replace

from advisor.errors import InputError, Problem, nearest, shown
from advisor.knowledge.factwords import CLOTH_WORDS, YES_NO
from advisor.knowledge.model import Entry, Knowledge, Mix
from advisor.knowledge.names import plain_name
from advisor.project.bareweights import refuse_doubtful
from advisor.project.colours import read_colour
from advisor.project.facts import read_measure, read_word
from advisor.project.findings import Findings
from advisor.project.garment import Cloth
from advisor.project.grain import said_on_bias
from advisor.project.phrase import (
    Reading,
    check_shares,
    cloth_of,
    read_fibres,
    read_phrase,
    short_name,
)
from advisor.project.phrases.abroad import FIBRES
from advisor.project.phrases.composition import parts_laid, possible_mixes, stretching
from advisor.project.phrases.shares import Fibres, read_shares
from advisor.project.phrases.tokens import singular, words_of
from advisor.units import parse

if TYPE_CHECKING:
    from advisor.textio.yamlfile import Steps

UNKNOWN = frozenset({"unknown", "fibre unknown", "unknown fibre", "mystery"})


def notion_cloth(name: str, said: str, knowledge: Knowledge) -> Cloth:
    """The notion, or the cloth used as one, that a name or a phrase stands for.

    Raises:
        InputError: nothing has that name.
    """
    return replace(cloth_of(name, read_notion(said, knowledge), knowledge), put_in=True)


def read_notion(said: str, knowledge: Knowledge) -> Reading:
    """What a notion's name or phrase says.

    Raises:
        InputError: nothing has that name.
    """
    entry = knowledge.names.get(plain_name(said))
    if entry is not None and knowledge.entries[entry].kind == "cloth":
        entry = _notion_of(said, knowledge) or entry
    if entry is not None:
        return Reading(entry, _called_after(said, knowledge.entries[entry], knowledge))
    try:
        found = read_phrase(said, knowledge)
        about = knowledge.entries[found.entry]
        whole = found.mixes == about.mixes
        return replace(found, mixes=_called_after(said, about, knowledge)) if whole else found
    except InputError:
        notions = [e for e in knowledge.entries.values() if e.kind != "cloth"]
        known = nearest(said, [name for e in notions for name in (e.name, *e.also)])
        listed = f"one of {', '.join(sorted(e.name for e in notions))}"
        raise InputError(
            Problem(f"unknown notion {shown(said)}", None, None if known else listed, known)
        ) from None


def _called_after(said: str, entry: Entry, knowledge: Knowledge) -> tuple[Mix, ...]:
    """What a notion may be of whose name says a fibre that it is sold in: "cotton tape"."""
    words = [word for word in words_of(said) if not word[:1].isdigit()]
    fibres = read_shares(words, (), knowledge)
    held = {fibre for mix in entry.mixes for fibre, _ in mix}
    if entry.kind == "cloth" or not fibres.shares or {f for f, _ in fibres.shares} - held:
        return entry.mixes
    return possible_mixes(entry, fibres, knowledge)[0]


def _notion_of(said: str, knowledge: Knowledge) -> str | None:
    """The one notion whose names end in the word for a cloth: an eyelet that is set, of metal."""
    end = f" {plain_name(said)}"
    found = {
        entry.id
        for entry in knowledge.entries.values()
        if entry.kind != "cloth"
        and any(plain_name(name).endswith(end) for name in (entry.name, *entry.also))
    }
    return next(iter(found)) if len(found) == 1 else None


def read_cloth(
    name: str,
    about: Mapping[str, Any],
    steps: Steps,
    findings: Findings,
    knowledge: Knowledge,
    *,
    bare: bool = True,
) -> Cloth | None:
    """The cloth that a group of keys describes; None where not even its fabric is understood.

    `steps` is the way to the group in the file; `bare` says whether a number without a unit is
    taken as g/m² or mm.
    """
    key = "notion" if "notion" in about else "fabric"
    said = about.get(key)
    if not isinstance(said, str):
        return None
    understand = read_notion if key == "notion" else read_phrase
    reading = findings.attempt((*steps, key), lambda: understand(said, knowledge))
    if reading is None:
        return None
    reading = _with_fibres(about, reading, steps, findings, knowledge)
    if key == "fabric":
        reading = _named_with(reading, said, knowledge)
    reading = _with_weight(about, reading, steps, findings, knowledge, bare=bare)
    cloth = cloth_of(name, reading, knowledge)
    return _described(cloth, about, steps, findings, knowledge, bare=bare)


def _described(
    cloth: Cloth,
    about: Mapping[str, Any],
    steps: Steps,
    findings: Findings,
    knowledge: Knowledge,
    *,
    bare: bool,
) -> Cloth:
    """The cloth with its thickness, colour, care and traits."""
    changes: dict[str, Any] = {"on_bias": said_on_bias(f"{cloth.name} {about.get('fabric', '')}")}
    if is_scalar(about.get("thickness")):
        read = partial(read_measure, "thickness", about["thickness"], bare=bare)
        thick = findings.attempt((*steps, "thickness"), read)
        changes["thickness"] = None if thick is None else (thick, thick)
    if is_scalar(about.get("colour")):
        colour = findings.attempt((*steps, "colour"), lambda: read_colour(about["colour"]))
        changes["colour"], shade = colour or ("", "")
        changes["shade"] = shade or cloth.shade
    for key, words in CLOTH_WORDS.items():
        if is_scalar(about.get(key)):
            read_it = partial(read_word, key, about[key], words)
            word = findings.attempt((*steps, key), read_it)
            changes[key] = word == "yes" if words == YES_NO else word or ""
    if isinstance(about.get("traits"), dict):
        said = _traits(about["traits"], (*steps, "traits"), findings, knowledge)
        changes["traits"] = {**cloth.traits, **said}
    return replace(cloth, **changes)


def is_scalar(value: object) -> bool:
    """Whether a value is one word or number, as most keys want it."""
    return isinstance(value, str | int | float)


def _with_weight(
    about: Mapping[str, Any],
    reading: Reading,
    steps: Steps,
    findings: Findings,
    knowledge: Knowledge,
    *,
    bare: bool,
) -> Reading:
    if not is_scalar(about.get("weight")):
        return reading

    def read() -> float:
        if bare:
            fibres = frozenset(fibre for mix in reading.mixes for fibre, _ in mix)
            refuse_doubtful(about["weight"], knowledge.entries[reading.entry], fibres)
        return read_measure("weight", about["weight"], bare=bare)

    given = findings.attempt((*steps, "weight"), read)
    said = None if reading.weight is None or reading.weight_in_words else reading.weight[0]
    if None not in (given, said) and abs((given or 0.0) - (said or 0.0)) > _SAME_WEIGHT:
        findings.say(
            (*steps, "weight"),
            "the weight is given twice, and differently",
            "it either here or in the words for the fabric",
        )
    weight = None if given is None else (given, given)
    return replace(reading, weight=weight, weight_in_words=False)


_SAME_WEIGHT = 0.5


def _with_fibres(
    about: Mapping[str, Any],
    reading: Reading,
    steps: Steps,
    findings: Findings,
    knowledge: Knowledge,
) -> Reading:
    """The reading with the fibres that stand under a key of their own."""
    if about.get("fibres") is None:
        return reading
    here: Steps = (*steps, "fibres")
    found = read_mixes(about["fibres"], here, findings, knowledge)
    spoken = {fibre for fibre, _ in reading.fibres}
    if spoken and not all(spoken <= {fibre for fibre, _ in mix} for mix in found or ((),)):
        names = " and ".join(knowledge.fibres[fibre].name for fibre in sorted(spoken))
        findings.say(
            here,
            f"the words for the fabric say {names}, and this does not",
            "the fibres in one of the two places",
        )
    if reading.fibre_unknown and found:
        findings.say(
            here,
            "the words for the fabric say that the fibre is unknown",
            "the fibres in one of the two places",
        )
    if not found:
        entry = knowledge.entries[reading.entry]
        return replace(reading, fibres=(), mixes=entry.mixes, fibre_unknown=True, stated=False)
    return _made_of(found, reading, knowledge)


NAMED_AFTER = 80.0
"""The percentage of a fibre from which a cloth is called after it: a crepe of so much wool is wool
crepe (estimate)."""


def _named_with(reading: Reading, said: str, knowledge: Knowledge) -> Reading:
    """The cloth that its word and its one fibre name together: crepe of wool is wool crepe."""
    mains = {_mainly(mix) for mix in reading.mixes}
    if not reading.fibres or len(mains) != 1 or None in mains:
        return reading
    named = f"{knowledge.fibres[next(iter(mains)) or ''].name} {short_name(said)}"
    entry = knowledge.names.get(plain_name(named))
    if entry in (None, reading.entry) or knowledge.entries[entry or ""].kind != "cloth":
        return reading
    return replace(reading, entry=entry or reading.entry)


def _mainly(mix: Mix) -> str | None:
    """The fibre after which a mix is called; None where none has so great a share."""
    most = [fibre for fibre, share in mix if share is not None and share >= NAMED_AFTER]
    return most[0] if most else None


def _made_of(found: tuple[Mix, ...], reading: Reading, knowledge: Knowledge) -> Reading:
    """The reading of a cloth that is of one of some mixes; of several she means just these."""
    entry = knowledge.entries[reading.entry]
    mixes: list[Mix] = []
    notes = list(reading.notes)
    for mix in found:
        whole = len(found) > 1 or all(share is not None for _, share in mix)
        some, told = possible_mixes(entry, Fibres(mix, whole=whole), knowledge)
        mixes += some
        notes += told
    stated = len(found) > 1 or all(share is not None for _, share in found[0])
    about = [knowledge.entries[id_] for id_ in reading.laid]
    laid = [m for e in about for m in (parts_laid(mixes, e) if stated else e.mixes)]
    give = {stretching(reading.entry, mix) for mix in found}
    return replace(
        reading,
        entry=give.pop() if len(give) == 1 else reading.entry,
        fibres=found[0],
        mixes=tuple(dict.fromkeys([*mixes, *laid])),
        stated=stated,
        notes=tuple(dict.fromkeys(notes)),
    )


def read_mixes(
    said: Any, steps: Steps, findings: Findings, knowledge: Knowledge
) -> tuple[Mix, ...] | None:
    """The mixes that `fibres` names; none of them for `unknown`, and None where it is wrong."""
    if said in ({}, []):
        findings.say(steps, "'fibres': must not be empty", "'unknown' where nobody knows")
        return None
    if isinstance(said, dict):
        mix = _mix_of_shares(said, steps, findings, knowledge)
        return None if mix is None else (mix,)
    if isinstance(said, str):
        if " ".join(said.casefold().split()) in UNKNOWN:
            return ()
        one = findings.attempt(steps, lambda: read_fibres(said, knowledge))
        return None if one is None else (one,)
    if not isinstance(said, list):
        return None
    mixes = [
        findings.attempt((*steps, i), partial(read_fibres, text, knowledge))
        for i, text in enumerate(said)
        if isinstance(text, str)
    ]
    sound = [mix for mix in mixes if mix]
    return tuple(dict.fromkeys(sound)) if sound and len(sound) == len(said) else None


def _mix_of_shares(
    said: dict[str, Any], steps: Steps, findings: Findings, knowledge: Knowledge
) -> Mix | None:
    shares: list[tuple[str, float | None]] = []
    for word, share in said.items():
        fibre = _fibre_named(word, knowledge)
        if fibre is None:
            findings.say(
                (*steps, word),
                f"unknown fibre {shown(word)}",
                None,
                (word, knowledge.fibre_names),
                key=True,
            )
        number = None
        if share is None or is_scalar(share):
            number = findings.attempt((*steps, word), partial(_share, word, share))
        if fibre is not None and number is not None:
            shares.append((fibre, number))
    if len(shares) < len(said) or not shares:
        return None
    whole = ", ".join(f"{fibre} {share:g}" for fibre, share in shares)
    return findings.attempt(steps, partial(_whole, shares, whole))


def _fibre_named(word: str, knowledge: Knowledge) -> str | None:
    """The fibre that a word names, in English or as a label from abroad has it."""
    plain = plain_name(word)
    return knowledge.fibre_names.get(plain) or FIBRES.get(singular(plain))


def _whole(shares: list[tuple[str, float | None]], text: str) -> Mix:
    check_shares(shares, text)
    return tuple(shares)


def _share(fibre: str, said: Any) -> float:
    try:
        return parse("percent", said)
    except ValueError:
        what = (
            f"'{fibre}': {shown(str(said))} is no share"
            if said is not None
            else (f"'{fibre}': the share is missing")
        )
        raise InputError(
            Problem(
                what,
                None,
                f"percent, as in {{{fibre}: 100}}; where shares are not known, "
                "only the names: 'silk metal' for a mix, [silk, viscose] for the one or "
                "the other",
            )
        ) from None


def _traits(
    said: dict[str, Any], steps: Steps, findings: Findings, knowledge: Knowledge
) -> dict[str, tuple[int, int]]:
    """Levels of traits as pairs; one that is `unknown` may be anything."""
    levels: dict[str, tuple[int, int]] = {}
    for trait, level in said.items():
        words = knowledge.traits.get(trait)
        if words is None:
            findings.say(
                (*steps, trait),
                f"unknown trait {shown(trait)}",
                None,
                (trait, knowledge.traits),
                key=True,
            )
        elif is_scalar(level):
            read = partial(read_word, trait, level, (*words, "unknown"))
            word = findings.attempt((*steps, trait), read)
            if word == "unknown":
                levels[trait] = (0, len(words) - 1)
            elif word is not None:
                levels[trait] = (words.index(word), words.index(word))
    return levels
