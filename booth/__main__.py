"""``python -m booth``."""

from booth.cli.command import main

if __name__ == "__main__":
    raise SystemExit(main())
