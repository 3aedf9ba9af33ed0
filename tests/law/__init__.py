"""The law of input, held over every instrument there is."""
