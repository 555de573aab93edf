"""Solves a batch of draws of one board with NumPy, vectorised over the draws; spoken to by run.mjs through its standard input.

Arguments: board.json (the study's board, every number replaced by {"slot": column}), inputs.f64 (draws × columns, row by
row, little endian), columns, start.json (temperatures, voltages and scale to start from). Each line `run` solves all draws
and answers with one line of JSON: milliseconds, passes, largest residual, draws left unsolved, peak memory. `write FILE` writes
the last results.

Written for speed in the way NumPy is fast: whole-column operations, draws in blocks that fit the cache, the heat network inverted
once a draw in one batched call, Anderson's acceleration with its small least-squares problems solved in one batched call, and
draws that have settled leave the block.
"""

import json
import resource
import sys
import time

import numpy as np

BLOCK = 2000
MEMORY = 2
TOLERANCE = 1e-12
MOST_PASSES = 60
COPPER_COEFFICIENT = 3.93e-3


class Batch:
    """The board's laws for a block of draws: x holds one column an input."""

    def __init__(self, board, x):
        self.x = x
        self.heat = board["heat"]
        self.nodes = list(self.heat["nodes"])
        self.node = {name: k for k, name in enumerate(self.nodes)} | {"ambient": len(self.nodes)}
        order = [i for i, p in board["parts"].items() if p["kind"] == "supply"]
        for i in order:
            order += [k for k, p in board["parts"].items() if p.get("fed-by") == i]
        self.ids = order
        place = {i: k for k, i in enumerate(order)}
        self.parts = [board["parts"][i] for i in order]
        self.feeders = [place.get(p.get("fed-by"), -1) for p in self.parts]
        self.carriers = [k for k, p in enumerate(self.parts) if p["kind"] in ("supply", "conductor", "sense")]
        named = [h for p in self.parts for h in (p["heats"].values() if isinstance(p["heats"], dict) else [p["heats"]])]
        self.felt = sorted({self.node[name] for name in named} - {len(self.nodes)})
        self.ambient = self.value(self.heat["ambient"])
        self.demand = self.value(board["demand"]["scale"])
        self.crest = self.value(board["demand"]["crest"])
        self.supply_voltage = self.value(self.parts[0]["voltage"])
        self.prepare = [getattr(self, "prepare_" + p["kind"])(p) for p in self.parts]
        self.limiters = [self.prepare_limiter(l, place) for l in board["limiters"].values() if l["acts"] == "regulate"]
        self.all_limiters = board["limiters"]
        self.inverse = np.linalg.inv(self.network())

    def value(self, quantity, otherwise=None):
        if quantity is None:
            return otherwise
        return self.x[quantity["slot"]] if isinstance(quantity, dict) else quantity

    def values(self, record, *names):
        return [self.value(record.get(name), 0.0) for name in names]

    # Heat network

    def network(self):
        n = len(self.nodes)
        g = np.zeros((self.x.shape[1], n + 1, n + 1))
        for link in self.heat["links"].values():
            a, b = (self.node[name] for name in link["between"])
            c = 1 / sum(self.element(e) for e in link["through"])
            g[:, a, a] += c
            g[:, b, b] += c
            g[:, a, b] -= c
            g[:, b, a] -= c
        for stream in self.heat.get("streams", {}).values():
            rate = 101325 / (287.05287 * self.ambient) * 1007 * self.value(stream["flow"])
            upstream = n
            for name in stream["through"]:
                k = self.node[name]
                g[:, k, k] += rate
                g[:, k, upstream] -= rate
                upstream = k
        return g[:, :n, :n]

    def element(self, element):
        ((kind, v),) = element.items()
        if kind == "resistance":
            return self.value(v)
        v = {name: self.value(item) for name, item in v.items()}
        if kind == "layer":
            return v["thickness"] / (v["conductivity"] * v["area"])
        if kind == "contact":
            return v["resistance"] / v["area"]
        if kind == "bond-line":
            return 1.31e-4 * (v["yield-stress"] / v["pressure"]) ** 0.166 / (v["conductivity"] * v["area"])
        if kind == "spreading":
            a, b = np.sqrt(v["source-area"] / np.pi), np.sqrt(v["plate-area"] / np.pi)
            e = a / b
            lam = np.pi + 1 / (np.sqrt(np.pi) * e)
            t, ratio = np.tanh(lam * v["thickness"] / b), lam * v["conductivity"] / (v["film"] * b)
            return (1 - e) * (t + ratio) / (1 + ratio * t) / (np.pi * v["conductivity"] * a)
        if kind == "heat-pipes":
            return v["each"] / v["count"]
        if kind == "fins":
            mh = np.sqrt(2 * v["film"] / (v["conductivity"] * v["thickness"])) * v["height"]
            return mh / (np.tanh(mh) * v["count"] * 2 * v["height"] * v["width"] * v["film"])
        return 1 / (v["coefficient"] * v["area"])

    # Parts: what doesn't change while the block is solved

    def prepare_supply(self, part):
        return self.values(part, "voltage", "resistance", "efficiency")

    def prepare_conductor(self, part):
        wire = part.get("wire")
        if wire:
            cold = 4e-6 / 58 / np.pi * self.value(wire["length"]) / self.value(wire["gauge"]) ** 2
        else:
            cold = self.value(part["resistance"])
        return cold, self.value(part.get("temperature-coefficient"), COPPER_COEFFICIENT if wire else 0.0)

    def prepare_sense(self, part):
        gain = 1.0
        if "divider" in part:
            series, parallel = self.values(part["divider"], "series", "parallel")
            gain = 1 / (1 + series / parallel + series / self.value(part["divider"].get("input"), np.inf))
        fitted = [self.values(f, "resistance", "temperature-coefficient", "joint") for f in part["fitted"]]
        return fitted, gain

    def prepare_regulator(self, part):
        loss = part["losses"]
        common = self.values(part, "output", "output-exponent", "frequency", "inductance", "fixed")
        rise = self.value(part["stage"]["junction-rise"])
        if loss["by"] == "parts":
            names = ["high-side", "low-side", "on-coefficient", "switching-time", "output-charge", "recovery-charge"]
            names += ["gate-charge", "drive-voltage", "dead-time", "diode-voltage", "winding", "winding-coefficient", "core"]
            return common, rise, self.values(loss, *names)
        points = [[self.value(p[name]) + np.zeros(self.x.shape[1]) for p in loss["points"]] for name in ("current", "loss")]
        x, y = (np.array(column) for column in points)
        return common, rise, (x, y, slopes(x, y), *self.values(loss, "at-temperature", "loss-coefficient"))

    def prepare_load(self, part):
        power, idle = self.values(part, "power", "idle")
        leak = part.get("leakage")
        return power, idle, self.values(leak, "power", "at", "e-fold") if leak else None

    def prepare_limiter(self, limiter, place):
        if "node" in limiter:
            return "temperature", self.value(limiter["allowed-temperature"]), self.node[limiter["node"]], None
        reads = [
            (place[r["sense"]], self.value(r["assumed"]), self.value(r.get("gain"), 1.0), self.value(r.get("offset"), 0.0))
            for r in limiter["reads"]
        ]
        return "power", self.value(limiter["allowed"]), reads, self.crest if limiter["takes"] == "peak" else 1.0

    def keep(self, rows):
        """The same laws for some of the draws."""
        kept = object.__new__(Batch)
        kept.__dict__.update(self.__dict__)
        pick = lambda v: (
            v[..., rows] if isinstance(v, np.ndarray)
            else type(v)(pick(each) for each in v) if isinstance(v, (list, tuple))
            else v
        )
        for name in ("x", "ambient", "demand", "crest", "supply_voltage", "prepare", "limiters"):
            setattr(kept, name, pick(getattr(self, name)))
        kept.inverse = self.inverse[rows]
        return kept

    # One pass

    def upward(self, z):
        """Currents and losses from the loads up to the supplies."""
        n, m, carriers = len(self.nodes), len(self.parts), self.carriers
        t = np.vstack([self.ambient + z[:n], self.ambient[None]])
        scale = z[-1]
        log_scale = np.log(scale)
        u = np.empty((m, z.shape[1]))
        u[carriers] = z[n:-1]
        for k, part in enumerate(self.parts):
            if part["kind"] == "regulator":
                output, exponent = self.prepare[k][0][:2]
                u[k] = output * np.exp(exponent * log_scale)
            elif part["kind"] == "load":
                u[k] = u[self.feeders[k]]
        heat = np.zeros_like(t)
        delivered, drawn = np.zeros_like(u), np.zeros_like(u)
        drop, lost = [None] * m, [None] * m
        for k in range(m - 1, -1, -1):
            part, own, feeder = self.parts[k], self.prepare[k], self.feeders[k]
            i, kind = delivered[k], part["kind"]
            if kind == "supply":
                out = u[k] * i
                drop[k] = own[1]
                lost[k] = out / own[2] - out
                heat[self.node[part["heats"]]] += lost[k]
                continue
            if kind == "load":
                power, idle, leak = own
                p = idle + (power - idle) * scale if part.get("follows") else power + 0 * scale
                if leak:
                    p = p + leak[0] * np.exp((t[self.node[part["heats"]]] - leak[1]) / leak[2])
                drawn[k] = p / u[feeder]
                lost[k] = p
                heat[self.node[part["heats"]]] += p
            elif kind == "regulator":
                heats = part["heats"]
                stage, coil = (heats, heats) if isinstance(heats, str) else (heats["stages"], heats["inductors"])
                one, wound, drop[k] = self.phase(part, own, u[feeder], u[k], i / part["phases"], t[self.node[stage]], t[self.node[coil]])
                p, q = part["phases"] * one + own[0][4], part["phases"] * wound
                lost[k] = p + q
                heat[self.node[stage]] += p
                heat[self.node[coil]] += q
                drawn[k] = (u[k] * i + p + q) / u[feeder]
            else:
                warm = t[self.node[part["heats"]]] - 293.15
                if kind == "sense":
                    r = 1 / sum(1 / (r20 * (1 + alpha * warm) + joint) for r20, alpha, joint in own[0])
                else:
                    r = own[0] * (1 + own[1] * warm)
                drop[k] = r
                lost[k] = i * i * r
                heat[self.node[part["heats"]]] += lost[k]
                drawn[k] = i
            delivered[feeder] += drawn[k]
        return u, heat, delivered, drawn, drop, lost

    def apply(self, z):
        """Image of z (rises, voltages of what carries current, scale; one row each): up the power path, down it, through the heat."""
        n, carriers, scale = len(self.nodes), self.carriers, z[-1]
        u, heat, delivered, drawn, drop, lost = self.upward(z)
        image = np.empty_like(z)
        image[:n] = self.rise(heat)
        v = u.copy()
        for k in carriers:
            above = self.prepare[k][0] if self.feeders[k] < 0 else v[self.feeders[k]]
            v[k] = above - delivered[k] * drop[k]
        image[n:-1] = v[carriers]
        self.last = dict(drawn=drawn, delivered=delivered, drop=drop, lost=lost, voltage=v, heat=heat)
        image[-1] = np.minimum(self.demand, scale * self.room(delivered, drop, v, image[:n]))
        return image

    def rise(self, heat):
        return np.matmul(self.inverse, heat[: len(self.nodes)].T[:, :, None])[:, :, 0].T

    def loop_gain(self, z):
        """Growth of a small rise in temperature in one pass; a solution with 1 or more is none."""
        felt = self.felt
        probe = np.maximum(z[felt], 1e-3)
        step = 1e-2 / probe.max(axis=0)
        warmer = z.copy()
        warmer[felt] += step * probe
        return (self.rise(self.upward(warmer)[1] - self.last["heat"])[felt] / (step * probe)).max(axis=0)

    def room(self, delivered, drop, voltage, rises):
        least = np.inf
        for kind, allowed, what, peak in self.limiters:
            if kind == "temperature":
                share = (allowed - self.ambient) / rises[what]
            else:
                state = dict(delivered=delivered, drop=drop, voltage=voltage)
                share = allowed / self.reading(state, what, peak)[0]
            least = np.minimum(least, share)
        return least

    def reading(self, state, reads, peak):
        """(what a limiter reads, what really flows)."""
        seen = real = 0.0
        for k, assumed, gain, offset in reads:
            volts, amperes = state["voltage"][k], state["delivered"][k]
            seen = seen + volts * (amperes * state["drop"][k] * self.prepare[k][1] * gain + offset) / assumed
            real = real + volts * amperes
        return seen * peak, real * peak

    def phase(self, part, own, vin, vout, current, stage, coil):
        """(loss of the switches, of the inductor, junction temperature) of one phase."""
        (_, _, f, inductance, _), rise, loss = own
        if part["losses"]["by"] == "curve":
            x, y, d, at, growth = loss
            fixed, growing, alpha, reference = 0.0, curve(x, y, d, current), growth, at
            wound = 0.0 * current
        else:
            high, low, alpha, edges, out, recovery, gate, drive, dead, diode, winding, wa, core = loss
            duty = vout / vin
            ripple = (vin - vout) * duty / (inductance * f)
            square = current * current + ripple * ripple / 12
            growing, reference = square * (high * duty + low * (1 - duty)), 298.15
            fixed = f * (vin * (0.5 * current * edges + 0.5 * out + recovery) + gate * drive + diode * current * dead)
            wound = square * winding * (1 + wa * (coil - 298.15)) + core
        switches = (fixed + growing * (1 + alpha * (stage - reference))) / (1 - rise * growing * alpha)
        return switches, wound, stage + rise * switches


