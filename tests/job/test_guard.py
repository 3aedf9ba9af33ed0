"""The guard at the trigger: each cause by itself, the worst first, nothing in a good job.

Dew points behind the figures are those of the trade's own tests, against psychrometric tables; what is
grave and what is not is this program's own choice, as are an hour and four for a reading.
"""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
import pytest

from booth.job.amiss import Amiss, Cause, Grave
from booth.job.coating import begin_coat
from booth.job.guard import amiss
from booth.log.codec import decode, encode
from booth.log.events import (
    AirRead,
    BatchFinished,
    BatchMixed,
    CatchMade,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    Event,
    FanSet,
    JobOpened,
    Pour,
    ThinnerAdded,
    TouchTried,
    WeatherRead,
)
from booth.log.fold import Job, fold
from booth.profile.model import (
    AtTemperature,
    CoatPlan,
    Film,
    Gun,
    Limits,
    Mix,
    MixPart,
    Profile,
    Range,
    Thinner,
    WaitRule,
    Waits,
)
from booth.shop.model import Compressor, Shop
from booth.shop.model import Gun as ShopGun
from booth.units import System
from booth.words.event_words import words
from booth.words.guard_words import SAID, deed, line, sentence, weather_pieces
from tests.job.make import START, at, mild, one_time, profile, q

PARTS = ("door", "tank")
#: A coat began and ended on the door, ten minutes of flash-off ago, and the mix was timed after it.
LIMITS = Limits(
    air_c=Range(15, 30), part_c=Range(15, 30), humidity_percent=Range(None, 80), dew_margin_c=3.0
)
MIX = Mix(
    parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.05)),
    thinner=Thinner("thinner", Range(10, 10), 15, 0.8),
    pot_life=one_time(4 * 3600),
    induction=one_time(1200),
)
GUN = Gun(
    inlet_kpa=Range(180, 210),
    delivery_ml_min=Range(170, 240),
    tip_mm=Range(1.6, 1.8),
    fan_mm=Range(200, 250),
    distance_mm=Range(150, 200),
)
SHEET = profile(limits=LIMITS, mix=MIX, gun=GUN, film=Film(coats=Range(2, 2)))
SHOP = Shop(guns=(ShopGun("blue gun", tip_mm=1.7, air_l_min=300),))


def batch(n: int = 3, seconds: float = 0.0, number: int = 1) -> BatchMixed:
    pours = (Pour("clear", q(200, "ml")), Pour("hardener", q(100, "ml")))
    return BatchMixed(n=n, at=at(seconds), batch=number, pours=pours, total=q(300, "ml"))


def run(seconds: float = 22.0, cup: str = "ford-4", n: int = 5) -> EffluxTimed:
    return EffluxTimed(n=n, at=at(1300), cup=cup, seconds=seconds)


def catch(delivery: float = 200.0, n: int = 6, **more: object) -> CatchMade:
    given = {"inlet": q(195, "kPa"), **more}
    return CatchMade(
        n=n, at=at(1350), seconds=60, amount=q(delivery, "ml"), delivery_ml_min=delivery, **given
    )


def coat(part: str = "door", number: int = 1, begins: float = 1400.0, n: int = 10) -> list[Event]:
    return [
        CoatBegun(n=n, at=at(begins), part=part, coat=number),
        CoatEnded(n=n + 1, at=at(begins + 100), part=part, coat=number),
    ]


#: Everything is read, mixed, stood, timed, caught and inside its limits; nobody sprays.
GOOD: tuple[Event, ...] = (
    mild(2),
    batch(3),
    ThinnerAdded(n=4, at=at(1250), amount=q(20, "ml"), remaining=q(300, "ml")),
    run(),
    catch(),
    AirRead(n=7, at=at(1360), inlet=q(200, "kPa")),
    FanSet(n=8, at=at(1370), width=q(220, "mm"), distance=q(180, "mm")),
)


