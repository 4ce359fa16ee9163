#!/usr/bin/env python3
"""Flights integrated by a general-purpose library, as a yardstick for the integrators of this package.

Writes data/reference-flights.json. Nothing here is shared with the package: the equations of motion and the
coefficient laws are written again from their description (docs/conventions.md, docs/models.md), and the integrator is
SciPy's DOP853. Needs Python 3.9 and SciPy 1.10 or newer (Debian: apt-get install python3-scipy).

usage: make-reference-flights.py            writes the file
       make-reference-flights.py --check    only says by how much a fresh run differs from the file
"""
import json
import math
import os
import platform
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator

HERE = os.path.dirname(os.path.abspath(__file__))
TARGET = os.path.join(HERE, "data", "reference-flights.json")

MASS, RADIUS, GRAVITY = 0.04593, 0.021335, 9.80665
AREA = math.pi * RADIUS**2
DECAY = 2e-5


# Coefficient laws: drag and lift of Reynolds number and spin ratio.
def fitted_modern(re, s):
    def low(centre, width, half_at):
        return 1 / (1 + math.exp((re - centre) / width)) / (1 + (s / half_at) ** 6)

    cd = 0.2059 + 0.2616 * s * s / (s * s + 0.3024**2) + 0.25 * low(50000, 5000, 0.2)
    cl = 0.0395 * (1 - math.exp(-s / 0.012)) + 0.4493 * (1 - math.exp(-s / 0.2958))
    return cd, cl * (1 - low(62500, 6250, 0.35))


def naruo(re, s):
    def lift(x):
        return -0.2158 * x**4 + 1.006 * x**3 - 1.644 * x**2 + 1.25 * x + 0.0616

    x = min(s, 1.13)
    cd = 0.751 * x**4 - 1.76 * x**3 + 1.098 * x**2 + 0.2148 * x + 0.2049
    return cd, (lift(x) if s >= 0.03 else s / 0.03 * lift(0.03))


def lieberman(re, s):
    r = min(max(re, 81000.0), 200000.0) / 1e5

    def lift(x):
        return 0.086 + 0.6463 * x - 0.0122 / r**2 + 1.4789 * x**2

    x = min(max(s, 0.04), 0.22)
    cd = 0.2028 + 2.8466 * x**2 + 0.0165 * r - 0.2159 * x
    return cd, (lift(x) if s >= 0.04 else s / 0.04 * lift(0.04))


def smits_smith(re, s):
    s, re = min(s, 1.0), min(re, 290000.0)
    return 0.24 + 0.18 * s + 0.06 * math.sin(math.pi * (re - 90000) / 200000), 0.54 * s**0.4


def penner(re, s):
    s = min(s, 1.0)
    return 0.171 + 0.62 * s, (0.083 + 0.885 * s if s >= 0.05 else s / 0.05 * (0.083 + 0.885 * 0.05))


# Magnitude and angle of the coefficient at eight spin ratios; drag and lift are its parts. 0 and 0.6 end the extrapolation.
LINE_TABLE = [
    (0.085, 0.265, 33), (0.095, 0.271, 36), (0.106, 0.28, 38), (0.122, 0.291, 40),
    (0.142, 0.311, 41), (0.17, 0.344, 42), (0.213, 0.39, 43), (0.284, 0.44, 42),
]  # fmt: skip
LINE_S = [0, *(s for s, _, _ in LINE_TABLE), 0.6]
LINE_CD = [m * math.cos(math.radians(a)) for _, m, a in LINE_TABLE]
LINE_CD = [LINE_CD[0], *LINE_CD, LINE_CD[-1] + 0.35 * (0.6 - 0.284)]
LINE_CL = [m * math.sin(math.radians(a)) for _, m, a in LINE_TABLE]
LINE_CL = [0, *LINE_CL, LINE_CL[-1] + 0.28 * (0.6 - 0.284)]


def test_range_line(re, s):
    return float(np.interp(s, LINE_S, LINE_CD)), float(np.interp(s, LINE_S, LINE_CL))


