"""The one writer of whole files: the old file or the new one, whatever fails and whenever it is killed."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from booth.files.atomic import set_aside, write_new, write_over

ROOT = Path(__file__).parents[2]
OLD, NEW = b"old\n" * 500, b"new, and longer\n" * 500


def listed(folder: Path) -> list[str]:
    return sorted(os.listdir(folder))


def failing(number: int) -> Callable[..., int]:
    def fail(*_: object) -> int:
        raise OSError(number, os.strerror(number))

    return fail


@pytest.fixture(params=["with hard links", "without"])
def links(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """The same on a disk that has hard links and on one that has none."""
    if request.param == "without":
        monkeypatch.setattr(os, "link", failing(errno.EPERM))


def test_a_new_file_gets_the_first_free_name(tmp_path: Path, links: None) -> None:
    folder = tmp_path / "a" / "b"
    assert write_new(folder, ["x", "x-2"], NEW) == folder / "x"
    assert write_new(folder, ["x", "x-2"], OLD) == folder / "x-2"
    with pytest.raises(FileExistsError):
        write_new(folder, ["x", "x-2"], b"")
    assert (folder / "x").read_bytes() == NEW and (folder / "x-2").read_bytes() == OLD
    assert listed(folder) == ["x", "x-2"]


def test_what_is_there_is_written_over_and_kept_where_asked(tmp_path: Path, links: None) -> None:
    path = tmp_path / "new" / "x"
    assert write_over(path, OLD, ["x.1"]) is None, "nothing stood there"
    assert write_over(path, NEW, ["x.1", "x.2"]) == path.with_name("x.1")
    assert write_over(path, b"third", ["x.1", "x.2"]) == path.with_name("x.2")
    assert write_over(path, b"fourth") is None, "not asked for"
    contents = [path.with_name(name).read_bytes() for name in ("x", "x.1", "x.2")]
    assert contents == [b"fourth", OLD, NEW]
    with pytest.raises(FileExistsError):
        write_over(path, NEW, ["x.1", "x.2"])
    assert path.read_bytes() == b"fourth"
    assert listed(path.parent) == ["x", "x.1", "x.2"]


@pytest.mark.skipif(os.name == "nt", reason="links and permissions of POSIX")
def test_a_link_stays_a_link_and_permissions_stay(tmp_path: Path, links: None) -> None:
    real, link = tmp_path / "kept" / "x", tmp_path / "link"
    real.parent.mkdir()
    real.write_bytes(OLD)
    real.chmod(0o600)
    link.symlink_to(real)
    assert write_over(link, NEW, ["x.1"]) == real.with_name("x.1")
    assert link.is_symlink() and real.read_bytes() == NEW
    assert {file.stat().st_mode & 0o777 for file in real.parent.iterdir()} == {0o600}
    astray = tmp_path / "astray"
    astray.symlink_to(tmp_path / "nowhere")
    assert write_new(tmp_path, ["astray", "y"], NEW) == tmp_path / "y"
    assert not (tmp_path / "nowhere").exists()


def half(fd: int, content: bytes, write: Callable[[int, bytes], int] = os.write) -> int:
    """A disk that takes half of what it is given."""
    return write(fd, content[: len(content) // 2 + 1])


def test_a_disk_that_takes_little_at_a_time_takes_all(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "write", half)
    assert write_new(tmp_path, ["x"], NEW).read_bytes() == NEW


@pytest.mark.parametrize(
    ("call", "number"),
    [
        ("open", errno.EROFS),
        ("write", errno.ENOSPC),
        ("fsync", errno.EIO),
        ("replace", errno.EACCES),
    ],
)
def test_what_fails_leaves_the_old_file_and_nothing_else(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, call: str, number: int
) -> None:
    path = tmp_path / "x"
    path.write_bytes(OLD)
    with monkeypatch.context() as patched:
        patched.setattr(os, call, failing(number))
        with pytest.raises(OSError, match=os.strerror(number)):
            write_over(path, NEW)
        if call != "replace":
            with pytest.raises(OSError, match=os.strerror(number)):
                write_new(tmp_path, ["y"], NEW)
    assert path.read_bytes() == OLD
    assert listed(tmp_path) == ["x"]


@pytest.mark.skipif(sys.platform == "win32", reason="folders are not synced there")
@pytest.mark.parametrize("at", [1, 2, 3])
def test_a_sync_that_fails_at_any_step_leaves_a_whole_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, at: int
) -> None:
    """Of the file, of its folder once the old name is kept, of its folder in the end."""
    path = tmp_path / "x"
    path.write_bytes(OLD)
    calls = 0
    fsync = os.fsync

    def fail_once(fd: int) -> None:
        nonlocal calls
        calls += 1
        if calls == at:
            raise OSError(errno.EIO, "the disk fails")
        fsync(fd)

    monkeypatch.setattr(os, "fsync", fail_once)
    with pytest.raises(OSError, match="the disk fails"):
        write_over(path, NEW, ["x.1"])
    assert path.read_bytes() == (NEW if at == 3 else OLD)
    kept = path.with_name("x.1")
    assert not kept.exists() if at == 1 else kept.read_bytes() == OLD
    if at == 3:
        calls = 1  # the next but one is the folder's sync of a new file
        with pytest.raises(OSError, match="the disk fails"):
            write_new(tmp_path, ["y"], NEW)
    assert listed(tmp_path) == ["x"] + ["x.1"] * (at > 1)


#: Writes in a child that is killed before its first, second, third … step until one is not killed;
#: every child in a folder of its own. A write is two steps, each of half the rest.
KILLED = """
import os, signal, sys
from pathlib import Path
from booth.files import atomic
what, links, home = sys.argv[1], sys.argv[2], Path(sys.argv[3])
write = os.write
os.write = lambda fd, content: write(fd, content[: len(content) // 2 + 1])
OLD, NEW = b"old\\n" * 500, b"new, and longer\\n" * 500

def refuse(*args):
    raise OSError(1, "no hard links here")

def deadly(name, steps):
    real = getattr(os, name)
    def call(*args, **more):
        steps.append(name)
        if len(steps) == number:
            os.kill(os.getpid(), signal.SIGKILL)
        return real(*args, **more)
    setattr(os, name, call)

def child(folder):
    steps = []
    if links == "no":
        os.link = refuse
    for name in ("open", "write", "fsync", "close", "link", "rename", "replace", "unlink"):
        deadly(name, steps)
    if what == "new":
        atomic.write_new(folder, ["x"], NEW)
    elif what == "over":
        atomic.write_over(folder / "x", NEW)
    else:
        atomic.write_over(folder / "x", NEW, ["kept"])

for number in range(1, 100):
    folder = home / str(number)
    folder.mkdir()
    if what != "new":
        (folder / "x").write_bytes(OLD)
    pid = os.fork()
    if pid == 0:
        child(folder)
        os._exit(0)
    if os.waitpid(pid, 0)[1] == 0:
        break
print(number)
"""


@pytest.mark.skipif(not hasattr(os, "fork"), reason="kills of POSIX")
@pytest.mark.parametrize("what", ["new", "over", "keep"])
@pytest.mark.parametrize("hard_links", ["yes", "no"])
def test_killed_between_any_two_steps_a_whole_file_is_there(
    tmp_path: Path, what: str, hard_links: str
) -> None:
    done = subprocess.run(
        [sys.executable, "-c", KILLED, what, hard_links, str(tmp_path)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    last = int(done.stdout)
    assert last > 8, "there are not that few steps"
    states = []
    for number in range(1, last + 1):
        folder = tmp_path / str(number)
        left = {file.name: file.read_bytes() for file in folder.iterdir()}
        hidden = [name for name in left if name.startswith(".new-") and name.endswith(".tmp")]
        for name in hidden:
            del left[name]
        content = left.pop("x", None)
        assert content in ((None, NEW) if what == "new" else (OLD, NEW))
        # What stood there before is there too, or still.
        if what == "keep":
            assert left == ({"kept": OLD} if content == NEW or left else {})
        else:
            assert left == {}
        states.append(content)
    assert states[-1] == NEW and hidden == [], "the last one was not killed"
    assert states[0] != NEW and states == sorted(states, key=lambda state: state == NEW)


def test_a_torn_end_is_set_aside_once(tmp_path: Path) -> None:
    log = tmp_path / "job.jsonl"
    first = set_aside(log, b"tail")
    assert first == tmp_path / "job.torn-1" and set_aside(log, b"tail") == first
    assert set_aside(log, b"other") == tmp_path / "job.torn-2"
    assert listed(tmp_path) == ["job.torn-1", "job.torn-2"]
