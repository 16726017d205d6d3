"""Cut the table of compute/sky/stars.txt out of a fixed-star file.

    /usr/bin/python3 stars.py sefstars.txt > ../../compute/sky/stars.txt

sefstars.txt is a file of Debian's package swe-basic-data (4.0-20221111-2, CC0 1.0):
ICRS places at J2000, proper motions and V magnitudes of SIMBAD, one row a name.
Kept are stars with a Bayer letter or Flamsteed number to magnitude 4.55, and the
few fainter ones that a figure needs. Rows of one star are one; of two designations
within 30" the one with a number or the first wins.
"""

import csv
import math
import sys

LIMIT = 4.55
FAINT = {"etUMi"}  # closes the bowl of the Little Bear

GREEK = dict(al="α", be="β", ga="γ", de="δ", ep="ε", ze="ζ", et="η", th="θ", io="ι", ka="κ", la="λ", mu="μ",
             nu="ν", xi="ξ", omi="ο", pi="π", rh="ρ", si="σ", ta="τ", up="υ", ph="φ", ch="χ", ps="ψ", ome="ω")
SUP = {"1": "¹", "2": "²", "3": "³", "4": "⁴", "5": "⁵", "6": "⁶", "7": "⁷", "8": "⁸", "9": "⁹"}
CONSTELLATIONS = """And Ant Aps Aqr Aql Ara Ari Aur Boo Cae Cam Cnc CVn CMa CMi Cap Car Cas Cen Cep Cet Cha Cir Col
Com CrA CrB Crv Crt Cru Cyg Del Dor Dra Equ Eri For Gem Gru Her Hor Hya Hyi Ind Lac Leo LMi Lep Lib Lup Lyn Lyr Men
Mic Mon Mus Nor Oct Oph Ori Pav Peg Per Phe Pic Psc PsA Pup Pyx Ret Sge Sgr Sco Scl Sct Ser Sex Tau Tel Tri TrA Tuc
UMa UMi Vel Vir Vol Vul""".split()

# Names of the IAU Catalog of Star Names (Working Group on Star Names, 2018); each must
# also stand in the file under the same designation.
NAMES = """alCMa Sirius, alCar Canopus, alCen Rigil Kentaurus, alBoo Arcturus, alLyr Vega, alAur Capella, beOri Rigel,
alCMi Procyon, alOri Betelgeuse, alEri Achernar, beCen Hadar, alAql Altair, alCru Acrux, alTau Aldebaran, alSco Antares,
alVir Spica, beGem Pollux, alPsA Fomalhaut, alCyg Deneb, beCru Mimosa, alLeo Regulus, epCMa Adhara, alGem Castor,
laSco Shaula, gaCru Gacrux, gaOri Bellatrix, beTau Elnath, beCar Miaplacidus, epOri Alnilam, alGru Alnair, epUMa Alioth,
alPer Mirfak, alUMa Dubhe, zeOri Alnitak, deCMa Wezen, epSgr Kaus Australis, etUMa Alkaid, thSco Sargas,
beAur Menkalinan, alPav Peacock, alTrA Atria, gaGem Alhena, deVel Alsephina, epCar Avior, alHya Alphard, beCMa Mirzam,
ga-1Leo Algieba, alAri Hamal, beCet Diphda, alUMi Polaris, beAnd Mirach, thCen Menkent, alAnd Alpheratz, kaOri Saiph,
siSgr Nunki, alOph Rasalhague, beUMi Kochab, ga-1And Almach, beGru Tiaki, bePer Algol, beLeo Denebola,
laVel Suhail, alCas Schedar, gaCyg Sadr, gaDra Eltanin, alCrB Alphecca, zePup Naos, ioCar Aspidiske, beCas Caph,
zeUMa Mizar, deSco Dschubba, alPhe Ankaa, beUMa Merak, epBoo Izar, epPeg Enif, deOri Mintaka, bePeg Scheat,
etOph Sabik, gaUMa Phecda, etCMa Aludra, alCep Alderamin, alPeg Markab, alCet Menkar, deLeo Zosma, alLep Arneb,
gaCrv Gienah, alSer Unukalhai, alCol Phact, deUMa Megrez, gaPeg Algenib, alDra Thuban, be-1Cyg Albireo,
alAqr Sadalmelik, etTau Alcyone""".replace("\n", " ").split(",")
names = dict(n.strip().split(" ", 1) for n in NAMES)


