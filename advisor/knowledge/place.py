"""Where the shipped knowledge lies."""

from __future__ import annotations

import os
from pathlib import Path

FOLDER_VARIABLE = "ADVISOR_KNOWLEDGE"


def knowledge_folder() -> Path:
    """The folder named by ADVISOR_KNOWLEDGE, or the one inside the package, or beside it."""
    named = os.environ.get(FOLDER_VARIABLE)
    if named:
        return Path(named)
    package = Path(__file__).resolve().parent.parent
    inside = package / "_knowledge"
    return inside if inside.is_dir() else package.parent / "knowledge"
