"""A terminal companion for people who spray coatings."""

__version__ = "0.1.0"
