"""Find the cup that a painter means by what was typed."""

from __future__ import annotations

import difflib
import re

from booth.trade.cups.cup_table import CUPS, Cup
from booth.trade.result import BadInput

_FAMILIES = {cup.family.lower(): cup.family for cup in CUPS.values()}
_LETTERS = {"z": "zahn", "f": "ford", "s": "shell"}
#: Numbers of the standards themselves, which are not sizes.
_STANDARDS = re.compile(r"(?:en\s*)?(?:53\s?211|2431|d\s?1200|d\s?4212|d\s?5125)")
#: How alike a mistyped family has to be, 0 to 1 (difflib).
ALIKE = 0.7
_SIZE = re.compile(r"\d+(?:\.\d+)?")


def _plain(text: str) -> str:
    plain = text.lower().replace("½", ".5").replace(",", ".")
    plain = re.sub(r"(\d)\s+1/2\b", r"\1.5", plain)
    return _STANDARDS.sub(" ", plain)


def cup_named(text: str) -> Cup:
    """Find the cup that a painter means.

    Args:
        text: a key or a name, leniently: ``zahn 2``, ``Zahn #2``, ``ford4``, ``ISO 4 mm``,
            ``DIN 4``, ``Shell 2 1/2``.

    Returns: the Cup.
    Range: the cups in CUPS. A size without a family is refused where several cups have it: one
        liquid of 100 mm2/s runs 75 s out of an ISO 4 mm cup and 26 s out of a DIN 4 mm cup.
    Source: common practice, no source (the ways painters write cups).

    >>> cup_named("zahn 2").name
    'Zahn #2'
    >>> cup_named("din 53211 4mm").key
    'din-4'
    """
    plain = _plain(text)
    words = re.findall(r"[a-z]+", plain)
    families = [word for word in words if word in _FAMILIES]
    if not families:
        families = [_LETTERS[word] for word in words if word in _LETTERS]
    if not families and words:  # a slip of the finger: 'zhan 2'
        families = [
            close[0]
            for word in words
            if (close := difflib.get_close_matches(word, _FAMILIES, n=1, cutoff=ALIKE))
        ]
    sizes = [f"{float(size):g}" for size in _SIZE.findall(plain)]
    if families and sizes:
        cup = CUPS.get(f"{families[0]}-{sizes[0]}")
        if cup is not None:
            return cup
    raise BadInput(_unknown(text, families[:1], sizes[:1]))


def _unknown(text: str, families: list[str], sizes: list[str]) -> str:
    if families:
        close = [cup.name for cup in CUPS.values() if cup.family.lower() == families[0]]
        return f"There is no cup {text!r} here. Cups of that family: {', '.join(close)}."
    if sizes:
        close = [cup.name for cup in CUPS.values() if cup.size == sizes[0]]
        if close:
            return (
                f"{text!r} does not say which family of cups, and they differ. "
                f"Say one of {', '.join(close)}."
            )
    names = ", ".join(sorted(set(_FAMILIES.values())))
    return f"There is no cup {text!r} here. Say a family ({names}) and a size, like 'Zahn #2'."
