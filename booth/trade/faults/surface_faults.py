"""Faults of the surface: what runs, stays rough, or has holes and specks in it.

The form of the table stands in ``fault_table``.
"""

from __future__ import annotations

SURFACE = """
runs | runs and sags | Drips, curtains, thick lower edges on upright parts.
    | Leave it alone while it is wet, or lay the part flat; when it is hard, cut the run down, sand,
      and recoat. | sag, curtain
3 | WET_HIGH | Too much was laid in one coat. | FAA TM
3 | EFFLUX_LOW | The mix is too thin to hold on. | FAA CORROSION
3 | THINNER_OVER | More thinner went in than is allowed. | FAA
2 | THINNER_UNMEASURED | More thinner went in than anyone knows. | FAA
3 | SPEED_SLOW | The gun moved too slowly. | FAA TM
3 | GUN_NEAR | The gun was too near. | FAA CORROSION
2 | DELIVERY_HIGH | The gun delivers too much for the pace. | TM
2 | TOO_EARLY | A coat was laid on one that had not flashed off.
2 | AIR_COLD PART_COLD | It was too cold for the solvent to leave.
1 | OVERLAP_HIGH | The passes overlapped too much.
2 | tilted | The gun was tilted, or the trigger held at the turn of a pass. | TM
1 | slick | The surface is too hard or glossy to hold the coat. | CORROSION

orange-peel | orange peel
    | A pebbled film like the skin of an orange: the drops did not flow together.
    | Let it harden, sand it flat, and recoat or polish as the product allows.
3 | EFFLUX_HIGH | The mix is too thick to break up and to flow. | TM CORROSION FAA
3 | INLET_LOW | Too little air to break the fluid up. | TM CORROSION
3 | GUN_FAR | The gun was too far off: drops dried on the way. | TM
2 | GUN_NEAR | The gun was so near that the air rippled the film. | TM CORROSION
2 | WET_LOW | The coat was too light to flow out.
2 | SPEED_FAST | The gun moved too fast.
2 | DELIVERY_HIGH | More fluid than the air can break up.
2 | AIR_HOT PART_HOT | Air or part was so warm that the film set before it flowed. | FAA
1 | AIR_COLD PART_COLD | Air or part was so cold that the mix thickened on it. | FAA
1 | TOO_EARLY | Too little flash-off between the coats. | FAA
1 | DRY_AIR | The air was so dry that the film set early. | TM
2 | POT_LIFE_OVER | The mix had begun to cure.
2 | fast-thinner | A thinner too fast for the day, or not the one for this product. | FAA TM
1 | unstirred | The mix was not stirred until even. | FAA TM
1 | draught | A draught blew across the film. | FAA TM

dry-spray | dry spray | A rough, dull, sandy film: drops arrived dry, or overspray settled on it.
    | Let it dry, rub it down, clean off the dust, and lay a wetter coat. | spray-dust, overspray
3 | GUN_FAR | The gun was too far off. | FAA TM CORROSION
3 | INLET_HIGH | Too much air: the drops are too fine and dry on the way. | FAA TM CORROSION
3 | DELIVERY_LOW | Too little fluid. | FAA TM
2 | WET_LOW | The coat was too light.
2 | SPEED_FAST | The gun moved too fast.
2 | AIR_HOT PART_HOT | Air or part was too warm.
2 | OVERLAP_LOW | The passes overlapped too little.
1 | EFFLUX_HIGH | The mix was too thick.
2 | fast-thinner | A thinner too fast for the day. | CORROSION
2 | overspray | Overspray settled on wet film: passes in the wrong order, or air that does not move.

spitting | spitting
    | The gun spurts: drops and blobs in the film, a jumping pattern, bubbles in the cup.
    | Stop and put the gun right; level the drops while they are wet, or sand when it is hard.
    | spit, fluttering
3 | dry-packing | Air is drawn in at a dry or loose needle seal (packing).
3 | loose-tip | The tip sits loose, or its seat is dirty or nicked.
3 | vent | The cup is nearly empty or tilted, or its vent is closed.
2 | unstrained | A lump or a skin sits in the passage.
2 | EFFLUX_HIGH | The mix is too thick for the passage.
2 | POT_LIFE_OVER | The mix had begun to cure.
1 | line-dirt | Water or oil comes with the air.

solvent-pop | solvent pop
    | Small blisters and craters where solvent broke through a film that had skinned over.
    | Let it harden right through, sand below the craters, and recoat.
3 | WET_HIGH | The coat was too heavy. | FAA
3 | TOO_EARLY | A coat was laid on one that had not flashed off. | TO FAA
2 | AIR_HOT PART_HOT | Warm air or a warm part skinned the film over.
1 | EFFLUX_HIGH | The mix was too thick and skinned over.
1 | SPEED_SLOW | The gun moved too slowly.
3 | fast-thinner | A thinner too fast for the day. | FAA TO
2 | heated | Heat or a draught was put on the film too soon.

pinholes | pinholes | Tiny holes down into the film, single or in groups.
    | Let it harden, sand below the holes, fill them if they go to the ground, and recoat.
3 | WET_HIGH | The coat was so heavy that solvent or moisture was trapped. | FAA
2 | TOO_EARLY | A coat was laid on one that had not flashed off. | TO
2 | GUN_NEAR | The gun was too near and drove air into the film.
1 | INLET_HIGH | Too much air.
1 | EFFLUX_HIGH | The mix was too thick to let air out.
2 | DEW_NEAR | The part was near the dew point: moisture under the film.
3 | line-dirt | Water or oil in the air line, or something foreign in the mix. | FAA
2 | wrong-thinner | The wrong thinner: too fast, or too slow to leave before the next coat. | FAA TO
2 | open-ground | Holes in the ground: open grain, filler, casting.

fisheyes | fisheyes | Round craters with a rim, the ground showing: the wet film drew back.
    | Stop. When it is hard, clean with what the data sheet names, sand, clean again, recoat.
    | crater
3 | greasy | Silicone, wax, oil or grease on the surface. | FAA CORROSION
3 | line-dirt | Oil or water in the air line. | FAA
2 | nearby | Polish, spray lubricant or hand cream used nearby.
1 | old-finish | An old finish that does not suit this product. | CORROSION
1 | DEW_NEAR | Moisture on a part near the dew point.

dust | dust | Specks that stand out of the film.
    | Let it harden, take the specks off with fine paper, and polish or recoat. | dirt
3 | dusty | The part, the clothes or the room were dusty.
3 | unstrained | The mix was not strained, or skins got in.
2 | inflow | Exhaust filters clogged or air drawn in through a dusty gap.
2 | POT_LIFE_OVER | The mix had begun to cure and made bits.
2 | INLET_HIGH | Dry overspray settled on the film: too much air.
1 | GUN_FAR | Dry overspray settled on the film: the gun was too far off.
1 | DRY_AIR | Dry air holds static charge, which draws dust.
1 | AIR_COLD PART_COLD | Cold kept the film open to dust for long.

water-spots | water spots | Rings and dull marks where drops stood on the film.
    | Wipe it dry; when it is hard try to polish it out, else sand and recoat. | water-marks, spotting
3 | wetted | Water or dew stood on it before it had cured.
2 | AIR_COLD PART_COLD | Cold kept the film from curing.
2 | DEW_NEAR | The part was near the dew point, and sweated while it dried.
2 | WET_HIGH | The coats were so heavy that they stayed soft.
1 | bad-ratio | The parts were mixed in the wrong ratio, so that it stayed soft.
1 | HUMID | The air was too humid for it to dry.
"""
