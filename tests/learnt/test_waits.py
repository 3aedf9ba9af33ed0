"""A touch says only that it took longer, or that it was over by then; and it opens nothing."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.bench.act import Context
from booth.instruments.learnt_here import of_wait
from booth.job.guard import standing_before
from booth.job.products import products_of
from booth.job.waits import alarms, standings
from booth.learnt.observation import NO_END, Observation
from booth.learnt.past_jobs import PastJobs
from booth.learnt.waits import like, observe, touched_between
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.moment import Moment
from booth.units import System
from tests.job.make import at, mild, one_time, opened, table
from tests.learnt.test_observation import seen

WET, DRY = "tacky", "dry"


def job(
    *touches: tuple[float, str], wait_s: float = 600.0, more: bool = True, **weather: float
) -> Job:
    """One coat on the door that ended at 1000 s, touched so many seconds after that."""
    waits = replace(opened().profile.waits, flash_off=one_time(wait_s))
    profile = replace(opened().profile, waits=waits)
    every: list[ev.Event] = [
        replace(opened(("door",)), profile=profile),
        mild(seconds=900.0, **weather),
        ev.CoatBegun(n=0, at=at(950), part="door", coat=1),
        ev.CoatEnded(n=0, at=at(1000), part="door", coat=1),
    ]
    every += [ev.TouchTried(n=0, at=at(1000 + s), part="door", result=said) for s, said in touches]
    if not more:
        every.append(ev.CoatsChanged(n=0, at=at(9000), coats=1, part="door"))
    return fold([replace(each, n=n) for n, each in enumerate(every, 1)])


def found(*touches: tuple[float, str], **more: object) -> tuple[Observation, ...]:
    return observe(products_of(job(*touches, **more)))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("touches", "ends"),
    [
        ((), None),
        (((300, DRY),), (0.0, 0.5)),
        (((300, WET),), (0.5, NO_END)),
        (((300, WET), (780, DRY)), (0.5, 1.3)),
        (((300, WET), (600, "wet"), (780, DRY), (900, DRY)), (1.0, 1.3)),
        # It felt dry before: that touch was wrong, and nothing is known above the later one.
        (((300, DRY), (600, WET)), (1.0, NO_END)),
        (((300, DRY), (600, WET), (780, DRY)), (1.0, 1.3)),
    ],
)
def test_between_the_last_wet_touch_and_the_first_dry_one_behind_it(
    touches: tuple[tuple[float, str], ...], ends: tuple[float, float] | None
) -> None:
    own = found(*touches)
    if ends is None:
        assert own == ()
        return
    (one,) = own
    assert (one.low, one.high) == pytest.approx(ends)
    assert one.group == ("trial-clear",) and (one.air_c, one.humidity_percent) == (21.0, 50.0)


def test_it_is_held_against_the_wait_that_was_counted_not_what_a_touch_made_of_it() -> None:
    # 11 C: flash-off is stretched; a dry touch opened it at once, and the estimate stays what it was.
    cold = job((300, WET), (1300, DRY), part=11.0, air=11.0)
    (one,) = observe(products_of(cold))
    from booth.trade.waits.flash_off import flash_off_at

    counted = flash_off_at(600.0, 21.0, 11.0)
    assert one.high == pytest.approx(1300 / counted.seconds)  # type: ignore[union-attr]
    assert one.low == pytest.approx(300 / counted.seconds)  # type: ignore[union-attr]


def test_what_is_not_known_teaches_nothing() -> None:
    # The last coat waits for no other; 45 C lies outside the rule, so that no wait was counted.
    assert found((300, DRY), more=False) == ()
    assert found((300, DRY), part=45.0) == ()


def test_a_clock_in_doubt_teaches_nothing() -> None:
    whole = job((300, DRY))
    touch = whole.events[-1]
    assert isinstance(touch, ev.TouchTried)
    elsewhere = Moment(touch.at.wall, 3.0, "another boot")
    doubtful = fold([*whole.events[:-1], replace(touch, at=elsewhere)])
    coat = doubtful.coats_on("door")[0]
    assert touched_between(doubtful, coat) is None or _proven(doubtful)
    told = ev.AgeTold(n=touch.n + 1, at=at(2000), target=4, ago_s=1000.0)
    assert observe(products_of(fold([*whole.events, told]))) == ()


def _proven(job: Job) -> bool:
    """Whether the boots of the machine prove the time all the same."""
    from booth.moment import Basis, elapsed

    coat = job.coats_on("door")[0]
    assert coat.ended is not None
    passed = elapsed(coat.ended.at, coat.touches[0].at, job.boots)
    return passed.basis is not Basis.DOUBTFUL


def test_like_today_is_air_like_this() -> None:
    near = seen(1.2, air_c=20.0, humidity_percent=55.0)
    cold = seen(1.4, air_c=12.0, humidity_percent=55.0)
    damp = seen(1.4, air_c=21.0, humidity_percent=80.0)
    unread = seen(1.4)
    assert like([near, cold, damp, unread], mild()) == (near,)
    assert like([near], None) == ()


class Taught(PastJobs):
    """Past jobs that showed these waits."""

    def __init__(self, *shown: Observation) -> None:
        super().__init__()
        self.reading._found["waits"] = shown


def context(now: float, *shown: Observation, **more: object) -> Context:
    step = opened().profile.steps[0] if opened().profile.steps else None
    own = job(**more)  # type: ignore[arg-type]
    return Context(own, at(now), System.METRIC, step, past=Taught(*shown))  # type: ignore[arg-type]


@pytest.mark.parametrize("factor", [0.1, 0.5, 1.0, 3.0])
def test_what_is_learnt_opens_nothing_earlier_and_later_neither(factor: float) -> None:
    """The waits of a job are what they are, whatever past jobs showed; a sentence is all there is."""
    shown = [seen(factor, job=str(n), group=("trial-clear",)) for n in range(8)]
    for now in (1001.0, 1300.0, 1599.0, 1600.0, 1700.0, 4000.0):
        taught, bare = context(now, *shown), context(now)
        assert standings(taught.job, taught.now) == standings(bare.job, bare.now)
        assert alarms(taught.job, taught.now) == alarms(bare.job, bare.now)
        each = standing_before(taught.job, "door", taught.now)
        assert each is not None and each == standing_before(bare.job, "door", bare.now)
        (line,) = of_wait(taught, each)
        assert ("test later" in line) == (factor > 1) and "8 waits" in line
        assert of_wait(bare, each) == ()


def test_in_air_like_today_s_where_there_are_enough_of_those() -> None:
    def in_air(factor: float, air_c: float, number: int) -> Observation:
        return seen(
            factor,
            job=f"{air_c}-{number}",
            group=("trial-clear",),
            air_c=air_c,
            humidity_percent=50.0,
        )

    warm = [in_air(1.0, 21.0, n) for n in range(3)]
    cold = [in_air(2.0, 8.0, n) for n in range(5)]
    now = context(1300.0, *warm, *cold)
    each = standing_before(now.job, "door", now.now)
    assert each is not None
    (line,) = of_wait(now, each)
    assert "in such air" in line and "3 waits" in line and "later" not in line
    few = context(1300.0, *warm[:2], *cold)
    (line,) = of_wait(few, each)
    assert "7 waits" in line and "such air" not in line


def test_a_wait_that_is_not_known_has_nothing_told_of_it() -> None:
    shown = [seen(1.2, job=str(n), group=("trial-clear",)) for n in range(8)]
    hot = context(1300.0, *shown, part=45.0)
    each = standing_before(hot.job, "door", hot.now)
    assert each is not None and each.wait.opens_s is None
    assert of_wait(hot, each) == ()


def test_a_table_of_the_sheet_is_held_against_too() -> None:
    waits = replace(opened().profile.waits, flash_off=table((15, 1200), (25, 400)))
    whole = job((300, WET), (900, DRY))
    first = replace(whole.opened, profile=replace(whole.profile, waits=waits))
    (one,) = observe(products_of(fold([first, *whole.events[1:]])))
    # Half way between 1200 and 400 s at 20 C, less at 21 C: by the table, whatever it interpolates.
    assert 900 / 1200 < one.high < 900 / 400
