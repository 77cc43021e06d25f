"""The bench's bar cooled by a general solver, to hold the program's own cooling against.

Not needed to build or to test the program. Needs Python 3 with numpy and scipy:

    python3 -m venv heat-venv && heat-venv/bin/pip install scipy
    heat-venv/bin/python crates/heat/reference/cooling.py
    cargo bench -p fh_heat --bench cooling

The bar: 300 mm, square, from 12 mm at its start to 20 mm at 100 mm, then even; its first 100 mm at 1200 degC with an edge
of 15 mm; still air of 20 degC, emissivity 0.80, EN 1993-1-2 steel, skin 2/3; 120 s.
"""

import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

SIGMA, KELVIN, DENSITY = 5.670374419e-8, 273.15, 7850.0
AMBIENT, EMISSIVITY, SKIN = 20.0, 0.80, 2.0 / 3.0


def specific_heat(t):
    cold = 425 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    below = 666 + 13002 / (738 - np.minimum(t, 735.0))
    above = 545 + 17820 / (np.maximum(t, 735.0) - 731)
    return np.where(t < 600, cold, np.where(t < 735, below, np.where(t < 900, above, 650.0)))


def conductivity(t):
    return np.where(t < 800, 54 - 3.33e-2 * t, 27.3)


def film(surface, diameter):
    mean = (surface + AMBIENT) / 2 + KELVIN
    viscosity = 1.458e-6 * mean**1.5 / (mean + 110.4)
    air = 2.64638e-3 * mean**1.5 / (mean + 245.4 * 10 ** (-12 / mean))
    kinematic = viscosity * 287.05 * mean / 101325
    rayleigh = 9.80665 / mean * np.abs(surface - AMBIENT) * diameter**3 * 0.70 / kinematic**2
    share = 0.387 / (1 + (0.559 / 0.70) ** (9 / 16)) ** (8 / 27)
    return air / diameter * (0.60 + share * rayleigh ** (1 / 6)) ** 2


def flux(t, diameter, depth):
    """Loss in W/m2 by the mean behind the skin, and by the skin that belongs to it."""
    skin = t
    for _ in range(3):
        coefficient = film(skin, diameter)
        loss = EMISSIVITY * SIGMA * ((skin + KELVIN) ** 4 - (AMBIENT + KELVIN) ** 4) + coefficient * (skin - AMBIENT)
        slope = 4 * EMISSIVITY * SIGMA * (skin + KELVIN) ** 3 + coefficient
        resistance = depth / conductivity(t)
        skin = skin - (skin - t + resistance * loss) / (1 + resistance * slope)
    return (t - skin) / np.maximum(depth / conductivity(t), 1e-12)


def bar(cells):
    edges = np.linspace(0.0, 0.3, cells + 1)
    side = lambda x: np.where(x < 0.1, 0.012 + 0.08 * x, 0.020)
    middle = (edges[:-1] + edges[1:]) / 2
    simpson = lambda f: (f(edges[:-1]) + 4 * f(middle) + f(edges[1:])) / 6
    step = 0.3 / cells
    area, girth = simpson(lambda x: side(x) ** 2), simpson(lambda x: 4 * side(x))
    return middle, step, side(edges) ** 2, area, girth


def cool(cells, relative):
    middle, step, faces, area, girth = bar(cells)
    diameter, depth = girth / np.pi, SKIN * area / girth
    mass = DENSITY * area * step

    def rate(_, t):
        k = conductivity(t)
        between = 2 / (1 / k[:-1] + 1 / k[1:]) * faces[1:-1] / step
        flow = between * (t[:-1] - t[1:])
        watts = -flux(t, diameter, depth) * girth * step
        watts[:-1] -= flow
        watts[1:] += flow
        watts[0] -= flux(t[:1], diameter[:1], depth[:1] + step / 2)[0] * faces[0]
        watts[-1] -= flux(t[-1:], diameter[-1:], depth[-1:] + step / 2)[0] * faces[-1]
        return watts / (mass * specific_heat(t))

    start = AMBIENT + (1200 - AMBIENT) / 2 * (1 - np.tanh((middle - 0.1) / 0.015))
    neighbors = diags([np.ones(cells - 1), np.ones(cells), np.ones(cells - 1)], [-1, 0, 1])
    began = time.perf_counter()
    solved = solve_ivp(
        rate, (0, 120), start, "BDF", rtol=relative, atol=1e-3, jac_sparsity=neighbors, dense_output=True, max_step=2.0
    )
    return middle, solved, time.perf_counter() - began


def main():
    for cells, relative in [(200, 1e-4), (200, 1e-7), (800, 1e-7)]:
        middle, solved, seconds = cool(cells, relative)
        at = lambda x, s: np.interp(x, middle, solved.sol(s))
        figures = ", ".join(f"{at(x, s):.2f}" for x in (0.05, 0.08) for s in (15, 30, 60, 120))
        print(f"{cells} cells, rtol {relative:g}: {seconds * 1e3:.0f} ms; degC at 50 and 80 mm after 15/30/60/120 s: {figures}")


if __name__ == "__main__":
    main()
