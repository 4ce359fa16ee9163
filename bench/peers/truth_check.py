#!/usr/bin/env python3
"""Second, independent integrator for the reference answers: SciPy DOP853 at rtol = atol = 1e-13.
usage: truth_check.py flights-reference.csv   (prints the largest differences)"""
import csv, math, sys
import numpy as np
from scipy.integrate import DOP853
from scipy.optimize import brentq

RHO, MU, MASS, RAD, G, KSPIN = 1.225, 1.81e-5, 0.04593, 0.021335, 9.80665, 2e-5
C = RHO * math.pi * RAD * RAD / (2 * MASS)
INPUTS = ("speed_mps", "launch_deg", "spin_rpm", "tilt_deg", "wind_x_mps", "wind_z_mps")
ANSWERS = ("carry_x_m", "carry_z_m", "apex_m", "time_s", "landing_deg")


def make(row):
    speed, launch, rpm, tilt, wx, wz = (float(row[key]) for key in INPUTS)
    a, t = math.radians(launch), math.radians(tilt)
    ay, az = -math.sin(t), math.cos(t)

    def f(_, s):
        ux, uy, uz, om = s[3] - wx, s[4], s[5] - wz, s[6]
        U = math.sqrt(ux * ux + uy * uy + uz * uz)
        S = RAD * om / U
        CD = 0.24 + 0.18 * S + 0.06 * math.sin(math.pi * (RHO * U * 2 * RAD / MU - 90000) / 200000)
        lx, ly, lz = ay * uz - az * uy, az * ux, -ay * ux
        L = C * 0.54 * S**0.4 * U * U / math.sqrt(lx * lx + ly * ly + lz * lz)
        D = C * CD * U
        force = (L * lx - D * ux, L * ly - D * uy - G, L * lz - D * uz)
        return np.array((s[3], s[4], s[5], *force, -KSPIN * om * U / RAD))

    return f, np.array([0, 0, 0, speed * math.cos(a), speed * math.sin(a), 0, rpm * 2 * math.pi / 60])


def fly(row):
    f, y0 = make(row)
    s = DOP853(f, 0, y0, 60, rtol=1e-13, atol=1e-13, max_step=0.1)
    apex = None
    while True:
        climb = s.y[4]
        s.step()
        if climb > 0 >= s.y[4]:
            d = s.dense_output()
            apex = d(brentq(lambda q: d(q)[4], s.t_old, s.t, xtol=1e-14))[1]
        if s.y[1] < 0 and s.y[4] < 0:
            d = s.dense_output()
            t = brentq(lambda q: d(q)[1], s.t_old, s.t, xtol=1e-14, rtol=8.9e-16)
            y = d(t)
            return y[0], y[2], apex, t, math.degrees(math.atan2(-y[4], math.hypot(y[3], y[5])))


worst = dict.fromkeys(ANSWERS, 0.0)
with open(sys.argv[1]) as file:
    for row in csv.DictReader(file):
        for key, answer in zip(ANSWERS, fly(row)):
            worst[key] = max(worst[key], abs(answer - float(row[key])))
print({key: "%.2e" % value for key, value in worst.items()})
