"""Behind '?'. Steps at the can and the cup."""

from __future__ import annotations

from booth.words.about.headed import about

MIX = about("""
What it is
What the cup or the scale shows when to stop pouring. Marks are cumulative: all that was poured
before is in them.

What to do
Set the scale to zero with the empty cup on it, once, and not between the pours.

Space: poured to the mark. Poured too much, or not all of it? Type what the cup or scale really
shows, then Enter.

→ notes the batch numbers of the cans: with them a complaint, or another shade, can be traced.

Take care
Hardeners and thinners have hazards of their own. The product's data sheet decides.

Rule
Parts are those of the profile, by volume or by weight as its data sheet gives them; between the
two the densities of the components decide (weight is volume times density). Where the sheet gives
parts by weight too, a scale goes by them. Once anything was weighed, in this job or the last one,
the scale is offered first.

Hardener and thinner: those that the data sheet means for today's air are offered first; parts,
density and pot life are those of the one that is chosen.

Nothing can be taken out, so after too much the batch grows until the parts are right again:
components poured before are added to. Within a hundredth a pour counts as on its mark.

Thinner is a percentage of the volume of the coating, hardener included, on top of it. More than
the profile's limit is refused. Where the data sheet has it go in after the induction, the mix
begins without it; where it does not say, that is said.

Pot life and induction begin when the last component is in. Poured onto the rest of an older
batch, the pot life that is over first rules all of it: fresh material does not make old material
young.

Limits
Volumes are taken to add up, which solvents do to about 1 %.

The rest of an older batch is taken to be of the same parts. Where it holds another hardener, the
careful end of each wait counts.

Source
Parts, pot life, induction: the product's data sheet, as its profile holds it. A pot life at
another temperature: half for each 10 °C (18 °F) up, UFGS 09971, 3.7.1.3 (an old edition).

A hundredth: common practice, no source. The careful end: this program's choice, no source.
""")

FLOW_CUP = about("""
What it is
Efflux time: how many seconds the cup takes to run out. Thick coating runs longer than thin. The
seconds run from the start the cup's standard asks for (dip cups: the rim breaks the surface; Ford
and ISO cups: the orifice is opened) to the first break of the stream.

What to do
Both key presses count from the instant at which the key went down.

Measure at the temperature of the data sheet: viscosity moves by up to 5 % per degree F.

Rule
Seconds become kinematic viscosity by the formula of the cup's own standard.

Another cup than the profile's is compared through the seconds that the same coating takes in it.

Runs are suspect when they spread more than the cup's standard allows one operator; for cups whose
standard is not at hand here, only the spread is shown.

Limits
The formulas hold for liquids that flow like thin oil. Outside a cup's range nothing is converted:
the flow is turbulent below it, and above it solvent leaves while you wait.

Dip cups differ between makers: there is no standard Zahn cup.

Source
Cups and their limits: ASTM D1200, ASTM D4212, ISO 2431.

Temperature: ASTM D4212, section 8.1.
""")

THIN = about("""
What it is
The thinner to add now to the mix that is left: the cautious part of what the target may take, for
it cannot be taken out again.

What to do
Add, stir, time the cup again. All runs have to be at one temperature: viscosity moves by up to 5
% a degree F.

Mix left is what was mixed, less what was caught of it and shot on paper (two seconds a paper);
after a coat nobody knows it: type it. Once anything was weighed, thinner is weighed too, where
the profile gives its density.

Where the seconds lie outside of what the cup converts, go by the seconds alone: add 2.5 % of the
coating, stir, time again. Limit and temperature come first.

Rule
Efflux times become viscosities by the cup's own standard, within its range only.

From one measurement two published rules give a band: the blending index its low end, the
logarithmic rule its high one. Neither was made for paint and they disagree, so this is an
estimate and the amount given is the smaller.

From two amounts of thinner on, a straight line is laid through your own measurements of this mix:
how its viscosity (as a logarithm) falls with the share of thinner in it. How far the line may be
off is shown.

Thinner lowers the volume solids: VS / (1 + thinner per coating), and the wet film for the same
dry film grows by as much. The wet film of the profile is taken to be meant for its usual thinner.

Limits
Real mixes fall fast at first and slower later.

The limit is the profile's, in percent of the coating's volume. Local rules on solvent may allow
less; the product's data sheet decides.

Source
Blending index: ASTM D7152 (Refutas). Logarithmic mixing rule: Arrhenius. Line: least squares.

Temperature: ASTM D4212, section 8.1. Solids: Organic Finishing Guidebook 2012-13, p. 615.

2.5 % at a time, two seconds a paper: common practice, no source.
""")

STRAIN = about("""
What it is
A lump in the tip is a stripe on the part: everything that goes into the cup is strained.

What to do
A coarse metallic is strained beforehand, and the cup's own filter left out: the flakes would clog
it. The data sheet's mesh comes first.

Rule
The opening of the mesh is the profile's. Where a standard sieve has it, its number stands beside
it; the usual openings of paint strainers have none.

Source
Sieve numbers: ASTM E11.

Coarse metallics: common practice, no source.
""")
