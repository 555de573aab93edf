"""Remakes reference.json: 200 invented plates, drawn from a seed, and where each of them comes to rest.

    /usr/bin/python3 validation/plates/solve.py

Needs NumPy and SciPy (Debian: python3-scipy). Shares no code with src/. The potential energy of a rigid plate on one-sided supports is minimised by
SciPy (BFGS), and the place is then made sharp by balancing forces and moments (MINPACK hybrd). Dies are integrated in strips: along y in closed
form, along x by Gauss-Legendre quadrature between the places where contact begins or ends at an edge. Pads are two by two springs at the
Gauss-Legendre points, their curves SciPy's PCHIP.
"""

import json
import platform
from pathlib import Path

import numpy as np
import scipy
from scipy.interpolate import PchipInterpolator
from scipy.optimize import minimize, root

SEED = 20261125
HERE = Path(__file__).parent
# Strain and pressure [Pa]: invented, soft, medium and firm.
CURVES = [
    ([0.1, 0.2, 0.3, 0.4, 0.5], [12e3, 30e3, 62e3, 125e3, 260e3]),
    ([0.1, 0.2, 0.35, 0.5], [45e3, 110e3, 260e3, 640e3]),
    ([0.05, 0.15, 0.3, 0.45], [60e3, 200e3, 520e3, 1.3e6]),
]
NODES, WEIGHTS = np.polynomial.legendre.leggauss(6)
PAIR, _ = np.polynomial.legendre.leggauss(2)


class Curve:
    """Pressure over strain, straight on beyond the last point, nothing below zero; and its integral."""

    def __init__(self, strains, pressures):
        self.end = strains[-1]
        self.inner = PchipInterpolator([0, *strains], [0, *pressures])
        self.area = self.inner.antiderivative()
        self.slope = float(self.inner.derivative()(self.end))

    def pressure(self, e):
        if e <= 0:
            return 0.0
        over = max(0.0, e - self.end)
        return float(self.inner(min(e, self.end))) + self.slope * over

    def energy(self, e):
        if e <= 0:
            return 0.0
        over = max(0.0, e - self.end)
        return float(self.area(min(e, self.end))) + over * float(self.inner(self.end)) + self.slope * over**2 / 2


SHAPES = [Curve(*points) for points in CURVES]


def strips(die, h, a, b):
    """Integrals of g, g*x, g*y and g^2/2 over the part of the die where g = top - plate is above zero."""
    x0, x1 = die["x"] - die["width"] / 2, die["x"] + die["width"] / 2
    y0, y1 = die["y"] - die["depth"] / 2, die["y"] + die["depth"] / 2

    def g(x, y):
        return die["height"] - (h + a * x + b * y)

    breaks = [x0, x1]
    if a != 0:
        for y in (y0, y1):
            x = (die["height"] - h - b * y) / a
            if x0 < x < x1:
                breaks.append(x)
    total = np.zeros(4)
    breaks.sort()
    for left, right in zip(breaks, breaks[1:]):
        for node, weight in zip(NODES, WEIGHTS):
            x = (left + right) / 2 + node * (right - left) / 2
            low, high = y0, y1
            at_low, at_high = g(x, low), g(x, high)
            if at_low <= 0 and at_high <= 0:
                continue
            if at_low < 0:
                low, at_low = (die["height"] - h - a * x) / b, 0.0
            if at_high < 0:
                high, at_high = (die["height"] - h - a * x) / b, 0.0
            length, middle = high - low, (low + high) / 2
            mean = (at_low + at_high) / 2
            first = length / 6 * (at_low * low + 4 * mean * middle + at_high * high)
            half_square = length / 6 * (at_low**2 + at_low * at_high + at_high**2)
            total += weight * (right - left) / 2 * np.array([length * mean, length * mean * x, first, half_square])
    return total


def pad_points(pad):
    for i in PAIR:
        for j in PAIR:
            yield pad["x"] + i * pad["width"] / 2, pad["y"] + j * pad["depth"] / 2


def assess(plate, place):
    """Potential energy, its gradient, and the force on every pad, die, screw and stop."""
    h, a, b = place
    energy, gradient = 0.0, np.zeros(3)
    forces = {"pads": [], "dies": [], "screws": [], "stops": []}

    def push(x, y, force):
        nonlocal gradient
        gradient -= force * np.array([1, x, y])

    for s in plate["screws"]:
        z = h + a * s["x"] + b * s["y"]
        if s["stiffness"] == 0:
            pull = s["force"]
            energy += pull * (z - s["height"])
        else:
            pull = max(0.0, s["force"] + s["stiffness"] * (z - s["height"]))
            energy += pull**2 / (2 * s["stiffness"])
        push(s["x"], s["y"], -pull)
        forces["screws"].append(pull)
    for s in plate["stops"]:
        depth = max(0.0, s["height"] - (h + a * s["x"] + b * s["y"]))
        energy += s["stiffness"] * depth**2 / 2
        push(s["x"], s["y"], s["stiffness"] * depth)
        forces["stops"].append(s["stiffness"] * depth)
    for pad in plate["pads"]:
        curve, quarter, sum_ = SHAPES[pad["curve"]], pad["width"] * pad["depth"] / 4, 0.0
        for x, y in pad_points(pad):
            e = (pad["height"] + pad["thickness"] - (h + a * x + b * y)) / pad["thickness"]
            energy += quarter * pad["thickness"] * curve.energy(e)
            push(x, y, quarter * curve.pressure(e))
            sum_ += quarter * curve.pressure(e)
        forces["pads"].append(sum_)
    for die in plate["dies"]:
        volume, along_x, along_y, half_square = strips(die, h, a, b)
        energy += die["bedding"] * half_square
        gradient -= die["bedding"] * np.array([volume, along_x, along_y])
        forces["dies"].append(die["bedding"] * volume)
    return energy, gradient, forces


