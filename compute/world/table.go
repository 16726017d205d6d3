package world

import (
	"slices"
	"time"

	"noonbook/compute/almanac"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// SunDiameter is twice the nominal solar radius: IAU 2015 Resolution B3.
const SunDiameter quantity.Length = 2 * 695700e3

// ToTheMoon is the Moon's mean distance; MoonDiameter is twice its mean radius.
const (
	ToTheMoon                    = almanac.MoonMeanDistance
	MoonDiameter quantity.Length = 2 * 1737.4e3
)

// MoonsAsOf is the day for which the numbers of moons hold. They grow: on 11
// March 2025 alone Saturn got 128 more. Confirmed moons after the circulars of
// the IAU Minor Planet Center; Uranus with S/2025 U1 of 19 August 2025. By August
// 2026 Jupiter has 115.
func MoonsAsOf() place.Date { return place.Date{Year: 2025, Month: time.August, Day: 31} }

// All returns the worlds in order from the Sun, the Moon after the Earth and the
// comet last. The slice is the caller's own.
//
// Columns and their sources; the tests hold them against the fact sheets:
//
//   - orbit: semi-major axis in au, E. M. Standish, Keplerian elements for
//     approximate positions of the major planets (JPL), table 1, J2000,
//     1800–2050; Earth's is that of the Earth–Moon barycentre. Ceres: stays
//     within 0.2 % of 2.77 (JPL Small-Body Database, 2022). 67P: 3.46 (the same).
//   - year, days: JPL Solar System Dynamics, Planetary Physical Parameters
//     (2021); Ceres and 67P: Small-Body Database.
//   - radii, km, mean and equatorial: B. A. Archinal and others, Report of the IAU
//     Working Group on Cartographic Coordinates and Rotational Elements: 2015,
//     Celest. Mech. Dyn. Astron. 130, 22 (2018), tables 4 and 5. Ceres: R. S. Park
//     and others, Nature 537, 515 (2016), the mean of 483.1 and 481.0 km. 67P, 18.7 km³: H. Sierks and others,
//     Science 347, aaa1044 (2015), corrected by M. Pätzold, Nature 530, 63 (2016).
//   - GM, km³/s²: R. S. Park and others, DE440, Astron. J. 161, 105 (2021); of the
//     giants and Pluto without their moons, JPL satellite ephemerides (2024).
//     67P: Pätzold (2016).
//   - turn, hours: D. R. Williams, Planetary Fact Sheets (NASA, 2024): of the giants
//     that of their magnetic field, System III (by its rings Saturn turns in 10.561 h,
//     C. Mankovich and others, 2019); Mercury, 58.6462 d. 67P: 12.4 h before 2015; jets
//     have changed it since.
//   - tilt, degrees: the same fact sheets. Ceres: 4 (Park 2016). 67P: 52 (L. Jorda
//     and others, Icarus 277, 257, 2016).
//   - moons: MoonsAsOf.
//   - coldest, warmest, mean, kelvin: the same fact sheets; of the Earth −89.2 °C at
//     Vostok and 56.7 °C at Furnace Creek (WMO World Weather and Climate Extremes
//     Archive), of Mars NASA's page of Mars facts, of Ceres, Pluto and 67P from
//     memory: of the Moon and
//     Mercury the equator by night and by day, of Mars and Earth the whole globe,
//     of Venus the ground everywhere, of the giants where the pressure is 1 bar,
//     of Pluto the whole globe; Ceres by day at most (F. Tosi and others, 2015),
//     the night side as the Dawn team gives it; 67P by day (F. Capaccioni and
//     others, Science 347, aaa0628, 2015).
func All() []World { return slices.Clone(table[:]) }

// table is what All copies.
var table = [...]World{
	row("mercury", Rocky, 0.38710, 87.9693, 2439.4, 2440.53, 22031.869, 1407.509, 0.034, 0, 100, 700, 440),
	row("venus", Rocky, 0.72334, 224.7008, 6051.8, 6051.8, 324858.592, 5832.5, 177.36, 0, 737, 737, 737),
	row("earth", Rocky, 1.00000, 365.2564, 6371.008, 6378.137, 398600.436, 23.9345, 23.44, 1, 184, 330, 288),
	row("moon", Moon, 1.00000, 365.2564, 1737.4, 1738.1, 4902.800, 655.720, 6.68, 0, 95, 390, 0),
	row("mars", Rocky, 1.52371, 686.9796, 3389.50, 3396.19, 42828.375, 24.6229, 25.19, 2, 120, 293, 210),
	row("ceres", Dwarf, 2.77, 1682, 469.7, 482.05, 62.629, 9.0742, 4, 0, 110, 235, 0),
	row("jupiter", Giant, 5.20289, 4332.82, 69911, 71492, 126686531.9, 9.9250, 3.13, 97, 165, 165, 165),
	row("saturn", Giant, 9.53668, 10755.70, 58232, 60268, 37931206.2, 10.656, 26.73, 274, 134, 134, 134),
	row("uranus", Giant, 19.18916, 30687.15, 25362, 25559, 5793951.3, 17.24, 97.77, 29, 76, 76, 76),
	row("neptune", Giant, 30.06992, 60190.03, 24622, 24764, 6835100.0, 16.11, 28.32, 16, 72, 72, 72),
	row("pluto", Dwarf, 39.48212, 90553, 1188.3, 1188.3, 869.3, 153.2928, 119.5, 5, 24, 63, 44),
	row("comet", Comet, 3.46, 2352, 1.647, 1.647, 666.2e-9, 12.4, 52, 0, 180, 230, 0),
}

// row makes a World of a row of the table, in the units of its columns.
func row(name string, kind Kind, orbit, year, radius, equatorial, gm, turn, tilt float64, moons int, coldest, warmest, mean float64) World {
	return World{
		Name: name, Kind: kind,
		Orbit:  quantity.Length(orbit) * quantity.AstronomicalUnit,
		Year:   time.Duration(year * 24 * float64(time.Hour)),
		Radius: quantity.Kilometres(radius), Equatorial: quantity.Kilometres(equatorial),
		GM:   gm,
		Turn: time.Duration(turn * float64(time.Hour)), Tilt: quantity.Degrees(tilt),
		Moons: moons, Coldest: coldest, Warmest: warmest, Mean: mean,
	}
}
