"""The clock: the rules of three clocks, the rate, the stamps, the machine's own clocks."""

from __future__ import annotations

import math
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth import clock as clock_module
from booth.clock import (
    BadRate,
    MachineClock,
    Sources,
    local_date,
    local_day_hhmm,
    local_hhmm,
    local_hhmmss,
    machine_sources,
    rate_from,
)
from booth.clock_reading import ClockChange, Reading, notice, to_next
from booth.moment import Basis, Moment, elapsed
from tests.manual_clock import ManualClock

seconds = st.floats(0, 1e6)


class Machine:
    """Clocks that a test moves, as MachineClock's sources."""

    def __init__(self) -> None:
        self.wall, self.continuous, self.monotonic, self.stamp = 1_750_000_000.0, 500.0, 400.0, 70.0

    def pass_(self, seconds: float) -> None:
        self.wall += seconds
        self.continuous += seconds
        self.monotonic += seconds
        self.stamp += seconds

    def sources(self) -> Sources:
        return Sources(
            lambda: self.wall,
            lambda: self.continuous,
            lambda: self.monotonic,
            lambda: self.stamp,
            "this boot",
        )


@given(seconds, seconds, st.floats(-1e6, 1e6))
def test_notice_tells_sleep_and_steps_apart(passed: float, slept: float, stepped: float) -> None:
    clock = ManualClock()
    before = clock.reading()
    clock.advance(passed)
    clock.sleep(slept)
    clock.step_wall(stepped)
    change = notice(before, clock.reading())
    # 1e-3: wall seconds are about 2e9, where a double steps by 2.4e-7, a few times over.
    if slept < 0.499 and abs(stepped) < 0.499:
        assert change is None
    elif slept > 0.501 or abs(stepped) > 0.501:
        assert change is not None
        if slept > 0.501:
            assert change.slept_s == pytest.approx(slept, abs=1e-3)
        if slept < 0.499:
            assert change.slept_s == 0
        if abs(stepped) > 0.501:
            assert change.stepped_s == pytest.approx(stepped, abs=1e-3)
        if abs(stepped) < 0.499:
            assert change.stepped_s == 0


def test_notice_says_nothing_while_nothing_happens() -> None:
    assert notice(Reading(100, 50, 40), Reading(101, 51, 41)) is None
    assert notice(Reading(100, 50, 40), Reading(400, 350, 41)) == ClockChange(299, 0)
    assert notice(Reading(100, 50, 40), Reading(3701, 51, 41)) == ClockChange(0, 3600)
    assert notice(Reading(100, 50, 40), Reading(101 - 3600, 51, 41)) == ClockChange(0, -3600)


def test_a_wait_is_right_through_sleep_step_and_reboot() -> None:
    clock = ManualClock()
    start = clock.now()
    clock.advance(100)
    clock.sleep(300)
    clock.step_wall(-3600)
    assert elapsed(start, clock.now()) == elapsed(
        start, Moment(0, start.continuous + 400, "boot 1")
    )
    assert elapsed(start, clock.now()).seconds == 400
    clock.step_wall(3600)
    clock.reboot(off_s=60, up_s=30)
    after = elapsed(start, clock.now())
    assert (after.seconds, after.basis) == (490, Basis.WALL)
    assert notice(clock.reading(), clock.reading()) is None


def test_a_press_is_dated_by_its_age() -> None:
    machine = Machine()
    clock = MachineClock(machine.sources(), {})
    pressed, stamp = clock.now(), machine.stamp
    machine.pass_(0.75)
    assert clock.at(stamp) == pressed
    assert clock.at(machine.stamp) == clock.now()


@pytest.mark.parametrize("stamp", [1e12, math.nan, math.inf, -math.inf])
def test_a_stamp_that_is_no_past_reading_counts_as_now(stamp: float) -> None:
    clock = MachineClock(Machine().sources(), {})
    assert clock.at(stamp) == clock.now()


def test_a_press_is_dated_by_its_age_at_a_rate() -> None:
    machine = Machine()
    clock = MachineClock(machine.sources(), {"BOOTH_CLOCK_RATE": "60"})
    pressed, stamp = clock.now(), machine.stamp
    machine.pass_(2)
    assert clock.at(stamp).continuous == pytest.approx(pressed.continuous, abs=1e-6)
    assert elapsed(pressed, clock.now()).seconds == pytest.approx(120, abs=1e-6)


