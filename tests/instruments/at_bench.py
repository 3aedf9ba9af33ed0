"""A bench without a screen: a job in memory, a clock that stands still, worked by keys.

What a painter would see is asked of the same pure functions that the screen draws from; hours of
waiting take microseconds. What only a screen can show is tested in tests/screens.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

import msgspec

from booth.bench.act import Act, Ask, Command, Context, Menu, OpenStep, Rest
from booth.bench.instrument import Instrument, rows_at
from booth.bench.model import Bench
from booth.forms.form import Row, Rows
from booth.forms.key import Key
from booth.instruments.registry import instrument_for
from booth.job.past_settings import GoodSettings
from booth.job.steps import steps_of
from booth.job.stopwatches import heard
from booth.learnt.past_jobs import PastJobs
from booth.log.codec import decode, encode
from booth.log.events import Event, JobOpened, Rack
from booth.log.fold import Job, fold
from booth.moment import Moment
from booth.profile.model import Profile, Step
from booth.profile.steps import DEFAULT_STEPS
from booth.shop.model import Shop
from booth.shop.room_readings import RoomReading
from booth.units import System
from booth.words.shown import Page, Readout
from tests.job.make import mild
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock

#: The names of keys that make a character.
NAMES = {
    " ": "space",
    ".": "full_stop",
    ",": "comma",
    "/": "slash",
    "%": "percent_sign",
    ":": "colon",
    "?": "question_mark",
    "-": "minus",
    "+": "plus",
}


def in_mild_weather(clock: ManualClock) -> tuple[Event, ...]:
    """The weather read now, in which the waits of the trial profile hold as they are; without a
    reading none is known."""
    return (msgspec.structs.replace(mild(), at=clock.now()),)


def key_of(name: str) -> Key:
    """A key by its name or its character."""
    if len(name) == 1:
        return Key(NAMES.get(name, name), name)
    return Key(name, " " if name == "space" else None)


class AtBench:
    """What a test does to the bench and reads from it; also the desk that the bench stands on."""

    def __init__(
        self,
        step: str,
        *,
        profile: Profile | None = None,
        before: Callable[[ManualClock], Sequence[Event]] = lambda clock: (),
        parts: tuple[str, ...] = ("door", "hood"),
        shop: Shop | None = None,
        system: System = System.METRIC,
        good: GoodSettings | None = None,
        past: PastJobs | None = None,
        later: tuple[Profile, ...] = (),
        racks: tuple[Rack, ...] = (),
        room: RoomReading | None = None,
        rehearsal: bool = False,
    ) -> None:
        self.clock, self.system, self.shop = ManualClock(), system, shop or Shop()
        self.good, self.past = good, past or PastJobs()
        self.room = room
        self.refuses = False
        self.sounds: list[str] = []
        self.rest: tuple[Rest, ...] = ()
        gun = self.shop.guns[0].name if self.shop.guns else ""
        opened = JobOpened(
            n=1,
            at=self.clock.now(),
            job="trial",
            profile=profile or trial(),
            parts=parts,
            gun=gun,
            shop=msgspec.to_builtins(self.shop),
            later=later,
            racks=racks,
            coating="Trial system" if later else "",
            coating_key="trial-system" if later else "",
            rehearsal=rehearsal,
        )
        self.events: list[Event] = [opened]
        self.job: Job = fold(self.events)
        for event in before(self.clock):
            self.keep(event)
        self.bench = Bench(self, self.step_of(step))

    # -- the desk ---------------------------------------------------------------------------

    def context(self, step: Step, now: Moment) -> Context:
        room = self.room
        return Context(self.job, now, self.system, step, self.shop, self.good, self.past, room)

    def instrument(self, kind: str) -> Instrument:
        return instrument_for(kind)

    def keep(self, event: Event) -> bool:
        if self.refuses:
            return False
        numbered = msgspec.structs.replace(event, n=self.job.next_n)
        assert decode(encode(numbered)) == numbered, "what is kept is what can be read back"
        self.events.append(numbered)
        self.job = fold(self.events)
        return True

    def step_of(self, key: str) -> Step:
        """A step of the job, or of the usual ones where the job has it not."""
        return next(step for step in (*steps_of(self.job), *DEFAULT_STEPS) if step.key == key)

    # -- what a test does -------------------------------------------------------------------

    def press(self, *names: str) -> None:
        """Press keys one after the other; Space so that it is no bounce."""
        for name in names:
            if name in ("space", "pagedown"):
                self.clock.advance(1.0)
            self.rest = self.bench.press(key_of(name), self.clock.now())

    def press_now(self, *names: str) -> None:
        """Press keys at this very moment."""
        for name in names:
            self.rest = self.bench.press(key_of(name), self.clock.now())

    def type(self, text: str) -> None:
        """Type a text, character by character."""
        for character in text:
            self.rest = self.bench.press(key_of(character), self.clock.now())

    def fill(self, key: str, text: str) -> None:
        """Go to a row by its key and type into it."""
        self.go_to(key)
        self.type(text)

    def go_to(self, key: str) -> None:
        """Go to a row with the arrows."""
        for _ in range(2 * len(self.rows.every) + 2):
            if self.marked == key:
                return
            keys = [row.key for row in self.rows.sight]
            up = key in keys and keys.index(key) < keys.index(self.marked)
            self.press("up" if up else "down")
        raise AssertionError(f"no way to the row {key!r} from {self.marked!r}")

    def choose(self, *words: str) -> None:
        """Choose from the menu that is up; the last may be one's own words."""
        (menu,) = (each for each in self.rest if isinstance(each, Menu))
        for each in words:
            found = [choice for choice in menu.choices if choice.words.startswith(each)]
            assert found, f"{each!r} is not in {[choice.words for choice in menu.choices]}"
            now = self.clock.now()
            act = found[0].act(self.context(self.bench.step, now))
            self.rest = self.bench.carry_out(act, now)

    def answer(self, text: str) -> None:
        """Answer the question that is up."""
        (ask,) = (each for each in self.rest if isinstance(each, Ask))
        now = self.clock.now()
        act = ask.act(self.context(self.bench.step, now), text)
        self.rest = self.bench.carry_out(act, now)

    def pass_time(self, seconds: float) -> None:
        """Let time pass, a tenth at a time where something may be heard."""
        before = self.clock.now()
        self.clock.advance(seconds)
        self.sounds += heard(self.job.stopwatches, before, self.clock.now())

    def open(self, key: str) -> None:
        """Open a step."""
        self.bench.carry_out(Act("", (OpenStep(key),)), self.clock.now())

    # -- what a test reads ------------------------------------------------------------------

    @property
    def now(self) -> Context:
        return self.context(self.bench.step, self.clock.now())

    @property
    def rows(self) -> Rows:
        return rows_at(self.bench.instrument, self.now, self.bench.form)

    def row(self, key: str) -> Row:
        return self.rows.row(key)

    @property
    def marked(self) -> str:
        """The key of the row that keys go to."""
        row = self.rows.marked
        return row.key if row is not None else ""

    @property
    def keys(self) -> dict[str, str]:
        """The key line: key -> word."""
        return dict(self.bench.keys(self.clock.now()))

    @property
    def readout(self) -> Readout:
        found = self.bench.instrument.readout(self.now, self.rows.values)
        assert found is not None
        return found

    @property
    def record(self) -> tuple[str, ...]:
        return self.bench.instrument.record(self.now)

    @property
    def said(self) -> str:
        return self.bench.said[0]

    @property
    def commands(self) -> list[str]:
        """The commands that the last key asked for."""
        return [each.id for each in self.rest if isinstance(each, Command)]

    @property
    def log(self) -> list[Event]:
        """What was kept, the opening left out."""
        return self.events[1:]

    @property
    def text(self) -> str:
        """All words that stand on the screen."""
        context, rows = self.now, self.rows
        readout = self.bench.instrument.readout(context, rows.values)
        found: list[str] = []
        if readout is not None:
            found += [
                readout.whose,
                readout.label,
                readout.figure,
                readout.unit,
                readout.shown_word,
            ]
            found += readout.lines
        for picture in self.bench.instrument.picture(context, rows.values):
            found += _words_of(picture)
        found += self.record
        for row in rows.sight:
            found += [row.field.label, row.text, row.fault or row.echo]
        found += [self.said, *(f"{key} {word}" for key, word in self.keys.items())]
        return "\n".join(found)


def _words_of(picture: object) -> Iterable[str]:
    """Every text in a picture's data."""
    if isinstance(picture, Page):
        return [text for _, text in picture.paragraphs]
    if isinstance(picture, str):
        return [picture]
    if isinstance(picture, tuple):
        return [text for each in picture for text in _words_of(each)]
    names = getattr(picture, "__struct_fields__", ())
    return [text for name in names for text in _words_of(getattr(picture, name))]


def context_of(
    *kept: Event,
    step: str = "pace",
    profile: Profile | None = None,
    shop: Shop | None = None,
    system: System = System.METRIC,
    parts: tuple[str, ...] = ("door", "hood"),
) -> Context:
    """A context with what was kept, for the pure functions."""
    clock = ManualClock()
    opened = JobOpened(n=1, at=clock.now(), job="trial", profile=profile or trial(), parts=parts)
    job = fold([opened, *(msgspec.structs.replace(event, n=n) for n, event in enumerate(kept, 2))])
    found = next(each for each in DEFAULT_STEPS if each.key == step)
    return Context(job, clock.now(), system, found, shop or Shop())
