"""Thinner: the band of two published rules, the fit, the limits, the film."""

from __future__ import annotations

import math

import numpy as np
import pytest
from chemicals.utils import mixing_logarithmic
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from scipy.stats import linregress

from booth.trade.film.film_thickness import dry_film_um
from booth.trade.result import BadInput, Outside
from booth.trade.thinning import blending_rule, thin_to_viscosity, thinner_share, thinning_fit
from booth.trade.thinning.thin_to_viscosity import ThinnerStep
from booth.trade.thinning.thinning_fit import ThinningFit, ThinningPoint
from tests.trade.outside import Kind, outside
from tests.trade.said import plain


def refutas(first_mm2_s: float, second_mm2_s: float, share: float) -> float:
    """The blending number as it is published, outer constants and all."""
    numbers = [14.534 * math.log(math.log(nu + 0.8)) + 10.975 for nu in (first_mm2_s, second_mm2_s)]
    mixed = (1 - share) * numbers[0] + share * numbers[1]
    return math.exp(math.exp((mixed - 10.975) / 14.534)) - 0.8


def astm_d7152(first_mm2_s: float, second_mm2_s: float, share: float) -> float:
    """ASTM D7152's blending method at one temperature, its low-viscosity terms left out."""
    bent = [math.log10(math.log10(nu + 0.7)) for nu in (first_mm2_s, second_mm2_s)]
    return 10 ** (10 ** ((1 - share) * bent[0] + share * bent[1])) - 0.7


def step(answer: ThinnerStep | Outside) -> ThinnerStep:
    assert isinstance(answer, ThinnerStep), answer
    return answer


@outside(
    blending_rule.blend_logarithmic_mm2_s,
    kind=Kind.LIBRARY,
    source="chemicals.utils.mixing_logarithmic",
)
@given(st.floats(1.0, 2000.0), st.floats(0.4, 3.0), st.floats(0.0, 1.0))
def test_the_logarithmic_rule(first: float, second: float, share: float) -> None:
    known = mixing_logarithmic([1.0 - share, share], [first, second])
    # Floating point only: the same rule written otherwise.
    assert blending_rule.blend_logarithmic_mm2_s(first, second, share) == pytest.approx(
        known, rel=1e-9
    )


@outside(
    blending_rule.blend_index_mm2_s,
    kind=Kind.DEFINITION,
    source="Refutas blending number, Maples, Petroleum Refinery Process Economics, 2nd ed. "
    "(2000), typed again",
)
@given(st.floats(2.0, 2000.0), st.floats(0.6, 3.0), st.floats(0.0, 1.0))
def test_the_blending_index(first: float, second: float, share: float) -> None:
    found = blending_rule.blend_index_mm2_s(first, second, share)
    assert found == pytest.approx(refutas(first, second, share), rel=1e-9)  # rounding


@outside(
    blending_rule.blend_index_mm2_s,
    blending_rule.blend_logarithmic_mm2_s,
    kind=Kind.DEFINITION,
    source="by hand: 20 % of 0.8 mm2/s in 200 is 66 by the logarithms, 23 to 25 by Refutas and "
    "D7152",
)
def test_the_two_rules_disagree_by_far_and_both_are_shown() -> None:
    assert blending_rule.blend_logarithmic_mm2_s(200.0, 0.8, 0.2) == pytest.approx(66.29, abs=0.005)
    assert blending_rule.blend_index_mm2_s(200.0, 0.8, 0.2) == pytest.approx(25.40, abs=0.005)
    # The two shifts in print, 0.8 and 0.7, are 9 % apart here; the rules are a factor of 2.6 apart.
    assert astm_d7152(200.0, 0.8, 0.2) == pytest.approx(23.12, abs=0.005)


