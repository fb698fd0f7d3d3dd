"""Finds waves and an equilibrium with numpy and scipy from points on the skin, and prints values and processor times [ms].

Standard input: one line of JSON with "panels" (x, z from the water, source of each), "speeds" [m/s], "columns" (place and outward area of each),
"volume" [m3] and "center" of gravity. Standard output: one line of JSON.
"""
import json
import sys
import time

import numpy
import scipy.integrate
import scipy.optimize

GRAVITY = 9.80665


def timed(work, repeats):
    times = []
    for _ in range(repeats):
        start = time.process_time()
        value = work()
        times.append(1000 * (time.process_time() - start))
    return value, sorted(times)[repeats // 2]


def waves(panels, speed):
    """Michell's integral over the density, an adaptive quadrature over sums of all panels."""
    x, z, source = panels
    k = GRAVITY / speed**2

    def spectrum(t):
        wave = numpy.cosh(t)
        left = source * numpy.exp(k * wave * wave * z)
        return wave**2 * ((left @ numpy.cos(k * wave * x)) ** 2 + (left @ numpy.sin(k * wave * x)) ** 2)

    found, _ = scipy.integrate.quad(spectrum, 0, 4, epsrel=1e-4, epsabs=0, limit=500)
    return 4 * GRAVITY**2 / (numpy.pi * speed**2) * found


def equilibrium(places, areas, volume, center):
    """Level, trim and heel at which columns of water carry the weight."""

    def misfit(at):
        level, trim, heel = at
        s, c, sh, ch = numpy.sin(trim), numpy.cos(trim), numpy.sin(heel), numpy.cos(heel)
        up, aft, across = numpy.array([-s, -sh * c, ch * c]), numpy.array([c, -sh * s, ch * s]), numpy.array([0, ch, sh])
        water = (areas @ up) * numpy.minimum(0, places @ up - level)
        lever = water @ places - water.sum() * center
        return [(water.sum() - volume) / volume, lever @ aft / volume, lever @ across / volume]

    return scipy.optimize.root(misfit, [0.15, 0, 0.02], tol=1e-9).x


given = json.loads(sys.stdin.read())
panels = numpy.array(given["panels"]).T
columns = numpy.array(given["columns"])
places, areas, center = columns[:, :3].copy(), columns[:, 3:].copy(), numpy.array(given["center"])
drag = [timed(lambda: waves(panels, speed), 3) for speed in given["speeds"]]
afloat = timed(lambda: equilibrium(places, areas, given["volume"], center), 5)
print(json.dumps({"waves": [v for v, _ in drag], "waves_ms": [t for _, t in drag], "afloat": list(afloat[0]), "afloat_ms": afloat[1]}))
