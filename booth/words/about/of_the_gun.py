"""Behind '?'. Steps that set the gun."""

from __future__ import annotations

from booth.words.about.headed import about

AIR = about("""
What it is
The pressure at the gun's inlet, read with the trigger pulled, against the profile's range. With
the trigger released the gauge shows what stands in the hose, not what reaches the air cap. The
data sheet and the gun's instructions come first.

Take care
Never point the gun at anybody, never put a hand before the air cap: air and fluid under pressure
go through skin. Let the pressure out before you take the gun apart.

Rule
How long the trigger can be held = receiver volume x pressure lost / pressure of the room /
(demand - supply). Down to the cut-in, the pressure at which the compressor starts, the receiver
alone feeds the gun; below it the compressor helps, for its rated share of the time. You may pull
with the receiver full or half empty, so the time counts from the cut-in.

Demand, receiver, delivered flow, cut-in, cut-out and rated duty are those of the shop file, in
free air (air at the pressure of the room). A compressor's displacement is not what it delivers.

What it really delivers: Space when it starts, Space when it stops, no air drawn meanwhile. In how
many seconds its rating would fill the receiver stands beside it.

Limits
HVLP (high volume, low pressure) is 0.1 to 10 psi at the air cap; above 10 psi there a gun works
as a conventional one. Which inlet pressure gives which pressure at the air cap belongs to the
gun: a test cap with a gauge tells, no formula does.

An estimate: a fast draw cools the air and shortens the time up to 1.4 times. The receiver has to
hold the inlet pressure and 1 to 1.5 bar (15 to 22 psi) more for regulator, filter and hose; what
a gauge at the receiver shows, trigger pulled, counts more. Water in the receiver and leaks make
a fill look quicker or slower than it is.

Source
HVLP: 40 CFR 63.11180 (from memory, not checked), 40 CFR 63.801.

How long the trigger can be held: Boyle's law, as in the US DOE / ORNL tools for compressed air.

Regulator, filter and hose: common practice, no source.
""")

CATCH = about("""
What it is
Delivery: how much leaves the gun in a minute with the trigger fully pulled. It is the volume
caught over the time the trigger was held.

What to do
Gravity and pressure-fed guns: air off, or turned right down so that nothing is atomised into the
measuring cup, unless your gun's instructions say otherwise. A suction gun gives nothing without
air.

Space again ends the catch early: the time that really passed is used.

What is caught of the coating counts as gone from the pot; where it was poured back, type what is
left at the step Thin.

Take care
Pressure never on skin: a stand or a clamp holds the measuring cup, not a hand.

Rule
A weight becomes a volume through the density of what was caught: the profile's, or water's.

Turns to try: the line between the nearest of your own catches of the coating with this gun and
tip, past jobs included; beyond what was caught only the way to turn is told. Water as coating:
the middle one (median) of your own pairs, caught with both at one setting. Both are estimates.

Limits
Water runs faster than paint and atomises with less air: a water catch brings the needle near, it
is not the paint's delivery. No published rule turns one into the other.

A gravity gun gives less as its cup empties, and another amount with the air on: catch with the
cup as full as it is when you spray.

Source
Line through the catches: isotonic regression, Ayer et al. 1955.

How to catch, water and the full cup: common practice, no source.
""")

FAN = about("""
What it is
The width of the fan is what the paper shows from edge to edge of the wet pattern, gun square to
it, at the distance at which you spray. Every later figure that needs the fan (pitch of the
passes, pace, wet film, what lands) takes it from here.

What to do
Fluid first, fan second: opened fully, then, with the trigger pulled, turned in until the pattern
just begins to narrow. Turned in further, it gets heavy in the middle. The gun's instructions and
the data sheet come first.

Take care
Every test pattern is spraying: breathing and eyes protected, exhaust on, as for the job.

Rule
Pitch, how far to move over for the next pass = fan x (1 - overlap). Half over half is usual.

Limits
The fan grows with the distance: measure at the distance you will keep. Too close makes runs, too
far makes dry spray.

Source
Overlap of a half: MIL-HDBK-1110, 9.6.8.

Setting of the fan: common practice, no source.
""")

PATTERN = about("""
What it is
What the wet shape on the paper says about air cap, tip, fan and air, and what to turn. At the row
Overlap: how even the film of several passes is.

What to do
↑ ↓ choose the shape that the wet paper shows. Or type how heavy it is in equal zones from one end
to the other, a digit each, 0 nothing, 9 the heaviest: 3567653. What to turn stands beneath, one
thing at a time, a new paper after each. Keep the same shape again and the mark moves to the next
thing to try.

Flood test: turn the air cap so that the fan lies flat, hold the trigger until the paper drips,
and compare the drips from left to right. Equal lengths: nothing points to a dirty cap or tip.
Longer at one end: see the last shape in the list.

Take care
Every test pattern is spraying: breathing and eyes protected, exhaust on, as for the job. Before
cap, tip or needle are touched: air off, pressure out, no finger over the tip.

Rule
The plot is the film of several passes over a panel, each as on the paper, straight and at one
pace: 1 is the mean film. The passes are added up, exactly as the paper was read.

The figure is the thickest film over the thinnest, in the middle where all passes overlap. How much
the film varies about its mean is told in percent: standard deviation over mean, the coefficient
of variation. Most even is the overlap from 25 % to 75 % at which it varies least.

More overlap is more passes: the pace has to rise, or the film grows.

Limits
The named shapes are models, and zones by eye are rough, so the plot is no better than they are. A
wandering hand comes on top; wet paint levels some of it out.

Half over half is usual; with a fan that is heavy in the middle (a parabola) even that gives 1.5
to 1.

Source
Shapes and what to turn: US Army TM 43-0139, pages 5-9 and 5-11; the order, the flood test and the
limits of a hand: common practice, no source.

Overlap of a half: MIL-HDBK-1110, 9.6.8.
""")

PACE = about("""
What it is
How long one pass takes, so that the film comes out as thick as wanted: the length of the pass
over the speed of the gun.

What to do
The bar crosses the screen in the time of one pass over the length typed, with the overrun past
both ends, without the turn.

Your own pass: Space as it begins, Space as it ends. A hand is late by about 0.2 s at either end,
so long passes tell more; passes that agree within a tenth are averaged.

Rule
Gun speed = delivery x what lands / (wet film wanted x pitch). Pitch = fan x (1 - overlap).

Delivery, fan and overlap are this job's own where they were measured; the lines under the figure
say from where each is. A reading at the step Wet film replaces the usual band of what lands by
what you do: it takes the coating caught, the fan measured and a pass timed here.

Limits
What lands on the part (transfer efficiency) varies with gun, part and painter by a factor of
three, so the speed is an estimate with two ends: HVLP on large flat parts 60 to 70 %,
conventional air 20 to 50 %.

A hand holds about 0.2 to 0.8 m/s (40 to 160 ft/min): a figure outside asks for another delivery,
not another arm.

The film is a mean: how even it is, the step Test pattern shows. The gauge decides.

Source
Gun speed: conservation of volume.

What lands: common practice, no source; 65 % is asked by one rule for clean air, 25 % taken in 40
CFR 60.313.

Speed of a hand: common practice, no source.
""")
