"""``booth --rehearse``: a rehearsal by the real program, killed on its way, to what it says to change."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.log.events import CatchMade, CoatEnded, JobClosed, JobOpened
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    current,
    fast,
    kept,
    kept_of,
    next_step,
    pass_over,
    read_cautions,
    tick_every_line,
)

pytestmark = pytest.mark.terminal

SPED_UP = 60


def test_a_rehearsal_from_the_command_line_to_what_it_says(home: Path) -> None:
    rate = fast(SPED_UP)
    with Terminal(home, "--rehearse", "two-pack-clear", rate=rate) as run:
        run.until("REHEARSAL with water: Two-pack clear")
        run.press("enter")
        run.until(lambda text: current(text) == "Cautions")
        read_cautions(run, "space")
        assert next_step(run, lambda: run.press("enter")) == "Prepare"
        assert pass_over(run) == "Air"
        assert pass_over(run) == "Catch"
        run.press("space")
        run.until("HOW MUCH|caught for")
        run.press("90ml", "enter", "enter")
        run.until(lambda _: kept_of(home, CatchMade))
        run.kill()
    (caught,) = kept_of(home, CatchMade)
    assert caught.liquid == "water"
    # The open rehearsal is found again, and never by the name of the job.
    with Terminal(home, "--rehearse", "two-pack-clear", rate=rate) as run:
        run.until("» *Rehearsal: Two-pack|→ Rehearsal: Two-pack")
        run.press("enter")
        run.until(lambda text: current(text) is not None and "REHEARSAL" in text)
        while current(run.text) != "Coats and waits":
            pass_over(run)
        for coat in (1, 2):
            run.until(f"begin coat {coat}")
            run.press("space")
            run.until(f"end coat {coat}")
            run.press("space")
            run.until(lambda _, coat=coat: len(kept_of(home, CoatEnded)) == coat)
        run.until("Enter  next step")
        assert next_step(run, lambda: run.press("enter")) == "Clean the gun"
        tick_every_line(run)
        assert next_step(run, lambda: run.press("enter")) == "Result"
        # 90 ml/min of water: a coating gives less, and the profile asks for 8.5 fl oz (251 ml) and more.
        run.until("a coating runs slower")
        run.until("Not practised: Air, Fan, Test pattern, Pace")
        run.press("enter", "enter")
        run.until(lambda text: "Coating profiles" in text and "Jobs not closed" not in text)
        run.press("f10")
        assert run.wait() == 0
    opened, closed = kept(home)[0], kept(home)[-1]
    assert isinstance(opened, JobOpened) and opened.rehearsal
    assert isinstance(closed, JobClosed) and closed.verdict == ""
    assert re.match(
        r"Water: \d\.\d+ fl oz/min; a coating runs slower than water", closed.to_change[0]
    )
