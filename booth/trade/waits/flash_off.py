"""Flash-off at today's temperature, and any wait of a waterborne film in today's air: estimates.

No published law was found. A table in the data sheet wins (``wait_by_table``); a touch test decides.
"""

from __future__ import annotations

from booth.trade.result import Outside, Said, require
from booth.trade.waits.wait_by_rule import scaled_s
from booth.trade.waits.wait_time import (
    SAME_C,
    WaitTime,
    as_given,
    checked,
    closing,
    opening,
    refused,
)
from booth.trade.weather.humid_air import (
    REFERENCE_AIR_C,
    REFERENCE_HUMIDITY_PERCENT,
    relative_drying_power,
)

__all__ = [
    "evaporation_in_moving_air",
    "flash_off_at",
    "waterborne_closes_at",
    "waterborne_flash_off_at",
]

#: The vapour pressure of the usual solvents doubles for each 8.6 K (n-butanol) to 16.8 K (acetone)
#: between 5 and 40 C, most near 12 K (DIPPR equation 101, Perry's Handbook, 8th ed.). That
#: flash-off follows the vapour pressure is this program's own estimate: no source was found.
HALVES_PER_K = 12.0
HALVES_AT_THE_QUICKEST_PER_K = 8.5
HALVES_AT_THE_SLOWEST_PER_K = 17.0

#: Waterborne flash-off goes as drying power to the power -1, shown between the other two. This
#: program's own estimate; co-solvents, moving air and the film's own cooling pull either way.
WATERBORNE_EXPONENTS = (0.5, 1.0, 1.5)
#: A waterborne film dries too slowly to scale below this share of the reference drying power.
LEAST_DRYING_POWER = 0.2
#: Evaporation from water goes as 0.089 + 0.0782 v: ASHRAE Handbook, HVAC Applications, Natatoriums
#: (from memory); in inches and feet a minute 95 + 0.425 v, ASHRAE Transactions 104 (1998) 1A. Air
#: that a data sheet means: the least face velocity of a spray booth, 0.5 m/s (100 ft/min, 29 CFR
#: 1910.94 table G-10); this program's own choice.
STILL_AIR_TERM = 0.089
MOVING_AIR_TERM_PER_M_S = 0.0782
SHEET_AIR_M_S = 0.5
FASTEST_AIR_M_S = 2.0


def flash_off_at(flash_off_s: float, at_c: float, part_c: float) -> WaitTime | Outside:
    """Estimate flash-off today, from one time at one temperature, for a solvent-borne coating.

    Args:
        flash_off_s: flash-off from the data sheet [s], 0 or more.
        at_c: the temperature it holds for [degC].
        part_c: temperature of the part [degC].

    Returns: WaitTime: seconds are the longest of the band and never less than the data sheet's
        time. Outside where either temperature lies outside 5 to 40 C.
    Range: 5 to 40 C. Film, moving air and the thinner's speed count as much as temperature; for a
        waterborne product use waterborne_flash_off_at.
    Source: common practice, no source: no published law was found. Taken to go as the solvents'
        vapour pressure (DIPPR equation 101, Perry's Handbook, 8th ed.).

    >>> cold = flash_off_at(600.0, 23.0, 11.0)
    >>> cold.likely_s, cold.estimate
    (1200.0, True)
    >>> flash_off_at(600.0, 23.0, 50.0).reason.split(",")[0]
    "Flash-off cannot be carried over: today's temperature"
    """
    rule = "estimate: no published law; taken to go as the vapour pressure of common solvents"
    if refusal := refused("Flash-off", flash_off_s, at_c, part_c, rule):
        return refusal
    likely = scaled_s(flash_off_s, at_c, part_c, HALVES_PER_K)
    if abs(part_c - at_c) <= SAME_C:
        return as_given(float(flash_off_s), "data sheet, at its own temperature")
    band = tuple(
        scaled_s(flash_off_s, at_c, part_c, per_k)
        for per_k in (HALVES_AT_THE_QUICKEST_PER_K, HALVES_AT_THE_SLOWEST_PER_K)
    )
    return opening(float(flash_off_s), likely, band, rule)


