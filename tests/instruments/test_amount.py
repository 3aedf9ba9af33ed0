"""The amount: areas by form, film and losses, what it all comes to."""

from __future__ import annotations

import pytest

from booth.forms.form import Given, placeholder
from booth.instruments.amount import FORMS, plan_readout
from booth.instruments.area_words import area_readout, this_area
from booth.job.material import DIMENSIONS
from booth.log.events import AmountPlanned, AreaAdded, CatchMade, Restored, StepDone, Voided
from booth.profile.model import AtTemperature, Film, Gun, Mix, MixPart, Range, WaitRule
from booth.shop.model import Gun as OwnGun
from booth.shop.model import Shop
from booth.units import System
from booth.words.event_words import words
from booth.words.shown import Tone
from booth.words.wait_words import rough
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, mild, profile, q

HVLP = profile(
    gun=Gun(hvlp=True),
    film=Film(coats=Range(2, 2), wet_um=Range(40, 60), volume_solids_percent=Range(50, 50)),
)
CATCH = CatchMade(n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
AREA = AreaAdded(n=0, at=at(1), shape="area", area=q(2.0, "m2"))
FILM: dict[str, Given] = {
    "page": "areas",
    "coats": q(2, ""),
    "basis": "wet",
    "wet": q(50, "um"),
    "dry": q(50, "um"),
    "lands": "large",
    "lost": q(0, "%"),
    "left": q(0, "ml"),
    "enough": "ample",
}


def test_every_form_has_its_rows() -> None:
    assert [key for key, _ in FORMS] == list(DIMENSIONS)


@pytest.mark.parametrize(
    ("values", "square_m"),
    [
        ({"form": "rectangle", "length": q(2, "m"), "width": q(0.5, "m"), "sides": "2"}, 2.0),
        # The door of trade.area's example: 2000 x 800 x 40 mm is 3.424 m2.
        (
            {"form": "sheet", "length": q(2, "m"), "width": q(0.8, "m"), "thickness": q(40, "mm")},
            3.424,
        ),
        ({"form": "circle", "diameter": q(1000, "mm"), "sides": "1"}, 0.7853982),
        (
            {"form": "cylinder", "diameter": q(100, "mm"), "length": q(1, "m"), "ends": "0"},
            0.3141593,
        ),
        ({"form": "box", "length": q(1, "m"), "width": q(1, "m"), "height": q(1, "m")}, 6.0),
        ({"form": "area", "area": q(1.5, "m2")}, 1.5),
        ({"form": "area", "area": q(1.5, "m2"), "count": q(4, "")}, 6.0),
        ({"form": "rectangle", "length": q(2, "m")}, None),
    ],
)
def test_the_area_that_the_rows_hold(values: dict[str, Given], square_m: float | None) -> None:
    found = this_area(values)
    assert found == "" if square_m is None else found == pytest.approx(square_m, rel=1e-6)


def test_a_part_being_typed_is_added_to_what_is_there() -> None:
    values: dict[str, Given] = {"form": "area", "area": q(1.5, "m2")}
    shown = area_readout(context_of(AREA), values)
    assert (shown.figure, shown.unit) == ("1.50", "m²")
    assert shown.lines == ("Once it is added: in all 3.50 m².",)


def test_material_cups_time_and_pot_life() -> None:
    # 1 um over 1 m2 is 1 ml: 2 m2 x 50 um x 2 = 200 ml land; 60 % at least of what leaves does:
    # 333 ml, at 200 ml/min 1:40 at the trigger; 10 min of flash-off and twice that: 13 min.
    shown = plan_readout(context_of(CATCH, AREA, mild(), profile=HVLP), FILM)
    assert (shown.figure, shown.unit, shown.word) == ("333", "ml", "1 CUP")
    assert shown.label == "to mix, ready to spray, estimate: 2.00 m², 2 coats"
    assert shown.lines == (
        "pot life 4 h; mixing to last coat about 13 min",
        "a cup of 591 ml holds it; 1 min 40 s at the trigger (200 ml/min caught with paint)",
        "286 to 333 ml, as 60 to 70 % lands: HVLP on large flat parts",
        "a coat takes at least twice its trigger time: 3 coats are needed to learn it",
    )


@pytest.mark.parametrize(
    ("changes", "figure"),
    [
        ({"enough": "likely"}, "308"),  # 200 / 0.65
        ({"lands": "small"}, "1000"),  # 200 / 0.20
        ({"left": q(50, "ml")}, "383"),
        ({"lost": q(10, "%")}, "370"),  # 333.3 / 0.9
        ({"coats": q(1, "")}, "167"),
        # Dry 50 um of two coats at 50 % solids, thinner 10 %: wet 50 / 0.5 x 1.1 / 2 = 55 um each.
        ({"basis": "dry"}, "367"),
    ],
)
def test_each_row_counts(changes: dict[str, Given], figure: str) -> None:
    values = {**FILM, **changes}
    assert plan_readout(context_of(CATCH, AREA, profile=HVLP), values).figure == figure


def test_several_cups_and_a_pot_life_that_is_too_short() -> None:
    shop = Shop(guns=(OwnGun("blue", cup_ml=150),))
    quick = profile(
        gun=Gun(hvlp=True),
        film=Film(coats=Range(2, 2), wet_um=Range(40, 60)),
        mix=Mix((MixPart("clear", 1),), pot_life=WaitRule((AtTemperature(21, 300),))),
    )
    context = context_of(CATCH, AREA, mild(), profile=quick, shop=shop)
    shown = plan_readout(context, FILM)
    assert (shown.word, shown.tone) == ("POT LIFE SHORT", Tone.CAUTION)
    assert shown.lines[0].endswith("mix a batch for each coat.")


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({**FILM, "wet": None}, "Still needed: the film. Space shows its row."),
        ({**FILM, "wet": None, "page": "film"}, "Still needed: the film."),
        ({**FILM, "coats": q(0, "")}, "There is at least one coat"),
        ({**FILM, "lost": q(100, "%")}, "lost before the gun"),
    ],
)
def test_what_is_still_needed_is_said(values: dict[str, Given], said: str) -> None:
    shown = plan_readout(context_of(AREA, profile=HVLP), values)
    assert shown.figure == "" and said in shown.lines[0]
    none = plan_readout(context_of(profile=HVLP), FILM)
    assert "Give the area" in none.lines[0]
    solids = profile(film=Film(coats=Range(1, 1)))
    dry = plan_readout(context_of(AREA, profile=solids), {**FILM, "basis": "dry"})
    assert "volume solids" in dry.lines[0]


