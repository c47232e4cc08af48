"""What each claim stands on: the level of every study behind it, its certainty, and what is doubtful."""
