"""Readers: how one argument is read, shown, explained, and typed in an example."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, NamedTuple

import msgspec

from booth.figure import shapes
from booth.figure.heard import Heard
from booth.figure.shape import Shape
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


class Reader(msgspec.Struct, frozen=True):
    """Reads one argument, and shows what was read.

    read: raises EntryError or BadInput with a sentence; explain: says what may be typed; typed: the
    word that reads as a value, for an example; show: a value as it is read by a person.
    """

    read: Callable[[str, Heard], Any]
    explain: Callable[[System], str]
    typed: Callable[[Any], str]
    show: Callable[[Any, System, int | None], str]


def quantity(shape: Shape) -> Reader:
    """Give the reader of a number with its unit."""

    def explain(system: System) -> str:
        if shape.needs_unit:
            return "a time with its unit, as 4h, 90s, 1:30"
        unit = shape.bare(system)
        return "a number" if unit == "no unit" else f"a bare number is in {unit}"

    return Reader(shape.read, explain, shape.typed, shape.show)


def choice(words: Mapping[str, Any]) -> Reader:
    """Give the reader of one of some words."""

    def read(text: str, heard: Heard) -> Any:
        wanted = "-".join(text.lower().replace("-", " ").replace("_", " ").split())
        if wanted not in words:
            raise BadInput(f"{text!r} is not among the words here. {near(wanted, words)}")
        return words[wanted]

    def typed(value: Any) -> str:
        return next(word for word, meant in words.items() if meant == value)

    return Reader(read, lambda system: ", ".join(words), typed, lambda value, *_: typed(value))


def named(
    find: Callable[[str], Any], say: str, name: Callable[[Any], str] = lambda found: found.name
) -> Reader:
    """Give the reader of what is found by a word. say: what may be typed; name: back again."""

    def read(text: str, heard: Heard) -> Any:
        if not text.strip():
            raise BadInput("Nothing was typed for it.")
        return find(text)

    return Reader(read, lambda system: say, name, lambda value, *_: name(value))


class Part(NamedTuple):
    """One part of a group; `lacks`: it may be None, typed as a dash."""

    name: str
    reader: Reader
    lacks: bool = False


def group(
    parts: Sequence[Part], make: Callable[..., Any], split: Callable[[Any], Sequence[Any]]
) -> Reader:
    """Give the reader of several values in one word, a colon between them.

    Parts at the end that may be None may be left out as well. make: what becomes of the values;
    split: the values again of what was made.
    """
    needed = [part.name for part in parts if not part.lacks] or [part.name for part in parts]
    form = BETWEEN.join(needed).upper()
    form += "".join(f"[{BETWEEN}{part.name.upper()}]" for part in parts[len(needed) :])

    def read(text: str, heard: Heard) -> Any:
        words = text.split(BETWEEN)
        if not len(needed) <= len(words) <= len(parts):
            raise BadInput(
                f"{text!r} should be {form}, its parts parted by a colon "
                "(minutes and seconds in it as 90s, not as 1:30)."
            )
        found = [None] * len(parts)
        for place, (word, part) in enumerate(zip(words, parts, strict=False)):
            if word.strip() != NOTHING:
                found[place] = part.reader.read(word, heard)
            elif not part.lacks:
                raise BadInput(f"A dash says that there is no {part.name}, but it is needed.")
        return make(*found)

    def told(value: Any, tell: Callable[[Reader, Any], str]) -> str:
        words = [
            NOTHING if each is None else tell(part.reader, each)
            for each, part in zip(split(value), parts, strict=True)
        ]
        while len(words) > len(needed) and words[-1] == NOTHING:
            words.pop()
        return BETWEEN.join(words)

    def explain(system: System) -> str:
        each = "; ".join(f"{part.name}: {part.reader.explain(system)}" for part in parts)
        return f"{form}; {each}"

    return Reader(
        read,
        explain,
        lambda value: told(value, lambda reader, part: reader.typed(part)),
        lambda value, system, digits: told(
            value, lambda reader, part: reader.show(part, system, digits)
        ),
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


def _read_amount(text: str, heard: Heard) -> Amount:
    weighed = read_amount(text, heard.system).unit == Kind.MASS.base
    measure = Measure.WEIGHT if weighed else Measure.VOLUME
    return Amount(shapes.UNITS[measure.unit].read(text, heard), measure)


#: A volume or a weight; in an example, where only a number stands, a volume.
AMOUNT = Reader(
    _read_amount,
    lambda system: f"a volume or a weight; a bare number is in {shapes.VOLUME.bare(system)}",
    shapes.VOLUME.typed,
    lambda value, system, digits: shapes.UNITS[value.measure.unit].show(
        value.number, system, digits
    ),
)

#: Words for the usual bands of transfer efficiency.
BANDS = {
    "hvlp": default_band(hvlp=True),
    "hvlp-small": default_band(hvlp=True, large_flat_part=False),
    "conventional": default_band(hvlp=False),
}


def _read_efficiency(text: str, heard: Heard) -> Efficiency:
    word = "-".join(text.lower().split())
    return BANDS[word] if word in BANDS else shapes.SHARE.read(text, heard)


def _show_efficiency(value: Efficiency, system: System, digits: int | None) -> str:
    if not isinstance(value, EfficiencyBand):
        return shapes.SHARE.show(value, system, digits)
    word = next(word for word, band in BANDS.items() if band == value)
    return f"{word} ({100 * value.low:g} to {100 * value.high:g} %)"


#: Transfer efficiency: a percentage, or a usual band by its word.
EFFICIENCY = Reader(
    _read_efficiency,
    lambda system: f"a percentage, or a usual band: {', '.join(BANDS)}",
    shapes.SHARE.typed,
    _show_efficiency,
)


def _words(text: str) -> str:
    word = " ".join(text.replace(BETWEEN, " ").split())
    if not word:
        raise BadInput("The name is empty.")
    return word


_RATIO = re.compile(r"\d+(?:[.,]\d+)?(?:\s*:\s*\d+(?:[.,]\d+)?)+")
#: What the numbers of a ratio are called: which is the hardener, the can says.
PLACES = ("first", "second", "third", "fourth", "fifth", "sixth")


def ratio_words(text: str) -> list[str]:
    """Give a ratio in digits as components: ``4:1`` is ``first:4`` and ``second:1``."""
    if not _RATIO.fullmatch(text.strip()):
        return [text]
    numbers = text.split(BETWEEN)
    if len(numbers) > len(PLACES):
        raise BadInput(f"{text!r} has {len(numbers)} numbers: {len(PLACES)} are the most.")
    return [f"{name}{BETWEEN}{number}" for name, number in zip(PLACES, numbers, strict=False)]


def whole_words(text: str) -> list[str]:
    """Give a solvent without a share as all of the blend: with a second one the shares are too many."""
    return [text if BETWEEN in text else f"{text}{BETWEEN}100%"]


def _zones(text: str) -> list[float]:
    words = text.replace(",", " ").split()
    return [shapes.NUMBER.read(word, Heard(System.METRIC)) for word in words]


def _profile(text: str) -> FanProfile:
    words = " ".join(text.lower().replace("-", " ").split())
    if any(character.isdigit() for character in words):
        return profile_from_zones(_zones(text))
    return profile_by_name(words)


YES_NO = choice({"yes": True, "no": False})
WORD = named(_words, "a name", name=str)
WHOLE = named(
    lambda text: int(shapes.COUNT.read(text, Heard(System.METRIC))), "a whole number", name=str
)
PROFILE = named(_profile, f"{', '.join(NAMES)}; or zones seen on paper, 0 to 9 each, as 2,4,6,4,2")
ZONES = named(
    _zones,
    "zones seen on paper, 0 to 9 each, as 9,4,2,4,9",
    name=lambda zones: ",".join(f"{zone:g}" for zone in zones),
)
