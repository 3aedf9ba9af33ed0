"""Fire and ventilation: vapour of solvents, the air that dilutes it, the face of a booth."""
