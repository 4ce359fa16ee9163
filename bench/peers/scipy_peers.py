#!/usr/bin/env python3
"""Library peers in Python: scipy.integrate.solve_ivp with events, on a right-hand side of plain floats.
usage: scipy_peers.py REFERENCE.csv EVERY    (flies each EVERY-th flight, once)"""
import csv, math, statistics, sys, time
from scipy.integrate import solve_ivp

RHO, MU, MASS, RAD, G, KSPIN = 1.225, 1.81e-5, 0.04593, 0.021335, 9.80665, 2e-5
C = RHO * math.pi * RAD * RAD / (2 * MASS)
sqrt, sin, pi = math.sqrt, math.sin, math.pi


def make(row):
    speed, launch, rpm, tilt, wx, wz = row[:6]
    a, t = math.radians(launch), math.radians(tilt)
    ay, az = -math.sin(t), math.cos(t)

    def f(_, s):
        _, _, _, vx, uy, vz, om = s.tolist()
        ux, uz = vx - wx, vz - wz
        U = sqrt(ux * ux + uy * uy + uz * uz)
        S = RAD * om / U
        D = C * U * (0.24 + 0.18 * S + 0.06 * sin(pi * (RHO * U * 2 * RAD / MU - 90000) / 200000))
        lx, ly, lz = ay * uz - az * uy, az * ux, -ay * ux
        L = C * 0.54 * S**0.4 * U * U / sqrt(lx * lx + ly * ly + lz * lz)
        return vx, uy, vz, L * lx - D * ux, L * ly - D * uy - G, L * lz - D * uz, -KSPIN * om * U / RAD

    return f, (0, 0, 0, speed * math.cos(a), speed * math.sin(a), 0, rpm * 2 * pi / 60)


def ground(_, s):
    return s[1]


def top(_, s):
    return s[4]


ground.terminal = True
ground.direction = top.direction = -1

with open(sys.argv[1]) as file:
    rows = [[float(x) for x in row[1:]] for row in list(csv.reader(file))[1:]][:: int(sys.argv[2])]
print("method,setting,flights,us_per_flight,median_error_m,worst_error_m,apex_error_m,time_error_s,force_calls")
for p in range(3, 11):
    for method in ("DOP853", "RK45", "LSODA"):
        tol, calls, answers = 10.0**-p, 0, []
        start = time.process_time()
        for row in rows:
            f, y0 = make(row)
            s = solve_ivp(f, (0, 60), y0, method=method, rtol=tol, atol=tol, events=(ground, top))
            calls += s.nfev
            answers.append((s.y_events[0][-1], s.t_events[0][-1], s.y_events[1][0][1]))
        us = (time.process_time() - start) * 1e6 / len(rows)
        landing = [math.hypot(y[0] - r[6], y[2] - r[7]) for (y, _, _), r in zip(answers, rows)]
        apex = max(abs(a - r[8]) for (_, _, a), r in zip(answers, rows))
        hang = max(abs(t - r[9]) for (_, t, _), r in zip(answers, rows))
        print(
            "SciPy %s,1e-%d,%d,%.1f,%.3e,%.3e,%.3e,%.3e,%.1f"
            % (method, p, len(rows), us, statistics.median(landing), max(landing), apex, hang, calls / len(rows))
        )
