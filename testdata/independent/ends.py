"""How long plain trials take until both ends of the 95 % interval of each route of routes.py have a
standard error of a thousandth of the standard deviation, in numpy.

    python3 ends.py MOST [SEED]

Draws at most so many trials of a route. Each line has a route, a quantity, its value and its standard
error: the ends, the standard deviation, how many trials were drawn, how many are needed, and the seconds of
processor time. How many are needed follows from the density at the ends, √(p (1 - p)/n) over it, which a
first sample tells; it counts in the time.
"""

import csv
import sys
from time import process_time

import numpy as np

import sampling
from routes import ROUTES, Bench
from sampling import Draws, arguments

sampling.CHUNK = 1 << 15  # of which all draws stay in the cache: a third faster than 2**18
PART = 0.001
FIRST = 1 << 17
TAIL = 0.025


def ends(y):
    """Both ends, each with its standard error times the root of the number of trials."""
    found = []
    for p in (TAIL, 1 - TAIL):
        low, at, high = np.quantile(y, [p - TAIL / 5, p, p + TAIL / 5])
        found.append((at, np.sqrt(p * (1 - p)) * (high - low) / (2 * TAIL / 5)))
    return found


def draw(route, rng, trials):
    y = np.empty(trials)
    for start in range(0, trials, sampling.CHUNK):
        part = y[start : start + sampling.CHUNK]
        part[:] = 100 * route(Bench(Draws(rng, len(part))))
    return y


def main():
    most, seed = arguments()
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["route", "quantity", "value", "error"])
    for number, (name, route) in enumerate(ROUTES.items()):
        rng = np.random.default_rng([seed, number])
        start = process_time()
        first = draw(route, rng, FIRST)
        target = PART * first.std(ddof=1)
        needed = int(max(off for _, off in ends(first)) ** 2 / target**2)
        n = max(min(needed, most), FIRST)
        y = np.concatenate([first, draw(route, rng, n - FIRST)])
        sd = y.std(ddof=1)
        lower, upper = ends(y)
        seconds = process_time() - start
        for quantity, value, error in (
            ("lower", lower[0], lower[1] / np.sqrt(n)),
            ("upper", upper[0], upper[1] / np.sqrt(n)),
            ("SD", sd, 0),
            ("trials", n, 0),
            ("needed", max(needed, FIRST), 0),
            ("seconds", seconds, 0),
        ):
            out.writerow([name, quantity, repr(float(value)), repr(float(error))])


if __name__ == "__main__":
    main()
