"""Mixing: parts, pours into a cup or on a scale, what was poured too much, the batch and its age."""
