"""Flights with quadratic drag and steady wind, by scipy's DOP853.

Writes rocket-flights.csv, and rocket-searches.csv with what scipy's searches
find on the same flights. Each flight is integrated to the apogee and to the
ground with events, at relative and absolute tolerances of 1e-13.
"""
import csv
import math
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar

G = 9.80665  # 3rd CGPM (1901)


def drag(mass_g, diameter_mm, coefficient, density):
    area = math.pi * (diameter_mm / 1000) ** 2 / 4
    return density * coefficient * area / (2 * mass_g / 1000)


def fly(speed, elevation, height, k, along, across):
    e = math.radians(elevation)

    def slope(_, y):
        u = y[3:] - np.array([along, across, 0.0])
        return [*y[3:], *(-k * np.linalg.norm(u) * u - np.array([0, 0, G]))]

    def top(_, y):
        return y[5]

    def ground(_, y):
        return y[2]

    top.direction, ground.direction, ground.terminal = -1, -1, True
    start = [0, 0, height, speed * math.cos(e), 0, speed * math.sin(e)]
    s = solve_ivp(slope, (0, 100), start, method="DOP853", rtol=1e-13, atol=1e-13,
                  events=(top, ground), max_step=0.02)
    landing = s.y_events[1][-1]
    if elevation > 0:
        apogee, up = s.y_events[0][0], s.t_events[0][0]
    else:  # a level launch is at its highest when it begins
        apogee, up = start, 0.0
    return {
        "apogee_m": apogee[2], "apogee_along_m": apogee[0], "apogee_s": up,
        "landing_along_m": landing[0], "landing_across_m": landing[1], "landing_s": s.t_events[1][-1],
        "impact_m_s": float(np.linalg.norm(landing[3:])),
    }


CASES = [  # speed, elevation, height, mass g, diameter mm, coefficient, density, along, across
    (70.0, 75, 0.0, 500, 20, 0.0, 1.225, 0, 0),
    (20.0, 45, 0.0, 5.0, 23, 0.0, 1.225, 0, 0),
    (20.0, 90, 0.3, 5.0, 23, 0.6, 1.225, 0, 0),
    (20.0, 75, 0.3, 5.0, 23, 0.6, 1.225, 0, 0),
    (20.0, 45, 0.3, 5.0, 23, 0.6, 1.225, 0, 0),
    (20.0, 30, 0.0, 5.0, 23, 0.6, 1.225, 4, 0),
    (25.0, 60, 0.3, 3.0, 23, 0.8, 1.20, 5, 0),
    (25.0, 60, 0.3, 3.0, 23, 0.8, 1.20, -5, 0),
    (25.0, 85, 0.3, 3.0, 23, 0.8, 1.20, 0, 6),
    (30.0, 80, 0.5, 2.0, 34, 1.0, 1.10, 3, -4),
    (12.0, 89, 0.2, 8.0, 22, 0.4, 0.95, 1, 1),
    (40.0, 45, 0.3, 4.0, 23, 0.3, 1.293, 8, 0),
    (60.0, 70, 1.0, 6.0, 22, 0.5, 1.225, 0, 0),
    (95.0, 50, 0.0, 10.0, 25, 0.5, 1.225, 10, 5),
    (5.0, 10, 0.4, 5.0, 23, 0.6, 1.225, 2, 0),
    (20.0, 0, 1.5, 5.0, 23, 0.6, 1.225, 0, 3),
]


def flights():
    heads = ["speed_m_s", "elevation_deg", "height_m", "mass_g", "diameter_mm", "drag", "density_kg_m3", "along_m_s", "across_m_s"]
    with open("rocket-flights.csv", "w", newline="") as out:
        w = csv.writer(out, lineterminator="\n")
        first = True
        for c in CASES:
            speed, elevation, height, mass, diameter, coefficient, density, along, across = c
            f = fly(speed, elevation, height, drag(mass, diameter, coefficient, density), along, across)
            if first:
                w.writerow(heads + list(f))
                first = False
            w.writerow([*c, *(f"{round(x, 12):.12g}" for x in f.values())])


def searches():
    """Farthest reach with its angle, and launch speeds from a height and a time."""
    with open("rocket-searches.csv", "w", newline="") as out:
        w = csv.writer(out, lineterminator="\n")
        w.writerow(["mass_g", "diameter_mm", "drag", "density_kg_m3", "along_m_s", "height_m", "speed_m_s",
                    "farthest_m", "farthest_deg", "climbs_m", "climb_deg", "climb_speed_m_s", "lasts_s", "lasts_speed_m_s"])
        for mass, diameter, c, density, along, height, speed, climbs, climb_deg, lasts in [
            (5.0, 23, 0.6, 1.225, 0.0, 0.3, 20.0, 15.0, 90, 3.0),
            (5.0, 23, 0.6, 1.225, 4.0, 0.3, 20.0, 12.0, 80, 3.5),
            (3.0, 23, 0.8, 1.20, 5.0, 0.3, 25.0, 8.0, 85, 2.5),
            (2.0, 34, 1.0, 1.10, 6.0, 0.5, 30.0, 5.0, 70, 2.0),
            (8.0, 22, 0.4, 1.225, 0.0, 0.0, 35.0, 30.0, 90, 5.0),
        ]:
            k = drag(mass, diameter, c, density)
            best = minimize_scalar(lambda e: -abs(fly(speed, e, height, k, along, 0)["landing_along_m"]),
                                   bounds=(1, 89), method="bounded", options={"xatol": 1e-5})
            v1 = brentq(lambda v: fly(v, climb_deg, height, k, along, 0)["apogee_m"] - climbs, 1, 90, xtol=1e-11)
            v2 = brentq(lambda v: fly(v, 90, height, k, along, 0)["landing_s"] - lasts, 1, 90, xtol=1e-11)
            w.writerow([mass, diameter, c, density, along, height, speed, f"{-best.fun:.10g}", f"{best.x:.5g}",
                        climbs, climb_deg, f"{v1:.11g}", lasts, f"{v2:.11g}"])


if __name__ == "__main__":
    flights()
    searches()
    print("numpy", np.__version__, "scipy", scipy.__version__, file=sys.stderr)
