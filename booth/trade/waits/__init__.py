"""Waits: pot life, flash-off and recoat window at the temperature of the day."""
