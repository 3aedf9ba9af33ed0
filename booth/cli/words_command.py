"""``booth words``: the words of the trade that the program shows, each in one sentence."""

from __future__ import annotations

import textwrap
from typing import TextIO

from booth.cli.endings import BAD_INPUT
from booth.files.safe_text import visible
from booth.words.glossary import TERMS, terms_like

WIDTH = 90


def words(term: str, out: TextIO, err: TextIO) -> int:
    """Print what a word means, or all of them; exit code 2 where none is like it."""
    found = terms_like(term) if term else TERMS
    if not found:
        print(f"booth words: no word here is like '{visible(term)}'.", file=err)
        return BAD_INPUT
    for each in found:
        print(textwrap.fill(each.line, WIDTH, subsequent_indent="  "), file=out)
        if term and each.elsewhere:
            print(f"  {each.elsewhere}", file=out)
    return 0
