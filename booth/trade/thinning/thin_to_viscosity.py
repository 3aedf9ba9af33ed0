"""How much thinner to a wanted viscosity: from one measurement a band, from several a fit.

Add, stir, time again. Amounts are for what remains in the pot now; what is in it already is given
as thinner per volume of coating (see ``thinner_share``).
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from booth.trade.result import Estimate, Outside, Said, require
from booth.trade.thinning.blending_rule import LEAST_MM2_S, _index
from booth.trade.thinning.thinner_share import (
    _thinner_share,
    thinner_fraction_after,
    thinner_room_ml,
)
from booth.trade.thinning.thinning_fit import FIT_RULE, ThinningFit

#: Thinnest and thickest of the usual thinners, where nobody says which it is: acetone has 0.40
#: mm2/s at 23 C, toluene 0.66, xylenes 0.69 to 0.89 (Perry's Handbook, 8th ed., held by a test),
#: water 0.93.
THINNEST_MM2_S, THICKEST_MM2_S = 0.40, 1.0
#: More thinner than mix is no thinning [1].
MOST_SHARE = 0.5
#: The upper end of a band stops here: nine times the mix [1].
LAST_SHARE = 0.9

_BAND_RULE = (
    "one measurement: between the blending index (Refutas, ASTM D7152 form) and the logarithmic "
    "rule, which disagree about paint"
)


@dataclass(frozen=True, slots=True)
class ThinnerStep:
    """Thinner to add.

    add: all that it may take to the target [ml]; step_ml: what to add now, the cautious part of it,
    never past the limit [ml]; fraction_after: thinner per volume of coating after the step [1];
    at_limit: the step was cut at the data sheet's limit; note: a sentence for the painter.
    """

    add: Estimate
    step_ml: float
    fraction_after: float
    at_limit: bool
    note: str


def _thin_enough(rule: str) -> Outside:
    return Outside(
        "The mix is at the wanted viscosity or below it.",
        "Add no thinner. To thicken it again add unthinned coating, and time it.",
        rule,
    )


def _more_than_half(by: str, rule: str) -> Outside:
    return Outside(
        f"{by} more than half of the mix would have to be thinner.",
        "Check the target and the cup it is for, and the temperature of the mix.",
        rule,
    )


def _step(
    add: Estimate,
    cautious_ml: float,
    remaining_ml: float,
    thinner_fraction: float,
    limit_fraction: float | None,
    note: str,
) -> ThinnerStep | Outside:
    step_ml, at_limit = cautious_ml, False
    if limit_fraction is not None:
        room_ml = thinner_room_ml(remaining_ml, thinner_fraction, limit_fraction)
        limit = f"limit of {100.0 * limit_fraction:.3g} % thinner"
        if room_ml <= 0.0:
            return Outside(
                f"The {limit} is reached.",
                "Add no more. Check the temperature of the mix and the cup; ask the data sheet "
                "about a larger tip or more pressure.",
                add.rule,
            )
        if room_ml < step_ml:
            step_ml, at_limit = room_ml, True
            note = f"This goes to the {limit}; the wanted viscosity may not be reached."
        elif room_ml < add.low:
            note += " The limit on thinner may come before the wanted viscosity."
    after = thinner_fraction_after(remaining_ml, thinner_fraction, step_ml)
    return ThinnerStep(add, step_ml, after, at_limit, note)


def thinner_for_target(
    remaining_ml: float,
    thinner_fraction: float,
    viscosity_mm2_s: float,
    target_mm2_s: float,
    limit_fraction: float | None = None,
    thinner_mm2_s: float | None = None,
) -> ThinnerStep | Outside:
    """Give the thinner to a wanted viscosity from one measurement: a band and a cautious step.

    Args:
        remaining_ml: mix in the pot [ml], above 0.
        thinner_fraction: thinner in it so far, per volume of coating [1], 0 or more.
        viscosity_mm2_s: kinematic viscosity measured now [mm2/s], 0.3 or more.
        target_mm2_s: kinematic viscosity wanted, at the same temperature [mm2/s], 0.3 or more.
        limit_fraction: most thinner the data sheet allows [1]; None where it names none.
        thinner_mm2_s: kinematic viscosity of the thinner [mm2/s], 0.3 or more; None where it is not
            known.

    Returns: ThinnerStep: `add` from the least (blending index; of the thinnest of thinners, where
        it is not known) to the most (logarithmic rule; of the thickest), the step being the least,
        cut at the limit. Outside where the mix is thin enough, where the
        limit is reached, where the thinner is no thinner than the target, and where more than half
        of the mix would have to be thinner.
    Range: a first step. Its low end can still overshoot with a strong solvent, so stir, and time the cup
        again.
    Source: Refutas / ASTM D7152 blending index; the logarithmic mixing rule.

    >>> step = thinner_for_target(1000.0, 0.0, 200.0, 66.289, thinner_mm2_s=0.8)  # 20 % of the mix
    >>> round(step.add.low), round(step.add.high), round(step.step_ml)
    (106, 250, 106)
    >>> round(thinner_for_target(1000.0, 0.0, 200.0, 66.289).step_ml)  # acetone, maybe
    74
    """
    require("The mix that remains", remaining_ml, above=0.0, unit="ml")
    _thinner_share(thinner_fraction)
    require("The viscosity", viscosity_mm2_s, LEAST_MM2_S, unit="mm2/s")
    require("The viscosity wanted", target_mm2_s, LEAST_MM2_S, unit="mm2/s")
    thin, thick = THINNEST_MM2_S, THICKEST_MM2_S
    if thinner_mm2_s is not None:
        require("The viscosity of the thinner", thinner_mm2_s, LEAST_MM2_S, unit="mm2/s")
        thin = thick = thinner_mm2_s
    if limit_fraction is not None:
        require("The most thinner allowed, as a share of the coating", limit_fraction, 0.0)
    if viscosity_mm2_s <= target_mm2_s:
        return _thin_enough(_BAND_RULE)
    if target_mm2_s <= thin:
        return Outside(
            f"The thinner itself has {Said(float(f'{thin:.3g}'), 'mm2/s')}, so no amount "
            "reaches the target.",
            "Check the target and the cup it is for.",
            _BAND_RULE,
        )
    share_log = 1.0
    if target_mm2_s > thick:
        share_log = math.log(viscosity_mm2_s / target_mm2_s) / math.log(viscosity_mm2_s / thick)
    start = _index(viscosity_mm2_s)
    share_index = (start - _index(target_mm2_s)) / (start - _index(thin))
    if min(share_log, share_index) > MOST_SHARE:
        return _more_than_half("By either rule", _BAND_RULE)
    shares = sorted(min(share, LAST_SHARE) for share in (share_index, share_log))
    low, high = (remaining_ml * share / (1.0 - share) for share in shares)
    add = Estimate((low + high) / 2.0, low, high, "ml", _BAND_RULE)
    note = "Add this, stir, wait until the bubbles are out, and time the cup again."
    return _step(add, low, remaining_ml, thinner_fraction, limit_fraction, note)


def thinner_from_fit(
    fit: ThinningFit,
    remaining_ml: float,
    thinner_fraction: float,
    target_mm2_s: float,
    limit_fraction: float | None = None,
) -> ThinnerStep | Outside:
    """Give the thinner to a wanted viscosity by what this mix has shown, for what remains of it.

    Args:
        fit: the fit of this mix (fit_thinning).
        remaining_ml: mix in the pot now [ml], above 0.
        thinner_fraction: thinner in it so far, per volume of coating [1], 0 or more.
        target_mm2_s: kinematic viscosity wanted, at the same temperature [mm2/s], above 0.
        limit_fraction: most thinner the data sheet allows [1]; None where it names none.

    Returns: ThinnerStep: `add` by the line, its ends by the line's doubt. The step is the low end,
        or half of the likely amount where that is more; it never goes further beyond the measured
        shares than they span, nor past the limit. Outside where the line is at the target already,
        where the limit is reached, where the thinner would be more than half of the mix, and where
        the mix now lies further beyond the measured shares than they span.
    Range: the doubt is twice the residual and at least 7.4 %.
    Source: the least-squares line through the measurements, solved for the share; ASTM D4212 13.1.1
        (3.7 % variation).

    >>> from booth.trade.thinning.thinning_fit import ThinningPoint, fit_thinning
    >>> fit = fit_thinning([ThinningPoint(0.0, 200.0), ThinningPoint(0.25, 50.0)])
    >>> step = thinner_from_fit(fit, 500.0, 1 / 9, 55.0)  # a tenth of the mix is thinner now
    >>> round(step.add.likely, 1), round(step.step_ml, 1)
    (53.0, 45.8)
    """
    require("The mix that remains", remaining_ml, above=0.0, unit="ml")
    now = _thinner_share(thinner_fraction)
    require("The viscosity wanted", target_mm2_s, above=0.0, unit="mm2/s")
    if limit_fraction is not None:
        require("The most thinner allowed, as a share of the coating", limit_fraction, 0.0)
    there = (fit.intercept - math.log(target_mm2_s)) / fit.fall
    if there <= now:
        return _thin_enough(FIT_RULE)
    if there > MOST_SHARE:
        return _more_than_half("By what this mix has shown", FIT_RULE)

    def amount_ml(share: float) -> float:
        share = min(max(share, now), LAST_SHARE)
        return remaining_ml * (share - now) / (1.0 - share)

    either_way = fit.doubt / fit.fall
    likely = amount_ml(there)
    rule = f"{FIT_RULE} ({fit.count})"
    add = Estimate(likely, amount_ml(there - either_way), amount_ml(there + either_way), "ml", rule)
    note = "Add this, stir, and time the cup again."
    cautious_ml = max(add.low, likely / 2.0)
    furthest = fit.most_share + (fit.most_share - fit.least_share)
    if furthest <= now:
        return Outside(
            "The mix holds far more thinner than any that was measured.",
            "Time the cup again with what is in now.",
            FIT_RULE,
        )
    if amount_ml(furthest) < cautious_ml:
        cautious_ml = amount_ml(furthest)
        note = "The target lies far beyond what was measured: add this part, stir, and time again."
    return _step(add, cautious_ml, remaining_ml, thinner_fraction, limit_fraction, note)
