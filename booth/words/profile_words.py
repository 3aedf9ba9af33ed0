"""A coating profile in plain lines, in the units shown now; what matters first stands first."""

from __future__ import annotations

from booth.profile.model import (
    AtTemperature,
    CoatPlan,
    Film,
    Gun,
    Hardener,
    Mix,
    NextProduct,
    Profile,
    Range,
    Thinner,
    WaitRule,
    Waits,
)
from booth.profile.sheet_time import sheet_time
from booth.units import Kind, System, show

#: How each wait of a product is called; whatever wait is added to the model is among them.
WAITS = {name: name.replace("_", " ") for name in Waits.__struct_fields__} | {
    "flash_off": "flash-off",
    "dust_free": "dust-free",
    "before_bake": "before heat",
}
NEXT = {name: name.replace("_", " ") for name in NextProduct.__struct_fields__ if name != "name"}


def range_words(span: Range | None, kind: Kind, system: System) -> str:
    """A range as '8.0 to 10.0 fl oz/min', 'at least …' or 'up to …'; empty where there is none."""
    if span is None:
        return ""
    # A range of times is that of a flow cup: it stays in seconds, however long it is.
    places = 1 if kind is Kind.TIME else None
    if span.low is None:
        return f"up to {show(span.high or 0.0, kind, system, places=places)}"
    if span.high is None:
        return f"at least {show(span.low, kind, system, places=places)}"
    if span.low == span.high:
        return show(span.low, kind, system, places=places)
    high = show(span.high, kind, system, places=places)
    low = show(span.low, kind, system, unit=kind is Kind.TIME, places=places)
    return f"{low} to {high}"


def wait_words(rule: WaitRule | None, system: System) -> str:
    """A wait as '10 to 15 min at 70 °F, until matt all over'; a table row by row."""
    if rule is None:
        return ""
    said = [_time(row) + _place(row, system) for row in rule.rows]
    return ", ".join([*said, f"until {rule.until}"] if rule.until else said)


def _time(row: AtTemperature) -> str:
    return sheet_time(row.time_s, row.to_s)


def _place(row: AtTemperature, system: System) -> str:
    """At which temperature and humidity, with a blank before it; empty where the sheet does not say."""
    said = [] if row.at_c is None else [show(row.at_c, Kind.TEMPERATURE, system)]
    if row.at_percent is not None:
        said.append(show(row.at_percent, Kind.PERCENT, system))
    return f" at {' and '.join(said)}" if said else ""


def profile_lines(profile: Profile, system: System) -> tuple[str, ...]:
    """Give what the profile says that matters before a job: a line for each thing."""
    limits, margin = profile.limits, profile.limits.dew_margin_c
    lines = [profile.product or profile.name]
    lines.append(f"Demo: {profile.source}" if profile.demo else f"From: {profile.source}")
    if profile.hazards:
        lines.append(f"Hazards: {', '.join(profile.hazards)}")
    lines += ["", *_mix_lines(profile.mix, system)]
    if profile.efflux is not None:
        target = range_words(profile.efflux.target_s, Kind.TIME, system)
        lines.append(f"Efflux: {target} in {profile.efflux.cup}")
    lines += _line("Gun", _settings(profile.gun, system))
    lines += _line("Film", _film(profile.film, system))
    lines += [line for coat in profile.coats for line in _coat(coat, system)]
    lines += _waits(profile.waits, system)
    for each in profile.next_products:
        said = {word: wait_words(getattr(each, name), system) for name, word in NEXT.items()}
        lines += _line(f"Then {each.name or 'another product'}", said)
    weather = {
        "air": range_words(limits.air_c, Kind.TEMPERATURE, system),
        "humidity": range_words(limits.humidity_percent, Kind.PERCENT, system),
        "part": range_words(limits.part_c, Kind.TEMPERATURE, system),
        "dew margin at least": ""
        if margin is None
        else show(margin, Kind.TEMPERATURE_DIFFERENCE, system),
    }
    lines += _line("Weather", weather)
    lines += ["", *profile.notes] if profile.notes else []
    return tuple(lines)


def _line(what: str, said: dict[str, str]) -> list[str]:
    """What belongs together, in one line: a window of 24 rows shows all of a usual profile."""
    words = [f"{name} {value}".strip() for name, value in said.items() if value]
    return [f"{what}: {', '.join(words)}"] if words else []


