"""What a job is called: in its file's name, in lists, in reports, in what is typed to find it.

A log is ``20250615-1506-two-pack-clear-3fa2.jsonl``: when it began (UTC), its profile, a mark. Its job
goes by what follows the date. A new mark is chosen so that no other job of the folder goes by that.
"""

from __future__ import annotations

import re
import secrets
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from booth.files.slug import slug
from booth.moment import Moment, utc_text

MOST_OF_SLUG = 40
MOST_TRIES = 100
#: So many tries, and the mark grows by a byte.
TRIES_A_BYTE = 25
BEGUN = re.compile(r"^\d{8}-\d{4}-(?=.)")


def short_name(path: Path) -> str:
    """Give the name of the job whose log is `path`: the file's, without its date.

    >>> short_name(Path("20250615-1506-two-pack-clear-3fa2.jsonl"))
    'two-pack-clear-3fa2'
    """
    return BEGUN.sub("", path.stem)


def longer_names(paths: Iterable[Path]) -> Mapping[Path, str]:
    """Give, of the logs of a folder, those that would share a job's name: the name with the date."""
    by_name: dict[str, list[Path]] = {}
    for path in paths:
        by_name.setdefault(short_name(path), []).append(path)
    sharing = (paths for paths in by_name.values() if len(paths) > 1)
    return {path: path.stem for paths in sharing for path in paths}


def new_stems(begun: Moment, profile_name: str, taken: Iterable[str]) -> Iterator[str]:
    """Give names, without suffix, that the log of a new job may have; `taken`: names of jobs."""
    known = set(taken)
    what = slug(profile_name)[:MOST_OF_SLUG].strip("-")
    minute = utc_text(begun, "%Y%m%d-%H%M", "00000000-0000")
    for tried in range(MOST_TRIES):
        name = f"{what}-{secrets.token_hex(2 + tried // TRIES_A_BYTE)}"
        if name not in known:
            yield f"{minute}-{name}"
