"""What each step has to say where the window has room: its tries on the wanted band, charts, lists."""
