"""Behind '?'. Spraying, and what comes after."""

from __future__ import annotations

from booth.words.about.headed import about

COATS = about("""
What it is
Times every coat on every part, and what has to be waited for after it.

What to do
Space when the first pass of a coat on the chosen part begins, Space when its last pass ends.
Flash-off starts by itself at the end. ↑ ↓ choose the part; → offers the wet-film gauge while the
coat is wet, and touch tests.

Touch where it does not show: w wet, k tacky, d dry; → has them without a letter.

Rule
WAIT: flash-off, or the recoat window has not opened. READY: the wait is over. CLOSING: the last
fifth of the window, at most half an hour. LATE: the window has closed; what helps then (often
sanding) is in the product's data sheet.

NOT KNOWN: no weather read lately, outside the product's limits, or outside the rule. Nothing is
counted down and nothing rings: the time since the coat is shown, and a coat takes one more press,
unless a touch test, where one counts, has said dry.

A wait marked ~ is an estimate or a bound: the profile gives one time at one temperature. It is
stretched in the cold and never shortened in the warm; a closing window is shortened in the warm
and never lengthened in the cold.

A touch that says dry ends a flash-off that is only estimated or not known, and a wait that the
data sheet ends by a sign ('until dull'). Before half of the wait it takes one more press. Wet or
tacky makes the wait a quarter longer.

Before a coat everything known is looked at, the worst first: weather and its age, dew margin,
induction, pot life, thinner, cup, air, delivery, tip, fan, window, compressor. STOP: it would
spoil the part; to begin all the same takes one more press. CHECK: it may. What was amiss is kept
with the coat.

Limits
No published law scales flash-off with temperature.

A touch test shortens no time that the sheet itself gives for today, and opens no window for
another product: you cannot feel how far a film has cured. A window still closes when it would
have closed, whatever the touch.

'In this shop 1.2 to 1.5 times this wait': between these lies the middle of what touch
tests of past jobs came to (95 % sure unless it says less). It is told and opens nothing: sheet and
estimate stay as they are.

That nothing is said before a coat does not mean that nothing is wrong.

Source
Windows and flash-off: the product's data sheet, as its profile holds it. Estimates: how fast
solvents evaporate; times that halve with so many degrees, after UFGS 09971 (an old edition).

What a touch test adds, and when a window begins to close: common practice, no source.

What this shop has learnt: order statistics; no distribution is assumed.
""")

WET_FILM = about("""
What it is
How thick the coat is while it is still wet. A gauge with teeth gives not one figure but two: the
film lies between the last tooth that came out wet and the first that stayed dry.

What to do
Read it at once: solvent leaves and the film shrinks. Gauge square to the surface, on a curve
along its length, away from edges. Several places tell more than one.

Type 0 where no tooth came out wet. If you type only the wet tooth, the dry one suggested is the
next tooth known from your own earlier readings, or of an example gauge in mil: look at your own
gauge.

Rule
Dry film = wet film x volume solids / (1 + thinner).

In all: the mean reading of each coat, dry, added up to a span: at its low end every coat at its
thinnest with the least solids, at its high end at its thickest with the most. A coat that was not
read is not guessed at.

What lands (transfer efficiency) = film x gun speed x pitch / delivery. It takes the coating
caught, the fan measured and a pass timed; the pace, and the amount for large flat parts, then
work with it instead of a usual band.

Limits
The mean of several readings has two ends too. Too thin, in range, too thick are said only where
the whole of it says so; else it cannot tell, and more places or finer teeth help.

What flashed off before the reading makes the dry film thicker than this.

Source
Reading the gauge, example gauge: ASTM D4414.

Dry film: Organic Finishing Guidebook 2012-13, p. 615.

What lands: conservation of volume.
""")

NEXT_PRODUCT = about("""
What it is
This job sprays several products on the same parts. Here the next one begins: its own steps, mix,
cup, catch and coats.

What to do
Enter begins it. It can be begun while the window is not open yet: mix and try it meanwhile.

Weather, areas and notes stay. What was measured and mixed so far stays in the log with its
product. To go back, void the entry in the log.

Rule
The window runs from the last coat of the product before, on each part by itself, until the first
coat of the next one is on it.

Limits
Before the window opens, trapped solvent can blister; past it the film may have to be abraded, or
a coat may lift what is under it. The data sheets rule.

Source
The window: the data sheet of the product before, as its profile holds it.
""")

CLEAN = about("""
What it is
The gun is cleaned before anything sets in it.

What to do
Space ticks a line; each tick is kept. Finishing the list also marks the mixed batches as used up,
so that their pot life no longer rings.

Take care
Rags with drying oils or two-pack residues can heat by themselves: a metal can with a lid, emptied
daily. Waste goes where local rules say.

Source
Rags: 29 CFR 1910.107(g)(3).

The lines are this step's own, from the profile or the usual list: common practice, no source.
""")

AFTER_CARE = about("""
What it is
What is left to do on the parts once the last coat is on.

What to do
Space ticks a line; each tick is kept. What is for later need not be ticked now: Enter goes on.
When the time for tape, handling, sanding and polishing comes is counted beside the coats, where
the profile gives it.

A job that is closed takes one more note from the list of past jobs: 'look again'.

Source
The lines are this step's own, from the profile or the usual list: common practice, no source.
""")

FAULTS = about("""
What it is
What may have caused a fault that you see, the likeliest cause first, and what helps against it.

What to do
Pick what is seen, and on which part. Its causes stand in one list: how usual each is, and what
this job measured of it. The large words are those of the question; without one, the large figure
is that of the first cause.

The question on top tells the first causes apart: choose what you found with ← →, Enter keeps it,
and the list is ranked anew. Backspace takes it back.

Take care
Sanding, cutting and polishing make dust of what was sprayed: wear goggles and the breathing
protection that the safety data sheet names, and work wet where the data sheet says so.

Rule
A usual cause counts three times as much as a common one, and that three times as much as one met
now and then. A figure just past its limit counts 3 to 1, one far past it and an answer 10 to 1,
one within its limit 1 to 3. A usual cause that nobody measured keeps its place.

The figures are those of the time when the last coat on the part was laid. A catch of water, a
pressure read with the trigger released and a fan that was not measured are not counted. A wet
film and a pace count as out of range only where both their ends are.

Limits
Figures point, they do not prove. The rank is no probability. The data sheet comes first.

Source
Causes: FAA-H-8083-31 ch. 8, TM 43-0139 p. 5-12, TO 1-1-8 table 4-1, and a corrosion handbook's
table of film faults; else common practice, no source.

Weights: odds as in Bayes' theorem; Jeffreys, Theory of Probability, app. B, from memory, not
checked. How usual a cause is: common practice, no source.
""")

RESULT = about("""
What it is
How the job came out, in your own words, for the next time: the settings of a job whose verdict is
'good' come up as the starting point when the same product is sprayed with the same gun.

What to do
Choose the verdict with ← →; Enter on the last row closes the job. What still runs on its parts
rings when its time comes.

A closed job can be looked at again from the list of past jobs, the next morning say: a second
verdict, which counts from then on, faults seen since, sanded, polished, cured. It can be reopened
there too.
""")

PLAIN = about("""
What it is
A step with nothing to measure.

What to do
Do it, note what may matter later, and go on with Enter.
""")
