"""The whole job as a time line."""
