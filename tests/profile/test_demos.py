"""The bundled profiles: invented, saying so, of different kinds, and consistent with themselves."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from booth.profile.keys import PROFILE
from booth.profile.model import CoatPlan, Hazard, Profile, Range
from booth.profile.read import read_profile
from booth.trade.cups.cup_names import cup_named

FOLDER = Path(__file__).parents[2] / "profiles"
DEMOS = {path.stem: read_profile(path) for path in sorted(FOLDER.glob("*.toml"))}
PROFILES = [each for each in DEMOS.values() if isinstance(each, Profile)]
SAYS = "Invented values for trying the program; not any product's data sheet"

# Transfer efficiency of a hand-held gun on flat parts, and the pace of a practised hand: 65 % or
# more is claimed for HVLP (South Coast AQMD), 60-70 % good on large flat parts; 0.2 to 0.7 m/s is
# common practice, no source.
TRANSFER = (0.55, 0.70)
PACE_M_S = (0.2, 0.7)
ONCE = Range(1, 1)


def demo(key: str) -> Profile:
    answer = DEMOS[key]
    assert isinstance(answer, Profile)
    return answer


each_demo = pytest.mark.parametrize("profile", PROFILES, ids=lambda profile: profile.key)


def test_there_are_at_least_ten_and_all_are_read() -> None:
    assert len(PROFILES) == len(DEMOS) >= 10


def test_they_are_of_different_kinds() -> None:
    assert any(p.waterborne and p.gun.coarse_metallic for p in PROFILES)
    assert any(Hazard.ISOCYANATE in p.hazards and p.mix and p.mix.pot_life for p in PROFILES)
    assert any(p.mix and p.mix.induction and p.mix.induction.is_table for p in PROFILES)
    assert any(p.mix and p.mix.by == "weight" for p in PROFILES)
    assert any(p.waits.recoat_opens and p.waits.recoat_opens.is_table for p in PROFILES)
    assert any(p.steps for p in PROFILES)
    assert {hazard for p in PROFILES for hazard in p.hazards} == set(Hazard)


def test_together_they_use_every_key() -> None:
    used: set[str] = set()

    def walk(table: dict[str, Any], above: str) -> None:
        for name, value in table.items():
            tables = (
                [each for each in value if isinstance(each, dict)]
                if isinstance(value, list)
                else []
            )
            path = f"{above}{name}" + "[]" * bool(tables)
            used.add(path)
            for each in tables or [value]:
                if isinstance(each, dict):
                    walk(each, f"{path}.")

    for path in DEMOS:
        walk(tomllib.loads((FOLDER / f"{path}.toml").read_text(encoding="utf-8")), "")
    assert set(PROFILE.keys) <= used


def test_three_real_systems_can_be_put_together_of_them() -> None:
    """Primer, base to hiding and clear; undercoat and cabinet topcoat; zinc primer and gloss."""
    primer, base, clear = (
        demo("epoxy-primer"),
        demo("waterborne-silver-base"),
        demo("high-solids-clear"),
    )
    assert primer.mix and primer.mix.pot_life and primer.mix.pot_life.is_table
    assert [each.abrade_after is not None for each in primer.next_products] == [True, True]
    hidden, drop = base.coats
    assert hidden.until_hidden and hidden.times == Range(2, 4) and drop.name == "drop coat"
    assert hidden.wait and hidden.wait.until == "matt all over"
    assert clear.mix and [each.for_c for each in clear.mix.hardeners] == [
        Range(10, 17),
        Range(16, 25),
        Range(25, 35),
    ]
    assert [coat.name for coat in clear.coats] == ["tack coat", "full coat"]
    assert clear.waits.cure and clear.waits.polish and clear.waits.bake
    lifts = demo("single-stage-enamel").next_products[0]
    assert lifts.closes and lifts.or_after
    assert lifts.closes.rows[0].time_s == 6 * 3600 and lifts.or_after.rows[0].time_s == 72 * 3600


@each_demo
def test_each_says_that_it_is_invented(profile: Profile) -> None:
    assert profile.demo
    assert profile.source == SAYS
    first = (FOLDER / f"{profile.key}.toml").read_text(encoding="utf-8").splitlines()[0]
    assert first == f"# {SAYS}."


@each_demo
def test_the_target_lies_within_the_range_of_its_cup(profile: Profile) -> None:
    assert profile.efflux is not None
    cup = cup_named(profile.efflux.cup)
    target = profile.efflux.target_s
    assert target.low is not None
    assert target.high is not None
    assert cup.low_s <= target.low < target.high <= cup.high_s


def middle(span: Range | None) -> float:
    assert span is not None
    return span.middle


@each_demo
def test_wet_film_follows_from_delivery_at_a_pace_a_hand_can_keep(profile: Profile) -> None:
    """Mass balance of one gun: wet = q TE / (v fan (1 - overlap)), solved for v."""
    gun, film = profile.gun, profile.film
    q_m3_s = middle(gun.delivery_ml_min) * 1e-6 / 60
    pitch_m = middle(gun.fan_mm) / 1000 * (1 - middle(gun.overlap_percent) / 100)
    for transfer in TRANSFER:
        pace = q_m3_s * transfer / (middle(film.wet_um) * 1e-6 * pitch_m)
        assert PACE_M_S[0] <= pace <= PACE_M_S[1], pace


@each_demo
def test_dry_film_follows_from_wet_film_and_solids(profile: Profile) -> None:
    """DFT = WFT x VS / (1 + s) (Organic Finishing Guidebook 2012-13 p. 615), usual thinner."""
    film, mix = profile.film, profile.mix
    assert film.dry_total_um is not None and mix is not None
    thinner = mix.thinner or mix.thinners[0]
    share = middle(thinner.usual_percent) / 100
    coats = profile.coats or (CoatPlan(times=film.coats),)
    wet = sum(middle(coat.times or ONCE) * middle(coat.wet_um or film.wet_um) for coat in coats)
    dry = wet * middle(film.volume_solids_percent) / 100 / (1 + share)
    assert film.dry_total_um.holds(dry), dry


@each_demo
def test_solids_solvent_and_water_make_up_the_whole(profile: Profile) -> None:
    film = profile.film
    assert film.solvent_percent is not None
    whole = middle(film.volume_solids_percent) + film.solvent_percent
    # What is missing is water; a solvent-borne product has none.
    assert whole < 80 if profile.waterborne else whole == pytest.approx(100)
