"""The faults of a sprayed film and their causes, each with where it is from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from booth.trade.faults.evidence import Sign
from booth.trade.faults.remedies import REMEDIES
from booth.trade.text_table import rows


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause of a fault.

    words: a sentence; weight: 3 usual, 2 common, 1 now and then; signs: figures that may speak for
    it, none where nothing measured can; now, next_time: what to do; fallback: a published limit for
    a sign whose limit the profile does not name.
    """

    words: str
    weight: int
    signs: tuple[Sign, ...]
    now: str
    next_time: str
    source: str
    fallback: Mapping[Sign, tuple[float, str]]


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault of a sprayed film.

    key, name; looks: how it shows; film: what to do with the film; also: other words of the trade.
    """

    key: str
    name: str
    looks: str
    film: str
    also: tuple[str, ...]
    causes: tuple[Cause, ...]


FAA = "FAA-H-8083-31 ch. 8, common paint troubles"
SOURCES = {
    "FAA": FAA,
    "TM": "TM 43-0139 p. 5-12",
    "CORROSION": "Corrosion Engineering: Principles and Practice, table 14.1",
    "TO": "TO 1-1-8 table 4-1",
    "-": "common practice, no source",
}

#: 5 F of the part over the dew point: MIL-HDBK-1110 9.6.6.
DEW_MARGIN = (5.0 / 1.8, "MIL-HDBK-1110 9.6.6")
#: Limits for signs whose limit the profile does not name. FAA-H-8083-31 ch. 8: blush usually forms
#: above 80 % humidity; below 60 F or above 95 F.
PUBLISHED = {
    "blush": {
        Sign.HUMID: (80.0, FAA),
        Sign.DEW_NEAR: DEW_MARGIN,
        Sign.AIR_COLD: ((60.0 - 32.0) / 1.8, FAA),
        Sign.AIR_HOT: ((95.0 - 32.0) / 1.8, FAA),
    },
    "poor-adhesion": {Sign.DEW_NEAR: DEW_MARGIN},
}

#: A fault: its key, its name, how it looks, what to do with the film, other words for it. Under it
#: its causes: how usual, the signs that may speak for it, what it is, its sources (where there is none, common
#: practice); then, where no figure can speak for it, what to do now and what next time.
_TABLE = """
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
2 | - | The gun was tilted, or the trigger held at the turn of a pass. | TM
    | Keep the gun square; release the trigger at the end of each pass.
    | Practise the pass without paint.
1 | - | The surface is too hard or glossy to hold the coat. | CORROSION
    | Abrade before the next coat, as the data sheet says.
    | Prepare the surface as the data sheet says.

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
2 | - | A thinner too fast for the day, or not the one for this product. | FAA TM
    | Use the thinner that the data sheet names for this temperature.
    | Choose the thinner by the day's temperature.
1 | - | The mix was not stirred to one, or a draught blew across the film. | FAA TM
    | Stir to the bottom; stop the draught, not the exhaust. | Stir before every filling.

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
2 | - | A thinner too fast for the day. | CORROSION
    | Use the slower thinner that the data sheet names.
    | Choose the thinner by the day's temperature.
2 | - | Overspray settled on wet film: passes in the wrong order, or air that does not move. | -
    | Work so that the overspray falls on what is still to be coated.
    | Plan the order of the passes with the draught.

mottling | mottling and striping
    | Clouds or stripes of lighter and darker colour, mostly in metallics.
    | A light coat laid across may even it out while the window is open; else sand and recoat.
    | streak, stripe, striping
3 | OVERLAP_LOW | The overlap was too small for this pattern.
3 | UNEVEN | The pattern lays the film unevenly. | TM
3 | WET_HIGH | The coat was too wet: flakes swam.
3 | TOO_EARLY | A coat was laid on one that had not flashed off.
2 | EFFLUX_LOW | The mix was too thin.
2 | THINNER_OVER | More thinner went in than is allowed.
2 | GUN_NEAR | The gun was too near.
2 | DELIVERY_HIGH | The gun delivers too much.
1 | INLET_LOW | Too little air.
1 | AIR_COLD PART_COLD | It was too cold for the film to set evenly.
2 | - | The gun was tilted, so one side of the pattern laid more. | TM
    | Keep the gun square to the surface. | Practise the pass without paint.
2 | - | Flakes or pigment had settled in the cup. | -
    | Stir, and shake the cup between passes. | Stir before every filling.

