"""What a mix is made of: its components, how they are measured, the thinner on top. Pure.

Where the profile mixes nothing there is one component, the coating itself, and perhaps thinner.
"""

from __future__ import annotations

from booth.profile.model import Profile, Thinner
from booth.trade.mixing.components import Component, Measure, parts_by_volume, with_thinner
from booth.trade.result import BadInput

#: The one component of a product that is not mixed.
COATING = "coating"
#: Thinner below this is none: nobody can measure it [%].
LEAST_PERCENT = 0.01


def thinner_of(profile: Profile) -> Thinner | None:
    return profile.mix.thinner if profile.mix is not None else None


def usual_percent(profile: Profile) -> float:
    """The thinner that the profile usually has, the middle of its range [%]; 0 where it names none."""
    thinner = thinner_of(profile)
    usual = thinner.usual_percent if thinner is not None else None
    return usual.middle if usual is not None else 0.0


def components(profile: Profile) -> tuple[Component, ...]:
    """The components without thinner, in the order in which they are poured."""
    if profile.mix is None or not profile.mix.parts:
        return (Component(COATING, 1.0, profile.film.density_g_ml),)
    return tuple(Component(each.name, each.parts, each.density_g_ml) for each in profile.mix.parts)


def densities(profile: Profile) -> dict[str, float | None]:
    """The density of all that can be poured, by name [g/ml]; None where it is not known."""
    known = {each.name: each.density_g_ml for each in components(profile)}
    thinner = thinner_of(profile)
    return known if thinner is None else {**known, thinner.name: thinner.density_g_ml}


def measures(profile: Profile) -> tuple[Measure, ...]:
    """By what it can be poured, the profile's own way first.

    One way where a density is missing, unless the sheet gives the parts both ways.
    """
    own = _parts_by(profile)
    other = Measure.WEIGHT if own is Measure.VOLUME else Measure.VOLUME
    both = None not in densities(profile).values() or bool(_weighed(profile))
    return (own, other) if both else (own,)


def _weighed(profile: Profile) -> tuple[Component, ...]:
    """The components by the sheet's own parts by weight; none where it does not give all of them."""
    parts = profile.mix.parts if profile.mix is not None else ()
    every = [(each.name, each.parts_by_weight, each.density_g_ml) for each in parts]
    given = [(name, weight, density) for name, weight, density in every if weight is not None]
    return tuple(Component(*each) for each in given) if len(given) == len(every) else ()


def _parts_by(profile: Profile) -> Measure:
    return Measure(profile.mix.by) if profile.mix is not None else Measure.VOLUME


def recipe(
    profile: Profile, percent: float, poured_by: Measure
) -> tuple[tuple[Component, ...], Measure]:
    """All that is poured and whether its parts are by volume or weight. Raises BadInput.

    On a scale the sheet's own parts by weight count, where it gives them beside those by volume.
    """
    mix, by = components(profile), _parts_by(profile)
    weighed = _weighed(profile) if poured_by is Measure.WEIGHT else ()
    if weighed:
        mix, by = weighed, Measure.WEIGHT
    thinner = thinner_of(profile)
    if percent < LEAST_PERCENT or thinner is None:
        return mix, by
    if thinner.limit_percent is not None and percent > thinner.limit_percent:
        raise BadInput(
            f"{percent:g} % of {thinner.name} is more than the {thinner.limit_percent:g} % that "
            "the profile allows. Take less."
        )
    if by is Measure.WEIGHT:
        mix = parts_by_volume(mix)
    return with_thinner(mix, thinner.name, percent, thinner.density_g_ml), Measure.VOLUME
