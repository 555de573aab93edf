"""One board as one system of equations, written from the laws' textbook forms.

Every unknown has its own equation, nothing is eliminated: temperature of each heat node, voltage at the output of each
part, current that each part draws, junction temperature of each regulator's stages, and the processor's scale.
"""

import math

import numpy as np
from scipy.interpolate import PchipInterpolator

from quantities import read

C0 = 273.15
COPPER_RESISTIVITY = 1e-6 / 58  # IEC 60028: 1/58 ohm mm2/m at 20 degC
COPPER_COEFFICIENT = 3.93e-3  # IEC 60028, from 20 degC
AIR_GAS_CONSTANT = 287.05287  # ISO 2533
AIR_PRESSURE = 101325.0  # ISO 2533
AIR_SPECIFIC_HEAT = 1007.0  # Cengel, table A-15


def element_resistance(element):
    """Thermal resistance of one element of a link [K/W]."""
    ((kind, data),) = element.items()
    if kind == "resistance":
        return read(data)
    v = {key: (value if key == "count" else read(value)) for key, value in data.items()}
    if kind == "layer":
        return v["thickness"] / (v["conductivity"] * v["area"])
    if kind == "contact":
        return v["resistance"] / v["area"]
    if kind == "bond-line":
        thickness = 1.31e-4 * (v["yield-stress"] / v["pressure"]) ** 0.166
        return thickness / (v["conductivity"] * v["area"])
    if kind == "spreading":
        # S. Lee, Electronics Cooling 4 (1998): constriction on top of the plain layer, hottest point of the source.
        small, large = v["source-area"], v["plate-area"]
        film_resistance = 1 / (v["film"] * large)
        lam = math.pi**1.5 / math.sqrt(large) + 1 / math.sqrt(small)
        lead = (math.sqrt(large) - math.sqrt(small)) / (v["conductivity"] * math.sqrt(math.pi * large * small))
        tanh = math.tanh(lam * v["thickness"])
        ratio = lam * v["conductivity"] * large * film_resistance
        return lead * (ratio + tanh) / (1 + ratio * tanh)
    if kind == "heat-pipes":
        return v["each"] / v["count"]
    if kind == "fins":
        m = math.sqrt(2 * v["film"] / (v["conductivity"] * v["thickness"]))
        efficiency = math.tanh(m * v["height"]) / (m * v["height"])
        return 1 / (v["film"] * efficiency * v["count"] * 2 * v["height"] * v["width"])
    if kind == "film":
        return 1 / (v["coefficient"] * v["area"])
    raise ValueError(kind)


