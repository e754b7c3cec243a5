"""The form pane, and the ledger as a table."""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.ui.form.form import Form

if TYPE_CHECKING:
    from workbench.ui.form.ledger_table import LedgerTable
else:
    __getattr__ = when_asked(__name__, {"ledger_table": "LedgerTable"})

__all__ = ["Form", "LedgerTable"]
