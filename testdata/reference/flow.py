"""Water that runs out of a bottle, by scipy's DOP853: writes flow-runs.csv.

dh/dt is integrated from one level down to another, once as c a √(2 g h) / A says
(plain_s), and once with the speed of the sinking level in Bernoulli's equation
(approach_s), which the closed form leaves out.
"""
import csv
import math
import sys

from scipy.integrate import solve_ivp

G = 9.80665  # 3rd CGPM (1901)


def seconds(width, hole, c, start, end, approach):
    ratio = c * (hole / width) ** 2
    factor = ratio * math.sqrt(2 * G / (1 - ratio**2 if approach else 1))

    def slope(_, y):
        return [-factor * math.sqrt(max(y[0], 0))]

    def reached(_, y):
        return y[0] - end

    reached.terminal = True
    s = solve_ivp(slope, (0, 1e7), [start], method="DOP853", rtol=1e-12, atol=1e-15, events=reached)
    return s.t_events[0][0]


CASES = [  # width, hole (mm), coefficient, from, to (mm)
    (90, 2.0, 0.61, 180, 30), (90, 2.0, 0.61, 180, 100), (90, 2.0, 0.82, 180, 30), (65, 1.5, 0.61, 120, 40),
    (300, 0.8, 0.61, 220, 75), (40, 10, 0.61, 240, 10), (120, 5, 0.66, 240, 12), (100, 3, 1.0, 1000, 20),
]

out = csv.writer(sys.stdout, lineterminator="\n")
out.writerow(["width_mm", "hole_mm", "coefficient", "from_mm", "to_mm", "plain_s", "approach_s"])
for width, hole, c, start, end in CASES:
    both = [seconds(width / 1000, hole / 1000, c, start / 1000, end / 1000, a) for a in (False, True)]
    out.writerow([width, hole, c, start, end, *(f"{x:.7f}" for x in both)])
