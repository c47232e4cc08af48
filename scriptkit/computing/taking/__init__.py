"""A recording held against the script: what was said, when, and what of it is another matter."""
