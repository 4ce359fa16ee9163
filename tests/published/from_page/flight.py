"""The flight, from the chapters "Frame and symbols" and "Flight" of docs/models.md."""
import math
import os

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import PchipInterpolator

G = 9.80665
BALL = dict(mass=0.04593, radius=0.021335, inertia=0.4 * 0.04593 * 0.021335**2)
DECAY, DECAY_DENSITY = 2e-5, 1.225
TIME_LIMIT = 60.0
EXACT = dict(method="DOP853", rtol=1e-11, atol=1e-11)


# Air.
def air_of(temperature=293.15, pressure=101325.0, humidity=0.5):
    t, ratio = temperature - 273.15, pressure / temperature
    saturated = math.exp(1.2378847e-5 * temperature**2 - 1.9121316e-2 * temperature + 33.93711047 - 6.3431645e3 / temperature)
    xv = humidity * (1.00062 + 3.14e-8 * pressure + 5.6e-7 * t * t) * saturated / pressure
    z = (
        1
        - ratio * (1.58123e-6 - 2.9331e-8 * t + 1.1043e-10 * t * t + (5.707e-6 - 2.051e-8 * t) * xv + (1.9898e-4 - 2.376e-6 * t) * xv**2)
        + ratio**2 * (1.83e-11 - 0.765e-8 * xv**2)
    )
    dry = 28.96546e-3
    density = pressure * dry / (z * 8.314472 * temperature) * (1 - xv * (1 - 18.01528e-3 / dry))
    return dict(density=density, viscosity=1.458e-6 * temperature**1.5 / (temperature + 110.4))


def air_at_altitude(altitude, temperature=None, humidity=0.5):
    h = 6356766 * altitude / (6356766 + altitude)
    pressure = 101325 * ((288.15 - 0.0065 * h) / 288.15) ** 5.255876
    return air_of(293.15 - 0.0065 * h if temperature is None else temperature, pressure, humidity)


# Wind and ground.
def wind_share(profile, h):
    kind, reference = profile["kind"], profile.get("referenceHeight", 10.0)
    if kind == "uniform":
        return 1.0
    if kind == "log":
        d, z0 = profile.get("displacement", 0.0), profile["roughness"]
        return math.log((h - d) / z0) / math.log((reference - d) / z0) if h - d > z0 else 0.0
    a = profile["exponent"]
    if h >= 0.02:
        return (h / reference) ** a
    return h / 0.02 * (0.02 / reference) ** a if h > 0 else 0.0


# Coefficient laws: drag and lift of Re and S.
def fitted_modern(re, s):
    def share(centre, width, half):
        return 1 / (1 + math.exp((re - centre) / width)) / (1 + (s / half) ** 6)

    cl = 0.0395 * (1 - math.exp(-s / 0.012)) + 0.4493 * (1 - math.exp(-s / 0.2958))
    cd = 0.2059 + 0.2616 * s * s / (s * s + 0.3024**2) + 0.25 * share(50000, 5000, 0.2)
    return cd, cl * (1 - share(62500, 6250, 0.35))


def straight_below(first, lift, s):
    """Lift that runs straight to 0 below the first spin ratio."""
    return lift(s) if s >= first else s / first * lift(first)


def lieberman(re, s):
    r = min(max(re, 81000), 200000) / 1e5
    held = min(max(s, 0.04), 0.22)
    lift = lambda x: 0.086 + 0.6463 * x + 1.4789 * x * x - 0.0122 / r**2
    return 0.2028 - 0.2159 * held + 2.8466 * held**2 + 0.0165 * r, straight_below(0.04, lift, min(s, 0.22))


def naruo(re, s):
    s = min(s, 1.13)
    lift = lambda x: -0.2158 * x**4 + 1.006 * x**3 - 1.644 * x**2 + 1.25 * x + 0.0616
    return 0.751 * s**4 - 1.76 * s**3 + 1.098 * s**2 + 0.2148 * s + 0.2049, straight_below(0.03, lift, s)


def smits_smith(re, s):
    s, re = min(s, 1.0), min(re, 290000)
    cd = 0.24 + 0.18 * s + 0.06 * math.sin(math.pi * (re - 90000) / 200000)
    return cd, straight_below(1e-4, lambda x: 0.54 * x**0.4, s)


