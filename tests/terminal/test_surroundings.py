"""No colour, no terminal, no room on the disk, broken files: it says so and goes on or leaves."""

from __future__ import annotations

import os
import pty
import re
import resource
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from booth.log.events import CautionAcknowledged, CoatBegun
from tests.terminal.driver import BRISK, PROGRAM, ROOT, Terminal
from tests.terminal.painter import (
    begin,
    caution_shown,
    choose,
    fast,
    job,
    kept,
    kept_of,
    log_path,
    read_a_caution,
    short_profile,
    silence,
    to_the_coats,
    write_profile,
)

pytestmark = pytest.mark.terminal

COATS = short_profile(("weather", "coats"))
CAUTIONS = short_profile(("cautions", "coats"))


def test_without_colour_words_and_shapes_say_it_all(home: Path) -> None:
    write_profile(
        home, "short", short_profile(("weather", "coats"), flash_off="10 min", closes="30 min")
    )
    with Terminal(home, rate=fast(800), extra={"NO_COLOR": "1"}) as run:
        begin(run, "Aaa short job", "hood")
        to_the_coats(run)
        run.press("space")
        run.until("» SPRAYING")
        run.press("space")
        for shape_and_word, alarm in (
            ("▬ WAIT", ""),
            ("► READY", "ready for"),
            ("CLOSING", "is closing"),
            ("LATE", "has closed"),
        ):
            if alarm:
                run.until(alarm)
                silence(run)
            run.until(rf"1/3 .*{shape_and_word}")
        # The greys that are left have as much of red as of green and blue.
        colours = re.findall(rb"[34]8;2;(\d+);(\d+);(\d+)", bytes(run.raw))
        assert colours
        assert all(max(map(int, each)) - min(map(int, each)) <= 2 for each in colours)


@pytest.mark.parametrize("where", ["stdin", "stdout", "stderr"])
def test_where_there_is_no_terminal_it_says_so_at_once(home: Path, where: str) -> None:
    master, slave = pty.openpty()
    streams = dict.fromkeys(("stdin", "stdout", "stderr"), slave)
    streams[where] = subprocess.PIPE
    begun = time.monotonic()
    child = subprocess.Popen(
        PROGRAM,
        cwd=ROOT,
        **streams,  # type: ignore[call-overload]
        env={**os.environ, "TERM": "xterm-256color"},
    )
    try:
        code = child.wait(timeout=10)
    finally:
        child.kill()
        os.close(slave)
        for stream in (child.stdin, child.stdout, child.stderr):
            if stream is not None:
                stream.close() if where == "stdin" else None
    took = time.monotonic() - begun
    said = child.stderr.read() if child.stderr and not child.stderr.closed else b""
    said = said or _read(master)
    for stream in (child.stdout, child.stderr):
        if stream is not None and not stream.closed:
            stream.close()
    os.close(master)
    assert code == 2
    # Generous for a loaded machine, and far from a program that waits for keys for ever.
    assert took < 5
    assert b"needs a terminal" in said
    assert b"\x1b" not in said and b"Traceback" not in said


def _read(master: int) -> bytes:
    os.set_blocking(master, False)
    try:
        return os.read(master, 65536)
    except (BlockingIOError, OSError):
        return b""


def test_a_file_that_may_not_grow_says_not_kept_and_the_job_does_not_move(home: Path) -> None:
    """As on a full disk: the write fails, and works again when there is room."""
    write_profile(home, "short", CAUTIONS)
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        second = read_a_caution(run)
        before = kept(home)
        size = log_path(home).stat().st_size
        hard = resource.prlimit(run.pid, resource.RLIMIT_FSIZE)[1]
        resource.prlimit(run.pid, resource.RLIMIT_FSIZE, (size + 10, hard))
        run.press("space")
        run.until("NOT KEPT")
        run.until(lambda _: "NOT kept" in run.dialog and "on paper" in run.dialog)
        assert kept(home) == before
        run.press("enter")
        run.until(lambda text: "NOT KEPT" not in text)
        assert caution_shown(run.text) == second, "the caution still waits"
        resource.prlimit(run.pid, resource.RLIMIT_FSIZE, (hard, hard))
        assert read_a_caution(run) != second
        assert len(kept_of(home, CautionAcknowledged)) == 2
        assert [event.n for event in kept(home)] == [1, 2, 3]


