"""The hundred cases: what is flown, struck and run out. SI units and radians, as the library takes them."""
import math

import numpy as np

from strike import HEADS

DEG, RPM = math.pi / 180, math.pi / 30


def launch(speed, angle, spin, direction=0.0, tilt=0.0, rifle=0.0):
    return dict(
        ballSpeed=speed, launchAngle=angle * DEG, launchDirection=direction * DEG,
        spinRate=spin * RPM, spinAxisTilt=tilt * DEG, rifleSpin=rifle * RPM,
    )  # fmt: skip


def delivery(speed, attack, loft, path=0.0, face=0.0, toe=0.0, high=0.0, closure=0.0, hand="right"):
    return dict(
        clubSpeed=speed, attackAngle=attack * DEG, dynamicLoft=loft * DEG, clubPath=path * DEG, faceAngle=face * DEG,
        strikeOffset=dict(toe=toe * 1e-3, high=high * 1e-3), closureRate=closure * DEG, hand=hand,
    )  # fmt: skip


def landing(speed, descent, spin, axis=(0.0, 0.0, 1.0), heading=0.0, position=(0.0, 0.0, 0.0)):
    down, right = descent * DEG, heading * DEG
    velocity = [speed * math.cos(down) * math.cos(right), -speed * math.sin(down), speed * math.cos(down) * math.sin(right)]
    return dict(position=list(position), velocity=velocity, spinRate=spin * RPM, spinAxis=list(axis))


def ground(elevation=0.0, slope=0.0, cross=0.0):
    return dict(elevation=elevation, slope=slope * DEG, crossSlope=cross * DEG)


LINKS = dict(kind="log", roughness=0.03)
TREES = dict(kind="log", roughness=0.5, displacement=0.4, referenceHeight=20.0)
POWER = dict(kind="power", exponent=1 / 7)
MODELS = [
    "fitted-modern", "lieberman-2001", "naruo-2004", "smits-smith-1994",
    "bearman-harvey-1976", "penner-bearman-harvey", "test-range-line", "davies-1949",
]  # fmt: skip


def wind(along, across, profile=None):
    return dict(along=along, across=across, **({} if profile is None else dict(profile=profile)))


def flights():
    """Every model through its range and beyond both ends of it, then wind, air, ground, spin and the ways to end."""
    for model in MODELS:
        yield f"{model}: drive", launch(73, 11, 2600), dict(aerodynamics=model)
        yield f"{model}: fast, hardly spinning", launch(88, 14, 350, tilt=20), dict(aerodynamics=model)
        yield f"{model}: slow, spinning hard", launch(24, 38, 10000, tilt=-10), dict(aerodynamics=model)
    tee, mountain = ground(-6, 2, -3), dict(altitude=2200.0)
    yield "no spin", launch(65, 16, 0), {}
    yield "rifle spin", launch(65, 14, 2500, rifle=1500), dict(wind=wind(3, -2))
    yield "topspin", launch(60, 25, 2000, tilt=170), {}
    yield "links, into and across", launch(74, 11, 2700), dict(wind=wind(-8, 4, LINKS), ground=tee)
    yield "trees, behind", launch(58, 16, 5500, direction=-4), dict(wind=wind(9, -5, TREES), ground=ground(-2))
    yield "power law", launch(70, 12, 3000, tilt=6), dict(wind=wind(-4, 10, POWER), ground=ground(-1))
    yield "mountain", launch(75, 12, 2500), dict(air=mountain)
    yield "cold, wet, low pressure", launch(70, 12, 2800), dict(air=dict(temperature=276.15, pressure=98000.0, relativeHumidity=0.95))
    yield "warm mountain, downhill", launch(71, 12, 2600, tilt=-8), dict(air=dict(altitude=1600.0, temperature=303.15, relativeHumidity=0.2), ground=ground(0, -4, 2))
    yield "green above", launch(55, 20, 5000), dict(ground=ground(10, 1, 0))
    yield "from below the plane, never above it", launch(40, 10, 3000), dict(ground=ground(30))
    yield "topped", launch(30, -3, 1000), {}
    yield "along the ground, pulled down", launch(45, 0, 1500, tilt=180), {}
    yield "still up after a minute", launch(70, 15, 2800), dict(ground=ground(-1000), wind=wind(0, 4), air=dict(density=2.6, viscosity=1.8e-5))


