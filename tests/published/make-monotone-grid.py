"""Reference values for the interpolation of coefficient grids, by an independent library.

usage: python3 tests/published/make-monotone-grid.py   (needs scipy; writes data/monotone-grid.json)

scipy.interpolate.PchipInterpolator is the monotone cubic of Fritsch and Butland (1984). It is applied along each row in
the spin ratio, then across the rows in the Reynolds number.
"""
import json
import os

import numpy
import scipy
from scipy.interpolate import PchipInterpolator

reynolds = [40e3, 60e3, 75e3, 120e3, 220e3]
spin_ratio = [0.02, 0.08, 0.15, 0.3, 0.6]
# Invented numbers with the awkward shapes a tunnel gives: a drag crisis, a dip, a plateau, lift that changes sign.
drag = [
    [0.48, 0.47, 0.46, 0.46, 0.50],
    [0.35, 0.34, 0.36, 0.40, 0.47],
    [0.26, 0.26, 0.29, 0.36, 0.45],
    [0.22, 0.23, 0.26, 0.33, 0.43],
    [0.225, 0.235, 0.265, 0.33, 0.42],
]
lift = [
    [0.01, 0.05, 0.10, 0.22, 0.34],
    [-0.02, -0.10, 0.02, 0.24, 0.35],
    [0.03, 0.10, 0.17, 0.28, 0.36],
    [0.05, 0.14, 0.21, 0.30, 0.36],
    [0.05, 0.14, 0.22, 0.31, 0.36],
]


def surface(values, re, s):
    rows = [float(PchipInterpolator(spin_ratio, row)(s)) for row in values]
    return float(PchipInterpolator(reynolds, rows)(re))


random = numpy.random.default_rng(20260101)
points = [(float(re), float(s)) for re, s in zip(random.uniform(40e3, 220e3, 60), random.uniform(0.02, 0.6, 60))]
points += [(75e3, 0.15), (40e3, 0.02), (220e3, 0.6), (60e3, 0.11), (100e3, 0.08)]
out = {
    "about": {
        "what": "Monotone cubic interpolation of an invented grid of coefficients, in S along the rows, then in Re across them",
        "source": f"scipy {scipy.__version__}, PchipInterpolator (Fritsch and Butland 1984); made by make-monotone-grid.py",
        "confidence": "derived",
        "limits": "Double precision: 1e-13. The grid is invented; only its interpolation is checked.",
    },
    "grid": {"reynolds": reynolds, "spinRatio": spin_ratio, "drag": drag, "lift": lift},
    "points": [
        {"reynolds": re, "spinRatio": s, "drag": surface(drag, re, s), "lift": surface(lift, re, s)} for re, s in points
    ],
}
path = os.path.join(os.path.dirname(os.path.abspath(__file__)), "data", "monotone-grid.json")
with open(path, "w", encoding="utf-8") as file:
    json.dump(out, file, indent=2, ensure_ascii=False)
    file.write("\n")
