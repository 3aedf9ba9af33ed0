"""Something to read: drawn as it stands, from its beginning, scrolled where it does not fit."""

from __future__ import annotations

import pytest

from booth.widgets.page_view import STYLES, PageView, page_content
from booth.widgets.themes import THEMES
from booth.words.shown import Page
from tests.widgets.bench_app import WidgetApp, screen_lines

HOSTILE = "[/ x [bold] [@click=app.quit]y \x1b[2J\u202e"


def page(*texts: str, style: str = "text") -> Page:
    return Page(tuple((style, text) for text in texts))


def test_hostile_text_is_text() -> None:
    shown = page_content(page(HOSTILE)).plain
    assert shown == "[/ x [bold] [@click=app.quit]y ␛[2J‹U+202E›"


def test_lines_of_a_paragraph_are_kept() -> None:
    assert page_content(page("one\ntwo", "three")).plain == "one\ntwo\nthree"


@pytest.mark.parametrize("style", STYLES)
async def test_every_style_is_drawn_under_every_theme(style: str) -> None:
    view = PageView(page("a line of it", style=style))
    app = WidgetApp(view)
    async with app.run_test(size=(30, 5)) as pilot:
        await pilot.pause()
        for theme in THEMES:
            app.theme = theme.name
            await pilot.pause()
            assert "a line of it" in screen_lines(app)[0]


async def test_another_page_begins_at_its_beginning_and_the_same_one_stays_where_it_is() -> None:
    view = PageView()
    async with WidgetApp(view).run_test(size=(30, 6)) as pilot:
        assert view.show(page(*(f"line {n}" for n in range(40))))
        await pilot.pause()
        assert view.max_scroll_y > 0 and "line 0" in screen_lines(pilot.app)[0]
        view.scroll_by(10)
        await pilot.pause()
        assert "line 10" in screen_lines(pilot.app)[0]
        assert not view.show(page(*(f"line {n}" for n in range(40))))
        await pilot.pause()
        assert "line 10" in screen_lines(pilot.app)[0]
        assert view.show(page(*(f"other {n}" for n in range(40))))
        await pilot.pause()
        assert "other 0" in screen_lines(pilot.app)[0]


async def test_it_scrolls_no_further_than_its_ends() -> None:
    view = PageView(page(*(f"line {n}" for n in range(40))))
    async with WidgetApp(view).run_test(size=(30, 6)) as pilot:
        await pilot.pause()
        view.scroll_by(1_000_000)
        await pilot.pause()
        assert "line 39" in screen_lines(pilot.app)[-1]
        view.scroll_by(-1_000_000)
        await pilot.pause()
        assert "line 0" in screen_lines(pilot.app)[0]


async def test_long_lines_are_broken_between_words_and_none_is_lost() -> None:
    words = [f"word{n}" for n in range(30)]
    view = PageView(page(" ".join(words)))
    async with WidgetApp(view).run_test(size=(30, 20)) as pilot:
        await pilot.pause()
        assert " ".join(screen_lines(pilot.app)).split() == words


async def test_a_page_that_is_told_before_it_is_shown_is_drawn() -> None:
    view = PageView()
    view.show(page("told early"))
    async with WidgetApp(view).run_test(size=(30, 6)) as pilot:
        await pilot.pause()
        assert "told early" in screen_lines(pilot.app)[0]
