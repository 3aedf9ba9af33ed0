"""Readers: how one argument is read, shown, explained, and typed in an example."""

from __future__ import annotations

import abc
import difflib
import enum
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from booth.figure import shapes
from booth.figure.shapes import Shape
from booth.trade.film.transfer_efficiency import Efficiency, EfficiencyBand, default_band
from booth.trade.mixing.components import Measure
from booth.trade.pattern.fan_profile import NAMES, FanProfile, profile_by_name, profile_from_zones
from booth.trade.result import BadInput
from booth.units import Kind, System, read_amount

#: What stands between the parts of a group, as in ``1.5:180ml/min``.
BETWEEN = ":"
NOTHING = "-"


def near(word: str, known: Iterable[str]) -> str:
    """Give ``Did you mean ...?``, or what is known where nothing comes close."""
    close = difflib.get_close_matches(word.lower(), list(known), n=3, cutoff=0.6)
    if close:
        return f"Did you mean {' or '.join(close)}?"
    return f"Known are {', '.join(known)}."


class Reader(abc.ABC):
    """Reads one argument, and shows what was read."""

    @abc.abstractmethod
    def read(self, text: str, system: System) -> Any:
        """Read it. Raises EntryError or BadInput with a sentence."""

    @abc.abstractmethod
    def explain(self, system: System) -> str:
        """Say what may be typed."""

    @abc.abstractmethod
    def typed(self, value: Any) -> str:
        """Give a word that reads as `value`, for an example."""

    def show(self, value: Any, system: System) -> str:
        """Give it as it is read by a person."""
        return self.typed(value)


@dataclass(frozen=True, slots=True)
class Quantity(Reader):
    """A number with its unit, by its shape."""

    shape: Shape

    def read(self, text: str, system: System) -> float:
        return self.shape.read(text, system)

    def explain(self, system: System) -> str:
        unit = self.shape.bare(system)
        return "a number" if unit == "no unit" else f"a bare number is in {unit}"

    def typed(self, value: float) -> str:
        return self.shape.typed(value)

    def show(self, value: float, system: System) -> str:
        return self.shape.show(value, system)


@dataclass(frozen=True, slots=True)
class Choice(Reader):
    """One of some words."""

    words: Mapping[str, Any]

    def read(self, text: str, system: System) -> Any:
        wanted = "-".join(text.lower().replace("-", " ").replace("_", " ").split())
        if wanted not in self.words:
            raise BadInput(f"{text!r} is not among the words here. {near(wanted, self.words)}")
        return self.words[wanted]

    def explain(self, system: System) -> str:
        return ", ".join(self.words)

    def typed(self, value: Any) -> str:
        return next(word for word, meant in self.words.items() if meant == value)


YES_NO = Choice({"yes": True, "no": False})


def choice_of(kinds: type[enum.Enum]) -> Choice:
    """Give the reader of an enumeration: its names as words."""
    return Choice({each.name.lower().replace("_", "-"): each for each in kinds})


@dataclass(frozen=True, slots=True)
class Named(Reader):
    """Something found by a word. find: from the word; say: what may be typed; name: back again."""

    find: Callable[[str], Any]
    say: str
    name: Callable[[Any], str] = lambda found: found.name

    def read(self, text: str, system: System) -> Any:
        if not text.strip():
            raise BadInput("Nothing was typed for it.")
        return self.find(text)

    def explain(self, system: System) -> str:
        return self.say

    def typed(self, value: Any) -> str:
        return self.name(value)


def _words(text: str) -> str:
    word = " ".join(text.replace(BETWEEN, " ").split())
    if not word:
        raise BadInput("The name is empty.")
    return word


def _zones(text: str) -> list[float]:
    words = text.replace(",", " ").split()
    return [shapes.NUMBER.read(word, System.METRIC) for word in words]


def _profile(text: str) -> FanProfile:
    words = " ".join(text.lower().replace("-", " ").split())
    if any(character.isdigit() for character in words):
        return profile_from_zones(_zones(text))
    return profile_by_name(words)


WORD = Named(_words, "a name", name=str)
WHOLE = Named(lambda text: int(shapes.COUNT.read(text, System.METRIC)), "a whole number", name=str)
PROFILE = Named(_profile, f"{', '.join(NAMES)}; or zones seen on paper, 0 to 9 each, as 2,4,6,4,2")
ZONES = Named(
    _zones,
    "zones seen on paper, 0 to 9 each, as 9,4,2,4,9",
    name=lambda zones: ",".join(f"{zone:g}" for zone in zones),
)


