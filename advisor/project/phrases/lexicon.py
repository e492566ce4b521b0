"""The words of a phrase that are no name of a cloth and no fibre, by what they are good for.

What stands here is known and does no harm when it is left out; a word that stands nowhere is said
to be not understood. The lists are common practice: how shops and patterns word a cloth.
"""

from __future__ import annotations

from collections.abc import Mapping

from advisor.project.phrases import everyday
from advisor.project.phrases.everyday import words_in


def _by_meaning(words: Mapping[str, str]) -> dict[str, str]:
    """Each word with what it stands for, out of the words for each thing."""
    return {word: meant for meant, text in words.items() for word in text.split()}


DARK = words_in(
    "black navy brown burgundy charcoal dark maroon chocolate indigo midnight espresso ebony "
    "aubergine bottle plum wine oxblood anthracite ink"
)
PALE = words_in(
    "white ivory cream pale beige pastel ecru champagne blush nude snow pearl eggshell "
    "vanilla oatmeal bone buttermilk offwhite"
)
OTHER_COLOURS = everyday.COLOURS | words_in(
    "red blue green grey gray pink purple orange yellow gold silver plain coloured colored "
    "teal turquoise aqua coral peach apricot mint sage olive emerald jade lime mustard ochre "
    "rust terracotta copper bronze brass tan camelcoloured taupe mauve lilac lavender violet "
    "magenta fuchsia cerise rose salmon scarlet crimson ruby sapphire cobalt royal sky petrol "
    "denimblue neon fluorescent bright multicoloured multicolour rainbow ombre tonal two tone "
    "colour color shade coloured solid natural undyed dyed unbleached bleached dusty baby "
    "light-coloured forest khaki marine melange marl heather heathered chine nacre stone sand "
    "amethyst aquamarine flesh hot shocking tea"
)
STRONG = words_in(
    "red scarlet crimson ruby cerise magenta fuchsia cobalt royal purple violet petrol carmine "
    "vermilion pillarbox ultramarine prussian claret bordeaux garnet mulberry cranberry raspberry "
    "mahogany amethyst sapphire emerald teal forest hunter"
)
"""Strong colours may be dark, and are surely not pale (estimate by their lightness)."""
SHADES: dict[str, str] = {
    **dict.fromkeys(sorted(OTHER_COLOURS), ""),
    **dict.fromkeys(sorted(STRONG), "middle"),
    **dict.fromkeys(sorted(PALE), "pale"),
    **dict.fromkeys(sorted(DARK), "dark"),
    "printed": "",
}
"""Colour words and the shade that they surely mean; most mean none for certain."""

PATTERNS = everyday.PATTERNS | words_in(
    "print printed prints check checked checks checkered chequered plaid tartan stripe "
    "stripes striped pinstripe pinstriped chalkstripe spot spots spotted dot dots dotted "
    "polka floral flower flowers flowery paisley animal leopard zebra snake snakeskin tiger "
    "camo camouflage houndstooth dogtooth herringbone geometric abstract border panel "
    "tropical toile liberty-style ditsy batik ikat patterned pattern patterns digital screen "
    "block shibori tie-dye tiedye argyle windowpane glen glencheck birdseye chevron donegal "
    "kasuri ajrakh jouy suzani banarasi banaras "
    "figured broche fancy motif motifs stars hearts butterfly botanical photo placement harlequin "
    "diamond zigzag ribbed scallop scallops scalloped edge edged edging "
    "sharkskin sharkskins buffalo"
)
DIRECTED = words_in(
    "print printed prints check checked checks plaid tartan floral flower flowers flowery "
    "paisley animal leopard zebra snake snakeskin tiger border panel tropical toile ditsy "
    "figured motif motifs photo placement butterfly botanical chevron digital houndstooth "
    "dogtooth stars hearts patterned pattern patterns camo camouflage abstract geometric "
    "windowpane glen glencheck"
)
"""Pattern words of designs that may have an up and a down."""

