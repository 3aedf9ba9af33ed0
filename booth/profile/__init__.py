"""Coating profiles: the model, strict reader, writer. Knows nothing of jobs or the screen."""
