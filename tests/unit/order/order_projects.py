"""Small projects for the tests of the order of work, and the short way from a file to its order."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from advisor.claims.judgement import Advice
from advisor.decide.advise import advise
from advisor.knowledge.model import Knowledge
from advisor.order.work import Work, order_of
from advisor.project.load import garment_of, load_project
from advisor.textio.yamlfile import parse_yaml
from tests.typed import shipped

DEMOS = Path(__file__).resolve().parents[3] / "knowledge" / "examples"

BODICE = """\
garment: Lined bodice
fitting: loosely
maker: {machine: household, overlocker: 3-thread}
fabrics:
  shell: {fabric: wool crepe, colour: "#203040"}
  lining: {fabric: lining, fibres: {viscose: 100}, colour: "#203040"}
seams:
  - {name: back dart, layers: [shell], length: 12 cm}
  - {name: front dart, layers: [shell], length: 14 cm}
  - {name: centre back, layers: [shell, shell], length: 20 cm}
  - {name: centre back zip, layers: [shell, {notion: coil zip}], length: 40 cm}
  - {name: shoulder, layers: [shell, shell], length: 12 cm}
  - {name: neck facing, layers: [shell, shell], length: 60 cm, shape: curved, edge: turned}
  - {name: side, layers: [shell, shell], length: 22 cm}
  - {name: sleeve underarm, layers: [shell, shell], length: 40 cm}
  - {name: sleeve hem, layers: [shell], length: 30 cm, edge: hem}
  - {name: armhole, layers: [shell, shell], length: 46 cm, shape: curved}
  - {name: lining dart, layers: [lining], length: 12 cm}
  - {name: lining shoulder, layers: [lining, lining], length: 12 cm}
  - {name: lining side, layers: [lining, lining], length: 20 cm}
  - {name: facing to lining, layers: [shell, lining], length: 60 cm, shape: curved}
  - {name: hem, layers: [shell, lining], length: 90 cm, edge: hem}
"""
SKIRT = """\
garment: Simple skirt
fitting: loosely
fabrics:
  cloth: {fabric: gabardine}
seams:
  - {name: back dart, layers: [cloth], length: 12 cm}
  - {name: front dart, layers: [cloth], length: 10 cm}
  - {name: centre back, layers: [cloth, cloth], length: 40 cm}
  - {name: zip, layers: [cloth, {notion: coil zip}], length: 20 cm}
  - {name: side, layers: [cloth, cloth], length: 60 cm}
  - name: waistband
    layers: [cloth, {notion: woven fusible interfacing}, cloth]
    length: 70 cm
    edge: turned
  - {name: hem, layers: [cloth], length: 110 cm, edge: hem}
"""
TIERS = """\
garment: Tiered skirt
fabrics:
  cloth: {fabric: chiffon, fibres: {silk: 100}}
seams:
  - {name: tier 1 to tier 2, layers: [cloth, {use: cloth, fullness: 1.5}], length: 100 cm}
  - {name: tier 2 to tier 3, layers: [cloth, {use: cloth, fullness: 1.5}], length: 150 cm}
  - {name: side, layers: [cloth, cloth], length: 80 cm, finish: enclosed in the seam}
  - {name: waistband, layers: [cloth, cloth], length: 75 cm}
  - {name: hem, layers: [cloth], length: 225 cm, edge: hem, bias: yes}
"""
TROUSERS = """\
garment: Trousers
maker: {machine: household, overlocker: 4-thread}
fabrics:
  cloth: {fabric: denim}
