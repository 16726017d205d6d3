package dial

import (
	"slices"
	"time"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/compass"
	"noonbook/compute/dial"
	"noonbook/compute/place"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argHeightMM form.Key[float64] = "height_mm"

func dialNorth() entry.Entry {
	return entry.Entry{
		Name:    "dial-north",
		Summary: "Three ways to true north: a corrected compass, the noon shadow, equal shadows.",
		Arguments: form.Form{entry.OnDate(),
			{Key: argHeightMM, Unit: "mm", Min: 10, Max: 5000, Default: 300.0, Doc: "Height of the upright stick."},
		},
		Settings: slices.Clone(school.Where()),
		Facts: []entry.Fact{
			{Name: "magnetic_variation", Unit: "deg", Doc: "angle from true north to where the compass needle points, east positive"},
			{Name: "needle_turn", Unit: "deg", Doc: "how far, and to which side, to turn from the needle to true north"},
			{Name: "compass_for_true_north", Unit: "deg", Doc: "what a compass shows when a line points to true north"},
			{Name: "noon", Doc: "when the Sun crosses the meridian on the date"},
			{Name: "noon_shadow", Unit: "mm", Doc: "how long the stick's shadow then is"},
			{Name: "noon_shadow_points", Doc: "which way that shadow points"},
			{Name: "before", Doc: "when, about two hours before noon, to mark the tip of the shadow"},
			{Name: "after", Doc: "when the shadow is as long again"},
			{Name: "ring", Unit: "mm", Doc: "how long it is at both times"},
			{Name: "middle_off", Unit: "deg", Doc: "how far the middle between the two shadows is from the meridian, clockwise positive"},
			entry.Truth("equal_shadows", "whether the Sun is high enough for them on the date"),
		},
		Sources:  []string{entry.SourceSun, entry.SourceWMM, entry.SourceIANA, "Equal shadows: equal altitudes of the Sun, with its change of declination in between"},
		Cautions: []string{entry.CareSun},
		Reckon:   reckonDialNorth,
	}
}

// A pair is two moments of equal shadow.
type pair struct {
	hours         int // before noon
	before, after time.Time
	first, second entry.Shadow
	middleOff     quantity.Angle
}

func reckonDialNorth(v form.Values) (result.Result, error) {
	p, date := school.Place(v), entry.Date.Of(v)
	height := quantity.Millimetres(argHeightMM.Of(v))
	field, err := compass.At(p.Latitude, p.Longitude, p.Elevation, p.Clock(date, 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	variation := field.Declination
	shadow := noonShadow(p, date, height)
	noon, clock := say.None("sun-day.no_noon"), time.Time{}
	if t, ok := entry.LocalNoon(p, date); ok {
		noon, clock = say.Clock(t), t
	}
	pairs := equalShadows(p, clock, height)
	turn := entry.Sided(-variation.Degrees(), 1, "compass.clockwise", "compass.anticlockwise")
	r := result.Result{
		Facts: slices.Concat([]result.Fact{
			{Name: "magnetic_variation", Value: entry.Sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of")},
			{Name: "needle_turn", Value: turn},
			{Name: "compass_for_true_north", Value: say.Bearing(-variation, 1)},
			{Name: "noon", Value: noon},
			{Name: "noon_shadow", Value: shadow.length},
			{Name: "noon_shadow_points", Value: shadow.points},
		}, pairFacts(pairs)),
		Drawings: []drawing.Drawing{northPicture(variation, turn, pairs)},
		Warnings: entry.CompassWarnings(field),
		Notes:    []say.Phrase{say.Line("dial-north.way_compass", entry.Sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of"), turn, say.Bearing(-variation, 1))},
	}
	if shadow.points.Kind == say.Wording {
		r.Notes = append(r.Notes, say.Line("dial-north.way_noon", noon, shadow.points))
		if shadow.length.Number < height.Millimetres()/20 {
			r.Warnings = append(r.Warnings, say.Line("dial-north.overhead"))
		}
	}
	if len(pairs) > 0 {
		r.Notes = append(r.Notes, say.Line("dial-north.way_equal"))
		r.Tables = []result.Table{pairTable(date, height, pairs)}
	}
	r.Working = []say.Phrase{
		say.Line("dial-north.working_compass", say.Number(variation.Degrees(), "deg", 1), say.Bearing(-variation, 1), entry.FullTurn(variation)),
		say.Line("dial-north.working_equal"),
	}
	return r, nil
}

// equalShadows returns pairs about one, two and three hours from noon while the
// Sun stands 10° high; lower, shadows are long and faint.
func equalShadows(p place.Place, noon time.Time, height quantity.Length) []pair {
	var pairs []pair
	for hours := 1; hours <= 3 && !noon.IsZero(); hours++ {
		before := noon.Add(-time.Duration(hours) * time.Hour).Round(5 * time.Minute)
		after, off, ok := dial.EqualShadow(p, noon, before)
		if !ok {
			continue
		}
		first, okFirst := entry.ShadowAt(p, before, height)
		second, okSecond := entry.ShadowAt(p, after, height)
		if okFirst && okSecond && first.Altitude > quantity.Degrees(10) {
			pairs = append(pairs, pair{hours, before.In(p.Zone), after.In(p.Zone), first, second, off})
		}
	}
	return pairs
}

// pairFacts are those of the pair nearest to two hours from noon.
func pairFacts(pairs []pair) []result.Fact {
	none := say.None("dial-north.no_pair")
	values := []say.Value{none, none, none, none}
	if len(pairs) > 0 {
		best := pairs[min(1, len(pairs)-1)]
		values = []say.Value{
			say.Clock(best.before), say.Clock(best.after),
			say.Number(best.first.Length.Millimetres(), "mm", 0), entry.Sided(best.middleOff.Degrees(), 2, "compass.clockwise", "compass.anticlockwise"),
		}
	}
	facts := make([]result.Fact, len(values), len(values)+1)
	for i, name := range []string{"before", "after", "ring", "middle_off"} {
		facts[i] = result.Fact{Name: name, Value: values[i]}
	}
	return append(facts, entry.True("equal_shadows", len(pairs) > 0))
}

func pairTable(date place.Date, height quantity.Length, pairs []pair) result.Table {
	table := result.Table{
		Name:  "pairs",
		Title: say.Line("dial-north.title", say.Date(date), say.Number(height.Millimetres(), "mm", 0)),
		Columns: []result.Column{
			{Name: "before"}, {Name: "after"}, {Name: "length", Unit: "mm"}, {Name: "before_bearing", Unit: "deg"},
			{Name: "after_bearing", Unit: "deg"}, {Name: "middle_off", Unit: "deg"},
		},
	}
	for _, q := range pairs {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Clock(q.before), say.Clock(q.after), say.Number(q.first.Length.Millimetres(), "mm", 0),
			say.Bearing(q.first.Bearing, 1), say.Bearing(q.second.Bearing, 1),
			say.Number(q.middleOff.Degrees(), "deg", 2),
		}})
	}
	return table
}

// Measures of the picture in millimetres: a compass card, and the ground round
// the stick seen from above, both with true north up.
const (
	northHeight = 96.0
	cardRadius  = 34.0
	cardAcross  = 46.0
	stickAcross = 134.0
	northDown   = 52.0
)

func northPicture(variation quantity.Angle, turn say.Value, pairs []pair) drawing.Drawing {
	d := drawing.Drawing{
		Name: "north", Width: entry.ChartWidth, Height: northHeight,
		Title:       say.Line("dial-north.picture"),
		Description: say.Line("dial-north.description", turn),
	}
	card := drawing.Point{X: cardAcross, Y: northDown}
	for bearing := 0; bearing < 360; bearing += 10 {
		length := 2.0
		if bearing%90 == 0 {
			length = 4
		}
		at := quantity.Degrees(float64(bearing))
		d.Line("tick", toBearing(card, at, cardRadius), toBearing(card, at, cardRadius-length))
	}
	d.Line("true-north", toBearing(card, quantity.Turn/2, cardRadius-6), toBearing(card, 0, cardRadius+4))
	d.Label("name", toBearing(card, 0, cardRadius+6), drawing.Middle, say.Words("compass.true_north"))
	d.Area("needle", toBearing(card, variation, cardRadius-5), toBearing(card, variation+quantity.Turn/4, 2.2),
		toBearing(card, variation+quantity.Turn/2, cardRadius-5), toBearing(card, variation-quantity.Turn/4, 2.2))
	arc := arcPoints(card, variation, -variation, cardRadius*0.6)
	d.Line("turn-arrow", arc...)
	if len(arc) > 2 { // an arrow head at true north
		end := arc[len(arc)-1]
		back := 1.0
		if variation > 0 {
			back = -1
		}
		d.Area("head", end, drawing.Point{X: end.X - 3*back, Y: end.Y - 1.3}, drawing.Point{X: end.X - 3*back, Y: end.Y + 1.3})
	}
	d.Label("name", drawing.Point{X: cardAcross, Y: northDown + cardRadius + 7}, drawing.Middle, say.Words("dial-north.turn_label", turn))
	stickPicture(&d, pairs)
	return d
}

// stickPicture shows the shadows of equal length round the stick.
func stickPicture(d *drawing.Drawing, pairs []pair) {
	if len(pairs) == 0 {
		return
	}
	foot := drawing.Point{X: stickAcross, Y: northDown}
	longest := pairs[len(pairs)-1].first.Length
	for _, q := range pairs {
		radius := cardRadius * float64(q.first.Length/longest)
		d.Line("ring", arcPoints(foot, 0, quantity.Turn, radius)...)
		for _, s := range []entry.Shadow{q.first, q.second} {
			d.Line("shadow", foot, toBearing(foot, s.Bearing, radius))
			d.Disc("mark", toBearing(foot, s.Bearing, radius), 0.9)
		}
	}
	d.Line("true-north", toBearing(foot, quantity.Turn/2, cardRadius), toBearing(foot, 0, cardRadius+4))
	d.Label("name", toBearing(foot, 0, cardRadius+6), drawing.Middle, say.Words("compass.true_north"))
	d.Disc("stick", foot, 1.2)
	last := pairs[len(pairs)-1]
	for _, end := range []struct {
		at     time.Time
		shadow entry.Shadow
	}{{last.before, last.first}, {last.after, last.second}} {
		var places []drawing.Place
		for _, aside := range []float64{0, 8, -8, 16, -16, 25, -25, 35, -35, 45, -45} {
			bearing := end.shadow.Bearing + quantity.Degrees(aside)
			place := drawing.Place{At: toBearing(foot, bearing, cardRadius+2), Anchor: drawing.Start, Sits: drawing.Centred}
			if bearing.Sin() < 0 {
				place.Anchor = drawing.End
			}
			places = append(places, place)
		}
		d.Offer("figure", drawing.Keep, say.Words("dial-north.touches", say.Clock(end.at)), places...)
	}
}

// toBearing is a point away from another, north up.
func toBearing(from drawing.Point, bearing quantity.Angle, far float64) drawing.Point {
	return drawing.Point{X: from.X + far*bearing.Sin(), Y: from.Y - far*bearing.Cos()}
}

// arcPoints is an arc about a point by straight pieces of 3° or less.
func arcPoints(centre drawing.Point, from, by quantity.Angle, radius float64) []drawing.Point {
	pieces := int(max(by, -by).Degrees()/3) + 1
	points := make([]drawing.Point, pieces+1)
	for i := range points {
		points[i] = toBearing(centre, from+by*quantity.Angle(i)/quantity.Angle(pieces), radius)
	}
	return points
}
