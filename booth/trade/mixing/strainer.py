"""The strainer of the cup: the opening of its mesh, and the number of the sieve that has it."""

from __future__ import annotations

from booth.trade.result import Outside, Said, require

#: Opening [um] -> number, US standard sieves: ASTM E11, nominal openings, No. 18 to No. 325 (as the
#: library `fluids` carries them).
_OPENINGS = "1000 850 710 600 500 425 355 300 250 212 180 150 125 106 90 75 63 53 45"
_NUMBERS = "18 20 25 30 35 40 45 50 60 70 80 100 120 140 170 200 230 270 325"
SIEVES = dict(zip(map(int, _OPENINGS.split()), map(int, _NUMBERS.split()), strict=True))
#: An opening within so much of a sieve's is that sieve's [um]: sheets round to whole micrometres.
SAME_UM = 1.0
STRAINER_UM = (10.0, 2000.0)


def sieve_number(strainer_um: float) -> int | Outside:
    """Give the number of the standard sieve with the opening of a strainer.

    Args:
        strainer_um: opening of the strainer's mesh [um], 10 to 2000.

    Returns: number of the sieve [1]; Outside where no standard sieve has this opening, as for the 190
        and 280 um of common paint strainers.
    Range: openings of 45 to 1000 um. The threads to an inch of a cloth are near the number, not it.
    Source: ASTM E11, nominal sieve openings, as carried by the library fluids.

    >>> sieve_number(250.0)
    60
    >>> type(sieve_number(190.0)).__name__
    'Outside'
    """
    require("The opening of the strainer", strainer_um, *STRAINER_UM, unit="um")
    nearest = min(SIEVES, key=lambda opening: abs(opening - strainer_um))
    if abs(nearest - strainer_um) <= SAME_UM:
        return SIEVES[nearest]
    return Outside(
        f"No standard sieve has an opening of {Said(strainer_um, 'um')}.",
        "Ask for the strainer by its opening in micrometres.",
        "ASTM E11, nominal openings",
    )
