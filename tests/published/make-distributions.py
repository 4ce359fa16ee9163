"""Writes data/distributions.json: values of distribution functions. Starts from scipy and polishes every quantile with
mpmath at 40 digits, because some of scipy's own quantiles are good to nine digits only."""
import json
import pathlib

import mpmath
import scipy.version
from scipy import special, stats

mpmath.mp.dps = 40
half = mpmath.mpf(1) / 2


def t_cdf(x, v):
    tail = mpmath.betainc(mpmath.mpf(v) / 2, half, 0, v / (v + mpmath.mpf(x) ** 2), regularized=True) / 2
    return tail if x < 0 else 1 - tail


def chi2_cdf(x, v):
    return mpmath.gammainc(mpmath.mpf(v) / 2, 0, mpmath.mpf(x) / 2, regularized=True)


def f_cdf(x, a, b):
    x = mpmath.mpf(x)
    return mpmath.betainc(mpmath.mpf(a) / 2, mpmath.mpf(b) / 2, 0, a * x / (a * x + b), regularized=True)


def polish(cdf, density, p, start):
    x = mpmath.mpf(start)
    for _ in range(6):
        x -= (cdf(x) - mpmath.mpf(p)) / mpmath.mpf(density(float(x)))
    return float(x)


normal = [1e-300, 1e-100, 1e-20, 1e-10, 1e-5, 0.001, 0.0249, 0.025, 0.0751, 0.3, 0.4, 0.5, 0.6, 0.9, 0.925, 0.975, 0.99, 0.999999]
tails = [1e-10, 1e-4, 0.005, 0.025, 0.1, 0.3, 0.6, 0.9, 0.95, 0.975, 0.995, 0.9999]
dofs = [0.5, 1, 2, 2.5, 3, 4, 5, 7.3, 10, 30, 120, 1000]
pairs = [(1, 1), (2, 8), (2, 18), (3, 5), (5, 2), (1, 34), (6, 9), (10, 100), (0.7, 3)]
data = {
    "about": {
        "what": "quantiles of the normal, Student t, chi-square and F distributions, log gamma, distribution functions",
        "made by": f"make-distributions.py, scipy {scipy.version.version}, mpmath {mpmath.__version__}",
        "columns": "each row: arguments, then the value",
    },
    "normalQuantile": [[p, float(special.ndtri(p))] for p in normal],
    "normalCdf": [[x, float(special.ndtr(x))] for x in (-38, -20, -8, -3, -1, -0.1, 0, 0.5, 1, 1.959963984540054, 4, 6)],
    "studentTQuantile": [
        [p, v, polish(lambda x: t_cdf(x, v), lambda x: stats.t.pdf(x, v), p, stats.t.ppf(p, v))] for v in dofs for p in tails
    ],
    "studentTCdf": [[x, v, float(t_cdf(x, v))] for v in dofs for x in (-40, -3, -0.5, 1, 2, 10)],
    "chiSquareQuantile": [
        [p, v, polish(lambda x: chi2_cdf(x, v), lambda x: stats.chi2.pdf(x, v), p, stats.chi2.ppf(p, v))] for v in dofs for p in tails
    ],
    "fQuantile": [
        [p, a, b, polish(lambda x: f_cdf(x, a, b), lambda x: stats.f.pdf(x, a, b), p, stats.f.ppf(p, a, b))] for a, b in pairs for p in tails
    ],
    "logGamma": [[x, float(mpmath.loggamma(x))] for x in (1e-3, 0.1, 0.5, 1, 1.5, 2, 3.7, 10, 25.5, 100, 1e5)],
}
out = pathlib.Path(__file__).parent / "data" / "distributions.json"
out.write_text(json.dumps(data, indent=1) + "\n")
