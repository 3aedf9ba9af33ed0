"""What is heard: every call has tones of its own, and a number of bells of its own."""

from __future__ import annotations

import wave
from collections.abc import Callable
from pathlib import Path

import pytest

from booth.app import sound
from booth.app.sound import BELL_APART_S, BELLS, TONES, Sound
from booth.job.wait import Call


class Bells:
    """Rings at once and later, and remembers when [s]."""

    def __init__(self) -> None:
        self.now_s = 0.0
        self.rung: list[float] = []

    def ring(self) -> None:
        self.rung.append(self.now_s)

    def later(self, after_s: float, do: Callable[[], None]) -> None:
        before, self.now_s = self.now_s, self.now_s + after_s
        do()
        self.now_s = before


@pytest.mark.parametrize("call", list(Call))
def test_without_a_sound_device_the_bells_tell_the_calls_apart(
    call: Call, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sound, "_player", lambda: ())
    bells = Bells()
    Sound(tmp_path, bells.ring, bells.later).play(call.name.lower())
    assert bells.rung == [count * BELL_APART_S for count in range(BELLS[call.name.lower()])]
    assert list(tmp_path.iterdir()) == []


def test_every_call_has_a_pattern_of_its_own() -> None:
    names = [call.name.lower() for call in Call]
    assert len({BELLS[name] for name in names}) == len(names)
    assert len({TONES[name] for name in names}) == len(names)


@pytest.mark.parametrize("name", TONES)
def test_the_tones_are_a_file_that_any_player_reads(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    played: list[list[str]] = []
    monkeypatch.setattr(sound, "_player", lambda: ("player",))
    monkeypatch.setattr(sound.subprocess, "Popen", lambda command, **_: played.append(command))
    bells = Bells()
    Sound(tmp_path, bells.ring, bells.later).play(name)
    ((player, path),) = played
    assert player == "player"
    with wave.open(path) as file:
        seconds = file.getnframes() / file.getframerate()
    # Each tone is cut to whole samples: up to one lost for each.
    wanted_s = sum(length for _, length in TONES[name])
    assert seconds == pytest.approx(wanted_s, abs=(len(TONES[name]) + 1) / sound.RATE_HZ)
