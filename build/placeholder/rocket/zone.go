package rocket

import (
	"math"
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/rocket"
)

// What the entry takes.
const argLeastAngle form.Key[float64] = "least_angle"

func rocketZone() entry.Entry {
	return entry.Entry{
		Name:      "rocket-zone",
		Summary:   "The ground that must be clear, on the school's field, with everyone's place and the Sun behind the stations.",
		Lessons:   true,
		Arguments: slices.Concat(form.Form{leastAngle, speedFrom, showParts}, sunArguments, flightArguments),
		Settings:  zoneSettings(),
		Facts: []entry.Fact{
			{Name: "speed", Unit: "m/s", Doc: "highest launch speed, for which the zone is made"},
			{Name: "speed_from", Doc: "whether that speed is from the class's flights or from unit.toml"},
			{Name: "speed_set", Unit: "m/s", Doc: "highest launch speed by unit.toml"},
			{Name: "speed_flown", Unit: "m/s", Doc: "launch speed of the fastest flight on record, its doubt on top"},
			{Name: "wind", Unit: "m/s", Doc: "strongest wind that the zone is for"},
			{Name: "wind_good", Doc: "what the wind moves at most while it is certainly no stronger, by the Beaufort scale"},
			{Name: "wind_sign", Doc: "what it moves as soon as it may be stronger: then nobody launches"},
			{Name: "wind_force", Doc: "number of that sign on the Beaufort scale"},
			{Name: "reach", Unit: "m", Doc: "farthest landing at that speed, at any angle of the pipe that it can take, down the wind"},
			{Name: "reach_angle", Unit: "deg", Doc: "angle at which it goes so far"},
			{Name: "margin", Unit: "m", Doc: "what the school adds to that reach"},
			{Name: "reach_with_margin", Unit: "m", Doc: "that reach with the school's margin"},
			{Name: "reach_no_air", Unit: "m", Doc: "farthest landing without air and wind, at any angle of the pipe that it can take"},
			{Name: "zone_from", Doc: "which of the two is larger and makes the zone"},
			{Name: "clear", Unit: "m", Doc: "radius of the clear zone round the launcher"},
			{Name: "room", Unit: "m", Doc: "distance from the roomiest spot of the field to its nearest edge"},
			{Name: "fits", Doc: "whether the clear zone lies within the field", Truth: true},
			{Name: "angle_inside", Unit: "deg", Doc: "lowest angle of a fixed pipe at which the clear zone lies within the field"},
			{Name: "speed_inside", Unit: "m/s", Doc: "highest launch speed at which it does, at any angle of the pipe that it can take"},
			{Name: "drag_inside", Doc: "drag coefficient of a rocket with which it does, instead of drag_coefficient; none where the reach without air is too far"},
			{Name: "station", Unit: "m", Doc: "distance of the measuring stations from the launcher, outside the clear zone"},
			{Name: "station_angle", Unit: "deg", Doc: "angle at which they see the highest flight at its top"},
			{Name: "paper_scale", Unit: "mm", Doc: "what a metre outside is on paper, so that a drawing of station and launcher goes on the school's paper"},
			{Name: "station_drawn", Unit: "mm", Doc: "the stations' distance on that drawing"},
			{Name: "eye_drawn", Unit: "mm", Doc: "the height of the eye on that drawing"},
			{Name: "sun_time", Doc: "time of the launches, for which the side of the Sun is"},
			entry.Truth("sun_up", "whether the Sun is up then"),
			entry.Truth("sun_high", "whether it is almost overhead at some time of the launches, so that nobody sights above sight_limit"),
			{Name: "sun_side", Doc: "which way the Sun is then, in words"},
			{Name: "sun_bearing", Unit: "deg", Doc: "true bearing of the Sun then"},
			{Name: "sun_altitude", Unit: "deg", Doc: "how high it is seen"},
			{Name: "station_one", Unit: "deg", Doc: "true bearing of station 1 from the launcher"},
			{Name: "station_two", Unit: "deg", Doc: "true bearing of station 2 from the launcher"},
			{Name: "waiting", Unit: "deg", Doc: "true bearing of the place where the class waits, between the stations"},
			{Name: "sun_apart", Unit: "deg", Doc: "least angle between the Sun and what a station sights, up to the top of the highest flight, while the class launches"},
			{Name: "sight_limit", Unit: "deg", Doc: "angle above which nobody sights, where the Sun is almost overhead"},
			{Name: "highest", Unit: "m", Doc: "greatest height, straight up"},
			{Name: "longest", Unit: "s", Doc: "longest flight, straight up"},
		},
		Sources:   []string{sourceNoZone, sourceFlight, sourceDrag, entry.SourceSun, entry.SourceIANA, sourceSunSide, sourceWind},
		Cautions:  []string{entry.CareSighting},
		Sometimes: []string{entry.CareClearZone},
		Reckon:    reckonRocketZone,
	}
}

