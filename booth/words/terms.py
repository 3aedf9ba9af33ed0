"""The table of the words of the trade, read by ``glossary``.

A term: the word as the screen has it, after commas its other forms (plural, the short one); its
sentence; words that mean the same and stand on no screen, but still find it. The sentences are plain
descriptions of common terms: common practice, no source.
"""

from __future__ import annotations

TABLE = """
abrade, abraded
  To roughen a hard film with sandpaper or a pad, so that the next coat can hold on to it.
air cap
  The part at the front of the gun with the air holes: its air breaks the coating into mist and shapes it.
  never: aircap, air nozzle
air change, air changes
  How often in an hour the exhaust moves as much air as the room holds.
atomise, atomises, atomised
  To break a liquid into fine drops; the gun does it with air.
  never: atomize, atomizes, atomized
band
  The range from the least to the most that is wanted.
batch, batches
  What was mixed at one time; its pot life is its own.
catch, catches
  To spray into a measuring cup for a set time, to see how much the gun gives.
clean the gun
  To rinse it and take it apart before anything sets in it.
  never: clean-up, cleanup
coat, coats
  One even film over the whole part, laid in overlapping passes.
coating system, coating systems
  Several products that go onto the same part one after the other, as primer, base and clear.
conventional
  A gun, or its air, at full pressure; it makes more mist than an HVLP gun.
cumulative
  Added up: each mark includes all that was poured before.
cure, cured, cures
  To harden through and through, which goes on long after a film feels dry.
cut-in
  The pressure at which the compressor starts.
cut-out
  The pressure at which the compressor stops.
data sheet, data sheets
  The maker's page on the product: how to mix it, how to spray it, how long to wait.
  never: datasheet, data-sheet, technical sheet
delivery
  How much coating leaves the gun in a minute with the trigger fully pulled.
  never: flow rate, fluid flow, fluid output, fluid rate, throughput
dew margin
  How many degrees the part itself is warmer than the dew point; too few, and water settles on it.
  never: dew-point spread, part over dew point, margin over dew point
dew point
  The temperature at which the air's own water begins to settle on a surface, as on a cold bottle.
  never: dewpoint
dip cup, dip cups
  A flow cup on a handle: it is dipped under, lifted out, and timed until its stream breaks.
distance
  How far the tip of the gun is from the part.
  never: gun distance, standoff, stand-off
drop coat, drop coats
  A light last coat from further away, to even out the flakes of a metallic.
dry film, dry films
  How thick a coat is when it has dried; it is thinner than when it was wet.
  never: dry film thickness
dry spray
  Drops that dried before they landed: the film is rough, like fine sandpaper.
efflux time, efflux times, efflux
  The seconds that a flow cup takes to run out: the longer, the thicker the coating.
  never: drain time, outflow time, flow time
exhaust, exhaust fan
  The ventilator and duct that move vapour and mist out of the room.
  never: extractor, extraction fan
face velocity
  How fast the air moves through the open front of a spray booth.
fan, fans
  The flat spray that leaves the gun; its width is measured on paper at the distance at which you spray.
  never: spray width, pattern width
film
  The layer of coating on the part.
fisheye, fisheyes
  A round crater in the film where grease or silicone pushed the coating away.
flash-off
  The wait in which solvent or water leaves a coat, before the next coat or the oven.
  never: flash off, flash time, flashing off, flashoff
flood test
  To spray in one place until the paper drips: the drips show whether the air cap blows evenly.
flow cup, flow cups
  A cup with a hole in its bottom: the seconds that it takes to run out tell how thick the coating is.
  never: viscometer cup
fluid
  What the gun sprays: coating, mixed, thinned and strained.
free air
  Air as it is in the room, before it is compressed.
full coat, full coats
  A wet coat of the whole thickness wanted.
gravity gun
  A spray gun with its cup on top, from which the coating runs in by itself.
handle, handling
  To touch, turn and move the part with care; it may be used only later.
hardener, hardeners
  The component that makes a two-pack coating set; once it is in, the pot life runs.
  never: activator, catalyst, curing agent
hiding
  When the colour beneath no longer shows through.
HVLP
  High volume, low pressure: a gun that sprays with much air of low pressure, so that more lands.
in range
  Between the least and the most that is wanted.
  never: on target
induction
  The wait after mixing before the mix may be sprayed.
  never: sweat-in, sweating-in, stand-in time
inlet
  Where the air enters the gun; its pressure is read there, with the trigger pulled.
  never: gun pressure, air inlet
isocyanate, isocyanates
  A substance in many two-pack hardeners that can close the airways for life; a dust mask is no help.
lower explosive limit
  The least vapour in air that can burn.
  never: lower flammable limit, LFL
masking
  Tape and paper over what is not to be coated.
mesh
  The fineness of a strainer: how wide its openings are.
metallic, metallics
  A coating with metal flakes, which show every change of pace and distance.
mil
  A thousandth of an inch; films are measured in it. 1 mil is 25.4 µm.
mm2/s, mm²/s
  The unit of viscosity: water has about 1, a coating ready to spray about 20 to 100.
  never: centistokes, cSt
nearly over
  Of a pot life: its last part, at most half an hour.
needle
  The pin in the gun that opens as the trigger is pulled; how far it may go back sets the delivery.
needle seal
  What keeps coating from leaking along the needle; painters also say packing.
open front
  The open side of a spray booth, through which the air comes past the painter.
  never: open face
orange peel
  A film that dried bumpy, like the skin of an orange.
orifice
  The hole that the liquid runs through, in a cup or in the tip.
overlap
  How much of each pass lies on the one before; half is usual.
overspray
  Mist that misses the part or bounces off, and settles elsewhere.
pace
  How fast the gun moves along the part.
  never: travel speed, traverse speed
part, parts
  Each piece that is coated; in a mix, a share of the whole.
  never: workpiece, workpieces
pass, passes
  One straight sweep of the gun from one end of the part to the other.
  never: stroke, strokes
pitch
  How far to move over for the next pass.
  never: step-over, stepover, pass spacing
pot life, pot lives
  How long a mix can be sprayed before it gets too thick or sets.
  never: potlife, working life
profile, profiles
  The file in which this program keeps what the data sheet of one product says.
psi, bar, kPa
  Units of pressure: 1 bar is 14.5 psi or 100 kPa.
rated duty
  The share of the time that the compressor may run, as its maker says.
  never: duty cycle
receiver
  The tank of the compressor, which holds air under pressure.
  never: air tank, compressor tank, reservoir
recoat window, recoat windows, window
  The time from when the next coat or product may go on until it no longer may.
  never: overcoat window, overcoating window, recoat interval, recoating interval
regulator
  The valve with a gauge that sets the air pressure.
RH, relative humidity, humidity
  How much water the air holds, as a share of the most that it can at that temperature.
run in the film, a run, makes runs, runs and sags
  A streak where too much coating flowed down.
sag, sags
  Coating that slid down in a broad curtain.
solvent pop, pops
  Small blisters where solvent broke out of a film that had skinned over.
strainer, strainers
  The fine sieve that coating is poured through on its way into the cup.
tack coat, tack coats
  A first thin coat that gets sticky and holds the next one.
tack off, tack cloth
  To wipe the last dust off with a slightly sticky cloth.
tacky
  Sticky to the touch, and leaving no coating on the finger.
tape
  As a wait: from when masking tape may be stuck onto the film, as for a second colour.
thinner, thinners
  The liquid that makes a coating run more easily.
  never: reducer, diluent
tip, tips
  The small end of the gun that the coating leaves through; its hole is measured in mm.
  never: nozzle, fluid nozzle, fluid tip
tooth, teeth, wet-film gauge
  A comb of steps that is pressed into the wet film: the last tooth that gets wet tells how thick it is.
touch test, touch tests
  A finger on a spot that does not show, to feel whether the film is wet, tacky or dry.
transfer efficiency, what lands
  The share of the coating that lands on the part; the rest is overspray.
two-pack
  A coating of two components that sets by itself once they are mixed.
  never: two-component, 2K
viscosity, viscosities
  How thick a liquid is: how hard it is to make it run.
volatile compounds, VOC
  What evaporates from a coating and adds to smog; laws limit it.
volume solids
  The share of the volume that stays when the film has dried.
  never: solids by volume, volume of solids
waterborne
  Thinned with water; it dries slowly in damp or still air.
  never: water-based, water-borne
wet film, wet films
  How thick a coat is just after it was laid.
  never: wet film thickness
"""
