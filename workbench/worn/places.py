"""From points of a panel on the flat to places on the body, many at once.

Figures are own choice, how closely a place is found.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from workbench.draft import Surface
from workbench.worn.torso import Array

Panels = NDArray[np.intp]

_ROUNDS = 20
_HALF_PANEL, _FARTHEST_UP = 0.5, 50.0
_NEARLY = 0.5
"""mm that were missing before the last step, which leaves a few hundredths of it: finer than any screen or
printed picture of a whole torso shows."""


def places_of(surface: Surface, panel: Panels, points: Array) -> tuple[Array, Array]:
    """u and t (n,) of flat points (n, 2), each on its panel (n,): :meth:`Surface.locate` for many points.

    Each round moves every point by what is still missing, across and up as the edges lean
    there; no further than half a panel, as a sharp flare could lead far away. Across, the
    answer is held to the panel.
    """
    t = points[:, 1].copy()
    x, _, lean = surface.edges.at(np.array((2 * panel, 2 * panel + 1)), t)
    chord = np.maximum(x[1] - x[0], 1.0)
    v = (points[:, 0] - x[0]) / chord
    for _ in range(_ROUNDS):
        missing = points - surface.points(panel, v, t)
        here = lean[0] + (lean[1] - lean[0]) * np.clip(v, 0.0, 1.0)
        upright = np.sqrt(np.maximum(1.0 - here * here, 0.1))
        across = (missing[:, 0] * upright - missing[:, 1] * here) / chord
        v += np.clip(across, -_HALF_PANEL, _HALF_PANEL)
        t += np.clip(missing[:, 0] * here + missing[:, 1] * upright, -_FARTHEST_UP, _FARTHEST_UP)
        np.clip(v, -_HALF_PANEL, 1 + _HALF_PANEL, out=v)
        if float(np.abs(missing).max(initial=0.0)) < _NEARLY:
            break
    return panel + np.clip(v, 0.0, 1.0), t
