"""Several questions at once: one a line, one answer a line, the worst as the exit code."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
from contextlib import redirect_stdout

import pytest

from booth.figure import main
from tests.figure.ask import run

GOOD = "delivery 6oz 60s\n"
NONE = "viscosity 'Zahn 2' 18s\n"
BAD = "delivery 6oz 60F\n"


@pytest.mark.parametrize(
    ("typed", "code"),
    [(GOOD, 0), (GOOD + NONE, 3), (GOOD + NONE + BAD + GOOD, 2), ("", 0), ("\n# a note\n", 0)],
)
def test_the_exit_code_is_the_worst(typed: str, code: int) -> None:
    for options in ([], ["--json"], ["--why"]):
        ended, out, err = run(["-", *options], typed)
        assert (ended, err) == (code, "")
        questions = [line for line in typed.splitlines() if line and line[0] != "#"]
        assert len(out.splitlines()) == len(questions)


def test_each_line_is_answered_in_its_place() -> None:
    _, out, _ = run(["-"], GOOD + BAD + "booth figure fresh-air 200ml/min 60% xylene:100%\n")
    first, second, third = out.splitlines()
    assert first == "delivery 6.00 fl oz/min"
    assert second.startswith("booth figure delivery: time: ")
    assert "| caution: " in third
    _, out, _ = run(["-", "--json", "--metric"], GOOD + BAD + "dew-point 20C 50% --us\n'\n")
    first, second, third, fourth = (json.loads(line) for line in out.splitlines())
    assert first["text"] == "delivery 177 ml/min"
    assert second["status"] == fourth["status"] == "bad input"
    assert third["text"] == "dew point 48.7 °F"


def command(*words: str, **more: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "booth", "figure", *words],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        **more,  # type: ignore[call-overload]
    )


def test_what_is_piped_in_is_answered_without_a_dash() -> None:
    done = command(input=GOOD + NONE)
    assert done.returncode == 3
    assert done.stdout.startswith("delivery 6.00 fl oz/min\nno figure: ")
    done = command("--json", input=GOOD)
    assert json.loads(done.stdout)["subject"] == "delivery"


def test_without_questions_there_is_the_list() -> None:
    done = command("--json", stdin=subprocess.DEVNULL)
    assert done.returncode == 0 and len(json.loads(done.stdout)) > 80
    assert command(input="").stdout.startswith("booth figure SUBJECT")
    reading, writing = os.pipe()  # one that nobody writes to is not waited for
    try:
        done = command(stdin=reading)
    finally:
        os.close(reading)
        os.close(writing)
    assert done.returncode == 0 and "Compressed air:" in done.stdout


class Terminal(io.StringIO):
    """Standard output that says it is a terminal."""

    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize("columns", [40, 72, 132])
def test_a_fault_has_one_cause_a_line_and_none_is_wider_than_the_terminal(
    columns: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    words = ["fault", "runs", "wet=90um", "wet-high=60um"]
    lines = run(words)[1].splitlines()
    causes = [line for line in lines if line[0].isdigit()]
    assert len(causes) > 8
    assert [line.partition(".")[0] for line in causes] == [str(n + 1) for n in range(len(causes))]
    monkeypatch.setenv("COLUMNS", str(columns))
    out = Terminal()
    with redirect_stdout(out):
        assert main(words) == 0
    shown = out.getvalue().splitlines()
    assert max(map(len, shown)) <= columns
    assert [line for line in shown if line[0].isdigit()] == [
        next(each for each in shown if each.startswith(f"{n + 1}. ")) for n in range(len(causes))
    ]
    assert " ".join(out.getvalue().split()) == " ".join(" ".join(lines).split())
