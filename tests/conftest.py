"""What all tests share."""

from __future__ import annotations

import os

from hypothesis import settings

# The same examples every time, so that a change is judged by what it changes. To look for
# new ones: HYPOTHESIS_PROFILE=seek python -m pytest
settings.register_profile("steady", derandomize=True, deadline=None)
settings.register_profile("seek", deadline=None, max_examples=2000)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "steady"))
