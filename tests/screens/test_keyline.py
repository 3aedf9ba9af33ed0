"""The key line says what a key does at this moment, and nothing that it does not."""

from __future__ import annotations

import pytest
from rich.cells import cell_len

from booth.bench.commands import COMMANDS, key_name
from booth.log.events import CoatBegun, EffluxTimed, NoteMade, StopwatchStarted
from booth.screens.keyline import key_line, pressed_by
from booth.widgets.page_view import PageView
from tests.instruments.at_bench import AtBench
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_app, at_bench
from tests.screens.jobs import coated

CUP = (("Space", "start"), ("←→", "cup"), ("Enter", "go on"))


def timed(clock: ManualClock) -> list[EffluxTimed]:
    return [EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=21.5)]


def test_outside_an_entry_the_letters_and_nothing_to_void() -> None:
    found = AtBench("efflux").keys
    assert found["←→"] == "cup" and found["n"] == "note" and found["?"] == "help"
    assert "Bksp" not in found and "F2" not in found


def test_with_something_kept_backspace_voids_it() -> None:
    assert AtBench("efflux", before=timed).keys["Bksp"].startswith("void: ")


def test_in_an_entry_that_was_begun_letters_are_text_and_the_function_keys_ask() -> None:
    desk = AtBench("weather")
    assert desk.keys["n"] == "note", "a quantity does not begin with a letter"
    desk.type("7")
    found = desk.keys
    assert found["?"] == "help" and found["F2"] == "note" and "n" not in found
    assert found["Bksp"] == "erase" and found["↑↓"] == "rows"


def test_in_a_row_for_words_space_is_of_the_text() -> None:
    desk = AtBench("result")
    desk.go_to("words")
    assert "Space" not in desk.keys and "n" not in desk.keys and "?" not in desk.keys
    assert desk.keys["F1"] == "help" and desk.keys["F2"] == "note"
    desk.type("no runs")
    assert desk.row("words").text == "no runs" and desk.keys["Bksp"] == "erase"


@pytest.mark.parametrize("step", ["weather", "mix", "efflux", "catch", "coats", "result"])
def test_a_key_stands_there_once(step: str) -> None:
    desk = AtBench(step)
    for typed in ("", "5"):
        desk.type(typed)
        keys = [key for key, _ in desk.bench.keys(desk.clock.now())]
        assert len(keys) == len(set(keys)), keys


def test_the_next_key_is_there_in_the_narrowest_window() -> None:
    assert key_line(CUP, 14).plain.startswith(" Space ")


def test_one_with_long_words_does_not_hide_those_behind_it() -> None:
    keys = (("Space", "start"), ("Bksp", "void: " + "x" * 90), ("n", "note"))
    shown = key_line(keys, 40).plain.split()
    assert shown[:2] == ["Space", "start"] and shown[-2:] == ["n", "note"]


@pytest.mark.parametrize("width", range(10, 120, 7))
def test_a_line_is_never_wider_than_its_window(width: int) -> None:
    keys = (("Space", "begin coat 12: 左前扉" + "x" * 90), *CUP, *CUP)
    assert cell_len(key_line(keys, width).plain) <= width


def test_every_key_that_a_line_names_alone_can_be_clicked() -> None:
    for command in COMMANDS:
        for key in command.keys:
            assert pressed_by(key_name(key)) == key
    assert [pressed_by(name) for name in ("digits", "0-9", "d k w")] == [None, None, None]


async def test_a_click_on_a_word_is_its_key() -> None:
    async with at_bench("efflux") as at:
        await at.click("#keys", offset=(2, 0))  # Space
        assert at.kept(StopwatchStarted)
        await at.pass_time(20)
        where = at.key_line.index("stop at")
        await at.click("#keys", offset=(where, 0))
        (timed,) = at.kept(EffluxTimed)
        assert timed.seconds == 20.0


async def test_a_sheet_a_menu_and_a_question_can_be_left_by_mouse() -> None:
    async with at_bench("efflux") as at:
        for keys, word in ((("f1",), "back"), (("f2",), "back"), (("f2", "x"), "back")):
            await at.press(*keys)
            (line,) = at.app.screen.query("#keys")
            where = str(line.render()).index(word)
            await at.click("#keys", offset=(where, 0))
            assert at.screen == "BenchScreen", keys


async def test_a_line_of_a_menu_is_taken_by_mouse() -> None:
    async with at_bench("efflux") as at:
        await at.press("f2")
        row = next(n for n, line in enumerate(at.lines) if "gun cleaned in between" in line)
        await at.pilot.click(offset=(20, row))
        await at.settle()
        assert [note.text for note in at.kept(NoteMade)] == ["gun cleaned in between"]


async def test_steps_parts_and_rows_are_chosen_by_mouse() -> None:
    clock = ManualClock()
    async with at_bench("weather", *coated(clock, "door"), clock=clock) as at:
        row = next(n for n, line in enumerate(at.lines) if "Part" in line)
        await at.pilot.click(offset=(25, row))
        await at.settle()
        assert at.marked == "part"
        await at.press("escape")
        row = next(n for n, line in enumerate(at.lines) if "16 Coats and waits" in line)
        await at.pilot.click(offset=(6, row))
        await at.settle()
        assert at.step == "coats"
        row = next(n for n, line in enumerate(at.lines) if "door  1/3" in line)
        await at.pilot.click(offset=(35, row))
        await at.settle()
        assert "coat 2: door?" in at.key_line
        await at.press("space", "space")
        assert at.kept(CoatBegun)[-1].part == "door"


@pytest.mark.parametrize("size", [(80, 24), (58, 18), (200, 50)])
async def test_the_keys_of_a_dialog_are_in_sight_in_every_window(size: tuple[int, int]) -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock, size=size) as at:
        for keys, screen in ((("f1",), "Sheet"), (("right",), "Menu"), (("f2", "x"), "Ask")):
            await at.press(*keys)
            assert at.screen == screen
            assert any("Enter" in line and "▐" in line for line in at.lines), at.text
            await at.press("escape")


async def test_a_low_window_cuts_no_sentence_and_help_has_all_of_it() -> None:
    async with at_bench("catch", size=(60, 18)) as at:
        how = " ".join(" ".join(at.bench.bench.step.how).split())
        assert how.split(". ")[0] not in at.words
        await at.press("f1")
        paragraphs = [
            text for _, text in at.app.screen.query_one(PageView).shown.paragraphs if text
        ]
        assert any(each == how for each in paragraphs)
        assert "F10" in paragraphs[-1]  # all keys come last


async def test_every_screen_names_the_keys_that_leave_it() -> None:
    async with at_app(bundled=True) as at:
        for title in ("Two-pack clear", "Shop", "Past jobs"):
            await at.open(title)
            assert "Esc" in at.key_line, title
            await at.press("escape")
            assert at.stack == ["Home"], title
