"""What the docstrings of the trade say: purpose, range and source, so that they are written once."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable

_SECTION = re.compile(r"^(Args|Returns|Range|Raises|Source|Example):\s*(.*)$")
#: "As for dry_film_um" in a docstring, which a painter cannot look up.
_ELSEWHERE = re.compile(r"\b[Aa]s (?:for )?([a-z]\w*_\w+)")
#: Under ``python -OO`` there are no docstrings.
STRIPPED = "not at hand: Python was told to drop it (-OO)"


def sections(function: Callable[..., object]) -> dict[str, str]:
    """Give the sections of a docstring by name, each as one line; '' is what comes before them."""
    found: dict[str, list[str]] = {"": []}
    name = ""
    for line in (inspect.getdoc(function) or "").splitlines():
        heading = _SECTION.match(line)
        if heading:
            name = heading[1]
            found[name] = [heading[2]]
        else:
            found[name].append(line)
    return {each: " ".join(" ".join(lines).split()) for each, lines in found.items()}


def purpose(function: Callable[..., object]) -> str:
    """Give the first sentence of a docstring."""
    doc = (inspect.getdoc(function) or STRIPPED).split("\n\n", 1)[0]
    return " ".join(doc.split())


def section(function: Callable[..., object], name: str) -> str:
    """Give one section of a docstring as one line; where it points to another function's, that."""
    text = sections(function).get(name, STRIPPED)

    def there(found: re.Match[str]) -> str:
        other = getattr(function, "__globals__", {}).get(found[1])
        if not callable(other) or other is function:
            return found[0]
        told = section(other, name).rstrip(".")
        return told if found.start() == 0 else told[0].lower() + told[1:]

    return _ELSEWHERE.sub(there, text).replace("``", "").replace("`", "").rstrip(".")
