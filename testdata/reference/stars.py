"""Stars by general-purpose libraries: stars-mean.csv, stars-apparent.csv and
stars-horizontal.csv from ERFA with the places of compute/sky/stars.txt, and
stars-hipparcos.csv, the stars of pyephem, which stand on Hipparcos instead.

    /usr/bin/python3 stars.py ../../compute/sky/stars.txt
"""

import csv
import math
import sys

import ephem
import ephem.stars
import erfa
import numpy as np

rows = [r for r in csv.reader(l for l in open(sys.argv[1], encoding="utf-8") if not l.startswith("#"))][1:]
YEARS = [1950, 1975, 2000, 2027, 2050, 2075, 2100]
TT_UTC = 69.184
d2r = math.radians


def catalogue(r):
    ra, dec = d2r(float(r[1])), d2r(float(r[2]))
    mas = math.radians(1 / 3.6e6)
    return ra, dec, float(r[3]) * mas / math.cos(dec), float(r[4]) * mas


def out(name, heading, lines):
    with open(name, "w", newline="", encoding="utf-8") as f:
        w = csv.writer(f, lineterminator="\n")
        w.writerow(heading)
        w.writerows(lines)


chosen = rows[::19] + [r for r in rows if r[6] in ("Rigil Kentaurus", "Sirius", "Polaris", "Arcturus", "Canopus", "Acrux")]
mean, apparent = [], []
for r in chosen:
    for year in YEARS:
        tt1, tt2 = erfa.dtf2d("TT", year, 7, 1, 12, 0, 0)
        ra, dec, pmr, pmd = catalogue(r)
        ra2, dec2, *_ = erfa.pmsafe(ra, dec, pmr, pmd, 0.0, 0.0, 2451545.0, 0.0, tt1, tt2)
        v = erfa.pmat06(tt1, tt2) @ erfa.s2c(ra2, dec2)
        a, d = erfa.c2s(v)
        mean.append([r[0], f"{year}-07-01T12:00:00", f"{math.degrees(erfa.anp(a)):.6f}", f"{math.degrees(d):.6f}"])
        ri, di, eo = erfa.atci13(ra, dec, pmr, pmd, 0.0, 0.0, tt1, tt2)
        apparent.append([r[0], f"{year}-07-01T12:00:00", f"{math.degrees(erfa.anp(ri - eo)):.6f}", f"{math.degrees(di):.6f}"])
head = ["star", "tt", "ra_deg", "dec_deg"]
out("stars-mean.csv", head, mean)
out("stars-apparent.csv", head, apparent)

places = [("alder-reach", 46.09, -64.77), ("south", -45.87, 170.5), ("line", 0.0, 6.7), ("arctic", 69.6, 18.95),
          ("north-pole", 90.0, 0.0), ("south-pole", -90.0, 180.0), ("far-east", 1.87, -157.4)]
times = ["1950-02-03T04:05:06", "2027-04-21T00:30:00", "2027-11-05T09:15:00", "2100-12-30T20:00:00"]
horizontal = []
for name, lat, lon in places:
    for t in times:
        y, mo, dd = map(int, t[:10].split("-"))
        h, mi, s = map(int, t[11:].split(":"))
        ut1, ut2 = erfa.dtf2d("UT1", y, mo, dd, h, mi, s)
        # TT - UT as the tables of the almanac take it; the places hang on it by nothing.
        tt1, tt2 = ut1, ut2 + TT_UTC / 86400
        gst = erfa.gst06a(ut1, ut2, tt1, tt2)
        for r in rows[::23]:
            ri, di, eo = erfa.atci13(*catalogue(r), 0.0, 0.0, tt1, tt2)
            ha = gst + d2r(lon) - (ri - eo)
            az, alt = erfa.hd2ae(ha, di, d2r(lat))
            horizontal.append([name, lat, lon, t + "Z", r[0], f"{math.degrees(az):.5f}", f"{math.degrees(alt):.5f}"])
out("stars-horizontal.csv", ["place", "latitude_deg", "longitude_deg", "utc", "star", "azimuth_deg", "altitude_deg"], horizontal)

hip = []
for name in sorted(ephem.stars.stars):
    s = ephem.stars.stars[name]
    s.compute("2000/1/1 12:00", epoch="2000")
    hip.append([name, f"{math.degrees(s.a_ra):.6f}", f"{math.degrees(s.a_dec):.6f}", f"{s.mag:.2f}"])
out("stars-hipparcos.csv", ["name", "ra_deg", "dec_deg", "magnitude"], hip)
