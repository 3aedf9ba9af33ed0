"""However a command ends, it is with a sentence and an exit code: never a traceback."""

from __future__ import annotations

import os
import re
import signal
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from booth.log.events import NoteMade
from booth.log.store import create_log
from tests.job.make import START, opened

ROOT = Path(__file__).parents[2]
BOOTH = (sys.executable, "-m", "booth")
POSIX = pytest.mark.skipif(os.name == "nt", reason="a shell of POSIX")
FULL = pytest.mark.skipif(not Path("/dev/full").exists(), reason="no device that is always full")


def run(
    arguments: Sequence[str], *, code: str = "", env: dict[str, str] | None = None, cwd: Path = ROOT
) -> subprocess.CompletedProcess[bytes]:
    """Run a command with its output in pipes. code: runs before it, to plan a fault."""
    command = BOOTH
    if code:
        begin = (
            f"{code}\nimport sys\nfrom booth.cli.command import main\nsys.exit(main(sys.argv[1:]))"
        )
        command = (sys.executable, "-c", begin)
    return subprocess.run(
        [*command, *arguments],
        cwd=cwd,
        capture_output=True,
        timeout=60,
        check=False,
        stdin=subprocess.DEVNULL,
        env={**os.environ, "PYTHONPATH": str(ROOT), **(env or {})},
    )


