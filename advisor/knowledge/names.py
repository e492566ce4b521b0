"""One spelling for every name, so that "Lamé", "lame" and "LAMÉ " are found alike."""

from __future__ import annotations

import unicodedata


def plain_name(text: str) -> str:
    """A name in lower case, without accents, hyphens or double spaces."""
    split = unicodedata.normalize("NFKD", text.casefold())
    bare = "".join(c for c in split if not unicodedata.combining(c))
    return " ".join(bare.replace("-", " ").replace("’", "'").split())
