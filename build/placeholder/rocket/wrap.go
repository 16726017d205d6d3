package rocket

import (
	"math"
	"slices"
	"strconv"

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
const (
	argSize       form.Key[string]  = "size"
	argNumbers    form.Key[bool]    = "numbers"
	argShorterMM  form.Key[float64] = "shorter_mm"
	argFins       form.Key[int]     = "fins"
	argTapeG      form.Key[float64] = "tape_g"
	argBodyMM     form.Key[float64] = "body_mm"
	argNoseMM     form.Key[float64] = "nose_mm"
	argFinRootMM  form.Key[float64] = "fin_root_mm"
	argFinTipMM   form.Key[float64] = "fin_tip_mm"
	argFinSpanMM  form.Key[float64] = "fin_span_mm"
	argFinSweepMM form.Key[float64] = "fin_sweep_mm"
)

func rocketWrap() entry.Entry {
	return entry.Entry{
		Name:    "rocket-wrap",
		Summary: "Template of a paper rocket for the school's pipe: body wrap, nose cone and fins, at true size.",
		Arguments: append(designArguments(), form.Field{Key: argNumbers, Default: true, Doc: "Whether the numbers and their working are shown with the template; pupils only cut it out."},
			form.Field{Key: argShorterMM, Unit: "mm", Min: 0, Max: 60, Default: 0.0, Doc: "How much a shorter rocket's tube is cut off at the top: the body has a line there. 0 for no line."}),
		Settings: append(form.Keys{school.Paper}, tubeSettings...),
		Facts: []entry.Fact{
			{Name: "pipe", Unit: "mm", Doc: "outside diameter of the pipe"},
			{Name: "inside", Unit: "mm", Doc: "inside diameter of the tube"},
			{Name: "wrap", Unit: "mm", Doc: "once round the tube, without the strip for glue"},
			{Name: "wrap_width", Unit: "mm", Doc: "width of the wrap with the strip for glue"},
			{Name: "body", Unit: "mm", Doc: "length of the tube"},
			{Name: "length", Unit: "mm", Doc: "length of the finished rocket"},
			{Name: "fins", Doc: "number of fins"},
			{Name: "cone_slant", Unit: "mm", Doc: "radius of the cone's sector"},
			{Name: "cone_angle", Unit: "deg", Doc: "angle of the cone's sector"},
			{Name: "mass", Unit: "g", Doc: "mass of the paper with tape"},
			{Name: "balance", Unit: "mm", Doc: "where it balances, from the tip of the nose"},
			{Name: "pressure", Unit: "mm", Doc: "where the push of the air takes hold when it flies a little askew, from the tip"},
			{Name: "calibres", Doc: "by how many diameters the push takes hold behind the balance point"},
			{Name: "stable", Doc: "what that means for the flight"},
		},
		Sources:   []string{sourceTemplate, sourceASTM, sourceBarrow, "One to about five diameters between balance and push: common practice, no source"},
		Printable: true,
		Cautions:  []string{entry.CareScissors, entry.CarePaperRocket},
		Reckon:    reckonRocketWrap,
	}
}

// sizeOf are the measures of a size in millimetres.
type sizeOf struct{ body, nose, root, tip, span, sweep float64 }

// sizes returns the measures for a pipe: on a thicker one than 20 mm the fins
// stand out more, in proportion, so that the rocket flies as straight.
func sizes(name string, pipe float64) sizeOf {
	s := map[string]sizeOf{
		"short":  {160, 36, 46, 25, 32, 26},
		"middle": {200, 45, 52, 28, 34, 28},
		"long":   {240, 54, 60, 32, 38, 32},
	}[name]
	thicker := math.Max(1, pipe/20)
	s.span, s.sweep = s.span*thicker, s.sweep*thicker
	return s
}

func designArguments() form.Form {
	number := func(key form.Key[float64], low, high float64, doc string) form.Field {
		return form.Field{Key: key, Unit: "mm", Min: low, Max: high, Assumed: "that of the size", Doc: doc}
	}
	return form.Form{
		{Key: argSize, Choices: []string{"short", "middle", "long"}, Default: "middle", Doc: "Size of the rocket; each of its measures can be given by itself."},
		{Key: argFins, Min: 3, Max: 6, Default: 3, Doc: "Number of fins."},
		number(argBodyMM, 80, 600, "Length of the tube."),
		number(argNoseMM, 20, 150, "Height of the nose cone."),
		number(argFinRootMM, 15, 120, "Length of a fin along the tube."),
		number(argFinTipMM, 5, 120, "Length of its outer edge."),
		number(argFinSpanMM, 8, 120, "How far it stands out."),
		number(argFinSweepMM, 0, 120, "How far the front of its outer edge lies behind the front of its root."),
		{Key: argTapeG, Unit: "g", Min: 0, Max: 10, Default: 1.5, Doc: "Mass of the tape and glue along the tube."},
	}
}

// designOf returns the rocket that the values describe.
func designOf(v form.Values) (rocket.Design, error) {
	s := sizes(argSize.Of(v), school.StockPipeOutsideMM.Of(v))
	measure := func(key form.Key[float64], usual float64) quantity.Length {
		if key.In(v) {
			usual = key.Of(v)
		}
		return quantity.Millimetres(usual)
	}
	weight := school.StockRocketPaperGM2.Of(v)
	d := rocket.Design{
		Pipe: quantity.Millimetres(school.StockPipeOutsideMM.Of(v)), Play: quantity.Millimetres(school.StockPipePlayMM.Of(v)),
		Paper: rocket.PaperThickness(weight), Weight: weight, Tape: rocket.Grams(argTapeG.Of(v)),
		Body: measure(argBodyMM, s.body), Nose: measure(argNoseMM, s.nose), Fins: argFins.Of(v),
		Fin: rocket.Fin{
			Root: measure(argFinRootMM, s.root), Tip: measure(argFinTipMM, s.tip),
			Span: measure(argFinSpanMM, s.span), Sweep: measure(argFinSweepMM, s.sweep),
		},
	}
	return d, d.Check()
}

// Limits of a rocket: how many diameters the push should take hold behind the balance
// point, and the play under which rolled paper jams. Common practice, no source.
const (
	leastMargin = 1.0
	mostMargin  = 5.0
	leastPlay   = quantity.Length(0.0004)
)

// marginOf is by how many diameters the push takes hold behind the balance point, printed
// on its side of the limits.
func marginOf(d rocket.Design) say.Value {
	return entry.OnItsSide(entry.OnItsSide(say.Number(d.Margin(glueStrip), "", 1), leastMargin), mostMargin)
}

func reckonRocketWrap(v form.Values) (result.Result, error) {
	d, err := designOf(v)
	if err != nil {
		return result.Result{}, err
	}
	cone := d.Cone()
	calibres := d.Margin(glueStrip)
	margin := marginOf(d)
	stable := say.Words("rocket-wrap.straight")
	var warnings []say.Phrase
	switch {
	case calibres < leastMargin:
		stable = say.Words("rocket-wrap.tumbles")
		warnings = append(warnings, say.Line("rocket-wrap.unstable", margin))
	case calibres > mostMargin:
		stable = say.Words("rocket-wrap.turns")
	}
	if least := say.Millimetres(leastPlay, 1); d.Play < leastPlay {
		warnings = append(warnings, say.Line("rocket-wrap.tight", entry.OnItsSide(say.Millimetres(d.Play, 1), least.Number).InMetric(), least.InMetric()))
	}
	r := result.Result{
		Facts: []result.Fact{
			{Name: "pipe", Value: say.Millimetres(d.Pipe, 1)},
			{Name: "inside", Value: say.Millimetres(d.Pipe+d.Play, 1)},
			{Name: "wrap", Value: say.Millimetres(d.Wrap(), 1)},
			{Name: "wrap_width", Value: say.Millimetres(d.Wrap()+glueStrip, 1)},
			{Name: "body", Value: say.Millimetres(d.Body, 0)},
			{Name: "length", Value: say.Millimetres(d.Length(), 0)},
			{Name: "fins", Value: say.Count(d.Fins)},
			{Name: "cone_slant", Value: say.Millimetres(cone.Slant(), 1)},
			{Name: "cone_angle", Value: say.Degrees(cone.Sector(), 1)},
			{Name: "mass", Value: say.Number(d.Mass(glueStrip).Grams(), "g", 1)},
			{Name: "balance", Value: say.Millimetres(d.CentreOfMass(glueStrip), 0)},
			{Name: "pressure", Value: say.Millimetres(d.CentreOfPressure(), 0)},
			{Name: "calibres", Value: margin},
			{Name: "stable", Value: stable},
		},
		Warnings: warnings,
		Notes:    []say.Phrase{say.Line("rocket-wrap.note")},
		Working:  wrapWorking(d),
	}
	paper := drawing.PaperOf(school.Paper.Of(v))
	for _, sheet := range templateSheets(d, quantity.Millimetres(argShorterMM.Of(v)), paper) {
		r.Sheets = append(r.Sheets, paper.Sheets(sheet)...)
	}
	if !argNumbers.Of(v) {
		r.Facts, r.Notes, r.Working = nil, nil, nil
	}
	return r, nil
}

// A piece is one part to cut out: its size, and how to draw it with its top left
// corner at a point.
type piece struct {
	width, height float64
	draw          func(*drawing.Drawing, drawing.Point)
}

// Room in millimetres: between pieces, for scissors, and round a sheet, so that
// the edge does not halve an outline.
const (
	cutGap  = 4.0
	cutEdge = 0.5
)

// templateSheets lays the wrap on the left of the first sheet and the other
// pieces beside it, row by row, and what finds no room on further sheets. A piece
// that is larger than the paper is a drawing of its own size, to be laid across or
// tiled.
func templateSheets(d rocket.Design, shorter quantity.Length, paper drawing.Paper) []drawing.Drawing {
	width, height := paper.Whole() // the lessons know which fins are on the first sheet
	sheet := func(wide, high float64) drawing.Drawing {
		return drawing.Drawing{Name: "template", Width: wide, Height: high,
			Title:       say.Line("rocket-wrap.sheet", say.Millimetres(d.Pipe, 1), say.Count(d.Fins)),
			Description: say.Line("rocket-wrap.sheet_description", say.Millimetres(d.Wrap(), 1), say.Millimetres(d.Body, 0), say.Degrees(d.Cone().Sector(), 1)),
		}
	}
	pieces := []piece{wrapPiece(d, shorter), conePiece(d)}
	for i := range d.Fins {
		pieces = append(pieces, finPiece(d, i+1))
	}
	sheets, first := laid(pieces, width, height, sheet, len(pieces))
	// A sheet for one fin alone shares those of the sheet before it.
	if n := len(first); n > 1 && len(pieces)-first[n-1] == 1 && first[n-1]-first[n-2] > 2 {
		sheets, _ = laid(pieces, width, height, sheet, (first[n-2]+len(pieces)+1)/2)
	}
	return sheets
}

// laid lays the pieces out, with a new sheet before one of them at least, and says which
// piece is the first on each sheet.
func laid(pieces []piece, width, height float64, sheet func(wide, high float64) drawing.Drawing, apart int) (sheets []drawing.Drawing, first []int) {
	right, foot := width-cutEdge, height-cutEdge
	left, x, y, row := right, right, cutEdge, 0.0
	for i, p := range pieces {
		if p.width > right-cutEdge || p.height > foot-cutEdge {
			own := sheet(p.width+2*cutEdge, p.height+2*cutEdge)
			p.draw(&own, drawing.Point{X: cutEdge, Y: cutEdge})
			sheets, first = append(sheets, own), append(first, i)
			left, x = right, right // the next piece begins a sheet
			continue
		}
		if x > left && x+p.width > right {
			x, y, row = left, y+row+cutGap, 0
		}
		if x+p.width > right || y+p.height > foot || i == apart {
			sheets, first = append(sheets, sheet(width, height)), append(first, i)
			left, x, y, row = cutEdge, cutEdge, cutEdge, 0
		}
		p.draw(&sheets[len(sheets)-1], drawing.Point{X: x, Y: y})
		x, row = x+p.width+cutGap, max(row, p.height)
		if i == 0 { // the wrap keeps its column to itself
			left, row = x, 0
		}
	}
	return sheets, first
}

// glueStrip is the part of the wrap that goes under its other edge.
const glueStrip = quantity.Length(0.010)

// wrapPiece is the body: its outline, the edge of the glue strip, a line for each
// fin, and words at the ends.
func wrapPiece(d rocket.Design, shorter quantity.Length) piece {
	round, body := d.Wrap().Millimetres(), d.Body.Millimetres()
	strip := glueStrip.Millimetres()
	return piece{round + strip, body, func(p *drawing.Drawing, at drawing.Point) {
		to := func(x, y float64) drawing.Point { return shifted(at, x, y) }
		p.Area("glue", to(round, 0), to(round+strip, 0), to(round+strip, body), to(round, body))
		p.Area("cut wrap", to(0, 0), to(round+strip, 0), to(round+strip, body), to(0, body))
		p.Line("fold overlap", to(round, 0), to(round, body))
		if y := shorter.Millimetres(); y > 0 {
			p.Line("choice shorter", to(0, y), to(round+strip, y))
			p.Label("hint", to(round/2, y-1.5), drawing.Middle, say.Words("rocket-wrap.shorter_label", say.Millimetres(shorter, 0)))
		}
		p.Turned("hint", to(round+strip/2+1.1, body/2), -90, say.Words("rocket-wrap.glue_here"))
		root := d.Fin.Root.Millimetres()
		for i := range d.Fins {
			x := round * (float64(i) + 0.5) / float64(d.Fins)
			p.Line("mark fin-line", to(x, body-root), to(x, body))
			p.Line("mark", to(x-1.5, body-root), to(x+1.5, body-root))
			p.Turned("hint", to(x-1, body-root+10), -90, say.Words("rocket-wrap.fin_label", say.Text(strconv.Itoa(i+1))))
		}
		p.Label("hint", to(round/2, 6), drawing.Middle, say.Words("rocket-wrap.top_label"))
		p.Label("hint", to(round/2, body/2-6), drawing.Middle, say.Words("rocket-wrap.pipe_label", say.Millimetres(d.Pipe, 1)))
		p.Label("hint", to(round/2, body/2), drawing.Middle, say.Words("rocket-wrap.roll_label"))
		p.Line("mark", to(round*0.35, body/2+4), to(round*0.65, body/2+4))
		p.Line("mark", to(round*0.65-3, body/2+2.5), to(round*0.65, body/2+4), to(round*0.65-3, body/2+5.5))
		p.Turned("hint", to(round/float64(d.Fins)+1.1, body-10), -90, say.Words("rocket-wrap.bottom_label"))
	}}
}

// conePiece is the sector of the nose cone, a flap to glue along one side, and
// teeth round its arc that are folded in and glued into the tube.
func conePiece(d rocket.Design) piece {
	const flap, tooth = 6.0, 8.0
	cone := d.Cone()
	slant, sector := cone.Slant().Millimetres(), cone.Sector().Radians()
	on := func(radius, angle float64) drawing.Point { // angles from straight down, towards the right
		return drawing.Point{X: radius * math.Sin(angle), Y: radius * math.Cos(angle)}
	}
	from, to := -sector/2, sector/2
	const parts = 120 // chords 3° long at most: 0.02 mm inside the arc
	var arc []drawing.Point
	for i := range parts + 1 {
		arc = append(arc, on(slant, from+sector*float64(i)/parts))
	}
	teeth := coneTeeth(on, slant, tooth, from, sector)
	side := drawing.Point{X: math.Cos(to), Y: -math.Sin(to)} // square to the last radius, outward
	beside := func(radius float64) drawing.Point {
		p := on(radius, to)
		return drawing.Point{X: p.X + flap*side.X, Y: p.Y + flap*side.Y}
	}
	glue := []drawing.Point{{}, beside(flap), beside(slant - 1.5*flap), on(slant, to)}

	corner, end := bounds(append(append([]drawing.Point{{}}, teeth...), glue...))
	return piece{end.X - corner.X, end.Y - corner.Y, func(p *drawing.Drawing, at drawing.Point) {
		move := func(points []drawing.Point) []drawing.Point {
			moved := make([]drawing.Point, len(points))
			for i, q := range points {
				moved[i] = drawing.Point{X: at.X + q.X - corner.X, Y: at.Y + q.Y - corner.Y}
			}
			return moved
		}
		p.Area("glue", move(append(slices.Clone(teeth), reversed(arc)...))...)
		p.Area("glue", move(glue)...)
		p.Line("cut cone-side", move([]drawing.Point{{}, on(slant, from)})...)
		p.Line("cut", move(teeth)...)
		p.Line("cut", move(glue)...)
		p.Line("fold cone-arc", move(arc)...)
		p.Line("fold cone-seam", move([]drawing.Point{{}, on(slant, to)})...)
		p.Label("hint", move([]drawing.Point{on(slant*0.68, 0)})[0], drawing.Middle, say.Words("rocket-wrap.cone_label"))
	}}
}

// reversed returns the points from the last to the first.
func reversed(points []drawing.Point) []drawing.Point {
	list := slices.Clone(points)
	slices.Reverse(list)
	return list
}

// coneTeeth is the jagged edge beyond the arc, from its one end to the other.
func coneTeeth(on func(radius, angle float64) drawing.Point, slant, tooth, from, sector float64) []drawing.Point {
	n := max(6, int(math.Round(slant*sector/9)))
	var edge []drawing.Point
	for i := range n {
		a, step := from+sector*float64(i)/float64(n), sector/float64(n)
		edge = append(edge, on(slant, a), on(slant+tooth, a+0.22*step), on(slant+tooth, a+0.78*step))
	}
	return append(edge, on(slant, from+sector))
}

func bounds(points []drawing.Point) (corner, end drawing.Point) {
	corner, end = points[0], points[0]
	for _, p := range points {
		corner = drawing.Point{X: min(corner.X, p.X), Y: min(corner.Y, p.Y)}
		end = drawing.Point{X: max(end.X, p.X), Y: max(end.Y, p.Y)}
	}
	return corner, end
}

// finPiece is a fin of two layers, folded along its outer edge, with a tab at
// each root that is glued to the tube.
func finPiece(d rocket.Design, number int) piece {
	const tab = 7.0
	root, tip := d.Fin.Root.Millimetres(), d.Fin.Tip.Millimetres()
	span, sweep := d.Fin.Span.Millimetres(), d.Fin.Sweep.Millimetres()
	tall := max(root, sweep+tip)
	return piece{2 * (span + tab), tall, func(p *drawing.Drawing, at drawing.Point) {
		to := func(x, y float64) drawing.Point { return shifted(at, x, y) }
		middle, wide := tab+span, 2*(tab+span)
		p.Area("glue", to(tab, 0), to(tab, root), to(0, root-2), to(0, 2))
		p.Area("glue", to(wide-tab, 0), to(wide, 2), to(wide, root-2), to(wide-tab, root))
		p.Area("cut fin", to(tab, 0), to(middle, sweep), to(wide-tab, 0), to(wide, 2), to(wide, root-2), to(wide-tab, root),
			to(middle, sweep+tip), to(tab, root), to(0, root-2), to(0, 2))
		p.Line("fold fin-tip", to(middle, sweep), to(middle, sweep+tip))
		p.Line("fold fin-root", to(tab, 0), to(tab, root))
		p.Line("fold fin-root", to(wide-tab, 0), to(wide-tab, root))
		p.Label("hint", to(tab+span*0.45, root*0.6), drawing.Middle, say.Words("rocket-wrap.fin_label", say.Text(strconv.Itoa(number))))
		p.Turned("hint", to(tab/2+1.1, root/2), -90, say.Words("rocket-wrap.tab_label"))
		p.Turned("hint", to(wide-tab/2+1.1, root/2), -90, say.Words("rocket-wrap.tab_label"))
	}}
}

func wrapWorking(d rocket.Design) []say.Phrase {
	cone := d.Cone()
	wrap, angle, calibres := say.Millimetres(d.Wrap(), 1), say.Degrees(cone.Sector(), 1), marginOf(d)
	round := entry.Enough(wrap, func(x []float64) float64 { return math.Pi * (x[0] + x[1] + x[2]) },
		say.Millimetres(d.Pipe, 1), say.Millimetres(d.Play, 1), say.Millimetres(d.Paper, 2))
	sector := entry.Enough(angle, func(x []float64) float64 { return 360 * x[0] / x[1] }, say.Millimetres(cone.Diameter/2, 2), say.Millimetres(cone.Slant(), 1))
	slant := entry.Enough(sector[1], func(x []float64) float64 { return math.Hypot(x[0], x[1]) }, sector[0], say.Millimetres(d.Nose, 0))
	balance := entry.Enough(calibres, func(x []float64) float64 { return (x[0] - x[1]) / x[2] },
		say.Millimetres(d.CentreOfPressure(), 0), say.Millimetres(d.CentreOfMass(glueStrip), 0), say.Millimetres(d.Diameter(), 1))
	return []say.Phrase{
		say.Line("rocket-wrap.working_wrap", append(round, wrap)...),
		say.Line("rocket-wrap.working_slant", append(slant, sector[1])...),
		say.Line("rocket-wrap.working_sector", append(sector, angle)...),
		say.Line("rocket-wrap.working_balance", append(balance, calibres)...),
	}
}
