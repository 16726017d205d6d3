package school

import (
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// The keys of unit.toml. A key without a dot is one of each table, or row, of the
// key above it that has one.

// The unit.
const (
	UnitTitle   form.Key[string] = "unit.title"
	UnitSummary form.Key[string] = "unit.summary"

	UnitLeaveOut form.Key[[]string] = "unit.leave_out"
)

// The school, on all pages and in all numbers.
const (
	Name       form.Key[string]         = "school.name"
	Latitude   form.Key[float64]        = "school.latitude"
	Longitude  form.Key[float64]        = "school.longitude"
	ElevationM form.Key[float64]        = "school.elevation_m"
	TimeZone   form.Key[*time.Location] = "school.time_zone"
	Paper      form.Key[string]         = "school.paper"
	Measure    form.Key[string]         = "school.measure"
	Language   form.Key[string]         = "school.language"
	Clock      form.Key[string]         = "school.clock"
	Dates      form.Key[string]         = "school.dates"
	Seasons    form.Key[string]         = "school.seasons"
	Colour     form.Key[string]         = "school.colour"
	Crest      form.Key[string]         = "school.crest"
	WayTo      form.Key[string]         = "school.way_to"
	WayKm      form.Key[float64]        = "school.way_km"
)

// The class.
const (
	ClassName       form.Key[string]  = "class.name"
	ClassPupils     form.Key[int]     = "class.pupils"
	ClassGroupSize  form.Key[int]     = "class.group_size"
	ClassEyeHeightM form.Key[float64] = "class.eye_height_m"
	ClassPaceM      form.Key[float64] = "class.pace_m"
	ClassWalkKmH    form.Key[float64] = "class.walk_km_h"
)

// The term.
const (
	TermFirstDay    form.Key[place.Date]      = "term.first_day"
	TermLastDay     form.Key[place.Date]      = "term.last_day"
	TermSchoolDays  form.Key[[]string]        = "term.school_days"
	TermDaysOff     form.Key[[]place.Date]    = "term.days_off"
	TermLessonTimes form.Key[[]form.TimeSpan] = "term.lesson_times"
	TermLessonsADay form.Key[int]             = "term.lessons_a_day"
)

// What is bought and brought from home.
const (
	SuppliesCurrency form.Key[string] = "supplies.currency"
	SuppliesHomeDays form.Key[int]    = "supplies.home_days"
	SuppliesNoteDays form.Key[int]    = "supplies.note_days"
)

// What is in the cupboard.
const (
	StockStripSquares form.Key[int]           = "stock.strip_squares"
	StockSquareMM     form.Key[float64]       = "stock.square_mm"
	StockTenSquaresMM form.Key[float64]       = "stock.ten_squares_mm"
	StockTornSquares  form.Key[int]           = "stock.torn_squares"
	StockBalls        form.Key[[]form.Values] = "stock.balls"
	BallsName         form.Key[string]        = "name"
	BallsDiameterMM   form.Key[float64]       = "diameter_mm"
	BallsCount        form.Key[int]           = "count"

	StockStyleMM             form.Key[float64]       = "stock.style_mm"
	StockGnomonMM            form.Key[float64]       = "stock.gnomon_mm"
	StockPolarHeightMM       form.Key[float64]       = "stock.polar_height_mm"
	StockFrontLensFocalMM    form.Key[float64]       = "stock.front_lens_focal_mm"
	StockEyeLensFocalMM      form.Key[float64]       = "stock.eye_lens_focal_mm"
	StockFrontLensDiameterMM form.Key[float64]       = "stock.front_lens_diameter_mm"
	StockEyeLensDiameterMM   form.Key[float64]       = "stock.eye_lens_diameter_mm"
	StockLenses              form.Key[[]form.Values] = "stock.lenses"
	LensesLabel              form.Key[string]        = "label"
	LensesCount              form.Key[int]           = "count"
	LensesDiameterMM         form.Key[float64]       = "diameter_mm"
	LensesFocalMM            form.Key[float64]       = "focal_mm"
	LensesPowerDioptres      form.Key[float64]       = "power_dioptres"
	LensesMagnifierTimes     form.Key[float64]       = "magnifier_times"

	StockTubes     form.Key[[]form.Values] = "stock.tubes"
	TubesLabel     form.Key[string]        = "label"
	TubesCount     form.Key[int]           = "count"
	TubesInsideMM  form.Key[float64]       = "inside_mm"
	TubesOutsideMM form.Key[float64]       = "outside_mm"
	TubesLengthMM  form.Key[float64]       = "length_mm"

	StockPipeOutsideMM  form.Key[float64] = "stock.pipe_outside_mm"
	StockPipePlayMM     form.Key[float64] = "stock.pipe_play_mm"
	StockRocketPaperGM2 form.Key[float64] = "stock.rocket_paper_g_m2"
	StockRocketMassG    form.Key[float64] = "stock.rocket_mass_g"
	StockLaunchSpeedMS  form.Key[float64] = "stock.launch_speed_m_s"
)

// The field.
const (
	FieldLengthM    form.Key[float64]       = "field.length_m"
	FieldWidthM     form.Key[float64]       = "field.width_m"
	FieldBearingDeg form.Key[float64]       = "field.bearing_deg"
	FieldOutline    form.Key[[]form.Values] = "field.outline"
	OutlineEastM    form.Key[float64]       = "east_m"
	OutlineNorthM   form.Key[float64]       = "north_m"

	FieldMarginPercent form.Key[float64] = "field.margin_percent"
	FieldWindMS        form.Key[float64] = "field.wind_m_s"
)

// What the class measured.
const (
	RecordsLensLog form.Key[form.Records] = "records.lens_log"
	LensLogGroup   form.Key[string]       = "group"
	LensLogLens    form.Key[string]       = "lens"
	LensLogLampMM  form.Key[float64]      = "lamp_mm"
	LensLogCardMM  form.Key[float64]      = "card_mm"
	LensLogFocalMM form.Key[float64]      = "focal_mm"

	RecordsDialMarks  form.Key[form.Records]  = "records.dial_marks"
	DialMarksGroup    form.Key[string]        = "group"
	DialMarksDate     form.Key[place.Date]    = "date"
	DialMarksTime     form.Key[time.Duration] = "time"
	DialMarksAngleDeg form.Key[float64]       = "angle_deg"
	DialMarksXMM      form.Key[float64]       = "x_mm"
	DialMarksYMM      form.Key[float64]       = "y_mm"

	RecordsMoonLog     form.Key[form.Records]  = "records.moon_log"
	MoonLogGroup       form.Key[string]        = "group"
	MoonLogDate        form.Key[place.Date]    = "date"
	MoonLogTime        form.Key[time.Duration] = "time"
	MoonLogSeen        form.Key[string]        = "seen"
	MoonLogLitPercent  form.Key[float64]       = "lit_percent"
	MoonLogLitSide     form.Key[string]        = "lit_side"
	MoonLogDirection   form.Key[string]        = "direction"
	MoonLogAltitudeDeg form.Key[float64]       = "altitude_deg"

	RecordsStripLog form.Key[form.Records] = "records.strip_log"
	StripLogGroup   form.Key[string]       = "group"
	StripLogBody    form.Key[string]       = "body"
	StripLogSquares form.Key[float64]      = "squares"
	StripLogPastCM  form.Key[float64]      = "past_cm"

	RecordsMissions form.Key[form.Records] = "records.missions" // of everybody, not of one class
	MissionsWorld   form.Key[string]       = "world"
	MissionsFlight  form.Key[string]       = "flight"
	MissionsWho     form.Key[string]       = "who"
	MissionsTask    form.Key[string]       = "task"
	MissionsRung    form.Key[int]          = "rung"
	MissionsYear    form.Key[int]          = "year"
	MissionsState   form.Key[string]       = "state"
	MissionsAsOf    form.Key[place.Date]   = "as_of"

	RecordsRocketFlights          form.Key[form.Records] = "records.rocket_flights"
	RocketFlightsGroup            form.Key[string]       = "group"
	RocketFlightsFins             form.Key[int]          = "fins"
	RocketFlightsNoseMM           form.Key[float64]      = "nose_mm"
	RocketFlightsBodyMM           form.Key[float64]      = "body_mm"
	RocketFlightsOther            form.Key[string]       = "other"
	RocketFlightsStamp            form.Key[string]       = "stamp"
	RocketFlightsPipeDeg          form.Key[float64]      = "pipe_deg"
	RocketFlightsBaselineM        form.Key[float64]      = "baseline_m"
	RocketFlightsApartM           form.Key[float64]      = "apart_m"
	RocketFlightsAngleDeg         form.Key[float64]      = "angle_deg"
	RocketFlightsSecondAngleDeg   form.Key[float64]      = "second_angle_deg"
	RocketFlightsBearingDeg       form.Key[float64]      = "bearing_deg"
	RocketFlightsSecondBearingDeg form.Key[float64]      = "second_bearing_deg"
	RocketFlightsFlightS          form.Key[float64]      = "flight_s"
)
