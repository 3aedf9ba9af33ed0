"""Faults of cure and bond: the film stays soft, lifts, swells or lets go.

The form of the table stands in ``fault_table``.
"""

from __future__ import annotations

BOND = """
soft | soft film | It stays soft or sticky long after its time: a fingernail marks it.
    | Give it time and warmth, with the air moving; what does not harden has to come off.
    | uncured, sticky, tacky, slow-cure
3 | bad-ratio | The parts were mixed in the wrong ratio, or not stirred until even.
3 | AIR_COLD PART_COLD | It was too cold: below its limit it may never cure.
3 | WET_HIGH | The coats were too heavy.
2 | TOO_EARLY | A coat was laid on one that had not flashed off.
2 | THINNER_OVER | More thinner went in than is allowed.
2 | slow-thinner | A thinner too slow for the day.
2 | HUMID | The air was too damp.
2 | stale-air | The air stood still while it dried.
2 | damp-can | The hardener was old, or damp had got into its can.
1 | POT_LIFE_OVER | The batch was past its pot life.
1 | greasy | Wax, oil or silicone below, which the film took up.

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
3 | unclean | The surface was not clean, or not abraded. | FAA
3 | misfit | The wrong primer, or coats that do not suit each other. | FAA
2 | bad-ratio | The parts were mixed in the wrong ratio, or not stirred until even. | FAA
2 | line-dirt | Oil or water from the air line between the coats. | FAA

wrinkling | wrinkling and lifting
    | The film shrivels: its top has dried over a soft layer, or a new coat swells the old one.
    | Let it harden right through, take off the wrinkled coat, and recoat lightly.
    | wrinkling, lifting
3 | WET_HIGH | The coat was too heavy. | FAA
3 | TOO_EARLY | A coat was laid on one that had not flashed off. | FAA
3 | TOO_LATE | The window was missed: between 'within hours' and 'after days' a new coat swells an
      alkyd or another that dries by air.
2 | AIR_HOT PART_HOT | Hot air or a hot part dried the top first. | FAA
1 | AIR_COLD PART_COLD | It was too cold for the coat to dry through. | FAA
2 | THINNER_OVER | Too much solvent in the mix. | FAA
3 | strong-thinner | A thinner that is too fast, or too strong for the coat below. | FAA
1 | swing | The temperature changed fast while it dried. | FAA

sand-scratches | sand-scratch swelling
    | Sanding marks and the edges of repairs come up through the film as it dries.
    | Let it harden right through, sand with a finer grit, recoat lightly.
    | swelling, scratches, scratch-swelling
3 | coarse | The ground was sanded with too coarse a grit.
3 | soft-ground | Filler or primer had not dried through when it was sanded or coated.
3 | WET_HIGH | The coat was so heavy that its solvent swelled the ground.
2 | TOO_EARLY | A coat was laid on one that had not flashed off.
2 | slow-thinner | A thinner too slow for the day: it stays in the ground.
2 | strong-thinner | A thinner too strong for the ground.
2 | THINNER_OVER | More thinner went in than is allowed.
1 | AIR_COLD PART_COLD | It was too cold for the solvent to leave.
"""