@outside(
    thin_to_viscosity.thinner_for_target,
    kind=Kind.LIBRARY,
    source="chemicals.utils.mixing_logarithmic and the Refutas number, solved by scipy's brentq",
)
@given(st.floats(30.0, 1000.0), st.floats(0.1, 0.9), st.floats(50.0, 5000.0), st.floats(0.4, 1.5))
def test_the_band_reaches_from_one_rule_to_the_other(
    thick: float, ratio: float, remaining_ml: float, thinner_mm2_s: float
) -> None:
    target = thick * ratio
    answer = thin_to_viscosity.thinner_for_target(
        remaining_ml, 0.0, thick, target, thinner_mm2_s=thinner_mm2_s
    )
    if isinstance(answer, Outside):  # half thinner is still too thick, even by the index
        assert refutas(thick, thinner_mm2_s, 0.5) > target
        return
    ends = []
    for rule in (
        lambda x: refutas(thick, thinner_mm2_s, x),
        lambda x: mixing_logarithmic([1 - x, x], [thick, thinner_mm2_s]),
    ):
        share = brentq(lambda x, rule=rule: rule(x) - target, 0.0, 0.999, xtol=1e-13)
        ends.append(min(remaining_ml * share / (1 - share), 9 * remaining_ml))
    # 1e-6: the root finder's own tolerance, magnified by share / (1 - share).
    assert answer.add.low == pytest.approx(min(ends), rel=1e-6)
    assert answer.add.high == pytest.approx(max(ends), rel=1e-6)
    assert answer.step_ml == answer.add.low
    assert answer.fraction_after == pytest.approx(answer.step_ml / remaining_ml, rel=1e-12)


amounts = st.tuples(
    st.floats(50.0, 5000.0), st.floats(0.0, 0.6), st.floats(20.0, 900.0), st.floats(0.05, 0.99)
)


@given(amounts, st.floats(0.0, 0.8))
def test_never_past_the_limit(mix: tuple[float, float, float, float], limit: float) -> None:
    remaining_ml, fraction, thick, ratio = mix
    answer = thin_to_viscosity.thinner_for_target(
        remaining_ml, fraction, thick, thick * ratio, limit, 0.8
    )
    if limit <= fraction:
        assert isinstance(answer, Outside)
        assert "limit" in answer.reason or "more than half" in answer.reason
        return
    if isinstance(answer, Outside):
        assert refutas(thick, 0.8, 0.5) > thick * ratio or thick * ratio <= 0.8
        return
    assert answer.fraction_after <= limit * (1 + 1e-9)  # rounding
    room = thinner_share.thinner_room_ml(remaining_ml, fraction, limit)
    assert answer.at_limit is (room < answer.add.low)
    assert ("limit" in answer.note) is answer.at_limit


def test_refusals_of_the_first_step() -> None:
    thin = thin_to_viscosity.thinner_for_target(500.0, 0.0, 40.0, 40.0)
    assert isinstance(thin, Outside) and "no thinner" in thin.advice
    beyond = thin_to_viscosity.thinner_for_target(500.0, 0.0, 40.0, 1.0, thinner_mm2_s=1.2)
    assert isinstance(beyond, Outside) and "1.2 mm2/s" in plain(beyond.reason)
    far = thin_to_viscosity.thinner_for_target(500.0, 0.0, 400.0, 1.0)
    assert isinstance(far, Outside) and "more than half" in far.reason


rounds = st.lists(
    st.tuples(st.floats(0.0, 0.5), st.floats(-0.05, 0.05)),
    min_size=3,
    max_size=6,
    unique_by=lambda pair: round(pair[0], 2),
)


@outside(
    thinning_fit.fit_thinning, kind=Kind.LIBRARY, source="scipy.stats.linregress and numpy.polyfit"
)
@given(rounds, st.floats(50.0, 500.0))
def test_the_fit_is_the_least_squares_line(made: list[tuple[float, float]], thick: float) -> None:
    shares = np.array([s / (1 + s) for s, _ in made])
    heights = np.array([math.log(thick) - 9.0 * s / (1 + s) + noise for s, noise in made])
    known = linregress(shares, heights)
    fit = thinning_fit.fit_thinning(
        [ThinningPoint(s, math.exp(h)) for (s, _), h in zip(made, heights, strict=True)]
    )
    if known.slope >= -1e-9:
        assert isinstance(fit, Outside)
        return
    assert isinstance(fit, ThinningFit)
    # 1e-6: shares a hundredth apart magnify rounding in the slope.
    assert fit.fall == pytest.approx(-known.slope, rel=1e-6)
    assert fit.intercept == pytest.approx(known.intercept, rel=1e-6)
    _line, squares, *_ = np.polyfit(shares, heights, 1, full=True)
    if len(squares):
        spread = math.sqrt(squares[0] / (len(made) - 2))
        assert fit.residual_fraction == pytest.approx(math.expm1(spread), rel=1e-5, abs=1e-7)


