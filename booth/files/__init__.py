"""Files and text: where they are, writing them whole, faults in a painter's words, text fit to be shown.

What a file says is read elsewhere: in ``toml``, ``profile``, ``shop`` and ``log``.
"""
