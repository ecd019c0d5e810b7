"""The measurement model of the routes of ../preps/dye-seven-routes.toml, in numpy.

    python3 routes.py [TRIALS [SEED]]        10 000 000 trials and seed 1 without

Each line has a route, a quantity, its value and the standard error of that. The model is
written from the formulas in the comments of the packages equipment and uncertainty/route and
the limits that `minim kit` lists for the bench; no code of the engine is used. Masses are in
g, volumes in mL, strengths in % w/v.
"""

import csv
import sys

import numpy as np

from sampling import Summary, arguments, sample

TARGET, TOLERANCE = 0.060, 0.07
ETHANOL = 0.7893  # g/mL at 20 °C
FLUX = 0.792  # of its vapour at 20 °C, times the depth that it comes from, mg/(cm min)
CHILLED = 0.85  # of that remains over a wide surface
EXPANSION = 9.9e-6 - 1.09e-3  # borosilicate glass less ethanol, 1/°C


class Bench:
    """What is measured with the glass and the scales of the demo, on one day."""

    def __init__(self, draws):
        d = self.d = draws
        self.assay = d.between(0.97, 1.00)
        self.theta = 1 + EXPANSION * d.within(3)  # 20 °C within 3 °C, for all volumes alike
        self.flask_bias = d.peaked(0.04)  # class A, one piece

        self.known = {}  # what stays the same with a scale

    def zero(self, digit):
        """Rounding at zero."""
        return self.d.within(digit / 2)

    def weigh(self, reading, digit, zero=None, inside="boat"):
        """Rounding at zero and at the load, the rest of s = 1 digit, linearity at two loads."""
        zero = self.zero(digit) if zero is None else zero
        scatter = self.d.normal(0, np.sqrt(digit**2 - digit**2 / 6))
        linear = self.linear(reading, digit, inside) - self.linear(0, digit, inside)
        return reading + zero + self.d.within(digit / 2) + scatter + linear

    def once(self, limit, draw, *of):
        """One draw for the same thing."""
        if of not in self.known:
            self.known[of] = draw(limit)
        return self.known[of]

    def linear(self, load, digit, inside):
        """The error at a load of a scale of 20 000 digits, of 2 digits: of half of its variance
        a curve, of which the value at a node is the sum of two parts, and half of the load in
        this kind of vessel alone."""
        nodes = [0, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1]
        share = load / (20_000 * digit)
        k = max(i for i in range(7) if i == 0 or share > nodes[i])
        w = (share - nodes[k]) / (nodes[k + 1] - nodes[k])
        part = [self.once(digit, self.d.within, "part", digit, i) for i in range(k, k + 3)]
        curve = ((1 - w) * (part[0] + part[1]) + w * (part[1] + part[2])) / np.sqrt(1 - w + w**2)
        return curve + self.once(2 * digit, self.d.peaked, "load", digit, inside, load)

    def left(self, grams, width, depth, minutes):
        """What is left of 1: at most E goes, at least nothing. The mouth is in cm, the depth below
        the rim as well; less than 0.01 % is not counted."""
        chilled = CHILLED if width >= 2 else 1
        outside = min(0.5, np.pi * width / 8)
        lost = FLUX * chilled * np.pi / 4 * width**2 / (depth + outside) * minutes / 1000 / grams
        return 1 - self.d.between(0, lost) if lost >= 1e-4 else 1

    def in_cylinder(self, capacity, width, mark):
        """Its rim lies 3 cm above its greatest mark; it stands open for 5 min."""
        return self.left(mark * ETHANOL, width, 3 + (capacity - mark) / (np.pi / 4 * width**2), 5)

    def in_beaker(self, grams):
        """Half full, of the shape of one of 50 mL, 4 cm wide and 6 cm high; open for 10 min."""
        volume = grams / ETHANOL
        width = 4 * np.cbrt(volume / 25)
        return self.left(grams, width, 1.5 * width - volume / (np.pi / 4 * width**2), 10)

    def flask(self):
        """25 mL, its level set within 0.15 mm in a neck of 9 mm."""
        return 25 + self.flask_bias + self.d.normal(0, 0.15 * np.pi / 4 * 9**2 / 1000)

    def marks(self, limit, n):
        """Biases of one piece at n marks: half of the variance is common to them."""
        if n == 1:
            return [self.d.peaked(limit)]
        common = self.d.peaked(limit * np.sqrt(0.5))
        return [common + self.d.peaked(limit * np.sqrt(0.5)) for _ in range(n)]

    def readings(self, division, n):
        """Each is right to a fifth of a division."""
        return sum(self.d.peaked(0.2 * division) for _ in range(n))

    def cylinders(self, limit, clinging, capacity, width, *marks):
        """Fillings of one cylinder, whose division is its limit; drops cling above the level, and
        some of it evaporates."""
        biases = self.marks(limit, len(marks))
        full = [m + bias + self.readings(limit, 1) + self.d.between(0, clinging) for m, bias in zip(marks, biases)]
        return [v * self.in_cylinder(capacity, width, m) for v, m in zip(full, marks)]

    def pipettes(self, limit, capacity, *volumes):
        """What one graduated pipette gives, whose division is its limit: from mark to mark there
        are two readings, from the uppermost to the tip one."""
        biases = self.marks(limit, len(volumes))
        return [v + bias + self.readings(limit, 1 if v == capacity else 2) for v, bias in zip(volumes, biases)]


