"""Monte Carlo of an invented preparation in numpy, the other side of
uncertainty/numpy_test.go, which holds the same model.

A weighing and two dilutions with 20 influences. Every line on stdin,
"trials" or "trials threads", is answered by one line of JSON; the seconds are
those of the evaluation, without the start of the interpreter.

How it was tuned (numpy 1.24, two processors): all trials in one array take 1.1
to 1.5 times as long as chunks that stay in the cache, and chunks of 2**13 to
2**16 are alike. rng.triangular takes 1.2 times as long for the whole model as
the difference of two uniform draws, which has the same distribution.
Writing every draw into a buffer of its own with out= gains about a tenth,
which is not worth the plain formulas.
"""

import json
import sys
from concurrent.futures import ThreadPoolExecutor
from time import perf_counter

import numpy as np

CHUNK = 1 << 15
IN_GLASS, IN_PLASTIC = -0.00109, -0.00065  # expansion of vessel less liquid, 1/°C


def strength(rng, n):
    """n draws of the strength in g/mL."""

    def within(limit):
        return rng.uniform(-limit, limit, n)

    def peaked(limit):
        return limit * (rng.random(n) - rng.random(n))

    def retained(mean, spread):
        return rng.gamma((mean / spread) ** 2, spread**2 / mean, n)

    mass = 1.5 + rng.normal(0, 0.00913, n) + within(0.005) + within(0.005) + within(0.02)
    assay = rng.uniform(0.97, 1, n)
    excess = within(3)
    meniscus = rng.normal(1, 1 / 3, n)
    glass, plastic = 1 + IN_GLASS * excess, 1 + IN_PLASTIC * excess

    flask = (25 + peaked(0.04) + rng.normal(0, 0.0095, n) - 0.02 * meniscus) * glass
    c = mass * assay / flask

    aliquot = (2.03 + peaked(0.02) - retained(0.03, 0.0115)) * glass
    cylinder = (25 + peaked(0.4) + peaked(0.08) + rng.uniform(0, 0.05, n) - 0.15 * meniscus) * plastic
    c = c * aliquot / cylinder

    aliquot = (2.6 + peaked(0.05) + peaked(0.01) - retained(0.1, 0.05)) * glass
    cylinder = (20 + peaked(0.5) + peaked(0.1) + rng.uniform(0, 0.05, n) - 0.15 * meniscus) * plastic
    return c * aliquot / cylinder


def fill(part, seed):
    rng = np.random.default_rng(seed)
    for start in range(0, len(part), CHUNK):
        chunk = part[start : start + CHUNK]
        chunk[:] = strength(rng, len(chunk))


def evaluate(trials, seeds):
    """Mean, standard deviation and 95 % interval, one thread a seed."""
    y = np.empty(trials)
    with ThreadPoolExecutor(len(seeds)) as pool:
        list(pool.map(fill, np.array_split(y, len(seeds)), seeds))
    mean, std = y.mean(), y.std(ddof=1)
    low, high = np.quantile(y, [0.025, 0.975], overwrite_input=True)
    return {"mean": mean, "std": std, "low": low, "high": high}


def main():
    root = np.random.SeedSequence(1)
    for line in sys.stdin:
        trials, threads = (int(word) for word in (line + " 1").split()[:2])
        start = perf_counter()
        answer = evaluate(trials, root.spawn(threads))
        seconds = perf_counter() - start
        print(json.dumps({"trials": trials, "seconds": seconds, **answer, "numpy": np.__version__}), flush=True)


if __name__ == "__main__":
    main()
