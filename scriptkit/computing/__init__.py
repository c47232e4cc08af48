"""Model to model: what follows from what the author wrote, without files and without a clock."""
