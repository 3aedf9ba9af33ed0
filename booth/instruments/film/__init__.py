"""The wet-film gauge."""
