"""A terminal companion for people who spray coatings."""
