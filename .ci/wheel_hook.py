"""Puts the compiled knowledge into the wheel, so that a first run need not read 500 files.

It is data only, JSON with a checksum, marked with what the knowledge files hold: where one of
them was changed since, the tool reads them anew.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


class CompiledKnowledge(BuildHookInterface):  # type: ignore[type-arg]
    """Compiles `knowledge/` while a wheel is built; an editable install reads the checkout."""

    _folder: tempfile.TemporaryDirectory[str] | None = None

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Compile, check, and add one file."""
        if version == "editable":
            return
        sys.path.insert(0, self.root)
        try:
            from advisor.overlay.cache import SHIPPED, shipped_text

            text = shipped_text(Path(self.root) / "knowledge")
        finally:
            sys.path.remove(self.root)
        self._folder = tempfile.TemporaryDirectory()
        compiled = Path(self._folder.name) / SHIPPED
        compiled.write_bytes(text)
        build_data["force_include"][str(compiled)] = f"advisor/{SHIPPED}"

    def finalize(self, *_: Any) -> None:
        """Take away what is now in the wheel."""
        if self._folder is not None:
            self._folder.cleanup()
