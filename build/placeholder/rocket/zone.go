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
		Summary:   "The ground that must be clear, on the school's field, with everyone's place.",
		Arguments: append(form.Form{leastAngle}, flightArguments...),
		Settings:  slices.Concat(form.Keys{school.ClassPupils, school.ClassEyeHeightM, school.FieldMarginPercent, school.FieldWindMS}, school.FieldSettings(), flightSettings),
		Facts: []entry.Fact{
			{Name: "speed", Unit: "m/s", Doc: "highest launch speed"},
			{Name: "wind", Unit: "m/s", Doc: "strongest wind that the zone is for"},
			{Name: "reach", Unit: "m", Doc: "farthest landing at that speed, at any angle of the pipe that it can take, down the wind"},
			{Name: "reach_angle", Unit: "deg", Doc: "angle at which it goes so far"},
			{Name: "reach_no_air", Unit: "m", Doc: "farthest landing without air and wind, at any angle"},
			{Name: "margin", Unit: "m", Doc: "what the school adds"},
			{Name: "clear", Unit: "m", Doc: "radius of the clear zone round the launcher"},
			{Name: "room", Unit: "m", Doc: "distance from the roomiest spot of the field to its nearest edge"},
			{Name: "fits", Doc: "whether the clear zone lies within the field"},
			{Name: "angle_inside", Unit: "deg", Doc: "lowest angle of a fixed pipe at which the clear zone lies within the field"},
			{Name: "speed_inside", Unit: "m/s", Doc: "highest launch speed at which it does, at any angle"},
			{Name: "drag_inside", Doc: "drag coefficient of a rocket with which it does, at any angle, instead of drag_coefficient"},
			{Name: "station", Unit: "m", Doc: "distance of the measuring stations from the launcher, outside the clear zone"},
			{Name: "station_angle", Unit: "deg", Doc: "angle at which they see the highest flight at its top"},
			{Name: "highest", Unit: "m", Doc: "greatest height, straight up"},
			{Name: "longest", Unit: "s", Doc: "longest flight, straight up"},
		},
		Sources:  []string{sourceNoZone, sourceFlight, sourceDrag},
		Cautions: []string{entry.CareSighting},
		Reckon:   reckonRocketZone,
	}
}

// A zone is what must be clear and what there is.
type zone struct {
	rocket  rocket.Rocket
	launch  rocket.Launch
	air     rocket.Air
	least   quantity.Angle
	margin  float64 // 1.5 for 50 %
	reach   quantity.Length
	at      quantity.Angle  // of the pipe, for that reach
	clear   quantity.Length // rounded up to a whole metre
	station quantity.Length
	highest rocket.Flight   // straight up in still air
	room    quantity.Length // from the roomiest spot of the field to its edge
	corners []drawing.Point // of the field, in metres from that spot; y up
}

func zoneOf(v form.Values) (z zone, err error) {
	if z.rocket, z.launch, z.air, err = flightOf(v); err != nil {
		return z, err
	}
	if z.highest, err = rocket.Fly(z.rocket, z.launch, z.air); err != nil {
		return z, err
	}
	z.air.Along = rocket.Speed(school.FieldWindMS.Of(v))
	z.least = quantity.Degrees(argLeastAngle.Of(v))
	z.margin = 1 + school.FieldMarginPercent.Of(v)/100
	if z.reach, z.at, err = rocket.Farthest(z.rocket, z.launch, z.air, z.least, quantity.Degrees(90)); err != nil {
		return z, err
	}
	z.clear = quantity.Metres(ceil(z.reach.Metres() * z.margin))
	z.station = z.clear + 2 // outside it beyond doubt
	return z, nil
}

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

