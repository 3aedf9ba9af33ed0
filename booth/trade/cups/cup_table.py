"""The flow cups of the standards, as data: constants, ranges, temperatures, how to time them.

No arithmetic but the cup's own formula; conversions with their limits live in ``efflux_time``.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any

#: Efflux times this close to an end of the range count as the end [s]: only rounding is meant.
ROUNDING_S = 1e-9
FILLED_START = (
    "Close the hole, fill the cup to overflowing, draw a straight edge across the rim; "
    "start when you open the hole."
)
DIP_START = (
    "Dip the cup right under, lift it out briskly and upright; "
    "start when the rim breaks the surface."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Cup:
    """One flow cup of a standard.

    key, name: ``ford-4``, ``Ford #4``; family: Ford, Zahn, Shell, ISO or DIN; size: ``4``.
    a, b: constants of ``nu = a (t - b)``, or of ``nu = a t - b/t`` where `curved`;
    nu [mm2/s], t [s].
    temperature_c: temperature of the liquid that the standard asks for [degC].
    low_s, high_s: efflux times within which the formula may be used [s]; preferred_*: those the
    standard prefers.
    repeat_limit_fraction: two results, each the mean of two runs by one painter, are suspect when
    they differ by more than this share of their mean; None where no such figure is carried here.
    doubt: what a painter must know before trusting this cup; '' where nothing.
    dip: dipped into the can and lifted out, not filled on a stand.
    """

    key: str
    name: str
    family: str
    size: str
    standard: str
    a: float
    b: float
    curved: bool = False
    temperature_c: float
    low_s: float
    high_s: float
    preferred_low_s: float
    preferred_high_s: float
    start_rule: str = FILLED_START
    stop_rule: str = "Stop at the first break in the stream."
    repeat_limit_fraction: float | None = None
    repeat_source: str = "No repeatability of this standard is carried here."
    doubt: str = ""
    dip: bool = False

    @property
    def with_article(self) -> str:
        """The name with its article, for a sentence."""
        return f"{'an' if self.family == 'ISO' else 'a'} {self.name}"

    @property
    def low_mm2_s(self) -> float:
        """The least viscosity that this cup converts."""
        return self.formula_mm2_s(self.low_s)

    @property
    def high_mm2_s(self) -> float:
        """The greatest viscosity that this cup converts."""
        return self.formula_mm2_s(self.high_s)

    @property
    def formula(self) -> str:
        """The cup's formula in words a data sheet would use."""
        if self.curved:
            return f"nu = {self.a:g} t - {self.b:g}/t"
        return f"nu = {self.a:g} (t - {self.b:g})" if self.b else f"nu = {self.a:g} t"

    @property
    def rule(self) -> str:
        """The formula and where it is published, with the doubt there is about it."""
        return f"{self.standard}, {self.name}: {self.formula}" + (
            f". {self.doubt}" if self.doubt else ""
        )

    def covers(self, true_s: float) -> bool:
        """Whether a true efflux time [s] lies in the range of the cup, ends included."""
        return self.low_s - ROUNDING_S <= true_s <= self.high_s + ROUNDING_S

    def formula_mm2_s(self, efflux_s: float) -> float:
        """The bare formula: it checks no range (``viscosity_from_efflux`` does)."""
        if self.curved:
            return self.a * efflux_s - self.b / efflux_s
        return self.a * (efflux_s - self.b)

    def formula_s(self, viscosity_mm2_s: float) -> float:
        """The formula the other way round; for a curved cup the positive root."""
        if self.curved:
            root = math.sqrt(viscosity_mm2_s**2 + 4.0 * self.a * self.b)
            return (viscosity_mm2_s + root) / (2.0 * self.a)
        return viscosity_mm2_s / self.a + self.b


# Other national cups (BS 3900, NF T30-014, JIS K 5600 and so on) are not here: no copy of a standard
# with their constants was found.

#: Efflux times within which a dip cup is used [s]: ASTM D4212 10.1.
DIP_LOW_S, DIP_HIGH_S = 20.0, 80.0
#: Cups whose constants were not seen in the standard or in two sources: advised last.
HALF_CONFIRMED = {
    "iso-5": "Its constants are second-hand: seen in a published table, not in the standard.",
    "din-4": (
        "Half confirmed: the standard was withdrawn in 1996; its constants are second-hand, and a "
        "published range agrees with them at 150 s but lies 16 % higher at 25 s."
    ),
}

