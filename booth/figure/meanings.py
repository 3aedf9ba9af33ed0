"""What arguments mean, where the docstrings of the trade say it of several at once, or not to a painter."""

from __future__ import annotations

import re
from collections.abc import Mapping

#: Function, parameter, meaning.
_MEANINGS = """
delivery                   amount             what was caught
fault                      fault              what went wrong
gauge                      readings           one reading a place: the last tooth that was wetted, the first dry one
gauge                      low_um             least film asked for
gauge                      high_um            most film asked for
viscosity_at               points             one or two measurements of this liquid
mix_correct                wanted             how much of the mix was wanted
mix_correct                components         the components as they were poured, with the mark that each came to
mix_correct                parts_by           whether the parts are by volume or by weight
mix_correct                measure            whether it is poured by volume or on a scale
pour_table                 components         the components in the order they are poured, or their ratio in digits, as 4:1
pour_table_on_top          components         the components in the order they are poured, or their ratio in digits, as 4:1
pour_shares                components         the components with their parts, or their ratio in digits, as 4:1
mix_thinner                thinner_percent    thinner on top, of the volume of the coating
section                    points             how many places across the width are told
free_air_stored_l          high_kpa           gauge pressure before
free_air_stored_l          low_kpa            gauge pressure after
trigger_hold               cut_out_kpa        gauge pressure at which the compressor stops
trigger_hold               cut_in_kpa         gauge pressure at which it starts again
recovery_s                 least_kpa          gauge pressure it comes from
recovery_s                 full_kpa           gauge pressure it is brought to
film_in_all                least_solids_fraction  least volume solids of the coating before thinning
film_in_all                most_solids_fraction   most volume solids of the coating before thinning
film_in_all                coats              each coat as it was read: wet film from and to, and the thinner in it
transfer_efficiency_from_film  film           wet film of one coat, read at once, away from the edges: last wetted, first dry tooth
next_thinning_step         low_s              shortest efflux time wanted, in the same cup
next_thinning_step         high_s             longest efflux time wanted, in the same cup
next_thinning_step         liquid_c           temperature of the liquid as it was timed
next_thinning_step         at_c               temperature that the target is meant for
reading                    seen               what the paper shows
dilution_air_l_per_l       share_of_lel       share of the explosive limit to stay at or below
dilution_air_of_blend_l_per_l  share_of_lel   share of the explosive limit to stay at or below
minimum_air                share_of_lel       share of the explosive limit to stay at or below
waterborne_closes_at       air_c              temperature of today's air
waterborne_closes_at       humidity_percent   humidity of today's air
waterborne_closes_at       at_c               temperature of the air that the data sheet means
waterborne_closes_at       at_percent         humidity of the air that the data sheet means
waterborne_flash_off_at    air_c              temperature of today's air
waterborne_flash_off_at    humidity_percent   humidity of today's air
waterborne_flash_off_at    at_c               temperature of the air that the data sheet means
waterborne_flash_off_at    at_percent         humidity of the air that the data sheet means
relative_drying_power      reference_c        temperature of the air that the data sheet means
relative_drying_power      reference_percent  humidity of the air that the data sheet means
wait_from_table            closes             yes for a window that closes, no for a wait that opens
wait_from_humid_table      closes             yes for a window that closes, no for a wait that opens
wait_from_table            rows               each row of the data sheet's table
wait_from_humid_table      rows               each row of the data sheet's table
scaled_s                   halves_per_k       how much warmer it is where the time is half
scaled_s                   time_s             time from the data sheet
scaled_s                   from_c             temperature the time holds for
scaled_s                   to_c               temperature it is wanted for
"""
MEANINGS: Mapping[tuple[str, str], str] = {
    (function, parameter): meaning
    for function, parameter, meaning in (
        re.split(r"\s{2,}", line) for line in _MEANINGS.strip().splitlines()
    )
}
