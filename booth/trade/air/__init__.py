"""Compressed air: the receiver, what standard air means, the cap of an HVLP gun."""
