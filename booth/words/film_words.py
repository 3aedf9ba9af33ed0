"""The film on a part in all, in words. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from booth.job.film_total import FilmTotal
from booth.profile.model import Range
from booth.units import Kind, System, show, shown_unit
from booth.words.profile_words import range_words


def total_words(total: FilmTotal, wanted: Range | None, system: System) -> str:
    """What lies there against what is wanted, and what is not known of it; empty where nothing is
    wanted and one coat says it all. As 'about 50 to 62 of 55 to 80 µm dry after 2 coats'."""
    if wanted is None and (not total.read or len(total.read) + len(total.unread) < 2):
        return ""
    asked, coats = range_words(wanted, Kind.THICKNESS, system), len(total.read)
    said = [f"{_film(total, system)} of {asked}" if asked else _film(total, system)]
    if total.film is None:
        said += ["the profile gives no volume solids"] if total.read else []
    else:
        unit = "" if asked else f" {shown_unit(Kind.THICKNESS, system)}"
        after = f"after {coats} coat{'s' if coats > 1 else ''}"
        said[0] += f"{unit} dry {f'from {_coats(total.read)} alone' if total.unread else after}"
        if total.thinned and wanted and wanted.high and total.film.low_um > wanted.high:
            said.append("more than is wanted")
        if not total.thinned:
            said.append("the thinner in it is not known")
    said += [f"{_coats(total.unread)} not read"] if total.unread else []
    return "; ".join(said)


def _film(total: FilmTotal, system: System) -> str:
    if total.film is None:
        return "not known"
    ends = (total.film.low_um, total.film.high_um)
    low, high = (show(end, Kind.THICKNESS, system, unit=False) for end in ends)
    if not total.thinned:
        return f"at most about {high}"
    return f"about {low} to {high}" if low != high else f"about {low}"


def _coats(numbers: Sequence[int]) -> str:
    """'coat 2', 'coats 1, 2'."""
    return f"coat{'s' if len(numbers) > 1 else ''} {', '.join(map(str, numbers))}"