def slopes(x, y):
    """Slopes of the monotone cubic through points, one row a point (Fritsch and Butland 1984; ends by three points)."""
    h, c = np.diff(x, axis=0), np.diff(y, axis=0) / np.diff(x, axis=0)
    d = np.zeros_like(y)
    w1, w2 = 2 * h[1:] + h[:-1], h[1:] + 2 * h[:-1]
    with np.errstate(divide="ignore", invalid="ignore"):
        d[1:-1] = np.where(c[:-1] * c[1:] > 0, (w1 + w2) / (w1 / c[:-1] + w2 / c[1:]), 0)
    for end, near, far, cn, cf in ((0, h[0], h[1], c[0], c[1]), (-1, h[-1], h[-2], c[-1], c[-2])):
        s = ((2 * near + far) * cn - near * cf) / (near + far)
        s = np.where(s * cn <= 0, 0, s)
        d[end] = np.where((cn * cf <= 0) & (np.abs(s) > 3 * np.abs(cn)), 3 * cn, s)
    return d


def curve(x, y, d, at):
    """Value of the monotone cubic; straight on beyond its ends."""
    k = np.clip((at >= x).sum(axis=0) - 1, 0, len(x) - 2)
    rows = np.arange(x.shape[1])
    x0, x1, y0, y1, d0, d1 = x[k, rows], x[k + 1, rows], y[k, rows], y[k + 1, rows], d[k, rows], d[k + 1, rows]
    h = x1 - x0
    t = np.clip((at - x0) / h, 0, 1)
    s = 1 - t
    inside = y0 * (1 + 2 * t) * s * s + y1 * (3 - 2 * t) * t * t + h * t * s * (d0 * s - d1 * t)
    return inside + np.where(at > x1, d1 * (at - x1), np.where(at < x0, d0 * (at - x0), 0))


