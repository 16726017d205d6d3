package dial

import (
	"math"
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
	"noonbook/compute/quantity"
)

const sourcePolar = "Polar dial: distance of a line = style height × tan h, the plate and the style parallel to the Earth's axis (derived in compute/dial)"

// leastSlope is the smallest slope that is built: a plate that ought to slope less lies
// level, which costs four seconds of time at most.
const leastSlope = quantity.Turn / 360

// builds is the dial that a school builds unless an author asks for another: placeholders
// without a kind of dial among their arguments speak of it.
func builds(v form.Values) dial.Face { return dial.FaceFor(school.Place(v).Latitude) }

func polarHeight(v form.Values) quantity.Length {
	return quantity.Millimetres(school.StockPolarHeightMM.Of(v))
}

// mm is a length of the school's stock in print: whole where it is.
func mm(length float64) say.Value {
	decimals := 0
	if length != math.Round(length) {
		decimals = 1
	}
	return say.Number(length, "mm", decimals)
}

// poleUp is the end of the noon line that points to the pole above the horizon.
func poleUp(latitude quantity.Angle) say.Value {
	if latitude < 0 {
		return say.Words("compass.true_south")
	}
	return say.Words("compass.true_north")
}

// slopeOf is how far the plate of a face is tilted out of the level.
func slopeOf(face dial.Face, latitude quantity.Angle) quantity.Angle {
	by := face.Tilt(latitude).By
	return max(by, -by)
}

// A polarPlate is the drawing board of a polar dial, in millimetres of the paper, its
// upper edge at the top.
type polarPlate struct {
	width, height float64
	middle        drawing.Point // of the style's foot
	long, high    float64       // the style, and how far it is above the plate
	after         float64       // to which side on the paper the afternoon lies: 1 is right
	gap           float64       // between the noon lines: the gnomon's thickness
	lines, ticks  frame
}

// Measures of a polar plate in millimetres.
const (
	headBand    = 7.0  // for where the upper edge points
	polarFoot   = 17.5 // for what the face says of itself
	polarMargin = 6.0  // left and right, where no figures are
	beyondStyle = 4.0  // from an end of the style to the band of ticks
)

func layOutPolar(v form.Values) polarPlate {
	p := polarPlate{width: argWidthMM.Of(v), long: school.StockStyleMM.Of(v), high: polarHeight(v).Millimetres(), after: 1}
	if school.Place(v).Latitude < 0 { // the upper edge is south, and east of it is left
		p.after = -1
	}
	if thick := school.StockGnomonMM.Of(v); thick >= leastGap {
		p.gap = thick
	}
	p.height = headBand + 2*(figureBand+tickBand+beyondStyle) + p.long + polarFoot
	p.ticks = frame{polarMargin, headBand + figureBand, p.width - polarMargin, p.height - polarFoot - figureBand}
	p.lines = frame{p.ticks.left, p.ticks.top + tickBand, p.ticks.right, p.ticks.bottom - tickBand}
	p.middle = drawing.Point{X: p.width / 2, Y: (p.lines.top + p.lines.bottom) / 2}
	return p
}

// hours are the sun times that the plate is wide enough for.
func (p polarPlate) hours() (from, to time.Duration) {
	return dial.PolarHours(quantity.Millimetres(p.high), quantity.Millimetres(p.width/2-polarMargin-p.gap/2))
}

// at is where the line of an hour runs on the paper, from the edge of a thick gnomon
// that casts it.
func (p polarPlate) at(l dial.HourLine) float64 {
	far, _ := dial.PolarDistance(quantity.Millimetres(p.high), l.HourAngle)
	return p.middle.X + p.after*(far+l.Edge().Offset(quantity.Millimetres(p.gap))).Millimetres()
}

