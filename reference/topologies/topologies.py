"""Stages solved part by part: modified nodal analysis with every branch current of a source or op-amp an unknown, in plain complex numbers with pivoting.

python3 topologies.py NAME > NAME.csv; NAME is one of the netlists below. Nothing here is shared with the program.
"""
import math
import random
import sys

K = 1.380649e-23

# Each netlist: part, pin, pin; op-amps: output, plus, minus. 0 is common.
NETLISTS = {
    "gain": ([("coupling-capacitor", "in", "p"), ("coupling-resistor", "p", "0"), ("feedback-resistor", "out", "m"), ("ground-resistor", "m", "0"), ("feedback-capacitor", "out", "m")],
             [("out", "p", "m")], "out"),
    "rc": ([("r", "in", "p"), ("c", "p", "0")], [("out", "p", "out")], "out"),
    "rc-passive": ([("r", "in", "p"), ("c", "p", "0")], [], "p"),
    "sallen-key": ([("r1", "in", "x"), ("r2", "x", "p"), ("c1", "x", "out"), ("c2", "p", "0")], [("out", "p", "out")], "out"),
    "sallen-key-equal": ([("r1", "in", "x"), ("r2", "x", "p"), ("c1", "x", "out"), ("c2", "p", "0"), ("feedback-resistor", "out", "m"), ("ground-resistor", "m", "0")],
                         [("out", "p", "m")], "out"),
    "multiple-feedback": ([("r1", "in", "x"), ("r2", "x", "m"), ("r3", "x", "out"), ("c1", "x", "0"), ("c2", "m", "out")], [("out", "0", "m")], "out"),
    "twin-t": ([("r1", "in", "a"), ("r2", "a", "p"), ("r3", "b", "out"), ("c1", "in", "b"), ("c2", "b", "p"), ("c3", "a", "0"), ("feedback-resistor", "out", "m"), ("ground-resistor", "m", "0")],
              [("out", "p", "m")], "out"),
    "state-variable": ([("ra", "high-pass", "a"), ("rb", "band-pass", "b"), ("ca", "a", "band-pass"), ("cb", "b", "low-pass"), ("r1", "p", "0"), ("r2", "band-pass", "p"), ("r3", "in", "s"),
                        ("r4", "low-pass", "s"), ("r5", "high-pass", "s"), ("r6", "high-pass", "t"), ("r7", "low-pass", "t"), ("r8", "out", "t")],
                       [("high-pass", "p", "s"), ("band-pass", "0", "a"), ("low-pass", "0", "b"), ("out", "0", "t")], "out"),
}

# Nominal values; each case has every part somewhere within ± 20 % of them.
VALUES = {
    "gain": {"coupling-capacitor": 1e-6, "coupling-resistor": 1e6, "feedback-resistor": 200e3, "ground-resistor": 1e3, "feedback-capacitor": 10e-9},
    "rc": {"r": 10e3, "c": 100e-9},
    "rc-passive": {"r": 10e3, "c": 100e-9},
    "sallen-key": {"r1": 22e3, "r2": 22e3, "c1": 150e-9, "c2": 68e-9},
    "sallen-key-equal": {"r1": 22e3, "r2": 22e3, "c1": 100e-9, "c2": 100e-9, "feedback-resistor": 5e3, "ground-resistor": 10e3},
    "multiple-feedback": {"r1": 22e3, "r2": 22e3, "r3": 22e3, "c1": 220e-9, "c2": 47e-9},
    "twin-t": {"r1": 31.6e3, "r2": 31.6e3, "r3": 15.8e3, "c1": 100e-9, "c2": 100e-9, "c3": 200e-9, "feedback-resistor": 12e3, "ground-resistor": 20e3},
    "state-variable": {"ra": 31.6e3, "rb": 31.6e3, "ca": 100e-9, "cb": 100e-9, "r1": 10e3, "r2": 140e3, "r3": 20e3, "r4": 20e3, "r5": 20e3, "r6": 20e3, "r7": 20e3, "r8": 20e3},
}

OPAMP = {"dc-gain": 1e6, "gain-bandwidth": 350e3, "output-resistance": 150.0, "voltage-noise": 55e-9, "noise-corner": 5.0, "current-noise": 100e-15, "current-noise-corner": 3.0,
         "offset-voltage": 1e-4, "bias-current": -2e-9}


def solve(matrix, right):
    n = len(right)
    rows = [list(matrix[i]) + [right[i]] for i in range(n)]
    for c in range(n):
        pivot = max(range(c, n), key=lambda r: abs(rows[r][c]))
        rows[c], rows[pivot] = rows[pivot], rows[c]
        for r in range(n):
            if r != c and rows[r][c] != 0:
                factor = rows[r][c] / rows[c][c]
                rows[r] = [x - factor * y for x, y in zip(rows[r], rows[c])]
    return [rows[i][n] / rows[i][i] for i in range(n)]


