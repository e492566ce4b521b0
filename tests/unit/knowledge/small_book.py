"""A small invented knowledge folder: enough of everything, and nothing that the trade argues about.

Engine tests ask it because its answers can be worked out by hand; knowledge tests break it.
"""

# ruff: noqa: E501 - knowledge is written as its files have it
from __future__ import annotations

import tempfile
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from advisor.knowledge.model import Knowledge, from_plain
from advisor.overlay.cache import compile_folder

FILES: dict[str, str] = {
    "sources.yaml": """\
norm: {title: A standard of irons, kind: standard}
page: {title: A page of a shop, kind: trade-page}
habit: {title: Common practice, kind: common-practice}
guess: {title: An estimate, kind: estimate}
""",
    "aspects.yaml": """\
cut.grain: {title: grain, kind: options, scope: [fabric], options: [lengthwise, crosswise, bias]}
cut.hold: {title: hold, kind: options, scope: [fabric], options: [pins, weights]}
needle.size: {title: needle size, asked of: machine, kind: range, scope: [seam], unit: NM, low: 55, high: 130, prefer: low,
  ties: middle}
needle.point: {title: point, asked of: machine, kind: options, scope: [seam], options: [universal, sharp, ballpoint]}
thread.fibre: {title: thread, kind: options, scope: [seam], options: [polyester, cotton, silk]}
stitch.type: {title: stitch, asked of: machine, kind: options, scope: [seam], options: ["301", "304", "504", hand]}
stitch.length: {title: length, asked of: machine, kind: range, scope: [seam], unit: mm, low: 1, high: 5}
machine.foot: {title: foot, asked of: machine, kind: options, scope: [seam], options: [standard, walking, roller]}
seam.bulk: {title: bulk, kind: range, scope: [seam], unit: mm, low: 0, high: 100}
seam.kind: {title: seam, kind: options, scope: [seam], options: [plain, French, overlocked]}
seam.finish: {title: finish, kind: options, scope: [seam], options: [overlocked, pinked, none]}
press.temperature:
  {title: iron, milder: safe, kind: range, scope: [seam, garment], unit: °C, low: 20, high: 210,
  prefer: limit, for: {at most: cloth, at least: seam}}
press.moisture:
  {title: moisture, milder: safe, kind: scale, scope: [seam, garment], prefer: low, words: [dry, damp cloth, steam],
  for: {at most: cloth, at least: look}}
interfacing.kind:
  title: interfacing
  kind: options
  scope: [fabric, seam]
  options: [none, sew-in woven, fusible, fusible knit, low-temperature fusible, hair canvas]
design.avoids:
  {title: avoid, kind: options, scope: [fabric], lists: excluded, options: [gathers, tucks, darts]}
care.wash:
  milder: safe
  title: washing
  kind: options
  scope: [garment]
  options: [60 normal, 40 normal, hand wash, do not wash]
  allows: {60 normal: [40 normal], 40 normal: [hand wash], hand wash: [do not wash]}
care.professional:
  milder: safe
  title: cleaning
  kind: options
  scope: [garment]
  options: [P normal, do not dry clean]
  allows: {P normal: [do not dry clean]}
""",
    "traits.yaml": """\
pile: {words: [no, short, deep], means: raised pile}
slippery: {words: [no, a little, yes], means: slides}
frays: {words: [no, a little, yes], means: edges ravel}
water marks: {words: [no, yes], means: drops leave a mark}
""",
    "fibres.yaml": """\
linen:
  name: linen
  also: [flax]
  group: cellulose
  iron: [{max: 200, sources: [norm]}, {max: 230, sources: [page]}]
  claims:
    - {aspect: press.temperature, min: 170, strength: must, risk: result, why: It stays creased., sources: [habit]}
    - {aspect: press.moisture, min: damp cloth, strength: should, why: It needs water., sources: [habit]}
cotton: {name: cotton, group: cellulose, iron: [{max: 200, sources: [norm]}]}
wool:
  name: wool
  group: protein
  iron: [{max: 150, sources: [norm]}, {max: 110, sources: [page]}]
silk:
  name: silk
  group: protein
  iron: [{max: 150, sources: [norm]}]
  traits: {water marks: yes}
  traits sources: [habit]
nylon:
  name: nylon
  group: polyamide
  iron: [{max: 110, sources: [norm]}]
  claims:
    - {aspect: press.moisture, max: dry, strength: must, why: Steam shrinks it., sources: [norm]}
elastane: {name: elastane, group: elastomer, iron: [{max: 120, sources: [page]}]}
rubber:
  name: rubber
  group: elastomer
  iron: [{max: 120, sources: [page]}]
  claims:
    - {aspect: care.professional, max: do not dry clean, strength: must, why: It swells., sources: [habit]}
cupro: {name: cupro, group: regenerated cellulose, iron: [{max: 180, sources: [norm]}]}
""",
    "machines.yaml": """\
household:
  name: household machine
  stitches: ["301", "304"]
  claims:
    - {aspect: needle.size, max: 110, strength: must, risk: result, why: It is made so., sources: [habit]}
industrial: {name: industrial machine, stitches: ["301"]}
hand: {name: needle and thread, stitches: [hand]}
4-thread: {name: four-thread overlocker, stitches: ["504"]}
""",
    "remedies.yaml": """\
press-first:
  text: Press {needy} before {tender} is joined.
  then: Then cool.
  cures: [press.temperature, press.moisture]
  needs: {a need for heat: "yes"}
  change: {do: press apart}
  price: {effort: 1, look: 0}
  earlier: true
  sources: [habit]
fuse-first:
  text: Fuse {notion} to {neighbour} first.
  then: Then cool.
  cures: [press.temperature]
  needs: {a need for heat: "yes", notion: [fusible]}
  change: {do: fuse first}
  price: {effort: 1, look: 0}
  earlier: true
  sources: [habit]
other-glue:
  text: Use another glue than {notion}.
  then: It melts sooner.
  cures: [press.temperature, interfacing.kind]
  needs: {notion: [fusible]}
  change: {do: swap notion, to: cool-fusible}
  price: {effort: 1, look: 1}
  sources: [habit]
leave-out:
  text: Leave {notion} out.
  then: Nothing is glued.
  cures: [press.temperature, interfacing.kind]
  needs: {notion: [fusible, low-temperature fusible, sew-in, canvas]}
  change: {do: drop notion}
  price: {effort: 0, look: 3}
  sources: [habit]
fingers:
  text: Finger-press it.
  then: No iron.
  cures: [press.temperature, press.moisture]
  needs: {place: seam}
  change: {do: finger-press}
  price: {effort: 1, look: 2}
  sources: [habit]
by-hand:
  text: Sew {place} by hand.
  then: No machine.
  cures: [needle., stitch., machine.]
  needs: {place: seam}
  change: {do: hand-sew}
  price: {effort: 4, look: 0}
  sources: [habit]
shift-it:
  text: Shift the seam that {place} crosses.
  then: Less comes together.
  cures: [seam.bulk]
  needs: {place: seam}
  change: {do: lessen bulk, how: offset}
  price: {effort: 1, look: 1}
  sources: [habit]
buy-foot:
  text: Buy the foot.
  then: It feeds.
  cures: [machine.foot]
  needs: {place: seam}
  change: {do: get foot}
  price: {effort: 3, look: 0}
  sources: [habit]
give-up:
  text: Give up {choice}.
  then: Ours then.
  cures: [seam.finish, stitch., press.]
  needs: {a choice of the maker: "yes"}
  change: {do: free choice}
  price: {effort: 0, look: 0}
  sources: [habit]
take-off:
  text: Make {tender} come off.
  then: Apart.
  cures: [care., press.temperature, press.moisture]
  needs: {place: garment}
  change: {do: detach}
  price: {effort: 4, look: 1}
  sources: [habit]
other-fibre:
  text: Buy {bought} instead of {notion}.
  then: Cleaned together.
  cures: [care.]
  needs: {place: garment, notion: [trim]}
  change: {do: buy of}
  price: {effort: 1, look: 0}
  sources: [habit]
""",
    "fabrics/suiting.yaml": """\
id: suiting
name: suiting
also: [linen cloth]
family: linens
structure: woven
weave: plain
sold in: {fibres: [linen, cotton], sources: [habit]}
weight: {min: 180, max: 260, sources: [guess]}
claims:
  - {aspect: needle.size, min: 80, max: 100, best: 90, why: It is firm., sources: [habit]}
  - {aspect: cut.grain, of: [lengthwise], why: It hangs so., sources: [habit]}
  - {aspect: interfacing.kind, of: [sew-in woven, fusible], why: It bears glue., sources: [habit]}
""",
    "fabrics/organza.yaml": """\
id: organza
name: organza
family: sheers
structure: woven
weave: plain
sold in: {fibres: [silk, nylon], sources: [habit]}
weight: {min: 20, max: 40, sources: [guess]}
claims:
  - {aspect: needle.size, max: 80, strength: must, why: Holes stay., sources: [habit]}
  - {aspect: needle.size, max: 70, best: 65, why: It is fine., sources: [habit]}
  - {aspect: interfacing.kind, not: [fusible, fusible knit], strength: must, why: Glue shows., sources: [habit]}
  - {aspect: care.wash, max: do not wash, strength: must, why: It goes limp., sources: [habit]}
""",
    "fabrics/velvet.yaml": """\
id: velvet
name: velvet
family: piles
structure: woven
weave: pile
sold in: {fibres: [silk, cotton], sources: [habit]}
traits: {pile: short, frays: yes}
traits sources: [habit]
weight: {min: 150, max: 350, sources: [guess]}
claims:
  - {aspect: care.professional, max: do not dry clean, strength: must, why: Glue backing., sources: [habit]}
""",
    "fabrics/lining.yaml": """\
id: lining
name: lining
family: linings
structure: woven
weave: twill
sold in: {fibres: [nylon, cupro, wool 50 nylon 50], sources: [habit]}
traits: {slippery: yes, frays: unknown}
traits sources: [habit]
weight: {min: 60, max: 90, sources: [guess]}
""",
    "fabrics/jersey.yaml": """\
id: jersey
name: jersey
family: knits
structure: knit
weave: single jersey
sold in: {fibres: [cotton 95 elastane 5, wool], sources: [habit]}
weight: {min: 140, max: 220, sources: [guess]}
claims:
  - {aspect: needle.point, of: [ballpoint], strength: must, why: A sharp one cuts loops., sources: [habit]}
""",
    "notions/iron-on.yaml": """\
id: iron-on
name: iron-on
kind: fusible
structure: woven
sold in: {fibres: [cotton], sources: [habit]}
claims:
  - {aspect: press.temperature, min: 140, strength: must, risk: result, why: Glue must melt., sources: [habit]}
""",
    "notions/braid.yaml": """\
id: braid
name: braid
kind: trim
structure: woven
sold in: {fibres: [cotton 60 rubber 40, cotton], sources: [habit]}
""",
    "notions/cool-fusible.yaml": """\
id: cool-fusible
name: cool fusible
kind: low-temperature fusible
structure: nonwoven
sold in: {fibres: [cotton], sources: [habit]}
claims:
  - {aspect: press.temperature, min: 90, strength: must, risk: result, why: Glue must melt., sources: [habit]}
""",
}


