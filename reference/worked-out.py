# what:    works out every figure of status "computed" in the tables of this folder a second time, in plain Python
# run:     python3 worked-out.py            (prints each figure, and ends with the number that agree and that do not)
# source:  the formulas as written in the remarks of src/FrontEnd/Textbook, from the physics and not from that code
import cmath
import glob
import math
import os
import re

K, EPSILON0 = 1.380649e-23, 8.8541878128e-12
PI, SQRT, LOG10, LN = math.pi, math.sqrt, math.log10, math.log
PREFIX = {"": 0, "a": -18, "f": -15, "p": -12, "n": -9, "µ": -6, "m": -3, "k": 3, "M": 6, "G": 9}
BASE = ["V/√Hz", "A/√Hz", "V²/Hz", "bit/s", "V/s", "Hz", "Ω", "F", "V", "A", "s", "T", "K", "dB", "bit", "C", "°", "1", "W"]


def si(text):
    """A number with its unit, in SI units."""
    if text == "earth":
        return None
    number, _, unit = text.partition(" ")
    value = float(number)
    special = {"": 1, "%": 1e-2, "cm²": 1e-4, "mm": 1e-3, "mAh": 3.6, "h": 3600, "µV²/Hz": 1e-12, "dBV": 1, "J/K": 1, "ppm": 1e-6}
    if unit in special:
        return value * special[unit]
    for base in BASE:
        if unit.endswith(base) and unit[: -len(base)] in PREFIX:
            return value * 10.0 ** PREFIX[unit[: -len(base)]]
    raise ValueError(text)


def db(x):
    return 20 * LOG10(abs(x))


def integral_re(R, C, a, b):
    return (math.atan(2 * PI * b * R * C) - math.atan(2 * PI * a * R * C)) / (2 * PI * C)


def z(r, f, c):
    return r / (1 + 2j * PI * f * r * c)


def power(a, b, alpha):
    return LN(b / a) if alpha == 1 else (b ** (1 - alpha) - a ** (1 - alpha)) / (1 - alpha)


def excess_constant(i):
    return i["rms"] ** 2 / power(i["f1"], i["f2"], i["slope"])


def input_impedance(i):
    return 1 / ((1 / i["Rin"] if "Rin" in i else 0) + 2j * PI * i["f"] * i["Cin"])


def ground_current(i):
    w = 2 * PI * i["f"]
    vb = i["V"] * i["Cp"] / (i["Cp"] + i["Cb"])
    loop = 1 / (1j * w * (i["Cp"] + i["Cb"])) + i["Zg"]
    if i["Ciso"] is None:
        return abs(vb / loop)
    va = i["V"] * i["Cap"] / (i["Cap"] + i["Ciso"])
    return abs((vb - va) / (loop + 1 / (1j * w * (i["Cap"] + i["Ciso"]))))


def poles(i):
    c = i["Cb"] if i["Ciso"] is None else i["Cb"] * i["Ciso"] / (i["Cb"] + i["Ciso"])
    return [1 / (2 * PI * (i["Ro"] + i["Re"]) * c), 1 / (2 * PI * i["Re"] * i["Cin"]), i["f2"]]


def loop(i, f):
    t = i["fu"] / (1j * f)
    for p in poles(i):
        t /= 1 + 1j * f / p
    return t


def crossing(i):
    a, b = 1e-3, i["fu"] * 1.001
    for _ in range(200):
        m = SQRT(a * b)
        a, b = (m, b) if abs(loop(i, m)) > 1 else (a, m)
    return a


def margin(i):
    f = crossing(i)
    return 180 - (90 + sum(math.degrees(math.atan(f / p)) for p in poles(i)))


def lands(f, fs):
    r = f % fs
    return min(r, fs - r)


def sinc(f, fd, k, m=1024):
    x = PI * f / fd
    return k * db(math.sin(x) / (m * math.sin(x / m)))


def notch_tau(f0, q, fs):
    b = 1 / (1 + math.tan(PI * f0 / q / fs))
    return -1 / (fs * LN(SQRT(2 * b - 1)))


def average(n):
    return [[(1 if j == k else 0) - 1 / n for j in range(n)] for k in (0, 1)]


def montage_noise(weights):
    return SQRT(sum(w * w for w in weights))