USES = everyday.USES | words_in(
    "lining linings suiting suitings shirting shirtings coating coatings upholstery furnishing "
    "curtain drapery bridal bridesmaid wedding evening dress dresses dressmaking dressweight "
    "skirt blouse blouseweight shirt shirtweight trouser trousers suit jacket coat bottomweight "
    "topweight costume dance dancewear stage lingerie underwear swimwear swimsuit swim sportswear "
    "activewear sports sport performance athletic yoga leggings jumper craft quilting quilters "
    "patchwork apparel garment fashion clothing mens ladies womens childrens childrenswear kids "
    "baby nursery pocketing tshirt tee sweater uniform workwear outdoor rainwear outerwear veil "
    "veiling petticoat scarf tie prom ballgown gown bag home decor interior tablecloth bed sheet "
    "bedsheet sheets duvet cover pillowcase sari bandana bandanna scrubs raincoat towelling "
    "interlining underlining backing tailoring couture summer winter autumn spring slip slips "
    "knickers bra bras apron toile toiles kimono yukata obi saree dupatta tent umbrella parasol "
    "ruffle ruffles frill frills flounce bodice sleeves yoke insert inset overlay peplum sash "
    "hood cape godet godets cuffs train overskirt underskirt compression cycling rash vest awning "
    "deckchair ballet tutu skating jogging gym base layer layers sleeve collar undercollar "
    "tailors muslins cushion pants jeans corset corsetry pajama pyjama nightwear"
)
FABRIC_WORDS = words_in(
    "fabric fabrics cloth cloths textile textiles material materials stuff goods woven weave "
    "knit knits knitted weaved piece strip strips remnant offcut bolt yardage metre metres meter "
    "meters yard yards wide width per by the"
)
FILLERS = everyday.FILLERS | words_in(
    "on over under against into onto beneath underneath lined "
    "a an and the of with in % for from some my old new this is it as made type style quality w "
    "mans de di du en aus mit et und fibre fiber fibres fibers percent percentage approx "
    "approximately about ca circa content composition total weight at to i have plus very quite "
    "rather really bit little slightly kind sort off market stall shop charity thrifted thrift "
    "inherited stash found bought gifted grandma's grandmother's granny's nan's mum's mom's "
    "mother's aunt's length lengths bundle fat quarter half-metre called named sack stained faded "
    "worn damaged torn patched darned holes marks scratchy itchy prickly feels"
)
QUALITIES = everyday.QUALITIES | words_in(
    "ity dty tissue triple "
    "soft softer crisp fluid drapey draped flowing flowy smooth silky satiny shiny shimmer "
    "shimmery shimmering glossy lustrous sheen matt matte dull textured texture slub slubbed "
    "slubby washed prewashed stonewashed enzyme garment-washed sandwashed peached sueded "
    "brushed unbrushed combed carded ringspun mercerised mercerized sanforised sanforized "
    "preshrunk raw rawedge selvedge selvage organic bio recycled sustainable eco deadstock "
    "vintage antique designer italian irish french japanese english scottish indian thai "
    "chinese swiss british european american african welsh egyptian pima supima turkish "
    "belgian spanish luxury premium fine finest real genuine authentic good best basic nice "
    "great amazing favourite favorite soft-ish handspun khadi something liquid dobby gathered "
    "trim trims trimming "
    "classic everyday standard regular traditional handwoven handloom handloomed yarndyed "
    "yarn spun filament worsted woollen tropical super extra ultra double-width single "
    "tubular openwidth circular warp weft tight tightly loosely loose dense densely open "
    "closed firm stiff limp crispy structured unstructured bouncy springy spongy cosy cozy "
    "warm cool breathable airy delicate beautiful lovely gorgeous pretty simple smart casual "
    "rustic nubby nubbly hairy fluffy reversible doublefaced face faced sided side cut uncut "
    "pile wale wales thread count denier ply gauge grain full bottom top medium-drape drape "
    "drapy handle hand iridescent shot changeant changeable opaque semi sheer transparent see "
    "through seethrough illusion french-style hard wearing hardwearing durable sturdy "
    "washable machine handwashable colourfast high low mid pre up quick drying wicking "
    "moisture antipill pill anti static antistatic cross-dyed crossdyed thick "
    "thin chunky superfine supersoft buttery featherweight feather gossamer wispy narrow big "
    "small large tiny wee mini micro jumbo pinwale fancy novelty unknown-brand surplus sample "
    "cutting end roll thai-style knitwear bias straight true sumptuous rich heavyduty duty "
    "long-staple staple short sharp ordinary usual back backed goat calf cow deer split pretreated "
    "untreated finished unfinished "
    "hammered rolled cuddle cuddly shaggy lamb elephant harsh smocking "
    "loomstate greige grey-state ready prepared"
)
STRETCH = words_in(
    "stretch stretchy stretchable elastic elasticated bistretch smocked shirred ruched"
)
"""Words of cloths that give; what is shirred or ruched is mostly held by an elastic thread."""
WAYS = words_in("2 4 two four one 1 way ways 2way 4way comfort power mechanical natural bi")
OTHER = words_in(
    "other others unknown unspecified rest remainder misc various sonstige autre autres altre otras"
)
"""What stands for a fibre on a label beside its share, and names none."""
LOOK = words_in(
    "art look looks touch feel like lookalike effect imitation faux fake mock artificial vegan "
    "style-of simulated"
)
SHAM = words_in("faux fake imitation mock artificial vegan simulated")
"""What is said of a skin or a fibre that only looks so."""
BLEND = words_in(
    "blend blended blends mix mixed mixes mixture union half rich partly mostly mainly almost "
    "nearly"
)
PURE = words_in("pure all wholly entirely pur")
UNSURE = words_in("maybe perhaps probably possibly might think guess guessing unsure seems either")
NOT = words_in("no not non without minus free un never except isnt")
SURFACES = _by_meaning(
    {
        "sequinned": "sequin sequins sequinned sequined paillette paillettes spangled",
        "beaded": "bead beads beaded beading rhinestone rhinestones crystal crystals diamante "
        "pearls pearled jewelled jeweled studded studs zardozi zardosi mirrorwork",
        "embroidered": "embroidered embroidery monogrammed monogram "
        "chikankari chikan kantha phulkari schiffli hakoba "
        "crewel crewelwork cutwork",
        "foil-knit": "foil foiled hologram holographic",
        "glued-on": "glitter glittery glittered sparkle sparkly sparkling glued adhesive sticky "
        "flock flocked flocking",
        "quilted": "quilted padded wadded wadding",
        "showerproof": "coated membrane blackout dimout waterproof waterproofed showerproof "
        "rubberised rubberized pul cire",
        "waxed-cotton": "waxed wax oiled",
        "laminated-cotton": "laminated lacquered varnished",
        "bonded": "bonded laminate",
        "satin": "satinbacked",
        "pleated": "pleated plisse-pleated pleat pleats",
        "devore": "burnout",
        "lame": "zari",
        "microfibre": "microfibre microfiber",
        "boiled-wool": "boiled felted fulled",
        "seersucker": "puckered",
        "": "crushed crinkle crinkled",
    }
)
"""Words for what is laid on a ground, or done to it for good, with the entry that minds it."""

