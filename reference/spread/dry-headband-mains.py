# what:    100,000 builds of ../worked/dry-headband.json: the percentiles of what the mains makes of them, each lead's coupling drawn by itself
# run:     python3 dry-headband-mains.py [BUILDS]      (plain Python; prints the rows of dry-headband.dat that it makes)
# source:  the model in words, as dry-headband.py beside this file: nodal analysis of the input network build by build, solved by elimination
#          with pivots; written apart from src/FrontEnd/Spread, with which it shares no code and no random numbers
# draws:   as there
import cmath
import json
import math
import os
import random
import sys

N = int(sys.argv[1]) if len(sys.argv) > 1 else 100_000
design = json.load(open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "worked", "dry-headband.json")))["design"]
mains, electrodes, network, amp, drive = (design[key] for key in ("mains", "electrodes", "input", "amplifier", "ground_drive"))
gain2, lowpass = design["stages"]
fs, (f1, f2) = design["converter"]["rate"], design["band"]
E, B, A1, A2, R1, R2, G1, D = range(8)   # nodes against the amplifier's common; the mains stand at earth as currents
RESISTORS, CAPACITORS = ("RG", "Rc", "Rf", "Rg", "R1", "R2"), ("Cc", "Cf", "C1", "C2")
STRAY = ("body_to_mains", "body_to_earth", "amplifier_to_earth", "amplifier_to_mains", "lead_to_mains (active)", "lead_to_mains (reference)")


def draw(source):
    about = lambda tolerance: source.uniform(1 - tolerance, 1 + tolerance)
    part = {name: about(network["tolerance_R"]) for name in ("RA", "RR")}
    part.update({name: about(network["tolerance_C"]) for name in ("CA", "CR")})
    part.update({name: about(0.01) for name in RESISTORS})
    part.update({name: about(0.05) for name in CAPACITORS})
    part["cmrr"] = (10 ** (6 / 20)) ** source.uniform(-1, 1)
    part["gain"] = about(0.005)
    part.update({name: about(electrodes["mismatch"] / 2) for name in ("active", "reference", "ground")})
    part.update({name: 2 ** source.uniform(-1, 1) for name in STRAY})
    part["voltage"] = about(0.1)
    return part


NOMINAL = {name: 1.0 for name in draw(random.Random(1))}


def impedance(electrode, s):
    return electrode["Rs"] + electrode["Rd"] / (1 + s * electrode["Rd"] * electrode["Cd"])


def solve(rows, sides):
    """The unknowns of every right side, by elimination with the largest pivot of each column."""
    n = len(rows)
    a = [rows[i] + [side[i] for side in sides] for i in range(n)]
    for column in range(n):
        best = max(range(column, n), key=lambda i: abs(a[i][column]))
        a[column], a[best] = a[best], a[column]
        pivot = a[column]
        for i in range(column + 1, n):
            if a[i][column] != 0:
                factor = a[i][column] / pivot[column]
                a[i] = [x - factor * y for x, y in zip(a[i], pivot)]
    result = []
    for side in range(len(sides)):
        x = [0j] * n
        for i in reversed(range(n)):
            x[i] = (a[i][n + side] - sum(a[i][j] * x[j] for j in range(i + 1, n))) / a[i][i]
        result.append(x)
    return result


def front(p, f, leads=True):
    """Conductances of the input network at a frequency, the couplings of the mains and the active electrode's admittance."""
    s = 2j * math.pi * f
    couple = {name: mains[name.split(" ")[0]] * p[name] * (leads or not name.startswith("lead")) for name in STRAY}
    y = [[0j] * 8 for _ in range(8)]

    def add(a, b, value):
        y[a][a] += value
        if b is not None:
            y[b][b] += value
            y[a][b] -= value
            y[b][a] -= value

    inputs, own = design["reference_inputs"], 1 / amp["Rcm"] + s * amp["Ccm"]
    active = 1 / (p["active"] * impedance(electrodes["active"], s))
    add(B, E, s * (couple["body_to_mains"] + couple["body_to_earth"]))
    add(E, None, s * (couple["amplifier_to_earth"] + couple["amplifier_to_mains"]))
    for lead, name in ((A1, "active"), (R1, "reference")):
        add(lead, E, s * couple[f"lead_to_mains ({name})"])
        add(lead, None, s * network["lead_to_common"])
    add(B, A1, active)
    add(B, R1, 1 / (p["reference"] * impedance(electrodes["reference"], s)))
    add(B, G1, 1 / (p["ground"] * impedance(electrodes["ground"], s)))
    add(A1, A2, 1 / (network["series_R"] * p["RA"]))
    add(R1, R2, 1 / (network["series_R"] * p["RR"]))
    add(A2, None, s * network["shunt_C"] * p["CA"] + own)
    add(R2, None, s * network["shunt_C"] * p["CR"] + inputs * own)
    add(A2, R2, s * (network["differential_C"] + amp["Cdm"]) + 1 / amp["Rdm"])
    add(G1, D, 1 / (drive["series_R"] * p["RG"]))
    # The driven node: v(D)/K + (v(A2) + v(R2))/2 = 0 in the place of its current law.
    y[D] = [0j] * 8
    y[D][D] = 1 / drive["dc_gain"] + s / (2 * math.pi * drive["unity_gain_f"])
    y[D][A2] = y[D][R2] = 0.5
    return y, couple, active, s


