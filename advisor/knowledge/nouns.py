"""What makers call places, parts and pieces: one table of words, which every room asks by a group.

A word stands here as `the_words` spells it: one of it, and of words that mean the same the one
that stands for all (`SAME`). What is one word only is asked for by itself. All of it is common
practice. Ids (of roles, kinds, methods) are no words of a name and stay in their rooms.
"""

from __future__ import annotations

from typing import Final


def _of(words: str) -> frozenset[str]:
    return frozenset(words.split())


_ALSO: Final = {
    "armhole": "armscye armseye scye",
    "bias": "bias",
    "brace": "suspender",
    "canvas": "canvas",
    "centre": "center",
    "centre back": "cb",
    "centre front": "cf",
    "centred": "centered",
    "crotch": "crutch",
    "epaulette": "epaulet",
    "frill": "ruffle",
    "hem": "hemline",
    "lapel": "revers rever",
    "neck": "neckline neckhole",
    "rouleau": "rouleaux",
    "side seam": "sideseam",
    "trouser": "pants pant shorts breeches",
    "waist": "waistline",
    "zip": "zipper",
}
SAME: Final = {word: one for one, words in _ALSO.items() for word in words.split()}
"""Words that mean the same, each with the one that stands for all; two that are no plural."""

HALVES: Final = _of("front back")
SIDES: Final = HALVES | {"side"}
QUARTERS: Final = HALVES | {"left", "right"}
"""On which half or side of the garment something lies."""
MIDDLE: Final = _of("centre middle")

NECKS: Final = _of("neck cowl")
SHAWL: Final = _of("shawl collar")
COLLARS: Final = _of("collar undercollar")
COLLARED: Final = NECKS | {"collar"}
ROUND_THE_NECK: Final = COLLARED | _of("neckband turtleneck")
ROUND_THE_HEAD: Final = COLLARED | _of("hood halter snood throat head face")
"""What lies round head and throat."""
BELOW_THE_NECK: Final = _of(
    "waist waistband hem hip leg ankle knee cuff wrist sleeve pocket skirt trouser"
)
"""What surely lies elsewhere."""
CLOAKED: Final = _of("neck throat cloak cape collar")
"""Where a clasp holds what hangs from the neck."""
SHOULDER_LINE: Final = _of("shoulder armhole raglan neck collar")
SHOULDERED: Final = SHOULDER_LINE | _of("sleeve yoke")
"""Places of what hangs from the shoulders."""
UNDER_A_PART: Final = SHOULDER_LINE | {"yoke"}
"""Edges of a lining that hangs only from the shoulders or from a yoke."""
HUNG_ABOVE: Final = SHOULDER_LINE | _of("sleeve strap halter neckband bib")
ABOVE: Final = HUNG_ABOVE | _of("bodice bust lapel")
"""There is a part above the waist."""
HELD_UP: Final = HUNG_ABOVE | {"brace"}
"""It holds a garment up, so that it is not strapless."""
WITH_A_BODICE: Final = ABOVE | _of("cuff princess")
"""There is a bodice, whose darts may run anywhere."""
TOPS: Final = _of("jacket coat waistcoat shirt tunic blouse")
"""What is worn above."""
NO_SKIRT: Final = ABOVE | TOPS | _of("yoke cuff")
"""What no pleats hang from to a hem."""
ON_SHOULDERS: Final = _of("shoulder strap halter")
"""Something lies above the waist of what is weighed, and what carries it."""
NOT_BY_THE_NECK: Final = _of("armhole sleeve underarm raglan waist waistband strap")
"""What else holds up what has a clasp at the neck."""
CARRYING: Final = _of("shoulder neck waist yoke raglan strap")
BESIDE_THE_LOAD: Final = _of(
    "side centre armhole underarm sleeve crotch inseam leg outseam gusset seat thigh"
)
"""Seams that carry the garment, and those that only hold it together."""
CHEST: Final = _of("bodice neck bust")
SHAPING: Final = _of("princess bodice bust")
STRAPLESS_BODICE: Final = SHAPING | _of("corselet corset cup bone boning")
OVER_A_PIECE: Final = TOPS | _of("bodice bib yoke chest plastron")
"""Rows that lie over a whole piece of the upper body."""
HIGH_DARTS: Final = _of("bust neck shoulder elbow")
BUST: Final = _of("bust underbust")
UPPER_EDGE: Final = NECKS | _of("armhole upper top underarm")
TOP_EDGE: Final = CHEST | _of("top edge bib armhole")
UPPER: Final = _of("top upper strapless")
UPPER_ENDS: Final = _of("top neck armhole waist")
"""Upper ends of a part, at which it is no lower edge."""
ALL_ROUND: Final = _of("armhole bodice top waist upper")
"""A facing that runs round the body, over its sides."""
NEVER_HEMMED: Final = _of("neck armhole front wrap collar waist")
"""An edge that is turned by a facing, and hangs nowhere that a hem would be levelled."""

