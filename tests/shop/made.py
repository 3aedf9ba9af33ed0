"""A shop file for the tests; all values are invented."""

from __future__ import annotations

WHOLE = """\
units = "us"

[[gun]]
name = "clear gun"
tip = "1.4 mm"
cup = "20 fl oz"
air = "10 cfm"
at = "29 psi"
needle_turns = 3.5
fan_turns = "3 turns"
hvlp = true

[[gun]]
name = "primer gun"
tip = "1.8 mm"

[[cup]]
cup = "zahn 2"
correction = 1.02
note = "checked in spring"

[[cup]]
cup = "Ford #4"

[compressor]
receiver = "60 gal"
flow = "11 cfm"
cut_in = "115 psi"
cut_out = "145 psi"

[room]
volume = "3500 ft3"
exhaust = "1200 cfm"
open_face = "56 sq ft"
readings = "room.json"
"""
