"""The amount: areas by form, film and losses, what it all comes to."""

from __future__ import annotations

import pytest

from booth.instruments.amount.instrument import FORMS, area_readout
from booth.instruments.amount.words import area_words, plan_readout, rough, this_area
from booth.job.material import DIMENSIONS
from booth.log.events import AmountPlanned, AreaAdded, CatchMade, StepDone
from booth.profile.model import AtTemperature, Film, Gun, Mix, MixPart, Range
from booth.shop.model import Gun as OwnGun
from booth.shop.model import Shop
from booth.units import System
from booth.widgets.figure_panel import FigurePanel
from booth.words.tone import Tone
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import at, profile, q

HVLP = profile(
    gun=Gun(hvlp=True), film=Film(coats=2, wet_um=Range(40, 60), volume_solids_percent=50)
)
CATCH = CatchMade(n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
AREA = AreaAdded(n=0, at=at(1), shape="area", area=q(2.0, "m2"))
FILM = {
    "coats": q(2, ""), "basis": "wet", "film": q(50, "um"), "lands": "large",
    "lost": q(0, "%"), "left": q(0, "ml"), "enough": "ample",
}  # fmt: skip


def test_every_form_has_its_rows() -> None:
    assert [key for key, _ in FORMS] == list(DIMENSIONS)


@pytest.mark.parametrize(
    ("values", "square_m"),
    [
        ({"form": "rectangle", "length": q(2, "m"), "width": q(0.5, "m"), "sides": "2"}, 2.0),
        # The door of trade.area's example: 2000 x 800 x 40 mm is 3.424 m2.
        ({"form": "sheet", "length": q(2, "m"), "width": q(0.8, "m"), "thickness": q(40, "mm")},
         3.424),
        ({"form": "circle", "diameter": q(1000, "mm"), "sides": "1"}, 0.7853982),
        ({"form": "cylinder", "diameter": q(100, "mm"), "length": q(1, "m"), "ends": "0"},
         0.3141593),
        ({"form": "box", "length": q(1, "m"), "width": q(1, "m"), "height": q(1, "m")}, 6.0),
        ({"form": "area", "area": q(1.5, "m2")}, 1.5),
        ({"form": "area", "area": q(1.5, "m2"), "count": q(4, "")}, 6.0),
        ({"form": "rectangle", "length": q(2, "m")}, None),
    ],
)  # fmt: skip
def test_the_area_that_the_rows_hold(values: dict[str, object], square_m: float | None) -> None:
    found, fault = this_area(values)  # type: ignore[arg-type]
    assert fault == ""
    assert found is None if square_m is None else found == pytest.approx(square_m, rel=1e-6)


def test_a_part_being_typed_is_added_to_what_is_there() -> None:
    values = {"form": "area", "area": q(1.5, "m2")}
    shown = area_readout(context_of(AREA), values)
    assert (shown.figure, shown.unit) == ("1.50", "m²")
    assert shown.lines == ("Enter adds it: in all 3.50 m².",)


def test_material_cups_time_and_pot_life() -> None:
    # 1 um over 1 m2 is 1 ml: 2 m2 x 50 um x 2 = 200 ml land; 60 % at least of what leaves does:
    # 333 ml, at 200 ml/min 1:40.
    shown = plan_readout(context_of(CATCH, AREA, profile=HVLP), FILM)
    assert (shown.figure, shown.unit, shown.word) == ("333", "ml", "1 CUP")
    assert shown.label == "to mix, ready to spray, estimate: 2.00 m², 2 coats"
    assert shown.lines == (
        "pot life 4 h 00 min; mixing to last coat about 12 min",
        "a cup of 591 ml holds it; 1:40 at the gun (200 ml/min caught with paint)",
        "286 to 333 ml, as 60 to 70 % lands: HVLP on large flat parts",
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
def test_each_row_counts(changes: dict[str, object], figure: str) -> None:
    values = {**FILM, **changes}
    assert plan_readout(context_of(CATCH, AREA, profile=HVLP), values).figure == figure  # type: ignore[arg-type]


def test_several_cups_and_a_pot_life_that_is_too_short() -> None:
    shop = Shop(guns=(OwnGun("blue", cup_ml=150),))
    quick = profile(
        gun=Gun(hvlp=True), film=Film(coats=2, wet_um=Range(40, 60)),
        mix=Mix((MixPart("clear", 1),), pot_life=AtTemperature(21, 300)),
    )  # fmt: skip
    context = context_of(CATCH, AREA, profile=quick, shop=shop)
    shown = plan_readout(context, FILM)
    assert (shown.word, shown.tone) == ("POT LIFE TOO SHORT", Tone.CAUTION)
    assert shown.lines[0].endswith("mix a batch for each coat.")


@pytest.mark.parametrize(
    ("values", "said"),
    [
        ({**FILM, "film": None}, "Still needed: the film"),
        ({**FILM, "coats": q(0, "")}, "A coat is the least"),
        ({**FILM, "lost": q(100, "%")}, "lost before the gun"),
    ],
)
def test_what_is_still_needed_is_said(values: dict[str, object], said: str) -> None:
    shown = plan_readout(context_of(AREA, profile=HVLP), values)  # type: ignore[arg-type]
    assert shown.figure == "–" and said in shown.lines[0]
    none = plan_readout(context_of(profile=HVLP), FILM)
    assert "Give the area" in none.lines[0]
    solids = profile(film=Film(coats=1))
    dry = plan_readout(context_of(AREA, profile=solids), {**FILM, "basis": "dry"})
    assert "volume solids" in dry.lines[0]


def test_rough_times_and_areas_in_a_line() -> None:
    assert [rough(each) for each in (5, 90, 3600, 10154)] == [
        "1 min", "2 min", "1 h 00 min", "2 h 49 min",
    ]  # fmt: skip
    door = AreaAdded(
        n=1, at=at(0), shape="sheet", part="door", number=2, area=q(2, "m2"),
        dimensions={"length": q(2, "m"), "thickness": q(40, "mm")},
    )  # fmt: skip
    assert area_words(door, System.METRIC) == "door  sheet  2.00 m x 40 mm  2 of them  2.00 m²"


async def test_two_areas_and_the_amount_with_enter_alone() -> None:
    async with at_bench("amount", profile=HVLP, before=lambda clock: [CATCH], size=(80, 24)) as b:
        assert b.focused_row == "form"
        await b.type("2")
        assert b.focused_row == "length"
        await b.press("enter")
        assert b.focused_row == "width"
        await b.type("50 cm")
        await b.press("down", "right", "down")
        await b.type("2")
        await b.press("enter")
        area = b.log[-1]
        assert isinstance(area, AreaAdded)
        assert (area.shape, area.number, area.part) == ("rectangle", 2, "")
        assert area.area.value == pytest.approx(4.0)
        assert area.dimensions == {"length": q(2, "m", "2"), "width": q(0.5, "m", "50 cm")}
        assert b.focused_row == "form"
        await b.press("right", "right")
        await b.type("300")
        await b.press("enter")
        disc = b.log[-1]
        assert isinstance(disc, AreaAdded) and disc.shape == "circle"
        # Both sides, as chosen before: 2 x pi/4 x 0.3^2 (Archimedes).
        assert disc.area.value == pytest.approx(0.1413717, rel=1e-5)
        assert "in all 4.14 m² of 2 entries" in b.text
        await b.press("enter")
        plan, done = b.log[-2:]
        assert isinstance(plan, AmountPlanned) and plan.area.value == pytest.approx(4.1413717)
        # (4.1414 m2 x 50 um x 2 / 0.6 + 30 ml) / 0.95
        assert plan.amount.value == pytest.approx((414.13717 / 0.6 + 30) / 0.95, rel=1e-6)
        assert isinstance(done, StepDone) and done.step == "amount"


async def test_space_shows_film_and_losses_and_the_plan_follows() -> None:
    async with at_bench("amount", profile=HVLP, before=lambda clock: [CATCH, AREA]) as b:
        await b.press("space")
        assert b.focused_row == "coats" and "Left over" in b.text and "Length" not in b.text
        await b.type("3")
        figure = b.bench.query_one(FigurePanel).readout.figure
        assert figure == f"{(300 / 0.6 + 30) / 0.95:.0f}"
        await b.press("enter")
        assert isinstance(b.log[-1], AmountPlanned)
        await b.press("pagedown")
        assert b.focused_row == "form" and "Left over" not in b.text
        b.app.action_units()
        await b.pilot.pause()
        assert b.bench.query_one(FigurePanel).readout.unit == "fl oz"
        await b.press("backspace", "backspace")
        assert [type(each).__name__ for each in b.log[-2:]] == ["Voided", "Voided"]
        assert b.bench.query_one(FigurePanel).readout.figure == "–"


async def test_a_form_shows_its_own_rows_only() -> None:
    async with at_bench("amount", profile=HVLP, parts=("one part",)) as b:
        seen = {}
        for form, _ in FORMS:
            seen[form] = [row.field.key for row in b.instrument.shown_rows]  # type: ignore[attr-defined]
            await b.press("right")
        assert seen == {
            "rectangle": ["form", "length", "width", "sides", "count"],
            "sheet": ["form", "length", "width", "thickness", "count"],
            "circle": ["form", "diameter", "sides", "count"],
            "cylinder": ["form", "length", "diameter", "ends", "count"],
            "box": ["form", "length", "width", "height", "count"],
            "area": ["form", "area", "count"],
        }


async def test_an_area_of_nothing_is_refused_and_nonsense_stays() -> None:
    async with at_bench("amount", profile=HVLP) as b:
        await b.type("0")
        await b.press("enter")
        await b.type("1")
        await b.press("enter")
        assert "An area is above 0" in b.text and b.log == []
        await b.press("backspace")
        await b.type("2 psi")
        await b.press("enter")
        assert b.log == [] and b.focused_row == "width"
