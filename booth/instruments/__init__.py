"""What a step opens in the middle of the bench: one file an instrument, found by ``registry``."""
