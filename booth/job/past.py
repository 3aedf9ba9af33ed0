"""What past jobs tell the next one: the settings that came out good, the last lesson, what was read today."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path

from booth.clock import local_date
from booth.job.past_logs import PastLog, past_logs
from booth.job.past_settings import GoodSettings, Lesson, settings_of
from booth.job.products import products_of
from booth.job.verdicts import next_time, verdict
from booth.log.events import CautionAcknowledged
from booth.log.fold import Job, NoJob, fold
from booth.log.parse import parse
from booth.log.summary import summary_of
from booth.moment import Moment, utc_text

#: A job of today has a name of at most a day ago: names tell the date in UTC.
LATELY_S = 2 * 86400.0
MINUTE_OF_NAME = len("20250615-1506")


def last_good(folder: Path, profile_key: str, gun: str = "") -> GoodSettings | None:
    """Give the settings of the latest job of this profile, and gun if named, closed as good."""

    def good(log: PastLog) -> bool:
        return summary_of(log.path, log.data).verdict == "good"

    found = _latest(folder, profile_key, gun, good)
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

    def taught(log: PastLog) -> bool:
        return b'"next_time"' in log.data and any(next_time(each) for each in log.products()[-1:])

    found = _latest(folder, profile_key, gun, taught)
    if found is None:
        return last_lesson(folder, profile_key) if gun else None
    faults = tuple(dict.fromkeys(each.fault for each in found.faults))
    return Lesson(found.opened.at, next_time(found), verdict(found), found.fitted.gun, faults)


def _latest(
    folder: Path, profile_key: str, gun: str, fits: Callable[[PastLog], bool]
) -> Job | None:
    """The latest job of this profile, and gun if named, whose log fits; of a coating system its
    product of this profile."""
    best: tuple[Path, Job] | None = None
    for log in past_logs(folder, profile_key, gun):
        path, opened = log.path, log.opened
        if best is not None and path.name[:MINUTE_OF_NAME] != best[0].name[:MINUTE_OF_NAME]:
            break
        # Names tell minutes only: of two in one minute, the later opening decides.
        if best is not None and best[1].opened.at.wall >= opened.at.wall:
            continue
        if fits(log):
            every = log.products()
            own = next((each for each in every if each.profile.key == profile_key), None)
            if own is not None and gun in ("", own.fitted.gun):
                best = path, own
    return None if best is None else best[1]


def acknowledged(
    folder: Path | None, profile_key: str, now: Moment, without: str = ""
) -> Mapping[tuple[str, str], Moment]:
    """Give the cautions acknowledged on the local day of `now` in jobs of this product begun lately:
    key and words -> when last. without: name of a job to leave out, the one at hand.

    Nothing where the folder cannot be read: then all of them are gone through.
    """
    found: dict[tuple[str, str], Moment] = {}
    lately = utc_text(Moment(now.wall - LATELY_S, now.continuous, now.boot), "%Y%m%d", "")
    # Somebody read them, whatever is learnt from the job.
    for log in past_logs(folder, profile_key, since=lately, those_left_out=True):
        if log.opened.job == without:
            continue
        own = (each for each in log.products() if each.profile.key == profile_key)
        for each in (read for job in own for read in job.of(CautionAcknowledged)):
            if local_date(each.at) == local_date(now):
                known = found.get((each.caution, each.words), each.at)
                found[each.caution, each.words] = max(known, each.at, key=lambda at: at.wall)
    return found


def last_rehearsal(
    folder: Path | None, profile_key: str, gun: str = "", without: str = ""
) -> Job | None:
    """Give the rehearsal that was closed since the last job of this profile, with this gun or with one
    that nobody named: what it said to change is for the job that follows. without: name of a job to
    leave out, the one at hand."""
    for log in past_logs(folder, profile_key, rehearsals=True):
        if without and log.opened.job == without:
            continue
        if not log.opened.rehearsal:
            return None
        with suppress(NoJob):
            # All of it, not only what of it counts for other jobs.
            every = products_of(fold(parse(log.data).events))
            own = next((each for each in every if each.profile.key == profile_key), None)
            same = own is not None and (not gun or own.fitted.gun in ("", gun))
            if same and every[-1].closed is not None:
                return own
    return None
