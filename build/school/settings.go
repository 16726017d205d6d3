package school

import (
	"slices"
	"sync"

	"noonbook/build/form"
	"noonbook/compute/strip"
)

// SettingsFile is the name of the file that holds what is true of the school.
const SettingsFile = "unit.toml"

// Settings returns the form of unit.toml: every key that it may hold. The list is the
// caller's own; the lists within its fields are everybody's.
func Settings() form.Form { return slices.Clone(settings()) }

// settings is made once: it is asked for at every key that somebody reads.
var settings = sync.OnceValue(func() form.Form {
	return slices.Concat(form.Form{
		{Key: UnitTitle, Required: true, Doc: "Title of the unit, on the cover."},
		{Key: UnitSummary, Default: "", Doc: "One or two sentences under the title."},
		{Key: UnitLeaveOut, Max: 200, Doc: `Lessons and pages that this handbook goes without, by the names of their files: ["6-telescope"], or ["telescope"].`},

		{Key: Name, Required: true, Doc: "Name of the school."},
		{Key: Latitude, Unit: "deg", Min: -90, Max: 90, Required: true, Doc: "Latitude of the school, north positive, south negative."},
		{Key: Longitude, Unit: "deg", Min: -180, Max: 180, Required: true, Doc: "Longitude of the school, east positive, west negative."},
		{Key: ElevationM, Unit: "m", Min: -450, Max: 6000, Default: 0.0, Doc: "Height of the school above sea level."},
		{Key: TimeZone, Required: true, Doc: "IANA time zone that the school's clocks follow."},
		{Key: Paper, Choices: []string{"A4", "Letter"}, Default: "A4", Doc: "Paper that the handbook is printed on."},
		{Key: Measure, Choices: []string{"metric", "customary"}, Default: "metric", Doc: "Lengths in metres, or in feet and inches. Keys such as square_mm stay metric, and so do printed templates."},
		{Key: Language, Choices: []string{"en", "fr"}, Default: "en", Doc: "Language of the words that noonbook adds: English or French."},
		{Key: Clock, Choices: []string{"24-hour", TwelveHour}, Default: "24-hour", Doc: "Times as the school says them: 13:20, or 1:20 p.m., noon and midnight. In unit.toml and in lessons times are typed as 13:20 either way. French has 13 h 20."},
		{Key: Dates, Choices: []string{"day first", MonthFirst}, Default: "day first", Doc: "Dates as the school writes them: Tuesday 13 April, or Tuesday, April 13. In unit.toml and in lessons dates are typed as 2027-04-13 either way. French has the day first."},
		{Key: Seasons, Choices: []string{"astronomical", CalendarSeasons}, Default: "astronomical", Doc: "When seasons begin: at the equinoxes and solstices, or by the calendar on the first of March, June, September and December. Between the tropics no season is named."},
		{Key: Colour, Default: "", Assumed: "the handbook's own", Doc: "The school's colour as \"#1a5c3a\", for its name and a band on the cover. It is darkened where words in it would be hard to read."},
		{Key: Crest, Default: "", Assumed: "none", Doc: "The school's crest: an SVG, PNG or JPEG file beside unit.toml."},
		{Key: WayTo, Default: "", Assumed: "none", Doc: "A place that the class knows the way to, such as the next city, as it is said behind the word to. Large distances are then told in such ways too; it goes with way_km."},
		{Key: WayKm, Unit: "km", Min: 1, Max: 20000, Doc: "How far it is to that place, by road or in a straight line, as the class knows it."},

		{Key: ClassName, Default: "", Doc: `What the class is called, such as "class 5B".`},
		{Key: ClassPupils, Min: 0, Max: 500, Default: 0, Doc: "Number of pupils."},
		{Key: ClassGroupSize, Min: 1, Max: 30, Default: 3, Doc: "Pupils in a group."},
		{Key: ClassEyeHeightM, Unit: "m", Min: 0.3, Max: 2.5, Default: 1.35, Doc: "Height of a pupil's eye above the ground, standing; measure a few and take the middle."},
		{Key: ClassPaceM, Unit: "m", Min: 0.2, Max: 2, Default: 0.65, Doc: "Length of a pupil's pace, from one foot to the other; measure ten and divide."},
		{Key: ClassWalkKmH, Unit: "km/h", Min: 0.5, Max: 10, Default: 4.0, Doc: "Walking speed, for how long the way to a planet would take."},

		{Key: TermFirstDay, Required: true, Doc: "First school day of the unit."},
		{Key: TermLastDay, Required: true, Doc: "Last school day of the unit."},
		{Key: TermSchoolDays, Choices: weekdayNames, Default: weekdayNames[:5], Doc: "Days of the week on which there is school."},
		{Key: TermDaysOff, Max: 400, Doc: "Dates without school."},
		{Key: TermLessonTimes, Max: 24, Doc: "The lesson times of a school day. A lesson without a start of its own takes one of them."},
		{Key: TermLessonsADay, Min: 1, Max: 12, Default: 1, Doc: "Most lessons of the unit on one day, where their dates are left to noonbook."},
	}, timetable(), evening(), form.Form{

		{Key: SuppliesCurrency, Default: "", Doc: `Currency of the prices, as it is written behind a sum, such as "dollars" or "€".`},
		{Key: SuppliesHomeDays, Unit: "days", Min: 0, Max: 100, Default: 3, Doc: "School days before a lesson by which things from home should be there."},
		{Key: SuppliesNoteDays, Unit: "days", Min: 0, Max: 100, Default: 10, Doc: "School days that families have for it after the note."},

		{Key: StockStripSquares, Min: 1, Max: 100000, Default: 300, Doc: "Squares on the paper roll, counted from the first whole one."},
		{Key: StockSquareMM, Unit: "mm", Min: 1, Max: 2000, Default: 110.0, Doc: "Length of one square from seam to seam; measure ten and divide."},
		{Key: StockTenSquaresMM, Unit: "mm", Min: 10, Max: 20000, Doc: "Length of ten squares from seam to seam, as measured; it takes the place of square_mm."},
		{Key: StockTornSquares, Min: 0, Max: 100000, Default: 0, Doc: "Whole squares of strip_squares that are torn off the start of the roll."},
		{Key: StockBalls, Max: 60, Assumed: "two of each of the regulation balls and marbles that strip-balls lists", Doc: "Balls at hand for the planets.", Fields: form.Form{
			{Key: BallsName, Required: true, Doc: "What the ball is called."},
			{Key: BallsDiameterMM, Unit: "mm", Min: 0.1, Max: 10000, Required: true, Doc: "Its diameter: between two books, or the way round divided by 3.1416."},
			{Key: BallsCount, Min: 1, Max: 12, Default: 1, Doc: "How many of them there are."},
		}},
		{Key: StockStyleMM, Unit: "mm", Min: 20, Max: 5000, Default: 120.0, Doc: "Length of the gnomon's sloping edge, the style."},
		{Key: StockGnomonMM, Unit: "mm", Min: 0, Max: 50, Default: 0.4, Doc: "Thickness of the finished gnomon; from half a millimetre on the face has two noon lines, that far apart."},
		{Key: StockPolarHeightMM, Unit: "mm", Min: 5, Max: 1000, Default: 20.0, Doc: "Height of a polar dial's style above its plate, within 15° of the equator; with 20 mm a plate 180 mm wide holds the hours from 7 to 17."},
		{Key: StockFrontLensFocalMM, Unit: "mm", Min: 5, Max: 5000, Assumed: "that of the best pair of stock.lenses, or 250 mm", Doc: "Focal length of the lens at the front of the telescope, the weaker one."},
		{Key: StockEyeLensFocalMM, Unit: "mm", Min: 5, Max: 5000, Assumed: "that of the best pair of stock.lenses, or 50 mm", Doc: "Focal length of the lens at the eye."},
		{Key: StockFrontLensDiameterMM, Unit: "mm", Min: 5, Max: 500, Assumed: "that of the kind in stock.lenses with this focal length, or 50 mm", Doc: "Diameter of the front lens."},
		{Key: StockEyeLensDiameterMM, Unit: "mm", Min: 3, Max: 500, Assumed: "that of the kind in stock.lenses with this focal length, or 30 mm", Doc: "Diameter of the lens at the eye."},
		{Key: StockLenses, Max: 60, Assumed: "one lens of 250 mm and one of 50 mm", Doc: "The kinds of lenses in the box. Each needs one of focal_mm, power_dioptres and magnifier_times; a measured focal length is the best.", Fields: form.Form{
			{Key: LensesLabel, Required: true, Doc: "What the kind is called, as on its bag."},
			{Key: LensesCount, Min: 0, Max: 1000, Default: 1, Doc: "How many there are."},
			{Key: LensesDiameterMM, Unit: "mm", Min: 3, Max: 500, Required: true, Doc: "Diameter that light passes."},
			{Key: LensesFocalMM, Unit: "mm", Min: 5, Max: 5000, Doc: "Measured focal length."},
			{Key: LensesPowerDioptres, Unit: "dioptres", Min: 0.2, Max: 200, Doc: "Power on the label, as of reading glasses."},
			{Key: LensesMagnifierTimes, Unit: "times", Min: 0.05, Max: 50, Doc: "The number before × on a magnifier's label, taken as 25 cm over the focal length."},
		}},
		{Key: StockTubes, Max: 60, Assumed: "an outer tube as wide as the front lens and one that slides in it, of any length", Doc: "The kinds of cardboard tubes in stock.", Fields: form.Form{
			{Key: TubesLabel, Required: true, Doc: "What the kind is called."},
			{Key: TubesCount, Min: 0, Max: 1000, Default: 1, Doc: "How many there are."},
			{Key: TubesInsideMM, Unit: "mm", Min: 5, Max: 500, Required: true, Doc: "Inside diameter."},
			{Key: TubesOutsideMM, Unit: "mm", Min: 5, Max: 500, Required: true, Doc: "Outside diameter."},
			{Key: TubesLengthMM, Unit: "mm", Min: 20, Max: 5000, Required: true, Doc: "Length of one tube."},
		}},
		{Key: StockPipeOutsideMM, Unit: "mm", Min: 10, Max: 60, Default: 21.3, Doc: "Outside diameter of the launcher's pipe, measured with calipers at its upper end."},
		{Key: StockPipePlayMM, Unit: "mm", Min: 0.2, Max: 5, Default: 0.8, Doc: "How much wider than the pipe the rocket's tube is inside, on the diameter."},
		{Key: StockRocketPaperGM2, Unit: "g/m²", Min: 40, Max: 300, Default: 80.0, Doc: "Weight of the rockets' paper, as it stands on the packet."},
		{Key: StockRocketMassG, Unit: "g", Min: 0.5, Max: 100, Default: 4.0, Doc: "Mass of a finished rocket; weigh ten and divide."},
		{Key: StockLaunchSpeedMS, Unit: "m/s", Min: 1, Max: 60, Default: 20.0, Doc: "Highest speed at which the launcher has sent a rocket off, from the highest flight measured so far. The usual value is a guess: measure. A faster flight in records.rocket_flights counts instead."},

		{Key: FieldLengthM, Unit: "m", Min: 1, Max: 5000, Default: 60.0, Doc: "Long side of the school field, if it is a rectangle."},
		{Key: FieldWidthM, Unit: "m", Min: 1, Max: 5000, Default: 40.0, Doc: "Short side of the field."},
		{Key: FieldBearingDeg, Unit: "deg", Min: 0, Max: 360, Default: 0.0, Doc: "True bearing along which the long side runs."},
		{Key: FieldOutline, Max: 100, Assumed: "the rectangle of length_m and width_m", Doc: "Corners of a field that is no rectangle, in order, from any point of its edge.", Fields: form.Form{
			{Key: OutlineEastM, Unit: "m", Min: -5000, Max: 5000, Required: true, Doc: "How far east of that point the corner is; west is negative."},
			{Key: OutlineNorthM, Unit: "m", Min: -5000, Max: 5000, Required: true, Doc: "How far north of that point it is; south is negative."},
		}},
		{Key: FieldMarginPercent, Unit: "percent", Min: 0, Max: 300, Default: 50.0, Doc: "What the school adds to the rocket's farthest reach for the clear zone. No authority gives a distance for a stamped launcher."},
		{Key: FieldWindMS, Unit: "m/s", Min: 0, Max: 15, Default: 4.0, Doc: "Strongest wind in which the class launches; the clear zone is for that wind."},

		{Key: RecordsLensLog, Max: 1000, Doc: "Focal lengths that the class measured: both distances, or the focal length worked out.", Fields: form.Form{
			{Key: LensLogGroup, Default: "", Doc: "Who measured."},
			{Key: LensLogLens, Required: true, Doc: "Label of the kind of lens, as in stock.lenses."},
			{Key: LensLogLampMM, Unit: "mm", Min: 1, Max: 1e6, Doc: "From the lamp or the window to the lens."},
			{Key: LensLogCardMM, Unit: "mm", Min: 1, Max: 20000, Doc: "From the lens to the sharp picture."},
			{Key: LensLogFocalMM, Unit: "mm", Min: 1, Max: 20000, Doc: "Instead of the two: the focal length."},
		}},
		{Key: RecordsDialMarks, Max: 400, Doc: "What the class marked on its dials: time by the watch, and angle from the noon line or point on the plate.", Fields: form.Form{
			{Key: DialMarksGroup, Default: "", Doc: "Whose plate it is."},
			{Key: DialMarksDate, Required: true, Doc: "Day of the mark."},
			{Key: DialMarksTime, Required: true, Doc: "Time by the watch."},
			{Key: DialMarksAngleDeg, Unit: "deg", Min: -180, Max: 180, Doc: "Angle from the noon line, toward the afternoon side positive."},
			{Key: DialMarksXMM, Unit: "mm", Min: -2000, Max: 2000, Doc: "Instead of the angle: from the noon line toward the afternoon side. On a polar dial this alone counts."},
			{Key: DialMarksYMM, Unit: "mm", Min: -2000, Max: 2000, Doc: "And from the toe along the noon line."},
		}},
		{Key: RecordsMoonLog, Max: 500, Doc: "The class's Moon diary: when it looked, whether it saw the Moon, and what it looked like.", Fields: form.Form{
			{Key: MoonLogGroup, Default: "", Doc: "Who looked, as a group or a letter, never a pupil's name."},
			{Key: MoonLogDate, Required: true, Doc: "Day of the look."},
			{Key: MoonLogTime, Required: true, Doc: "Time by the clock."},
			{Key: MoonLogSeen, Choices: []string{"yes", "no", "cloud"}, Default: "yes", Doc: "Whether the Moon was seen."},
			{Key: MoonLogLitPercent, Unit: "percent", Min: 0, Max: 100, Doc: "How much of the disc was lit, judged by eye: half is 50."},
			{Key: MoonLogLitSide, Choices: MoonSides(), Default: "", Doc: "On which side it was lit; empty for a full or a new Moon."},
			{Key: MoonLogDirection, Choices: Directions(), Default: "", Doc: "Which way the Moon stood."},
			{Key: MoonLogAltitudeDeg, Unit: "deg", Min: 0, Max: 90, Doc: "How high it stood: ten for each fist at the end of the arm."},
		}},
		{Key: RecordsStripLog, Max: 500, Doc: "Where the class put its planets on the strip, measured afterwards.", Fields: form.Form{
			{Key: StripLogGroup, Default: "", Doc: "Who measured."},
			{Key: StripLogBody, Choices: StripBodies(), Required: true, Doc: "Whose place it is."},
			{Key: StripLogSquares, Min: 0, Max: 100000, Required: true, Doc: "Squares from the Sun to the place, or to the last seam before it."},
			{Key: StripLogPastCM, Unit: "cm", Min: 0, Max: 200, Default: 0.0, Doc: "Beyond that seam."},
		}},
		{Key: RecordsMissions, Max: 300, Doc: "What has been sent to the worlds and what is planned, each line with the day on which it was so. It is for every school alike, and starter lays it out filled in.", Fields: form.Form{
			{Key: MissionsWorld, Required: true, Doc: "Where the flight goes. The worlds of the record come in the order of the file."},
			{Key: MissionsFlight, Required: true, Doc: "The flight's name."},
			{Key: MissionsWho, Default: "", Doc: "Who sends it."},
			{Key: MissionsTask, Required: true, Doc: "What it did there, or is to do."},
			{Key: MissionsRung, Min: 1, Max: 7, Required: true, Doc: "Rung of the ladder: 1 look from here, 2 fly past, 3 orbit, 4 set down, 5 drive or fly about, 6 bring a piece back, 7 people."},
			{Key: MissionsYear, Min: 1957, Max: 2200, Required: true, Doc: "Year in which it did so, or is to."},
			{Key: MissionsState, Choices: MissionStates(), Default: "done", Doc: "How far it has come."},
			{Key: MissionsAsOf, Required: true, Doc: "Day on which the line was true."},
		}},
		{Key: RecordsRocketFlights, Max: 200, Doc: "The class's flights: what each rocket was like, who stamped, and the angles or the time from which its height follows.", Fields: form.Form{
			{Key: RocketFlightsGroup, Default: "", Doc: "Whose rocket it is."},
			{Key: RocketFlightsFins, Min: 0, Max: 12, Doc: "Number of fins."},
			{Key: RocketFlightsNoseMM, Unit: "mm", Min: 0, Max: 300, Doc: "Height of the nose cone."},
			{Key: RocketFlightsBodyMM, Unit: "mm", Min: 20, Max: 1000, Doc: "Length of the tube."},
			{Key: RocketFlightsOther, Default: "", Doc: "Anything else that was changed on purpose."},
			{Key: RocketFlightsStamp, Default: "", Doc: "Who stamped, as a number or a letter, never a name."},
			{Key: RocketFlightsPipeDeg, Unit: "deg", Min: 10, Max: 90, Doc: "Angle of the pipe above level."},
			{Key: RocketFlightsBaselineM, Unit: "m", Min: 1, Max: 500, Doc: "From the launcher to the first station; without it the station that rocket-zone has for launch_speed_m_s."},
			{Key: RocketFlightsApartM, Unit: "m", Min: 1, Max: 1000, Doc: "From station to station; without it twice the baseline, which holds where both are equally far from the launcher and no bearings are read."},
			{Key: RocketFlightsAngleDeg, Unit: "deg", Min: 1, Max: 89, Doc: "Angle that the first station read."},
			{Key: RocketFlightsSecondAngleDeg, Unit: "deg", Min: 1, Max: 89, Doc: "Angle that the second station read."},
			{Key: RocketFlightsBearingDeg, Unit: "deg", Min: -89, Max: 89, Default: 0.0, Doc: "Angle on the ground at the first station, from the line to the second one to below the rocket."},
			{Key: RocketFlightsSecondBearingDeg, Unit: "deg", Min: -89, Max: 89, Default: 0.0, Doc: "The same at the second station."},
			{Key: RocketFlightsFlightS, Unit: "s", Min: 0.3, Max: 20, Doc: "Time from the stamp to the ground; it counts where no angle was read."},
		}},
	})
})

var weekdayNames = []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

// StripBodies returns the names of the bodies that have a place on a strip.
func StripBodies() []string {
	var bodies []string
	for _, b := range strip.Bodies() {
		if b.Orbit > 0 {
			bodies = append(bodies, b.Name)
		}
	}
	return bodies
}

// MissionStates returns how far a flight may have come.
func MissionStates() []string { return []string{"done", "under_way", "not_launched", "cancelled"} }

// MoonSides returns what a diary may write for the lit side, each an eighth of a
// turn clockwise from the one before.
func MoonSides() []string {
	return []string{"top", "upper_right", "right", "lower_right", "bottom", "lower_left", "left", "upper_left"}
}

// Directions returns what a diary may write for the direction, each an eighth of
// a turn clockwise from the one before.
func Directions() []string {
	return []string{"north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest"}
}