def test_the_rate_speeds_all_three_clocks_and_invents_no_change() -> None:
    machine = Machine()
    clock = MachineClock(machine.sources(), {"BOOTH_CLOCK_RATE": "60"})
    before = clock.reading()
    assert before == Reading(machine.wall, machine.continuous, machine.monotonic * 60)
    machine.pass_(10)
    now = clock.reading()
    assert now.wall - before.wall == pytest.approx(600, abs=1e-5)
    assert now.continuous - before.continuous == pytest.approx(600)
    assert notice(before, now) is None
    machine.wall += 5
    change = notice(now, clock.reading())
    assert change is not None and change.slept_s == 0 and change.stepped_s == pytest.approx(5)


def test_programs_that_share_an_anchor_agree() -> None:
    machine = Machine()
    setting = {"BOOTH_CLOCK_RATE": "60@500"}
    first = MachineClock(machine.sources(), setting)
    machine.pass_(7)
    second = MachineClock(machine.sources(), setting)
    assert first.now() == second.now()
    assert second.now().continuous == 500 + 7 * 60
    alone = MachineClock(machine.sources(), {"BOOTH_CLOCK_RATE": "60"})
    assert alone.now().continuous == 507


@pytest.mark.parametrize(
    "typed", ["fast", "0", "-1", "nan", "inf", "1e9", "60@", "60@soon", "60@nan", "@5", "60@1@2"]
)
def test_a_bad_rate_is_refused_with_a_sentence(typed: str) -> None:
    with pytest.raises(BadRate, match="expected a number above 0"):
        rate_from({"BOOTH_CLOCK_RATE": typed}, 0.0)


@pytest.mark.parametrize("typed", ["", "  ", None])
def test_without_a_setting_time_runs_at_its_own_pace(typed: str | None) -> None:
    assert rate_from({} if typed is None else {"BOOTH_CLOCK_RATE": typed}, 5.0)[0] == 1


@given(st.floats(0, 4e9), st.sampled_from([0.1, 1.0, 60.0]), st.sampled_from([1.0, 60.0]))
def test_the_next_whole_second_is_reached(wall: float, step_s: float, rate: float) -> None:
    real_s = to_next(wall, step_s, rate)
    assert 0 < real_s * rate <= step_s * 1.06
    there = wall + real_s * rate
    # 1e-6: a double near 4e9 steps by 4.8e-7.
    assert abs(there / step_s - round(there / step_s)) * step_s < 2e-6


def test_a_tick_that_fires_early_is_not_followed_by_another_at_once() -> None:
    assert to_next(99.999) == pytest.approx(1.001)
    assert to_next(100.25) == pytest.approx(0.75)


def test_a_lid_closed_between_two_of_the_readings_is_read_again() -> None:
    machine = Machine()
    walls = iter([machine.wall])

    def wall() -> float:
        if next(walls, None) is not None:  # the first time, the lid closes just after
            read = machine.wall
            machine.wall += 300
            machine.continuous += 300
            return read
        return machine.wall

    sources = machine.sources()
    clock = MachineClock(
        Sources(wall, sources.continuous, sources.monotonic, sources.stamp, "this boot"), {}
    )
    before = Reading(machine.wall, machine.continuous, machine.monotonic)
    assert notice(before, clock.reading()) == ClockChange(300, 0)


def test_the_manual_clock_dates_presses_late_handled() -> None:
    clock = ManualClock()
    pressed = clock.now()
    clock.advance(0.25)
    clock.key_age_s = 0.25
    assert clock.at(time.monotonic()) == pressed


def test_the_machine_clock_agrees_with_the_machine() -> None:
    clock = MachineClock(environment={})
    first, one = time.time(), clock.now()
    two, last = clock.now(), time.time()
    assert first <= one.wall <= two.wall <= last
    assert one.continuous <= two.continuous
    assert one.boot and one.boot == MachineClock(environment={}).now().boot
    # One second: the clocks may be slewed and the machine busy, but no lid closes in a test run.
    assert notice(clock.reading(), clock.reading(), tolerance_s=1.0) is None