def job_of(events: Sequence[Event], sheet: Profile = SHEET, shop: Shop = SHOP) -> Job:
    opened = JobOpened(
        n=1,
        at=START,
        job="trial",
        profile=sheet,
        parts=PARTS,
        gun="blue gun",
        shop=msgspec.to_builtins(shop),
    )
    return fold([opened, *sorted(events, key=lambda each: each.n)])


def found(
    *changes: Event,
    now: float = 1400.0,
    without: type[Event] | None = None,
    part: str = "door",
    sheet: Profile = SHEET,
    shop: Shop = SHOP,
) -> tuple[Amiss, ...]:
    """What is amiss in the good job with these entries in place of those of the same kind."""
    gone = {type(each) for each in changes} - {CoatBegun, CoatEnded, TouchTried}
    kept = [each for each in GOOD if type(each) not in gone and not isinstance(each, without or ())]
    return amiss(job_of([*kept, *changes], sheet, shop), part, at(now))


def test_nothing_is_amiss_in_a_good_job() -> None:
    assert found() == ()
    # Nor with the second coat, when the wait of the first is over: 600 s after 1500 s.
    assert found(*coat(), now=2100.5) == ()


def weather(**changes: float) -> WeatherRead:
    return mild(2, **changes)


WEAK = Shop(
    guns=SHOP.guns,
    compressor=Compressor(receiver_l=24, flow_l_min=100, cut_in_kpa=400, cut_out_kpa=800),
)
LATE_SHEET = msgspec.structs.replace(
    SHEET, waits=Waits(flash_off=one_time(600), recoat_closes=one_time(3600))
)
NO_WAIT_SHEET = msgspec.structs.replace(SHEET, waits=Waits())
#: No time at any temperature that could be carried over to today: a window that only time opens.
UNKNOWN_WINDOW_SHEET = msgspec.structs.replace(
    SHEET, waits=Waits(recoat_opens=WaitRule((AtTemperature(None, 16 * 3600.0),)))
)
OWN = CoatPlan(name="drop coat", times=Range(1, 1), inlet_kpa=Range(120, 150))
DROP = msgspec.structs.replace(SHEET, film=Film(), coats=(CoatPlan(name="medium coat"), OWN))

