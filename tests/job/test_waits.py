"""Where a wait stands at a given now, and what rings. Hours pass in no time: now is handed in."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.job.coating import NotPossible, begin_coat, end_coat
from booth.job.wait import State, What
from booth.job.waits import alarms, standings, waits
from booth.log import events as ev
from booth.log.fold import fold
from booth.moment import Basis, Moment
from booth.profile.model import Film, Mix, MixPart, NextProduct, Range, WaitRule, Waits
from booth.words.wait_words import clock_words, row_words, state_word, time_words, what_words
from tests.job.make import START, at, mild, one_time, opened, q, table
from tests.manual_clock import ManualClock


def coated(
    *times: tuple[float, float], part: str = "door", part_c: float = 21.0, **changes: object
) -> list[ev.Event]:
    """A job in which `part` got coats from-to these seconds, in mild weather."""
    events: list[ev.Event] = [opened(**changes), mild(part=part_c)]
    for number, (begun, ended) in enumerate(times, 1):
        events.append(ev.CoatBegun(n=len(events) + 1, at=at(begun), part=part, coat=number))
        events.append(ev.CoatEnded(n=len(events) + 1, at=at(ended), part=part, coat=number))
    return events


def test_flash_off_starts_at_the_end_of_the_coat_and_nobody_starts_it() -> None:
    job = fold(coated((0, 60)))
    (wait,) = waits(job)
    assert (wait.start, wait.opens_s) == (at(60), 600)
    assert standings(job, at(61))[0].state is State.WAIT
    assert standings(job, at(659.9))[0].state is State.WAIT
    assert standings(job, at(660))[0].state is State.READY


def test_states_follow_one_another_and_the_window_closes_a_day_later() -> None:
    job = fold(coated((0, 60)))
    day = 60 + 24 * 3600
    # The closing is the last fifth of the window, at most half an hour.
    assert standings(job, at(day - 1801))[0].state is State.READY
    assert standings(job, at(day - 1799))[0].state is State.CLOSING
    late = standings(job, at(day + 5))[0]
    assert (late.state, late.past_s) == (State.LATE, 5.0)


def test_a_short_window_closes_in_its_last_fifth() -> None:
    rules = Waits(flash_off=one_time(600), recoat_closes=one_time(1600))
    job = fold(coated((0, 0), waits=rules))
    assert standings(job, at(1399))[0].state is State.READY
    assert standings(job, at(1401))[0].state is State.CLOSING


RULES = Waits(flash_off=one_time(900), recoat_opens=one_time(3600), recoat_closes=one_time(86400))


def test_between_coats_it_is_the_flash_off_and_the_window_is_for_the_next_product() -> None:
    """15 min between coats and topcoat after 60 min: a coat after 16 min is not early."""
    job = fold(coated((0, 0), waits=RULES))
    (wait,) = waits(job)
    assert (wait.what, wait.opens_s, wait.closes_s) == (What.NEXT_COAT, 900, 86400)
    assert begin_coat(job, "door", at(960)).early_s == 0
    (wait,) = waits(fold(coated((0, 0), waits=RULES, film=Film(coats=Range(1, 1)))))
    assert (wait.what, wait.opens_s, wait.closes_s) == (What.NEXT_PRODUCT, 3600, 86400)
    alone = Waits(recoat_opens=one_time(3600))
    assert waits(fold(coated((0, 0), waits=alone)))[0].opens_s == 3600


def test_the_window_runs_on_after_the_last_coat_and_after_the_job() -> None:
    events = coated((0, 60), waits=RULES, film=Film(coats=Range(1, 1)))
    closed = [*events, ev.JobClosed(n=9, at=at(100), verdict="good")]
    for job in (fold(events), fold(closed)):
        assert standings(job, at(86400 + 60))[0].state is State.LATE
        assert [each.words for each in alarms(job, at(86400 + 50))] == [
            "window for the next product is closing"
        ]


def test_an_unplanned_coat_is_held_against_the_same_wait() -> None:
    """A third coat of two, ten seconds after the second, was begun without a word."""
    job = fold(coated((0, 60), (700, 760), film=Film(coats=Range(2, 2))))
    assert begin_coat(job, "door", at(770)).early_s == 590


def test_within_six_hours_or_after_seventy_two() -> None:
    alkyd = NextProduct("itself", one_time(3600), one_time(6 * 3600), one_time(72 * 3600))
    job = fold(coated((0, 0), waits=Waits(), next_products=(alkyd,), film=Film(coats=Range(1, 1))))

    def at_hour(hour: float) -> tuple[State, str]:
        each = standings(job, at(hour * 3600))[0]
        return each.state, what_words(each)

    assert at_hour(0.5) == (State.WAIT, "itself window opens")
    assert at_hour(2)[0] is State.READY
    assert at_hour(7) == (State.LATE, "itself may lift")
    assert at_hour(73) == (State.READY, "itself")
    assert [each.words for each in alarms(job, at(73 * 3600))] == ["ready for itself"]


def test_from_when_on_it_has_to_be_abraded() -> None:
    primer = NextProduct("", one_time(3600), one_time(7 * 86400), None, one_time(86400))
    job = fold(coated((0, 0), waits=Waits(), next_products=(primer,), film=Film(coats=Range(1, 1))))
    fresh, old = (standings(job, at(seconds))[0] for seconds in (80000, 90000))
    assert (fresh.abrade, old.abrade) == (False, True)
    assert what_words(old) == "next product: abrade first"


def test_a_wait_is_called_by_what_it_is_until() -> None:
    (each,) = standings(fold(coated((0, 60))), at(61))
    assert (what_words(each), row_words(each)) == ("until coat 2 may go on", "for coat 2")
    ready = standings(fold(coated((0, 60))), at(700))[0]
    assert what_words(ready) == row_words(ready) == "coat 2 window closes"


def test_no_wait_in_the_profile_is_not_known_and_does_not_ring() -> None:
    job = fold(coated((0, 0), waits=Waits()))
    for seconds in (1, 1e4, 1e6):
        each = standings(job, at(seconds))[0]
        assert (each.state, each.remaining_s) == (State.UNKNOWN, None)
        assert "touch test" in each.wait.why
        assert alarms(job, at(seconds)) == ()


def test_without_weather_nothing_counts_down_and_a_reading_brings_it() -> None:
    opening, _, *coat = coated((0, 60))
    job = fold([opening, *coat])
    each = standings(job, at(61))[0]
    assert (each.state, each.wait.opens_s, each.wait.closes_s) == (State.UNKNOWN, None, 24 * 3600)
    assert alarms(job, at(5000)) == ()
    read = fold([opening, *coat, mild(9, 100)])
    assert standings(read, at(101))[0].remaining_s == 60 + 600 - 101


def test_a_reading_of_yesterday_says_nothing_about_today() -> None:
    opening, _, *coat = coated((90000, 90060))
    assert waits(fold([opening, mild(), *coat]))[0].opens_s is None
    assert waits(fold([opening, mild(2, 89000), *coat]))[0].opens_s == 600


def test_while_a_coat_is_sprayed_its_part_has_no_wait() -> None:
    events = coated((0, 60))
    events.append(ev.CoatBegun(n=len(events) + 1, at=at(700), part="door", coat=2))
    assert waits(fold(events)) == ()


def test_after_the_last_coat_it_is_handling_that_is_waited_for() -> None:
    job = fold(coated((0, 60), (700, 760), (1400, 1460)))
    wait, handle = waits(job)
    assert wait.what is What.NEXT_PRODUCT  # whatever is to follow, its window closes
    assert (handle.what, handle.opens_s) == (What.HANDLE, 8 * 3600)


def test_a_table_of_the_data_sheet_wins_and_is_no_estimate() -> None:
    rules = Waits(flash_off=table((10, 1200), (20, 600), (30, 300)))
    weather = ev.WeatherRead(
        n=2, at=at(0), air=q(20, "degC"), humidity=q(50, "%"), part=q(10, "degC")
    )
    events = [opened(waits=rules), weather]
    events.append(ev.CoatBegun(n=3, at=at(10), part="door", coat=1))
    events.append(ev.CoatEnded(n=4, at=at(20), part="door", coat=1))
    (wait,) = waits(fold(events))
    assert (wait.opens_s, wait.estimate) == (1200, False)


def test_one_time_in_the_cold_is_stretched_in_the_warm_it_is_not_shortened() -> None:
    def wait_at(part_c: float) -> tuple[float | None, float | None, bool]:
        events: list[ev.Event] = [opened(), mild(air=part_c, part=part_c)]
        events.append(ev.CoatBegun(n=3, at=at(10), part="door", coat=1))
        events.append(ev.CoatEnded(n=4, at=at(20), part="door", coat=1))
        (wait,) = waits(fold(events))
        return wait.opens_s, wait.closes_s, wait.estimate

    cold, at_reference, warm = wait_at(12), wait_at(21), wait_at(30)
    assert at_reference == (600, 24 * 3600, False)
    assert cold[0] is not None and cold[0] > 600 and cold[1] == 24 * 3600 and cold[2]
    assert warm[0] == 600 and warm[1] is not None and warm[1] < 24 * 3600 and warm[2]


def test_a_later_reading_lengthens_the_opening_and_shortens_the_closing_with_the_reason() -> None:
    events = coated((0, 60))
    before = waits(fold(events))[0]
    cold, warm = mild(9, 90, part=12.0, air=12.0), mild(9, 90, part=30.0, air=30.0)
    colder, warmer = (waits(fold([*events, read]))[0] for read in (cold, warm))
    assert colder.opens_s is not None and colder.opens_s > 600
    assert (warmer.opens_s, colder.closes_s) == (600, before.closes_s)
    assert warmer.closes_s is not None and warmer.closes_s < 24 * 3600
    assert "lengthened by a later reading" in colder.why and "shortened" in warmer.why
    # What is over is over: a reading after the wait makes no new one.
    after = waits(fold([*events, mild(9, 700, part=12.0)]))[0]
    assert after.opens_s == 600


DRY = ev.TouchTried(n=9, at=at(400), part="door", result="dry")


@pytest.mark.parametrize("part_c", [12.0, 30.0])
def test_dry_opens_a_flash_off_that_is_an_estimate(part_c: float) -> None:
    events = coated((0, 0), part_c=part_c)
    assert waits(fold(events))[0].by_touch
    opened_now = standings(fold([*events, DRY]), at(401))[0]
    assert (opened_now.state, opened_now.wait.touched_dry) == (State.READY, True)


def test_dry_does_not_shorten_a_time_that_the_sheet_gives_for_today() -> None:
    events = coated((0, 0))
    each = standings(fold([*events, DRY]), at(401))[0]
    assert (each.state, each.wait.opens_s) == (State.WAIT, 600)
    assert not each.wait.by_touch and not each.wait.touched_dry
    # It is called out when its time is over, like any other.
    assert len(alarms(fold([*events, DRY]), at(601))) == 1


@pytest.mark.parametrize("part_c", [12.0, 21.0, 45.0])
def test_dry_opens_no_window_that_has_a_time(part_c: float) -> None:
    """How far a film has reacted cannot be felt: 16 h is no flash-off, known today or not."""
    primer = NextProduct("", one_time(16 * 3600), one_time(72 * 3600))
    one = Film(coats=Range(1, 1))
    job = coated((0, 0), part_c=part_c, waits=Waits(), next_products=(primer,), film=one)
    plain, felt = (standings(fold(events), at(401))[0] for events in (job, [*job, DRY]))
    assert felt == plain and not felt.wait.by_touch
    window = Waits(recoat_opens=one_time(16 * 3600))  # between coats of one product, no flash-off
    job = coated((0, 0), part_c=part_c, waits=window)
    assert standings(fold(job), at(401)) == standings(fold([*job, DRY]), at(401))


def test_dry_opens_a_window_that_the_sheet_words_as_a_sign() -> None:
    primer = NextProduct("", WaitRule(until="dry to touch"), one_time(72 * 3600))
    job = coated((0, 0), waits=Waits(), next_products=(primer,), film=Film(coats=Range(1, 1)))
    before, after = (standings(fold(events), at(401))[0] for events in (job, [*job, DRY]))
    assert (before.state, before.wait.by_touch) == (State.UNKNOWN, True)
    assert (after.state, after.wait.closes_s) == (State.READY, before.wait.closes_s)


@pytest.mark.parametrize("result", ["dry", "tacky", "wet"])
def test_a_touch_never_moves_a_closing(result: str) -> None:
    for part_c in (12.0, 21.0, 30.0):
        events = coated((0, 0), part_c=part_c)
        touch = ev.TouchTried(n=9, at=at(610), part="door", result=result)
        assert waits(fold([*events, touch]))[0].closes_s == waits(fold(events))[0].closes_s


def test_wet_or_tacky_puts_off_whatever_opens() -> None:
    events = coated((0, 0))
    tacky = ev.TouchTried(n=9, at=at(610), part="door", result="tacky")
    again = standings(fold([*events, tacky]), at(620))[0]
    assert again.state is State.WAIT and "touched tacky: try again" in again.wait.rule
    assert again.wait.opens_s == 610 + 150  # a quarter of the wait again
    primer = NextProduct("", one_time(3600))
    job = coated((0, 0), waits=Waits(), next_products=(primer,), film=Film(coats=Range(1, 1)))
    wet = ev.TouchTried(n=9, at=at(3600), part="door", result="wet")
    assert waits(fold([*job, wet]))[0].opens_s == 3600 + 900


def test_touched_dry_is_not_called_out_but_a_new_try_and_a_closed_window_are() -> None:
    events = coated((0, 0), part_c=20.0)

    def rung(result: str, when: float) -> list[State]:
        touch = ev.TouchTried(n=9, at=at(400), part="door", result=result)
        return [alarm.standing.state for alarm in alarms(fold([*events, touch]), at(when))]

    assert rung("dry", 401) == []
    assert rung("dry", 25 * 3600) == [State.LATE]
    assert rung("wet", 401) == [] and rung("wet", 3600) == [State.READY]


def test_pot_life_runs_from_the_mix_and_the_oldest_batch_rules() -> None:
    mixed = ev.BatchMixed(n=2, at=at(0), batch=1, total=q(500, "ml"))
    onto = ev.BatchMixed(n=3, at=at(7200), batch=2, total=q(500, "ml"), onto=1)
    (wait,) = waits(fold([opened(), mixed, onto]))
    assert (wait.what, wait.start, wait.closes_s) == (What.POT_LIFE, at(0), 4 * 3600)
    assert standings(fold([opened(), mixed, onto]), at(4 * 3600 + 1))[0].state is State.LATE
    own = ev.BatchMixed(n=3, at=at(7200), batch=2, total=q(500, "ml"))
    assert [each.start for each in waits(fold([opened(), mixed, own]))] == [at(0), at(7200)]
    used = ev.BatchFinished(n=4, at=at(7300), batch=1)
    assert [each.start for each in waits(fold([opened(), mixed, own, used]))] == [at(7200)]


def test_pot_life_halves_for_each_ten_degrees_up_and_is_never_longer_than_the_sheet() -> None:
    """UFGS 09971 3.7.1.3: 4 h at 21 C, 2 h at 31; its 8 h at 11 are not promised."""
    for air_c, hours in ((21, 4), (31, 2), (11, 4)):
        weather = ev.WeatherRead(
            n=2, at=at(0), air=q(air_c, "degC"), humidity=q(50, "%"), part=q(20, "degC")
        )
        mixed = ev.BatchMixed(n=3, at=at(0), batch=1)
        (wait,) = waits(fold([opened(), weather, mixed]))
        assert wait.closes_s == pytest.approx(hours * 3600, rel=1e-9)  # exact powers of two


def test_induction_is_waited_for_before_the_batch_is_used() -> None:
    mix = Mix(
        (MixPart("primer", 1), MixPart("hardener", 1)),
        induction=one_time(900),
        pot_life=one_time(6 * 3600),
    )
    job = fold([opened(mix=mix), mild(), ev.BatchMixed(n=3, at=at(0), batch=1)])
    assert {each.wait.what: each.state for each in standings(job, at(100))} == {
        What.INDUCTION: State.WAIT,
        What.POT_LIFE: State.READY,
    }
    assert [alarm.words for alarm in alarms(job, at(901))] == ["induction time is over"]


def test_an_alarm_names_part_and_what_and_rings_until_it_is_acknowledged() -> None:
    events = coated((0, 60))
    assert alarms(fold(events), at(600)) == ()
    (alarm,) = alarms(fold(events), at(5000))
    assert alarm.standing.wait.title == "door"
    assert alarm.words == "ready for coat 2"
    assert alarm.since == at(660)
    heard = ev.AlarmAcknowledged(n=9, at=at(5001), alarm=alarm.key)
    assert alarms(fold([*events, heard]), at(6000)) == ()
    # The next change rings anew.
    closing = alarms(fold([*events, heard]), at(24 * 3600))
    assert [each.words for each in closing] == ["recoat window is closing"]


def test_the_next_coat_ends_the_alarm_by_itself() -> None:
    events = coated((0, 60))
    begun = ev.CoatBegun(n=9, at=at(700), part="door", coat=2)
    assert alarms(fold([*events, begun]), at(701)) == ()


def test_a_closed_job_waits_for_no_further_coat() -> None:
    mixed = ev.BatchMixed(n=8, at=at(70), batch=1)
    events = [*coated((0, 60)), mixed, ev.JobClosed(n=9, at=at(100), verdict="good")]
    assert waits(fold(events)) == ()
    assert alarms(fold(events), at(90000)) == ()


def test_an_early_coat_is_written_down_as_early() -> None:
    job = fold(coated((0, 60)))
    assert begin_coat(job, "door", at(360)).early_s == 300
    assert begin_coat(job, "door", at(700)).early_s == 0
    assert begin_coat(job, "door", at(60 + 24 * 3600 + 90)).late_s == 90


def test_what_makes_no_sense_is_refused_with_a_sentence() -> None:
    job = fold(coated((0, 60)))
    with pytest.raises(NotPossible, match="no part called"):
        begin_coat(job, "wing", at(100))
    with pytest.raises(NotPossible, match="No coat"):
        end_coat(job, "door", at(100))


def test_lid_closed_reboot_and_a_wrong_clock_leave_the_wait_right() -> None:
    job = fold(coated((0, 0)))
    asleep = Moment(START.wall + 300, START.continuous + 300, START.boot)
    assert standings(job, asleep)[0].remaining_s == 300
    stepped = Moment(START.wall + 3600 + 300, START.continuous + 300, START.boot)
    assert standings(job, stepped)[0].remaining_s == 300
    rebooted = Moment(START.wall + 300, 20.0, "boot-b")
    assert standings(job, rebooted)[0].remaining_s == 300
    dead_battery = Moment(0.0, 20.0, "boot-b")
    each = standings(job, dead_battery)[0]
    assert each.doubtful
    assert each.state is State.WAIT


def test_a_clock_earlier_than_a_later_entry_is_doubted_and_no_coat_is_called_early() -> None:
    """Coat ended, a note 20 minutes later, then the machine restarts with its clock set back."""
    note = ev.NoteMade(n=9, at=at(1200), text="dust")
    job = fold([*coated((0, 0)), note])
    right, wrong = Moment(at(1500).wall, 20.0, "boot-b"), Moment(at(300).wall, 20.0, "boot-b")
    (each,) = standings(job, right)
    assert (each.state, each.elapsed_s, each.basis) == (State.READY, 1500, Basis.WALL)
    assert clock_words(each) == "The machine was restarted: this wait rests on its clock."
    (each,) = standings(job, wrong)
    assert each.doubtful and each.basis is Basis.DOUBTFUL
    assert (state_word(each), time_words(each)) == ("CHECK CLOCK", "clock?")
    assert "before an entry of this job" in clock_words(each) and "20 min" in clock_words(each)
    begun = begin_coat(job, "door", wrong)
    assert (begun.early_s, begun.late_s, begun.doubtful) == (0, 0, True)
    assert not begin_coat(job, "door", right).doubtful
    assert clock_words(standings(job, at(1500))[0]) == ""


def test_no_coat_is_called_early_by_a_clock_in_doubt() -> None:
    """Ten minutes of flash-off, and by a clock that is set back nothing of it has passed."""
    job = fold(coated((0, 0)))
    begun = begin_coat(job, "door", Moment(START.wall - 3600, 20.0, "boot-b"))
    assert (begun.early_s, begun.doubtful) == (0, True)


def test_while_the_clock_is_in_doubt_nothing_is_called_ready_but_what_is_late_is_late() -> None:
    mixed = ev.BatchMixed(n=5, at=at(0), batch=1)  # four hours of pot life
    dead_battery = Moment(0.0, 20.0, "boot-b")

    def rung(seconds: float) -> list[State]:
        note = ev.NoteMade(n=6, at=at(seconds), text="looked at it")
        job = fold([*coated((0, 0)), mixed, note])
        return [alarm.standing.state for alarm in alarms(job, dead_battery)]

    assert rung(1200) == []
    assert rung(3.9 * 3600) == [State.CLOSING]
    assert rung(5 * 3600) == [State.LATE]
    note = ev.NoteMade(n=6, at=at(5 * 3600), text="looked at it")
    late = standings(fold([*coated((0, 0)), mixed, note]), dead_battery)[0]
    assert (state_word(late), time_words(late)) == ("OVER", "+1:00:00")


befalls = st.lists(
    st.tuples(st.sampled_from(["advance", "reboot", "step_wall"]), st.integers(1, 5000)), max_size=8
)


@given(befalls, st.integers(-100_000, 0))
def test_a_clock_set_back_before_the_last_entry_never_makes_a_wait_certain(
    happened: list[tuple[str, int]], back: int
) -> None:
    clock = ManualClock()
    events: list[ev.Event] = [opened(), mild()]
    for kind in (ev.CoatBegun, ev.CoatEnded):
        events.append(kind(n=len(events) + 1, at=clock.now(), part="door", coat=1))
    for what, by in happened:
        getattr(clock, what)(by)
        events.append(ev.NoteMade(n=len(events) + 1, at=clock.now(), text="a line"))
    last = clock.now()
    clock.reboot()
    clock.step_wall(back - 11)  # the restart took ten seconds
    assert clock.now().wall < last.wall
    (each,) = standings(fold(events), clock.now())
    assert each.basis is Basis.DOUBTFUL
    assert begin_coat(fold(events), "door", clock.now()).early_s == 0


@given(st.floats(0, 1e6), st.floats(0, 1e6))
def test_states_never_go_back_as_time_passes(first: float, more: float) -> None:
    order = [State.WAIT, State.READY, State.CLOSING, State.LATE]
    job = fold(coated((0, 0), film=Film(coats=Range(3, 3))))
    one = standings(job, at(first))[0]
    two = standings(job, at(first + more))[0]
    assert order.index(one.state) <= order.index(two.state)
