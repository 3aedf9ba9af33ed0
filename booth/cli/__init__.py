"""The commands. Those that need no screen load none."""
