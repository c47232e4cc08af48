"""From ratings to grades: the sum, how far it stands, and what would have to change."""
