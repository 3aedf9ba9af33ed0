"""The alarm on the bench: it fills it, or is a strip; one after the other; what keys do meanwhile."""

from __future__ import annotations

import pytest

from booth.log.events import AlarmAcknowledged, CoatBegun, CoatEnded, StopwatchStarted
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench
from tests.screens.jobs import coated
from tests.screens.test_not_kept import full_disk

# Flash-off of the trial profile: 600 s.


def both_coated(clock: ManualClock) -> tuple[object, ...]:
    return (*coated(clock, "door", ago_s=30), *coated(clock, "hood"))


def blocks(at: AtApp) -> int:
    """Rows with something drawn in blocks."""
    return sum(any("▀" <= char <= "▟" for char in line) for line in at.lines)


async def test_it_fills_the_bench_and_space_leads_to_the_coat_that_it_calls_for() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
        await at.pass_time(600)
        assert at.lines[0].startswith(" hood: ready for coat 2 since") and blocks(at) >= 12
        assert at.key_line.split("Esc")[0].split() == ["Space", "to", "coat", "2:", "hood"]
        await at.pass_time(1)
        await at.press("space")
        # Whoever meant something else with Space has begun nothing.
        assert len(at.kept(CoatBegun)) == 1 and len(at.kept(AlarmAcknowledged)) == 1
        assert at.step == "coats" and "silences" not in at.text
        assert at.key_line.startswith(" Space  begin coat 2: hood")
        await at.press("space")
        assert [each.part for each in at.kept(CoatBegun)] == ["hood", "hood"]


async def test_where_the_part_is_in_front_of_the_painter_space_begins_its_coat() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock, parts=("door",)) as at:
        await at.pass_time(601)
        assert blocks(at) >= 12 and at.key_line.startswith(" Space  begin coat 2: door")
        await at.pass_time(1)
        await at.press("space")
        assert len(at.kept(CoatBegun)) == 2 and len(at.kept(AlarmAcknowledged)) == 1
        assert "SPRAYING" in at.words
        await at.press("space")
        assert len(at.kept(CoatEnded)) == 2


async def test_a_press_as_it_comes_up_is_not_counted_and_that_is_said() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock, parts=("door",)) as at:
        await at.pass_time(600)
        await at.press("space")
        assert len(at.kept(CoatBegun)) == 1 and at.kept(AlarmAcknowledged) == []
        assert "not counted" in at.words
        await at.pass_time(1)
        await at.press("space")
        assert len(at.kept(CoatBegun)) == 2


async def test_another_parts_alarm_does_not_change_which_coat_space_begins() -> None:
    clock = ManualClock()
    async with at_bench("coats", *both_coated(clock), clock=clock) as at:  # type: ignore[arg-type]
        await at.pass_time(575)
        await at.press("escape")  # the door is ready, and chosen
        assert at.key_line.startswith(" Space  begin coat 2: door")
        await at.pass_time(30)
        assert at.lines[0].startswith(" hood: ready") and "Coats and waits" in at.text
        assert at.key_line.startswith(" Space  begin coat 2: door  Esc  silence")
        await at.press("space")
        assert [each.part for each in at.kept(CoatBegun)][-1] == "door"


async def test_several_are_counted_and_walked_through_one_by_one() -> None:
    clock = ManualClock()
    async with at_bench("weather", *both_coated(clock), clock=clock) as at:  # type: ignore[arg-type]
        await at.pass_time(700)
        assert "1 of 2" in at.lines[0] and at.lines[0].startswith(" door:")
        await at.press("escape")
        assert len(at.kept(AlarmAcknowledged)) == 1
        assert at.lines[0].startswith(" hood:") and " of " not in at.lines[0]
        # The same glove again silences nothing that was not looked at.
        await at.press("escape")
        assert len(at.kept(AlarmAcknowledged)) == 1
        await at.pass_time(2)
        await at.press("pageup")
        assert len(at.kept(AlarmAcknowledged)) == 2 and "silences" not in at.text
        assert at.step == "weather"


async def test_enter_and_backspace_do_nothing_that_cannot_be_seen() -> None:
    clock = ManualClock()
    for key in ("enter", "backspace"):
        async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
            await at.pass_time(602)
            await at.press(key)
            job = at.app.jobs.current.job  # type: ignore[union-attr]
            assert isinstance(job.live[-1], AlarmAcknowledged) and len(job.live) == 5
            assert at.step == "weather" and "silences" not in at.text


