# what:    writes realisation.csv: noise gain of the poles, norms, step figures of sections, worked out by long sums
# source:  NumPy/SciPy 1.10.1 (BSD-3-Clause)
# run:     python3 realisation.py > realisation.csv
import numpy as np
import scipy
import scipy.signal as sg

print("# what:    sums over impulse and step responses of Butterworth sections: noise gain sum h^2 of 1/A, L1, L2 and max|H| from the input, settling to 0.1 % of the step [s], least value of the step response")
print("# source:  general-purpose signal library SciPy %s (scipy.signal), computed by direct filtering of 2^21 samples" % scipy.__version__)
print("# status:  computed")
print("# made by: python3 realisation.py > realisation.csv")
print("# digits:  17 printed; sums to 1e-9, max|H| on a grid to 1e-6, settling to one sample")
print("# licence: BSD-3-Clause (the library); the figures are facts")
print("# columns: shape;order;corner Hz;rate Hz;noise gain of the last section;L1;L2;max|H|;settling s;least of step")
N = 1 << 21
imp = np.zeros(N)
imp[0] = 1
for shape, n, fc, fs in [("highpass", 2, 0.5, 250), ("highpass", 2, 0.5, 1000), ("lowpass", 2, 40, 250), ("lowpass", 4, 1, 500), ("highpass", 4, 1, 250)]:
    sos = sg.butter(n, fc, shape, fs=fs, output="sos")
    g = max(np.sum(sg.lfilter([1], s[3:], imp) ** 2) for s in sos)
    h = sg.sosfilt(sos, imp)
    s = np.cumsum(h)
    fin = 0 if shape == "highpass" else 1
    last = np.max(np.nonzero(np.abs(s - fin) > 1e-3)[0])
    f, H = sg.sosfreqz(sos, worN=np.concatenate([np.linspace(0, np.pi, 100001), np.linspace(0, 20 * np.pi * fc / fs, 200001)]))
    print(";".join([shape, str(n), "%g" % fc, "%g" % fs] + ["%.17g" % v for v in (g, np.sum(np.abs(h)), np.sqrt(np.sum(h * h)), np.max(np.abs(H)), (last + 1) / fs, np.min(s))]))
