"""Pattern and overlap: the profile across the fan, what paper shows of it, how passes add up."""
