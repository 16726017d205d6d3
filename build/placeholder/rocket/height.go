package rocket

import (
	"math"
	"slices"
	"time"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const (
	argAngle         form.Key[float64] = "angle"
	argBaselineM     form.Key[float64] = "baseline_m"
	argSecondAngle   form.Key[float64] = "second_angle"
	argApartM        form.Key[float64] = "apart_m"
	argBearing       form.Key[float64] = "bearing"
	argSecondBearing form.Key[float64] = "second_bearing"
	argFlightS       form.Key[float64] = "flight_s"
	argAngleOff      form.Key[float64] = "angle_off"
	argBaselineOffM  form.Key[float64] = "baseline_off_m"
	argTimeOffS      form.Key[float64] = "time_off_s"
)

func rocketHeight() entry.Entry {
	return entry.Entry{
		Name:    "rocket-height",
		Summary: "How high a rocket was, from one station, from two, or from how long it flew; and where to stand.",
		Arguments: append(form.Form{
			{Key: argAngle, Unit: "deg", Min: 1, Max: 89, Assumed: "the angle at which the highest flight that the launcher gives is seen", Doc: "Angle above level that the first station reads."},
			{Key: argBaselineM, Unit: "m", Min: 1, Max: 500, Assumed: "where rocket-zone puts the stations", Doc: "Distance on the ground from the launcher to the first station."},
			{Key: argSecondAngle, Unit: "deg", Min: 1, Max: 89, Doc: "Angle that the second station reads."},
			{Key: argApartM, Unit: "m", Min: 1, Max: 1000, Assumed: "twice baseline_m, which holds for two stations equally far from the launcher without bearings", Doc: "Distance between the two stations."},
			{Key: argBearing, Unit: "deg", Min: -89, Max: 89, Default: 0.0, Doc: "Angle on the ground at the first station, from the line to the second one to below the rocket."},
			{Key: argSecondBearing, Unit: "deg", Min: -89, Max: 89, Default: 0.0, Doc: "The same at the second station, from the line to the first one."},
			{Key: argFlightS, Unit: "s", Min: 0.3, Max: 20, Doc: "How long a flight lasted, from the stamp to the ground."},
			{Key: argAngleOff, Unit: "deg", Min: 0, Max: 10, Default: usualCare.Angle.Degrees(), Doc: "How well an angle is read."},
			{Key: argBaselineOffM, Unit: "m", Min: 0, Max: 10, Default: usualCare.Length.Metres(), Doc: "How well the baseline is measured."},
			{Key: argTimeOffS, Unit: "s", Min: 0, Max: 2, Default: usualCare.Time.Seconds(), Doc: "How well the time is taken."},
			leastAngle, speedFrom,
		}, flightArguments...),
		Settings: slices.Concat(logSettings, flightSettings),
		Facts: []entry.Fact{
			{Name: "eye_height", Unit: "m", Doc: "height of the eye that looks"},
			{Name: "above_eye", Unit: "m", Doc: "height above the eye, from the first station alone"},
			{Name: "height", Unit: "m", Doc: "height above the ground, from the first station alone"},
			{Name: "by_angle", Unit: "m", Doc: "what the doubt in the angle does to it, to the side on which it does more"},
			{Name: "by_baseline", Unit: "m", Doc: "what the doubt in the baseline does to it"},
			{Name: "spread", Unit: "m", Doc: "both together, the root of the sum of their squares"},
			{Name: "two_stations", Unit: "m", Doc: "height from both stations"},
			{Name: "two_stations_spread", Unit: "m", Doc: "its doubt"},
			{Name: "disagreement", Unit: "percent", Doc: "by how much the heights that each station would find alone differ; more than 10 % is a misreading"},
			{Name: "from_time", Unit: "m", Doc: "height of a flight straight up that lasted flight_s, with air"},
			{Name: "from_time_spread", Unit: "m", Doc: "what the doubt in the time does to it"},
			{Name: "from_time_no_air", Unit: "m", Doc: "the same without air, g t²/8"},
			{Name: "launch_speed", Unit: "m/s", Doc: "speed at which a rocket must leave the pipe, straight up, to reach the height of the first station"},
			{Name: "expected", Unit: "m", Doc: "height that the launcher's highest speed gives, straight up"},
			{Name: "baseline_from", Unit: "m", Doc: "nearest baseline from which heights from 60 % to all of the expected one are seen at 30° to 60°"},
			{Name: "baseline_to", Unit: "m", Doc: "farthest such baseline"},
		},
		Sources:  []string{sourceHeights, sourceFlight, sourceDrag, "Angles best between 30° and 60°: common practice, no source"},
		Cautions: []string{entry.CareSighting},
		Reckon:   reckonRocketHeight,
	}
}

func reckonRocketHeight(v form.Values) (result.Result, error) {
	atStation := !argBaselineM.In(v) // a distance to keep
	v, err := sighted(v)
	if err != nil {
		return result.Result{}, err
	}
	angle, baseline := quantity.Degrees(argAngle.Of(v)), quantity.Metres(argBaselineM.Of(v))
	eye, care := quantity.Metres(school.ClassEyeHeightM.Of(v)), careOf(v)
	h, err := rocket.OneStation(angle, baseline, eye, care)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{Facts: []result.Fact{
		{Name: "eye_height", Value: say.Metres(eye, 2)},
		{Name: "above_eye", Value: say.Metres(h.Value-eye, 1)},
		{Name: "height", Value: say.Metres(h.Value, 1)},
		{Name: "by_angle", Value: doubt(h.ByAngle)},
		{Name: "by_baseline", Value: say.Metres(h.ByLength, 1)},
		{Name: "spread", Value: doubt(h.Spread())},
	}}
	for _, more := range []func(form.Values) ([]result.Fact, error){secondStationFacts, timeFacts, func(v form.Values) ([]result.Fact, error) { return speedFacts(v, h.Value) }} {
		facts, err := more(v)
		if err != nil {
			return result.Result{}, err
		}
		r.Facts = append(r.Facts, facts...)
	}
	station := say.Metres(baseline, 1)
	if atStation {
		station = station.AtLeast()
	}
	if r.Tables, err = heightTables(station, eye, angle, care); err != nil {
		return result.Result{}, err
	}
	r.Notes = []say.Phrase{
		say.Line("rocket-height.note_marks", station, say.Metres(eye, 2)),
		say.Line("rocket-height.note_care", say.Number(argAngleOff.Of(v), "deg", 1), say.Metres(care.Length, 1)),
	}
	height := say.Metres(h.Value, 1)
	e := entry.Enough(height, func(x []float64) float64 { return x[0] + x[1] }, say.Metres(h.Value-eye, 1), say.Metres(eye, 2))
	b := entry.Enough(e[0], func(x []float64) float64 { return x[0] * x[1] }, say.Metres(baseline, 1), say.Number(angle.Tan(), "", 3))
	a := entry.Enough(e[0], func(x []float64) float64 { return x[0] * quantity.Degrees(x[1]).Tan() }, b[0], say.Degrees(angle, 0))
	b = entry.Enough(e[0], func(x []float64) float64 { return x[0] * x[1] }, a[0], b[1])
	a = entry.Enough(b[1], func(x []float64) float64 { return quantity.Degrees(x[0]).Tan() }, a[1])
	r.Working = []say.Phrase{
		say.Line("rocket-height.working", b[0], a[0], b[1], e[0], e[1], height),
		say.Line("rocket-height.working_stations"),
	}
	if angle > quantity.Degrees(75) {
		r.Notes = append(r.Notes, say.Line("rocket-height.steep", say.Degrees(angle, 0), doubt(h.ByAngle)))
	}
	return r, nil
}

// sighted fills in a baseline and an angle that are not given: the station of the
// clear zone, and the highest flight seen from there.
func sighted(v form.Values) (form.Values, error) {
	if argBaselineM.In(v) && argAngle.In(v) {
		return v, nil
	}
	z, err := zoneOf(v)
	if err != nil {
		return v, err
	}
	full := v.With(nil)
	if !argBaselineM.In(v) {
		full["baseline_m"] = z.station.Metres()
	}
	if !argAngle.In(v) {
		above := z.highest.Apogee.Up.Metres() - school.ClassEyeHeightM.Of(v)
		full["angle"] = min(89, max(1, math.Round(quantity.Atan2(above, argBaselineM.Of(full)).Degrees())))
	}
	return full, nil
}

func careOf(v form.Values) rocket.Care {
	return rocket.Care{
		Angle:  quantity.Degrees(argAngleOff.Of(v)),
		Length: quantity.Metres(argBaselineOffM.Of(v)),
		Time:   time.Duration(argTimeOffS.Of(v) * float64(time.Second)),
	}
}

func secondStationFacts(v form.Values) ([]result.Fact, error) {
	none := say.None("rocket-height.no_second")
	height, spread, apart := none, none, none
	if argSecondAngle.In(v) {
		first := rocket.Sighting{Elevation: quantity.Degrees(argAngle.Of(v)), Bearing: quantity.Degrees(argBearing.Of(v))}
		second := rocket.Sighting{Elevation: quantity.Degrees(argSecondAngle.Of(v)), Bearing: quantity.Degrees(argSecondBearing.Of(v))}
		between := 2 * argBaselineM.Of(v)
		if argApartM.In(v) {
			between = argApartM.Of(v)
		}
		h, err := rocket.TwoStations(first, second, quantity.Metres(between), quantity.Metres(school.ClassEyeHeightM.Of(v)), careOf(v))
		if err != nil {
			return nil, err
		}
		height, spread, apart = say.Metres(h.Value, 1), doubt(h.Spread()), say.None("rocket-height.in_line")
		if part, ok := rocket.Disagreement(first, second); ok {
			apart = say.Number(100*part, "percent", 0)
		}
	}
	return []result.Fact{{Name: "two_stations", Value: height}, {Name: "two_stations_spread", Value: spread}, {Name: "disagreement", Value: apart}}, nil
}

func timeFacts(v form.Values) ([]result.Fact, error) {
	none := say.None("rocket-height.no_time")
	height, spread, free := none, none, none
	if argFlightS.In(v) {
		r, l, air, err := flightOf(v)
		if err != nil {
			return nil, err
		}
		lasting := time.Duration(argFlightS.Of(v) * float64(time.Second))
		h, err := rocket.FromTime(r, l, air, lasting, careOf(v))
		if err != nil {
			return nil, err
		}
		height, spread, free = say.Metres(h.Value, 1), doubt(h.ByTime), say.Metres(rocket.NoAirHeight(lasting), 1)
	}
	return []result.Fact{{Name: "from_time", Value: height}, {Name: "from_time_spread", Value: spread}, {Name: "from_time_no_air", Value: free}}, nil
}

// speedFacts say what the height means for the launcher, and where to stand for
// the heights that the launcher's speed gives.
func speedFacts(v form.Values, height quantity.Length) ([]result.Fact, error) {
	r, l, air, err := flightOf(v)
	if err != nil {
		return nil, err
	}
	needed := say.None("rocket-height.out_of_range", say.Number(float64(rocket.MaxSpeed), "m_s", 0))
	if speed, err := rocket.SpeedForHeight(r, l, air, height); err == nil {
		needed = speedOf(speed)
	}
	flight, err := rocket.Fly(r, l, air)
	if err != nil {
		return nil, err
	}
	highest := flight.Apogee.Up
	near, far := say.None("rocket-height.no_baseline"), say.None("rocket-height.no_baseline")
	eye := quantity.Metres(school.ClassEyeHeightM.Of(v))
	if from, to, ok := rocket.Baselines(highest*6/10, highest, eye, quantity.Degrees(30), quantity.Degrees(60)); ok {
		near, far = say.Metres(from, 0), say.Metres(to, 0)
	}
	return []result.Fact{
		{Name: "launch_speed", Value: needed}, {Name: "expected", Value: say.Metres(highest, 1)},
		{Name: "baseline_from", Value: near}, {Name: "baseline_to", Value: far},
	}, nil
}

// heightTables are heights by angle and baseline, and what a misreading does.
func heightTables(station say.Value, eye quantity.Length, angle quantity.Angle, care rocket.Care) ([]result.Table, error) {
	baseline := quantity.Metres(station.Number)
	marks := result.Table{
		Name: "marks", Title: say.Line("rocket-height.title_marks"),
		Columns: []result.Column{{Name: "angle", Unit: "deg"}, {Name: "a", Unit: "m"}, {Name: "b", Unit: "m"}, {Name: "c", Unit: "m"}, {Name: "d", Unit: "m"}, {Name: "e", Unit: "m"}},
	}
	careful := result.Table{
		Name: "care", Title: say.Line("rocket-height.title_care", station),
		Columns: []result.Column{{Name: "angle", Unit: "deg"}, {Name: "height", Unit: "m"}, {Name: "by_angle", Unit: "m"}, {Name: "by_baseline", Unit: "m"}, {Name: "spread", Unit: "m"}},
	}
	distances := []quantity.Length{baseline, baseline + 5, baseline + 10, baseline + 20, baseline + 30}
	head := []say.Value{say.Words("rocket-height.distance")}
	for _, d := range distances {
		from := station
		from.Number = d.Metres()
		head = append(head, from)
	}
	marks.Rows = append(marks.Rows, result.Row{Cells: head})
	for _, a := range tableAngles(angle) {
		row := result.Row{Marked: a == angle, Cells: []say.Value{say.Degrees(a, 0)}}
		for i, d := range distances {
			h, err := rocket.OneStation(a, d, eye, care)
			if err != nil {
				return nil, err
			}
			row.Cells = append(row.Cells, say.Metres(h.Value, 1))
			if i == 0 {
				careful.Rows = append(careful.Rows, result.Row{Marked: a == angle, Cells: []say.Value{
					say.Degrees(a, 0), say.Metres(h.Value, 1), doubt(h.ByAngle), say.Metres(h.ByLength, 1), doubt(h.Spread()),
				}})
			}
		}
		marks.Rows = append(marks.Rows, row)
	}
	return []result.Table{marks, careful}, nil
}

// tableAngles are every five degrees from 5° to 70°, with the wanted one.
func tableAngles(wanted quantity.Angle) []quantity.Angle {
	angles := []quantity.Angle{wanted}
	for d := 5.0; d <= 70; d += 5 {
		if math.Abs(d-wanted.Degrees()) > 1e-9 {
			angles = append(angles, quantity.Degrees(d))
		}
	}
	slices.Sort(angles)
	return angles
}
