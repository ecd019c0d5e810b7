"""The measurement model of the routes of ../preps/spirit-routes.toml, in numpy.

    python3 spirit.py [TRIALS [SEED]]        10 000 000 trials and seed 1 without

As in routes.py: each line has a route, a quantity, its value and the standard error of that,
and no code of the engine is used. Own readings, meniscuses, plastic, pistons with ethanol and
stocks by their density are here; all vessels are closed. Masses are in g, volumes in mL, strengths in g/L.
"""

import csv
import sys

import numpy as np

from meniscus import beyond
from sampling import Summary, arguments, sample

TARGET, TOLERANCE = 8, 0.03
ETHANOL, WATER = (22.4, 0.7893), (72.74, 0.99821)  # mN/m and g/mL at 20 °C
OF_ETHANOL, OF_GLASS, OF_POLYPROPYLENE = 1.09e-3, 9.9e-6, 2.7e-4  # cubic expansion, 1/°C

# What is held of ethanol beyond the mark where the bore is least and greatest, by the standards.
NECK = [beyond(bore, ETHANOL, WATER) for bore in (8, 10)]
PLASTIC = [beyond(bore, ETHANOL, WATER, 1, np.cos(np.radians(98))) for bore in (20.4, 24.1)]
STEM, CYLINDER = beyond(3, ETHANOL, WATER), beyond(18, ETHANOL, WATER)


class Readings:
    """Readings of one mark: their scatter, and what their mean says of the piece beside its limit."""

    def __init__(self, text):
        self.x = np.array([float(word) for word in text.split()])
        self.nu, self.s = len(self.x) - 1, self.x.std(ddof=1)

    def error(self, mark, density, limit):
        """Error of the piece as it is tabulated: density within the limit times the likelihood, by
        the trapezoidal rule."""
        e = np.linspace(-limit, limit, 400_001)
        z = (e - self.x.mean() + mark) / (self.s / np.sqrt(len(self.x)))
        product = density(e / limit) * (1 + z * z / self.nu) ** (-(self.nu + 1) / 2)
        chance = np.concatenate([[0], np.cumsum(product[1:] + product[:-1])])
        return chance / chance[-1], e


PISTON = Readings("1.004 0.998 1.001 1.006 1.002 0.999 1.007")
PISTON_IS_OFF = PISTON.error(1, np.ones_like, 0.012)
FLASK = Readings("20.03 20.06 20.01 20.05 20.02 20.04 19.99")
FLASK_IS_OFF = FLASK.error(20, lambda x: 1 - abs(x), 0.10)
IN_ETHANOL = Readings("0.981 0.988 0.984 0.979 0.986 0.990 0.983")
SCALE = Readings("5.001 5.003 4.998 5.000 5.002 4.999 5.002")
WITHIN = 9.0822  # of 9999 in 10 000, t with 6 degrees of freedom: where errors of a divisor are cut


class Bench:
    """What is measured on one day."""

    def __init__(self, draws):
        d = self.d = draws
        self.day = d.between(22, 26) - 20
        self.stock = d.normal(200, 0.5)
        self.computed = d.normal(1, 1 / 3)  # how far the meniscuses are right
        self.off = np.interp(d.between(0, 1), *PISTON_IS_OFF)
        self.sigma = PISTON.s * d.scale(PISTON.nu)
        self.flask_is_off, self.neck = d.peaked(0.04), d.between(0, 1)

    def at20(self, volume, expansion):
        return volume * (1 + (expansion - OF_ETHANOL) * self.day)

    def direct(self):
        """1 mL by the piston without air, of which nothing is known to expand."""
        return self.at20(1 + self.off + self.sigma * self.d.normal(0, 1), 0)

    def flask(self):
        """25 mL in a neck of 8 to 10 mm."""
        level = self.d.normal(0, 0.15 * np.pi / 4 * 9**2 / 1000)
        lies = (NECK[0] + (NECK[1] - NECK[0]) * self.neck) * self.computed
        return self.at20(25 + self.flask_is_off + level + lies, OF_GLASS)


def over_air(b):
    """±5 % for ethanol."""
    volume = (1 + b.d.within(0.008) + b.d.normal(0, 0.003)) * (1 + b.d.within(0.05))
    return b.stock * b.at20(volume, 0) / b.flask()


