"""Several products on the same parts: steps, cautions, waits from one to the next, what past jobs teach."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from booth.card.report import report
from booth.job.amiss import Cause
from booth.job.coating import begin_coat
from booth.job.guard import of_weather, wait_before
from booth.job.job_schedule import planned
from booth.job.past import last_good
from booth.job.products import last_coat, product_of, products_of
from booth.job.steps import NEXT_PRODUCT, Mark, cautions_of, coming, mark, next_open, steps_of
from booth.job.wait import Standing, State, What
from booth.job.waits import alarms, standings
from booth.learnt.past_jobs import PastJobs
from booth.log import events as ev
from booth.log.fold import Job
from booth.log.session import Session
from booth.profile.cautions import cautions_for
from booth.profile.model import Care, Hazard, NextProduct, Step, Waits
from booth.profile.step_words import AFTER, BETWEEN
from booth.units import System
from booth.words.event_words import words
from booth.words.wait_words import what_words
from tests.job.make import at, one_time, profile, q
from tests.job.systems import (
    BASE,
    CLEAR,
    HOUR_S,
    OPENED,
    PRIMER,
    begun,
    coat,
    job_of,
    mild_at,
    products,
)


def the(what: What, job: Job, seconds: float, part: str = "door") -> Standing:
    """The one wait of this kind for a part."""
    found = [each for each in standings(job, at(seconds)) if each.wait.what is what]
    (each,) = (each for each in found if each.wait.part == part)
    return each


def read_all(job: Job) -> list[ev.Event]:
    return [
        ev.CautionAcknowledged(n=0, at=at(0), caution=each.key, words="…")
        for each in cautions_of(job)
    ]


# -- products and steps --------------------------------------------------------------------------


def test_the_products_in_their_order_those_to_come_too() -> None:
    job = job_of(begun(2))
    begun_so_far = [(each.product, each.profile) for each in products_of(job)]
    assert begun_so_far == [(1, PRIMER), (2, BASE)]
    assert job.opened.products == (PRIMER, BASE, CLEAR)
    assert [product_of(job, n).product for n in (1, 2, 3)] == [1, 2, 2]
    assert coming(job) is CLEAR and coming(job_of(begun(2), begun(3))) is None


def test_the_next_product_stands_before_the_result_and_not_in_the_last() -> None:
    job = job_of()
    kinds = [step.kind for step in steps_of(job)]
    assert kinds[-2:] == [NEXT_PRODUCT, "result"]
    assert next(s for s in steps_of(job) if s.kind == NEXT_PRODUCT).name == "Next: Trial base"
    last = job_of(begun(2), begun(3))
    assert NEXT_PRODUCT not in [step.kind for step in steps_of(last)]
    assert NEXT_PRODUCT not in [step.kind for step in steps_of(job_of(opened=products(PRIMER)))]


def test_after_care_is_left_to_the_last_product() -> None:
    """Before the next product nothing is unmasked, polished, looked at next morning."""
    later_on = ("unmask", "polish", "handle", "morning", "cure")
    last = AFTER.values()
    for job, name, lines in (
        (job_of(), "Between products", BETWEEN),
        (job_of(begun(2)), "Between products", BETWEEN),
        (job_of(begun(2), begun(3)), "After care", tuple(last)),
    ):
        (step,) = (each for each in steps_of(job) if each.kind == "after")
        assert (step.key, step.name, step.how) == ("after", name, lines)
    told = " ".join(BETWEEN).lower()
    assert not any(word in told for word in later_on) and "tack off" in told and "sand" in told
    # What the last product's sheet says of it stays its own, and so does a list of one's own.
    said = replace(CLEAR, after=Care(unmask="while it is soft"))
    job = job_of(begun(2), begun(3), opened=products(PRIMER, BASE, said))
    assert "Unmask: while it is soft." in next(s for s in steps_of(job) if s.kind == "after").how
    own = replace(PRIMER, steps=(Step("after", "after", "After care", ("Unmask the thread.",)),))
    (kept,) = (s for s in steps_of(job_of(opened=products(own, BASE))) if s.kind == "after")
    assert kept.how == ("Unmask the thread.",) and kept.name == "After care"
    alone = next(s for s in steps_of(job_of(opened=products(PRIMER))) if s.kind == "after")
    assert alone.name == "After care"


def test_each_product_has_its_own_steps_and_what_is_done_in_them() -> None:
    done = ev.StepDone(n=0, at=at(0), step="weather")
    first, second = job_of(done), job_of(done, begun(2))
    weather = next(step for step in steps_of(first) if step.key == "weather")
    assert mark(first, weather) is Mark.DONE and mark(second, weather) is Mark.OPEN
    assert next_open(second).key == "cautions" and "stir" in [s.key for s in steps_of(second)]


def test_cautions_come_once_and_a_data_sheets_own_with_each_product() -> None:
    first = job_of()
    assert cautions_of(first) == cautions_for(PRIMER)
    read = read_all(first)
    # All that the base brings was read with the primer: the step is left out.
    second = job_of(*read, begun(2))
    assert cautions_of(second) == () and next_open(second).key == "prepare"
    third = job_of(*read, begun(2), begun(3))
    assert [each.key for each in cautions_of(third)] == [Hazard.ISOCYANATE.value]
    assert next_open(third).kind == "cautions"
    own = replace(BASE, cautions=("Keep it from freezing.",))
    with_own = job_of(*read, begun(2), opened=products(PRIMER, own))
    assert [each.lines for each in cautions_of(with_own)] == [("Keep it from freezing.",)]


def test_read_cautions_stay_in_the_step_while_it_is_worked() -> None:
    read = read_all(job_of())
    third = job_of(*read, begun(2), begun(3))
    worked = job_of(*read, begun(2), begun(3), *read_all(third))
    assert cautions_of(worked) == cautions_of(third) and steps_of(worked) == steps_of(third)


def test_a_caution_that_was_voided_has_to_be_read_again() -> None:
    read = read_all(job_of())
    job = job_of(*read, begun(2), ev.Voided(n=0, at=at(1), target=2))
    assert [each.key for each in cautions_of(job)] == [read[0].caution]  # type: ignore[attr-defined]


@pytest.mark.parametrize("entries", [(), (begun(2),)], ids=["one product", "a later one"])
def test_a_reading_that_has_grown_old_opens_its_step_again(entries: tuple[ev.Event, ...]) -> None:
    """An hour, as for the guard; a new reading, and nothing else, makes it done."""
    done = ev.StepDone(n=0, at=at(0), step="weather")
    job = job_of(*entries, mild_at(), done)
    weather = next(step for step in steps_of(job) if step.kind == "weather")
    others = [step for step in steps_of(job) if step.kind != "weather"]
    for seconds, said in ((0, Mark.DONE), (3600, Mark.DONE), (3601, Mark.AGAIN)):
        assert mark(job, weather, at(seconds)) is said
        old = [each for each in of_weather(job, at(seconds)) if each.cause is Cause.OLD]
        assert bool(old) is (said is Mark.AGAIN)
    assert all(mark(job, step, at(9e5)) is not Mark.AGAIN for step in others)
    again = job_of(*entries, mild_at(), done, mild_at(3700))
    assert mark(again, weather, at(3701)) is Mark.DONE
    closed = job_of(*entries, mild_at(), done, ev.JobClosed(n=0, at=at(10), verdict="good"))
    assert mark(closed, weather, at(9e5)) is Mark.DONE
    passed = job_of(*entries, mild_at(), done, ev.StepSkipped(n=0, at=at(3700), step="weather"))
    assert mark(passed, weather, at(3701)) is Mark.SKIPPED


# -- waits from one product to the next ----------------------------------------------------------


@pytest.mark.parametrize("entries", [(), (begun(2, 200),)], ids=["before", "after it began"])
def test_the_window_runs_from_the_last_coat_until_the_first_of_the_next(
    entries: tuple[ev.Event, ...],
) -> None:
    job = job_of(mild_at(), *coat("door", 100), *entries)
    each = the(What.NEXT_PRODUCT, job, 100 + HOUR_S - 1)
    assert (each.state, each.remaining_s) == (State.WAIT, 1)
    assert (each.wait.product, each.wait.closes_s) == ("Trial base", 6 * HOUR_S)
    assert what_words(each) == "Trial base window opens"
    assert the(What.NEXT_PRODUCT, job, 100 + HOUR_S).state is State.READY
    # The primer's own waits go on as well.
    assert the(What.SAND, job, 200).wait.opens_s == 4 * HOUR_S


def test_what_was_silenced_before_the_next_product_began_stays_silent() -> None:
    entries = (mild_at(), *coat("door", 100))
    (ring,) = alarms(job_of(*entries), at(100 + HOUR_S))
    heard = ev.AlarmAcknowledged(n=0, at=at(100 + HOUR_S), alarm=ring.key)
    assert ring.words == "ready for Trial base"
    assert alarms(job_of(*entries, heard, begun(2)), at(100 + HOUR_S)) == ()


def test_it_ends_with_the_first_coat_on_that_part_alone() -> None:
    laid = (mild_at(), *coat("door", 100), *coat("hood", 200), begun(2, 300))
    job = job_of(*laid, *coat("door", 100 + 2 * HOUR_S))
    later = 110 + 2 * HOUR_S
    assert the(What.NEXT_PRODUCT, job, later).wait.product == "Trial clear"
    assert the(What.NEXT_PRODUCT, job, later, "hood").wait.product == "Trial base"
    spraying = job_of(*laid, coat("door", 100 + 2 * HOUR_S)[0])
    assert {each.wait.part for each in standings(spraying, at(later))} == {"hood"}


def test_a_part_that_lacks_coats_waits_for_the_product_that_was_begun() -> None:
    two = replace(PRIMER, film=profile().film)
    job = job_of(mild_at(), *coat("door", 100), opened=products(two, BASE))
    assert the(What.NEXT_COAT, job, 200).wait.coat == 1
    moved_on = job_of(mild_at(), *coat("door", 100), begun(2), opened=products(two, BASE))
    assert the(What.NEXT_PRODUCT, moved_on, 200).wait.product == "Trial base"


def test_within_six_hours_or_after_seventy_two() -> None:
    """A window with a gap (common practice of alkyd enamels, no source): in it a coat may lift."""
    job = job_of(mild_at(), *coat("door", 0), begun(2))
    for hours, state in ((0.9, State.WAIT), (5, State.READY), (5.9, State.CLOSING)):
        assert the(What.NEXT_PRODUCT, job, hours * HOUR_S).state is state
    for hours in (6, 40, 71.9):
        each = the(What.NEXT_PRODUCT, job, hours * HOUR_S)
        assert each.state is State.LATE and what_words(each) == "Trial base may lift"
    again = the(What.NEXT_PRODUCT, job, 72 * HOUR_S)
    assert again.state is State.READY and not again.abrade
    assert the(What.NEXT_PRODUCT, job, 168 * HOUR_S).abrade


@pytest.mark.parametrize(
    ("seconds", "early_s", "late_s"),
    [(HOUR_S - 600, 600, 0), (2 * HOUR_S, 0, 0), (7 * HOUR_S, 0, HOUR_S), (73 * HOUR_S, 0, 0)],
)
def test_the_first_coat_is_held_against_the_window(
    seconds: float, early_s: float, late_s: float
) -> None:
    job = job_of(mild_at(), *coat("door", 0), begun(2))
    event = begin_coat(job, "door", at(seconds))
    assert (event.coat, event.early_s, event.late_s) == (1, early_s, late_s)
    assert begin_coat(job, "hood", at(seconds)).early_s == 0 and wait_before(job, "hood") is None


def test_which_window_is_meant() -> None:
    """The one that names it; else the one for any product; else that for a further coat."""
    any_, named = (
        NextProduct(opens=one_time(60)),
        NextProduct(name="trial-base", opens=one_time(70)),
    )
    by_window = {
        (any_, named): 70,
        (any_,): 60,
        (NextProduct(name="Trial Base", opens=one_time(80)),): 80,
        (): 900,
    }
    for windows, opens_s in by_window.items():
        below = replace(PRIMER, next_products=windows, waits=Waits(recoat_opens=one_time(900)))
        job = job_of(mild_at(), *coat("door", 0), begun(2), opened=products(below, BASE))
        assert the(What.NEXT_PRODUCT, job, 1).wait.opens_s == opens_s


def test_where_no_window_is_given_nothing_rings_ready() -> None:
    silent = replace(PRIMER, next_products=(), waits=Waits())
    job = job_of(mild_at(), *coat("door", 0), begun(2), opened=products(silent, BASE))
    each = the(What.NEXT_PRODUCT, job, 9 * HOUR_S)
    assert (each.state, each.wait.opens_s) == (State.UNKNOWN, None)
    assert alarms(job, at(9 * HOUR_S)) == ()
    assert begin_coat(job, "door", at(9 * HOUR_S)).early_s == 0


def test_a_window_that_does_not_name_the_product_is_said_to_be_the_general_one() -> None:
    """A misspelled name would fall back in silence; where there is none for any, nothing is known."""
    named, general = NextProduct(name="Trail bass", opens=one_time(60)), one_time(3 * HOUR_S)
    lacks = 'the data sheet has no window for "Trial base" by name'
    both = replace(PRIMER, next_products=(named, NextProduct(opens=general)))
    job = job_of(mild_at(), *coat("door", 100), opened=products(both, BASE))
    wait = the(What.NEXT_PRODUCT, job, 200).wait
    assert wait.opens_s == 3 * HOUR_S
    assert wait.why == f"{lacks}: the one for any product is shown"
    only = replace(PRIMER, next_products=(named,), waits=Waits(recoat_opens=general))
    each = the(
        What.NEXT_PRODUCT, job_of(mild_at(), *coat("door", 100), opened=products(only, BASE)), 200
    )
    assert (each.state, each.wait.opens_s) == (State.UNKNOWN, None)
    assert each.wait.why == f'{lacks}, only for "Trail bass": ask its maker'


def test_colder_weather_read_after_the_next_product_began_lengthens_the_wait() -> None:
    cold = ev.WeatherRead(
        n=0, at=at(600), air=q(14, "degC"), humidity=q(50, "%"), part=q(14, "degC")
    )
    job = job_of(mild_at(), *coat("door", 0), begun(2), cold)
    opens_s = the(What.NEXT_PRODUCT, job, 700).wait.opens_s
    assert opens_s is None or opens_s > HOUR_S


def test_a_batch_of_the_product_before_rings_no_more() -> None:
    mixed = ev.BatchMixed(n=0, at=at(0), batch=1)
    assert any(e.wait.what is What.POT_LIFE for e in standings(job_of(mixed), at(60)))
    assert standings(job_of(mixed, begun(2)), at(60)) == ()


def test_the_plan_of_the_second_product_waits_for_the_window_of_the_first() -> None:
    job = job_of(mild_at(), *coat("door", 0), begun(2))
    starts = {b.part: b.start_s for b in planned(job, at(600)).schedule.blocks if b.coat == 1}
    assert starts["door"] >= HOUR_S - 600 and starts["hood"] == 0


def test_the_uppermost_coat_of_a_part() -> None:
    job = job_of(mild_at(), *coat("door", 0), begun(2), *coat("hood", 50))
    found = [last_coat(job, part) for part in ("door", "hood")]
    assert [each and each[0].product for each in found] == [1, 2]
    assert last_coat(job, "no such part") is None


# -- words and past jobs -------------------------------------------------------------------------


def test_entries_and_report_name_the_product() -> None:
    job = job_of(mild_at(), *coat("door", 0), begun(2), *coat("door", 2 * HOUR_S))
    assert words(job.events[4], System.METRIC, job) == "product begun: 2/3 Trial base"
    assert words(replace(begun(9), n=9), System.METRIC, job) == "product begun: 9"
    text = report(job.events, System.METRIC, lambda _: "09:00", lambda _: "2026-09-01")
    for line in (
        "Coating  Trial system (demo: invented values)",
        "1/3 Trial primer (demo: invented values)",
        "2/3 Trial base (demo: invented values)",
        "3/3 Trial clear (demo: invented values)",
        "  not begun",
    ):
        assert line in text.splitlines()
    assert "after the last coat before it ended" in text
    primer, base = (text.index(f"{name} (demo") for name in ("1/3 Trial primer", "2/3 Trial base"))
    assert primer < text.index("door: coat 1 begun") < base < text.rindex("door: coat 1 begun")
    alone = report(job_of(opened=products(PRIMER)).events, System.METRIC, str, str)
    assert "1/1" not in alone and "Coats and waits\n" in alone


def test_a_past_job_teaches_by_the_product_it_was_measured_with(tmp_path: Path) -> None:
    def caught(turns: float, ml: float) -> ev.CatchMade:
        return ev.CatchMade(
            n=0,
            at=at(5),
            seconds=30,
            amount=q(ml / 2, "ml"),
            delivery_ml_min=ml,
            turns=q(turns, "turns"),
        )

    session = Session.begin(tmp_path, OPENED)
    for event in (caught(1, 100), begun(2), caught(2, 200)):
        session.record(event)
    session.record(ev.JobClosed(n=0, at=at(9), verdict="good"))
    session.close()
    found = {each.key: last_good(tmp_path, each.key) for each in (PRIMER, BASE, CLEAR)}
    deliveries = {key: good and good.figures["delivery"] for key, good in found.items()}
    assert deliveries == {"trial-primer": 100, "trial-base": 200, "trial-clear": None}
    assert [each.turns for each in PastJobs(tmp_path).pairs(profile_key="trial-base")] == [2]
    assert [each.turns for each in PastJobs(tmp_path).pairs()] == [1, 2]
