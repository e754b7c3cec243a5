"""Shapes to begin from."""
