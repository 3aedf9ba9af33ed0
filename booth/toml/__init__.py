"""TOML files that painters write: read strictly by a table of their keys, judged, written, changed in place.

Which keys a file has is said in ``profile.keys`` and ``shop.keys``; this package knows no file of
its own.
"""