def rest(plate):
    """Place of least energy; None where the search ends outside small tilts."""
    reach = 0.03
    unit = np.array([1e-4, 1e-4 / reach, 1e-4 / reach])
    tops = [p["height"] + p["thickness"] for p in plate["pads"]] + [d["height"] for d in plate["dies"]]
    start = np.array([max(tops + [s["height"] for s in plate["stops"]]), 0, 0])
    scale = sum(s["force"] for s in plate["screws"]) * 1e-4

    def function(v):
        energy, gradient, _ = assess(plate, start + unit * v)
        return energy / scale, gradient * unit / scale

    with np.errstate(over="ignore", invalid="ignore"):
        found = minimize(function, np.zeros(3), jac=True, method="BFGS", options={"gtol": 1e-9, "maxiter": 2000})
    if not np.abs(found.x).max() < 1e4:
        return None
    sharp = root(lambda v: function(v)[1], found.x, method="hybr", options={"xtol": 1e-15, "maxfev": 5000})
    best = min((found.x, sharp.x), key=lambda v: np.abs(function(v)[1]).max())
    place = start + unit * best
    residual = float(np.abs(function(best)[1]).max())
    if residual > 1e-8 or np.hypot(place[1], place[2]) > 0.1:
        return None
    # What was found is a minimum: no neighbour has less energy.
    rng = np.random.default_rng(1)
    for size in (1, 1e-2):
        for _ in range(20):
            rise = function(best + size * rng.standard_normal(3))[0] - function(best)[0]
            assert rise >= -1e-12 * abs(function(best)[0]), rise
    return place, residual


def draw(rng):
    """An invented plate, in steps of 10 um, 0.1 mm and 0.1 N."""
    def mm(low, high, step=0.1):
        return round(round(rng.uniform(low, high) / step) * step * 1e-3, 8)

    height = mm(1.5, 2.5, 0.01)
    dies = [
        {"x": mm(-6, 6), "y": mm(-6, 6), "width": mm(8, 24), "depth": mm(8, 24), "height": height,
         "bedding": float(f"{10 ** rng.uniform(9, 12.5):.2e}")}
        for _ in range(rng.integers(1, 3))
    ]
    pads = []
    for _ in range(rng.integers(0, 7)):
        thickness = round(float(rng.choice([0.5e-3, 1e-3, 1.5e-3, 2e-3])), 8)
        squeeze = rng.uniform(-0.1, 0.45) * thickness
        own = round(height - thickness + squeeze, 5)
        pads.append({"x": mm(-35, 35), "y": mm(-30, 30), "width": mm(3, 15), "depth": mm(3, 15), "height": own,
                     "thickness": thickness, "curve": int(rng.integers(0, 3))})
    screws = []
    for sx, sy in ((-1, -1), (1, -1), (1, 1), (-1, 1))[: rng.integers(3, 5)]:
        spring = rng.random() < 0.5
        screws.append({"x": mm(10, 30) * sx, "y": mm(10, 30) * sy, "force": round(rng.uniform(3, 60), 1),
                       "stiffness": round(rng.uniform(500, 20000)) if spring else 0, "height": height})
    stops = [{"x": mm(-30, 30), "y": mm(-30, 30), "height": round(height - rng.uniform(0.0, 0.3) * 1e-3, 5),
              "stiffness": float(f"{10 ** rng.uniform(6, 8):.2e}")} for _ in range(rng.integers(0, 3))]
    if rng.random() < 0.15:
        # A die that is too low: pads or stops may carry the plate alone.
        for die in dies:
            die["height"] = round(die["height"] - 0.8e-3, 5)
    if rng.random() < 0.35:
        # An even one: a die in the middle of four equal screws.
        x, y, force = mm(15, 30), mm(15, 30), round(rng.uniform(10, 60), 1)
        dies = [{**dies[0], "x": mm(-1, 1), "y": mm(-1, 1)}]
        screws = [{"x": x * i, "y": y * j, "force": force, "stiffness": screws[0]["stiffness"], "height": height}
                  for i in (-1, 1) for j in (-1, 1)]
        pads, stops = pads[:2], []
    return {"screws": screws, "pads": pads, "dies": dies, "stops": stops}


def main():
    rng = np.random.default_rng(SEED)
    cases, worst, dropped = [], 0.0, 0
    while len(cases) < 200:
        plate = draw(rng)
        found = rest(plate)
        if found is None:
            dropped += 1
            continue
        place, residual = found
        worst = max(worst, residual)
        forces = assess(plate, place)[2]
        rounded = {kind: [float(f"{f:.10g}") for f in values] for kind, values in forces.items()}
        cases.append({"plate": plate, "place": [float(f"{v:.12g}") for v in place], "forces": rounded})
    made = {
        "command": "/usr/bin/python3 validation/plates/solve.py", "seed": SEED, "python": platform.python_version(),
        "numpy": np.__version__, "scipy": scipy.__version__, "largestResidual": worst,
        "withoutRest": dropped,
    }
    lines = ",\n".join("  " + json.dumps(case, separators=(",", ":")) for case in cases)
    curves = json.dumps([{"strains": s, "pressures": p} for s, p in CURVES])
    text = f'{{\n "made": {json.dumps(made)},\n "curves": {curves},\n "cases": [\n{lines}\n ]\n}}\n'
    (HERE / "reference.json").write_text(text)
    print(made, len(text))


if __name__ == "__main__":
    main()
