"""The mix of a product with several hardeners and thinners, worked with keys."""

from __future__ import annotations

import pytest

from booth.instruments.mix.words import empty_readout
from booth.instruments.weather import waits_in_words
from booth.job.mixture import now as mix_now
from booth.log import events as ev
from booth.profile.model import Hardener, Mix, MixPart, Profile, Range, Thinner
from booth.words.shown import Pours, Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, mild, one_time, profile

#: By volume 2 : 1; the slow one 2 : 1.5.
PARTS = (MixPart("clear", 2, 1.0), MixPart("medium", 1, 1.05))
CHOICE = profile(
    mix=Mix(
        parts=PARTS,
        thinner=Thinner("usual", Range(10, 20), 30, 0.8, 0.8, for_c=Range(15, 25)),
        pot_life=one_time(4 * 3600),
        hardeners=(
            Hardener("medium", Range(15, 25)),
            Hardener("slow", Range(25, 35), parts=1.5, pot_life=one_time(6 * 3600)),
        ),
        thinners=(Thinner("long", Range(5, 5), 10, 0.9, 0.9, for_c=Range(25, 35)),),
    )
)


def at_mix(air_c: float | None = None, given: Profile = CHOICE) -> AtBench:
    before = (lambda clock: (mild(0, air=air_c),)) if air_c is not None else None
    return AtBench("mix", profile=given, **({"before": before} if before else {}))  # type: ignore[arg-type]


def marks(bench: AtBench) -> list[tuple[str, str]]:
    (pours,) = bench.bench.instrument.picture(bench.now, bench.rows.values)
    assert isinstance(pours, Pours)
    return [(row.name, row.mark) for row in pours.rows]


def test_todays_hardener_and_thinner_are_offered_and_kept_with_the_batch() -> None:
    bench = at_mix(28.0)
    assert bench.rows.values["hardener"] == "slow" and bench.rows.values["with"] == "long"
    bench.type("367.5 ml")
    bench.press("enter")
    # 2 : 1.5 and 5 % of the long thinner on top: 200, 150 and 17.5 ml.
    assert marks(bench) == [("clear", "200 ml"), ("slow", "350 ml"), ("long", "368 ml")]
    for _ in range(3):
        bench.press("space")
    batch = bench.log[-1]
    assert isinstance(batch, ev.BatchMixed)
    assert (batch.hardener, batch.thinned_with) == ("slow", "long")
    assert [pour.name for pour in batch.pours] == ["clear", "slow", "long"]
    assert mix_now(bench.job).fraction == pytest.approx(0.05)


def test_before_the_weather_is_read_it_is_the_usual_one_and_nothing_is_promised() -> None:
    said = empty_readout(context_of(profile=CHOICE)).lines
    assert any("not known" in line for line in said)
    assert at_mix().rows.values["hardener"] == "medium"


def test_air_for_which_there_is_none_is_said_and_stays_a_caution() -> None:
    said = " ".join(empty_readout(context_of(mild(air=8.0), profile=CHOICE)).lines)
    assert (
        "No hardener is for air of 8.0 °C: medium, for 15.0 to 25.0 °C is nearest. Ask the data sheet."
        in said
    )
    bench = at_mix(8.0)
    bench.type("300 ml")
    bench.press("enter")
    assert bench.readout.tone is Tone.CAUTION and "No thinner is for air of 8.0 °C" in bench.text


def test_the_weather_tells_the_waits_of_the_hardener_for_this_air_until_one_is_mixed() -> None:
    def pot_life(*events: ev.Event) -> str:
        (said,) = (
            line
            for line in waits_in_words(context_of(*events, profile=CHOICE), mild(air=28.0))
            if line.startswith("today")
        )
        return said

    # 6 h and 4 h at 21 C; how warmth shortens them is held against its sources where it is computed.
    assert pot_life().startswith("today with slow: ") and "pot life ~3 h" in pot_life()
    batch = ev.BatchMixed(n=2, at=at(0), batch=1, hardener="medium")
    assert pot_life(batch).startswith("today with medium: ") and "pot life ~2 h" in pot_life(batch)


#: Fast is over in half an hour; its thinner is another one.
QUICK = profile(
    mix=Mix(
        parts=PARTS,
        thinner=Thinner("usual", Range(10, 20), 30, 0.8, 0.8, for_c=Range(15, 25)),
        pot_life=one_time(4 * 3600),
        hardeners=(
            Hardener("medium", Range(15, 25)),
            Hardener("fast", Range(5, 15), pot_life=one_time(1800)),
        ),
        thinners=(Thinner("quick", Range(10, 10), 30, 0.7, 0.8, for_c=Range(5, 15)),),
    )
)


def onto_the_rest(hardener: str, thinner: str) -> AtBench:
    """A batch of medium and usual mixed ten minutes ago, another one meant onto its rest."""
    bench = at_mix(21.0, QUICK)
    bench.type("300 ml")
    for _ in range(3):
        bench.press("space")
    bench.pass_time(600)
    bench.type("300 ml")
    for key, wanted in (("hardener", hardener), ("with", thinner), ("onto", "1")):
        bench.go_to(key)
        for _ in range(3):
            if bench.rows.values[key] != wanted:
                bench.press("right")
        assert bench.rows.values[key] == wanted
    return bench


def test_another_hardener_in_the_rest_is_said_before_anything_is_poured() -> None:
    bench = onto_the_rest("fast", "usual")
    (first, *_) = bench.readout.lines
    assert first.startswith("Batch 1 holds medium, this one fast: the shorter pot life counts")
    assert bench.readout.tone is Tone.CAUTION and "data sheet" in first
    # The word is seen however small the window is.
    assert bench.readout.shown_word == "2 HARDENERS" and bench.readout.label == "pour clear up to"
    # Fast has half an hour, the rest 3 h 50 min.
    assert "The pot life of this batch rules all of it: it ends first" in bench.text
    for _ in range(3):
        bench.press("space")
    batch = bench.log[-1]
    assert isinstance(batch, ev.BatchMixed)
    assert (batch.onto, batch.others) == (1, ("medium",))
    assert "rules all of it" in bench.said and "Its rest holds medium" in bench.said
    assert "The pot life of batch 2 ends first: it rules all of it." in bench.readout.lines


def test_another_thinner_in_the_rest_is_said_as_well() -> None:
    bench = onto_the_rest("medium", "quick")
    (first, *_) = bench.readout.lines
    assert first.startswith("Batch 1 is thinned with usual, this one with quick.")
    assert bench.readout.shown_word == "2 THINNERS"
    # Of two of the same pot life the older one ends first.
    assert "The pot life of batch 1, which is older, rules all of it" in bench.text


def test_the_same_again_is_no_doubt() -> None:
    bench = onto_the_rest("medium", "usual")
    assert "holds" not in bench.text and "thinned with" not in bench.text
    assert bench.readout.tone is Tone.READY


def test_a_rest_of_which_nobody_said_its_hardener_is_said() -> None:
    old = ev.BatchMixed(n=0, at=at(0), batch=1)
    bench = AtBench("mix", profile=QUICK, before=lambda clock: (mild(0), old))
    bench.type("300 ml")
    bench.go_to("onto")
    bench.press("right")
    assert "Which hardener batch 1 holds is not in the log" in bench.text
    assert bench.readout.shown_word == "HARDENER?"
