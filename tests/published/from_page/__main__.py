"""A hundred strikes, flights and runs, computed from docs/models.md alone.

The modules beside this one are written from that page, which is all they share with the library: where they and the
library differ, the page is wrong, or the library is. Writes ../data/page-cases.json, which page-cases.test.ts holds
against the library. Needs Python 3.9 and SciPy 1.10 or newer (Debian: apt-get install python3-scipy).

usage: python3 tests/published/from_page            writes the file
       python3 tests/published/from_page --check    only names the cases in which a fresh run differs from the file
"""
import json
import os
import platform
import sys

import numpy as np
import scipy

sys.dont_write_bytecode = True

from cases import cases
from flight import fly
from run import run_out
from strike import HEADS, strike

TARGET = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "data", "page-cases.json")


def landing_of(flight):
    return {key: flight[key] for key in ("position", "velocity", "spinRate", "spinAxis")}


def result_of(case):
    kind, scene = case["kind"], case.get("scene")
    if kind == "flight":
        return fly(case["launch"], scene)
    if kind == "strike":
        return strike(case["delivery"], {**HEADS[case["clubhead"]], **case["changes"]}, case["gearElasticity"])
    if kind == "run":
        return run_out(case["landing"], scene)
    struck = strike(case["delivery"], case["clubhead"])
    flight = fly(struck["launch"], scene)
    run = run_out(landing_of(flight), scene) if flight["ended"] == "landed" else None
    x, _, z = run["restsAt"] if run else flight["position"]
    return dict(strike=struck, flight=flight, **(dict(run=run) if run else {}), total=float(np.hypot(x, z)), side=z)


def differences(a, b):
    if isinstance(a, dict):
        return max((differences(a[key], b[key]) for key in a), default=0)
    if isinstance(a, list):
        return max((differences(x, y) for x, y in zip(a, b)), default=0)
    if isinstance(a, (str, bool)):
        return 0 if a == b else 1
    return abs(a - b)


def main():
    rows = [{**case, "result": result_of(case)} for case in cases()]
    if "--check" in sys.argv:
        with open(TARGET, encoding="utf-8") as file:
            kept = json.load(file)["rows"]
        worst = [(differences(row["result"], old["result"]), row["id"]) for row, old in zip(rows, kept)]
        print(len(rows), "cases,", len(kept), "kept; largest difference:", max(worst))
        return
    about = {
        "what": "Strikes, flights and runs computed from docs/models.md alone, for checking that the page is enough. SI units and radians.",
        "how": "from_page beside this folder: scipy.integrate.solve_ivp, DOP853, relative and absolute tolerance 1e-11.",
        "software": f"SciPy {scipy.__version__}, NumPy {np.__version__}, Python {platform.python_version()}",
        "not": "No measurement: says nothing about whether the models are right.",
    }
    with open(TARGET, "w", encoding="utf-8") as out:
        out.write('{\n"about": ' + json.dumps(about, indent=1) + ',\n"rows": [\n')
        out.write(",\n".join(json.dumps(row) for row in rows))
        out.write("\n]\n}\n")
    print(len(rows), "cases:", {kind: sum(row["kind"] == kind for row in rows) for kind in ("flight", "strike", "run", "shot")})


if __name__ == "__main__":
    main()
