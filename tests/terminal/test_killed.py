"""Killed, torn, started twice: what the screen said was kept is in the log, and the job goes on."""

from __future__ import annotations

import random
import re
import signal
from pathlib import Path

import pytest

from booth.log.events import CautionAcknowledged, CoatEnded, NoteMade, UnknownEvent
from booth.log.fold import Job
from booth.profile.cautions import cautions_for
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    begin,
    current,
    fast,
    job,
    kept,
    kept_of,
    log_path,
    on_step,
    pass_over,
    read_cautions,
    short_profile,
    take_up,
    write_profile,
)

pytestmark = pytest.mark.terminal

KILLS = 6
PARTS = ("left door", "hood")


def said_of_cautions(text: str, of: Job) -> int:
    """How many cautions the screen says were read."""
    if found := re.search(r"All (\d+) were read", text):
        return int(found.group(1))
    found = re.search(rf"\b(\d+) of {len(cautions_for(of.profile))}\b", text)
    return int(found.group(1)) - 1 if found else 0


def said_of_runs(text: str) -> list[str]:
    """The flow-cup runs that the screen shows."""
    found = re.search(r"runs ([\d. ]+?) +mean", text)
    return found.group(1).split() if found else []


def said_of_coats(text: str) -> dict[str, tuple[int, bool]]:
    """Finished coats of each part, and whether one is being sprayed."""
    rows = re.findall(r"(left door|hood) +(\d+)/3 (.*)", text)
    return {part: (int(number), "SPRAYING" in rest) for part, number, rest in rows}


def steps_ticked(text: str) -> set[str]:
    """The steps that the list says are done."""
    return set(re.findall(r"√ +\d+ (\S.*?)(?: {2,}|$)", text, re.MULTILINE))


def agree(text: str, of: Job, *, exactly: bool) -> None:
    """Hold what the screen said against what the log adds up to."""

    def fits(said: int, real: int) -> bool:
        return said == real if exactly else said <= real

    if current(text) == "Cautions":
        assert fits(said_of_cautions(text, of), len(of.cautions))
    runs = [f"{run.seconds:.1f}" for run in of.runs[-8:]]
    said = said_of_runs(text)
    assert said == runs[: len(said)] if not exactly else not said or said == runs
    for part, (coats, spraying) in said_of_coats(text).items():
        real = of.coats_on(part)
        ended = sum(coat.ended is not None for coat in real)
        if exactly:
            assert (coats, spraying) == (ended, of.running_coat(part) is not None)
        else:
            assert (coats, spraying) <= (ended, of.running_coat(part) is not None)
    names = {"Cautions": "cautions", "Flow cup": "efflux", "Coats and waits": "coats"}
    assert {names[name] for name in steps_ticked(text)} <= set(of.done)


def test_killed_at_random_moments_while_keys_are_pressed(home: Path) -> None:
    write_profile(home, "short", short_profile(("cautions", "efflux", "coats")))
    pick = random.Random(20250615)
    rate = fast(60)
    noted = 0
    for number in range(KILLS):
        with Terminal(home, rate=rate) as run:
            if number == 0:
                begin(run, "Aaa short job", ", ".join(PARTS))
            else:
                before = job(home)
                take_up(run)
                assert "About this job" not in run.text, "a kill leaves nothing torn"
                run.settle()
                agree(run.text, before, exactly=True)
                assert kept(home) == list(before.events), "taking a job up adds nothing"
            pressed = []
            for _ in range(pick.randint(1, 14)):
                key = pick.choices(("space", "enter", "note", "f6"), (8, 2, 1, 0.3))[0]
                pressed.append(key)
                if key == "note":
                    run.press("f2")
                    run.press(f"note {noted}", "enter")
                    noted += 1
                elif key == "f6":
                    run.press("f6", "tired", "enter")
                else:
                    run.press(key)
                run.linger(pick.uniform(0, 0.08))
            run.linger(pick.uniform(0, 0.03))
            run.kill(signal.SIGKILL)
            assert run.wait() == 128 + signal.SIGKILL
            assert "Traceback" not in run.raw.decode("utf-8", "replace")
            logs = list((home / "booth" / "jobs").glob("*.jsonl"))
            assert len(logs) == 1, (number, pressed, run.text)
            # What was drawn until it died is on the emulator now: all of it has to be in the log.
            agree(run.text, job(home), exactly=False)
            if "Noted." in run.text:
                assert kept_of(home, NoteMade)
        events = kept(home)
        assert [event.n for event in events] == list(range(1, len(events) + 1))
        assert not any(isinstance(event, UnknownEvent) for event in events)
    assert len(kept(home)) > KILLS