FORMULAS = {
    "thermal-density": lambda i: SQRT(4 * K * i["T"] * i["R"]),
    "thermal": lambda i: SQRT(4 * K * i["T"] * i["R"] * (i["f2"] - i["f1"])),
    "thermal-peak-to-peak": lambda i: 6.6 * SQRT(4 * K * i["T"] * i["R"] * (i["f2"] - i["f1"])),
    "thermal-parallel-rc": lambda i: SQRT(4 * K * i["T"] * integral_re(i["R"], i["C"], i["f1"], i["f2"])),
    "capacitor-limit": lambda i: SQRT(K * i["T"] / i["C"]),
    "excess-constant": excess_constant,
    "excess": lambda i: SQRT(i["K"] * power(i["f1"], i["f2"], i["slope"])),
    "noise-free-measured": lambda i: LN(i["span"] / i["pp"]) / LN(2),
    "gain-one-resistor": lambda i: 1 + i["Rf"] / i["RG"],
    "four-resistors": lambda i: db((1 + i["G"]) / (4 * i["tol"])),
    "excess-at-1-hz": lambda i: SQRT(excess_constant(i)),
    "excess-from-rms": lambda i: SQRT(excess_constant(i) * power(i["g1"], i["g2"], i["slope"])),
    "current-density": lambda i: i["i"] * i["R"],
    "current": lambda i: i["i"] * i["R"] * SQRT(i["f2"] - i["f1"]),
    "amplifier": lambda i: i["e"] * SQRT(i["f2"] - i["f1"] + (i["fc"] * LN(i["f2"] / i["f1"]) if i["fc"] else 0)),
    "electrode-pair": lambda i: SQRT(2 * 4 * K * i["T"] * integral_re(i["R"], i["C"], i["f1"], i["f2"])),
    "current-electrode-pair": lambda i: i["i"] * SQRT(2 * i["R"] * integral_re(i["R"], i["C"], i["f1"], i["f2"])),
    "referred": lambda i: i["σ"] / i["G"],
    "together": lambda i: SQRT(sum(p * p for p in i["parts"])),
    "sum": lambda i: sum(i["parts"]),
    "peak-to-peak": lambda i: 6.6 * i["σ"],
    "sweeps": lambda i: (i["S"] * i["σ"] / i["A"]) ** 2,
    "montage-referential": lambda i: SQRT(i["e"] ** 2 + i["er"] ** 2),
    "montage-average": lambda i: montage_noise(average(int(i["N"]))[0]),
    "montage-others": lambda i: montage_noise([1] + [1 / i["N"]] * int(i["N"])),
    "montage-correlation": lambda i: i["er"] ** 2 / (i["e"] ** 2 + i["er"] ** 2),
    "montage-average-correlation": lambda i: -1 / (i["N"] - 1),
    "electrode-size": lambda i: abs(z(i["R"], i["f"], i["C"])),
    "electrode-real": lambda i: z(i["R"], i["f"], i["C"]).real,
    "electrode-angle": lambda i: math.degrees(cmath.phase(z(i["R"], i["f"], i["C"]))),
    "plate-capacitance": lambda i: EPSILON0 * i["εr"] * i["A"] / i["d"],
    "plate-reactance": lambda i: 1 / (2 * PI * i["f"] * EPSILON0 * i["εr"] * i["A"] / i["d"]),
    "plate-gain": lambda i: 1 / (1 + i["Cin"] / (EPSILON0 * i["εr"] * i["A"] / i["d"])),
    "contact-reading": lambda i: i["I"] * i["R"],
    "displacement-current": lambda i: 2 * PI * i["f"] * i["Cp"] * i["V"],
    "displacement-current-pp": lambda i: 2 * SQRT(2) * 2 * PI * i["f"] * i["Cp"] * i["V"],
    "body-voltage": lambda i: i["V"] * i["Cp"] / (i["Cp"] + i["Cb"]),
    "ground-current": ground_current,
    "common-mode": lambda i: ground_current(i) * i["Zg"],
    "lead-voltage": lambda i: i["i"] * i["dZ"],
    "loop-voltage": lambda i: 2 * PI * i["f"] * i["B"] * i["A"],
    "harmonic-growth": lambda i: i["share"] * i["h"] ** 2,
    "loop-gain": lambda i: db(i["fu"] / i["f"]),
    "driven-pole": lambda i: poles(i)[0],
    "driven-crossing": crossing,
    "driven-margin": margin,
    "driven-common-mode": lambda i: i["i"] * i["R"] / (1 + i["T"]),
    "ohm": lambda i: i["i"] * i["R"],
    "divider-voltage": lambda i: i["V"] * i["dZ"] / abs(input_impedance(i)),
    "residue": lambda i: i["V"] / 10 ** (i["CMRR"] / 20),
    "rejection-needed": lambda i: db(i["V"] / i["residue"]),
    "divider": lambda i: db(input_impedance(i) / i["dZ"]),
    "divider-bias": lambda i: db(input_impedance(i) / i["dZ"]),
    "divider-electrode": lambda i: db(input_impedance(i) / z(i["R"], i["f"], i["C"])),
    "divider-bias-exact": lambda i: -db(input_impedance(i) / (input_impedance(i) + i["Z1"]) - input_impedance(i) / (input_impedance(i) + i["Z2"])),
    "shared-reference": lambda i: -db(1 / (1 + 2j * PI * i["f"] * i["Cin"] * i["R"]) - 1 / (1 + 2j * PI * i["f"] * i["N"] * i["Cin"] * i["R"])),
    "low-pass-mismatch": lambda i: db(i["f1"] / i["f"] / i["mismatch"]),
    "high-pass-mismatch": lambda i: db(i["f"] / i["f1"] / i["mismatch"]),
    "rejections-worst": lambda i: -db(sum(10 ** (-p / 20) for p in i["parts"])),
    "rejections-root": lambda i: -db(SQRT(sum(10 ** (-p / 10) for p in i["parts"]))),
    "skew-rejection": lambda i: -db(1 - cmath.exp(2j * PI * i["f"] * i["Δt"])),
    "first-stage-limit": lambda i: (i["Vs"] / 2 - i["h"]) / (i["Voff"] + i["Vsig"]),
    "inner-node-limit": lambda i: 2 * min(i["Vs"] - i["h"] - i["Vcm"], i["Vcm"] - i["h"]) / i["Vd"],
    "rc-corner": lambda i: 1 / (2 * PI * i["R"] * i["C"]),
    "settling": lambda i: i["R"] * i["C"] * LN(i["V0"] / i["Vtol"]),
    "supply-ripple": lambda i: i["V"] / 10 ** (i["PSRR"] / 20),
    "bandwidth": lambda i: i["GBW"] / i["G"],
    "slew": lambda i: 2 * PI * i["f"] * i["V"],
    "ideal-ratio": lambda i: db(2 ** i["N"] * SQRT(1.5)),
    "step": lambda i: i["FS"] / 2 ** i["N"],
    "quantisation": lambda i: i["FS"] / 2 ** i["N"] / SQRT(12),
    "noise-free-bits": lambda i: LN(i["span"] / (6.6 * i["rms"])) / LN(2),
    "effective-bits": lambda i: LN(i["span"] / i["rms"]) / LN(2),
    "averaging-gain": lambda i: 10 * LOG10(i["M"]),
    "data-rate": lambda i: i["N"] * i["fs"] * i["b"] * (1 + i["overhead"]),
    "battery": lambda i: i["Q"] * i["share"] / i["I"],
    "lands-at": lambda i: lands(i["f"], i["fs"]),
    "butterworth": lambda i: 10 * LOG10(1 + (i["f"] / i["fc"]) ** (2 * i["n"])),
    "butterworth-order": lambda i: LOG10(10 ** (i["A"] / 10) - 1) / (2 * LOG10(i["fs"] / i["fc"])),
    "fold-frequency": lambda i: i["fs"] - i["f2"],
    "sinc": lambda i: sinc(i["f"], i["fd"], i["K"]),
    "notch-time": lambda i: notch_tau(i["f0"], i["Q"], i["fs"]),
    "notch-ring": lambda i: notch_tau(i["f0"], i["Q"], i["fs"]) * LN(1 / i["share"]),
    "notch-attenuation": lambda i: 10 * LOG10(1 + 1 / (i["Q"] * (i["f"] / i["f0"] - i["f0"] / i["f"])) ** 2),
    "series-resistance": lambda i: i["V"] / i["I"],
    "fault-current": lambda i: i["V"] / i["R"],
    "decibels-voltage": lambda i: db(i["ratio"]),
}


