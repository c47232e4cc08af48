"""What may be cut so that an episode fits a time, and which of it to cut."""
