"""A drafting workbench for made-to-measure boned bodices and corsets."""

import os

__version__ = "0.1.0"

# No matrix here is large enough to share among threads, and starting them costs numpy's
# import as much again as everything else in it.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
