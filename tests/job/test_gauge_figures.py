"""What the gauge and timed passes teach the job: speed, transfer efficiency, amounts."""

from __future__ import annotations

import math
from typing import Any

import msgspec
import pytest

from booth.job.material import area_of, plan_of, total_area_m2, wet_from_dry_um
from booth.job.measured import (
    amount_efficiency,
    basis_of,
    coat_on,
    implied_efficiency,
    readings_of,
    speed_mm_s,
    statistics_of,
    steady_passes,
    transfer_efficiency,
)
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Film, Gun, Mix, MixPart, Range, Thinner, Waits
from booth.trade.film.transfer_efficiency import CONVENTIONAL, HVLP_LARGE_PARTS, HVLP_SMALL_PARTS
from booth.trade.result import BadInput, Estimate, Outside
from tests.job.make import at, mild, one_time, opened, profile, q

HAND = ev.CatchMade(n=0, at=at(1), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
FAN = ev.FanSet(n=0, at=at(2), width=q(250, "mm"))
PASS = ev.PassTimed(n=0, at=at(3), length=q(1.2, "m"), seconds=3.0)
BEGUN = ev.CoatBegun(n=0, at=at(4), part="door", coat=1)
ENDED = ev.CoatEnded(n=0, at=at(60), part="door", coat=1)
# The worked balance of trade: 200 ml/min, 250 mm, 50 %, 400 mm/s; 40 to 50 um is 60 to 75 %.
READ = ev.FilmRead(
    n=0, at=at(61), part="door", coat=1, last_wetted=q(40, "um"), first_dry=q(50, "um")
)


def job(*events: ev.Event, **changes: object) -> Job:
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2)]
    return fold([opened(**changes), *numbered])


def test_speed_is_that_of_the_last_pass_and_of_those_before_it_that_agree() -> None:
    slow = ev.PassTimed(n=0, at=at(0), length=q(1.2, "m"), seconds=6.0)
    near = ev.PassTimed(n=0, at=at(1), length=q(2.4, "m"), seconds=6.2)
    assert speed_mm_s(job()) is None
    assert speed_mm_s(job(PASS)) == pytest.approx(400.0)
    found = job(slow, near, PASS)
    assert [each.seconds for each in steady_passes(found)] == [6.2, 3.0]
    assert speed_mm_s(found) == pytest.approx(3600.0 / 9.2)
    assert speed_mm_s(job(PASS, slow)) == pytest.approx(200.0)
    # A log edited by hand: a pass of no time is no pass.
    assert speed_mm_s(job(msgspec.structs.replace(PASS, seconds=0.0))) is None


def test_the_gauge_replaces_the_usual_band() -> None:
    found = job(HAND, FAN, PASS, BEGUN, ENDED, READ)
    implied = implied_efficiency(found, "door", 1)
    assert isinstance(implied, Estimate)
    assert (implied.low, implied.high) == pytest.approx((0.60, 0.75))
    band = transfer_efficiency(found)
    assert (band.low, band.likely, band.high) == pytest.approx((0.60, 0.675, 0.75))
    assert band.source == "from the gauge, coat 1 on door"


def test_without_readings_the_band_is_that_of_the_gun() -> None:
    assert transfer_efficiency(job()) == CONVENTIONAL
    hvlp = profile().gun
    assert transfer_efficiency(job(gun=msgspec.structs.replace(hvlp, hvlp=True))) == (
        HVLP_LARGE_PARTS
    )
    own = msgspec.structs.replace(
        opened(), gun="blue", shop={"guns": [{"name": "blue", "hvlp": True}]}
    )
    assert transfer_efficiency(fold([own]), large_flat_part=False) == HVLP_SMALL_PARTS
    for shop in ({"guns": "odd"}, {"guns": [3]}, {"guns": [{"name": "blue"}]}):
        assert transfer_efficiency(fold([msgspec.structs.replace(own, shop=shop)])) == CONVENTIONAL


def test_a_needle_turned_later_does_not_change_what_an_earlier_coat_implied() -> None:
    more = msgspec.structs.replace(HAND, delivery_ml_min=300.0, turns=q(2, "turns"))
    faster = msgspec.structs.replace(PASS, seconds=1.5)
    found = job(HAND, FAN, PASS, BEGUN, ENDED, READ, more, faster)
    assert transfer_efficiency(found).likely == pytest.approx(0.675)


WATER = msgspec.structs.replace(HAND, liquid="water")


@pytest.mark.parametrize(
    ("events", "missing"),
    [
        ((HAND, FAN, PASS, BEGUN), "No film of this coat"),
        ((FAN, PASS, BEGUN, READ), "not caught"),
        ((WATER, FAN, PASS, BEGUN, READ), "not caught"),
        ((HAND, PASS, BEGUN, READ), "fan was not measured"),
        ((HAND, FAN, BEGUN, READ), "No pass was timed"),
    ],
)
def test_what_is_missing_for_it_is_said(events: tuple[ev.Event, ...], missing: str) -> None:
    found = job(*events)
    implied = implied_efficiency(found, "door", 1)
    assert isinstance(implied, Outside) and missing in implied.reason
    assert transfer_efficiency(found) == CONVENTIONAL


