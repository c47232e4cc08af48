"""What goes under a published video: chapters, references, corrections, the description."""
