"""The catch: what the gun delivers in a timed window."""
