"""B-spline values by scipy.interpolate.BSpline (an implementation independent of Lines).

Run:  python3 bspline.py > bspline-scipy.csv      (made with scipy 1.10.1, numpy 1.24.2)
Knots and poles follow from the formulas below; the tests repeat them. One patch x(u,v), bicubic, 9 x 7 poles.
"""
import numpy as np
from scipy.interpolate import BSpline

ku = np.array([0, 0, 0, 0, 0.1, 0.25, 0.4, 0.55, 0.8, 1, 1, 1, 1.0])
kv = np.array([0, 0, 0, 0, 0.3, 0.35, 0.7, 1, 1, 1, 1.0])
net = np.array([[[i / 8 * 5 + 0.1 * np.sin(j), 0.4 * np.sin(0.7 * i) * np.sqrt(j), 0.06 * j * j + 0.02 * np.cos(i * j)] for j in range(7)] for i in range(9)])

def at(u, v, du, dv):
    rows = BSpline(kv, np.moveaxis(net, 1, 0), 3)(v, nu=dv)
    return BSpline(ku, rows, 3)(u, nu=du)

print("# B-spline surface by scipy.interpolate.BSpline 1.10.1; made by bspline.py beside this file")
print("u,v,du,dv,x,y,z")
rng = np.random.default_rng(20)
for u, v in [(0, 0), (1, 1), (0.25, 0.35), (0.8, 0.7)] + [tuple(np.round(rng.random(2), 6)) for _ in range(20)]:
    for du, dv in [(0, 0), (1, 0), (0, 1), (2, 0), (1, 1), (0, 2)]:
        p = at(u, v, du, dv)
        print(f"{u:.6f},{v:.6f},{du},{dv},{p[0]:.15g},{p[1]:.15g},{p[2]:.15g}")
