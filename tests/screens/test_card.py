"""The card by a key: of the job on the bench and of past ones; where it is, and what becomes of an old one."""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from booth.files.places import Places, cards_dir
from booth.log import events as ev
from booth.shop.model import Shop
from booth.shop.read import read_shop_text
from booth.shop.save import write_shop
from booth.units import System
from tests.screens.at_app import AtApp, a_job, at_app, at_bench
from tests.screens.test_history import ago, closed


def pages(at: AtApp) -> list[Path]:
    return sorted((at.places.jobs_dir.parent / "cards").glob("*.html"))


@pytest.mark.parametrize("way", [("ctrl+e",), ("enter", "e"), ("enter", "ctrl+e"), ("menu",)])
async def test_a_past_job_is_written_as_a_page_and_it_is_said_where(way: tuple[str, ...]) -> None:
    async with at_app(size=(120, 30)) as at:
        path = a_job(ago(20), closed(19, next_time="slower"), parts=("hood",))
        before = path.read_bytes()
        await at.open("Past jobs")
        if way == ("menu",):
            await at.press("enter", "left")
            await at.pick("its card")
            await at.press("enter")
        else:
            await at.press(*way)
        (page,) = pages(at)
        assert page.name == f"{path.stem}.html" and "slower" in page.read_text("utf-8")
        assert at.screen == "Sheet" and page.name in at.words
        assert path.read_bytes() == before, "the log is as it was"


async def test_the_report_names_the_key() -> None:
    async with at_app() as at:
        a_job(ago(20), closed(19))
        await at.open("Past jobs")
        await at.press("enter")
        assert "e  card" in at.key_line


async def test_the_job_on_the_bench_at_its_result_where_letters_are_typed() -> None:
    async with at_bench("result", size=(120, 30)) as at:
        await at.press("down")
        await at.type("even")
        await at.press("ctrl+e")
        (page,) = pages(at)
        assert "not closed" in page.read_text("utf-8") and page.name in at.words
        await at.press("escape")
        assert at.screen == "BenchScreen" and "even" in at.text


async def test_the_same_again_keeps_no_copy_and_another_keeps_the_old_one() -> None:
    async with at_app(size=(120, 30)) as at:
        a_job(ago(20), closed(19))
        await at.open("Past jobs")
        await at.press("ctrl+e", "escape", "ctrl+e")
        assert len(pages(at)) == 1 and "stood there before" not in at.words
        await at.press("escape")
        (page,) = pages(at)
        page.write_text("written on by hand", "utf-8")
        await at.press("ctrl+e")
        assert "stood there before" in at.words
        assert [each.read_text("utf-8")[:10] for each in pages(at)] == ["written on", "<!DOCTYPE "]


async def test_the_units_are_those_on_the_screen() -> None:
    async with at_app(size=(120, 30)) as at:
        air = ev.WeatherRead(
            n=0,
            at=ago(19.5),
            air=ev.Quantity(20, "degC", "20 C"),
            humidity=ev.Quantity(50, "%", "50"),
            part=ev.Quantity(20, "degC", "20 C"),
        )
        a_job(ago(20), air, closed(19))
        await at.open("Past jobs")
        await at.press("ctrl+e", "escape")
        assert "air 68 °F" in pages(at)[0].read_text("utf-8")
        await at.press("f3", "ctrl+e")
        assert any("air 20.0 °C" in page.read_text("utf-8") for page in pages(at))


async def test_the_folder_of_the_shop_file(tmp_path: Path) -> None:
    async with at_app(size=(160, 30)) as at:
        path = a_job(ago(20), closed(19))
        at.app.shop = Shop(cards=str(tmp_path / "for the wall"))
        await at.open("Past jobs")
        await at.press("ctrl+e")
        assert (tmp_path / "for the wall" / f"{path.stem}.html").is_file() and not pages(at)


async def test_a_folder_that_cannot_be_written_is_said() -> None:
    async with at_app() as at:
        a_job(ago(20), closed(19))
        (at.places.jobs_dir.parent / "cards").write_text("a file")
        await at.open("Past jobs")
        await at.press("ctrl+e")
        assert at.screen == "Sheet" and "NOT WRITTEN" in at.words


async def test_a_file_that_is_no_job_has_no_card() -> None:
    async with at_app() as at:
        at.places.jobs_dir.mkdir(parents=True)
        (at.places.jobs_dir / "x.jsonl").write_bytes(b"nothing\n")
        await at.read_anew()
        await at.open("Past jobs")
        await at.press("ctrl+e")
        assert "NOT WRITTEN" in at.words and not pages(at)


def test_the_shop_file_keeps_the_folder() -> None:
    shop = read_shop_text('cards = "~/cards"\nunits = "us"\n', "shop.toml").shop
    assert shop.cards == "~/cards"
    changed = replace(shop, system="metric")
    again = read_shop_text(write_shop(changed, System.METRIC, 'cards = "~/cards"\n'), "x").shop
    assert again == changed


def test_among_the_documents_where_nothing_moves_the_files(
    own_home: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    jobs = Places.standard().jobs_dir
    assert cards_dir(jobs) == jobs.parent / "cards"
    monkeypatch.delenv("BOOTH_HOME")
    assert cards_dir(jobs) == jobs.parent / "cards", "there are no documents here"
    documents = own_home / "Documents"
    documents.mkdir()
    monkeypatch.setattr("platformdirs.user_documents_path", lambda: documents)
    assert cards_dir(jobs) == documents / "booth"
