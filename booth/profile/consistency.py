"""What a profile says taken together: combinations that no product can mean are faults.

Comparisons leave a tenth of a percent for rounded figures. Films leave five: a data sheet rounds
wet and dry film to two digits, which is off by up to 5 % (1.05 is printed as 1.0).
"""

from __future__ import annotations

from booth.files.faults import Faults
from booth.profile.model import Profile, Range, WaitRule

__all__ = ["judge"]

ROUNDED = 0.001
FILM_ROUNDED = 0.05

#: (the shorter wait, the longer wait, what is wrong, what is expected); a product cannot have them
#: the other way round.
ORDER: tuple[tuple[str, str, str, str], ...] = (
    ("recoat_opens", "recoat_closes", "a recoat window that closes before it opens",
     "recoat_closes later than recoat_opens"),
    ("flash_off", "recoat_closes", "a recoat window that closes before the flash-off is over",
     "recoat_closes later than flash_off"),
    ("dust_free", "handle", "a film that can be handled before it is dust-free",
     "handle later than dust_free"),
)  # fmt: skip


def judge(profile: Profile, faults: Faults) -> None:
    """Tell every combination in `profile` that cannot be."""
    _mix(profile, faults)
    _waits(profile, faults)
    _film(profile, faults)
    _steps(profile, faults)


def _mix(profile: Profile, faults: Faults) -> None:
    mix = profile.mix
    if mix is None:
        return
    names: dict[str, int] = {}
    for number, part in enumerate(mix.parts):
        name = part.name.casefold()
        if name in names:
            found = f"the same component as number {names[name] + 1}"
            faults.add(("mix", "parts", number, "name"), found, "each component once")
        names.setdefault(name, number)
    if len(mix.parts) < 2:
        for key, value in (("pot_life", mix.pot_life), ("induction", mix.induction_s)):
            if value is not None:
                found = f"{key} for a mix of {len(mix.parts) or 'no'} parts"
                faults.add(
                    ("mix", key), found, "two or more [[mix.parts]], which start it when mixed"
                )
    thinner = mix.thinner
    if (
        thinner is not None
        and thinner.usual_percent is not None
        and thinner.limit_percent is not None
        and thinner.usual_percent > thinner.limit_percent * (1 + ROUNDED)
    ):
        found = f"usually {thinner.usual_percent:g} % with a limit of {thinner.limit_percent:g} %"
        faults.add(("mix", "thinner", "usual"), found, "no more than the limit")


def _waits(profile: Profile, faults: Faults) -> None:
    for shorter, longer, found, expected in ORDER:
        first: WaitRule | None = getattr(profile.waits, shorter)
        second: WaitRule | None = getattr(profile.waits, longer)
        if first is None or second is None:
            continue
        for at_c in sorted({row.at_c for rule in (first, second) for row in rule.rows}):
            times = _time_at(first, at_c), _time_at(second, at_c)
            if times[0] is None or times[1] is None:
                continue
            if times[0] > times[1] * (1 + ROUNDED):
                told = f"{found}, at {at_c:.3g} C: {_time(times[0])} and {_time(times[1])}"
                faults.add(("waits", longer), told, expected)
                break


def _time_at(rule: WaitRule, at_c: float) -> float | None:
    """The time at `at_c` [s]: of a row, or on the line between two; None outside the table."""
    for row in rule.rows:
        if abs(row.at_c - at_c) < 0.05:
            return row.time_s
    for low, high in zip(rule.rows, rule.rows[1:], strict=False):
        if low.at_c < at_c < high.at_c:
            share = (at_c - low.at_c) / (high.at_c - low.at_c)
            return low.time_s + share * (high.time_s - low.time_s)
    return None


def _time(time_s: float) -> str:
    for seconds, unit in ((3600, "h"), (60, "min")):
        if time_s >= seconds:
            return f"{time_s / seconds:.3g} {unit}"
    return f"{time_s:.3g} s"


def _film(profile: Profile, faults: Faults) -> None:
    film = profile.film
    solids, solvent = film.volume_solids_percent, film.solvent_percent
    if solids is not None and solvent is not None and solids + solvent > 100 * (1 + ROUNDED):
        found = f"{solids:g} % solids and {solvent:g} % solvent"
        faults.add(("film", "solvent_percent"), found, "together no more than 100 %")
    wet, dry = film.wet_um, film.dry_total_um
    if wet is None or dry is None:
        return
    # DFT = WFT x VS / (1 + s); the thickest dry film is that without thinner, the thinnest that
    # with all the thinner the profile allows.
    coats = "1 coat" if film.coats == 1 else f"{film.coats} coats"
    share = 1.0 if solids is None else solids / 100
    if wet.high is not None and dry.low is not None:
        most = film.coats * wet.high * share
        if dry.low > most * (1 + FILM_ROUNDED):
            _dry(faults, f"more dry film than {coats} can leave, {most:.3g} um", dry)
    if solids is not None and wet.low is not None and dry.high is not None:
        least = film.coats * wet.low * share / (1 + _most_thinner(profile) / 100)
        if dry.high < least * (1 - FILM_ROUNDED):
            _dry(faults, f"less dry film than {coats} will leave, {least:.3g} um", dry)


def _dry(faults: Faults, found: str, dry: Range) -> None:
    ends = " to ".join(f"{end:.3g}" for end in (dry.low, dry.high) if end is not None)
    faults.add(
        ("film", "dry_total"),
        f"{found} (dry_total is {ends} um)",
        "coats x wet x volume_solids to agree with dry_total",
        "Check film.coats, film.wet, film.volume_solids and film.dry_total.",
    )


def _most_thinner(profile: Profile) -> float:
    thinner = profile.mix.thinner if profile.mix else None
    if thinner is None:
        return 0.0
    return thinner.limit_percent or thinner.usual_percent or 0.0


def _steps(profile: Profile, faults: Faults) -> None:
    for number, step in enumerate(profile.steps):
        if step.kind == "cautions" and not step.must:
            found = "cautions that may be passed over without a word"
            faults.add(("steps", number, "must"), found, "true", "Delete the line.")
