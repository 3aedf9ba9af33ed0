"""How long and when: one function each, and nothing that is no time of day reads like one."""

from __future__ import annotations

import re
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

import booth
from booth.clock import local_day_hhmm, local_hhmm
from booth.moment import later
from booth.units.durations import length, rough, spelled
from tests.job.make import START

SOURCES = Path(booth.__file__).parent
#: Where a running countdown or stopwatch is shown as 4:31, and nowhere else.
COUNTS = {
    "words/wait_words.py",
    "instruments/air_recovery.py",
    "instruments/coats.py",
    "instruments/part_rows.py",
    "instruments/catch.py",
    "instruments/catch_words.py",
}
#: Where a time of day stands with no day: beside its date or day, on a line of time, of today by rule.
TIMES = {
    "clock.py",
    "cli/log_command.py",
    "cli/sheet_command.py",
    "screens/job_report.py",
    "screens/write_card.py",
    "screens/bench.py",
    "screens/home.py",
    "instruments/plan.py",
    "instruments/plan_words.py",
    "instruments/checklists.py",
    "screens/history_rows.py",
    "screens/side_by_side.py",
    # the time of day now, and an entry under its day
    "screens/base.py",
    "screens/bench_large.py",
}


def using(word: str) -> set[str]:
    """The files that take a name from where it is defined, or define it."""
    named = re.compile(rf"\b{word}\b")
    return {
        str(path.relative_to(SOURCES))
        for path in SOURCES.rglob("*.py")
        if named.search(path.read_text("utf-8"))
    }


def test_lengths_as_they_are_read() -> None:
    assert [length(each) for each in (0, 14, 60, 840, 3600, 10800, 10140)] == [
        *("0 s", "14 s", "1 min", "14 min", "1 h", "3 h", "2 h 49 min")
    ]
    assert [length(each) for each in (86400, 90000, 200000)] == ["1 d", "1 d 1 h", "2 d 8 h"]
    assert (rough(20), spelled(599.6)) == ("1 min", "10 min")


@given(st.floats(0, 400 * 86400))
def test_no_length_reads_like_a_time_of_day_or_is_far_from_it(seconds: float) -> None:
    said = length(seconds)
    assert ":" not in said and not said.startswith("0 m")
    unit_s = {"d": 86400, "h": 3600, "min": 60, "s": 1}
    told = sum(int(n) * unit_s[unit] for n, unit in re.findall(r"(\d+) (\w+)", said))
    off = 0.5 if seconds < 600 else 30 if seconds < 86400 else 1800  # half of what is told last
    assert abs(told - seconds) <= off + 1e-6


def test_only_what_runs_counts_in_minutes_and_seconds() -> None:
    takes = {each for each in using("duration") if "import" in _imports(each, "duration")}
    # Report and card take that of the log's own words, which is ``length``.
    assert takes <= COUNTS | {"words/report.py", "card/coats.py", "card/pictures.py"}


def test_a_time_of_day_has_its_day_where_that_is_another_one() -> None:
    assert using("local_hhmm") <= TIMES
    assert local_day_hhmm(later(START, 60), START) == local_hhmm(later(START, 60))
    assert local_day_hhmm(later(START, 86400), START).startswith("tomorrow ")


def _imports(name: str, word: str) -> str:
    text = (SOURCES / name).read_text("utf-8")
    found = re.search(rf"^from booth\.words\.\w+ import (?:\([^)]*|[^\n]*)\b{word}\b", text, re.M)
    return found[0] if found else ""
