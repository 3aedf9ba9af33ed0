"""The bench: what an instrument is, what a key does, what is open. Pure; the screen only draws it."""
