"""Which entries of a job count for which of its products. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from booth.log import events as ev

Entry = ev.Event | ev.UnknownEvent
#: What is kept for the whole job, whichever product it was done with then.
OF_THE_JOB = (
    *(ev.JobOpened, ev.ProductBegun, ev.WeatherRead, ev.AreaAdded, ev.FaultSeen, ev.FaultAnswered),
    *(ev.PartsChanged, ev.GunChanged, ev.AgeTold),
    *(ev.NoteMade, ev.AlarmAcknowledged, ev.ClockNoticed, ev.Voided, ev.Restored, ev.JobClosed),
    *(ev.JudgedAgain, ev.FinishedLater, ev.LeftOut, ev.TakenIn, ev.RecoveryTimed),
)


class Stretch(NamedTuple):
    """What was kept while one product was worked with, from where it began."""

    product: int
    begun: ev.ProductBegun | None
    start: int
    end: int

    def counting(self, live: tuple[Entry, ...]) -> tuple[Entry, ...]:
        """What counts for it of all that does, the whole job's with it."""
        if (self.start, self.end) == (0, len(live)):
            return live
        before, own, after = live[: self.start], live[self.start : self.end], live[self.end :]
        return (*_of_the_job(before), *own, *_of_the_job(after))


def stretches_of(live: Sequence[Entry], products: int) -> list[Stretch]:
    """One for each product that was begun: only the one after the present can be."""
    found = [Stretch(1, None, 0, len(live))]
    for at, event in enumerate(live):
        if (
            isinstance(event, ev.ProductBegun)
            and found[-1].product + 1 == event.product <= products
        ):
            found[-1] = found[-1]._replace(end=at)
            found.append(Stretch(event.product, event, at, len(live)))
    return found


def _of_the_job(entries: Iterable[Entry]) -> Iterator[Entry]:
    return (event for event in entries if isinstance(event, OF_THE_JOB))
