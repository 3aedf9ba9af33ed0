"""How long something is, in words that cannot be taken for a time of day: 14 min, 3 h, 2 d 8 h.

One place for it. Only a countdown that runs in a large figure reads 4:31.
"""

from __future__ import annotations

#: From here on seconds say nothing any more, and from here on minutes do not [s].
MINUTES_FROM_S, HOURS_FROM_S = 600.0, 86400.0


def length(seconds: float) -> str:
    """Give a time to the second where it is short, to the minute, or to the hour from a day on.

    >>> length(42), length(135), length(600), length(10140), length(10800), length(200000)
    ('42 s', '2 min 15 s', '10 min', '2 h 49 min', '3 h', '2 d 8 h')
    """
    if seconds < MINUTES_FROM_S:
        return spelled(seconds)
    return rough(seconds)


def rough(seconds: float) -> str:
    """Give a time to the minute, for what is known no better; never less than a minute.

    >>> rough(20), rough(900), rough(10140), rough(200000)
    ('1 min', '15 min', '2 h 49 min', '2 d 8 h')
    """
    if seconds >= HOURS_FROM_S:
        days, hours = divmod(round(seconds / 3600), 24)
        return _joined((days, "d"), (hours, "h"))
    hours, minutes = divmod(max(1, round(seconds / 60)), 60)
    return _joined((hours, "h"), (minutes, "min"))


def spelled(seconds: float) -> str:
    """Give a time to the second; rounded.

    >>> spelled(45), spelled(135), spelled(600)
    ('45 s', '2 min 15 s', '10 min')
    """
    minutes, rest = divmod(max(round(seconds), 0), 60)
    return _joined((minutes, "min"), (rest, "s")) or "0 s"


def _joined(*parts: tuple[int, str]) -> str:
    return " ".join(f"{number} {name}" for number, name in parts if number)
