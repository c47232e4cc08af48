"""How firmly each sentence speaks, by the ladder from very uncertain to plain."""