ON_SLEEVE: Final = _of("sleeve cuff wrist")
SLEEVE_DARTS: Final = ON_SLEEVE | _of("elbow")
SLEEVES: Final = _of("sleeve underarm")
WRISTS: Final = _of("cuff wrist")
RIBBED_ENDS: Final = WRISTS | _of("rib hem")
ARMS: Final = _of("underarm arm sleeve side armhole")
SLEEVE_HEAD: Final = _of("armhole sleeve cap")
"""A seam at which a sleeve is set in, as full as its cap is cut."""
SLEEVED_SEAMS: Final = ON_SLEEVE | SLEEVES | SLEEVE_HEAD
"""What a lining of the sleeves alone covers."""
OF_A_SLEEVE: Final = ON_SLEEVE | _of("armhole puff")
OFF_A_PANEL: Final = ON_SLEEVE | _of("neck front collar")
"""A slit that no seam of panels runs up to."""
SLEEVELESS: Final = _of("gilet vest waistcoat sleeveless pinafore tabard jerkin")
WINGS: Final = _of("wing winglet epaulette")
INNER_SLEEVE: Final = _of("inner inside front forearm underarm under")
OUTER_SLEEVE: Final = _of("outer outside back hind elbow top")
"""The two seams of a sleeve of two pieces."""

