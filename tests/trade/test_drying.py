"""Pot life and recoat against the guide's figures; tables; flash-off against vapour pressure."""

from __future__ import annotations

import math

import psychrolib
import pytest
from chemicals.dippr import EQ101
from chemicals.vapor_pressure import Psat_data_Perrys2_8
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import interp1d
from scipy.stats import linregress

from booth.trade.result import BadInput, Outside, Said
from booth.trade.waits import flash_off, wait_by_rule, wait_by_table
from booth.trade.waits.wait_time import Certainty, WaitTime
from tests.trade.outside import Kind, outside
from tests.trade.said import plain

psychrolib.SetUnitSystem(psychrolib.SI)

HOUR = 3600.0
seconds = st.floats(1.0, 1e6)
shop = st.floats(5.0, 40.0)

#: UFGS 09971, recoat minima [h] in bands of ten degrees F from 60-70 to 111-120.
UFGS_MIDDLES_F = (65.0, 75.5, 85.5, 95.5, 105.5, 115.5)
UFGS_RECOAT_H = (8.0, 6.0, 4.0, 3.0, 2.0, 1.0)

#: Solvents usual in coatings, by CAS number.
SOLVENTS = {
    "toluene": "108-88-3",
    "acetone": "67-64-1",
    "2-butanone": "78-93-3",
    "ethyl acetate": "141-78-6",
    "butyl acetate": "123-86-4",
    "o-xylene": "95-47-6",
    "ethanol": "64-17-5",
    "n-butanol": "71-36-3",
    "isopropanol": "67-63-0",
    "ethylbenzene": "100-41-4",
    "methyl isobutyl ketone": "108-10-1",
}


def wait(found: WaitTime | Outside) -> WaitTime:
    assert isinstance(found, WaitTime)
    return found


@outside(
    wait_by_rule.pot_life_at,
    wait_by_rule.scaled_s,
    kind=Kind.COPIED,
    source="UFGS 09971 3.7.1.3: basis 21 C, 10 C halves",
)
@pytest.mark.parametrize(("mix_c", "hours"), [(21, 4), (31, 2), (11, 8), (25, 3.03)])
def test_pot_life_of_four_hours(mix_c: float, hours: float) -> None:
    found = wait_by_rule.pot_life_at(4 * HOUR, 21.0, mix_c)
    assert found.likely_s / HOUR == pytest.approx(hours, abs=0.005)  # as many digits as printed
    assert found.likely_s == pytest.approx(wait_by_rule.scaled_s(4 * HOUR, 21.0, mix_c, 10.0))
    # The guide doubles it in the cold; here it is never longer than the data sheet's.
    assert found.seconds == min(found.likely_s, 4 * HOUR)
    sure = {21: Certainty.KNOWN, 11: Certainty.AT_MOST}
    assert found.certainty is sure.get(int(mix_c), Certainty.ESTIMATED)
    # In Fahrenheit, as the guide also says it: 18 F.
    assert found.likely_s / HOUR == pytest.approx(4 * 2 ** -((mix_c - 21) * 1.8 / 18))


@outside(
    wait_by_rule.recoat_opens_at,
    kind=Kind.DATA,
    source="UFGS 09971 recoat minima, 60 to 120 F, fitted with scipy.stats.linregress",
)
def test_recoat_minima_of_the_guide_halve_per_17_5_f() -> None:
    fit = linregress(UFGS_MIDDLES_F, [math.log2(hours) for hours in UFGS_RECOAT_H])
    # The constant is printed to half a degree F.
    assert -1.0 / fit.slope == pytest.approx(17.5, abs=0.25)
    # The guide's own steps, 85.5 F taken as the basis: within a quarter, since whole hours in bands
    # of ten degrees are themselves coarser than that (3 to 2 to 1 h from one band to the next).
    # 103 F stands for the band 101-110, whose middle lies above 40 C, where nothing is scaled.
    for fahrenheit, hours in ((65.0, 8.0), (75.5, 6.0), (95.5, 3.0), (103.0, 2.0)):
        found = wait(
            wait_by_rule.recoat_opens_at(4 * HOUR, (85.5 - 32) / 1.8, (fahrenheit - 32) / 1.8)
        )
        assert found.likely_s / HOUR == pytest.approx(hours, rel=0.25)


