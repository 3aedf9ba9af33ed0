"""Numbers as they are read: no more digits than they have, times in steps that fit their size."""

from __future__ import annotations

import math

#: Digits that a small number keeps whatever places its unit has.
LEAST = 2
MOST_PLACES = 9

_MINUTE, _HOUR, _DAY = 60, 3600, 86400
#: Steps [s] of a time that is no more than an estimate: up to so long [s], in such steps.
STEPS = ((120, 1), (600, 10), (_HOUR, _MINUTE), (10 * _HOUR, 5 * _MINUTE), (2 * _DAY, 10 * _MINUTE))
FURTHER_STEP = _HOUR
#: From so many days on a time is told in days, and to the minute: nobody plans a wait of 1 d 3 h.
LEAST_DAYS = 2
#: What the rounding of floating-point numbers may add to a whole count of steps.
ROUNDING = 1e-9


def fitted(number: float, places: int, digits: int | None, way: int = 0) -> tuple[float, int]:
    """Give `number` and places with `digits` digits at most and LEAST at least; way: 1 rounds up."""
    if not number:
        return number, places
    top = math.floor(math.log10(abs(number)))
    places = min(max(places, LEAST - 1 - top), MOST_PLACES)
    if digits is not None and digits - 1 - top < places:
        places = digits - 1 - top
        number = round(number, places) if way <= 0 else _up(number, places)
        places = max(places, 0)
    return number, places


def _up(number: float, places: int) -> float:
    unit = 10.0**-places
    return round(unit * math.ceil(number / unit - ROUNDING), places)


def stepped(seconds: float, way: int) -> float:
    """Give an estimated time in whole steps: up (1: it opens), down (-1: it closes) or the closest."""
    step = next((step for most, step in STEPS if abs(seconds) < most), FURTHER_STEP)
    count = seconds / step
    if way > 0:
        return step * math.ceil(count - ROUNDING)
    # Less than a step is no time at all: it is told in seconds.
    return step * math.floor(count + ROUNDING) if way < 0 else step * round(count)


def time_text(seconds: float) -> str:
    """Give a time of a minute or more: ``1:30``, from an hour on ``2 h 5 min``, ``3 d 4 h``."""
    whole = round(abs(seconds))
    if whole < _HOUR:
        minutes, rest = divmod(whole, _MINUTE)
        told = f"{minutes}:{rest:02}"
    else:
        days, rest = 0, whole
        if whole >= LEAST_DAYS * _DAY:
            days, rest = divmod(round(whole / _MINUTE) * _MINUTE, _DAY)
        hours, rest = divmod(rest, _HOUR)
        minutes, rest = divmod(rest, _MINUTE)
        parts = ((days, "d"), (hours, "h"), (minutes, "min"), (rest, "s"))
        told = " ".join(f"{number} {name}" for number, name in parts if number)
    return f"-{told}" if seconds < 0 else told
