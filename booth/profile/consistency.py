"""What a profile says taken together: combinations that no product can mean are faults.

Comparisons leave a tenth of a percent for rounded figures. Films leave five: a data sheet rounds
wet and dry film to two digits, which is off by up to 5 % (1.05 is printed as 1.0).
"""

from __future__ import annotations

from itertools import pairwise

from booth.files.faults import Faults, counted
from booth.profile.model import Film, Mix, Range, Step, WaitRule, Waits

ROUNDED = 0.001
FILM_ROUNDED = 0.05

#: (the shorter wait, the longer wait): what is wrong, where a product has them the other way round.
ORDER: dict[tuple[str, str], str] = {
    ("recoat_opens", "recoat_closes"): "a recoat window that closes before it opens",
    ("flash_off", "recoat_closes"): "a recoat window that closes before the flash-off is over",
    ("dust_free", "handle"): "a film that can be handled before it is dust-free",
}


def judge(
    faults: Faults,
    mix: Mix | None,
    film: Film | None,
    waits: Waits | None,
    steps: tuple[Step, ...] | None,
) -> None:
    """Tell every combination that cannot be, of what could be read: None where it could not, or is not there."""
    if mix is not None:
        _mix(mix, faults)
    if waits is not None:
        _waits(waits, faults)
    if film is not None:
        _film(film, mix, faults)
    _steps(steps or (), faults)


def _mix(mix: Mix, faults: Faults) -> None:
    names: dict[str, int] = {}
    for number, part in enumerate(mix.parts):
        first = names.setdefault(part.name.casefold(), number)
        if first != number:
            found = f"the same component as number {first + 1}"
            faults.add(("mix", "parts", number, "name"), found, "each component once")
    if len(mix.parts) < 2 and not faults.below(("mix", "parts")):
        for key, value in (("pot_life", mix.pot_life), ("induction", mix.induction_s)):
            if value is not None:
                found = f"{key} for a mix of {len(mix.parts) or 'no'} parts"
                expected = "two or more [[mix.parts]], which start it when mixed"
                faults.add(("mix", key), found, expected)
    usual = mix.thinner.usual_percent if mix.thinner else None
    limit = mix.thinner.limit_percent if mix.thinner else None
    if usual is not None and limit is not None and usual > limit * (1 + ROUNDED):
        found = f"usually {usual:g} % with a limit of {limit:g} %"
        faults.add(("mix", "thinner", "usual"), found, "no more than the limit")


def _waits(waits: Waits, faults: Faults) -> None:
    for (shorter, longer), wrong in ORDER.items():
        first: WaitRule | None = getattr(waits, shorter)
        second: WaitRule | None = getattr(waits, longer)
        if first is None or second is None:
            continue
        for at_c in sorted({row.at_c for rule in (first, second) for row in rule.rows}):
            short_s, long_s = _time_at(first, at_c), _time_at(second, at_c)
            if short_s is None or long_s is None or short_s <= long_s * (1 + ROUNDED):
                continue
            found = f"{wrong}, at {at_c:.3g} C: {_time(short_s)} and {_time(long_s)}"
            faults.add(("waits", longer), found, f"{longer} later than {shorter}")
            break


def _time_at(rule: WaitRule, at_c: float) -> float | None:
    """The time at `at_c` [s]: of a row, or on the line between two; None outside the table."""
    for row in rule.rows:
        if abs(row.at_c - at_c) < 0.05:
            return row.time_s
    for low, high in pairwise(rule.rows):
        if low.at_c < at_c < high.at_c:
            share = (at_c - low.at_c) / (high.at_c - low.at_c)
            return low.time_s + share * (high.time_s - low.time_s)
    return None


def _time(time_s: float) -> str:
    for seconds, unit in ((3600, "h"), (60, "min")):
        if time_s >= seconds:
            return f"{time_s / seconds:.3g} {unit}"
    return f"{time_s:.3g} s"


def _film(film: Film, mix: Mix | None, faults: Faults) -> None:
    solids, solvent = film.volume_solids_percent, film.solvent_percent
    if solids is not None and solvent is not None and solids + solvent > 100 * (1 + ROUNDED):
        found = f"{solids:g} % solids and {solvent:g} % solvent"
        faults.add(("film", "solvent_percent"), found, "together no more than 100 %")
    wet, dry = film.wet_um, film.dry_total_um
    if wet is None or dry is None:
        return
    # DFT = WFT x VS / (1 + s); the thickest dry film is that without thinner, the thinnest that
    # with all the thinner the profile allows.
    coats = counted(film.coats, "coat")
    share = 1.0 if solids is None else solids / 100
    if wet.high is not None and dry.low is not None:
        most_um = film.coats * wet.high * share
        if dry.low > most_um * (1 + FILM_ROUNDED):
            _dry(faults, f"more dry film than {coats} can leave, {most_um:.3g} um", dry)
    # Thinner that could not be read may be any amount.
    known = not faults.below(("mix",)) and solids is not None
    if known and wet.low is not None and dry.high is not None:
        least_um = film.coats * wet.low * share / (1 + _most_thinner(mix) / 100)
        if dry.high < least_um * (1 - FILM_ROUNDED):
            _dry(faults, f"less dry film than {coats} will leave, {least_um:.3g} um", dry)


def _dry(faults: Faults, found: str, dry: Range) -> None:
    ends = " to ".join(f"{end:.3g}" for end in (dry.low, dry.high) if end is not None)
    faults.add(
        ("film", "dry_total"),
        f"{found} (dry_total is {ends} um)",
        "coats x wet x volume_solids to agree with dry_total",
        "Check film.coats, film.wet, film.volume_solids and film.dry_total.",
    )


def _most_thinner(mix: Mix | None) -> float:
    thinner = mix.thinner if mix else None
    if thinner is None:
        return 0.0
    return thinner.limit_percent or thinner.usual_percent or 0.0


def _steps(steps: tuple[Step, ...], faults: Faults) -> None:
    taken: set[str] = set()
    for number, step in enumerate(steps):
        if step.kind == "cautions" and not step.must:
            found = "cautions that may be passed over without a word"
            faults.add(("steps", number, "must"), found, "true", "Delete the line.")
        if step.key in taken:
            faults.add(("steps", number, "key"), "the key of another step", "a key of its own")
        taken.add(step.key)
