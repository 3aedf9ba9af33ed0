"""How much the parts need: areas, film, losses."""
