"""What is learnt of an invented shop, against what is so in it: the bands hold the truth as often as they
say. All figures are invented; the truth is the generator's, which knows nothing of what learns."""

from __future__ import annotations

import random
from functools import cache
from statistics import median

import pytest
from msgspec.structs import replace
from scipy.stats import binom

from booth.job.products import products_of
from booth.learnt import delivery, water
from booth.learnt.delivery import catches_of
from booth.learnt.observation import Learnt, Observation
from booth.learnt.subjects import BY_KEY, SUBJECTS, learnt_one
from booth.log.fold import Job, fold
from tests.invented_year import GUNS, Kind, Truth, events_of

#: Shops, and jobs of each. Of nine the band from the second to the eighth holds the true middle with
#: 1 - 2 (1 + 9) / 2^9 = 96.1 %.
SHOPS, JOBS = 80, 9
#: So seldom may chance alone make one of these tests fail.
BY_CHANCE = 1e-4
TRUTH = Truth()
KIND = Kind(GUNS[0], turns=2.0)
TRUE = {
    "waits": TRUTH.wait,
    "delivery": TRUTH.delivery(KIND.gun, KIND.turns),
    "water": TRUTH.water_ratio,
    "lands": 100 * TRUTH.lands,
    "coats": TRUTH.coat_times,
    "thinner": TRUTH.thinner_percent,
    "recovery": TRUTH.recovery_s,
    "pace": TRUTH.speed_m_s,
}
#: Measured to the last digit by the invented painter: these bands hold it no oftener than they say.
EXACT = ("delivery", "water", "recovery", "pace")


def observed(jobs: list[tuple[Job, ...]]) -> dict[str, list[Observation]]:
    """What these jobs show of each subject, without a disk."""
    found: dict[str, list[Observation]] = {each.key: [] for each in SUBJECTS}
    caught = []
    for number, products in enumerate(jobs):
        for subject in SUBJECTS:
            if subject.observe is not None:
                found[subject.key] += subject.observe(products)
        caught += [replace(each, file=str(number)) for each in catches_of(products)]
    found["delivery"] += delivery.deliveries(caught)
    found["water"] += water.ratios(caught)
    return found


@cache
def shops() -> tuple[dict[str, Learnt], ...]:
    """What each of many shops has learnt."""
    found = []
    for seed in range(SHOPS):
        drawn = random.Random(seed)
        jobs = [products_of(fold(events_of(TRUTH, drawn, day, KIND))) for day in range(JOBS)]
        learnt = {}
        for key, own in observed(jobs).items():
            # The viscosity of a day is scattered on purpose; here every catch is to count.
            alike = [replace(each, cup_s=None) for each in own]
            one = learnt_one(BY_KEY[key], alike)
            assert one is not None and len(one.observations) == JOBS, key
            learnt[key] = one
        found.append(learnt)
    return tuple(found)


@pytest.mark.parametrize("subject", TRUE)
def test_a_band_holds_the_truth_as_often_as_it_says(subject: str) -> None:
    held = 0
    for shop in shops():
        one, true = shop[subject], TRUE[subject]
        held += (one.low or 0.0) <= true <= (one.high or float("inf"))
    covers = shops()[0][subject].covers_fraction
    assert covers == pytest.approx(1 - 2 * (1 + 9) / 2**9)
    # How many of the shops hold it is binomial; a bound that is missed once in 10,000 by chance.
    assert held >= binom.ppf(BY_CHANCE, SHOPS, covers), f"{held} of {SHOPS}"
    if subject in EXACT:
        assert held <= binom.isf(BY_CHANCE, SHOPS, covers)


@pytest.mark.parametrize("subject", TRUE)
def test_a_band_is_no_wider_than_it_has_to_be(subject: str) -> None:
    """One that always held the truth because it held everything would teach nothing."""
    found = [(shop[subject].low, shop[subject].high) for shop in shops()]
    ends = [(low, high) for low, high in found if low is not None and high is not None]
    assert len(ends) == SHOPS
    # Of nine jobs that scatter by 8 %, second and eighth lie 2 x 0.93 standard deviations apart (normal
    # scores): 1.16. Where a figure is only bounded the bounds come on top, 5 um of 30 um of film and
    # up to 0.3 of 1.3 waits: a quarter at most.
    likely = 1.16 * (1.25 if subject in ("waits", "lands") else 1.0)
    # A tenth more, for what film and pace add to the scatter.
    assert median(high / low for low, high in ends) < 1.1 * likely


def test_a_wrong_truth_is_found_out() -> None:
    """The check above can fail: a shop of another truth is not held."""
    for subject, true in TRUE.items():
        wrong = 1.35 * true
        held = sum(
            (shop[subject].low or 0.0) <= wrong <= (shop[subject].high or 0.0) for shop in shops()
        )
        assert held < binom.ppf(BY_CHANCE, SHOPS, 0.95), subject
