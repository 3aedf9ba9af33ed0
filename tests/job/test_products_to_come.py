"""The plan goes on through the products to come. Reckoned by hand; all values are invented."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from msgspec.structs import replace

from booth.clock import local_hhmm
from booth.job.job_schedule import Planned, planned
from booth.log import events as ev
from booth.log.fold import fold
from booth.moment import later
from booth.profile.model import Hardener, Limits, Mix, MixPart, Profile, Range
from booth.words.shown import Timeline, Tone
from tests.instruments.at_bench import AtBench, in_mild_weather
from tests.job.make import at, mild, one_time
from tests.job.systems import BASE, CLEAR, LATER, OPENED, PRIMER
from tests.manual_clock import ManualClock

H = 3600.0


def plan_of(
    *events: ev.Event, at_s: float = 0.0, later: tuple[Profile, ...] = LATER, read: bool = True
) -> Planned:
    opened = replace(OPENED, later=later)
    every = [opened, *([mild(2)] if read else []), *events]
    return planned(fold(replace(e, n=n) for n, e in enumerate(every, 1)), at(at_s))


def coat(part: str, begin_s: float, end_s: float) -> tuple[ev.Event, ev.Event]:
    return (
        ev.CoatBegun(n=0, at=at(begin_s), part=part, coat=1),
        ev.CoatEnded(n=0, at=at(end_s), part=part, coat=1),
    )


def begins(plan: Planned) -> list[tuple[str, str, int, float | None]]:
    assert plan.onward is not None
    return [(e.product, e.part, e.coat, e.begins_s) for e in plan.onward.coats]


def test_all_of_it_by_hand() -> None:
    plan = plan_of()
    # Five minutes a coat. Primer: door 0, hood 300. Base an hour after each: 3900, 4200. Clear half an
    # hour after each: 6000, 6300; then flash-off of ten minutes: 6900, 7200, 7800, 8100.
    assert begins(plan) == [
        ("Trial base", "door", 1, 3900),
        ("Trial base", "hood", 1, 4200),
        ("Trial clear", "door", 1, 6000),
        ("Trial clear", "hood", 1, 6300),
        ("Trial clear", "door", 2, 6900),
        ("Trial clear", "hood", 2, 7200),
        ("Trial clear", "door", 3, 7800),
        ("Trial clear", "hood", 3, 8100),
    ]
    assert plan.last_s == 8400 and plan.coats_left == 2 + 8
    assert plan.handle_s == 8400 + 8 * H
    assert plan.fits and plan.is_known


def test_a_window_that_runs_counts_as_it_stands() -> None:
    primed = (*coat("door", 0, 300), *coat("hood", 300, 600))
    plan = plan_of(*primed, at_s=3600)
    # The door is open 300 s from now, the hood 600 s; both are on: nothing else is left of the primer.
    assert begins(plan)[:2] == [("Trial base", "door", 1, 300), ("Trial base", "hood", 1, 600)]
    assert plan.schedule.remaining == 0 and plan.coats_left == 8


def test_a_window_missed_later_on_does_not_fit() -> None:
    primed = (*coat("door", 0, 300), *coat("hood", 300, 600))
    plan = plan_of(*primed, at_s=7 * H)
    assert plan.onward is not None and not plan.fits
    assert "Trial base: the window of door closes before its coat." in plan.onward.why


@pytest.mark.parametrize(
    ("product", "says"),
    [
        (
            replace(CLEAR, limits=Limits(part_c=Range(low=25.0))),
            "Trial clear: part below the product's limit",
        ),
        (
            replace(
                CLEAR,
                mix=Mix((MixPart("clear", 2), MixPart("hardener", 1)), pot_life=one_time(1200)),
            ),
            "Trial clear: its pot life ends before its last coat",
        ),
        (
            replace(
                CLEAR,
                mix=Mix(
                    (MixPart("clear", 2), MixPart("warm", 1)),
                    hardeners=(Hardener("warm", Range(30, 40)), Hardener("hot", Range(35, 45))),
                ),
            ),
            "Trial clear: no hardener of the sheet is for this air, warm is nearest",
        ),
    ],
)
def test_it_fits_only_when_the_last_product_does(product: Profile, says: str) -> None:
    plan = plan_of(later=(BASE, product))
    assert plan.onward is not None and not plan.fits
    assert any(why.startswith(says) for why in plan.onward.why), plan.onward.why
    # The present product alone has nothing amiss.
    assert not plan.schedule.troubles and not plan.why


def test_what_is_not_known_has_no_time() -> None:
    silent = replace(PRIMER, next_products=())
    job = fold([replace(OPENED, profile=silent), mild(2)])
    plan = planned(job, at(0))
    assert plan.last_s is None and not plan.is_known and not plan.fits
    assert {each.begins_s for each in plan.onward.coats} == {None}  # type: ignore[union-attr]
    assert "When Trial base may go onto Trial primer is not known." in plan.onward.why  # type: ignore[union-attr]
    unread = plan_of(read=False)
    assert unread.last_s is None and not unread.fits


def test_one_product_is_as_before() -> None:
    plan = plan_of(later=())
    assert plan.onward is None and plan.last_s == 600


def test_the_step_says_it() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return in_mild_weather(clock)

    b = AtBench("plan", profile=PRIMER, later=LATER, before=before)
    start = b.clock.now()
    assert b.readout.figure == local_hhmm(later(start, 8400))
    assert b.readout.label.startswith("last of all products on")
    assert "(10 coats to go" in b.readout.label and b.readout.shown_word == "FITS BY GUESS"
    spans = [(3900, 4500), (6000, 8400)]
    base, clear = (
        f"{local_hhmm(later(start, one))} to {local_hhmm(later(start, two))}" for one, two in spans
    )
    assert f"then Trial base {base}, Trial clear {clear}" in b.text
    (line,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(line, Timeline) and line.end_s > 8400
    door = line.rows[0]
    numbered = [(each.text, each.start_s) for each in door.blocks if each.text]
    assert numbered == [("1", 0), ("1", 3900), ("1", 6000), ("2", 6900), ("3", 7800)]
    waits = [(e.start_s, e.end_s) for e in door.blocks if e.tone is Tone.WAIT]
    assert (300, 3900) in waits and (4200, 6000) in waits


def test_after_the_present_product_the_plan_is_not_over() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        found: list[ev.Event] = [*in_mild_weather(clock)]
        for part in ("door", "hood"):
            found.append(ev.CoatBegun(n=0, at=clock.now(), part=part, coat=1))
            clock.advance(300)
            found.append(ev.CoatEnded(n=0, at=clock.now(), part=part, coat=1))
        return found

    b = AtBench("plan", profile=PRIMER, later=LATER, before=before)
    assert b.readout.shown_word == "IT FITS" and "(8 coats to go" in b.readout.label
    # Two hours later nothing was read anew: it is said, and approves of nothing.
    b.pass_time(2 * H)
    assert b.readout.shown_word != "IT FITS"
