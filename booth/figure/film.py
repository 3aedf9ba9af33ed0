"""Subjects: wet and dry film, the notch gauge, the pace of the gun, transfer efficiency."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, several
from booth.figure.readers import YES_NO, EfficiencyReader, Group, Quantity
from booth.figure.subject import Given, Subject, may, need
from booth.trade.film import film_thickness, gun_speed, transfer_efficiency, wet_gauge

_SOLIDS = need("solids", shapes.SHARE, "solids by volume, before thinning")
_THINNED = may("thinned", shapes.SHARE, "thinner per volume of coating", default="0%")
_FAN = need("fan", shapes.LENGTH, "width of the fan at the panel")
_OVERLAP = need("overlap", shapes.SHARE, "share of the fan on the pass before")
_SPEED = need("speed", shapes.SPEED, "speed of the gun")
_DELIVERY = need("delivery", shapes.DELIVERY, "delivery of paint, not of water")
EFFICIENCY = may("efficiency", EfficiencyReader(), "share that lands", default="hvlp")
_TOOTH = Quantity(shapes.FILM)
_READING = Group((("wetted", _TOOTH), ("dry", _TOOTH)), 2)
_TEETH = "last tooth wetted and first left dry, a dash for none"


def _coats(given: Given) -> Answer:
    plan = film_thickness.coats_to_dry_film(
        given["dry"],
        given["wet-most"],
        given["solids"],
        given["thinned"],
        **given.some(dry_so_far_um="so-far"),
    )
    items = (
        Item("coats", plan.coats, shapes.COUNT),
        Item("wet film of each", plan.wet_each_um, shapes.FILM),
        Item("dry film of each", plan.dry_each_um, shapes.FILM),
        Item("dry film in all", plan.dry_total_um, shapes.FILM),
    )
    return several("the fewest equal coats; DFT = WFT x VS / (1 + s)", items)


def _interval(name: str, found: wet_gauge.FilmInterval) -> tuple[Item, Item]:
    return (
        Item(f"{name} from", found.low_um, shapes.FILM),
        Item("to", found.high_um, shapes.FILM, tight=True),
    )


def _gauge(given: Given) -> Answer:
    readings = [wet_gauge.film_between_teeth(*reading) for reading in given["readings"]]
    sums = wet_gauge.film_statistics(readings)
    items = [*_interval("mean film", sums.mean), *_interval("anywhere", sums.everywhere)]
    items += [
        Item("spread from", sums.spread_least_um, shapes.FILM),
        Item("to", sums.spread_most_um, shapes.FILM, tight=True),
    ]
    notes = []
    if "low" in given or "high" in given:
        judged = wet_gauge.judge_film(sums.mean, given.get("low"), given.get("high"))
        items.append(Item("verdict", judged.verdict.value))
        notes.append(judged.sentence)
    return several("the film lies between the last wetted and the first dry tooth", items, *notes)


def _efficiency(given: Given) -> Answer:
    found = transfer_efficiency.transfer_efficiency_from_film(
        wet_gauge.film_between_teeth(*given["film"]),
        given["delivery"],
        given["fan"],
        given["overlap"],
        given["speed"],
    )
    return figure("transfer efficiency", found, shapes.SHARE)


def _band(given: Given) -> Answer:
    band = transfer_efficiency.default_band(given["hvlp"], given["large"])
    item = Item("transfer efficiency", band.likely, shapes.SHARE, band.low, band.high, True)
    return several(band.source, (item,), "a band to begin with, until the gauge says otherwise")


SUBJECTS = (
    Subject(
        "wet-film",
        "the wet film that leaves a wanted dry film",
        (need("dry", shapes.FILM, "dry film wanted"), _SOLIDS, _THINNED),
        lambda given: exact(
            "wet film",
            film_thickness.wet_film_um(given["dry"], given["solids"], given["thinned"]),
            shapes.FILM,
            "WFT = DFT x (1 + s) / VS",
        ),
        (film_thickness.wet_film_um,),
        ("1.5mil 42%",),
    ),
    Subject(
        "dry-film",
        "the dry film that a wet film leaves",
        (need("wet", shapes.FILM, "wet film"), _SOLIDS, _THINNED),
        lambda given: exact(
            "dry film",
            film_thickness.dry_film_um(given["wet"], given["solids"], given["thinned"]),
            shapes.FILM,
            "DFT = WFT x VS / (1 + s)",
        ),
        (film_thickness.dry_film_um,),
        ("4mil 50% thinned=25%",),
    ),
    Subject(
        "coats",
        "the coats to a wanted dry film",
        (
            need("dry", shapes.FILM, "dry film wanted in all"),
            need("wet-most", shapes.FILM, "greatest wet film of one coat"),
            _SOLIDS,
            _THINNED,
            may("so-far", shapes.FILM, "dry film already there"),
        ),
        _coats,
        (film_thickness.coats_to_dry_film,),
        ("60um 60um 50%",),
    ),
    Subject(
        "gauge",
        "what readings of a notch gauge say of a wet film",
        (
            need("readings", _READING, _TEETH, many=True),
            may("low", shapes.FILM, "least film asked for"),
            may("high", shapes.FILM, "greatest film asked for"),
        ),
        _gauge,
        (wet_gauge.film_between_teeth, wet_gauge.film_statistics, wet_gauge.judge_film),
        ("75um:100um 100um:125um low=80um high=130um", "-:25um", "3mil:-"),
    ),
    Subject(
        "mean-film",
        "the mean wet film of one coat",
        (_DELIVERY, _FAN, _OVERLAP, _SPEED, EFFICIENCY),
        lambda given: figure(
            "mean wet film",
            gun_speed.mean_wet_film_um(
                given["delivery"],
                given["fan"],
                given["overlap"],
                given["speed"],
                given["efficiency"],
            ),
            shapes.FILM,
        ),
        (gun_speed.mean_wet_film_um,),
        ("200ml/min 250mm 50% 0.4m/s efficiency=65%", "200ml/min 250mm 50% 0.4m/s"),
    ),
    Subject(
        "speed",
        "the speed of the gun for a wanted wet film",
        (need("wet", shapes.FILM, "wet film wanted"), _DELIVERY, _FAN, _OVERLAP, EFFICIENCY),
        lambda given: figure(
            "gun speed",
            gun_speed.speed_for_wet_film_mm_s(
                given["wet"],
                given["delivery"],
                given["fan"],
                given["overlap"],
                given["efficiency"],
            ),
            shapes.SPEED,
        ),
        (gun_speed.speed_for_wet_film_mm_s,),
        ("50um 200ml/min 250mm 50% efficiency=65%",),
    ),
    Subject(
        "pitch",
        "the distance from one pass to the next",
        (_FAN, _OVERLAP),
        lambda given: exact(
            "pitch",
            gun_speed.pitch_mm(given["fan"], given["overlap"]),
            shapes.LENGTH,
            "fan x (1 - overlap)",
        ),
        (gun_speed.pitch_mm,),
        ("10in 50%",),
    ),
    Subject(
        "pass-time",
        "the time for one pass",
        (need("length", shapes.PART, "of the pass, with the run-out"), _SPEED),
        lambda given: exact(
            "time of a pass",
            gun_speed.pass_time_s(given["length"], given["speed"]),
            shapes.SECONDS,
            "length / speed",
        ),
        (gun_speed.pass_time_s,),
        ("1.2m 0.4m/s",),
    ),
    Subject(
        "pass-speed",
        "the speed of a pass that was timed",
        (
            need("length", shapes.PART, "of the pass"),
            need("time", shapes.SECONDS, "that it took"),
        ),
        lambda given: exact(
            "gun speed",
            gun_speed.speed_of_pass_mm_s(given["length"], given["time"]),
            shapes.SPEED,
            "length / time",
        ),
        (gun_speed.speed_of_pass_mm_s,),
        ("1.2m 3s",),
    ),
    Subject(
        "passes",
        "the passes that put the full film on a panel",
        (need("width", shapes.PART, "of the panel, across the passes"), _FAN, _OVERLAP),
        lambda given: exact(
            "passes",
            gun_speed.passes_for_width(given["width"], given["fan"], given["overlap"]),
            shapes.COUNT,
            "n passes lay the full film over (n + 1) pitch - fan",
        ),
        (gun_speed.passes_for_width,),
        ("500mm 250mm 50%",),
    ),
    Subject(
        "efficiency",
        "the transfer efficiency that a wet-film reading implies",
        (need("film", _READING, _TEETH), _DELIVERY, _FAN, _OVERLAP, _SPEED),
        _efficiency,
        (transfer_efficiency.transfer_efficiency_from_film,),
        ("40um:50um 200ml/min 250mm 50% 0.4m/s", "400um:500um 200ml/min 250mm 50% 0.4m/s"),
    ),
    Subject(
        "efficiency-band",
        "the transfer efficiency to begin with",
        (
            need("hvlp", YES_NO, "a high volume, low pressure gun"),
            may("large", YES_NO, "the part is large and flat", default="yes"),
        ),
        _band,
        (transfer_efficiency.default_band,),
        ("yes", "yes large=no", "no"),
    ),
)
