# what:    writes bessel-poles.csv: roots of the reverse Bessel polynomials (delay-normalised poles) and their half-power frequency
# source:  arbitrary-precision library mpmath (BSD-3-Clause), 60 digits
# run:     python3 bessel-poles.py > bessel-poles.csv
import mpmath as mp

mp.mp.dps = 60
print("# what:    poles of the delay-normalised Bessel low-pass, upper half, and the half-power frequency [rad/s]")
print("# source:  arbitrary-precision library mpmath %s, 60 digits, computed" % mp.__version__)
print("# status:  computed")
print("# made by: python3 bessel-poles.py > bessel-poles.csv")
print("# digits:  17 printed; compared to 1e-15 of the largest pole")
print("# licence: BSD-3-Clause (the library); the figures are facts")
print("# columns: order;half-power frequency;poles re im ...")
s = lambda v: mp.nstr(v, 17, min_fixed=0, max_fixed=0)
for n in range(1, 21):
    c = [mp.factorial(2 * n - k) / (mp.factorial(k) * mp.factorial(n - k) * mp.mpf(2) ** (n - k)) for k in range(n, -1, -1)]
    r = mp.polyroots(c, maxsteps=500, extraprec=400)
    up = sorted([x for x in r if x.imag > -mp.mpf(10) ** -30], key=lambda x: -x.imag)
    f = lambda w: abs(mp.polyval(c, 1j * w) / c[-1]) ** 2 - 2
    w = mp.findroot(f, (0.5, 2.5 * mp.sqrt(n)), solver="anderson", tol=1e-40)
    print(";".join([str(n), s(w), " ".join(s(x) for p in up for x in (p.real, p.imag if abs(p.imag) > 1e-30 else mp.mpf(0)))]))
