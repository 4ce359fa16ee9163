"""Bounce and run, from the chapter "Bounce and run" of docs/models.md."""
import math

import numpy as np
from scipy.integrate import solve_ivp

from flight import BALL, EXACT, G, scene_of

TIME_LIMIT = 60.0
HOP_DRAG, ROLL_DRAG = 0.3, 0.45
FADE = 3.0
LOWEST_HOP, HOP_RANGE = 2.5e-3, 5e-3
MOST_BOUNCES = 200
REST_SPEED = 0.01
RIGHT = math.pi / 2


def biber(tilt, e, friction, rolling):
    return dict(
        tilt=lambda speed, i, descent: min(math.radians(tilt) * min(1, i / FADE), RIGHT - descent),
        restitution=lambda vn: e,
        friction=friction,
        rolling=rolling,
    )


def penner(scale, cap, restitution, friction, rolling):
    def e(vn):
        return restitution * (0.51 - 0.0375 * vn + 0.000903 * vn**2 if vn <= 20 else 0.12)

    def tilt(speed, i, descent):
        grown = math.radians(15.4) * speed / 18.6 * (RIGHT - descent) / math.radians(44.4) * min(1, i / FADE)
        return min(math.radians(cap), scale * grown)

    return dict(tilt=tilt, restitution=e, friction=friction, rolling=rolling)


TURFS = {
    "baked": biber(12.9, 0.42, 0.852, 0.15),
    "firm": biber(16.8, 0.17, 0.95, 0.2),
    "normal": biber(18.4, 0.147, 0.998, 0.22),
    "soft": biber(20.5, 0.13, 1, 0.28),
    "wet": biber(24, 0.11, 1, 0.4),
    "artificial": biber(12.9, 0.42, 0.852, 0.15),
    "drainedGreen": biber(18.4, 0.147, 0.157, 0.087),
    "pennerBaked": penner(0.75, 28, 1.1, 0.4, 0.15),
    "pennerFirm": penner(0.92, 31, 1.05, 0.4, 0.2),
    "pennerNormal": penner(1, 32, 1, 0.4, 0.22),
    "pennerSoft": penner(1.08, 34, 0.92, 0.4, 0.28),
    "pennerWet": penner(1.25, 40, 0.8, 0.4, 0.4),
}


def green_resistance(distance):
    return 7 * 1.83**2 / (10 * G * distance)


def unit(x):
    return x / np.linalg.norm(x)


class Ground:
    """Constants of one run."""

    def __init__(self, given):
        scene = scene_of(given)
        slope, cross = math.tan(scene["ground"]["slope"]), math.tan(scene["ground"]["crossSlope"])
        normal, along = unit(np.array([-slope, 1.0, -cross])), unit(np.array([1.0, slope, 0.0]))
        self.axes = np.array([along, normal, np.cross(along, normal)])
        self.gravity = self.axes @ np.array([0.0, -G, 0.0])
        self.gn = -self.gravity[1]
        self.pull = np.array([self.gravity[0], 0.0, self.gravity[2]])
        m, self.r, inertia = BALL["mass"], BALL["radius"], BALL["inertia"]
        self.c = scene["air"]["density"] * math.pi * self.r**2 / (2 * m)
        self.beta = inertia / (inertia + m * self.r**2)
        self.leverage = (1 - self.beta) / (self.beta * self.r)
        self.turf = TURFS[scene["turf"]]
        green = scene["greenSpeed"]
        self.rolling = self.turf["rolling"] if green is None else green_resistance(green)


def across(h):
    """h × N in the frame X, N, Z."""
    return np.array([-h[2], 0.0, h[0]])


def bounce(g, v, w):
    a, i = math.hypot(v[0], v[2]), -v[1]
    h = np.array([v[0], 0.0, v[2]]) / a if a >= 1e-9 else np.array([1.0, 0.0, 0.0])
    s, up = across(h), np.array([0.0, 1.0, 0.0])
    psi = g.turf["tilt"](math.hypot(a, i), i, math.atan2(i, a))
    t = h * math.cos(psi) + up * math.sin(psi)
    b = up * math.cos(psi) - h * math.sin(psi)
    vn = -float(v @ b)
    slip = float(v @ t + g.r * w @ s) * t - g.r * float(w @ t) * s
    size, e = float(np.linalg.norm(slip)), g.turf["restitution"](vn)
    limit = g.turf["friction"] * (1 + e) * vn
    kick = -g.beta * slip if g.beta * size <= limit else -limit * slip / size
    new = float(v @ t) * t + kick + e * vn * b
    new[1] = max(0.0, new[1])
    return new, w - g.leverage * np.cross(b, kick), float((w - g.leverage * np.cross(b, kick)) @ s)


