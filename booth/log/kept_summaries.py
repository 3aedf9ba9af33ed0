"""What a list says of closed jobs, kept in one file, so that thousands of logs are not read at every start.

Never the truth: the logs are. A log that has another size, time of change or place on the disk is
read; a file that cannot be read, or that another version wrote, counts for nothing. It may be deleted
at any time.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

import msgspec

import booth
from booth.files.atomic import write_over
from booth.log.codec import UNREADABLE
from booth.log.summary import JobSummary

#: To be raised where the same log is read into other words than before.
READ_AS = 1
#: What a summary is made of: another version of the program that keeps more reads the logs again.
_FORM = f"{booth.__version__} {READ_AS} {' '.join(JobSummary.__struct_fields__)}"
Stamp = tuple[int, ...]
#: Where a log is no longer there.
_GONE = Path()


class _Kept(msgspec.Struct, array_like=True):
    stamp: Stamp
    summary: JobSummary


class _File(msgspec.Struct):
    form: str
    logs: tuple[_Kept, ...]


def _as_name(value: Any) -> str:
    """A log goes by its name alone: the folder may move."""
    if isinstance(value, Path):
        return value.name
    raise TypeError(f"a summary holds no {type(value).__name__}")


def read_summaries(file: Path, logs: Iterable[Path]) -> Mapping[Path, tuple[Stamp, JobSummary]]:
    """Give what was kept of these logs; nothing where that cannot be read. Never raises."""
    by_name = {path.name: path for path in logs}

    def path_of(kind: type, value: Any) -> Any:
        if kind is Path and isinstance(value, str):
            return by_name.get(value, _GONE)
        raise ValueError("no name of a log")

    try:
        found = msgspec.msgpack.decode(file.read_bytes(), type=_File, dec_hook=path_of)
    except (OSError, *UNREADABLE):
        return {}
    if found.form != _FORM:
        return {}
    return {each.summary.path: (each.stamp, each.summary) for each in found.logs}


def write_summaries(file: Path, logs: Iterable[tuple[Stamp, JobSummary]]) -> None:
    """Keep what a list says of closed jobs; that it cannot be kept is no reason to stop."""
    kept = tuple(_Kept(*each) for each in logs if each[1].closed is not None)
    content = msgspec.msgpack.encode(_File(_FORM, kept), enc_hook=_as_name)
    with suppress(OSError):
        write_over(file, content)