def test_rough_times_and_areas_in_a_line() -> None:
    assert [rough(each) for each in (5, 90, 3600, 10154)] == [
        "1 min",
        "2 min",
        "1 h",
        "2 h 49 min",
    ]
    door = AreaAdded(
        n=1,
        at=at(0),
        shape="sheet",
        part="door",
        number=2,
        area=q(2, "m2"),
        dimensions={"length": q(2, "m"), "thickness": q(40, "mm")},
    )
    told = "area on door: 2.00 m², 2 of them, sheet length 2.00 m, thickness 40 mm"
    assert words(door, System.METRIC) == told


def test_two_areas_and_the_amount_with_enter_alone() -> None:
    b = AtBench("amount", profile=HVLP, before=lambda clock: [CATCH])
    assert b.marked == "form" and b.keys["0-9"] == "Length"
    b.type("2 m")
    assert b.marked == "length"
    # Findings of first use, 6: the key line said 'add this area' here.
    assert b.keys["Enter"] == "on: Width"
    b.press("enter")
    assert b.marked == "width"
    b.type("50 cm")
    assert b.keys["Enter"] == "add this area"
    b.go_to("sides")
    b.press("right", "down")
    b.type("2")
    b.press("enter")  # on: Part
    b.press("enter")
    area = b.log[-1]
    assert isinstance(area, AreaAdded)
    assert (area.shape, area.number, area.part) == ("rectangle", 2, "")
    assert area.area.value == pytest.approx(4.0)
    assert area.dimensions == {"length": q(2, "m", "2 m"), "width": q(0.5, "m", "50 cm")}
    assert b.marked == "form"
    b.press("right", "right")
    b.type("300")
    b.press("enter")
    disc = b.log[-1]
    assert isinstance(disc, AreaAdded) and disc.shape == "circle"
    # Both sides, as chosen before: 2 x pi/4 x 0.3^2 (Archimedes).
    assert disc.area.value == pytest.approx(0.1413717, rel=1e-5)
    assert "in all 4.14 m² of 2 entries" in b.text
    assert b.keys["Enter"] == "keep the amount"
    b.press("enter")
    assert b.keys["Enter"] == "next step"
    b.press("enter")
    plan, done = b.log[-2:]
    assert isinstance(plan, AmountPlanned) and plan.area.value == pytest.approx(4.1413717)
    # (4.1414 m2 x 50 um x 2 / 0.6 + 30 ml) / 0.95
    assert plan.amount.value == pytest.approx((414.13717 / 0.6 + 30) / 0.95, rel=1e-6)
    assert isinstance(done, StepDone) and done.step == "amount"


def test_an_area_with_enter_alone_where_nothing_assumed_is_opened() -> None:
    b = AtBench("amount", profile=HVLP)
    b.type("2")
    b.press("enter")
    b.type("1")
    b.press("enter")
    area = b.log[-1]
    assert isinstance(area, AreaAdded) and area.area.value == pytest.approx(2.0)


