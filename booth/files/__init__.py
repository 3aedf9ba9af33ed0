"""Files and text: paths, whole writes, lines of TOML, faults in a painter's words, text made fit to be shown."""
