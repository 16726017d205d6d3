"""Where and when the tables look: places from pole to pole and on both sides of
the date line, their days by the mean-time zone of the longitude, and the search
for the moments at which something passes a height."""

import csv
from collections import namedtuple
from datetime import datetime, timedelta

from scipy.optimize import brentq, minimize_scalar

Place = namedtuple("Place", "name lat lon elevation")  # degrees, north and east positive; metres

SCHOOLS = [
    Place("alder-reach", 46.09, -64.77, 20),
    Place("south-island", -45.87, 170.50, 0),
    Place("equator-south", -0.2, -78.5, 2800),
    Place("equator-north", 1.4, 103.8, 15),
    Place("arctic", 69.6, 18.9, 10),
    Place("north-pole", 90, 0, 0),
]
PLACES = SCHOOLS + [
    Place("south-pole", -90, 0, 2835),
    Place("date-line-west", -17.8, 179.9, 5),
    Place("date-line-east", -17.8, -179.9, 5),
    Place("mountain", 27.7, 85.3, 1400),
    Place("north-sea", 54.8, -1.6, 100),
    Place("subarctic", 64.1, -21.9, 30),
    Place("cape", -54.8, -68.3, 30),
    Place("plain", 35.7, 139.7, 40),
]

NOON_2000 = datetime(2000, 1, 1, 12)


def days(year, month=1, day=1, hour=0, minute=0, second=0):
    """Days from 2000-01-01 12:00 to a date and time of the same scale."""
    return (datetime(year, month, day, hour, minute, second) - NOON_2000) / timedelta(days=1)


def iso(d, decimals=2, mark="Z"):
    """The instant as ISO 8601 with fractions of a second."""
    unit = 10**decimals
    ticks = round(d * 86400 * unit)
    moment = NOON_2000 + timedelta(seconds=ticks // unit)
    fraction = f".{ticks % unit:0{decimals}d}" if decimals else ""
    return moment.strftime("%Y-%m-%dT%H:%M:%S") + fraction + mark


def date(d):
    return iso(d, 0)[:10]


def offset_hours(place):
    """The whole-hour zone of the longitude."""
    return round(place.lon / 15)


def local_day(place, d):
    """The begin of the local day whose date is that of d."""
    return d - offset_hours(place) / 24


def crossings(f, begin, end, step=1 / 240):
    """The moments in begin <= t < end at which f passes zero, as two lists:
    rising and falling. A peak or dip between two samples that just reaches
    through zero is looked into."""
    count = round((end - begin) / step)
    t = [begin + i * (end - begin) / count for i in range(count + 1)]
    v = [f(x) for x in t]
    knots = []
    for i in range(count + 1):
        knots.append((t[i], v[i]))
        if 0 < i < count and abs(v[i]) < max(abs(v[i] - v[i - 1]), abs(v[i + 1] - v[i])) * 2:
            sign = 1 if v[i] > 0 else -1  # towards zero: a dip if positive
            if sign * v[i] <= sign * v[i - 1] and sign * v[i] <= sign * v[i + 1]:
                turn = minimize_scalar(lambda x: sign * f(x), bounds=(t[i - 1], t[i + 1]), method="bounded",
                                       options={"xatol": 1e-7})
                if turn.fun < 0:
                    knots.append((turn.x, sign * turn.fun))
    knots.sort()
    rising, falling = [], []
    for (t0, v0), (t1, v1) in zip(knots, knots[1:]):
        if (v0 < 0) != (v1 < 0):
            (rising if v0 < 0 else falling).append(brentq(f, t0, t1, xtol=1e-9))
    return rising, falling


def write(name, header, rows):
    with open(name, "w", newline="") as out:
        table = csv.writer(out, lineterminator="\n")
        table.writerow(header)
        table.writerows(rows)
