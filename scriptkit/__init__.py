"""Checks, times, grades, drafts and renders the episode outline of an educator who ranks exercises on video."""

__version__ = "0.1.0"
