"""What readings say of an error that was known within limits before, in numpy.

    python3 posterior.py

Each line has a case, a quantity, its value and the error of the quadrature. The density of the
prior times that of Student's t about the mean of the readings, with the scale s/sqrt(n), is
integrated by the midpoint rule on a fine grid; no code of the engine is used. "chance" is how
likely a mean lies as far off as it does, or further, before it is read: that of the prior and the
t-distribution added up. The readings are invented; all is in mL.
"""

import numpy as np

# Errors of single readings, and the limit or the standard uncertainty of the error of the piece.
READINGS = {
    4: [0.011, 0.004, 0.013, 0.008],
    6: [0.011, 0.004, 0.013, 0.008, -0.002, 0.009],
    10: [0.011, 0.004, 0.013, 0.008, -0.002, 0.009, 0.015, 0.001, 0.007, 0.010],
}
LIMITS = {"triangular": 0.012, "rectangular": 0.012, "normal": 0.006}
FAR = [0.0212, 0.0204, 0.0216, 0.0208, 0.0210]
CELLS = 2_000_000


def prior(shape, limit):
    """A grid, and the density there times the width of a cell."""
    most = 12 * limit if shape == "normal" else limit
    width = 2 * most / CELLS
    x = -most + width * (np.arange(CELLS) + 0.5)
    density = {
        "triangular": lambda: 1 - np.abs(x) / limit,
        "rectangular": lambda: np.ones_like(x),
        "normal": lambda: np.exp(-((x / limit) ** 2) / 2),
    }[shape]()
    return x, density / density.sum()


def student_below(t, nu):
    """The distribution function of t for whole degrees of freedom, by the finite sums of sines and
    cosines (Abramowitz and Stegun, 26.7.3 and 26.7.4)."""
    theta = np.arctan(t / np.sqrt(nu))
    cosine, total = np.cos(theta), 0.0
    if nu % 2:
        term = cosine
        for k in range(3, nu + 1, 2):
            total, term = total + term, term * cosine**2 * (k - 1) / k
        inside = 2 / np.pi * (theta + np.sin(theta) * total)
    else:
        term = 1.0
        for k in range(2, nu + 1, 2):
            total, term = total + term, term * cosine**2 * (k - 1) / k
        inside = np.sin(theta) * total
    return 0.5 + inside / 2


def figures(shape, limit, readings):
    n, mean, s = len(readings), np.mean(readings), np.std(readings, ddof=1)
    scale = s / np.sqrt(n)
    x, p = prior(shape, limit)
    z = (x - mean) / scale
    w = p * (1 + z**2 / (n - 1)) ** (-n / 2)
    w /= w.sum()
    expected = (x * w).sum()
    cumulated = np.cumsum(w) - w / 2
    far = student_below(-z, n - 1)
    below, above = (p * far).sum(), (p * (1 - far)).sum()
    yield "mean", expected
    yield "u", np.sqrt(((x - expected) ** 2 * w).sum())
    yield "2.5 %", np.interp(0.025, cumulated, x)
    yield "97.5 %", np.interp(0.975, cumulated, x)
    yield "chance", 2 * min(below, above)


print("of,quantity,value,error")
for shape, limit in LIMITS.items():
    for n, readings in READINGS.items():
        for quantity, value in figures(shape, limit, readings):
            print(f"{shape} {n},{quantity},{value:.12g},1e-10")
    for quantity, value in figures(shape, limit, FAR):
        if quantity == "chance":
            print(f"{shape} far,{quantity},{value:.12g},1e-10")
