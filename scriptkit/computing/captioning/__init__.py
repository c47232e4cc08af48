"""What is said, cut into captions: at phrase ends, on frames, within what can be read."""
