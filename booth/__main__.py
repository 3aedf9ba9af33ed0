"""``python -m booth``."""

from booth.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
