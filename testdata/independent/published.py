"""The simulated figures of ../published/*.csv whose note names this script, in numpy.

    python3 published.py [TRIALS [SEED]]        10 000 000 trials and seed 1 without

Each line has an example, a quantity, its value and the standard error of that, as in the
rows. The models are written from the documents that the rows name: JCGM 100:2008 (H.1, H.2),
JCGM 101:2008 (9.3 to 9.5), EURACHEM/CITAC CG 4 (A1), Harvey's example 4.9, and the pipette of
the University of Tartu course; the dilution steps are constructed. No code of the engine is
used, and nothing of it is known here.
"""

import csv
import sys
from itertools import count

import numpy as np

from sampling import Summary, arguments, sample

HUNDRED_GRAMS, FIFTY_MM = 100_000, 50_000_000  # in mg and in nm


def step(d):
    """1 ± 1 % of an aliquot, 9 ± 0.5 % of diluent and a flask of 10 ± 0.5 %."""
    return d.normal(1, 0.01), d.normal(9, 0.045), d.normal(10, 0.05)


def dilutions(n, to_the_mark, fresh):
    """n steps of one to ten, relative to the nominal strength."""

    def factor(part, diluent, flask):
        return 10 * part / (flask if to_the_mark else part + diluent)

    def model(d):
        if not fresh:
            return factor(*step(d)) ** n
        c = 1
        for _ in range(n):
            c = c * factor(*step(d))
        return c

    return model


def harvey_one(d):
    return 1000 * d.normal(1, 0.006) / d.normal(1000, 0.30)


def harvey_two(d):
    return 1000 * d.normal(20, 0.03) / d.normal(1000, 0.30) * d.normal(25, 0.03) / d.normal(500, 0.20)


def gauge_h1(d):
    """JCGM 100, H.1.2: l = l_S + d - l_S (δα θ + α_S δθ), in nm over 50 mm."""
    standard, difference = d.normal(50_000_623, 25), d.normal(215, 13 / np.sqrt(5)) + d.normal(0, 10 / 2.57) + d.normal(0, 20 / 3)
    alpha, theta = d.between(9.5e-6, 13.5e-6), d.normal(-0.1, 0.2) + d.arcsine(0.5)
    return standard + difference - standard * (d.within(1e-6) * theta + alpha * d.within(0.05)) - FIFTY_MM


def gauge_block(full):
    """JCGM 101, 9.5: model (36) where full, else its approximation (37), in nm over 50 mm."""

    def model(d):
        standard, difference = d.t(50_000_623, 25, 18), d.t(215, 6, 24) + d.t(0, 4, 5) + d.t(0, 7, 8)
        alpha, theta = d.between(9.5e-6, 13.5e-6), d.normal(-0.1, 0.2) + d.arcsine(0.5)
        alphas, thetas = d.inexact(1.0e-6, 0.1e-6), d.inexact(0.050, 0.025)
        if full:
            return (standard * (1 + alpha * (theta - thetas)) + difference) / (1 + (alpha + alphas) * theta) - FIFTY_MM
        return standard + difference - standard * (alphas * theta + alpha * thetas) - FIFTY_MM

    return model


def impedance(d):
    """JCGM 100, H.2: R, X and Z from the means of five readings of V, I and φ."""
    readings = np.array([
        [5.007, 4.994, 5.005, 4.990, 4.999],
        [19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3],
        [1.0456, 1.0438, 1.0468, 1.0428, 1.0433],
    ])
    v, i, phi = d.joint(readings.mean(axis=1), np.cov(readings) / 5)
    return v / i * np.cos(phi), v / i * np.sin(phi), v / i


def thermometer(d):
    """JCGM 100, H.3: b(30 °C) = y1 + 10 y2 of a line fitted to eleven corrections, whose nine
    degrees of freedom both have in common: normal values over one root of chi²/9."""
    t = np.array([21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]) - 20
    b = np.array([-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160])
    design = np.stack([np.ones_like(t), t], axis=1)
    y, rest, _, _ = np.linalg.lstsq(design, b, rcond=None)
    covariance = rest[0] / (len(t) - 2) * np.linalg.inv(design.T @ design)
    one, ten = d.joint([0, 0], covariance)
    return y[0] + 10 * y[1] + (one + 10 * ten) * d.scale(len(t) - 2)


def aliquots(d):
    """Nine aliquots of 1 mL by a pipette whose s of 0.01 mL is from four readings, in 10 mL:
    one unknown standard deviation for all of them. Constructed."""
    sigma = 0.01 * d.scale(3)
    return sum(1 + sigma * d.normal(0, 1) for _ in range(9)) / 10