def penner(re, s):
    s = min(s, 1.0)
    return 0.171 + 0.62 * s, straight_below(0.05, lambda x: 0.083 + 0.885 * x, s)


LINE = [(0.085, 0.265, 33), (0.095, 0.271, 36), (0.106, 0.28, 38), (0.122, 0.291, 40),
        (0.142, 0.311, 41), (0.17, 0.344, 42), (0.213, 0.39, 43), (0.284, 0.44, 42)]  # fmt: skip
LINE_S = [0, *(s for s, _, _ in LINE), 0.6]
LINE_CD = [m * math.cos(math.radians(a)) for _, m, a in LINE]
LINE_CL = [m * math.sin(math.radians(a)) for _, m, a in LINE]
LINE_CD = [LINE_CD[0], *LINE_CD, LINE_CD[-1] + 0.35 * (0.6 - 0.284)]
LINE_CL = [0, *LINE_CL, LINE_CL[-1] + 0.28 * (0.6 - 0.284)]


def test_range_line(re, s):
    return float(np.interp(s, LINE_S, LINE_CD)), float(np.interp(s, LINE_S, LINE_CL))


def davies(re, s):
    newtons = 4.4482216152605 / (0.5 * 1.2 * math.pi * (0.0411 / 2) ** 2 * 32**2)
    rpm = 30 / math.pi * s * 32 / (0.0411 / 2)
    return newtons * (0.06 + 0.04 * min(rpm / 8000, 1)), newtons * 0.064 * (1 - math.exp(-0.00026 * rpm))


def tunnel_tables():
    """The two tables of 420 numbers are read from the page itself."""
    page = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "..", "docs", "models.md")
    tables = []
    with open(page, encoding="utf-8") as lines:
        for line in lines:
            cells = [cell.strip() for cell in line.strip().strip("|").split("|")]
            if cells[0] == "rpm":
                tables.append(([float(cell.removesuffix(" m/s")) for cell in cells[1:]], []))
            elif tables and len(cells) == 11 and cells[0].isdigit():
                tables[-1][1].append([float(cell) for cell in cells])
    (speeds, drag), (_, lift) = tables
    per_speed = 1.225 * 2 * 0.02134 / 1.789e-5
    spins = np.array([row[0] for row in drag]) * math.pi / 30 * 0.02134 * per_speed
    along_spin = [PchipInterpolator(spins, np.array([row[1:] for row in rows])) for rows in (drag, lift)]
    return np.array(speeds) * per_speed, spins, along_spin


TUNNEL_RE, TUNNEL_SPIN, TUNNEL = tunnel_tables()


def bearman_harvey(re, s):
    re = min(max(re, TUNNEL_RE[0]), TUNNEL_RE[-1])
    spin = min(max(s * re, TUNNEL_SPIN[0]), TUNNEL_SPIN[-1])
    cd, cl = (float(PchipInterpolator(TUNNEL_RE, table(spin))(re)) for table in TUNNEL)
    return cd, cl * min(1, s * re / TUNNEL_SPIN[0])


LAWS = {
    "fitted-modern": fitted_modern,
    "lieberman-2001": lieberman,
    "naruo-2004": naruo,
    "smits-smith-1994": smits_smith,
    "bearman-harvey-1976": bearman_harvey,
    "penner-bearman-harvey": penner,
    "test-range-line": test_range_line,
    "davies-1949": davies,
}


def scene_of(given):
    """A scene with what it leaves out."""
    air = given.get("air", {})
    if "altitude" in air:
        air = air_at_altitude(air["altitude"], air.get("temperature"), air.get("relativeHumidity", 0.5))
    elif "density" not in air:
        air = air_of(air.get("temperature", 293.15), air.get("pressure", 101325.0), air.get("relativeHumidity", 0.5))
    return dict(
        air=air,
        wind=given.get("wind", dict(along=0.0, across=0.0)),
        ground={**dict(elevation=0.0, slope=0.0, crossSlope=0.0), **given.get("ground", {})},
        model=given.get("aerodynamics", "fitted-modern"),
        turf=given.get("turf", "normal"),
        greenSpeed=given.get("greenSpeed"),
    )


def directions(launch_angle, direction):
    """d, k and l of a launch."""
    d = np.array([math.cos(launch_angle) * math.cos(direction), math.sin(launch_angle), math.cos(launch_angle) * math.sin(direction)])
    k = np.array([-math.sin(direction), 0.0, math.cos(direction)])
    return d, k, np.cross(k, d)