seams:
  - {name: pleats, layers: [cloth], length: 12 cm}
  - {name: front pockets, layers: [cloth, cloth], length: 20 cm, shape: curved, edge: turned}
  - {name: back yoke, layers: [cloth, cloth], length: 40 cm}
  - {name: outseam, layers: [cloth, cloth], length: 100 cm}
  - {name: inseam, layers: [cloth, cloth], length: 75 cm}
  - {name: fly zip, layers: [cloth, {notion: metal zip}], length: 18 cm}
  - {name: crotch, layers: [cloth, cloth], length: 50 cm, shape: curved}
  - {name: waistband, layers: [cloth, cloth], length: 80 cm, edge: turned}
  - {name: hems, layers: [cloth], length: 40 cm, edge: hem}
  - {name: waistband button, layers: [cloth, cloth], stitched by: hand}
"""
KNIT = """\
garment: Knit top
maker: {machine: household, overlocker: 4-thread}
fabrics:
  body: {fabric: jersey, fibres: {cotton: 95, elastane: 5}}
  rib: {fabric: rib knit}
seams:
  - {name: shoulders, layers: [body, body], length: 12 cm, stitch: "514"}
  - {name: neckband, layers: [body, {use: rib, stretched: 1.15}], length: 55 cm}
  - {name: sides, layers: [body, body], length: 40 cm, stitch: "514"}
  - {name: armholes, layers: [body, body], length: 45 cm, shape: curved, stitch: "514"}
  - {name: hem, layers: [body], length: 90 cm, edge: hem}
"""
CONCEALED = """\
garment: Dress with a hidden zip
fabrics:
  cloth: {fabric: gabardine}
seams:
  - {name: zip, layers: [cloth, {notion: concealed zip}], length: 50 cm}
  - {name: centre back, layers: [cloth, cloth], length: 60 cm}
  - {name: side, layers: [cloth, cloth], length: 80 cm}
  - name: waist
    layers: [cloth, cloth]
    length: 70 cm
    pleats: {kind: knife, number: 10, depth: 2 cm}
"""
COSTUME = """\
garment: Procession cape
fabrics:
  linen: {fabric: linen suiting}
  lace: {fabric: lace, fibres: {nylon: 100}}
  sparks: {fabric: sequinned, fibres: {polyester: 100}}
seams:
  - {name: shoulder, layers: [linen, linen], length: 14 cm}
  - {name: lace yoke, layers: [linen, lace], length: 40 cm}
  - {name: edge, layers: [linen, linen], length: 90 cm, edge: turned, shape: curved}
  - {name: strap, layers: [linen, sparks], length: 30 cm}
"""
BONED = """\
garment: Boned bodice
maker: {machine: household, foot lift: 5 mm, feet: [standard, zip]}
fabrics:
  shell: {fabric: linen suiting}
  mesh: {fabric: power mesh, fibres: {nylon: 80, elastane: 20}}
  trim: {fabric: suede}
  pile: {fabric: corduroy, fibres: {cotton: 100}}
  clear: {fabric: vinyl}
  skirt: {fabric: chiffon, fibres: {silk: 100}}
seams:
  - {name: bones, layers: [shell, {notion: boning}, shell], length: 25 cm, times: 6}
  - {name: front panel, layers: [shell, shell], length: 30 cm, shape: curved}
  - {name: side, layers: [shell, shell], length: 30 cm}
  - {name: neck trim, layers: [shell, trim], length: 50 cm, shape: curved}
  - {name: armhole, layers: [shell, {use: mesh, stretched: 1.1}], length: 44 cm, shape: curved}
  - {name: collar, layers: [pile, clear], length: 40 cm}
  - name: waist
    layers: [shell, {use: skirt, fullness: 2}]
    length: 70 cm
    gathers: {method: gathering foot}
"""
TUCKED = """\
garment: Tucked blouse with a bound neck
maker: {machine: household, overlocker: 4-thread}
fabrics:
  lawn: {fabric: lawn, fibres: {cotton: 100}, width: 140 cm}
  strip: {fabric: batiste, fibres: {cotton: 100}}
  knit: {fabric: swim knit, fibres: {nylon: 80, elastane: 20}}
  stars: {fabric: sequinned, fibres: {polyester: 100}}