@pytest.mark.parametrize("tear", ["half a line", "NULs", "nothing but its line end"])
def test_a_torn_last_line_is_set_aside_and_told_and_the_job_goes_on(home: Path, tear: str) -> None:
    write_profile(home, "short", short_profile(("cautions", "coats")))
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        run.press("space")
        run.until("2 of")
        run.press("space")
        run.until("3 of")
        run.kill(signal.SIGKILL)
        run.wait()
    path = log_path(home)
    whole = path.read_bytes()
    assert len(kept_of(home, CautionAcknowledged)) == 2
    # A power cut may leave a part of the last line, blocks of zeros, or no line end.
    torn = {
        "half a line": whole[:-40],
        "NULs": whole + b'{"event":"cau' + b"\0" * 500,
        "nothing but its line end": whole[:-1],
    }[tear]
    path.write_bytes(torn)
    left = {"half a line": 1, "NULs": 2, "nothing but its line end": 2}[tear]
    with Terminal(home) as run:
        take_up(run)
        run.until("About this job's log")
        run.until("line end|set aside")
        if tear != "nothing but its line end":
            beside = next(path.parent.glob("*.torn-1"))
            run.until(re.escape(beside.name[-20:]))
            assert torn.endswith(beside.read_bytes())
        run.press("enter")
        run.until(rf"{left + 1} of ")
        run.press("space")
        run.until(rf"{left + 2} of ")
        run.press("f10")
        assert run.wait() == 0
    assert len(kept_of(home, CautionAcknowledged)) == left + 1
    with Terminal(home) as run:
        take_up(run)
        run.until(rf"{left + 2} of ")
        assert "About this job" not in run.text


def test_a_second_program_on_the_same_job_is_refused_and_the_first_goes_on(home: Path) -> None:
    write_profile(home, "short", short_profile(("cautions", "coats")))
    with Terminal(home) as first, Terminal(home) as second:
        second.until("Coating profiles")
        begin(first, "Aaa short job", "hood")
        before = kept(home)
        with Terminal(home) as third:
            third.until("»")
            third.until("Coating profiles")
            third.press("enter")
            third.until("cannot be opened")
            third.until(lambda _: "open in another booth" in third.dialog)
            assert kept(home) == before
            third.press("esc")
            third.until(lambda text: "cannot be opened" not in text)
            third.press("f10")
            assert third.wait() == 0
        first.press("space")
        first.until("2 of")
        assert len(kept_of(home, CautionAcknowledged)) == 1
        # A program that has no job open yet begins another one meanwhile.
        begin(second, "Shellac sealer", "box")
        first.press("space")
        first.until("3 of")


def test_killed_while_a_coat_dries_the_wait_is_right_at_the_next_start(home: Path) -> None:
    write_profile(home, "short", short_profile(("coats",), flash_off="1 h", closes="30 h"))
    rate = fast(60)
    with Terminal(home, rate=rate) as run:
        begin(run, "Aaa short job", "hood")
        pass_over(run)
        on_step(run, "Coats and waits")
        run.press("space")
        run.until("SPRAYING")
        run.press("space")
        run.until(r"1/3 . WAIT")
        run.kill(signal.SIGKILL)
        run.wait()
    (ended,) = kept_of(home, CoatEnded)
    with Terminal(home, rate=rate) as run:
        run.until("Jobs not closed")
        # Waits go on while nothing runs, and are shown before a job is taken up.
        run.until("hood.*WAIT")
        take_up(run)
        run.until(r"1/3 . WAIT +(\d+:\d+)")
        shown = re.search(r"1/3 . WAIT +(\d+):(\d+)", run.text)
        assert shown is not None
        left = int(shown.group(1)) * 60 + int(shown.group(2))
        assert 0 < left < 3600
        # Within what passed since the screen was drawn: a second of ours is a minute there.
        from booth.clock import MachineClock
        from booth.moment import elapsed

        now = MachineClock(environment={"BOOTH_CLOCK_RATE": rate}).now()
        real = 3600 - elapsed(ended.at, now).seconds
        assert real - 1 <= left <= real + 300
        read_nothing_twice = kept(home)
        run.press("f10")
        assert run.wait() == 0
        assert kept(home) == read_nothing_twice


def test_cautions_read_before_a_kill_are_not_asked_again(home: Path) -> None:
    write_profile(home, "short", short_profile(("cautions", "coats")))
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        read_cautions(run)
        run.kill(signal.SIGKILL)
        run.wait()
    with Terminal(home) as run:
        take_up(run)
        run.until("were read")
