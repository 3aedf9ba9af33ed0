"""A name made fit to be a key or a file name: small letters, digits, hyphens."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

LONGEST = 48
REHEARSAL = "rehearsal:"


def slug(text: str) -> str:
    """Give `text` in small ASCII letters, digits and single hyphens; never empty.

    >>> slug("Two-pack clear, 2:1 (März)")
    'two-pack-clear-2-1-marz'
    """
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    words = re.findall(r"[a-z0-9]+", plain.lower())
    return "-".join(words)[:LONGEST].strip("-") or "unnamed"


def numbered(stem: str, ending: str = "", most: int = 1000) -> Iterator[str]:
    """Give a name, then the same with 2 behind it, 3 and so on.

    >>> list(numbered("clear", ".toml", most=3))
    ['clear.toml', 'clear-2.toml', 'clear-3.toml']
    """
    yield f"{stem}{ending}"
    for number in range(2, most + 1):
        yield f"{stem}-{number}{ending}"


def system_key(key: str) -> str:
    """Give the key of a coating system among those of profiles, none of which has it.

    >>> system_key("car-silver")
    'system:car-silver'
    """
    return f"system:{key}"


def rehearsal_key(key: str) -> str:
    """Give the key under which a coating profile or system is rehearsed: none of either has it.

    >>> rehearsal_key(system_key("car-silver"))
    'rehearsal:system:car-silver'
    """
    return f"{REHEARSAL}{key}"
