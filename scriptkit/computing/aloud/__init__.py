"""Numbers, units, signs and names as they are spoken."""