def solve_block(board, x, start, names):
    """Outputs `names`, passes and the largest residual of one block."""
    whole = Batch(board, x)
    batch, rows = whole, np.arange(x.shape[1])
    n, m = len(whole.nodes), len(whole.carriers)
    z = np.repeat(start[:, None], x.shape[1], axis=1)
    z[-1] = np.minimum(z[-1], whole.demand)
    solution, worst = np.full_like(z, np.nan), np.zeros(x.shape[1])
    unit = np.concatenate([np.full(n, 100.0), np.full(m, start[n]), [1.0]])[:, None]
    dr, di, last = [], [], None
    passes = 0
    for passes in range(1, MOST_PASSES + 1):
        image = batch.apply(z)
        residual = image - z
        size = np.abs(residual / unit).max(axis=0)
        done = ~(size >= TOLERANCE)
        if done.any():
            solution[:, rows[done]], worst[rows[done]] = z[:, done], size[done]
            stay = ~done
            if not stay.any():
                break
            # Leaving costs copies: only worth it once a good part of the block has settled.
            if done.mean() > 0.25:
                rows, z, image, residual = rows[stay], z[:, stay], image[:, stay], residual[:, stay]
                batch = batch.keep(stay)
                dr, di = [a[:, stay] for a in dr], [a[:, stay] for a in di]
                if last:
                    last = [a[:, stay] for a in last]
        if last:
            dr, di = dr[-MEMORY + 1 :] + [residual - last[0]], di[-MEMORY + 1 :] + [image - last[1]]
        last = [residual, image]
        z = image.copy()
        if dr:
            z -= weighted(dr, di, residual)
        z[-1] = np.minimum(z[-1], batch.demand)
    unsolved = int(np.isnan(solution[0]).sum())
    return outputs(whole, solution, names), passes, worst.max(), unsolved