func zoneSettings() form.Keys {
	keys := slices.Concat(form.Keys{school.ClassPupils}, logSettings, school.FieldSettings(), flightSettings)
	for _, key := range school.CalendarSettings() {
		if !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// A zone is what must be clear and what there is. Its radius is the larger of two
// reaches: the one with air and wind, which rests on a drag coefficient that nobody
// has measured, with the school's margin; and the one without air, which no rocket
// passes in still air, whatever its drag and its mass.
type zone struct {
	rocket  rocket.Rocket
	launch  rocket.Launch
	air     rocket.Air
	least   quantity.Angle
	margin  float64 // 1.5 for 50 %
	reach   quantity.Length
	at      quantity.Angle // of the pipe, for that reach
	free    quantity.Length
	freeAt  quantity.Angle  // of the pipe, for the reach without air
	clear   quantity.Length // rounded up to a whole metre
	station quantity.Length
	highest rocket.Flight   // straight up in still air
	room    quantity.Length // from the roomiest spot of the field to its edge
	corners []drawing.Point // of the field, in metres from that spot; y up
	mapped  bool            // the corners' y is north
	speed   launchSpeed
	sun     sunSide
}

// zoneOf is the zone for the highest speed that is known of the launcher.
func zoneOf(v form.Values) (zone, error) {
	r, l, air, err := flightOf(v)
	if err != nil {
		return zone{}, err
	}
	return zoneFor(v, r, l, air)
}

// setZoneOf is the zone for the speed of unit.toml, by which the class set out its
// stations before it had flights on record.
func setZoneOf(v form.Values) (zone, error) {
	r, l, air, err := setFlightOf(v)
	if err != nil {
		return zone{}, err
	}
	return zoneFor(v, r, l, air)
}

func zoneFor(v form.Values, r rocket.Rocket, l rocket.Launch, air rocket.Air) (z zone, err error) {
	z.rocket, z.launch, z.air = r, l, air
	if z.highest, err = rocket.Fly(z.rocket, z.launch, z.air); err != nil {
		return z, err
	}
	z.air.Along = rocket.Speed(school.FieldWindMS.Of(v))
	z.least = quantity.Degrees(argLeastAngle.Of(v))
	z.margin = 1 + school.FieldMarginPercent.Of(v)/100
	far, err := reachOf(z.rocket, z.launch, z.air, z.least)
	if err != nil {
		return z, err
	}
	z.reach, z.at = far.reach, far.at
	z.free, z.freeAt = rocket.NoAirReach(z.launch, z.least)
	z.clear = quantity.Metres(ceil(max(z.added().Metres(), z.free.Metres())))
	z.station = z.clear + 2 // outside it beyond doubt
	return z, nil
}

// added is the reach with air and wind with the school's margin.
func (z zone) added() quantity.Length { return z.reach * quantity.Length(z.margin) }

// Distances to keep are rounded up in every measure.
func (z zone) clearValue() say.Value { return say.Metres(z.clear, 0).AtLeast() }

func (z zone) stationValue() say.Value { return say.Metres(z.station, 0).AtLeast() }

func (z zone) reachValue() say.Value { return say.Metres(z.reach, 0).AtLeast() }

// onField puts the launcher on the field's roomiest spot. A rectangle is drawn with
// its long side across, another outline with north up.
func (z *zone) onField(v form.Values) error {
	if !school.FieldOutline.In(v) {
		a, b := school.FieldWidthM.Of(v), school.FieldLengthM.Of(v)
		x, y := max(a, b)/2, min(a, b)/2
		z.room = quantity.Metres(y)
		z.corners = []drawing.Point{{X: -x, Y: y}, {X: x, Y: y}, {X: x, Y: -y}, {X: -x, Y: -y}}
		return nil
	}
	z.mapped = true
	outline := school.Outline(v)
	if err := outline.Check(); err != nil {
		return err
	}
	spot, room := outline.Roomiest()
	z.room = room
	for _, c := range outline {
		z.corners = append(z.corners, drawing.Point{X: (c.East - spot.East).Metres(), Y: (c.North - spot.North).Metres()})
	}
	return nil
}

func (z zone) fits() bool { return z.clear <= z.room+1e-6 }

// leastAngle is the argument of what depends on the clear zone.
var leastAngle = form.Field{Key: argLeastAngle, Unit: "deg", Min: 0, Max: 90, Default: 0.0, Doc: "Lowest angle above level at which the fixed pipe can stand; 0 where it may tip over."}

func reckonRocketZone(v form.Values) (result.Result, error) {
	z, err := zoneOf(v)
	if err != nil {
		return result.Result{}, err
	}
	if err := z.onField(v); err != nil {
		return result.Result{}, err
	}
	if z.speed, err = launchSpeedOf(v); err != nil {
		return result.Result{}, err
	}
	if z.sun, err = sunSideOf(v); err != nil {
		return result.Result{}, err
	}
	eye := quantity.Metres(school.ClassEyeHeightM.Of(v))
	top := quantity.Atan2((z.highest.Apogee.Up - eye).Metres(), z.station.Metres())
	inside, warnings, err := z.fieldFacts()
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{Facts: slices.Concat(z.speed.facts(), z.reachFacts(), inside, []result.Fact{
		{Name: "station", Value: z.stationValue()},
		{Name: "station_angle", Value: say.Degrees(top, 0)},
		{Name: "paper_scale", Value: drawnValue(z.paperScale())},
		{Name: "station_drawn", Value: drawnValue(z.paperScale() * z.station.Metres())},
		{Name: "eye_drawn", Value: drawnValue(z.paperScale() * eye.Metres())},
	}, z.sun.facts(max(0, top)), []result.Fact{
		{Name: "highest", Value: say.Metres(z.highest.Apogee.Up, 0)},
		{Name: "longest", Value: say.Number(z.highest.Landing.Time.Seconds(), "s", 1)},
	}, windFacts(z.air.Along))}
	r.Warnings = append(z.speed.warnings(), warnings...)
	r.Cautions = []say.Phrase{entry.Caution(entry.CareClearZone, z.clearValue(), speedOf(z.air.Along))}
	r.Drawings = []drawing.Drawing{z.drawing()}
	r.Tables = []result.Table{peopleTable(school.ClassPupils.Of(v), z)}
	r.Notes = slices.Concat(z.sun.notes(z.stationValue()), []say.Phrase{z.peopleNote(), windNote(z.air.Along), say.Line("rocket-zone.authority"), z.rule(), z.speed.note()})
	if z.speed.unplaced {
		r.Notes = append(r.Notes, say.Line("rocket-zone.note_unplaced"))
	}
	r.Working = []say.Phrase{
		say.Line("rocket-zone.working_reach", speedOf(z.launch.Speed), speedOf(z.air.Along), say.Degrees(z.at, 0), say.Metres(z.reach, 2)),
		z.marginWorking(),
		z.noAirWorking(),
		say.Line("rocket-zone.working_clear", say.Metres(z.added(), 1), say.Metres(z.free, 1), say.Metres(z.clear, 0)),
	}
	return shown(r, v), nil
}

func (z zone) reachFacts() []result.Fact {
	from := say.Words("rocket-zone.from_air")
	if z.free > z.added() {
		from = say.Words("rocket-zone.from_no_air")
	}
	return []result.Fact{
		{Name: "wind", Value: speedOf(z.air.Along)},
		{Name: "reach", Value: say.Metres(z.reach, 1)},
		{Name: "reach_angle", Value: say.Degrees(z.at, 0)},
		{Name: "margin", Value: say.Metres(z.added()-z.reach, 1)},
		{Name: "reach_with_margin", Value: say.Metres(z.added(), 1)},
		{Name: "reach_no_air", Value: say.Metres(z.free, 1)},
		{Name: "zone_from", Value: from},
		{Name: "clear", Value: z.clearValue()},
	}
}

// rule says which reach makes the zone, and why there are two.
func (z zone) rule() say.Phrase {
	key := "rocket-zone.note_air"
	if z.free > z.added() {
		key = "rocket-zone.note_no_air"
	}
	return say.Line(key, say.Metres(z.added(), 1), say.Metres(z.free, 1), z.clearValue())
}

// slowest is a launch speed below which nobody would call it a launch: 5 m/s
// rise to 1.3 m.
const slowest rocket.Speed = 5

// mostDrag bounds the drag coefficient of what is still a rocket.
const mostDrag = 3

// fieldFacts compare the zone with the field, and find what brings it inside: a
// steeper pipe, a weaker stamp, or a rocket with more drag where that can help.
func (z zone) fieldFacts() ([]result.Fact, []say.Phrase, error) {
	room, fits := say.Metres(z.room, entry.WholeOrTenth(z.room.Metres())), say.Yes(z.fits(), "rocket-zone.fits", "rocket-zone.too_small")
	angle, speed, drag := say.None("rocket-zone.not_needed"), say.None("rocket-zone.not_needed"), say.None("rocket-zone.not_needed")
	var warnings []say.Phrase
	if !z.fits() {
		w, err := z.ways()
		if err != nil {
			return nil, nil, err
		}
		warnings = append(warnings, say.Line("rocket-zone.small", z.clearValue(), room))
		angle, speed, drag = say.None("rocket-zone.no_angle"), say.None("rocket-zone.no_speed"), say.None("rocket-zone.no_drag")
		if w.steep {
			angle = say.Degrees(w.angle, 0)
			angle.Number = ceil(w.angle.Degrees())
			warnings = append(warnings, say.Line("rocket-zone.way_angle", angle))
		}
		if w.speed >= slowest {
			speed = speedOf(w.speed)
			speed.Number = floorTenth(w.speed.MetresASecond())
			warnings = append(warnings, say.Line("rocket-zone.way_speed", speed))
		}
		if w.draggy {
			drag = say.Number(w.drag, "", 1)
			drag.Number = ceilTenth(w.drag)
			warnings = append(warnings, say.Line("rocket-zone.way_drag", drag, say.Number(z.rocket.Drag, "", 1)))
		}
		if len(warnings) == 1 {
			warnings = append(warnings, say.Line("rocket-zone.other_field"))
		}
	}
	return []result.Fact{
		{Name: "room", Value: room}, {Name: "fits", Value: fits},
		{Name: "angle_inside", Value: angle}, {Name: "speed_inside", Value: speed}, {Name: "drag_inside", Value: drag},
	}, warnings, nil
}

// ways are what brings a zone inside the field, each by itself.
type ways struct {
	steep, draggy bool
	angle         quantity.Angle
	speed         rocket.Speed // 0 where none does
	drag          float64
}

// ways finds, for each, where both reaches lie within the field's room in whole
// metres. Drag does nothing to the reach without air: where that one is too far, no
// rocket helps.
func (z zone) ways() (w ways, err error) {
	room := quantity.Metres(math.Floor(z.room.Metres() + 1e-6))
	if room <= 0 {
		return w, nil
	}
	withAir := room / quantity.Length(z.margin)
	if w.angle, w.steep, err = rocket.SteepEnough(z.rocket, z.launch, z.air, withAir); err != nil {
		return w, err
	}
	free, err := rocket.NoAirSteepEnough(z.launch, room)
	if err != nil {
		return w, err
	}
	w.angle = max(w.angle, free)
	slow, ok, err := rocket.SlowEnough(z.rocket, z.launch, z.air, z.least, withAir)
	if err != nil {
		return w, err
	}
	if ok {
		slowFree, err := rocket.NoAirSlowEnough(z.launch.Height, z.least, room)
		if err != nil {
			return w, err
		}
		w.speed = min(slow, slowFree)
	}
	if z.free <= room {
		w.drag, w.draggy, err = rocket.DraggyEnough(z.rocket, z.launch, z.air, z.least, withAir, mostDrag)
	}
	return w, err
}

func (z zone) marginWorking() say.Phrase {
	o := entry.Enough(say.Metres(z.added(), 1), func(x []float64) float64 { return x[0] * x[1] }, say.Metres(z.reach, 2), say.Number(z.margin, "", 2))
	return say.Line("rocket-zone.working_margin", o[0], o[1], say.Metres(z.added(), 1))
}

// noAirWorking is the reach without air at the best angle of all, or at the lowest
// that the pipe can take.
func (z zone) noAirWorking() say.Phrase {
	reach := say.Metres(z.free, 1)
	speed, height, pull := speedOf(z.launch.Speed), say.Metres(z.launch.Height, 1), say.Number(rocket.Gravity, "m_s2", 2)
	if z.freeAt > z.least || z.least == 0 {
		o := entry.Enough(reach, func(x []float64) float64 { return x[0] / x[2] * math.Sqrt(x[0]*x[0]+2*x[2]*x[1]) }, speed, height, pull)
		return say.Line("rocket-zone.working_free", o[0], reach, o[1], o[2])
	}
	o := entry.Enough(reach, func(x []float64) float64 {
		sin, cos := quantity.Degrees(x[3]).Sin(), quantity.Degrees(x[3]).Cos()
		return x[0] * cos / x[2] * (x[0]*sin + math.Sqrt(x[0]*sin*x[0]*sin+2*x[2]*x[1]))
	}, speed, height, pull, say.Degrees(z.least, 0))
	return say.Line("rocket-zone.working_free_fixed", o[0], reach, o[1], o[2], o[3])
}
