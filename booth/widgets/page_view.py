"""Something to read: paragraphs in a few styles, scrolled where they do not fit."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.reactive import reactive
from textual.scrollbar import ScrollBar
from textual.widgets import Static

from booth.widgets.arrows import Arrows
from booth.widgets.hanging import Hanging
from booth.widgets.text import plain
from booth.words.shown import Page

#: How each style of a paragraph is drawn; the theme's colours, none of its own.
STYLES = {
    "head": "bold",
    "text": "",
    "now": "bold",
    "done": "$quiet",
    "quiet": "$quiet",
    "warning": "bold $tone-caution",
}


ScrollBar.renderer = Arrows


def page_content(page: Page) -> Content:
    """The page as text that no widget reads as markup."""
    lines = [Content.styled(plain(text, True), STYLES[style]) for style, text in page.paragraphs]
    return Content("\n").join(lines)


class PageView(VerticalScroll, can_focus=False):
    """Draws a Page."""

    DEFAULT_CSS = """
PageView { height: 1fr; width: 1fr; padding: 0 1; scrollbar-size-vertical: 1; }
PageView { scrollbar-color: $quiet; scrollbar-color-hover: $foreground; scrollbar-color-active: $foreground; }
PageView { scrollbar-background: transparent; scrollbar-background-hover: transparent; scrollbar-background-active: transparent; }
PageView > Static { height: auto; width: 1fr; }
"""

    shown: reactive[Page] = reactive(Page(()), repaint=False)

    def __init__(self, page: Page | None = None, *, id: str | None = None) -> None:
        super().__init__(id=id)
        if page is not None:
            self.shown = page

    def compose(self) -> ComposeResult:
        yield Static(Hanging(page_content(self.shown)), markup=False)

    def on_mount(self) -> None:
        """Draw what it was told between composing and mounting."""
        for shown in self.query(Static):  # none of it is left where it goes at once
            shown.update(Hanging(page_content(self.shown)))

    def watch_shown(self, page: Page) -> None:
        """Draw another page, from its beginning."""
        if self.is_mounted:
            self.query_one(Static).update(Hanging(page_content(page)))
            self.scroll_home(animate=False)

    def show(self, page: Page) -> bool:
        """Draw a page; whether it is another one."""
        before, self.shown = self.shown, page
        return before != page

    def scroll_by(self, rows: int) -> None:
        """Move what is read."""
        self.scroll_relative(y=rows, animate=False)
