"""Figures and words in blocks: pure text in, lines out."""