class Board:
    def __init__(self, study):
        self.study = study
        self.parts = study["parts"]
        self.ids = list(self.parts)
        self.nodes = list(study["heat"]["nodes"])
        self.regulators = [i for i in self.ids if self.parts[i]["kind"] == "regulator"]
        self.ambient = read(study["heat"]["ambient"])
        self.demand = read(study["demand"]["scale"])
        self.crest = read(study["demand"]["crest"])
        self.links = [
            (*link["between"], sum(element_resistance(e) for e in link["through"]))
            for link in study["heat"]["links"].values()
        ]
        density = AIR_PRESSURE / (AIR_GAS_CONSTANT * self.ambient)
        self.streams = [
            (density * AIR_SPECIFIC_HEAT * read(stream["flow"]), stream["through"])
            for stream in study["heat"].get("streams", {}).values()
        ]
        n, m, r = len(self.nodes), len(self.ids), len(self.regulators)
        self.slices = np.cumsum([0, n, m, m, r, 1])
        supplies = [p for p in self.parts.values() if p["kind"] == "supply"]
        self.typical_voltage = max(read(s["voltage"]) for s in supplies)
        # Scales that make every unknown about 1.
        self.unit = np.concatenate(
            [np.full(n, 100.0), np.full(m, self.typical_voltage), np.full(m, 10.0), np.full(r, 100.0), [1.0]]
        )

    def guess(self, scale):
        """A rough start: a little warm, full voltages, currents from the loads' powers."""
        n, m, r = len(self.nodes), len(self.ids), len(self.regulators)
        voltage = {}
        for i in self.ids_downward():
            part = self.parts[i]
            if part["kind"] == "supply":
                voltage[i] = read(part["voltage"])
            elif part["kind"] == "regulator":
                voltage[i] = read(part["output"]) * scale ** read(part.get("output-exponent", 0))
            else:
                voltage[i] = voltage[part["fed-by"]]
        power = {i: 0.0 for i in self.ids}
        for i in reversed(self.ids_downward()):
            if self.parts[i]["kind"] == "load":
                power[i] += self.load_power(self.parts[i], self.ambient, scale)
            if "fed-by" in self.parts[i]:
                power[self.parts[i]["fed-by"]] += power[i]
        drawn = [
            power[i] / voltage[self.parts[i].get("fed-by", i)] for i in self.ids
        ]
        warm = self.ambient + 20
        return np.concatenate([[warm] * n, [voltage[i] for i in self.ids], drawn, [warm + 10] * r, [scale]])

    def ids_downward(self):
        order = [i for i in self.ids if self.parts[i]["kind"] == "supply"]
        for i in order:
            order += [k for k in self.ids if self.parts[k].get("fed-by") == i]
        return order

    def load_power(self, part, temperature, scale):
        full = read(part["power"])
        idle = read(part.get("idle", 0))
        power = idle + (full - idle) * scale if part.get("follows") == "processor" else full
        if "leakage" in part:
            leak = part["leakage"]
            power += read(leak["power"]) * math.exp((temperature - read(leak["at"])) / read(leak["e-fold"]))
        return power

    def branches(self, part, temperature):
        """Each resistor of a sense point at its temperature, joint apart: [(resistor, joint)]."""
        return [
            (
                read(f["resistance"]) * (1 + read(f.get("temperature-coefficient", 0)) * (temperature - C0 - 20)),
                read(f.get("joint", 0)),
            )
            for f in part["fitted"]
        ]

    def series_resistance(self, part, temperature):
        if part["kind"] == "sense":
            return 1 / sum(1 / (own + joint) for own, joint in self.branches(part, temperature))
        if "wire" in part:
            diameter = read(part["wire"]["gauge"])
            cold = COPPER_RESISTIVITY * read(part["wire"]["length"]) / (math.pi * diameter**2 / 4)
            coefficient = COPPER_COEFFICIENT
        else:
            cold, coefficient = read(part["resistance"]), 0.0
        coefficient = read(part.get("temperature-coefficient", coefficient))
        return cold * (1 + coefficient * (temperature - C0 - 20))

    def phase_loss(self, part, vin, vout, current, stage_node, inductor_node, junction):
        """(loss of the switches, loss of the inductor) of one phase whose junction is at a temperature [W]."""
        loss = part["losses"]
        f = read(part["frequency"])
        if loss["by"] == "curve":
            points = [(read(p["current"]), read(p["loss"])) for p in loss["points"]]
            curve = PchipInterpolator(*zip(*points))
            hot = 1 + read(loss["loss-coefficient"]) * (junction - read(loss["at-temperature"]))
            return float(curve(current)) * hot, 0.0
        duty = vout / vin
        ripple = self.ripple(part, vin, vout)
        square = current**2 + ripple**2 / 12
        hot = 1 + read(loss["on-coefficient"]) * (junction - C0 - 25)
        conduction = square * hot * (read(loss["high-side"]) * duty + read(loss["low-side"]) * (1 - duty))
        overlap = vin * current * read(loss["switching-time"]) * f / 2
        charge = vin * f * (read(loss["output-charge"]) / 2 + read(loss["recovery-charge"]))
        gate = read(loss["gate-charge"]) * read(loss["drive-voltage"]) * f
        dead = read(loss["diode-voltage"]) * current * read(loss["dead-time"]) * f
        warm = 1 + read(loss.get("winding-coefficient", 0)) * (inductor_node - C0 - 25)
        inductor = square * read(loss["winding"]) * warm + read(loss["core"])
        return conduction + overlap + charge + gate + dead, inductor

    def ripple(self, part, vin, vout):
        return (vin - vout) * (vout / vin) / (read(part["inductance"]) * read(part["frequency"]))

    def unpack(self, z):
        s = self.slices
        temperature = dict(zip(self.nodes, z[s[0] : s[1]]), ambient=self.ambient)
        voltage = dict(zip(self.ids, z[s[1] : s[2]]))
        drawn = dict(zip(self.ids, z[s[2] : s[3]]))
        junction = dict(zip(self.regulators, z[s[3] : s[4]]))
        delivered = {i: 0.0 for i in self.ids}
        for i, part in self.parts.items():
            if "fed-by" in part:
                delivered[part["fed-by"]] += drawn[i]
        return temperature, voltage, drawn, delivered, junction, z[-1]

    def losses(self, i, temperature, voltage, drawn, delivered, junction, scale):
        """What part i turns into heat: [(node, power)], and what a load takes."""
        part = self.parts[i]
        heats = part["heats"]
        current = delivered[i]
        if part["kind"] == "supply":
            out = voltage[i] * current
            return [(heats, out / read(part["efficiency"]) - out)]
        if part["kind"] in ("conductor", "sense"):
            return [(heats, current**2 * self.series_resistance(part, temperature[heats]))]
        if part["kind"] == "load":
            return [(heats, self.load_power(part, temperature[heats], scale))]
        stage, inductor = (heats, heats) if isinstance(heats, str) else (heats["stages"], heats["inductors"])
        vin = voltage[part["fed-by"]]
        n = part["phases"]
        switches, coil = self.phase_loss(
            part, vin, voltage[i], current / n, temperature[stage], temperature[inductor], junction[i]
        )
        return [(stage, n * switches + read(part["fixed"])), (inductor, n * coil)]

    def reading(self, limiter, temperature, voltage, delivered):
        """(what it reads, what really flows), crest included where it takes the peak [W]."""
        reads = real = 0.0
        for entry in limiter["reads"]:
            i = entry["sense"]
            part = self.parts[i]
            gain = read(entry.get("gain", 1))
            divider = part.get("divider")
            if divider:
                parallel = 1 / (1 / read(divider["parallel"]) + (1 / read(divider["input"]) if "input" in divider else 0))
                gain *= parallel / (parallel + read(divider["series"]))
            drop = delivered[i] * self.series_resistance(part, temperature[part["heats"]])
            reads += voltage[i] * (drop * gain + read(entry.get("offset", 0))) / read(entry["assumed"])
            real += voltage[i] * delivered[i]
        peak = self.crest if limiter["takes"] == "peak" else 1.0
        return reads * peak, real * peak

    def excess(self, name, z):
        """Reading over allowed minus 1, for temperatures from ambient up: zero where the limiter holds."""
        limiter = self.study["limiters"][name]
        temperature, voltage, _, delivered, _, _ = self.unpack(z)
        if "reads" in limiter:
            return self.reading(limiter, temperature, voltage, delivered)[0] / read(limiter["allowed"]) - 1
        allowed = read(limiter["allowed-temperature"])
        return (temperature[limiter["node"]] - self.ambient) / (allowed - self.ambient) - 1

    def residual(self, scaled, close):
        """All equations, each about 1 in size; `close(z)` is the one that sets the processor's scale."""
        z = scaled * self.unit
        temperature, voltage, drawn, delivered, junction, scale = self.unpack(z)
        balance = {node: 0.0 for node in temperature}
        part_loss = {}
        for i in self.ids:
            part_loss[i] = self.losses(i, temperature, voltage, drawn, delivered, junction, scale)
            for node, power in part_loss[i]:
                balance[node] += power
        for a, b, resistance in self.links:
            flow = (temperature[a] - temperature[b]) / resistance
            balance[a] -= flow
            balance[b] += flow
        for rate, way in self.streams:
            upstream = self.ambient
            for node in way:
                balance[node] += rate * (upstream - temperature[node])
                upstream = temperature[node]
        volts, amperes, junctions = [], [], []
        for i, part in self.parts.items():
            kind = part["kind"]
            feed = voltage[part["fed-by"]] if kind != "supply" else None
            lost = sum(power for _, power in part_loss[i])
            if kind == "supply":
                volts.append(read(part["voltage"]) - delivered[i] * read(part["resistance"]) - voltage[i])
                amperes.append(drawn[i])
            elif kind in ("conductor", "sense"):
                node = part["heats"]
                volts.append(feed - delivered[i] * self.series_resistance(part, temperature[node]) - voltage[i])
                amperes.append(delivered[i] - drawn[i])
            elif kind == "load":
                volts.append(feed - voltage[i])
                amperes.append(lost / feed - drawn[i])
            else:
                target = read(part["output"]) * abs(scale) ** read(part.get("output-exponent", 0))
                volts.append(target - voltage[i])
                amperes.append((voltage[i] * delivered[i] + lost) / feed - drawn[i])
                stage = part_loss[i][0]
                one = (stage[1] - read(part["fixed"])) / part["phases"]
                junctions.append(temperature[stage[0]] + read(part["stage"]["junction-rise"]) * one - junction[i])
        equations = np.array([balance[n] for n in self.nodes] + volts + amperes + junctions + [close(z)])
        return equations / np.concatenate([np.full(len(self.nodes), 10.0), self.unit[self.slices[1] :]])