solvent-pop | solvent pop
    | Small blisters and craters where solvent broke through a film that had skinned over.
    | Let it harden right through, sand below the craters, and recoat.
3 | WET_HIGH | The coat was too heavy. | FAA
3 | TOO_EARLY | A coat was laid on one that had not flashed off. | TO FAA
2 | AIR_HOT PART_HOT | Warm air or a warm part skinned the film over.
1 | EFFLUX_HIGH | The mix was too thick and skinned over.
1 | SPEED_SLOW | The gun moved too slowly.
3 | - | A thinner too fast for the day. | FAA TO
    | Use the slower thinner that the data sheet names.
    | Choose the thinner by the day's temperature.
2 | - | Heat or a draught was put on the film too soon. | -
    | Leave the film in still, extracted air until it has flashed off.
    | Give the time the data sheet asks for before any heat.

pinholes | pinholes | Tiny holes down into the film, single or in groups.
    | Let it harden, sand below the holes, fill them if they go to the ground, and recoat.
3 | WET_HIGH | The coat was so heavy that solvent or moisture was shut in. | FAA
2 | TOO_EARLY | A coat was laid on one that had not flashed off. | TO
2 | GUN_NEAR | The gun was too near and drove air into the film.
1 | INLET_HIGH | Too much air.
1 | EFFLUX_HIGH | The mix was too thick to let air out.
2 | DEW_NEAR | The part was near the dew point: moisture under the film.
3 | - | Water or oil in the air line, or something foreign in the mix. | FAA
    | Drain the receiver and the water trap; blow the line on white paper and look.
    | Drain the trap before every job; strain the mix.
2 | - | The wrong thinner: too fast, or too slow to leave before the next coat. | FAA TO
    | Use the thinner that the data sheet names for this temperature.
    | Choose the thinner by the day's temperature.
2 | - | Holes in the ground: open grain, filler, casting. | -
    | Fill and sand before the next coat. | Seal or fill an open ground first.

fisheyes | fisheyes | Round craters with a rim, the ground showing: the wet film drew back.
    | Stop. When it is hard, clean with what the data sheet names, sand, clean again, recoat.
    | crater
3 | - | Silicone, wax, oil or grease on the surface. | FAA CORROSION
    | Touch nothing with bare hands; clean with two cloths, one wet and one dry.
    | Clean before sanding and again after it.
3 | - | Oil or water in the air line. | FAA
    | Drain receiver and trap; blow the line on white paper and look.
    | Service the filters; drain the trap before every job.
2 | - | Polish, spray lubricant or hand cream used nearby. | -
    | Find it and keep it out of the room. | Keep such products out of the building.
1 | - | An old finish that does not suit this product. | CORROSION
    | Try a hidden spot with a sealer that the data sheet names.
    | Try the product on the old finish first.
1 | DEW_NEAR | Moisture on a part near the dew point.

dust | dust | Specks that stand out of the film.
    | Let it harden, take the specks off with fine paper, and polish or recoat. | dirt
3 | - | The part, the clothes or the room were dusty. | -
    | Wipe with a tack cloth; keep the dry floor from being stirred up.
    | Clean the room the day before; wear a suit that sheds no lint.
3 | - | The mix was not strained, or skins got in. | -
    | Strain what is left through a fresh strainer. | Strain at every filling.
2 | - | Exhaust filters clogged or air drawn in through a dusty gap. | -
    | Look at the filters and at where the air comes in; do not spray without the exhaust.
    | Change the filters in time.
2 | POT_LIFE_OVER | The mix had begun to cure and made bits.
2 | INLET_HIGH | Dry overspray settled on the film: too much air.
1 | GUN_FAR | Dry overspray settled on the film: the gun was too far off.
1 | DRY_AIR | Dry air holds static charge, which draws dust.
1 | AIR_COLD PART_COLD | Cold kept the film open to dust for long.

blush | blush | A milky haze: water condensed in the film while solvent cooled it.
    | Wait: a little may clear as it dries. While the window is open the data sheet may allow a mist
      of retarder; else sand and recoat in drier air. | blushing, bloom
3 | HUMID | The air was too humid. | FAA
3 | DEW_NEAR | The part was too near the dew point.
2 | AIR_COLD PART_COLD | It was too cold. | FAA
1 | AIR_HOT | It was too hot: the solvent left too fast. | FAA
2 | INLET_HIGH | Too much air at the gun: it cools the drops. | FAA
1 | WET_HIGH | The coat was so heavy that it held the water.
3 | - | A thinner too fast for the day. | FAA
    | Use the slower thinner, or the retarder, that the data sheet names.
    | Choose the thinner by the day's air.
