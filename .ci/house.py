"""Chores of the CI script around the checkout's own files; needs nothing but Python.

house.py check          complain about anything that may not lie in the checkout
house.py copy FOLDER    copy the checkout's own files into a new folder
house.py lowest         print each library at the lowest version that pyproject.toml allows
house.py readme WORD    print the one of the README's first two command blocks that holds WORD;
                        fails when none or both do
"""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "advisor", "knowledge", "tests"}
PICTURES = Path("tests/page/pictures")  # those of the README, made by tests/page/pictures.py
NEVER_OURS = {".git", ".venv", "__pycache__", ".mypy_cache", ".pytest_cache", ".ruff_cache"}

# Each name is put together from pieces, so that this file does not hold what it looks for.
HOMES = "|".join(("ho" + "me", "ro" + "ot", "tm" + "p", "wo" + "rk", "o" + "pt", "Us" + "ers"))
FORBIDDEN = {
    # Not within a longer path, an address or a closing tag: those are nobody's machine.
    "a path of one machine": re.compile(
        rf"(?:(?<![\w.~/*<-])|file://)/(?:{HOMES})(?:/[\w.~]|(?![\w/-]))"
    ),
}


def own_files() -> list[Path]:
    """The checkout's files, relative and sorted: what git knows or would add, else all there is."""
    ask = ["git", "-C", str(ROOT), "ls-files", "-z", "--cached", "--others", "--exclude-standard"]
    try:
        listed = subprocess.run(ask, capture_output=True, check=True, text=True).stdout.split("\0")
        paths = [Path(name) for name in listed if name]
    except (OSError, subprocess.CalledProcessError):
        paths = [path.relative_to(ROOT) for path in ROOT.rglob("*")]
    return sorted(
        {p for p in paths if (ROOT / p).is_file() and not NEVER_OURS.intersection(p.parts)}
    )


def check() -> list[str]:
    """What may not lie in the checkout, one line each."""
    files = own_files()
    tops = {path.parts[0] for path in files}
    wrong = [
        f"{name}: not allowed at the top level" for name in sorted(tops - TOP) if name[0] != "."
    ]
    wrong += [f"{name}: missing at the top level" for name in sorted(TOP - tops)]
    for path in files:
        if path.suffix == ".png" and path.parent == PICTURES:
            continue
        try:
            lines = (ROOT / path).read_text("utf-8").splitlines()
        except UnicodeDecodeError:
            wrong.append(f"{path}: not UTF-8 text")
            continue
        for number, line in enumerate(lines, 1):
            found = [what for what, pattern in FORBIDDEN.items() if pattern.search(line)]
            wrong += [f"{path}:{number}: holds {what}: {line.strip()[:90]}" for what in found]
    return wrong


def copy(folder: Path) -> None:
    """Copy the checkout's own files, and nothing that a run left behind, into a new folder."""
    for path in own_files():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(ROOT / path, folder / path)


def readme(word: str) -> str:
    """The one of the README's first two command blocks that holds a word."""
    text = (ROOT / "README.md").read_text("utf-8")
    fenced = re.compile(r"^```sh\n(.*?)^```[ \t]*$", flags=re.MULTILINE | re.DOTALL)
    blocks: list[str] = fenced.findall(text)[:2]
    found = [block for block in blocks if word in block]
    if len(found) != 1:
        sys.exit(f"README.md: {len(found)} of its first two ```sh blocks hold {word!r}, not one")
    return found[0].strip()


def lowest() -> list[str]:
    """Each library that the package needs, pinned to the lowest version that it declares."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    return [re.sub(r">=([^,]+).*", r"==\1", needed) for needed in project["dependencies"]]


def main(words: list[str]) -> None:
    """Do the one chore that the command line names."""
    match words:
        case ["check"]:
            if wrong := check():
                sys.exit("\n".join(wrong))
        case ["copy", folder]:
            copy(Path(folder))
        case ["lowest"]:
            print("\n".join(lowest()))
        case ["readme", word]:
            print(readme(word))
        case _:
            sys.exit(__doc__)


if __name__ == "__main__":
    main(sys.argv[1:])