WORDS = ("decade", "code-capacitance", "code-resistance")  # lists and codes: a rule applied, no arithmetic


def inputs(text):
    pairs = [pair.split("=", 1) for pair in text.split(";") if pair.strip()]
    return {name.strip(): [si(part) for part in value.strip().split(", ")] if name.strip() == "parts" else si(value.strip()) for name, value in pairs}


def main():
    agree = part = 0
    for path in sorted(glob.glob(os.path.join(os.path.dirname(os.path.abspath(__file__)), "*", "*.txt"))):
        for line in open(path, encoding="utf-8"):
            if line.startswith("#"):
                continue
            row = [cell.strip() for cell in line.split("|")]
            if row[9] != "computed" or row[1] in WORDS:
                continue
            value = FORMULAS[row[1]](inputs(row[2])) / si("1 " + row[4])
            tolerance = float(row[5][1:]) if row[5].startswith("±") else abs(float(row[3])) * float(re.sub(" %", "e-2", row[5]))
            good = abs(value - float(row[3])) <= tolerance
            agree, part = agree + good, part + (not good)
            print(f"{row[0]:20} {row[1]:28} {value:.9g} {row[4]}, table {row[3]}{'' if good else '   DIFFERS'}")
    print(f"{agree} agree, {part} differ")


main()
