"""Text that people or files wrote, made fit to be shown: what acts unseen becomes a symbol.

Characters that act without being seen (controls, escape, bidirectional overrides, zero-width
joiners) are shown rather than dropped, so that a damaged file can be recognised.
"""

from __future__ import annotations

import unicodedata

# An accent may be stacked twice (Vietnamese written in parts); more overprints other rows.
MOST_COMBINING_MARKS = 2
# Letters by category, yet drawn as nothing: the grapheme joiner, Hangul fillers, Khmer inherent
# vowels, the Mongolian separators and the variation selectors, which change the width of the
# character before them.
UNSEEN = frozenset({0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x3164, 0xFFA0}).union(
    range(0x180B, 0x1810), range(0xFE00, 0xFE10), range(0xE0100, 0xE01F0)
)
LINE_ENDS = frozenset("\n\u0085\u2028\u2029\v\f")


def _name(char: str) -> str:
    return f"‹U+{ord(char):04X}›"


def _symbol(char: str) -> str:
    """Give a control as its picture, any other unseen character as its code in angle quotes."""
    code = ord(char)
    if code < 0x20:
        return chr(0x2400 + code)
    if code == 0x7F:
        return "\u2421"
    # Cc controls, Cf formats (bidi, zero width, soft hyphen, tags), Cs lone surrogates, which
    # cannot be encoded at all, Co private use and Cn unassigned, whose width no terminal agrees on.
    if code in UNSEEN or unicodedata.category(char) in {"Cc", "Cf", "Cs", "Co", "Cn"}:
        return _name(char)
    return char


def visible(text: str, keep_lines: bool = False) -> str:
    """Give `text` with every character that would act unseen shown as a visible symbol.

    A tab becomes a space. The end of a line becomes a space too, or a single newline with
    `keep_lines`.

    >>> visible("good\\x1b[2J")
    'good␛[2J'
    """
    if text.isascii() and text.isprintable():
        return text
    drawn: list[str] = []
    marks = 0
    for char in unicodedata.normalize("NFC", text.replace("\r\n", "\n")):
        if char in LINE_ENDS:
            char = "\n" if keep_lines else " "
        elif char == "\t" or unicodedata.category(char) == "Zs":
            char = " "
        elif unicodedata.combining(char) or unicodedata.category(char) in {"Mn", "Me"}:
            marks += 1
            drawn.append(char if marks <= MOST_COMBINING_MARKS and drawn else _name(char))
            continue
        else:
            char = _symbol(char)
        marks = 0
        drawn.append(char)
    return "".join(drawn)


def shortened(text: str, most: int = 80) -> str:
    """Give `text` visible and on one line, its middle left out where it is longer than `most`.

    >>> shortened("abcdefgh", most=5)
    'ab…gh'
    """
    shown = visible(text)
    if len(shown) <= most:
        return shown
    end = (most - 1) // 2
    return f"{shown[: most - 1 - end]}…{shown[-end:]}"
