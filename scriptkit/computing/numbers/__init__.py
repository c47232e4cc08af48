"""Spoken numbers held against those of their sources."""
