"""The trade's arithmetic: pure functions of plain numbers; no clock, no file, no screen, no units library.

Every function raises BadInput, with a sentence for a painter, for a number that is not finite, too
large or too small to reckon with, or outside what its docstring says of it, for a name it does not
know, and for too few values. What it answers is finite, but where its docstring says that there is
no end.
What begins with an underscore is for the trade alone; the rest is public.
"""