WAISTS: Final = _of("waist waistband")
LOW_BANDS: Final = WAISTS | {"welt"}
HIPS: Final = _of("waist hip")
SKIRTS: Final = _of("skirt underskirt overskirt petticoat kilt")
"""What lies below a waist and nowhere else."""
UNDER_A_SKIRT: Final = _of("petticoat underskirt")
"""A skirt worn under another, which is no lining of it whatever it is cut of."""
HUNG_PARTS: Final = SKIRTS | _of("peplum basque")
BODICES: Final = _of("bodice corset corselet top")
"""Parts that hang from a waist, and those that stand above one."""
FULL: Final = _of("tier frill flounce")
SKIRTED: Final = SKIRTS | FULL
OF_A_SKIRT: Final = SKIRTS | _of("waist tier flounce")
RUNS_DOWN: Final = SKIRTS | {"sleeve"}
FRILLED: Final = _of("frill ruff flounce petal ruche")
"""A strip that is hemmed while it is long and flat, before it is drawn up."""
FULL_ENDS: Final = FULL | _of("cuff hem")
LOOSE: Final = FULL_ENDS | _of("sleeve overlay overskirt veil cape godet")
"""What a sheer is used for where it covers no body, or hangs free over it."""
OF_A_BODY: Final = _of("bodice skirt side centre princess panel dart")
ON_LEG: Final = _of("ankle leg knee")
LIMBS: Final = ON_LEG | _of("elbow sleeve")
LEG_SIDES: Final = _of("leg inseam outseam")
LEG_SEAMS: Final = _of("crotch inseam rise")
LEGS: Final = LEG_SEAMS | {"leg"}
SEAT: Final = _of("seat crotch rise")
"""The seam that runs between the legs and up the middle of the back."""
LEGWEAR: Final = _of("trouser leg breech")
OF_LEGWEAR: Final = LEGWEAR | _of("knee fall")
OUTER_LEG: Final = _of("side outseam outside outer")
BELOW_A_WAIST: Final = SKIRTS | LEGS | _of("tier peplum")
HANGS_BELOW: Final = SKIRTED | LEGWEAR | _of("peplum train basque row")
"""A piece that hangs from a waist."""
RINGS: Final = _of("waist armhole yoke")
"""What a lining ends at all round."""
NO_UPRIGHT_OPENING: Final = RINGS | _of("hem hood face pocket")
"""Words of an opening that runs round, or across a piece."""
HANGS_ON: Final = SKIRTS | {"leg"}
"""A lining that hangs from the waist, and does not end there."""
BELOW_A_BODICE: Final = SKIRTS | _of("slip sleeve hood leg")
LOWER: Final = _of("bottom hem lower")
LOWER_EDGE: Final = LOWER | {"peplum"}
AT_THE_HEM: Final = LOWER | {"waist"}
HELD_BELOW: Final = _of("hem vent slit zip fly pocket flap placket")
"""Where the two edges of a lining seam are held at their ends."""
NOT_FELLED_ABOVE: Final = ON_SLEEVE | _of("waist hem vent slit zip rib band")
VENTS: Final = _of("vent slit")
SLITS: Final = _of("slit keyhole")
WEDGES: Final = _of("godet gusset")
"""What is let in between two edges and ends in a point."""
SET_IN: Final = _of("insert inset godet style")

OFF_THE_BODY: Final = ON_SLEEVE | _of("hood pocket frill flap")
"""Parts with hems that are not that of the body."""
NO_DOOR: Final = ON_SLEEVE | _of("strap pocket collar hood")
"""What closes there lets nobody into the garment."""
NO_WAY_IN: Final = NO_DOOR | NECKS | _of("hanging loop")
FRONT_OPENING: Final = _of("front opening wrap")
FRONT_EDGE: Final = _of("front edge")
NO_FRONT_EDGE: Final = ROUND_THE_HEAD | _of("armhole pocket flap cuff sleeve")
FACED_CLOSINGS: Final = _of("closing closure opening placket fastening side")
"""A faced edge, and the seam below it, that name the same line."""
WAYS_IN: Final = _of("opening open slit split wrap wrapover lap placket lacing")
"""What lets the wearer in."""
OPENS_BEHIND: Final = WAYS_IN | _of("back centre")
FACED_FRONT: Final = _of("front zip opening facing lining")
OPENS: Final = _of("front open ended")
"""A zip that opens the front from end to end."""
PARTLY: Final = _of("half quarter neck chest")
"""A zip that ends part of the way down, in a slit or above a seam."""
CLOSED_ABOVE: Final = _of("closing closure opening placket zip")
"""What a seam may be said to lie below."""
NO_FRONT_ZIP: Final = PARTLY | _of("pocket fly")
SHORT_ZIPS: Final = OPENS | LOWER | _of("leg ankle sleeve vent")
ZIPPED: Final = _of("zip concealed invisible lapped centred")
"""How a zip is sewn in, and not where."""
BESIDE_THE_FRONT: Final = _of("side panel princess shoulder armhole yoke")
SEAMED: Final = _of("side seam inseam yoke panel")
STIFF_ENOUGH: Final = _of("front placket band facing tab flap interfacing")
"""What carries buttonholes, or stiffens what does."""
SEEN_FACINGS: Final = _of("front lapel collar flap tab cuff")
ONLY_SHOWN: Final = _of("decorative ornamental show ear eye nose antenna")
"""Buttons that adorn and close nothing."""
HOW_HOLED: Final = _of(
    "button buttonhole loop hole covered and bound worked keyhole machine hand rouleau shank tack"
)
SPOTS: Final = ON_SLEEVE | _of(
    "front back neck collar waist waistband fly fall pocket shoulder strap side knee leg hip bib"
)
HOLDS_UP: Final = _of("strap brace")
STRAPPED: Final = _of("bib front back waist waistband")
"""A strap, and what it is buttoned to."""
FRONT_LINE: Final = _of("front stand collar neck neckband waistband band fly")
CUFF_LINE: Final = ON_SLEEVE | {"placket"}
NO_FRONT_BUTTONS: Final = CUFF_LINE | _of("pocket shoulder epaulette strap flap stand tab")
"""Where buttons and their holes lie."""
NO_SEAM: Final = _of("button hook clasp buttonhole zip buckle cinch")
CARRIES_NOTHING: Final = _of("lining pad elastic")

