"""Coats and the gauge: from one to the other and back while the film is wet, and on whose turn it is."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
import pytest

from booth.bench.act import Menu
from booth.instruments.film import between_coats
from booth.instruments.part_rows import part_row
from booth.job.steps import next_open
from booth.job.waits import standings
from booth.log.events import (
    BatchMixed,
    CoatBegun,
    CoatEnded,
    Event,
    FilmRead,
    Restored,
    StepDone,
    TouchTried,
    Voided,
)
from booth.moment import Basis
from booth.profile.model import Film, Limits, Profile, Range, WaitRule, Waits
from booth.words.shown import Parts, Tone
from tests.instruments.at_bench import AtBench, context_of, in_mild_weather
from tests.job.make import mild, one_time, q
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock

TWO_COATS: Profile = msgspec.structs.replace(trial(), film=Film(coats=Range(2, 2)))
GAUGE = "Read the wet-film gauge"


def _coat(clock: ManualClock, part: str, coat: int, *, ended: bool = True) -> list[Event]:
    begun = CoatBegun(n=0, at=clock.now(), part=part, coat=coat)
    return [begun, CoatEnded(n=0, at=clock.now(), part=part, coat=coat)] if ended else [begun]


def door_coated(clock: ManualClock) -> Sequence[Event]:
    return _coat(clock, "door", 1)


def offered(b: AtBench) -> list[str]:
    """What the right arrow offers."""
    b.press("right")
    (menu,) = (each for each in b.rest if isinstance(each, Menu))
    return [choice.words for choice in menu.choices]


def chosen(b: AtBench) -> str:
    """The part that is marked in the table."""
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    return parts.rows[parts.chosen].name


def test_the_gauge_is_offered_and_enter_comes_back_to_whose_turn_it_is() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=door_coated)
    assert b.keys["Space"] == "begin coat 1: hood" and b.keys["→"] == "more"
    assert GAUGE in offered(b)
    b.choose(GAUGE)
    assert b.bench.step.kind == "film" and "door, coat 1" in b.text
    b.type("2mil")
    b.press("enter", "enter")
    assert isinstance(b.log[-1], FilmRead) and b.keys["Enter"] == "back to the coats"
    b.press("enter")
    assert b.bench.step.kind == "coats"
    # Not the door, which waits: the hood has no coat yet.
    assert b.keys["Space"] == "begin coat 1: hood"
    assert not any(isinstance(each, StepDone) for each in b.log)


def test_a_coat_that_is_being_sprayed_is_the_chosen_one_on_the_way_back() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*_coat(clock, "door", 1), *_coat(clock, "hood", 1, ended=False)]

    b = AtBench("coats", profile=TWO_COATS, before=before)
    assert b.keys["Space"] == "end coat 1: hood" and chosen(b) == "hood"


def test_before_the_first_coat_there_is_nothing_to_gauge_and_nothing_to_touch() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    assert any("dges first" in line for line in b.bench.step.how)
    assert not any("gauge" in words or "touched" in words for words in offered(b))
    b.press("space")
    assert "SPRAYING" in b.text


def test_after_the_last_coat_the_gauge_leads_on() -> None:
    clock = ManualClock()
    first = [*_coat(clock, "door", 1), *_coat(clock, "hood", 1)]
    last = [*_coat(clock, "door", 2), *_coat(clock, "hood", 2)]
    assert not between_coats(context_of(profile=TWO_COATS, step="film").job)
    assert between_coats(context_of(*first, profile=TWO_COATS, step="film").job)
    assert not between_coats(context_of(*first, *last, profile=TWO_COATS, step="film").job)
    left = StepDone(n=0, at=clock.now(), step="coats")
    assert not between_coats(context_of(*first, left, profile=TWO_COATS, step="film").job)


def test_space_begins_and_ends_and_the_next_part_is_chosen() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    for word in ("begin coat 1: door", "end coat 1: door", "begin coat 1: hood"):
        assert b.keys["Space"] == word
        b.press("space")
    b.press("space")
    assert [type(each) for each in b.log] == [CoatBegun, CoatEnded, CoatBegun, CoatEnded]
    assert chosen(b) == "door" and b.keys["Space"] == "coat 2: door?"


@pytest.mark.parametrize("apart", [0.06, 0.3])
def test_a_press_that_bounced_does_not_end_the_coat_it_began(apart: float) -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space")
    b.clock.advance(apart)
    b.press_now("space")
    assert [type(each) for each in b.log] == [CoatBegun]


def test_space_held_down_is_one_press() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space")
    for _ in range(50):
        b.clock.advance(0.03)
        b.press_now("space")
    assert [type(each) for each in b.log] == [CoatBegun]


def test_a_coat_that_is_being_sprayed_is_not_left_with_enter() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space", "enter")
    assert b.bench.step.key == "coats" and [type(each) for each in b.log] == [CoatBegun]
    assert b.said == "door: a coat is being sprayed. Space ends it there."
    b.press("space", "enter")
    assert isinstance(b.log[-1], StepDone) and b.bench.step.key != "coats"


def test_backspace_voids_the_last_entry_of_the_chosen_part_and_names_it() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*_coat(clock, "door", 1), *_coat(clock, "hood", 1)]

    b = AtBench("coats", profile=TWO_COATS, before=before)
    assert chosen(b) == "door" and b.keys["Bksp"] == "void: coat 1 on door ended"
    b.press("backspace")
    assert isinstance(b.log[-1], Voided)
    assert b.said == "Voided: coat 1 on door ended. Backspace brings it back."
    assert b.job.running_coat("door") is not None and b.job.running_coat("hood") is None
    assert b.keys["Bksp"] == "bring back: coat 1 on door ended"
    b.press("backspace")
    assert isinstance(b.log[-1], Restored) and b.job.running_coat("door") is None


def test_up_from_the_first_part_leads_to_the_steps_and_space_opens_one() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("up")
    assert b.bench.picked == "coats" and b.keys["Space"] == "back"
    b.type("5")
    assert b.log == [] and b.bench.picked == "coats"
    b.press("up")
    assert b.keys["Space"] == "open this step"
    b.press("space")
    assert b.bench.picked == "" and b.bench.step.key != "coats"


def test_a_click_chooses_a_part() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    act = b.bench.instrument.pick(b.now, b.rows, 1)
    assert act is not None
    b.bench.carry_out(act, b.clock.now())
    assert chosen(b) == "hood" and b.bench.instrument.pick(b.now, b.rows, 2) is None


@pytest.mark.parametrize(("key", "result"), [("d", "dry"), ("k", "tacky"), ("w", "wet")])
def test_a_touch_test_has_a_letter_and_a_line_for_gloves(key: str, result: str) -> None:
    b = AtBench("coats", profile=TWO_COATS, before=door_coated)
    b.press("up", key)
    last = b.log[-1]
    assert isinstance(last, TouchTried) and (last.part, last.result) == ("door", result)
    assert b.said == f"door: touched {result}."
    assert f"door: touched {result}" in offered(b)
    b.choose(f"door: touched {result}")
    assert len(b.job.of(TouchTried)) == 2
    b.press("down", key)  # nothing flashes off on the hood
    assert len(b.job.of(TouchTried)) == 2 and b.said == "hood: no coat is in its flash-off."


def read_and_coated(clock: ManualClock) -> Sequence[Event]:
    return [*in_mild_weather(clock), *_coat(clock, "door", 1)]


def begun_of(b: AtBench) -> list[CoatBegun]:
    return [each for each in b.log if isinstance(each, CoatBegun)]


def test_a_coat_from_a_batch_whose_pot_life_is_over_takes_one_more_press_and_is_logged() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [BatchMixed(n=0, at=clock.now(), batch=1, total=q(500, "ml"))]

    b = AtBench("coats", before=before)
    b.pass_time(3.9 * 3600)
    b.press("space")
    assert b.job.running_coat("door") is not None  # 4 h in the trial profile
    b.press("backspace")
    b.pass_time(0.2 * 3600)
    assert b.readout.shown_word == "STOP" and b.keys["Space"] == "coat 1: door?"
    assert "batch 1: its pot life was over" in b.text
    b.press("space")
    assert b.job.running_coat("door") is None
    assert b.said == "door: pot life over. Space again: all the same."
    assert "Do not spray it: mix a fresh batch." in b.text
    assert b.keys["Space"] == "begin coat 1 all the same: door"
    b.press("space")
    assert b.job.running_coat("door") is not None and "pot life over" in begun_of(b)[-1].amiss


def test_a_coat_before_its_wait_is_over_takes_one_more_press_and_is_logged() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.press("up")
    b.pass_time(58)
    assert b.keys["Space"] == "coat 2: door?"  # 10 min of flash-off in the trial profile
    b.press("space")
    assert b.said.startswith("The wait before coat 2 lasts another 9 min 1 s. Wait.")
    b.press("space")
    (begun,) = [each for each in begun_of(b) if each.coat == 2]
    assert begun.part == "door" and begun.early_s == 540


BY_EYE: Profile = trial(waits=Waits(flash_off=WaitRule(until="matt all over")))


@pytest.mark.parametrize(("sheet", "read"), [(trial(), False), (BY_EYE, True)])
def test_a_coat_whose_wait_is_not_known_asks_first_until_a_touch_says_dry(
    sheet: Profile, read: bool
) -> None:
    def asked() -> AtBench:
        b = AtBench("coats", profile=sheet, before=read_and_coated if read else door_coated)
        b.press("up")
        b.pass_time(3)
        assert b.keys["Space"] == "coat 2: door?" and b.readout.shown_word == "NOT KNOWN"
        b.press("space")
        assert len(begun_of(b)) == 1
        assert b.said.startswith("It is not known when coat 2 may go on; 4 s since the last one.")
        assert "Touch it first" in b.said
        return b

    sure = asked()
    sure.press("space")
    assert len(begun_of(sure)) == 2 and "wait not known" in begun_of(sure)[-1].amiss
    wet = asked()
    wet.press("w")
    assert wet.keys["Space"] == "coat 2: door?"
    dry = asked()
    dry.press("d")
    assert dry.keys["Space"] == "begin coat 2: door"
    dry.press("space")
    assert len(begun_of(dry)) == 2 and "wait not known" not in begun_of(dry)[-1].amiss


def test_what_was_asked_a_while_ago_is_asked_again_and_of_this_part_alone() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.press("up", "space")
    assert b.keys["Space"] == "begin coat 2 all the same: door"
    b.pass_time(61)
    assert b.keys["Space"] == "coat 2: door?"
    b.press("space", "down")
    assert b.keys["Space"] == "begin coat 1: hood"
    b.press("space")
    assert [each.part for each in begun_of(b)] == ["door", "hood"]


def test_pagedown_answers_like_space_and_a_bounce_does_not() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.press("up", "space")
    b.clock.advance(0.3)
    b.press_now("space")
    assert len(begun_of(b)) == 1
    b.press("pagedown")
    assert len(begun_of(b)) == 2


def test_near_the_dew_point_and_under_the_minimum_it_says_stop() -> None:
    # Air 9 C at 93 %, the part 8.8 C: 0.9 K over the dew point; the product wants 15 C.
    def before(clock: ManualClock) -> Sequence[Event]:
        read = mild(0, air=9, humidity=93, part=8.8)
        return [msgspec.structs.replace(read, at=clock.now())]

    sheet = trial(limits=Limits(part_c=Range(15, None), dew_margin_c=3.0))
    b = AtBench("coats", profile=sheet, before=before)
    assert (b.readout.figure, b.readout.shown_word) == ("COAT 1", "STOP")
    assert b.readout.tone is Tone.LATE
    assert b.readout.lines[0].startswith("▲ The part is 0.9 °C over the dew point; it has to be at")
    assert b.readout.lines[1].startswith(
        "▲ The part is at 8.8 °C; the product asks for at least 15"
    )
    b.press("space")
    assert begun_of(b) == []
    b.press("space")
    assert begun_of(b)[0].amiss[:2] == ("dew margin too small", "part outside its limits")
    assert b.said.startswith("door: begun, in the log with: dew margin too small, part outside")


def test_weather_never_read_shows_check_and_asks_nothing() -> None:
    b = AtBench("coats")
    assert (b.readout.shown_word, b.readout.tone) == ("CHECK", Tone.CAUTION)
    assert len(b.readout.lines) <= 3
    b.press("space")
    assert "weather not read" in begun_of(b)[0].amiss


def test_ready_is_not_said_while_something_grave_is_amiss() -> None:
    sheet = trial(limits=Limits(humidity_percent=Range(None, 60)))
    b = AtBench("coats", profile=sheet, before=read_and_coated)
    b.press("up")
    b.pass_time(601)
    assert (b.readout.figure, b.readout.tone) == ("READY", Tone.READY)
    damp = msgspec.structs.replace(mild(0, humidity=70), at=b.clock.now())
    b.keep(damp)
    assert (b.readout.figure, b.readout.tone) == ("STOP", Tone.LATE)
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    assert (parts.rows[0].word, parts.rows[0].tone) == ("STOP", Tone.LATE)


def coated_twice(clock: ManualClock) -> Sequence[Event]:
    found = [*in_mild_weather(clock), *_coat(clock, "door", 1)]
    clock.advance(600)
    return [*found, *_coat(clock, "door", 2)]


def test_after_the_last_coat_enter_leads_on_and_a_further_one_takes_two_presses() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=coated_twice, parts=("door",))
    onto = next_open(b.job, after=b.bench.step).name
    assert f"All coats are on. Enter: {onto}." in b.readout.lines
    assert b.keys["Space"] == "a further coat?"
    b.pass_time(9)
    b.press("space")  # ten seconds after coat 2
    assert b.said.startswith("The wait before coat 3 lasts another")
    assert b.keys["Space"] == "begin coat 3 of 2 all the same: door"
    b.press("space")
    begun = begun_of(b)[-1]
    assert begun.coat == 3 and begun.early_s == 589 and begun.amiss[0] == "more coats than planned"


def test_a_coat_while_another_one_runs_ends_that_one_first() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space", "down")
    assert "door: coat 1 is still being sprayed. End it first: Space." in b.text
    assert b.keys["Space"] == "end coat 1 on door first"
    b.press("space")
    assert b.job.running_coat("door") is None and b.job.running_coat("hood") is None
    assert b.said == "door: coat 1 ended." and b.keys["Space"] == "begin coat 1: hood"
    b.press("space")
    assert b.job.running_coat("hood") is not None and chosen(b) == "hood"


def test_two_guns_are_possible_by_name() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space", "down", "right")
    b.choose("Begin a coat on hood while door goes on")
    assert b.job.running_coat("door") is not None and b.job.running_coat("hood") is not None
    assert "another coat still running" in begun_of(b)[-1].amiss


def cool_and_coated(clock: ManualClock) -> Sequence[Event]:
    """At 20 C a wait given for 21 C is an estimate, a little longer."""
    cool = msgspec.structs.replace(mild(air=20.0, part=20.0), at=clock.now())
    return [cool, *_coat(clock, "door", 1)]


def test_a_dry_touch_changes_nothing_where_the_sheet_knows_the_time_and_says_so() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.pass_time(400)
    b.press("up", "d")
    assert [each.result for each in b.job.of(TouchTried)] == ["dry"]
    assert (
        b.said == "door: touched dry. The time that is counted stands: a touch opens nothing here."
    )
    assert b.readout.figure == "3:20" and b.readout.shown_word == "WAIT"


UNFELT = trial(waits=Waits(recoat_opens=one_time(16 * 3600)))


def test_where_touch_cannot_tell_nothing_asks_for_it() -> None:
    b = AtBench("coats", profile=UNFELT, before=door_coated)  # with the weather not read
    b.press("up")
    assert "Touch cannot tell: its data sheet or its maker says when." in b.text
    assert "touch it" not in b.text.lower() and "touch test" not in b.text
    b.press("d")
    assert b.said == "door: touched dry. Touch cannot tell: its data sheet or its maker says when."
    b.press("space")
    assert b.job.running_coat("door") is None and "Touch cannot tell" in b.said
    b.press("space")
    assert "wait not known" in begun_of(b)[-1].amiss


def test_a_dry_touch_long_before_its_time_is_taken_with_one_more_press() -> None:
    b = AtBench("coats", before=cool_and_coated)
    b.pass_time(42)
    b.press("up", "d")
    assert b.job.of(TouchTried) == ()
    assert b.said == "door touched dry after 42 s of 11 min: press again to take it."
    b.press("d")
    assert [each.result for each in b.job.of(TouchTried)] == ["dry"]
    assert b.readout.figure == "READY"


def test_a_dry_touch_is_asked_from_the_menu_too() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.pass_time(42)
    b.press("up", "right")
    b.choose("door: touched dry")
    assert b.job.of(TouchTried) == () and b.said.endswith("press again to take it.")
    b.press("right")
    b.choose("door: touched dry")
    assert [each.result for each in b.job.of(TouchTried)] == ["dry"]


def test_a_dry_touch_after_half_of_the_wait_is_taken_at_once() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.pass_time(300)
    b.press("up", "d")
    assert [each.result for each in b.job.of(TouchTried)] == ["dry"]


def test_a_coat_that_cannot_be_kept_is_not_begun_and_nothing_is_said_of_it() -> None:
    b = AtBench("coats", before=door_coated)
    assert b.keys["Space"] == "begin coat 1: hood"  # with the weather not read, which is said
    b.refuses = True
    b.press("space")
    assert b.job.running_coat("hood") is None and b.said == ""


def test_how_sure_a_wait_is_stands_before_its_rule_and_is_said_once() -> None:
    def cold(clock: ManualClock) -> Sequence[Event]:
        read = msgspec.structs.replace(mild(), at=clock.now(), air=q(12, "C"), part=q(12, "C"))
        return [read, *_coat(clock, "door", 1)]

    b = AtBench("coats", profile=TWO_COATS, before=cold)
    b.press("up")
    (said,) = [line for line in b.readout.lines if line.startswith("~")]
    assert said.startswith("~ estimated: no published law") and said.count("estimate") == 1


def test_while_the_clock_is_in_doubt_a_row_warns_and_has_no_sign_of_an_estimate() -> None:
    def cold(clock: ManualClock) -> Sequence[Event]:
        read = msgspec.structs.replace(mild(), at=clock.now(), air=q(12, "C"), part=q(12, "C"))
        return [read, *_coat(clock, "door", 1)]

    b = AtBench("coats", profile=TWO_COATS, before=cold)
    (each, *_) = standings(b.job, b.clock.now())
    sure = part_row(b.now, "door", each)
    assert (sure.estimate, sure.word, sure.tone) == (True, "WAIT", Tone.WAIT)
    row = part_row(b.now, "door", msgspec.structs.replace(each, basis=Basis.DOUBTFUL))
    assert (row.estimate, row.word, row.time) == (False, "CHECK CLOCK", "clock?")
    assert row.tone is Tone.CAUTION


def test_the_opening_figure_is_the_wait_and_not_the_part_that_is_to_be_coated() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.pass_time(150)
    assert b.keys["Space"] == "begin coat 1: hood" and chosen(b) == "hood"
    shown = b.readout
    assert (shown.whose, shown.shown_word, shown.figure) == ("door", "WAIT", "7:30")
    assert shown.edge == pytest.approx(150 / 600)  # a quarter of ten minutes is over
    b.press("up", "down")
    assert (b.readout.whose, b.readout.figure, b.readout.edge) == ("hood", "COAT 1", None)


def test_a_coat_that_is_sprayed_is_the_figure_and_then_the_wait_again() -> None:
    b = AtBench("coats", before=read_and_coated)
    b.press("space")
    assert (b.readout.whose, b.readout.shown_word) == ("hood", "SPRAYING")
    b.press("space")
    assert b.readout.shown_word == "WAIT" and b.readout.edge is not None


def test_what_is_amiss_with_the_part_that_is_next_is_said_under_another_ones_wait() -> None:
    sheet = trial(limits=Limits(humidity_percent=Range(None, 40)))
    b = AtBench("coats", profile=sheet, before=door_coated)
    b.keep(msgspec.structs.replace(mild(0, humidity=70), at=b.clock.now()))
    assert b.readout.whose == "door" and b.readout.lines[0].startswith("hood: ▲ Humidity is 70 %")
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    assert (parts.rows[parts.chosen].name, parts.rows[parts.chosen].word) == ("hood", "STOP")


def test_a_wait_that_is_not_known_has_no_edge() -> None:
    b = AtBench("coats", before=door_coated)
    assert (b.readout.shown_word, b.readout.edge) == ("NOT KNOWN", None)


def test_batches_and_further_windows_stand_in_the_one_list() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        mixed = BatchMixed(n=0, at=clock.now(), batch=1, total=q(500, "ml"))
        return [*read_and_coated(clock), mixed]

    b = AtBench("coats", before=before)
    b.pass_time(3600)  # of four hours in the trial profile
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    pot = parts.rows[-1]
    assert (pot.name, pot.what, pot.word) == ("batch 1", "pot life", "IN USE")
    assert pot.edge == pytest.approx(0.75)  # it empties