def test_more_on_the_panel_than_left_the_gun_is_refused() -> None:
    thick = msgspec.structs.replace(READ, last_wetted=q(100, "um"), first_dry=q(125, "um"))
    found = job(HAND, FAN, PASS, BEGUN, thick)
    implied = implied_efficiency(found, "door", 1)
    assert isinstance(implied, Outside) and "left the gun" in implied.reason
    assert transfer_efficiency(found) == CONVENTIONAL


def test_no_tooth_wetted_gives_no_band_and_teeth_upside_down_are_passed_over() -> None:
    bare = msgspec.structs.replace(READ, last_wetted=q(0, "um"), first_dry=q(25, "um"))
    upside = msgspec.structs.replace(READ, last_wetted=q(50, "um"), first_dry=q(40, "um"))
    found = job(HAND, FAN, PASS, BEGUN, bare, upside)
    assert len(readings_of(found, "door", 1)) == 1
    stats = statistics_of(readings_of(found, "door", 1))
    assert stats is not None and (stats.mean.low_um, stats.mean.high_um) == (0.0, 25.0)
    assert transfer_efficiency(found) == CONVENTIONAL


def test_readings_belong_to_a_coat_on_a_part() -> None:
    other = msgspec.structs.replace(READ, part="hood")
    found = job(BEGUN, ENDED, READ, other)
    assert [read.part for read in readings_of(found, "door", 1)] == ["door"]
    assert coat_on(found, "door") == 1 and coat_on(found, "hood") is None


def test_the_pace_rests_on_the_jobs_own_figures() -> None:
    basis, missing = basis_of(job(HAND, FAN))
    assert basis is not None and not missing
    assert (basis.delivery_from, basis.fan_from) == ("caught with paint", "measured")
    # 200 ml/min over 250 mm at 50 %: 400 mm/s lays 43.33 um at 65 % (trade.speed's example), so
    # 20 to 50 % lays it at 123 to 308 mm/s: both ends in proportion.
    speed = basis.speed_for(43.333333)
    assert speed is not None
    assert (speed.low, speed.high) == pytest.approx((400 * 0.20 / 0.65, 400 * 0.50 / 0.65))
    film = basis.film_at(speed.likely)
    assert film is not None and film.likely == pytest.approx(43.333333)
    assert basis.speed_for(0.0) is None and basis.film_at(0.0) is None


def test_what_the_pace_still_needs_is_named_and_may_be_typed() -> None:
    bare = job(gun=Gun())
    assert basis_of(bare) == (
        None,
        ("the delivery (step Catch)", "the width of the fan (step Fan)"),
    )
    basis, missing = basis_of(bare, delivery=180.0, fan=200.0)
    assert basis is not None and not missing and basis.fan_from == "as typed"
    assert basis_of(bare, delivery=0.0, fan=200.0)[1] == ("the delivery (step Catch)",)


@pytest.mark.parametrize(
    ("shape", "mm", "sides", "ends", "square_m"),
    [
        # Rectangles and their sums (Euclid); discs and cylinders (Archimedes).
        ("rectangle", {"length": 2000, "width": 500}, 2, 0, 2.0),
        ("sheet", {"length": 2000, "width": 800, "thickness": 40}, 1, 0, 3.424),
        ("circle", {"diameter": 1000}, 1, 0, math.pi / 4),
        ("cylinder", {"diameter": 100, "length": 1000}, 1, 2, math.pi * 0.1 + math.pi * 0.005),
        ("box", {"length": 1000, "width": 1000, "height": 1000}, 1, 0, 6.0),
    ],
)
def test_areas_by_form(
    shape: str, mm: dict[str, float], sides: int, ends: int, square_m: float
) -> None:
    assert area_of(shape, mm, sides, ends) == pytest.approx(square_m)


def test_a_form_that_does_not_exist_is_refused() -> None:
    with pytest.raises(BadInput):
        area_of("cone", {})


AREA = ev.AreaAdded(n=0, at=at(5), shape="area", area=q(2.0, "m2"))


def wanted(**changes: object) -> dict[str, Any]:
    given: dict[str, object] = {
        "area_m2": 2.0,
        "coats": 2,
        "wet_um": 50.0,
        "large": True,
        "lost": 0.0,
        "left_ml": 0.0,
        "ample": True,
        "cup_ml": 600.0,
    }
    return {**given, **changes}