def _settings(of: Gun | CoatPlan, system: System) -> dict[str, str]:
    """Settings of the gun: of the product, or of one of its coats."""
    gun = of if isinstance(of, Gun) else Gun()
    return {
        "tip": range_words(gun.tip_mm, Kind.LENGTH, System.METRIC),
        "inlet": range_words(of.inlet_kpa, Kind.PRESSURE, system),
        "delivery": range_words(gun.delivery_ml_min, Kind.DELIVERY, system),
        "fan": range_words(of.fan_mm, Kind.LENGTH, system),
        "distance": range_words(of.distance_mm, Kind.LENGTH, system),
        "overlap": range_words(of.overlap_percent, Kind.PERCENT, system),
    }


def _times(times: Range | None) -> str:
    if times is None:
        return ""
    ends = dict.fromkeys(f"{end:g}" for end in (times.low, times.high) if end is not None)
    return " to ".join(ends)


def _film(film: Film, system: System) -> dict[str, str]:
    coats, wet = _times(film.coats), range_words(film.wet_um, Kind.THICKNESS, system)
    return {
        "": f"{coats} coat{'' if coats == '1' else 's'}" if coats else "",
        "wet each": wet,
        "dry in all": range_words(film.dry_total_um, Kind.THICKNESS, system),
        "solids": range_words(film.volume_solids_percent, Kind.PERCENT, system),
    }


def _coat(coat: CoatPlan, system: System) -> list[str]:
    times, wait = _times(coat.times), wait_words(coat.wait, system)
    said = {
        "": f"{times} times" if times not in ("", "1") and not coat.until_hidden else "",
        "until hidden,": f"{times} coats" if coat.until_hidden else "",
        "wet": range_words(coat.wet_um, Kind.THICKNESS, system),
        **_settings(coat, system),
        "then": wait,
    }
    return _line(f"Coat: {coat.name}" if coat.name else "Coat", said) or [f"Coat: {coat.name}"]


def _waits(waits: Waits, system: System) -> list[str]:
    """The waits of one temperature in one line; a table, and what a sign ends, in its own."""
    together: dict[str, dict[str, str]] = {}
    alone = []
    for name, word in WAITS.items():
        rule: WaitRule | None = getattr(waits, name)
        if rule is None:
            continue
        if len(rule.rows) == 1 and not rule.until:
            place = _place(rule.rows[0], system)
            together.setdefault(place, {})[word] = _time(rule.rows[0])
        else:
            alone.append(f"{word.capitalize()}: {wait_words(rule, system)}")
    lines = [line for place, said in together.items() for line in _line(f"Waits{place}", said)]
    return lines + alone


def _mix_lines(mix: Mix | None, system: System) -> list[str]:
    if mix is None:
        return ["Mix: none, stir"]
    parts = " : ".join(f"{part.parts:g} {part.name}" for part in mix.parts)
    weights = [part.parts_by_weight for part in mix.parts if part.parts_by_weight is not None]
    if weights:
        parts += f" (by weight {' : '.join(f'{each:g}' for each in weights)})"
    lines = [f"Mix by {mix.by}: {parts}" if len(mix.parts) > 1 else "Mix: one can, stir"]
    lines += [line for each in mix.hardeners for line in _hardener(each, system)]
    for thinner in (mix.thinner, *mix.thinners):
        lines += _thinner(thinner, system) if thinner is not None else []
    lines += _line("Pot life", {"": wait_words(mix.pot_life, system)})
    return lines + _line("Induction", {"": wait_words(mix.induction, system)})


def _hardener(each: Hardener, system: System) -> list[str]:
    said = {
        "for": range_words(each.for_c, Kind.TEMPERATURE, system),
        "parts": "" if each.parts is None else f"{each.parts:g}",
        "by weight": "" if each.parts_by_weight is None else f"{each.parts_by_weight:g}",
        "pot life": wait_words(each.pot_life, system),
    }
    if each.waits is not None:
        said |= {WAITS[name]: wait_words(getattr(each.waits, name), system) for name in WAITS}
    return _line(f"Hardener {each.name}", said) or [f"Hardener {each.name}"]


def _thinner(each: Thinner, system: System) -> list[str]:
    most = "" if each.limit_percent is None else f"{each.limit_percent:g} %"
    said = {
        each.name: range_words(each.usual_percent, Kind.PERCENT, system),
        "up to": most,
        "for": range_words(each.for_c, Kind.TEMPERATURE, system),
        "goes in": each.when or "",
    }
    return _line("Thinner", said) or [f"Thinner: {each.name}"]
