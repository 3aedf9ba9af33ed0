"""The log against real kills, a real full disk and a real second program."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from booth.log.history import history
from booth.log.store import LogBusy, NotKept, create_log, open_log, read_log
from tests.log.logs import note, opened, unfinished

pytestmark = pytest.mark.skipif(os.name == "nt", reason="signals of POSIX")

ROOT = Path(__file__).parents[2]
KILLS = 12

#: Goes on with a job and says each number once the entry is kept.
WRITER = """
import sys
from pathlib import Path
from booth.log.store import open_log
from tests.log.logs import note
log = open_log(Path(sys.argv[1]))
n = max(event.n for event in log.content.events)
print("open", flush=True)
while True:
    n += 1
    log.append(note(n, "x" * (n * 37 % 5000)))
    print(n, flush=True)
"""

#: The same until the file may not grow any further, then once more after the limit is lifted.
FILLER = """
import resource, sys
from pathlib import Path
from booth.log.store import NotKept, open_log
from tests.log.logs import note
path = Path(sys.argv[1])
log = open_log(path)
_, hard = resource.getrlimit(resource.RLIMIT_FSIZE)
resource.setrlimit(resource.RLIMIT_FSIZE, (path.stat().st_size + 2500, hard))
for n in range(2, 100):
    try:
        log.append(note(n, "y" * 150))
    except NotKept as said:
        assert "may not grow" in str(said) or "full" in str(said), said
        break
print(n, flush=True)
resource.setrlimit(resource.RLIMIT_FSIZE, (hard, hard))
log.append(note(n, "after"))
"""


#: Begins a job and is killed at its n-th call of what touches the disk.
BEGINNER = """
import os, signal, sys
from pathlib import Path
from booth.log.store import create_log
from tests.log.logs import opened
folder, left = Path(sys.argv[1]), [int(sys.argv[2])]
def killed_at(call):
    def counted(*args, **more):
        left[0] -= 1
        if left[0] == 0:
            os.kill(os.getpid(), signal.SIGKILL)
        return call(*args, **more)
    return counted
for name in ("open", "write", "fsync", "link", "unlink", "close", "mkdir"):
    setattr(os, name, killed_at(getattr(os, name)))
create_log(folder, opened())
"""


def program(code: str, path: Path) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", code, str(path)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )


def new_log(folder: Path) -> Path:
    with create_log(folder, opened()) as log:
        return log.path


def test_killed_again_and_again_nothing_acknowledged_is_lost(tmp_path: Path) -> None:
    path = new_log(tmp_path)
    acknowledged = 1
    pick = random.Random(20250615)
    for _ in range(KILLS):
        with program(WRITER, path) as writer:
            assert writer.stdout is not None
            assert writer.stdout.readline() == "open\n"
            said = [writer.stdout.readline() for _ in range(pick.randint(1, 5))]
            time.sleep(pick.uniform(0, 0.01))
            writer.send_signal(signal.SIGKILL)
            said += writer.stdout.read().splitlines(keepends=True)
        last = [int(line) for line in said if line.endswith("\n")]
        acknowledged = max([acknowledged, *last])
        kept = [event.n for event in read_log(path).events]
        # Kept but not yet said is right too; at most one entry can be so.
        assert kept == list(range(1, len(kept) + 1))
        assert acknowledged <= len(kept) <= acknowledged + 1
        acknowledged = len(kept)
    assert acknowledged > KILLS
    with open_log(path) as log:
        log.append(note(acknowledged + 1))
    assert read_log(path).events[-1] == note(acknowledged + 1)


def test_killed_while_a_job_begins_there_is_a_whole_log_or_none(tmp_path: Path) -> None:
    """None without its first entry: it would be reported at every start."""
    made = []
    for call in range(1, 40):
        folder = tmp_path / str(call) / "jobs"
        code = subprocess.run(
            [sys.executable, "-c", BEGINNER, str(folder), str(call)], cwd=ROOT, check=False
        ).returncode
        assert unfinished(folder) == [job for job in history(folder) if job.is_open]
        for job in history(folder):
            assert read_log(job.path).events == [opened()]
            open_log(job.path).close()
        made.append(len(history(folder)))
        if code == 0:
            break
        assert code == -signal.SIGKILL
    assert code == 0 and made[0] == 0 and made[-1] == 1 and made == sorted(made)
    assert len(made) > 8, "too few calls were met"


def test_a_second_program_is_refused_until_the_first_is_killed(tmp_path: Path) -> None:
    path = new_log(tmp_path)
    with program(WRITER, path) as writer:
        assert writer.stdout is not None and writer.stdout.readline() == "open\n"
        with pytest.raises(LogBusy):
            open_log(path)
        writer.send_signal(signal.SIGKILL)
        writer.wait()
        with open_log(path) as log:
            log.append(note(log.content.events[-1].n + 1))


def test_a_file_that_may_not_grow_takes_no_half_line_and_works_again(tmp_path: Path) -> None:
    path = new_log(tmp_path)
    with program(FILLER, path) as filler:
        assert filler.stdout is not None
        refused = int(filler.stdout.read())
    assert filler.returncode == 0
    content = read_log(path)
    assert 2 < refused < 99
    assert [event.n for event in content.events] == list(range(1, refused + 1))
    assert content.events[-1] == note(refused, "after")
    assert content.said == []


@pytest.mark.skipif(
    not sys.platform.startswith("linux") or os.geteuid() != 0, reason="root mounts a small disk"
)
def test_a_full_disk_says_so_and_works_again_when_there_is_room(tmp_path: Path) -> None:
    disk = tmp_path / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    if subprocess.run(mount, capture_output=True, check=False).returncode:
        pytest.skip("may not mount here")
    try:
        path = new_log(disk)
        ballast = disk / "ballast"
        ballast.write_bytes(b"\0" * 40_000)
        kept = [opened()]
        with open_log(path) as log:
            with pytest.raises(NotKept, match="the disk is full"):
                for n in range(2, 200):
                    log.append(note(n, "z" * 700))
                    kept.append(note(n, "z" * 700))
            assert len(kept) > 5
            assert read_log(path).events == kept
            assert read_log(path).said == []
            with pytest.raises(NotKept, match="NOT kept: the disk is full"):
                log.append(note(len(kept) + 1, "z" * 5000))
            ballast.unlink()
            log.append(note(len(kept) + 1, "room again"))
        assert read_log(path).events == [*kept, note(len(kept) + 1, "room again")]
        assert read_log(path).said == []
    finally:
        subprocess.run(["umount", str(disk)], check=True)


@pytest.mark.skipif(
    not sys.platform.startswith("linux") or os.geteuid() != 0, reason="root mounts a small disk"
)
def test_a_write_protected_disk_says_so(tmp_path: Path) -> None:
    disk = tmp_path / "disk"
    disk.mkdir()
    if subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)],
        capture_output=True,
        check=False,
    ).returncode:
        pytest.skip("may not mount here")
    try:
        path = new_log(disk)
        subprocess.run(["mount", "-o", "remount,ro", str(disk)], check=True)
        with pytest.raises(NotKept, match="the disk is write-protected"):
            open_log(path)
        with pytest.raises(NotKept, match="the disk is write-protected"):
            create_log(disk, opened())
        assert read_log(path).events == [opened()]
    finally:
        subprocess.run(["umount", str(disk)], check=True)
