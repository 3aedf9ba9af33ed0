"""Opening a job: parts by name, refused in sentences, and never opened twice."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.job.part_names import BadParts, parts_from
from booth.log.events import GunChanged, JobOpened, Rack
from booth.shop.model import Gun, Shop
from tests.log.logs import closed, moment, quantity, write
from tests.log.logs import opened as opened_job
from tests.screens.at_app import at_app


def test_parts_are_parted_by_commas_and_blanks_do_not_count() -> None:
    assert parts_from(" left  door, hood ,, ").names == ("left door", "hood")
    assert parts_from("   ").names == ("the part",)


@pytest.mark.parametrize(
    ("typed", "said"),
    [("door, door", "twice"), ("x" * 41, "long"), (",".join(map(str, range(25))), "up to 24")],
)
def test_parts_that_cannot_be_told_apart_get_a_sentence(typed: str, said: str) -> None:
    with pytest.raises(BadParts, match=said):
        parts_from(typed)


@given(st.text(max_size=300))
def test_any_text_is_parts_or_a_sentence(typed: str) -> None:
    try:
        parts = parts_from(typed).names
    except BadParts as fault:
        assert str(fault).endswith(".")
    else:
        assert 1 <= len(parts) == len(set(parts)) <= 24
        assert all(part == " ".join(part.split()) for part in parts)


async def test_two_enters_at_once_open_one_job() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        at.post("enter", "enter")
        await at.settle()
        assert at.stack == ["Home", "BenchScreen"]
        assert len(list(at.places.jobs_dir.glob("*.jsonl"))) == 1


async def test_what_is_refused_is_said_and_stays_for_correction() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        await at.type("door, door")
        await at.press("enter")
        assert at.screen == "NewJob" and "'door' is there twice" in at.text
        assert not at.places.jobs_dir.exists()
        await at.press("backspace", "backspace", "backspace", "backspace")
        assert "twice" not in at.text
        await at.type("hood")
        await at.press("enter")
        (opened,) = at.kept(JobOpened)
        assert opened.parts == ("door", "hood")


async def test_it_is_said_how_parts_are_written_before_any_is() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        assert "commas between parts: hood, 24 doors x 2 sides" in at.text
        await at.type("left door")
        assert "parted by commas" not in at.text


async def test_the_profile_can_be_read_to_its_end_with_the_arrows() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        before = at.text
        await at.press("down", "down")
        assert at.text != before and at.screen == "NewJob"
        await at.press("up", "up")
        assert at.text == before


async def test_escape_leaves_and_nothing_is_kept() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        await at.type("door")
        await at.press("escape")
        assert at.stack == ["Home"] and not at.places.jobs_dir.exists()


async def test_a_rack_is_typed_as_it_is_called_and_is_one_row_of_the_coats() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear")
        await at.type("hood, 24 doors x 2 sides")
        await at.press("enter")
        opened = at.bench.desk.job.opened
        assert opened.parts == ("hood", "doors: side 1", "doors: side 2")
        assert opened.racks == (Rack("doors", 24, 2),)
        await at.open_step("coats")
        names = [line.strip("→ ").split("  ")[0] for line in at.lines if " 0/" in line]
        assert names == ["hood", "24 doors"]


GUNS = Shop(guns=(Gun("A", tip_mm=1.4), Gun("B", tip_mm=1.8)))


def with_a_tip(folder: Path, gun: str, mm: float) -> None:
    """A closed job in which another tip was put on a gun."""
    folder.mkdir(parents=True, exist_ok=True)
    tip = GunChanged(n=0, at=moment(70), gun=gun, tip=quantity(mm, "mm"))
    write(folder, "20250601-1200-demo-0001", opened_job(gun=gun), tip, closed())


async def test_the_tip_of_the_last_job_with_the_gun_is_offered_and_kept() -> None:
    async with at_app(bundled=True) as at:
        at.app.shop = GUNS
        with_a_tip(at.places.jobs_dir, "A", 1.6)
        await at.open("Two-pack clear")
        assert "1.6 mm" in at.text and "as in the last job with this gun" in at.text
        await at.press("enter")
        job = at.bench.desk.job
        assert job.fitted.gun == "A" and job.fitted.tip is not None
        assert job.fitted.tip.value == 1.6 and len(job.of(GunChanged)) == 1


async def test_another_tip_can_be_typed_and_that_of_another_gun_is_not_offered() -> None:
    async with at_app(bundled=True) as at:
        at.app.shop = GUNS
        with_a_tip(at.places.jobs_dir, "B", 1.3)
        await at.open("Two-pack clear")
        assert "as in the last job" not in at.text
        await at.press("down", "right")
        assert "1.3 mm" in at.text
        await at.press("down")
        await at.type("2.0")
        await at.press("enter")
        fitted = at.bench.desk.job.fitted
        assert fitted.gun == "B" and fitted.tip is not None and fitted.tip.value == 2.0


async def test_the_tip_of_the_shop_file_is_no_change() -> None:
    async with at_app(bundled=True) as at:
        at.app.shop = GUNS
        with_a_tip(at.places.jobs_dir, "A", 1.4)
        await at.open("Two-pack clear")
        assert "as in the last job" not in at.text
        await at.press("enter")
        assert at.bench.desk.job.of(GunChanged) == ()
