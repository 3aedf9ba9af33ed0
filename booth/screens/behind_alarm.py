"""The bench behind an alarm: whether it may be covered, and the coat that the alarm calls for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.bench.act import Act, OpenStep, SetForm
from booth.bench.instrument import rows_at
from booth.bench.next_act import THUMB, Situation, next_act
from booth.forms.form import BLANK
from booth.job.steps import key_of, steps_of
from booth.job.wait import Alarm, Call, What
from booth.moment import Moment
from booth.screens.base import Deed

if TYPE_CHECKING:
    from booth.screens.bench import BenchScreen

#: The kind of step in which coats are begun and ended.
COATS = "coats"


class BehindAlarm:
    """Serves one bench."""

    def __init__(self, screen: BenchScreen) -> None:
        self.screen = screen

    @property
    def needed(self) -> bool:
        """While a clock or a coat runs, something is typed, or a step is looked for."""
        bench, now = self.screen.bench, self.screen.host.clock.now()
        situation = bench.situation(now)
        running = situation.instrument.busy(situation.context) or self.screen.frames
        return bool(running or bench.form.texts or bench.picked)

    def called(self, alarm: Alarm, at: Moment) -> Deed | None:
        """The coat, by the same press that begins it at its step."""
        bench, wait = self.screen.bench, alarm.standing.wait
        key = key_of(bench.desk.job, COATS)
        if wait.what is not What.NEXT_COAT or alarm.call not in (Call.GO_ON, Call.HURRY) or not key:
            return None
        form = BLANK.choosing("part", wait.part)

        async def begin() -> None:
            bench.carry_out(Act("", (OpenStep(key), SetForm(form))), at)
            await self.screen.press(THUMB, at)

        step = next(s for s in steps_of(bench.desk.job) if s.key == key)
        instrument, context = bench.desk.instrument(step.kind), bench.desk.context(step, at)
        there = Situation(instrument, context, rows_at(instrument, context, form))
        return Deed(next_act(there, THUMB).word, begin)
