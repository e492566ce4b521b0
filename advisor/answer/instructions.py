"""What the maker is told of work that avoids a clash, and how a remedy is written and taken."""

from __future__ import annotations

import re
from collections.abc import Sequence

from advisor.answer.model.told import ToldInstruction, ToldLine
from advisor.answer.ownheat import own_heat
from advisor.answer.teller import Teller
from advisor.answer.wording import degrees
from advisor.claims.behind import BEHIND
from advisor.claims.byparts import PARTS as PARTED
from advisor.claims.fused_first import FUSED
from advisor.claims.hungup import HUNG
from advisor.claims.lifted import LIFTED, lifted_text
from advisor.claims.workarounds import ALONE, PARTS, ROUND, Instruction
from advisor.craft.irondial import mark_for
from advisor.knowledge.model import COLD, Knowledge
from advisor.project.garment import Garment
from advisor.project.lines import Line, as_yaml
from advisor.units import System, show_range

_SEWN_ON = frozenset({"button"})
DRY = "dry"
TAPE, COTTON = "tape", "cotton"
_PUT_IN = frozenset({"elastic", "bone"})
_PLURAL = re.compile(r"[^aisu]s$")


def take_word(number: int, which: int) -> str:
    """What is typed after `--take` for one remedy of a conflict; its first needs one number."""
    return str(number) if which == 1 else f"{number}.{which}"


def told_lines(lines: Sequence[Line], garment: Garment) -> tuple[tuple[ToldLine, ...], str]:
    """The lines of a remedy, and the same as text; none where there is no project to write into."""
    told = () if garment.single else lines
    return tuple(ToldLine(tuple(line.path), line.value) for line in told), as_yaml(told)


def told_instruction(item: Instruction, teller: Teller) -> ToldInstruction:
    """How the work goes so that two layers never clash under one iron."""
    return ToldInstruction(
        kind=item.kind,
        needy=tuple(sorted(item.needy)),
        tender=tuple(sorted(item.tender)),
        places=tuple(place.name for place in item.places),
        text=instruction_text(item, teller.garment, teller.knowledge, teller.units),
        sources=teller.cite(("common-practice",)),
    )


def instruction_text(
    item: Instruction, garment: Garment, knowledge: Knowledge, units: System
) -> str:
    """One instruction in a sentence or two, as a dressmaker would say it."""
    if item.kind == FUSED:
        return _fusing(item, garment, knowledge, units)
    if item.kind == BEHIND:
        return _behind(item, units)
    if item.kind == HUNG:
        return (
            f"In the last press hang the {_listed(item.tender)} up and let the creases drop: no "
            "iron comes on it."
        )
    if item.kind == LIFTED:
        gentle = "" if item.most is None else f", at most {degrees(item.most, units)}"
        return (
            f"In the last press the lining, and what cannot be parted from it, dry{gentle}; then "
            f"{lifted_text(item, units)}."
        )
    return _pressing(item, garment, knowledge, units)


def _pressing(item: Instruction, garment: Garment, knowledge: Knowledge, units: System) -> str:
    needy, tender = _listed(item.needy), _listed(item.tender)
    bears = _bears(item.most, units)
    if item.kind == "lining":
        last = "" if item.alone else ", and in the last press,"
        apart = f"{', '.join(sorted(item.needy))} and {tender}"
        return (
            f"Press {apart} each by itself{own_heat(item, units)}; where they are "
            f"joined{last} keep to the gentler iron: {tender} {bears}."
        )
    if item.kind == ALONE:
        return f"{_alone(item, needy, tender, bears)}{own_heat(item, units)}."
    if item.kind == "unpressed":
        return f"Press {needy} before it is joined: the finished garment takes no iron."
    if item.kind == "last":
        return (
            f"Press {needy} before it is joined; in the last press touch it only where no "
            f"{_listed(item.tender, 'or')} lies under the iron: "
            f"{'the coolest of them' if item.tender - {tender} else tender} {bears}."
        )
    if item.kind == PARTED and item.most is not None:
        return _parted(item, units)
    if item.kind == ROUND:
        which = "the coolest of them" if item.tender - {tender} else "it"
        return f"In the last press go round the {tender} with the iron; {which} {bears}."
    return _beside_a_part(item, garment, knowledge, bears, units)


def _beside_a_part(
    item: Instruction, garment: Garment, knowledge: Knowledge, bears: str, units: System
) -> str:
    """How a cloth is pressed that meets what is kept from the iron."""
    needy, tender = _listed(item.needy), _listed(item.tender)
    kinds = {
        n: knowledge.entries[garment.cloths[n].entry].kind for n in (*item.needy, *item.tender)
    }
    if not all(kinds[name] in PARTS for name in item.tender):
        return f"Press the {needy} before it goes on; afterwards keep the hot iron off {tender}."
    if all(kinds[name] == TAPE and _may_be_cotton(name, garment) for name in item.tender):
        return (
            f"Take {tender} of cotton, which bears the iron of the {needy}, and name it so (cotton "
            f"{min(item.tender)}); of an unknown fibre it {bears}, and is kept from a hotter iron."
        )
    which = f"they {_plural(bears)}" if _many(item.tender) else f"the {tender} {bears}"
    return f"{_before(item, kinds, needy, tender, own_heat(item, units))}; {which}."


