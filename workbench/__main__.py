"""``python -m workbench`` is the same as ``corset-workbench``."""

import sys

from workbench.cli import main

sys.exit(main())
