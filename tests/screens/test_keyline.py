"""The key line says what a key does at this moment, and nothing that it does not."""

from __future__ import annotations

from textual.widgets import Static

from booth.bench.commands import COMMANDS, key_name
from booth.log.events import EffluxTimed
from booth.screens.keyline import key_line, keys_now, pressed_by
from tests.instruments.at_bench import at_bench

CUP = (("Space", "start"), ("←→", "cup"), ("Enter", "go on"))


def test_outside_an_entry_the_letters_and_nothing_to_void() -> None:
    found = dict(keys_now(CUP, can_void=False, typing=False, typed=False))
    assert found["←→"] == "cup" and found["n"] == "note" and found["?"] == "help"
    assert "Bksp" not in found and "F2" not in found


def test_with_something_kept_backspace_voids_it() -> None:
    assert dict(keys_now(CUP, can_void=True, typing=False, typed=False))["Bksp"] == "void last"


def test_in_an_entry_letters_are_text_and_the_function_keys_ask() -> None:
    found = dict(keys_now(CUP, can_void=True, typing=True, typed=False))
    assert found["F1"] == "help" and found["F2"] == "note" and "n" not in found
    # Left and right would move the cursor: up and down lead to the choice.
    assert "←→" not in found and found["↑↓"] == "rows"
    assert found["Space"] == "start" and found["Bksp"] == "void last"


def test_in_an_entry_with_text_space_and_backspace_are_of_the_text() -> None:
    found = dict(keys_now(CUP, can_void=True, typing=True, typed=True))
    assert "Space" not in found and found["Bksp"] == "erase"


def test_a_key_stands_there_once() -> None:
    twice = (("↑↓", "part"), *CUP)
    keys = [key for key, _ in keys_now(twice, can_void=True, typing=True, typed=False)]
    assert len(keys) == len(set(keys))
    assert dict(keys_now(twice, can_void=True, typing=True, typed=False))["↑↓"] == "part"


def test_the_next_key_is_there_in_the_narrowest_window() -> None:
    assert key_line(CUP, 14).plain.startswith(" Space ")


def test_every_key_that_a_line_names_alone_can_be_clicked() -> None:
    for command in COMMANDS:
        for key in command.keys:
            assert pressed_by(key_name(key)) == key
    assert [pressed_by(name) for name in ("digits", "0-9", "d k w")] == [None, None, None]


async def test_a_click_on_a_word_is_its_key() -> None:
    async with at_bench("efflux") as desk:
        await desk.pilot.click("#keys", offset=(2, 0))  # Space
        assert desk.instrument.busy
        await desk.pass_time(20)
        at = desk.text.splitlines()[-1].index("stop at")
        await desk.pilot.click("#keys", offset=(at, 0))
        await desk.pilot.pause()
        assert not desk.instrument.busy
        (timed,) = [each for each in desk.log if isinstance(each, EffluxTimed)]
        assert 19.9 <= timed.seconds <= 20.5


async def test_a_sheet_and_a_question_can_be_left_by_mouse() -> None:
    async with at_bench("efflux") as desk:
        for key in ("f1", "f2"):
            await desk.press(key)
            (line,) = desk.app.screen.query(".dialog-keys")
            await desk.pilot.click(line, offset=(2, 0))
            await desk.pilot.pause()
            assert desk.app.screen is desk.bench


async def test_a_low_window_cuts_no_sentence_and_help_has_all_of_it() -> None:
    async with at_bench("catch", size=(60, 18)) as desk:
        how = " ".join(desk.bench.step.how)
        assert how.split(". ")[0] not in " ".join(desk.text.split())
        await desk.press("f1")
        paragraphs = [
            str(each.content) for each in desk.app.screen.query(".paragraph").results(Static)
        ]
        assert paragraphs[0] == how
        assert "F10" in paragraphs[-1]  # all keys come last
