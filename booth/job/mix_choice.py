"""Which hardener and which thinner suit today's air, and the profile as a mix made with them has it. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

import msgspec
from msgspec.structs import replace

from booth.log.events import BatchMixed, Poured, WeatherRead
from booth.log.fold import Job
from booth.profile.model import Hardener, MixPart, Profile, Range, Thinner, Waits

Option = Hardener | Thinner


class Choice(msgspec.Struct, frozen=True):
    """What to take today; suits: whether the sheet means it for this air, None where that is not known.

    Where none suits `option` is the one whose air is nearest: to be told, never to be called right.
    """

    option: Option
    suits: bool | None


def choice_for_today(options: Sequence[Option], air_c: float | None) -> Choice | None:
    """Give the hardener, or the thinner, to take in air of `air_c` [degC], None where it was not read.

    Of several that suit it is the one whose range lies around that air most closely; None without
    options.
    """
    ranges = [each.for_c or Range() for each in options]
    if not options:
        return None
    if air_c is None or all(span == Range() for span in ranges):
        return Choice(options[0], None)
    suits = [each for each, span in zip(options, ranges, strict=True) if span.holds(air_c)]
    said = [each for each in suits if each.for_c is not None]
    if said:
        return Choice(min(said, key=lambda each: _off_middle(each, air_c)), True)
    if suits:
        return Choice(suits[0], None)
    return Choice(min(options, key=lambda each: _off_ends(each, air_c)), False)


def _off_middle(option: Option, air_c: float) -> float:
    return abs(option.for_c.middle - air_c) if option.for_c else 0.0


def _off_ends(option: Option, air_c: float) -> float:
    span = option.for_c or Range()
    return min(abs(end - air_c) for end in (span.low, span.high) if end is not None)


def hardeners(profile: Profile) -> tuple[Hardener, ...]:
    """The hardeners to choose from, the one that the mix is given with first."""
    mix = profile.mix
    if mix is None or not mix.parts:
        return ()
    usual = mix.parts[-1].name.casefold()
    return tuple(sorted(mix.hardeners, key=lambda each: each.name.casefold() != usual))


def thinners(profile: Profile) -> tuple[Thinner, ...]:
    """The thinners to choose from, the usual one first."""
    mix = profile.mix
    if mix is None:
        return ()
    return (*((mix.thinner,) if mix.thinner is not None else ()), *mix.thinners)


def options_of(profile: Profile) -> tuple[Sequence[Option], Sequence[Option]]:
    """The hardeners and the thinners to choose from."""
    return hardeners(profile), thinners(profile)


@lru_cache(maxsize=64)
def mixed_with(profile: Profile, hardener: str = "", thinner: str = "") -> Profile:
    """Give the profile as it is for a mix with this hardener and thinner, by their names.

    Parts, density, pot life and waits are the hardener's own where it has them. A name that the
    profile does not know, or none, changes nothing; without a usual thinner the first is it.
    """
    mix = profile.mix
    if mix is None:
        return profile
    if thinners(profile):
        chosen = next((each for each in thinners(profile) if each.name == thinner), None)
        mix = replace(mix, thinner=chosen or mix.thinner or mix.thinners[0])
    found = next((each for each in hardeners(profile) if each.name == hardener), None)
    if found is None:
        return replace(profile, mix=mix) if mix != profile.mix else profile
    *others, usual = mix.parts
    changes = {"parts": (*others, _part(found, usual)), "pot_life": found.pot_life or mix.pot_life}
    return replace(profile, mix=replace(mix, **changes), waits=_waits(profile.waits, found.waits))


def _part(hardener: Hardener, usual: MixPart) -> MixPart:
    # Other parts by volume, or another density, are other parts by weight, which are not known then.
    same = hardener.parts in (None, usual.parts) and hardener.density_g_ml in (
        None,
        usual.density_g_ml,
    )
    weight = hardener.parts_by_weight or (usual.parts_by_weight if same else None)
    density = hardener.density_g_ml or usual.density_g_ml
    return MixPart(hardener.name, hardener.parts or usual.parts, density, weight)


def _waits(usual: Waits, own: Waits | None) -> Waits:
    if own is None:
        return usual
    names = Waits.__struct_fields__
    return Waits(**{name: getattr(own, name) or getattr(usual, name) for name in names})


def in_use(job: Job, before: int | None = None) -> Profile:
    """The profile as the mix in use has it: of the last batch or pour, else as today's air asks for.

    before: of the mix that was in use when the event of this number came.
    """
    made: list[BatchMixed | Poured] = [*job.batches, *job.pours]
    made = [each for each in made if before is None or each.n < before]
    if made:
        last = max(made, key=lambda each: each.n)
        return mixed_with(job.profile, last.hardener, last.thinned_with)
    return todays(job.profile, job.weather)


def todays(profile: Profile, weather: WeatherRead | None) -> Profile:
    """The profile with the hardener and the thinner to take in this weather."""
    air_c = weather.air.value if weather is not None else None
    choices = (choice_for_today(each, air_c) for each in options_of(profile))
    return mixed_with(profile, *(choice.option.name if choice else "" for choice in choices))