func (z zone) fits() bool { return z.clear <= z.room }

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
	eye := quantity.Metres(school.ClassEyeHeightM.Of(v))
	r := result.Result{Facts: []result.Fact{
		{Name: "speed", Value: speedOf(z.launch.Speed)},
		{Name: "wind", Value: speedOf(z.air.Along)},
		{Name: "reach", Value: say.Metres(z.reach, 0)},
		{Name: "reach_angle", Value: say.Degrees(z.at, 0)},
		{Name: "reach_no_air", Value: say.Metres(rocket.NoAirReach(z.launch), 0)},
		{Name: "margin", Value: say.Metres(z.clear-z.reach, 0)},
		{Name: "clear", Value: say.Metres(z.clear, 0)},
		{Name: "station", Value: say.Metres(z.station, 0)},
		{Name: "station_angle", Value: say.Degrees(quantity.Atan2((z.highest.Apogee.Up-eye).Metres(), z.station.Metres()), 0)},
		{Name: "highest", Value: say.Metres(z.highest.Apogee.Up, 0)},
		{Name: "longest", Value: say.Number(z.highest.Landing.Time.Seconds(), "s", 1)},
	}}
	facts, warnings, err := z.fieldFacts()
	if err != nil {
		return result.Result{}, err
	}
	r.Facts = append(r.Facts, facts...)
	r.Warnings = warnings
	r.Cautions = []say.Phrase{entry.Caution(entry.CareClearZone, say.Metres(z.clear, 0), speedOf(z.air.Along))}
	r.Drawings = []drawing.Drawing{z.drawing()}
	r.Tables = []result.Table{peopleTable(school.ClassPupils.Of(v), z)}
	r.Notes = []say.Phrase{say.Line("rocket-zone.note_people"), say.Line("rocket-zone.authority")}
	r.Working = []say.Phrase{
		say.Line("rocket-zone.working_reach", speedOf(z.launch.Speed), speedOf(z.air.Along), say.Degrees(z.at, 0), say.Metres(z.reach, 2)),
		z.clearWorking(),
		z.noAirWorking(),
	}
	return r, nil
}

// slowest is a launch speed below which nobody would call it a launch: 5 m/s
// rise to 1.3 m.
const slowest rocket.Speed = 5

// fieldFacts compare the zone with the field, and find what brings it inside: a
// steeper pipe, a weaker stamp, or a rocket with more drag.
func (z zone) fieldFacts() ([]result.Fact, []say.Phrase, error) {
	room, fits := say.Metres(z.room, entry.WholeOrTenth(z.room.Metres())), say.Yes(z.fits(), "rocket-zone.fits", "rocket-zone.too_small")
	angle, speed, drag := say.None("rocket-zone.not_needed"), say.None("rocket-zone.not_needed"), say.None("rocket-zone.not_needed")
	var warnings []say.Phrase
	if !z.fits() {
		bound := quantity.Metres(math.Floor(z.room.Metres()) / z.margin)
		least, steep, err := rocket.SteepEnough(z.rocket, z.launch, z.air, bound)
		if err != nil {
			return nil, nil, err
		}
		slow, any, err := rocket.SlowEnough(z.rocket, z.launch, z.air, bound)
		if err != nil {
			return nil, nil, err
		}
		coefficient, draggy, err := rocket.DraggyEnough(z.rocket, z.launch, z.air, bound, 3)
		if err != nil {
			return nil, nil, err
		}
		warnings = append(warnings, say.Line("rocket-zone.small", say.Metres(z.clear, 0), room))
		angle, speed, drag = say.None("rocket-zone.no_angle"), say.None("rocket-zone.no_speed"), say.None("rocket-zone.no_drag")
		if steep {
			angle = say.Degrees(least, 0)
			angle.Number = ceil(least.Degrees())
			warnings = append(warnings, say.Line("rocket-zone.way_angle", angle))
		}
		if any && slow >= slowest {
			speed = speedOf(slow)
			speed.Number = floorTenth(slow.MetresASecond())
			warnings = append(warnings, say.Line("rocket-zone.way_speed", speed))
		}
		if draggy {
			drag = say.Number(coefficient, "", 1)
			drag.Number = ceilTenth(coefficient)
			warnings = append(warnings, say.Line("rocket-zone.way_drag", drag, say.Number(z.rocket.Drag, "", 1)))
		}
		if !steep && !draggy && !(any && slow >= slowest) {
			warnings = append(warnings, say.Line("rocket-zone.other_field"))
		}
	}
	return []result.Fact{
		{Name: "room", Value: room}, {Name: "fits", Value: fits},
		{Name: "angle_inside", Value: angle}, {Name: "speed_inside", Value: speed}, {Name: "drag_inside", Value: drag},
	}, warnings, nil
}

