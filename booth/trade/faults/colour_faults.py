"""Faults of colour and gloss: the film is whole, and looks wrong.

The form of the table stands in ``fault_table``.
"""

from __future__ import annotations

COLOUR = """
mottling | mottling and striping
    | Clouds or patches of lighter and darker colour, mostly in metallics.
    | A light coat laid across may even it out while the window is open; else sand and recoat.
    | streak, striping, clouds
3 | WET_HIGH | The coat was too wet: flakes swam.
3 | OVERLAP_LOW | The overlap was too small for this pattern.
3 | UNEVEN | The pattern lays the film unevenly. | TM
3 | TOO_EARLY | A coat was laid on one that had not flashed off.
2 | EFFLUX_LOW | The mix was too thin.
2 | THINNER_OVER | More thinner went in than is allowed.
2 | GUN_NEAR | The gun was too near.
2 | DELIVERY_HIGH | The gun delivers too much.
2 | HUMID | The air was so humid that the film stayed open and flakes went on swimming.
1 | INLET_LOW | Too little air.
1 | AIR_COLD PART_COLD | It was too cold for the film to set evenly.
2 | tilted | The gun was tilted, so one side of the pattern laid more. | TM
2 | unstirred | Flakes or pigment had settled in the cup.

banding | banding of metallics
    | Light and dark stripes along the passes, like a tiger's; they show best from one side.
    | While the window is open lay a light, even coat across from a little further off; else recoat.
    | tiger-stripes, stripe, bands
3 | OVERLAP_LOW | The overlap was too small for this pattern.
3 | UNEVEN | The pattern is heavy in one place. | TM
3 | tilted | The gun was tilted, so one side of the pattern laid more. | TM
2 | GUN_NEAR | The gun was so near that each pass lies by itself.
2 | SPEED_FAST | The gun moved too fast.
2 | WET_HIGH | The coat was too wet: flakes swam.
2 | DELIVERY_HIGH | The gun delivers too much for the pace.
1 | INLET_LOW | Too little air.
1 | unstirred | Flakes had settled in the cup.

hiding | poor hiding | The ground or the old colour shows through.
    | Lay another coat inside the window; more in one coat will run.
    | poor-hiding, thin-colour, transparent, coverage
3 | unstirred | Pigment was left at the bottom of the can or cup.
3 | COATS_FEW | Fewer coats than this colour needs.
3 | WET_LOW | The coats were too light.
2 | ground-shows | The ground is of another colour than this topcoat needs.
2 | THINNER_OVER | More thinner went in than is allowed: less pigment in each coat.
2 | THINNER_UNMEASURED | More thinner went in than anyone knows.
2 | SPEED_FAST | The gun moved too fast.
2 | OVERLAP_LOW | The passes overlapped too little.
2 | DELIVERY_LOW | Too little fluid.
1 | EFFLUX_LOW | The mix was too thin.
1 | GUN_FAR | The gun was too far off: much was lost on the way.

gloss | loss of gloss
    | Glossy when it was laid, dull hours or days later, or dull from the start.
    | Let it harden right through; polish it if the product allows, else sand and recoat.
    | die-back, dieback, dulling, dull, sinkage
3 | WET_HIGH | The coats were so heavy that solvent left them for days.
3 | TOO_EARLY | A coat was laid on one that had not flashed off: solvent was trapped.
3 | thirsty | The ground drank: filler, sanding marks too coarse, primer not dry.
2 | wrong-thinner | The wrong thinner: too slow to leave, or not the one for this product.
2 | AIR_COLD PART_COLD | It was too cold: the film dried too slowly.
2 | HUMID | The air was too humid.
2 | THINNER_OVER | More thinner went in than is allowed.
2 | stale-air | The air stood still, or its fumes lay on the film while it dried.
2 | bad-ratio | The parts were mixed in the wrong ratio.
1 | DEW_NEAR | The part was near the dew point, and sweated while it dried.
1 | POT_LIFE_OVER | The batch was past its pot life.
1 | overspray | Overspray fell on the film when it no longer took it up.

colour | colour off
    | The colour does not match the panel or the part beside it.
    | Judge it dry and in daylight; while the window is open another coat may bring it nearer.
    | colour-off, color, color-off, mismatch
3 | unstirred | Pigment was left at the bottom of the can or cup.
3 | no-panel | The mix itself is another shade: no panel was sprayed out and compared.
3 | COATS_FEW | It was not sprayed until it hid.
2 | batches | Cans of different batches were sprayed on one part.
2 | ground-shows | The colour of the ground comes through.
2 | WET_HIGH | Metallic laid too wet: darker, flakes lie deep.
2 | WET_LOW | Metallic laid too dry: lighter, flakes lie on top.
2 | INLET_HIGH | Metallic with too much air: lighter.
2 | INLET_LOW | Metallic with too little air: darker.
2 | GUN_FAR | Metallic from too far off: lighter.
2 | THINNER_OVER | More thinner went in than is allowed.
1 | AIR_HOT PART_HOT | Metallic in the heat: drier, so lighter.
1 | AIR_COLD PART_COLD | Metallic in the cold: wetter, so darker.

blush | blush | A milky haze: water condensed in the film while solvent cooled it.
    | Wait: a little may clear as it dries. While the window is open the data sheet may allow a mist
      of retarder; else sand and recoat in drier air. | blushing, bloom
3 | HUMID | The air was too humid. | FAA
3 | DEW_NEAR | The part was too near the dew point.
2 | AIR_COLD PART_COLD | It was too cold. | FAA
1 | AIR_HOT | It was too hot: the solvent left too fast. | FAA
2 | INLET_HIGH | Too much air at the gun: it cools the drops. | FAA
1 | WET_HIGH | The coat was so heavy that it held the water.
3 | fast-thinner | A thinner too fast for the day. | FAA
2 | line-dirt | Water in the air line.

amine-blush | amine blush
    | Epoxy: a greasy or waxy, whitish film on top, hours after it was laid; it feels sticky.
    | Lay nothing on it: wash it off with warm water and a pad as the data sheet says, dry, abrade.
    | amine, sweating, exudate
3 | HUMID | The air was too humid: damp and carbon dioxide took the hardener at the surface.
3 | AIR_COLD PART_COLD | It was too cold for the epoxy to cure.
3 | DEW_NEAR | The part was too near the dew point.
2 | INDUCTION_SHORT | The mix did not stand for its induction time.
2 | bad-ratio | Too much hardener, or not stirred until even.
2 | burner | A burner filled the room with fumes: carbon dioxide and water.
1 | stale-air | The air stood still while it cured.

bleeding | bleeding | Colour from below comes through the new coat.
    | Another coat will bleed too: let it harden, lay a sealer that the data sheet names.
3 | soluble | A soluble colour or stain below: an old red, tannin, filler, marker, tar.
2 | filler | Too much hardener in a filler below.
2 | WET_HIGH | The coat was so wet that it dissolved the one below.
2 | TOO_EARLY | A coat was laid on one that had not flashed off.
1 | THINNER_OVER | Too much solvent in the mix.
"""
