"""Every page that can be gone to: it is whole, labelled, and says what the command line says."""

from __future__ import annotations

import json
import re
from itertools import pairwise
from pathlib import Path
from urllib.parse import quote

import pytest
from starlette.testclient import TestClient

from advisor.knowledge.model import Knowledge
from tests.page.conftest import client_of, project_folder
from tests.page.reading import field, root_of, said


@pytest.fixture(scope="module")
def client(known: Knowledge, tmp_path_factory: pytest.TempPathFactory) -> TestClient:
    """One page for all: nothing here writes anything."""
    return client_of(project_folder(tmp_path_factory.mktemp("read")), known)


JACKET = "/project/jacket.yaml"
ADDRESSES = (
    "/",
    "/ask",
    "/ask?cloths=nylon+organza%0D%0Alinen+suiting",
    "/iron",
    "/iron?cloths=cotton+velveteen%0Aacetate+satin&units=us",
    "/fabrics",
    "/fabrics?word=slippery",
    "/about?name=dupioni",
    "/about?name=silk&units=us",
    "/identify",
    "/identify?saw=burn.smell%3Dvinegar&refuse=flame",
    "/identify?saw=warp+burn.smell%3Dvinegar&threads=weft",
    "/examples",
    "/new",
    "/learn",
    JACKET,
    f"{JACKET}/sheet?units=us",
    f"{JACKET}/places",
    f"{JACKET}/why?place=hem+frill&aspect=press.temperature",
    f"{JACKET}/iron",
    f"{JACKET}/iron?place=hem+frill",
    f"{JACKET}/order",
    f"{JACKET}/cut",
    f"{JACKET}/compare?cloth=frill&other=silk+organza",
    f"{JACKET}/label",
    f"{JACKET}/label?market=us",
    f"{JACKET}/booklet?paper=letter",
    f"{JACKET}/parts",
    f"{JACKET}/settings",
    f"{JACKET}/edit",
)
every_address = pytest.mark.parametrize("address", ADDRESSES)


@every_address
def test_every_page_is_whole_and_can_be_gone_back_to(client: TestClient, address: str) -> None:
    """A page is well-formed, the same when it is asked for again, and names no command."""
    reply = client.get(address)
    assert 200 == reply.status_code
    root = root_of(reply.text)
    assert "en" == root.get("lang")
    assert root.findtext("head/title")
    assert reply.text == client.get(address).text
    assert [] == re.findall(r"--[a-z]+|advisor (?:check|sheet|order|why|iron)\b", said(reply.text))


@every_address
def test_every_page_has_landmarks_labels_and_headings(client: TestClient, address: str) -> None:
    """One main part that a link leads to, navigation with names, and every field labelled."""
    root = root_of(client.get(address).text)
    assert ["main"] == [e.get("id") for e in root.iter("main")]
    assert "#main" == next(root.iter("a")).get("href")
    assert all(nav.get("aria-label") for nav in root.iter("nav"))
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    shown = [e for e in root.iter() if e.tag in ("textarea", "select", "input")]
    fields = [e for e in shown if e.get("type") != "hidden"]
    labels = {e.get("for") for e in root.iter("label")}
    assert {e.get("id") for e in fields} == labels
    levels = [int(e.tag[1]) for e in root.iter() if re.fullmatch(r"h[1-6]", e.tag)]
    assert 1 == levels.count(1)
    assert all(after <= before + 1 for before, after in pairwise(levels[levels.index(1) :]))
    for drawing in root.iter("{http://www.w3.org/2000/svg}svg"):
        hidden = drawing.get("aria-hidden") == "true"
        assert hidden or any(e.tag.endswith("}desc") for e in drawing)


@every_address
def test_no_page_has_a_style_a_script_within_or_anything_from_outside(
    client: TestClient, address: str
) -> None:
    """The policy allows only style sheets and scripts of the page itself; no page wants more."""
    reply = client.get(address)
    policy = reply.headers["content-security-policy"]
    assert "default-src 'none'; style-src 'self'; script-src 'self'; form-action" in policy
    assert "unsafe" not in policy
    root = root_of(reply.text)
    assert [] == [e.tag for e in root.iter() if e.get("style") is not None]
    assert set() == {e.tag for e in root.iter()} & {"style", "img", "iframe", "object"}
    for script in root.iter("script"):
        assert not script.text
        assert 200 == client.get(str(script.get("src"))).status_code
    kept = [e.get("href") or e.get("action") or e.get("src") or "" for e in root.iter()]
    assert all(way.startswith(("/", "#")) for way in kept if way)
    for link in root.iter("link"):
        assert 200 == client.get(str(link.get("href"))).status_code


