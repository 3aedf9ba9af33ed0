"""The one door for text that people or files wrote: no markup, nothing that steers the terminal."""

from __future__ import annotations

from rich.cells import cell_len
from textual.content import Content
from textual.widgets import Static

from booth.files.safe_text import visible as plain

ELLIPSIS = "…"
#: What stands behind the last whole word.
LEFT_OUT = f" {ELLIPSIS}"
_SAID = "_said"


def content(text: str, keep_lines: bool = False) -> Content:
    return Content(plain(text, keep_lines))


def put(shown: Static, line: Content) -> None:
    """Let `shown` say `line`, where that is something new: a line drawn again costs a frame."""
    if getattr(shown, _SAID, None) != line:
        setattr(shown, _SAID, line)
        shown.update(line)


def fit(text: str, width: int) -> str:
    """Give `text`, made plain, in at most `width` cells; an ellipsis marks what was left out.

    It is shortened by whole words: half of one may be another. Only where not even the first fits
    is that one cut.
    """
    text = plain(text)
    if cell_len(text) <= width:
        return text
    if cell_len(text.rstrip(" ")) <= width:
        return _begin(text, width)
    begun = _begin(text, width - 1)
    words = begun[: begun.rfind(" ") + 1].rstrip()
    if words:
        return f"{words}{LEFT_OUT}"
    return f"{begun}{ELLIPSIS}" if width > 0 else ""


def _begin(text: str, room: int) -> str:
    """As much of it as so many cells hold."""
    used = end = 0
    for position, char in enumerate(text):
        used += cell_len(char)
        if used > room:
            break
        end = position + 1
    kept = text[:end]
    # Widths add up except for pairs drawn as one (flags): measure the whole.
    while kept and cell_len(kept) > room:
        kept = kept[:-1]
    return kept


def pad(text: str, width: int, align: str = "left") -> str:
    """Give `text`, fitted, in exactly `width` cells; `align` is left, right or centre."""
    text = fit(text, width)
    spare = max(0, width - cell_len(text))
    before = {"left": 0, "right": spare, "centre": spare // 2}[align]
    return " " * before + text + " " * (spare - before)
