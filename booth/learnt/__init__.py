"""What this shop has learnt from its own jobs, never mixed with what the sheets say."""
