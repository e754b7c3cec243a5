"""What the first turn to another place needs, read beside the window while nobody asks for it yet.

Reading a place takes longer than showing it: without this the first turn to each would be felt.
"""

from __future__ import annotations

from importlib import import_module

from PySide6.QtCore import QCoreApplication, QThread

from workbench.ui.job import Job

MODULES = (
    "workbench.ui.pieces",
    "workbench.ui.cloth",
    "workbench.ui.beads",
    "workbench.ui.quote",
    "workbench.ui.fitting",
    "workbench.ui.marking",
    "workbench.ui.sewing",
    "workbench.cloth.plain_way",
    "workbench.ui.guide",
    "workbench.ui.help",
)
"""In the order in which they are likely to be wanted."""


def read_ahead() -> Job:
    """The job that reads them, begun; it deletes itself, and one that fails is read when it is wanted."""
    application = QCoreApplication.instance()
    job = Job(_read, application)
    if application is not None:
        application.aboutToQuit.connect(job.requestInterruption)
        application.aboutToQuit.connect(job.hold)
    job.finished.connect(job.deleteLater)
    job.start(QThread.Priority.LowestPriority)
    return job


def _read() -> None:
    for name in MODULES:
        if QThread.currentThread().isInterruptionRequested():
            return
        import_module(name)
