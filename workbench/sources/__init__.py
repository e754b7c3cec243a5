"""Where every figure of the program comes from: one page, made from the code's own words.

``python -m workbench.sources`` makes the page again, for the help and for the README.
"""

from workbench.sources.page import as_markdown, sources_page
from workbench.sources.records import Entry, Section
from workbench.sources.words import MEANING, STATUSES, Status

__all__ = ["MEANING", "STATUSES", "Entry", "Section", "Status", "as_markdown", "sources_page"]
