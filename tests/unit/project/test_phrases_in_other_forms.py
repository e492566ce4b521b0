"""The same words in capitals, with hyphens, in other units, or a slip in them, come to the same."""

from __future__ import annotations

from itertools import pairwise

import pytest

from advisor.errors import InputError
from advisor.project.phrase import Reading, read_phrase
from advisor.project.phrases.boundaries import cloths_said
from tests.typed import shipped as knowledge

PHRASES = (
    *("silk organza", "wool crepe", "linen suiting", "cotton velvet", "viscose jersey"),
    *("polyester chiffon", "stretch denim", "boiled wool", "faux leather", "double gauze"),
    *("satin-backed crepe", "corded lace", "invisible zip", "bias binding", "hair canvas"),
    *("iron-on interfacing", "cotton lawn", "rayon challis", "polyester lining", "waxed cotton"),
    *("grey wool flannel", "navy fibre-dyed wool coating", "jewelled tulle", "sequinned mesh"),
    *("grosgrain ribbon", "clear elastic", "metal zip", "horsehair braid", "piping cord"),
    *("corduroy", "moleskin", "stretch lace", "silk dupion", "french terry", "crepe de chine"),
    *("broderie anglaise", "shoulder pads", "plastic boning", "satin ribbon"),
)
AMERICAN = (("grey", "gray"), ("fibre", "fiber"), ("jewelled", "jeweled"), ("quinn", "quin"))
PAIRS = tuple(pairwise(phrase for phrase in PHRASES if " " in phrase and "-" not in phrase))
BETWEEN = (
    *(", ", " + ", "+", " & ", " and ", "; ", " with ", " w/ ", " over ", " on ", " onto ", " | "),
    *("\n", " plus ", " then ", " sewn to ", " next to ", " lined with ", " trimmed with "),
)


def _read(text: str) -> Reading:
    return read_phrase(text, knowledge())


def _said(text: str) -> tuple[object, ...]:
    read = _read(text)
    return read.entry, frozenset(read.mixes), read.weight, read.shade, read.laid


def _american(text: str) -> str:
    for british, american in AMERICAN:
        text = text.replace(british, american)
    return text


def _many(text: str) -> str:
    if text.endswith("y") and not text.endswith("ey"):
        return f"{text[:-1]}ies"
    return text if text.endswith("s") else f"{text}{'es' if text.endswith(('sh', 'ch')) else 's'}"


@pytest.mark.parametrize("phrase", PHRASES)
def test_a_phrase_is_the_same_in_every_form(phrase: str) -> None:
    """Capitals, hyphens, lines of a file, quotes, a plural and the American spelling."""
    forms = {
        phrase.upper(), phrase.title(), phrase.replace(" ", "-"), phrase.replace(" ", "_"),
        f"'{phrase}'", f" {phrase}. ", f"some {phrase}", _american(phrase), _many(phrase),
    }  # fmt: skip
    assert [] == [form for form in forms if _said(form) != _said(phrase)]


@pytest.mark.parametrize("between", BETWEEN)
def test_two_cloths_part_whatever_stands_between(between: str) -> None:
    """Each of neighbours in the list by itself, in the order that they were said in."""
    asked = [(f"{one}{between}{other}", [one, other]) for one, other in PAIRS]
    assert [] == [text for text, cloths in asked if cloths_said([text], knowledge())[0] != cloths]


def test_what_it_says_it_took_can_be_typed_again() -> None:
    """The bars between the cloths that a question was read as part them again."""
    found, note = cloths_said(["silk", "organza", "wool", "crepe"], knowledge())
    assert note is not None
    assert cloths_said([" | ".join(found)], knowledge())[0] == found


@pytest.mark.parametrize(
    ("typed", "cloths"),
    [
        (["linen, silk"], ["linen", "silk"]),
        (["linen\nsilk"], ["linen", "silk"]),
        (["cotton and linen"], ["cotton and linen"]),
        (["striped lining, viscose"], ["striped lining, viscose"]),
        (["merino jersey, fold over elastic"], ["merino jersey", "fold over elastic"]),
        (["denim and hook and loop tape"], ["denim", "hook and loop tape"]),
        (["tweed", "satin", "lining"], ["tweed", "satin lining"]),
        (["organza behind lace"], ["lace", "organza"]),
        (["organza x lace"], ["organza", "lace"]),
        (["jersey 2 x 2 rib"], ["jersey 2 x 2 rib"]),
    ],
)
def test_words_that_part_may_stand_within_a_name(typed: list[str], cloths: list[str]) -> None:
    """Of fold over elastic nothing is over anything, and fibres of a list are a cloth each."""
    assert cloths_said(typed, knowledge())[0] == cloths


