"""Opening a job: parts by name, refused in sentences, and never opened twice."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.app.app import BoothApp
from booth.clock import ManualClock
from booth.files.places import Places
from booth.screens.bench import Bench
from booth.screens.new_job import BadParts, NewJob, parts_from
from tests.job.make import profile


def test_parts_are_parted_by_commas_and_blanks_do_not_count() -> None:
    assert parts_from(" left  door, hood ,, ") == ("left door", "hood")
    assert parts_from("   ") == ("the part",)


@pytest.mark.parametrize(
    ("typed", "said"),
    [("door, door", "twice"), ("x" * 41, "long"), (",".join(map(str, range(25))), "up to 24")],
)
def test_parts_that_cannot_be_told_apart_get_a_sentence(typed: str, said: str) -> None:
    with pytest.raises(BadParts, match=said):
        parts_from(typed)


@given(st.text(max_size=300))
def test_any_text_is_parts_or_a_sentence(typed: str) -> None:
    try:
        parts = parts_from(typed)
    except BadParts as fault:
        assert str(fault).endswith(".")
    else:
        assert 1 <= len(parts) == len(set(parts)) <= 24
        assert all(part == " ".join(part.split()) for part in parts)


async def test_two_enters_at_once_open_one_job() -> None:
    app = BoothApp(ManualClock(), Places.standard())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        screen = NewJob(profile())
        app.push_screen(screen, lambda session: app.take_up(session) if session else None)
        await pilot.pause()
        screen.begin()
        screen.begin()
        for _ in range(20):
            await pilot.pause()
        assert isinstance(app.screen, Bench)
        assert len(list(app.places.jobs_dir.glob("*.jsonl"))) == 1