def rule(
    area: str, id_: str, when: str, then: str = "", more: str = "", sources: str = "[habit]"
) -> dict[str, str]:
    """One rule file, with examples that nothing here runs."""
    said = f"then:\n  - {then}\n" if then else ""
    text = (
        f"id: {id_}\nclaim: {id_} is so.\nwhy: Because.\nwhen: {when}\n{said}{more}"
        f"sources: {sources}\nexamples:\n  fires: [{{layers: [suiting]}}]\n"
        "  quiet: [{layers: [suiting]}]\n"
    )
    return {f"rules/{area}/{id_}.yaml": text}


RULES: dict[str, str] = {
    **rule(
        "cut",
        "ravels",
        "{layer: {frays: yes}}",
        "{aspect: cut.hold, of: [weights]}",
        "do: [Overcast first.]\n",
    ),
    **rule(
        "seam",
        "gathered",
        "{layer: {fullness: over 1.5}, seam: {stress: low}}",
        "{aspect: stitch.length, min: 3, max: 4}",
    ),
    **rule(
        "stitch",
        "creeps",
        "{pair: [{pile: at least short}, {slippery: at least a little}]}",
        "{aspect: machine.foot, of: [walking, roller], strength: must, risk: result}",
        'tests: ["Stitch {20 cm}."]\n',
    ),
    **rule(
        "stitch",
        "all-woven",
        "{every: {structure: woven}}",
        "{aspect: needle.point, of: [universal, sharp]}",
    ),
    **rule(
        "seam",
        "raw-edge",
        "{some: {frays: at least a little}, seam: {edge: open}}",
        "{aspect: seam.finish, not: [none], strength: must}",
    ),
    **rule(
        "seam", "long-stack", "{seam: {layers: at least 4}}", "{aspect: stitch.length, min: 2.5}"
    ),
    **rule(
        "seam",
        "grows-long",
        "{some: {structure: knit}, seam: {length: over 300}}",
        "{aspect: stitch.length, max: 3}",
    ),
    **rule(
        "stitch",
        "no-overlocker",
        "{maker: {overlocker: no}}",
        "{aspect: seam.finish, not: [overlocked]}",
    ),
    **rule(
        "care",
        "dyed-apart",
        "{garment pair: [{fabric: velvet}, {fabric: organza}]}",
        "{aspect: cut.grain, of: [bias], strength: may, on: second}",
        "cautions: [{kind: fire, text: Keep off the flame.}]\n",
    ),
    **rule(
        "press",
        "wool-felts",
        "{layer: {fibre: wool}}",
        "{aspect: press.moisture, max: damp cloth, strength: must}",
        "cautions: [{kind: burn, text: Hot steam.}]\n",
    ),
    **rule(
        "press",
        "wool-wants-steam",
        "{layer: {fibre: wool}}",
        "{aspect: press.moisture, min: damp cloth}",
    ),
    **rule(
        "press",
        "never-nylon",
        "{layer: {not: {fibre group: polyamide}}}",
        "{aspect: press.moisture, max: steam, strength: must}",
    ),
}


def write_book(folder: Path, changes: Mapping[str, str | None] | None = None) -> Path:
    """Write the small knowledge, with some files changed, added, or (None) left out."""
    for name, text in {**FILES, **RULES, **(changes or {})}.items():
        if text is not None:
            path = folder / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
    return folder


@cache
def small_knowledge() -> Knowledge:
    """The small knowledge, compiled by the real compiler."""
    with tempfile.TemporaryDirectory() as folder:
        return from_plain(compile_folder(write_book(Path(folder))))
