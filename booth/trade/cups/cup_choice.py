"""Which flow cup suits: for a viscosity expected, or after a time that cannot be converted."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence
from dataclasses import dataclass

from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_table import CUPS, DIP_LOW_S, HALF_CONFIRMED, Cup
from booth.trade.result import BadInput, Outside, Said, require

#: A cup further from its standard than this is another cup. Common practice, no source.
LEAST_CORRECTION, MOST_CORRECTION = 0.5, 2.0
#: A liquid out of a cup's range is likely out of it by this factor. Common practice, no source.
LIKELY_BEYOND = 1.5
#: Below this share of the shortest time of its cup the stopwatch has slipped: common practice, no source.
SLIP_FRACTION = 0.2
#: ASTM D4212 10.1, by whether the liquid is too thin: between 20 and 80 s time and viscosity are in
#: line.
_WHY_DIP = {
    True: "time and viscosity are no longer in line there, and the flow may be turbulent",
    False: "solvent leaves and skins form meanwhile",
}


@dataclass(frozen=True, slots=True)
class CupFit:
    """A cup that suits a viscosity: its efflux time [s]; preferred: in the range preferred."""

    cup: Cup
    efflux_s: float
    preferred: bool


def _checked(correction: float) -> float:
    return require("The correction of a cup", correction, LEAST_CORRECTION, MOST_CORRECTION)


def _true_s(efflux_s: float, correction: float) -> float:
    """Efflux time of a cup true to its standard [s]."""
    return require("The efflux time", efflux_s, above=0.0, unit="s") * _checked(correction)


def _known(owned: Collection[Cup] | Collection[str] | None) -> list[Cup]:
    if owned is None:
        return list(CUPS.values())
    return [cup if isinstance(cup, Cup) else CUPS.get(cup) or cup_named(cup) for cup in owned]


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
    Source: ASTM D1200-94(2005) (old edition) 11.2 (preferred range); nearest the middle is common
        practice, no
        source: a time far from both ends leaves room for what the liquid turns out to be.

    >>> [fit.cup.name for fit in cups_for_viscosity(100.0, ["ford-4", "zahn-2", "zahn-5"])]
    ['Zahn #2', 'Ford #4']
    """
    require("The viscosity", viscosity_mm2_s, above=0.0, unit="mm2/s")
    fits = []
    for cup in _known(owned):
        efflux_s = cup.formula_s(viscosity_mm2_s)
        if cup.covers(efflux_s):
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
    Source: ASTM D4212 10.1 (20 to 80 s, where time and viscosity are in line; below, the flow may
        be turbulent, above, solvent leaves and skins form); ASTM D1200-94(2005) (old edition) 11.2;
        ISO 2431.

    >>> print(suggest_cup_for_out_of_range(cup_named("zahn 2"), 18.0).advice)
    Use Zahn #1, Ford #1 or ISO 3 mm. Water is too thin for any of these cups.
    """
    true_s = _true_s(efflux_s, correction)
    if cup.covers(true_s):
        raise BadInput(
            f"{Said(efflux_s, 's')} lies within the range of {cup.with_article} cup; convert it."
        )
    thin = true_s < cup.low_s
    end = cup.low_mm2_s if thin else cup.high_mm2_s
    read = f"{Said(efflux_s, 's')}"
    if correction != 1.0:
        read += f" (true {Said(float(f'{true_s:.4g}'), 's')})"
    side, limit = ("below", cup.low_s) if thin else ("above", cup.high_s)
    reach = "from" if thin else "up to"
    reason = f"{read} is {side} the {Said(limit, 's')} {reach} which {cup.with_article} cup can be converted"
    explained = cup.dip and (not thin or limit == DIP_LOW_S)
    reason += f": {_WHY_DIP[thin]}." if explained else "."
    mine = _across(cup, end, thin, _known(owned))
    elsewhere = [] if mine or owned is None else _across(cup, end, thin, _known(None))
    if elsewhere:
        advice = f"None of your cups suits; one that does: {_either(elsewhere)}."
    else:
        advice = _use(mine, thin)
    if thin and true_s < SLIP_FRACTION * cup.low_s:
        advice = f"So short a time is most often a slip of the stopwatch: time it again. {advice}"
    elif thin:
        advice += " Water is too thin for any of these cups."
    return Outside(reason, advice, cup.rule)


def _middle_s(cup: Cup) -> float:
    """The middle, in proportion, of the times the standard prefers."""
    return math.sqrt(cup.preferred_low_s * cup.preferred_high_s)


def _across(cup: Cup, end_mm2_s: float, thin: bool, cups: list[Cup]) -> list[Cup]:
    """Cups whose range reaches across the end of this cup's range, the likeliest first."""
    likely_mm2_s = end_mm2_s / LIKELY_BEYOND if thin else end_mm2_s * LIKELY_BEYOND

    def across(other: Cup) -> bool:
        if thin:
            return other.low_mm2_s < end_mm2_s <= other.high_mm2_s
        return other.low_mm2_s <= end_mm2_s < other.high_mm2_s

    def order(other: Cup) -> tuple[bool, bool, float]:
        off = abs(math.log(other.formula_s(likely_mm2_s) / _middle_s(other)))
        return other.family != cup.family, other.key in HALF_CONFIRMED, off

    return sorted((each for each in cups if each.key != cup.key and across(each)), key=order)


def _either(cups: Sequence[Cup]) -> str:
    """The names of the first three cups, joined for a sentence."""
    *others, last = [cup.name for cup in cups[:3]]
    return f"{', '.join(others)} or {last}" if others else last


def _use(cups: Sequence[Cup], thin: bool) -> str:
    if cups:
        return f"Use {_either(cups)}."
    return f"No cup here suits a liquid so {'thin' if thin else 'thick'}."
