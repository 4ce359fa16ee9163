"""The strike, from the chapter "Strike" of docs/models.md."""
import math

import numpy as np

from flight import BALL, directions


def head(mass, i0, i1, i2, depth, bulge, roll, restitution, edge, edge_distance, grip):
    """A head in the units of the page: g, g cm², mm. What all heads share stands here."""
    return dict(
        mass=mass * 1e-3,
        shaftMass=3e-3,
        inertia=dict(faceNormal=i0 * 1e-7, vertical=i1 * 1e-7, heelToe=i2 * 1e-7),
        centreOfGravity=dict(depth=depth * 1e-3, high=0.0, toe=0.0),
        bulge=bulge * 1e-3,
        roll=roll * 1e-3,
        restitution=dict(atReference=restitution, referenceSpeed=48.8, slope=0.0015, atEdge=edge, edgeDistance=edge_distance * 1e-3),
        tangentialRestitution=grip,
        friction=0.3,
    )


def constant(value):
    return dict(kind="constant", value=value)


BY_SPEED = dict(kind="by-speed", atReference=-0.175, referenceSpeed=49.2, slope=0.021, reach=0.225)


FLAT = math.inf
IRON = dict(kind="oblique", limit=0.3, onset=math.radians(12), scale=math.radians(6))
HEADS = {
    "driver": head(200, 2400, 4800, 3450, 40, 305, 305, 0.838, 0.78, 30, BY_SPEED),
    "fairwayWood": head(212, 1700, 2800, 1700, 25, 305, 305, 0.825, 0.78, 25, constant(0.0)),
    "hybrid": head(235, 1900, 2700, 1300, 17, 356, 508, 0.79, 0.75, 25, IRON),
    "longIron": head(248, 2600, 2400, 550, 10, FLAT, FLAT, 0.745, 0.745, 30, IRON),
    "midIron": head(268, 2900, 2600, 650, 9, FLAT, FLAT, 0.745, 0.745, 30, IRON),
    "shortIron": head(282, 3100, 2700, 750, 7, FLAT, FLAT, 0.745, 0.745, 30, IRON),
    "wedge": head(288, 3300, 2800, 900, 5, FLAT, FLAT, 0.745, 0.745, 30, IRON),
}

# Laws of tangential restitution: the head's constants, the obliquity and the delivery.
GRIPS = {
    "constant": lambda law, obliquity, delivery: law["value"],
    "oblique": lambda law, obliquity, delivery: (
        law["limit"] * (1 - math.exp(-(obliquity - law["onset"]) / law["scale"])) if obliquity > law["onset"] else 0.0
    ),
    "by-speed": lambda law, obliquity, delivery: law["atReference"]
    - law["reach"] * math.tanh(law["slope"] * (delivery["clubSpeed"] - law["referenceSpeed"]) / law["reach"]),
}


def matrix(x):
    return np.array([[0, -x[2], x[1]], [x[2], 0, -x[0]], [-x[1], x[0], 0]])


