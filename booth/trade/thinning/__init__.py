"""Thinning: how much thinner is in, how much to a wanted viscosity, what it does to the film."""