def test_material_cups_and_time() -> None:
    found = job(HAND, AREA, AREA)
    assert total_area_m2(found) == pytest.approx(4.0)
    # 1 um over 1 m2 is 1 ml: 200 ml must land; of what leaves the gun 20, 30, 50 % does.
    plan = plan_of(found, **wanted())
    assert (plan.need.low, plan.need.likely, plan.need.high) == pytest.approx((400, 2000 / 3, 1000))
    assert plan.mix_ml == pytest.approx(1000) and plan.cups.cups == 2
    assert plan.cups.last_ml == pytest.approx(400)
    assert plan.gun_s == pytest.approx(300.0)  # 1000 ml at 200 ml/min
    assert plan_of(found, **wanted(ample=False)).mix_ml == pytest.approx(2000 / 3)


def test_pot_life_is_held_against_gun_and_waits() -> None:
    plan = plan_of(job(mild(), HAND, AREA), **wanted())
    # Without weather no wait is known, and so no end of the job.
    assert plan_of(job(HAND, AREA), **wanted()).covered is None
    # Flash-off 600 s between two coats, 300 s at the trigger, twice that with turns and refills (common
    # practice, no source); pot life 4 h.
    assert plan.span == pytest.approx((600 + 2 * 300,) * 2) and plan.covered is True
    slow = Waits(flash_off=one_time(5 * 3600))
    assert plan_of(job(mild(), HAND, AREA, waits=slow), **wanted()).covered is False
    assert plan_of(job(mild(), HAND, AREA, waits=Waits()), **wanted()).covered is None
    assert plan_of(job(HAND, AREA, waits=Waits()), **wanted(coats=1)).covered is True
    assert plan_of(job(AREA, gun=Gun()), **wanted()).span is None


def test_a_dry_film_becomes_wet_through_solids_and_thinner() -> None:
    # Organic Finishing Guidebook 2012-13 p. 615: 4 mil wet, 50 % solids, 25 % thinner: 1.6 mil dry.
    mix = Mix((MixPart("paint", 1),), thinner=Thinner("thinner", Range(25.0, 25.0)))
    found = job(film=Film(coats=Range(1, 1), volume_solids_percent=Range(50, 50)), mix=mix)
    assert wet_from_dry_um(found, 1.6 * 25.4, 1) == pytest.approx(4 * 25.4)
    assert wet_from_dry_um(found, 2 * 1.6 * 25.4, 2) == pytest.approx(4 * 25.4)
    # Of a range of solids the middle; the least, where it has to be enough: 1.6 mil x 1.25 / 0.4 is 5 mil.
    spread = Film(coats=Range(1, 1), volume_solids_percent=Range(40, 60))
    found = job(film=spread, mix=mix)
    assert wet_from_dry_um(found, 1.6 * 25.4, 1) == pytest.approx(4 * 25.4)
    assert wet_from_dry_um(found, 1.6 * 25.4, 1, ample=True) == pytest.approx(5 * 25.4)
    bare = Film(coats=Range(1, 1), wet_um=Range(40, 60))
    assert wet_from_dry_um(job(film=bare), 40.0, 1) is None


def test_an_hvlp_profile_does_not_make_a_conventional_gun_of_the_shop_one() -> None:
    hvlp = msgspec.structs.replace(profile().gun, hvlp=True)
    plain = msgspec.structs.replace(
        opened(gun=hvlp),
        gun="blue",
        shop={"guns": [{"name": "blue"}, {"name": "red", "hvlp": True}]},
    )
    assert transfer_efficiency(fold([plain])) == CONVENTIONAL
    red = msgspec.structs.replace(plain, gun="red")
    assert transfer_efficiency(fold([red])) == HVLP_LARGE_PARTS


def test_pace_takes_the_kind_of_parts_that_amount_was_told() -> None:
    hvlp = msgspec.structs.replace(profile().gun, hvlp=True)
    small = ev.AmountPlanned(n=0, at=at(0), area=q(1, "m2"), amount=q(300, "ml"), lands="small")
    large = msgspec.structs.replace(small, lands="large")
    assert transfer_efficiency(job(small, gun=hvlp)) == HVLP_SMALL_PARTS
    assert transfer_efficiency(job(small, large, gun=hvlp)) == HVLP_LARGE_PARTS
    early = msgspec.structs.replace(small, lands="")
    assert transfer_efficiency(job(early, gun=hvlp)) == HVLP_LARGE_PARTS


def test_a_reading_on_a_panel_teaches_the_pace_and_not_the_amount_of_small_parts() -> None:
    """Past the edges of a frame more is lost than in the middle of a panel: it would mix too little."""
    found = job(HAND, FAN, PASS, BEGUN, ENDED, READ)
    assert transfer_efficiency(found, False).likely == pytest.approx(0.675)
    assert amount_efficiency(found, True).likely == pytest.approx(0.675)
    assert amount_efficiency(found, False) == CONVENTIONAL
