"""The notch gauge: intervals, verdicts, what to change, what is carried on."""

from __future__ import annotations

import msgspec
import pytest

from booth.instruments import film as gauge
from booth.instruments.film import next_tooth, usual_part
from booth.log.events import (
    BatchMixed,
    CatchMade,
    CoatBegun,
    CoatEnded,
    Event,
    FanSet,
    FilmRead,
    PassTimed,
    Pour,
    Voided,
)
from booth.profile.model import CoatPlan, Film, Gun, Mix, MixPart, Range
from booth.units import Quantity, System
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, profile, q

ASKED = profile(
    gun=Gun(hvlp=True),
    film=Film(coats=Range(3, 3), wet_um=Range(40, 60), volume_solids_percent=Range(50, 50)),
)
CATCH = CatchMade(n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
FAN = FanSet(n=0, at=at(0), width=q(250, "mm"))
PASS = PassTimed(n=0, at=at(0), length=q(1.2, "m"), seconds=3.0)
BEGUN = CoatBegun(n=0, at=at(0), part="hood", coat=1)
ENDED = CoatEnded(n=0, at=at(60), part="hood", coat=1)
SETTINGS: tuple[Event, ...] = (CATCH, FAN, PASS, BEGUN)


def read(low: float, high: float, part: str = "hood", coat: int | None = 1) -> FilmRead:
    return FilmRead(
        n=0, at=at(61), part=part, coat=coat, last_wetted=q(low, "um"), first_dry=q(high, "um")
    )


@pytest.mark.parametrize(
    ("low", "high", "said", "tone"),
    [
        (20, 30, "TOO THIN", Tone.CAUTION),
        (30, 40, "TOO THIN", Tone.CAUTION),
        (30, 50, "CANNOT TELL", Tone.CAUTION),
        (45, 55, "IN RANGE", Tone.GOOD),
        (50, 75, "CANNOT TELL", Tone.CAUTION),
        (75, 100, "TOO THICK", Tone.LATE),
    ],
)
def test_verdicts_only_where_the_whole_interval_says_so(
    low: float, high: float, said: str, tone: Tone
) -> None:
    # ASTM D4414: the film lies between the last wetted and the first dry tooth.
    values = {"part": "hood", "wetted": q(low, "um"), "dry": q(high, "um")}
    shown = gauge.Film().readout(context_of(BEGUN, profile=ASKED), values)
    assert (shown.word, shown.tone, shown.figure) == (said, tone, f"{low}-{high}")
    assert shown.label == "hood, coat 1: this place"
    kept = gauge.Film().readout(context_of(BEGUN, read(low, high), profile=ASKED), {"part": "hood"})
    assert (kept.word, kept.figure) == (said, f"{low}-{high}")


def test_each_coat_is_held_against_its_own_wet_film() -> None:
    coats = (CoatPlan("tack coat", wet_um=Range(15, 25)), CoatPlan("full coat"))
    several = msgspec.structs.replace(ASKED, coats=coats)
    on = {"part": "hood"}
    tack = gauge.Film().readout(context_of(BEGUN, read(15, 25), profile=several), on)
    assert (tack.word, tack.lines[0]) == ("IN RANGE", "profile: 15 to 25 µm wet, tack coat")
    second = CoatBegun(n=0, at=at(600), part="hood", coat=2)
    laid = (BEGUN, ENDED, second, read(15, 25, coat=2))
    full = gauge.Film().readout(context_of(*laid, profile=several), on)
    assert full.word == "TOO THIN" and "profile: 40 to 60 µm wet, full coat" in full.lines


def test_the_mean_of_several_places_is_an_interval_too() -> None:
    context = context_of(BEGUN, read(40, 50), read(50, 60), profile=ASKED)
    shown = gauge.Film().readout(context, {"part": "hood"})
    assert (shown.figure, shown.word) == ("45-55", "IN RANGE")
    assert shown.label == "hood, coat 1: mean of 2"
    assert "2 places: 40-60 µm" in shown.lines


def test_dry_film_by_solids_and_thinner() -> None:
    # Organic Finishing Guidebook 2012-13 p. 615: 4 mil wet, 50 % solids, 25 % thinner: 1.6 mil.
    pours = (Pour("clear", q(400, "ml")), Pour("thinner", q(100, "ml")))
    batch = BatchMixed(n=0, at=at(0), batch=1, pours=pours)
    values = {"part": "hood", "wetted": q(4 * 25.4, "um"), "dry": q(5 * 25.4, "um")}
    shown = gauge.Film().readout(context_of(batch, BEGUN, profile=ASKED, system=System.US), values)
    assert "dries to 1.6 to 2.0 mil (volume solids 50 %, thinner 25 %)" in shown.lines
    unknown = gauge.Film().readout(context_of(BEGUN, profile=ASKED, system=System.US), values)
    assert any("2.0 to 2.5 mil" in line and "not counted" in line for line in unknown.lines)


def test_the_film_in_all_is_said_by_part_and_a_coat_not_read_too() -> None:
    # 45 to 55 um wet at 50 %: 22.5 to 27.5 dry (Organic Finishing Guidebook 2012-13 p. 615).
    film = msgspec.structs.replace(ASKED.film, dry_total_um=Range(55, 80))
    bare = profile(film=film, mix=Mix(parts=(MixPart("paint", 1),)))
    coats: list[Event] = [msgspec.structs.replace(e, part="hood") for e in (BEGUN, ENDED)]
    desk = AtBench("film", profile=bare, before=lambda _: coats)
    assert "in all not known of 55 to 80 µm; coat 1 not read" in desk.text
    desk.type("45")
    desk.press("enter")
    desk.type("55")
    desk.press("enter")
    assert "in all about 22 to 28 of 55 to 80 µm dry after 1 coat" in desk.text
    desk.press("space")  # the other part, on which nothing lies
    assert desk.row("part").given == "door"
    assert not any(line.startswith("in all") for line in desk.readout.lines)


def test_what_landed_is_said_and_what_to_change_is_a_speed() -> None:
    # 200 ml/min, 250 mm, 50 %, 400 mm/s: 26 to 32.5 um is 39 to 48.75 %; 50 um asked for.
    context = context_of(*SETTINGS, read(26, 32.5), profile=ASKED)
    shown = gauge.Film().readout(context, {"part": "hood"})
    assert shown.word == "TOO THIN"
    assert any(
        line.startswith("landed on the part: 39 to 49 %, used for pace") for line in shown.lines
    )
    # The film goes as 1 / speed: the middle, 29.25 um, becomes 50 at 400 x 29.25 / 50 = 234 mm/s.
    assert any("slower, about 0.23 m/s (was 0.40 m/s)" in line for line in shown.lines)
    thick = gauge.Film().readout(
        context_of(*SETTINGS, read(65, 66), profile=ASKED), {"part": "hood"}
    )
    assert any("faster, about 0.52 m/s (was 0.40 m/s)" in line for line in thick.lines)


def test_what_cannot_be_told_says_what_is_missing() -> None:
    shown = gauge.Film().readout(
        context_of(CATCH, FAN, BEGUN, read(30, 40), profile=ASKED), {"part": "hood"}
    )
    assert any("No pass was timed" in line for line in shown.lines)
    assert shown.lines[0] == "Next coat: slower, at the same distance."
    assert "Or the needle out a little, and catch again." in shown.lines


def test_a_target_may_be_missing() -> None:
    bare = profile(film=Film(coats=Range(1, 1)))
    shown = gauge.Film().readout(context_of(BEGUN, read(30, 40), profile=bare), {"part": "hood"})
    assert (shown.tone, shown.word, shown.figure) == (Tone.PLAIN, "", "30-40")


def test_before_a_coat_and_with_half_a_reading() -> None:
    none = gauge.Film().readout(context_of(profile=ASKED), {"part": "door"})
    assert (none.figure, none.label) == ("40-60", "door, no coat yet: wet film asked for")
    assert (none.tone, none.shown_word) == (Tone.PLAIN, "MEASURE") and none.wanted
    assert none.lines[-1].startswith("A reading belongs to a coat")
    bare = gauge.Film().readout(
        context_of(profile=profile(film=Film(coats=Range(1, 1)))), {"part": "door"}
    )
    assert (bare.figure, bare.label) == ("", "door, no coat yet")
    half = gauge.Film().readout(
        context_of(BEGUN, profile=ASKED), {"part": "hood", "wetted": q(50, "um")}
    )
    assert half.figure == "over 50" and half.lines == ("Which tooth stayed dry?",)
    upside = gauge.Film().readout(
        context_of(BEGUN, profile=ASKED),
        {"part": "hood", "wetted": q(50, "um"), "dry": q(40, "um")},
    )
    assert upside.figure == "" and upside.tone is Tone.CAUTION


def test_the_next_tooth_is_this_gauges_own_or_the_standards() -> None:
    # Example gauge of ASTM D4414-95(2020) 7.1.2: by 0.5 to 6 mil, by 1 to 10, by 2 to 30.
    for mil, after in ((0, 0.5), (2, 2.5), (6, 7), (10, 12)):
        assert next_tooth(context_of(), mil * 25.4) == Quantity(
            pytest.approx(after * 25.4), "um", f"{after:g} mil"
        )
    assert next_tooth(context_of(), None) is None
    assert next_tooth(context_of(), 55.0) is None
    assert next_tooth(context_of(read(50, 75)), 50.0) == q(75, "um")


def test_the_part_coated_last_is_the_wet_one() -> None:
    assert usual_part(context_of()) == "door"
    assert usual_part(context_of(BEGUN)) == "hood"


def wet_hood() -> AtBench:
    """A bench at the gauge in US units, one coat on the hood."""
    return AtBench("film", profile=ASKED, before=lambda clock: [BEGUN, ENDED], system=System.US)


def test_keys_to_disk_part_by_part() -> None:
    b = wet_hood()
    assert b.marked == "wetted" and "hood, coat 1" in b.text
    b.type("2")
    # Offered: the next tooth of the standard's gauge.
    assert b.row("dry").given == q(63.5, "um", "2.5 mil") and b.readout.figure == "2.0-2.5"
    assert b.keys["Enter"] == "on: First dry"
    b.press("enter")
    assert b.keys["Enter"] == "keep"
    b.press("enter")
    kept = b.log[-1]
    assert isinstance(kept, FilmRead)
    assert (kept.part, kept.coat) == ("hood", 1)
    assert kept.last_wetted == q(50.8, "um", "2") and kept.first_dry == q(63.5, "um", "2.5 mil")
    assert b.marked == "wetted"
    b.type("55 um")
    b.press("enter")
    assert b.marked == "dry"
    b.press("enter")
    assert b.marked == "dry" and len(b.log) == 3  # no such tooth on that gauge: it has to be typed
    b.type("50 um")
    b.press("enter")
    assert len(b.log) == 3 and "first dry tooth must be above 2.165 mil" in b.text
    b.press(*["backspace"] * 5)
    b.type("60 um")
    b.press("enter")
    assert len(b.log) == 4
    assert b.keys["Space"] == "next part: door"
    b.press("space")
    assert "door, no coat yet" in b.text
    b.press("space", "backspace")
    assert isinstance(b.log[-1], Voided)
    assert b.readout.figure == "2.0-2.5"


def test_two_teeth_are_one_reading() -> None:
    b = wet_hood()
    for tooth in "34":
        b.type(tooth)
        b.press("enter")
    (kept,) = b.job.films
    assert (kept.last_wetted, kept.first_dry) == (q(76.2, "um", "3"), q(101.6, "um", "4"))


def test_backspace_voids_readings_of_the_chosen_part_only() -> None:
    b = wet_hood()
    b.type("2")
    b.press("enter", "enter", "space", "backspace")  # the door has no reading
    assert len(b.job.films) == 1 and "Bksp" not in b.keys
    b.press("space", "backspace")
    assert b.job.films == ()
    assert b.said == (
        "Voided: wet film on hood, coat 1: over 2.0 mil, under 2.5 mil. Backspace brings it back."
    )
    b.press("backspace")
    assert len(b.job.films) == 1


def test_a_reading_half_typed_stays_with_its_part() -> None:
    b = wet_hood()
    b.type("3 mil")
    assert b.rows.values["part"] == "hood" and b.row("wetted").text == "3 mil"
    b.press("enter", "enter", "space")
    assert [each.part for each in b.job.films] == ["hood"] and b.rows.values["part"] == "door"
    alone = AtBench("film", profile=ASKED, parts=("hood",))
    assert "Space" not in alone.keys and [row.key for row in alone.rows.sight] == ["wetted", "dry"]


def test_a_wetted_tooth_is_asked_for_where_only_the_dry_one_is_typed() -> None:
    b = wet_hood()
    b.fill("dry", "4")
    b.press("enter")
    assert b.marked == "wetted" and b.job.films == ()


def test_enter_leads_back_to_the_coats_between_two_of_them() -> None:
    b = wet_hood()
    assert b.keys["Enter"] == "back to the coats"
    b.type("3")
    assert b.keys["Enter"] == "on: First dry"
    b.press("enter", "enter", "enter")
    assert b.bench.step.kind == "coats" and len(b.job.films) == 1


def test_a_part_named_like_markup_is_shown_as_it_is() -> None:
    b = AtBench("film", profile=ASKED, parts=("[/ x [bold]", "b"))
    assert "[/ x [bold], no coat yet" in b.text