// A job on the field. want is how many pupils do it, in the order in which they
// are given out, so that a small class keeps its zone clear before it measures;
// those who are left wait with the next crews.
type job struct {
	name, place string
	want        int
}

func jobs() []job {
	return []job{
		{"stamper", "launcher", 1}, {"loader", "launcher", 1}, {"caller", "launcher", 1},
		{"warden", "edge", 4},
		{"sighter", "station", 2}, {"reader", "station", 2},
		{"timer", "edge", 3}, {"recorder", "edge", 2}, {"wind", "edge", 1},
		{"retriever", "edge", 2}, {"inspector", "edge", 2},
	}
}

func peopleTable(pupils int, z zone) result.Table {
	table := result.Table{
		Name: "people", Title: say.Line("rocket-zone.people_title"),
		Columns: []result.Column{{Name: "job"}, {Name: "count"}, {Name: "place"}},
	}
	places := map[string]say.Value{
		"launcher": say.Words("rocket-zone.at_launcher"),
		"station":  say.Words("rocket-zone.at_station", say.Metres(z.station, 0)),
		"edge":     say.Words("rocket-zone.at_edge", say.Metres(z.clear, 0)),
	}
	add := func(name string, n int, place string) {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{say.Words(jobKey(name)), say.Count(n), places[place]}})
	}
	left := pupils
	for _, j := range jobs() {
		n := j.want
		if pupils > 0 {
			n = min(n, left)
			left -= n
		}
		if n > 0 {
			add(j.name, n, j.place)
		}
	}
	if left > 0 {
		add("next", left, "edge")
	}
	return table
}

func jobKey(name string) string {
	return map[string]string{
		"stamper": "rocket-zone.job_stamper", "loader": "rocket-zone.job_loader", "caller": "rocket-zone.job_caller",
		"sighter": "rocket-zone.job_sighter", "reader": "rocket-zone.job_reader", "timer": "rocket-zone.job_timer",
		"recorder": "rocket-zone.job_recorder", "wind": "rocket-zone.job_wind", "warden": "rocket-zone.job_warden",
		"retriever": "rocket-zone.job_retriever", "inspector": "rocket-zone.job_inspector", "next": "rocket-zone.job_next",
	}[name]
}