2 | - | Water in the air line. | -
    | Drain the receiver and the trap. | Drain the trap before every job.

poor-adhesion | poor adhesion between coats | A coat lifts, peels or chips off the one below.
    | Take the loose coat off down to a sound one, find the cause, and begin again from there.
    | peeling
3 | TOO_LATE | The recoat window had closed.
3 | DEW_NEAR | Moisture on the part: too near the dew point.
3 | POT_LIFE_OVER | The batch was past its pot life.
2 | WET_LOW | The coat was too dry to wet the one below.
2 | GUN_FAR | The gun was too far off: the coat arrived dry.
1 | TOO_EARLY | A coat was laid on one that had not flashed off.
1 | AIR_COLD PART_COLD | It was too cold for the coats to bond.
1 | THINNER_OVER | Too much thinner. | FAA
3 | - | The surface was not clean, or not abraded. | FAA
    | Clean and abrade as the data sheet says before anything else is laid. | Clean, abrade, clean.
3 | - | The wrong primer, or coats that do not suit each other. | FAA
    | Ask the data sheets of both coats. | Keep to one system, or try it on a test panel.
2 | - | The parts were mixed in the wrong ratio, or not stirred to one. | FAA
    | Go back over the pours in the log. | Pour by the table and stir to the bottom.
2 | - | Oil or water from the air line between the coats. | FAA
    | Drain receiver and trap; blow the line on white paper and look. | Service the filters.

wrinkling | wrinkling
    | The film shrivels: its top has dried over a soft layer, or a new coat swells the old one.
    | Let it harden right through, take off the wrinkled coat, and recoat lightly. | lifting
3 | WET_HIGH | The coat was too heavy. | FAA
3 | TOO_EARLY | A coat was laid on one that had not flashed off. | FAA
3 | TOO_LATE | The recoat window was missed: the new coat swells the old.
2 | AIR_HOT PART_HOT | Hot air or a hot part dried the top first. | FAA
1 | AIR_COLD PART_COLD | It was too cold for the coat to dry through. | FAA
2 | THINNER_OVER | Too much solvent in the mix. | FAA
3 | - | A thinner that is too fast, or too strong for the coat below. | FAA
    | Try a hidden spot; lay a barrier coat that the data sheet names.
    | Try the product on the old finish first.
1 | - | The temperature changed fast while it dried. | FAA
    | Leave the part in one temperature until it is dry.
    | Do not open the door or move the part while it dries.

bleeding | bleeding | Colour from below comes through the new coat.
    | Another coat will bleed too: let it harden, lay a sealer that the data sheet names.
3 | - | A soluble colour or stain below: an old red, tannin, filler, marker, tar. | -
    | Seal it with what the data sheet names; try a hidden spot.
    | Rub an old finish with thinner on a white cloth; if it colours, seal it.
2 | - | Too much hardener in a filler below. | -
    | Let it cure, seal it, recoat. | Measure the hardener of the filler.
2 | WET_HIGH | The coat was so wet that it dissolved the one below.
2 | TOO_EARLY | A coat was laid on one that had not flashed off.
1 | THINNER_OVER | Too much solvent in the mix.
"""


def _cause(fault: str, weight: str, named: str, words: str, sources: str = "-", *do: str) -> Cause:
    signs = tuple(Sign[name] for name in named.split() if name != "-")
    now, next_time = do or REMEDIES[signs[0]]
    source = "; ".join(SOURCES[name] for name in sources.split())
    known = PUBLISHED.get(fault, {})
    fallback = {sign: known[sign] for sign in signs if sign in known}
    return Cause(words, int(weight), signs, now, next_time, source, fallback)


def _faults() -> Iterator[Fault]:
    for block in _TABLE.split("\n\n"):
        (key, name, looks, film, *others), *causes = rows(block)
        also = tuple(word for cell in others for word in cell.split(", "))
        yield Fault(key, name, looks, film, also, tuple(_cause(key, *cells) for cells in causes))


#: Every fault by its key, in the order in which a list shows them.
FAULTS: Mapping[str, Fault] = MappingProxyType({fault.key: fault for fault in _faults()})
