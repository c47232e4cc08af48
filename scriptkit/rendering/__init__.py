"""Facts to bytes: how things look, and no decision about what they say."""