def test_the_constant_is_the_one_that_was_fitted() -> None:
    assert math.isclose(wait_by_rule.RECOAT_HALVES_PER_K * 1.8, 17.5)


#: UFGS 09971, recoat maxima [h] of the same rows.
UFGS_CLOSES_H = (48.0, 48.0, 36.0, 24.0, 12.0, 2.0)


@outside(
    wait_by_rule.recoat_closes_at, kind=Kind.DATA, source="UFGS 09971 recoat maxima, 60 to 120 F"
)
@pytest.mark.parametrize("row", range(2, 6))
def test_a_window_closes_no_later_than_the_guide_says(row: int) -> None:
    """From its row for 71 to 80 F to every warmer one, at both ends of the row."""
    for fahrenheit in (UFGS_MIDDLES_F[row] - 4.5, UFGS_MIDDLES_F[row], UFGS_MIDDLES_F[row] + 4.5):
        found = wait_by_rule.recoat_closes_at(48 * HOUR, (75.5 - 32) / 1.8, (fahrenheit - 32) / 1.8)
        assert found.seconds / HOUR <= UFGS_CLOSES_H[row]
    # And not so careful that it says nothing: a quarter of the guide's, at the middle of a row.
    middle = wait_by_rule.recoat_closes_at(
        48 * HOUR, (75.5 - 32) / 1.8, (UFGS_MIDDLES_F[row] - 32) / 1.8
    )
    assert middle.seconds / HOUR >= UFGS_CLOSES_H[row] / 4


@outside(
    wait_by_rule.recoat_closes_at,
    kind=Kind.DATA,
    source="UFGS 09971 recoat maxima: 48 h in its row for 71 to 80 F are 12 h at 101 to 110 F",
)
def test_48_h_at_75_5_f_are_at_most_12_h_at_103_f() -> None:
    found = wait_by_rule.recoat_closes_at(48 * HOUR, (75.5 - 32) / 1.8, (103 - 32) / 1.8)
    assert 6 * HOUR <= found.seconds <= 12 * HOUR
    # From the middle of every row to that of every warmer one, the coldest row's own 48 h aside.
    for base in range(1, 6):
        for row in range(base + 1, 6):
            carried = wait_by_rule.recoat_closes_at(
                UFGS_CLOSES_H[base] * HOUR,
                (UFGS_MIDDLES_F[base] - 32) / 1.8,
                (UFGS_MIDDLES_F[row] - 32) / 1.8,
            )
            assert carried.seconds <= UFGS_CLOSES_H[row] * HOUR, (base, row)


@outside(
    wait_by_rule.recoat_closes_at,
    flash_off.waterborne_closes_at,
    wait_by_rule.pot_life_at,
    kind=Kind.THEOREM,
    source="theorem: a warmer or drier day never closes later, whatever the figures",
)
@given(seconds, st.floats(-30, 60), st.floats(-30, 45), st.floats(0, 20), st.floats(0, 100))
def test_warmer_never_closes_later_at_any_temperature(
    time_s: float, at_c: float, today_c: float, warmer_k: float, percent: float
) -> None:
    for scale in (wait_by_rule.pot_life_at, wait_by_rule.recoat_closes_at):
        cool, warm = (scale(time_s, at_c, c) for c in (today_c, today_c + warmer_k))
        # The data sheet's own time holds half a degree about its own temperature.
        if abs(today_c - at_c) > 0.5 and abs(today_c + warmer_k - at_c) > 0.5:
            assert warm.seconds <= cool.seconds * (1 + 1e-12)
        assert warm.seconds <= time_s
    if -40 < at_c < 50:  # in its own air the data sheet's own time
        own = flash_off.waterborne_closes_at(time_s, at_c, 50.0, at_c, 50.0)
        assert own.seconds == time_s
    if today_c + warmer_k < 50 and at_c < 50 and at_c > -40:
        cool, warm = (
            flash_off.waterborne_closes_at(time_s, c, percent, at_c)
            for c in (today_c, min(today_c + warmer_k, 50))
        )
        assert warm.seconds <= cool.seconds * (1 + 1e-9)
        damp = flash_off.waterborne_closes_at(time_s, today_c, min(percent + 10, 100), at_c)
        assert damp.seconds >= cool.seconds * (1 - 1e-9)


