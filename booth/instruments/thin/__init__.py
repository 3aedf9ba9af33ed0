"""How much thinner to add now."""
