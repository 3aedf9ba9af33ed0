"""What the widgets are told: finished words and figures. They know of no job, profile or clock."""

from __future__ import annotations

import msgspec

from booth.words.tone import Tone


class Readout(msgspec.Struct, frozen=True):
    """The one figure that matters now.

    figure: as it is to be read, "4:31"; unit: beside it, "ml/min"; label: what it is, above it;
    word: instead of the tone's own, "" for none; lines: the explanation beneath;
    like: a figure as wide as this one will get, "00:00", so that its size stands still.
    """

    figure: str
    unit: str = ""
    label: str = ""
    tone: Tone = Tone.PLAIN
    word: str | None = None
    lines: tuple[str, ...] = ()
    like: str = ""

    @property
    def shown_word(self) -> str:
        return self.tone.word if self.word is None else self.word


class ClockFace(msgspec.Struct, frozen=True):
    """One running clock.

    title: the part and coat, "doors coat 2"; what: "flash-off"; remaining: "4:31"; word: instead of
    the tone's own; fraction: how much of it has passed, 0 to 1, None where it has no end; estimate:
    whether its length rests on an estimate.
    """

    title: str
    what: str
    remaining: str
    tone: Tone = Tone.WAIT
    word: str | None = None
    fraction: float | None = None
    estimate: bool = False

    @property
    def shown_word(self) -> str:
        return self.tone.word if self.word is None else self.word
