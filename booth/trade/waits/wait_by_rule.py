"""Waits at today's temperature, from one time that the data sheet gives at one temperature.

Pot life and the recoat window. Flash-off is in ``flash_off``; a table in the data sheet wins over
all of this (``wait_by_table``); a touch test decides. What opens has no figure outside 5 to 40 C;
what closes always has one, which only gets shorter.
"""

from __future__ import annotations

import math

from booth.trade.result import Outside, Said, require
from booth.trade.waits.wait_time import (
    SAME_C,
    SCALING_RANGE_C,
    THERMOMETER_C,
    WaitTime,
    as_given,
    checked,
    closing,
    opening,
    refused,
)

__all__ = ["pot_life_at", "recoat_closes_at", "recoat_opens_at", "scaled_s"]

#: Pot life halves for each 10 K (18 F) up: UFGS 09971, 3.7.1.3.
POT_LIFE_HALVES_PER_K = 10.0
#: The recoat minima of UFGS 09971 (8, 6, 4, 3, 2, 1 h in bands from 60-70 to 111-120 F) halve for
#: each 17.5 F: least squares through their logarithms, which is this program's own reading.
RECOAT_HALVES_PER_K = 17.5 * 5.0 / 9.0
#: Its maxima (48, 48, 36, 24, 12, 2 h) fall faster: from 71-80 to 101-110 F they stay above a
#: halving for each 12 F, and at 111 F above one for each 3.1 F beyond 104 F (this program's own reading).
CLOSING_HALVES_PER_K = 12.0 * 5.0 / 9.0
CLOSING_HALVES_IN_HEAT_PER_K = 3.1 * 5.0 / 9.0

_SHEET = "data sheet, at its own temperature"
_NO_LONGER = "no longer than the data sheet's figure in the cold"


def scaled_s(time_s: float, from_c: float, to_c: float, halves_per_k: float) -> float:
    """Give a time that halves for each so many degrees that it is warmer.

    Args:
        time_s: the time at from_c [s], 0 or more.
        from_c, to_c: the two temperatures [degC], -100 to 200.
        halves_per_k: temperature rise that halves the time [K], 1 or more.

    Returns: time at to_c [s]: ``time x 2^((from - to) / halves_per)``.
    Range: no limit of its own; the waits that rest on it keep to 5 to 40 C, or to its careful side.
    Source: definition of a halving interval; 10 K for pot life, UFGS 09971 (old edition) 3.7.1.3.

    >>> scaled_s(4.0, 21.0, 31.0, 10.0)
    2.0
    """
    require("The time", time_s, 0.0, unit="s")
    require("The temperature of the data sheet", from_c, *THERMOMETER_C, unit="C")
    require("The temperature today", to_c, *THERMOMETER_C, unit="C")
    require("The temperature rise that halves the time", halves_per_k, 1.0, unit="K")
    return time_s * math.exp2((from_c - to_c) / halves_per_k)


def pot_life_at(pot_life_s: float, at_c: float, mix_c: float) -> WaitTime:
    """Give the pot life at today's temperature: half for each 10 C up, never longer than the sheet's.

    Args:
        pot_life_s: pot life from the data sheet [s], 0 or more.
        at_c: the temperature it holds for [degC], -100 to 200.
        mix_c: temperature of the mixed material [degC], -100 to 200; the air's, if it has stood in
            the shop.

    Returns: WaitTime: in the warm ``time / 2^((mix - at) / 10)``, in the cold the data sheet's time.
        Only a bound, 'at most', in the cold and outside 5 to 40 C.
    Range: 5 to 40 C as an estimate. A large batch heats itself and goes off sooner than any rule
        says; the guide's times are for 50 % humidity, and damper air shortens that of a
        polyurethane, by how much it does not say; a mix that thickens is over whatever the
        clock says.
    Source: UFGS 09971 (old edition) 3.7.1.3 (from a basis of 21 C; other bases are this program's
        extension; the guide's doubling in the cold is not used).

    >>> pot_life_at(4 * 3600, 21.0, 31.0).seconds / 3600
    2.0
    >>> pot_life_at(4 * 3600, 21.0, 11.0).seconds / 3600  # never lengthened
    4.0
    """
    checked(pot_life_s, at_c, mix_c)
    if abs(mix_c - at_c) <= SAME_C:
        return as_given(float(pot_life_s), _SHEET)
    likely = scaled_s(pot_life_s, at_c, mix_c, POT_LIFE_HALVES_PER_K)
    rule = (
        f"halves for each {Said(POT_LIFE_HALVES_PER_K, 'K')} up (UFGS 09971 3.7.1.3); {_NO_LONGER}"
    )
    return closing(pot_life_s, likely, rule, bound=_is_outside(at_c, mix_c))


