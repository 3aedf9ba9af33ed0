"""The thing itself played through: pots, panels, clocks, films, patterns, questions."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats
from scipy.integrate import solve_ivp

from booth.trade.delivery import water
from booth.trade.delivery.water import WaterPaintPair
from booth.trade.faults import ranked_causes
from booth.trade.faults.evidence import Evidence, Sign, read_sign
from booth.trade.faults.fault_table import FAULTS
from booth.trade.faults.questions import QUESTIONS
from booth.trade.film import film_thickness, gun_speed, wet_gauge
from booth.trade.mixing import mixed_batch
from booth.trade.mixing.mixed_batch import BatchAge
from booth.trade.pattern import pattern_reading
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import Estimate
from booth.trade.thinning import same_cup, thinner_share
from booth.trade.thinning.same_cup import NextStep
from booth.trade.ventilation import dilution
from booth.trade.ventilation.solvents import Solvent
from tests.trade.outside import Kind, outside


@outside(
    thinner_share.thinner_fraction_after,
    thinner_share.thinner_room_ml,
    kind=Kind.SIMULATION,
    source="a pot kept in two books, coating and thinner, with numpy: poured in, poured away",
)
@given(st.floats(200, 5000), st.floats(0.02, 0.4), st.floats(0.1, 0.9), st.floats(0.01, 0.3))
def test_a_pot_of_which_some_is_sprayed(
    coating_ml: float, thinned: float, kept: float, more: float
) -> None:
    pot = np.array([coating_ml, thinned * coating_ml])
    pot *= kept  # what is sprayed takes both along
    added_ml = more * pot[0]
    now = thinner_share.thinner_fraction_after(float(pot.sum()), thinned, added_ml)
    after = pot + np.array([0.0, added_ml])
    assert now == pytest.approx(after[1] / after[0], rel=1e-9)
    room = thinner_share.thinner_room_ml(float(pot.sum()), thinned, thinned + more)
    full = pot + np.array([0.0, room])
    assert full[1] / full[0] == pytest.approx(thinned + more, rel=1e-9)


@outside(
    film_thickness.film_in_all,
    kind=Kind.SIMULATION,
    source="films and solids drawn at random within what gauge and sheet allow, with numpy",
)
@pytest.mark.parametrize("seed", range(4))
def test_the_film_in_all_is_as_wide_as_the_films_that_may_be(seed: int) -> None:
    rng = np.random.default_rng(seed)
    lows, more, thinned = rng.uniform(40, 80, 3), rng.uniform(5, 30, 3), rng.uniform(0, 0.3, 3)
    coats = [
        film_thickness.WetCoat(*map(float, each))
        for each in zip(lows, lows + more, thinned, strict=True)
    ]
    found = film_thickness.film_in_all(coats, 0.40, 0.50)
    draws = 200_000
    wet = rng.uniform(lows, lows + more, (draws, 3)) * rng.choice([1.0], (draws, 3))
    solids = rng.uniform(0.40, 0.50, (draws, 1))
    films = (wet / (1.0 + thinned) * solids).sum(axis=1)
    assert found.low_um <= films.min() and films.max() <= found.high_um
    # Of 200,000 draws the extremes come within a tenth of the width of each end.
    width = found.high_um - found.low_um
    assert films.min() - found.low_um < 0.10 * width
    assert found.high_um - films.max() < 0.10 * width


@outside(
    film_thickness.coats_to_dry_film,
    kind=Kind.SIMULATION,
    source="coats laid one after the other, none wetter than allowed, until the film is there",
)
@given(
    st.floats(10, 300), st.floats(20, 200), st.floats(0.2, 0.9), st.floats(0, 0.4), st.floats(0, 40)
)
def test_coats_are_laid_until_the_film_is_there(
    wanted: float, wet_most: float, solids: float, thinned: float, so_far: float
) -> None:
    film, coats = so_far, 0
    while film < wanted - 1e-6:
        film += wet_most / (1.0 + thinned) * solids
        coats += 1
    assume(abs(film - wanted) > 1e-4 or coats == 0)  # a last coat that just reaches it is either
    plan = film_thickness.coats_to_dry_film(wanted, wet_most, solids, thinned, so_far)
    assert plan.coats == coats
    laid = so_far + coats * plan.wet_each_um / (1.0 + thinned) * solids
    assert laid == pytest.approx(max(wanted, so_far), rel=1e-9)
    assert plan.dry_each_um * coats == pytest.approx(max(0.0, wanted - so_far), rel=1e-9, abs=1e-9)


@outside(
    wet_gauge.film_between_teeth,
    kind=Kind.SIMULATION,
    source="a notch gauge set into films of every thickness: a tooth is wet where it reaches the "
    "film "
    "(ASTM D4414-95(2020) 7.1.2)",
)
@given(st.floats(0.5, 1400.0))
def test_a_gauge_in_a_film(film_um: float) -> None:
    teeth = np.array([*range(25, 501, 25), *range(550, 1501, 50)], float)
    wet = teeth <= film_um
    last = float(teeth[wet][-1]) if wet.any() else None
    first = float(teeth[~wet][0]) if (~wet).any() else None
    found = wet_gauge.film_between_teeth(last, first)
    assert found.low_um <= film_um < found.high_um
    assert found.low_um == (last or 0.0) and found.high_um == first


@outside(
    gun_speed.pitch_mm,
    kind=Kind.SIMULATION,
    source="places across a fan counted with numpy: the share that the pass before has painted",
)
@pytest.mark.parametrize("overlap", [0.0, 0.25, 0.5, 2 / 3, 0.9])
def test_the_overlap_is_the_share_painted_before(overlap: float) -> None:
    places = np.linspace(0.0, 250.0, 100_001)
    pitch = gun_speed.pitch_mm(250.0, overlap)
    before = places < 250.0 - pitch
    assert before.mean() == pytest.approx(overlap, abs=2e-5)  # one place of 100,001 either way


@outside(
    mixed_batch.pot_life_left_s,
    kind=Kind.SIMULATION,
    source="the clock run on, minute by minute, until the first of the batches is over",
)
@given(
    st.lists(st.tuples(st.integers(0, 300), st.integers(1, 300)), min_size=1, max_size=5),
)
def test_the_clock_runs_until_a_batch_is_over(batches: list[tuple[int, int]]) -> None:
    own = [BatchAge(60.0 * age, 60.0 * (age + left)) for age, left in batches]
    left_s = mixed_batch.pot_life_left_s(own)
    minutes = 0
    while all(each.age_s + 60.0 * minutes < each.pot_life_s for each in own):
        minutes += 1
    assert left_s == 60.0 * minutes


@outside(
    water.paint_from_water,
    kind=Kind.SIMULATION,
    source="a gun with a ratio of its own, caught with 5 % scatter, drawn with numpy; its median "
    "by numpy",
)
@pytest.mark.parametrize("pairs", [1, 3, 6])
def test_the_paint_of_a_gun_lies_in_the_estimate_as_often_as_is_said(pairs: int) -> None:
    rng = np.random.default_rng(pairs)
    held, rounds = 0, 400
    for _ in range(rounds):
        ratio, water_ml = rng.uniform(0.5, 0.9), rng.uniform(150, 200, pairs + 1)
        paint = ratio * water_ml * rng.normal(1.0, 0.05, pairs + 1)
        own = [
            WaterPaintPair(float(w), float(p)) for w, p in zip(water_ml[1:], paint[1:], strict=True)
        ]
        found = water.paint_from_water(float(water_ml[0]), own)
        assert isinstance(found, Estimate)
        middle = np.median(paint[1:] / water_ml[1:]) * water_ml[0]
        assert found.likely == pytest.approx(float(middle), rel=1e-9)
        # At least a tenth each way, and never narrower than what was seen.
        seen = paint[1:] / water_ml[1:] * water_ml[0]
        assert found.low == pytest.approx(min(0.9 * middle, seen.min()), rel=1e-9)
        assert found.high == pytest.approx(max(1.1 * middle, seen.max()), rel=1e-9)
        held += found.low <= paint[0] <= found.high
    # One more of n + 1 alike falls inside with (n - 1)/(n + 1); three standard deviations less.
    least = (pairs - 1) / (pairs + 1)
    assert held / rounds > least - 3 * math.sqrt(max(least * (1 - least), 0.01) / rounds)
    assert held / rounds > 0.75  # a tenth is one and a half deviations of two catches of 5 %


@outside(
    pattern_reading.seen_in_zones,
    kind=Kind.SIMULATION,
    source="drops drawn from scipy's distributions across a fan and counted in zones by numpy",
)
@pytest.mark.parametrize("count", [5, 7, 9])
@pytest.mark.parametrize(
    ("drops", "seen"),
    [
        (stats.uniform(-0.5, 1.0), Seen.EVEN),
        (stats.triang(0.5, -0.5, 1.0), Seen.EVEN),
        (stats.norm(0.0, 0.07), Seen.HEAVY_MIDDLE),
        (stats.beta(4, 1.5, -0.5, 1.0), Seen.HEAVY_ONE_END),
        (stats.beta(1.5, 4, -0.5, 1.0), Seen.HEAVY_ONE_END),
        (stats.beta(0.5, 0.5, -0.5, 1.0), Seen.HEAVY_BOTH_ENDS),
    ],
)
def test_a_pattern_of_drops_is_read_as_what_it_was_shot_as(
    drops: stats.rv_continuous, seen: Seen, count: int
) -> None:
    places = drops.rvs(50_000, random_state=11)
    heavy, _ = np.histogram(places, bins=count, range=(-0.5, 0.5))
    found = pattern_reading.seen_in_zones([9.0 * float(each) / heavy.max() for each in heavy])
    assert found is seen


@outside(
    same_cup.next_thinning_step,
    kind=Kind.SIMULATION,
    source="a mix whose seconds fall with thinner, thinned step by step as told (ln t over the "
    "share)",
)
@pytest.mark.parametrize("start_s", [19.5, 21.0, 24.0, 30.0])
@pytest.mark.parametrize("fall", [1.5, 2.5, 4.0])
@pytest.mark.parametrize("limit", [0.05, 0.10, 0.30])
def test_a_mix_thinned_as_told_comes_into_its_window_or_to_its_limit(
    start_s: float, fall: float, limit: float
) -> None:
    thinned, steps = 0.0, 0
    while True:
        seconds = start_s * math.exp(-fall * thinned)
        told = same_cup.next_thinning_step(seconds, 17.0, 19.0, thinned, limit)
        if told.step is not NextStep.ADD:
            break
        assert told.add_fraction > 0.0
        thinned += told.add_fraction
        steps += 1
        assert thinned <= limit + 1e-9, "past the limit"
        assert steps < 50
    if told.step is NextStep.SPRAY:
        assert 17.0 <= seconds <= 19.0
    else:  # never too thin: a step is smaller than the window
        assert told.step is NextStep.AT_LIMIT and seconds > 19.0 and limit - thinned < 0.002
    # No more than it takes: the step before was still too thick.
    if steps:
        assert start_s * math.exp(-fall * (thinned - 0.025)) > 19.0 * (1 - 1e-9) or thinned < 0.025


@outside(
    dilution.minimum_air,
    kind=Kind.SIMULATION,
    source="a well-mixed room filled with vapour and flushed, solved by scipy.integrate.solve_ivp",
)
@pytest.mark.parametrize("share", [0.25, 0.1])
def test_the_air_of_a_room_comes_to_rest_at_the_share_of_the_limit(share: float) -> None:
    liquid = Solvent("made up", 200.0, 1.2, "made up")
    found = dilution.minimum_air(150.0, 0.6, [(liquid, 1.0)], trigger_share=0.5, share_of_lel=share)
    vapour_m3_h = 0.150 * 0.6 * 200.0 / 1000.0 * 60.0
    room_m3 = 60.0

    def rate(_: float, held: np.ndarray) -> list[float]:
        # Vapour and fresh air push the mixture out.
        return [vapour_m3_h - (found.least.value + vapour_m3_h) * held[0] / room_m3]

    solved = solve_ivp(rate, (0.0, 50.0), [0.0], rtol=1e-9, atol=1e-12)
    assert 100.0 * solved.y[0][-1] / room_m3 == pytest.approx(share * 1.2, rel=1e-6)
    assert found.averaged.value == pytest.approx(found.least.value / 2)


@outside(
    read_sign,
    kind=Kind.THEOREM,
    source="order: a figure beyond its limit speaks for its sign, more the further; one within "
    "against",
)
@given(st.floats(20.0, 200.0), st.floats(0.0, 400.0), st.floats(0.0, 50.0))
def test_a_sign_is_beyond_its_limit_or_not(limit: float, wet_um: float, more: float) -> None:
    strengths = []
    for measured in (wet_um, wet_um + more):
        read = read_sign(Sign.WET_HIGH, Evidence(wet_um=measured, wet_high_um=limit))
        assert read is not None
        told, strength = read
        assert (told.measured, told.limit) == (measured, limit)
        assert (strength > 0.0) is (measured > limit) and strength <= 1.0
        strengths.append(strength)
    assert strengths[0] <= strengths[1]
    low = read_sign(Sign.WET_LOW, Evidence(wet_um=wet_um, wet_low_um=limit))
    assert low is not None and (low[1] > 0.0) is (wet_um < limit)


@outside(
    ranked_causes.next_question,
    kind=Kind.SIMULATION,
    source="a job with one true cause that answers every question by it: it comes first in the end",
)
@pytest.mark.parametrize("fault", sorted(FAULTS))
def test_questions_find_the_cause_that_answers_them(fault: str) -> None:
    keys = {cause.key for cause in FAULTS[fault].causes}
    for true in keys:
        answers: dict[str, str] = {}
        for _ in itertools.count():
            ranked = ranked_causes.rank_causes(fault, Evidence(), answers)
            question = ranked_causes.next_question(ranked, answers)
            if question is None:
                break
            assert question == QUESTIONS[question.key]
            way = question.speaks(true, "yes")
            # What asks of one other cause alone is not so here; what parts two others, nobody can
            # say.
            here = "cannot tell" if question.no else "no"
            answers[question.key] = {1: "yes", -1: "no"}.get(way, here)
        assert ranked[0].cause.key == true, (fault, true)
