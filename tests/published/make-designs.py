"""Writes data/designs.json: Sobol points of scipy's generator (unscrambled) and its centred discrepancy."""
import json
import pathlib

import scipy.version
from scipy.stats import qmc


def points(dimensions, start, count, bits=30):
    engine = qmc.Sobol(dimensions, scramble=False, bits=bits)
    if start:
        engine.fast_forward(start)
    return engine.random(count).tolist()


data = {
    "about": {
        "what": "points of the Sobol sequence in Gray-code order, and centred L2 discrepancy (squared) of its first points",
        "made by": "make-designs.py, scipy.stats.qmc " + scipy.version.version,
    },
    "first": points(32, 0, 16),
    "later": {"start": 1_000_003, "points": points(32, 1_000_003, 3)},
    "last": {"start": 2**29 + 12345, "points": points(21, 2**29 + 12345, 2)},
    "centredDiscrepancy": [
        {"dimensions": d, "count": n, "value": float(qmc.discrepancy(points(d, 0, n), method="CD"))}
        for d, n in ((2, 64), (5, 256), (10, 512))
    ],
}
out = pathlib.Path(__file__).parent / "data" / "designs.json"
out.write_text(json.dumps(data) + "\n")
