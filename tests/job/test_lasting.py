"""What is not known is never a figure; colder or damper never opens earlier, warmer never closes later."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.job import lasting
from booth.job.lasting import Lasting
from booth.job.wait import State, standing
from booth.job.waits import alarms, waits
from booth.log import events as ev
from booth.log.events import WeatherRead
from booth.log.fold import fold
from booth.profile.model import AtTemperature, Limits, Profile, Range, WaitRule, Waits
from booth.trade.waits.flash_off import flash_off_at
from booth.trade.waits.wait_time import Certainty
from tests.job.make import at, mild, one_time, opened, profile, q, table
from tests.trade.said import plain

HOUR = 3600.0
#: More than rounding: a hundredth of a second in a day.
JUST = 1 + 1e-7


@st.composite
def rules(draw: st.DrawFn) -> WaitRule:
    """A time at a temperature or a table that falls in the warm, as ranges too, and with humidity."""
    temperatures = draw(st.lists(st.integers(0, 40), min_size=1, max_size=4, unique=True))
    shares = draw(st.lists(st.floats(0.4, 1.0), min_size=4, max_size=4))
    columns = draw(st.sampled_from(((None,), (None,), (40.0, 80.0))))
    if len(temperatures) == 1:
        columns = (None,)
    rows, seconds = [], draw(st.floats(60, 2e5))
    for at_c, share in zip(sorted(temperatures), shares, strict=False):
        seconds *= share
        for place, percent in enumerate(columns):
            low = seconds * (1 + place)
            rows.append(
                AtTemperature(float(at_c), low, low * 1.5 if share > 0.7 else None, percent)
            )
    return WaitRule(tuple(rows))


airs = st.builds(
    lambda air, humidity, part: mild(air=air, humidity=humidity, part=part),
    st.floats(-5, 48).map(lambda c: round(c, 1)),
    st.floats(5, 100).map(lambda p: round(p, 1)),
    st.floats(-5, 48).map(lambda c: round(c, 1)),
)
limits = st.sampled_from(
    (Limits(), Limits(Range(10, 30), Range(12, 35), Range(None, 80), 3.0), Limits(part_c=Range(15)))
)
products = st.builds(
    lambda rule, within, water: profile(
        waits=Waits(flash_off=rule, recoat_closes=rule), limits=within, waterborne=water
    ),
    rules(),
    limits,
    st.booleans(),
)


def worse(read: WeatherRead, colder: float, damper: float) -> list[WeatherRead]:
    """Colder in each way, and damper."""
    air, humidity, part = read.air.value, read.humidity.value, read.part.value
    return [
        mild(air=air - colder, humidity=humidity, part=part - colder),
        mild(air=air, humidity=humidity, part=part - colder),
        mild(air=air - colder, humidity=humidity, part=part),
        mild(air=air, humidity=min(humidity + damper, 100.0), part=part),
    ]


def opens(product: Profile, read: WeatherRead) -> Lasting:
    found = lasting.opens(product.waits.flash_off, product, read)
    assert found is not None
    return found


def closes(product: Profile, read: WeatherRead) -> Lasting:
    found = lasting.closes(product.waits.recoat_closes, product, read)
    assert found is not None and found.seconds is not None
    return found


@given(products, airs, st.floats(0.1, 8.0), st.floats(0, 40))
def test_colder_or_damper_never_opens_earlier(
    product: Profile, read: WeatherRead, colder: float, damper: float
) -> None:
    good = opens(product, read)
    for day in worse(read, colder, damper):
        bad = opens(product, day)
        if good.seconds is not None and bad.seconds is not None:
            assert bad.seconds * JUST >= good.seconds


@given(products, airs, st.floats(0.1, 8.0), st.floats(0, 40))
def test_warmer_or_drier_never_closes_later_and_never_after_the_sheet(
    product: Profile, read: WeatherRead, colder: float, damper: float
) -> None:
    rule = product.waits.recoat_closes
    assert rule is not None
    warm = closes(product, read).seconds or 0.0
    assert warm <= max(row.time_s for row in rule.rows) * JUST
    for day in worse(read, colder, damper):
        assert warm <= (closes(product, day).seconds or 0.0) * JUST


@given(products, airs)
def test_a_figure_comes_only_from_weather_within_the_limits(
    product: Profile, read: WeatherRead
) -> None:
    rule = product.waits.flash_off
    assert lasting.opens(rule, product, None) == lasting.not_known(lasting.NOT_READ)
    found = opens(product, read)
    if lasting.limits_missed(product, read):
        assert found.seconds is None
    assert (
        (found.seconds is None)
        == (found.certainty is Certainty.NOT_KNOWN)
        == bool(found.seconds is None and found.why)
    )


EDGES = (5.0, 10.0, 12.0, 15.0, 20.0, 25.0, 35.0, 40.0)


@pytest.mark.parametrize("edge", EDGES)
@pytest.mark.parametrize("waterborne", [False, True])
@pytest.mark.parametrize(
    "rule", [one_time(HOUR, 21.0), table((10, 2 * HOUR), (20, HOUR), (35, HOUR / 2))]
)
def test_at_every_edge_in_steps_of_a_tenth(edge: float, waterborne: bool, rule: WaitRule) -> None:
    within = Limits(part_c=Range(12.0, 35.0))
    for limit in (Limits(), within):
        product = profile(
            waits=Waits(flash_off=rule, recoat_closes=rule), limits=limit, waterborne=waterborne
        )
        before: tuple[float | None, float] | None = None
        for step in range(-10, 11):
            day = mild(air=edge + step / 10, part=edge + step / 10)
            now = (opens(product, day).seconds, closes(product, day).seconds or 0.0)
            if before is not None:
                if before[0] is not None and now[0] is not None:
                    assert now[0] <= before[0] * JUST
                assert now[1] <= before[1] * JUST
            before = now


@given(st.lists(airs, max_size=5), airs, st.floats(0, 3e5))
def test_later_readings_only_lengthen_an_opening_and_shorten_a_closing(
    later: list[WeatherRead], first: WeatherRead, now_s: float
) -> None:
    product = {"waits": Waits(flash_off=one_time(HOUR), recoat_closes=one_time(24 * HOUR))}
    events: list[ev.Event] = [opened(("door",), **product), first]
    events += [
        ev.CoatBegun(n=3, at=at(10), part="door", coat=1),
        ev.CoatEnded(n=4, at=at(60), part="door", coat=1),
    ]
    found = waits(fold(events))[0]
    for place, read in enumerate(later):
        # The reading of a later moment, as the log would number it.
        events.append(
            ev.WeatherRead(
                n=5 + place,
                at=at(120 + 600 * place),
                air=read.air,
                humidity=read.humidity,
                part=read.part,
            )
        )
        wait = waits(fold(events))[0]
        assert wait.closes_s is not None and found.closes_s is not None
        assert wait.closes_s <= found.closes_s
        if found.opens_s is None:
            assert wait.opens_s is None
        else:
            assert wait.opens_s is None or wait.opens_s >= found.opens_s
        found = wait
    job = fold(events)
    if found.opens_s is None:
        each = standing(found, at(60 + now_s))
        assert each.state in (State.UNKNOWN, State.CLOSING, State.LATE)
        assert not any(alarm.key.endswith(":ready") for alarm in alarms(job, at(60 + now_s)))


@pytest.mark.parametrize(
    ("day", "why"),
    [
        (None, "not read"),
        (mild(part=4.9, humidity=20.0), "outside 5 C to 40 C"),
        (mild(part=40.1), "outside 5 C to 40 C"),
    ],
)
def test_the_findings_shortest_waits_are_no_waits(day: WeatherRead | None, why: str) -> None:
    """8 min at 21 C was 29.8 min at 5.0 C and 8 min at 4.9 C."""
    product = profile(waits=Waits(flash_off=one_time(480.0, 21.0)))
    found = lasting.opens(product.waits.flash_off, product, day, flash_off_at)
    assert found is not None and found.seconds is None
    assert why in plain(found.why)
    cold = lasting.opens(
        product.waits.flash_off, product, mild(part=5.0, humidity=20.0), flash_off_at
    )
    # As it was found, to the digit.
    assert cold is not None and (cold.seconds or 0.0) / 60 == pytest.approx(29.8, abs=0.4)


def test_pot_life_in_the_heat_and_in_the_cold() -> None:
    """3 h at 21 C was 48.6 min at 40.0 C and 180 min at 40.1 C; and 4 h 17 at 9 C where 2 h is given."""
    product = profile()
    lives = [
        (lasting.pot_life(product, mild(air=c)) or Lasting(None, Certainty.NOT_KNOWN, "")).seconds
        for c in (9.0, 21.0, 40.0, 40.1)
    ]
    cold, given_s, hot, hotter = lives
    assert cold == given_s == 4 * HOUR
    assert hot is not None and hotter is not None and hotter < hot < 4 * HOUR / 3


def test_a_damp_day_makes_the_pot_life_of_a_polyurethane_no_more_than_a_bound() -> None:
    found = lasting.pot_life(profile(), mild(humidity=75.0))
    assert found is not None and found.certainty is Certainty.AT_MOST
    assert "polyurethane" in found.why


@pytest.mark.parametrize("kind", ["flash_off", "dust_free", "handle", "recoat_opens"])
def test_every_wait_of_a_waterborne_film_knows_the_damp(kind: str) -> None:
    """8 min stood as a fact at 30, 50 and 75 % beside a table that knows only temperature."""
    for rule in (one_time(480.0, 21.0), table((15, 600), (30, 400))):
        product = profile(waterborne=True, waits=Waits(**{kind: rule}))
        read: Callable[[float], Lasting | None] = lambda percent, rule=rule, product=product: (  # noqa: E731
            lasting.opens(rule, product, mild(humidity=percent))
        )
        dry, usual, damp = (read(percent) for percent in (30.0, 50.0, 75.0))
        assert dry is not None and usual is not None and damp is not None
        assert (dry.seconds or 0) == pytest.approx(usual.seconds or 0, rel=0.1)
        assert (damp.seconds or 0) > 2 * (usual.seconds or 0)
        assert damp.certainty is Certainty.ESTIMATED


def test_air_over_the_film_counts_where_it_is_said() -> None:
    product = profile(waterborne=True, waits=Waits(flash_off=one_time(480.0, 21.0)))
    still, said = mild(humidity=60.0), mild(humidity=60.0)
    slow = replace(still, air_speed=q(0.1, "m/s"))
    fan = replace(said, air_speed=q(1.0, "m/s"))
    times = [opens(product, each).seconds or 0.0 for each in (fan, said, slow)]
    assert times == sorted(times) and times[0] < times[2]


def test_until_a_sign_shows_no_clock_decides() -> None:
    product = profile(waits=Waits(flash_off=WaitRule((), "matt all over")))
    found = opens(product, mild())
    assert (found.seconds, found.why) == (None, "until matt all over")
