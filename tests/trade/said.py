"""Sentences of the trade as they are read, whatever joins a number and its unit in them."""

from __future__ import annotations

from booth.trade.result import JOIN


def plain(sentence: str) -> str:
    """The sentence in the trade's own units."""
    return sentence.replace(JOIN, " ")
