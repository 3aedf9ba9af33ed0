"""From one product to the next, by keys: a system of three worked on the bench."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.job.steps import NEXT_PRODUCT, cautions_of, steps_of
from booth.log import events as ev
from booth.profile.model import Hazard, Step
from booth.words.shown import Parts
from tests.instruments.at_bench import AtBench
from tests.job.make import mild
from tests.job.systems import BASE, CLEAR, HOUR_S, LATER, PRIMER


def desk(step: str = NEXT_PRODUCT, **more: object) -> AtBench:
    return AtBench(
        step,
        profile=PRIMER,
        later=LATER,
        before=lambda clock: [replace(mild(0), at=clock.now())],
        **more,  # type: ignore[arg-type]
    )


def spray(at: AtBench, *parts: str) -> None:
    """One coat on each part, the table walked with the arrows."""
    at.open("coats")
    for part in parts:
        names = [row.name for row in table(at).rows]
        for _ in names:
            if names[table(at).chosen] == part:
                break
            at.press("down")
        begin(at)
        at.pass_time(60)
        at.press("space")


def begin(at: AtBench) -> str:
    """Begin a coat; what was asked first, where it took one more press."""
    at.press("space")
    if isinstance(at.log[-1], ev.CoatBegun):
        return ""
    asked = at.said
    at.press("space")
    assert isinstance(at.log[-1], ev.CoatBegun)
    return asked


def table(at: AtBench) -> Parts:
    pictures = at.bench.instrument.picture(at.now, at.rows.values)
    parts = next(each for each in pictures if isinstance(each, Parts))
    # Behind the parts stand the windows after their last coat.
    return replace(parts, rows=tuple(row for row in parts.rows if row.coats))


def acknowledge(at: AtBench) -> int:
    """Read what there is to read; how many that was."""
    assert at.bench.step.kind == "cautions"
    count = 0
    while at.keys.get("Space") == "read and understood":
        at.press("space")
        count += 1
    return count


def test_enter_begins_the_next_product_and_opens_its_first_step() -> None:
    at = desk()
    assert at.keys["Enter"] == "next product: Trial base"
    at.press("enter")
    assert at.job.product == 2 and isinstance(at.log[-1], ev.ProductBegun)
    assert at.bench.step.key == steps_of(at.job)[0].key
    assert "Trial base is begun" in at.said and "void" in at.said


def test_space_and_digits_do_not() -> None:
    at = desk()
    at.press("space", "5", "pagedown", "down")
    assert at.job.product == 1 and at.bench.step.kind == NEXT_PRODUCT


def test_not_while_a_coat_is_being_sprayed() -> None:
    at = desk("coats")
    at.press("space")
    at.open(NEXT_PRODUCT)
    at.press("enter")
    assert at.job.product == 1 and "door: a coat is being sprayed" in at.said


def test_parts_that_lack_coats_are_named() -> None:
    at = desk("coats")
    spray(at, "door")
    at.open(NEXT_PRODUCT)
    assert "hood: 0 of 1 coats" in at.text and "door: 0 of" not in at.text


def test_the_window_is_said_before_it_is_begun_and_while_it_waits() -> None:
    at = desk("coats")
    spray(at, "door", "hood")
    at.open(NEXT_PRODUCT)
    assert (at.readout.whose, at.readout.shown_word) == ("door", "WAIT")
    assert table(at).rows[0].what == "Trial base window opens"
    at.pass_time(HOUR_S)
    assert at.readout.figure == "READY"
    at.press("enter")
    at.open("coats")
    assert [row.coats for row in table(at).rows] == ["0/1", "0/1"]
    assert [row.word for row in table(at).rows] == ["READY", "READY"]


@pytest.mark.parametrize(
    ("wait_s", "asked", "kept"),
    [
        (600, "lasts another 50 min", ""),
        (2 * HOUR_S, "", ""),
        (10 * HOUR_S, "in which it may lift", ""),
        (80 * HOUR_S, "", ""),
        (200 * HOUR_S, "", "to be abraded first"),
    ],
)
def test_the_first_coat_is_told_what_speaks_against_it(
    wait_s: float, asked: str, kept: str
) -> None:
    at = desk("coats")
    spray(at, "door")
    at.open(NEXT_PRODUCT)
    at.press("enter")
    at.open("coats")
    at.pass_time(wait_s)
    told = begin(at)
    assert asked in told and bool(asked) == bool(told), told
    begun = at.log[-1]
    assert isinstance(begun, ev.CoatBegun)
    assert (begun.early_s > 0, begun.late_s > 0) == ("lasts" in asked, "lift" in asked)
    assert kept in " ".join(begun.amiss)


def test_past_a_window_without_a_second_one_it_is_to_be_abraded() -> None:
    at = desk("coats")
    spray(at, "door")
    at.keep(ev.ProductBegun(n=0, at=at.clock.now(), product=2))
    at.bench.mind_product()
    spray(at, "door")
    at.keep(ev.ProductBegun(n=0, at=at.clock.now(), product=3))
    at.bench.mind_product()
    at.open("coats")
    at.pass_time(30 * HOUR_S)
    assert "Abrade it first" in at.text
    assert "window closed" in begin(at)


def test_voiding_goes_back_to_the_product_before() -> None:
    at = desk()
    at.press("enter")
    void = ev.Voided(n=0, at=at.clock.now(), target=at.log[-1].n)
    at.keep(void)
    at.bench.mind_product()
    assert at.job.product == 1
    assert at.bench.step.key in [step.key for step in steps_of(at.job)]
    at.open(NEXT_PRODUCT)
    assert at.keys["Enter"] == "next product: Trial base"


def test_what_was_typed_for_one_product_does_not_come_up_with_the_next() -> None:
    at = desk("air")
    at.type("200")
    at.open(NEXT_PRODUCT)
    at.press("enter")
    at.open("air")
    assert not at.rows.holds


def test_backspace_voids_nothing_of_the_product_before() -> None:
    at = desk("coats")
    spray(at, "door")
    at.open(NEXT_PRODUCT)
    at.press("enter")
    at.open("coats")
    kept = len(at.log)
    assert "Bksp" not in at.keys
    at.press("backspace")
    assert len(at.log) == kept


def test_a_job_of_one_product_has_no_such_step_and_it_only_goes_on() -> None:
    at = AtBench("weather")
    at.bench.step = Step(key=NEXT_PRODUCT, kind=NEXT_PRODUCT, name="Next")
    assert "No product follows" in at.text and at.keys["Enter"] == "next step"
    at.press("enter")
    assert at.job.product == 1


def test_a_whole_system_by_keys_cautions_once_and_each_product_its_own() -> None:
    at = AtBench("cautions", profile=PRIMER, later=LATER)
    every = {each.key for each in cautions_of(at.job)}
    assert acknowledge(at) == len(every)
    for product in (PRIMER, BASE, CLEAR):
        if product is CLEAR:
            assert [each.key for each in cautions_of(at.job)] == [Hazard.ISOCYANATE]
            assert acknowledge(at) == 1
            at.press("enter")
        elif product is PRIMER:
            at.press("enter")
        assert at.job.profile == product
        assert "cautions" not in [s.kind for s in steps_of(at.job)] or product is not BASE
        at.open("weather")
        if product is PRIMER:
            for row, text in (("air", "21"), ("humidity", "50"), ("part", "21")):
                at.fill(row, text)
            while at.rows.holds:
                at.press("enter")
        at.open("efflux")
        at.press("space")
        at.pass_time(21)
        at.press("space")
        assert len(at.job.runs) == 1
        spray(at, "door", "hood")
        assert all(len(at.job.coats_on(part)) == 1 for part in at.job.parts)
        if product is CLEAR:
            break
        at.open("faults")
        for _ in range(3):
            if at.bench.step.kind == NEXT_PRODUCT:
                break
            at.press("enter")
        assert at.bench.step.kind == NEXT_PRODUCT
        at.pass_time(2 * HOUR_S)
        at.press("enter")
    assert [each.product for each in at.job.before] == [1, 2] and at.job.product == 3
    assert [len(each.runs) for each in at.job.before] == [1, 1]
    late = [each for each in at.log if isinstance(each, ev.CoatBegun) and each.late_s]
    early = [each for each in at.log if isinstance(each, ev.CoatBegun) and each.early_s]
    assert (late, early) == ([], [])
    acknowledged = [each for each in at.log if isinstance(each, ev.CautionAcknowledged)]
    assert len(acknowledged) == len(every) + 1
    at.open("result")
    assert "6" in at.readout.figure


def test_touched_dry_long_before_the_window_of_the_next_product_is_asked_first() -> None:
    at = desk("coats")
    spray(at, "door")
    at.open(NEXT_PRODUCT)
    at.press("enter")
    at.open("coats")
    at.pass_time(HOUR_S / 6)
    at.press("d")
    assert "touched dry after" in at.said and not isinstance(at.log[-1], ev.TouchTried)
    at.press("d")
    assert isinstance(at.log[-1], ev.TouchTried)


def test_enter_is_said_to_lead_to_the_next_product_and_nowhere_else() -> None:
    at = desk()
    spray(at, "door", "hood")
    at.open(NEXT_PRODUCT)
    assert at.keys["Enter"] == "next product: Trial base"
    assert "Enter:" not in "\n".join(at.readout.lines)
