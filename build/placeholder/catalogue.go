package placeholder

// Catalogue returns every placeholder, sorted by name.
func Catalogue() []Entry {
	return []Entry{
		classFacts(),
		dialBlank(),
		dialClock(),
		dialDay(),
		dialDrift(),
		dialFace(),
		dialGnomon(),
		dialHours(),
		dialMarks(),
		dialNorth(),
		dialTable(),
		eclipseList(),
		familyNote(),
		journeyTable(),
		kitList(),
		lensLog(),
		lensPairs(),
		lensPower(),
		lensRays(),
		lessonSky(),
		moonDiary(),
		moonLog(),
		moonMonth(),
		moonSchool(),
		placeFacts(),
		planetsWeek(),
		rocketClinometer(),
		rocketHeight(),
		rocketLog(),
		rocketParts(),
		rocketPath(),
		rocketWrap(),
		rocketZone(),
		rubric(),
		seasonDates(),
		seasonModel(),
		skyAlerts(),
		skyMap(),
		skyWheel(),
		stripBalls(),
		stripCards(),
		stripField(),
		stripLog(),
		stripMoon(),
		stripPicture(),
		stripTable(),
		stripTime(),
		sunDay(),
		sunPath(),
		sunYear(),
		tubePlan(),
		unitPlan(),
		weightTable(),
		worldCards(),
		worldCompare(),
	}
}

// Sources that more than one placeholder rests on.
const (
	sourceLens    = "Thin lenses: 1/f = 1/o + 1/i, OpenStax, College Physics, ch. 25.6; telescope: far things are magnified F/e times, ch. 26.5"
	sourceLabel   = "Labels: dioptres are one over metres; × on a magnifier is about 25 cm over the focal length, and some labels add one (from memory)"
	sourceDetail  = "What can be seen, an estimate: eye 1′; edge of the lens 1.22 λ/D; colours of a single lens, a 250th of its aperture (I. Newton, Opticks, 1704, from memory); mask after C. Huygens' 3 inches on 30 feet (from memory)"
	sourceGlass   = "Light lost: 4 % at each face of glass (Fresnel, n = 1.5); pupils of 3 mm by day and 6 mm in the dark (from memory)"
	sourceSun     = "Sun: truncated VSOP87 (P. Bretagnon and G. Francou, 1988) with IAU 2006 sidereal time, as compute/almanac documents"
	sourceWMM     = "World Magnetic Model 2025 (NOAA/NCEI and British Geological Survey), valid 2025.0 to 2030.0"
	sourceShowers = "Meteor showers: International Meteor Organization, Meteor Shower Calendar, working list (from memory); peaks by the Sun's longitude, J2000"
	sourceIANA    = "Clock changes: IANA time zone database"
	sourceDial    = "Hour lines: tan X = sin φ · tan h, the standard formula of the horizontal dial (A. E. Waugh, Sundials, 1973)"
	sourceOrbits  = "Orbits: semi-major axes, E. M. Standish, approximate elements (JPL), J2000; Ceres 2.77 au (JPL Small-Body Database)"
	sourceBode    = "Titius–Bode rule: 0.4 au, then 0.4 + 0.3 · 2ⁿ au"
	sourceSizes   = "Diameters: mean, B. A. Archinal and others, IAU Working Group on Cartographic Coordinates 2015 (2018); Ceres: R. S. Park and others (2016); Sun: IAU 2015 Resolution B3"
)
