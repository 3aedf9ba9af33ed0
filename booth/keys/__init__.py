"""What a key does, and what the key line says of it."""
