"""The application: what is the same on every screen."""
