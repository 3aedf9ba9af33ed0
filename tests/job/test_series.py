"""What was measured job after job with one product, and which job lies outside."""

from __future__ import annotations

from pathlib import Path
from statistics import fmean

import pytest

from booth.card.facts import facts_of
from booth.job.series import Measure, figures_of, gathered, series_of
from booth.log import codec
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.units import Kind, System
from booth.words.series_words import (
    chart_of,
    figure_line,
    lower_of,
    measure_words,
    outside_lines,
    series_line,
)
from tests.card.jobs import coated, measured, numbered
from tests.job.make import at, opened, profile, q
from tests.job.systems import OPENED


def job(*events: ev.Event, parts: tuple[str, ...] = ("door", "hood")) -> Job:
    return fold(numbered([opened(parts), *events]))


def cup(seconds: float, which: str = "ford-4") -> ev.EffluxTimed:
    return ev.EffluxTimed(n=0, at=at(400), cup=which, seconds=seconds)


def labels(found: dict[Measure, float]) -> dict[str, float]:
    return {each.label: value for each, value in found.items()}


def jobs(*seconds: float) -> list[tuple[Path, Job]]:
    """Jobs a day apart, the cup timed in each; the latest first, as lists have them."""
    made = []
    for day, each in enumerate(seconds):
        first = opened(("door",))
        first = ev.JobOpened(
            n=1, at=at(86400.0 * day), job=f"day {day}", profile=first.profile, parts=("door",)
        )
        made.append((Path(f"{day}.jsonl"), fold(numbered([first, cup(each)]))))
    return list(reversed(made))


def test_every_figure_of_a_job_once_by_the_mean_of_its_parts() -> None:
    found = labels(dict(figures_of(job(*measured(), *coated(("door", "hood"))))))
    assert found["efflux time"] == 21.5
    assert found["delivery"] == 250 and found["inlet pressure"] == 190
    assert found["pass speed"] == pytest.approx(0.5)
    # Between the teeth of 50 and 60 um on both parts; the last coat was not read.
    assert found["wet film, coat 1"] == found["wet film, coat 2"] == 55
    assert "wet film, coat 3" not in found
    assert found["sprayed in, coat 1"] == 150
    # Door: 900, its second coat at 900 + 2 x 240 + 700; each ends 150 s after it began.
    assert found["wait before coat 2"] == pytest.approx(480 + 700 - 150)
    assert "wait before coat 1" not in found


def test_they_are_what_the_card_says() -> None:
    """The settings are those that a card of the same job tells."""
    one = job(*measured(), *coated(("door", "hood")))
    told = {each.label: each.text for each in facts_of(one, System.METRIC, lambda _: "")}
    found = labels(dict(figures_of(one)))
    assert told["efflux time"].startswith(f"{found['efflux time']:.1f} s")
    assert told["delivery"].startswith(f"{found['delivery']:.0f} ml/min")


def test_a_delivery_of_water_is_none_of_the_coating() -> None:
    water = ev.CatchMade(
        n=0,
        at=at(9),
        seconds=30,
        amount=q(125, "ml"),
        delivery_ml_min=250,
        liquid="water",
    )
    assert "delivery" not in labels(dict(figures_of(job(water))))


def test_cups_are_not_mixed() -> None:
    found = series_of([*jobs(20, 21), (Path("x"), job(cup(50, "iso-4")))])
    assert [(each.measure.cup, len(each.figures)) for each in found] == [
        ("ford-4", 2),
        ("iso-4", 1),
    ]


def test_guns_and_parts_are_not_mixed() -> None:
    def one(gun: str, *parts: str) -> Job:
        first = ev.JobOpened(n=1, at=at(0), job="j", profile=profile(), parts=parts, gun=gun)
        return fold(numbered([first, *measured(), *coated(parts)]))

    jobs = [one("left", "door"), one("left", "door", "hood"), one("right", "door")]
    found = series_of([(Path(str(n)), each) for n, each in enumerate(jobs)])
    counts = {measure_words(each.measure): len(each.figures) for each in found}
    # Limits over a mixture say nothing: what depends on the gun is told by gun, and a time by parts too.
    assert (counts["delivery, left"], counts["delivery, right"]) == (2, 1)
    assert (counts["wet film, coat 1, left"], counts["wet film, coat 1, right"]) == (2, 1)
    assert counts["sprayed in, coat 1, left, door"] == 1
    assert counts["sprayed in, coat 1, left, door, hood"] == 1
    assert counts["efflux time, Ford #4"] == 3 and counts["wait before coat 2"] == 3


