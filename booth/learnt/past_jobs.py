"""The jobs of a folder, as far as they teach the one on the bench; each question is read once, when it is
first asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache, partial
from pathlib import Path

from booth.clock import local_date
from booth.job.coat_times import JobTimes, times_of
from booth.job.last_choices import weighed_last
from booth.job.measured import known
from booth.job.needle_advice import CatchPair
from booth.job.past import acknowledged, last_lesson, last_rehearsal
from booth.job.past_logs import past_logs
from booth.learnt.delivery import Caught
from booth.learnt.observation import Learnt, Observation
from booth.learnt.reading import Reading
from booth.learnt.subjects import BY_KEY, SUBJECTS, learnt_by_group, learnt_one
from booth.moment import Moment

#: Two tips are the same when they are within half of the smallest step tips are made in (0.1 mm).
SAME_TIP_MM = 0.05
MOST_PAIRS = 500
#: A median of so many moves little with one more (common practice, no source).
ENOUGH_COATS = 60


class PastJobs:
    """The jobs of a folder, as far as they teach the one on the bench."""

    def __init__(self, folder: Path | None = None) -> None:
        self.folder = folder
        self.reading = Reading(folder)
        self.coat_times = cache(partial(coat_times, folder))
        self.weighed_last = cache(partial(weighed_last, folder))
        self.lesson = cache(partial(last_lesson, folder))
        self.rehearsal = cache(partial(last_rehearsal, folder))
        self._read: dict[tuple[str, str, str], Mapping[tuple[str, str], Moment]] = {}

    def acknowledged(
        self, profile_key: str, now: Moment, without: str = ""
    ) -> Mapping[tuple[str, str], Moment]:
        """What ``acknowledged`` gives, read once a day."""
        key = profile_key, local_date(now), without
        if key not in self._read:
            self._read[key] = acknowledged(self.folder, profile_key, now, without)
        return self._read[key]

    def caught(
        self, gun: str = "", tip_mm: float | None = None, profile_key: str = "", without: str = ""
    ) -> tuple[Caught, ...]:
        """Give the past catches that say how far the needle was open, the latest job first.

        gun, tip_mm: where given, only catches with these; a catch that does not say its tip is then
        left out. profile_key: where given, paint catches of other products are left out, since
        another paint runs otherwise; water is water. without: the job at hand.
        """

        def fits(each: Caught) -> bool:
            tip = tip_mm is None or (
                each.tip_mm is not None and abs(each.tip_mm - tip_mm) < SAME_TIP_MM
            )
            paint = each.pair.liquid == "water" or profile_key in ("", each.product)
            is_past = each.left_out is None and not (without and each.job == without)
            return is_past and gun in ("", each.gun) and tip and paint

        return tuple(each for each in self.reading.caught() if fits(each))[:MOST_PAIRS]

    def pairs(
        self, gun: str = "", tip_mm: float | None = None, profile_key: str = "", without: str = ""
    ) -> tuple[CatchPair, ...]:
        """Give needle turns and delivery of the catches that ``caught`` gives."""
        return tuple(each.pair for each in self.caught(gun, tip_mm, profile_key, without))

    def learnt(
        self,
        subject: str,
        group: tuple[str, ...],
        without: str = "",
        fits: Callable[[Observation], bool] | None = None,
        cup: str = "",
        cup_s: float | None = None,
    ) -> Learnt | None:
        """Give what past jobs teach of one thing; None where none of them shows any of it.

        without: the job at hand; fits: which observations are asked for; cup, cup_s: today's mix.
        """
        found = [
            each
            for each in self.reading.observations(subject)
            if each.group == group
            and not (without and each.job == without)
            and (fits is None or fits(each))
        ]
        return learnt_one(BY_KEY[subject], found, cup, cup_s)

    def all_learnt(self) -> tuple[Learnt, ...]:
        """Give everything that the jobs of the folder teach, subject by subject."""
        self.reading.read()
        return tuple(
            each
            for subject in SUBJECTS
            for each in learnt_by_group(subject, self.reading.observations(subject.key))
        )


def coat_times(folder: Path | None, without: str = "") -> tuple[JobTimes, ...]:
    """Give what the coats of past jobs took of their time at the trigger, the latest job first; none
    without a folder. without: name of a job to leave out, the one at hand.

    Only as many jobs are read as it takes for a good middle: the habits of today are the latest ones.
    """
    found: list[JobTimes] = []
    for log in past_logs(folder, holding=(b"coat ended",)):
        # Without an area there is nothing to learn; what is looked for stands in the bytes.
        of_use = b"area added" in log.data or b"amount planned" in log.data
        if not of_use or (without and log.opened.job == without):
            continue
        products = log.products()
        times = (known(times_of, products[-1]) or ()) if products else ()
        found += [JobTimes(log.opened.job, times)] if times else []
        if sum(len(each.times) for each in found) >= ENOUGH_COATS:
            break
    return tuple(found)
