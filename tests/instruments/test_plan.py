"""The plan: the time of the last coat, what cannot be met, how it moves."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.clock import local_day_hhmm, local_hhmm
from booth.instruments.plan import ticks
from booth.log import events as ev
from booth.moment import Moment, later
from booth.profile.model import Limits, Mix, MixPart, Range, WaitRule, Waits
from booth.shop.model import Compressor, Gun, Shop
from booth.words.shown import Timeline, Tone
from tests.instruments.at_bench import AtBench, in_mild_weather
from tests.job.make import one_time, profile
from tests.manual_clock import ManualClock


def line_of(bench: AtBench) -> Timeline:
    (line,) = bench.bench.instrument.picture(bench.now, bench.rows.values)
    assert isinstance(line, Timeline)
    return line


def test_the_last_coat_by_the_clock_and_it_moves_with_the_job() -> None:
    bench = AtBench("plan", before=in_mild_weather)
    start = bench.clock.now()
    # Two parts, three coats of five minutes, 600 s of flash-off: 300 + 600 + 300 + 600 + 300
    # and 300 more for the second part: 40 minutes.
    assert bench.readout.figure == local_hhmm(later(start, 2400))
    # Nothing approves that rests on a guess.
    assert (bench.readout.shown_word, bench.readout.tone) == ("FITS BY GUESS", Tone.PLAIN)
    assert f"can be handled {local_day_hhmm(later(start, 2400 + 8 * 3600), start)}" in bench.text
    # Nothing is begun for ten minutes: everything is ten minutes later.
    bench.pass_time(600)
    assert bench.readout.figure == local_hhmm(later(start, 3000))


def test_minutes_for_a_coat_are_typed() -> None:
    bench = AtBench("plan", before=in_mild_weather)
    start = bench.clock.now()
    bench.type("10 min")
    # 600 a coat: door 0-600, hood 600-1200, door 1200-1800 and so on without a pause.
    assert bench.readout.figure == local_hhmm(later(start, 3600))
    bench.press("enter")
    assert [type(event) for event in bench.log] == [ev.WeatherRead, ev.StepDone]


def test_what_has_been_is_on_the_line() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        begun = ev.CoatBegun(n=0, at=clock.now(), part="door", coat=1)
        clock.advance(200)
        ended = ev.CoatEnded(n=0, at=clock.now(), part="door", coat=1)
        return [*in_mild_weather(clock), begun, ended]

    bench = AtBench("plan", before=before)
    door, hood, pot = line_of(bench).rows
    assert (door.name, hood.name, pot.name) == ("door", "hood", "pot life")
    first = door.blocks[0]
    assert (first.start_s, first.end_s, first.done, first.text) == (-200, 0, True, "1")
    assert [block.text for block in hood.blocks if block.text] == ["1", "2", "3"]
    # The hood was not sprayed yet: it is reckoned with what the door took.
    coat = next(block for block in hood.blocks if block.text == "1")
    assert coat.end_s - coat.start_s == 200


def test_a_pot_life_too_short_is_said() -> None:
    parts = (MixPart("a", 2), MixPart("b", 1))
    short = Mix(parts=parts, pot_life=one_time(1500))
    bench = AtBench("plan", profile=profile(mix=short), before=in_mild_weather)
    assert bench.readout.shown_word == "POT LIFE SHORT"
    # The whole takes 2400 s, 900 more than the pot life.
    assert "15 min too early" in bench.readout.lines[0]


def test_a_window_that_cannot_be_met_is_said() -> None:
    tight = Waits(flash_off=one_time(600), recoat_closes=one_time(660))

    def before(clock: ManualClock) -> Sequence[ev.Event]:
        found: list[ev.Event] = [*in_mild_weather(clock)]
        for part in ("door", "hood"):
            found.append(ev.CoatBegun(n=0, at=clock.now(), part=part, coat=1))
            clock.advance(30)
            found.append(ev.CoatEnded(n=0, at=clock.now(), part=part, coat=1))
        clock.advance(640)
        found.append(ev.CoatBegun(n=0, at=clock.now(), part="door", coat=2))
        return found

    bench = AtBench("plan", profile=profile(waits=tight), before=before)
    # The hood's window closes in 20 s; the door is being sprayed for 30 s more.
    assert bench.readout.shown_word == "WINDOW MISSED"
    assert bench.readout.lines[0].startswith("hood: its recoat window closes")
    assert ", 10 s before coat 2" in bench.readout.lines[0]


def test_all_coats_on() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        found: list[ev.Event] = []
        for coat in (1, 2, 3):
            found.append(ev.CoatBegun(n=0, at=clock.now(), part="door", coat=coat))
            clock.advance(60)
            found.append(ev.CoatEnded(n=0, at=clock.now(), part="door", coat=coat))
            clock.advance(700)
        return found

    bench = AtBench("plan", parts=("door",), before=before)
    assert bench.readout.shown_word == "ALL COATS ARE ON"
    assert bench.readout.figure == local_hhmm(later(bench.clock.now(), -700))


def test_every_part_has_a_row_and_stands_ready_between_its_coats() -> None:
    parts = ("door", "hood", "left fender", "right fender")
    bench = AtBench("plan", parts=parts, before=in_mild_weather)
    line = line_of(bench)
    assert [row.name for row in line.rows] == [*parts, "pot life"]
    # Four parts take longer than one flashes off: each stands ready before its next coat.
    spray = [(Tone.RUNNING, str(coat)) for coat in (1, 2, 3)]
    between = [(Tone.WAIT, ""), (Tone.READY, "")]
    found = [(block.tone, block.text) for block in line.rows[0].blocks]
    assert found == [spray[0], *between, spray[1], *between, spray[2]]
    assert all(row.note.startswith("last coat ") for row in line.rows[:4])
    assert len(line.ticks) >= 4 and all(0 <= second <= line.end_s for second, _ in line.ticks)


def test_nothing_is_kept_and_nothing_is_voided() -> None:
    bench = AtBench("plan")
    assert bench.keys["Enter"] == "next step" and "Bksp" not in bench.keys
    bench.press("backspace")
    assert bench.log == []
    bench.press("enter")
    assert [type(event) for event in bench.log] == [ev.StepDone]


def test_a_time_that_cannot_be_understood_holds_the_step() -> None:
    bench = AtBench("plan")
    bench.type("5 psi")
    bench.press("enter")
    assert bench.log == [] and "pressure" in bench.said


def test_ticks_fall_on_round_times_of_day() -> None:
    now = Moment(wall=1_750_000_040.0, continuous=0.0, boot="a")

    def local(moment: Moment) -> str:
        minutes = int((moment.wall - 1_750_000_040.0 + 20) // 60) + 15 * 60 + 6
        return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"

    # It is 15:06:20, so a quarter past is 520 s away; an hour in 40 cells has room for four.
    assert ticks(now, local, 0.0, 3600.0, 40) == (
        (pytest.approx(520), "15:15"),
        (pytest.approx(1420), "15:30"),
        (pytest.approx(2320), "15:45"),
        (pytest.approx(3220), "16:00"),
    )
    assert ticks(now, lambda _: "--:--", 0.0, 3600.0, 40) == ()


def lines_of(bench: AtBench) -> str:
    return "\n".join(bench.readout.lines)


def test_without_the_weather_nothing_fits_and_no_time_is_told() -> None:
    bench = AtBench("plan")
    assert bench.readout.figure == "" and bench.readout.shown_word == "NOT KNOWN"
    assert bench.readout.tone is Tone.CAUTION
    assert "Read them at the step Weather." in bench.text and "can be handled" not in bench.text
    assert "door: it is not known when coat 2 may go on; a touch test decides." in bench.text
    assert "to spare" not in bench.text and "IT FITS" not in bench.text


def test_a_wait_that_only_the_eye_ends_is_not_known() -> None:
    sheet = profile(waits=Waits(flash_off=WaitRule(until="matt all over")))
    bench = AtBench("plan", profile=sheet, before=in_mild_weather)
    assert (bench.readout.shown_word, bench.readout.tone) == ("NOT KNOWN", Tone.CAUTION)


def test_outside_the_limits_it_does_not_fit() -> None:
    sheet = profile(limits=Limits(part_c=Range(24, 30)))
    bench = AtBench("plan", profile=sheet, before=in_mild_weather)
    assert (bench.readout.shown_word, bench.readout.tone) == ("OUTSIDE LIMITS", Tone.CAUTION)
    assert "The part is at 21.0 °C; the product asks for 24.0 to 30.0 °C." in lines_of(bench)


def test_it_fits_until_the_reading_is_an_hour_old() -> None:
    bench = AtBench("plan", before=in_mild_weather)
    bench.type("5 min")
    assert (bench.readout.shown_word, bench.readout.tone) == ("IT FITS", Tone.GOOD)
    bench.pass_time(3601)
    assert (bench.readout.shown_word, bench.readout.tone) == ("CHECK", Tone.CAUTION)
    assert "The weather was read 1 h ago. Read it again." in lines_of(bench)


def test_induction_that_is_not_known_is_not_waited_out() -> None:
    mix = Mix(parts=(MixPart("a", 2), MixPart("b", 1)), induction=one_time(1200))
    sheet = profile(mix=mix, waits=Waits())
    assert AtBench("plan", profile=sheet).readout.shown_word == "NOT KNOWN"
    told = lines_of(AtBench("plan", profile=sheet))
    assert "how long it has to stand is not known" in told


def test_induction_stands_before_the_pot_life_it_is_a_part_of() -> None:
    parts = (MixPart("a", 2), MixPart("b", 1))
    mix = Mix(parts=parts, induction=one_time(1200), pot_life=one_time(4 * 3600))
    bench = AtBench("plan", profile=profile(mix=mix), before=in_mild_weather)
    stands, lives = line_of(bench).rows[-1].blocks
    assert (stands.tone, stands.start_s, stands.end_s) == (Tone.WAIT, 0, 1200)
    assert (lives.tone, lives.start_s) == (Tone.GOOD, 1200)


def test_a_compressor_that_falls_behind_is_said() -> None:
    weak = Shop(
        guns=(Gun("blue gun", air_l_min=300),),
        compressor=Compressor(receiver_l=24, flow_l_min=100, cut_in_kpa=400, cut_out_kpa=800),
    )
    bench = AtBench("plan", before=in_mild_weather, shop=weak)
    assert (bench.readout.shown_word, bench.readout.tone) == ("CHECK", Tone.CAUTION)
    assert "Spray 3 s at most, then wait about" in lines_of(bench)
