"""The test pattern on the paper, and the film it makes."""
