"""The last good settings in words: where to start from, for each step. Pure."""

from __future__ import annotations

from booth.files.safe_text import visible
from booth.job.past import GoodSettings
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, System, show


def starting_points(good: GoodSettings | None, system: System) -> dict[str, str]:
    """Give kind of step -> the setting that last came out good; no entry where it was not measured."""
    if good is None:
        return {}
    cup = CUPS.get(good.efflux_cup or "")
    efflux = _said(good.efflux_s, Kind.TIME, system, places=1) if cup is not None else ""
    points = {
        "efflux": _joined(f"{efflux} in a {cup.name}" if cup is not None and efflux else ""),
        "thin": _joined(
            _after(_said(good.thinner_percent, Kind.PERCENT, system, places=0), "thinner")
        ),
        "air": _joined(
            _before("inlet", _said(good.inlet_kpa, Kind.PRESSURE, system)),
            _before("cap", _said(good.cap_kpa, Kind.PRESSURE, system)),
        ),
        "catch": _joined(
            _after(_said(good.delivery_ml_min, Kind.DELIVERY, system), _liquid(good)),
            _before("needle", _said(good.turns, Kind.TURNS, system)),
            _before("tip", _said(good.tip_mm, Kind.TIP, system)),
        ),
        "fan": _joined(
            _before("fan", _said(good.fan_mm, Kind.LENGTH, system)),
            _before("at", _said(good.distance_mm, Kind.LENGTH, system)),
            _after(_said(good.fan_turns, Kind.TURNS, system), "open"),
        ),
        "pattern": _joined(_after(_said(good.overlap_percent, Kind.PERCENT, system), "overlap")),
        "pace": _joined(_before("pace", _said(_m_s(good.pass_mm_s), Kind.SPEED, system))),
    }
    return {kind: f"last good: {words}" for kind, words in points.items() if words}


def good_lines(good: GoodSettings | None, system: System, date: str = "") -> tuple[str, ...]:
    """Give all of it before a job begins: when, what was set, what to change this time."""
    if good is None:
        return ()
    points = starting_points(good, system)
    words = [points[kind].removeprefix("last good: ") for kind in points]
    first = f"Last good with this product{f' and {visible(good.gun)}' if good.gun else ''}"
    lines = [first + (f", {date}:" if date else ":")]
    lines.append("; ".join(words) or "nothing was measured in it")
    if good.next_time:
        lines.append(f"To change this time: {visible(good.next_time)}")
    return tuple(lines)


def _liquid(good: GoodSettings) -> str:
    return "of water" if good.delivery_liquid == "water" else ""


def _said(value: float | None, kind: Kind, system: System, places: int | None = None) -> str:
    return "" if value is None else show(value, kind, system, places=places)


def _m_s(mm_s: float | None) -> float | None:
    return None if mm_s is None else mm_s / 1000


def _before(word: str, said: str) -> str:
    return f"{word} {said}" if said else ""


def _after(said: str, word: str) -> str:
    return f"{said} {word}".rstrip() if said else ""


def _joined(*parts: str) -> str:
    return ", ".join(part for part in parts if part)
