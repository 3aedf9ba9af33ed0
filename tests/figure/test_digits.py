"""Digits: as many as what was typed and the rule can carry, and never a verdict that looks wrong."""

from __future__ import annotations

import math
import re
import shlex

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.figure.numbers import fitted, stepped, time_text
from booth.units import Kind, System, read
from tests.figure.ask import ask, run


@pytest.mark.parametrize(
    ("words", "shown"),
    [
        ("dilution-air 30.4ft3/gal 1.4%", "dilution air 8,660 ft³/gal"),
        # 8564: what is a minimum against fire is rounded up.
        ("regulation-dilution 30.4ft3/gal 1.4%", "regulation dilution 8,570 ft³/gal"),
        ("recoat-closes 48h 24C 39C", "recoat window closes after estimate 10 h;"),
        ("blend 200cSt 0.8cSt 20%", "logarithmic rule 66.3 mm²/s"),
        ("mix 1234.5ml 4:1", "first 987.6 ml"),
        ("passes-for-width 0.5m 250mm 50%", "passes 5"),
        ("thinned 550ml 10% 50ml", "thinned by 20 %"),
    ],
)
def test_no_more_digits_than_were_typed_but_three(words: str, shown: str) -> None:
    assert run(shlex.split(words))[1].startswith(shown)


@pytest.mark.parametrize("typed", ["0.25 %", "0.125 %", "12.5 %", "1.06 %", "50 %"])
def test_what_was_typed_is_echoed_as_it_was(typed: str) -> None:
    found = ask(f"regulation-dilution 30.4l/l {shlex.quote(typed)}")
    assert next(each["text"] for each in found["given"] if each["name"] == "lel") == typed


def test_a_limit_that_is_missed_does_not_read_as_met() -> None:
    # The margin at 68 F and 83.1 % by this program's own dew point is a little below the limit.
    margin = ask("dew-margin 20C 83.1% 20C")["values"]["dew_margin"]["value"]
    for least in (margin + 0.0004, margin + 0.00004, margin * (1 + 1e-7)):
        out = run(["weather", "20C", "83.1%", "20C", f"margin={least:.12g}K"])[1]
        assert "NOT within" in out
        told = out.partition("dew margin ")[2].partition(" is NOT")[0]
        measured, limit = told.split(" against at least ")
        assert measured != limit


@given(st.floats(1e-6, 1e9), st.integers(0, 3), st.integers(3, 6))
def test_a_number_keeps_the_digits_it_is_given(number: float, places: int, digits: int) -> None:
    shown, found = fitted(number, places, digits)
    assert abs(shown - number) <= 0.5000001 * 10 ** (math.floor(math.log10(number)) - digits + 1)
    text = f"{shown:.{found}f}"
    assert len(text.replace(".", "").lstrip("0").rstrip("0")) <= digits + 1
    if number >= 1e-6:
        assert float(text) > 0


@given(st.floats(0.01, 3e7))
def test_an_estimated_time_opens_no_earlier_and_closes_no_later(seconds: float) -> None:
    up, near, down = (stepped(seconds, way) for way in (1, 0, -1))
    assert down <= near <= up
    assert up >= seconds * (1 - 1e-8) and down <= seconds * (1 + 1e-8)
    if seconds >= 120:
        # The coarsest step against its time is a minute of ten minutes: a tenth.
        assert up - down <= 0.1 * seconds + 1e-6


@given(st.integers(60, 400 * 86400))
def test_a_time_reads_back_as_it_was_told(seconds: int) -> None:
    told = time_text(seconds)
    assert "24 h" not in told or seconds < 2 * 86400
    assert not re.search(r"\b60 (s|min)|:60", told)
    if seconds < 366 * 86400:
        value = read(told, Kind.TIME, System.US).value
        assert abs(value - seconds) <= (30 if seconds >= 2 * 86400 else 0)
