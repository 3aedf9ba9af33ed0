"""Pictures of every screen, to be looked at. The jobs are invented."""