@every_address
def test_every_link_and_form_leads_somewhere(client: TestClient, address: str) -> None:
    """No link of a page is dead, and no mark within it leads nowhere."""
    root = root_of(client.get(address).text)
    ids = {e.get("id") for e in root.iter()}
    ways = {str(e.get("href")) for e in root.iter("a")}
    assert set() == {way for way in ways if way.startswith("#") and way[1:] not in ids}
    for way in sorted(w for w in ways if w.startswith("/"))[:40]:
        assert 200 == client.get(way).status_code, way


def test_a_question_is_answered_with_its_remedy(client: TestClient) -> None:
    """Linen and nylon organza clash under the iron, and the page says what to do instead."""
    page = client.get("/ask?cloths=nylon+organza%0D%0Alinen+suiting+240+g%2Fm2").text
    assert "It shows." in said(page)
    assert "Press the linen suiting pieces alone" in said(page)
    assert "nylon organza\nlinen suiting 240 g/m2" == field(page, "cloths")


WRONG = {
    "a fabric nobody knows": ("/ask?cloths=nylon+organzza", "organza"),
    "too many": (f"/ask?cloths={'lawn%0A' * 13}", "at most 12 cloths"),
    "too long": (f"/iron?cloths={'l' * 201}", "at most 200 letters"),
    "units": ("/ask?cloths=lawn&units=cubits", "metric or us"),
    "markup": ("/ask?cloths=%3Cscript%3Ealert(1)%3C/script%3E", "not understood"),
    "no cloth": ("/fabrics?word=organzza", "no cloth fits"),
    "no entry": ("/about?name=organzza", "organza"),
    "no test": ("/identify?saw=burn.smel%3Dvinegar", "burn.smell"),
    "no place": (f"{JACKET}/iron?place=hem+fril", "hem frill"),
    "no aspect": (f"{JACKET}/why?place=cuff&aspect=needle.siz", "needle.size"),
    "no role": (f"{JACKET}/compare?cloth=fril&other=lawn", "frill"),
    "no other cloth": (f"{JACKET}/compare?cloth=frill&other=organzza", "organza"),
    "no market": (f"{JACKET}/label?market=mars", "mars"),
    "no paper": (f"{JACKET}/booklet.css?paper=a9", "a4 or letter"),
}


@pytest.mark.parametrize("case", WRONG)
def test_what_cannot_be_used_is_said(client: TestClient, case: str) -> None:
    """The message of the command line, announced to a screen reader, nothing of our insides."""
    address, words = WRONG[case]
    reply = client.get(address)
    assert reply.status_code in (400, 404)
    errors = [e for e in root_of(reply.text).iter("div") if e.get("role") == "alert"]
    assert words in "".join(errors[0].itertext())
    assert "Traceback" not in reply.text
    assert "script" not in [e.tag for e in root_of(reply.text).iter()]


def test_the_places_show_their_layers_in_their_colours_and_in_words(client: TestClient) -> None:
    """Each place has its cross-section; the text beside it names the layers from the iron down."""
    page = client.get(f"{JACKET}/places").text
    drawings = list(root_of(page).iter("{http://www.w3.org/2000/svg}svg"))
    filled = {e.get("fill") for d in drawings for e in d.iter() if e.tag.endswith("}rect")}
    assert "#27455f" in filled
    assert "From the iron down: shell, frill." in said(page)
    assert "Stitched 15 mm from the edge" in said(page)


def test_the_order_says_in_words_what_its_line_shows(client: TestClient) -> None:
    """The description of the line counts the steps, and there are as many boxes."""
    root = root_of(client.get(f"{JACKET}/order").text)
    drawing = next(root.iter("{http://www.w3.org/2000/svg}svg"))
    words = next(e.text or "" for e in drawing if e.tag.endswith("}desc"))
    boxes = [e for e in root.iter("button") if e.get("name") in ("tick", "untick")]
    assert words.startswith(f"{len(boxes)} steps: ")
    assert len(boxes) > 30


def test_the_lay_of_a_cloth_is_to_scale_and_says_the_same_in_words(client: TestClient) -> None:
    """The shell on the fold: the back, 54 by 66 cm, lies half, and each outline has its line."""
    root = root_of(client.get(f"{JACKET}/cut").text)
    drawing = next(e for e in root.iter() if e.get("class") == "lay")
    corners = [e.get("points", "").split() for e in drawing.iter() if e.tag.endswith("polygon")]
    sides = []
    for points in corners:
        xs, ys = zip(*(map(float, point.split(",")) for point in points), strict=True)
        sides.append((max(ys) - min(ys), max(xs) - min(xs)))
    half_back = next(one for one in sides if abs(one[1] / one[0] - 66 / 27) < 0.02)
    scale = half_back[1] / 66
    for wide, long in ((32, 68), (14, 66), (42, 62)):
        assert any(
            wide == pytest.approx(a / scale, rel=0.01)
            and long == pytest.approx(b / scale, rel=0.01)
            for a, b in sides
        )
    listed = next(e for e in root.iter("ol") if e.get("class") == "numbered")
    lines = ["".join(e.itertext()) for e in listed]
    assert "back: 0 to 66 cm along, 0 to 27 cm from the fold, half of it, on the fold" in lines
    words = next(e.text or "" for e in drawing if e.tag.endswith("}desc"))
    assert [] == [line for line in lines if line not in words]
    assert len(lines) == len(corners)


