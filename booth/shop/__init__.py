"""The painter's own equipment: guns, cups, compressor, room. Read from and written to one TOML file."""
