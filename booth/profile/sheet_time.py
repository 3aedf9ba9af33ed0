"""Times as a data sheet prints them."""

from __future__ import annotations

__all__ = ["sheet_time"]

#: A sheet says 72 h, and days only from there on.
DAYS_FROM_S = 4 * 86400
UNITS = ((DAYS_FROM_S, 86400, "d"), (3600, 3600, "h"), (60, 60, "min"))


def sheet_time(seconds: float, to_s: float | None = None) -> str:
    """A time, or a range of them, to three digits.

    >>> sheet_time(600, 900), sheet_time(5400), sheet_time(259200), sheet_time(604800)
    ('10 to 15 min', '1.5 h', '72 h', '7 d')
    """
    low, unit = _in_words(seconds)
    if to_s is None:
        return f"{low} {unit}"
    high, other = _in_words(to_s)
    return f"{low} to {high} {unit}" if unit == other else f"{low} {unit} to {high} {other}"


def _in_words(seconds: float) -> tuple[str, str]:
    for least, unit_s, unit in UNITS:
        if seconds >= least:
            return f"{seconds / unit_s:.3g}", unit
    return f"{seconds:.3g}", "s"
