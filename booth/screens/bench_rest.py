"""What a press on the bench leaves over: a menu, a question, a command, another screen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from msgspec.structs import replace

from booth.bench.act import Act, Ask, CloseJob, Command, Context, Menu, Rest, Scroll
from booth.bench.changes import change_menu
from booth.bench.help_page import help_page
from booth.bench.menus import OWN_WORDS, note_menu, skip_menu
from booth.screens.ask import Ask as AskScreen
from booth.screens.dialog import Sheet
from booth.screens.menu import Menu as MenuScreen
from booth.screens.menu import Taken
from booth.widgets.instrument_view import InstrumentView
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from booth.screens.bench import BenchScreen

JUST_TYPE = "or just type"


class BenchRest:
    """Carries it out, for one bench."""

    def __init__(self, screen: BenchScreen) -> None:
        self.screen = screen
        self.desk = screen.desk
        self.host = screen.desk.host

    async def carry_out(self, rest: tuple[Rest, ...]) -> None:
        """Open what was asked for; where an entry was refused, say so instead."""
        why = self.desk.taken_refusal()
        if why:
            await self.host.show(Sheet("NOT KEPT", (why,), grave=True))
            return
        for effect in rest:
            match effect:
                case Menu():
                    await self._menu(effect)
                case Ask():
                    await self._ask(effect)
                case Command(id):
                    await self.command(id)
                case Scroll(by):
                    self.screen.query_one(InstrumentView).scroll_page(by)
                case CloseJob():
                    await self.host.leave_job()

    async def do(self, act: Act) -> None:
        """What was chosen or answered over the bench."""
        bench, before = self.screen.bench, self.host.clock.now()
        rest = bench.carry_out(act, before)
        bench.stood_still(before, self.host.clock.now())
        await self.carry_out(rest)
        self.screen.look_again()

    @property
    def _context(self) -> Context:
        """The job and the open step at this moment."""
        return self.desk.context(self.screen.bench.step, self.host.clock.now())

    async def _menu(self, menu: Menu) -> None:
        own = [each.words == OWN_WORDS for each in menu.choices]
        lines = tuple(
            PickLine(each.words, JUST_TYPE if mine else each.behind, must=True)
            for each, mine in zip(menu.choices, own, strict=True)
        )

        async def chosen(taken: Taken | None) -> None:
            if taken is None:
                return
            act = menu.choices[taken.line].act(self._context)
            await self.do(_with_text(act, taken.typed) if taken.typed else act)

        words_at = own.index(True) if any(own) else None
        await self.host.show(MenuScreen(menu.title, lines, words_at), chosen)

    async def _ask(self, ask: Ask) -> None:
        async def answered(text: str | None) -> None:
            if text is not None:
                await self.do(ask.act(self._context, text))

        screen = AskScreen(ask.question, ask.why, needed=ask.needed, text=ask.text)
        await self.host.show(screen, answered)

    async def _from_log(self, _: object) -> None:
        """Another product may be the present one by what was voided there."""
        self.screen.bench.mind_product()
        self.screen.look_again()

    async def _from_learnt(self, _: object) -> None:
        """A job may have been left out there."""
        self.desk.learn_anew()
        self.desk.read_past()
        self.screen.look_again()

    async def command(self, id: str) -> None:
        """The commands that are about this job; the others are the application's."""
        match id:
            case "note":
                await self._menu(note_menu(self.desk.unkept_note))
            case "skip":
                await self._menu(skip_menu(self._context))
            case "change":
                await self._menu(change_menu(self._context))
            case "log":
                from booth.screens.job_log import JobLog

                await self.host.show(JobLog(self.desk), self._from_log)
            case "help":
                await self.host.show(self._help())
            case "hints":
                self.host.remember("hints", self.screen.has_class("-no-hints"))
                self.screen.toggle_class("-no-hints")
            case "save_profile":
                from booth.screens.save_profile import save_profile

                await self.do(save_profile(self.desk))
            case "card":
                from booth.screens.write_card import write_card_at

                session = self.desk.session
                await write_card_at(self.host, session.log.path, session.job.opened.job)
            case "learnt":
                from booth.screens.learnt import LearntScreen

                await self.host.show(LearntScreen(), self._from_learnt)
            case "home":
                await self.host.leave_job()
            case _:
                await self.host.command(id)

    def _help(self) -> Sheet:
        situation = self.screen.bench.situation(self.host.clock.now())
        page = help_page(situation.instrument, situation.context, situation.rows)
        return Sheet(situation.instrument.NAME, page)

    async def pick(self, index: int, again: bool) -> None:
        """A click on a line of the picture; again: it was picked already."""
        situation = self.screen.bench.situation(self.host.clock.now())
        act = situation.instrument.pick(situation.context, situation.rows, index)
        if act is not None:
            await self.do(act)
        if again:
            self.screen.press_soon("enter")


def _with_text(act: Act, text: str) -> Act:
    """The act with its questions already begun to be answered."""
    return replace(
        act, do=tuple(replace(e, text=text) if isinstance(e, Ask) else e for e in act.do)
    )
