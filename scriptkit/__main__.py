"""Lets `python -m scriptkit` do what the command `scriptkit` does."""

import sys

from scriptkit.cli import main

if __name__ == "__main__":
    sys.exit(main())
