"""The scale along the foot of a field: the wanted band as a bar, its ends in digits, marks. Pure."""

from __future__ import annotations

from rich.cells import cell_len

from booth.widgets.rows import QUIET, Row, exactly, merge
from booth.widgets.text import fit, plain
from booth.widgets.wet_edge import ink
from booth.words.shown import Band, Readout, Tone

ROWS = 2
LINE, BAR, MARK = "─", "▀", "▲"


def _column(share: float, width: int) -> int:
    return min(max(round(share * width), 0), width)


def scale_rows(readout: Readout, width: int) -> list[Row]:
    """Give the two rows: the bar with its marks, and the words under them."""
    band = readout.band or Band()
    has_band = band.low is not None or band.high is not None
    low = _column(band.low if band.low is not None else 0.0, width)
    high = _column(band.high if band.high is not None else 1.0, width)
    if has_band and high == low:
        low, high = (low - 1, low) if low == width else (low, low + 1)
    bar_style = QUIET if readout.wanted else ink(Tone.GOOD)
    cells = [(LINE, QUIET)] * width
    if has_band:
        cells[low:high] = [(BAR, bar_style)] * (high - low)
    words = [" "] * width
    for share, said in readout.marks:
        at = min(_column(share, width), width - 1)
        cells[at] = (MARK, ink(readout.tone))
        _write(words, said, at - cell_len(said) // 2)
    if has_band and band.low is not None and band.high is not None:
        gap = high - low < cell_len(band.low_words) // 2
        _write(words, band.low_words, low - cell_len(band.low_words) - gap)
        _write(words, band.high_words, high)
    elif band.low is not None:
        _write(words, band.low_words, low)
    elif band.high is not None:
        _write(words, band.high_words, high - cell_len(band.high_words))
    text = "".join(words).rstrip()
    note = plain(band.note)
    room = width - cell_len(text) - 2
    if note and room > 0:
        text = f"{text}  {fit(note, room)}"
    return [merge(cells), exactly(((text, QUIET),), width)]


def _write(words: list[str], said: str, at: int) -> None:
    """Write where it stands, or as near as the width lets; not over what stands there."""
    said = plain(said)
    at = min(max(at, 0), len(words) - len(said))
    if at < 0 or any(each != " " for each in words[max(at - 1, 0) : at + len(said) + 1]):
        return
    words[at : at + len(said)] = said
