"""Every character there is in blocks, as strokes of a pen on a grid of nine by nine places.

A place is its column and its row, ``08`` the lower left; what a comma parts are strokes of their
own. A tilde rounds the corner at a place, a number sign fills what the places go round.
"""

from __future__ import annotations

from typing import NamedTuple

#: As wide as it is high.
SQUARE = -1.0


class Glyph(NamedTuple):
    """Width as a share of a figure's, never less than the pen's; `low`: below SLANTED_FROM."""

    share: float
    strokes: str
    low: str = ""


#: All figures have the same width, so that a countdown stands still.
NUMERALS = {
    "0": Glyph(1.0, "40 ~80 ~88 ~08 ~00 40"),
    "1": Glyph(1.0, "21 50 58", "30 50 58"),
    "2": Glyph(1.0, "01 ~00 ~80 83 08 88", "~00 ~80 ~84 ~04 08 88"),
    "3": Glyph(1.0, "01 ~00 ~80 ~84 34, 34 ~84 ~88 ~08 07", "~00 ~80 ~84 34, 34 ~84 ~88 ~08"),
    "4": Glyph(1.0, "78 70 06 86", "00 04 84, 80 88"),
    "5": Glyph(1.0, "80 00 03 ~83 ~88 ~08 07", "80 00 04 ~84 ~88 ~08"),
    "6": Glyph(1.0, "81 ~80 ~00 ~08 ~88 ~83 ~03 05", "~80 ~00 ~08 ~88 ~84 04"),
    "7": Glyph(1.0, "00 80 28", "00 80 88"),
    "8": Glyph(1.0, "40 ~80 ~84 ~04 ~00 40, 44 ~84 ~88 ~08 ~04 44"),
    "9": Glyph(1.0, "07 ~08 ~88 ~80 ~00 ~05 ~85 83", "~08 ~88 ~80 ~00 ~04 84"),
}
#: A figure that stands still needs no gap beside its 1.
NARROW_ONE = "¹"
LETTERS = {
    "A": Glyph(1.1, "08 40 88, 26 66", "08 ~00 ~80 88, 04 84"),
    "B": Glyph(1.0, "08 00 ~80 ~84 04, 04 ~84 ~88 08"),
    "C": Glyph(0.95, "81 ~80 ~00 ~08 ~88 87", "~80 ~00 ~08 ~88"),
    "D": Glyph(1.0, "00 ~80 ~88 08 00"),
    "E": Glyph(0.85, "80 00 08 88, 04 64"),
    "F": Glyph(0.82, "80 00 08, 04 64"),
    "G": Glyph(1.0, "81 ~80 ~00 ~08 ~88 84 54", "~80 ~00 ~08 ~88 84 54"),
    "H": Glyph(1.0, "00 08, 80 88, 04 84"),
    "I": Glyph(0.0, "00 08"),
    "J": Glyph(0.8, "80 ~88 ~08 07"),
    "K": Glyph(1.0, "00 08, 80 14 88"),
    "L": Glyph(0.8, "00 08 88"),
    "M": Glyph(1.35, "08 00 45 80 88"),
    "N": Glyph(1.1, "08 00 88 80"),
    "O": Glyph(1.0, "40 ~80 ~88 ~08 ~00 40"),
    "P": Glyph(0.95, "08 00 ~80 ~84 04"),
    "Q": Glyph(1.0, "40 ~80 ~88 ~08 ~00 40, 55 88"),
    "R": Glyph(1.0, "08 00 ~80 ~84 04, 44 88"),
    "S": Glyph(0.95, "81 ~80 ~00 ~04 ~84 ~88 ~08 07", "~80 ~00 ~04 ~84 ~88 ~08"),
    "T": Glyph(0.95, "00 80, 40 48"),
    "U": Glyph(1.0, "00 ~08 ~88 80"),
    "V": Glyph(1.1, "00 48 80"),
    "W": Glyph(1.35, "00 08 43 88 80"),
    "X": Glyph(1.05, "00 88, 80 08"),
    "Y": Glyph(1.05, "00 44 80, 44 48"),
    "Z": Glyph(0.9, "00 80 08 88"),
    "Æ": Glyph(1.35, "08 40 48 88, 04 84, 40 80"),
    "Œ": Glyph(1.35, "80 ~00 ~08 88, 40 48, 44 74"),
    "Ø": Glyph(1.1, "40 ~80 ~88 ~08 ~00 40, 80 08"),
    "Đ": Glyph(1.1, "10 ~80 ~88 18 10, 04 44"),
    "Ł": Glyph(0.9, "20 28 88, 05 53"),
    "Þ": Glyph(0.95, "00 08, 02 ~82 ~86 06"),
}
SIGNS = {
    " ": Glyph(0.45, ""),
    ":": Glyph(0.0, "01, 07"),
    ".": Glyph(0.0, "08"),
    ",": Glyph(0.35, "86 08"),
    NARROW_ONE: Glyph(0.55, "11 80 88", "40 80 88"),
    ";": Glyph(0.35, "82, 86 08"),
    "(": Glyph(0.4, "80 ~00 ~08 88"),
    ")": Glyph(0.4, "00 ~80 ~88 08"),
    "'": Glyph(0.0, "00 02"),
    "-": Glyph(0.7, "04 84"),
    "+": Glyph(0.9, "04 84, 42 46"),
    "/": Glyph(0.8, "80 08"),
    "%": Glyph(1.35, "80 08, #00 30 33 03, #55 85 88 58"),
    "°": Glyph(0.75, "40 ~80 ~83 ~03 ~00 40"),
    "~": Glyph(1.3, "06 22 66 82"),
    "#": Glyph(1.6, "20 28, 60 68, 02 82, 06 86"),
    "=": Glyph(0.8, "03 83, 05 85"),
    "?": Glyph(0.95, "01 ~00 ~80 ~84 44 45, 48"),
    "▬": Glyph(SQUARE, "#03 83 85 05"),
    "►": Glyph(SQUARE, "#00 84 08"),
    "▼": Glyph(SQUARE, "#00 80 48"),
    "▲": Glyph(SQUARE, "#08 40 88"),
    "■": Glyph(SQUARE, "#00 80 88 08"),
    "√": Glyph(SQUARE, "05 38 80"),
    "»": Glyph(SQUARE, "#00 44 08, #40 84 48"),
    "·": Glyph(0.0, "04"),
}
GLYPHS = NUMERALS | LETTERS | SIGNS
