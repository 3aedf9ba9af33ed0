"""The cautions: each is read by itself, whatever key is held, and none can be passed over with Enter."""

from __future__ import annotations

import pytest

from booth.log.events import CautionAcknowledged, StepDone, Voided
from booth.profile.cautions import cautions_for
from tests.instruments.at_bench import AtBench
from tests.job.make import profile

EVERY = cautions_for(profile())


@pytest.mark.parametrize("key", ["space", "pagedown", "enter"])
def test_one_key_reads_one_caution_and_keeps_its_words(key: str) -> None:
    desk = AtBench("cautions")
    for number, caution in enumerate(EVERY, 1):
        assert f"{number} of {len(EVERY)}" in desk.text
        assert f"▲ {caution.title}" in desk.text and f"Source: {caution.source}" in desk.text
        assert desk.keys["Enter"] == desk.keys["Space"] == "read and understood"
        desk.pass_time(1)
        desk.press(key)
        kept = desk.log[-1]
        assert isinstance(kept, CautionAcknowledged)
        assert kept.caution == caution.key and kept.words.startswith(f"{caution.title}. ")
        for line in caution.lines:
            assert line in kept.words
    assert len(desk.log) == len(EVERY)
    assert f"All {len(EVERY)} were read" in desk.text and f"√ {EVERY[0].title}" in desk.text


@pytest.mark.parametrize("key", ["space", "pagedown", "enter"])
def test_a_key_that_is_held_down_reads_one(key: str) -> None:
    desk = AtBench("cautions")
    for _ in range(60):
        desk.press_now(key)
        desk.clock.advance(0.03)
    assert len(desk.log) == 1
    desk.pass_time(1)
    desk.press_now(key)
    assert len(desk.log) == 2


@pytest.mark.parametrize("key", ["space", "enter"])
def test_the_key_that_reads_the_last_one_does_not_go_on_while_it_is_held(key: str) -> None:
    desk = AtBench("cautions")
    desk.press(*["space"] * (len(EVERY) - 1))
    desk.pass_time(1)
    for _ in range(60):
        desk.press_now(key)
        desk.clock.advance(0.03)
    assert len(desk.log) == len(EVERY) and desk.bench.step.key == "cautions"
    desk.pass_time(1)
    assert "Space" not in desk.keys and desk.keys["Enter"] == "next step"
    desk.press("enter")
    assert isinstance(desk.log[-1], StepDone) and desk.bench.step.key == "weather"


def test_void_names_the_caution_shortly_and_shows_it_again() -> None:
    desk = AtBench("cautions")
    desk.press("space")
    assert desk.keys["Bksp"].startswith(f"void: caution acknowledged: {EVERY[0].title}")
    assert len(desk.keys["Bksp"]) < 70
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and f"1 of {len(EVERY)}" in desk.text
    assert desk.said.endswith("Backspace brings it back.")
    desk.press("backspace")
    assert f"2 of {len(EVERY)}" in desk.text
