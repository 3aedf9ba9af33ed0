"""Behind '?'. Steps before the gun is filled."""

from __future__ import annotations

from booth.words.about.headed import about

CAUTIONS = about("""
What it is
The usual cautions for this kind of product, from the hazards its profile declares. They are not
all there is: the product's safety data sheet, local codes and licensed practice come first.

What to do
All are gone through once a day for each product. In another job of the same day those that read
as they did then stand on one page, and one key says that all still hold; a new one is gone
through by itself.

Limits
Having read them does not make a job free of danger, and this program never says so.

Source
Each caution ends with its own source.
""")

PREPARE = about("""
What it is
What is done before the can is opened. A film is as good as what lies under it: most fisheyes,
lifting and loose coats begin here.

What to do
Space ticks a line; each tick is kept. Degrease before sanding, or the grease is sanded in; water
in the trap comes out of the gun.

Take care
Sanding dust of old coatings can hold lead and other poisons: test for it, wear a mask, use
extraction; local codes rule.

Source
The lines are this step's own, from the profile or the usual list: common practice, no source.
""")

WEATHER = about("""
What it is
The dew margin: how many degrees the part itself is warmer than the dew point of the air. Too few,
and water condenses under the film or in it.

What to do
Measure the part itself, with a surface thermometer: metal brought in from the cold stays colder
than the air for hours.

Where the shop file names the file of a sensor, its air and humidity are assumed until you type
others; what is older than a quarter of an hour, or cannot be read, is not used.

Rule
The dew point follows from air temperature and humidity. The margin asked for is the profile's;
where it gives none, the stricter of 3 °C and 5 °F.

Waits for today: a table in the profile comes first. One time at one temperature is scaled by a
rule of thumb and marked as an estimate; a touch test may decide.

Limits
Outside the product's limits or outside the rule no wait is known.

Air over the film matters for waterborne products: a closed garage moves about 0.1 m/s, a spray
booth 0.5 m/s (100 ft/min). Without it the profile's own air is assumed.

Source
Dew point: the Magnus formula, Alduchov and Eskridge 1996.

Dew margin: 3 °C as practised with ISO 8502-4; 5 °F in MIL-HDBK-1110, 9.6.6.
""")

FRESH_AIR = about("""
What it is
The least fresh air that thins the vapour of what you spray to a quarter of its lower explosive
limit, the least vapour in air that can burn, while the trigger is pulled, in a room where it
mixes evenly.

It is a minimum against fire. It is not a permission to breathe the air, however much is moved:
limits for breathing lie far below it. Wear what the data sheet asks for. With isocyanates that is
supplied air throughout.

What to do
A fan's plate is its free flow, not what it moves through filters: measure at the open front. A
figure you have kept holds until you keep another.

Take care
Vapour is heavier than air and runs along the floor to pilot lights, heaters, switches, chargers.
No exhaust may push it past a spark. Ground metal and cans. The product's data sheet, local codes
and licensed practice rule.

Rule
Solvent: the profile's percentage in the mixed coating, else all that is not solids, and the
thinner as mixed (before that, the most the profile names). Delivery: caught, else the profile's.
Where a solvent is not known, the one that needs the most air is taken.

Open front of a booth: 100 ft/min (0.51 m/s) on average over the front of a dry booth. Of this and
the air against fire, the larger counts.

Air changes = exhaust / volume of the room. Time until a hundredth of the vapour is left = mixing
factor (how much longer because the air mixes badly) x volume / exhaust x ln 100, from when
nothing evaporates any more; a wet film goes on giving off solvent.

Limits
All of it is taken to evaporate as it is sprayed; open cans, cleaning and drying racks come on
top. Local codes may ask for 20 or 10 % of the lower explosive limit.

Source
Least fresh air: 29 CFR 1910.94(c)(6)(ii), from memory, not checked. Limits of solvents: the
lowest of that regulation's table, IEC 60079-20-1:2010 (an old edition) and usual safety data
sheets.

Open front: 29 CFR 1910.107(b)(5)(i).

Air changes: CDC, MMWR 54 RR-17, 2005, appendix B.

Isocyanates: NIOSH.
""")

AMOUNT = about("""
What it is
How much ready-to-spray material this job needs, the thinner in it.

What to do
Smooth surfaces are meant: rough or absorbing ones take more. 'Enough in any case' mixes for the
lower share that lands.

Lost (can, strainer) and left over (cup, gun, test paper) begin with common figures: type your
own.

Rule
Material = area x wet film x coats / what lands / (1 - lost), and what stays in the gun. A film of
1 µm over 1 m2 is 1 ml.

Wet film = dry film x (1 + thinner) / solids, where solids is the share of the volume that stays
when it has dried.

Areas are worked out from simple shapes; a sheet counts both faces and its four edges. Cups are
filled to what the shop file says, else 20 US fl oz.

Pot life is held against what a coat takes and the waits between the coats, as they are today. A
coat takes a multiple of its time at the trigger, for turns, walking round and refills: once three
coats were timed in this shop, the multiple is on the long side of what is usual here; until then
it is two.

Limits
What lands on the parts is an estimate between two ends. On large flat parts a reading at the step
Wet film replaces the usual band by what you do; past the edges of small and open ones more is
lost than a panel tells.

The data sheet's pot life comes first.

Source
Material: the spreading-rate formula of data sheets.

Wet film of a dry one: Organic Finishing Guidebook 2012-13, p. 615.

Lost, left over and twice the time at the trigger: common practice, no source.
""")

PLAN = about("""
What it is
The time of day at which the last coat is on, if the gun goes on wherever a part is ready and
waits only where none is. What has been is taken from the job; the rest moves on with the clock
until a coat begins.

A solid block is spraying, with the number of its coat; a dotted one is a wait, flash-off or until
the recoat window opens; a thin line is a part that stands ready; a heavy one is a part past its
window. The mark in the rule above is now.

Rule
Of the parts that are ready the one with the fewest coats comes first, in the order of the job; a
part whose window would close meanwhile goes before it.

Minutes for a coat on one part: as typed; else as this part's own coats took; else area x wet film
/ what lands / delivery, the time at the trigger, times what the coats of this shop took of theirs
(the middle one, past jobs included, from three coats on; until then twice); else as the coats
took so far; else 5 minutes, a guess.

IT FITS only where all of it fits: weather read within the hour and inside the product's limits,
dew margin, windows, pot life, every wait and the induction known, the compressor, and the time a
coat takes is not a guess.

Limits
Waits are those of the profile for today's weather, as everywhere else; an estimate is marked ~.
The data sheet comes before all of this.

Of a coating system the plan goes on through the products to come, in the weather read last; each
of their coats is taken to need as long as one of the present product.

Source
Twice the time at the trigger, 5 minutes for a coat: common practice, no source.
""")
