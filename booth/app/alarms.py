"""What rings, on whatever screen is up: the field that shows it, the sound, silencing."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from msgspec.structs import replace

from booth.bench.model import BOUNCE_S
from booth.bench.next_act import SPACE
from booth.clock import local_day_hhmm
from booth.forms.key import Key
from booth.job.after_close import alarms_after
from booth.job.wait import Alarm, Call
from booth.job.waits import alarms
from booth.log.errors import NotKept
from booth.log.events import AlarmAcknowledged
from booth.log.open_jobs import OpenJob
from booth.moment import Moment, elapsed
from booth.screens.base import COVERED, Behind, Deed, OwnScreen, carry_out
from booth.screens.dialog import Sheet
from booth.widgets.alarm_field import AlarmField, strip_rows
from booth.words.alarm_words import REHEARSED, alarm_face, alarm_line, rehearsed_face
from booth.words.shown import AlarmFace

if TYPE_CHECKING:
    from booth.app.app import BoothApp

#: What rings is sounded again after so long [s].
AGAIN_AFTER_S = 5.0
#: An Escape so soon after the one that silenced was the same glove [s].
SAME_GLOVE_S = 1.0
SILENCERS = ("escape", "pageup")
#: The lines that an alarm leaves at the foot of the screen.
BELOW = "#say, #keys"
NOTHING = Deed("", lambda: None)
BLIND = "Pressed as the alarm came up: not counted. Look, then press again."


Ringing = tuple[tuple[OpenJob, Alarm], ...]
REHEARSED_KEY = "rehearsed "


def _key(job: OpenJob, alarm: Alarm) -> str:
    return f"{job.path} {alarm.key}"


class _Sounding:
    """When to sound: at once what is new, then every few seconds until acknowledged."""

    def __init__(self) -> None:
        self._rang: frozenset[str] = frozenset()
        self._last: Moment | None = None

    def due(self, keys: frozenset[str], now: Moment) -> bool:
        """Whether to sound now what rings by these keys."""
        new, self._rang = keys - self._rang, keys
        since_s = elapsed(self._last, now).seconds if self._last is not None else AGAIN_AFTER_S
        if not (new or (keys and since_s >= AGAIN_AFTER_S)):
            return False
        self._last = now
        return True


class Alarms:
    """The alarms of all jobs that are for this booth, one after the other, the gravest first."""

    def __init__(self, app: BoothApp) -> None:
        self.app = app
        self._sounding = _Sounding()
        self._silenced: Moment | None = None
        #: what is shown, and since when
        self._up: tuple[str, Moment] | None = None
        self._rehearsing: tuple[int, ...] = ()
        self._beat = False

    def ringing(self, now: Moment | None = None) -> Ringing:
        """What rings now, and in which job: open, or closed and running on; the gravest first."""
        now, jobs = now or self.app.clock.now(), self.app.jobs
        found = [(each, alarms(each.job, now)) for each in jobs.jobs() if each.rings]
        found += [(e, alarms_after(e.job, now)) for e in jobs.jobs(closed=True) if e.rings]
        every = [(each, alarm) for each, rings in found for alarm in rings]
        return tuple(sorted(every, key=lambda pair: list(Call).index(pair[1].call)))

    def rehearse(self) -> None:
        """Show and sound one of each, as they are; asked for again, it is over."""
        self._rehearsing = () if self._rehearsing else tuple(range(len(REHEARSED)))
        self.mind()

    def _is_here(self, job: OpenJob) -> bool:
        """Whether it is the job on the bench."""
        current = self.app.jobs.current
        return current is not None and job.session is current

    def _face(self, ringing: Ringing, now: Moment) -> AlarmFace | None:
        if not ringing:
            return rehearsed_face(self._rehearsing[0]) if self._rehearsing else None
        job, alarm = ringing[0]
        line = alarm_line(alarm, now, local_day_hhmm)
        if not self._is_here(job):
            line = f"{job.job.opened.title}, {line}"
        return alarm_face(alarm, line, f"1 of {len(ringing)}" if len(ringing) > 1 else "")

    def mind(self, now: Moment | None = None) -> None:
        """Show and sound what rings now."""
        now = now or self.app.clock.now()
        ringing = self.ringing(now)
        face = self._face(ringing, now)
        covered = self._show(face, self._behind(ringing, now) is not None)
        keys = [_key(job, alarm) for job, alarm in ringing]
        if not keys and self._rehearsing:
            keys = [f"{REHEARSED_KEY}{self._rehearsing[0]}"]
        first = keys[0] if keys else ""
        if first != (self._up[0] if self._up is not None else ""):
            self._up, covered = ((first, now) if first else None), True
        if covered:
            self.app.draw_all()  # what keys do is something else now
        if self._sounding.due(frozenset(keys), now):
            call = ringing[0][1].call if ringing else REHEARSED[self._rehearsing[0]][0]
            self.app.sound.play(call.name.lower())

    def _show(self, face: AlarmFace | None, may_cover: bool) -> bool:
        """Show it; whether it covers what it did not before, or no longer does."""
        screen = self.app.screen
        field = next((each for each in screen.children if isinstance(each, AlarmField)), None)
        if field is None and face is None:
            return False
        if field is None:
            field = AlarmField()
            screen.mount(field)
        self._beat = not self._beat
        whole = face is not None and may_cover
        is_other = whole != screen.has_class(COVERED)
        screen.set_class(whole, COVERED)
        rows = screen.size.height or self.app.size.height
        if face is not None:
            face = replace(face, whole=whole, beat=self._beat)
        below = [each for each in screen.query(BELOW) if each.display] if whole else []
        field.show(face, rows - len(below) if whole else strip_rows(rows))
        return is_other

    def _behind(self, ringing: Ringing, now: Moment) -> Behind | None:
        """What it covers; None where it is a strip."""
        screen = self.app.screen
        behind = screen.behind if isinstance(screen, OwnScreen) else None
        alarm = ringing[0][1] if ringing else None
        return behind if behind is not None and behind.may_be_covered(alarm, now) else None

    # -- keys -------------------------------------------------------------------------------

    def deed(self, key: Key, at: Moment) -> Deed | None:
        """What a key, pressed at `at`, does while something rings; None where that is the screen's own.

        Where the alarm covers the bench, nothing that cannot be seen is done by a thumb: Space
        leads to the coat that is called for, or silences like all the others.
        """
        screen = self.app.screen
        ringing = self._shown(at)
        if not ringing and not self._rehearsing:
            is_spare = key.name == "pageup" and isinstance(screen, OwnScreen)
            return NOTHING if is_spare or (key.name == "escape" and self.just_silenced) else None
        if key.name in SILENCERS:
            word = "silence" if key.name == SILENCERS[0] else ""
            return NOTHING._replace(word=word) if self.just_silenced else Deed(word, self.silence)
        behind = self._behind(ringing, at)
        if key.name not in (*SPACE, "enter", "backspace") or behind is None:
            return None
        called = None
        if key.name in SPACE and ringing and self._is_here(ringing[0][0]):
            called = behind.called(ringing[0][1], at)
        if called is None:
            return Deed("", self.silence)
        is_blind = self._up is not None and elapsed(self._up[1], at).seconds < BOUNCE_S
        if is_blind and isinstance(screen, OwnScreen):
            return Deed(called.word, partial(screen.say, BLIND, fault=True))
        return Deed(called.word, partial(self._silence_and, called))

    def _shown(self, now: Moment) -> Ringing:
        """What rings of what is shown: what came since the last look takes no key and is not silenced."""
        if self._up is None:
            return ()
        return tuple(each for each in self.ringing(now) if _key(*each) == self._up[0])

    async def _silence_and(self, called: Deed) -> None:
        if await self.silence():
            await carry_out(called)

    async def silence(self) -> bool:
        """Acknowledge the one that is shown; the next one comes up. False where it cannot be kept."""
        now = self.app.clock.now()
        ringing = self._shown(now)
        if ringing:
            job, alarm = ringing[0]
            event = AlarmAcknowledged(n=0, at=now, alarm=alarm.key)
            try:
                self.app.jobs.acknowledge(job.path, event)
            except NotKept as fault:
                if not isinstance(self.app.screen, Sheet):
                    await self.app.show(Sheet("NOT KEPT", (str(fault),), grave=True))
                else:  # said already: let Escape close what says it
                    await self.app.screen.leave()
                return False
        elif self._up is not None and self._up[0].startswith(REHEARSED_KEY):
            self._rehearsing = self._rehearsing[1:]
        self._silenced = now
        self.mind()
        return True

    @property
    def just_silenced(self) -> bool:
        """Whether something was silenced a moment ago."""
        if self._silenced is None:
            return False
        return elapsed(self._silenced, self.app.clock.now()).seconds < SAME_GLOVE_S