def davies(re, s):
    # 32 m/s, air 1.2 kg/m3, ball of 41.1 mm; forces in pounds-force, spin in rpm.
    area = math.pi * 0.02055**2
    per_pound = 4.4482216152605 / (0.5 * 1.2 * area * 32**2)
    rpm = s * 32 / 0.02055 * 30 / math.pi
    return per_pound * (0.06 + 0.04 * min(rpm / 8000, 1)), per_pound * 0.064 * (1 - math.exp(-0.00026 * rpm))


# Table of 10 air speeds and 21 spins, from the file beside this one; monotone cubics as SciPy has them.
with open(os.path.join(HERE, "data", "bearman-harvey-1976.json"), encoding="utf-8") as file:
    BH = json.load(file)
BH_RE = np.array(BH["airSpeeds"]) * 1.225 * 2 * 0.02134 / 1.789e-5
BH_SPIN = np.array(BH["spins"]) * math.pi / 30 * 0.02134 * 1.225 * 2 * 0.02134 / 1.789e-5
BH_ALONG_SPIN = {name: PchipInterpolator(BH_SPIN, np.array(BH[name]), axis=0) for name in ("drag", "lift")}


def bearman_harvey(re, s):
    re = min(max(re, BH_RE[0]), BH_RE[-1])
    spin = min(max(s * re, BH_SPIN[0]), BH_SPIN[-1])

    def at(name):
        return float(PchipInterpolator(BH_RE, BH_ALONG_SPIN[name](spin))(re))

    cl = at("lift")
    return at("drag"), (cl if s * re >= BH_SPIN[0] else s * re / BH_SPIN[0] * cl)


LAWS = {
    "fitted-modern": fitted_modern,
    "smits-smith-1994": smits_smith,
    "penner-bearman-harvey": penner,
    "test-range-line": test_range_line,
    "davies-1949": davies,
    "naruo-2004": naruo,
    "lieberman-2001": lieberman,
    "bearman-harvey-1976": bearman_harvey,
}


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def ground_height(ground, x, z):
    return ground["elevation"] + math.tan(ground["slope"]) * x + math.tan(ground["crossSlope"]) * z


def wind_share(profile, height):
    kind = profile["kind"]
    if kind == "uniform":
        return 1.0
    if kind == "log":
        z0, d, ref = profile["roughness"], profile["displacement"], profile["referenceHeight"]
        return math.log((height - d) / z0) / math.log((ref - d) / z0) if height - d > z0 else 0.0
    lowest = 0.02  # below, a straight line to 0 at the ground
    share = (max(height, lowest) / profile["referenceHeight"]) ** profile["exponent"]
    return share * min(1, max(height, 0) / lowest)


def start(launch):
    """Unit launch direction, spin vector."""
    up, right = launch["launchAngle"], launch["launchDirection"]
    v = (math.cos(up) * math.cos(right), math.sin(up), math.cos(up) * math.sin(right))
    k = (-math.sin(right), 0.0, math.cos(right))
    across = cross(k, v)
    tilt, spin, rifle = launch["spinAxisTilt"], launch["spinRate"], launch["rifleSpin"]
    spin_vector = tuple(
        spin * (math.cos(tilt) * k[i] - math.sin(tilt) * across[i]) + rifle * v[i] for i in range(3)
    )
    return v, spin_vector


