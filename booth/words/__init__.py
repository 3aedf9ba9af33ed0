"""What is shown, in words: figures, events, waits, profiles. Plain data and text; no widget."""
