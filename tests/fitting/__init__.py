"""Corrections of fittings, and the reading of the opening."""
