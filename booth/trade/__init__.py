"""The trade's arithmetic: pure functions of plain numbers; no clock, no file, no screen, no units library.

Every function raises BadInput, with a sentence for a painter, for a number that is not finite or
outside what its docstring says of it, for a name it does not know, and for too few values.
What begins with an underscore is for the trade alone; the rest is public.
"""