@pytest.mark.parametrize(
    ("cloth", "said", "grams"),
    [
        *(("denim", said, 200) for said in ("200gsm", "gsm 200", "GSM: 200", "200 g m-2")),
        *(("linen", said, 200) for said in ("200 grammes", "200g/qm", "ca. 200 gsm", "~200 g")),
        *(("silk satin", said, 82) for said in ("19mm", "19 m/m", "momme 19", "19 mme")),
        *(("wool coating", said, 678) for said in ("20 ozs", "20 oz per square yard")),
    ],
)
def test_a_weight_in_any_form(cloth: str, said: str, grams: int) -> None:
    """The unit before or behind the number, and nothing of it is taken for a fibre."""
    read = _read(f"{cloth} {said}")
    assert read.weight is not None
    assert round(read.weight[0]) == grams
    assert read.mixes == _read(cloth).mixes


@pytest.mark.parametrize("sized", ["petersham 25 mm", "spiral steels, 7mm", "d-rings 25 mm"])
def test_millimetres_of_a_notion_are_no_weight(sized: str) -> None:
    """They are momme of a silk alone, and it is said what they were taken for."""
    read = _read(sized)
    assert read.weight is None
    assert any("size" in fact for fact, _ in read.notes)


@pytest.mark.parametrize(
    ("listed", "said"),
    [
        ("zip, metal", "metal zip"),
        ("interfacing, fusible, knit", "knit fusible interfacing"),
        ("hair canvas, fusible", "fusible hair canvas"),
        ("tape, twill", "twill tape"),
        ("ribbon, velvet", "velvet ribbon"),
        ("elastic, fold over", "fold over elastic"),
    ],
)
def test_a_list_names_the_thing_first(listed: str, said: str) -> None:
    """What follows the comma belongs before it."""
    assert _said(listed) == _said(said)


def test_a_knit_that_is_fused_stays_an_interfacing() -> None:
    """It was read as a jersey."""
    assert _read("fusible interfacing, knit").entry == "knit-fusible-interfacing"


@pytest.mark.parametrize(
    ("slip", "name"),
    [
        ("fau leather", "faux"), ("afux leather", "faux"), ("ffaux suede", "faux"),
        ("strech denim", "stretch"), ("seretch denim", "stretch"), ("frech terry", "french terry"),
        ("polyester linning", "lining"), ("linen butons", "button"),
    ],
)  # fmt: skip
def test_a_slip_that_changes_the_cloth_is_refused(slip: str, name: str) -> None:
    """With the name: left out, it would make leather of what bears no heat."""
    with pytest.raises(InputError) as caught:
        _read(slip)
    assert name in str(caught.value)


def test_what_is_left_out_may_have_been_meant_otherwise() -> None:
    """A letter from the word of a notion: it is offered beside what is said of it."""
    facts = [fact for fact, _ in _read("wool crepe zpi").notes]
    assert facts == ["'zpi' not understood (zip?)"]


def test_a_stretch_cloth_of_one_fibre_and_two_shares_holds_elastane() -> None:
    """Nobody writes the second fibre of a stretch satin 95/5."""
    assert _read("stretch silk satin 95/5").mixes == ((("silk", 95.0), ("elastane", 5.0)),)


@pytest.mark.parametrize(
    ("said", "notion"),
    [
        ("zipper, jacket, brass", "metal-zip"), ("cotton twill tape", "stay-tape"),
        ("foam shoulder pads", "shoulder-pad"), ("velvet piping cord", "piping-cord"),
        ("hook & eye tape", "bra-hooks"), ("dungaree clips", "buckle"),
    ],
)  # fmt: skip
def test_a_notion_stays_one_beside_the_name_of_a_cloth(said: str, notion: str) -> None:
    """A word that a cloth is called by too lies in the longer name of the notion."""
    assert _read(said).entry == notion


def test_many_flowers_are_a_pattern_as_one_is() -> None:
    """A plural in -ies is that of a y; neckties are no "neckty"."""
    assert _said("silk satin, peonies") == _said("silk satin, peony")
    assert _said("old neckties") == _said("old necktie")


def test_a_word_of_other_things_is_left_out_and_said() -> None:
    """The fold of a single fold binding is none of the elastic's; a glue is still asked for."""
    assert any("'fold'" in fact for fact, _ in _read("single fold bias binding").notes)
    with pytest.raises(InputError, match="fusible"):
        _read("fusible webbing")