def in_shell(line: str) -> tuple[int, str]:
    """Run a line of the shell in which 'booth' is the command; give code and what was said."""
    booth = " ".join(BOOTH)
    done = subprocess.run(
        ["/bin/sh", "-c", f'booth() {{ {booth} "$@"; }}; {line}'],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    return done.returncode, done.stdout + done.stderr


@pytest.fixture
def tür(own_home: Path) -> str:
    """A job with a part that ASCII cannot write; its name."""
    with create_log(own_home / "booth" / "jobs", opened(parts=("Tür", "車体"))) as log:
        log.append(NoteMade(n=2, at=START, text="a note – with a dash"))
        return log.path.stem


@pytest.mark.parametrize(
    ("encoding", "shown"),
    [
        ("ascii", ("T\\xfcr", "\\u8eca\\u4f53", "\\u2013 with")),
        ("iso8859-1", ("Tür", "\\u8eca\\u4f53", "\\u2013 with")),
        ("cp1252", ("Tür", "\\u8eca\\u4f53", "– with")),
    ],
)
def test_what_an_encoding_lacks_is_written_as_its_code_and_said_once(
    tür: str, encoding: str, shown: tuple[str, str, str]
) -> None:
    for arguments, words in ((["log"], shown[:2]), (["log", tür], shown)):
        done = run(arguments, env={"PYTHONIOENCODING": encoding})
        out, said = done.stdout.decode(encoding), done.stderr.decode(encoding)
        assert done.returncode == 0
        assert all(each in out for each in words)
        assert said.count(encoding) == 1 and len(said.splitlines()) == 1
        assert "PYTHONIOENCODING=utf-8" in said and "Traceback" not in said


def test_a_terminal_of_few_letters_is_no_hindrance_to_a_check(own_home: Path) -> None:
    profile = next((ROOT / "profiles").glob("*.toml")).read_text("utf-8")
    path = own_home / "x.toml"
    path.write_text(re.sub('(?m)^name = ".*"', 'name = "März"', profile, count=1), "utf-8")
    done = run(["check", str(path)], env={"PYTHONIOENCODING": "ascii"})
    assert done.returncode == 0 and b"a coating profile, M\\xe4rz" in done.stdout


def test_what_is_said_to_do_about_it_is_enough(tür: str) -> None:
    done = run(["log", tür], env={"PYTHONIOENCODING": "utf-8"})
    assert "Tür, 車体" in done.stdout.decode("utf-8") and done.stderr == b""


@POSIX
@pytest.mark.parametrize(
    ("line", "code", "said"),
    [
        ("booth log >&-", 1, "the output cannot be written: it is closed"),
        ("booth --version >&-", 1, "the output cannot be written"),
        ("booth log 2>&-", 0, "No jobs yet"),
        ("booth log nothing-like-it 2>&-", 2, ""),
        ("booth log <&-", 0, "No jobs yet"),
        ("booth <&-", 2, "needs a terminal"),
        ("booth >&-", 2, "needs a terminal"),
        ("booth 2>&-", 2, ""),
        ("booth <&- >&- 2>&-", 2, ""),
        pytest.param("booth log >/dev/full", 1, "No space left on device", marks=FULL),
        pytest.param("booth check profiles >/dev/full", 1, "No space left", marks=FULL),
        pytest.param("booth figure >/dev/full", 1, "No space left", marks=FULL),
        pytest.param("booth --version >/dev/full", 1, "No space left", marks=FULL),
        pytest.param("PYTHONUNBUFFERED= booth log >/dev/full", 1, "No space left", marks=FULL),
        pytest.param("booth log nothing-like-it 2>/dev/full", 1, "", marks=FULL),
    ],
)
def test_a_stream_that_is_closed_or_full(line: str, code: int, said: str) -> None:
    found, told = in_shell(line)
    assert found == code
    assert said in told and "Traceback" not in told
    assert len(told.splitlines()) == (1 if said else 0)


def test_a_name_as_long_as_a_page_is_no_job_and_is_not_said_whole(own_home: Path) -> None:
    done = run(["log", "x" * 5000])
    assert done.returncode == 2 and done.stdout == b""
    assert b"no job by the name" in done.stderr and len(done.stderr) < 300


@pytest.mark.parametrize(
    ("named", "why"),
    [
        ("/tmp/" + "y" * 300, "name too long"),
        (str(Path(__file__)), "it is a file"),
        (str(Path(__file__) / "below"), "Not a directory"),
        ("~nobody-by-this-name/shop", "home directory"),
    ],
)
def test_a_home_that_can_be_no_folder_is_said_with_what_to_do(named: str, why: str) -> None:
    for arguments in (["log"], ["log", "x"]):
        done = run(arguments, env={"BOOTH_HOME": named})
        said = done.stderr.decode()
        assert done.returncode == 2 and done.stdout == b""
        assert why.lower() in said.lower() and "Set BOOTH_HOME" in said
        assert len(said.splitlines()) == 1 and len(said) < 300


def test_a_home_named_from_a_folder_that_is_gone(tmp_path: Path) -> None:
    if os.name == "nt":
        pytest.skip("there the folder one stands in cannot be removed")
    gone = tmp_path / "gone"
    gone.mkdir()
    code, said = in_shell(
        f"cd {gone}; rmdir {gone}; export PYTHONPATH={ROOT}; BOOTH_HOME=x booth log"
    )
    assert code == 2 and "Set BOOTH_HOME" in said and "Traceback" not in said


def test_jobs_that_cannot_be_listed_are_not_called_no_jobs(own_home: Path) -> None:
    jobs = own_home / "booth" / "jobs"
    jobs.parent.mkdir()
    jobs.write_text("a file by this name")
    done = run(["log"])
    assert done.returncode == 1 and done.stdout == b""
    assert b"jobs: Not a directory" in done.stderr


PLANNED = """
import booth.cli.log_command
def broken(*_):
    secret_local = "a local value"
    raise ZeroDivisionError("invented for a test")
booth.cli.log_command.list_jobs = broken
"""


def test_a_fault_of_its_own_in_a_command_is_a_report_and_three_sentences(own_home: Path) -> None:
    done = run(["log"], code=PLANNED)
    said = done.stderr.decode()
    report = own_home / "booth" / "fault-report.txt"
    assert done.returncode == 70 and done.stdout == b""
    assert len(said.splitlines()) == 3 and str(report) in said
    assert "Traceback" not in said and "secret_local" not in said
    assert "ZeroDivisionError: invented for a test" in report.read_text("utf-8")


@POSIX
def test_interrupted_while_it_imports_it_leaves_with_the_code_of_the_signal() -> None:
    """An exception in the midst of a class being made would come out as another one."""
    code = (
        "import os, signal, sys\n"
        "class Later:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name == 'booth.words.report':\n"
        "            class Asked:\n"
        "                def __set_name__(self, owner, name):\n"
        "                    os.kill(os.getpid(), signal.SIGINT)\n"
        "            type('Made', (), {'asked': Asked()})\n"
        "sys.meta_path.insert(0, Later())\n"
    )
    done = run(["log"], code=code)
    assert done.returncode in (-signal.SIGINT, 128 + signal.SIGINT)
    assert done.stdout == done.stderr == b""