#: ASTM D1200-94(2005) (old edition) 11.2. The standards ask for a temperature of the liquid [degC],
#: each its own.
_FORD: dict[str, Any] = {
    "standard": "ASTM D1200-94(2005) (old edition)",
    "temperature_c": 25.0,
    "high_s": 100.0,
}
_DIP = {
    "standard": "ASTM D4212",
    "temperature_c": 25.0,
    "high_s": DIP_HIGH_S,
    "start_rule": DIP_START,
    "dip": True,
}
#: 13.1.1: found with Zahn cups, all of one set, six laboratories, eight paints.
_ZAHN = _DIP | {
    "repeat_limit_fraction": 0.11,
    "repeat_source": "ASTM D4212 13.1.1",
    "doubt": (
        "Zahn cups differ between makers: compare times of one and the same cup, "
        "or give its own correction."
    ),
}
#: The lower end of 30 s is ISO's (second-hand); D5125 says 20 s, where the formula lies 13 to 19 %
#: off the table of the transport rules (UN/ADR 2.2.3.1.4), so 30 s it is.
_ISO = {
    "standard": "ISO 2431 / ASTM D5125",
    "temperature_c": 23.0,
    "high_s": 100.0,
    "curved": True,
}
#: Withdrawn 1996: constants and range second-hand, from published tables.
_DIN = {
    "standard": "DIN 53211 (withdrawn 1996)",
    "temperature_c": 20.0,
    "high_s": 150.0,
    "curved": True,
}

_SHARED = {"Ford": _FORD, "Zahn": _ZAHN, "Shell": _DIP, "ISO": _ISO, "DIN": _DIN}
#: Family, size, a, b, least efflux time [s], least preferred. Zahn #1 starts at 35 s, below which
#: its line nears nothing.
_ROWS = (
    ("Ford", "1", 0.49, 35.0, 55.0, 55.0),
    ("Ford", "2", 1.44, 18.0, 40.0, 40.0),
    ("Ford", "3", 2.31, 6.58, 20.0, 30.0),
    ("Ford", "4", 3.85, 4.49, 20.0, 30.0),
    ("Ford", "5", 12.1, 2.0, 20.0, 30.0),
    ("Zahn", "1", 1.1, 29.0, 35.0, 35.0),
    ("Zahn", "2", 3.5, 14.0, 20.0, 20.0),
    ("Zahn", "3", 11.7, 7.5, 20.0, 20.0),
    ("Zahn", "4", 14.8, 5.0, 20.0, 20.0),
    ("Zahn", "5", 23.0, 0.0, 20.0, 20.0),
    ("Shell", "1", 0.226, 13.0, 20.0, 20.0),
    ("Shell", "2", 0.576, 5.0, 20.0, 20.0),
    ("Shell", "2.5", 0.925, 3.0, 20.0, 20.0),
    ("Shell", "3", 1.51, 2.0, 20.0, 20.0),
    ("Shell", "3.5", 2.17, 1.5, 20.0, 20.0),
    ("Shell", "4", 3.45, 1.0, 20.0, 20.0),
    ("Shell", "5", 6.5, 1.0, 20.0, 20.0),
    ("Shell", "6", 16.2, 0.5, 20.0, 20.0),
    ("ISO", "3", 0.443, 200.0, 30.0, 30.0),
    ("ISO", "4", 1.37, 200.0, 30.0, 30.0),
    ("ISO", "5", 3.28, 220.0, 30.0, 30.0),
    ("ISO", "6", 6.9, 570.0, 30.0, 30.0),
    ("DIN", "4", 4.57, 452.0, 25.0, 25.0),
)


def _cup(family: str, size: str, a: float, b: float, low_s: float, preferred_low_s: float) -> Cup:
    key, shared = f"{family.lower()}-{size}", _SHARED[family]
    own = {
        "key": key,
        "name": f"{family} {size} mm" if "curved" in shared else f"{family} #{size}",
        "doubt": HALF_CONFIRMED.get(key) or shared.get("doubt", ""),
        "low_s": low_s,
        "preferred_low_s": preferred_low_s,
        "preferred_high_s": shared["high_s"],
    }
    return Cup(family=family, size=size, a=a, b=b, **{**shared, **own})


#: Every cup by its key, in the order in which a list shows them.
CUPS: Mapping[str, Cup] = MappingProxyType({cup.key: cup for cup in (_cup(*row) for row in _ROWS)})
