"""Fibres and cloths as labels and shops of other languages call them, in plain English words.

A cloth from a market often still has its label: "59 % cotone, 41 % viscosa". The names of fibres
are those that the language versions of Regulation (EU) No 1007/2011, annex I, lay down; the
German ones were looked up there, the French, Italian and Spanish ones are from memory. The names
of cloths are common practice of shops. Accents are gone, as `words_of` takes them away.
"""

from __future__ import annotations

from collections.abc import Iterable

FIBRES = {
    "wolle": "wool", "schurwolle": "wool", "laine": "wool", "lana": "wool",
    "seide": "silk", "soie": "silk", "seta": "silk", "seda": "silk",
    "baumwolle": "cotton", "coton": "cotton", "cotone": "cotton", "algodon": "cotton",
    "flach": "linen", "leinen": "linen", "lin": "linen", "lino": "linen",
    "hanf": "hemp", "chanvre": "hemp", "canapa": "hemp", "canamo": "hemp",
    "iuta": "jute", "yute": "jute", "ramio": "ramie",
    "viskose": "viscose", "viscosa": "viscose",
    "acetat": "acetate", "acetato": "acetate",
    "triacetat": "triacetate", "triacetato": "triacetate",
    "polyacryl": "acrylic", "acrylique": "acrylic", "acrilica": "acrylic", "acrilico": "acrylic",
    "modacryl": "modacrylic", "modacrylique": "modacrylic", "modacrilica": "modacrylic",
    "poliammide": "nylon", "poliamida": "nylon",
    "poliestere": "polyester", "poliester": "polyester",
    "polyurethan": "polyurethane", "poliuretano": "polyurethane", "poliuretanica": "polyurethane",
    "elastan": "elastane", "elasthanne": "elastane", "elastano": "elastane",
    "elastodien": "rubber", "elastodiene": "rubber", "gomma": "rubber",
    "polypropylen": "polypropylene", "polipropilene": "polypropylene",
    "polipropileno": "polypropylene",
    "kaschmir": "cashmere", "cachemire": "cashmere", "cachemir": "cashmere",
    "alpaka": "alpaca", "chameau": "camel", "cammello": "camel", "camello": "camel",
    "metallfaser": "metal",
}  # fmt: skip
"""Fibre words of German, French, Italian and Spanish labels, and the fibre."""

CLOTHS = {
    "popeline": "poplin", "popelin": "poplin", "popelina": "poplin", "popelino": "poplin",
    "batist": "batiste", "gabardina": "gabardine", "gabardin": "gabardine",
    "raso": "satin", "atlas": "satin", "samt": "velvet", "velluto": "velvet",
    "terciopelo": "velvet", "spitze": "lace", "dentelle": "lace", "pizzo": "lace",
    "encaje": "lace", "futterstoff": "lining", "doublure": "lining", "fodera": "lining",
    "mantelstoff": "coating", "anzugstoff": "suiting", "hemdenstoff": "shirting",
    "kleiderstoff": "dress fabric",
    "jeansstoff": "denim", "vaquera": "denim", "vaquero": "denim",
    "kunstleder": "faux leather", "similicuir": "faux leather", "ecopelle": "faux leather",
    "polipiel": "faux leather", "kunstpelz": "faux fur",
    "walkloden": "boiled wool", "wollwalk": "boiled wool",
    "milleraies": "corduroy", "breitcord": "corduroy", "feincord": "corduroy",
    "mousselin": "muslin", "musselin": "muslin", "gaze": "gauze", "garza": "gauze",
    "stoff": "fabric", "tissu": "fabric", "tessuto": "fabric", "tela": "fabric",
    "tejido": "fabric", "maille": "knit", "maglia": "knit", "strickstoff": "knit",
    "drap": "cloth", "lave": "washed", "sauvage": "wild", "cotta": "boiled", "bouillie": "boiled",
    "organdi": "organdy", "tul": "tulle", "crespo": "crepe", "krepp": "crepe",
    "filz": "felt", "filc": "felt", "feutre": "felt", "feltro": "felt", "fieltro": "felt",
}  # fmt: skip
"""Words for cloths in shops of those languages, in the trade's English."""


def in_english(words: list[str], named: Iterable[tuple[str, ...]] = ()) -> list[str]:
    """Words put into English; of a cloth's name that stands here whole, "peau de soie", none is."""
    if not any(word in CLOTHS or word in FIBRES for word in words):
        return words
    kept = {word for name in named if set(name) <= set(words) for word in name}
    said: list[str] = []
    for word in words:
        english = "" if word in kept else CLOTHS.get(word) or FIBRES.get(word, "")
        said += english.split() or [word]
    return said
