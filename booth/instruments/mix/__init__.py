"""Pouring a batch to its marks."""
