"""Observations: what a shop's own figures say of their middle, and how surely."""
