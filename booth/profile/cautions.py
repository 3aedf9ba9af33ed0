"""The cautions of a job: those its profile's hazards bring, and those that always hold.

They warn and defer to the data sheet, local codes and licensed practice; none of them says that
anything is harmless, and a test holds that. In the words below a caution is a paragraph: its key, its
title, what it is about in letters for six metres, two to five lines of at most 60 cells, its source. A paragraph of a regulation 'from memory,
not checked' was not read again for this page; the others were, in the regulation, in a letter of
its office or in WAC 296-24, the State of Washington's rule with the same paragraphs.
"""

from __future__ import annotations

import textwrap
from dataclasses import dataclass

from booth.files.safe_text import visible
from booth.profile.model import Hazard, Profile

#: How the keys of a profile's own warnings begin; a number follows.
OWN = "of the profile "
#: Cells of the widest line.
WIDEST = 60
#: Stands behind the key of a caution that is about the coating alone: its vapour, its poison, its fire.
#: What may hold with water as well has no such mark.
DRY = " | not with water"


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution, acknowledged by itself. afar: what it is about, in a word or two for six metres;
    source: where it comes from; with_water: whether it holds where only water is sprayed, too."""

    key: str
    title: str
    afar: str
    lines: tuple[str, ...]
    source: str
    with_water: bool = True


def _cautions(words: str) -> tuple[Caution, ...]:
    paragraphs = [paragraph.splitlines() for paragraph in words.strip().split("\n\n")]
    return tuple(
        Caution(key.removesuffix(DRY), title, afar, tuple(lines), source, not key.endswith(DRY))
        for key, title, afar, *lines, source in paragraphs
    )


#: Present in every job, in this order.
ALWAYS = _cautions("""
data sheet
The data sheet and the codes rule
DATA SHEET
Read the product's data sheet and safety data sheet first.
Where they, local codes or licensed practice ask for more
than this program says, they are right.
Some products may be sprayed by licensed people only.
common practice, no source

ignition | not with water
Fire: vapour finds the spark
NO SPARKS
Vapour runs along the floor, out of the door, to the next
pilot light, heater, switch, charger or cigarette.
Put them out and unplug them before the can is opened, and
keep them out until the vapour is gone.
Have an extinguisher for burning liquids within reach.
29 CFR 1910.107(c)(2), (g)(7); (c)(3) from memory, not checked

this laptop | not with water
This laptop can be the spark
LAPTOP AWAY
Keep it and its charger outside the spraying area, behind a
partition or a window, or 20 ft (6 m) away, where no vapour
and no mist reaches them. Local codes may ask for more.
The same goes for telephones, fans, radios and drills.
29 CFR 1910.107(c)(6); OSHA letter of December 28, 1976

static | not with water
Static: ground everything metal
GROUND METAL
Ground metal parts, drums and cans; wire can to can
before pouring solvent.
Flowing paint, dry air and plastic cups build up charge.
29 CFR 1910.107(c)(9) and (e)(9) (from memory, not checked)

pressure
Pressure never on skin
PRESSURE
Never point a gun or an air hose at anyone, or your hand
in front of it. Air and paint go through the skin: however
small the hole, go to hospital at once, with the data sheet.
Shut the air and let the pressure out before taking apart.
Drain the receiver often: water rusts it from the inside.
common practice, no source; draining: WAC 296-24-94003(2)

eyes and skin
Eyes and skin covered
EYES, SKIN
Goggles or a full face; gloves the solvent does not eat;
sleeves and collar closed.
Splash in the eye: rinse with water for 15 minutes, then
see a doctor. Know where the water is before you start.
common practice, no source; the data sheet's first aid rules

breathing
Breathing protection
BREATHING
Wear what the safety data sheet names, fitted and tested;
a dust mask stops no vapour, and a beard lets it all in.
Change cartridges as their maker says. If you smell or taste
solvent, leave the room. Supplied air needs a clean intake,
far from engines, and no oil and no carbon monoxide in it.
29 CFR 1910.134(i) for supplied air; the rest is from memory, not checked

fresh air | not with water
Fresh air is no permission to breathe it
FRESH AIR
Exhaust before, during and after; nobody in without need.
The program's air figure counts against fire only.
No exhaust may push vapour past a spark.
29 CFR 1910.94(c)(6) (from memory, not checked); common practice

rags | not with water
Soaked rags
SOAKED RAGS
Rags, filters and masking soaked with coating burn easily,
and some heat by themselves in a heap.
Into a metal can with a lid, emptied every day, outdoors.
29 CFR 1910.107(g)(3), as WAC 296-24-37013(3)
""")

#: By the hazard that is their key.
BY_HAZARD = {
    Hazard(caution.key): caution
    for caution in _cautions("""
