# what:    100,000 builds of ../worked/dry-headband.json: the percentiles of eight figures, and the time they take
# run:     /usr/bin/python3 dry-headband.py [BUILDS] > dry-headband.dat      (needs NumPy; any Python that has it will do)
# source:  the model in words: nodal analysis of the input network build by build, the stages by their circuit laws, integrals by Gauss-Legendre
#          rules in log f; written apart from src/FrontEnd/Spread, with which it shares no code, no interpolation and no random numbers
# draws:   as `frontend spread` without ranges on cards: resistors and capacitors uniform within tolerance, CMRR +-6 dB evenly in dB, gain +-0.5 %,
#          voltage noise +-20 %, each electrode 1 +- m/2, stray capacitances over 2 to times 2 evenly in the logarithm, each lead's by itself, mains voltage +-10 %
import json
import os
import sys
import time

import numpy as np

K = 1.380649e-23
N = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
CHUNK = 20_000
design = json.load(open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "worked", "dry-headband.json")))["design"]
mains, electrodes, network, amp, drive = (design[key] for key in ("mains", "electrodes", "input", "amplifier", "ground_drive"))
gain2, lowpass = design["stages"]
converter = design["converter"]
fs, (f1, f2) = converter["rate"], design["band"]
board, skin = 4 * K * design["board_temperature"], 4 * K * design["skin_temperature"]

# Not in the file: the program's defaults for what the worked design leaves open.
HALF_RAIL, MARGIN, DRIVE_MARGIN, LARGEST = 1.5, 0.1, 0.05, 2e-3
R_TOLERANCE, C_TOLERANCE = 0.01, 0.05
E, B, A1, A2, R1, R2, G1, D = range(8)   # nodes against the amplifier's common; the mains stand at earth as currents


def draw(random, n):
    part = {}

    def uniform(name, tolerance):
        part[name] = random.uniform(1 - tolerance, 1 + tolerance, n)

    def logarithmic(name, factor):
        part[name] = factor ** random.uniform(-1, 1, n)

    for name in ("RA", "RR"):
        uniform(name, network["tolerance_R"])
    for name in ("CA", "CR"):
        uniform(name, network["tolerance_C"])
    for name in ("RG", "Rc", "Rf", "Rg", "R1", "R2"):
        uniform(name, R_TOLERANCE)
    for name in ("Cc", "Cf", "C1", "C2"):
        uniform(name, C_TOLERANCE)
    logarithmic("cmrr", 10 ** (6 / 20))
    uniform("gain", 0.005)
    uniform("noise", 0.2)
    for name in ("active", "reference", "ground"):
        uniform(name, electrodes["mismatch"] / 2)
    for name in ("body_to_mains", "body_to_earth", "amplifier_to_earth", "amplifier_to_mains", "active_to_mains", "reference_to_mains"):
        logarithmic(name, 2)
    uniform("voltage", 0.1)
    return part


def impedance(electrode, w):
    return electrode["Rs"] + electrode["Rd"] / (1 + 1j * w * electrode["Rd"] * electrode["Cd"])


