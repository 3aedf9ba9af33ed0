"""How far apart two colours look, and what the three common colour deficiencies make of them."""

from __future__ import annotations

import math

Lab = tuple[float, float, float]
Matrix = tuple[tuple[float, float, float], ...]
#: Linear RGB as it is seen without one kind of cone: Machado, Oliveira and Fernandes 2009, 'A
#: physiologically-based model for simulation of color vision deficiency', severity 1.0 (from memory;
#: each row adds up to 1, so that greys stay grey, which a test holds).
DEFICIENCIES: dict[str, Matrix] = {
    "none": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
#: sRGB to CIE XYZ, and the white D65 (IEC 61966-2-1).
XYZ: Matrix = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
WHITE = (0.95047, 1.0, 1.08883)


def _times(matrix: Matrix, vector: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(sum(m * v for m, v in zip(row, vector, strict=True)) for row in matrix)


def lab_of(rgb: tuple[int, int, int], deficiency: str) -> Lab:
    """CIE L*a*b* of an sRGB colour as it is seen with a deficiency."""
    linear = tuple(
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (v / 255 for v in rgb)
    )
    seen = tuple(min(max(v, 0.0), 1.0) for v in _times(DEFICIENCIES[deficiency], linear))
    x, y, z = (
        t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116
        for t in (v / white for v, white in zip(_times(XYZ, seen), WHITE, strict=True))
    )
    return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def ciede2000(one: Lab, other: Lab) -> float:
    """The CIEDE2000 difference (ISO/CIE 11664-6), as Sharma, Wu and Dalal 2005 write it out."""
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean = (math.hypot(a1, b1) + math.hypot(a2, b2)) / 2
    g = 0.5 * (1 - math.sqrt(mean**7 / (mean**7 + 25**7)))
    a1, a2 = a1 * (1 + g), a2 * (1 + g)
    c1, c2 = math.hypot(a1, b1), math.hypot(a2, b2)
    h1, h2 = (math.degrees(math.atan2(b, a)) % 360 for a, b in ((a1, b1), (a2, b2)))
    turn = 0.0 if c1 * c2 == 0 else (h2 - h1 + 180) % 360 - 180
    dl, dc = l2 - l1, c2 - c1
    dh = 2 * math.sqrt(c1 * c2) * math.sin(math.radians(turn / 2))
    lm, cm = (l1 + l2) / 2, (c1 + c2) / 2
    hm = h1 + h2
    if c1 * c2 and abs(h1 - h2) <= 180:
        hm /= 2
    elif c1 * c2:
        hm = (hm + (360 if hm < 360 else -360)) / 2
    t = 1 - 0.17 * _cos(hm - 30) + 0.24 * _cos(2 * hm) + 0.32 * _cos(3 * hm + 6)
    t -= 0.20 * _cos(4 * hm - 63)
    sl = 1 + 0.015 * (lm - 50) ** 2 / math.sqrt(20 + (lm - 50) ** 2)
    sc, sh = 1 + 0.045 * cm, 1 + 0.015 * cm * t
    theta = 30 * math.exp(-(((hm - 275) / 25) ** 2))
    rt = -math.sin(math.radians(2 * theta)) * 2 * math.sqrt(cm**7 / (cm**7 + 25**7))
    return math.sqrt((dl / sl) ** 2 + (dc / sc) ** 2 + (dh / sh) ** 2 + rt * (dc / sc) * (dh / sh))


def _cos(degrees: float) -> float:
    return math.cos(math.radians(degrees))
