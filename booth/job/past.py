"""What past jobs teach the next one: the settings that came out good, needle turns and delivery."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from functools import cache, partial
from pathlib import Path
from typing import NamedTuple

from booth.clock import local_date
from booth.job.coat_times import JobTimes, times_of
from booth.job.last_choices import weighed_last
from booth.job.past_settings import GoodSettings, Lesson, settings_of
from booth.job.products import products_of
from booth.job.verdicts import next_time, verdict
from booth.log.copies import doubles
from booth.log.events import CautionAcknowledged, JobOpened
from booth.log.fold import Job, NoJob, fold
from booth.log.naming import BEGUN
from booth.log.parse import parse
from booth.log.store import log_bytes, log_files
from booth.log.summary import opening_of, summary_of
from booth.moment import Moment, utc_text

#: Two tips are the same when they are within half of the smallest step tips are made in (0.1 mm).
SAME_TIP_MM = 0.05
MOST_PAIRS = 500
#: A median of so many moves little with one more (common practice, no source).
ENOUGH_COATS = 60
#: A job of today has a name of at most a day ago: names tell the date in UTC.
LATELY_S = 2 * 86400.0
MINUTE_OF_NAME = len("20250615-1506")


class CatchPair(NamedTuple):
    """One past catch at a known needle setting."""

    turns: float
    delivery_ml_min: float
    liquid: str


class PastJobs:
    """The jobs of a folder, as far as they teach the one on the bench; each question read once."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder
        self.pairs = cache(partial(pairs, folder))
        self.coat_times = cache(partial(coat_times, folder))
        self.weighed_last = cache(partial(weighed_last, folder))
        self.lesson = cache(partial(last_lesson, folder))
        self._read: dict[tuple[str, str, str], Mapping[tuple[str, str], Moment]] = {}

    def acknowledged(
        self, profile_key: str, now: Moment, without: str = ""
    ) -> Mapping[tuple[str, str], Moment]:
        """What ``acknowledged`` gives, read once a day."""
        key = profile_key, local_date(now), without
        if key not in self._read:
            self._read[key] = acknowledged(self.folder, profile_key, now, without)
        return self._read[key]


def last_good(folder: Path, profile_key: str, gun: str = "") -> GoodSettings | None:
    """Give the settings of the latest job of this profile, and gun if named, closed as good."""
    found = _latest(
        folder, profile_key, gun, lambda path, data: summary_of(path, data).verdict == "good"
    )
    return None if found is None else settings_of(found)


def last_settings(folder: Path, profile_key: str, gun: str) -> GoodSettings | None:
    """The last good settings with this gun; where there are none, those with another one."""
    own = last_good(folder, profile_key, gun)
    return own if own is not None or not gun else last_good(folder, profile_key)


def last_lesson(folder: Path | None, profile_key: str, gun: str = "") -> Lesson | None:
    """Give what the latest closed job of this profile said to change, whatever its verdict: with this
    gun if there is one, else with any."""
    if folder is None:
        return None

    def taught(path: Path, data: bytes) -> bool:
        return b'"next_time"' in data and bool(next_time(fold(parse(data).events)))

    found = _latest(folder, profile_key, gun, taught)
    if found is None:
        return last_lesson(folder, profile_key) if gun else None
    faults = tuple(dict.fromkeys(each.fault for each in found.faults))
    return Lesson(found.opened.at, next_time(found), verdict(found), found.fitted.gun, faults)


def _latest(
    folder: Path, profile_key: str, gun: str, fits: Callable[[Path, bytes], bool]
) -> Job | None:
    """The latest job of this profile, and gun if named, whose log fits; of a coating system its
    product of this profile."""
    best: tuple[Path, Job] | None = None
    for path, data, opened in _jobs(folder, profile_key, gun):
        if best is not None and path.name[:MINUTE_OF_NAME] != best[0].name[:MINUTE_OF_NAME]:
            break
        # Names tell minutes only: of two in one minute, the later opening decides.
        if best is not None and best[1].opened.at.wall >= opened.at.wall:
            continue
        if fits(path, data):
            every = products_of(fold(parse(data).events))
            own = next((each for each in every if each.profile.key == profile_key), None)
            if own is not None and gun in ("", own.fitted.gun):
                best = path, own
    return None if best is None else best[1]