class Front:
    """The input network of every build at one frequency (a number, or one for each build)."""

    def __init__(self, p, f, leads=True, nominal=False):
        n = p["RA"].size
        w = 2 * np.pi * np.broadcast_to(f, n)
        one = np.ones(n)
        electrode = {name: one if nominal else p[name] for name in ("active", "reference", "ground")}
        stray = {name: mains[name] * (one if nominal else p[name]) for name in ("body_to_mains", "body_to_earth", "amplifier_to_earth", "amplifier_to_mains")}
        for name in ("active_to_mains", "reference_to_mains"):
            stray[name] = mains["lead_to_mains"] * (one if nominal else p[name]) * (1 if leads else 0)
        self.stray, self.w = stray, w
        z = {name: electrode[name] * impedance(electrodes[name], w) for name in electrode}
        self.re = {name: z[name].real for name in z}
        self.ya, self.yr, self.yg = 1 / z["active"], 1 / z["reference"], 1 / z["ground"]
        y = np.zeros((n, 8, 8), complex)

        def add(a, b, value):
            for at in (a, b):
                if at is not None:
                    y[:, at, at] += value
            if a is not None and b is not None:
                y[:, a, b] -= value
                y[:, b, a] -= value

        jw, inputs = 1j * w, design["reference_inputs"]
        add(B, E, jw * (stray["body_to_mains"] + stray["body_to_earth"]))
        add(E, None, jw * (stray["amplifier_to_earth"] + stray["amplifier_to_mains"]))
        for lead, name in ((A1, "active_to_mains"), (R1, "reference_to_mains")):
            add(lead, E, jw * stray[name])
            add(lead, None, jw * network["lead_to_common"])
        add(B, A1, self.ya)
        add(B, R1, self.yr)
        add(B, G1, self.yg)
        self.ra, self.rr, self.rg = network["series_R"] * p["RA"], network["series_R"] * p["RR"], drive["series_R"] * p["RG"]
        add(A1, A2, 1 / self.ra)
        add(R1, R2, 1 / self.rr)
        add(A2, None, jw * network["shunt_C"] * p["CA"] + 1 / amp["Rcm"] + jw * amp["Ccm"])
        add(R2, None, jw * network["shunt_C"] * p["CR"] + inputs * (1 / amp["Rcm"] + jw * amp["Ccm"]))
        add(A2, R2, jw * (network["differential_C"] + amp["Cdm"]) + 1 / amp["Rdm"])
        add(G1, D, 1 / self.rg)
        # The driven node: v(D)/K + (v(A2) + v(R2))/2 = 0 in the place of its current law.
        self.k = 1 / (1 / drive["dc_gain"] + 1j * w / (2 * np.pi * drive["unity_gain_f"]))
        y[:, D, :] = 0
        y[:, D, D] = 1 / self.k
        y[:, D, A2] = y[:, D, R2] = 0.5
        self.y = y

    def adjoint(self, *outputs):
        rhs = np.zeros((8, len(outputs)))
        for column, weights in enumerate(outputs):
            for node, weight in weights.items():
                rhs[node, column] = weight
        x = np.linalg.solve(np.swapaxes(self.y, 1, 2), np.broadcast_to(rhs, (len(self.y),) + rhs.shape))
        return [x[:, :, column] for column in range(len(outputs))]

    def loop(self):
        rhs = np.zeros((8, 1))
        rhs[D] = 1
        v = np.linalg.solve(self.y, np.broadcast_to(rhs, (len(self.y),) + rhs.shape))[:, :, 0]
        return self.k * 0.5 * (v[:, A2] + v[:, R2]) / v[:, D]

    def coupled(self, x, leads=True):
        """What a volt of mains does to an output, from its transfers x."""
        current = self.stray["body_to_mains"] * (x[:, B] - x[:, E]) - self.stray["amplifier_to_mains"] * x[:, E]
        if leads:
            current = current + self.stray["active_to_mains"] * (x[:, A1] - x[:, E]) + self.stray["reference_to_mains"] * (x[:, R1] - x[:, E])
        return np.abs(1j * self.w * current)


DIFFERENCE, MEAN, BODY, DRIVEN = {A2: 1, R2: -1}, {A2: 0.5, R2: 0.5}, {B: 1}, {D: 1}


def amplifier(p, f):
    return amp["gain"] * p["gain"] / (1 + 1j * f / amp["bandwidth"])


def stages(p, f):
    """Transfer of the two stages and their own noise density at the converter."""
    w = 2 * np.pi * f
    s = 1j * w
    flicker = lambda op, kind: 1 + op[kind + "_corner"] / f
    op = gain2["opamp"]
    a = 1 / (1e-7 + 1j * f / op["gbw"])
    rc, cc, rf, rg, cf = gain2["coupling_R"] * p["Rc"], gain2["coupling_C"] * p["Cc"], gain2["Rf"] * p["Rf"], gain2["Rg"] * p["Rg"], gain2["Cf"] * p["Cf"]
    zf = rf / (1 + s * rf * cf)
    closed = a / (1 + a * rg / (rg + zf))
    zp, zm = rc / (1 + s * rc * cc), rg * zf / (rg + zf)
    h1 = s * cc * zp * closed
    current = op["in"] ** 2 * flicker(op, "in")
    own = np.abs(closed) ** 2 * (op["en"] ** 2 * flicker(op, "en") + np.abs(zp) ** 2 * (board / rc + current) + np.abs(zm) ** 2 * (board / rg + board / rf + current))
    op = lowpass["opamp"]
    a = 1 / (1e-7 + 1j * f / op["gbw"])
    follow = a / (1 + a)
    r1, r2, c1, c2 = lowpass["R1"] * p["R1"], lowpass["R2"] * p["R2"], lowpass["C1"] * p["C1"], lowpass["C2"] * p["C2"]
    # (1/r1 + 1/r2 + s c1) X - (1/r2 + s c1 follow) P = iX;  -X/r2 + (1/r2 + s c2) P = iP
    xx, xp, px, pp = 1 / r1 + 1 / r2 + s * c1, -(1 / r2 + s * c1 * follow), -1 / r2, 1 / r2 + s * c2
    det = xx * pp - xp * px
    from_x, from_p = -px / det * follow, xx / det * follow
    h2 = from_x / r1
    en = np.abs(follow + from_x * s * c1 * follow) ** 2 * op["en"] ** 2 * flicker(op, "en")
    own = own * np.abs(h2) ** 2 + np.abs(from_x) ** 2 * board / r1 + np.abs(from_p - from_x) ** 2 * board / r2 + np.abs(from_p) ** 2 * op["in"] ** 2 * flicker(op, "in") + en
    return h1 * h2, own


