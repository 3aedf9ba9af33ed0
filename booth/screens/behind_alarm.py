"""The bench behind an alarm: whether it may be covered, and the way to the coat that is called for."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.bench.act import Act, Keep, OpenStep, SetForm
from booth.bench.next_act import THUMB, next_act
from booth.forms.form import BLANK
from booth.job.steps import key_of
from booth.job.wait import Alarm, Call, What
from booth.log.events import CoatBegun
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

    def may_be_covered(self, alarm: Alarm | None, now: Moment) -> bool:
        """Not while a clock or a coat runs, something is typed or a step is looked for; nor by another
        part's alarm where Space would begin a coat: whoever is about to press does not look again."""
        bench = self.screen.bench
        situation = bench.situation(now)
        running = situation.instrument.busy(situation.context) or self.screen.frames
        if running or bench.form.texts or bench.picked:
            return False
        begun = [each.event for each in next_act(situation, THUMB).do if isinstance(each, Keep)]
        parts = [each.part for each in begun if isinstance(each, CoatBegun)]
        return alarm is None or not parts or alarm.standing.wait.part in parts

    def called(self, alarm: Alarm, at: Moment) -> Deed | None:
        """To the coat that it calls for; where that is in front of the painter, its beginning."""
        bench, wait = self.screen.bench, alarm.standing.wait
        key = key_of(bench.desk.job, COATS)
        if wait.what is not What.NEXT_COAT or alarm.call not in (Call.GO_ON, Call.HURRY) or not key:
            return None
        situation = bench.situation(at)
        if situation.context.step.key == key and situation.rows.values.get("part") == wait.part:
            return Deed(next_act(situation, THUMB).word, lambda: self.screen.press(THUMB, at))
        turn = Act("", (OpenStep(key), SetForm(BLANK.choosing("part", wait.part))))

        def turned() -> None:
            bench.carry_out(turn, at)

        return Deed(f"to coat {wait.coat + 1}: {wait.part}", turned)
