"""The job: its events, what they add up to, where they are kept. Knows nothing of the screen."""