OTHERS = {"HR6630": ("G", "Sco"), "P_Pup": ("P", "Pup"), "J_Pup": ("J", "Pup"), "k01Pup": ("k", "Pup")}  # HR 6630 is G Sco (from memory)


def split(key):
    if key in OTHERS:
        return OTHERS[key]
    for c in CONSTELLATIONS:
        if key.endswith(c):
            letter, _, number = key[: -len(c)].partition("-")
            if letter in GREEK:
                return GREEK[letter] + SUP.get(number, ""), c
            if letter.isdigit() or len(letter) == 1 and letter.isalpha():
                return letter, c
    return None


stars, known, called = [], {}, {}
for row in csv.reader(open(sys.argv[1], encoding="latin-1")):
    if len(row) < 14 or row[0].startswith("#"):
        continue
    key, called_ = row[1].strip(), row[0].strip()
    called.setdefault(key, set()).add(called_)
    designation = split(key)
    mag = float(row[13])
    if key in known or designation is None or not (mag <= LIMIT or key in FAINT) or row[2].strip() not in ("ICRS", "2000"):
        continue
    h, m, s = (float(x) for x in row[3:6])
    sign = -1 if row[6].strip().startswith("-") else 1
    d, dm, ds = (abs(float(x)) for x in row[6:9])
    known[key] = True
    stars.append(dict(key=key, designation=" ".join(designation), constellation=designation[1], ra=15 * (h + m / 60 + s / 3600),
                      dec=sign * (d + dm / 60 + ds / 3600), pm_ra=float(row[9]), pm_dec=float(row[10]), mag=mag))


def apart(a, b):
    dra = (a["ra"] - b["ra"] + 180) % 360 - 180
    return math.hypot(dra * math.cos(math.radians(a["dec"])), a["dec"] - b["dec"]) * 3600


kept = []
for s in stars:
    twin = next((k for k in kept if apart(s, k) < 30), None)
    if twin is None:
        kept.append(s)
    elif names.get(twin["key"]) is None and (s["key"] in names or "-" in s["key"]):
        kept[kept.index(twin)] = s
for key, name in names.items():
    assert name in called[key], (key, name, called[key])
    assert any(s["key"] == key for s in kept), key
kept.sort(key=lambda s: (CONSTELLATIONS.index(s["constellation"]), s["mag"]))

print("""# Bright stars, to magnitude 4.5: complete to about 4.0, with gaps below.
# Places: ICRS, epoch and equinox J2000.0, degrees. Proper motion: 0.001" a year, in
# right ascension as measured along the sky (times the cosine of the declination).
# Magnitude: V; of double stars that the eye sees as one, mostly the sum.
# Source: sefstars.txt (SIMBAD, Centre de Données astronomiques de Strasbourg, as
# gathered until 2021) of Debian's package swe-basic-data 4.0-20221111-2, which is
# CC0 1.0; cut by testdata/stars/stars.py. Names: those that the IAU Working Group
# on Star Names approved, of the stars that a class meets.
designation,ra_deg,dec_deg,pm_ra_mas,pm_dec_mas,magnitude,name""")
for s in kept:
    print(f"{s['designation']},{s['ra']:.5f},{s['dec']:.5f},{s['pm_ra']:.1f},{s['pm_dec']:.1f},{s['mag']:.2f},{names.get(s['key'], '')}")
