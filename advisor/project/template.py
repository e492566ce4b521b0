"""Writes the project file that a maker goes on from: her answers, and every other key asleep.

A line that begins with one # is a key that sleeps: without the # it counts. Two # explain.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterable, Iterator

from advisor.knowledge.factwords import CLOTH_FACTS, SEAM_FACTS, SEAM_WORDS
from advisor.knowledge.model import Knowledge
from advisor.project.facts import CHOICES
from advisor.project.making import LESS_BULK
from advisor.project.start import Answers, ClothAnswer, SeamAnswer
from advisor.textio.flow import quoted

WIDTH = 100

EDITOR = """\
# yaml-language-server: $schema=advisor-project.schema.json
## The line above lets an editor complete and check this file, once you have put the schema beside
## it with `advisor schema project > advisor-project.schema.json`.
"""
_HEAD = """\
## A project for the advisor: print its sheet with `advisor sheet` and the name of this file.
## A line with one # before a key is asleep: take the # away and mend the line to use it.
## Lengths, weights and needle sizes may be written in either system: 15 mm, 5/8 in, 240 g/m2,
## 10 oz, 16 momme, 70, US 10. Whatever is left out is assumed, and the sheet says so.
"""
MAKER = {
    "machine": ("household", "what you sew on: household, industrial or hand"),
    "foot lift": ("6 mm", "how high the foot lifts, for thick seams"),
    "overlocker": ("4-thread", "no, or how many threads it has: 3-thread, 4-thread or 5-thread"),
    "feet": ("[standard, zip, walking]", "the feet that you have: {machine.foot}"),
}
_FIBRES = (
    "what it is made of: {silk: 100}; several with shares that make 100; [silk, polyester] where "
    "it may be the one or the other; or unknown"
)
_TRAITS = "what you have seen on a scrap, where it is not as usual: {traits}"
_BENT = (
    "how far a strip reaches over a table edge until its end has sunk to a slope of 8 down for 9 "
    "along; or with sinks: 30 mm, by how much its end then lies lower"
)
CLOTH = {
    "fibres": ("", _FIBRES),
    "weight": ("", "g/m2, oz/yd2 or momme"),
    "thickness": ("0.4 mm", "of one layer, lightly pressed"),
    "colour": ('"#27455f"', "six digits in quotes, or a word"),
    "shade": CLOTH_FACTS["shade"].told,
    "care": CLOTH_FACTS["care"].told,
    "detachable": CLOTH_FACTS["detachable"].told,
    "unwashed": CLOTH_FACTS["unwashed"].told,
    "width": ("150 cm", "of the cloth as it is sold, to reckon how much to buy"),
    "repeat": ("32 cm", "of a pattern that is to match from piece to piece"),
    "selvage": ("1 cm", "at each side, not to be cut from"),
    "shrinks": ("3 %", "along its length, as measured on a square of it"),
    "overhang": ("84 mm", _BENT),
    "price": ("18.50 per m", "what it costs, for advisor quote"),
    "shrinks across": ("1 %", "over its width, measured on the same square"),
    "traits": ("{pin marks: yes}", _TRAITS),
}
SEAM = {
    "length": ("62 cm", "along the seam line"),
    "allowance": ("15 mm", "fixes the allowance, 3 to 50 mm"),
    "shape": SEAM_FACTS["shape"].told,
    "edge": SEAM_FACTS["edge"].told,
    "stress": SEAM_FACTS["stress"].told,
    "finish": ("zigzag", "fixes the edge finish"),
    "seam": ("plain", "fixes the seam"),
    "stitch": ('"301"', "fixes the stitch"),
    "needle": ("sharp", "fixes the needle point"),
    "needle size": ("70", "fixes the needle size"),
    "stitched by": SEAM_FACTS["stitched by"].told,
    "pressing": ("lift and lower", "fixes how it is pressed"),
    "support": ("stay tape", "fixes what supports the seam"),
    "bias": SEAM_FACTS["bias"].told,
    "lined": SEAM_FACTS["lined"].told,
    "worn next to skin": SEAM_FACTS["worn next to skin"].told,
    "times": ("2", "how often the garment has this seam"),
    "kind": (
        "side",
        "what is made there, or where it lies, where its name does not tell: hem, zip, side",
    ),
    "joins": ("[front, back]", "the pieces that it joins, so that the order knows what it crosses"),
    "method": ("French seam", "the way it is made, where you want another: see explain methods"),
    "fitting": ("loosely", "how this place is fitted: to the body, loosely or not at all"),
    "topstitch": ("2", "how many rows of topstitching it has"),
    "left open": ("12 cm", "the opening that you leave in it to turn the garment through"),
    "pressed first": (
        "",
        "cloths that get their own heat before they are joined here; check --take writes it",
    ),
    "fused first": (
        "",
        "interfacings that are fused before a tenderer cloth is joined here",
    ),
    "lessen bulk": ("[press the crossing open]", "how a thick place is made thinner"),
    "moves": ("yes", "yes where it is worked at every step, as a low waist on the hip"),
}
_LAYERS = """\
the layers lie from the side under the iron downwards. A layer is the name of a cloth above, or
{use: frill, fullness: 2.5} where it is gathered in, {use: sleeve, ease: 25 mm} where it is that
much longer than the seam, {use: cuff, stretched: 1.2} where it is
stretched to fit, or {notion: woven fusible interfacing}"""

_MORE = """\
a fastening may say on: shell, fastening: buttonholes and number: 5 instead of its layers;
a seam may also say crosses: [side], gathers: {method: hand rows} or
pleats: {kind: knife, number: 8, depth: 2 cm}; pieces: with name, fabric, width and height reckons
the cloth to buy; with finished width and finished height, and fullness, hem or doubled: yes where
they are meant, the sizes to cut as well. A piece may say tucks: {depth: 1 cm, number: 6, spacing:
25 mm}, or tiers: {number: 3, fullness: 1.5}, or instead of its sizes flounce: {seam: 50 cm, depth:
12 cm, pieces: 2, turn: 0.5}, and the sheet says how to mark them. kit: with needles, feet, pins
and pressing tells what is missing, with thread near: 2 it lets cloths of like colours share a
thread, quote: {hour: 20, prices: {reel: 3}} is what advisor quote reckons by, and results: with
seam and result keeps what a scrap showed"""


def project_text(answers: Answers, knowledge: Knowledge) -> str:
    """A project file of these answers, every other key asleep beside them."""
    lines = [
        *_HEAD.splitlines(),
        f"garment: {quoted(answers.garment)}",
        "## units: metric or us; only what is printed changes",
        f"units: {answers.units}",
        "## fitting: to the body, loosely or not at all; nothing past recall comes before it",
        "# fitting: to the body",
        "## pattern: tried, or new, which asks for a toile first",
        "# pattern: tried",
        "## parts: how each is fitted; it may also say layers: [lining, shell], from the body",
        "## outwards, and separate: [lining] for those that hang free. A place belongs to the part",
        "## that stands in its name, else it says part: skirt",
        "# parts: {skirt: {fitting: loosely}}",
        "## worn by: adult or child; a child's garment has dangers of its own",
        "# worn by: adult",
        "",
        "maker:",
        *_maker(answers, knowledge),
        "",
        "fabrics:",
    ]
    for i, cloth in enumerate(answers.cloths):
        lines += _cloth(cloth, answers.units, knowledge, first=i == 0)
    lines += ["", "seams:"]
    for i, seam in enumerate(answers.seams):
        lines += _seam(seam, answers.units, knowledge, first=i == 0)
    lines += ["", *_explained(_MORE, 0)]
    return "\n".join(lines) + "\n"


def _explained(words: str, indent: int) -> list[str]:
    pad = " " * indent + "## "
    return textwrap.wrap(
        words, WIDTH, initial_indent=pad, subsequent_indent=pad, break_on_hyphens=False
    )


def _option(key: str, given: str, usual: str, words: str, indent: int) -> Iterator[str]:
    """A key with its explanation above it: awake when something was answered, else asleep."""
    if words:
        yield from _explained(f"{key}: {words}", indent)
    yield " " * indent + (f"{key}: {given}" if given else f"# {key}: {usual}")


def _maker(answers: Answers, knowledge: Knowledge) -> Iterator[str]:
    feet = ", ".join(knowledge.aspects["machine.foot"].words)
    given = {
        "machine": answers.machine,
        "overlocker": answers.overlocker,
        "feet": _listed(map(quoted, answers.feet)) if answers.feet else "",
    }
    for key, (usual, words) in MAKER.items():
        yield from _option(key, given.get(key, ""), usual, words.replace("{machine.foot}", feet), 2)


def _cloth(cloth: ClothAnswer, units: str, knowledge: Knowledge, *, first: bool) -> Iterator[str]:
    yield f"  {quoted(cloth.name)}:"
    yield f"    fabric: {quoted(cloth.phrase)}"
    if not first:
        yield f"    # fibres: {_fibres(cloth)}"
        return
    reading = cloth.reading
    weight = "10 oz" if units == "us" else "240 g/m2"
    if reading.weight is not None:
        weight = f"{sum(reading.weight) / 2:.0f} g/m2"
    for key, (usual, words) in CLOTH.items():
        usual = {"fibres": _fibres(cloth), "weight": weight}.get(key, usual)  # noqa: PLW2901
        words = words.replace("{traits}", ", ".join(knowledge.traits))  # noqa: PLW2901
        yield from _option(key, "", usual, words, 4)
    yield from _explained("the same keys may stand under every cloth", 4)


def _fibres(cloth: ClothAnswer) -> str:
    """The fibres that the phrase names, so that waking the line contradicts nothing."""
    mix = cloth.reading.fibres
    if not mix:
        return "unknown"
    if len(mix) == 1 and mix[0][1] is not None:
        return f"{{{quoted(mix[0][0])}: 100}}"
    if any(share is None for _, share in mix):
        return quoted(" ".join(fibre for fibre, _ in mix))
    return "{" + ", ".join(f"{quoted(fibre)}: {share:g}" for fibre, share in mix) + "}"


def _seam(seam: SeamAnswer, units: str, knowledge: Knowledge, *, first: bool) -> Iterator[str]:
    given = {
        "length": quoted(seam.length) if seam.length else "",
        "shape": seam.shape,
        "stress": seam.stress,
    }
    layers = [f"{{notion: {quoted(n)}}}" if notion else quoted(n) for n, notion in seam.layers]
    yield f"  - name: {quoted(seam.name)}"
    if first:
        yield from _explained(f"layers: {' '.join(_LAYERS.split())}", 4)
    yield f"    layers: {_listed(layers)}"
    usual_here = {"length": "24 in", "allowance": "5/8 in"} if units == "us" else {}
    last = next((quoted(n) for n, notion in seam.layers if notion), quoted(seam.layers[-1][0]))
    usual_here |= {"pressed first": f"[{quoted(seam.layers[0][0])}]", "fused first": f"[{last}]"}
    for key, (usual, words) in SEAM.items():
        if first:
            about = _with_words(key, words, knowledge)
            yield from _option(key, given.get(key, ""), usual_here.get(key, usual), about, 4)
        elif given.get(key):
            yield f"    {key}: {given[key]}"
    if first:
        yield from _explained("the same keys may stand under every seam", 4)


def _with_words(key: str, words: str, knowledge: Knowledge) -> str:
    known: Iterable[str] = ()
    if key in CHOICES:
        known = knowledge.aspects[CHOICES[key]].words
    elif key == "lessen bulk":
        known = LESS_BULK
    elif not words:
        known = SEAM_WORDS.get(key, ())
    listed = ", ".join(known)
    return f"{words}: {listed}" if words and listed else words or listed


def _listed(parts: Iterable[str]) -> str:
    return f"[{', '.join(parts)}]"
