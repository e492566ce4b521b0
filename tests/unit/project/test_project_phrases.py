"""What words for cloths come to, one row of `phrases.tsv` or `phrases_spoken.tsv` each."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from advisor.errors import InputError
from advisor.knowledge.model import Mix
from advisor.knowledge.when_asked import WhenAsked
from advisor.overlay.cache import load_knowledge
from advisor.project.phrase import Reading, read_fibres, read_phrase
from advisor.project.phrases.boundaries import cloths_said
from advisor.project.phrases.grounds import TABLE, Names, table_of
from advisor.project.phrases.suggestions import likest
from advisor.project.quick import asked_garment
from tests.typed import shipped as knowledge

FILES = [
    Path(__file__).with_name(name)
    for name in (
        "phrases.tsv",
        "phrases_spoken.tsv",
        "phrases_glossaries.tsv",
        "phrases_shops.tsv",
        "phrases_slips.tsv",
        "phrases_counter.tsv",
    )
]
ROWS = [
    tuple(line.split("\t"))
    for file in FILES
    for line in file.read_text("utf-8").splitlines()
    if not line.startswith("#")
]
UNDERSTOOD = [row for row in ROWS if row[1] != "REFUSED"]
REFUSED = [row for row in ROWS if row[1] == "REFUSED"]
MOST_REFUSED = 0.05


def written(mix: Mix) -> str:
    """A mix as the rows write it."""
    return " ".join(fibre if share is None else f"{fibre} {share:g}" for fibre, share in mix)


def wrong(row: tuple[str, ...], reading: Reading) -> str:
    """What is not as the row wants it; nothing where all is."""
    phrase, entry, fibres, weight, shade, said = row
    found = [] if reading.entry == entry else [f"is {reading.entry}"]
    how, _, mix = fibres.partition(" ")
    if how != "any" and written(reading.mixes[0]) != mix:
        found.append(f"of {written(reading.mixes[0])}")
    if (how == "=") != (len(reading.mixes) == 1) and how != "any":
        found.append(f"{len(reading.mixes)} mixes")
    if how == "any" and not all(
        any(set(mix) <= set(kept) for kept in reading.mixes)
        for mix in knowledge().entries[entry].mixes
    ):
        found.append("some mix is lost")
    if weight != "-" and (reading.weight is None or round(reading.weight[0]) != int(weight)):
        found.append(f"weighs {reading.weight}")
    if shade not in ("-", reading.shade):
        found.append(f"is {reading.shade}")
    if said == "said" and not reading.notes:
        found.append("nothing said")
    return f"{phrase}: {', '.join(found)}" if found else ""


def test_the_corpus_is_large() -> None:
    """A thousand phrases and more, of which the reasonable ones are hardly refused."""
    assert len(ROWS) >= 1000
    refused = [row[0] for row in UNDERSTOOD if _refused(row[0])]
    assert len(refused) <= MOST_REFUSED * len(UNDERSTOOD), refused


def _refused(phrase: str) -> bool:
    try:
        read_phrase(phrase, knowledge())
    except InputError:
        return True
    return False


def test_each_phrase_comes_to_its_cloth() -> None:
    """Cloth, fibres, weight, shade and what has to be said are as each row wants them."""
    read = [(row, read_phrase(row[0], knowledge())) for row in UNDERSTOOD if not _refused(row[0])]
    assert [] == [line for row, reading in read if (line := wrong(row, reading))]


def test_names_are_known_without_looking_into_a_cloth(monkeypatch: pytest.MonkeyPatch) -> None:
    """A question builds the few cloths that it asks of, and not all of them for their names."""
    asked: list[str] = []
    fresh = load_knowledge()
    monkeypatch.setattr(WhenAsked, "__getitem__", lambda _, id_: asked.append(id_))
    assert Names(fresh).all
    assert [] == asked


def test_each_name_is_read_as_its_own_cloth() -> None:
    """Whatever is printed as a name of a cloth or a notion is understood as that one."""
    read = [(name, read_phrase(name, knowledge()).entry) for name in knowledge().names]
    assert [] == [pair for pair in read if knowledge().names[pair[0]] != pair[1]]


@pytest.mark.parametrize("row", REFUSED, ids=[row[0] for row in REFUSED])
def test_what_could_do_harm_is_refused(row: tuple[str, ...]) -> None:
    """A slip, a denial, shares that do not fit, and no cloth at all are refused with the reason."""
    with pytest.raises(InputError) as caught:
        read_phrase(row[0], knowledge())
    assert row[2] in str(caught.value)


@pytest.mark.parametrize(
    ("typed", "cloths"),
    [
        (["silk", "organza", "linen", "suiting"], ["silk organza", "linen suiting"]),
        (["silk organza, linen suiting"], ["silk organza", "linen suiting"]),
        (["wool crepe + silk habotai"], ["wool crepe", "silk habotai"]),
        (["silk organza over linen"], ["silk organza", "linen"]),
        (["satin under lace"], ["lace", "satin"]),
        (["lace on satin"], ["lace", "satin"]),
        (["jersey with 5% elastane"], ["jersey with 5% elastane"]),
        (["65% poly, 35% cotton twill"], ["65% poly, 35% cotton twill"]),
        (["brocade, fibre unknown"], ["brocade, fibre unknown"]),
        (["brocade", "satin lining", "organza"], ["brocade", "satin lining", "organza"]),
        (["brocade", "lining"], ["brocade", "lining"]),
        (["jersey and lace"], ["jersey", "lace"]),
        (["velvet vs satin"], ["velvet", "satin"]),
        (["silk", "dupion,", "organza", "lining"], ["silk dupion", "organza lining"]),
        (["linen,", "silk"], ["linen", "silk"]),
        (["65%", "poly,", "35%", "cotton", "twill"], ["65% poly, 35% cotton twill"]),
        (["silk", "organza", "wool", "crepe"], ["silk organza", "wool crepe"]),
        (["linen", "iron-on", "interfacing"], ["linen", "iron-on interfacing"]),
        (["cotton", "iron-on", "interfacing", "denim"], ["cotton iron-on interfacing", "denim"]),
        (["jersey", "clear", "elastic", "lace"], ["jersey", "clear elastic", "lace"]),
        (["organza", "30gsm", "linen", "200gsm"], ["organza 30gsm", "linen 200gsm"]),
        (["organza", "30", "gsm", "linen"], ["organza 30 gsm", "linen"]),
        (["14oz", "denim", "60gsm", "lining"], ["14oz denim", "60gsm lining"]),
        (["velvet", "satin", "ribbon"], ["velvet", "satin ribbon"]),
        (["denim", "jeans", "zip"], ["denim", "jeans zip"]),
        (["leather", "silk", "lining", "metal", "zip"], ["leather", "silk lining", "metal zip"]),
        (["corded", "chantilly", "lace", "linen"], ["corded chantilly lace", "linen"]),
        (["beaded", "tulle", "silk", "satin"], ["beaded tulle", "silk satin"]),
        (["silk", "wool"], ["silk", "wool"]),
        (["silk wool"], ["silk wool"]),
        (["poly", "cotton"], ["poly cotton"]),
        (["cotton", "lining"], ["cotton lining"]),
        (["velvet\nsatin"], ["velvet", "satin"]),
        (["denim", "and", "corduroy"], ["denim", "corduroy"]),
        (["black wool with a pink satin lining"], ["black wool", "pink satin lining"]),
        (["wool crepe lined with silk habotai"], ["wool crepe", "silk habotai"]),
        (["wool crepe lined in acetate"], ["wool crepe", "acetate"]),
        (["wool fully lined in silk satin"], ["wool", "silk satin"]),
        (["cut_work lace"], ["cut_work lace"]),
        (["cotton lawn / silk chiffon"], ["cotton lawn", "silk chiffon"]),
        (["denim with 2% elastane and lace"], ["denim with 2% elastane", "lace"]),
        (["organza 30gsm, linen 200gsm"], ["organza 30gsm", "linen 200gsm"]),
        (["tweed + leather + lining"], ["tweed", "leather", "lining"]),
        (["chiffon beneath organza"], ["organza", "chiffon"]),
        (["iron-on interfacing against satin"], ["iron-on interfacing", "satin"]),
        (["cotton and linen canvas"], ["cotton and linen canvas"]),
        (["silk/cotton voile"], ["silk/cotton voile"]),
        (["poplin w/ 3% elastane"], ["poplin w/ 3% elastane"]),
        (["hook and loop tape"], ["hook and loop tape"]),
        (["white lawn, embroidered edge"], ["white lawn, embroidered edge"]),
        (["boucle with metallic thread"], ["boucle with metallic thread"]),
        (["T-shirt", "denim"], ["T-shirt", "denim"]),
        (["net", "t-shirt"], ["net", "t-shirt"]),
        (["denim", "hoodie"], ["denim", "hoodie"]),
        (["old", "jumper", "satin"], ["old jumper", "satin"]),
        (["towel", "denim"], ["towel", "denim"]),
        (["hoodie", "fleece"], ["hoodie fleece"]),
        (["floaty", "chiffon"], ["floaty chiffon"]),
        (["curtain, denim"], ["curtain", "denim"]),
        (["denim and an old floral curtain"], ["denim", "old floral curtain"]),
        (["curtain", "lining"], ["curtain lining"]),
        (["old velvet, curtain weight"], ["old velvet, curtain weight"]),
    ],
)
def test_cloths_part_where_one_ends(typed: list[str], cloths: list[str]) -> None:
    """Several cloths are found in one argument, and in words without quotes, and it is said."""
    found, note = cloths_said(typed, knowledge())
    assert cloths == found
    assert (note is None) == (cloths == typed)


def test_no_embellished_cloth_is_offered_for_a_fibre_alone() -> None:
    """Silk is charmeuse or dupioni, and beaded cloth is a ground with something on it."""
    said = " ".join(effect for _, effect in read_phrase("silk", knowledge()).notes)
    assert "others are charmeuse" in said
    assert "beaded" not in said


@pytest.mark.parametrize("said", ["T-shirt", "tee shirt", "tshirt", "old t-shirt", "tee"])
def test_a_t_shirt_is_of_jersey(said: str) -> None:
    """It is what most old jersey was."""
    assert read_phrase(said, knowledge()).entry == "jersey"


def test_a_word_that_is_not_understood_is_refused_by_itself() -> None:
    """Not as if it belonged to the cloth that was typed behind it."""
    with pytest.raises(InputError) as caught:
        asked_garment(["gabardeen", "denim"], knowledge())
    assert "'gabardine'" in str(caught.value)
    assert "denim" not in str(caught.value)


@pytest.mark.parametrize("said", ["cuddly stuff", "some soft thing", "old material"])
def test_nothing_is_suggested_for_words_that_say_nothing_of_a_cloth(said: str) -> None:
    """Such a word is a part of many names, and no reason for one."""
    assert not likest(said, knowledge())


@pytest.mark.parametrize("typed", ["satin", "velvte", "organzza", "waffle", "moleskine"])
def test_a_suggestion_is_never_what_was_typed(typed: str) -> None:
    """Names that look like what was typed are offered, and never the same again."""
    found = likest(typed, knowledge())
    assert found
    assert typed not in found


@pytest.mark.parametrize(
    ("phrase", "most"),
    [
        ("silk 30% satin", 110),
        ("silk 45% satin", 110),
        ("partly silk satin", 110),
        ("silk satin mixes", 110),
        ("gold print cotton", 110),
        ("cotton with gold print", 110),
        ("shower curtain", 20),
        ("umbrella fabric", 20),
        ("old curtain", 110),
        ("nylon raincoat", 110),
        ("wool jumper", 110),
        ("ribbed silk tie", 110),
        ("double cloth zephyr", 110),
    ],
)
def test_what_is_left_open_is_as_tender_as_it_may_be(phrase: str, most: float) -> None:
    """What a share or a word leaves open counts at its tenderest (the fibres' own limits)."""
    fibres = knowledge().fibres
    reading = read_phrase(phrase, knowledge())
    assert min(fibres[fibre].limit for mix in reading.mixes for fibre, _ in mix) <= most


@pytest.mark.parametrize("phrase", ["wool 5%", "silk 20 %"])
def test_a_small_share_names_no_cloth(phrase: str) -> None:
    """What most of it is of nobody has said."""
    with pytest.raises(InputError, match="the fibre that most of it is of"):
        read_phrase(phrase, knowledge())


def test_names_of_the_cache_are_those_that_are_worked_out() -> None:
    """What the compiled knowledge holds of the names is what comes of spelling them anew."""
    assert knowledge().plain[TABLE] == table_of(knowledge())
    assert Names(replace(knowledge(), plain={})).all == Names(knowledge()).all
    more = {**knowledge().names, "marsh cloth": "organza"}
    assert ("marsh", "cloth") in Names(replace(knowledge(), names=more)).whole


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("silk nol", "noil"), ("wol crepe", "wool"), ("sik georgette", "silk"), ("lce", "lace")],
)
def test_a_letter_left_out_of_a_short_word_is_a_slip(typed: str, meant: str) -> None:
    """Three letters of a word of four are refused with the word, and not left out."""
    with pytest.raises(InputError) as caught:
        read_phrase(typed, knowledge())
    assert f"'{meant}'" in str(caught.value)


@pytest.mark.parametrize(
    ("typed", "unlike"),
    [("orgnza", "borg"), ("corduory", "cork"), ("gabardien", "gazar"), ("rigilin", "net")],
)
def test_a_name_of_a_few_of_the_letters_is_not_suggested(typed: str, unlike: str) -> None:
    """A short name that happens to stand within a long word was not meant by it."""
    assert unlike not in likest(typed, knowledge())


def test_a_colour_called_after_skin_is_no_name_of_a_mesh() -> None:
    """The words of a colour do not make up a name with a word from afar."""
    assert read_phrase("power mesh, skin tone", knowledge()).entry == "power-mesh"
    assert read_phrase("skin mesh", knowledge()).entry == "soft-mesh"


def test_a_slip_of_unknown_is_told_among_the_fibres() -> None:
    """Who does not know a fibre may say so, and mistype it."""
    with pytest.raises(InputError, match="Did you mean 'unknown'"):
        read_fibres("unkown", knowledge())


def test_a_slip_of_a_word_of_use_is_told_with_its_name() -> None:
    """As a part of the name that the whole phrase is a slip of."""
    with pytest.raises(InputError, match="Did you mean 'linen suiting'"):
        read_phrase("linen suuiting", knowledge())