// edges draws the cut, the bands, and the foot of the style.
func (p polarPlate) edges(d *drawing.Drawing) {
	d.Area("cut", frame{0, 0, p.width, p.height}.corners()...)
	d.Area("rim", p.ticks.corners()...)
	d.Area("rim", p.lines.corners()...)
	top, bottom := p.middle.Y-p.long/2, p.middle.Y+p.long/2
	if p.gap > 0 {
		d.Area("gnomon-gap", frame{p.middle.X - p.gap/2, top, p.middle.X + p.gap/2, bottom}.corners()...)
	}
	d.Disc("toe", drawing.Point{X: p.middle.X, Y: top}, 0.7)
	d.Disc("toe", drawing.Point{X: p.middle.X, Y: bottom}, 0.7)
}

func (p polarPlate) noonLines(d *drawing.Drawing, role string) {
	d.Line(role, drawing.Point{X: p.middle.X - p.gap/2, Y: p.ticks.top}, drawing.Point{X: p.middle.X - p.gap/2, Y: p.ticks.bottom})
	if p.gap > 0 {
		d.Line(role, drawing.Point{X: p.middle.X + p.gap/2, Y: p.ticks.top}, drawing.Point{X: p.middle.X + p.gap/2, Y: p.ticks.bottom})
	}
}

// hourLines draws the whole hours through the plate, with figures at both ends.
func (p polarPlate) hourLines(d *drawing.Drawing, lines []dial.ClockLine, roman bool) {
	room := 7.0
	if roman {
		room = 9
	}
	last := [2]float64{math.Inf(-1), math.Inf(-1)} // figure of each row, along the hours
	for _, l := range lines {
		x := p.at(l.HourLine)
		if l.HourAngle == 0 {
			p.noonLines(d, "noon")
		} else {
			d.Line("hour", drawing.Point{X: x, Y: p.ticks.top}, drawing.Point{X: x, Y: p.ticks.bottom})
		}
		along := p.after * x
		row := slices.IndexFunc(last[:], func(before float64) bool { return along-before >= room })
		if l.HourAngle == 0 {
			row = 0
		}
		if row < 0 {
			continue
		}
		last[row] = along
		far := figureRow[row]
		for _, y := range []float64{p.ticks.top - far, p.ticks.bottom + far} {
			d.Label("numeral", drawing.Point{X: x, Y: y + 1.8}, drawing.Middle, hourFigure(l.Clock, roman))
		}
	}
}

// figureRow is how far the two rows of figures are from the ticks, in millimetres: near
// noon, where lines are close, every other figure is in the outer row.
var figureRow = [2]float64{3, 8}

// fineLines draws the lines between the hours at both ends, as on a level plate.
func (p polarPlate) fineLines(d *drawing.Drawing, role string, step time.Duration, lines []dial.ClockLine) {
	inward := map[string]float64{"tick": 0, "quarter": 6, "half": 14}[role]
	coarser := map[string]time.Duration{"tick": 15 * time.Minute, "quarter": 30 * time.Minute, "half": time.Hour}[role]
	for i, l := range lines {
		if l.Clock%coarser == 0 || len(lines) < 2 {
			continue
		}
		beside := lines[max(0, i-1)]
		if i == 0 {
			beside = lines[1]
		}
		x := p.at(l.HourLine)
		if math.Abs(x-p.at(beside.HourLine)) < closest {
			continue
		}
		d.Line(role, drawing.Point{X: x, Y: p.ticks.top}, drawing.Point{X: x, Y: p.lines.top + inward})
		d.Line(role, drawing.Point{X: x, Y: p.ticks.bottom}, drawing.Point{X: x, Y: p.lines.bottom - inward})
	}
}

// compassOn draws the compass between the lines of four and five, where they leave
// room for one.
func (p polarPlate) compassOn(d *drawing.Drawing, latitude, variation quantity.Angle) {
	four, _ := dial.PolarDistance(quantity.Millimetres(p.high), quantity.Hours(4))
	five, _ := dial.PolarDistance(quantity.Millimetres(p.high), quantity.Hours(5))
	end := min(five.Millimetres(), p.width/2-polarMargin)
	radius := min(15, (end-four.Millimetres())/2-3, (p.lines.bottom-p.lines.top)/2-2)
	if radius < 8 {
		return
	}
	rose(d, drawing.Point{X: p.middle.X + p.after*(four.Millimetres()+end)/2, Y: p.middle.Y}, radius, latitude, variation)
}