#: One cause each: what is done, when a coat would begin, how grave it is, its words.
CASES = {
    "part cold": (
        # Dew point of 21 C and 50 %: 10.2 C (psychrometric charts); 14 C lies 3.8 K over it.
        {"changes": [weather(part=14)]},
        Cause.PART,
        Grave.SPOILS,
        "The part is at 14.0 °C; the product asks for 15.0 to 30.0 °C. "
        "Warm the part, then read again.",
    ),
    "air hot": (
        {"changes": [weather(air=31, part=22, humidity=30)]},
        Cause.AIR,
        Grave.SPOILS,
        "The air is at 31.0 °C; the product asks for 15.0 to 30.0 °C. "
        "Wait for cooler air, then read again.",
    ),
    "damp": (
        # Dew point of 21 C and 81 %: 17.6 C, Magnus form; 24 C lies 6.4 K over it.
        {"changes": [weather(part=24, humidity=81)]},
        Cause.HUMIDITY,
        Grave.SPOILS,
        "Humidity is 81 %; the product asks for up to 80 %. Dry or warm the air, then read again.",
    ),
    "dew margin": (
        # Dew point of 20 C and 70 %: 14.4 C by the Magnus form (psychrometric charts: 14.4).
        {"changes": [weather(air=20, humidity=70, part=15.3)]},
        Cause.DEW_MARGIN,
        Grave.SPOILS,
        "The part is 0.9 °C over the dew point; it has to be at least 3.0 °C. "
        "Warm the part or dry the air, then read again.",
    ),
    "condensation": (
        {"changes": [weather(air=26, humidity=75, part=20)]},
        Cause.CONDENSATION,
        Grave.SPOILS,
        "Water condenses on the part: it is 1.2 °C under the dew point. "
        "Warm the part or dry the air, then read again.",
    ),
    "weather never read": (
        {"without": WeatherRead, "sheet": profile(limits=LIMITS, gun=GUN)},
        Cause.NOT_READ,
        Grave.MAY_SPOIL,
        "Air, humidity and the part were not read. Read them at the step Weather.",
    ),
    "a reading of an hour": (
        {"now": 3601.0},
        Cause.OLD,
        Grave.LOOK,
        "The weather was read 1 h ago. Read it again.",
    ),
    "induction": (
        {"now": 60.0},
        Cause.INDUCTION,
        Grave.SPOILS,
        "batch 1: it has to stand another 19 min before use. Let it stand (induction).",
    ),
    "pot life over": (
        {"changes": [mild(2, 4 * 3600)], "now": 4 * 3600 + 90.0},
        Cause.POT_LIFE,
        Grave.SPOILS,
        "batch 1: its pot life was over 1 min 30 s ago. Do not spray it: mix a fresh batch.",
    ),
    "pot life nearly over": (
        # The last half hour of four hours, or the last fifth of less.
        {"changes": [mild(2, 3 * 3600)], "now": 3.75 * 3600},
        Cause.POT_LIFE_ENDS,
        Grave.MAY_SPOIL,
        "batch 1: its pot life is over in 15 min. Spray until then, or mix a fresh batch.",
    ),
    "no batch": (
        {"changes": [BatchFinished(n=9, at=at(1300), batch=1)]},
        Cause.NO_BATCH,
        Grave.LOOK,
        "No batch in use is noted: no pot life is counted. Note it at the step Mix.",
    ),
    "thinner": (
        # 60 ml into 300 ml of mix without any are 20 % of the coating.
        {"changes": [ThinnerAdded(n=4, at=at(9), amount=q(60, "ml"), remaining=q(300, "ml"))]},
        Cause.THINNER,
        Grave.MAY_SPOIL,
        "The mix has 20 % thinner; the limit is 15 %. Add unthinned mix, or mix a fresh batch.",
    ),
    "too thick": (
        {"changes": [run(27.0)]},
        Cause.CUP,
        Grave.MAY_SPOIL,
        "The cup ran out in 27.0 s; the target is 20.0 s to 24.0 s. Too thick: thin it, time it again.",
    ),
    "too thin": (
        {"changes": [run(17.0)]},
        Cause.CUP,
        Grave.MAY_SPOIL,
        "The cup ran out in 17.0 s; the target is 20.0 s to 24.0 s. "
        "Too thin: add unthinned mix, time it again.",
    ),
    "not timed": (
        {"without": EffluxTimed},
        Cause.NOT_TIMED,
        Grave.LOOK,
        "The mix as it is now was not timed in a Ford #4. Time the cup.",
    ),
    "delivery": (
        {"changes": [catch(300.0)]},
        Cause.DELIVERY,
        Grave.MAY_SPOIL,
        "The catch gave 300 ml/min; the product asks for 170 to 240 ml/min. "
        "Close the needle, catch again.",
    ),
    "inlet of the catch": (
        {"changes": [catch(inlet=q(400, "kPa"))], "without": AirRead},
        Cause.INLET,
        Grave.MAY_SPOIL,
        "The inlet has 4.00 bar; the product asks for 1.80 to 2.10 bar. "
        "Turn the air down, trigger pulled.",
    ),
    "inlet of this coat": (
        {"changes": coat(), "now": 2200.0, "sheet": DROP},
        Cause.INLET,
        Grave.MAY_SPOIL,
        "The inlet has 2.00 bar; drop coat asks for 1.20 to 1.50 bar. "
        "Turn the air down, trigger pulled.",
    ),
    "tip of the gun": (
        {"shop": Shop(guns=(ShopGun("blue gun", tip_mm=1.4),))},
        Cause.TIP,
        Grave.LOOK,
        "The tip is 1.4 mm; the product asks for 1.6 to 1.8 mm. "
        "Change the tip, or catch and look at the pattern.",
    ),
    "tip of the catch": (
        {"changes": [catch(tip=q(1.2, "mm"))]},
        Cause.TIP,
        Grave.LOOK,
        "The tip is 1.2 mm; the product asks for 1.6 to 1.8 mm. "
        "Change the tip, or catch and look at the pattern.",
    ),
    "fan": (
        {"changes": [FanSet(n=8, at=at(9), width=q(300, "mm"), distance=q(180, "mm"))]},
        Cause.FAN,
        Grave.LOOK,
        "The fan is 300 mm wide; the product asks for 200 to 250 mm. "
        "Close the fan, shoot paper again.",
    ),
    "distance": (
        {"changes": [FanSet(n=8, at=at(9), width=q(220, "mm"), distance=q(120, "mm"))]},
        Cause.DISTANCE,
        Grave.LOOK,
        "The distance is 120 mm; the product asks for 150 to 200 mm. Hold the gun further off.",
    ),
    "early": (
        {"changes": coat(), "now": 1560.0},
        Cause.EARLY,
        Grave.SPOILS,
        "The wait before coat 2 lasts another 9 min. Wait.",
    ),
    "early by an estimate": (
        {"changes": [mild(2, part=22.0), *coat()], "now": 1560.0},
        Cause.EARLY,
        Grave.SPOILS,
        "The wait before coat 2 lasts another 9 min. Wait, or touch where it does not show.",
    ),
    "not known between coats": (
        {"changes": coat(), "now": 1560.0, "sheet": NO_WAIT_SHEET},
        Cause.WAIT_UNKNOWN,
        Grave.SPOILS,
        "It is not known when coat 2 may go on; 1 min since the last one. "
        "Touch it first, where it does not show.",
    ),
    "window not known": (
        {"changes": coat(), "now": 1560.0, "sheet": UNKNOWN_WINDOW_SHEET},
        Cause.WAIT_UNKNOWN,
        Grave.SPOILS,
        "It is not known when coat 2 may go on; 1 min since the last one. "
        "Touch cannot tell: its data sheet or its maker says when.",
    ),
    "window closed": (
        {"changes": [*coat(), mild(2, 1600)], "now": 5190.0, "sheet": LATE_SHEET},
        Cause.LATE,
        Grave.SPOILS,
        "The window for coat 2 closed 1 min 30 s ago. Look in its data sheet first: often it asks for sanding.",
    ),
    "wait not known": (
        {
            "changes": coat(),
            "now": 1560.0,
            "sheet": msgspec.structs.replace(
                SHEET, waits=Waits(flash_off=WaitRule(until="matt all over"))
            ),
        },
        Cause.WAIT_UNKNOWN,
        Grave.SPOILS,
        "It is not known when coat 2 may go on; 1 min since the last one. "
        "Touch it first, where it does not show.",
    ),
    "another coat": (
        {"changes": coat("tank")[:1]},
        Cause.OTHER_COAT,
        Grave.MAY_SPOIL,
        "tank: coat 1 is still being sprayed. End it first: Space.",
    ),
    "coat 3 of 2": (
        {"changes": [*coat(), *coat(number=2, begins=2200, n=12)], "now": 2901.0},
        Cause.UNPLANNED,
        Grave.LOOK,
        "All coats are on: this would be coat 3 of 2. Clean the gun, unless another coat is needed to hide.",
    ),
    "compressor": (
        # Cut-in 4 bar; the inlet of 2 bar and 1.5 bar for hose and filters need 3.5: 24 l x 0.5 bar
        # of free air, 11.8 l at 101.3 kPa, over (300 - 100) l/min are 3.6 s (Boyle's law).
        {"shop": WEAK},
        Cause.COMPRESSOR,
        Grave.LOOK,
        None,
    ),
}


