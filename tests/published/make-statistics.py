"""Writes data/statistics.json: results of numpy and scipy on fixed lists of numbers."""
import json
import pathlib
import warnings

import numpy as np
import scipy.version
from scipy import stats

warnings.simplefilter("ignore")
rng = np.random.default_rng(20)
a = np.round(rng.normal(10, 2, 12), 3)
rng.normal(11, 4, 9)  # drawn and not used, so that the lists below stay as they were
x = np.round(rng.uniform(40, 52, 25), 1)  # rounded, so that some tie
y = np.round(3.1 * x + rng.standard_t(2, 25), 2)
cloud = rng.multivariate_normal([0, 0], [[4, 1.5], [1.5, 1]], 60).round(3)

slope, intercept, low, high = stats.theilslopes(y, x, 0.95)
kde = stats.gaussian_kde(cloud.T)
# Efron B, Tibshirani R J (1993) An Introduction to the Bootstrap, table 3.1: 15 law schools, LSAT and GPA.
lsat = np.array([576, 635, 558, 578, 666, 580, 555, 661, 651, 605, 653, 575, 545, 572, 594])
gpa = np.array([3.39, 3.30, 2.81, 3.03, 3.44, 3.07, 3.00, 3.43, 3.36, 3.13, 3.12, 2.74, 2.76, 2.88, 2.96])


def law(method):
    result = stats.bootstrap(
        (lsat, gpa), lambda u, v: np.corrcoef(u, v)[0, 1], paired=True, vectorized=False, n_resamples=40000,
        method=method, random_state=1,
    )
    return [result.confidence_interval.low, result.confidence_interval.high, float(result.standard_error)]


def power(n, d):
    dof, shift = 2 * n - 2, d * np.sqrt(n / 2)
    t = stats.t.ppf(0.975, dof)
    return float(1 - stats.nct.cdf(t, dof, shift) + stats.nct.cdf(-t, dof, shift))


def line(count, apart, grain):
    """Theil-Sen line through points of which `apart` share an x and several a y, a multiple of `grain`."""
    draw = np.random.default_rng(count)
    u = np.floor(np.arange(count) / apart)
    v = np.round((0.4 * u + draw.standard_t(2, count)) / grain) * grain
    intervals = [[level, *stats.theilslopes(v, u, level)[2:]] for level in (0.5, 0.8, 0.95)]
    return {"x": u.tolist(), "y": v.tolist(), "slope": stats.theilslopes(v, u)[0], "intervals": intervals}


def interval(values):
    return [float(v) for v in stats.t.interval(0.95, len(values) - 1, np.mean(values), stats.sem(values))]


data = {
    "about": {
        "what": "results of general statistics packages on fixed lists, most of them drawn at random",
        "made by": f"make-statistics.py, numpy {np.__version__}, scipy {scipy.version.version}",
    },
    "a": a.tolist(),
    "moments": {"mean": float(a.mean()), "variance": float(a.var(ddof=1)), "interval": interval(a)},
    "quantiles": [[p, float(np.quantile(a, p))] for p in (0, 0.1, 0.25, 0.5, 0.9, 1)],
    "medianAbsoluteDeviation": float(stats.median_abs_deviation(a)),
    "x": x.tolist(),
    "y": y.tolist(),
    "covariance": np.cov(x, y).tolist(),
    "theilSen": {"slope": slope, "intercept": float(intercept), "low": float(low), "high": float(high)},
    "tiedLines": [line(*case) for case in ((9, 2, 0.25), (16, 1, 0.25), (24, 8, 0.125), (30, 3, 0.5), (27, 1, 4))],
    "cloud": cloud.tolist(),
    "kernelDensity": [[u, v, float(kde([u, v])[0])] for u, v in ((0, 0), (1, 1), (-2, 1), (5, 3))],
    "lawSchools": {"lsat": lsat.tolist(), "gpa": gpa.tolist(), "percentile": law("percentile")},
    "power": [[n, d, power(n, d)] for n, d in ((5, 0.5), (5, 2), (20, 0.8), (64, 0.5), (394, 0.2), (3, 3))],
    "noncentralT": [[t, v, s, float(stats.nct.cdf(t, v, s))] for t in (-2, -0.3, 0, 0.5, 3, 9) for v in (3, 20) for s in (-1, 0.5, 4)],
}
out = pathlib.Path(__file__).parent / "data" / "statistics.json"
out.write_text(json.dumps(data, indent=1) + "\n")