@outside(
    thin_to_viscosity.thinner_from_fit,
    kind=Kind.LIBRARY,
    source="exact: a mix that follows ln nu = c - k x, solved by scipy's brentq",
)
@given(st.floats(0.02, 0.2), st.floats(4.0, 12.0), st.floats(0.4, 0.85), st.floats(50.0, 3000.0))
def test_the_fit_finds_the_amount_for_what_remains(
    first: float, fall: float, ratio: float, remaining_ml: float
) -> None:
    def mix_mm2_s(fraction: float) -> float:
        return 300.0 * math.exp(-fall * fraction / (1 + fraction))

    fit = thinning_fit.fit_thinning([ThinningPoint(s, mix_mm2_s(s)) for s in (0.0, first)])
    assert isinstance(fit, ThinningFit) and fit.residual_fraction is None
    target = mix_mm2_s(first) * ratio
    answer = thin_to_viscosity.thinner_from_fit(fit, remaining_ml, first, target)
    if isinstance(answer, Outside):
        assert mix_mm2_s(1.0) > target * (1 - 1e-9)  # half thinner is still too thick
        return

    def miss(added_ml: float) -> float:
        after = thinner_share.thinner_fraction_after(remaining_ml, first, added_ml)
        return mix_mm2_s(after) - target

    known = brentq(miss, 0.0, 9 * remaining_ml, xtol=1e-10 * remaining_ml)
    assert answer.add.likely == pytest.approx(known, rel=1e-6)  # the root finder's tolerance
    assert answer.add.low <= answer.add.likely <= answer.add.high
    assert 0.0 < answer.step_ml <= answer.add.likely
    after = answer.fraction_after / (1 + answer.fraction_after)
    assert after <= 2 * first / (1 + first) * (1 + 1e-9)  # no further on than has been measured


def test_the_fit_never_goes_past_the_limit_and_says_when_it_is_there() -> None:
    fit = thinning_fit.fit_thinning([ThinningPoint(0.0, 200.0), ThinningPoint(0.1, 120.0)])
    assert isinstance(fit, ThinningFit)
    answer = step(thin_to_viscosity.thinner_from_fit(fit, 550.0, 0.1, 80.0, limit_fraction=0.11))
    assert answer.at_limit and answer.fraction_after == pytest.approx(0.11, rel=1e-12)
    assert "limit of 11 %" in answer.note
    there = thin_to_viscosity.thinner_from_fit(fit, 550.0, 0.11, 80.0, limit_fraction=0.11)
    assert isinstance(there, Outside) and "11 %" in there.reason


def test_the_fit_refuses_what_it_cannot_know() -> None:
    fit = thinning_fit.fit_thinning([ThinningPoint(0.0, 200.0), ThinningPoint(0.1, 120.0)])
    assert isinstance(fit, ThinningFit)
    for figure, says in (
        (thin_to_viscosity.thinner_from_fit(fit, 500.0, 0.1, 120.0), "at the wanted viscosity"),
        (thin_to_viscosity.thinner_from_fit(fit, 500.0, 0.1, 5.0), "more than half"),
        (thin_to_viscosity.thinner_from_fit(fit, 500.0, 0.5, 25.0), "far more thinner"),
        (thinning_fit.fit_thinning([]), "two different amounts"),
        (thinning_fit.fit_thinning([ThinningPoint(0.1, 90.0)] * 2), "two different amounts"),
        (
            thinning_fit.fit_thinning([ThinningPoint(0.0, 90.0), ThinningPoint(0.1, 95.0)]),
            "did not make",
        ),
    ):
        assert isinstance(figure, Outside) and says in figure.reason, figure


