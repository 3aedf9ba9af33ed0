"""A rehearsal on the bench: the same keys, water alone, no wait, no approval, and what it ends with."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.bench.act import CloseJob
from booth.bench.instrument import starting_point
from booth.job.needle_advice import CatchPair
from booth.learnt.past_jobs import PastJobs
from booth.log import events as ev
from booth.log.session import Session
from booth.profile.model import Film, Gun, Range
from booth.units import System
from booth.words.event_words import words
from booth.words.shown import Page, Parts, Tone
from booth.words.tried import AtLarge, Tries
from tests.instruments.at_bench import AtBench
from tests.job.make import profile, q
from tests.law.desks import SHOP, with_water
from tests.manual_clock import ManualClock

TWO_COATS = profile(film=Film(coats=Range(2, 2), wet_um=Range(40, 60)))


def desk_at(step: str, *, done: bool = False, **more: object) -> AtBench:
    before = with_water if done else lambda clock: ()
    return AtBench(step, before=before, rehearsal=True, **more)  # type: ignore[arg-type]


def test_coats_follow_at_once_and_what_the_wait_would_be_is_said() -> None:
    desk = desk_at("coats", profile=TWO_COATS, parts=("cardboard",), system=System.METRIC)
    assert desk.readout.figure == "COAT 1"
    desk.press("space", "space")
    shown = desk.readout
    assert shown.figure == "COAT 2" and shown.tone is Tone.PLAIN and shown.edge is None
    # The flash-off of the trial profile: 600 s at 21 C.
    assert any(
        line.startswith("In the real job: 10 min at 21.0") and "longer in the cold" in line
        for line in shown.lines
    )
    assert desk.keys["Space"] == "begin coat 2: cardboard"
    desk.press("space", "space")
    assert [type(each) for each in desk.log] == [ev.CoatBegun, ev.CoatEnded] * 2
    begun = [each for each in desk.log if isinstance(each, ev.CoatBegun)]
    assert all(each.early_s == each.late_s == 0 for each in begun)


def test_what_was_rehearsed_is_never_called_coated_or_ready() -> None:
    desk = desk_at("coats", profile=TWO_COATS, parts=("cardboard",))
    approving = (Tone.GOOD, Tone.READY)
    for _ in range(4):
        assert desk.readout.tone not in approving
        (parts,) = desk.bench.instrument.picture(desk.now, desk.rows.values)
        assert isinstance(parts, Parts) and all(row.tone not in approving for row in parts.rows)
        desk.press("space")
    assert desk.readout.word == "REHEARSED" and desk.readout.tone is Tone.PLAIN
    assert "COATED" not in desk.text and "READY" not in desk.text
    desk.pass_time(100_000)
    assert desk.readout.word == "REHEARSED"


def test_nothing_of_water_can_be_touched() -> None:
    desk = desk_at("coats", done=True)
    desk.press("d")
    assert not [each for each in desk.log if isinstance(each, ev.TouchTried)]
    desk.press("right")
    (menu,) = desk.rest
    assert not any("touched" in choice.words for choice in menu.choices)  # type: ignore[attr-defined]


def test_the_catch_is_of_water_and_there_is_no_other() -> None:
    desk = desk_at("catch", profile=TWO_COATS)
    assert "liquid" not in [row.key for row in desk.rows.sight]
    desk.press("space")
    desk.pass_time(64)
    desk.type("250ml")
    desk.press("enter", "enter")
    (caught,) = (each for each in desk.log if isinstance(each, ev.CatchMade))
    assert caught.liquid == "water"
    # 250 ml in 60 s are 250 ml/min; the next catch is for as long.
    assert caught.delivery_ml_min == pytest.approx(250.0)
    assert desk.readout.shown_word == "WATER" and desk.readout.tone is Tone.PLAIN


def test_the_pace_is_that_of_the_coating_not_of_water() -> None:
    gun = Gun(delivery_ml_min=Range(200, 200), fan_mm=Range(250, 250), hvlp=True)
    hvlp = profile(gun=gun, film=Film(wet_um=Range(50, 50)))
    desk = desk_at("pace", profile=hvlp)
    desk.keep(
        ev.CatchMade(
            n=0,
            at=desk.clock.now(),
            seconds=60,
            amount=q(600, "ml"),
            delivery_ml_min=600.0,
            liquid="water",
        )
    )
    # By hand, as in tests/job/test_rehearsal.py: 1 m in 2.88 s.
    assert desk.readout.figure == "2.9"
    assert any("from the profile" in line for line in desk.readout.lines)


def test_where_the_profile_names_no_delivery_the_pace_asks_for_it() -> None:
    desk = desk_at("pace", profile=profile(gun=Gun()), done=True)
    assert desk.readout.word == "NOT KNOWN" and "the coating's delivery" in desk.text
    assert "delivery" in [row.key for row in desk.rows.every if not row.field.hidden]


# -- its end -----------------------------------------------------------------------------------


def close(desk: AtBench) -> None:
    """Enter through the rows to the end."""
    for _ in range(3):
        if CloseJob() in desk.rest:
            return
        last = desk.keys["Enter"]
        desk.press("enter")
    assert CloseJob() in desk.rest and last == "close the rehearsal"


def test_it_ends_with_what_to_change_and_keeps_that() -> None:
    desk = desk_at("result", done=True, shop=SHOP)
    shown = desk.readout
    assert shown.tone is Tone.CAUTION and shown.word == "TO CHANGE"
    (page,) = desk.bench.instrument.picture(desk.now, desk.rows.values)
    assert isinstance(page, Page)
    changes = [text for _, text in page.paragraphs if text.startswith("▲ ")]
    assert int(shown.figure) == len(changes) >= 4
    assert changes[0].startswith("▲ Pattern crescent.")
    assert "verdict" not in [row.key for row in desk.rows.every]
    close(desk)
    closed = desk.log[-1]
    assert isinstance(closed, ev.JobClosed) and CloseJob() in desk.rest
    assert closed.verdict == "" and [f"▲ {each}" for each in closed.to_change] == changes


def test_where_nothing_was_done_nothing_is_approved() -> None:
    desk = desk_at("result")
    assert desk.readout.tone is Tone.PLAIN and desk.readout.shown_word == "NOT KNOWN"
    assert "is not known" in desk.text
    close(desk)
    assert [each.to_change for each in desk.log if isinstance(each, ev.JobClosed)] == [()]


def test_where_all_of_it_fits_that_is_no_approval() -> None:
    at = ManualClock().now()
    fits = (ev.AirRead(n=0, at=at, inlet=q(200, "kPa")),)
    desk = AtBench("result", before=lambda clock: fits, rehearsal=True)
    shown = desk.readout
    assert shown.shown_word == "NONE FOUND" and shown.tone is Tone.PLAIN
    assert "the coating itself may" in desk.text and "Not practised" in desk.text


def test_own_catches_of_both_are_asked_of_past_jobs(monkeypatch: pytest.MonkeyPatch) -> None:
    past = PastJobs()
    asked: list[tuple[object, ...]] = []

    def pairs(*what: object, **_: object) -> tuple[CatchPair, ...]:
        asked.append(what)
        return (CatchPair(2.0, 100.0, "water"), CatchPair(2.0, 50.0, "paint"))

    monkeypatch.setattr(past, "pairs", pairs)
    desk = AtBench("result", before=with_water, rehearsal=True, shop=SHOP, past=past)
    assert "about 45 ml/min as coating" in desk.text  # half of 90 ml/min
    assert asked[0][:2] == ("grey gravity gun", 1.4), "of this gun and tip"


def test_a_real_job_has_a_verdict_and_none_of_it() -> None:
    desk = AtBench("result", before=with_water)
    assert "verdict" in [row.key for row in desk.rows.every]
    assert "before the real can" not in desk.text


def test_the_words_of_a_closed_rehearsal_say_what_to_change(
    manual: ManualClock | None = None,
) -> None:

    closed = ev.JobClosed(
        n=9, at=ManualClock().now(), verdict="", to_change=("Needle out.", "Slower.")
    )
    told = words(closed, System.METRIC)
    assert told == "job closed, before the real can: Needle out. Slower."


# -- a coating system, and the job that follows -------------------------------------------------


def test_of_a_system_every_product_is_rehearsed_and_said_by_its_name() -> None:
    later = (profile(key="second", name="Second product"),)
    desk = desk_at("next-product", done=True, later=later)
    assert desk.readout.figure == "2/2" and desk.readout.tone is Tone.PLAIN
    desk.press("enter")
    assert desk.job.product == 2 and desk.job.opened.rehearsal
    desk.open("result")
    assert "▲ Trial clear: Pattern crescent." in desk.text
    assert "? Second product: Nothing was measured or sprayed" in desk.text
    close(desk)
    closed = desk.log[-1]
    assert isinstance(closed, ev.JobClosed)
    assert all(each.startswith("Trial clear: ") for each in closed.to_change)


def test_before_the_first_coat_the_real_job_is_told_again(tmp_path: Path) -> None:
    now = ManualClock().now()
    opened = ev.JobOpened(
        n=1, at=now, job="rehearsed", profile=profile(), parts=("cardboard",), rehearsal=True
    )
    session = Session.begin(tmp_path, opened)
    session.record(ev.JobClosed(n=0, at=now, verdict="", to_change=("Needle out.",)))
    session.close()
    desk = AtBench("coats", past=PastJobs(tmp_path))
    (line,) = starting_point(desk.bench.instrument, desk.now)
    assert line.startswith("Rehearsed with water ") and line.endswith("first: Needle out.")
    again = AtBench("coats", past=PastJobs(tmp_path), rehearsal=True)
    assert not starting_point(again.bench.instrument, again.now), "a rehearsal is not told of one"


def test_where_the_window_has_room_no_wait_and_no_band_of_the_coating_approves_water() -> None:
    for step in ("coats", "result"):
        desk = desk_at(step, done=True)
        assert desk.bench.instrument.at_large(desk.now, desk.rows.values) == AtLarge()
        real = AtBench(step, before=with_water)
        assert real.bench.instrument.at_large(real.now, real.rows.values) != AtLarge()
    delivery = profile(gun=Gun(delivery_ml_min=Range(80, 100)))  # water gave 90 ml/min
    desk = desk_at("catch", done=True, profile=delivery)
    (tries,) = desk.bench.instrument.at_large(desk.now, desk.rows.values).beside
    assert isinstance(tries, Tries) and len(tries.tries) == 1
    assert all(each.tone is Tone.PLAIN for each in tries.tries)
