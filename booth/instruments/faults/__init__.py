"""What is seen on the film, and why."""
