"""Delivery: catches of what leaves the gun, of water as well, and the turns of the needle."""
