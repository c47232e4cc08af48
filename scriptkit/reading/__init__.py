"""Text to model: the only room that knows YAML, Markdown or any other form an author writes in."""