def test_space_shows_film_and_losses_and_the_plan_follows() -> None:
    b = AtBench("amount", profile=HVLP, before=lambda clock: [CATCH, AREA])
    assert b.keys["Space"] == "film and losses"
    b.press("space")
    assert b.marked == "coats" and b.keys["Space"] == "areas"
    assert [row.key for row in b.rows.sight] == ["coats", "wet", "lands"]
    assert [row.key for row in b.rows.assumed] == ["basis", "lost", "left", "enough"]
    assert "Length" not in b.text
    b.type("3")
    figure = b.readout.figure
    assert figure == f"{(300 / 0.6 + 30) / 0.95:.0f}"
    b.press("enter", "enter", "enter")
    plan = b.log[-1]
    assert isinstance(plan, AmountPlanned) and f"{plan.amount.value:.0f}" == figure
    # Film and losses stay, also while the other page is open.
    assert b.row("coats").text == "3" and b.keys["Enter"] == "next step"
    b.press("pagedown")
    assert b.marked == "form" and "Left over" not in b.text
    assert b.readout.figure == figure
    b.system = System.US
    assert b.readout.unit == "fl oz"


def test_backspace_voids_what_was_kept_last_by_name_and_brings_it_back() -> None:
    b = AtBench("amount", profile=HVLP, before=lambda clock: [CATCH, AREA])
    b.press("enter", "backspace")
    assert isinstance(b.log[-1], Voided) and b.said.startswith("Voided: amount planned: ")
    b.press("backspace")
    assert isinstance(b.log[-1], Restored) and b.job.amounts
    b.press("right", "left", "backspace", "right", "left", "backspace")
    assert b.said.startswith("Voided: area: 2.00 m²")
    assert b.readout.figure == ""


def test_a_page_turned_in_the_middle_of_an_area_loses_nothing() -> None:
    b = AtBench("amount", profile=HVLP, before=lambda clock: [CATCH])
    b.type("2 m")
    b.press("space")  # now it is no space before a unit
    assert b.marked == "coats"
    b.press("space")
    assert b.row("length").text == "2 m"


def test_the_space_before_a_unit_turns_no_page() -> None:
    b = AtBench("amount", profile=HVLP)
    b.type("50")
    b.press("space")
    assert b.marked == "length" and b.said == "Now its unit; or Space again: film and losses."
    b.type("cm")
    assert b.rows.values["length"] == q(0.5, "m", "50 cm")


def test_the_film_by_what_it_is_given_in() -> None:
    both = profile(
        gun=Gun(hvlp=True),
        film=Film(coats=Range(2, 2), wet_um=Range(40, 60), dry_total_um=Range(50, 70)),
    )
    b = AtBench("amount", profile=both, before=lambda clock: [AREA])
    b.press("space")
    assert [row.key for row in b.rows.sight][1] == "wet"
    b.go_to("basis")
    b.press("right")
    assert b.row("dry") in b.rows.sight and b.row("wet") not in b.rows.sight
    # What stands there is the middle of what the profile gives.
    assert placeholder(b.row("dry").field, b.system) == "60 µm"


def test_a_loss_that_cannot_be_read_is_not_taken_for_none() -> None:
    b = AtBench("amount", profile=HVLP, before=lambda clock: [CATCH, AREA])
    b.press("space")
    b.fill("lost", "5 psi")
    assert b.readout.figure == "" and "cannot be read" in b.text
    b.press("enter")
    assert b.marked == "lost" and len(b.log) == 2
    b.press("pagedown")
    assert b.marked == "form"
    b.press("enter")
    assert len(b.log) == 2 and "cannot be read" in b.said and b.bench.step.key == "amount"


def test_what_is_typed_for_the_film_is_not_left_behind_without_an_area() -> None:
    b = AtBench("amount", profile=HVLP)
    b.press("space")
    b.type("3")
    b.press("enter", "enter", "enter")
    assert b.log == [] and b.bench.step.key == "amount" and "Give the area" in b.said


def test_a_form_shows_its_own_rows_only() -> None:
    b = AtBench("amount", profile=HVLP, parts=("one part",))
    b.go_to("count")  # what is assumed is opened
    b.go_to("form")
    seen = {}
    for form, _ in FORMS:
        seen[form] = [row.key for row in b.rows.sight]
        b.press("right")
    assert seen == {
        "rectangle": ["form", "length", "width", "sides", "count"],
        "sheet": ["form", "length", "width", "thickness", "count"],
        "circle": ["form", "diameter", "sides", "count"],
        "cylinder": ["form", "length", "diameter", "ends", "count"],
        "box": ["form", "length", "width", "height", "count"],
        "area": ["form", "area", "count"],
    }


def test_an_area_of_nothing_is_refused_and_nonsense_stays() -> None:
    b = AtBench("amount", profile=HVLP)
    b.type("0")
    b.press("enter")
    b.type("1")
    b.press("enter")
    assert "An area has to be above 0" in b.said and b.log == []
    b.press("backspace")
    b.type("2 psi")
    b.press("enter")
    assert b.log == [] and b.marked == "width" and b.row("width").text == "2 psi"
