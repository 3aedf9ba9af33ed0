"""Weather: dew point, drying power, and each limit of the day."""