def fly(flight, rtol):
    launch, air, wind, ground = flight["launch"], flight["air"], flight["wind"], flight["ground"]
    law = LAWS[flight["model"]]
    direction, spin_vector = start(launch)
    total_spin = math.sqrt(sum(c * c for c in spin_vector))
    axis = tuple(c / total_spin for c in spin_vector) if total_spin > 0 else (0.0, 0.0, 1.0)
    rho, mu = air["density"], air["viscosity"]

    def derivative(_t, y):
        px, py, pz, vx, vy, vz, spin = y
        share = wind_share(wind["profile"], py - ground_height(ground, px, pz))
        u = (vx - wind["along"] * share, vy, vz - wind["across"] * share)
        speed = math.sqrt(u[0] ** 2 + u[1] ** 2 + u[2] ** 2)
        turn = cross(axis, u)
        sine = math.sqrt(turn[0] ** 2 + turn[1] ** 2 + turn[2] ** 2)
        # Spin across the relative wind: |axis x u| / |u| is the sine between them.
        s = RADIUS * spin * sine / (speed * speed)
        cd, cl = law(rho * speed * 2 * RADIUS / mu, s)
        pressure = 0.5 * rho * AREA / MASS
        lift = pressure * cl * speed * speed / sine if sine > 0 else 0.0
        drag = pressure * cd * speed
        return [
            vx, vy, vz,
            lift * turn[0] - drag * u[0],
            lift * turn[1] - drag * u[1] - GRAVITY,
            lift * turn[2] - drag * u[2],
            -DECAY * rho / 1.225 * speed / RADIUS * spin,
        ]

    def clearance(_t, y):
        return y[1] - ground_height(ground, y[0], y[2])

    def climb(_t, y):
        return y[4]

    def clearance_rate(y):
        return y[4] - math.tan(ground["slope"]) * y[3] - math.tan(ground["crossSlope"]) * y[5]

    y0 = [0.0, 0.0, 0.0, *(launch["ballSpeed"] * c for c in direction), total_spin]
    atol = [1e-11] * 3 + [1e-11] * 3 + [1e-9]
    options = dict(method="DOP853", rtol=rtol, atol=atol)
    clearance.direction, clearance.terminal = -1, True
    climb.direction = -1
    # Leave the ground before looking for the way back to it.
    first = solve_ivp(derivative, (0, 1e-4), y0, **options)
    found = solve_ivp(derivative, (1e-4, 120), first.y[:, -1], events=(clearance, climb), **options)
    if not len(found.t_events[0]):
        return None

    def polish(t, value, rate):
        """Event found on the interpolant; integrate to it and correct until the value vanishes."""
        y = solve_ivp(derivative, (0, t), y0, **options).y[:, -1]
        for _ in range(4):
            step = -value(t, y) / rate(t, y)
            if abs(step) < 1e-14:
                break
            y = solve_ivp(derivative, (t, t + step), y, **options).y[:, -1]
            t += step
        return t, y

    t, y = polish(found.t_events[0][0], clearance, lambda _t, s: clearance_rate(s))
    apex, apex_at = 0.0, 0.0
    for event in found.t_events[1]:  # lift can turn a falling ball up again, so there may be several
        _, top = polish(event, climb, lambda at, s: derivative(at, s)[4])
        if top[1] > apex:
            apex, apex_at = top[1], math.hypot(top[0], top[2])
    heading = launch["launchDirection"]
    return {
        "carry": math.hypot(y[0], y[2]),
        "side": y[2],
        "curve": y[2] * math.cos(heading) - y[0] * math.sin(heading),
        "apex": apex,
        "apexAt": apex_at,
        "hangTime": t,
        "descentAngle": math.atan2(-y[4], math.hypot(y[3], y[5])),
        "position": [float(c) for c in y[0:3]],
        "velocity": [float(c) for c in y[3:6]],
        "spinRate": float(y[6]),
    }


