"""Writes the random boards: the seed and the shape of each stand in SHAPES, everything else is drawn.

    /usr/bin/python3 validation/boards/generate.py && /usr/bin/python3 validation/boards/solve.py

The boards are invented. Numbers are drawn in the ranges that such parts have; what a limiter allows is set so that the
limiter named in the shape holds.
"""

import random
import sys
from pathlib import Path

import yaml

sys.dont_write_bytecode = True

from model import Board
from solve import at_scale

HERE = Path(__file__).parent

SHAPES = [
    # Two sense points under one limiter, divider, resistors in parallel, three regulators by parts and by curve.
    dict(seed=11, regulators=[("parts", 8), ("curve", 3), ("parts", 1)], supplies=1, senses="shared", holds="power"),
    # A small board that nothing holds; wires by gauge; leakage.
    dict(seed=12, regulators=[("curve", 2)], supplies=1, senses="one", holds="demand"),
    # Hot board under a temperature limiter; two supplies.
    dict(seed=13, regulators=[("parts", 5), ("curve", 4)], supplies=2, senses="one", holds="temperature"),
    # Peak reading with offset; a regulator behind a regulator.
    dict(seed=14, regulators=[("parts", 6), ("parts", 2)], supplies=1, senses="shared", holds="peak", cascade=True),
    # Warm board with strong leakage under a power limiter.
    dict(seed=15, regulators=[("curve", 5), ("parts", 3), ("curve", 1)], supplies=1, senses="shared", holds="power", leak=2.0),
]


class Draw:
    def __init__(self, seed):
        self.random = random.Random(seed)
        self.turn = 0

    def between(self, low, high):
        return self.random.uniform(low, high)

    def q(self, low, high, unit):
        """A quantity in one of the forms that a study may use."""
        value = float(f"{self.between(low, high):.4g}")
        self.turn += 1
        unit = f" {unit}" if unit else ""
        if unit == " degC":
            return f"{value:g}{unit} ± 0.5 K"
        form = self.turn % 4
        if form < 2:
            sign, percent = ("±", self.random.choice([1, 2, 5])) if form == 0 else ("~", self.random.choice([3, 8]))
            # Of a ratio, a tolerance in % could be meant in two ways.
            return f"{value:g}{unit} {sign} {percent} %" if unit else f"{value:g} {sign} {value * percent / 100:.2g}"
        if form == 2:
            return f"{value * 0.96:.6g}..{value * 1.04:.6g}{unit}"
        return f"{value:g}({self.random.randint(1, 9)}){unit}"


def sense_part(d, fed_by, fitted, divider, resistance):
    part = {
        "kind": "sense",
        "fed-by": fed_by,
        "fitted": [
            {
                "resistance": d.q(0.8 * resistance, 1.3 * resistance, "mohm"),
                "joint": d.q(0.02, 0.2, "mohm"),
                "temperature-coefficient": d.q(20, 200, "ppm/K"),
            }
            for _ in range(fitted)
        ],
        "heats": "board",
    }
    if divider:
        part["divider"] = {"series": d.q(8, 30, "ohm"), "parallel": d.q(80, 400, "ohm"), "input": d.q(1, 20, "kohm")}
    return part


def regulator_part(d, fed_by, number, kind, phases, vout, per_phase):
    if kind == "parts":
        losses = {
            "by": "parts",
            "high-side": d.q(2, 6, "mohm"),
            "low-side": d.q(0.7, 2, "mohm"),
            "on-coefficient": d.q(3e-3, 6e-3, "1/K"),
            "switching-time": d.q(5, 15, "ns"),
            "output-charge": d.q(15, 40, "nC"),
            "recovery-charge": d.q(5, 30, "nC"),
            "gate-charge": d.q(20, 60, "nC"),
            "drive-voltage": d.q(4.8, 5.2, "V"),
            "dead-time": d.q(10, 30, "ns"),
            "diode-voltage": d.q(0.6, 0.9, "V"),
            "winding": d.q(0.25, 0.9, "mohm"),
            "winding-coefficient": d.q(3.8e-3, 4.0e-3, "1/K"),
            "core": d.q(60, 300, "mW"),
        }
        heats = {"stages": f"stages-{number}", "inductors": f"coils-{number}"}
    else:
        currents = [0.0, 0.3 * per_phase, 0.7 * per_phase, 1.3 * per_phase, 2.2 * per_phase]
        a, b, c = d.between(0.2, 0.4), d.between(0.01, 0.03), d.between(2e-3, 4e-3)
        losses = {
            "by": "curve",
            "points": [
                {"current": f"{i:.3f} A", "loss": f"{a + b * i + c * i * i:.3f} W ± 5 %"} for i in currents
            ],
            "at-temperature": "25 degC",
            "loss-coefficient": d.q(2e-3, 4e-3, "1/K"),
        }
        heats = f"stages-{number}"
    return {
        "kind": "regulator",
        "fed-by": fed_by,
        "output": f"{vout:.4g} V ± 1 %",
        "phases": phases,
        "imbalance": d.q(0.03, 0.12, ""),
        "frequency": d.q(350, 900, "kHz"),
        "inductance": d.q(120, 330, "nH"),
        "losses": losses,
        "fixed": d.q(100, 400, "mW"),
        "stage": {"junction-limit": "125 degC", "junction-rise": d.q(2, 8, "K/W")},
        "inductor": {"saturation-current": "open"},
        "input-capacitors": {"count": d.random.randint(2, 12), "rated-ripple": "none"},
        "heats": heats,
    }