// around says on the plate which way its edges point, and what it is.
func (p polarPlate) around(d *drawing.Drawing, v form.Values, variation quantity.Angle) {
	latitude := school.Place(v).Latitude
	left, right := polarMargin, p.width-polarMargin
	west, east, westEnd, eastEnd := left, right, drawing.Start, drawing.End
	if p.after < 0 {
		west, east, westEnd, eastEnd = right, left, drawing.End, drawing.Start
	}
	top := headBand - 1.5
	head := say.Words("dial-face.edge_up", poleUp(latitude), say.Number(slopeOf(dial.Polar, latitude).Degrees(), "deg", 1))
	if slopeOf(dial.Polar, latitude) < leastSlope {
		head = say.Words("dial-face.edge_level", poleUp(latitude))
	}
	d.Label("small", drawing.Point{X: p.middle.X, Y: top}, drawing.Middle, head)
	d.Label("small", drawing.Point{X: west, Y: top}, westEnd, say.Words("toward.west"))
	d.Label("small", drawing.Point{X: east, Y: top}, eastEnd, say.Words("toward.east"))
	y := p.height - polarFoot + 3.5
	d.Label("strong", drawing.Point{X: left, Y: y}, drawing.Start,
		say.Words("dial-face.where", say.Text(school.Name.Of(v)), entry.Sided(latitude.Degrees(), 2, "compass.north_of", "compass.south_of")))
	d.Label("small", drawing.Point{X: right, Y: y}, drawing.End, say.Words("dial-face.style_above", mm(p.high)))
	d.Label("small", drawing.Point{X: left, Y: y + 9}, drawing.Start,
		say.Words("dial-face.arrows", poleUp(latitude), entry.Sided(variation.Degrees(), 1, "compass.east_of", "compass.west_of")))
}

