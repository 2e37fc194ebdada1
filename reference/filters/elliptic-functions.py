# what:    writes elliptic-functions.csv: sn(uK, k), cd(uK, k) and K(k) at complex arguments
# source:  arbitrary-precision library mpmath 1.3.0 (BSD-3-Clause), 40 digits
# run:     python3 elliptic-functions.py > elliptic-functions.csv
import mpmath as mp

mp.mp.dps = 40
print("# what:    Jacobi's elliptic functions sn(uK, k), cd(uK, k) and the quarter period K(k); k' given as well, k = sqrt(1 - k'^2)")
print("# source:  arbitrary-precision library mpmath %s, 40 digits, computed" % mp.__version__)
print("# status:  computed")
print("# made by: python3 elliptic-functions.py > elliptic-functions.csv")
print("# digits:  17 printed; compared to 1e-14 of the value")
print("# licence: BSD-3-Clause (the library); the figures are facts")
print("# columns: k;k';u re;u im;sn re;sn im;cd re;cd im;K")
s = lambda v: mp.nstr(v, 17, min_fixed=0, max_fixed=0)
for name in ["0.001", "0.1", "0.5", "0.9", "0.99", "0.9999", "c0.001", "c0.000001"]:
    if name[0] == "c":
        kc = mp.mpf(name[1:])
        k = mp.sqrt(1 - kc * kc)
    else:
        k = mp.mpf(name)
        kc = mp.sqrt(1 - k * k)
    K = mp.ellipk(k * k)
    for ur, ui in [("0.1", "0"), ("0.5", "0"), ("0.95", "0"), ("0.25", "0.05"), ("0.75", "-0.1"), ("0", "0.1")]:
        u = mp.mpc(ur, ui)
        sn = mp.ellipfun("sn", u * K, m=k * k)
        cd = mp.ellipfun("cd", u * K, m=k * k)
        sn, cd = mp.mpc(sn), mp.mpc(cd)
        print(";".join([s(k), s(kc), ur, ui, s(sn.real), s(sn.imag), s(cd.real), s(cd.imag), s(K)]))
