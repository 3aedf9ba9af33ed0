"""From a plain word of the trade to the subject that is meant: other words, names, descriptions."""

from __future__ import annotations

import difflib
import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from booth.figure.subject import Subject
from booth.trade.faults.fault_table import FAULTS
from booth.trade.faults.ranked_causes import fault_named
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import BadInput
from booth.trade.ventilation.solvents import solvent, solvent_names

#: Subjects that are offered for a word that may mean several.
MOST = 6
#: Letters from which on a word is looked for in the descriptions.
LEAST_LETTERS = 3

#: Words one would try, and the subjects they mean, the likeliest first.
_WORDS = """
activator hardener catalyst           mix mix-from
air                                   fresh-air air-changes hold air-base
amount quantity                       material mix
area surface                          rectangle-area sheet-area box-area cylinder-area circle-area
batch                                 mix mix-stock material
bar psi pressure                      receiver-needed hold hvlp-cap-pressure
board panel door                      sheet-area rectangle-area passes-for-width
booth                                 required-exhaust face-velocity design-velocity
bounce overspray waste loss           efficiency efficiency-band material coverage
catch                                 delivery catch-statistics delivery-water
cfm scfm                              trigger-duty hold air-base required-exhaust
coats                                 coats-to-dry-film material film-in-all
compressor                            hold recovery trigger-duty longest-trigger
convert conversion                    equivalent viscosity air-base
cup                                   viscosity which-cup equivalent efflux cups-to-fill
cure dry drying tack touch            wait-from-table flash-off recoat-opens
cut-in cut-out                        hold recovery
defect trouble                        fault pattern
density gravity sg                    mixed-density water-density delivery
dew condensation                      dew-point dew-margin weather
dewpoint                              dew-point
dft                                   dry-film
dilution                              dilution-air fresh-air
din ford iso shell zahn               viscosity equivalent which-cup efflux
duty                                  trigger-duty hold
exhaust extraction extractor          required-exhaust face-velocity air-changes
fan                                   pitch passes-for-width evenness pattern
film mil mils micron microns          wet-film dry-film gauge mean-wet-film
fire explosion explosive flammable    fresh-air dilution-air solvent
flash flashoff                        flash-off waterborne-flash-off
flow                                  delivery viscosity air-base
gallon gallons litre litres liter     material mix coverage
liters                                material mix coverage
gauge comb                            gauge
grams weight scale                    mix parts-by-volume mix-shares
gun                                   speed delivery efficiency
hose                                  receiver-needed hold
humidity rh                           weather dew-point humidity-from-wet-bulb wait-from-humid-table
hvlp                                  hvlp-cap-pressure efficiency-band
inlet                                 receiver-needed hold
last lasts empty                      time-to-empty
lel                                   solvent dilution-air fresh-air
makeup make-up                        fresh-air required-exhaust
mass                                  mix mixed-density delivery
mesh strainer sieve                   sieve-number
needle                                needle-curve turns-for-delivery delivery-at-turns
overlap                               pitch evenness most-even-overlap passes-for-width
pace                                  speed
pass                                  pass-time speed-of-pass passes-for-width
pot potlife                           pot-life pot-life-left
ppm                                   vapour-by-volume vapour-by-weight vapour fresh-air
psychrometer bulb                     humidity-from-wet-bulb wet-bulb dew-point
ratio                                 mix mix-shares mix-from
receiver tank                         hold free-air-stored receiver-for-trigger receiver-needed recovery
recoat window overcoat                recoat-opens recoat-closes wait-from-table
repeatability repeat consistent spc   control-limits runs catch-statistics
reducer                               thinner same-cup mix-thinner thinner-room
room                                  air-changes time-to-clear fresh-air
solids                                dry-film wet-film solids-after-thinning volatile
spreading-rate spread-rate            coverage
stripes striping                      evenness most-even-overlap pattern
temperature cold heat                 weather dew-point viscosity-at pot-life flash-off
thickness                             wet-film dry-film gauge mean-wet-film
time wait                             flash-off recoat-opens recoat-closes pot-life wait-from-table
transfer                              efficiency efficiency-band
trigger                               longest-trigger trigger-duty hold
turns                                 turns-for-delivery delivery-at-turns
vapor vapours vapors                  vapour
ventilation                           fresh-air required-exhaust air-changes time-to-clear
voc                                   voc-of-coating voc-less-water voc-of-solids volatile
waterborne                            waterborne-flash-off closes-waterborne
wet wft                               wet-film
yield                                 coverage
"""


#: Words that the first argument of a subject may be, where it is one of some.
FIRST_VALUES: Mapping[str, tuple[str, ...]] = {
    "fault": tuple(FAULTS),
    "pattern": tuple(each.value.replace(" ", "-") for each in Seen),
    "solvent": solvent_names(),
}


def _words() -> dict[str, tuple[str, ...]]:
    found = {}
    for line in _WORDS.strip().splitlines():
        words, subjects = re.split(r"\s{2,}", line)
        found.update(dict.fromkeys(words.split(), tuple(subjects.split())))
    return found


class Meant(NamedTuple):
    """subjects: what may be meant, the likeliest first; sure: the first of them is; more: words
    that go before those that were typed, as the name of a solvent; spelt: only the spelling is near.
    """

    subjects: tuple[str, ...]
    sure: bool = False
    more: tuple[str, ...] = ()
    spelt: bool = False


def meant_by(word: str, known: Mapping[str, Subject]) -> Meant:
    """Find the subjects that a word may mean; none where nothing is like it."""
    wanted = "-".join(word.lower().replace("_", " ").replace("-", " ").split())
    if wanted in known:
        return Meant((wanted,), True)
    direct = tuple(name for name in _words().get(wanted, ()) if name in known)
    if len(direct) == 1 and not set(_in_names(wanted, known)) - set(direct):
        return Meant(direct, True)
    if not direct:
        for name, find in (("solvent", solvent), ("fault", fault_named)):
            if name in known and _finds(find, wanted):
                return Meant((name,), True, (wanted.replace("-", " "),))
    found = dict.fromkeys([*direct, *_in_names(wanted, known)])
    if not direct:
        found |= dict.fromkeys(_in_descriptions(wanted, known))
    spelt = not found
    if spelt:
        names = [*known, *_words()]
        for near in difflib.get_close_matches(wanted, names, n=3, cutoff=0.7):
            found |= dict.fromkeys([near] if near in known else _words()[near])
    return Meant(tuple(name for name in found if name in known)[:MOST], spelt=spelt)


def _finds(find: object, word: str) -> bool:
    names = (word, word.replace("-", " "))
    for name in names:
        try:
            assert callable(find)
            find(name)
        except BadInput:
            continue
        return True
    return False


def _in_names(word: str, known: Mapping[str, Subject]) -> Sequence[str]:
    return [name for name in known if set(word.split("-")) <= set(name.split("-"))]


def _in_descriptions(word: str, known: Mapping[str, Subject]) -> Sequence[str]:
    """Give the subjects that speak of it, those that do so first of all first."""
    if len(word) < LEAST_LETTERS:
        return []
    sought = re.compile(rf"\b{re.escape(word.replace('-', ' '))}")
    places = {}
    for name, subject in known.items():
        about = [subject.says, *(f"{each.name} {each.meaning}" for each in subject.arguments)]
        found = sought.search("; ".join(about).lower())
        if found:
            places[name] = found.start()
    return sorted(places, key=places.__getitem__)