@pytest.mark.parametrize("name", CASES)
def test_each_cause_by_itself_with_its_deed(name: str) -> None:
    given, cause, grave, told = CASES[name]
    assert isinstance(given, dict)
    more = {key: value for key, value in given.items() if key != "changes"}
    (only,) = found(*given.get("changes", ()), **more)
    assert (only.cause, only.grave) == (cause, grave)
    if told is not None:
        assert f"{sentence(only, System.METRIC)} {deed(only)}" == told


def test_a_compressor_holds_the_trigger_for_what_its_receiver_gives() -> None:
    (only,) = found(shop=WEAK)
    # The likely time is 3.6 s by hand; the least of the estimate is what is told, and is shorter.
    assert 0 < only.value <= 24 * 50 / 101.325 / (300 - 100) * 60


def test_every_cause_has_its_sentence_and_its_deed() -> None:
    assert set(SAID) == set(Cause)
    for cause, said in SAID.items():
        assert said.words.endswith(".") and said.deed.endswith("."), cause
        told = line(Amiss(cause, Grave.SPOILS, 10.0, None, "batch 1"), System.US)
        assert told.startswith("▲ ") and "{" not in told and "  " not in told, told


def test_figures_are_in_the_units_asked_for() -> None:
    (cold,) = found(weather(part=14))
    assert sentence(cold, System.US) == "The part is at 57 °F; the product asks for 59 to 86 °F."


