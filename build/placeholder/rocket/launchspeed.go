package rocket

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const argSpeedFrom form.Key[string] = "speed_from"

// Where a launch speed may be from.
const (
	fromFlights = "flights"
	fromUnit    = "unit"
)

// speedFrom is the argument of what flies at the launcher's highest speed.
var speedFrom = form.Field{Key: argSpeedFrom, Choices: []string{fromFlights, fromUnit}, Default: fromFlights,
	Doc: "What sets the launch speed: the class's flights where they were faster than launch_speed_m_s, or unit.toml alone."}

// logSettings are what a launch speed from the class's flights depends on.
var logSettings = form.Keys{school.ClassEyeHeightM, school.FieldMarginPercent, school.FieldWindMS, school.RecordsRocketFlights}

// usualCare is how well a class reads an angle, a distance and a time.
var usualCare = rocket.Care{Angle: quantity.Degrees(1), Length: quantity.Metres(0.1), Time: 200 * time.Millisecond}

// A launchSpeed is the highest speed at which the launcher sends a rocket off, as it
// was set and as the class's own flights have it. The higher one counts: a record can
// show that the launcher is faster than was thought, and never that it is slower,
// since the next stamp may be harder.
type launchSpeed struct {
	set      rocket.Speed
	flown    rocket.Speed  // rounded up to 0.1 m/s; 0 without a flight that shows one
	height   rocket.Height // of the flight that was so fast
	line     int           // and its line in the file
	file     string
	misread  []int // lines with heights that no launch reaches
	unplaced bool  // some flight was seen from no baseline of its own
}

func (s launchSpeed) fromFlights() bool { return s.flown > s.set }

func (s launchSpeed) used() rocket.Speed { return max(s.set, s.flown) }

// A recorded is a height with its doubt on top, and the pipe that it was flown from.
type recorded struct {
	height rocket.Height
	most   quantity.Length
	pipe   quantity.Angle
	line   int
}

// launchSpeedOf finds the speed at which the record's highest flight left the pipe. It
// takes heights with their doubt on top, so that a reading that was a little low makes
// no zone too small, each for the angle that its pipe had. Where a flight has no
// baseline, it was measured from the station that the set speed gives.
func launchSpeedOf(v form.Values) (launchSpeed, error) {
	r, l, air, err := setFlightOf(v)
	if err != nil {
		return launchSpeed{}, err
	}
	records := school.RecordsRocketFlights.Of(v)
	s := launchSpeed{set: l.Speed, file: records.File}
	if len(records.Rows) == 0 || argSpeedFrom.Of(v) == fromUnit {
		return s, nil
	}
	z, err := setZoneOf(v.With(argLeastAngle.Is(0)))
	if err != nil {
		return s, err
	}
	var flights []recorded
	for i, row := range records.Rows {
		h, _, err := heightOf(v, row, z, usualCare)
		if err != nil {
			return s, fmt.Errorf("%s, line %d: %w", records.File, records.Line[i], err)
		}
		f := recorded{height: h, most: h.Value + h.Spread(), pipe: quantity.Degrees(90), line: records.Line[i]}
		if school.RocketFlightsPipeDeg.In(row) {
			f.pipe = quantity.Degrees(school.RocketFlightsPipeDeg.Of(row))
		}
		s.unplaced = s.unplaced || !argBaselineM.In(row) && !argFlightS.In(row)
		flights = append(flights, f)
	}
	slices.SortStableFunc(flights, func(a, b recorded) int { return cmp.Compare(b.most, a.most) })
	fastest := map[quantity.Angle]bool{} // pipes whose highest flight is known
	for _, f := range flights {
		if fastest[f.pipe] || f.most <= l.Height {
			continue
		}
		l.Elevation = f.pipe
		speed := rocket.Speed(math.Inf(1))
		if !math.IsInf(f.most.Metres(), 1) {
			if v, err := speedTo(r, l, air, f.most); err == nil {
				speed = v
			}
		}
		if math.IsInf(float64(speed), 1) {
			s.misread = append(s.misread, f.line)
			continue
		}
		fastest[f.pipe] = true
		if speed > s.flown {
			s.flown, s.height, s.line = rocket.Speed(ceilTenth(float64(speed))), f.height, f.line
		}
	}
	slices.Sort(s.misread)
	return s, nil
}

// facts say which speed counts, and what the other one is.
func (s launchSpeed) facts() []result.Fact {
	from, flown := say.Words("rocket-zone.from_unit"), say.None("rocket-zone.no_flights")
	if s.flown > 0 {
		flown = speedOf(s.flown)
	}
	speed := speedOf(s.set)
	if s.fromFlights() {
		from, speed = say.Words("rocket-zone.from_flights"), flown
	}
	return []result.Fact{
		{Name: "speed", Value: speed}, {Name: "speed_from", Value: from},
		{Name: "speed_set", Value: speedOf(s.set)}, {Name: "speed_flown", Value: flown},
	}
}

// note says why the one speed counts and not the other.
func (s launchSpeed) note() say.Phrase {
	file, line := say.Text(s.file), say.Count(s.line)
	switch {
	case s.flown == 0:
		return say.Line("rocket-zone.note_unit", speedOf(s.set))
	case s.fromFlights():
		return say.Line("rocket-zone.note_faster", line, file, say.Metres(s.height.Value, 1), doubt(s.height.Spread()), speedOf(s.flown), speedOf(s.set))
	}
	return say.Line("rocket-zone.note_slower", speedOf(s.set), line, file, say.Metres(s.height.Value, 1), doubt(s.height.Spread()), speedOf(s.flown))
}

// warnings name the flights that cannot have been.
func (s launchSpeed) warnings() []say.Phrase {
	var lines []say.Phrase
	for _, line := range s.misread {
		lines = append(lines, say.Line("rocket-zone.misread", say.Count(line), say.Text(s.file), say.Number(float64(rocket.MaxSpeed), "m_s", 0)))
	}
	return lines
}
