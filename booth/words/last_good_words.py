"""The last good settings in words: where to start from, for each step. Pure."""

from __future__ import annotations

from booth.files.safe_text import visible
from booth.job.past_settings import SETTINGS, GoodSettings, Lesson
from booth.job.today import Around, Differs, differs
from booth.log.fold import Job
from booth.trade.cups.cup_table import CUPS
from booth.trade.faults.fault_table import FAULTS
from booth.units import Kind, System, show


def starting_points(good: GoodSettings | None, system: System) -> dict[str, str]:
    """Give kind of step -> the setting that last came out good; no entry where it was not measured."""
    return {kind: f"last good: {words}" for kind, words in _points(good, system).items()}


def good_lines(
    good: GoodSettings | None, system: System, date: str = "", now: Around | None = None
) -> tuple[str, ...]:
    """Give all of it before a job begins: when, what was set, what is otherwise now, what to change
    this time."""
    if good is None:
        return ()
    first = f"Last good with this product{f' and {visible(good.gun)}' if good.gun else ''}"
    lines = [first + (f", {date}:" if date else ":")]
    lines.append("; ".join(_points(good, system).values()) or "nothing was measured in it")
    lines += today_lines(good, now, system)
    if good.next_time:
        lines.append(f"To change this time: {visible(good.next_time)}")
    return tuple(lines)


def today_lines(good: GoodSettings | None, now: Around | None, system: System) -> tuple[str, ...]:
    """What is otherwise now than in the job of these settings; nothing where nothing is known to be."""
    found = differs(good.then, now) if good is not None and now is not None else Differs()
    said = []
    if found.air_k is not None:
        by = show(abs(found.air_k), Kind.TEMPERATURE_DIFFERENCE, system, places=0)
        said.append(f"{'colder' if found.air_k < 0 else 'warmer'} by {by}")
    if found.humidity_percent is not None:
        by = show(abs(found.humidity_percent), Kind.PERCENT, system, places=0)
        said.append(f"{'drier' if found.humidity_percent < 0 else 'damper'} by {by}")
    if found.gun:
        said.append(f"another gun (then {visible(found.gun)})")
    if found.tip_mm is not None:
        then, is_now = (show(each, Kind.TIP, system) for each in found.tip_mm)
        said.append(f"another tip ({is_now}, then {then})")
    return (f"Otherwise than then: {'; '.join(said)}",) if said else ()


def lesson_line(lesson: Lesson | None, date: str) -> str:
    """What the last job that taught anything said to change: as 'Next time, said 2025-06-15 (redo; seen:
    runs): slower'. date: of that job."""
    if lesson is None:
        return ""
    about = [visible(lesson.verdict)] if lesson.verdict else []
    if lesson.faults:
        about.append(f"seen: {', '.join(fault_name(each) for each in lesson.faults)}")
    behind = f" ({'; '.join(about)})" if about else ""
    return f"Next time, said {date}{behind}: {visible(lesson.next_time)}"


def rehearsed_line(rehearsal: Job, date: str) -> str:
    """What a closed rehearsal said to change before the real can, the worst of it. date: of it."""
    closed = rehearsal.closed
    found, said = closed.to_change if closed is not None else (), f"Rehearsed with water {date}"
    if not found:
        return f"{said}: nothing that was measured asked for a change."
    more = f" ({len(found) - 1} more: read it among past jobs)" if len(found) > 1 else ""
    return f"{said}, to change first: {visible(found[0])}{more}"


def fault_name(key: str) -> str:
    """A fault as it is called; of an unforeseen key, the key."""
    found = FAULTS.get(key)
    return found.name if found is not None else visible(key)


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
