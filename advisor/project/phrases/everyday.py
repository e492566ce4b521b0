"""Everyday words beside a cloth's name: colours, patterns, uses, makes and origins.

They say nothing that could do harm when it is left out. All of it is common practice: how shops,
patterns and glossaries word a cloth. A word for what is laid on a cloth or done to it for good is
none of these; it stands in `lexicon.SURFACES`.
"""

from __future__ import annotations


def words_in(text: str) -> frozenset[str]:
    """The words of a text."""
    return frozenset(text.split())


COLOURS = words_in(
    "dusky moss fawn oat noir greige biscuit putty cassis loganberry ginger tobacco cognac "
    "mulberry raspberry cranberry berry tomato brick cinnamon caramel toffee mocha cocoa latte "
    "hazel walnut mahogany chestnut saffron lemon canary marigold tangerine amber honey mandarin "
    "melon watermelon orchid heliotrope iris grape eggplant damson sky powder cornflower slate "
    "graphite smoke ash dove pewter platinum fog mist storm cyan lagoon seafoam sea ocean fern "
    "hunter avocado pistachio celadon eucalyptus eau nil nile chartreuse puce buttercup "
    "sunflower daffodil blossom candy hyacinth periwinkle wisteria thistle sepia umber sienna "
    "ultramarine prussian airforce racing pillarbox claret bordeaux garnet carmine vermilion "
    "flame poppy brights earthy muted degrade gradient twotone contrast contrasting greyish "
    "blueish bluish greenish reddish pinkish brownish whitish yellowish"
)
"""Colours whose shade is not certain."""

PATTERNS = words_in(
    "prince wales tattersall gunclub guncheck shepherd shepherds dogstooth pepita puppytooth "
    "hunting scene scenes "
    "nailhead pinhead pincheck pindot microcheck overcheck candystripe breton nautical bengal "
    "regency baroque deco nouveau aztec ethnic tribal boho bohemian retro mod psychedelic marble "
    "marbled watercolour watercolor brushstroke splash trellis lattice medallion ogee tie dip dye "
    "railroad railway "
    "dyes leaf leaves leafy palm daisy tulip peony hydrangea magnolia bird birds cat dog horse "
    "unicorn dinosaur mermaid star moon heart anchor sailor boat fruit strawberry mushroom "
    "kente woodland christmas xmas halloween easter holiday kalamkari bandhani bandhej leheriya "
    "lehariya patola bagru dabu sanganeri pochampally sambalpuri shweshwe adire sashiko asanoha "
    "seigaiha kogin batiked resist crocodile croc alligator giraffe dalmatian lizard python "
    "jungle cartoon character lettering script newspaper map clipped eyelash texture emboss "
    "embossed"
)
USES = words_in(
    "jacketing jacketings pocket pockets pocketbag front fronts chest "
    "poncho ponchos fly flysheet hamam hammam "
    "bath towel kilt hooded grandad picnic baselayer necktie neckties "
    "overcoat waistcoat cardigan hoodie hoody sweatpants jogger joggers tracksuit polo leotard "
    "gymnastics football rugby cricket tennis netball ski skiing golf riding equestrian hiking "
    "camping festival party cocktail occasion occasionwear eveningwear bridalwear communion "
    "christening ballroom latin salsa flamenco belly cosplay theatre theatrical historical "
    "period medieval victorian edwardian renaissance lehenga choli salwar kameez kurti kurta "
    "abaya hijab kaftan caftan sarong pareo turban headwrap babywear infant toddler school chef "
    "hospital work wear trench parka gilet blouson bomber biker jumpsuit playsuit overalls "
    "boilersuit robe dressing bathrobe nightdress nightie loungewear lounge boxer boxers briefs "
    "pullover pantaloons girdle shapewear bustier stays handbag purse tote backpack rucksack hat "
    "cap glove gloves mittens sock socks hosiery tights mattress pillow lampshade blind blinds "
    "napkin napkins banner flag sofa couch chair seat sail garden patio outdoor beach cruise "
    "resort maternity nursing teen teenage boys girls unisex adult plus cheer swimming aqua "
    "lifestyle streetwear sweatsuit peacoat reefer pilot farmer butcher shower household kitchen "
    "table army blazer blazers trousering trouserings lapel lapels revers facing facings"
)
QUALITIES = words_in(
    "washer dry peace ahimsa pilling raglan ripple rippled "
    "downproof upcycled hardanger pin tucked tucks pintucked pintucks evenweave delustred "
    "flat bubble butter bark curly deep dimple draping ice pinpoint rigid string techno thermal "
    "body bodied gloss "
    "wrinkle wrinkled swaddle clip flip perforated laser lasercut outing swansdown alpine "
    "wellness aviator mono hi multi weightless twist twisted hightwist shetland saxony botany "
    "lyons utrecht mongolian tibetan canton moroccan persian australian scandinavian nordic "
    "korean vietnamese brazilian portuguese polish german austrian tyrolean mexican peruvian "
    "afghan pakistani bangladeshi sri lankan javanese sumatran nepalese new zealand canadian "
    "lyon calais nottingham caudry como biella yorkshire huddersfield lancashire devon cornish "
    "cambridge london paris milan prato osaka kyoto nishijin okinawa linear running bargain "
    "clearance seconds second grade certified certificate ethical fairtrade fair sourced factory "
    "mill showroom compact mercerizing silket biowashed piece pieces dyeable pfd softwash "
    "hypoallergenic thermoregulating temperature regulating ventilated lightly heavily fully "
    "double twice loopy peachy powdery velvety flannelly papery leathery grainy pebbled "
    "pebbly ridged ridge horizontal vertical diagonal lengthwise crosswise uneven irregular "
    "textural relief dimensional 3d 2d sculpted architectural stable midgauge gauged handfeel "
    "zephyr sunbleached sun"
)
"""How a cloth looks, feels or was sold, and where it comes from."""
FILLERS = words_in(
    "ground "
    "ground sew size "
    "ex fleck flecked leaded sewing well that which who whose but so too also its was were "
    "are be been being has had having can could may would will your his her their our out inside "
    "outside both one ones there here where when than then them they she he we you me cheap "
    "costly expensive leftover leftovers offcuts offcut scraps scrap patch sewn bedspread shawl "
    "slipper slippers throw supermarket shopbought parcel box attic loft drawer "
    "cupboard jumble sale fair online website swap shrunk shrunken yellowed aged decades years "
    "year century hem hems lead bound lower upper whole entire "
    "changes change changing colours sounds sound rustles rustling rustly drawn crunchy slippery "
    "floppy limpish bulky springy crushable creasing creases frays fraying ravels curls rolls "
    "thing things lightish thickish thinnish softish stiffish crispish shinyish see sees shows"
)
"""What is said between the words for a cloth."""
