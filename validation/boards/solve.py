"""Remakes reference.json: the operating point of every random-*.yaml here, solved with SciPy.

    /usr/bin/python3 validation/boards/solve.py

Needs NumPy, SciPy and PyYAML (Debian: python3-scipy python3-yaml). Shares no code with src/.
"""

import hashlib
import json
import math
import platform
import sys
from pathlib import Path

import numpy as np
import scipy
import yaml
from scipy.optimize import brentq, root

sys.dont_write_bytecode = True

from model import Board
from quantities import read

HERE = Path(__file__).parent


class NoRoot(RuntimeError):
    """The equations have no root near the start."""


def newton(board, z, close):
    """The system's root near z; a few Newton steps on top squeeze out what the solver's own tolerance leaves."""
    def function(scaled):
        return board.residual(scaled, close)

    found = root(function, z / board.unit, method="hybr", options={"xtol": 1e-13, "maxfev": 20000})
    scaled = found.x
    for _ in range(3):
        value = function(scaled)
        step = 1e-6
        jacobian = np.empty((len(scaled), len(scaled)))
        for k in range(len(scaled)):
            up, down = scaled.copy(), scaled.copy()
            up[k] += step
            down[k] -= step
            jacobian[:, k] = (function(up) - function(down)) / (2 * step)
        scaled = scaled - np.linalg.solve(jacobian, value)
    residual = float(np.max(np.abs(function(scaled))))
    if not residual < 1e-10:
        raise NoRoot(f"no root: {residual:.1e}, {found.message}")
    return scaled * board.unit, residual


def at_scale(board, scale):
    """The branch that starts at a cold, idle board, followed up to a scale."""
    z = board.guess(min(scale, 0.1))
    for s in np.linspace(min(scale, 0.1), scale, 8):
        z[-1] = s
        z, residual = newton(board, z, lambda y, s=s: y[-1] - s)
    return z, residual


def operating_point(board):
    """Largest scale up to the demand at which every regulating limiter is satisfied: (z, holder, residual)."""
    regulating = [name for name, limiter in board.study["limiters"].items() if limiter["acts"] == "regulate"]

    def worst(scale):
        """Largest excess of any regulating limiter; where the board has no steady state, more than any allows."""
        try:
            z, _ = at_scale(board, scale)
        except NoRoot:
            return 1.0
        return max((board.excess(name, z) for name in regulating), default=-1.0)

    if worst(board.demand) <= 0:
        z, residual = at_scale(board, board.demand)
        return z, "demand", residual
    scale = brentq(worst, 0.05, board.demand, xtol=1e-4)
    z, _ = at_scale(board, scale)
    consistent = []
    for name in regulating:
        try:
            held, residual = newton(board, z.copy(), lambda y, name=name: board.excess(name, y))
        except NoRoot:
            continue
        others = [board.excess(other, held) for other in regulating if other != name]
        if max(others, default=-1.0) <= 0 and held[-1] <= board.demand:
            consistent.append((held, name, residual))
    if len(consistent) != 1:
        raise RuntimeError(f"{len(consistent)} holders are consistent")
    return consistent[0]


def results(board, z, holder, residual):
    """Every figure under the id that the board's output has."""
    temperature, voltage, drawn, delivered, junction, scale = board.unpack(z)
    figure = {"scale": scale}
    for node in board.nodes:
        figure[f"heat.nodes.{node}.temperature"] = temperature[node]
    wall = heat = processor = 0.0
    for i, part in board.parts.items():
        losses = board.losses(i, temperature, voltage, drawn, delivered, junction, scale)
        lost = sum(power for _, power in losses)
        heat += lost
        figure[f"parts.{i}.voltage"] = voltage[i]
        figure[f"parts.{i}.current"] = delivered[i] if part["kind"] == "supply" else drawn[i]
        figure[f"parts.{i}.loss"] = lost
        if part["kind"] == "supply":
            wall += voltage[i] * delivered[i] / read(part["efficiency"])
        if part.get("follows") == "processor":
            processor += lost
        if part["kind"] == "sense":
            node = temperature[part["heats"]]
            effective = board.series_resistance(part, node)
            figure[f"parts.{i}.effective-resistance"] = effective
            for k, (own, joint) in enumerate(board.branches(part, node)):
                figure[f"parts.{i}.fitted.{k}.dissipation"] = (delivered[i] * effective / (own + joint)) ** 2 * own
        if part["kind"] == "regulator":
            figure |= busiest_phase(board, i, temperature, voltage, delivered)
    figure["wall-power"] = wall
    figure["heat"] = heat
    figure["processor-power"] = processor
    for name, limiter in board.study["limiters"].items():
        if "reads" in limiter:
            reads, real = board.reading(limiter, temperature, voltage, delivered)
            figure[f"limiters.{name}.reads"] = reads
            figure[f"limiters.{name}.real"] = real
        else:
            figure[f"limiters.{name}.reads"] = temperature[limiter["node"]]
    return {"holder": holder, "residual": residual, "outputs": {key: float(value) for key, value in figure.items()}}


def busiest_phase(board, i, temperature, voltage, delivered):
    """The phase that carries more than its share; the nodes' temperatures are those of equal shares."""
    part = board.parts[i]
    stage, inductor = (
        (part["heats"],) * 2 if isinstance(part["heats"], str) else (part["heats"]["stages"], part["heats"]["inductors"])
    )
    vin, vout = voltage[part["fed-by"]], voltage[i]
    current = delivered[i] / part["phases"] * (1 + read(part["imbalance"]))
    ripple = board.ripple(part, vin, vout)
    rise = read(part["stage"]["junction-rise"])

    def error(junction):
        switches, _ = board.phase_loss(part, vin, vout, current, temperature[stage], temperature[inductor], junction)
        return temperature[stage] + rise * switches - junction

    return {
        f"parts.{i}.phase-current": current,
        f"parts.{i}.phase-ripple": ripple,
        f"parts.{i}.inductor-rms": math.sqrt(current**2 + ripple**2 / 12),
        f"parts.{i}.junction-temperature": brentq(error, temperature[stage] - 1, temperature[stage] + 300, xtol=1e-11),
    }


def main():
    boards = {}
    for file in sorted(HERE.glob("random-*.yaml")):
        text = file.read_text()
        board = Board(yaml.safe_load(text))
        z, holder, residual = operating_point(board)
        boards[file.name] = {"sha256": hashlib.sha256(text.encode()).hexdigest(), **results(board, z, holder, residual)}
        print(f"{file.name}: scale {z[-1]:.6f}, held by {holder}, residual {residual:.1e}")
    made = {
        "command": "/usr/bin/python3 validation/boards/solve.py",
        "python": platform.python_version(),
        "numpy": np.__version__,
        "scipy": scipy.__version__,
        "pyyaml": yaml.__version__,
        "units": "SI: K, V, A, W, ohm; scale without unit",
    }
    (HERE / "reference.json").write_text(json.dumps({"made": made, "boards": boards}, indent=2) + "\n")


if __name__ == "__main__":
    main()