def weight(full):
    """JCGM 101, 9.3: model (23) where full, else its approximation (24), in mg over 100 g."""

    def model(d):
        mass = d.normal(HUNDRED_GRAMS, 0.050) + d.normal(1.234, 0.020)
        air, density, reference = d.between(1.1, 1.3), d.between(7000, 9000), d.between(7950, 8050)
        if full:
            return mass * (air - reference) / (1.2 - reference) * (1.2 - density) / (air - density) - HUNDRED_GRAMS
        return mass * (1 + (air - 1.2) * (1 / density - 1 / reference)) - HUNDRED_GRAMS

    return model


def loss(x1, r):
    """JCGM 101, 9.4: δY = X1² + X2², in units of 1e-6."""

    def model(d):
        a, b = d.joint([x1, 0], 0.005**2 * np.array([[1, r], [r, 1]]))
        return 1e6 * (a * a + b * b)

    return model


def cadmium(d):
    """QUAM A1: c = 1000 m P/V, in mg/L."""
    volume = 100 + d.peaked(0.1) + d.normal(0, 0.02) + d.within(0.084)
    return 1000 * d.normal(100.28, 0.05) * d.between(0.9998, 1.0000) / volume


def pipette(d):
    """Tartu: V = V_tol + V_rep + V_tol γ Δt, in mL, the repeatability as t with 50 degrees."""
    tolerance = d.between(9.97, 10.03)
    return tolerance + d.t(0, 0.04, 50) + 0.00021 * tolerance * d.within(4)


def figures(trials, seed):
    """Example, quantity, and its value with the standard error."""

    numbers = count()

    def summarise(model):
        return [Summary(values) for values in sample(model, trials, seed, next(numbers))]

    def both_ends(example, y, coverage, prefix=""):
        low, high = y.ends(coverage)
        yield example, prefix + "lower", low
        yield example, prefix + "upper", high

    for name, model in (("one step", harvey_one), ("two steps", harvey_two)):
        value, error = summarise(model)[0].sd()
        yield "Harvey 4.9 simulated", name, (value, error)

    for way in ("to the mark", "with diluent"):
        for pieces in ("fresh pieces", "one piece"):
            for n in (1, 2, 4):
                y = summarise(dilutions(n, way == "to the mark", pieces == "fresh pieces"))[0]
                if (way, pieces) != ("with diluent", "fresh pieces"):  # known exactly
                    yield f"{n} steps {way}, {pieces}", "simulated mean", y.mean()
                yield f"{n} steps {way}, {pieces}", "simulated SD", y.sd()

    y = summarise(gauge_h1)[0]
    yield "H.1 simulated", "mean", y.mean()
    yield from both_ends("H.1 simulated", y, 0.99)

    for name, y in zip("RXZ", summarise(impedance)):
        yield "H.2 simulated", name + " SD", y.sd()
        yield from both_ends("H.2 simulated", y, 0.95, name + " ")

    y = summarise(weight(False))[0]
    yield from both_ends("9.3 simulated", y, 0.95)
    yield "9.3 simulated", "length of the shortest interval", y.shortest(0.95)
    y = summarise(weight(True))[0]
    yield "9.3 model (23)", "SD", y.sd()
    yield from both_ends("9.3 model (23)", y, 0.95)

    for x1 in (0, 0.01, 0.05):
        yield f"9.4 r 0.9, x1 {x1}", "SD", summarise(loss(x1, 0.9))[0].sd()

    for name, full in (("9.5 model (37)", False), ("9.5 model (36)", True)):
        y = summarise(gauge_block(full))[0]
        yield name, "mean", y.mean()
        if full:
            yield name, "SD", y.sd()
        yield from both_ends(name, y, 0.99)
        yield name, "length of the shortest interval", y.shortest(0.99)
        if not full:
            yield from both_ends(name + " 95 %", y, 0.95)

    y = summarise(cadmium)[0]
    yield "A1 simulated", "mean", y.mean()
    yield "A1 simulated", "SD", y.sd()
    yield from both_ends("A1 simulated", y, 0.95)

    y = summarise(pipette)[0]
    yield "Tartu pipette", "SD", y.sd()
    yield from both_ends("Tartu pipette", y, 0.95)

    y = summarise(thermometer)[0]
    yield from both_ends("H.3 simulated", y, 0.95)
    y = summarise(aliquots)[0]
    yield from both_ends("nine aliquots simulated", y, 0.95)


def main():
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["example", "quantity", "value", "error"])
    for example, quantity, (value, error) in figures(*arguments()):
        decimals = max(0, 1 - int(np.floor(np.log10(error))))
        out.writerow([example, quantity, f"{value:.{decimals}f}", f"{error:.1e}"])


if __name__ == "__main__":
    main()