def test_a_coat_point_nine_over_the_dew_point_and_six_under_the_minimum() -> None:
    # Dew point of 9 C and 93 %: 7.9 C by the Magnus form (psychrometric charts: 7.9), the part is
    # 0.9 K over it; the product wants 15 C.
    told = found(weather(air=9, humidity=93, part=8.8), without=BatchMixed)
    assert [each.cause for each in told if each.asks] == [
        Cause.DEW_MARGIN,
        Cause.PART,
        Cause.AIR,
        Cause.HUMIDITY,
    ]
    assert round(told[0].value, 1) == 0.9


def test_an_epoxy_before_its_induction_with_weather_never_read() -> None:
    told = found(without=WeatherRead, now=60.0)
    assert {Cause.NOT_READ, Cause.INDUCTION_UNKNOWN} <= {each.cause for each in told}
    assert told[0].is_grave
    # At no temperature of its own the sheet's time is the least.
    stands = msgspec.structs.replace(MIX, induction=WaitRule((AtTemperature(None, 1200.0),)))
    sheet = msgspec.structs.replace(SHEET, mix=stands)
    worst = found(without=WeatherRead, now=60.0, sheet=sheet)[0]
    assert worst.cause is Cause.INDUCTION and worst.value == 1140 and worst.asks


def test_coat_3_of_2_ten_seconds_after_coat_2() -> None:
    told = found(*coat(), *coat(number=2, begins=2200, n=12), now=2310.0)
    assert [each.cause for each in told] == [Cause.EARLY, Cause.UNPLANNED]
    assert told[0].value == 590 and all(each.asks for each in told)


def test_coats_within_a_range_are_no_unplanned_ones_and_until_hidden_has_no_last() -> None:
    ranged = msgspec.structs.replace(SHEET, film=Film(coats=Range(1, 2)))
    assert found(*coat(), now=2200.0, sheet=ranged) == ()
    hides = msgspec.structs.replace(SHEET, film=Film(), coats=(CoatPlan(until_hidden=True),))
    two = (*coat(), *coat(number=2, begins=2200, n=12))
    assert found(*two, now=3000.0, sheet=hides) == ()


