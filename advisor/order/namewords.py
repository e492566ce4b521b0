"""Roles and figures by which the order of work tells where a place lies.

The lists are common practice where nothing else is said.
"""

from __future__ import annotations

from advisor.knowledge import nouns

ZIPS = frozenset({"zip", "concealed-zip", "side-zip"})
ROUND_MM = 1000.0
"""A trimming from this length on lies round edges and on no one piece, mm: estimate."""
PAIR = 2
WHOLE_FRONT_MM = 700.0
"""A front band from this length on runs down over the waist, where there is one, mm: estimate."""
AFTER_HEM = frozenset({"edge-trim", "vent-lining"})
"""Roles of what is sewn to finished edges, the hem among them."""
SLEEVE_ENDS = frozenset({"underarm", "cuff", "sleeve-hem", "sleeve-vent"})
"""What lies on a sleeve, which no placket of the body meets."""
UPPER_ROLES = frozenset(
    {
        *(
            "shoulder",
            "armhole",
            "underarm",
            "collar",
            "stand",
            "collar-attach",
            "neckband",
            "cuff",
        ),
        *("cuff-edge", "sleeve-hem", "sleeve-vent", "bagged-edge"),
    }
)
"""What lies above the waist whatever the garment is."""
BODICE, SKIRT, HOOD = "bodice", "skirt", "hood"
BUST_GATHERS = "bust-gathers"
"""The role of gathers on the fronts of a bodice."""
BODY = nouns.HALVES | {BODICE, SKIRT}
BAGGED_EDGE, TOP_EDGE, STRAP = "bagged-edge", "top-edge", "strap"
TURNS = frozenset({"shoulder", "raglan", "yoke"})
"""Roles of the seams through which an upper edge is turned. What hangs from straps alone has none:
its edge goes round the body, over closed sides."""
CHANNEL = "bone-channel"
ON_ITS_CLOTH = frozenset({"hem", "casing"})
"""Kinds of edge that are turned in from the cloth itself, which is therefore always told."""
SLEEVE, SETS_SLEEVES = "sleeve", frozenset({"armhole", "raglan", "side-and-sleeve"})
"""The word of what lies on a sleeve, and the roles of what joins a sleeve to the body."""
OF_THE_BODY = frozenset({"side", "centre", "waist", "waistband", "crotch", "inseam", "yoke"})
"""Roles of seams of the body that no sleeve has."""
ALL_TOLD = frozenset({"seam", "gathers", "laid on", "dart", "fold"})
"""Families of places whose layers are all the cloths that meet there."""
AT_THE_WAIST = frozenset({"tier", "ring-tier", "waist", "waistband", "hem-frill", "hem"})
"""Roles of what lies at the waist or below."""
ENDS_ANYWHERE = frozenset({"dart", "tuck", "applied", "tier", "ring-tier", "plain"})
"""Roles of what need not end in the seam across its piece, where the maker does not say so."""
PLEATS_ROUND = 8
"""From this many pleats on a skirt is pleated all round, over the seams of its widths: estimate."""
SIDE = "side"
WIDTHS = frozenset({"plain", "tier", SIDE, "centre"})
"""Roles of a seam that may join widths of what is drawn up."""
GATHERED = 1.1
"""The fullness from which an edge is gathered and not only eased: estimate."""
SHOULDERED = frozenset({"shoulder", "armhole", "raglan"})
"""Roles of seams by which a garment has shoulders and armholes, where its lining is caught."""
STAYED_ON_BIAS = frozenset(
    {
        *("facing", "neckband", "binding", "shoulder", "waist", "panel", "front-band", "plain"),
        *("wrap-edge", "wrap-to-waist"),
    }
)
"""Where a bias edge is stayed at once; a bias side has to hang out first."""
FINISHED = frozenset({"faced-edge", "neckband", "cuff", "casing"})
"""Kinds of place by which a lower edge is finished as a hem is; a channel along it is its hem."""
LAID_ON = frozenset({"patch-pocket", "applied"})
"""Kinds of seam that sew a piece on top of another, its edges turned under or left as they are."""
ALONG_LIMBS = {
    "knee": frozenset({"side", "inseam"}),
    "elbow": frozenset({"underarm", "side-and-sleeve", "raglan", "armhole"}),
    "shoulder": frozenset({"shoulder", "yoke", "raglan", "armhole"}),
}
"""Words of a patch that lies at one place of a piece, and the roles of the seams sewn after it."""
HEAVY_DENIM = 340.0
"""From 10 oz denim is sewn as jeans are, in a thread that shows, g/m²: estimate."""
AT_WRIST = frozenset({"cuff", "sleeve-hem"})
CLOSED_FINISHES = frozenset({"trimmed and double-stitched"})
"""Finishes that cut the allowance down, so that nothing is left to let out."""
OVER_BOTH = frozenset({"zigzag", "bound"})
"""Finishes that take both edges of a closed seam in one, level with each other."""
OPEN_SEAMS = frozenset({"plain", "mock French"})
WEB = "bonding-web"
"""What sticks two cloths together, and so is basted to neither."""
EYELET, DRAWCORD = "grommet", "drawcord"
PLEATED = "pleated"
"""The cloth that is sold with its pleats set: gathering rows would crush them."""
HARD = SHEER = MARKED = 2
"""The levels of `embellished` with sequins or stones, of `sheer` with all showing through, of
`pin marks` with holes that stay."""
NECK_SLIT, KEYHOLE = "neck-slit", "keyhole"
"""The role of a slit down from the neck; the word of one that lies below the band there."""
