"""The body that a shape is kept on: invented, so that no client’s figures travel with her shape.

Heights are left to the estimates of a usual torso: a project without any of them then has
its lines where the shape has them.
"""

from __future__ import annotations

from collections.abc import Mapping

from workbench.body import Length

_INCHES = {"bust_girth": "36", "underbust_girth": "31", "waist_girth": "28", "hip_girth": "38"}

REFERENCE: Mapping[str, Length] = {
    key: Length(25.4 * float(inches), inches, "in") for key, inches in _INCHES.items()
}
"""Measurements by key, as typed (own choice: invented)."""
REFERENCE_NAME = "Invented body of a shape"
