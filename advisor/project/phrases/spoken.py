"""What people say about a cloth in whole phrases, put into words that the grammar knows."""

from __future__ import annotations

import re

_UNKNOWN = re.compile(
    r"\b(?:(?:unknown|mystery)\s+fib(?:re|er)s?|fib(?:re|er)s?\s+unknown|(?:fib(?:re|er)s?\s+)?"
    r"(?:content|composition)\s+unknown|unknown|mystery"
    r"|(?:no idea|no clue|not sure|not certain|dunno|do(?:es)?(?: not|n't|nt) know|who knows"
    r"|unlabell?ed|no label|without (?:a )?label)"
    r"(?:\s+(?:what|which|of|about|the|it|it's|its|is|i|we|made|fib(?:re|er)s?|content"
    r"|composition|this|kind))*)\b"
)
_ASIDE = re.compile(
    r"\b(?:water|sun|age|rust|ink|moth|wax)[\s-]*(?:stain|mark|damage|hole|fade|spot)\w*"
    r"|\bin the wash\b"
    r"|\d+(?:\.\d+)?% (?:(?:horizontal|vertical|crosswise|lengthwise) )?(?=stretch)"
    r"|(?<!\w)(?:no|nr|number|size)\s?\d{1,2}\b(?!%)"
)
"""What is the matter with a piece, or how it is numbered in a shop, not what it is."""
_METAL_YARN = re.compile(
    r"(?:(?:(?<=with )|(?<=with a )|(?<= and )|(?<= in ))"
    r"(?:gold|golden|silver|copper|bronze|metal|metallic)\s+(?:thread|yarn|strand|fleck)s?"
    r"|(?:gold|golden|silver|copper|metallic)\s+(?:borders?|edg(?:e|ing)s?|butt?(?:a|i)s?))\b"
)
"""A thread of that colour in a cloth is mostly a metal-coated film, and is taken for one."""
_METAL_PRINT = re.compile(
    r"\b(?:gold|golden|silver|copper|bronze|metal|metallic)\s+(?:foil\s+)?print(?:ed|s)?\b"
)
"""A print of that colour is as often a metal-coated film as a pigment, and is taken for one."""
_COATING = re.compile(
    r"\bcoating (?=on\b|at\b|inside\b)"
    r"|(?<![\d%] )\b(?:pu|pvc|rubber|silicone|acrylic|waterproof|plastic|wax) coating\b"
)
"""What lies on a cloth; "coating" by itself, or behind a fibre with a share, is cloth for coats."""
_WET_LOOK = re.compile(r"\bwet[\s-]*look(?= (?!knit|cloth|fabric)\w)")
_RUBBERISED = re.compile(r"\brubberi[sz]ed\b")
"""A coat of rubber bears less than the coats that a cloth mostly has."""
_SATIN_BACK = re.compile(r"\bsatin[\s-]*back(?:ed)?\b(?! crepe)(?!.* lining\b)")
_BED_SHEET = re.compile(r"\bbed sheets?\b")
_TEA_TOWEL = re.compile(r"\btea towels?\b")
_T_SHIRT = re.compile(r"\bt shirts?\b(?! (?:fabric|knit|jersey|cloth|material)\b)")
_CORDED_LACE = re.compile(r"\bcord lace\b")
_EASY_CARE = re.compile(r"\beasy[\s-]*care\b")
_EASY_NAMES = frozenset({"cotton", "cloth"})
"""What is a cloth of its own where it is called easy-care."""
_PU_LEATHER = re.compile(r"\bpu[\s-]*leather\b")
_SKIN_TONE = re.compile(r"\bskin[\s-]*(?:ton(?:e|ed|es)|colou?r(?:ed)?)\b")
_PAPERY = re.compile(r"\bpaper[\s-]+(?=taffeta|touch|feel)")
_BASE_LAYER = re.compile(r"\bbase layers?\b")
_FLOCK = re.compile(r"\b(?:velvet|chenille) (?:flock(?:ed|ing)?|spot|dot|motif|flower|pattern)s?\b")
_HAIRED = re.compile(r"\b(?:long|short)[\s-]?hair(?:ed)?\b")
_PROOF = re.compile(r"\b(?:water|rain|shower)[\s-]*(?:resistant|repellent|proof(?:ed)?)\b")
_DOWN_PROOF = re.compile(r"\b(?:down|feather)[\s-]*proof(?:ed)?\b")
_HARMLESS = re.compile(
    r"\b(?:non|no|not|without)[\s-]*(?:stretch\w*|directional|see[\s-]?through|transparent|shiny"
    r"|print\w*|pattern\w*)\b"
)
"""What a cloth is said not to be that changes nothing: what is left open stays the tenderest."""


def plain_words(text: str) -> tuple[list[str], bool]:
    """The words of a phrase less what is said of not knowing, and whether that was said."""
    text = _PROOF.sub("waterproof", _HARMLESS.sub(" ", _ASIDE.sub(" ", text)))
    text = _WET_LOOK.sub("foiled", _RUBBERISED.sub("rubberised rubber", text))
    text = _SATIN_BACK.sub("satinbacked", text)
    text = _METAL_PRINT.sub("metallic print", _DOWN_PROOF.sub("downproof", text))
    text = _COATING.sub("coated ", _FLOCK.sub("flocked", _METAL_YARN.sub("metallic", text)))
    text = _BED_SHEET.sub("bedsheet", _TEA_TOWEL.sub("napkin", _HAIRED.sub("shaggy", text)))
    text = _CORDED_LACE.sub("corded lace", text)
    text = _SKIN_TONE.sub("flesh", _PAPERY.sub("crisp ", _PU_LEATHER.sub("pleather", text)))
    if not _EASY_NAMES & set(text.split()):
        text = _EASY_CARE.sub(" ", text)
    text = _T_SHIRT.sub("tshirt", _BASE_LAYER.sub("baselayer", text))
    return _UNKNOWN.sub(" ", text).split(), bool(_UNKNOWN.search(text))
