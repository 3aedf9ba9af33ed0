"""Killed, torn, started twice: what the screen said was kept is in the log, and the job goes on."""

from __future__ import annotations

import random
import re
import signal
from pathlib import Path

import pytest

from booth.log.events import (
    CautionAcknowledged,
    NoteMade,
    StopwatchStarted,
    UnknownEvent,
)
from booth.log.fold import Job, fold
from booth.log.parse import parse
from booth.log.session import Session
from booth.log.store import log_files, read_log
from booth.profile.cautions import cautions_for
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    begin,
    caution_shown,
    choose,
    current,
    fast,
    job,
    job_on_disk,
    kept,
    kept_of,
    note,
    read_a_caution,
    short_profile,
    take_up,
    write_profile,
)

pytestmark = pytest.mark.terminal

KILLS = 6
PARTS = ("left door", "hood")
#: What the key line says where the run of a cup has its Space.
RUNNING = re.compile("stop at the first break|drop this run")


def said_of_cautions(text: str, of: Job) -> int:
    """How many cautions the screen says were read."""
    if found := re.search(r"All (\d+) were read", text):
        return int(found.group(1))
    shown = caution_shown(text)
    titles = [each.title for each in cautions_for(of.profile)]
    return titles.index(shown) if shown in titles else 0


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
    if current(text) == "Flow cup":
        runs_on = RUNNING.search(text) is not None
        started = sum(isinstance(event, StopwatchStarted) for event in of.events)
        assert fits(runs_on, "cup" in of.stopwatches if exactly else started)
    for part, (coats, spraying) in said_of_coats(text).items():
        real = of.coats_on(part)
        ended = sum(coat.ended is not None for coat in real)
        if exactly:
            assert (coats, spraying) == (ended, of.running_coat(part) is not None)
        else:
            assert (coats, spraying) <= (ended, of.running_coat(part) is not None)
    names = {"Cautions": "cautions", "Flow cup": "efflux", "Coats and waits": "coats"}
    assert {names[name] for name in steps_ticked(text)} <= set(of.done)


def agrees(text: str, of: Job) -> bool:
    """Whether all of it is drawn, and is what the log adds up to."""
    try:
        agree(text, of, exactly=True)
    except AssertionError:
        return False
    return True


def test_killed_and_started_by_the_same_command_again_and_again(home: Path) -> None:
    """Nothing is lost, nothing is there twice; Enter as soon as the list shows begins no second job."""
    write_profile(home, "short", short_profile(("cautions", "efflux", "coats")))
    pick = random.Random(20250615)
    rate = fast(60)
    noted = 0
    for number in range(KILLS):
        with Terminal(home, "--profile", "short", rate=rate) as run:
            if number == 0:
                run.until("begin the job")
                run.press(", ".join(PARTS), "enter")
                run.until(lambda text: current(text) is not None)
            else:
                before = job(home)
                run.until("Jobs not closed")
                # Of a hand that presses on: what is too much is for the bench.
                run.press(*["enter"] * (1 if number % 2 else 3))
                run.until(lambda text: current(text) is not None)
                assert "About this job" not in run.text, "a kill leaves nothing torn"
                if number % 2:
                    agree(run.text, before, exactly=False)
                    run.until(lambda text, before=before: agrees(text, before))
                    assert kept(home) == list(before.events), "taking a job up adds nothing"
            pressed = []
            for _ in range(pick.randint(1, 14)):
                key = pick.choices(("space", "enter", "note", "f6"), (8, 2, 1, 0.3))[0]
                pressed.append(key)
                if key == "note":
                    note(run, f"note {noted}")
                    noted += 1
                elif key == "f6":
                    run.press("f6", "enter")
                else:
                    run.press(key)
                run.linger(pick.uniform(0, 0.08))
            run.linger(pick.uniform(0, 0.03))
            run.kill(signal.SIGKILL)
            assert run.wait() == 128 + signal.SIGKILL
            assert "Traceback" not in run.raw.decode("utf-8", "replace")
            assert len(log_files(home / "booth" / "jobs")) == 1, (number, pressed, run.text)
            # What was drawn until it died is on the emulator now: all of it has to be in the log.
            agree(run.text, job(home), exactly=False)
            if "Noted." in run.text:
                assert kept_of(home, NoteMade)
        events = kept(home)
        assert [event.n for event in events] == list(range(1, len(events) + 1))
        assert not any(isinstance(event, UnknownEvent) for event in events)
    assert len(kept(home)) > KILLS
    notes = [each.text for each in kept_of(home, NoteMade)]
    assert len(notes) == len(set(notes)) and set(notes) <= {f"note {each}" for each in range(noted)}