def density(p, f):
    """Noise density at the converter and |path| there."""
    front = Front(p, f)
    (x,) = front.adjoint(DIFFERENCE)
    square = lambda a: np.abs(a) ** 2
    signal = front.ya * (x[:, A1] - x[:, B])
    s = square(signal) * (skin * front.re["active"] + electrodes["active"]["excess_psd_1hz"] / f ** 2)
    s += square(front.yr * (x[:, R1] - x[:, B])) * (skin * front.re["reference"] + electrodes["reference"]["excess_psd_1hz"] / f ** 2)
    s += square(front.yg * (x[:, G1] - x[:, B])) * skin * front.re["ground"]
    s += square(x[:, A1] - x[:, A2]) * board / front.ra + square(x[:, R1] - x[:, R2]) * board / front.rr
    s += square(x[:, G1]) * board / front.rg
    current = amp["in"] ** 2 * (1 + amp["in_corner"] / f)
    s += current * (square(x[:, A2]) + design["reference_inputs"] * square(x[:, R2]))
    s += ((p["noise"] * amp["eni"]) ** 2 + (p["noise"] * amp["eno"] / (amp["gain"] * p["gain"])) ** 2) * (1 + amp["en_corner"] / f)
    h = amplifier(p, f)
    stage, own = stages(p, f)
    return s * np.abs(h * stage) ** 2 + own, np.abs(signal * h * stage)


def digital(f):
    z = np.exp(-2j * np.pi * f / fs)
    h = 1
    for b0, b1, b2, a0, a1, a2 in design["digital_sos"]:
        h = h * (b0 + b1 * z + b2 * z * z) / (a0 + a1 * z + a2 * z * z)
    return abs(h) ** 2


def rule(low, high, points):
    x, weight = np.polynomial.legendre.leggauss(points)
    f = np.exp((x + 1) / 2 * np.log(high / low)) * low
    return f, weight / 2 * np.log(high / low) * f


def lands(f):
    return abs(f - fs * round(f / fs))


def mains_input(p, f, h, front):
    share = mains["harmonics"][h - 1]
    difference, mean, driven = front.adjoint(DIFFERENCE, MEAN, DRIVEN)
    volts = mains["voltage"] * p["voltage"] * share
    front_size = np.abs(front.ya * (difference[:, A1] - difference[:, B]))
    common = volts * front.coupled(mean)
    rejection = 10 ** (amp["cmrr_db"] / 20) * p["cmrr"] / np.sqrt(1 + (f / amp["cmrr_corner"]) ** 2)
    unequal = volts * front.coupled(difference)
    leak = common / rejection / front_size
    loop = 2 * np.pi * f * mains["field"] * share * mains["loop_area"]
    return unequal / front_size + leak + loop, leak, common, unequal, volts * front.coupled(driven), front_size