def small(b, *marks):
    return b.cylinders(0.5, 0.05, 25, (1.58 + 1.94) / 2, *marks)


def large(b, *marks):
    return b.cylinders(1, 0.1, 100, (2.49 + 2.96) / 2, *marks)


def two(b, *volumes):
    return b.pipettes(0.02, 2, *volumes)


def five(b, *volumes):
    return b.pipettes(0.05, 5, *volumes)


def nearly_nothing(b):
    return b.weigh(0.01, 0.01) * b.assay / (small(b, 16.5)[0] * b.theta)


def directly(b):
    return b.weigh(0.009, 0.001) * b.assay / (small(b, 15)[0] * b.theta)


def a_quarter(b):
    return b.weigh(0.25, 0.01) * b.assay / b.flask() * two(b, 1.5)[0] / b.flask() / b.theta


def three_quarters(b):
    return b.weigh(0.75, 0.01) * b.assay / b.flask() * two(b, 2)[0] / large(b, 100)[0] / b.theta


def two_dilutions(b):
    first, second = small(b, 25, 20)
    return b.weigh(1.50, 0.01) * b.assay / b.flask() * two(b, 2)[0] / first * five(b, 2.5)[0] / second / b.theta


def three_dilutions(b):
    (first, second, third), (part, last) = small(b, 25, 20, 14), five(b, 5, 3.5)
    c = b.weigh(12.0, 0.1) * b.assay / large(b, 100)[0] / b.theta
    return c * two(b, 2)[0] / first * part / second * last / third


def by_weighing(b):
    """w = m_solute/m_total; γ = w ρ0/(1 - w (1 - φ ρ0)), φ from -0.15 to 0.9 mL/g. The part
    and its total are read from one zero; the solute came from a boat with one of its own."""
    zero = b.zero(0.01)
    w = b.weigh(0.60, 0.01) * b.assay / b.weigh(50.00, 0.01, inside="vessel") / b.in_beaker(50)
    w = w * b.weigh(1.00, 0.01, zero, "vessel") / b.weigh(15.60, 0.01, zero, "vessel") / b.in_beaker(15.6)
    return w * ETHANOL / (1 - w * (1 - b.d.between(-0.15, 0.9) * ETHANOL))


ROUTES = {
    "0.01 g scale, direct": nearly_nothing,
    "0.001 g scale, direct": directly,
    "0.25 g, one dilution": a_quarter,
    "0.75 g, one dilution": three_quarters,
    "two dilutions": two_dilutions,
    "three dilutions": three_dilutions,
    "diluted by weighing": by_weighing,
}


def main():
    trials, seed = arguments()
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["route", "quantity", "value", "error"])
    for number, (name, route) in enumerate(ROUTES.items()):
        y = Summary(sample(lambda d: 100 * route(Bench(d)), trials, seed, number)[0])
        low, high = TARGET * (1 - TOLERANCE), TARGET * (1 + TOLERANCE)
        for quantity, (value, error) in (("mean", y.mean()), ("SD", y.sd()), ("inside", y.share(low, high))):
            decimals = 1 - int(np.floor(np.log10(error)))
            out.writerow([name, quantity, f"{value:.{decimals}f}", f"{error:.1e}"])


if __name__ == "__main__":
    main()