def fly(launch, given):
    scene = scene_of(given)
    rho, mu = scene["air"]["density"], scene["air"]["viscosity"]
    wind, ground, law = scene["wind"], scene["ground"], LAWS[scene["model"]]
    profile = wind.get("profile", dict(kind="uniform"))
    rise = np.array([-math.tan(ground["slope"]), 1.0, -math.tan(ground["crossSlope"])])
    m, r = BALL["mass"], BALL["radius"]
    c = rho * math.pi * r * r / (2 * m)

    d, k, l = directions(launch["launchAngle"], launch.get("launchDirection", 0.0))
    spin, tilt = launch["spinRate"], launch.get("spinAxisTilt", 0.0)
    omega = spin * math.cos(tilt) * k - spin * math.sin(tilt) * l + launch.get("rifleSpin", 0.0) * d
    total = float(np.linalg.norm(omega))
    n = omega / total if total > 0 else np.array([0.0, 0.0, 1.0])

    height = lambda y: float(rise @ y[0:3]) - ground["elevation"]
    climb = lambda y: float(rise @ y[3:6])

    def derivative(_t, y):
        f = wind_share(profile, height(y))
        u = y[3:6] - f * np.array([wind["along"], 0.0, wind["across"]])
        speed = float(np.linalg.norm(u))
        out = np.array([y[3], y[4], y[5], 0.0, -G, 0.0, 0.0])
        if speed > 0:
            turn = np.cross(n, u)
            across = float(np.linalg.norm(turn))
            cd, cl = law(rho * speed * 2 * r / mu, r * y[6] * across / speed**2)
            out[3:6] -= c * cd * speed * u
            if y[6] > 0 and across > 0:
                out[3:6] += c * cl * speed**2 * turn / across
            out[6] = -DECAY * rho / DECAY_DENSITY * speed / r * y[6]
        return out

    def result(ended, t, y, apex=0.0, apex_at=0.0):
        direction = launch.get("launchDirection", 0.0)
        return dict(
            ended=ended,
            position=[float(x) for x in y[0:3]],
            velocity=[float(x) for x in y[3:6]],
            spinRate=float(y[6]),
            spinAxis=[float(x) for x in n],
            hangTime=float(t),
            carry=math.hypot(y[0], y[2]),
            side=float(y[2]),
            curve=float(y[2] * math.cos(direction) - y[0] * math.sin(direction)),
            descentAngle=math.atan2(-y[4], math.hypot(y[3], y[5])),
            apex=float(apex),
            apexAt=float(apex_at),
        )

    y0 = np.array([0.0, 0.0, 0.0, *(launch["ballSpeed"] * d), total])
    h0, up0, lifts = height(y0), climb(y0), float(rise @ derivative(0, y0)[3:6])
    above = h0 > 0 or (h0 == 0 and (up0 > 0 or (up0 == 0 and lifts > 0)))
    if h0 == 0 and not above:
        return result("topped", 0.0, y0)
    if not above and up0 <= 0:
        return result("below-ground", 0.0, y0)

    falls = lambda event, terminal: (setattr(event, "direction", -1), setattr(event, "terminal", terminal), event)[2]
    top = falls(lambda t, y: y[4], False)
    land = falls(lambda t, y: height(y), True)
    t, y, apex, apex_at = 0.0, y0, 0.0, 0.0

    def follow(*events):
        nonlocal t, y, apex, apex_at
        path = solve_ivp(derivative, (t, TIME_LIMIT), y, events=(*events, top), max_step=0.05, **EXACT)
        for summit in path.y_events[-1]:
            if summit[1] > apex:
                apex, apex_at = summit[1], math.hypot(summit[0], summit[2])
        t, y = path.t[-1], path.y[:, -1]
        if y[1] > apex:
            apex, apex_at = y[1], math.hypot(y[0], y[2])
        return [len(times) > 0 for times in path.t_events]

    if not above:
        emerge = lambda t, y: height(y)
        emerge.direction, emerge.terminal = 1, True
        if not follow(emerge, falls(lambda t, y: climb(y), True))[0]:
            return result("below-ground" if t < TIME_LIMIT else "time-limit", t, y, apex, apex_at)
    landed = follow(land)[0]
    return result("landed" if landed else "time-limit", t, y, apex, apex_at)
