"""The tones are told apart: with each common colour deficiency, in sixteen colours, both ways round."""

from __future__ import annotations

from itertools import combinations

import pytest
from rich.color import ColorSystem
from textual.theme import Theme

from booth.widgets.themes import THEMES
from booth.words.shown import Tone
from tests.widgets.cvd import DEFICIENCIES, Lab, ciede2000, lab_of
from tests.widgets.test_themes import GROUNDS, colour, contrast

#: Few tones: what is good and what is ready are one, and there is one that warns.
GROUPS = (
    (Tone.LATE,),
    (Tone.CLOSING, Tone.CAUTION),
    (Tone.READY, Tone.GOOD),
    (Tone.RUNNING,),
    (Tone.WAIT,),
    (Tone.PLAIN,),
)
#: Side by side a difference of about 1 is just seen. The tones are seen one at a time, from far off
#: and in glare: ten times that is asked (our own choice; no standard gives one). Beside the tone
#: there is always a word, and a sign of its own shape.
LEAST_DIFFERENCE = 10.0


@pytest.mark.parametrize(
    ("one", "other", "difference"),
    [
        ((50, 2.6772, -79.7751), (50, 0, -82.7485), 2.0425),
        ((50, 0, 0), (50, -1, 2), 2.3669),
        ((50, 2.5, 0), (73, 25, -18), 27.1492),
        ((50, 2.5, 0), (61, -5, 29), 22.8977),
        ((50, 2.5, 0), (56, -27, -3), 31.9030),
        ((60.2574, -34.0099, 36.2677), (60.4626, -34.1751, 39.4387), 1.2644),
        ((90.8027, -2.0831, 1.4410), (91.1528, -1.6435, 0.0447), 1.4441),
    ],
)
def test_the_difference_on_published_pairs(one: Lab, other: Lab, difference: float) -> None:
    """Sharma, Wu and Dalal 2005, table 1 (pairs from memory), given to four places."""
    assert ciede2000(one, other) == pytest.approx(difference, abs=5e-5)


def test_a_deficiency_leaves_greys_grey() -> None:
    for matrix in DEFICIENCIES.values():
        assert all(sum(row) == pytest.approx(1, abs=1e-5) for row in matrix)


def test_red_and_green_of_one_lightness_come_together_without_a_cone() -> None:
    red, green = (200, 80, 60), (120, 130, 40)
    apart = {name: ciede2000(lab_of(red, name), lab_of(green, name)) for name in DEFICIENCIES}
    assert apart["deuteranopia"] < apart["none"] / 2 and apart["tritanopia"] > 20


def test_every_tone_is_in_one_group_of_one_colour() -> None:
    assert {tone for group in GROUPS for tone in group} == set(Tone)
    for theme in THEMES:
        for group in GROUPS:
            assert len({colour(theme, tone.css) for tone in group}) == 1


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
@pytest.mark.parametrize("deficiency", DEFICIENCIES)
def test_tones_are_told_apart_with_it(theme: Theme, deficiency: str) -> None:
    seen = {group[0]: lab_of(colour(theme, group[0].css).rgb, deficiency) for group in GROUPS}
    for one, other in combinations(seen, 2):
        difference = ciede2000(seen[one], seen[other])
        assert difference >= LEAST_DIFFERENCE, (one, other, round(difference, 1))


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_both_ways_round_the_edge_what_is_written_is_read(theme: Theme) -> None:
    """The tone on the ground, and the ground on the tone, whatever ground it lies on."""
    for group in GROUPS:
        for ground in GROUNDS:
            pair = colour(theme, group[0].css), colour(theme, ground)
            assert contrast(*pair) >= 4.5 and contrast(*reversed(pair)) >= 4.5, (group, ground)


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_in_sixteen_colours_each_keeps_one_of_its_own(theme: Theme) -> None:
    ground = colour(theme, "background").rich_color.downgrade(ColorSystem.STANDARD)
    found = [
        colour(theme, group[0].css).rich_color.downgrade(ColorSystem.STANDARD) for group in GROUPS
    ]
    assert len({each.number for each in found}) == len(GROUPS)
    assert ground.number not in {each.number for each in found}
