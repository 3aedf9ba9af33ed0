"""A name made fit to be a key or a file name: small letters, digits, hyphens."""

from __future__ import annotations

import re
import unicodedata

LONGEST = 48


def slug(text: str) -> str:
    """Give `text` in small ASCII letters, digits and single hyphens; never empty.

    >>> slug("Two-pack clear, 2:1 (März)")
    'two-pack-clear-2-1-marz'
    """
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    words = re.findall(r"[a-z0-9]+", plain.lower())
    return "-".join(words)[:LONGEST].strip("-") or "unnamed"