async def test_it_is_a_strip_while_a_clock_runs_and_space_stops_the_clock() -> None:
    clock = ManualClock()
    async with at_bench("efflux", *coated(clock, "hood"), clock=clock) as at:
        await at.pass_time(590)
        await at.press("space")
        assert at.kept(StopwatchStarted)
        await at.pass_time(12)
        assert at.lines[0].startswith(" hood: ready for coat 2")
        assert blocks(at) >= 4 + 8, "the strip's letters, and the running figure beneath"
        assert at.key_line.startswith(" Space  stop at the first break  Esc  silence")
        await at.press("space")
        assert len(at.kept(CoatBegun)) == 1, "Space is the cup's"


async def test_it_is_a_strip_while_something_is_typed_and_what_is_typed_stays() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
        await at.pass_time(590)
        await at.type("7")
        await at.pass_time(12)
        assert at.lines[0].startswith(" hood: ready") and "Weather" in at.text
        await at.type("2")
        assert "72" in at.text
        await at.press("escape")
        assert "72" in at.text and len(at.kept(AlarmAcknowledged)) == 1


async def test_a_coat_that_is_being_sprayed_stays_in_sight() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood"), clock=clock, parts=("hood", "door")) as at:
        await at.pass_time(580)
        await at.press("down", "space")
        await at.pass_time(30)
        assert at.lines[0].startswith(" hood: ready") and "SPRAYING" in at.text
        await at.press("space")
        assert [each.part for each in at.kept(CoatEnded)] == ["hood", "door"]


async def test_the_rehearsal_is_the_real_thing_one_of_each_and_in_no_log() -> None:
    async with at_bench("weather") as at:
        await at.press("f8")
        heard = []
        for number in range(1, 5):
            assert f"{number} of 4" in at.lines[0] and "Rehearsal" in at.lines[0]
            assert blocks(at) >= 12
            heard.append(at.heard.sounds[-1])
            await at.pass_time(2)
            await at.press("escape")
        assert heard == ["go_on", "hurry", "too_late", "stop"]
        assert "Rehearsal" not in at.text and at.kept(AlarmAcknowledged) == []
        await at.press("f8")
        assert "1 of 4" in at.lines[0]
        await at.press("f8")
        assert "Rehearsal" not in at.text


async def test_what_is_real_comes_before_what_is_rehearsed() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
        await at.press("f8")
        await at.pass_time(601)
        assert at.lines[0].startswith(" hood: ready for coat 2")


async def test_what_is_typed_while_it_fills_the_bench_is_seen_at_once() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
        await at.pass_time(602)
        assert "Weather" not in at.text
        await at.type("72")
        assert at.lines[0].startswith(" hood: ready") and "72" in at.text
        await at.press("escape")
        assert "72" in at.text and len(at.kept(AlarmAcknowledged)) == 1


@pytest.mark.parametrize(("key", "foot"), [("f1", "Enter  back"), ("right", "Enter  take it")])
async def test_under_the_strip_the_keys_of_what_lies_over_the_bench_stay_in_sight(
    key: str, foot: str
) -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "hood"), clock=clock) as at:
        await at.press(key)
        assert foot in at.text
        await at.pass_time(601)
        assert at.lines[0].startswith(" hood: ready") and foot in at.text
        await at.press("escape")
        assert "silences" not in at.text and foot in at.text


async def test_what_came_since_the_last_look_is_not_silenced_unseen() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "hood"), clock=clock) as at:
        await at.press("f8")
        assert "Rehearsal" in at.lines[0]
        clock.advance(602)  # the hood rings by now, and nothing has shown it yet
        await at.press("escape")
        assert at.kept(AlarmAcknowledged) == []
        assert at.lines[0].startswith(" hood: ready for coat 2")


async def test_where_the_silencing_cannot_be_kept_space_does_nothing_else() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock, parts=("door",)) as at:
        await at.pass_time(601)
        await at.pass_time(1)
        with full_disk():
            await at.press("space")
            assert at.screen == "Sheet" and "NOT KEPT" in at.text
            await at.press("enter")
        assert len(at.kept(CoatBegun)) == 1 and at.kept(AlarmAcknowledged) == []
