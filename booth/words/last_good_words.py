"""The last good settings in words: where to start from, for each step. Pure."""

from __future__ import annotations

from booth.files.safe_text import visible
from booth.job.past import SETTINGS, GoodSettings
from booth.trade.cups.cup_table import CUPS
from booth.units import System


def starting_points(good: GoodSettings | None, system: System) -> dict[str, str]:
    """Give kind of step -> the setting that last came out good; no entry where it was not measured."""
    return {kind: f"last good: {words}" for kind, words in _points(good, system).items()}


def good_lines(good: GoodSettings | None, system: System, date: str = "") -> tuple[str, ...]:
    """Give all of it before a job begins: when, what was set, what to change this time."""
    if good is None:
        return ()
    first = f"Last good with this product{f' and {visible(good.gun)}' if good.gun else ''}"
    lines = [first + (f", {date}:" if date else ":")]
    lines.append("; ".join(_points(good, system).values()) or "nothing was measured in it")
    if good.next_time:
        lines.append(f"To change this time: {visible(good.next_time)}")
    return tuple(lines)


def _points(good: GoodSettings | None, system: System) -> dict[str, str]:
    if good is None:
        return {}
    cup = CUPS.get(good.cup)
    measured_with = {
        "efflux": f" in a {cup.name}" if cup is not None else "",
        "delivery": " of water" if good.liquid == "water" else "",
    }
    found: dict[str, list[str]] = {}
    for each in SETTINGS:
        # A time in a cup of a later version is no time to go by.
        if each.name in good.figures and (each.name != "efflux" or cup is not None):
            figure = each.figure(good.figures[each.name], system)
            words = each.said.format(figure) + measured_with.get(each.name, "")
            found.setdefault(each.step, []).append(words)
    return {step: ", ".join(words) for step, words in found.items()}
