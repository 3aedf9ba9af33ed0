"""Whatever figures a log holds, it teaches something or nothing: reading it never fails."""

from __future__ import annotations

import random
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.learnt.past_jobs import PastJobs
from booth.log.codec import encode
from booth.units import Quantity, System
from booth.words.learnt_words import in_short, observation_line, plot, summary
from tests.invented_year import Truth, events_of

ODD = (0.0, -1.0, -1e9, 1e-300, 1e-12, 1e9, 1e15, 1e300)


def odd(event: Any, at: int, value: float) -> Any:
    """An event with one of its figures an odd one."""
    names = [
        name
        for name in event.__struct_fields__
        if name not in ("n", "at") and isinstance(getattr(event, name), Quantity | float)
    ]
    if not names:
        return event
    name = names[at % len(names)]
    was = getattr(event, name)
    now = Quantity(value, was.unit, "odd") if isinstance(was, Quantity) else value
    return msgspec.structs.replace(event, **{name: now})


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("odd")


@given(
    changes=st.lists(
        st.tuples(st.integers(0, 60), st.integers(0, 3), st.sampled_from(ODD)),
        min_size=1,
        max_size=8,
    ),
    dropped=st.sets(st.integers(1, 60), max_size=6),
)
def test_odd_figures_and_missing_entries(
    folder: Path, changes: list[tuple[int, int, float]], dropped: set[int]
) -> None:
    for path in folder.iterdir():
        path.unlink()
    drawn = random.Random(3)
    for day in range(4):
        events = events_of(Truth(), drawn, day)
        for place, field, value in changes if day else ():
            place %= len(events)
            events[place] = odd(events[place], field, value) if place else events[place]
        left = [each for n, each in enumerate(events) if n not in dropped]
        (folder / f"job-{day}.jsonl").write_bytes(b"".join(map(encode, left)))
    for each in PastJobs(folder).all_learnt():
        assert in_short(each, System.US) and summary(each, System.METRIC)
        for one in each.observations:
            assert one.low <= one.high
            assert observation_line(one, each, System.US, lambda at: "2025-01-01")
        plot(each.observations, each, 30, System.US)
