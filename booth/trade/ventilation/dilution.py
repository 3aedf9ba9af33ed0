"""Air against fire: how much dilutes the vapour of a job far below its explosive limit.

A figure from here is a minimum for the air of a room in which it mixes evenly. It is no permission:
not to breathe that air, and not to spray near a spark. The face of a booth is in ``booth_face``.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import BadInput, Value, require
from booth.trade.ventilation.solvents import Solvent

#: A quarter of the lower explosive limit: 29 CFR 1910.94(c)(6)(ii) (from memory, not checked).
#: Local codes ask for
#: 20 % or 10 % in places.
QUARTER_OF_LEL = 0.25
#: Times the air that dilutes to the limit itself, in the formula of the same paragraph.
REGULATION_TIMES = 4.0
#: Shares of a blend add up to 1 within what a painter types.
SHARES_TOLERANCE = 0.005

CAUTION = (
    "A minimum against fire only, for air that mixes evenly. It is not a permission to breathe "
    "this air: wear what the data sheet asks for. Vapour gathers low and near the work; no "
    "exhaust may "
    "lead it past a spark. Local codes and the data sheet may ask for more."
)

AVERAGED = "averaged over pauses, for a room whose air takes longer to change than such a round"


@dataclass(frozen=True, slots=True)
class MinimumAir:
    """Fresh air against fire. Show it with its caution, never without.

    least: while the trigger is pulled [m3/h]; averaged: over trigger and pauses [m3/h], for a room
    whose air takes longer to change than such a round; caution: the sentences that go with it.
    """

    least: Value
    averaged: Value
    caution: str = CAUTION


def _check_vapour(vapour_l_per_l: float, lel_percent: float) -> None:
    require("The vapour of a litre", vapour_l_per_l, above=0.0, unit="l")
    require("The lower explosive limit", lel_percent, above=0.0, below=100.0, unit="%")


def regulation_dilution_l_per_l(vapour_l_per_l: float, lel_percent: float) -> float:
    """Give the air that the regulation's formula asks for per litre of solvent.

    Args:
        vapour_l_per_l: vapour from a litre of the liquid [l/l], above 0 (ft3/gal x 7.4805).
        lel_percent: lower explosive limit [% by volume of air], above 0, below 100.

    Returns: air [l per l of solvent]: ``4 (100 - LEL) x vapour / LEL``; ft3 per gallon if the
        vapour is given so.
    Range: as printed it ends a little above a quarter of the limit, at LEL / (400 - 3 LEL), because
        it takes four times the air that dilutes to the limit: dilution_air_l_per_l does not.
    Source: 29 CFR 1910.94(c)(6)(ii) (from memory, not checked).

    >>> round(regulation_dilution_l_per_l(30.4, 1.4))  # toluene, ft3 per gallon
    8564
    """
    _check_vapour(vapour_l_per_l, lel_percent)
    return REGULATION_TIMES * (100.0 - lel_percent) * vapour_l_per_l / lel_percent


def dilution_air_l_per_l(
    vapour_l_per_l: float, lel_percent: float, share_of_lel: float = QUARTER_OF_LEL
) -> float:
    """Give the air that dilutes the vapour of a litre of solvent to a share of the explosive limit.

    Args:
        vapour_l_per_l: vapour from a litre of the liquid [l/l], above 0.
        lel_percent: lower explosive limit [% by volume of air], above 0, below 100.
        share_of_lel: f, where to stay [1]: a quarter, or less where a code asks for less; above 0.

    Returns: air [l per l of solvent]: ``vapour (100 - f LEL) / (f LEL)``; never less than
        regulation_dilution_l_per_l.
    Range: vapour that mixes evenly, at room temperature; limits fall as it gets hotter.
    Source: definition of concentration by volume; a quarter of the limit, 29 CFR 1910.94(c)(6)(ii)
        (from memory, not checked).

    >>> round(dilution_air_l_per_l(30.4, 1.4))  # toluene, ft3 per gallon
    8655
    """
    _check_vapour(vapour_l_per_l, lel_percent)
    require("The share of the explosive limit", share_of_lel, above=0.0, high=QUARTER_OF_LEL)
    stay_percent = share_of_lel * lel_percent
    return vapour_l_per_l * (100.0 - stay_percent) / stay_percent


def dilution_air_of_blend_l_per_l(
    blend: Sequence[tuple[Solvent, float]], share_of_lel: float = QUARTER_OF_LEL
) -> float:
    """Give the air that dilutes a litre of a blend of solvents to a share of its explosive limit.

    The air of the components adds up; that is the same as the limit of the mixed vapour by Le
    Chatelier's rule.

    Args:
        blend: each solvent with its share of the liquid by volume [1]; the shares add up to 1.
        share_of_lel: where to stay [1], above 0 to a quarter.

    Returns: air [l per l of blend].
    Range: as for dilution_air_l_per_l. If the shares are not known, take the whole as the solvent
        that needs the most air.
    Source: Le Chatelier's mixing rule (as in NFPA 69 and ISO 10156); 29 CFR 1910.94(c)(6)(ii);
        all three from memory, not checked.

    >>> from booth.trade.ventilation.solvents import solvent
    >>> halves = [(solvent("toluene"), 0.5), (solvent("acetone"), 0.5)]
    >>> round(dilution_air_of_blend_l_per_l(halves))
    71535
    """
    if not blend:
        raise BadInput("Name at least one solvent.")
    for each, share in blend:
        require(f"The share of {each.name}", share, 0.0, 1.0)
    whole = sum(share for _, share in blend)
    if abs(whole - 1.0) > SHARES_TOLERANCE:
        raise BadInput(f"The shares of the solvents add up to {whole:g}; they should make 1.")
    return sum(
        share * dilution_air_l_per_l(each.vapour_l_per_l, each.lel_percent, share_of_lel)
        for each, share in blend
    )


def volatile_fraction(volume_solids_fraction: float, thinner_fraction: float = 0.0) -> float:
    """Give the share of a thinned coating that evaporates.

    Args:
        volume_solids_fraction: volume solids of the coating before thinning [1], 0 to 1.
        thinner_fraction: thinner added, by volume, per volume of coating [1], 0 or more.

    Returns: share by volume [1]: ``1 - VS / (1 + s)``.
    Range: everything that is not solids counts as solvent: right for solvent-borne coatings, too
        much for waterborne ones, whose data sheet gives the solvent.
    Source: what is not in the dry film: DFT = WFT x VS / (1 + s), Organic Finishing Guidebook
        2012-13 p. 615; that solids do not count, 29 CFR 1910.94(c)(6)(ii) as in WAC 296-62-11019.

    >>> volatile_fraction(0.5, 0.25)
    0.6
    """
    require("Volume solids", volume_solids_fraction, 0.0, 1.0)
    require("The thinner added, as a share of the coating", thinner_fraction, 0.0)
    return 1.0 - volume_solids_fraction / (1.0 + thinner_fraction)


def minimum_air(
    delivery_ml_min: float,
    volatile: float,
    blend: Sequence[tuple[Solvent, float]],
    *,
    trigger_share: float = 1.0,
    share_of_lel: float = QUARTER_OF_LEL,
) -> MinimumAir:
    """Give the least fresh air against fire while this delivery is sprayed.

    Args:
        delivery_ml_min: what leaves the gun, thinned as sprayed [ml/min], 0 or more.
        volatile: share of it that evaporates [1], 0 to 1 (volatile_fraction).
        blend: its solvents with their shares of the solvent by volume [1].
        trigger_share: share of the time that the trigger is pulled [1], above 0 to 1.
        share_of_lel: where to stay below the explosive limit [1], above 0 to a quarter.

    Returns: MinimumAir: the least [m3/h] while spraying and on average, with its caution.
    Range: as for dilution_air_l_per_l; no factor for a room that mixes badly is in it. All the
        solvent is taken to evaporate as it is sprayed, from the film and from the overspray. Open
        cans, cleaning and a drying rack come on top.
    Source: 29 CFR 1910.94(c)(6)(ii) (from memory, not checked): dilution volume times solvent
        evaporated a minute. The paragraph is of a booth's exhaust; that a room is held to it is
        this program's own choice.

    >>> from booth.trade.ventilation.solvents import solvent
    >>> found = minimum_air(200.0, 0.6, [(solvent("xylene"), 1.0)])
    >>> round(found.least.value), found.least.unit
    (631, 'm3/h')
    """
    require("The delivery", delivery_ml_min, 0.0, unit="ml/min")
    require("The share that evaporates", volatile, 0.0, 1.0)
    require("The share of the time with the trigger pulled", trigger_share, above=0.0, high=1.0)
    air_l_per_l = dilution_air_of_blend_l_per_l(blend, share_of_lel)
    solvent_l_min = delivery_ml_min / 1000.0 * volatile
    least_m3_h = solvent_l_min * air_l_per_l / 1000.0 * 60.0
    limits = ", ".join(f"{each.name} {each.lel_percent:g} % ({each.source})" for each, _ in blend)
    rule = (
        f"dilution to {100.0 * share_of_lel:g} % of the lower explosive limit "
        f"(29 CFR 1910.94(c)(6)(ii), from memory, not checked); {limits}"
    )
    return MinimumAir(
        least=Value(least_m3_h, "m3/h", rule),
        averaged=Value(least_m3_h * trigger_share, "m3/h", f"{rule}; {AVERAGED}"),
    )