def test_stamps_are_of_the_clock_that_textual_stamps_with() -> None:
    textual_time = pytest.importorskip("textual._time")
    before = textual_time.get_time()
    stamp = machine_sources().stamp()
    assert before <= stamp <= textual_time.get_time()


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="names of Linux")
def test_on_linux_the_kernel_names_the_boot_and_counts_sleep() -> None:
    sources = machine_sources()
    assert sources.boot == Path("/proc/sys/kernel/random/boot_id").read_text().strip()
    uptime_s = float(Path("/proc/uptime").read_text().split()[0])  # counts sleep: proc(5)
    assert sources.continuous() >= uptime_s - 0.01
    assert sources.continuous() - uptime_s < 60


def test_without_a_name_a_boot_is_named_by_its_start() -> None:
    name = clock_module._boot_by_start
    assert name(1_750_000_000.0, 500.0) == name(1_750_000_100.5, 600.0)
    assert name(1_750_000_000.0, 500.0) != name(1_750_000_000.0, 320.0)


ASK = "from booth.clock import MachineClock; print(MachineClock().now().continuous)"


def test_two_programs_agree_through_the_environment() -> None:
    anchor = machine_sources().continuous()
    environment = {**os.environ, "BOOTH_CLOCK_RATE": f"1000@{anchor}"}
    here = MachineClock(environment=environment)
    before = here.now().continuous
    said = subprocess.run(
        [sys.executable, "-c", ASK], env=environment, capture_output=True, text=True, check=True
    )
    assert before <= float(said.stdout) <= here.now().continuous


@pytest.mark.parametrize(
    ("now", "then", "said"),
    [
        ("2025-06-15 18:00", "2025-06-15 23:59", "23:59"),
        ("2025-06-15 18:00", "2025-06-16 05:42", "tomorrow 05:42"),
        ("2025-06-15 18:00", "2025-06-14 05:42", "yesterday 05:42"),
        ("2025-06-15 18:00", "2025-06-17 05:42", "2025-06-17 05:42"),
        # The night of 26 October 2025 had 25 hours in central Europe, that of 30 March 23.
        ("2025-10-26 00:10", "2025-10-26 23:50", "23:50"),
        ("2025-10-26 00:10", "2025-10-27 00:05", "tomorrow 00:05"),
        ("2025-03-29 23:50", "2025-03-30 23:55", "tomorrow 23:55"),
    ],
)
def test_another_day_is_named(
    monkeypatch: pytest.MonkeyPatch, now: str, then: str, said: str
) -> None:
    monkeypatch.setenv("TZ", "CET-1CEST,M3.5.0,M10.5.0/3")
    time.tzset()
    try:
        walls = [time.mktime(time.strptime(each, "%Y-%m-%d %H:%M")) for each in (then, now)]
        moment, at = (Moment(wall, 0.0, "") for wall in walls)
        assert local_day_hhmm(moment, at) == said
        assert local_day_hhmm(Moment(1e300, 0.0, ""), at) == "---------- --:--"
    finally:
        monkeypatch.undo()
        time.tzset()


def test_local_times_follow_the_zone(monkeypatch: pytest.MonkeyPatch) -> None:
    if not hasattr(time, "tzset"):
        pytest.skip("this platform cannot change its zone at run time")
    moment = Moment(1_750_000_000.0, 0, "boot")  # 2025-06-15 15:06:40 UTC, by `date -u -d @…`
    try:
        monkeypatch.setenv("TZ", "UTC0")
        time.tzset()
        assert (local_date(moment), local_hhmm(moment)) == ("2025-06-15", "15:06")
        monkeypatch.setenv("TZ", "XST-10")
        time.tzset()
        assert (local_date(moment), local_hhmmss(moment)) == ("2025-06-16", "01:06:40")
    finally:
        monkeypatch.undo()
        time.tzset()


@pytest.mark.parametrize("wall", [1e300, -1e300, math.nan, math.inf, 1e13])
def test_a_wild_time_in_a_damaged_file_is_shown_as_unknown(wall: float) -> None:
    assert local_hhmm(Moment(wall, 0, "")) == "--:--"
    assert local_date(Moment(wall, 0, "")) == "----------"
