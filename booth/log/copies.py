"""Files that hold one and the same job: what a tool that keeps folders the same leaves behind.

Decided by what is in them, not by their names: the same opening (moment, clocks, machine, name of the
job). Where one is the beginning of another, the longer one counts; where they differ none is left out,
and it is said.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path

import msgspec

from booth.files.safe_text import visible
from booth.log.fold import Entry
from booth.log.parse import parse
from booth.log.store import log_bytes

#: The opening of a job is one line; no longer one is looked at to tell copies apart.
MOST_OF_A_LINE = 4_000_000


class Apart(msgspec.Struct, frozen=True):
    """begins: a file that is a copy or the beginning of another -> that one; differs: a file of several
    that hold one job and differ -> a sentence; shared: of those all but the longest."""

    begins: Mapping[Path, Path] = {}
    differs: Mapping[Path, str] = {}
    shared: frozenset[Path] = frozenset()

    @property
    def uncounted(self) -> frozenset[Path]:
        """What teaches nothing that another file does not teach."""
        return self.shared | frozenset(self.begins)

    def words(self, path: Path) -> tuple[str, ...]:
        """What is to be said of a file that counts."""
        copies = sorted(visible(each.name) for each, of in self.begins.items() if of == path)
        said = [
            f"The same job, or its beginning, lies in {each} too: this file has all of it."
            for each in copies
        ]
        return (*said, *([self.differs[path]] if path in self.differs else []))


NOTHING = Apart()


def told_apart(groups: Iterable[Sequence[Path]]) -> Apart:
    """Compare files that may hold one job, group by group. What cannot be read stays as it is."""
    begins: dict[Path, Path] = {}
    differs: dict[Path, str] = {}
    shared: set[Path] = set()
    for group in groups:
        held = _read(group) if len(group) > 1 else []
        own: list[tuple[Path, Sequence[Entry]]] = []
        for path, events in held:
            of = next((other for other, more in own if is_beginning(events, more)), None)
            if of is None:
                own.append((path, events))
            else:
                begins[path] = of
        for at, (path, events) in enumerate(own):
            others = [each for each in own if each[0] != path]
            if others:
                differs[path] = _sentence(events, others)
            if at:
                shared.add(path)
    return Apart(begins, differs, frozenset(shared))


def is_beginning(events: Sequence[Entry], of: Sequence[Entry]) -> bool:
    """Whether `of` begins with all of `events`, or is the same."""
    return len(events) <= len(of) and list(of[: len(events)]) == list(events)


def _read(group: Sequence[Path]) -> list[tuple[Path, Sequence[Entry]]]:
    """The files with what is in them: the longest first, of two as long the one with the plainer name."""
    found: list[tuple[Path, Sequence[Entry]]] = []
    for path in group:
        try:
            content = parse(log_bytes(path))
        except OSError:
            continue
        if content.events:
            found.append((path, content.events))
    return sorted(found, key=lambda each: (-len(each[1]), len(each[0].name), each[0].name))


def _sentence(events: Sequence[Entry], others: Sequence[tuple[Path, Sequence[Entry]]]) -> str:
    names = ", ".join(visible(path.name) for path, _ in others)
    same = min(_shared(events, more) for _, more in others)
    return (
        f"This job lies in {names} as well, and they differ after {same} "
        f"entr{'y' if same == 1 else 'ies'}: it was gone on with on two machines at once, or one file "
        "was changed. Nothing is left out of either: both are listed. Go on with one of them."
    )


def _shared(one: Sequence[Entry], two: Sequence[Entry]) -> int:
    """How many entries both begin with."""
    count = 0
    for a, b in zip(one, two, strict=False):
        if a != b:
            break
        count += 1
    return count


def groups_by(keyed: Iterable[tuple[object, Path]]) -> list[list[Path]]:
    """The files that share a key, where several do."""
    found: dict[object, list[Path]] = {}
    for key, path in keyed:
        if key is not None:
            found.setdefault(key, []).append(path)
    return [each for each in found.values() if len(each) > 1]


#: The first lines of files as they were when last looked at: path -> (its stamp, hash of the line).
_first: dict[str, tuple[tuple[int, int], int]] = {}


def doubles(paths: Iterable[Path]) -> frozenset[Path]:
    """Of the logs of a folder those that teach nothing which another does not: copies, beginnings, and
    of files that differ all but the longest. Reads first lines only, and each once."""
    groups = groups_by((_opening(path), path) for path in paths)
    return told_apart(groups).uncounted if groups else frozenset()


def _opening(path: Path) -> int | None:
    try:
        stamp = os.stat(path)
        if not stat.S_ISREG(stamp.st_mode):
            return None  # a pipe by the name of a log would keep us waiting for ever
        now = stamp.st_mtime_ns, stamp.st_size
        known = _first.get(str(path))
        if known is None or known[0] != now:
            with path.open("rb") as file:
                known = _first[str(path)] = now, hash(file.readline(MOST_OF_A_LINE).strip())
    except OSError:
        return None
    return known[1]
