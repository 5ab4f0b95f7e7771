# SPDX-License-Identifier: Apache-2.0
"""fRsi of a brick corner against the moisture of its bricks, drawn with matplotlib.

usage: factor_by_moisture.py [PICTURE]   (factor_by_moisture.svg unless given)
"""

import sys

import matplotlib

matplotlib.use("Agg")
import matplotlib.pyplot as plt

import quoin

# A case as a dict; an invented house.
case = {
    "quoin": 1, "title": "Corner of an invented house",
    "spaces": {"room": {"is": "inside", "temperature": 19, "humidity": 55},
               "outdoors": {"is": "outside", "temperature": 0}},
    "materials": {"wall brick": {"like": "common brick"}},
    "section": {"corner": {"layers": [{"material": "lime plaster", "thickness": 15},
                                      {"material": "wall brick", "thickness": 327}]}}}

# %% Solve it wetter and wetter.
waters = [0.0, 0.02, 0.05, 0.08, 0.11, 0.14, 0.17, 0.20, 0.23]
factors, bands = [], []
for water in waters:
    case["materials"]["wall brick"]["moisture"] = f"{water} m3/m3"
    found = quoin.solve(case).findings["variants"][0]
    coldest = found["surface"]["spaces"]["room"]["coldest"]
    factors.append(coldest["fRsi"])
    bands.append(coldest["fRsi_band"])

# %% Draw it.
figure, axes = plt.subplots(figsize=(6, 4))
axes.errorbar([100 * water for water in waters], factors, yerr=bands, marker="o", capsize=3)
axes.set_xlabel("water in the brick, % by volume")
axes.set_ylabel("fRsi of the corner")
axes.grid(alpha=0.3)
figure.savefig(sys.argv[1] if len(sys.argv) > 1 else "factor_by_moisture.svg")
