"""A coating system on the screen: listed, begun, its products one after the other, found again."""

from __future__ import annotations

from pathlib import Path

from booth.job.steps import NEXT_PRODUCT
from booth.log.events import JobOpened, ProductBegun
from tests.screens.at_app import AtApp, at_app

SYSTEM = "Silver over epoxy primer"


async def begun(at: AtApp) -> None:
    """From the first screen into a job with the bundled system."""
    await at.open(SYSTEM)
    assert at.screen == "NewJob" and "Epoxy primer" in at.words
    await at.press("enter")
    assert at.stack[-1] == "BenchScreen"


async def test_a_system_is_listed_and_begun_with_all_its_products() -> None:
    async with at_app(bundled=True) as at:
        assert "Coating systems" in at.words
        await begun(at)
        (opened,) = at.kept(JobOpened)
        keys = [each.key for each in opened.products]
        assert keys == ["epoxy-primer", "waterborne-silver-base", "two-pack-clear"]
        assert (opened.coating, opened.coating_key, opened.version) == (SYSTEM, "car-silver", 2)
        assert "1/3 Epoxy primer" in at.lines[0]


async def test_the_next_product_is_one_key_and_voided_in_the_log_it_goes_back() -> None:
    async with at_app(bundled=True) as at:
        await begun(at)
        await at.open_step(NEXT_PRODUCT)
        assert "next product: Waterborne silver base" in at.words
        await at.press("enter")
        assert len(at.kept(ProductBegun)) == 1 and "2/3 Waterborne" in at.lines[0]
        await at.press("l", "backspace", "escape")
        assert at.stack[-1] == "BenchScreen" and "1/3 Epoxy primer" in at.lines[0]
        assert at.bench.bench.step.key in {"cautions", NEXT_PRODUCT}


async def test_an_earlier_product_cannot_be_voided_under_a_later_one() -> None:
    async with at_app(bundled=True) as at:
        await begun(at)
        for _ in range(2):
            await at.open_step(NEXT_PRODUCT)
            await at.press("enter")
        assert "3/3 Two-pack clear" in at.lines[0]
        await at.press("l", "down", "backspace")
        assert "A later product was begun since" in at.words
        await at.press("escape")
        assert "3/3 Two-pack clear" in at.lines[0]


async def test_left_open_it_is_found_by_its_name_and_says_its_product() -> None:
    async with at_app(bundled=True) as at:
        await begun(at)
        await at.press("f9")
        assert at.home.chosen is not None and at.home.chosen.key == "system:car-silver"
        assert at.home.chosen.title.startswith(SYSTEM) and "1/3 Epoxy primer" in at.words
        home = at.places
    for wanted in ("system:car-silver", "car-silver"):
        async with at_app(profile=wanted, bundled=True) as at:
            assert at.places == home
            assert at.home.chosen is not None and at.home.chosen.kind == "job"


async def test_asked_for_by_name_it_opens_the_new_job() -> None:
    for wanted in ("system:sealed-wood", "sealed-wood"):
        async with at_app(profile=wanted, bundled=True) as at:
            assert at.stack == ["Home", "NewJob"]
            await at.until(lambda at=at: "Waterborne topcoat over sealer" in at.text)


async def test_a_system_with_faults_is_told_and_not_begun() -> None:
    async with at_app(bundled=True) as at:
        folder: Path = at.places.own_profiles_dir / "systems"
        folder.mkdir(parents=True)
        (folder / "mine.toml").write_text('name = "Mine"\nsource = "s"\n', encoding="utf-8")
        await at.read_anew()
        await at.open("mine.toml")
        assert at.screen == "Sheet" and "[[products]]" in at.words