def strikes():
    yield "driver, centre", delivery(50, 3, 14), "driver"
    yield "driver, down", delivery(45, -4, 11), "driver"
    yield "driver, high toe", delivery(48, 2, 14, path=-3, face=2, toe=18, high=10), "driver"
    yield "driver, low heel, closing", delivery(50, 0, 13, path=4, face=-1, toe=-15, high=-8, closure=2000), "driver"
    yield "driver, beyond the map", delivery(42, 1, 15, toe=32, high=12), "driver"
    yield "driver, left hand", delivery(47, 2, 14, path=3, face=-2, toe=12, high=-6, closure=1500, hand="left"), "driver"
    yield "driver, slow", delivery(25, 2, 18, high=5), "driver"
    yield "driver, fast, gear elasticity", delivery(58, 4, 12, toe=-12, high=6), "driver", 0.4
    yield "driver, wide open", delivery(48, 0, 20, path=-10, face=14, toe=8), "driver"
    head = HEADS["driver"]
    yield "driver, centre of gravity elsewhere", delivery(49, 2, 14, toe=6, high=4), "driver", 0.0, dict(centreOfGravity=dict(depth=0.034, high=-0.004, toe=-0.006))
    yield "driver, little friction", delivery(49, -2, 24, toe=9), "driver", 0.0, dict(friction=0.06)
    yield "driver, restitution falls faster", delivery(60, 1, 13, toe=10, high=-5), "driver", 0.0, dict(restitution={**head["restitution"], "slope": 0.004, "atEdge": 0.6, "edgeDistance": 0.02})
    yield "fairway wood", delivery(46, -2, 15, toe=7, high=-5), "fairwayWood"
    yield "hybrid", delivery(44, -3, 19, path=3, face=1, toe=-9, high=4, closure=900), "hybrid"
    yield "long iron", delivery(42, -3, 18, path=-2, face=1), "longIron"
    yield "mid iron, toe", delivery(39, -4, 25, toe=14, high=-4), "midIron"
    yield "short iron, heel", delivery(37, -4, 32, path=2, toe=-12, high=6, closure=700), "shortIron"
    yield "short iron, below the onset", delivery(36, -1, 8), "shortIron"
    yield "wedge", delivery(34, -5, 37), "wedge"
    yield "wedge, slides", delivery(25, -4, 62, path=-4, face=6, toe=5), "wedge"
    yield "wedge, left hand", delivery(30, -6, 42, path=-5, face=3, toe=6, high=-5, closure=600, hand="left"), "wedge"