def heat_path(d, regulators, hot):
    """Die to plate to fins to moving air; stages and coils to the board; the board and the case to ambient."""
    nodes = ["die", "plate", "fins", "air-1", "air-2", "board", "case"]
    links = {
        "die-plate": (
            "die",
            "plate",
            [
                {"bond-line": {"yield-stress": d.q(60, 300, "Pa"), "pressure": d.q(150, 600, "kPa"),
                               "conductivity": d.q(3, 8, "W/(m K)"), "area": d.q(260, 420, "mm2")}},
                {"contact": {"resistance": d.q(2, 8, "mm2 K/W"), "area": d.q(260, 420, "mm2")}},
                {"spreading": {"source-area": d.q(260, 420, "mm2"), "plate-area": d.q(1500, 3500, "mm2"),
                               "thickness": d.q(1, 3, "mm"), "conductivity": d.q(180, 390, "W/(m K)"),
                               "film": d.q(800, 3000, "W/(m2 K)")}},
                {"layer": {"thickness": d.q(1, 3, "mm"), "conductivity": d.q(180, 390, "W/(m K)"),
                           "area": d.q(1500, 3500, "mm2")}},
            ],
        ),
        "plate-fins": ("plate", "fins", [{"heat-pipes": {"count": d.random.randint(4, 7), "each": d.q(0.2, 0.4, "K/W")}}]),
        "fins-air": (
            "fins",
            "air-2",
            [{"fins": {"count": d.random.randint(50, 90), "height": d.q(20, 40, "mm"), "width": d.q(25, 60, "mm"),
                       "thickness": d.q(0.2, 0.5, "mm"), "conductivity": d.q(150, 390, "W/(m K)"),
                       "film": d.q(35, 70, "W/(m2 K)")}}],
        ),
        "board-air": ("board", "air-1", [{"film": {"coefficient": d.q(15, 40, "W/(m2 K)"), "area": d.q(80, 250, "cm2")}}]),
        "board-case": ("board", "case", [{"resistance": d.q(2, 8, "K/W")}]),
        "case-ambient": ("case", "ambient", [{"film": {"coefficient": d.q(8, 14, "W/(m2 K)"), "area": d.q(150, 700, "cm2")}}]),
        "die-board": ("die", "board", [{"resistance": d.q(6, 20, "K/W")}]),
    }
    for number, (kind, phases) in enumerate(regulators, 1):
        nodes.append(f"stages-{number}")
        links[f"stages-{number}-board"] = (f"stages-{number}", "board", [{"resistance": d.q(6 / phases, 14 / phases, "K/W")}])
        links[f"stages-{number}-plate"] = (
            f"stages-{number}",
            "plate",
            [{"layer": {"thickness": d.q(0.5, 1.5, "mm"), "conductivity": d.q(3, 12, "W/(m K)"),
                        "area": d.q(30 * phases, 60 * phases, "mm2")}},
             {"resistance": d.q(1 / phases, 4 / phases, "K/W")}],
        )
        if kind == "parts":
            nodes.append(f"coils-{number}")
            links[f"coils-{number}-board"] = (f"coils-{number}", "board", [{"resistance": d.q(8 / phases, 20 / phases, "K/W")}])
            links[f"coils-{number}-air"] = ("air-2", f"coils-{number}", [{"resistance": d.q(15 / phases, 40 / phases, "K/W")}])
    return {
        "ambient": d.q(20 + hot, 28 + hot, "degC"),
        "nodes": {node: {} for node in nodes},
        "links": {name: {"between": [a, b], "through": through} for name, (a, b, through) in links.items()},
        "streams": {
            "fan": {"flow": d.q(6, 18, "L/s"), "through": ["air-1", "air-2"]},
        },
    }


