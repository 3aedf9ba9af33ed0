"""The law of input, held over every instrument, every row, every entry and every key.

What it says stands in ``bench.next_act``; each of its rules, with its letter, in ``judge``.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.bench.act import Keep, Menu
from booth.bench.next_act import next_act
from booth.log import events as ev
from booth.profile.model import Film, Range, Waits
from tests.instruments.at_bench import AtBench, key_of
from tests.job.make import mild, one_time, profile
from tests.law.desks import BEFORE, cases, desk_for, every_kind, states, step_of_kind, twin
from tests.law.judge import APART_S, broken, pressed
from tests.manual_clock import ManualClock

#: Every key of the law, and one of each sort of character: a digit, what a figure begins with, a
#: letter that an instrument knows, one of a command, one of neither, a sign.
KEYS = (
    *("space", "pagedown", "enter", "backspace", "up", "down", "left", "right"),
    *("1", ".", "d", "n", "z", "question_mark"),
)
STATES = [pytest.param(*state, id=", ".join(state)) for state in states()]


def key_line(desk: AtBench) -> dict[str, str]:
    """The key line as it stands when the next key is pressed."""
    later = twin(desk)
    later.clock.advance(APART_S)
    return later.keys


@pytest.mark.parametrize(("kind", "before", "started"), STATES)
def test_every_key_does_what_its_word_says(kind: str, before: str, started: str) -> None:
    faults = []
    for case in cases(desk_for(kind, before, started)):
        line = key_line(case.desk)
        for key in KEYS:
            found = broken(pressed(twin(case.desk), key, line))
            faults += [f"{case.what}: {fault}" for fault in found]
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize(("kind", "before", "started"), STATES)
def test_enter_after_enter_skips_nothing_on_its_way(kind: str, before: str, started: str) -> None:
    faults = []
    for case in cases(desk_for(kind, before, started)):
        desk, step = twin(case.desk), case.desk.bench.step.key
        for _ in range(len(desk.rows.sight) + 3):
            found = broken(pressed(desk, "enter"))
            faults += [f"{case.what}: {fault}" for fault in found]
            if desk.bench.step.key != step:
                break
    assert not faults, "\n".join(faults)


@pytest.mark.parametrize(("kind", "before", "started"), STATES)
def test_backspace_after_the_last_character_does_nothing(
    kind: str, before: str, started: str
) -> None:
    for case in cases(desk_for(kind, before, started)):
        desk = twin(case.desk)
        entries, typed = len(desk.events), desk.rows.marked and desk.rows.marked.text
        if not typed:
            continue
        for _ in typed:
            assert pressed(desk, "backspace", {}).act.word == "erase", case.what
        for _ in range(3):
            press = pressed(desk, "backspace", {})
            assert press.act.word == "" and press.before == press.after, f"{case.what}: {press}"
        assert len(desk.events) == entries, case.what


@pytest.mark.parametrize(("kind", "before", "started"), STATES)
def test_space_does_the_same_whatever_row_is_marked(kind: str, before: str, started: str) -> None:
    said = {}
    for case in cases(desk_for(kind, before, started)):
        desk = case.desk
        if case.touched or (desk.rows.marked is not None and desk.rows.marked.field.is_words):
            continue  # in a text it is a space
        said[case.what] = next_act(desk.bench.situation(desk.clock.now()), key_of("space")).word
    assert len(set(said.values())) <= 1, said


@pytest.mark.parametrize(("kind", "before", "started"), STATES)
def test_what_cannot_be_kept_is_neither_left_nor_lost(kind: str, before: str, started: str) -> None:
    for case in cases(desk_for(kind, before, started)):
        for key in ("space", "enter", "backspace"):
            desk = twin(case.desk)
            desk.refuses = True
            press = pressed(desk, key, {})
            if any(isinstance(each, Keep) for each in press.act.do):
                # Whatever stands before the entry is a form or a sentence, never another step.
                assert not press.left and not press.kept, f"{case.what}: {press}"
                assert press.before.texts.keys() <= press.after.texts.keys(), case.what


@pytest.mark.parametrize("kind", [kind for kind in every_kind() if step_of_kind(kind).must])
def test_a_measurement_that_was_not_made_is_passed_over_with_a_word_only(kind: str) -> None:
    desk = desk_for(kind)
    step = desk.bench.step.key
    press = pressed(desk, "enter")
    assert not press.left
    if press.act.word != "skip, say why":
        assert press.kept  # the cautions: Enter reads one
        return
    desk.choose("later")
    assert desk.job.skipped[step].why == "later" and desk.bench.step.key != step


#: Also the keys that move in a text, and a choice from the menu that is up.
ANY_KEY = st.sampled_from(
    (*KEYS, *"0234579-/kws", "home", "end", "delete", "tab", "shift+tab", "menu")
)


@settings(max_examples=100, deadline=None)
@given(
    kind=st.sampled_from(every_kind()),
    before=st.sampled_from(sorted(BEFORE)),
    keys=st.lists(ANY_KEY, max_size=30),
    line=st.integers(0, 30),
)
def test_any_keys_in_any_order(kind: str, before: str, keys: list[str], line: int) -> None:
    desk = desk_for(kind, before)
    for key in keys:
        menu = next((each for each in desk.rest if isinstance(each, Menu)), None)
        if key == "menu" and menu is not None:
            desk.choose(menu.choices[line % len(menu.choices)].words)
        elif key != "menu":
            assert not broken(pressed(desk, key))


def wet_part(clock: ManualClock) -> tuple[ev.Event, ...]:
    """Water condenses on the parts, and the door has its last coat since a moment ago."""
    at = clock.now()
    read = replace(mild(0, air=26, humidity=75, part=20), at=at)
    coats = [kind(n=0, at=at, part="door", coat=1) for kind in (ev.CoatBegun, ev.CoatEnded)]
    return (read, *coats)


@pytest.mark.parametrize("asked", [(), ("space",), ("d",), ("space", "down"), ("d", "up")])
@pytest.mark.parametrize("later", [0.0, 100.0])
def test_what_is_asked_before_a_coat_or_a_touch_keeps_the_law(
    asked: tuple[str, ...], later: float
) -> None:
    one_coat = profile(film=Film(coats=Range(1, 1)), waits=Waits(recoat_opens=one_time(600)))
    desk = AtBench("coats", before=wet_part, profile=one_coat)
    desk.press("up", *asked)
    desk.pass_time(later)
    line = key_line(desk)
    faults = [fault for key in KEYS for fault in broken(pressed(twin(desk), key, line))]
    assert not faults, "\n".join(faults)


def test_one_press_more_begins_the_coat_and_no_other_key_does() -> None:
    desk = AtBench("coats", before=wet_part, profile=profile(film=Film(coats=Range(1, 1))))
    first = pressed(desk, "space")
    assert not first.kept and first.after.said[1] and first.line["Space"] == first.act.word
    for key in KEYS:
        press = pressed(twin(desk), key)
        assert press.has_kept(ev.CoatBegun) == (key in ("space", "pagedown")), press
        if press.has_kept(ev.CoatBegun):
            assert "all the same" in press.act.word
