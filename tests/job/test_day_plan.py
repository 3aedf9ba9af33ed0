"""A day before it begins, reckoned by hand; and what holds for any weather."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.job.day_plan import day_plan
from booth.profile.model import Film, Limits, Mix, MixPart, NextProduct, Profile, Range, Waits
from booth.profile.next_product import next_window
from booth.trade.waits.wait_time import Certainty
from tests.job.make import mild, one_time, profile

MINUTE, HOUR = 60.0, 3600.0


def product(key: str, coats: int = 1, **changes: object) -> Profile:
    given: dict[str, object] = {
        "key": key,
        "name": key,
        "mix": None,
        "film": Film(coats=Range(coats, coats)),
        "waits": Waits(flash_off=one_time(10 * MINUTE), recoat_opens=one_time(HOUR)),
    }
    return profile(**(given | changes))


PRIMER = product(
    "primer",
    2,
    waits=Waits(
        flash_off=one_time(15 * MINUTE),
        recoat_opens=one_time(HOUR),
        recoat_closes=one_time(24 * HOUR),
    ),
)
BASE = product("base")
CLEAR = product(
    "clear",
    2,
    mix=Mix((MixPart("clear", 2), MixPart("hardener", 1)), pot_life=one_time(3 * HOUR)),
    waits=Waits(flash_off=one_time(10 * MINUTE), handle=one_time(8 * HOUR)),
)


def test_three_products_on_two_parts_by_hand() -> None:
    plan = day_plan((PRIMER, BASE, CLEAR), mild(), ("left", "right"), 5 * MINUTE)
    assert plan.fits and plan.why == () and plan.guessed_s is None
    begins = {
        (each.part, each.what): (each.begins_s or 0) / MINUTE
        for each in plan.line
        if each.part and each.ends_s is not None
    }
    assert begins == {
        ("left", "primer, coat 1"): 0,
        ("right", "primer, coat 1"): 5,
        ("left", "primer, coat 2"): 20,
        ("right", "primer, coat 2"): 25,
        # An hour after each part's last coat of primer, not of the other's.
        ("left", "base, coat 1"): 85,
        ("right", "base, coat 1"): 90,
        ("left", "clear, coat 1"): 150,
        ("right", "clear, coat 1"): 155,
        ("left", "clear, coat 2"): 165,
        ("right", "clear, coat 2"): 170,
    }
    handled = [each.begins_s for each in plan.line if each.what == "can be handled"]
    assert handled == [170 * MINUTE + 8 * HOUR, 175 * MINUTE + 8 * HOUR]
    window = next(each for each in plan.waits if each.what == "next product: base")
    assert window.closes is not None and window.closes.seconds == 24 * HOUR


def test_below_the_limits_no_time_follows_what_is_not_known() -> None:
    cold = product("primer", 2, limits=Limits(part_c=Range(low=16.0)), waits=PRIMER.waits)
    plan = day_plan((cold, BASE), mild(part=14.0))
    assert not plan.fits
    assert any("part below the product's limit" in why for why in plan.why)
    first, *rest = [each for each in plan.line if each.part]
    assert first.begins_s == 0
    assert all(each.begins_s is None for each in rest)
    assert rest[0].what == "primer, coat 2", "a coat without a time is told all the same"
    opens = [each.opens for each in plan.waits if each.product == "primer" and each.opens]
    assert {each.certainty for each in opens} == {Certainty.NOT_KNOWN}


def test_without_weather_nothing_fits() -> None:
    plan = day_plan((PRIMER,), None)
    assert not plan.fits and "not read" in plan.why[0]


def test_near_the_dew_point_it_does_not_fit_though_no_limit_says_so() -> None:
    plan = day_plan((PRIMER,), mild(air=12.0, humidity=88.0, part=11.0))
    assert any("over the dew point" in why for why in plan.why)


def test_the_window_is_that_of_the_coming_product_else_of_any_else_the_recoat_window() -> None:
    """Where windows name others only there is none: another coating may lift what is under it."""
    mine, other, any_ = (
        NextProduct(name, opens=one_time(seconds))
        for name, seconds in (("Base", 1), ("wax", 2), ("", 3))
    )
    assert next_window(product("p", next_products=(other, any_, mine)), BASE) == mine
    assert next_window(product("p", next_products=(other, any_)), BASE) == any_
    assert next_window(product("p"), BASE) == NextProduct(opens=one_time(HOUR))
    assert next_window(product("p", next_products=(other,)), BASE) is None
    assert next_window(product("p", waits=Waits()), BASE) is None


@given(st.floats(6, 38), st.floats(10, 95), st.floats(0.1, 5))
def test_a_colder_day_is_never_over_sooner(part_c: float, percent: float, colder: float) -> None:
    days = [
        day_plan((PRIMER, BASE, CLEAR), mild(air=25.0, humidity=percent, part=each), ("a", "b"))
        for each in (part_c - colder, part_c)
    ]
    cold, warm = ([each.ends_s for each in day.line if each.part] for day in days)
    if None not in cold and None not in warm:
        for late, early in zip(sorted(cold), sorted(warm), strict=True):  # type: ignore[type-var]
            assert (late or 0) >= (early or 0) - 1e-6