def own_readings(b):
    off, sigma = np.interp(b.d.between(0, 1), *FLASK_IS_OFF), FLASK.s * b.d.scale(FLASK.nu)

    def filled():
        z = b.d.normal(0, 1)
        while (beyond_cut := abs(z * sigma) > WITHIN * FLASK.s).any():
            z = np.where(beyond_cut, b.d.normal(0, 1), z)
        return b.at20(20 + off + sigma * z, OF_GLASS)

    return b.stock * b.direct() / filled() * (b.direct() + b.direct()) / filled()


def plastic(b):
    """A syringe set within a quarter of 0.05 mL, and what it keeps; a cylinder in which none or
    all of what was computed is held."""
    syringe = 2 + b.d.within(0.06) + b.d.normal(0, 0.0125) + 0.02 - b.d.gamma(0.02, 0.01)
    wider = b.d.between(0, 1)
    lies = (PLASTIC[0] + (PLASTIC[1] - PLASTIC[0]) * wider) * b.d.between(0, 1)
    return b.stock * b.at20(syringe, 0) / b.at20(50 + b.d.peaked(1) + b.d.peaked(0.2) + lies, OF_POLYPROPYLENE)


def bottle(b):
    return 1000 * b.d.between(0.246, 0.250) * b.d.between(0.860, 0.868) * b.direct() / b.flask()


def poured(b):
    """A pipette by its care, and 5 mL that are poured out of a cylinder which keeps about 0.15 mL:
    half of that unknown, and a quarter from pour to pour."""
    d = b.d
    pipette = 5 + d.peaked(0.015) + d.normal(0, 0.006 * np.sqrt(5 / 10)) + STEM * b.computed
    c = b.stock * b.at20(pipette, OF_GLASS) / b.flask()
    keeps = 0.15 * (1 + d.within(0.5 * np.sqrt(3))) * (1 + d.peaked(0.25 * np.sqrt(6)))
    cylinder = 5 + d.peaked(0.25) + d.peaked(0.2 * 0.5) + CYLINDER * b.computed + d.between(0, 0.05) - keeps
    return c * b.at20(cylinder, OF_GLASS) / b.flask()


def weighed(b):
    """A scale of 200 g with 1 mg and ±3 mg; at 5 g its curve lies between the nodes at 4 and 10 g,
    at nothing on the first."""
    d, digit, limit = b.d, 0.001, 0.003
    part = [d.within(limit / 2) for _ in range(6)]  # of the nodes at 0, 2, 4, 10 g and the next
    w = (5 - 4) / (10 - 4)
    curve = ((1 - w) * (part[2] + part[3]) + w * (part[3] + part[4])) / np.sqrt(1 - w + w * w) - (part[0] + part[1])
    scatter = np.sqrt(SCALE.s**2 - digit**2 / 6) * d.t(0, 1, SCALE.nu)
    mass = 5 + d.within(digit / 2) + d.within(digit / 2) + scatter + curve + d.peaked(limit) - d.peaked(limit)
    return 1000 * mass / b.flask() * b.direct() / b.flask()


def weighed_in_ethanol(b):
    """Readings with the liquid itself count alone: mean and use have one scatter, and no limit."""
    sigma, z = IN_ETHANOL.s * b.d.scale(IN_ETHANOL.nu), b.d.normal
    volume = IN_ETHANOL.x.mean() + sigma * (z(0, 1) / np.sqrt(len(IN_ETHANOL.x)) + z(0, 1))
    return b.stock * b.at20(volume, 0) / b.flask()


ROUTES = {
    "piston over air": over_air,
    "own readings": own_readings,
    "plastic": plastic,
    "from the bottle": bottle,
    "poured": poured,
    "weighed": weighed,
    "weighed in ethanol": weighed_in_ethanol,
}


def main():
    trials, seed = arguments()
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["route", "quantity", "value", "error"])
    for number, (name, route) in enumerate(ROUTES.items()):
        y = Summary(sample(lambda d: route(Bench(d)), trials, seed, number)[0])
        low, high = y.ends(0.95)
        within = y.share(TARGET * (1 - TOLERANCE), TARGET * (1 + TOLERANCE))
        for quantity, (value, error) in (("mean", y.mean()), ("SD", y.sd()), ("lower", low), ("upper", high), ("inside", within)):
            decimals = 1 - int(np.floor(np.log10(error)))
            out.writerow([name, quantity, f"{value:.{decimals}f}", f"{error:.1e}"])


if __name__ == "__main__":
    main()
