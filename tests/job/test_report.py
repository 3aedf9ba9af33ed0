"""A job as text: every kind of entry in words, nothing that steers the terminal."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.card.report import report
from booth.log import afterwards, air, changes, codec, opening
from booth.log import events as ev
from booth.log.fold import fold
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.units import Kind, Quantity, System
from booth.words import event_words
from booth.words.event_words import WORDS, quantity, teller, words
from booth.words.report import jobs_table
from tests.log.logs import PROFILE, moment, note, opened, some_events
from tests.log.logs import quantity as q

AT = moment()


def time_of(at: Moment) -> str:
    return f"t{at.wall - AT.wall:g}"


def date_of(at: Moment) -> str:
    return f"day {int(at.wall // 86400)}"


def told(*events: ev.Event, system: System = System.METRIC, said: tuple[str, ...] = ()) -> str:
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 1)]
    return report(numbered, system, time_of, date_of, said)


#: Each kind of entry and how it is told. Conversions: 1 US fl oz = 29.5735 ml (NIST Handbook 44,
#: app. C), 1 psi = 6.894757 kPa and degrees by definition (NIST SP 811, app. B).
TOLD = [
    (opened(), "job opened: Demo clear, two-pack, hood, door"),
    (ev.ProductBegun(n=1, at=AT, product=2), "product 2 begun"),
    (ev.StepDone(n=1, at=AT, step="strain"), "step done: strain"),
    (ev.LineTicked(n=1, at=AT, step="clean", line="needle wiped"), "done: needle wiped"),
    (ev.StepSkipped(n=1, at=AT, step="weather", why="indoors"), "step skipped: weather, indoors"),
    (ev.StepSkipped(n=1, at=AT, step="weather"), "step skipped: weather"),
    (
        ev.CautionAcknowledged(n=1, at=AT, caution="eyes", words="Cover your eyes."),
        "caution acknowledged: Cover your eyes.",
    ),
    (
        ev.WeatherRead(n=1, at=AT, air=q(22, "degC"), humidity=q(50, "%"), part=q(20, "degC")),
        "weather: air 72 °F, humidity 50 %, part 68 °F",
    ),
    (
        ev.Poured(n=1, at=AT, batch=1, name="clear", amount=q(295.735, "ml"), wanted=q(600, "ml")),
        "poured into batch 1: clear 10.0 fl oz",
    ),
    (
        ev.BatchMixed(
            n=1,
            at=AT,
            batch=2,
            onto=1,
            total=q(295.735, "ml"),
            pours=(ev.Pour("clear", q(200, "g")), ev.Pour("hardener", q(29.5735, "ml"))),
        ),
        "batch 2 mixed: clear 200.0 g + hardener 1.0 fl oz, in all 10.0 fl oz, onto batch 1",
    ),
    (ev.BatchMixed(n=1, at=AT, batch=1), "batch 1 mixed"),
    (ev.BatchFinished(n=1, at=AT, batch=1), "batch 1 finished"),
    (
        ev.ThinnerAdded(n=1, at=AT, amount=q(29.5735, "ml"), remaining=q(591.47, "ml")),
        "thinner added: 1.0 fl oz, to 20.0 fl oz",
    ),
    (
        ev.StopwatchStarted(n=1, at=AT, stopwatch="cup", what="ford-4"),
        "stopwatch of the cup started, Ford #4",
    ),
    (
        ev.StopwatchStarted(n=1, at=AT, stopwatch="catch", lead_in_s=3, window_s=60),
        "stopwatch of the catch started, for 1 min",
    ),
    (
        ev.StopwatchStopped(n=1, at=AT, stopwatch="catch", seconds=31.46),
        "stopwatch of the catch stopped after 31.5 s",
    ),
    (ev.StopwatchDropped(n=1, at=AT, stopwatch="catch"), "stopwatch of the catch dropped"),
    (
        ev.EffluxTimed(
            n=1,
            at=AT,
            cup="Ford #4",
            seconds=21.46,
            correction=1.02,
            liquid_temperature=q(25, "degC"),
        ),
        "efflux time Ford #4: 21.5 s, liquid at 77 °F, cup's correction 1.02",
    ),
    (
        ev.AirRead(
            n=1, at=AT, inlet=q(206.84271, "kPa"), cap=q(68.94757, "kPa"), fan_turns=q(1, "turns")
        ),
        "air: inlet 30 psi, cap 10.0 psi, fan open 1 turn",
    ),
    (
        ev.CatchMade(
            n=1,
            at=AT,
            seconds=60,
            amount=q(177.441, "ml"),
            delivery_ml_min=177.441,
            liquid="water",
            turns=q(1.5, "turns"),
            inlet=q(206.84271, "kPa"),
            tip=q(1.4, "mm"),
        ),
        "catch of water: 6.0 fl oz in 1 min, delivery 6.0 fl oz/min, needle 1.5 turns, inlet 30 psi, "
        "tip 1.4 mm",
    ),
    (
        ev.FanSet(n=1, at=AT, width=q(254, "mm"), turns=q(2, "turns")),
        "fan set, width 10.0 in, open 2 turns",
    ),
    (
        ev.PatternRead(n=1, at=AT, shape="even", zones=(0.5, 1), overlap=q(50, "%")),
        "pattern: even, zones 0.5 1, overlap 50 %",
    ),
    (ev.PassTimed(n=1, at=AT, length=q(1.2192, "m"), seconds=3), "pass timed: 4.00 ft in 3.0 s"),
    (
        ev.CoatBegun(n=1, at=AT, part="hood", coat=2, early_s=90, late_s=0),
        "coat 2 on hood begun, 1 min 30 s too early",
    ),
    (
        ev.CoatBegun(n=1, at=AT, part="hood", coat=2, late_s=3600),
        "coat 2 on hood begun, 1 h past the window",
    ),
    (
        ev.CoatBegun(n=1, at=AT, part="hood", coat=2, doubtful=True),
        "coat 2 on hood begun, the clock in doubt",
    ),
    (ev.CoatEnded(n=1, at=AT, part="hood", coat=2), "coat 2 on hood ended"),
    (
        ev.FilmRead(
            n=1, at=AT, part="hood", coat=1, last_wetted=q(50.8, "um"), first_dry=q(63.5, "um")
        ),
        "wet film on hood, coat 1: over 2.0 mil, under 2.5 mil",
    ),
    (ev.TouchTried(n=1, at=AT, part="hood", result="tacky"), "touched on hood: tacky"),
    (
        ev.AgeTold(n=1, at=AT, target=4, ago_s=50),
        "number 4: 50.0 s before, as told while the clock was in doubt",
    ),
    (
        ev.AreaAdded(
            n=1,
            at=AT,
            shape="rectangle",
            part="hood",
            number=2,
            dimensions={"length": q(1.2192, "m"), "width": q(0.6096, "m")},
            area=q(1.486448, "m2"),
        ),
        "area on hood: 16.0 ft², 2 of them, rectangle length 4.00 ft, width 2.00 ft",
    ),
    (
        ev.AreaAdded(
            n=1,
            at=AT,
            shape="circle",
            dimensions={"diameter": q(254, "mm")},
            area=q(0.0506707, "m2"),
        ),
        "area: 0.55 ft², circle diameter 10.0 in",
    ),
    (
        ev.AmountPlanned(n=1, at=AT, area=q(2.97289728, "m2"), amount=q(295.735, "ml")),
        "amount planned: 10.0 fl oz for 32.0 ft²",
    ),
    (
        ev.FreshAirChecked(n=1, at=AT, needed_m3_min=28.3168466, moved_m3_min=56.6336932),
        "fresh air: at least 1000 cfm against fire, the room moves 2000 cfm",
    ),
    (ev.FaultSeen(n=1, at=AT, fault="runs", part="door"), "fault seen on door: runs"),
    (
        ev.FaultAnswered(n=1, at=AT, fault="fisheyes", question="wiped", answer="no"),
        "fisheyes: Did the next panel, wiped with cleaner, show it too? no",
    ),
    (
        ev.FaultAnswered(n=1, at=AT, fault="runs", question="of a later\x1b one", answer="yes"),
        "runs: of a later␛ one: yes",
    ),
    (note(1, "two\nlines"), "note: two lines"),
    (ev.AlarmAcknowledged(n=1, at=AT, alarm="coat:3:ready"), "alarm silenced: coat:3:ready"),
    (
        ev.ClockNoticed(n=1, at=AT, slept_s=300, stepped_s=-3600),
        "clock: the machine slept 5 min, its clock was set back by 1 h",
    ),
    (ev.ClockNoticed(n=1, at=AT, stepped_s=90), "clock: its clock was set forward by 1 min 30 s"),
    (ev.CoatsChanged(n=1, at=AT, coats=3), "coats to be laid: 3 in all"),
    (ev.CoatsChanged(n=1, at=AT, coats=3, part="door"), "coats to be laid on door: 3 in all"),
    (
        ev.PartsChanged(n=1, at=AT, add=("sill", "post"), drop=("hood",)),
        "parts changed, added: sill, post, dropped: hood",
    ),
    (
        ev.GunChanged(n=1, at=AT, gun="grey gun", tip=q(1.4, "mm"), cup=q(600, "ml")),
        "gun changed: grey gun, tip 1.4 mm, cup 20.3 fl oz",
    ),
    (ev.Voided(n=1, at=AT, target=7), "number 7 voided"),
    (ev.Restored(n=1, at=AT, target=7), "number 7 restored"),
    (
        ev.JudgedAgain(n=1, at=AT, verdict="usable", words="dust", next_time="wet the floor"),
        "looked at again: usable, dust, next time: wet the floor",
    ),
    (ev.JudgedAgain(n=1, at=AT, verdict="", words="dull"), "looked at again, dull"),
    (ev.FinishedLater(n=1, at=AT, work="polished", part="hood"), "polished: hood"),
    (ev.FinishedLater(n=1, at=AT, work="cured"), "cured"),
    (
        ev.RecoveryTimed(
            n=1,
            at=AT,
            seconds=52.3,
            cut_in=q(600, "kPa"),
            cut_out=q(800, "kPa"),
            receiver=q(50, "l"),
            rated=q(130, "l/min"),
        ),
        "receiver filled from 87 psi to 116 psi in 52.3 s, 13.2 gal, rated 4.6 cfm",
    ),
    (ev.LeftOut(n=1, at=AT, reason="a trial"), "left out of what is learnt: a trial"),
    (ev.TakenIn(n=1, at=AT), "taken into what is learnt again"),
    (
        ev.JobClosed(n=1, at=AT, verdict="good", words="flat", next_time="faster"),
        "job closed: good, flat, next time: faster",
    ),
    (
        ev.UnknownEvent(3, AT, "lamp set", "{}"),
        "lamp set (an entry of a later version of this program)",
    ),
]


@pytest.mark.parametrize(
    ("event", "expected"), TOLD, ids=[type(event).__name__ for event, _ in TOLD]
)
def test_each_kind_of_entry_in_words(event: ev.Event, expected: str) -> None:
    assert words(event, System.US) == expected


#: Where kinds are defined; a test may define others.
OF_THE_HOUSE = tuple(each.__name__ for each in (ev, opening, changes, afterwards, air))


def test_every_kind_of_entry_has_words() -> None:
    own = {kind for kind in codec.kinds() if kind.__module__ in OF_THE_HOUSE}
    assert set(WORDS) == own
    assert {type(event) for event, _ in TOLD} >= own


def test_quantities_in_either_system_and_of_any_unit() -> None:
    assert quantity(q(177.441, "ml"), Kind.VOLUME, System.US) == "6.0 fl oz"
    assert quantity(q(177.441, "ml"), Kind.VOLUME, System.METRIC) == "177 ml"
    assert quantity(q(200, "g"), Kind.VOLUME, System.US) == "200.0 g"
    assert quantity(Quantity(1, "furlong", "1 furlong\x1b[2J"), Kind.LENGTH, System.US) == (
        "1 furlong␛[2J"
    )
    assert quantity(None, Kind.VOLUME, System.US) == ""


def job() -> list[ev.Event]:
    return [
        opened(job="blue door", gun="A"),
        ev.EffluxTimed(n=0, at=moment(60), cup="Ford #4", seconds=99),
        ev.Voided(n=0, at=moment(65), target=2),
        ev.EffluxTimed(n=0, at=moment(70), cup="Ford #4", seconds=21),
        ev.CoatBegun(n=0, at=moment(100), part="hood", coat=1),
        ev.CoatEnded(n=0, at=moment(400), part="hood", coat=1),
        ev.CoatBegun(n=0, at=moment(1000), part="hood", coat=2, early_s=30),
        ev.FaultSeen(n=0, at=moment(1010), fault="runs"),
    ]


def test_a_job_as_text() -> None:
    text = told(*job(), ev.JobClosed(n=0, at=moment(9000), verdict="usable", next_time="thinner"))
    assert text == (
        "Job          blue door\n"
        "Coating      Demo clear, two-pack (demo: invented values)\n"
        "Verdict      usable, day 20254 t9000\n"
        "Next time    thinner\n"
        "Faults seen  runs and sags\n"
        "Parts        hood, door\n"
        "Opened       day 20254 t0\n"
        "Closed       day 20254 t9000\n"
        "Gun          A\n"
        "\n"
        "  From  invented\n"
        "  Last settings, weather, mix\n"
        "    efflux time  21.0 s in Ford #4\n"
        "  Not measured: weather, inlet pressure, delivery, fan width, pattern, pass speed, wet film\n"
        "  Coats and waits\n"
        "    hood: coat 1 begun day 20254 t100; sprayed in 5 min\n"
        "    hood: coat 2 begun day 20254 t1000, 10 min after coat 1 ended, 30.0 s too early, "
        "not ended\n"
        "    door: no coat\n"
        "\n"
        "Log\n"
        "  day 20254\n"
        "  1  t0  job opened: Demo clear, two-pack, hood, door\n"
        "  2  t60  voided: efflux time Ford #4: 99.0 s\n"
        "  3  t65  number 2 voided\n"
        "  4  t70  efflux time Ford #4: 21.0 s\n"
        "  5  t100  coat 1 on hood begun\n"
        "  6  t400  coat 1 on hood ended\n"
        "  7  t1000  coat 2 on hood begun, 30.0 s too early\n"
        "  8  t1010  fault seen: runs\n"
        "  9  t9000  job closed: usable, next time: thinner\n"
    )


def test_a_job_not_closed_says_so() -> None:
    assert "Verdict      none yet: this job is not closed\n" in told(*job())


def test_a_wait_over_a_restart_says_which_clock_it_is_from() -> None:
    after = Moment(AT.wall + 1000, 20.0, "boot 2")
    early = Moment(AT.wall - 1000, 30.0, "boot 3")
    text = told(
        opened(),
        ev.CoatBegun(n=0, at=moment(100), part="hood", coat=1),
        ev.CoatEnded(n=0, at=moment(400), part="hood", coat=1),
        ev.CoatBegun(n=0, at=after, part="hood", coat=2),
        ev.CoatEnded(n=0, at=early, part="hood", coat=2),
    )
    assert "10 min (wall clock, after a restart of the machine) after coat 1 ended" in text
    assert (
        "sprayed in 0.0 s (wall clock earlier than what was written down before: doubtful)" in text
    )


def test_a_coat_begun_while_the_clock_was_in_doubt_says_so() -> None:
    text = told(opened(), ev.CoatBegun(n=0, at=moment(1), part="hood", coat=1, doubtful=True))
    assert text.count("the clock in doubt") == 2, "among the entries and among the coats"


def test_what_was_amiss_with_a_coat_is_told_with_it() -> None:
    begun = ev.CoatBegun(
        n=0,
        at=moment(60),
        part="door",
        coat=1,
        early_s=30,
        amiss=("pot life over", "cup not timed"),
    )
    text = told(opened(), begun)
    assert text.count(", 30.0 s too early, amiss: pot life over, cup not timed") == 2


def test_a_new_day_is_told_once() -> None:
    text = told(opened(), note(0), ev.NoteMade(n=0, at=moment(86400), text="next day"))
    assert text.count("\n  day ") == 2


def test_what_is_wrong_with_the_log_comes_first() -> None:
    text = told(opened(), said=("Line 2 of the log is no entry.\x1b",))
    assert text.startswith("! Line 2 of the log is no entry.␛\n\nJob ")


def test_entries_without_an_opening_are_still_told() -> None:
    text = told(note(0, "alone"))
    assert text.startswith("This log holds no job: ") and "note: alone" in text
    assert told() != ""


HOSTILE = "\x1b[2J\x9b31m\x07\r\n\x00\u202e\u2066[/ x"


def shows(text: str) -> bool:
    """Whether nothing in the text acts unseen, line ends apart."""
    return all(
        char == "\n" or unicodedata.category(char) not in {"Cc", "Cf", "Cs", "Zl", "Zp"}
        for char in text
    )


def test_hostile_text_in_every_field_is_shown_and_does_nothing() -> None:
    def poison(value: object) -> object:
        if isinstance(value, str):
            return value if value in ("boot 1", "us") else HOSTILE
        if isinstance(value, dict):
            return {key: poison(each) if key != "event" else each for key, each in value.items()}
        return [poison(each) for each in value] if isinstance(value, list) else value

    events: list[ev.Event] = []
    for n, (event, _) in enumerate(TOLD, 1):
        if isinstance(event, ev.UnknownEvent):
            line = msgspec.json.encode({"event": HOSTILE, "n": n, "at": AT})
        else:
            line = msgspec.json.encode(poison(msgspec.json.decode(codec.encode(event))))
        events.append(msgspec.structs.replace(codec.decode(line), n=n))  # type: ignore[arg-type]
    text = report(events, System.US, time_of, date_of, [HOSTILE])
    assert shows(text)
    assert text.count("␛[2J") > 40 and "[/ x" in text
    summary = JobSummary(Path("a-b.jsonl"), HOSTILE, "", HOSTILE, (HOSTILE,), opened=AT)
    broken = JobSummary(Path("a\x1b.jsonl"), fault=HOSTILE)
    assert shows(jobs_table([summary, broken], date_of))
    assert len(jobs_table([summary, broken], date_of).splitlines()) == 4


@given(st.lists(some_events, max_size=10), st.sampled_from(System))
def test_any_events_are_told(events: list[ev.Event], system: System) -> None:
    text = told(opened(), *events, system=system)
    assert shows(text)
    entries = text[text.index("\nLog\n") + 1 :]
    days = 1 + sum(
        date_of(one.at) != date_of(two.at)
        for one, two in zip([opened(), *events], events, strict=False)
    )
    assert len(entries.splitlines()) == 1 + days + 1 + len(events)


def summary(end: str, **fields: object) -> JobSummary:
    given: dict[str, object] = {
        "profile_name": PROFILE.name,
        "parts": ("hood",),
        "opened": AT,
        "events": 12,
    }
    return JobSummary(Path(f"20250615-1506-demo-{end}.jsonl"), **(given | fields))  # type: ignore[arg-type]


def test_the_table_of_jobs() -> None:
    table = jobs_table(
        [
            summary("ab12"),
            summary("cd34", closed=AT, verdict="good", broken=2, profile_name="漆 coat"),
            JobSummary(Path("junk.jsonl"), fault="No line of it opens a job."),
        ],
        date_of,
    )
    assert table == (
        "Job        Opened     Result  Coating               Parts  Entries\n"
        "demo-ab12  day 20254  open    Demo clear, two-pack  hood   12\n"
        "demo-cd34  day 20254  good    漆 coat               hood   12, 2 broken\n"
        "\n"
        "! junk.jsonl: No line of it opens a job.\n"
    )


def test_a_job_goes_by_the_name_that_is_its_own_in_the_folder() -> None:
    longer = "20250615-1506-demo-ab12"
    table = jobs_table([summary("ab12", longer_name=longer), summary("cd34")], date_of)
    assert table.count(longer) == 1 and table.count("demo-cd34") == 1


def test_a_report_names_the_job_as_the_list_does() -> None:
    text = report([opened(job="2025-06-15-77b0")], System.METRIC, time_of, date_of, (), "demo-ab12")
    assert text.startswith("Job      demo-ab12\n") and "77b0" not in text


def test_no_jobs_and_only_broken_ones() -> None:
    assert jobs_table([], date_of) == "There are no jobs yet.\n"
    assert jobs_table([JobSummary(Path("x.jsonl"), fault="Why.")], date_of) == "! x.jsonl: Why.\n"


def test_the_rows_of_a_log_say_what_each_entry_alone_says_in_one_walk(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    events: list[ev.Event] = [*job(), ev.StepDone(n=0, at=AT, step="fresh-air")]
    events += [ev.AlarmAcknowledged(n=0, at=AT, alarm=f"coat:{n}:ready") for n in (6, 99, 10**30)]
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 1)]
    folded = fold(numbered)
    rows = list(map(teller(System.US, folded), folded.events))
    assert rows == [words(event, System.US, folded) for event in numbered]
    assert folded.void == {2}
    assert rows[9] == "alarm silenced: hood, coat 2 ready"
    # However many alarms there are, the entries are walked through once, and steps named once.
    asked: list[str] = []
    steps = event_words.steps_of
    monkeypatch.setattr(event_words, "steps_of", lambda job: (asked.append("steps"), steps(job))[1])
    many = fold([*numbered, *(ev.StepDone(n=n, at=AT, step="mix") for n in range(20, 320))])
    assert all(map(teller(System.US, many), many.events))
    assert asked == ["steps"]


def test_a_long_log_takes_as_much_longer_as_it_is(monkeypatch: pytest.MonkeyPatch) -> None:
    """Four times the entries, four times the walks over entries: a quadratic one makes it sixteen."""

    class Counted(tuple[ev.Event, ...]):
        walked = 0

        def __iter__(self) -> Iterator[ev.Event]:
            for event in super().__iter__():
                Counted.walked += 1
                yield event

        def __reversed__(self) -> Iterator[ev.Event]:
            Counted.walked += len(self)
            return reversed(tuple(super().__iter__()))

    def walked(count: int) -> int:
        alarms = [
            ev.AlarmAcknowledged(n=n, at=AT, alarm=f"coat:{n - 1}:ready") for n in range(2, count)
        ]
        folded = fold([opened(), *alarms])
        Counted.walked = 0
        counted = replace(folded, events=Counted(folded.events))  # type: ignore[arg-type]
        assert all(map(teller(System.US, counted), counted.events))
        return Counted.walked

    assert 0 < walked(400) <= 4.1 * walked(100)


def test_in_a_report_steps_alarms_and_cups_go_by_their_names() -> None:
    text = told(
        opened(),
        ev.StepDone(n=0, at=AT, step="fresh-air"),
        ev.EffluxTimed(n=0, at=AT, cup="ford-4", seconds=21.4),
        ev.CoatBegun(n=0, at=AT, part="hood", coat=1),
        ev.CoatEnded(n=0, at=AT, part="hood", coat=1),
        ev.AlarmAcknowledged(n=0, at=AT, alarm="coat:5:ready"),
        ev.AlarmAcknowledged(n=0, at=AT, alarm="dust_free:5:ready"),
        ev.AlarmAcknowledged(n=0, at=AT, alarm="coat:99:ready"),
    )
    assert "step done: Fresh air" in text
    assert "efflux time Ford #4: 21.4 s" in text and "21.4 s in Ford #4" in text
    assert "alarm silenced: hood, coat 2 ready" in text
    assert "alarm silenced: hood, dust-free ready" in text
    assert "alarm silenced: coat:99:ready" in text
