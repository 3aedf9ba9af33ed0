"""The commands that need no screen, as a shell sees them."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from msgspec.structs import replace

from booth.log.events import CoatBegun, CoatEnded, NoteMade
from booth.log.store import create_log, log_files
from booth.moment import Moment
from tests.job.make import opened

ROOT = Path(__file__).parents[1]
BOOTH = [sys.executable, "-m", "booth"]


def run(*arguments: str, **more: object) -> subprocess.CompletedProcess[str]:
    """Run the command as a shell would, nothing of a terminal about it."""
    return subprocess.run(
        [*BOOTH, *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        stdin=subprocess.DEVNULL,
        **more,
    )


@pytest.fixture
def a_job(own_home: Path) -> Path:
    """A job with a coat and a hostile note."""
    at = Moment(1_750_000_000.0, 100.0, "boot 1")
    with create_log(own_home / "booth" / "jobs", opened()) as log:
        part = opened().parts[0]
        log.append(CoatBegun(n=2, at=at, part=part, coat=1))
        log.append(CoatEnded(n=3, at=at, part=part, coat=1))
        log.append(NoteMade(n=4, at=at, text="[bold] \x1b]0;SEIZED\x07 dust"))
        return log.path


def test_no_jobs_yet(own_home: Path) -> None:
    done = run("log")
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith("No jobs yet in ")


def test_the_list_and_one_job(a_job: Path) -> None:
    listed = run("log")
    assert (listed.returncode, listed.stderr) == (0, "")
    assert opened().profile.name in listed.stdout
    shown = run("log", a_job.stem)
    assert (shown.returncode, shown.stderr) == (0, "")
    assert f"coat 1 on {opened().parts[0]} begun" in shown.stdout
    assert "[bold] ␛]0;SEIZED␇ dust" in shown.stdout
    assert "\x1b" not in shown.stdout
    by_path = run("log", str(a_job))
    assert by_path.stdout == shown.stdout


def test_the_name_of_the_list_is_taken_and_is_that_of_the_report(a_job: Path) -> None:
    listed = run("log").stdout
    (row,) = [line for line in listed.splitlines() if opened().profile.name in line]
    name = row.split()[0]
    assert f"The files, one a job, are in {a_job.parent}." in listed
    for part in (name, name.rpartition("-")[2], name[:-1], opened().parts[1]):
        shown = run("log", part)
        assert (shown.returncode, shown.stderr) == (0, ""), part
        assert shown.stdout.startswith(f"Job      {name}\n")


def test_what_may_mean_several_jobs_lists_them(a_job: Path) -> None:
    with create_log(a_job.parent, replace(opened(), job="")) as log:
        other = log.path
    done = run("log", a_job.stem[:8])
    assert (done.returncode, done.stdout) == (2, "")
    assert "2 jobs by the name" in done.stderr and "Traceback" not in done.stderr
    for path in (a_job, other):
        assert path.stem[14:] in done.stderr
        assert run("log", path.stem[14:]).returncode == 0


@pytest.mark.parametrize("named", ["x" * 5000, ".", "/", "\x1b[2J", ""])
def test_an_absurd_name_is_refused_in_a_sentence(a_job: Path, named: str) -> None:
    done = run("log", named)
    assert (done.returncode, done.stdout) == (2, "")
    assert "no job by the name" in done.stderr and "Traceback" not in done.stderr
    assert "\x1b" not in done.stderr and len(done.stderr) < 300


def test_a_job_that_is_not_there(a_job: Path) -> None:
    done = run("log", "nothing-like-it")
    assert (done.returncode, done.stdout) == (2, "")
    assert "no job by the name" in done.stderr and "Traceback" not in done.stderr


def test_a_log_that_cannot_be_read(own_home: Path) -> None:
    path = own_home / "booth" / "jobs" / "broken.jsonl"
    path.parent.mkdir(parents=True)
    path.write_bytes(b"\xff\x00 not a log\n\n[]\n")
    done = run("log")
    assert done.returncode == 0 and "Traceback" not in done.stderr
    one = run("log", "broken")
    assert one.returncode in (0, 2) and "Traceback" not in one.stderr
    assert (one.stdout + one.stderr).strip()


def test_a_folder_instead_of_a_log_and_jobs_as_a_file(own_home: Path) -> None:
    jobs = own_home / "booth" / "jobs"
    (jobs / "folder.jsonl").mkdir(parents=True)
    for arguments in (["log"], ["log", "folder"], ["log", str(jobs)], ["log", "/dev/null"]):
        done = run(*arguments)
        assert done.returncode in (0, 2) and "Traceback" not in done.stderr, arguments
        assert (done.stdout + done.stderr).strip(), arguments


def test_check_says_the_faults_and_sets_the_exit_code(own_home: Path) -> None:
    good = next((ROOT / "profiles").glob("*.toml"))
    bad = own_home / "bad.toml"
    bad.write_text('name = "x"\nsource = 5\nflash = "\\u001b[2J"\n')
    assert run("check", str(good)).returncode == 0
    done = run("check", str(good), str(bad))
    assert done.returncode == 1
    assert f"{bad}:2: source" in done.stdout and "flash" in done.stdout
    assert "\x1b" not in done.stdout and done.stderr == ""
    none = run("check", str(own_home / "missing.toml"))
    assert none.returncode == 2 and "missing.toml: no such file" in none.stdout
    assert run("check").returncode == 2
    assert "pot_life = " in run("check", "--keys").stdout


def test_words_that_mean_nothing_are_refused_in_words(own_home: Path) -> None:
    done = run("varnish")
    assert done.returncode == 2 and "Traceback" not in done.stderr
    assert run("--version").stdout.startswith("booth ")
    assert "log" in run("--help").stdout


@pytest.mark.parametrize(
    "arguments",
    [
        ["log"],
        ["check", "--keys"],
        ["--version"],
        ["--help"],
        ["check", "profiles"],
        ["figure"],
        ["figure", "delivery", "6oz", "30s"],
    ],
)
def test_no_command_loads_the_screen(own_home: Path, arguments: list[str]) -> None:
    code = (
        "import sys\nfrom booth.cli.command import main\n"
        "try: main(sys.argv[1:])\nexcept SystemExit: pass\n"
        "print([m for m in ('textual', 'rich', 'numpy') if m in sys.modules], file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.stderr.strip().splitlines()[-1] == "[]"


@pytest.mark.skipif(os.name == "nt", reason="a shell of POSIX")
def test_a_reader_that_leaves_early_is_no_fault(a_job: Path) -> None:
    python = " ".join(BOOTH)
    # Far more than a pipe holds, to a reader that takes one line.
    with create_log(a_job.parent, opened()) as log:
        for n in range(2, 3000):
            log.append(NoteMade(n=n, at=opened().at, text="overspray " * 10))
        long = log.path.stem
    assert len(log_files(a_job.parent)) == 2
    done = subprocess.run(
        ["/bin/sh", "-c", f"{python} log {long} | head -n 1"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.stdout.count("\n") == 1
    assert done.stderr == ""


def test_the_screen_without_a_terminal_is_refused(own_home: Path) -> None:
    done = run()
    assert (done.returncode, done.stdout) == (2, "")
    assert "needs a terminal" in done.stderr