// reckonPolarFace is dial-face for a polar dial.
func reckonPolarFace(v form.Values) (result.Result, error) {
	at := school.Place(v)
	field, err := compass.At(at.Latitude, at.Longitude, at.Elevation, at.Clock(entry.Date.Of(v), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	fixed := fixedIn(v)
	p := layOutPolar(v)
	d := drawing.Drawing{
		Name: "dial-face", Width: p.width, Height: p.height,
		Title:       say.Line("dial-face.title", kindName(dial.Polar, at.Latitude), entry.Sided(at.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Description: say.Line("dial-face.polar_description"),
	}
	p.edges(&d)
	from, to := p.hours()
	linesOf := func(step time.Duration) []dial.ClockLine {
		lines, stepErr := dial.ClockLines(at.Latitude, from, to, step, fixed) // their angles are those of a level dial
		if stepErr != nil {
			err = stepErr
		}
		return lines
	}
	lines := linesOf(time.Hour)
	p.fineLines(&d, "tick", 5*time.Minute, linesOf(5*time.Minute))
	p.fineLines(&d, "quarter", 15*time.Minute, linesOf(15*time.Minute))
	p.fineLines(&d, "half", 30*time.Minute, linesOf(30*time.Minute))
	if err != nil {
		return result.Result{}, err
	}
	if fixed != 0 {
		p.noonLines(&d, "meridian")
	}
	p.hourLines(&d, lines, argFigures.Of(v) == "roman")
	p.compassOn(&d, at.Latitude, field.Declination)
	p.around(&d, v, field.Declination)
	y := p.height - polarFoot + 8
	d.Label("small", drawing.Point{X: polarMargin, Y: y}, drawing.Start, linesMean(v, fixed))
	d.Label("small", drawing.Point{X: p.width - polarMargin, Y: y}, drawing.End, kindName(dial.Polar, at.Latitude))
	return result.Result{
		Facts: append([]result.Fact{
			{Name: "face", Value: kindName(dial.Polar, at.Latitude)},
			{Name: "style_angle", Value: say.None("dial-face.parallel")},
			{Name: "first_line", Value: lineOrNone(lines, 0)},
			{Name: "last_line", Value: lineOrNone(lines, len(lines)-1)},
			{Name: "folded_in", Value: entry.Signed(say.Seconds(fixed)).IfAny()},
			{Name: "plate_width", Value: say.Number(p.width, "mm", 0)},
			{Name: "plate_height", Value: say.Number(p.height, "mm", 0)},
			{Name: "noon_gap", Value: say.Number(p.gap, "mm", 1).IfAny()},
		}, setUpFacts(v, dial.Polar, p.height)...),
		Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(d),
		Notes:  []say.Phrase{say.Line("dial-face.note"), setPolar(at.Latitude)},
	}, nil
}

func lineOrNone(lines []dial.ClockLine, i int) say.Value {
	if len(lines) == 0 {
		return say.None("dial-face.no_line")
	}
	return sunTime(lines[i].Clock)
}

// setPolar says how to set the plate up.
func setPolar(latitude quantity.Angle) say.Phrase {
	slope := slopeOf(dial.Polar, latitude)
	if slope < leastSlope {
		return say.Line("dial-face.lay_polar", poleUp(latitude))
	}
	return say.Line("dial-face.tilt_polar", say.Number(slope.Degrees(), "deg", 1), poleUp(latitude))
}

// setUpFacts say which dial it is and how its plate is set up.
func setUpFacts(v form.Values, face dial.Face, plateHeight float64) []result.Fact {
	latitude := school.Place(v).Latitude
	slope := slopeOf(face, latitude)
	height, edge, lift := say.None("dial-face.no_height"), say.None("dial-face.level_plate"), say.None("dial-face.level_plate")
	if face == dial.Polar {
		height = mm(polarHeight(v).Millimetres())
		if slope >= leastSlope {
			edge, lift = poleUp(latitude), say.Number(plateHeight*slope.Sin(), "mm", 0)
		}
	} else if face != dial.Level {
		edge, lift = say.None("dial-face.not_polar"), say.None("dial-face.not_polar")
	}
	return []result.Fact{
		entry.True("polar", face == dial.Polar),
		entry.True("level", face == dial.Level),
		{Name: "style_height", Value: height},
		{Name: "tilt", Value: say.Number(slope.Degrees(), "deg", 1).IfAny()},
		entry.True("tilted", slope >= leastSlope),
		{Name: "upper_edge", Value: edge},
		{Name: "lift", Value: lift},
	}
}

// polarGnomon draws the gnomon of a polar dial, a rectangle whose upper edge is the
// style, and the props of its plate.
func polarGnomon(v form.Values, pair bool) drawing.Drawing {
	long, high := school.StockStyleMM.Of(v), polarHeight(v).Millimetres()
	latitude := school.Place(v).Latitude
	d := drawing.Drawing{
		Name: "dial-gnomon", Width: long + 2*pieceEdge, Height: pieceEdge,
		Title:       say.Line("dial-gnomon.polar_title", mm(high)),
		Description: say.Line("dial-gnomon.polar_description"),
	}
	pieces := 1
	if pair {
		pieces = 2
	}
	for range pieces {
		rectangle(&d, drawing.Point{X: pieceEdge, Y: d.Height + high}, long, high)
		d.Height += high + tabDepth + pieceGap
	}
	if slope := slopeOf(dial.Polar, latitude); slope >= leastSlope && slope <= mostProp {
		polarProps(&d, slope, poleUp(latitude))
	}
	d.Height += pieceEdge - pieceGap
	return d
}

// polarGnomons are as many gnomons with their props as a sheet holds, and how many those are.
func polarGnomons(v form.Values) (drawing.Drawing, int) {
	return drawing.PaperOf(school.Paper.Of(v)).Repeated(polarGnomon(v, argPieces.Of(v) == "pair"), 0)
}

// rectangle draws one piece from the lower left end of its foot.
func rectangle(d *drawing.Drawing, foot drawing.Point, long, high float64) {
	at := func(x, y float64) drawing.Point { return drawing.Point{X: foot.X + x, Y: foot.Y - y} }
	wide := long / 4
	slant := min(2.5, wide/4)
	for i := range 4 {
		left := float64(i) * wide
		d.Area("glue", at(left, 0), at(left+slant, -tabDepth), at(left+wide-slant, -tabDepth), at(left+wide, 0))
	}
	d.Line("cut edge", at(0, 0), at(0, high))
	d.Line("style-edge", at(0, high), at(long, high))
	d.Line("cut edge", at(long, high), at(long, 0))
	d.Line("fold", at(0, 0), at(long, 0))
	for i := range 4 {
		left := float64(i) * wide
		d.Line("cut edge", at(left, 0), at(left+slant, -tabDepth), at(left+wide-slant, -tabDepth), at(left+wide, 0))
	}
	if long > 60 && high > 8 { // elsewhere the page says it
		d.Label("small", at(long/2, high-4), drawing.Middle, say.Words("dial-gnomon.style_here"))
		d.Label("small", at(long/2, high/2-2), drawing.Middle, say.Words("dial-gnomon.polar_lengths", mm(long), mm(high)))
	}
	if wide > 20 {
		d.Label("small", at(1.5*wide, -tabDepth/2-1), drawing.Middle, say.Words("dial-gnomon.tabs"))
	}
}

// Measures of a prop.
const (
	propLong = 120.0                    // mm, its sloping side, which is shorter than the plate
	mostProp = quantity.Turn / 360 * 60 // steeper plates lean against something
)

// polarProps draws two triangles, on whose sloping sides the plate is glued.
func polarProps(d *drawing.Drawing, slope quantity.Angle, upper say.Value) {
	wide, high := propLong*slope.Cos(), propLong*slope.Sin()
	d.Width = max(d.Width, wide+2*pieceEdge)
	for range 2 {
		foot := drawing.Point{X: pieceEdge, Y: d.Height + high}
		at := func(x, y float64) drawing.Point { return drawing.Point{X: foot.X + x, Y: foot.Y - y} }
		d.Area("glue", at(0, 0), at(4, -tabDepth), at(wide-4, -tabDepth), at(wide, 0))
		d.Line("cut prop", at(0, 0), at(wide, high), at(wide, 0))
		d.Line("fold", at(0, 0), at(wide, 0))
		d.Line("cut edge", at(0, 0), at(4, -tabDepth), at(wide-4, -tabDepth), at(wide, 0))
		d.Label("small", at(wide/2, -tabDepth/2-1), drawing.Middle, say.Words("dial-gnomon.polar_prop", say.Number(slope.Degrees(), "deg", 1), upper))
		d.Height += high + tabDepth + pieceGap
	}
}

// reckonPolarGnomon is dial-gnomon for a polar dial.
func reckonPolarGnomon(v form.Values) result.Result {
	latitude := school.Place(v).Latitude
	slope := slopeOf(dial.Polar, latitude)
	long, high := school.StockStyleMM.Of(v), polarHeight(v).Millimetres()
	gnomons, _ := polarGnomons(v)
	r := result.Result{
		Facts: []result.Fact{
			{Name: "shape", Value: say.Words("dial-gnomon.rectangle")},
			{Name: "angle", Value: say.None("dial-face.parallel")},
			{Name: "base", Value: mm(long)},
			{Name: "height", Value: mm(high)},
			{Name: "style", Value: mm(long)},
			{Name: "plate_slope", Value: say.Number(slope.Degrees(), "deg", 1).IfAny()},
		},
		Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(gnomons),
		Notes:  []say.Phrase{say.Line("dial-gnomon.polar_note")},
	}
	if argPieces.Of(v) == "single" {
		r.Notes = []say.Phrase{say.Line("dial-gnomon.polar_single_note")}
	}
	switch {
	case slope < leastSlope:
		r.Notes = append(r.Notes, say.Line("dial-gnomon.no_prop"))
	case slope <= mostProp:
		r.Notes = append(r.Notes, say.Line("dial-gnomon.prop_note", poleUp(latitude), say.Number(slope.Degrees(), "deg", 1)))
	default:
		r.Notes = append(r.Notes, say.Line("dial-gnomon.lean_note", poleUp(latitude), say.Number(slope.Degrees(), "deg", 1)))
	}
	return r
}

// reckonPolarBlank is dial-blank where the school builds a polar dial.
func reckonPolarBlank(v form.Values) (result.Result, error) {
	at := school.Place(v)
	field, err := compass.At(at.Latitude, at.Longitude, at.Elevation, at.Clock(entry.Date.Of(v), 12, 0))
	if err != nil {
		return result.Result{}, err
	}
	p := layOutPolar(v)
	d := drawing.Drawing{
		Name: "dial-blank", Width: p.width, Height: p.height,
		Title:       say.Line("dial-blank.title", entry.Sided(at.Latitude.Degrees(), 1, "compass.north_of", "compass.south_of")),
		Description: say.Line("dial-blank.polar_description"),
	}
	p.edges(&d)
	p.noonLines(&d, "noon")
	p.millimetres(&d)
	p.compassOn(&d, at.Latitude, field.Declination)
	p.around(&d, v, field.Declination)
	d.Label("small", drawing.Point{X: polarMargin, Y: p.height - polarFoot + 8}, drawing.Start, say.Words("dial-blank.fill_in"))
	side := say.Words("dial-blank.right")
	if p.after < 0 {
		side = say.Words("dial-blank.left")
	}
	return result.Result{
		Facts: []result.Fact{
			{Name: "style_angle", Value: say.None("dial-face.parallel")},
			{Name: "after_side", Value: side},
			{Name: "plate_width", Value: say.Number(p.width, "mm", 0)},
			{Name: "plate_height", Value: say.Number(p.height, "mm", 0)},
			{Name: "noon_gap", Value: say.Number(p.gap, "mm", 1).IfAny()},
		},
		Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(d),
		Notes:  []say.Phrase{say.Line("dial-blank.polar_note", side), setPolar(at.Latitude)},
	}, nil
}

// millimetres draws a ruler from the noon line to both sides at both ends of the plate.
func (p polarPlate) millimetres(d *drawing.Drawing) {
	reach := int(p.width/2 - polarMargin - p.gap/2)
	for at := -reach; at <= reach; at++ {
		x := p.middle.X + float64(at)
		switch { // a thick gnomon has a noon line for each side
		case at < 0:
			x -= p.gap / 2
		case at > 0:
			x += p.gap / 2
		}
		role, inward := "tick", 0.0
		switch {
		case at%10 == 0:
			role, inward = "quarter", 3
			for _, y := range []float64{p.ticks.top - figureBand/2, p.ticks.bottom + figureBand/2} {
				d.Label("small", drawing.Point{X: x, Y: y + 1}, drawing.Middle, say.Count(max(at, -at)))
			}
		case at%5 == 0:
			role = "quarter"
		}
		d.Line(role, drawing.Point{X: x, Y: p.ticks.top}, drawing.Point{X: x, Y: p.lines.top + inward})
		d.Line(role, drawing.Point{X: x, Y: p.ticks.bottom}, drawing.Point{X: x, Y: p.lines.bottom - inward})
	}
}

// polarDistance is where the shadow lies on a polar plate, or that it is off the plate:
// a quarter of an hour beyond the last line and more.
func polarDistance(height quantity.Length, hourAngle quantity.Angle) say.Value {
	far, ok := dial.PolarDistance(height, hourAngle)
	if from, to := dial.PolarHours(height, math.MaxFloat64); !ok || hourAngle < quantity.Hours(from.Hours()-12) || hourAngle > quantity.Hours(to.Hours()-12) {
		return say.None("dial-table.off_plate")
	}
	return say.Number(far.Millimetres(), "mm", 1)
}
