"""`advisor identify` as it is typed: options, piped answers, JSON, and a project file changed."""

from __future__ import annotations

import json
from pathlib import Path

from tests.typed import Done, typed

PROJECT = """\
# A coat from gift cloth.
garment:   Gift coat   # two of everything
fabrics:
  shell:   {fabric: linen suiting,  weight: 240 g/m2}   # firm
  gift:    "brocade, fibre unknown"
  frill:
    fabric: organza     # from the attic
    colour: "#27455f"
seams:
  - {name: side, layers: [shell, gift],   length: 40 cm}
  - {name: hem,  layers: [shell, frill]}
"""


def run(*words: str, answers: str = "") -> Done:
    return typed("identify", *words, text=answers)


def saw(*texts: str) -> list[str]:
    return [word for text in texts for word in ("--saw", text)]


def test_what_was_seen_leaves_a_set() -> None:
    """A hard black bead and vinegar leave acetate and its kin, and the answer is data."""
    done = run(*saw("burn.residue=hard black bead", "smell=vinegar"), "--json")
    data = json.loads(done.out)
    assert 0 == done.returncode
    assert "advisor.identify/1" == data["schema"]
    names = [f["id"] for f in data["threads"][0]["remain"]]
    assert {"acetate", "triacetate"} <= set(names)
    assert not {"cotton", "silk", "polyester", "nylon"} & set(names)
    assert {"fire", "burn"} <= {c["kind"] for c in data["cautions"]}


def test_unknown_words_get_the_nearest() -> None:
    """Every word that is not understood is named with what was probably meant."""
    done = run(*saw("residu=soft grey ash", "smell=vinigar"))
    assert 2 == done.returncode
    assert "" == done.out
    assert "'residue'" in done.err
    assert "'vinegar'" in done.err


def test_a_contradiction_is_said() -> None:
    """Ash and a sweet smell contradict each other; the exit code says so."""
    done = run(*saw("residue=soft grey ash", "smell=sweet"))
    assert 1 == done.returncode
    assert "contradict each other" in done.out
    assert "cellulose with polyester" in done.out


def test_warp_and_weft_apart() -> None:
    """A plant warp and an animal weft are no contradiction, and the cloth is a mix of both."""
    done = run(*saw("warp label=cotton", "weft smell=hair", "weft residue=crumbles"), "--json")
    data = json.loads(done.out)
    assert 0 == done.returncode
    assert ["warp", "weft"] == [part["name"] for part in data["threads"]]
    assert {"cotton": None, "silk": None} in data["may_be"]


def test_many_pairs_are_told_one_by_one() -> None:
    """Where warp and weft leave too many pairs, the cloth may hold any of their fibres."""
    done = run(*saw("warp residue=soft grey ash", "weft smell=hair"), "--json")
    data = json.loads(done.out)
    assert {"cotton": None} in data["may_be"]
    assert {"silk": None} in data["may_be"]


def test_piped_answers_and_an_early_end() -> None:
    """Answers may be piped, and where they end what is known so far is told."""
    done = run(answers="yes\nno label\n1\nno\nno\nyes\nmelts\nmelts\n")
    assert 0 == done.returncode
    assert "acetate" in done.out
    assert "cotton" not in done.out.split("next")[0]
    assert "Practised adults only" in done.err


def test_no_answer_at_all_ends_cleanly() -> None:
    """An empty pipe gives every fibre and no traceback."""
    done = run()
    assert 0 == done.returncode
    assert "Traceback" not in done.err


def test_a_flame_that_is_refused_is_not_asked_about() -> None:
    """Whoever will not burn a snip is asked nothing about a flame."""
    done = run(answers="yes\n\n\n\n\nno\nno\n")
    assert 0 == done.returncode
    assert "as it nears" not in done.err.split("Will you burn")[1]


def test_into_a_project_keeps_all_else(tmp_path: Path) -> None:
    """Only the words for the cloth change; comments and spaces stay as they were."""
    file = tmp_path / "gift.yaml"
    file.write_text(PROJECT, encoding="utf-8")
    done = run(
        *saw("residue=crumbles", "smell=hair", "build=threads", "residue=ash skeleton"),
        "--into",
        str(file),
        "gift",
    )
    assert 0 == done.returncode, done.err
    expected = PROJECT.replace(
        '"brocade, fibre unknown"', "{fabric: brocade, fibres: [silk, tussah-silk]}"
    )
    assert expected == file.read_text(encoding="utf-8")


def test_into_a_group_of_keys(tmp_path: Path) -> None:
    """In a group the key is added, below or within, and replaced when it is there already."""
    file = tmp_path / "gift.yaml"
    file.write_text(PROJECT, encoding="utf-8")
    label = saw("label=silk")
    assert 0 == run(*label, "--into", str(file), "frill").returncode
    once = PROJECT.replace('    colour: "#27455f"\n', '    colour: "#27455f"\n    fibres: silk\n')
    assert once == file.read_text(encoding="utf-8")
    assert 0 == run(*saw("label=nylon"), "--into", str(file), "frill").returncode
    assert once.replace("fibres: silk", "fibres: nylon") == file.read_text(encoding="utf-8")


def test_nothing_is_written_of_a_contradiction(tmp_path: Path) -> None:
    """A contradiction leaves the file as it is."""
    file = tmp_path / "gift.yaml"
    file.write_text(PROJECT, encoding="utf-8")
    done = run(*saw("residue=soft grey ash", "smell=sweet"), "--into", str(file), "gift")
    assert 1 == done.returncode
    assert PROJECT == file.read_text(encoding="utf-8")


def test_a_cloth_that_is_not_there(tmp_path: Path) -> None:
    """A cloth that the project does not have is named with the nearest."""
    file = tmp_path / "gift.yaml"
    file.write_text(PROJECT, encoding="utf-8")
    done = run(*saw("label=silk"), "--into", str(file), "frills")
    assert 2 == done.returncode
    assert "'frill'" in done.err
    assert PROJECT == file.read_text(encoding="utf-8")