def test_a_touch_that_was_dry_opens_the_window_for_the_guard_too() -> None:
    dry, known = TouchTried(n=12, at=at(1900), part="door", result="dry"), found(*coat(), now=1901)
    assert found(mild(2, part=22.0), *coat(), dry, now=1901) == ()
    # The sheet's own time for today stands.
    assert [each.cause for each in known] == [Cause.EARLY] and found(
        *coat(), dry, now=1901
    ) == known


def test_of_two_batches_the_gun_may_hold_the_one_that_is_good() -> None:
    fresh = batch(9, 1390, number=2)
    (standing,) = amiss(job_of([*GOOD, fresh]), "door", at(1400))[:1]
    # Timed before the second batch was mixed: the mix as it is now was not.
    assert (standing.cause, standing.grave) == (Cause.INDUCTION, Grave.LOOK)
    over = amiss(job_of([mild(2, 14000), batch(3), batch(4, 12000, 2)]), "door", at(14500))
    assert [each.grave for each in over if each.cause is Cause.POT_LIFE] == [Grave.MAY_SPOIL]


@pytest.mark.parametrize(("age", "grave"), [(3601, Grave.LOOK), (4 * 3600 + 1, Grave.MAY_SPOIL)])
def test_the_older_a_reading_the_graver(age: float, grave: Grave) -> None:
    sheet = msgspec.structs.replace(SHEET, mix=None)
    told = {each.cause: each for each in found(now=age, sheet=sheet)}
    assert told[Cause.OLD].grave is grave and told[Cause.OLD].value == age


def test_the_worst_comes_first() -> None:
    told = found(weather(part=14), run(27.0), catch(tip=q(1.2, "mm")), now=60.0)
    assert [each.grave for each in told] == sorted((each.grave for each in told), reverse=True)
    assert [each.cause for each in told] == [Cause.PART, Cause.INDUCTION, Cause.CUP, Cause.TIP]


def test_the_coat_keeps_what_was_amiss_and_the_log_tells_it() -> None:
    job = job_of([*(each for each in GOOD if each.n != 2), weather(part=14), *coat("tank")[:1]])
    begun = begin_coat(job, "door", at(1400))
    assert begun.amiss == ("part outside its limits", "another coat still running")
    kept = msgspec.structs.replace(begun, n=20)
    assert decode(encode(kept)) == kept
    assert words(kept, System.METRIC) == (
        "coat 1 on door begun, amiss: part outside its limits, another coat still running"
    )


def test_what_the_event_says_already_it_does_not_say_twice() -> None:
    begun = begin_coat(job_of([*GOOD, *coat()]), "door", at(1560))
    assert begun.early_s == 540 and begun.amiss == ()


def test_a_coat_of_an_earlier_log_has_nothing_amiss() -> None:
    line_of = encode(CoatBegun(n=7, at=START, part="door", coat=1))
    assert b"amiss" not in line_of
    event = decode(line_of)
    assert isinstance(event, CoatBegun) and event.amiss == ()
    assert words(event, System.METRIC) == "coat 1 on door begun"


def test_the_line_of_the_weather_marks_what_is_out_and_how_old_it_is() -> None:
    def pieces(read: WeatherRead | None, now: float = 10.0) -> tuple[tuple[str, bool], ...]:
        job = job_of([read] if read is not None else [])
        return weather_pieces(job, at(now), System.METRIC)

    assert pieces(None) == (("▲weather not read yet", True),)
    good = (("air 21.0 °C", False), ("50 % RH", False), ("part 21.0 °C", False))
    assert pieces(mild(2))[:3] == good
    marked = [words for words, is_out in pieces(weather(part=9.0, humidity=40)) if is_out]
    assert marked == ["▲part 9.0 °C", "▲dew margin 2.1 °C"]
    assert pieces(mild(2), 3700.0)[-1] == ("▲1 h 2 min old", True)


def test_a_reading_that_cannot_be_counts_as_none() -> None:
    told = found(weather(humidity=0))
    assert Cause.NOT_READ in {each.cause for each in told}
