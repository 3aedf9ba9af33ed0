"""What stands behind '?' of each step, in headed paragraphs."""