def make(number, shape):
    d = Draw(shape["seed"])
    regulators, hot = shape["regulators"], shape.get("leak", 0) * 2
    parts = {
        "adapter": {"kind": "supply", "voltage": d.q(18.5, 20.5, "V"), "resistance": d.q(10, 40, "mohm"),
                    "efficiency": d.q(0.86, 0.93, ""), "rated-current": "open", "heats": "ambient"},
        "cable": {"kind": "conductor", "fed-by": "adapter", "heats": "ambient",
                  "wire": {"gauge": f"AWG {d.random.choice([16, 18])}", "length": d.q(2, 4, "m")}},
        "connector": {"kind": "conductor", "fed-by": "cable", "resistance": d.q(2, 9, "mohm"), "heats": "case",
                      "temperature-coefficient": d.q(3e-3, 4e-3, "1/K")},
        "inlet": sense_part(d, "connector", 1, False, 5),
        "board-load": {"kind": "load", "fed-by": "inlet", "power": d.q(4, 12, "W"), "heats": "board"},
    }
    if shape["supplies"] == 2:
        parts["battery"] = {"kind": "supply", "voltage": d.q(14, 16, "V"), "resistance": d.q(30, 90, "mohm"),
                            "efficiency": d.q(0.95, 0.99, ""), "heats": "case"}
        parts["battery-plane"] = {"kind": "conductor", "fed-by": "battery", "heats": "board",
                                  "wire": {"gauge": d.q(1.0, 2.0, "mm"), "length": d.q(0.2, 0.5, "m")},
                                  "temperature-coefficient": d.q(3.5e-3, 4.2e-3, "1/K")}
    senses, followers = [], []
    for k, (kind, phases) in enumerate(regulators, 1):
        source = "battery-plane" if shape["supplies"] == 2 and k == 2 else "inlet"
        if shape.get("cascade") and k == 2:
            source = "rail-1"
        elif shape["senses"] == "shared" or k == 1:
            parts[f"sense-{k}"] = sense_part(d, source, 1 + k % 3, k == 1, 4)
            senses.append(f"sense-{k}")
            source = f"sense-{k}"
        vout = d.between(1.0, 1.3) if not (shape.get("cascade") and k == 1) else 5.0
        if shape.get("cascade") and k == 2:
            vout = 1.1
        per_phase = d.between(9, 14)
        if shape.get("cascade"):
            per_phase = 7 if k == 1 else 16
        watts = vout * per_phase * phases * (0.3 if shape.get("cascade") and k == 1 else 1)
        parts[f"vr-{k}"] = regulator_part(d, source, k, kind, phases, vout, per_phase)
        parts[f"rail-{k}"] = {"kind": "conductor", "fed-by": f"vr-{k}", "resistance": d.q(0.05, 0.4, "mohm"), "heats": "board"}
        if k <= 2 and not (shape.get("cascade") and k == 1):
            parts[f"vr-{k}"]["output-exponent"] = d.q(0.2, 0.4, "")
        load = {"kind": "load", "fed-by": f"rail-{k}", "power": d.q(0.75 * watts, 0.95 * watts, "W"), "heats": "die"}
        if k <= 2:
            load |= {"idle": d.q(0.05 * watts, 0.12 * watts, "W"), "follows": "processor"}
        if k == 1:
            leak = shape.get("leak", 1) * 0.03 * watts
            load["leakage"] = {"power": d.q(0.8 * leak, 1.2 * leak, "W"), "at": "60 degC", "e-fold": d.q(35, 55, "K")}
        parts[f"load-{k}"] = load
        followers.append(f"load-{k}")
    takes = "peak" if shape["holds"] == "peak" else "average"
    reads = [{"sense": s, "assumed": "4 mohm"} for s in senses]
    reads[0] |= {"gain": d.q(0.99, 1.01, ""), "offset": d.q(5, 60, "uV")}
    study = {
        "uprate": 1,
        "title": f"Random board {number}",
        "about": f"Invented. Made by generate.py from seed {shape['seed']}.",
        "demand": {"scale": d.q(1.05, 1.25, ""), "crest": d.q(1.15, 1.4, "")},
        "parts": parts,
        "limiters": {
            "package": {"acts": "regulate", "allowed": "9999 W", "takes": takes, "reads": reads},
            "die-hot": {"acts": "regulate", "allowed-temperature": "900 degC", "node": "die"},
            "total": {"acts": "trip", "allowed": "400 W", "takes": "peak", "reads": [{"sense": "inlet", "assumed": "5 mohm"}]},
        },
        "heat": heat_path(d, regulators, hot),
        "steps": [{"id": "stock"}],
    }
    set_limiters(study, shape["holds"])
    text = yaml.safe_dump(study, sort_keys=False, allow_unicode=True, width=120)
    (HERE / f"random-{number}.yaml").write_text(text)


def set_limiters(study, holds):
    """Puts the limiter that should hold at about 0.8 of the demanded scale, and the other one out of reach."""
    board = Board(study)
    temperature, voltage, _, delivered, _, _ = board.unpack(at_scale(board, 0.8 * board.demand)[0])
    limiters = study["limiters"]
    reads = board.reading(limiters["package"], temperature, voltage, delivered)[0]
    warm = temperature["die"] - 273.15
    share = 1.0 if holds in ("power", "peak") else 2.0
    limiters["package"]["allowed"] = f"{share * reads:.1f} W"
    limiters["die-hot"]["allowed-temperature"] = f"{warm + (0 if holds == 'temperature' else 40):.0f} degC"


for number, shape in enumerate(SHAPES, 1):
    make(number, shape)
