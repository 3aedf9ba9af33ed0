"""Coating profiles: the model, the strict reader, the writer. Knows nothing of jobs or the screen."""
