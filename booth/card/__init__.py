"""The card of a job: half a page that says what was sprayed, how, and what came of it; its log behind it."""