def weighted(dr, di, residual):
    """Anderson's correction: least squares by normal equations, one small system a draw, all in one call."""
    a = np.array(dr)
    gram = np.einsum("kns,lns->skl", a, a)
    right = np.einsum("kns,ns->sk", a, residual)
    trace = np.trace(gram, axis1=1, axis2=2)
    k = np.arange(len(dr))
    gram[:, k, k] += 1e-15 * trace[:, None] + 1e-300
    weights = np.linalg.solve(gram, right[:, :, None])[:, :, 0]
    return np.einsum("kns,sk->ns", np.array(di), weights)


def outputs(batch, z, names):
    """The results that are compared, by the ids of the board's outputs."""
    batch.apply(z)
    last, n = batch.last, len(batch.nodes)
    gain = batch.loop_gain(z)
    z = np.where(gain < 1, z, np.nan)
    figure = {"scale": z[-1], "wall-power": 0.0}
    for k, name in enumerate(batch.nodes):
        figure[f"heat.nodes.{name}.temperature"] = batch.ambient + z[k]
    t = np.vstack([batch.ambient + z[:n], batch.ambient[None]])
    for k, (name, part) in enumerate(zip(batch.ids, batch.parts)):
        figure[f"parts.{name}.voltage"] = last["voltage"][k]
        figure[f"parts.{name}.loss"] = last["lost"][k]
        supply = part["kind"] == "supply"
        figure[f"parts.{name}.current"] = last["delivered" if supply else "drawn"][k]
        if supply:
            figure["wall-power"] = figure["wall-power"] + last["voltage"][k] * last["delivered"][k] / batch.prepare[k][2]
        if part["kind"] == "regulator":
            heats = part["heats"]
            stage, coil = (heats, heats) if isinstance(heats, str) else (heats["stages"], heats["inductors"])
            busiest = last["delivered"][k] / part["phases"] * (1 + batch.value(part["imbalance"]))
            volts = last["voltage"][batch.feeders[k]], last["voltage"][k]
            figure[f"parts.{name}.phase-current"] = busiest
            figure[f"parts.{name}.junction-temperature"] = batch.phase(
                part, batch.prepare[k], *volts, busiest, t[batch.node[stage]], t[batch.node[coil]]
            )[2]
            ripple = (volts[0] - volts[1]) * volts[1] / (volts[0] * batch.prepare[k][0][3] * batch.prepare[k][0][2])
            figure[f"parts.{name}.phase-ripple"] = ripple
            figure[f"parts.{name}.inductor-rms"] = np.sqrt(busiest**2 + ripple**2 / 12)
            figure[f"parts.{name}.inductor-peak"] = busiest * batch.crest + ripple / 2
        if part["kind"] == "sense":
            figure[f"parts.{name}.effective-resistance"] = last["drop"][k]
    place = {name: k for k, name in enumerate(batch.ids)}
    for name, limiter in batch.all_limiters.items():
        if "node" in limiter:
            continue
        _, _, reads, peak = batch.prepare_limiter(limiter, place)
        figure[f"limiters.{name}.reads"], figure[f"limiters.{name}.real"] = batch.reading(last, reads, peak)
    return np.array([figure[name] for name in names])