@given(seconds, shop, shop)
def test_what_opens_is_never_shortened_what_closes_never_lengthened(
    time_s: float, at_c: float, today_c: float
) -> None:
    for opens in (
        wait(wait_by_rule.recoat_opens_at(time_s, at_c, today_c)),
        wait(flash_off.flash_off_at(time_s, at_c, today_c)),
    ):
        assert opens.seconds >= time_s
        assert opens.low_s <= opens.likely_s <= opens.seconds == opens.high_s
    closes = wait(wait_by_rule.recoat_closes_at(time_s, at_c, today_c))
    assert closes.seconds <= time_s
    assert closes.seconds == closes.low_s <= closes.likely_s <= closes.high_s


@outside(
    wait_by_rule.recoat_opens_at,
    flash_off.flash_off_at,
    kind=Kind.THEOREM,
    source="identity: at the temperature that it is given for a wait is the one that is given",
)
@given(seconds, shop, shop)
def test_only_at_its_own_temperature_is_it_no_estimate(
    time_s: float, at_c: float, today_c: float
) -> None:
    for scale in (
        wait_by_rule.pot_life_at,
        wait_by_rule.recoat_opens_at,
        wait_by_rule.recoat_closes_at,
        flash_off.flash_off_at,
    ):
        own = wait(scale(time_s, at_c, at_c))
        assert own.seconds == own.likely_s == time_s
        found = wait(scale(time_s, at_c, today_c))
        assert found.estimate is (abs(today_c - at_c) > 0.5)
        if not found.estimate:
            assert found.seconds == found.low_s == found.high_s == time_s


@given(seconds, shop, shop, st.floats(0.6, 10.0))
def test_warmer_never_waits_longer(
    time_s: float, at_c: float, today_c: float, warmer_k: float
) -> None:
    if today_c + warmer_k > 40.0:
        return
    for scale in (wait_by_rule.pot_life_at, wait_by_rule.recoat_opens_at, flash_off.flash_off_at):
        cold = wait(scale(time_s, at_c, today_c))
        warm = wait(scale(time_s, at_c, today_c + warmer_k))
        assert warm.seconds <= cold.seconds * (1 + 1e-12)


@pytest.mark.parametrize(("at_c", "today_c"), [(21, 4.9), (21, 40.1), (60, 21), (-5, 21)])
def test_outside_5_to_40_c_no_opening_is_carried_over(at_c: float, today_c: float) -> None:
    for closes in (wait_by_rule.pot_life_at, wait_by_rule.recoat_closes_at):
        bound = closes(HOUR, at_c, today_c)
        assert bound.certainty is Certainty.AT_MOST
        assert 0 < bound.seconds <= HOUR
    for scale in (wait_by_rule.recoat_opens_at, flash_off.flash_off_at):
        found = scale(HOUR, at_c, today_c)
        assert isinstance(found, Outside)
        assert "outside 5 C to 40 C" in plain(found.reason)
        assert "data sheet" in found.advice
    assert isinstance(flash_off.waterborne_flash_off_at(HOUR, today_c, 50.0, at_c), Outside)