def flights():
    deg, rpm = math.pi / 180, math.pi / 30
    base = {
        "launch": dict(launchAngle=11 * deg, launchDirection=0.0, spinAxisTilt=0.0, rifleSpin=0.0),
        "air": dict(density=1.2, viscosity=1.81e-5),
        "wind": dict(along=0.0, across=0.0, profile=dict(kind="uniform")),
        "ground": dict(elevation=0.0, slope=0.0, crossSlope=0.0),
    }

    def flight(name, model, speed, angle, spin, launch=None, air=None, wind=None, ground=None):
        return {
            "id": name,
            "model": model,
            "launch": {**base["launch"], "ballSpeed": speed, "launchAngle": angle * deg, "spinRate": spin * rpm, **(launch or {})},
            "air": {**base["air"], **(air or {})},
            "wind": {**base["wind"], **(wind or {})},
            "ground": {**base["ground"], **(ground or {})},
        }

    log_links = dict(kind="log", roughness=0.03, displacement=0.0, referenceHeight=10.0)
    log_trees = dict(kind="log", roughness=0.5, displacement=0.4, referenceHeight=10.0)
    power = dict(kind="power", exponent=1 / 7, referenceHeight=10.0)
    rows = []
    # Every model: a drive, a long iron, a wedge.
    for model in LAWS:
        rows.append(flight(f"{model}-drive", model, 75.0, 10.9, 2700))
        rows.append(flight(f"{model}-iron", model, 61.0, 12.0, 4800, launch=dict(spinAxisTilt=8 * deg, launchDirection=-2 * deg)))
        rows.append(flight(f"{model}-wedge", model, 40.0, 29.0, 9800, wind=dict(along=-6.0, across=4.0, profile=dict(kind="uniform"))))
    # Corners of the default model.
    default = "fitted-modern"
    rows += [
        flight("slow-chip", default, 3.0, 30, 500),
        flight("slowest", default, 1.0, 45, 0),
        flight("slow-high-spin", default, 12.0, 40, 11000),
        flight("spin-ratio-above-2", default, 12.0, 35, 13500),
        flight("fastest", default, 110.0, 12, 2500),
        flight("fastest-high-spin", default, 100.0, 8, 20000),
        flight("no-spin", default, 70.0, 14, 0),
        flight("topspin", default, 60.0, 25, 2000, launch=dict(spinAxisTilt=170 * deg)),
        flight("pure-sidespin", default, 65.0, 14, 3000, launch=dict(spinAxisTilt=90 * deg)),
        flight("rifle-spin", default, 65.0, 14, 2500, launch=dict(rifleSpin=150.0)),
        flight("rifle-only", default, 65.0, 20, 0, launch=dict(rifleSpin=-200.0)),
        flight("vertical", default, 40.0, 90, 3000, wind=dict(along=3.0, across=-2.0, profile=dict(kind="uniform"))),
        flight("backwards", default, 30.0, 89, 9000, wind=dict(along=-8.0, across=0.0, profile=dict(kind="uniform"))),
        flight("level-from-height", default, 60.0, 0, 3000, ground=dict(elevation=-12.0)),
        flight("pulls-up", default, 80.0, -1, 4000, ground=dict(elevation=-10.0)),
        flight("down-from-cliff", default, 45.0, -25, 2500, ground=dict(elevation=-40.0)),
        flight("long-drop", default, 70.0, 15, 2800, ground=dict(elevation=-150.0)),
        flight("green-above", default, 55.0, 20, 5000, ground=dict(elevation=12.0)),
        flight("uphill", default, 70.0, 12, 2600, ground=dict(slope=4 * deg)),
        flight("downhill-across", default, 70.0, 12, 2600, ground=dict(slope=-6 * deg, crossSlope=5 * deg)),
        flight("elevation-and-slopes", default, 60.0, 18, 4500, launch=dict(spinAxisTilt=-12 * deg), ground=dict(elevation=-8.0, slope=3 * deg, crossSlope=-7 * deg)),
        flight("thin-air", default, 75.0, 13, 2700, air=dict(density=0.85, viscosity=1.75e-5)),
        flight("cold-dense-air", default, 75.0, 11, 2700, air=dict(density=1.36, viscosity=1.69e-5)),
        flight("gale-head", default, 70.0, 10, 3000, wind=dict(along=-20.0, across=0.0, profile=dict(kind="uniform"))),
        flight("gale-tail-slow", default, 25.0, 30, 6000, wind=dict(along=20.0, across=5.0, profile=dict(kind="uniform"))),
        flight("log-links-head", default, 74.0, 11, 2700, wind=dict(along=-8.0, across=3.0, profile=log_links)),
        flight("log-links-tail", default, 74.0, 11, 2700, wind=dict(along=9.0, across=-5.0, profile=log_links), ground=dict(elevation=-5.0)),
        flight("log-trees-cross", default, 58.0, 16, 5500, wind=dict(along=-3.0, across=9.0, profile=log_trees), ground=dict(elevation=-1.0)),
        flight("power-cross", default, 70.0, 12, 3000, wind=dict(along=2.0, across=10.0, profile=power), ground=dict(elevation=-2.0)),
        flight("log-on-slope", default, 66.0, 13, 3400, wind=dict(along=-7.0, across=-6.0, profile=log_links), ground=dict(elevation=-3.0, slope=2 * deg, crossSlope=3 * deg)),
    ]
    # Everything at once, drawn over the domain; the generator is fixed so that the file can be made again.
    random = np.random.default_rng(20020)
    profiles = [dict(kind="uniform"), log_links, power]
    models = list(LAWS)
    for index in range(20):
        u = random.random(14)
        rows.append(
            flight(
                f"drawn-{index + 1}",
                default if index % 2 == 0 else models[1 + index // 2 % (len(models) - 1)],
                round(15 + 75 * u[0], 3),
                round(4 + 46 * u[1], 3),
                round(500 + 10000 * u[2], 1),
                launch=dict(launchDirection=round((u[3] - 0.5) * 0.3, 4), spinAxisTilt=round((u[4] - 0.5) * 1.2, 4), rifleSpin=round((u[5] - 0.5) * 100, 2)),
                air=dict(density=round(0.9 + 0.4 * u[6], 4), viscosity=round(1.7e-5 + 0.2e-5 * u[7], 8)),
                wind=dict(along=round((u[8] - 0.5) * 24, 3), across=round((u[9] - 0.5) * 24, 3), profile=profiles[index % 3]),
                ground=dict(elevation=round(-20 * u[10] - 0.5, 3), slope=round((u[11] - 0.5) * 0.12, 4), crossSlope=round((u[12] - 0.5) * 0.12, 4)),
            )
        )
    return rows


def largest_difference(a, b):
    keys = ["carry", "side", "curve", "apex", "apexAt"]
    return max(abs(a[k] - b[k]) for k in keys)


def main():
    if "--check" in sys.argv:
        kept = {row["id"]: row["result"] for row in json.load(open(TARGET))["rows"]}
        print("largest difference [m]:", max(largest_difference(fly(f, 1e-12), kept[f["id"]]) for f in flights()))
        return
    rows, worst = [], 0.0
    for row in flights():
        result, finer = fly(row, 1e-12), fly(row, 5e-14)
        if result is None:
            raise SystemExit(f"{row['id']} never lands")
        difference = largest_difference(result, finer)
        worst = max(worst, difference)
        print(f"{row['id']:32s} carry {result['carry']:10.4f} m  apex {result['apex']:8.4f} m  {result['hangTime']:7.3f} s  finer run differs by {difference:.1e} m")
        rows.append({**row, "result": finer})
    about = {
        "what": "Flights integrated by a general-purpose library, for checking integrators. SI units and radians.",
        "how": "make-reference-flights.py beside this folder: the equations written a second time; scipy.integrate.solve_ivp, DOP853, relative tolerance 5e-14, events polished by integrating to them.",
        "software": f"SciPy {scipy.__version__}, NumPy {np.__version__}, Python {platform.python_version()}",
        "ball": "mass 0.04593 kg, radius 0.021335 m; gravity 9.80665 m/s2; spin decay constant 2e-5",
        "accuracy": f"A run at 1e-12 differs by at most {worst:.1e} m.",
        "not": "No measurement: says nothing about whether the models are right.",
    }
    with open(TARGET, "w") as out:
        out.write('{\n"about": ' + json.dumps(about, indent=1) + ',\n"rows": [\n')
        out.write(",\n".join(json.dumps(row) for row in rows))
        out.write("\n]\n}\n")
    print(f"{len(rows)} flights, worst difference between tolerances {worst:.1e} m")


if __name__ == "__main__":
    main()
