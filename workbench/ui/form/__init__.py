"""The form pane, and the ledger as a table."""

from workbench.ui.form.form import Form
from workbench.ui.form.ledger_table import LedgerTable

__all__ = ["Form", "LedgerTable"]