isocyanate | not with water
Isocyanates: supplied air
AIR SUPPLY
A cartridge mask is not enough: supplied air, full time,
from mixing until the air is clear and the gun is clean.
Nothing warns you: it harms below what you can smell.
Once sensitised, a trace can close the airways for life.
Skin counts too. Asthma or a bad chest: do not spray it.
NIOSH, for the isocyanate HDI: supplied air throughout (limits 0.005 ppm on average, 0.020 ppm at any moment)

flammable | not with water
This coating burns
IT BURNS
It gives off vapour that burns at room temperature.
Only as much in the spraying area as the day needs; lids on.
Overspray on walls, floor and filters burns too: clean it
off with tools that make no spark. Dry nitrocellulose
overspray catches fire from friction or heat alone.
29 CFR 1910.107(g)(2); (e)(2) and nitrocellulose from memory, not checked

solvent vapour | not with water
Solvent vapour numbs and poisons
VAPOUR
Headache, dizziness, a light mood: get out into fresh air.
The nose gets used to it and stops warning.
Vapour goes on leaving the film for hours after the job.
common practice, no source

sensitiser | not with water
It can make you allergic
ALLERGY
Resins and hardeners of this kind sensitise the skin: a
rash today can mean that you never work with it again.
Fresh gloves; wash with soap, never with thinner.
Sanding dust of a film that has not cured counts too.
common practice, no source

corrosive | not with water
It burns skin and eyes
CORROSIVE
A component is an acid or a strong base.
Goggles and long gloves while pouring and mixing.
On the skin: off with the clothes, water for 15 minutes.
common practice, no source; the data sheet's first aid rules

dust | not with water
Dust
DUST
Sanding dust and dry overspray harm the lungs, and some
pigments are poison.
Particle filter on; sand wet or with extraction.
Fine dust in the air can burn like vapour.
common practice, no source

self-heating rags | not with water
Rags and overspray of this coating heat by themselves
RAGS SELF-HEAT
Wet rags, filters and scrapings can catch fire hours
later, with nobody there.
Soak them in water in a lidded metal can, outdoors, today.
Never mix residues of different coatings in one filter.
29 CFR 1910.107(g)(3), (g)(6), as WAC 296-24-37013(3), (6)
""")
}

#: What a rehearsal with water brings, before those of the job that hold with water as well.
OF_WATER = _cautions("""
water only
Water only, out of a clean gun
CLEAN GUN
Clean water, nothing else: no thinner, no cleaner, no soap.
What is left of an earlier coating or hardener goes into the
mist: clean such a gun to the needle first, not with water.
These cautions are for water. Those for the coating itself
come before the real job, each of them.
common practice, no source

current, noise, moving parts
Current, noise, moving parts
NO WET HANDS
Mist and electricity: spray away from sockets, lamps, motors
and from this laptop; wet hands touch no plug.
Compressor and gun are loud: cover your ears.
Belt, pulley and fan of the compressor stay behind their
guard; it can start by itself at any moment.
common practice, no source

water left in the gun
Water must not stay in the gun
DRY IT
Left inside it rusts tip, needle, gun and receiver.
In a coating that is not waterborne it spoils the film, and
an isocyanate hardener reacts with it and gives off gas: in
a closed can or pot pressure builds up. Dry everything;
rinse with thinner only after the real job's cautions.
common practice, no source
""")


def cautions_with_water(profile: Profile) -> tuple[Caution, ...]:
    """Give the cautions before a rehearsal with water: its own, then those of the job that hold with
    water as well; what a data sheet warns of itself stays, since it is not known what it is about."""
    return (*OF_WATER, *(each for each in cautions_for(profile) if each.with_water))


def cautions_for(profile: Profile) -> tuple[Caution, ...]:
    """Give the cautions to go through before a job with `profile`, one by one.

    First what this product brings, then its data sheet's own warnings, then what always holds.
    """
    brought = [BY_HAZARD[hazard] for hazard in Hazard if hazard in profile.hazards]
    own = [
        Caution(
            key=f"{OWN}{number}",
            title="The profile's own warning",
            afar="WARNING",
            lines=tuple(textwrap.wrap(visible(words), WIDEST)) or ("-",),
            source=profile.source,
        )
        for number, words in enumerate(profile.cautions, start=1)
    ]
    return (*brought, *own, *ALWAYS)


def is_of_one_product(caution: Caution) -> bool:
    """Whether it is a data sheet's own: its key says nothing outside of the job with that product."""
    return caution.key.startswith(OWN)