seams:
  - {name: front panel, layers: [lawn, lawn], length: 40 cm, bias: yes}
  - {name: shoulder, layers: [lawn, lawn], length: 12 cm}
  - {name: star panel, layers: [lawn, stars], length: 20 cm}
  - {name: patch pocket, layers: [lawn, lawn], length: 40 cm, shape: curved, edge: turned}
  - {name: badge, layers: [lawn, strip], length: 30 cm, shape: curved}
  - {name: neck binding, layers: [lawn, strip], length: 50 cm, shape: curved}
  - {name: side, layers: [lawn, lawn], length: 50 cm}
  - {name: knit zip, layers: [knit, {notion: coil zip}], length: 20 cm, stitch: "514"}
  - {name: knit panel, layers: [knit, knit], stitch: "514", shape: curved, edge: turned}
  - {name: leg elastic, layers: [knit, {notion: braided elastic}], length: 45 cm, stitch: "514"}
  - {name: hem, layers: [lawn, {notion: horsehair braid}], length: 90 cm, shape: curved}
pieces:
  - {name: front, fabric: lawn, finished width: 50 cm, finished height: 60 cm,
     tucks: {depth: 5 mm, number: 6, spacing: 3 cm}}
  - {name: back, fabric: lawn, width: 55 cm, height: 60 cm}
  - {name: neck strip, fabric: strip, width: 4 cm, height: 55 cm, grain: bias}
"""
TAILORED = """\
garment: Tailored jacket
pattern: new
fitting: to the body
maker: {machine: household}
fabrics:
  cloth: {fabric: wool gabardine}
  canvas cloth: {fabric: linen suiting}
  back: {fabric: organza, fibres: {silk: 100}}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: underlining, layers: [cloth, back]}
  - {name: front dart, layers: [cloth], length: 14 cm}
  - {name: front canvas, layers: [cloth, {notion: hair canvas}], length: 50 cm}
  - {name: roll line, layers: [cloth, {notion: stay tape}], length: 30 cm}
  - {name: collar interfacing, layers: [cloth, canvas cloth]}
  - {name: collar edge, layers: [cloth, back, cloth], length: 60 cm, edge: turned}
  - {name: shoulder, layers: [cloth, cloth], length: 13 cm}
  - {name: side, layers: [cloth, cloth], length: 40 cm}
  - {name: front facing, layers: [cloth, cloth], length: 60 cm, shape: curved, edge: turned}
  - {name: sleeve underarm, layers: [cloth, cloth], length: 44 cm}
  - name: armhole
    layers: [cloth, {use: cloth, fullness: 1.06}]
    length: 48 cm
    shape: curved
  - {name: shoulder pads, layers: [cloth, {notion: shoulder pad}]}
  - {name: facing to lining, layers: [cloth, lining], length: 150 cm, shape: curved}
  - {name: hem, layers: [cloth], length: 100 cm, edge: hem}
"""
RAIN = """\
garment: Raincoat
maker: {machine: household, feet: [standard, roller, zip]}
fabrics:
  coat: {fabric: showerproof cloth, fibres: {nylon: 100}}
seams:
  - {name: shoulder, layers: [coat, coat], length: 16 cm}
  - {name: side, layers: [coat, coat], length: 62 cm}
  - {name: armhole, layers: [coat, coat], length: 56 cm, shape: curved}
  - {name: storm flap, layers: [coat, coat], length: 72 cm, edge: turned, topstitch: 1}
  - {name: front zip, layers: [coat, {notion: moulded zip}, coat], length: 72 cm}
  - {name: hem drawcord casing, layers: [coat, {notion: drawcord}], length: 120 cm}
"""
WHOLE_DRESS = """\
garment: Chiffon dress with a zip
fitting: to the body
maker: {machine: household}
fabrics:
  silk: {fabric: chiffon, fibres: {silk: 100}}
  lining: {fabric: lining, fibres: {viscose: 100}}
