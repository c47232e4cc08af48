"""The tests: one folder a room of scriptkit, with golden/ for whole outputs and house/ for the house rules."""
