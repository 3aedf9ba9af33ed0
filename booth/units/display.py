"""In which unit and to how many places each kind is shown, US and metric: one table.

The places are those a shop can read off its cups, gauges and scales (common practice, no source).
"""

from __future__ import annotations

import math
from functools import cache

import msgspec

from booth.units.kinds import Kind, System
from booth.units.registry import convert
from booth.units.words import Unit, unit_named


class Shown(msgspec.Struct, frozen=True):
    """How a kind is shown.

    unit: key of the unit; first: places of a small number; further: (from this number on, so many
    places), ascending; least: when given, zeros beyond so many places are left away.
    """

    unit: str
    first: int
    further: tuple[tuple[float, int], ...] = ()
    least: int | None = None

    def places(self, number: float) -> int:
        """Give the places for `number`, which is in the shown unit."""
        found = self.first
        for start, places in self.further:
            # Decided by what will be read: 99.96 is shown as 100.
            if round(abs(number), found) < start:
                break
            found = places
        return found


#: US and metric, where they differ: a paint scale reads grams, a tip is named in millimetres in both.
SHOWN: dict[Kind, tuple[Shown, ...]] = {
    Kind.VOLUME: (Shown("fl oz", 2, ((1, 1),)), Shown("ml", 1, ((20, 0),))),
    Kind.MASS: (Shown("g", 1, ((1000, 0),)),),
    Kind.DELIVERY: (Shown("fl oz/min", 1), Shown("ml/min", 1, ((20, 0),))),
    Kind.TIME: (Shown("s", 1, ((100, 0),)),),
    Kind.TEMPERATURE: (Shown("degF", 0), Shown("degC", 1)),
    Kind.TEMPERATURE_DIFFERENCE: (Shown("delta_degF", 1), Shown("delta_degC", 1)),
    Kind.PRESSURE: (Shown("psi", 1, ((20, 0),)), Shown("bar", 2, ((10, 1),))),
    Kind.THICKNESS: (Shown("mil", 1), Shown("um", 0)),
    Kind.LENGTH: (Shown("in", 3, ((1, 1),)), Shown("mm", 1, ((10, 0),))),
    Kind.TIP: (Shown("mm", 2, least=1),),
    Kind.PART_LENGTH: (Shown("ft", 2, ((10, 1),)), Shown("m", 2)),
    Kind.SPEED: (Shown("ft/min", 1, ((10, 0),)), Shown("m/s", 2)),
    Kind.AREA: (Shown("ft2", 2, ((10, 1),)), Shown("m2", 2)),
    Kind.DENSITY: (Shown("lb/gal", 2), Shown("g/ml", 3)),
    Kind.VISCOSITY: (Shown("mm2/s", 2, ((10, 1), (100, 0))),),
    Kind.PERCENT: (Shown("%", 1, least=0),),
    Kind.AIR_FLOW: (Shown("ft3/min", 1, ((100, 0),)), Shown("l/min", 0)),
    Kind.EXHAUST: (Shown("ft3/min", 0), Shown("m3/h", 1, ((10, 0),))),
    Kind.RECEIVER: (Shown("gal", 1, ((100, 0),)), Shown("l", 1, ((100, 0),))),
    Kind.ROOM: (Shown("ft3", 0), Shown("m3", 1)),
    Kind.TURNS: (Shown("turns", 2, least=0),),
    Kind.COUNT: (Shown("", 0),),
    Kind.RATIO: (Shown("", 3, least=0),),
}

_MINUTE_S = 60
_HOUR_S = 3600
_DAY_S = 86400
#: From here on a time is told in days: nobody reads 73:20:00.
_DAYS_FROM_S = 2 * _DAY_S


def shown(kind: Kind, system: System) -> Shown:
    return SHOWN[kind][0 if system == System.US else -1]


@cache
def shown_as(kind: Kind, system: System) -> Unit:
    return unit_named(shown(kind, system).unit, kind.dimension)


@cache
def base_of(kind: Kind) -> Unit:
    return unit_named(kind.base, kind.dimension)


def shown_unit(kind: Kind, system: System) -> str:
    """Give the name of the unit in which `kind` is shown, as ``fl oz/min``; may be empty."""
    return shown_as(kind, system).name


def shown_value(value: float, kind: Kind, system: System) -> float:
    """Give `value` [base unit] as a number in the shown unit, not rounded."""
    return convert(value, base_of(kind), shown_as(kind, system))


def number_text(number: float, places: int, least: int | None = None) -> str:
    """Give `number` to `places`, without ``-0``; zeros beyond `least` places are left away."""
    text = f"{number:.{places}f}"
    if least is not None and "." in text:
        whole, _, part = text.partition(".")
        part = part.rstrip("0").ljust(least, "0")
        text = f"{whole}.{part}" if part else whole
    return text[1:] if text.startswith("-") and not text.strip("-0.") else text


def show(
    value: float,
    kind: Kind,
    system: System,
    *,
    unit: bool = True,
    places: int | None = None,
) -> str:
    """Give `value` [base unit] as it is read on a screen: ``6.0 fl oz/min``, ``177 ml/min``.

    A time of a minute or more reads ``1:30`` or ``1:02:03``, from two days on ``3 d 4 h``; with
    `places` it stays in seconds, as efflux times are told. What is not a number reads ``–``, what
    is infinite ``∞``. The text is understood again by ``read``.
    """
    if math.isnan(value):
        return "–"
    if math.isinf(value):
        return "∞" if value > 0 else "-∞"
    if kind is Kind.TIME and places is None and round(abs(value), 1) >= _MINUTE_S:
        return ("-" if value < 0 else "") + _clock_text(abs(value))
    how = shown(kind, system)
    number = shown_value(value, kind, system)
    least = how.least if places is None else None
    text = number_text(number, how.places(number) if places is None else places, least)
    return with_unit(text, shown_unit(kind, system)) if unit else text


def with_unit(text: str, unit: str) -> str:
    """Give a number with its unit behind it, if it has one: ``1 turn``, ``2 turns``."""
    return f"{text} {'turn' if (text, unit) == ('1', 'turns') else unit}".rstrip()


def _clock_text(seconds: float) -> str:
    whole = math.floor(seconds + 0.5)
    if whole < _DAYS_FROM_S:
        hours, rest = divmod(whole, _HOUR_S)
        minutes, rest = divmod(rest, _MINUTE_S)
        return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"
    whole = math.floor(seconds / _MINUTE_S + 0.5) * _MINUTE_S
    days, rest = divmod(whole, _DAY_S)
    hours, rest = divmod(rest, _HOUR_S)
    parts = ((days, "d"), (hours, "h"), (rest // _MINUTE_S, "min"))
    return " ".join(f"{number} {name}" for number, name in parts if number)
