"""What happened, in the past tense: small frozen records. One is one line of a session log.

An event never changes: a mistake is voided by a later one. Quantities are kept as typed and in base units.
"""

from __future__ import annotations

from typing import ClassVar

import msgspec

from booth.log.afterwards import FinishedLater as FinishedLater
from booth.log.afterwards import JudgedAgain as JudgedAgain
from booth.log.afterwards import LeftOut as LeftOut
from booth.log.afterwards import TakenIn as TakenIn
from booth.log.air import AirRead as AirRead
from booth.log.air import RecoveryTimed as RecoveryTimed
from booth.log.changes import AgeTold as AgeTold
from booth.log.changes import CoatsChanged as CoatsChanged
from booth.log.changes import GunChanged as GunChanged
from booth.log.changes import PartsChanged as PartsChanged
from booth.log.opening import Event as Event
from booth.log.opening import JobOpened as JobOpened
from booth.log.opening import ProductBegun as ProductBegun
from booth.log.rack import Rack as Rack
from booth.moment import Moment
from booth.units import Quantity


class StepDone(Event, frozen=True, tag="step done"):
    step: str


class LineTicked(Event, frozen=True, tag="line ticked"):
    step: str
    line: str


class StepSkipped(Event, frozen=True, tag="step skipped"):
    """A step was passed over; why: the painter's word, asked for cautions and measurements."""

    step: str
    why: str = ""


class CautionAcknowledged(Event, frozen=True, tag="caution acknowledged"):
    caution: str
    words: str


class WeatherRead(Event, frozen=True, tag="weather read"):
    """source: what of it a sensor read, as 'sensor: air and humidity'; empty where all was typed."""

    air: Quantity
    humidity: Quantity
    part: Quantity
    air_speed: Quantity | None = None  # over the film
    source: str = ""


class Pour(msgspec.Struct, frozen=True):
    """One component as poured into the batch [ml or g]."""

    name: str
    amount: Quantity


class Poured(Event, frozen=True, tag="poured"):
    """One pour into a batch that is not mixed yet, and how the batch was meant at that pour. amount
    [ml or g]: of this component alone; wanted: of the mix, or of the component `of`; thinner: percent
    by volume of the coating; onto: the batch it goes onto; rest: what is left of that one; hardener,
    thinned_with: which ones were chosen, where the profile names several."""

    batch: int
    name: str
    amount: Quantity
    wanted: Quantity
    of: str = ""
    thinner: Quantity | None = None
    onto: int | None = None
    rest: Quantity | None = None
    hardener: str = ""
    thinned_with: str = ""


class BatchMixed(Event, frozen=True, tag="batch mixed"):
    """A batch was mixed: its pot life starts. onto: the one it went onto; hardener, thinned_with: which
    ones were chosen, where the profile names several; others: what else of these its rest held."""

    batch: int
    pours: tuple[Pour, ...] = ()
    total: Quantity | None = None
    onto: int | None = None
    hardener: str = ""
    thinned_with: str = ""
    others: tuple[str, ...] = ()


class BatchFinished(Event, frozen=True, tag="batch finished"):
    """A batch is used up or thrown away: its pot life no longer matters."""

    batch: int


class ThinnerAdded(Event, frozen=True, tag="thinner added"):
    """Thinner went into the mix; remaining: the amount of mix it went into."""

    amount: Quantity
    remaining: Quantity | None = None


class StopwatchStarted(Event, frozen=True, tag="stopwatch started"):
    """A stopwatch runs from here, the program or not: of a flow cup, a catch, a pass, of the pace.
    stopwatch: which one, and no other of its name runs; what: the cup, the length of the pass,
    whether the bar is silent; lead_in_s: what is counted down first; window_s: it stops by itself
    after so long, lead-in not counted (the bar turns)."""

    stopwatch: str
    what: str = ""
    lead_in_s: float = 0.0
    window_s: float | None = None


class StopwatchStopped(Event, frozen=True, tag="stopwatch stopped"):
    """A stopwatch was stopped after so many seconds; what was measured is still to be entered."""

    stopwatch: str
    seconds: float


class StopwatchDropped(Event, frozen=True, tag="stopwatch dropped"):
    stopwatch: str


