"""``booth figure``: every computation of the trade, answered in one line with rule and source.

The table of what can be asked is in ``subjects`` and the modules it gathers; parsing, help and the
tests all go by it. Nothing here computes: that is ``booth.trade``.
"""

from __future__ import annotations

from booth.figure.command import main

__all__ = ["main"]