def test_a_scattered_fit_is_trusted_less() -> None:
    tidy = thinning_fit.fit_thinning(
        [ThinningPoint(0.0, 200.0), ThinningPoint(0.1, 120.0), ThinningPoint(0.2, 78.4)]
    )
    rough = thinning_fit.fit_thinning(
        [ThinningPoint(0.0, 200.0), ThinningPoint(0.1, 95.0), ThinningPoint(0.2, 78.4)]
    )
    assert isinstance(tidy, ThinningFit) and isinstance(rough, ThinningFit)
    # 2 x 3.7 %, ASTM D4212 13.1.1.
    assert tidy.doubt == pytest.approx(0.074, abs=1e-12) and rough.doubt > 0.2


@outside(
    thinner_share.thinner_fraction_after,
    thinner_share.thinner_room_ml,
    kind=Kind.DEFINITION,
    source="conservation of volume, by hand: 4 l of coating, 4 : 1 thinned, half poured away",
)
def test_the_mix_is_kept_in_balance() -> None:
    # 4000 ml coating + 1000 ml thinner; 2500 ml poured away: 2000 + 500 remain; 100 ml more: 600.
    assert thinner_share.thinner_fraction_after(2500.0, 0.25, 100.0) == pytest.approx(600 / 2000)
    # 35 % of 2000 ml is 700 ml; 500 are in.
    assert thinner_share.thinner_room_ml(2500.0, 0.25, 0.35) == pytest.approx(200.0)
    assert thinner_share.thinner_room_ml(2500.0, 0.25, 0.20) == 0.0


@given(st.floats(10.0, 5000.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_filling_the_room_reaches_the_limit(
    remaining_ml: float, fraction: float, more: float
) -> None:
    room = thinner_share.thinner_room_ml(remaining_ml, fraction, fraction + more)
    after = thinner_share.thinner_fraction_after(remaining_ml, fraction, room)
    assert after == pytest.approx(fraction + more, rel=1e-9, abs=1e-12)


@outside(
    thinner_share.solids_after_thinning,
    thinner_share.wet_film_after_thinning_um,
    kind=Kind.DEFINITION,
    source="Organic Finishing Guidebook 2012-13 p. 615: DFT = WFT x VS / (1 + s)",
)
def test_solids_and_wet_film_after_thinning() -> None:
    solids = thinner_share.solids_after_thinning(0.50, 0.25)
    assert 4.0 * solids == pytest.approx(1.60)
    # Unthinned, 3.2 mil wet leave those 1.6 mil dry.
    assert thinner_share.wet_film_after_thinning_um(3.2 * 25.4, 0.0, 0.25) == pytest.approx(
        4.0 * 25.4
    )


@given(st.floats(10.0, 300.0), st.floats(0.05, 1.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_dry_film_stays_the_same(
    wet_um: float, solids: float, before: float, after: float
) -> None:
    wet_after = thinner_share.wet_film_after_thinning_um(wet_um, before, after)
    assert dry_film_um(wet_after, solids, after) == pytest.approx(
        dry_film_um(wet_um, solids, before), rel=1e-12
    )


@pytest.mark.parametrize("bad", [-1.0, float("nan"), float("inf")])
def test_bad_numbers_get_a_sentence(bad: float) -> None:
    fit = thinning_fit.fit_thinning([ThinningPoint(0.0, 200.0), ThinningPoint(0.1, 120.0)])
    assert isinstance(fit, ThinningFit)
    for call in (
        lambda: blending_rule.blend_index_mm2_s(bad, 1.0, 0.1),
        lambda: blending_rule.blend_logarithmic_mm2_s(100.0, 1.0, bad),
        lambda: thinner_share.thinner_fraction_after(100.0, 0.1, bad),
        lambda: thinner_share.thinner_room_ml(bad, 0.1, 0.2),
        lambda: thinner_share.solids_after_thinning(bad, 0.1),
        lambda: thinner_share.wet_film_after_thinning_um(50.0, bad, 0.1),
        lambda: thin_to_viscosity.thinner_for_target(bad, 0.0, 100.0, 50.0),
        lambda: thin_to_viscosity.thinner_for_target(100.0, 0.0, 100.0, 50.0, bad),
        lambda: thin_to_viscosity.thinner_from_fit(fit, 100.0, bad, 50.0),
        lambda: thinning_fit.fit_thinning([ThinningPoint(0.0, bad), ThinningPoint(0.1, 5.0)]),
    ):
        with pytest.raises(BadInput, match=r"\.$"):
            call()
