"""Whether a compressor carries a gun: receiver, switch and rated duty. All values are invented."""

from __future__ import annotations

import msgspec
import pytest

from booth.job.air_supply import AirSupply, air_supply, seconds_words, verdict, wait_words
from booth.job.amiss import Cause
from booth.job.guard_gun import of_compressor
from booth.log.fold import fold
from booth.profile.model import Range
from booth.shop.model import Compressor, Gun, Shop
from booth.units import System
from tests.job.make import opened

GUN = Gun("clear gun", air_l_min=350, inlet_kpa=200)
SMALL = Compressor(50, 130, 600, 800)


def supply(compressor: Compressor = SMALL, gun: Gun = GUN, low: float = 200) -> AirSupply:
    found = air_supply(compressor, gun, Range(low, None), None)
    assert isinstance(found, AirSupply)
    return found


def test_the_receiver_has_to_hold_what_regulator_filter_and_hose_take_as_well() -> None:
    """50 l from 8 bar down to 3.5, not to the 2 of the inlet, by hand from Boyle's law."""
    found = supply()
    assert found.least_kpa == 350
    by_hand = 50 * (600 - 350) / 101.325 / (350 - 130) * 60
    assert found.hold.worst_s is not None
    assert found.hold.worst_s.likely == pytest.approx(by_hand)
    # A fast draw cools the air: 1.4 times sooner, and then down to a step of five seconds.
    assert found.spray_s == by_hand / 1.4 // 5 * 5 == 20
    assert found.full_s is not None and found.full_s > found.spray_s
    assert verdict(found, System.METRIC)[0] == (
        "Spray 20 s at most, then wait about 2 min (estimate)."
    )


def test_a_compressor_that_starts_too_low_stands_still_and_is_never_for_ever() -> None:
    """Cut-in 4 bar where 5 are needed: between 8 and 4 bar it does not run, whatever it delivers."""
    found = supply(Compressor(50, 500, 400, 800), low=400)
    assert not found.starts and found.hold.worst_s is not None
    first, why = verdict(found, System.METRIC)
    assert first.startswith("From a full receiver spray ") and first.endswith("at most, then stop.")
    assert "starts below 4.00 bar only" in why and "5.50 bar for 4.00 bar" in why


def test_a_compressor_that_keeps_up_does_so_within_its_rated_duty() -> None:
    large = Compressor(50, 500, 600, 800)
    (unrated,) = verdict(supply(large), System.METRIC)
    assert "runs 70 % of the time" in unrated and "not in the shop file" in unrated
    (rated,) = verdict(supply(Compressor(50, 500, 600, 800, 80.0)), System.METRIC)
    assert rated == "The pressure holds: the compressor runs 70 % of the time; it may 80 %."
    # Rated for half of the time, 500 l/min are 250.
    short = supply(Compressor(50, 500, 600, 800, 50.0))
    assert short.spray_s is not None
    assert short.trigger_share == pytest.approx(250 / 350)
    for each in (unrated, rated):
        assert "ever" not in each.replace("never", "")


def test_an_inlet_that_the_receiver_never_holds() -> None:
    (said,) = verdict(supply(low=700), System.METRIC)
    assert said.startswith(
        "The compressor stops at 8.00 bar, and the receiver has to hold 8.50 bar"
    )


def test_what_is_not_known_is_said() -> None:
    for known in ((None, GUN), (SMALL, None), (SMALL, Gun("bare"))):
        assert "add compressor and gun" in str(air_supply(*known, None, None))
    bare = Gun("bare", air_l_min=350)
    assert "read the inlet first" in str(air_supply(SMALL, bare, None, None))
    assert isinstance(air_supply(SMALL, bare, None, 200), AirSupply)


def test_less_time_and_longer_waits_rather_than_more() -> None:
    assert [seconds_words(each) for each in (0, 44, 89, 119, 250)] == [
        *("0 s", "44 s", "89 s", "1.5 min", "4 min")
    ]
    assert [wait_words(each) for each in (20, 31, 60, 65, 95)] == [
        *("about 20 s", "about a minute", "about a minute", "about 1.5 min", "about 2 min")
    ]


def test_the_guard_asks_the_same_with_the_rated_duty_in_it() -> None:
    """Of 400 l/min half of the time 200 are left for 350: it falls behind where it would keep up."""
    for duty, falls_behind in ((None, False), (50.0, True)):
        shop = Shop(guns=(GUN,), compressor=Compressor(20, 400, 600, 800, duty))
        job = msgspec.structs.replace(opened(), gun=GUN.name, shop=msgspec.to_builtins(shop))
        found = [each.cause for each in of_compressor(fold([job]))]
        assert found == ([Cause.COMPRESSOR] if falls_behind else [])
