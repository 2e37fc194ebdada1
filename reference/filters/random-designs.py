# what:    writes random-designs.csv: 120 filters drawn at random, analogue and digital, all families and shapes, orders to 10, corners down to a thousandth of the rate
# source:  general-purpose signal library SciPy 1.10.1 (scipy.signal), BSD-3-Clause
# run:     python3 random-designs.py > random-designs.csv
# designs.csv goes through a grid with one ripple and one attenuation; here every number is drawn. Poles and zeros are the library's own whole design (iirfilter), not its parts;
# the critically damped family is not in the library and comes from its closed formula through the library's transforms. Responses are products of one root by one root in extended precision.
import numpy as np
import scipy
import scipy.signal as sg

SEED, COUNT = 20261125, 120
FAMILIES = {"butterworth": "butter", "chebyshev": "cheby1", "inverse-chebyshev": "cheby2", "elliptic": "ellip", "bessel": "bessel", "critically-damped": None}
SHAPES = {"low-pass": "lowpass", "high-pass": "highpass", "band-pass": "bandpass", "band-stop": "bandstop"}


def damped(n, shape, corners, rate):
    w = [2 * np.pi * c if rate == 0 else 2 * rate * np.tan(np.pi * c / rate) for c in corners]
    p = -1 / np.sqrt(2 ** (1.0 / n) - 1)
    zpk = (np.array([]), np.full(n, p), (-p) ** n)
    if len(w) == 1:
        zpk = (sg.lp2lp_zpk if shape == "low-pass" else sg.lp2hp_zpk)(*zpk, w[0])
    else:
        zpk = (sg.lp2bp_zpk if shape == "band-pass" else sg.lp2bs_zpk)(*zpk, np.sqrt(w[0] * w[1]), w[1] - w[0])
    return sg.bilinear_zpk(*zpk, rate) if rate else zpk


def design(family, n, shape, corners, rate, ripple, attenuation):
    if family == "critically-damped":
        return damped(n, shape, corners, rate)
    w = corners if rate else [2 * np.pi * c for c in corners]
    args = dict(btype=SHAPES[shape], ftype=FAMILIES[family], output="zpk", analog=rate == 0)
    if rate:
        args["fs"] = rate
    if family in ("chebyshev", "elliptic"):
        args["rp"] = ripple
    if family in ("inverse-chebyshev", "elliptic"):
        args["rs"] = attenuation
    if family == "bessel":
        # the function for this family alone takes the meaning of the corner; digital corners are prewarped as everywhere
        return sg.bessel(n, w if len(w) > 1 else w[0], SHAPES[shape], analog=rate == 0, output="zpk", norm="mag", fs=rate if rate else None)
    return sg.iirfilter(n, w if len(w) > 1 else w[0], **args)


def response(z, p, k, x):
    v = np.clongdouble(k)
    for i in range(max(len(z), len(p))):
        v *= (np.clongdouble(x) - z[i]) if i < len(z) else 1
        v /= (np.clongdouble(x) - p[i]) if i < len(p) else 1
    return complex(v)


def words(values):
    return " ".join("%.17g" % v for v in values)


def main():
    print("# what:    %d filters drawn at random (seed %d) by zeros, poles and response" % (COUNT, SEED))
    print("# source:  general-purpose signal library SciPy %s (scipy.signal), computed" % scipy.__version__)
    print("# status:  computed")
    print("# made by: python3 random-designs.py > random-designs.csv")
    print("# digits:  17 significant; compared: response from roots to 1e-9 of full scale, from sections to 1e-8, poles to 1e-9 of their scale")
    print("# licence: BSD-3-Clause (the library); the figures are facts")
    print("# columns: family;shape;order;corners Hz;rate Hz (0 = analogue);ripple dB;attenuation dB;zeros re im ...;poles re im ...;frequencies Hz;response re im ...")
    draw = np.random.RandomState(SEED)
    flat = lambda a: words([y for v in np.asarray(a, complex) for y in (v.real, v.imag)])
    names, shapes = list(FAMILIES), list(SHAPES)
    for case in range(COUNT):
        # Families, shapes and analogue or digital take turns, so that every combination comes at least twice; the rest is drawn.
        family, shape = names[case % 6], shapes[(case // 6) % 4]
        rate = 0 if (case // 24) % 2 else float(draw.choice([125, 250, 256, 500, 1000, 16000]))
        n = int(draw.randint(1, 11))
        ripple, attenuation = round(draw.uniform(0.05, 3), 3), round(draw.uniform(20, 90), 2)
        base = rate if rate else 1000.0
        corners = [float("%.6g" % (base * 10 ** draw.uniform(-3, np.log10(0.4))))]
        if shape.startswith("band"):
            corners.append(float("%.6g" % (corners[0] * draw.uniform(1.1, 3))))
            if corners[1] > 0.45 * base:
                corners = [float("%.6g" % (c * 0.15)) for c in corners]
        z, p, k = design(family, n, shape, corners, rate, ripple, attenuation)
        f = np.array([0.1 * corners[0], 0.5 * corners[0], 0.95 * corners[0], 1.02 * corners[-1], np.sqrt(corners[0] * corners[-1]), min(2.5 * corners[-1], 0.49 * base)])
        x = np.exp(2j * np.pi * f / rate) if rate else 2j * np.pi * f
        h = [response(z, p, k, point) for point in x]
        print(";".join([family, shape, str(n), words(corners), "%g" % rate, "%g" % ripple, "%g" % attenuation, flat(z), flat(p), words(f), flat(h)]))


main()
