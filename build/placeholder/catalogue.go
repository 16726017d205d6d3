package placeholder

// Catalogue returns every placeholder, sorted by name.
func Catalogue() []Entry {
	return []Entry{
		classFacts(),
		dialClock(),
		dialDay(),
		dialTable(),
		eclipseList(),
		moonMonth(),
		moonSchool(),
		placeFacts(),
		planetsWeek(),
		seasonDates(),
		stripPicture(),
		stripTable(),
		sunDay(),
		sunPath(),
		sunYear(),
	}
}

// Sources that more than one placeholder rests on.
const (
	sourceSun    = "Sun: truncated VSOP87 (P. Bretagnon and G. Francou, 1988) with IAU 2006 sidereal time, as compute/almanac documents"
	sourceWMM    = "World Magnetic Model 2025 (NOAA/NCEI and British Geological Survey), valid 2025.0 to 2030.0"
	sourceIANA   = "Clock changes: IANA time zone database"
	sourceDial   = "Hour lines: tan X = sin φ · tan h, the standard formula of the horizontal dial (A. E. Waugh, Sundials, 1973)"
	sourceOrbits = "Orbits: semi-major axes, E. M. Standish, approximate elements (JPL), J2000; Ceres 2.77 au (JPL Small-Body Database)"
	sourceBode   = "Titius–Bode rule: 0.4 au, then 0.4 + 0.3 · 2ⁿ au"
	sourceSizes  = "Diameters: mean, Astronomy Notes; Sun: IAU 2015 Resolution B3"
)
