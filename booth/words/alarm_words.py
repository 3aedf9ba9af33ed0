"""An alarm in words: the few that carry across the shop, and the sentence beside them. Pure."""

from __future__ import annotations

from collections.abc import Callable

from booth.files.safe_text import visible
from booth.job.wait import Alarm, Call, State, What
from booth.moment import Moment, elapsed
from booth.units.durations import length
from booth.words.shown import AlarmFace, Tone

#: The word of a call, and its colour.
STATES = {
    Call.STOP: ("STOP", Tone.LATE),
    Call.HURRY: ("HURRY", Tone.CLOSING),
    Call.TOO_LATE: ("TOO LATE", Tone.PLAIN),
    Call.GO_ON: ("READY", Tone.READY),
}
#: What is to be done, where it is not the next coat.
DEEDS = {
    (What.NEXT_PRODUCT, State.READY): "NEXT PRODUCT",
    (What.NEXT_PRODUCT, State.CLOSING): "NEXT PRODUCT",
    (What.INDUCTION, State.READY): "STIR",
    (What.POT_LIFE, State.CLOSING): "USE IT UP",
    (What.POT_LIFE, State.LATE): "CLEAN GUN",
    (What.DUST_FREE, State.READY): "DUST-FREE",
    (What.TAPE, State.READY): "TAPE",
    (What.HANDLE, State.READY): "HANDLE",
    (What.BEFORE_BAKE, State.READY): "BAKE",
    (What.SAND, State.READY): "SAND",
    (What.POLISH, State.READY): "POLISH",
    (What.CURE, State.READY): "CURED",
}
#: One of each call, for hearing and seeing whether they reach the painter.
REHEARSED = (
    (Call.GO_ON, "COAT 2"),
    (Call.HURRY, "USE IT UP"),
    (Call.TOO_LATE, "ABRADE"),
    (Call.STOP, "CLEAN GUN"),
)


def deed(alarm: Alarm) -> str:
    """What is to be done now, in a word or two."""
    wait, state = alarm.standing.wait, alarm.standing.state
    if state is State.LATE and wait.what in (What.NEXT_COAT, What.NEXT_PRODUCT):
        return "DO NOT COAT" if wait.again_s is not None else "ABRADE"
    if alarm.standing.abrade and wait.what is What.NEXT_PRODUCT:
        return "ABRADE FIRST"
    if wait.what is What.NEXT_COAT:
        return f"COAT {wait.coat + 1}"
    return DEEDS[wait.what, state]


def alarm_line(alarm: Alarm, now: Moment, at: Callable[[Moment, Moment], str]) -> str:
    """An alarm in a sentence: which part, what, since when. at: writes a moment at now."""
    ago = length(elapsed(alarm.since, now).seconds)
    return f"{alarm.standing.wait.title}: {alarm.words} since {at(alarm.since, now)} ({ago})"


def alarm_face(alarm: Alarm, line: str, place: str = "") -> AlarmFace:
    """The alarm as it fills the field. line: its sentence; place: which of several it is."""
    word, tone = STATES[alarm.call]
    return AlarmFace(visible(alarm.standing.wait.title), word, deed(alarm), tone, line, place)


def rehearsed_face(at: int) -> AlarmFace:
    """One of the rehearsed ones."""
    call, to_do = REHEARSED[at]
    word, tone = STATES[call]
    said = "Rehearsal. Seen and heard over there?"
    return AlarmFace("TEST", word, to_do, tone, said, f"{at + 1} of {len(REHEARSED)}")
