"""Which flow cup suits: for a viscosity expected, or after a time that cannot be converted."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterable
from dataclasses import dataclass

from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS, DIP_LOW_S, HALF_CONFIRMED, Cup
from booth.trade.result import BadInput, Outside, require

__all__ = ["CupFit", "cups_for_viscosity", "suggest_cup_for_out_of_range"]

#: A cup further from its standard than this is another cup. Common practice, no source.
LEAST_CORRECTION, MOST_CORRECTION = 0.5, 2.0
#: A liquid out of a cup's range is likely out of it by this factor. Common practice, no source.
LIKELY_BEYOND = 1.5
#: Efflux times this close to an end of the range count as the end [s]: only rounding is meant.
ROUNDING_S = 1e-9


#: ASTM D4212 10.1, by whether the liquid is too thin.
_WHY_DIP = {
    True: "the flow may be turbulent there",
    False: "solvent leaves and skins form meanwhile",
}


@dataclass(frozen=True, slots=True)
class CupFit:
    """A cup that suits a viscosity: its efflux time [s]; preferred: in the range preferred."""

    cup: Cup
    efflux_s: float
    preferred: bool


def true_efflux_s(efflux_s: float, correction: float) -> float:
    """Efflux time of a cup true to its standard [s]."""
    require("The efflux time", efflux_s, above=0.0, unit="s")
    return efflux_s * checked_correction(correction)


def checked_correction(correction: float) -> float:
    """Give the correction back if it is one [1]."""
    return require("The correction of a cup", correction, LEAST_CORRECTION, MOST_CORRECTION)


def _known(owned: Collection[Cup] | Collection[str] | None) -> list[Cup]:
    if owned is None:
        return list(CUPS.values())
    found = []
    for cup in owned:
        if isinstance(cup, Cup):
            found.append(cup)
        elif cup in CUPS:
            found.append(CUPS[cup])
        else:
            found.append(cup_named(cup))
    return found


def in_range(cup: Cup, true_s: float) -> bool:
    """Whether a true efflux time [s] lies in the range of the cup, ends included."""
    return cup.low_s - ROUNDING_S <= true_s <= cup.high_s + ROUNDING_S


def cups_for_viscosity(
    viscosity_mm2_s: float, owned: Collection[Cup] | Collection[str] | None = None
) -> tuple[CupFit, ...]:
    """Give the cups that suit a viscosity, the best first.

    Args:
        viscosity_mm2_s: kinematic viscosity expected [mm2/s], above 0.
        owned: the painter's cups; every cup if left out.

    Returns: CupFit of every cup that has the viscosity in its range: first those in the preferred
        range, and among them the nearest to the middle of it (in proportion); empty where none
        suits.
    Range: from the thinnest to the thickest end of the cups given; beyond, none suits.
    Source: ASTM D1200-94(2005) 11.2 (preferred range); nearest the middle is common practice, no
        source: a time far from both ends leaves room for what the liquid turns out to be.

    >>> [fit.cup.name for fit in cups_for_viscosity(100.0, ["ford-4", "zahn-2", "zahn-5"])]
    ['Zahn #2', 'Ford #4']
    """
    require("The viscosity", viscosity_mm2_s, above=0.0, unit="mm2/s")
    fits = []
    for cup in _known(owned):
        efflux_s = cup.formula_s(viscosity_mm2_s)
        if in_range(cup, efflux_s):
            preferred = cup.preferred_low_s <= efflux_s <= cup.preferred_high_s
            fits.append(CupFit(cup, efflux_s, preferred))

    def order(fit: CupFit) -> tuple[bool, float]:
        return not fit.preferred, abs(math.log(fit.efflux_s / _middle_s(fit.cup)))

    return tuple(sorted(fits, key=order))


def suggest_cup_for_out_of_range(
    cup: Cup,
    efflux_s: float,
    correction: float = 1.0,
    owned: Collection[Cup] | Collection[str] | None = None,
) -> Outside:
    """Say why an efflux time is not converted, and which cup to use instead.

    All that is known of the liquid is that it is thinner (thicker) than the end of this cup's
    range, so the cups named are those whose range reaches across that end.

    Args:
        cup: the cup used.
        efflux_s: efflux time as read [s], above 0, outside the range of the cup.
        correction: this very cup's own factor [1], 0.5 to 2.
        owned: the painter's cups; every cup if left out.

    Returns: Outside: the reason with both figures, the cups to use instead.
    Range: times outside the cup's range; one within it is refused, since it can be converted.
    Source: ASTM D4212 10.1 (below 20 s the flow may be turbulent, above 80 s solvent leaves and
        skins form); ASTM D1200-94(2005) 11.2; ISO 2431.

    >>> print(suggest_cup_for_out_of_range(cup_named("zahn 2"), 18.0).advice)
    Use Zahn #1, Ford #1 or ISO 3 mm. Water is too thin for any of these cups.
    """
    true_s = true_efflux_s(efflux_s, correction)
    if in_range(cup, true_s):
        raise BadInput(
            f"{efflux_s:g} s lies within the range of {with_article(cup)} cup; convert it."
        )
    thin = true_s < cup.low_s
    end = cup.low_mm2_s if thin else cup.high_mm2_s
    read = f"{efflux_s:.4g} s" if correction == 1.0 else f"{efflux_s:.4g} s (true {true_s:.4g} s)"
    side, limit = ("below", cup.low_s) if thin else ("above", cup.high_s)
    reach = "from" if thin else "up to"
    reason = (
        f"{read} is {side} the {limit:g} s {reach} which {with_article(cup)} cup can be converted"
    )
    explained = cup.dip and (not thin or limit == DIP_LOW_S)
    reason += f": {_WHY_DIP[thin]}." if explained else "."
    mine = _across(cup, end, thin, _known(owned))
    if mine:
        advice = f"Use {either(mine[:3])}."
    else:
        elsewhere = _across(cup, end, thin, _known(None)) if owned is not None else []
        advice = (
            f"None of your cups suits; one that does: {either(elsewhere[:3])}."
            if elsewhere
            else f"No cup here suits a liquid {'so thin' if thin else 'so thick'}."
        )
    if thin:
        advice += " Water is too thin for any of these cups."
    return Outside(reason, advice, cup.rule)


def _middle_s(cup: Cup) -> float:
    """The middle, in proportion, of the times the standard prefers."""
    return math.sqrt(cup.preferred_low_s * cup.preferred_high_s)


def _across(cup: Cup, end_mm2_s: float, thin: bool, cups: list[Cup]) -> list[Cup]:
    """Cups whose range reaches across the end of this cup's range, the likeliest first."""
    fitting = [
        other
        for other in cups
        if other.key != cup.key
        and (
            other.low_mm2_s < end_mm2_s <= other.high_mm2_s
            if thin
            else other.low_mm2_s <= end_mm2_s < other.high_mm2_s
        )
    ]

    likely_mm2_s = end_mm2_s / LIKELY_BEYOND if thin else end_mm2_s * LIKELY_BEYOND

    def order(other: Cup) -> tuple[bool, bool, float]:
        off = abs(math.log(other.formula_s(likely_mm2_s) / _middle_s(other)))
        return other.family != cup.family, other.key in HALF_CONFIRMED, off

    return sorted(fitting, key=order)


def either(cups: Iterable[Cup]) -> str:
    """The names of cups, joined for a sentence."""
    names = [cup.name for cup in cups]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} or {names[-1]}"


def with_article(cup: Cup) -> str:
    """The name of a cup with its article, for a sentence."""
    return f"{'an' if cup.family == 'ISO' else 'a'} {cup.name}"
