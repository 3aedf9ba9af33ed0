"""What this shop has learnt: every subject with its band and how many observations it rests on."""

from __future__ import annotations

from collections.abc import Callable

from booth.files.faults import counted
from booth.learnt.observation import Learnt
from booth.learnt.past_jobs import PastJobs
from booth.learnt.subjects import BY_KEY
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.screens.dialog import Sheet
from booth.screens.learnt_from import LearntFrom, about_lines
from booth.screens.list_screen import Listed, ListScreen
from booth.words.learnt_words import in_short, title
from booth.words.shown import PickLine

NAME = "What this shop has learnt"
HELP = (
    "All of it is from your own jobs, read in their logs; nothing of it changes what a data sheet or "
    "an estimate says. A wait is only told: it opens nothing earlier.",
    "Of each job the middle of its readings counts once, since readings of one day hang together. Of "
    "all jobs the median, and a band in which the true median lies, by order statistics and the "
    "binomial distribution (Conover, Practical Nonparametric Statistics): no distribution is assumed, "
    "and a single wild job moves it little. Usually the band is right 95 % of the time; of fewer than "
    "six jobs it goes from the least to the greatest, and how sure it is is said. Of fewer than three "
    "nothing is said.",
    "A touch that came away wet says only that the coat took longer, a dry one only that it was over: "
    "both are taken as bounds. So are the two teeth of a notch gauge.",
    "Enter shows the jobs it is learnt from. There a job can be left out, with a reason, and taken in "
    "again: an entry in that job's log, behind its closing; its settings are then no last good ones "
    "either. Of a rehearsal only catches of water count.",
    "The latest 250 jobs of each subject count: the habits of today.",
)


class LearntScreen(ListScreen[None, Learnt]):
    """The list. It is read off the event loop; Enter opens one of them."""

    WORK = tuple(each for each in OwnScreen.WORK if each != "learnt")
    #: what is known of a line stands beside the list where both have room
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (120, "-wide")]

    def __init__(self) -> None:
        super().__init__(id="learnt")
        self.found: tuple[Learnt, ...] = ()
        self.has_read = False

    def on_mount(self, _: object = None) -> None:
        """Read at first, and again where a job was left out or taken in."""
        super().on_mount()
        self.run_worker(self._read, thread=True, exclusive=True)

    def _read(self) -> None:
        found = PastJobs(self.host.places.jobs_dir).all_learnt()
        self.app.call_from_thread(self.put_found, found)

    def put_found(self, found: tuple[Learnt, ...]) -> None:
        """Put what was read on the list; the picked line stays picked."""
        chosen = self.chosen
        self.found, self.has_read = found, True
        self.listed = Listed((BY_KEY[each.subject].title, key_of(each), each) for each in found)
        self.picked = self.listed.line(key_of(chosen) if chosen is not None else None)
        if self.is_attached:
            self.draw(self.host.clock.now())

    def heading(self) -> str:
        if not self.has_read:
            return f"{NAME}: reading the logs"
        if not self.found:
            return f"{NAME}: nothing yet"
        return f"{NAME}: {counted(len(self.found), 'figure')}"

    def line(self, item: Learnt, now: Moment) -> PickLine:
        system = self.host.system
        return PickLine(title(item, system), in_short(item, system), must=True)

    def about(self, now: Moment) -> tuple[str, ...]:
        chosen = self.chosen
        if chosen is not None:
            return about_lines(chosen, self.host.system, self._page.size.width)
        if not self.has_read:
            return ()
        return (
            "Nothing was kept yet that teaches anything.",
            "",
            "Touch tests, catches with the turns of the needle, wet film, cup runs and timed fills of "
            "the receiver do.",
        )

    def help(self) -> Sheet:
        return Sheet(NAME, (*HELP, str(self.host.places.jobs_dir)))

    def enter(self) -> Deed | None:
        chosen = self.chosen
        return None if chosen is None else Deed("its jobs", lambda: self._open(chosen))

    async def _open(self, chosen: Learnt) -> None:
        await self.host.show(LearntFrom(chosen, self._again(chosen)), self.on_mount)

    def _again(self, chosen: Learnt) -> Callable[[], Learnt | None]:
        """Gives the chosen one anew, read from the logs as they are then."""

        def again() -> Learnt | None:
            every = PastJobs(self.host.places.jobs_dir).all_learnt()
            return next((each for each in every if key_of(each) == key_of(chosen)), None)

        return again


def key_of(learnt: Learnt) -> tuple[str, tuple[str, ...]]:
    return learnt.subject, learnt.group
