"""Flow cups and viscosity: which cup, what its time means, viscosity at another temperature."""
