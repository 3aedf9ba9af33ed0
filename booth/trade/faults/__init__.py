"""Faults: what is seen on the part, its causes, ranked by what the job measured."""