#: A power cut may leave a part of the last line, blocks of zeros, or no line end.
TEARS = {
    "hood": (lambda whole: whole[:-40], 1),
    "lid": (lambda whole: whole + b'{"event":"cau' + b"\0" * 500, 2),
    "box": (lambda whole: whole[:-1], 2),
}


def test_torn_last_lines_are_set_aside_and_told_and_the_jobs_go_on(home: Path) -> None:
    profile = short_profile(("cautions", "coats"))
    paths, torn = {}, {}
    for part, (tear, _) in TEARS.items():
        path = paths[part] = job_on_disk(home, profile, parts=(part,))
        job = fold(parse(path.read_bytes()).events)
        titles = [each.title for each in cautions_for(job.profile)]
        _acknowledge(path, 2)
        torn[part] = tear(path.read_bytes())
        path.write_bytes(torn[part])
    rate = fast(20)
    with Terminal(home, rate=rate) as run:
        for part, (_, left) in TEARS.items():
            run.until("Jobs not closed")
            choose(run, f"Aaa short job: {part}")
            run.until("About this job's log")
            run.until("line end|set aside")
            if part != "box":
                beside = next(paths[part].parent.glob(f"{paths[part].stem}*.torn-1"))
                run.until(re.escape(beside.name[-20:]))
                assert torn[part].endswith(beside.read_bytes())
            run.press("enter")
            # One that its own log does not hold; those read in another job today come last.
            run.until(lambda text, at=left: caution_shown(text) in titles[at:])
            read_a_caution(run)
            run.press("f9")
        run.until("Jobs not closed")
        run.press("f10")
        assert run.wait() == 0
    for part, (_, left) in TEARS.items():
        read = read_log(paths[part])
        assert not read.said, "what was mended is whole"
        assert sum(isinstance(each, CautionAcknowledged) for each in read.events) == left + 1
    with Terminal(home, rate=rate) as run:
        for part, (_, left) in TEARS.items():
            run.until("Jobs not closed")
            choose(run, f"Aaa short job: {part}")
            run.until(lambda text, at=left: caution_shown(text) in titles[at:])
            assert "About this job" not in run.text
            run.press("f9")


def _acknowledge(path: Path, count: int) -> None:
    """So many cautions were read, as the program writes it."""
    session = Session.resume(path)
    for caution in cautions_for(session.job.profile)[:count]:
        at = session.job.opened.at
        session.record(CautionAcknowledged(n=0, at=at, caution=caution.key, words=caution.title))
    session.close()


def test_a_second_program_on_the_same_job_is_refused_and_the_first_goes_on(home: Path) -> None:
    path = job_on_disk(home, short_profile(("cautions", "coats")))
    with Terminal(home) as first, Terminal(home) as second:
        take_up(first)
        before = path.read_bytes()
        second.until("Jobs not closed")
        second.press("enter")
        second.until("cannot be opened")
        second.until(lambda _: "open in another booth" in second.dialog)
        assert path.read_bytes() == before
        second.press("esc")
        second.until(lambda text: "cannot be opened" not in text)
        read_a_caution(first)
        # A program that has no job open begins another one meanwhile.
        begin(second, "Shellac sealer", "box")
        read_a_caution(first)
    read = [isinstance(event, CautionAcknowledged) for event in parse(path.read_bytes()).events]
    assert sum(read) == 2
    assert len(log_files(path.parent)) == 2
