# what:    writes fir.csv: windowed and equiripple FIR taps, Kaiser's beta and length
# source:  general-purpose signal library SciPy 1.10.1 (scipy.signal), BSD-3-Clause
# run:     python3 fir.py > fir.csv
import numpy as np
import scipy
import scipy.signal as sg

print("# what:    FIR taps: Kaiser window (beta by the library's formula) and equiripple; Kaiser's beta and length by attenuation and width")
print("# source:  general-purpose signal library SciPy %s (scipy.signal), computed" % scipy.__version__)
print("# status:  computed")
print("# made by: python3 fir.py > fir.csv")
print("# digits:  17 printed; windowed taps to 1e-13, equiripple taps to 1e-5 of the ripple's place (two grids differ)")
print("# licence: BSD-3-Clause (the library); the figures are facts")
print("# columns: kind;rate Hz;length;parameters;taps or values")
w = lambda a: " ".join("%.17g" % v for v in a)
for att in (20, 21, 30, 45, 50, 60, 80, 100):
    n, beta = sg.kaiserord(att, 0.1)
    print(";".join(["kaiser-formula", "2", str(n), "%g 0.1" % att, "%.17g" % beta]))
fs = 250.0
print(";".join(["kaiser-low-pass", "250", "101", "40 50 60", w(sg.firwin(101, 45, window=("kaiser", sg.kaiser_beta(60)), fs=fs, scale=False))]))
print(";".join(["kaiser-high-pass", "250", "251", "2 1 50", w(sg.firwin(251, 1.5, window=("kaiser", sg.kaiser_beta(50)), fs=fs, scale=False, pass_zero=False))]))
print(";".join(["kaiser-band-stop", "250", "151", "45 48 52 55 60", w(sg.firwin(151, [46.5, 53.5], window=("kaiser", sg.kaiser_beta(60)), fs=fs, scale=False))]))
for n in (31, 32, 61):
    print(";".join(["equiripple-low-pass", "250", str(n), "40 50 1 10", w(sg.remez(n, [0, 40, 50, 125], [1, 0], [1, 10], fs=fs, grid_density=128, maxiter=200))]))
print(";".join(["equiripple-band-pass", "250", "51", "5 10 30 40 1 1 1", w(sg.remez(51, [0, 5, 10, 30, 40, 125], [0, 1, 0], [1, 1, 1], fs=fs, grid_density=128, maxiter=200))]))
