"""How fast the gun has to move; one's own passes."""
