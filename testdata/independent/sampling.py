"""Draws in numpy for published.py and routes.py, and what is said of them.

Nothing here is taken from the engine. The recipes of the draws are those of JCGM 101:2008,
6.4: a rectangle (6.4.2), one with inexact limits (6.4.3), a triangle as the sum of two
rectangles (6.4.5), an arcsine (6.4.6), a t-distribution (6.4.9).
"""

import sys

import numpy as np

CHUNK = 1 << 18


class Draws:
    """n draws of each quantity that is asked for."""

    def __init__(self, rng, n):
        self.rng, self.n = rng, n

    def normal(self, mean, u):
        return self.rng.normal(mean, u, self.n)

    def between(self, low, high):
        return self.rng.uniform(low, high, self.n)

    def within(self, limit):
        return self.between(-limit, limit)

    def peaked(self, limit):
        return limit * (self.rng.random(self.n) - self.rng.random(self.n))

    def arcsine(self, limit):
        return limit * np.sin(2 * np.pi * self.rng.random(self.n))

    def inexact(self, limit, d):
        """A rectangle whose limits -limit and limit are themselves known within d."""
        low = -limit - d + 2 * d * self.rng.random(self.n)
        return low - 2 * low * self.rng.random(self.n)

    def t(self, mean, scale, degrees):
        return mean + scale * self.rng.standard_t(degrees, self.n)

    def gamma(self, mean, u):
        return self.rng.gamma((mean / u) ** 2, u * u / mean, self.n)

    def scale(self, degrees):
        """σ/s of readings with so many degrees of freedom: one over the root of chi²/ν."""
        return np.sqrt(degrees / self.rng.chisquare(degrees, self.n))

    def joint(self, means, covariance):
        """Jointly normal quantities, one row each."""
        return self.rng.multivariate_normal(means, covariance, self.n).T


def sample(model, trials, seed, number):
    """All values of model(draws), drawn in chunks. A model may give a tuple of arrays. Models
    of different numbers have streams of their own."""
    rng, parts = np.random.default_rng([seed, number]), []
    for start in range(0, trials, CHUNK):
        parts.append(np.atleast_2d(model(Draws(rng, min(CHUNK, trials - start)))))
    return np.concatenate(parts, axis=1)


class Summary:
    """Figures of a sample, each with its standard error."""

    def __init__(self, values):
        self.y, self.n = np.sort(values), len(values)
        self.s = self.y.std(ddof=1)

    def mean(self):
        return self.y.mean(), self.s / np.sqrt(self.n)

    def sd(self):
        """Standard deviation; its error from the fourth moment."""
        kurtosis = (((self.y - self.y.mean()) / self.s) ** 4).mean()
        return self.s, self.s * np.sqrt((kurtosis - 1) / self.n) / 2

    def at(self, p):
        return self.y[min(int(p * self.n), self.n - 1)]

    def quantile(self, p):
        """Its error is √(p (1 - p)/n) over the density, taken from the quantiles beside it."""
        h = 0.2 * min(p, 1 - p)
        width = (self.at(p + h) - self.at(p - h)) / (2 * h)
        return self.at(p), np.sqrt(p * (1 - p) / self.n) * width

    def ends(self, coverage):
        """The probabilistically symmetric interval."""
        return self.quantile((1 - coverage) / 2), self.quantile((1 + coverage) / 2)

    def shortest(self, coverage):
        """Length of the shortest interval, which scatters as that of the symmetric one."""
        q = int(coverage * self.n)
        (_, low), (_, high) = self.ends(coverage)
        return (self.y[q:] - self.y[: self.n - q]).min(), np.hypot(low, high)

    def share(self, low, high):
        """The part of the values from low to high."""
        p = np.searchsorted(self.y, high, "right") / self.n - np.searchsorted(self.y, low) / self.n
        return p, np.sqrt(max(p * (1 - p), 1 / self.n) / self.n)


def arguments():
    """Trials and seed from the command line; 10^7 and 1 where it names none."""
    given = [int(float(word)) for word in sys.argv[1:]]
    return (given + [10_000_000, 1][len(given) :])[:2]
