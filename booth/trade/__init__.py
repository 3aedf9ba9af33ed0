"""The trade's arithmetic: pure functions of plain numbers; no clock, no file, no screen, no units library."""
