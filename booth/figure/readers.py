"""Readers of what is not a plain quantity: words, cups, groups of values, transfer efficiency."""

from __future__ import annotations

import difflib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Protocol

from booth.figure import shapes
from booth.figure.shapes import Shape
from booth.trade.cups import cup_names
from booth.trade.film import transfer_efficiency
from booth.trade.pattern import fan_profile
from booth.trade.result import BadInput
from booth.units import Kind, System, read_amount

#: What stands between the parts of a group, as in ``1.5:180ml/min``.
BETWEEN = ":"
NOTHING = "-"


class Reader(Protocol):
    """Reads one argument, and shows what was read."""

    def read(self, text: str, system: System) -> Any:
        """Read it. Raises EntryError or BadInput with a sentence."""

    def show(self, value: Any, system: System) -> str:
        """Give it as it is read by a person."""

    def explain(self, system: System) -> str:
        """Say what may be typed."""


def near(word: str, known: Mapping[str, object] | tuple[str, ...] | list[str]) -> str:
    """Give ``Did you mean ...?``, or what is known where nothing comes close."""
    close = difflib.get_close_matches(word.lower(), list(known), n=3, cutoff=0.6)
    if close:
        return f"Did you mean {' or '.join(close)}?"
    return f"Known are {', '.join(known)}."


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit, by its shape."""

    shape: Shape

    def read(self, text: str, system: System) -> float:
        """Read it in the trade's unit."""
        return self.shape.read(text, system)

    def show(self, value: float, system: System) -> str:
        """Give it in the units wanted."""
        return self.shape.show(value, system)

    def explain(self, system: System) -> str:
        """Name the unit that a bare number takes."""
        unit = self.shape.bare(system)
        return "a number" if unit == "no unit" else f"a bare number is in {unit}"


@dataclass(frozen=True, slots=True)
class Whole:
    """A whole number."""

    def read(self, text: str, system: System) -> int:
        """Read it."""
        return int(shapes.COUNT.read(text, system))

    def show(self, value: int, system: System) -> str:
        """Give it."""
        return str(value)

    def explain(self, system: System) -> str:
        """Say so."""
        return "a whole number"


@dataclass(frozen=True, slots=True)
class Choice:
    """One of some words."""

    words: Mapping[str, Any]

    def read(self, text: str, system: System) -> Any:
        """Give what the word stands for."""
        wanted = "-".join(text.lower().replace("-", " ").replace("_", " ").split())
        if wanted not in self.words:
            raise BadInput(f"{text!r} is not among the words. {near(wanted, self.words)}")
        return self.words[wanted]

    def show(self, value: Any, system: System) -> str:
        """Give the word."""
        return next(word for word, meant in self.words.items() if meant == value)

    def explain(self, system: System) -> str:
        """List the words."""
        return ", ".join(self.words)


YES_NO = Choice({"yes": True, "no": False})


@dataclass(frozen=True, slots=True)
class Named:
    """Something that the trade finds by its name."""

    find: Callable[[str], Any]
    say: str
    name: Callable[[Any], str] = lambda found: found.name

    def read(self, text: str, system: System) -> Any:
        """Find it."""
        if not text.strip():
            raise BadInput("The name is empty.")
        return self.find(text)

    def show(self, value: Any, system: System) -> str:
        """Give its name."""
        return self.name(value)

    def explain(self, system: System) -> str:
        """Say what may be named."""
        return self.say


CUP = Named(cup_names.cup_named, "a cup by family and size, as 'Ford #4', 'Zahn 2', 'ISO 4 mm'")


def _words(text: str) -> str:
    word = " ".join(text.replace(BETWEEN, " ").split())
    if not word:
        raise BadInput("The name is empty.")
    return word


WORD = Named(_words, "a name", name=str)