def recoat_opens_at(opens_s: float, at_c: float, part_c: float) -> WaitTime | Outside:
    """Give when the recoat window opens today, from one time at one temperature.

    Args:
        opens_s: least time before the next coat, from the data sheet [s], 0 or more.
        at_c: the temperature it holds for [degC].
        part_c: temperature of the part [degC].

    Returns: WaitTime: longer when colder; when warmer only the estimate is shorter, not the
        seconds. Outside where either temperature lies outside 5 to 40 C.
    Range: 5 to 40 C; the guide's table begins at 60 F (16 C), and below it the rule is this program's
        extension. Damp or still air makes it longer.
    Source: halving for each 17.5 F, fitted to the recoat minima of UFGS 09971 (old edition).

    >>> recoat_opens_at(3600.0, 24.0, 14.0).seconds > 2 * 3600
    True
    >>> recoat_opens_at(3600.0, 24.0, 30.0).seconds  # never shortened
    3600.0
    """
    halves = f"halves for each {Said(RECOAT_HALVES_PER_K, 'K')} up"
    rule = f"{halves} (fitted to the recoat minima of UFGS 09971)"
    if refusal := refused("The recoat window", opens_s, at_c, part_c, rule):
        return refusal
    likely = scaled_s(opens_s, at_c, part_c, RECOAT_HALVES_PER_K)
    if abs(part_c - at_c) <= SAME_C:
        return as_given(float(opens_s), _SHEET)
    return opening(float(opens_s), likely, (float(opens_s),), rule)


def recoat_closes_at(closes_s: float, at_c: float, part_c: float) -> WaitTime:
    """Give when the recoat window closes today, from one time at one temperature.

    Args:
        closes_s: greatest time before the next coat, from the data sheet [s], 0 or more.
        at_c: the temperature it holds for [degC], -100 to 200.
        part_c: the warmest that the part has been since the coat [degC], -100 to 200.

    Returns: WaitTime: shorter when warmer, never longer than the data sheet's. Only a bound, 'at
        most', in the cold and outside 5 to 40 C.
    Range: 5 to 40 C as an estimate; hotter it falls faster still. Past the window the film is
        abraded before the next coat; the data sheet says.
    Source: halving for each 12 F up to 40 C, for each 3.1 F beyond: on the careful side of the
        recoat maxima of UFGS 09971 (old edition) from its row for 71 to 80 F on.

    >>> recoat_closes_at(48 * 3600.0, 24.0, 39.0).seconds < 12 * 3600
    True
    >>> recoat_closes_at(24 * 3600.0, 21.0, 11.0).seconds / 3600  # never lengthened
    24.0
    """
    checked(closes_s, at_c, part_c)
    if abs(part_c - at_c) <= SAME_C:
        return as_given(float(closes_s), _SHEET)
    hot_c = max(SCALING_RANGE_C[1], at_c)
    likely = scaled_s(closes_s, at_c, min(part_c, hot_c), CLOSING_HALVES_PER_K)
    if part_c > hot_c:
        likely = scaled_s(likely, hot_c, part_c, CLOSING_HALVES_IN_HEAT_PER_K)
    halves = f"halves for each {Said(CLOSING_HALVES_PER_K, 'K')} up"
    rule = f"{halves} (careful side of the maxima of UFGS 09971); {_NO_LONGER}"
    return closing(closes_s, likely, rule, bound=_is_outside(at_c, part_c))


def _is_outside(*temperatures_c: float) -> bool:
    low, high = SCALING_RANGE_C
    return not all(low <= each <= high for each in temperatures_c)