class Circuit:
    def __init__(self, netlist, values, opamp, s, ideal):
        self.parts, self.amps, self.out = netlist
        self.values, self.opamp, self.s, self.ideal = values, opamp, s, ideal
        names = {"in"} | {pin for p in self.parts for pin in p[1:]} | {pin for a in self.amps for pin in a} | {f"inner{i}" for i in range(len(self.amps))}
        self.nodes = {name: i for i, name in enumerate(sorted(names - {"0"}))}
        self.size = len(self.nodes) + 1 + len(self.amps)

    def at(self, name):
        return self.nodes.get(name, -1)

    def voltages(self, source=0.0, currents=(), inputs=None):
        """Node voltages for a source at the input, currents [(node, amperes out of it)] and volts in series with the op-amps' + inputs."""
        n = len(self.nodes)
        a = [[0j] * self.size for _ in range(self.size)]
        b = [0j] * self.size

        def add(i, j, value):
            if i >= 0 and j >= 0:
                a[i][j] += value

        def branch(p, q, y):
            add(p, p, y), add(q, q, y), add(p, q, -y), add(q, p, -y)

        for part, p, q in self.parts:
            value = self.values[part]
            branch(self.at(p), self.at(q), self.s * value if "capacitor" in part or part[0] == "c" and part != "coupling-resistor" else 1 / value)
        add(self.at("in"), n, 1), add(n, self.at("in"), 1)
        b[n] = source
        for i, (output, plus, minus) in enumerate(self.amps):
            row = n + 1 + i
            ro = 0 if self.ideal else self.opamp["output-resistance"]
            inner = self.at(f"inner{i}")
            branch(inner, self.at(output), 1 / ro if ro else 1e6)
            driven = inner if ro else self.at(output)
            if ro == 0:
                add(inner, inner, 1.0)
            add(driven, row, 1)
            inverse = 0 if self.ideal else 1 / self.opamp["dc-gain"] + self.s / (2 * math.pi * self.opamp["gain-bandwidth"])
            add(row, driven, inverse), add(row, self.at(plus), -1), add(row, self.at(minus), 1)
            b[row] = (inputs or {}).get(i, 0)
        for node, amperes in currents:
            if self.at(node) >= 0:
                b[self.at(node)] -= amperes
        v = solve(a, b)
        return lambda name: v[self.at(name)] if self.at(name) >= 0 else 0


def noise(netlist, values, opamp, f, kelvins):
    c = Circuit(netlist, values, opamp, 2j * math.pi * f, False)
    total = 0
    for part, p, q in c.parts:
        if "resistor" in part or part[0] == "r":
            total += 4 * K * kelvins / values[part] * abs(c.voltages(currents=[(p, 1), (q, -1)])(c.out)) ** 2
    en = opamp["voltage-noise"] ** 2 * (1 + opamp["noise-corner"] / f)
    current = opamp["current-noise"] ** 2 * (1 + opamp["current-noise-corner"] / f)
    for i, (output, plus, minus) in enumerate(c.amps):
        total += en * abs(c.voltages(inputs={i: 1})(c.out)) ** 2
        for pin in {plus, minus} - {output, "0"}:
            total += current * abs(c.voltages(currents=[(pin, 1)])(c.out)) ** 2
    return total


def dc(netlist, values, opamp, node):
    parts, amps, out = netlist
    resistive = ([p for p in parts if "resistor" in p[0] or p[0][0] == "r"], amps, out)
    c = Circuit(resistive, values, opamp, 0, True)
    gain = abs(c.voltages(source=1)(node))
    gain = 0 if gain < 1e-12 else gain
    own = 0
    for i, (output, plus, minus) in enumerate(amps):
        own += abs(opamp["offset-voltage"] * c.voltages(inputs={i: 1})(node))
        for pin in {plus, minus} - {output, "0"}:
            own += abs(opamp["bias-current"] * c.voltages(currents=[(pin, 1)])(node))
    return gain, own


def main(name):
    kind = name if name == "gain" else "notch" if name in ("twin-t", "state-variable") else "low-pass"
    print(f"# what:    transfer, noise density at 298.15 K (input shorted), gain and dc errors (worst signs, ideal op-amps) of the stage `{name}`")
    print("# source:  its netlist solved by modified nodal analysis in plain complex numbers, computed")
    print("# status:  computed")
    print(f"# made by: python3 topologies.py {name} > {name}.csv")
    print("# digits:  12 printed; compared to 1e-8, dc to 1e-9")
    print("# licence: none needed, the figures are facts")
    print("# columns: case;kind;topology;key=value … | transfer;Hz;re;im | inner;node;Hz;re;im | noise;Hz;V²/Hz | dc;node (out: the stage's);gain;V")
    rng = random.Random(20261125)
    netlist = NETLISTS[name]
    for _ in range(4):
        values = {key: float(f"{value * rng.uniform(0.8, 1.2):.6g}") for key, value in VALUES[name].items()}
        opamp = dict(OPAMP) if netlist[1] else {}
        keys = [f"{key}={value:.12g}" for key, value in values.items()] + [f"opamp.{key}={value:.12g}" for key, value in opamp.items()]
        print(";".join(["case", kind, "" if name == "gain" else name] + keys))
        for f in (0.05, 1, 10, 50, 60, 300, 1e4, 1e6):
            h = Circuit(netlist, values, opamp, 2j * math.pi * f, False).voltages(source=1)(netlist[2])
            print(f"transfer;{f:g};{h.real:.12g};{h.imag:.12g}")
            for node in [amp[0] for amp in netlist[1] if amp[0] != netlist[2]]:
                h = Circuit(netlist, values, opamp, 2j * math.pi * f, False).voltages(source=1)(node)
                print(f"inner;{node};{f:g};{h.real:.12g};{h.imag:.12g}")
        for f in (1, 50, 1e3):
            print(f"noise;{f:g};{noise(netlist, values, opamp or {'voltage-noise': 0, 'noise-corner': 0, 'current-noise': 0, 'current-noise-corner': 0}, f, 298.15):.12g}")
        for node in sorted({netlist[2]} | {amp[0] for amp in netlist[1]}):
            gain, own = dc(netlist, values, opamp, node)
            print(f"dc;{'out' if node == netlist[2] else node};{gain:.12g};{own:.12g}")


main(sys.argv[1])
