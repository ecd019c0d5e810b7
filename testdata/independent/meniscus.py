"""What a tube holds of a liquid above the bottom of its meniscus, in plain Python.

The equation of Young and Laplace, dψ/ds + sin(ψ)/x = u in capillary lengths, is followed along
the profile and the height of its bottom found by halving; the volume follows from the weight that
hangs on the wall, V = 2πR sin ψ - πR²h. No code of the package equipment is used.
"""

from math import asin, cos, exp, log, pi, sin, sqrt

GRAVITY = 9.80665  # m/s²


def slopes(x, u, psi):
    """By the length along the profile; on the axis both curvatures are u/2."""
    return cos(psi), sin(psi), u - (sin(psi) / x if x > 0 else u / 2)


def width(rise, wall, widest):
    """Where the profile that begins at the height rise is inclined as at the wall, or a place
    beyond the widest."""
    x, u, psi, step = 0.0, rise, 0.0, min(0.02, widest / 50)
    while psi < wall and x <= widest:
        before = x, psi
        k1 = slopes(x, u, psi)
        k2 = slopes(x + step / 2 * k1[0], u + step / 2 * k1[1], psi + step / 2 * k1[2])
        k3 = slopes(x + step / 2 * k2[0], u + step / 2 * k2[1], psi + step / 2 * k2[2])
        k4 = slopes(x + step * k3[0], u + step * k3[1], psi + step * k3[2])
        x, u, psi = (y + step / 6 * (a + 2 * b + 2 * c + d) for y, a, b, c, d in zip((x, u, psi), k1, k2, k3, k4))
    if psi < wall:
        return x
    part = (wall - before[1]) / (psi - before[1])
    return before[0] + part * (x - before[0])


def volume(bore, tension, density, pull=1.0):
    """In mL, of a bore in mm, a tension in mN/m and a density in g/mL; pull is the cosine of the
    angle at the wall."""
    a = sqrt(tension / (density * GRAVITY))
    radius, wall = bore / 2 / a, asin(min(1, abs(pull)))
    low, high = log(1e-9), log(2 / radius)
    for _ in range(60):
        middle = (low + high) / 2
        if width(exp(middle), wall, radius) < radius:
            high = middle  # it bends up too soon: lower
        else:
            low = middle
    held = 2 * pi * radius * sin(wall) - pi * radius**2 * exp(low)
    return (held if pull > 0 else -held) * a**3 / 1000


def beyond(bore, liquid, water, pull=1.0, pull_of_water=1.0):
    """What a tube that was adjusted with water holds of a liquid beyond its mark; both are a
    tension and a density."""
    return volume(bore, *liquid, pull) - volume(bore, *water, pull_of_water)