BAGS: Final = _of("bag pocketing")
SMALL: Final = BAGS | _of("pocket facing band waistband yoke strip collar strap belt")
"""Pieces of a cloth that do not make it a lining or a back."""
NO_LINING: Final = BAGS | _of("pocket facing binding strip piping flap welt loop")
BANDS: Final = _of("band waistband")
OF_A_BAND: Final = BANDS | {"belt"}
BELTS: Final = _of("strap tab belt sash")
TIED_ENDS: Final = _of("tie sash belt bow string ribbon")
"""What is tied, whose ends hang; a strap and a tab are sewn in at both."""
TIE_COLLARS: Final = _of("tie bow scarf")
TIED: Final = _of("tie lacing string drawstring")
LOOPS: Final = _of("loop rouleau")
ROULEAUX: Final = _of("rouleau spaghetti")
STRIPS: Final = _of("binding bias strip")
BINDS: Final = STRIPS | _of("band waistband neckband")
COVERS: Final = _of("piping strip cover")
HIDES: Final = _of("facing cover covering")
LAID_OVER: Final = _of("tape ribbon binding facing cover")
ROLLS: Final = _of("roll bridle")
"""Of the line that a lapel folds along, which is no edge."""
STAYS: Final = _of("stay stayed staying roll bridle")
TAPED: Final = _of("stay tape tacked")
BEHIND: Final = _of("backing support underlining interlining mount mounting flatlining")
OF_BACKING: Final = _of("interfacing fusing interlining of the piece")
"""Words of the place that stiffens a piece, beside those of the piece."""
BACKS: Final = BEHIND | {"back"}
SHOWN: Final = _of("piping frill trim edging band")
FACES: Final = _of("facing lining")
FACED_WITH: Final = FACES | _of("inner inside under")
OF_LAYERS: Final = _of("lining facing interfacing underlining interlining")
TUBES: Final = _of("sleeve hood leg skirt bodice")
"""What a cloth may be called after whose own seam closes it: a sleeve seam is its underarm."""
PIECES: Final = (
    TUBES | FULL | BELTS | BANDS | HALVES | _of("collar cuff pocket yoke flap tie lapel")
)
"""What a cloth may be called after that has a side or a hem of its own, and so says where."""
TRIMMED: Final = _of("skirt sleeve bodice yoke pocket panel leg row tier chest side outseam")
"""On which piece a trimming lies."""
MADE_UP: Final = _of("pocket flap collar yoke hem")
"""What a trimming is sewn to before that is set on or turned up."""
TRIMMED_ROUND: Final = _of("edge round weight")
SHARES: Final = _of("piece strip part half")
TUCKS: Final = _of("tuck pintuck")
OF_TABS: Final = _of("tab waist peplum doublet jerkin lower edge piping")
FLAT_PLEATS: Final = _of("knife box kilt inverted")
WELTED: Final = _of("slant slanted slash welt jetted zip patch")
"""A pocket that is not in a seam."""
IN_A_SIDE: Final = _of("side seam inseam")
NO_SLIT: Final = _of("side seam inseam patch bag slant slanted")
FLAPPED: Final = _of("flap pocket patch")
POCKET_TOPS: Final = _of("edge top opening facing mouth")
ANY_POCKET: Final = _of("pocket bag seam in of the edge opening mouth")
"""Words of a pocket that do not say which it is."""
CORDED: Final = _of("drawstring drawcord cord string casing channel")
"""A buttonhole out of which a cord comes, and that takes no button."""
DRAWN_THROUGH: Final = CORDED | _of("elastic")
"""A channel, and what is drawn through it."""
HUNG_BY: Final = _of("hanging hanger towel")
PART_LINED: Final = _of("half quarter part shoulder yoke knee")

