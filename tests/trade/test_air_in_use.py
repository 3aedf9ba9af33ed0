"""The compressor with its switch, the room's air changes, thinning by seconds of one cup."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from booth.trade.air import trigger_time
from booth.trade.result import BadInput, Estimate, Outside
from booth.trade.thinning import same_cup
from booth.trade.thinning.same_cup import NextStep
from booth.trade.ventilation import air_changes
from tests.trade.outside import Kind, outside

ATM = 101.325
PSI = 6.894757
FT3_L = 28.316847
GAL_L = 3.785412


@outside(
    trigger_time.trigger_hold,
    kind=Kind.DATA,
    source="US DOE / ORNL industrial tools, own tests: 183.75 ft3, 350 against 250 cfm, 100 to 60 "
    "psig, 14.7 psia: 5.000 min; 660 gal, 110 to 100 psi: 60.024 scf",
)
def test_the_doe_s_own_figures_from_the_cut_in_and_on_the_store_alone() -> None:
    hold = trigger_time.trigger_hold(
        *(183.75 * FT3_L, 110 * PSI, 100 * PSI, 60 * PSI, 350 * FT3_L, 250 * FT3_L),
        air_kpa=14.7 * PSI,
    )
    assert isinstance(hold.worst_s, Estimate)
    # As many digits as they are given with.
    assert hold.worst_s.likely / 60 == pytest.approx(5.000, abs=0.0005)
    store = trigger_time.trigger_hold(
        *(660 * GAL_L, 110 * PSI, 90 * PSI, 100 * PSI, 60.024 * FT3_L, 1.0), air_kpa=14.7 * PSI
    )
    # 60.024 scf drawn at 60.024 cfm: one minute, the switch not reached.
    assert store.best_s is not None and store.best_s.likely == pytest.approx(60, abs=0.06)


@outside(
    trigger_time.trigger_hold,
    kind=Kind.SIMULATION,
    source="simulation: scipy.integrate.solve_ivp of the receiver",
)
@given(
    st.floats(20, 500),
    st.floats(100, 600),
    st.floats(50, 400),
    st.floats(150, 600),
    st.floats(50, 400),
    st.floats(0.3, 1.0),
    st.floats(20, 500),
)
def test_a_receiver_with_a_switch_as_a_simulation_empties_it(
    receiver_l: float,
    cut_in: float,
    above: float,
    demand: float,
    supply: float,
    duty: float,
    least: float,
) -> None:
    hold = trigger_time.trigger_hold(
        receiver_l, cut_in + above, cut_in, least, demand, supply, duty
    )
    if hold.keeps_up:
        assert supply * duty >= demand and least < cut_in
        return
    assert hold.best_s is not None and hold.worst_s is not None
    pressure, passed = cut_in + above, 0.0
    for low, fed in ((max(cut_in, least), 0.0), (least, supply * duty)):
        if pressure <= low or (fed and least >= cut_in):
            continue
        rate = (demand - fed) / 60 / receiver_l * ATM
        hits = lambda t, p, low=low: p[0] - low  # noqa: E731
        hits.terminal = True
        found = solve_ivp(lambda t, p, rate=rate: [-rate], (0, 1e6), [pressure], events=hits)
        passed, pressure = passed + float(found.t_events[0][0]), low
    assert hold.best_s.likely == pytest.approx(passed, rel=1e-6)  # linear: the solver is exact
    assert hold.worst_s.likely <= hold.best_s.likely


def test_where_more_is_needed_than_the_cut_in_the_compressor_stands_still() -> None:
    """'Can be held for ever' with a cut-in of 4 bar and 5 bar needed was false."""
    hold = trigger_time.trigger_hold(50.0, 800.0, 400.0, 500.0, 100.0, 130.0)
    assert not hold.keeps_up and hold.worst_s is not None and hold.worst_s.likely == 0
    assert hold.rest_s is None
    with pytest.raises(BadInput, match="above the cut-in"):
        trigger_time.trigger_hold(50.0, 400.0, 400.0, 300.0, 100.0, 130.0)


def test_the_rated_duty_bounds_what_keeps_up() -> None:
    """A compressor that delivers enough, and may run half of the time only, does not keep up."""
    assert trigger_time.trigger_hold(50.0, 800.0, 600.0, 300.0, 100.0, 130.0).keeps_up
    assert not trigger_time.trigger_hold(50.0, 800.0, 600.0, 300.0, 100.0, 130.0, 0.5).keeps_up


@outside(
    trigger_time.receiver_needed_kpa,
    kind=Kind.DEFINITION,
    source="common practice, no source: 1 to 1.5 bar more",
)
def test_the_receiver_has_to_hold_more_than_the_inlet() -> None:
    found = trigger_time.receiver_needed_kpa(210.0)
    assert (found.low, found.high) == (310.0, 360.0)


#: Canada Communicable Disease Report 22S1 (April 1996), appendix F, after CDC, MMWR 43 RR-13
#: (1994): air changes per hour, minutes to 99 and 99.9 %; the row for 50 is that of MMWR 54 RR-17,
#: from memory.
CDC = (
    (2, 138, 207),
    (4, 69, 104),
    (6, 46, 69),
    (8, 35, 52),
    (10, 28, 41),
    (12, 23, 35),
    (15, 18, 28),
    (20, 14, 21),
    (50, 6, 8),
)


@outside(
    air_changes.time_to_clear_s,
    air_changes.air_changes_per_h,
    kind=Kind.DATA,
    source="Canada Communicable Disease Report 22S1 (April 1996), appendix F, after CDC MMWR 43 "
    "RR-13 (1994)",
)
@pytest.mark.parametrize(("changes", "to_99", "to_999"), CDC)
def test_minutes_to_clear_a_room(changes: int, to_99: int, to_999: int) -> None:
    assert air_changes.air_changes_per_h(changes * 70.0, 70.0) == changes
    for share, minutes in ((0.01, to_99), (0.001, to_999)):
        found = air_changes.time_to_clear_s(changes * 70.0, 70.0, share)
        # Whole minutes, rounded either way in the table.
        assert isinstance(found, float) and found / 60 == pytest.approx(minutes, abs=0.8)


def test_a_room_that_mixes_badly_takes_longer_and_one_without_exhaust_does_not_clear() -> None:
    good, bad = (air_changes.time_to_clear_s(600, 60, 0.01, mixing) for mixing in (1.0, 3.0))
    assert isinstance(good, float) and isinstance(bad, float) and bad == pytest.approx(3 * good)
    assert isinstance(air_changes.time_to_clear_s(0, 60), Outside)
    for odd in (math.nan, math.inf, -1.0, 0.0):
        with pytest.raises(BadInput):
            air_changes.air_changes_per_h(600, odd)


@outside(
    same_cup.next_thinning_step,
    kind=Kind.DEFINITION,
    source="common practice, no source: limit first, temperature second, then 2 to 3 % and time "
    "again",
)
@pytest.mark.parametrize(
    ("mean", "before", "limit", "liquid", "step", "add"),
    [
        (22.0, 0.00, 0.10, 20.0, NextStep.ADD, 0.025),
        (22.0, 0.09, 0.10, 20.0, NextStep.ADD, 0.01),
        (22.0, 0.10, 0.10, 20.0, NextStep.AT_LIMIT, 0.0),
        (22.0, 0.10, 0.10, 14.0, NextStep.AT_LIMIT, 0.0),
        (22.0, 0.05, 0.10, 14.0, NextStep.WARM, 0.0),
        (22.0, 0.05, None, None, NextStep.ADD, 0.025),
        (18.0, 0.05, 0.10, 20.0, NextStep.SPRAY, 0.0),
        (15.0, 0.05, 0.10, 20.0, NextStep.THICKEN, 0.0),
        (15.0, 0.05, 0.10, 26.0, NextStep.COOL, 0.0),
    ],
)
def test_thinning_by_the_seconds_of_one_cup(
    mean: float,
    before: float,
    limit: float | None,
    liquid: float | None,
    step: NextStep,
    add: float,
) -> None:
    """17 to 19 s wanted, 22 s measured: 'use another cup' was no help."""
    found = same_cup.next_thinning_step(mean, 17.0, 19.0, before, limit, liquid, 20.0)
    assert found.step is step
    assert found.add_fraction == pytest.approx(add)
    if limit is not None:
        assert before + found.add_fraction <= limit + 1e-12