IMITATED = {
    "fur": "faux-fur",
    "leather": "faux-leather",
    "suede": "suede-cloth",
    "shearling": "sherpa",
    "patent-leather": "vinyl",
}
"""What a skin becomes when it is said to be imitated."""

TENDER_PARTS = words_in("elastane rubber metallic-film metal polyurethane chlorofibre pvdc")
"""Fibres that are no ground: what gives a cloth its stretch, its glitter or its coat."""

UNFILED_FIBRES = words_in(
    "yak vicuna guanaco cashgora qiviut bison possum opossum milk casein soy soya soybean banana "
    "nettle abaca sisal pina pineapple lotus coir kapok seaweed aloe corn chitosan zein"
)
"""Fibres that no file here has a limit of: said, and treated as a fibre that nobody knows."""

METAL_WOVEN = words_in(
    "banarasi banaras paithani kanjivaram kanjeevaram baluchari kinkhab kincob himroo chanderi "
    "maheshwari pochampalli banarsi zari jari"
)
"""Cloths that mostly have a metal-wound or metal-coated thread in them, at least in the border."""

SAME_WORD = {
    "merino": "wool", "lambswool": "wool", "woollen": "wool",
    "woolen": "wool", "stretchy": "stretch", "crocheted": "crochet", "brocaded": "brocade",
}  # fmt: skip
"""Other forms of words that stand in names of cloths: "merino suiting", "stretchy velvet"."""

FAMILIES = {
    "linen": "linen-suiting",
    "silk": "crepe-de-chine",
    "wool": "wool-suiting",
    "cotton": "poplin",
    "cupro": "lining",
    "acetate": "lining",
    "viscose": "challis",
    "polyester": "satin",
    "nylon": "taffeta",
    "lyocell": "lyocell-twill",
    "modal": "lyocell-twill",
    "hemp": "canvas",
    "jute": "hessian",
    "cashmere": "coating",
    "camel": "camel-hair",
    "acrylic": "sweater-knit",
    "mohair": "mohair",
    "alpaca": "mohair",
    "angora": "sweater-knit",
    "ramie": "linen-suiting",
    "tussah-silk": "tussah",
    "triacetate": "crepe",
    "metallic-film": "lame",
    "polyurethane": "faux-leather",
    "chlorofibre": "vinyl",
    "metal": "metal-mesh",
    "leather": "leather",
}
"""The commonest dress cloth of a fibre that was named alone (common practice)."""
KNIT_FAMILIES = {
    "wool": "sweater-knit",
    "acrylic": "sweater-knit",
    "cashmere": "sweater-knit",
    "mohair": "sweater-knit",
    "alpaca": "sweater-knit",
    "angora": "sweater-knit",
    "": "jersey",
}
"""The same where the word knit was said as well; a jersey for every other fibre."""
BLEND_WORDS = {
    "polycotton": ("polyester", "cotton"),
    "cottonpoly": ("polyester", "cotton"),
    "polyviscose": ("polyester", "viscose"),
    "polyrayon": ("polyester", "viscose"),
    "polywool": ("polyester", "wool"),
    "wooleypoly": ("polyester", "wool"),
    "linsey": ("linen", "wool"),
}
"""One word for two fibres."""
FIBRE_WORDS = _by_meaning(
    {
        "polyester": "poly pl",
        "alpaca": "llama wp",
        "metallic-film": "tinsel",
        "nylon": "polyamid",
        "elastane": "el ea",
        "cotton": "co cottons",
        "wool": "woolen woollen woolly merino wo wv woolsey",
        "silk": "silken se",
        "linen": "flaxen li",
        "": "polycarbonate",
        "viscose": "bamboo vi cv",
        "tussah-silk": "tussah tussar tussore tasar",
        "cashmere": "ws",
        "mohair": "wm",
        "camel": "wk",
        "angora": "wa",
        "modal": "cmd",
        "lyocell": "cly",
        "cupro": "cup",
        "acetate": "ac ca",
        "triacetate": "ta",
        "acrylic": "pan pc",
        "jute": "ju",
        "ramie": "ra",
    }
)
"""Short words of labels and shops for fibres; the standards' own names stand in the knowledge."""
