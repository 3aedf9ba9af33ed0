"""The result: what stands under the verdict."""

from __future__ import annotations

import pytest

from booth.log.events import CoatBegun, CoatEnded, Event, JobClosed, StepDone
from tests.instruments.at_bench import at_bench
from tests.job.make import at


@pytest.mark.parametrize(
    ("parts", "coats", "said"),
    [
        (("door",), 0, "0 coats on 1 part"),
        (("door",), 1, "1 coat on 1 part"),
        (("door", "hood"), 2, "2 coats on 2 parts"),
    ],
)
async def test_coats_and_parts_are_counted(parts: tuple[str, ...], coats: int, said: str) -> None:
    kept: list[Event] = []
    for number in range(coats):
        kept.append(CoatBegun(n=0, at=at(number * 60), part="door", coat=number + 1))
        kept.append(CoatEnded(n=0, at=at(number * 60 + 30), part="door", coat=number + 1))
    async with at_bench("result", parts=parts, before=lambda clock: kept) as desk:
        lines = [line.strip() for line in desk.text.splitlines()]
        assert any(line.endswith(said) for line in lines), desk.text


async def test_nothing_is_called_good_by_enter_alone() -> None:
    async with at_bench("result") as desk:
        assert desk.focused_row == "verdict"
        await desk.press("enter", "enter", "enter")
        assert desk.log == []
        assert "choose the verdict" in desk.text and desk.focused_row == "verdict"
        await desk.press("right", "enter", "enter", "enter")
        (done, closed) = desk.log
        assert isinstance(done, StepDone) and isinstance(closed, JobClosed)
        assert closed.verdict == "good"
