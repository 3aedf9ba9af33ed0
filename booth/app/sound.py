"""A short tone by whatever the machine has; never waits, never fails loudly, never the only alarm."""

from __future__ import annotations

import math
import shutil
import struct
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

RATE_HZ = 22050
PAUSE = (0, 0.06)
#: Pitch [Hz] and length [s]. Every call has a figure of its own, told apart without counting: go on
#: rises, hurry hammers, too late falls, stop is long and low and comes three times. The end of a
#: timed catch is long, a beat short. This program's own choice.
TONES: dict[str, tuple[tuple[float, float], ...]] = {
    "go_on": ((660, 0.16), PAUSE, (880, 0.16), PAUSE, (1175, 0.3)),
    "hurry": ((1047, 0.08), PAUSE) * 6,
    "too_late": ((880, 0.25), PAUSE, (587, 0.25), PAUSE, (392, 0.45)),
    "stop": ((311, 0.45), (0, 0.15)) * 3,
    "signal": ((990, 0.6),),
    "tick": ((660, 0.08),),
}
#: How often the terminal's own bell is rung for it where that is all there is, and how far apart [s].
BELLS = {"go_on": 1, "hurry": 2, "too_late": 3, "stop": 4}
BELL_APART_S = 0.35


class Sound:
    """Plays the tones that it first writes as small files into `folder`.

    bell: rings the terminal's own bell as well, since there may be no sound device at all; later:
    does something after so many seconds.
    """

    def __init__(
        self,
        folder: Path,
        bell: Callable[[], None],
        later: Callable[[float, Callable[[], None]], object],
    ) -> None:
        self._folder = folder
        self._bell = bell
        self._later = later
        self._player = _player()

    def play(self, name: str) -> None:
        """Sound one of TONES."""
        self._bell()
        for count in range(1, BELLS.get(name, 1)):
            self._later(count * BELL_APART_S, self._bell)
        if not self._player:
            return
        try:
            path = self._folder / f"{name}.wav"
            if not path.exists():
                self._folder.mkdir(parents=True, exist_ok=True)
                _write(path, TONES[name])
            if sys.platform == "win32":
                import winsound

                winsound.PlaySound(str(path), winsound.SND_FILENAME | winsound.SND_ASYNC)
                return
            subprocess.Popen(
                [*self._player, str(path)],
                stdin=subprocess.DEVNULL,
                stdout=subprocess.DEVNULL,
                stderr=subprocess.DEVNULL,
                start_new_session=True,
            )
        except (OSError, RuntimeError):
            self._player = ()


def _player() -> tuple[str, ...]:
    if sys.platform == "win32":
        return ("winsound",)
    for command in (("paplay",), ("pw-play",), ("afplay",), ("aplay", "-q")):
        if shutil.which(command[0]):
            return command
    return ()


def _write(path: Path, tones: tuple[tuple[float, float], ...]) -> None:
    samples = bytearray()
    for hertz, seconds in tones:
        count = int(RATE_HZ * seconds)
        for i in range(count):
            edge = min(1.0, i / 200, (count - i) / 200)  # no click at the ends
            value = 0.7 * edge * math.sin(2 * math.pi * hertz * i / RATE_HZ) if hertz else 0.0
            samples += struct.pack("<h", int(32767 * value))
    import wave

    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE_HZ)
        file.writeframes(bytes(samples))