def impulse(head, delivery, gear=0.0, coupled=True):
    """Steps 1 to 6: everything in the world frame, of a right-handed player."""
    m, r, inertia = BALL["mass"], BALL["radius"], BALL["inertia"]
    mirror = -1 if delivery.get("hand") == "left" else 1
    path, face = mirror * delivery.get("clubPath", 0.0), mirror * delivery.get("faceAngle", 0.0)
    attack, loft, speed = delivery["attackAngle"], delivery["dynamicLoft"], delivery["clubSpeed"]
    v = speed * directions(attack, path)[0]
    w = np.array([0.0, delivery.get("closureRate", 0.0), 0.0])
    t0 = directions(loft, face)[0]
    t1 = np.array([-math.sin(loft) * math.cos(face), math.cos(loft), -math.sin(loft) * math.sin(face)])
    t2 = np.cross(t0, t1)

    offset = delivery.get("strikeOffset", dict(toe=0.0, high=0.0))
    toe, high, cg = offset["toe"], offset["high"], head["centreOfGravity"]
    n = t0 + high / head["roll"] * t1 + toe / head["bulge"] * t2
    n /= np.linalg.norm(n)
    rh = (cg["depth"] - (toe**2 / head["bulge"] + high**2 / head["roll"]) / 2) * t0 + (high - cg["high"]) * t1 + (toe - cg["toe"]) * t2
    rb = -r * n
    u = -(v + np.cross(w, rh))
    un = float(u @ n)
    ut = u - un * n
    assert un < 0, "the face does not approach the ball"

    law = head["restitution"]
    e = law["atReference"] - law["slope"] * (-un - law["referenceSpeed"])
    e -= (law["atReference"] - law["atEdge"]) * min(1, (toe**2 + high**2) / law["edgeDistance"] ** 2)
    grip = head["tangentialRestitution"]
    et = GRIPS[grip["kind"]](grip, math.atan2(float(np.linalg.norm(ut)), -un), delivery)

    axes, i = np.array([t0, t1, t2]).T, head["inertia"]
    inverse = axes @ np.diag([1 / i["faceNormal"], 1 / i["vertical"], 1 / i["heelToe"]]) @ axes.T
    total = head["mass"] + head["shaftMass"]
    give = (1 / m + 1 / total) * np.eye(3) - matrix(rb) @ matrix(rb) / inertia - matrix(rh) @ inverse @ matrix(rh)
    along = np.outer(n, n)
    across = np.eye(3) - along
    if not coupled:
        give = along @ give @ along + across @ give @ across

    # Both equations of the grip as one: the part along n, and the part across it.
    rows = along @ give + across @ give @ (across + (1 + gear) * along)
    j = np.linalg.solve(rows, -(1 + e) * un * n - (1 + et) * ut)
    jn = float(j @ n)
    jt = j - jn * n
    mu, size = head["friction"], float(np.linalg.norm(jt))
    slid = size > mu * jn
    if slid:
        g = jt / size
        j = -(1 + e) * un / float(n @ give @ n + mu * n @ give @ g) * (n + mu * g)
    assert j @ (2 * u + give @ j) <= 1e-9 * (j @ n) * (np.linalg.norm(ut) - un), "the impulse makes energy"
    return dict(j=j, n=n, rb=rb, v=v, e=e, et=et, slid=slid, mirror=mirror, total=total)


def ball_of(hit):
    """Step 7: launch, backspin and sidespin."""
    turn = np.array([1, 1, hit["mirror"]])
    vb = turn * hit["j"] / BALL["mass"]
    omega = hit["mirror"] * turn * np.cross(hit["rb"], hit["j"]) / BALL["inertia"]
    speed = float(np.linalg.norm(vb))
    angle, direction = math.asin(vb[1] / speed), math.atan2(vb[2], vb[0])
    d, k, l = directions(angle, direction)
    back, side = float(omega @ k), -float(omega @ l)
    launch = dict(
        ballSpeed=speed,
        launchAngle=angle,
        launchDirection=direction,
        spinRate=math.hypot(back, side),
        spinAxisTilt=math.atan2(side, back),
        rifleSpin=float(omega @ d),
    )
    return launch, back, side


def strike(delivery, head_of="driver", gear=0.0):
    head = head_of if isinstance(head_of, dict) else HEADS[head_of]
    hit = impulse(head, delivery, gear)
    launch, back, side = ball_of(hit)
    _, plain_back, plain_side = ball_of(impulse(head, delivery, gear, coupled=False))
    n, v = hit["n"] * np.array([1, 1, hit["mirror"]]), hit["v"]
    return dict(
        launch=launch,
        backspin=back,
        sidespin=side,
        gearBackspin=back - plain_back,
        gearSidespin=side - plain_side,
        restitution=hit["e"],
        tangentialRestitution=hit["et"],
        slid=bool(hit["slid"]),
        smashFactor=launch["ballSpeed"] / delivery["clubSpeed"],
        spinLoft=math.acos(float(hit["n"] @ v) / float(np.linalg.norm(v))),
        faceToPath=math.atan2(n[2], n[0]) - delivery.get("clubPath", 0.0),
        clubSpeedAfter=float(np.linalg.norm(v - hit["j"] / hit["total"])),
    )
