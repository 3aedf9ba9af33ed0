"""``booth figure``: every computation of the trade, answered in one line with rule and source.

What can be asked follows from ``booth.trade`` (see ``catalogue``); what does not follow stands in
``exceptions``. Nothing here computes.
"""

from __future__ import annotations

from booth.figure.command import main

__all__ = ["main"]