def test_two_cloths_for_one_role_stand_side_by_side(client: TestClient) -> None:
    """Silk organza in place of nylon takes a hotter iron, and the clash is gone."""
    way = f"{JACKET}/compare?cloth=frill&other=silk+organza"
    root = root_of(client.get(way).text)
    rows = [[" ".join("".join(e.itertext()).split()) for e in tr] for tr in root.iter("tr")]
    assert ["Where", "What", "as it is now", "silk organza"] == rows[0]
    iron = next(row for row in rows if row[:2] == ["hem frill", "Iron"])
    assert "never above 110 °C" in iron[2]
    assert "never above 150 °C" in iron[3]
    assert all(row[2] != row[3] for row in rows[1:])
    words = said(client.get(way).text)
    now, other = words.split("What can go wrong")[1].split("What differs")[0].split("silk organza")
    assert "It shows" in now
    assert "Nothing contradicts itself" in other
    same = said(client.get(f"{JACKET}/compare?cloth=frill&one=lawn&other=lawn").text)
    assert "lines are the same with both" in same
    assert "Where What" not in same


def test_why_names_who_says_it_and_on_whose_word(client: TestClient) -> None:
    """The reasons of the iron at the hem frill name nylon and a published work."""
    page = said(client.get(f"{JACKET}/why?place=hem+frill&aspect=press.temperature").text)
    assert "frill" in page
    assert "at most 110 °C" in page
    assert "On the word of" in page


def test_the_label_is_what_the_command_prints(client: TestClient) -> None:
    """What is written on the label stands on the page, and why it is not ready yet."""
    page = said(client.get(f"{JACKET}/label?market=eu").text)
    assert "Not ready" in page
    assert "100 % acetate" in page
    assert "its name says linen, and it is sold in other mixes too" in page


def test_an_unknown_fibre_is_narrowed_down_step_by_step(client: TestClient) -> None:
    """Each answer is kept in the address; before a flame comes how to do it safely."""
    first = client.get("/identify").text
    assert "label" in json.dumps([e.get("name") for e in root_of(first).iter("input")])
    skipped = "&".join(f"skip={x}" for x in ("label", "build", "strip", "rubbery"))
    asked = said(client.get(f"/identify?{skipped}").text)
    assert "fibres remain" in asked
    later = client.get("/identify?label=silk+55+viscose+45").text
    assert "silk 55 viscose 45" in said(later)
    flame = [w for w in _walk(client, skipped) if "Look at next" in w and "tweezers" in w]
    assert flame
    assert all(w.index("Before you begin") < w.index("tweezers") for w in flame)
    none = _walk(client, f"{skipped}&refuse=flame&refuse=solvent")
    assert all("tweezers" not in w and "acetone" not in w.casefold() for w in none)


def test_warp_and_weft_are_looked_at_apart(client: TestClient) -> None:
    """What is seen of one says nothing of the other; of the whole cloth it holds for both."""
    page = client.get("/identify?saw=warp+burn.smell%3Dvinegar&threads=weft&skip=label").text
    words = said(page)
    assert "The warp" in words
    assert "acetate" in words.split("The warp")[1].split("The weft")[0]
    assert "wool" not in words.split("The warp")[1].split("The weft")[0]
    assert "wool" in words.split("The weft")[1].split("Until you know")[0]
    offered = [str(e.get("value")) for e in root_of(page).iter("input") if e.get("type") == "radio"]
    assert offered
    assert all(value.startswith("weft ") for value in offered)
    both = said(client.get("/identify?saw=burn.smell%3Dvinegar&threads=weft&skip=label").text)
    assert "wool" not in both.split("What remains")[1].split("Until you know")[0]


def _walk(client: TestClient, query: str) -> list[str]:
    """The pages that follow when every question is skipped."""
    seen = []
    for _ in range(30):
        page = client.get(f"/identify?{query}").text
        seen.append(said(page))
        nexts = [e for e in root_of(page).iter("button") if e.get("name") == "skip"]
        if not nexts:
            break
        query += f"&skip={quote(str(nexts[0].get('value')))}"
    return seen


def test_a_folder_without_projects_says_so(known: Knowledge, tmp_path: Path) -> None:
    """An empty folder offers to begin one."""
    assert "no project in this folder yet" in said(client_of(tmp_path, known).get("/").text)