class EffluxTimed(Event, frozen=True, tag="efflux timed"):
    """One run of a flow cup. The seconds are those between the two key presses."""

    ENDS: ClassVar[str] = "cup"
    cup: str
    seconds: float
    liquid_temperature: Quantity | None = None
    correction: float = 1.0


class CatchMade(Event, frozen=True, tag="catch made"):
    """A timed catch: amount [ml or g] in `seconds`; liquid 'water' or 'paint'."""

    ENDS: ClassVar[str] = "catch"
    seconds: float
    amount: Quantity
    delivery_ml_min: float
    liquid: str = "paint"
    density_g_ml: float | None = None
    turns: Quantity | None = None
    inlet: Quantity | None = None
    tip: Quantity | None = None


class FanSet(Event, frozen=True, tag="fan set"):
    width: Quantity | None = None
    turns: Quantity | None = None
    distance: Quantity | None = None


class PatternRead(Event, frozen=True, tag="pattern read"):
    """A test pattern as read: a named shape, or zones across the fan entered by eye."""

    shape: str
    zones: tuple[float, ...] = ()
    overlap: Quantity | None = None
    width: Quantity | None = None


class PassTimed(Event, frozen=True, tag="pass timed"):
    ENDS: ClassVar[str] = "pass"
    length: Quantity
    seconds: float


class CoatBegun(Event, frozen=True, tag="coat begun"):
    """early_s, late_s: by how much; doubtful: the clock, so that neither is known; amiss: causes."""

    part: str
    coat: int
    early_s: float = 0.0
    late_s: float = 0.0
    doubtful: bool = False
    amiss: tuple[str, ...] = ()


class CoatEnded(Event, frozen=True, tag="coat ended"):
    """The coat on a part ended: flash-off starts here."""

    part: str
    coat: int


class FilmRead(Event, frozen=True, tag="film read"):
    part: str
    last_wetted: Quantity
    first_dry: Quantity
    coat: int | None = None


class TouchTried(Event, frozen=True, tag="touch tried"):
    """A touch test on a part: 'wet', 'tacky' or 'dry'."""

    part: str
    result: str


class AreaAdded(Event, frozen=True, tag="area added"):
    """The area [m2] of `number` parts alike was taken. dimensions: by name, as typed; part: if said."""

    shape: str
    area: Quantity
    dimensions: dict[str, Quantity] = {}
    number: int = 1
    part: str = ""


class AmountPlanned(Event, frozen=True, tag="amount planned"):
    area: Quantity
    amount: Quantity
    lands: str = ""  # the kind of parts, 'large' flat or 'small' and open ones


class FreshAirChecked(Event, frozen=True, tag="fresh air checked"):
    """The least dilution air against fire that was worked out, what the room moves, the open face."""

    needed_m3_min: float
    moved_m3_min: float | None = None
    face_m2: float | None = None


class FaultSeen(Event, frozen=True, tag="fault seen"):
    """A fault of the film, by its key in ``trade.faults``."""

    fault: str
    part: str = ""


class FaultAnswered(Event, frozen=True, tag="fault answered"):
    """What was answered of a fault's causes; question: its key in ``trade.faults.questions``."""

    fault: str
    question: str
    answer: str
    part: str = ""


class NoteMade(Event, frozen=True, tag="note"):
    text: str
    part: str = ""


class AlarmAcknowledged(Event, frozen=True, tag="alarm acknowledged"):
    """An alarm was heard and silenced. alarm: its key (see ``job.waits``)."""

    alarm: str


class ClockNoticed(Event, frozen=True, tag="clock noticed"):
    """The machine slept, or its wall clock was moved, while the program ran [s]."""

    slept_s: float = 0.0
    stepped_s: float = 0.0


class Voided(Event, frozen=True, tag="voided"):
    """An earlier event no longer counts. target: its number."""

    target: int


class Restored(Event, frozen=True, tag="restored"):
    target: int


class JobClosed(Event, frozen=True, tag="job closed"):
    """The job is over: verdict 'good', 'usable' or 'redo', words, what to change next time; of a
    rehearsal, which has no verdict, what it said to change."""

    verdict: str
    words: str = ""
    next_time: str = ""
    to_change: tuple[str, ...] = ()


class UnknownEvent(msgspec.Struct, frozen=True):
    """An event of a later version of this program: carried through, shown, not understood."""

    n: int
    at: Moment
    event: str
    line: str