def builds(p):
    n = p["RA"].size
    centre = np.sqrt(f1 * f2)
    mid = density(p, centre)[1]
    band, weights = rule(f1, f2, 12)
    power, lowest, most = 0, None, 0
    for f, weight in zip(band, weights):
        s, path = density(p, f)
        power = power + weight * digital(f) * s
        most = np.maximum(most, path / np.abs(stages(p, f)[0]))
    # What folds changes little over the band: the zones at its centre, for all of it.
    folded = sum(density(p, k * fs + side * centre)[0] for k in range(1, 9) for side in (-1, 1))
    tail, tail_weights = rule(8.5 * fs, 1e6, 8)
    folded = folded + 2 / fs * sum(weight * density(p, f)[0] for f, weight in zip(tail, tail_weights))
    spread = sum(weight * digital(f) for f, weight in zip(band, weights))
    power = power + spread * (folded + (converter["lsb"] ** 2 / 12 + converter["noise_rms"] ** 2) / (fs / 2))
    result = {"gain.mid": mid, "noise.total": np.sqrt(power) / mid, "alias.fold_attenuation": 20 * np.log10(mid / density(p, fs - f2)[1])}
    f0 = mains["frequency"]
    commons = unequals = drives = nodes = recorded = 0
    for h in range(1, len(mains["harmonics"]) + 1):
        f = h * f0
        front = Front(p, f)
        total, leak, common, unequal, driven, front_size = mains_input(p, f, h, front)
        if h == 1:
            plain = Front(p, f, leads=False)
            difference, body = plain.adjoint(DIFFERENCE, BODY)
            volts = mains["voltage"] * p["voltage"]
            divider = volts * plain.coupled(difference, leads=False) / front_size
            result["mains.total"] = total
            result["mains.system_cmrr"] = 20 * np.log10(volts * plain.coupled(body, leads=False) / (divider + leak))
        commons, unequals, drives = (sum_ + np.sqrt(2) * part for sum_, part in ((commons, common), (unequals, unequal), (drives, driven)))
        nodes = nodes + np.sqrt(2) * total * front_size * np.abs(amplifier(p, f))
        edges = sorted(lands(f * (1 + side * mains["deviation"])) for side in (-1, 1))
        if edges[0] <= f2 and f1 <= edges[1]:
            larger = 0
            for side in (-1, 1):
                g = f * (1 + side * mains["deviation"])
                at, _, _, _, _, size = mains_input(p, g, h, Front(p, g))
                larger = np.maximum(larger, at * size * np.abs(amplifier(p, g) * stages(p, g)[0]) / mid * np.sqrt(digital(lands(g))))
            recorded = recorded + larger
    result["mains.recorded"] = recorded
    # Dc: the second stage is ac-coupled, so that amplifier and driven ground alone see the electrodes' offset. Its noise is 2e-4 of the swing: 85 uV rms.
    dc = Front(p, 1e-10)
    difference, mean, driven = dc.adjoint(DIFFERENCE, MEAN, DRIVEN)
    per_volt = [np.abs(dc.ya * (x[:, A1] - x[:, B])) for x in (difference, mean, driven)]
    g = amp["gain"] * p["gain"]
    noise = 3.3 * 85e-6
    inner = (HALF_RAIL - MARGIN - (most / 2 + 0.5) * LARGEST - commons - g / 2 * unequals - noise / 2) / (per_volt[1] + g / 2 * per_volt[0])
    output = (HALF_RAIL - MARGIN - most * LARGEST - nodes - noise) / (g * per_volt[0])
    ground = (HALF_RAIL - DRIVE_MARGIN - 0.5 * LARGEST - drives) / per_volt[2]
    result["levels.offset_survived"] = np.minimum(np.minimum(inner, output), ground)
    # The loop, body and electrodes at their nominal values: secant steps on ln |T| against ln f.
    x0, x1 = np.full(n, np.log(drive["unity_gain_f"] * 0.95)), np.full(n, np.log(drive["unity_gain_f"]))
    y0 = np.log(np.abs(Front(p, np.exp(x0), nominal=True).loop()))
    for _ in range(4):
        t = Front(p, np.exp(x1), nominal=True).loop()
        y1 = np.log(np.abs(t))
        step = np.where(y1 == y0, 0, y1 * (x1 - x0) / np.where(y1 == y0, 1, y1 - y0))
        x0, y0, x1 = x1, y1, x1 - step
    result["drive.phase_margin"] = 180 + np.degrees(np.angle(Front(p, np.exp(x1), nominal=True).loop()))
    return result


def main():
    random = np.random.default_rng(1)
    start = time.time()
    parts = [builds(draw(random, min(CHUNK, N - at))) for at in range(0, N, CHUNK)]
    seconds = time.time() - start
    one = builds({name: np.ones(1) for name in draw(random, 1)})
    percents = (1, 5, 25, 50, 75, 95, 99)
    print(f"# what:    percentiles of {N} builds of ../worked/dry-headband.json, SI units, decibels and degrees")
    print("# source:  computed by dry-headband.py beside this file, NumPy " + np.__version__)
    print("# status:  computed")
    print("# digits:  7 significant; the percentiles' own uncertainty is their rank's, sqrt(p(1 - p)/builds)")
    print("# licence: the project's own")
    print("figure|nominal|" + "|".join(f"{p} %" for p in percents))
    for name in ("gain.mid", "noise.total", "mains.total", "mains.system_cmrr", "mains.recorded", "levels.offset_survived", "drive.phase_margin", "alias.fold_attenuation"):
        values = np.concatenate([part[name] for part in parts])
        print(name + "|" + "|".join(f"{value:.6e}" for value in (one[name][0], *np.percentile(values, percents))))
    print(f"{N} builds in {seconds:.1f} s, processor time {time.process_time():.1f} s", file=sys.stderr)


main()
