"""The key line says what a key does at this moment, and nothing that it does not."""

from __future__ import annotations

from booth.screens.keyline import key_line, keys_now

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