def runs():
    turfs = ["baked", "firm", "normal", "soft", "wet", "artificial", "drainedGreen", "pennerBaked", "pennerFirm", "pennerNormal", "pennerSoft", "pennerWet"]
    for turf in turfs:
        yield f"{turf}: drive", landing(28, 38, 2200), dict(turf=turf)
    for turf in ("firm", "drainedGreen", "pennerNormal"):
        yield f"{turf}: wedge with much backspin", landing(24, 50, 9500, axis=(0.1, 0.2, 1), heading=5), dict(turf=turf)
    yield "sidespin kicks", landing(26, 42, 3500, axis=(0.2, -0.6, 0.8), heading=-12, position=(200, 3, -15)), dict(turf="normal")
    yield "green of 11 ft", landing(20, 45, 6000), dict(turf="drainedGreen", greenSpeed=11 * 0.3048)
    yield "fast green, downhill", landing(22, 46, 7000), dict(turf="drainedGreen", greenSpeed=13 * 0.3048, ground=ground(0, -2, 1))
    yield "uphill and across", landing(27, 36, 2500, axis=(0, -0.2, 1), heading=8), dict(turf="firm", ground=ground(2, 6, -4))
    yield "downhill", landing(30, 30, 2300), dict(turf="pennerFirm", ground=ground(-3, -5, 0))
    yield "rolls back", landing(18, 60, 9000), dict(turf="drainedGreen", greenSpeed=12 * 0.3048, ground=ground(0, 9, 2))
    yield "never rests", landing(25, 40, 2500), dict(turf="baked", ground=ground(0, -14, 0))
    yield "grazing", landing(30, 8, 1500), dict(turf="normal")
    yield "grazing, Penner", landing(30, 8, 1500), dict(turf="pennerBaked")
    yield "straight down", landing(25, 90, 2000), dict(turf="normal")
    yield "slow, with topspin", landing(4, 20, -800), dict(turf="firm")
    yield "along the ground: skids, then rolls", landing(15, 0, 0), dict(turf="normal")
    yield "along the ground, sidespin", landing(9, 0, 3000, axis=(0.7, 0.2, 0.7)), dict(turf="drainedGreen", ground=ground(0, 0, 3))
    yield "along the ground, overspun", landing(3, 0, 5000, axis=(0, 0, -1)), dict(turf="soft")
    yield "starts up", landing(12, -20, 1500), dict(turf="firm", air=dict(altitude=2000.0))


def shots():
    yield "drive", delivery(50, 3, 14), "driver", {}
    yield "drive off the toe, links, wind", delivery(49, 1, 13, path=-2, face=1, toe=12, high=4), "driver", dict(turf="firm", wind=wind(-5, 6, LINKS), ground=ground(-4, 1, -1))
    yield "left hand, mountain", delivery(47, 2, 14, path=2, face=-1, toe=-8, closure=1500, hand="left"), "driver", dict(turf="pennerNormal", air=dict(altitude=1800.0))
    yield "fairway wood", delivery(45, -2, 15), "fairwayWood", dict(turf="soft")
    yield "hybrid, uphill", delivery(42, -3, 20, toe=5), "hybrid", dict(turf="normal", ground=ground(5, 3, 2))
    yield "long iron, another ball law", delivery(41, -3, 18), "longIron", dict(turf="firm", aerodynamics="lieberman-2001")
    yield "mid iron to a green", delivery(38, -4, 25), "midIron", dict(turf="drainedGreen", greenSpeed=10 * 0.3048)
    yield "short iron", delivery(36, -4, 32, toe=-6, high=3), "shortIron", dict(turf="artificial", wind=wind(4, 0))
    yield "wedge, slope", delivery(32, -5, 38, path=-3, face=2), "wedge", dict(turf="pennerFirm", ground=ground(-2, -2, 3))
    yield "topped iron", delivery(36, -3, -4, high=-12), "midIron", {}
    yield "wedge, hot day", delivery(28, -5, 44), "wedge", dict(turf="wet", air=dict(temperature=310.15))


def cases():
    for name, start, scene in flights():
        yield dict(id=name, kind="flight", launch=start, scene=scene)
    for name, start, clubhead, *more in strikes():
        gear, changes = (*more, *(0.0, {})[len(more) :])
        yield dict(id=name, kind="strike", delivery=start, clubhead=clubhead, gearElasticity=gear, changes=changes)
    for name, start, scene in runs():
        if start["spinRate"] < 0:
            start = {**start, "spinRate": -start["spinRate"], "spinAxis": [-x for x in start["spinAxis"]]}
        yield dict(id=name, kind="run", landing=start, scene=scene)
    for name, start, clubhead, scene in shots():
        yield dict(id=name, kind="shot", delivery=start, clubhead=clubhead, scene=scene)
