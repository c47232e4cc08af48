"""Facts to findings: many small checks, each with a name that never changes its meaning."""