// drawing shows the field from above with the wind from the left, to which the
// page can be turned; what goes beyond the field is drawn too.
func (z zone) drawing() drawing.Drawing {
	const wide, high, border = 148.0, 112.0, 4.0
	low := drawing.Point{X: -z.station.Metres() - 3, Y: -z.clear.Metres() - 3}
	top := drawing.Point{X: -low.X, Y: -low.Y}
	for _, c := range z.corners {
		low = drawing.Point{X: min(low.X, c.X), Y: min(low.Y, c.Y)}
		top = drawing.Point{X: max(top.X, c.X), Y: max(top.Y, c.Y)}
	}
	scale := min(wide/(top.X-low.X), high/(top.Y-low.Y))
	left := (entry.PictureWidth - scale*(top.X-low.X)) / 2
	height := 2*border + scale*(top.Y-low.Y) + 10
	centre := drawing.Point{X: left - low.X*scale, Y: border + top.Y*scale}
	at := func(along, up float64) drawing.Point {
		return drawing.Point{X: centre.X + along*scale, Y: centre.Y - up*scale}
	}
	d := drawing.Drawing{
		Name: "zone", Width: entry.PictureWidth, Height: height,
		Title:       say.Line("rocket-zone.drawing", say.Metres(z.clear, 0)),
		Description: say.Line("rocket-zone.description", say.Metres(z.reach, 0), say.Metres(z.clear, 0), say.Metres(z.station, 0)),
	}
	edge := make([]drawing.Point, len(z.corners))
	for i, c := range z.corners {
		edge[i] = at(c.X, c.Y)
	}
	d.Area("field", edge...)
	d.Disc("clear", centre, z.clear.Metres()*scale)
	d.Disc("reach", centre, z.reach.Metres()*scale)
	clear, reach := z.clear.Metres(), z.reach.Metres()
	d.Label("figure", shifted(at(0, clear), 0, 4.5), drawing.Middle, say.Words("rocket-zone.clear_label", say.Metres(z.clear, 0)))
	d.Label("figure", shifted(at(0, reach), 0, 7), drawing.Middle, say.Words("rocket-zone.reach_label", say.Metres(z.reach, 0)))
	d.Disc("launcher", centre, 1.3)
	d.Label("name", shifted(centre, 0, 5), drawing.Middle, say.Words("rocket-zone.launcher_label"))
	for _, side := range []float64{-1, 1} {
		s := at(side*z.station.Metres(), 0)
		d.Disc("station", s, 1.3)
	}
	d.Label("name", shifted(at(-z.station.Metres(), 0), -2.4, 1.1), drawing.End, say.Words("rocket-zone.station_one"))
	d.Label("name", shifted(at(z.station.Metres(), 0), 2.4, 1.1), drawing.Start, say.Words("rocket-zone.station_two"))
	upwind := at(-clear*0.80, -clear*0.72)
	d.Disc("class", upwind, 1.3)
	d.Label("name", shifted(upwind, 0, 5), drawing.Middle, say.Words("rocket-zone.class_label"))
	for _, w := range []drawing.Point{at(clear*0.75, clear*0.75), at(-clear*0.75, clear*0.75), at(clear*0.75, -clear*0.75)} {
		d.Disc("warden", w, 1)
	}
	d.Label("name", shifted(at(clear*0.75, clear*0.75), 2.4, 1), drawing.Start, say.Words("rocket-zone.warden_label"))
	tip := drawing.Point{X: left + 22, Y: height - 4}
	d.Line("wind", shifted(tip, -22, 0), tip)
	d.Line("wind", shifted(tip, -3, -1.6), tip, shifted(tip, -3, 1.6))
	d.Label("figure", shifted(tip, 3, 1.1), drawing.Start, say.Words("rocket-zone.wind_label"))
	return d
}

func shifted(p drawing.Point, x, y float64) drawing.Point {
	return drawing.Point{X: p.X + x, Y: p.Y + y}
}

func (z zone) clearWorking() say.Phrase {
	exact := say.Metres(z.reach*quantity.Length(z.margin), 2)
	o := entry.Enough(exact, func(x []float64) float64 { return x[0] * x[1] }, say.Metres(z.reach, 2), say.Number(z.margin, "", 2))
	return say.Line("rocket-zone.working_clear", o[0], o[1], say.Metres(z.clear, 0), exact)
}

func (z zone) noAirWorking() say.Phrase {
	reach := say.Metres(rocket.NoAirReach(z.launch), 1)
	o := entry.Enough(reach, func(x []float64) float64 { return x[0] / x[2] * math.Sqrt(x[0]*x[0]+2*x[2]*x[1]) },
		speedOf(z.launch.Speed), say.Metres(z.launch.Height, 1), say.Number(rocket.Gravity, "m_s2", 2))
	return say.Line("rocket-zone.working_free", o[0], reach, o[1], o[2])
}