def evaporation_in_moving_air(air_m_s: float, at_m_s: float = SHEET_AIR_M_S) -> float:
    """Give how much faster water evaporates in air that moves so fast over the film.

    Args:
        air_m_s: speed of the air over the film today [m/s], 0 to 2.
        at_m_s: the speed that the data sheet means [m/s], 0 to 2; 0.5 unless it says.

    Returns: evaporation against that at at_m_s [1]: ``(0.089 + 0.0782 v) / (0.089 + 0.0782 v0)``.
    Range: 0 to 2 m/s; an open pool of water, not a film with co-solvents.
    Source: ASHRAE Handbook, HVAC Applications, Natatoriums (from memory, not checked); ASHRAE
        Transactions 104 (1998) part 1A, in inches and feet: 95 + 0.425 v.

    >>> round(evaporation_in_moving_air(0.1), 2)  # a closed garage
    0.76
    """
    for name, speed in (("The air's speed", air_m_s), ("The data sheet's speed", at_m_s)):
        require(name, speed, 0.0, FASTEST_AIR_M_S, unit="m/s")
    today, sheet = (STILL_AIR_TERM + MOVING_AIR_TERM_PER_M_S * v for v in (air_m_s, at_m_s))
    return today / sheet


def waterborne_flash_off_at(
    flash_off_s: float,
    air_c: float,
    humidity_percent: float,
    at_c: float = REFERENCE_AIR_C,
    at_percent: float = REFERENCE_HUMIDITY_PERCENT,
    speed_m_s: float | None = None,
) -> WaitTime | Outside:
    """Estimate any opening wait of a waterborne film in today's air, by the air's drying power.

    Args:
        flash_off_s: flash-off, or another wait that opens, from the data sheet [s], 0 or more.
        air_c, humidity_percent: today's air [degC, %]; humidity 0 to 100.
        at_c, at_percent: the air the data sheet means [degC, %]; 23 C and 50 % unless it says.
        speed_m_s: speed of the air over the film [m/s], 0 to 2; None: as the data sheet means it.

    Returns: WaitTime: seconds are the longest of the band and never less than the data sheet's
        time. Outside where a temperature lies outside 5 to 40 C or the air can take hardly any
        water.
    Range: 5 to 40 C; drying power a fifth of the reference or more.
    Source: common practice, no source: drying power (vapour pressure deficit) is the physical
        driver; how closely flash-off follows it is this program's own estimate.

    >>> damp = waterborne_flash_off_at(600.0, 20.0, 75.0)
    >>> round(damp.likely_s / 60), round(damp.seconds / 60)
    (24, 37)
    """
    rule = "estimate: no published law; taken to go as the drying power of the air"
    if refusal := refused("The wait", flash_off_s, at_c, air_c, rule):
        return refusal
    power = relative_drying_power(air_c, humidity_percent, at_c, at_percent)
    if power < LEAST_DRYING_POWER:
        return Outside(
            f"This air dries with {100 * power:.0f} % of the power of {Said(at_c, 'C')} and "
            f"{at_percent:g} %: too little to say how long.",
            "Warm the room, dry the air or wait for a better day.",
            rule,
        )
    if speed_m_s is not None:
        power *= evaporation_in_moving_air(speed_m_s)
    if power == 1.0:
        return as_given(float(flash_off_s), "data sheet, in its own air")
    least, likely, most = (flash_off_s * power**-exponent for exponent in WATERBORNE_EXPONENTS)
    return opening(float(flash_off_s), likely, (least, most), rule)


def waterborne_closes_at(
    closes_s: float,
    air_c: float,
    humidity_percent: float,
    at_c: float = REFERENCE_AIR_C,
    at_percent: float = REFERENCE_HUMIDITY_PERCENT,
) -> WaitTime:
    """Estimate when a window over a waterborne film closes in today's air: sooner in drier air.

    Args:
        closes_s: greatest time before the next coat, from the data sheet [s], 0 or more.
        air_c, humidity_percent: today's air [degC, %]; -40 to 50 C, humidity 0 to 100.
        at_c, at_percent: the air the data sheet means [degC, %]; 23 C and 50 % unless it says.

    Returns: WaitTime: the shortest of the band, never longer than the data sheet's time.
    Range: -40 to 50 C; air that dries less than the data sheet's shortens nothing.
    Source: as for waterborne_flash_off_at: this program's own estimate.

    >>> waterborne_closes_at(48 * 3600.0, 23.0, 30.0).seconds < 48 * 3600
    True
    """
    checked(closes_s, at_c, air_c)
    power = relative_drying_power(air_c, humidity_percent, at_c, at_percent)
    if power == 1.0:
        return as_given(float(closes_s), "data sheet, in its own air")
    rule = "estimate: no published law; shorter as the drying power of the air is greater"
    shorter = max(power, 1.0) ** -WATERBORNE_EXPONENTS[-1]
    return closing(closes_s, closes_s * shorter, rule, bound=False)
