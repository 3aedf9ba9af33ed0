"""What a profile says taken together: combinations that no product can mean are faults.

What is odd and may be meant is a note: the profile is read. Comparisons leave a tenth of a percent
for rounded figures. Waits and film are in files of their own.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from booth.files.faults import Faults, Path
from booth.profile.film_consistency import judge_film
from booth.profile.model import (
    Efflux,
    Hardener,
    Mix,
    Profile,
    Range,
    Step,
    Thinner,
)
from booth.profile.wait_consistency import judge_waits
from booth.profile.weight_consistency import judge_weights
from booth.toml.typed import in_unit
from booth.trade.cups.cup_names import cup_named
from booth.units import Kind

ROUNDED = 0.001
#: A target beyond the range of its cup by that factor is a slip of cup or unit; nearer ones are
#: usual on data sheets. Common practice, no source.
FAR_OUT = 2.0
#: Sheets print whole degrees: from 20 C to the next one at 21 C, or 70 F and 71 F, is no gap [K].
WHOLE_DEGREE = 1.01


def judge(faults: Faults, profile: Profile) -> None:
    """Tell every combination that cannot be, of what could be read; the rest is as if not said."""
    if profile.mix is not None:
        _mix(profile.mix, faults)
        _by_air(profile, profile.mix, faults)
    if profile.efflux is not None:
        _efflux(profile.efflux, faults)
    judge_waits(profile, faults)
    judge_film(profile, faults)
    _steps(profile.steps, faults)


def _mix(mix: Mix, faults: Faults) -> None:
    names: dict[str, int] = {}
    for number, part in enumerate(mix.parts):
        first = names.setdefault(part.name.casefold(), number)
        if first != number:
            found = f"the same component as number {first + 1}"
            faults.add(("mix", "parts", number, "name"), found, "each component once")
    if len(mix.parts) < 2 and not faults.below(("mix", "parts")):
        for key in ("pot_life", "induction", "hardeners"):
            if getattr(mix, key):
                found = f"{key} for a mix of {len(mix.parts) or 'no'} parts"
                expected = "two or more [[mix.parts]], which start it when mixed"
                faults.add(("mix", key), found, expected)
    _names(mix, faults)
    _weights(mix, faults)
    judge_weights(mix, faults)
    for path, thinner in _thinners(mix):
        usual, limit = thinner.usual_percent, thinner.limit_percent
        most = (usual.high or usual.low or 0.0) if usual is not None else 0.0
        if limit is not None and most > limit * (1 + ROUNDED):
            found = f"usually {most:g} % with a limit of {limit:g} %"
            faults.add((*path, "usual"), found, "no more than the limit")
        if thinner.when is not None and mix.induction is None:
            found = f'"{thinner.when}" where the mix has no induction'
            faults.note((*path, "when"), found, "an induction under [mix]", "Else delete the line.")


def _thinners(mix: Mix) -> Iterator[tuple[Path, Thinner]]:
    if mix.thinner is not None:
        yield ("mix", "thinner"), mix.thinner
    for number, each in enumerate(mix.thinners):
        yield ("mix", "thinners", number), each


def _names(mix: Mix, faults: Faults) -> None:
    """What is poured goes by its name: the last component is the hardener that was chosen."""
    taken = {part.name.casefold() for part in mix.parts[:-1]}
    hardeners = [(("mix", "hardeners", at), each) for at, each in enumerate(mix.hardeners)]
    named: list[tuple[Path, Hardener | Thinner]] = [*hardeners, *_thinners(mix)]
    for path, each in named:
        if each.name.casefold() in taken:
            expected = "a name that no component, hardener or other thinner has"
            faults.add((*path, "name"), "a name that is taken", expected)
        taken.add(each.name.casefold())


def _weights(mix: Mix, faults: Faults) -> None:
    given = [part.parts_by_weight is not None for part in mix.parts]
    if any(given) and mix.by == "weight":
        number = given.index(True)
        found = "parts by weight beside parts that are by weight"
        faults.add(("mix", "parts", number, "parts_by_weight"), found, "the one or the other")
    elif any(given) and not all(given):
        number = given.index(False)
        found = "no parts by weight, which other components have"
        faults.add(("mix", "parts", number), found, "parts_by_weight for all of them, or for none")


def _efflux(efflux: Efflux, faults: Faults) -> None:
    cup, target = cup_named(efflux.cup), efflux.target_s
    low = target.low if target.low is not None else cup.low_s
    high = target.high if target.high is not None else cup.high_s
    if cup.low_s <= low and high <= cup.high_s:
        return
    far = high < cup.low_s / FAR_OUT or low > cup.high_s * FAR_OUT
    ends = " to ".join(f"{end:g}" for end in dict.fromkeys((low, high)))
    tell = faults.add if far else faults.note
    tell(
        ("efflux", "target"),
        f"{ends} s in a {cup.name}",
        f"{cup.low_s:g} to {cup.high_s:g} s, the range of that cup",
        "Check cup and seconds."
        if far
        else "Outside of it seconds compare with those of the same cup only.",
    )


def _by_air(profile: Profile, mix: Mix, faults: Faults) -> None:
    """Air for which no hardener, or thinner, is meant; that neighbours overlap is usual."""
    for name, each in (
        ("hardeners", [each.for_c for each in mix.hardeners]),
        ("thinners", [thinner.for_c for _, thinner in _thinners(mix)]),
    ):
        ranges = [span for span in each if span is not None]
        if len(ranges) < 2:
            continue
        unit = faults.units.get(Kind.TEMPERATURE, "")
        for low, high in _gaps(ranges, profile.limits.air_c):
            ends = " to ".join(in_unit(end, Kind.TEMPERATURE, unit) for end in (low, high))
            found = f"none of {len(ranges)} for air of {ends}"
            expected = "one for all the air that the product allows"
            faults.note(("mix", name), found, expected, "None is chosen there: ask the data sheet.")
        for number, (one, other) in enumerate(pairwise(sorted(ranges, key=_ends)), start=2):
            if one == other:
                faults.note(("mix", name), f"{number} for the same air", "each for its own")


def _ends(span: Range) -> tuple[float, float]:
    low = -math.inf if span.low is None else span.low
    return low, math.inf if span.high is None else span.high


def _gaps(ranges: Sequence[Range], air: Range | None) -> Iterator[tuple[float, float]]:
    ends = sorted(map(_ends, ranges))
    least, most = _ends(air) if air is not None else (-math.inf, math.inf)
    reach = least if math.isfinite(least) else ends[0][0]
    for low, high in ends:
        if low > reach + WHOLE_DEGREE:
            yield reach, low
        reach = max(reach, high)
    if math.isfinite(most) and most > reach + WHOLE_DEGREE:
        yield reach, most


def _steps(steps: tuple[Step, ...], faults: Faults) -> None:
    taken: set[str] = set()
    for number, step in enumerate(steps):
        if step.kind == "cautions" and not step.must:
            found = "cautions that may be passed over without a word"
            faults.add(("steps", number, "must"), found, "true", "Delete the line.")
        if step.key in taken:
            faults.add(("steps", number, "key"), "the key of another step", "a key of its own")
        taken.add(step.key)