def test_a_coat_that_cannot_be_kept_did_not_begin(home: Path) -> None:
    write_profile(home, "short", COATS)
    with Terminal(home, rate=BRISK) as run:
        begin(run, "Aaa short job", "hood")
        to_the_coats(run)
        path = log_path(home)
        aside = path.with_suffix(".moved")
        path.rename(aside)
        run.press("space")
        run.until("NOT KEPT")
        run.press("esc")
        run.until(lambda text: "NOT KEPT" not in text)
        assert "begin coat 1: hood" in run.text and "SPRAYING" not in run.text
        aside.rename(path)
        run.press("space")
        run.until("SPRAYING")
        assert len(kept_of(home, CoatBegun)) == 1


def test_an_alarm_that_cannot_be_acknowledged_on_disk_does_not_trap_the_painter(home: Path) -> None:
    write_profile(home, "short", COATS)
    with Terminal(home, rate=fast(600)) as run:
        begin(run, "Aaa short job", "hood")
        to_the_coats(run)
        run.press("space")
        run.until("SPRAYING")
        run.press("space")
        run.until(r"ready for coat 2 since")
        path = log_path(home)
        aside = path.with_suffix(".moved")
        path.rename(aside)
        run.press("esc")
        run.until("NOT KEPT")
        run.press("esc")
        run.until(lambda text: "NOT KEPT" not in text)
        assert "ready for coat 2 since" in run.text
        aside.rename(path)
        run.press("pageup")
        run.until(lambda text: "silences" not in text)
        assert job(home).acknowledged


def test_a_folder_that_is_a_file_opens_no_job_and_says_why(home: Path) -> None:
    write_profile(home, "short", COATS)
    jobs = home / "booth" / "jobs"
    jobs.write_text("not a folder")
    with Terminal(home) as run:
        run.until("Aaa short job")
        choose(run, "Aaa short job")
        run.until("Parts")
        run.settle()
        run.press("enter")
        run.until("NOT KEPT: the job was not opened")
        run.until(lambda _: "file stands where the folder should be" in run.dialog)
        jobs.unlink()
        run.press("esc")
        run.until(lambda text: "NOT KEPT" not in text)
        run.press("enter")
        run.until("Cautions")
    assert len(kept(home)) == 1


def test_a_broken_profile_is_listed_with_its_faults_and_the_rest_load(home: Path) -> None:
    write_profile(home, "short", COATS)
    write_profile(home, "upside", 'name = "Zzz"\nsource = 5\nflash = "x"\n[film]\ncoats = "many"\n')
    write_profile(home, "noise", "\x00\x01 [[[ = ")
    with Terminal(home, rows=40) as run:
        run.until("Aaa short job")
        run.until(r"! upside\.toml +\d faults")
        run.until(r"! noise\.toml")
        run.until("Two-pack clear")
        choose(run, "upside.toml")
        run.until(lambda _: "source" in run.dialog and "upside.toml" in run.dialog)
        assert "flash" in run.dialog and "coats" in run.dialog
        run.press("esc")
        run.settle()
        choose(run, "Aaa short job")
        run.until("Parts")


@pytest.mark.parametrize(
    ("extra", "found"),
    [
        ({"TERM": "dumb"}, "'dumb'"),
    ],
)
def test_where_the_screen_cannot_be_drawn_it_says_what_to_do_and_that_is_enough(
    home: Path, extra: dict[str, str], found: str
) -> None:
    with Terminal(home, extra=extra) as run:
        before = run.modes()
        assert run.wait() == 2
        said = run.raw.decode("ascii").replace("\r\n", "")
        assert "\x1b" not in said and found in said and "Traceback" not in said
        assert run.modes() == before
    deed = re.search(r"(?:say|Say): (export (\w+)=(\S+)|unset (\w+))$", said)
    assert deed is not None, said
    mended = dict(extra)
    if deed.group(4):
        del mended[deed.group(4)]
    else:
        mended[deed.group(2)] = deed.group(3)
    with Terminal(home, extra=mended) as run:
        run.until("Coating profiles")
        assert run.child.isalive()


