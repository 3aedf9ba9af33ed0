"""Efflux time and kinematic viscosity, within the range of each flow cup and never beyond it."""

from __future__ import annotations

from collections.abc import Collection

from booth.trade.cups.cup_choice import (
    _checked,
    _true_s,
    _use,
    cups_for_viscosity,
    suggest_cup_for_out_of_range,
)
from booth.trade.cups.cup_table import Cup
from booth.trade.result import Outside, Said, Value, require


def viscosity_from_efflux(
    cup: Cup,
    efflux_s: float,
    correction: float = 1.0,
    owned: Collection[Cup] | Collection[str] | None = None,
) -> Value | Outside:
    """Give the kinematic viscosity that an efflux time stands for.

    Args:
        cup: the flow cup.
        efflux_s: efflux time as read [s], above 0; the mean of the runs.
        correction: this very cup's own factor [1], 0.5 to 2: true time over the time read.
        owned: the painter's cups, of which one is advised where this one cannot tell; all if None.

    Returns: Value [mm2/s] at the temperature the liquid had; Outside, with the cup to use instead,
        where the corrected time lies outside the cup's range.
    Range: the cup's own, ends included; outside nothing is converted. For
        Newtonian and nearly Newtonian liquids; one that thins when stirred has no one viscosity.
    Source: ASTM D1200-94(2005) (old edition) 11.2 and 11.6 (Ford; correction); ASTM D4212 10.1
        (Zahn, Shell); ISO 2431 / ASTM D5125; DIN 53211 (withdrawn 1996, second-hand).

    >>> from booth.trade.cups.cup_names import cup_named
    >>> round(viscosity_from_efflux(cup_named("ford 4"), 50.0).value, 2)
    175.21
    >>> water = viscosity_from_efflux(cup_named("zahn 2"), 18.0)
    >>> water.reason.split(": ")[1]
    'time and viscosity are no longer in line there, and the flow may be turbulent.'
    """
    true_s = _true_s(efflux_s, correction)
    if not cup.covers(true_s):
        return suggest_cup_for_out_of_range(cup, efflux_s, correction, owned)
    return Value(cup.formula_mm2_s(true_s), "mm2/s", cup.rule)


def efflux_from_viscosity(
    cup: Cup, viscosity_mm2_s: float, correction: float = 1.0
) -> Value | Outside:
    """Give the efflux time that a liquid of this viscosity would show in a cup.

    Args:
        cup: the flow cup.
        viscosity_mm2_s: kinematic viscosity [mm2/s], above 0.
        correction: this very cup's own factor [1], 0.5 to 2: true time over the time read.

    Returns: Value [s] to be read on this cup; Outside where it would lie outside the cup's range.
    Range: the cup's own, of the true time, ends included; beyond, another cup is named.
    Source: ASTM D1200-94(2005) (old edition) 11.2 (Ford), ASTM D4212 10.1 (Zahn, Shell), ISO 2431 /
        ASTM D5125, DIN 53211 (withdrawn 1996, second-hand), each formula solved for the time.

    >>> from booth.trade.cups.cup_names import cup_named
    >>> round(efflux_from_viscosity(cup_named("ford 4"), 100.0).value, 1)
    30.5
    >>> round(efflux_from_viscosity(cup_named("iso 4"), 100.0).value, 1)
    74.9
    """
    require("The viscosity", viscosity_mm2_s, above=0.0, unit="mm2/s")
    _checked(correction)
    true_s = cup.formula_s(viscosity_mm2_s)
    if cup.covers(true_s):
        return Value(true_s / correction, "s", cup.rule)
    thin = true_s < cup.low_s
    side, end = ("thinner", cup.low_mm2_s) if thin else ("thicker", cup.high_mm2_s)
    liquid, limit = (Said(float(f"{each:.3g}"), "mm2/s") for each in (viscosity_mm2_s, end))
    return Outside(
        f"A liquid of {liquid} is {side} than the {limit} at the end of what {cup.with_article} cup "
        "can tell.",
        _use([fit.cup for fit in cups_for_viscosity(viscosity_mm2_s)], thin),
        cup.rule,
    )


def equivalent_efflux(
    efflux_s: float,
    cup_from: Cup,
    cup_to: Cup,
    correction_from: float = 1.0,
    correction_to: float = 1.0,
) -> Value | Outside:
    """Give the efflux time in another cup of the liquid that showed this time in one cup.

    Args:
        efflux_s: efflux time in `cup_from` [s], above 0.
        cup_from: the cup in which the time is known, as on a data sheet.
        cup_to: the cup at hand.
        correction_from: the first cup's own factor [1], 0.5 to 2.
        correction_to: the second cup's own factor [1], 0.5 to 2.

    Returns: Value [s] to be read on `cup_to`; Outside where either cup would be out of its range.
    Range: the ranges of both cups. The liquid is meant to have one temperature in both: the
        standards name 25, 23 and 20 C, so use the one that goes with the time given.
    Source: ASTM D1200-94(2005) (old edition) 11.2 (Ford), ASTM D4212 10.1 (Zahn, Shell), ISO 2431 /
        ASTM D5125, DIN 53211 (withdrawn 1996, second-hand): two of them, joined by the kinematic
        viscosity.

    >>> from booth.trade.cups.cup_names import cup_named
    >>> there = equivalent_efflux(60.0, cup_named("iso 4"), cup_named("ford 4"))
    >>> round(there.value, 1)
    25.0
    """
    viscosity = viscosity_from_efflux(cup_from, efflux_s, correction_from)
    if isinstance(viscosity, Outside):
        _checked(correction_to)
        return viscosity
    there = efflux_from_viscosity(cup_to, viscosity.value, correction_to)
    if isinstance(there, Outside):
        return there
    return Value(
        there.value, "s", f"{cup_from.rule}; {cup_to.rule}; the liquid at one temperature in both"
    )
