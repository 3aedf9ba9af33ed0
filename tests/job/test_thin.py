"""Thinning from a job's own events: what is in the mix, what to add, when to stop."""

from __future__ import annotations

import math

import msgspec
import pytest

from booth.job.mixture import by_weight, now, points, stages
from booth.job.thin_advice import Finding, advise, coating_to_thicken_ml, temperature_doubt
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Efflux, Mix, MixPart, Range, Thinner
from tests.job.make import at, opened, q


def job(*events: ev.Event, **changes: object) -> Job:
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2)]
    return fold([opened(**changes), *numbered])


def batch(clear: float, hardener: float, thinner: float = 0.0, unit: str = "ml") -> ev.BatchMixed:
    pours = [ev.Pour("clear", q(clear, unit)), ev.Pour("hardener", q(hardener, unit))]
    if thinner:
        pours.append(ev.Pour("thinner", q(thinner, unit)))
    whole = clear + hardener + thinner
    return ev.BatchMixed(n=0, at=at(0), batch=1, pours=tuple(pours), total=q(whole, unit))


def run(seconds: float, cup: str = "ford-4", liquid_c: float | None = None) -> ev.EffluxTimed:
    liquid = None if liquid_c is None else q(liquid_c, "degC")
    return ev.EffluxTimed(n=0, at=at(1), cup=cup, seconds=seconds, liquid_temperature=liquid)


def added(amount: float, remaining: float | None = None) -> ev.ThinnerAdded:
    left = None if remaining is None else q(remaining, "ml")
    return ev.ThinnerAdded(n=0, at=at(2), amount=q(amount, "ml"), remaining=left)


def test_the_thinner_in_a_batch_by_volume_of_the_coating() -> None:
    stage = now(job(batch(400, 200, 60)))
    assert (stage.fraction, stage.known, stage.left_ml) == (pytest.approx(0.1), True, 660)


def test_a_batch_weighed_out_comes_to_the_same_by_its_densities() -> None:
    mix = Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.2)),
        thinner=Thinner("thinner", Range(10, 10), 15, 0.8, 0.8),
    )
    stage = now(job(batch(400, 240, 48, "g"), mix=mix))
    assert stage.left_ml == pytest.approx(660)
    assert stage.fraction == pytest.approx(0.1)


def test_thinner_goes_into_what_is_left() -> None:
    # 600 ml of coating; half is used; 30 ml into the 300 left are a tenth of it.
    stage = now(job(batch(400, 200), added(30, 300)))
    assert stage.fraction == pytest.approx(0.1)
    assert stage.left_ml == 330


def test_poured_onto_a_thinned_rest_both_count() -> None:
    first = batch(400, 200, 60)
    # 330 ml of rest hold 300 of coating and 30 of thinner; 300 of coating go on top.
    second = ev.BatchMixed(
        n=0,
        at=at(5),
        batch=2,
        onto=1,
        total=q(630, "ml"),
        pours=(ev.Pour("clear", q(200, "ml")), ev.Pour("hardener", q(100, "ml"))),
    )
    stage = now(job(first, second))
    assert stage.fraction == pytest.approx(30 / 600)
    assert stage.left_ml == pytest.approx(630)


def test_runs_belong_to_the_mix_in_which_they_were_timed() -> None:
    told = job(batch(400, 200), run(38), run(39), added(30, 600), run(27), run(10, "zahn-2"))
    assert [[each.seconds for each in stage.runs] for stage in stages(told)] == [
        [38, 39],
        [27, 10],
    ]
    # The Zahn run at 10 s lies outside its cup, so only one stage has a viscosity: by
    # ASTM D1200-94(2005) 11.2, 3.85 (38.5 - 4.49) = 130.94 mm2/s.
    (point,) = points(told)
    assert point.viscosity_mm2_s == pytest.approx(3.85 * (38.5 - 4.49))


def test_one_measurement_gives_a_band_and_its_cautious_end() -> None:
    advice = advise(job(batch(400, 200), run(38.5)))
    assert advice.finding is Finding.ADD and advice.fit is None
    assert advice.step is not None
    assert advice.step.step_ml == advice.step.add.low < advice.step.add.high
    # The logarithmic rule by hand: ln(nu/target)/ln(nu/thinner) of the whole is thinner.
    nu, target = 3.85 * (38.5 - 4.49), 3.85 * (22 - 4.49)
    share = math.log(nu / target) / math.log(nu / 0.8)
    assert advice.step.add.high == pytest.approx(600 * share / (1 - share))


def test_the_second_round_rests_on_this_mix_itself() -> None:
    told = job(batch(400, 200), run(38.5), added(30, 600), run(27.0))
    advice = advise(told)
    assert advice.finding is Finding.ADD and advice.fit is not None and advice.step is not None
    # The straight line through the two points, solved by hand.
    x = 30 / 630
    nu0, nu1, wanted = (3.85 * (s - 4.49) for s in (38.5, 27.0, 22.0))
    there = x * math.log(nu0 / wanted) / math.log(nu0 / nu1)
    assert advice.step.add.likely == pytest.approx(630 * (there - x) / (1 - there))
    assert 0 < advice.step.step_ml <= advice.step.add.likely


@pytest.mark.parametrize(
    ("seconds", "finding"),
    [
        (22.0, Finding.ON_TARGET),
        (20.0, Finding.ON_TARGET),
        (24.0, Finding.ON_TARGET),
        (19.0, Finding.TOO_THIN),
        (24.2, Finding.ADD),
        # Beyond what the cup converts its own seconds go on counting.
        (130.0, Finding.ADD_LITTLE),
    ],
)
def test_against_the_target(seconds: float, finding: Finding) -> None:
    assert advise(job(batch(400, 200), run(seconds))).finding is finding