@dataclass(frozen=True, slots=True)
class Amount:
    """A volume or a weight: (number [ml or g], whether it is a weight)."""

    def read(self, text: str, system: System) -> tuple[float, bool]:
        """Read it; a bare number is a volume."""
        quantity = read_amount(text, system)
        return quantity.value, quantity.unit == Kind.MASS.base

    def show(self, value: tuple[float, bool], system: System) -> str:
        """Give it in its own measure."""
        return (shapes.MASS if value[1] else shapes.VOLUME).show(value[0], system)

    def explain(self, system: System) -> str:
        """Say what it may be."""
        return f"a volume or a weight; a bare number is in {shapes.VOLUME.bare(system)}"


@dataclass(frozen=True, slots=True)
class Group:
    """Several values in one word, a colon between them; the last ones may be left out.

    parts: (name, reader); least: how many there must be. A part typed as ``-`` is None.
    """

    parts: tuple[tuple[str, Reader], ...]
    least: int

    @property
    def form(self) -> str:
        """How it is written, as ``TURNS:DELIVERY``."""
        names = [name.upper() for name, _ in self.parts]
        must, may = names[: self.least], names[self.least :]
        return BETWEEN.join(must) + "".join(f"[{BETWEEN}{name}]" for name in may)

    def read(self, text: str, system: System) -> tuple[Any, ...]:
        """Read every part; those left out are None."""
        words = text.split(BETWEEN)
        if not self.least <= len(words) <= len(self.parts):
            raise BadInput(
                f"{text!r} should be {self.form}, its parts parted by a colon "
                "(minutes and seconds in it as 90s, not as 1:30)."
            )
        found = [
            None if word.strip() == NOTHING else reader.read(word, system)
            for word, (_, reader) in zip(words, self.parts, strict=False)
        ]
        return (*found, *([None] * (len(self.parts) - len(found))))

    def show(self, value: tuple[Any, ...], system: System) -> str:
        """Give the parts that are there."""
        told = [
            NOTHING if part is None else reader.show(part, system)
            for part, (_, reader) in zip(value, self.parts, strict=True)
        ]
        while len(told) > self.least and told[-1] == NOTHING:
            told.pop()
        return BETWEEN.join(told)

    def explain(self, system: System) -> str:
        """Show the form, and what each part is."""
        each = "; ".join(f"{name}: {reader.explain(system)}" for name, reader in self.parts)
        return f"{self.form}; {each}"


#: Words for the usual bands of transfer efficiency.
BANDS = {
    "hvlp": transfer_efficiency.default_band(hvlp=True),
    "hvlp-small": transfer_efficiency.default_band(hvlp=True, large_flat_part=False),
    "conventional": transfer_efficiency.default_band(hvlp=False),
}


@dataclass(frozen=True, slots=True)
class EfficiencyReader:
    """Transfer efficiency: a percentage, or a usual band by its word."""

    def read(self, text: str, system: System) -> transfer_efficiency.Efficiency:
        """Give a share, or a band."""
        word = "-".join(text.lower().split())
        if word in BANDS:
            return BANDS[word]
        return shapes.SHARE.read(text, system)

    def show(self, value: transfer_efficiency.Efficiency, system: System) -> str:
        """Give the share, or the ends of the band."""
        if isinstance(value, transfer_efficiency.EfficiencyBand):
            word = next(word for word, band in BANDS.items() if band == value)
            return f"{word} ({100 * value.low:g} to {100 * value.high:g} %)"
        return shapes.SHARE.show(value, system)

    def explain(self, system: System) -> str:
        """List the words."""
        return f"a percentage, or a usual band: {', '.join(BANDS)}"


def _zones(text: str) -> list[float]:
    words = text.replace(",", " ").split()
    return [shapes.NUMBER.read(word, System.METRIC) for word in words]


def _profile(text: str) -> fan_profile.FanProfile:
    words = " ".join(text.lower().replace("-", " ").split())
    if any(character.isdigit() for character in words):
        return fan_profile.profile_from_zones(_zones(text))
    return fan_profile.profile_by_name(words)


PROFILE = Named(
    _profile,
    f"{', '.join(fan_profile.NAMES)}; or zones seen on paper, 0 to 9 each, as 2,4,6,4,2",
)
ZONES = Named(
    _zones,
    "zones seen on paper, 0 to 9 each, as 9,4,2,4,9",
    name=lambda zones: ",".join(f"{zone:g}" for zone in zones),
)