class Amount(NamedTuple):
    """A volume [ml] or a weight [g] as it was typed, for what is either."""

    number: float
    measure: Measure

    def in_measure(self, measure: Measure, name: str) -> float:
        """Give the number if it is in `measure`. Raises BadInput."""
        if self.measure is not measure:
            raise BadInput(f"{name} is poured by {measure}, so it should be a {measure} as well.")
        return self.number


class AmountReader(Reader):
    """A volume or a weight; a bare number is a volume."""

    def read(self, text: str, system: System) -> Amount:
        quantity = read_amount(text, system)
        weighed = quantity.unit == Kind.MASS.base
        return Amount(quantity.value, Measure.WEIGHT if weighed else Measure.VOLUME)

    def explain(self, system: System) -> str:
        return f"a volume or a weight; a bare number is in {shapes.VOLUME.bare(system)}"

    def typed(self, value: Amount | float) -> str:
        if isinstance(value, Amount):
            return shapes.UNITS[value.measure.unit].typed(value.number)
        return shapes.VOLUME.typed(value)

    def show(self, value: Amount, system: System) -> str:
        return shapes.UNITS[value.measure.unit].show(value.number, system)


#: Words for the usual bands of transfer efficiency.
BANDS = {
    "hvlp": default_band(hvlp=True),
    "hvlp-small": default_band(hvlp=True, large_flat_part=False),
    "conventional": default_band(hvlp=False),
}


class EfficiencyReader(Reader):
    """Transfer efficiency: a percentage, or a usual band by its word."""

    def read(self, text: str, system: System) -> Efficiency:
        word = "-".join(text.lower().split())
        return BANDS[word] if word in BANDS else shapes.SHARE.read(text, system)

    def explain(self, system: System) -> str:
        return f"a percentage, or a usual band: {', '.join(BANDS)}"

    def typed(self, value: Efficiency) -> str:
        if isinstance(value, EfficiencyBand):
            return next(word for word, band in BANDS.items() if band == value)
        return shapes.SHARE.typed(value)

    def show(self, value: Efficiency, system: System) -> str:
        if isinstance(value, EfficiencyBand):
            return f"{self.typed(value)} ({100 * value.low:g} to {100 * value.high:g} %)"
        return shapes.SHARE.show(value, system)


class Part(NamedTuple):
    """One part of a group; `lacks`: it may be None, typed as a dash."""

    name: str
    reader: Reader
    lacks: bool = False

    def read(self, text: str, system: System) -> Any:
        """Read it. Raises as a reader does."""
        if text.strip() != NOTHING:
            return self.reader.read(text, system)
        if not self.lacks:
            raise BadInput(f"A dash says that there is no {self.name}, but it is needed.")
        return None


@dataclass(frozen=True, slots=True)
class Group(Reader):
    """Several values in one word, a colon between them; the last ones may be left out.

    least: how many there must be; make: what becomes of the values, those left out being None;
    split: the values of what was made.
    """

    parts: tuple[Part, ...]
    least: int
    make: Callable[..., Any]
    split: Callable[[Any], Sequence[Any]]

    @property
    def form(self) -> str:
        """How it is written, as ``TURNS:DELIVERY``."""
        names = [part.name.upper() for part in self.parts]
        must, may = names[: self.least], names[self.least :]
        return BETWEEN.join(must) + "".join(f"[{BETWEEN}{name}]" for name in may)

    def read(self, text: str, system: System) -> Any:
        words = text.split(BETWEEN)
        if not self.least <= len(words) <= len(self.parts):
            raise BadInput(
                f"{text!r} should be {self.form}, its parts parted by a colon "
                "(minutes and seconds in it as 90s, not as 1:30)."
            )
        found = [part.read(word, system) for word, part in zip(words, self.parts, strict=False)]
        return self.make(*found, *([None] * (len(self.parts) - len(found))))

    def explain(self, system: System) -> str:
        each = "; ".join(f"{part.name}: {part.reader.explain(system)}" for part in self.parts)
        return f"{self.form}; {each}"

    def typed(self, value: Any) -> str:
        return self._told(value, lambda reader, part: reader.typed(part))

    def show(self, value: Any, system: System) -> str:
        return self._told(value, lambda reader, part: reader.show(part, system))

    def _told(self, value: Any, tell: Callable[[Reader, Any], str]) -> str:
        told = [
            NOTHING if each is None else tell(part.reader, each)
            for each, part in zip(self.split(value), self.parts, strict=True)
        ]
        while len(told) > self.least and told[-1] == NOTHING:
            told.pop()
        return BETWEEN.join(told)