def test_the_limit_stops_it() -> None:
    # 15 % of 600 ml of coating are 90 ml.
    assert advise(job(batch(400, 200), added(90, 600), run(30))).finding is Finding.LIMIT
    near = advise(job(batch(400, 200), run(90), added(85, 600), run(60)))
    assert near.finding is Finding.ADD and near.step is not None
    assert near.step.at_limit and near.step.step_ml == pytest.approx(5)


@pytest.mark.parametrize(
    ("changes", "finding"),
    [({"mix": None}, Finding.NO_THINNER), ({"efflux": None}, Finding.NO_TARGET)],
)
def test_where_the_profile_is_silent(changes: dict[str, object], finding: Finding) -> None:
    assert advise(job(run(38), **changes)).finding is finding


def test_what_was_not_timed_or_measured_is_asked_for() -> None:
    assert advise(job(batch(400, 200))).finding is Finding.NOT_TIMED
    assert advise(job(batch(400, 200), run(38), added(20, 600))).finding is Finding.NOT_TIMED
    assert advise(job(run(38))).finding is Finding.NO_AMOUNT
    assert advise(job(run(38)), 500.0).finding is Finding.ADD
    assert not now(job(run(38))).known


def test_a_mix_too_thin_is_brought_back_with_coating_by_its_own_line() -> None:
    told = job(batch(400, 200), run(38.5), added(30, 600), run(27), added(55, 630), run(19))
    assert advise(told).finding is Finding.TOO_THIN
    more = coating_to_thicken_ml(told, 685.0)
    # 85 ml of thinner are in 685; by the line of the first two points the share that gives 22 s.
    x = 30 / 630
    nu0, nu1, wanted = (3.85 * (s - 4.49) for s in (38.5, 27.0, 22.0))
    there = x * math.log(nu0 / wanted) / math.log(nu0 / nu1)
    assert more == pytest.approx(85 / there - 685)
    # Below 20 s the cup is not converted, so one reading above it is no line.
    assert (
        coating_to_thicken_ml(job(batch(400, 200), run(38), added(90, 600), run(19)), 690) is None
    )


def test_another_temperature_is_said() -> None:
    at_25 = Efflux("Ford #4", Range(20, 24), at_c=25.0)
    assert "colder" in temperature_doubt(job(batch(4, 2), run(38, liquid_c=18), efflux=at_25))
    assert temperature_doubt(job(batch(4, 2), run(38, liquid_c=24), efflux=at_25)) == ""
    drifted = job(batch(400, 200), run(38, liquid_c=18), added(20, 600), run(30, liquid_c=23))
    assert "one temperature" in temperature_doubt(drifted)


DIN = Efflux("DIN 4 mm", Range(17, 19), 20)


def test_refinish_seconds_are_thinned_in_the_same_cup_limit_and_warmth_first() -> None:
    """Below any conversion: 2.5 % of the coating that is left, then the cup again."""
    found = advise(job(batch(400, 200, 30), run(22, "din-4", 20.0), efflux=DIN), 315)
    assert found.finding is Finding.ADD_LITTLE and found.little is not None
    # 315 ml hold 300 of coating: 2.5 % of them.
    assert found.to_add_ml == pytest.approx(7.5)
    assert found.little.fraction_after == pytest.approx(0.075) and not found.little.at_limit
    # Up to the limit of 15 %, never past it; at it nothing more.
    near = advise(job(batch(400, 200, 84), run(22, "din-4"), efflux=DIN), 342)
    assert near.little is not None and near.little.at_limit
    assert near.little.fraction_after == pytest.approx(0.15)
    full = advise(job(batch(400, 200, 90), run(22, "din-4", 12.0), efflux=DIN))
    assert (full.finding, full.to_add_ml) == (Finding.LIMIT, None)
    cold = advise(job(batch(400, 200, 30), run(22, "din-4", 12.0), efflux=DIN))
    assert (cold.finding, cold.to_add_ml) == (Finding.TEMPERATURE, None)


def test_another_cup_that_does_not_convert_still_cannot_tell() -> None:
    found = advise(job(batch(400, 200), run(15, "zahn-2"), efflux=DIN), 300)
    assert found.finding is Finding.CANNOT_TELL and found.why


def test_more_than_the_limit_is_said_before_anything_else() -> None:
    # Not timed, and on its target: too much thinner is in it all the same.
    assert advise(job(batch(400, 200, 120))).finding is Finding.LIMIT
    assert advise(job(batch(400, 200, 120), run(22))).finding is Finding.LIMIT


def test_no_amount_where_the_temperature_has_to_be_mended_first() -> None:
    target = Efflux("Ford #4", Range(20, 24), 23)
    found = advise(job(batch(400, 200), run(38, "ford-4", 19.0), efflux=target), 600)
    assert (found.finding, found.to_add_ml) == (Finding.TEMPERATURE, None)


def test_once_anything_was_weighed_the_scale_is_remembered() -> None:
    assert not by_weight(job(batch(400, 200)))
    pour = ev.Poured(n=0, at=at(0), batch=1, name="clear", amount=q(100, "g"), wanted=q(200, "ml"))
    caught = ev.CatchMade(n=0, at=at(0), seconds=30, amount=q(80, "g"), delivery_ml_min=160)
    for event in (pour, caught, batch(400, 210, unit="g")):
        assert by_weight(job(event))
