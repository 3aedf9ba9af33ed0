"""The dry film on a part in all: what was read, what was not, what the thinner is."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.card.report import report
from booth.job.film_total import film_total
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Film, Mix, MixPart, Range
from booth.units import System
from booth.words.film_words import total_words
from tests.job.make import at, opened, q

WANTED = Range(55, 80)
FILM = Film(coats=Range(2, 2), volume_solids_percent=Range(45, 50), dry_total_um=WANTED)
BARE = Mix((MixPart("paint", 1),))


def mixed(thinner_ml: float) -> ev.BatchMixed:
    pours = (ev.Pour("clear", q(400, "ml")), ev.Pour("thinner", q(thinner_ml, "ml")))
    return ev.BatchMixed(n=0, at=at(0), batch=1, pours=pours)


def coat(number: int, *teeth: tuple[float, float], part: str = "door") -> list[ev.Event]:
    """A coat, and its readings [um]."""
    return [
        ev.CoatBegun(n=0, at=at(number * 100), part=part, coat=number),
        ev.CoatEnded(n=0, at=at(number * 100 + 50), part=part, coat=number),
        *(
            ev.FilmRead(
                n=0,
                at=at(number * 100 + 60),
                part=part,
                coat=number,
                last_wetted=q(low, "um"),
                first_dry=q(high, "um"),
            )
            for low, high in teeth
        ),
    ]


def job(*events: ev.Event, film: Film = FILM, **changes: object) -> Job:
    numbered = [replace(event, n=n) for n, event in enumerate(events, 2)]
    return fold([opened(film=film, **changes), *numbered])


def said(found: Job, part: str = "door") -> str:
    total = film_total(found, part)
    return total_words(total, found.profile.film.dry_total_um, System.METRIC) if total else ""


# Each by hand: DFT = WFT x VS / (1 + s) (Organic Finishing Guidebook 2012-13 p. 615), the lower end
# at 45 % solids, the upper at 50 %; 40 ml of thinner on 400 ml is s = 0.1.
TWO = (*coat(1, (60, 70)), *coat(2, (62, 66)))


@pytest.mark.parametrize(
    ("events", "changes", "words"),
    [
        ((), {}, ""),
        (
            # 122 x 0.45 / 1.1 = 49.9; 136 x 0.5 / 1.1 = 61.8
            (mixed(40), *TWO),
            {},
            "about 50 to 62 of 55 to 80 µm dry after 2 coats",
        ),
        (
            # 60 x 0.45 / 1.1 = 24.5; 70 x 0.5 / 1.1 = 31.8; the second is not made up for.
            (mixed(40), *coat(1, (60, 70)), *coat(2)),
            {},
            "about 25 to 32 of 55 to 80 µm dry from coat 1 alone; coat 2 not read",
        ),
        ((mixed(40), *coat(1), *coat(2)), {}, "not known of 55 to 80 µm; coats 1, 2 not read"),
        (
            # Nothing in the log says how much thinner: none at all would be 68 x 1 = 68 at most.
            TWO,
            {},
            "at most about 68 of 55 to 80 µm dry after 2 coats; the thinner in it is not known",
        ),
        (
            # A product without thinner, and none was added: 122 x 0.45 = 54.9.
            TWO,
            {"mix": BARE},
            "about 55 to 68 of 55 to 80 µm dry after 2 coats",
        ),
        (
            # The mean of the places of a coat: 60 to 70 and 70 to 80 is 65 to 75.
            (*coat(1, (60, 70), (70, 80)), *coat(2, (62, 67))),
            {"mix": BARE},
            "about 57 to 71 of 55 to 80 µm dry after 2 coats",
        ),
        (
            (*coat(1, (100, 110)), *coat(2, (100, 110))),
            {"mix": BARE},
            "about 90 to 110 of 55 to 80 µm dry after 2 coats; more than is wanted",
        ),
        (
            TWO,
            {"film": Film(coats=Range(2, 2), dry_total_um=WANTED)},
            "not known of 55 to 80 µm; the profile gives no volume solids",
        ),
        (
            TWO,
            {"mix": BARE, "film": Film(coats=Range(2, 2), volume_solids_percent=Range(50, 50))},
            "about 61 to 68 µm dry after 2 coats",
        ),
    ],
)
def test_the_film_in_all_against_what_is_wanted(
    events: tuple[ev.Event, ...], changes: dict[str, object], words: str
) -> None:
    assert said(job(*events, **changes)) == words  # type: ignore[arg-type]


def test_each_coat_counts_the_thinner_that_was_in_it() -> None:
    # 440 ml thinned by a tenth; 40 ml more makes it a fifth before the second coat:
    # 60 x 0.45 / 1.1 + 62 x 0.45 / 1.2 = 47.8; 70 x 0.5 / 1.1 + 66 x 0.5 / 1.2 = 59.3.
    more = ev.ThinnerAdded(n=0, at=at(190), amount=q(40, "ml"), remaining=q(440, "ml"))
    found = job(mixed(40), *coat(1, (60, 70)), more, *coat(2, (62, 66)))
    assert said(found).startswith("about 48 to 59 of")


def test_parts_are_kept_apart_and_what_is_being_sprayed_is_not_called_unread() -> None:
    running = ev.CoatBegun(n=0, at=at(300), part="door", coat=2)
    hood = coat(1, (80, 90), part="hood")
    found = job(mixed(40), *coat(1, (60, 70)), *hood, running)
    assert said(found) == "about 25 to 32 of 55 to 80 µm dry after 1 coat"
    # 80 x 0.45 / 1.1 = 32.7; 90 x 0.5 / 1.1 = 40.9
    assert said(found, "hood").startswith("about 33 to 41 of")


def test_a_reading_that_was_voided_is_a_coat_not_read() -> None:
    events = (mixed(40), *TWO)
    found = job(*events, ev.Voided(n=0, at=at(900), target=len(events) + 1))
    assert said(found).endswith("coat 2 not read")


def test_the_report_says_it_of_each_part_that_was_coated() -> None:
    found = job(mixed(40), *TWO)
    told = report(found.events, System.METRIC, lambda _: "12:00", lambda _: "today")
    assert "door: film in all about 50 to 62 of 55 to 80 µm dry after 2 coats" in told
    assert "hood: film" not in told
