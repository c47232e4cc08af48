"""What a listener makes of each sentence: its kind, its strength, what it claims."""
