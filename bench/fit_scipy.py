"""Fits several steps of one board with SciPy's least_squares, each board solved with NumPy for all points of a Jacobian at once.

Argument: problem.json: boards (each with its board.json, start.json, best values, observed outputs), free inputs (centre, scale, logarithmic, their
column in each board or -1), measured values and their uncertainties. Each line `run` fits once from the stated values and answers with milliseconds,
evaluations of a board, and the fitted scaled coordinates.
"""

import json
import sys
import time

import numpy as np
import scipy
from board_numpy import Batch, solve_block
from scipy.optimize import least_squares


class Side:
    """One step's board, with where the free inputs sit in it."""

    def __init__(self, entry):
        with open(entry["board"]) as file:
            self.board = json.load(file)
        with open(entry["start"]) as file:
            start = json.load(file)
        self.values = np.array(entry["values"])
        self.columns = np.array(entry["columns"])
        self.outputs = entry["outputs"]
        first = Batch(self.board, self.values[:, None])
        z = [start["temperatures"][n] - start["temperatures"]["ambient"] for n in first.nodes]
        z += [start["voltages"][first.ids[k]] for k in first.carriers]
        self.start = np.array(z + [start["scale"]])

    def __call__(self, natural):
        x = np.repeat(self.values[:, None], natural.shape[1], axis=1)
        here = self.columns >= 0
        x[self.columns[here]] = natural[here]
        return solve_block(self.board, x, self.start, self.outputs)[0]


def main():
    with open(sys.argv[1]) as file:
        problem = json.load(file)
    sides = [Side(entry) for entry in problem["boards"]]
    centre, scale = np.array(problem["centre"]), np.array(problem["scale"])
    logarithmic = np.array(problem["logarithmic"])
    measured, u = np.array(problem["measured"]), np.array(problem["u"])
    n = len(centre)
    count = 0

    def predicted(points):
        nonlocal count
        count += points.shape[1] * len(sides)
        natural = centre[:, None] + scale[:, None] * points
        natural[logarithmic] = np.exp(natural[logarithmic])
        return np.concatenate([side(natural) for side in sides])

    def residual(point):
        return np.concatenate([(predicted(point[:, None])[:, 0] - measured) / u, point])

    def slopes(point):
        h = 1e-2
        block = predicted(point[:, None] + h * np.concatenate([np.eye(n), -np.eye(n)], axis=1))
        return np.concatenate([(block[:, :n] - block[:, n:]) / (2 * h) / u[:, None], np.eye(n)])

    print(json.dumps({"scipy": scipy.__version__, "numpy": np.__version__, "python": sys.version.split()[0]}), flush=True)
    for _ in sys.stdin:
        count = 0
        began = time.perf_counter()
        found = least_squares(residual, np.zeros(n), jac=slopes, method="lm", xtol=1e-8, ftol=1e-10, gtol=1e-10)
        covariance = np.linalg.inv(found.jac.T @ found.jac)
        answer = {
            "milliseconds": 1e3 * (time.perf_counter() - began),
            "evaluations": count,
            "point": found.x.tolist(),
            "deviations": np.sqrt(np.diag(covariance)).tolist(),
        }
        print(json.dumps(answer), flush=True)


main()
