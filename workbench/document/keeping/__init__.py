"""Never losing work: unsaved work, locks, earlier versions, files of older versions."""

from workbench.document.keeping.autosave import AUTOSAVE_SECONDS, Autosave, Unsaved, drop, left_over
from workbench.document.keeping.differences import differences
from workbench.document.keeping.forgetting import forget
from workbench.document.keeping.holder import SIGN_SECONDS, Holder
from workbench.document.keeping.lock import Lock, take
from workbench.document.keeping.opening import Opened, bytes_on_disk, digest_of, open_project
from workbench.document.keeping.steps import Steps
from workbench.document.keeping.versions import (
    KEPT_VERSIONS,
    Version,
    follow,
    keep_version,
    versions_of,
)

__all__ = [
    "AUTOSAVE_SECONDS",
    "KEPT_VERSIONS",
    "SIGN_SECONDS",
    "Autosave",
    "Holder",
    "Lock",
    "Opened",
    "Steps",
    "Unsaved",
    "Version",
    "bytes_on_disk",
    "differences",
    "digest_of",
    "drop",
    "follow",
    "forget",
    "keep_version",
    "left_over",
    "open_project",
    "take",
    "versions_of",
]