SEAM_SIDES: Final = _of("side centre inseam outseam")
"""A seam of a part, called after its part: the side of a tier, the centre back of a band."""
RUCHED: Final = SEAM_SIDES | _of("ruching ruched")
"""A line down a piece, where elastic draws it up and turns nothing in."""
IN_A_SEAM: Final = _of("side outseam princess")
DOWN: Final = _of("side centre panel seam")
LENGTHWISE: Final = _of("side panel centre inseam hem gore godet")
CLOSING: Final = _of("seam side underarm")
WHOLE_LENGTH: Final = _of("princess gore")
IDLE: Final = _of("seam the of a")
OF_A_PLACE: Final = _of("edge end top lining facing tape stay interfacing")
A_LINE: Final = _of("edge seam line")
NOT_WHERE: Final = _of("edge facing binding seam bound faced")
ANY_EDGE: Final = _of("hem edge edging border")
NO_EDGE: Final = _of("hem seam frill tuck row")
"""Words that say nothing of where it lies, or that it is no edge."""
BESIDE: Final = _of("with below above beside behind")
"""After these a name speaks of something else than the place itself."""
BEFORE_ON: Final = _of("sewn set put cut laid stitched stretched on")
"""A sewn-on pocket is a pocket."""
ATTACHED: Final = _of("attach attached join joined fasten")
JOINING: Final = _of("joining join attachment attaching end anchor")
JOINS: Final = _of("seam join joining attach set to")
TOPSTITCHED: Final = _of("topstitching topstitch edgestitching")
FOLDED: Final = _of("turn turned fold folded laid set")
BEFORE_LINING: Final = _of("to the bag set bagged")
HAND_FELLED: Final = _of("felled fell slipstitched hemmed")
FELLED: Final = HAND_FELLED | _of("to at along round on stitched sewn caught")
"""Between a lining and what it is sewn to, which another place sets."""
LAID_ON: Final = _of("on over at along round around")
LET_IN: Final = _of("inset insert let")
OVERLAID: Final = _of("overlay overlaid")
OUTER_EDGES: Final = _of("top upper outer")
FREE_EDGES: Final = OUTER_EDGES | _of("lower front collar flap pocket tab cape lapel wing")
ARMHOLES: Final = frozenset({"armhole"})
ROUND_EDGES: Final = NECKS | ARMHOLES
STRAIGHT_EDGES: Final = _of("slit opening placket boat bateau slash front wrap shoulder")
CORNERED: Final = _of("v square sweetheart")
SET_ON_A_NECK: Final = _of("collar undercollar hood stand neckband yoke")
FINISH_AN_EDGE: Final = _of("facing binding bound band piping rib trim lace casing elastic")
"""What finishes an edge that is named beside it."""

SLEPT_IN: Final = _of(
    "pyjama pajama nightdress nightgown nightshirt nightie nightwear robe bathrobe sleepsuit"
    " sleeping sleepwear dressing onesie bed night"
)
WORN_OVER: Final = _of(
    "anorak parka blazer cape cloak gilet poncho cagoule mackintosh mac snowsuit windbreaker"
    " windcheater bomber duffel duffle oilskin"
)
NOT_WORN_OVER: Final = _of("petticoat housecoat bedjacket undercoat")
"""What whole garments are called."""