def test_a_film_thicker_than_the_gauge_is_left_out() -> None:
    coat = list(coated(("door",), coats=1))[:2]
    over = ev.FilmRead(
        n=0, at=at(2000), part="door", coat=1, last_wetted=q(400, "um"), first_dry=q(0, "um")
    )
    found = labels(dict(figures_of(job(*coat, over, parts=("door",)))))
    assert "wet film, coat 1" not in found


def test_a_time_that_no_clock_vouches_for_is_left_out() -> None:
    begun = ev.CoatBegun(n=0, at=at(1000), part="door", coat=1)
    other = ev.Moment(at(0).wall - 5000, 5.0, "boot-b")
    ended = ev.CoatEnded(n=0, at=other, part="door", coat=1)
    assert "sprayed in, coat 1" not in labels(dict(figures_of(job(begun, ended))))


def test_the_oldest_first_and_the_one_outside_by_its_day() -> None:
    seconds = [20.0, 20.4] * 10 + [27.0] + [20.2, 20.0]
    (found,) = series_of(jobs(*seconds))
    assert [each.value for each in found.figures] == seconds
    assert found.limits.mean == pytest.approx(fmean(seconds))
    (far,) = found.outside
    assert far.job == Path("20.jsonl") and found.side(far) == "above"
    said = outside_lines(found, System.METRIC, lambda each: each.job.stem, lambda _: "a day")
    assert said == ("■ a day, 20: 27.0 s, above the limits",)
    line = series_line(found, System.METRIC)
    assert "1 outside" in line.behind and line.name == "efflux time, Ford #4"
    assert "limits" not in figure_line(found, found.figures[0], System.US, lambda: "", lambda _: "")  # type: ignore[arg-type]


def test_too_few_have_no_limits_and_say_why() -> None:
    (found,) = series_of(jobs(20, 21, 22))
    assert found.limits.upper is None and "5 figures or more" in found.limits.note
    assert "3 jobs, no limits yet" in series_line(found, System.US).behind
    chart = chart_of(found, 0, System.US, lambda _: "a day")
    assert chart.upper is None and chart.lower is None and chart.mean == 21


def test_nothing_is_told_of_less_than_nothing() -> None:
    (found,) = series_of(jobs(1, 9, 1, 9, 1, 9))
    assert found.limits.lower is not None and found.limits.lower < 0
    assert lower_of(found) is None
    assert "up to" in series_line(found, System.US).behind
    assert chart_of(found, 0, System.US, lambda _: "").lower is None


def written(folder: Path, name: str, *events: ev.Event) -> Path:
    path = folder / f"{name}.jsonl"
    path.write_bytes(b"".join(codec.encode(each) for each in numbered(list(events))))
    return path


def test_jobs_are_gathered_by_product_and_gun(tmp_path: Path) -> None:
    first = opened(("door",))
    blue = written(
        tmp_path,
        "blue",
        ev.JobOpened(n=1, at=at(0), job="b", profile=first.profile, parts=("door",), gun="blue"),
        cup(20),
    )
    red = written(
        tmp_path,
        "red",
        ev.JobOpened(n=1, at=at(1), job="r", profile=first.profile, parts=("door",), gun="red"),
        cup(21),
    )
    base = written(
        tmp_path,
        "base",
        ev.JobOpened(n=1, at=at(2), job="x", profile=profile(key="base"), parts=("door",)),
        cup(22),
    )
    water = written(
        tmp_path,
        "water",
        ev.JobOpened(
            n=1, at=at(3), job="w", profile=first.profile, parts=("door",), rehearsal=True
        ),
        cup(23),
    )
    junk = tmp_path / "junk.jsonl"
    junk.write_bytes(b"no log\n")
    every = [blue, red, base, water, junk, tmp_path / "gone.jsonl"]
    assert [path for path, _ in gathered(every, "trial-clear")] == [blue, red]
    assert [path for path, _ in gathered(every, "trial-clear", "red")] == [red]
    assert [path for path, _ in gathered(every, "base")] == [base]


def test_of_a_system_only_the_product_asked_for_counts(tmp_path: Path) -> None:
    path = written(
        tmp_path, "system", OPENED, cup(20), ev.ProductBegun(n=0, at=at(3000), product=2), cup(30)
    )
    (first,) = gathered([path], OPENED.products[0].key)
    (second,) = gathered([path], OPENED.products[1].key)
    efflux = next(iter(figures_of(first[1]).values())), next(iter(figures_of(second[1]).values()))
    assert efflux == (20, 30)


def test_a_time_stays_a_time_in_any_units() -> None:
    (found,) = series_of(jobs(20, 21, 22, 20, 21))
    assert found.measure.kind is Kind.TIME and found.measure.places == 1
    assert series_line(found, System.US).behind.startswith("mean 20.8 s, ")