def volts(y, couple, s):
    """Node voltages that a volt of mains makes: its couplings' currents into earth, body, leads and common."""
    i = [0j] * 8
    i[B] += s * couple["body_to_mains"]
    i[A1] += s * couple["lead_to_mains (active)"]
    i[R1] += s * couple["lead_to_mains (reference)"]
    i[E] -= s * (couple["body_to_mains"] + couple["lead_to_mains (active)"] + couple["lead_to_mains (reference)"] + couple["amplifier_to_mains"])
    return i


def at_input(p, f, share):
    """Worst-case total at the electrodes, and the amplifier's part, the size of H_front: all rms of the mains' share."""
    y, couple, active, s = front(p, f)
    signal = [0j] * 8
    signal[A1] += active
    signal[B] -= active
    v, of_signal = solve(y, [volts(y, couple, s), signal])
    size, scale = abs(of_signal[A2] - of_signal[R2]), mains["voltage"] * p["voltage"] * share
    rejection = 10 ** (amp["cmrr_db"] / 20) * p["cmrr"] / math.sqrt(1 + (f / amp["cmrr_corner"]) ** 2)
    leak = scale * abs((v[A2] + v[R2]) / 2) / rejection / size
    loop = 2 * math.pi * f * mains["field"] * share * mains["loop_area"]
    return scale * abs(v[A2] - v[R2]) / size + leak + loop, leak, size, scale


def path(p, f, size):
    """Size of the transfer from the electrodes to the converter."""
    s = 2j * math.pi * f
    a = 1 / (1e-7 + 1j * f / gain2["opamp"]["gbw"])
    rc, cc = gain2["coupling_R"] * p["Rc"], gain2["coupling_C"] * p["Cc"]
    rf, rg, cf = gain2["Rf"] * p["Rf"], gain2["Rg"] * p["Rg"], gain2["Cf"] * p["Cf"]
    zf = rf / (1 + s * rf * cf)
    h1 = s * cc * rc / (1 + s * rc * cc) * a / (1 + a * rg / (rg + zf))
    a = 1 / (1e-7 + 1j * f / lowpass["opamp"]["gbw"])
    follow = a / (1 + a)
    r1, r2, c1, c2 = lowpass["R1"] * p["R1"], lowpass["R2"] * p["R2"], lowpass["C1"] * p["C1"], lowpass["C2"] * p["C2"]
    xx, xp, px, pp = 1 / r1 + 1 / r2 + s * c1, -(1 / r2 + s * c1 * follow), -1 / r2, 1 / r2 + s * c2
    h2 = -px / (xx * pp - xp * px) * follow / r1
    return size * amp["gain"] * p["gain"] * abs(h1 * h2 / (1 + 1j * f / amp["bandwidth"]))


def digital(f):
    z = cmath.exp(-2j * math.pi * f / fs)
    h = 1
    for b0, b1, b2, a0, a1, a2 in design["digital_sos"]:
        h *= (b0 + b1 * z + b2 * z * z) / (a0 + a1 * z + a2 * z * z)
    return abs(h)


def lands(f):
    return abs(f - fs * round(f / fs))


def build(p):
    f0, centre, recorded = mains["frequency"], math.sqrt(f1 * f2), 0
    mid = path(p, centre, at_input(p, centre, 1)[2])
    total, leak, size, scale = at_input(p, f0, mains["harmonics"][0])
    y, couple, _, s = front(p, f0, leads=False)
    (v,) = solve(y, [volts(y, couple, s)])
    cmrr = 20 * math.log10(scale * abs(v[B]) / (scale * abs(v[A2] - v[R2]) / size + leak))
    for h, share in enumerate(mains["harmonics"], 1):
        sides = [h * f0 * (1 + side * mains["deviation"]) for side in (-1, 1)]
        edges = sorted(lands(f) for f in sides)
        if edges[0] <= f2 and f1 <= edges[1]:
            each = []
            for f in sides:
                of_f = at_input(p, f, share)
                each.append(of_f[0] * path(p, f, of_f[2]) / mid * digital(lands(f)))
            recorded += max(each)
    return {"mains.total": total, "mains.system_cmrr": cmrr, "mains.recorded": recorded}


def percentile(values, percent):
    at = percent / 100 * (len(values) - 1)
    low = min(int(at), len(values) - 2)
    return values[low] + (at - low) * (values[low + 1] - values[low])


def main():
    source = random.Random(1)
    rows = [build(draw(source)) for _ in range(N)]
    one = build(NOMINAL)
    for name in one:
        values = sorted(row[name] for row in rows)
        print(name + "|" + "|".join(f"{value:.6e}" for value in (one[name], *(percentile(values, p) for p in (1, 5, 25, 50, 75, 95, 99)))))


main()
