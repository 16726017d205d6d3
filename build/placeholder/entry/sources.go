package entry

// Sources that more than one placeholder rests on.
const (
	SourceSun        = "Sun: truncated VSOP87 (P. Bretagnon and G. Francou, 1988) with IAU 2006 sidereal time, as compute/almanac documents"
	SourceMoon       = "Moon: truncated ELP/MPP02 (J. Chapront and G. Francou, 2003), as compute/almanac documents"
	SourcePlanets    = "Planets: truncated VSOP87 (P. Bretagnon and G. Francou, 1988), as compute/almanac documents"
	SourceEclipses   = "Eclipses: radii and shadows after F. Espenak and J. Meeus (NASA/TP-2006-214141 and NASA/TP-2009-214172), as compute/almanac documents"
	SourceRise       = "Sunrise and sunset: the Sun's centre 50′ below the horizon, 34′ for refraction and 16′ for the Sun's radius, the usual almanac convention"
	SourceMoonrise   = "Moonrise and moonset: the Moon's upper limb with parallax, 34′ below the horizon for refraction"
	SourceRefraction = "Heights are those seen through ordinary air: refraction after Sæmundsson 1986"
	SourceWMM        = "World Magnetic Model 2025 (NOAA/NCEI and British Geological Survey), valid 2025.0 to 2030.0"
	SourceIANA       = "Clock changes: IANA time zone database"
	SourceLight      = "Light: 299 792 458 m/s exactly (SI); 1 au = 149 597 870 700 m exactly (IAU 2012 Resolution B2)"
	SourceCraft      = "Speeds of spacecraft: NASA, as of 2024, held for the whole way; airliner 900 km/h, common practice"
)
