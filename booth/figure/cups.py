"""Subjects: flow cups, and viscosity at another temperature."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, several
from booth.figure.readers import CUP, Group, Quantity
from booth.figure.subject import Given, Subject, may, need
from booth.trade.cups import cup_choice, cup_names, cup_runs, efflux_time, viscosity_by_temperature
from booth.trade.result import BadInput

#: Walther's line goes through two.
MOST_POINTS = 2
_CORRECTION = may("correction", shapes.NUMBER, "the cup's own factor, 1 if true to its standard")
_OWNED = may("owned", CUP, "a cup you have; give it once for each", many=True)


def _viscosity(given: Given) -> Answer:
    cup = given["cup"]
    found = efflux_time.viscosity_from_efflux(
        cup, given["time"], **given.some(correction="correction", owned="owned")
    )
    return figure(
        "viscosity", found, shapes.VISCOSITY, f"the standard asks for {cup.temperature_c:g} C"
    )


def _equivalent(given: Given) -> Answer:
    found = efflux_time.equivalent_efflux(
        given["time"],
        given["from"],
        given["to"],
        **given.some(correction_from="from-correction", correction_to="to-correction"),
    )
    return figure(f"efflux time in {given['to'].name}", found, shapes.SECONDS)


def _which(given: Given) -> Answer:
    fits = cup_choice.cups_for_viscosity(given["viscosity"], given.get("owned"))
    rule = "cups with the viscosity in their range; nearest the middle of it first"
    if not fits:
        return exact("cups", "none suits", None, rule)
    return several(rule, [Item(fit.cup.name, fit.efflux_s, shapes.SECONDS) for fit in fits])


def _other(given: Given) -> Answer:
    found = cup_choice.suggest_cup_for_out_of_range(
        given["cup"], given["time"], **given.some(correction="correction", owned="owned")
    )
    return figure("cup", found, shapes.SECONDS)


def _runs(given: Given) -> Answer:
    found = cup_runs.run_statistics(given["runs"], given.get("cup"))
    suspect = {None: "cannot be said", True: "yes", False: "no"}[found.suspect]
    items = (
        Item("mean", found.mean_s, shapes.SECONDS),
        Item("reported as", found.reported_s, shapes.SECONDS),
        Item("spread", found.spread_s, shapes.SECONDS),
        Item("spread over mean", found.spread_fraction, shapes.SHARE),
        Item("runs", found.count, shapes.COUNT),
        Item("suspect", suspect),
    )
    return several("arithmetic mean, longest less shortest", items, found.criterion)


_POINT = Group(
    (("temperature", Quantity(shapes.TEMPERATURE)), ("viscosity", Quantity(shapes.VISCOSITY))), 2
)


def _at(given: Given) -> Answer:
    points = [viscosity_by_temperature.ViscosityPoint(*point) for point in given["points"]]
    if len(points) > MOST_POINTS:
        raise BadInput(f"points: one or two measurements; {len(points)} were given.")
    found = viscosity_by_temperature.viscosity_at_temperature(given["at"], *points)
    return figure("viscosity", found, shapes.VISCOSITY)


def _band(given: Given) -> Answer:
    point = viscosity_by_temperature.ViscosityPoint(*given["point"])
    found = viscosity_by_temperature.one_point_band(given["at"], point)
    return figure("viscosity", found, shapes.VISCOSITY, "no correction: the band one point leaves")


SUBJECTS = (
    Subject(
        "viscosity",
        "kinematic viscosity from an efflux time",
        (
            need("cup", CUP, "the flow cup"),
            need("time", shapes.SECONDS, "efflux time, the mean of the runs"),
            _CORRECTION,
            _OWNED,
        ),
        _viscosity,
        (efflux_time.viscosity_from_efflux, cup_choice.suggest_cup_for_out_of_range),
        ("--cup 'Ford #4' 30s", "'Zahn 2' 18s"),
    ),
    Subject(
        "efflux",
        "the efflux time that a viscosity shows in a cup",
        (
            need("cup", CUP, "the flow cup"),
            need("viscosity", shapes.VISCOSITY, "of the liquid"),
            _CORRECTION,
        ),
        lambda given: figure(
            "efflux time",
            efflux_time.efflux_from_viscosity(
                given["cup"], given["viscosity"], **given.some(correction="correction")
            ),
            shapes.SECONDS,
        ),
        (efflux_time.efflux_from_viscosity,),
        ("'ISO 4 mm' 100cSt",),
    ),
    Subject(
        "equivalent",
        "the efflux time in another cup",
        (
            need("time", shapes.SECONDS, "efflux time in the first cup"),
            need("from", CUP, "the cup in which it was timed"),
            need("to", CUP, "the cup at hand"),
            may("from-correction", shapes.NUMBER, "the first cup's own factor"),
            may("to-correction", shapes.NUMBER, "the second cup's own factor"),
        ),
        _equivalent,
        (efflux_time.equivalent_efflux,),
        ("60s from 'ISO 4 mm' to 'Ford #4'",),
    ),
    Subject(
        "which-cup",
        "the cups that suit a viscosity, the best first",
        (need("viscosity", shapes.VISCOSITY, "expected"), _OWNED),
        _which,
        (cup_choice.cups_for_viscosity, cup_names.cup_named),
        ("100cSt owned=ford-4 owned=zahn-2", "0.1cSt"),
    ),
    Subject(
        "other-cup",
        "the cup to use after a time outside the range of one",
        (
            need("cup", CUP, "the cup used"),
            need("time", shapes.SECONDS, "efflux time, outside its range"),
            _CORRECTION,
            _OWNED,
        ),
        _other,
        (cup_choice.suggest_cup_for_out_of_range,),
        ("'Zahn 2' 18s",),
    ),
    Subject(
        "runs",
        "mean and spread of several runs of a cup",
        (
            need("runs", shapes.SECONDS, "efflux times, in order", many=True),
            may("cup", CUP, "the cup, whose standard may have a criterion"),
        ),
        _runs,
        (cup_runs.run_statistics,),
        ("30s 31s 30.4s 30.8s cup='Zahn 2'",),
    ),
    Subject(
        "viscosity-at",
        "viscosity at another temperature, from two measured points",
        (
            need("at", shapes.TEMPERATURE, "temperature wanted"),
            need("points", _POINT, "one or two measurements of this mix, 3 C apart", many=True),
        ),
        _at,
        (viscosity_by_temperature.viscosity_at_temperature,),
        ("22.5C 15C:201.888cSt 30C:59.507cSt", "25C 15C:200cSt"),
    ),
    Subject(
        "viscosity-band",
        "how far viscosity may be off at another temperature, from one point",
        (
            need("at", shapes.TEMPERATURE, "temperature wanted"),
            need("point", _POINT, "the one measurement"),
        ),
        _band,
        (viscosity_by_temperature.one_point_band,),
        ("20C 25C:100cSt",),
    ),
)