def pairs(
    folder: Path | None,
    gun: str = "",
    tip_mm: float | None = None,
    profile_key: str = "",
    without: str = "",
    most: int = MOST_PAIRS,
) -> tuple[CatchPair, ...]:
    """Give needle turns and delivery of past catches, the latest job first; none without a folder.

    gun, tip_mm: where given, only catches with these; a catch that does not say its tip is then
    left out. profile_key: where given, paint catches of other products are left out, since another
    paint runs otherwise; water is water. without: name of a job to leave out, the one at hand.
    """
    found: list[CatchPair] = []
    for _, data, opened in _jobs(folder, "", gun) if folder is not None else ():
        if b"catch made" not in data or (without and opened.job == without):
            continue
        try:
            products = products_of(fold(parse(data).events))
        except NoJob:
            continue
        with_gun = (job for job in products if gun in ("", job.fitted.gun))
        of_products = ((job, each) for job in with_gun for each in job.catches)
        for job, each in of_products:
            away = abs(each.tip.value - tip_mm) if each.tip and tip_mm is not None else math.inf
            same_tip = tip_mm is None or away < SAME_TIP_MM
            same = each.liquid == "water" or profile_key in ("", job.profile.key)
            if each.turns is not None and same_tip and same:
                found.append(CatchPair(each.turns.value, each.delivery_ml_min, each.liquid))
        if len(found) >= most:
            break
    return tuple(found[:most])


def coat_times(folder: Path | None, without: str = "") -> tuple[JobTimes, ...]:
    """Give what the coats of past jobs took of their time at the trigger, the latest job first; none
    without a folder. without: name of a job to leave out, the one at hand.

    Only as many jobs are read as it takes for a good middle: the habits of today are the latest ones.
    """
    found: list[JobTimes] = []
    every = _jobs(folder, "", "", holding=b"coat ended") if folder is not None else ()
    for _, data, opened in every:
        # Without an area there is nothing to learn; what is looked for stands in the bytes.
        of_use = b"area added" in data or b"amount planned" in data
        if not of_use or (without and opened.job == without):
            continue
        with suppress(NoJob):
            times = times_of(fold(parse(data).events))
            found += [JobTimes(opened.job, times)] if times else []
        if sum(len(each.times) for each in found) >= ENOUGH_COATS:
            break
    return tuple(found)


def acknowledged(
    folder: Path | None, profile_key: str, now: Moment, without: str = ""
) -> Mapping[tuple[str, str], Moment]:
    """Give the cautions acknowledged on the local day of `now` in jobs of this product begun lately:
    key and words -> when last. without: name of a job to leave out, the one at hand.

    Nothing where the folder cannot be read: then all of them are gone through.
    """
    found: dict[tuple[str, str], Moment] = {}
    lately = utc_text(Moment(now.wall - LATELY_S, now.continuous, now.boot), "%Y%m%d", "")
    for _, data, opened in _jobs(folder, profile_key, "", lately) if folder is not None else ():
        if opened.job == without:
            continue
        with suppress(NoJob):
            every = products_of(fold(parse(data).events))
            own = (each for each in every if each.profile.key == profile_key)
            for each in (read for job in own for read in job.of(CautionAcknowledged)):
                if local_date(each.at) == local_date(now):
                    known = found.get((each.caution, each.words), each.at)
                    found[each.caution, each.words] = max(known, each.at, key=lambda at: at.wall)
    return found


def _jobs(
    folder: Path, profile_key: str, gun: str, since: str = "", holding: bytes = b""
) -> Iterator[tuple[Path, bytes, JobOpened]]:
    """Give path, bytes and opening of the jobs of this profile and gun, the latest name first; of
    those named by a date, none from before `since`. holding: what their bytes have to hold."""
    paths = [
        path for path in log_files(folder) if not (BEGUN.match(path.name) and path.name < since)
    ]
    twice = doubles(paths)
    for path in paths:
        if path in twice:
            continue
        try:
            data = log_bytes(path)
        except OSError:
            continue
        if holding not in data:
            continue
        opened = opening_of(data)
        # A job whose opening cannot be read has no profile and no gun to go by.
        keys = ("", *(each.key for each in opened.products)) if opened else ()
        # Which gun it was in the end, what the log adds up to says.
        may_be_it = opened and (gun in ("", opened.gun) or b'"gun changed"' in data)
        if opened and profile_key in keys and may_be_it:
            yield path, data, opened