def main():
    board_file, inputs_file, columns, start_file = sys.argv[1:]
    with open(board_file) as file:
        board = json.load(file)
    with open(start_file) as file:
        start = json.load(file)
    x = np.ascontiguousarray(np.fromfile(inputs_file, dtype="<f8").reshape(-1, int(columns)).T)
    first = Batch(board, x[:, :1])
    z = start["temperatures"], start["voltages"], start["scale"]
    z = np.array([z[0][n] - z[0]["ambient"] for n in first.nodes] + [z[1][first.ids[k]] for k in first.carriers] + [z[2]])
    names, result = start["outputs"], None
    print(json.dumps({"block": BLOCK, "numpy": np.__version__, "python": sys.version.split()[0]}), flush=True)
    for line in sys.stdin:
        if line.startswith("write "):
            result.astype("<f8").tofile(line[6:].strip())
            print("{}", flush=True)
            continue
        began, worked = time.perf_counter(), time.process_time()
        parts = [solve_block(board, x[:, k : k + BLOCK], z, names) for k in range(0, x.shape[1], BLOCK)]
        result = np.concatenate([part[0] for part in parts], axis=1)
        answer = {
            "milliseconds": 1e3 * (time.perf_counter() - began),
            "processor": 1e3 * (time.process_time() - worked),
            "passes": max(part[1] for part in parts),
            "residual": float(max(part[2] for part in parts)),
            "unsolved": sum(part[3] for part in parts),
            "megabytes": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
        }
        print(json.dumps(answer), flush=True)


if __name__ == "__main__":
    main()