@pytest.mark.parametrize(
    "extra",
    [
        {"PYTHONIOENCODING": "ascii"},
        {"LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONUTF8": "0"},
        {"LANG": "C"},
        {"BOOTH_CELLS": "ascii"},
        {"BOOTH_CELLS": "whole"},
    ],
)
def test_a_terminal_that_lacks_signs_is_drawn_with_those_it_has(
    home: Path, extra: dict[str, str]
) -> None:
    with Terminal(home, extra=extra) as run:
        run.until("Coating profiles")
        run.press("enter")
        run.until("Parts")
        run.press("enter")
        run.until("Cautions")
        run.settle()
        drawn = bytes(run.raw)
        # No escape of the interpreter in the place of a sign either: \u2588, \xb5.
        assert b"\\u" not in drawn and b"\\x" not in drawn
        if extra.get("BOOTH_CELLS") == "whole":
            assert not set("▏▎▍▋▊▉▘▝▖▗▚▞▙▟▛▜") & set(drawn.decode())
        else:
            assert drawn.isascii() and b"##" in drawn


@pytest.mark.parametrize("colours", ["none", "", "256"])
def test_a_colour_system_that_is_none_is_passed_over(home: Path, colours: str) -> None:
    with Terminal(home, extra={"TEXTUAL_COLOR_SYSTEM": colours}) as run:
        run.until("Coating profiles")
        truecolour = b"38;2;" in run.raw
        assert truecolour == (colours != "256")


def test_a_home_that_can_be_no_folder_is_said_before_anything_is_drawn(home: Path) -> None:
    with Terminal(home, extra={"BOOTH_HOME": "/tmp/" + "y" * 300}) as run:
        assert run.wait() == 2
        said = run.raw.decode().replace("\r\n", "")
        assert "\x1b" not in said and "Set BOOTH_HOME" in said and "Traceback" not in said


@pytest.mark.skipif(not Path("/proc").is_dir(), reason="no folder that nobody may write to")
def test_a_home_that_cannot_be_written_is_no_reason_not_to_start(home: Path) -> None:
    with Terminal(home, extra={"BOOTH_HOME": "/proc/no-such-place"}) as run:
        run.until("Coating profiles")
        choose(run, "Two-pack clear")
        run.until("Parts")
        run.settle()
        run.press("enter")
        run.until("NOT KEPT")


OWN_FAULT = """
import sys
from booth.log.session import Session
def broken(self, event):
    secret_local = "a local value"
    raise ZeroDivisionError("invented for a test: [/ x [bold]")
Session.record = broken
from booth.cli.command import main
sys.exit(main([]))
"""


IN_THE_INPUT_THREAD = """
import sys
from booth.widgets.textual_internals import Parser
whole = Parser.feed
def broken(self, data):
    secret_local = "a local value"
    if " " in data:
        raise LookupError("invented for a test: [/ x [bold]")
    return whole(self, data)
Parser.feed = broken
from booth.cli.command import main
sys.exit(main([]))
"""


@pytest.mark.parametrize(
    ("code", "named"),
    [(OWN_FAULT, "ZeroDivisionError"), (IN_THE_INPUT_THREAD, "LookupError")],
    ids=["on the bench", "in the thread that reads the keys"],
)
def test_a_fault_of_its_own_ends_in_sentences_a_report_and_a_clean_terminal(
    home: Path, code: str, named: str
) -> None:
    write_profile(home, "short", CAUTIONS)
    with Terminal(home, command=[sys.executable, "-c", code]) as run:
        before = run.modes()
        begin(run, "Aaa short job", "hood")
        run.press("space")
        assert run.wait() == 70
        assert run.modes() == before
        raw = bytes(run.raw)
        assert raw.rindex(b"\x1b[?1049l") > raw.rindex(b"\x1b[?1049h")
        told = raw[raw.rindex(b"\x1b[?1049l") :].decode("utf-8")
        assert "a fault of its own" in told
        assert "in the job's log" in told
        assert "fault-report.txt" in told.replace("\r\n", "")
        assert "Traceback" not in raw.decode("utf-8", "replace")
        assert "secret_local" not in raw.decode("utf-8", "replace")
        assert f"{named}: invented for a test" in run.fault_report()
        assert "in broken" in run.fault_report()
    assert [event.n for event in kept(home)] == [1]
    with Terminal(home) as run:
        run.until("Jobs not closed")


def test_interrupted_it_stays(home: Path) -> None:
    """Ctrl+C is a key that a painter may hit: it ends nothing that runs."""
    write_profile(home, "short", COATS)
    with Terminal(home, rate=BRISK) as run:
        begin(run, "Aaa short job", "hood")
        to_the_coats(run)
        run.press("space")
        run.until("SPRAYING")
        run.press("\x03")
        run.linger(0.3)
        assert run.child.isalive()
        run.press("space")
        run.until("1/3")
        assert signal.SIGINT  # the byte is a key here: the terminal is in raw mode
