"""Forms: rows to fill with digits, words and choices. Plain data and pure functions; no widget."""
