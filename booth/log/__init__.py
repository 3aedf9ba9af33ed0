"""The session log: events, the file they are kept in, and the job they add up to."""
