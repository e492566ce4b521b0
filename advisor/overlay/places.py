"""Where the cache and a maker's own knowledge lie on this machine.

On Linux that is `~/.cache/advisor` and `~/.config/advisor/knowledge`; elsewhere what is usual
there. A folder from before this distinction is still read where it is.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

CACHE_VARIABLE = "ADVISOR_CACHE"
OWN_VARIABLE = "ADVISOR_OWN"


def cache_folder() -> Path:
    """Where the compiled knowledge is kept; ADVISOR_CACHE names another place."""
    named = os.environ.get(CACHE_VARIABLE)
    if named:
        return Path(named)
    base = os.environ.get("XDG_CACHE_HOME")
    if base:
        return Path(base) / "advisor"
    return _usual("user_cache_path") or _home() / ".cache" / "advisor"


def own_folder() -> Path:
    """A maker's own folder: named by ADVISOR_OWN, or in the folder for settings."""
    named = os.environ.get(OWN_VARIABLE)
    if named:
        return Path(named)
    base = os.environ.get("XDG_CONFIG_HOME")
    if base:
        return Path(base) / "advisor" / "knowledge"
    old = _home() / ".config" / "advisor" / "knowledge"
    usual = _usual("user_config_path")
    return old if usual is None or old.is_dir() else usual / "knowledge"


def placed(folder: Path) -> str:
    """The whole path of a folder, or as it was named where the working folder is gone."""
    try:
        return str(folder.absolute())
    except OSError:
        return str(folder)


def _usual(kind: str) -> Path | None:
    """What is usual on this system; None on Linux, where it is plain and costs no import."""
    system: str = sys.platform  # a plain word, for a type checker knows only its own
    if system.startswith("linux"):
        return None
    import platformdirs

    found: Path = getattr(platformdirs, kind)("advisor", appauthor=False)
    return found


def _home() -> Path:
    """The home folder; for somebody who has none, a place that keeps nothing."""
    try:
        return Path.home()
    except RuntimeError:
        return Path(os.devnull)
