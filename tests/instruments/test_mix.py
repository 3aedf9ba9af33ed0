"""The mix worked with keys: what it says, which row is marked, what is on disk."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
import pytest

from booth.bench.act import Ask, Context
from booth.bench.next_act import SPACE
from booth.instruments.mix.words import empty_readout, pour_readout
from booth.job.pouring import BatchPlan, open_pours, pouring
from booth.log import events as ev
from booth.log.fold import fold
from booth.profile.model import AtTemperature, Mix, MixPart, Range, Thinner, WaitRule
from booth.profile.steps import DEFAULT_STEPS
from booth.units import System
from booth.widgets.figure_panel import lay_out
from booth.words.shown import Pours, Tone
from booth.words.wait_words import faces
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import START, mild, opened, profile, q
from tests.manual_clock import ManualClock
from tests.widgets.ink import height_of, ink_of

#: 2 : 1 with 10 % of thinner: of 660 ml 400, 200 and 60.
TWO_TO_ONE = profile(
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.2)),
        thinner=Thinner("thinner", Range(10, 10), 15, 0.8, 0.8),
        pot_life=WaitRule((AtTemperature(21.0, 4 * 3600),)),
    )
)


def at_mix(typed: str = "", **more: object) -> AtBench:
    """At the mix; with an amount that was typed, in the row of the reading."""
    bench = AtBench("mix", profile=more.pop("profile", TWO_TO_ONE), **more)  # type: ignore[arg-type]
    if typed:
        bench.type(typed)
        bench.press("enter")
    return bench


def shown(bench: AtBench) -> tuple[str, str]:
    """The figure with its unit, and the word."""
    """The figure, and what to do; of a pour what is poured: that it is to be poured is said too."""
    readout, does = bench.readout, bench.readout.shown_word
    if does in ("POUR", "ADD"):
        does = f"{'ADD ' if does == 'ADD' else ''}{readout.whose.upper()}"
    return f"{readout.figure} {readout.unit}".strip(), does


def table(bench: AtBench) -> list[tuple[str, str]]:
    (pours,) = bench.bench.instrument.picture(bench.now, bench.rows.values)
    assert isinstance(pours, Pours)
    return [(row.name, row.mark) for row in pours.rows]


def clocks(bench: AtBench) -> list[str]:
    return [face.remaining for face in faces(bench.job, bench.clock.now())]


def test_three_pours_with_the_space_bar_make_a_batch() -> None:
    b = at_mix()
    assert b.marked == "amount"
    b.type("660 ml")
    assert b.keys["Enter"] == "on: Cup shows"
    b.press("enter")
    assert b.marked == "cup"
    assert shown(b) == ("400 ml", "CLEAR")
    assert table(b) == [("clear", "400 ml"), ("hardener", "600 ml"), ("thinner", "660 ml")]
    assert b.keys["Space"] == "poured: clear"
    b.press("space")
    assert shown(b) == ("600 ml", "HARDENER")
    assert b.marked == "cup"
    b.press("enter")  # an Enter too many is no pour
    assert shown(b) == ("600 ml", "HARDENER") and "Space when it is poured" in b.said
    b.press("space")
    assert shown(b) == ("660 ml", "THINNER")
    b.press("space")
    *pours, batch = b.log
    assert [(p.name, round(p.amount.value)) for p in pours if isinstance(p, ev.Poured)] == [
        ("clear", 400),
        ("hardener", 200),
        ("thinner", 60),
    ]
    assert isinstance(batch, ev.BatchMixed) and batch.total is not None
    assert (batch.batch, batch.total.value) == (1, pytest.approx(660))
    assert b.readout.word == "MIXED" and b.said == "Batch 1 is mixed. Stir it well."
    # The pot life runs and is among the clocks.
    assert clocks(b) == ["4:00:00"]
    b.press("enter")
    assert isinstance(b.log[-1], ev.StepDone)


def test_too_much_is_typed_and_the_rest_grows() -> None:
    b = at_mix("660 ml")
    b.press("space")
    b.type("640")  # 240 of hardener instead of 200
    assert b.keys["Enter"] == "poured: hardener"
    b.press("enter")
    assert shown(b) == ("720 ml", "ADD CLEAR")
    assert "Too much hardener" in b.text
    assert table(b) == [
        ("clear", "400 ml"),
        ("hardener", "640 ml"),
        ("clear", "720 ml"),
        ("thinner", "792 ml"),
    ]
    b.press("space")
    # The clear that was added as told is not said to be too much.
    assert "Too much clear" not in b.text and shown(b) == ("792 ml", "THINNER")
    b.press("space")
    batch = b.log[-1]
    assert isinstance(batch, ev.BatchMixed)
    assert {pour.name: round(pour.amount.value) for pour in batch.pours} == {
        "clear": 480,
        "hardener": 240,
        "thinner": 72,
    }


@pytest.mark.parametrize("key", ["enter", *SPACE])
def test_a_reading_below_the_last_is_refused_and_stays_for_correction(key: str) -> None:
    b = at_mix("660 ml")
    b.press("space")
    b.type("200ml")
    b.press(key)
    assert "marks count up" in b.said
    assert b.row("cup").text == "200ml"
    assert len(b.log) == 1


def test_what_it_showed_before_is_no_pour() -> None:
    b = at_mix("660 ml")
    b.press("space")
    b.type("400")
    b.press("enter")
    assert "before this pour" in b.said and len(b.log) == 1


def test_a_reading_that_cannot_be_read_is_no_pour() -> None:
    b = at_mix("660 ml")
    b.type("400 psi")
    b.press("space")
    assert b.log == [] and "measures a pressure" in b.said
    assert b.row("cup").text == "400 psi"


def test_the_space_before_a_unit_is_no_pour() -> None:
    """660 US fluid ounces are not what somebody means who is typing '660 ml'."""
    b = at_mix(system=System.US)
    b.type("660")
    assert b.keys["Space"] == "its unit"
    b.press("space")
    assert b.log == [] and b.said == "Now its unit; or Space again: poured: clear."
    b.type("ml")
    assert b.rows.values["amount"] == q(660, "ml", "660 ml") and b.said == ""
    b.press("space")
    assert [type(event) for event in b.log] == [ev.Poured]
    # A key that is held down types one space, and pours nothing.
    b.type("640")
    b.clock.advance(1.0)
    for _ in range(9):
        b.press_now("space")
        b.clock.advance(0.03)
    assert len(b.log) == 1 and b.row("amount").text == "" and b.row("cup").text == "640 "
    # The key for a foot makes no character, and is a pour at once.
    b.press("pagedown")
    assert [type(event) for event in b.log] == [ev.Poured, ev.Poured]


def test_backspace_goes_back_one_pour_even_from_a_mixed_batch() -> None:
    b = at_mix("660 ml")
    b.press("space", "space", "space")
    assert b.readout.word == "MIXED"
    b.press("backspace")
    assert shown(b) == ("660 ml", "THINNER")
    assert b.said == "Voided: poured into batch 1: thinner 60 ml. Backspace brings it back."
    assert [event.target for event in b.log if isinstance(event, ev.Voided)] == [5, 4]
    # Another key in between, and the one before it goes.
    b.press("down", "down", "backspace")
    assert shown(b) == ("600 ml", "HARDENER")
    assert [event.target for event in b.log if isinstance(event, ev.Voided)] == [5, 4, 3]


def test_backspace_again_brings_the_pour_and_its_batch_back_however_often() -> None:
    b = at_mix("660 ml")
    b.press("space", "space", "space")
    mixed = b.job.batches
    for _ in range(3):
        b.press("backspace")
        assert b.job.batches == () and len(open_pours(b.job)) == 2
        assert b.keys["Bksp"] == "bring back: poured into batch 1: thinner 60 ml"
        b.press("backspace")
        assert b.job.batches == mixed and open_pours(b.job) == ()
    assert clocks(b) == ["4:00:00"] or clocks(b) == ["3:59:59"]


def test_erasing_what_was_typed_voids_nothing() -> None:
    b = at_mix("660 ml")
    b.press("space")
    b.type("64")
    assert b.keys["Bksp"] == "erase"
    b.press("backspace", "backspace", "backspace")
    assert [type(event) for event in b.log] == [ev.Poured]


def test_a_pour_that_cannot_be_kept_leaves_what_was_typed() -> None:
    b = at_mix("660 ml")
    b.press("space", "space")
    b.type("661")
    b.refuses = True
    b.press("enter")
    assert len(b.log) == 2 and b.row("cup").text == "661"
    b.refuses = False
    b.clock.advance(1.0)
    b.press("enter")
    assert [type(event) for event in b.log[2:]] == [ev.Poured, ev.BatchMixed]
    b.press("enter")  # it bounced: nobody wanted to go on
    assert b.bench.step.key == "mix" and len(b.log) == 4


def test_a_batch_that_could_not_be_kept_after_its_last_pour_is_offered_again() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        meant = ev.Poured(
            n=0, at=clock.now(), batch=1, name="", amount=q(0, "ml"), wanted=q(300, "ml")
        )
        return [
            msgspec.structs.replace(meant, name=name, amount=q(amount, "ml"))
            for name, amount in (("clear", 200), ("hardener", 100))
        ]

    b = at_mix(before=before)
    assert b.readout.label == "everything is in" and b.keys["Space"] == "mixed"
    b.press("enter")
    assert len(b.log) == 2
    b.press("space")
    assert isinstance(b.log[-1], ev.BatchMixed) and len(b.log) == 3


def test_on_the_scale_in_grams_whatever_the_units() -> None:
    b = at_mix(system=System.US)
    b.type("660 ml")
    b.go_to("by")
    b.press("right")
    assert b.row("by").given == "weight"
    b.press("enter")
    assert b.marked == "scale"
    assert shown(b)[0] == "400.0 g"
    b.type("405")
    b.press("enter")
    (pour,) = b.log
    assert isinstance(pour, ev.Poured)
    assert (pour.amount.value, pour.amount.unit) == (405, "g")
    # Units switched on the way: the marks of a scale stay grams. 202.5 ml x 1.2 g/ml after 405 g.
    b.system = System.METRIC
    assert shown(b)[0] == "648.0 g"


def test_digits_after_choosing_weight_are_the_reading_of_the_scale() -> None:
    """They once became an amount of 92 fl oz, and once 92 % of thinner."""
    b = at_mix(system=System.US)
    b.type("660 ml")
    b.go_to("by")
    b.press("right")
    assert b.keys["0-9"] == "Scale shows"
    b.type("92")
    assert b.marked == "scale" and b.row("scale").text == "92"
    assert b.row("amount").text == "660 ml" and b.row("thinner").text == ""
    b.press("enter")
    (pour,) = b.log
    assert isinstance(pour, ev.Poured) and pour.amount == q(92, "g")


def test_weight_chosen_first_then_the_amount() -> None:
    b = at_mix()
    b.go_to("by")
    b.press("right")
    b.type("9")  # which row could it belong to? None yet.
    assert b.said == "Enter the amount first, with its unit if you like."
    assert all(row.text == "" for row in b.rows.every)
    assert b.keys["Enter"] == "on: Amount"
    b.press("enter")
    assert b.marked == "amount" and b.log == []
    b.type("660 ml")
    b.press("enter", "enter", "enter", "enter")
    assert b.marked == "scale" and shown(b)[0] == "400.0 g"


def test_the_next_batch_is_poured_by_weight_again_and_is_else_a_new_one() -> None:
    b = at_mix()
    b.type("100 ml")
    b.go_to("of")
    b.press("right")  # all that is left of clear
    b.go_to("by")
    b.press("right", "enter", "space", "space", "space")
    assert isinstance(b.log[-1], ev.BatchMixed)
    assert (b.row("by").given, b.row("of").given, b.row("amount").text) == ("weight", "", "")


def test_units_switch_the_marks_at_any_moment() -> None:
    b = at_mix("660 ml")
    b.system = System.US
    # 400 ml / 29.5735 ml per US fl oz (NIST SP 811, app. B).
    assert shown(b)[0] == f"{400 / 29.5735:.1f} fl oz"


def test_more_thinner_than_the_limit_is_refused() -> None:
    b = at_mix("660 ml")
    b.fill("thinner", "20")
    b.press("enter")
    assert "more than the 15 %" in b.text
    b.press("space")
    assert b.log == [] and "more than the 15 %" in b.said


def test_a_thinner_that_cannot_be_read_is_no_plan() -> None:
    b = at_mix("660 ml")
    b.fill("thinner", "5 psi")
    b.press("pagedown")
    assert b.log == [] and "measures a pressure" in b.said


def test_half_poured_comes_back_where_it_was() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return [
            ev.Poured(
                n=0,
                at=clock.now(),
                batch=1,
                name="clear",
                amount=q(404, "ml"),
                wanted=q(660, "ml"),
                thinner=q(10, "%"),
            )
        ]

    b = at_mix(before=before)
    assert b.marked == "cup"
    assert shown(b) == ("606 ml", "HARDENER")  # 404 of clear want 202
    b.press("space", "space")
    batch = b.log[-1]
    assert isinstance(batch, ev.BatchMixed) and batch.batch == 1


def test_the_amount_that_was_planned_is_offered() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return [ev.AmountPlanned(n=0, at=clock.now(), area=q(2, "m2"), amount=q(660, "ml"))]

    b = at_mix(before=before)
    assert b.marked == "cup" and b.keys["0-9"] == "Cup shows"
    assert shown(b)[0] == "400 ml"
    b.go_to("amount")
    assert b.keys["Enter"] == "on: Cup shows"
    b.press("space")
    assert isinstance(b.log[-1], ev.Poured)


def test_a_second_batch_onto_the_rest_of_the_first() -> None:
    b = at_mix("660 ml")
    b.press("space", "space", "space")
    b.pass_time(3600)
    b.type("600 ml")
    b.go_to("onto")
    b.press("right")
    assert b.row("onto").given == "1"
    assert ("1", "the rest of batch 1") in b.row("onto").field.choices
    b.press("down")
    assert b.marked == "rest"
    b.type("270 ml")
    b.press("enter")
    # 330 ml fresh: 200, 100 and 30, counted on from 270.
    assert shown(b)[0] == "470 ml"
    assert "batch 1, which is older" in b.text
    b.press("space", "space", "space")
    batch = b.log[-1]
    assert isinstance(batch, ev.BatchMixed)
    assert (batch.batch, batch.onto) == (2, 1)
    assert batch.total is not None and batch.total.value == pytest.approx(600)
    assert "batch 1, which is older, rules all of it" in b.said
    # The older one rules: of its four hours not quite three are left.
    assert [clock[:5] for clock in clocks(b)] == ["2:59:"]
    # The next one goes into a fresh cup again, or onto the one that stands there now.
    assert [key for key, _ in b.row("onto").field.choices] == ["fresh", "2"]
    assert b.row("onto").given == "fresh"


def test_a_press_that_bounces_is_one_pour() -> None:
    b = at_mix("660 ml")
    b.press("space")
    b.press_now("space")
    assert [type(event) for event in b.log] == [ev.Poured]


def test_what_is_left_of_the_hardener_sets_the_batch() -> None:
    b = at_mix("100 ml")
    b.go_to("of")
    b.press("left", "enter")
    assert b.row("of").given == "hardener"
    assert ("hardener", "all that is left of hardener") in b.row("of").field.choices
    assert shown(b)[0] == "200 ml"


def test_without_an_amount_there_is_nothing_to_pour() -> None:
    b = at_mix()
    b.press("space")
    assert b.said == "Enter the amount first, with its unit if you like." and b.log == []
    assert "Space" not in b.keys


def test_what_most_never_touch_stands_in_the_quiet_line() -> None:
    b = at_mix()
    assert [row.key for row in b.rows.sight] == ["amount"]
    assert [row.key for row in b.rows.assumed] == ["of", "thinner", "by"]
    assert b.keys["↓"] == "what is assumed"


def test_nothing_to_mix_says_stir() -> None:
    readout = empty_readout(context_of(profile=profile(mix=None)))
    assert (readout.figure, readout.word) == ("STIR", "")


def test_a_pot_life_does_not_read_like_a_time_of_day() -> None:
    assert "pot life today 4 h" in empty_readout(context_of(mild(), profile=TWO_TO_ONE)).lines


def test_names_never_reach_the_screen_as_they_are() -> None:
    odd = profile(mix=Mix(parts=(MixPart("[red]x[/", 2), MixPart("\x1b[2Jy", 1))))
    b = at_mix("300 ml", profile=odd)
    assert "[red]x[/" in b.text and "␛[2Jy" in b.text
    b.press("space")
    assert "poured: ␛[2Jy" in b.text
    b.press("space")
    assert isinstance(b.log[-1], ev.BatchMixed)
    assert "\x1b" not in b.text


def test_a_long_name_is_told_whole_and_shortened_by_words_where_it_is_lettered() -> None:
    long = profile(mix=Mix(parts=(MixPart("crosslinking hardener", 1), MixPart("b", 1))))
    b = at_mix("300 ml", profile=long)
    assert shown(b)[1] == "CROSSLINKING HARDENER"
    ink = ink_of(lay_out(b.readout, 80, 12, 4), b.readout.edge)
    assert height_of("CROSSLINKING", ink, 4, 4) and not height_of("HARDENER", ink, 3)


def test_the_figure_is_the_next_mark() -> None:
    plan = BatchPlan(q(660, "ml"), thinner_percent=10)
    state = pouring(TWO_TO_ONE, plan, [("clear", 400)])
    job = fold([opened(mix=TWO_TO_ONE.mix)])
    context = Context(job, START, System.METRIC, DEFAULT_STEPS[0])
    readout = pour_readout(context, state)
    assert (readout.figure, readout.unit, readout.tone) == ("600", "ml", Tone.READY)
    assert readout.lines[0] == "200 ml of hardener"


@pytest.mark.parametrize(
    ("hours", "said", "tone"),
    [
        (0.1, "MIXED", Tone.GOOD),
        (3.6, "NEARLY OVER", Tone.CLOSING),  # its last half hour
        (4.1, "OVER", Tone.LATE),
    ],
)
def test_the_batch_says_when_its_pot_life_is_over(hours: float, said: str, tone: Tone) -> None:
    def mixed(clock: ManualClock) -> Sequence[ev.Event]:
        return [ev.BatchMixed(n=0, at=clock.now(), batch=1, total=q(660, "ml"))]

    b = at_mix(before=mixed)
    b.clock.advance(hours * 3600)
    assert (b.readout.word, b.readout.tone) == (said, tone)


def test_the_batch_numbers_of_the_cans_are_noted_and_stand_there_the_next_time() -> None:
    b = at_mix("300 ml")
    for numbers in ("A 4711, B 0815", "A 4712, B 0815"):
        (more,) = b.bench.instrument.more(b.now, b.rows)
        b.rest = b.bench.carry_out(more.act(b.now), b.clock.now())
        b.answer(numbers)
        (note,) = b.job.notes[-1:]
        assert note.text == f"cans: {numbers}" and b.said == f"Noted: cans: {numbers}."
        (ask,) = more.act(b.now).do
        assert isinstance(ask, Ask) and ask.text == numbers
    # What stood in the rows stands there.
    b.press("space")
    assert isinstance(b.log[-1], ev.Poured)