def _may_be_cotton(name: str, garment: Garment) -> bool:
    """Whether it is sold in cotton among other fibres, and nobody says of which this one is."""
    mixes = garment.cloths[name].mixes
    return len(mixes) > 1 and any({fibre for fibre, _ in mix} == {COTTON} for mix in mixes)


def _behind(item: Instruction, units: System) -> str:
    """How a seam is pressed where its backing lies, and where it ends before."""
    lie, reach = ("lie", "they do") if _many(item.tender) else ("lies", "it does")
    iron = "no iron" if mark_for(item.most or COLD) is None else "at most {}"
    most, alone = (degrees(heat or COLD, units) for heat in (item.most, item.alone))
    return (
        f"Where {_listed(item.tender)} {lie} behind {_listed(item.needy)}: {iron.format(most)}; "
        f"where {reach} not reach: at most {alone}."
    )


def _alone(item: Instruction, needy: str, tender: str, bears: str) -> str:
    many = _many(item.tender)
    which = f"which {_plural(bears) if many else bears}"
    if len(item.tender) > 1 and item.most is not None and mark_for(item.most):
        which = f"of which the coolest {bears}"
    verb = "are" if many else "is"
    return f"Press the {needy} pieces by themselves before {tender}, {which}, {verb} joined"


def _parted(item: Instruction, units: System) -> str:
    smoothed = "are" if len(item.tender) > 1 else "is"
    most = "" if item.most is None else f" at most {degrees(item.most, units)}"
    return (
        f"Last of all press it part by part, dry: {_listed(item.needy)}{most}, where no "
        f"{_listed(item.tender, 'or')} lies under the iron; {_listed(item.tender)} {smoothed} "
        "smoothed with the hands."
    )


def over(kept_off: Sequence[str], off: str = ", not") -> str:
    """What an ironing line adds of the parts that the iron is kept off; "" where there are none."""
    return f"{off} over the {_listed(frozenset(kept_off))}" if kept_off else ""


def apart(items: Sequence[Instruction], units: System | None = None) -> str:
    """What an ironing line adds of a shell that is pressed at last without its lining; or "".

    With units it says how.
    """
    found = next((i for i in items if i.kind == LIFTED), None)
    if found is None:
        return ""
    return f"; {lifted_text(found, units)}" if units else f", {_listed(found.needy)} apart"


def by_parts(items: Sequence[Instruction]) -> Instruction | None:
    """How a garment is pressed at last of which a part takes no iron; None where all of it does."""
    return next((i for i in items if i.kind == PARTED and i.most is not None), None)


def hanging(items: Sequence[Instruction]) -> tuple[str, ...]:
    """What the last press leaves out."""
    return tuple(name for i in items if i.kind == HUNG for name in sorted(i.tender))


def parted_text(item: Instruction, units: System) -> str:
    """The setting of such a last press, in the words of the sheet's line."""
    pressed, kept = _listed(item.needy), _listed(item.tender)
    most = "" if item.most is None else f" at most {degrees(item.most, units)}"
    return f"part by part, {pressed}{most}; no iron on {kept} or over it"


def _fusing(item: Instruction, garment: Garment, knowledge: Knowledge, units: System) -> str:
    """How a glue is fused to its layer, by its own figures, before the others are joined."""
    glue = next(iter(item.needy))
    about = knowledge.entries[garment.cloths[glue].entry].facts.get("fuses at") or {}
    how = [DRY if item.dry else str(about["moisture"])] if about.get("moisture") else []
    if about.get("min") and about.get("max"):
        how.insert(0, show_range("temperature", about["min"], about["max"], units))
    if about.get("seconds"):
        how.append(f"about {about['seconds']:g} s a spot; let it cool")
    told = f": {', '.join(how)}" if how else ""
    return f"Fuse the {glue} to the flat {_listed(item.tender)} before it is joined{told}."


def _before(item: Instruction, kinds: dict[str, str], needy: str, tender: str, heat: str) -> str:
    """When the cloth is pressed beside a part, and how the part is kept from the iron."""
    found = {kinds[name] for name in item.tender}
    goes, it = ("go", "them") if _many(item.tender) else ("goes", "it")
    off = f"and keep the hot iron off {it}"
    then = f"{heat};" if heat else ","
    if found == {"zip"}:
        return f"Press the {needy} edges before the {tender} {goes} in, {off}"
    if found <= _PUT_IN:
        return f"Press the {needy} before the {tender} {goes} in{then} {off}"
    if found <= _SEWN_ON:
        return f"Press the {needy} before the {tender} {goes} on{then} and iron round {it}"
    return f"Press the {needy} before the {tender} {goes} on{then} {off}"


def _many(tender: frozenset[str]) -> bool:
    """Whether more than one is spoken of: two layers, or one that is called in the plural."""
    return len(tender) > 1 or any(_PLURAL.search(name) for name in tender)


def _bears(most: float | None, units: System) -> str:
    """What a tender layer bears."""
    if most is None:
        return "is pressed dry"
    if mark_for(most) is None:
        return "takes no iron"
    return f"bears {degrees(most, units)}"


def _plural(bears: str) -> str:
    return bears.replace("takes", "take").replace("bears", "bear").replace("is ", "are ")


def _listed(names: frozenset[str], last: str = "and") -> str:
    words = sorted(names)
    return f" {last} ".join([", ".join(words[:-1]), words[-1]] if words[1:] else words)