seams:
  - {name: skirt side, layers: [silk, silk], length: 60 cm, seam: French}
  - {name: bodice side, layers: [lining, silk, silk, lining], length: 20 cm, seam: plain}
  - {name: waist, layers: [lining, {use: silk, fullness: 2}], length: 70 cm}
  - {name: centre back zip, layers: [silk, {notion: concealed zip}], length: 50 cm}
  - {name: facing to lining, layers: [silk, lining], length: 60 cm, shape: curved}
  - {name: hem, layers: [silk], length: 200 cm, edge: hem}
"""
STARRED = """\
garment: Starred bodice
fabrics:
  bodice: {fabric: satin, fibres: {polyester: 100}}
seams:
  - {name: side, layers: [bodice, bodice], length: 20 cm}
  - {name: glued stones, layers: [bodice, {notion: glass button}], times: 30}
"""
PLEATED = """\
garment: Pleated skirt over a boned foundation
pattern: tried
fitting: to the body
fabrics:
  wool: {fabric: wool gabardine}
  sheer: {fabric: georgette, fibres: {polyester: 100}}
  base: {fabric: coutil, fibres: {cotton: 100}}
  net: {fabric: tulle, fibres: {nylon: 100}}
seams:
  - {name: panels, layers: [wool, wool], length: 62 cm}
  - {name: skirt pleats, layers: [wool], pleats: {kind: knife, number: 24, depth: 3 cm, face: 3 cm}}
  - {name: side, layers: [wool, wool], length: 62 cm}
  - {name: hem, layers: [wool], length: 240 cm, edge: hem}
  - {name: foundation side, layers: [base, base], length: 30 cm}
  - {name: bones, layers: [base, {notion: spiral boning}], length: 28 cm, times: 8}
  - {name: net to foundation, layers: [base, {use: net, fullness: 3}], length: 90 cm}
  - {name: sleeve insertion, layers: [sheer, {notion: lace insertion}], length: 50 cm}
  - {name: sleeve seam, layers: [sheer, sheer], length: 46 cm}
  - {name: armhole, layers: [wool, {use: sheer, fullness: 1.5}], length: 46 cm}
"""
SMALL = {
    "bodice": BODICE,
    "skirt": SKIRT,
    "tiers": TIERS,
    "trousers": TROUSERS,
    "knit": KNIT,
    "concealed": CONCEALED,
    "costume": COSTUME,
    "boned": BONED,
    "tucked": TUCKED,
}


@cache
def known() -> Knowledge:
    """The shipped knowledge, read once."""
    return shipped()


def advice_of(text: str) -> Advice:
    """The advice on a project given as text."""
    return advise(garment_of(parse_yaml(text, "project.yaml"), known()), known())


@cache
def work_of(text: str, *, plain: bool = False) -> Work:
    """The order of work of a project given as text."""
    return order_of(advice_of(text), known(), plain=plain)


@cache
def demo(name: str) -> Work:
    """The order of work of a demo project."""
    return order_of(demo_advice(name), known())


@cache
def demo_advice(name: str) -> Advice:
    """The advice on a demo project."""
    return advise(load_project(DEMOS / f"{name}.yaml", known()), known())


def demo_names() -> list[str]:
    """The demo projects."""
    return sorted(path.stem for path in DEMOS.glob("*.yaml"))


def before(work: Work, first: str, second: str) -> bool:
    """Whether one step stands before another."""
    return work.order.index(first) < work.order.index(second)


HUNG_FREE = """
garment: Skirt with a lining that hangs free
fabrics: {shell: {fabric: linen suiting}, lining: {fabric: lining, fibres: {viscose: 100}}}
parts:
  skirt: {layers: [lining, shell], separate: [lining], fitting: to the body}
seams:
  - {name: side seam, layers: [shell, shell], length: 60 cm, part: skirt}
  - {name: back zip, layers: [shell, {notion: coil zip}], length: 20 cm, part: skirt}
  - {name: lining side, layers: [lining, lining], length: 58 cm, part: skirt}
"""