def hop(g, place, v, w, time):
    """Returns False for a hop that the time limit cuts short, and the state after it."""
    rise = v[1] ** 2 / (2 * g.gn)

    def derivative(_t, y):
        return np.concatenate([y[3:6], g.gravity - HOP_DRAG * g.c * np.linalg.norm(y[3:6]) * y[3:6]])

    down = lambda t, y: y[1]
    down.direction, down.terminal = -1, True
    path = solve_ivp(derivative, (0, TIME_LIMIT - time), [*place, *v], events=down, max_step=v[1] / g.gn / 4, **EXACT)
    span, end = path.t[-1], path.y[:, -1]
    place, v = end[0:3], end[3:6]
    if not len(path.t_events[0]):
        return False, place, v, w, time + span
    place[1] = 0.0
    flat = np.array([v[0], 0.0, v[2]])
    speed = float(np.linalg.norm(flat))
    if speed > 0:
        y = flat / speed
        z = across(y)
        x = min(1, max(0, (rise - LOWEST_HOP) / HOP_RANGE))
        q = 1 - x * x * (3 - 2 * x)
        hold = g.rolling * g.gn
        held = min(speed, (1 - q) * span * min(max(0, float(g.gravity @ y)), hold))
        rolled = min(speed - held, q * span * (1 - g.beta) * hold)
        v = v - (held + rolled) * y
        place = place - (held + rolled) * span / 2 * y
        w = w + min(max(0, -float(w @ z)), rolled / g.r) * z
    return True, place, v, w, time + span


def skid(g, place, v, w, time):
    slip_of = lambda v, w: np.array([v[0] + g.r * w[2], 0.0, v[2] - g.r * w[0]])
    near = 1e-7
    if np.linalg.norm(slip_of(v, w)) > near:
        grip = g.turf["friction"] * g.gn

        def derivative(_t, y):
            v, w = y[3:6], y[6:9]
            slip = unit(slip_of(v, w))
            turn = g.leverage * grip * np.array([slip[2], 0.0, -slip[0]])
            return np.concatenate([v, g.pull - ROLL_DRAG * g.c * np.linalg.norm(v) * v - grip * slip, turn])

        gone = lambda t, y: np.linalg.norm(slip_of(y[3:6], y[6:9])) - near
        gone.direction, gone.terminal = -1, True
        path = solve_ivp(derivative, (0, TIME_LIMIT - time), [*place, *v, *w], events=gone, max_step=0.05, **EXACT)
        y = path.y[:, -1]
        place, v, w, time = y[0:3], y[3:6], y[6:9], time + path.t[-1]
    return place, v - g.beta * slip_of(v, w), time


def roll(g, place, v, time):
    """Returns True for a ball that comes to rest, and the state at the end."""
    hold, pull = g.rolling * g.gn, float(np.linalg.norm(g.pull))
    least = 1e-8 if pull == 0 else REST_SPEED
    holds = hold >= pull
    if time >= TIME_LIMIT:
        return False, place, time
    if holds and np.linalg.norm(v) < least:
        return True, place, time

    def derivative(_t, y):
        v = y[3:6]
        speed = np.linalg.norm(v)
        return np.concatenate([v, (1 - g.beta) * (g.pull - hold * v / max(speed, 1e-9) - ROLL_DRAG * g.c * speed * v)])

    slow = lambda t, y: np.linalg.norm(y[3:6]) - least if holds else 1.0
    slow.direction, slow.terminal = -1, True
    path = solve_ivp(derivative, (0, TIME_LIMIT - time), [*place, *v], events=slow, max_step=0.05, **EXACT)
    return bool(len(path.t_events[0])), path.y[0:3, -1], time + path.t[-1]


def run_out(landing, given):
    g = Ground(given)
    start = np.array(landing["position"])
    v = g.axes @ np.array(landing["velocity"])
    w = g.axes @ (landing["spinRate"] * unit(np.array(landing["spinAxis"])))
    place, time, bounces, rests = np.zeros(3), 0.0, [], False
    flying = True
    if v[1] > 0:
        flying, place, v, w, time = hop(g, place, v, w, time)
    while flying:
        before = v
        v, w, backspin = bounce(g, v, w)
        rise = v[1] ** 2 / (2 * g.gn)
        bounces.append(
            dict(
                position=[float(x) for x in start + place @ g.axes],
                time=float(time),
                speedBefore=float(np.linalg.norm(before)),
                descentAngle=math.atan2(-before[1], math.hypot(before[0], before[2])),
                speedAfter=float(np.linalg.norm(v)),
                backspinAfter=backspin,
                hopHeight=float(rise),
            )
        )
        if rise < LOWEST_HOP or len(bounces) == MOST_BOUNCES:
            v[1] = 0.0
            place, v, time = skid(g, place, v, w, time)
            rests, place, time = roll(g, place, v, time)
            break
        flying, place, v, w, time = hop(g, place, v, w, time)
    moved = place @ g.axes
    vx, _, vz = landing["velocity"]
    level = math.hypot(vx, vz)
    hx, hz = (vx / level, vz / level) if level >= 1e-9 else (1.0, 0.0)
    return dict(
        ended="at-rest" if rests else "still-rolling",
        restsAt=[float(x) for x in start + moved],
        distance=float(moved[0] * hx + moved[2] * hz),
        side=float(moved[2] * hx - moved[0] * hz),
        duration=float(time),
        bounces=len(bounces),
        firstBounces=bounces[:3],
    )