def doubling_k(cas: str, low_c: float, high_c: float) -> float:
    row = Psat_data_Perrys2_8.loc[cas]
    low, high = (EQ101(c + 273.15, *(row[f"C{n}"] for n in range(1, 6))) for c in (low_c, high_c))
    return (high_c - low_c) * math.log(2) / math.log(high / low)


@outside(
    flash_off.flash_off_at,
    kind=Kind.LIBRARY,
    source="DIPPR equation 101, Perry's Handbook 8th ed. table 2-8, as carried by chemicals",
)
@pytest.mark.parametrize("name", SOLVENTS)
def test_the_band_of_flash_off_holds_the_vapour_pressure_of_every_usual_solvent(name: str) -> None:
    cold = wait(flash_off.flash_off_at(600.0, 20.0, 5.0))
    slowest = 600.0 * 2 ** (15.0 / doubling_k(SOLVENTS[name], 5.0, 20.0))
    assert cold.low_s <= slowest <= cold.high_s
    warm = wait(flash_off.flash_off_at(600.0, 20.0, 40.0))
    quick = 600.0 * 2 ** (-20.0 / doubling_k(SOLVENTS[name], 20.0, 40.0))
    assert warm.low_s <= quick <= warm.high_s


def test_the_band_is_no_wider_than_the_solvents_make_it() -> None:
    found = [
        doubling_k(cas, low, high) for cas in SOLVENTS.values() for low, high in ((5, 20), (20, 40))
    ]
    # To the half kelvin to which the constants are rounded outwards.
    assert min(found) - flash_off.HALVES_AT_THE_QUICKEST_PER_K == pytest.approx(0.25, abs=0.25)
    assert flash_off.HALVES_AT_THE_SLOWEST_PER_K - max(found) == pytest.approx(0.25, abs=0.25)
    assert sorted(found)[len(found) // 2] == pytest.approx(flash_off.HALVES_PER_K, abs=0.5)


@outside(
    flash_off.waterborne_flash_off_at,
    kind=Kind.LIBRARY,
    source="psychrolib 2.5, GetVaporPressureDeficit",
)
@pytest.mark.parametrize(("air_c", "percent"), [(20, 75), (15, 60), (23, 65), (30, 40), (18, 50)])
def test_waterborne_goes_as_the_vapour_pressure_deficit(air_c: float, percent: float) -> None:
    def deficit(t: float, rh: float) -> float:
        ratio = psychrolib.GetHumRatioFromRelHum(t, rh / 100, 101325)
        return float(psychrolib.GetVaporPressureDeficit(t, ratio, 101325))

    found = wait(flash_off.waterborne_flash_off_at(600.0, air_c, percent))
    # 0.4 % is what the Magnus constants are stated to hold, twice in a ratio.
    assert found.likely_s == pytest.approx(
        600 * deficit(23, 50) / deficit(air_c, percent), rel=0.008
    )
    assert found.low_s <= found.likely_s <= found.high_s == found.seconds
    assert found.seconds >= 600.0
    assert found.estimate


def test_waterborne_in_its_own_air_is_the_data_sheet_and_in_fog_nothing() -> None:
    same = wait(flash_off.waterborne_flash_off_at(600.0, 23.0, 50.0))
    assert (same.seconds, same.estimate) == (600.0, False)
    for air_c, percent in ((20, 100), (10, 85)):
        found = flash_off.waterborne_flash_off_at(600.0, air_c, percent)
        assert isinstance(found, Outside)
        assert "too little" in found.reason


SHEET = ((10.0, 8 * HOUR), (15.0, 5 * HOUR), (20.0, 3 * HOUR), (30.0, 1 * HOUR))


@outside(
    wait_by_table.wait_from_table,
    kind=Kind.LIBRARY,
    source="scipy.interpolate.interp1d on the logarithm",
)
@given(st.floats(10.0, 30.0))
def test_between_rows_it_goes_straight_in_the_logarithm(part_c: float) -> None:
    straight = interp1d([c for c, _ in SHEET], [math.log(s) for _, s in SHEET])
    found = wait(wait_by_table.wait_from_table(SHEET, part_c))
    assert found.seconds == pytest.approx(math.exp(straight(part_c)), rel=1e-9)
    assert not found.estimate
    assert found.low_s <= found.seconds <= found.high_s


@outside(
    wait_by_table.wait_from_table,
    kind=Kind.COPIED,
    source="UFGS 09971 3.7.1.3: 8 h at 11 C, 4 h at 21, 2 h at 31",
)
def test_a_table_that_halves_is_read_as_the_halving_rule() -> None:
    sheet = ((11.0, 8 * HOUR), (21.0, 4 * HOUR), (31.0, 2 * HOUR))
    for part_c in (11.0, 14.0, 21.0, 25.0, 31.0):
        by_rule = wait_by_rule.scaled_s(4 * HOUR, 21.0, part_c, 10.0)
        assert wait(wait_by_table.wait_from_table(sheet, part_c)).seconds == pytest.approx(by_rule)


@pytest.mark.parametrize(("part_c", "time_s"), SHEET)
def test_a_row_is_given_back_as_it_stands(part_c: float, time_s: float) -> None:
    for closes in (False, True):
        found = wait(wait_by_table.wait_from_table(SHEET, part_c, closes=closes))
        assert found == WaitTime(
            time_s, Certainty.KNOWN, *([time_s] * 3), f"the data sheet's table, {Said(part_c, 'C')}"
        )


def test_a_table_that_runs_the_wrong_way_is_read_carefully() -> None:
    odd = ((10.0, 1 * HOUR), (20.0, 3 * HOUR), (30.0, 2 * HOUR))
    assert wait(wait_by_table.wait_from_table(odd, 10.0)).seconds == 3 * HOUR
    assert wait(wait_by_table.wait_from_table(odd, 30.0, closes=True)).seconds == 1 * HOUR


def test_beyond_the_table_the_cautious_side_and_then_nothing() -> None:
    cold = wait(wait_by_table.wait_from_table(SHEET, 7.0))
    assert cold.estimate and cold.seconds > 8 * HOUR
    assert wait(wait_by_table.wait_from_table(SHEET, 7.0, closes=True)).seconds == 8 * HOUR
    warm = wait(wait_by_table.wait_from_table(SHEET, 34.0))
    assert warm.estimate and warm.seconds == 1 * HOUR
    assert wait(wait_by_table.wait_from_table(SHEET, 34.0, closes=True)).seconds < 1 * HOUR
    far = wait(wait_by_table.wait_from_table(SHEET, 4.9, closes=True))
    assert (far.seconds, far.certainty) == (8 * HOUR, Certainty.AT_MOST)
    for part_c in (4.9, 35.1):
        found = wait_by_table.wait_from_table(SHEET, part_c)
        assert isinstance(found, Outside)
        assert "from 10 C to 30 C" in plain(found.reason)


@given(st.floats(5.0, 45.0), st.floats(0.0, 5.0), st.booleans())
def test_a_table_is_monotone_through_its_edges(
    part_c: float, warmer_k: float, closes: bool
) -> None:
    if part_c + warmer_k > 35.0 and not closes:
        return
    cold = wait(wait_by_table.wait_from_table(SHEET, part_c, closes=closes))
    warm = wait(wait_by_table.wait_from_table(SHEET, part_c + warmer_k, closes=closes))
    assert warm.seconds <= cold.seconds * (1 + 1e-12)


HUMID_ROWS = (
    (15.0, 50.0, 2 * HOUR),
    (25.0, 50.0, 1 * HOUR),
    (15.0, 80.0, 5 * HOUR),
    (25.0, 80.0, 3 * HOUR),
)


HUMID = tuple(wait_by_table.HumidRow(*row) for row in HUMID_ROWS)


@outside(
    wait_by_table.wait_from_humid_table,
    kind=Kind.LIBRARY,
    source="scipy.interpolate.interp1d on the logarithm, in the damper column",
)
@given(st.floats(15.0, 25.0), st.floats(0.0, 100.0))
def test_between_columns_the_damper_one_counts(part_c: float, percent: float) -> None:
    found = wait_by_table.wait_from_humid_table(HUMID, part_c, percent)
    if percent > 80:
        assert isinstance(found, Outside)
        assert "to 80 %" in found.reason
        return
    column = 50.0 if percent <= 50 else 80.0
    rows = [(c, math.log(s)) for c, p, s in HUMID_ROWS if p == column]
    straight = interp1d(*zip(*rows, strict=True))
    assert wait(found).seconds == pytest.approx(math.exp(straight(part_c)), rel=1e-9)
    closes = wait(wait_by_table.wait_from_humid_table(HUMID, part_c, percent, closes=True))
    assert closes.seconds <= wait(found).seconds


@outside(
    flash_off.evaporation_in_moving_air,
    kind=Kind.DATA,
    source="ASHRAE Transactions 104 (1998) part 1A, abstract: W = (95 + 0.425 v)(pw - pa)/Y in "
    "inches of "
    "mercury, Btu and feet a minute",
)
@pytest.mark.parametrize(("air_m_s", "at_m_s"), [(0.0, 0.5), (0.1, 0.5), (1.0, 0.5), (2.0, 0.0)])
def test_evaporation_is_that_of_the_handbook_in_feet_and_inches(
    air_m_s: float, at_m_s: float
) -> None:
    today, sheet = (95 + 0.425 * v / 0.00508 for v in (air_m_s, at_m_s))  # 1 ft/min is 0.00508 m/s
    # Both forms print three digits: 0.089 and 0.0782, 95 and 0.425.
    assert flash_off.evaporation_in_moving_air(air_m_s, at_m_s) == pytest.approx(
        today / sheet, rel=0.005
    )


@given(st.floats(5, 40), st.floats(0, 100), st.floats(0, 2), st.floats(0, 30))
def test_still_or_damp_air_never_opens_sooner(
    air_c: float, percent: float, air_m_s: float, damper: float
) -> None:
    slow, quick = (
        flash_off.waterborne_flash_off_at(600.0, air_c, percent, speed_m_s=each)
        for each in (air_m_s / 2, air_m_s)
    )
    damp = flash_off.waterborne_flash_off_at(600.0, air_c, min(percent + damper, 100))
    plain = flash_off.waterborne_flash_off_at(600.0, air_c, percent)
    for longer, shorter in ((slow, quick), (damp, plain)):
        if isinstance(longer, WaitTime):
            assert wait(shorter).seconds <= longer.seconds * (1 + 1e-9)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: wait_by_rule.pot_life_at(-1, 21, 21), "time must be 0 s or more"),
        (lambda: wait_by_rule.recoat_opens_at(60, math.nan, 21), "data sheet must be a finite"),
        (lambda: wait_by_rule.recoat_closes_at(60, 21, math.inf), "temperature today"),
        (lambda: wait_by_rule.scaled_s(60, 21, 31, 0), "must be 1 K or more"),
        (lambda: wait_by_rule.scaled_s(60, 21, 3e5, 10), "temperature today must be 200 C or less"),
        (lambda: flash_off.flash_off_at(math.inf, 21, 21), "finite"),
        (lambda: flash_off.waterborne_flash_off_at(60, 20, 120), "humidity must be 100 % or less"),
        (lambda: wait_by_table.wait_from_table(((20, 60),), 20), "two rows or more"),
        (
            lambda: wait_by_table.wait_from_table(((20, 60), (20, 50)), 20),
            "must rise from row to row",
        ),
        (
            lambda: wait_by_table.wait_from_table(((20, 60), (30, 0)), 20),
            "time of the table must be",
        ),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says):
        call()
