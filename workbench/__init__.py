"""A drafting workbench for made-to-measure boned bodices and corsets."""

__version__ = "0.1.0"
