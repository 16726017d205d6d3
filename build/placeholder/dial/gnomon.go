package dial

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/dial"
	"noonbook/compute/quantity"
)

// What the entry takes.
const argPieces form.Key[string] = "pieces"

func dialGnomon() entry.Entry {
	return entry.Entry{
		Name:      "dial-gnomon",
		Summary:   "The gnomon to print and cut at true size, with glue tabs.",
		Printable: true,
		Arguments: form.Form{dialKind,
			{Key: argPieces, Choices: []string{"pair", "single"}, Default: "pair", Doc: "A mirrored pair to glue back to back, or one piece."},
		},
		Settings: form.Keys{school.Paper, school.StockStyleMM, school.StockPolarHeightMM, school.Latitude, school.Longitude, school.ElevationM, school.TimeZone},
		Facts: []entry.Fact{
			{Name: "shape", Doc: "a triangle, a rod where the style stands upright on the plate, or the rectangle of a polar dial"},
			{Name: "angle", Unit: "deg", Doc: "angle between the style and the plate"},
			{Name: "base", Unit: "mm", Doc: "side along the noon line; how far the tip of a rod is ahead of its foot"},
			{Name: "height", Unit: "mm", Doc: "upright side, or how far the rod stands out of the plate; the style's height on a polar dial"},
			{Name: "style", Unit: "mm", Doc: "side of the gnomon whose edge casts the shadow: it slopes, but not on a polar dial"},
			{Name: "plate_slope", Unit: "deg", Doc: "slope of the plate: zero lying, 90° upright"},
		},
		Sources:  []string{"Gnomon: right triangle with the angle between style and plate; on a level plate that is the latitude (common practice)", sourcePolar},
		Cautions: []string{entry.CareScissors, entry.CareTip},
		OnPaper:  []string{entry.CareSun},
		OnSheet:  onSheet,
		Reckon:   reckonDialGnomon,
	}
}

func reckonDialGnomon(v form.Values) (result.Result, error) {
	latitude, face := school.Place(v).Latitude, kindOfDial(v)
	if face == dial.Polar {
		return reckonPolarGnomon(v), nil
	}
	gnomon, err := dial.GnomonOfStyle(face.Latitude(latitude), quantity.Millimetres(school.StockStyleMM.Of(v)))
	if err != nil {
		return result.Result{}, err
	}
	slope := slopeOf(face, latitude)
	paper := drawing.PaperOf(school.Paper.Of(v))
	shape := say.Words("dial-gnomon.triangle")
	r := result.Result{Warnings: unreadable(face, latitude)}
	switch {
	case isRod(gnomon):
		shape = say.Words("dial-gnomon.rod")
		gauges, _ := paper.Repeated(rodGauge(gnomon, face, slope), 0)
		r.Sheets = paper.Sheets(gauges)
		r.Notes = []say.Phrase{say.Line("dial-gnomon.rod_note", say.Number(gnomon.Style.Millimetres(), "mm", 0))}
		if ahead := gnomon.Base.Millimetres(); ahead >= 0.5 { // near a pole, not on it
			r.Notes = []say.Phrase{say.Line("dial-gnomon.leaning_rod_note", say.Number(gnomon.Style.Millimetres(), "mm", 0), say.Number(gnomon.Angle.Degrees(), "deg", 1), say.Number(ahead, "mm", 0))}
		}
	default:
		if argPieces.Of(v) == "single" {
			r.Sheets = filled(paper, gnomon)
			r.Notes = []say.Phrase{say.Line("dial-gnomon.single_note")}
			break
		}
		pieces := gnomonPieces(gnomon, true)
		for i := range pieces {
			completed(&pieces[i], paper, gnomon, true)
		}
		r.Sheets = fewest(paper, pieces)
		r.Notes = []say.Phrase{say.Line("dial-gnomon.note")}
	}
	r.Facts = []result.Fact{
		{Name: "shape", Value: shape},
		{Name: "angle", Value: say.Number(gnomon.Angle.Degrees(), "deg", 1)},
		{Name: "base", Value: say.Number(gnomon.Base.Millimetres(), "mm", 0)},
		{Name: "height", Value: say.Number(gnomon.Height.Millimetres(), "mm", 0)},
		{Name: "style", Value: say.Number(gnomon.Style.Millimetres(), "mm", 0)},
		{Name: "plate_slope", Value: say.Number(slope.Degrees(), "deg", 1).IfAny()},
	}
	return r, nil
}

// fewest lays out the drawing that takes the fewest sheets, the first of equals.
func fewest(paper drawing.Paper, drawings []drawing.Drawing) []drawing.Sheet {
	var best []drawing.Sheet
	for _, d := range drawings {
		if sheets := paper.Sheets(d); best == nil || len(sheets) < len(best) {
			best = sheets
		}
	}
	return best
}

// Measures of the pieces in millimetres.
const (
	tabDepth  = 14.0
	tabClear  = 10.0 // from the sharp corner, where a tab would reach beyond the style
	pieceEdge = 4.0  // round the pieces
	pieceGap  = 8.0  // between them
)

// gnomonPieces returns the two ways to lay the pieces out: beside and above
// each other.
func gnomonPieces(g dial.Gnomon, pair bool) []drawing.Drawing {
	base, height := g.Base.Millimetres(), g.Height.Millimetres()
	piece := drawing.Point{X: base, Y: height + tabDepth}
	if !pair {
		d := gnomonDrawing(g, piece.X, piece.Y)
		triangle(&d, g, drawing.Point{X: pieceEdge, Y: pieceEdge + height}, 1, 1)
		return []drawing.Drawing{d}
	}
	beside := gnomonDrawing(g, 2*piece.X+pieceGap, piece.Y)
	triangle(&beside, g, drawing.Point{X: pieceEdge, Y: pieceEdge + height}, 1, 1)
	triangle(&beside, g, drawing.Point{X: beside.Width - pieceEdge, Y: pieceEdge + height}, -1, 1)
	above := gnomonDrawing(g, piece.X, 2*piece.Y+pieceGap)
	triangle(&above, g, drawing.Point{X: pieceEdge, Y: pieceEdge + height}, 1, 1)
	triangle(&above, g, drawing.Point{X: above.Width - pieceEdge, Y: pieceEdge + piece.Y + pieceGap + height}, -1, 1)
	return []drawing.Drawing{beside, above}
}

// gnomonDrawing is an empty drawing for pieces that take so much room.
func gnomonDrawing(g dial.Gnomon, width, height float64) drawing.Drawing {
	return drawing.Drawing{
		Name: "dial-gnomon", Width: width + 2*pieceEdge, Height: height + 2*pieceEdge,
		Title:       say.Line("dial-gnomon.title", say.Number(g.Angle.Degrees(), "deg", 1)),
		Description: say.Line("dial-gnomon.description"),
	}
}

// triangle draws one piece from its toe, to the right or mirrored to the left, upright or
// with its head down: cut lines outside, the base as a fold, and four tabs beyond it.
func triangle(d *drawing.Drawing, g dial.Gnomon, toe drawing.Point, side, up float64) {
	base, height := g.Base.Millimetres(), g.Height.Millimetres()
	at := func(x, y float64) drawing.Point { return drawing.Point{X: toe.X + side*x, Y: toe.Y - up*y} }
	clear := min(tabClear, base/4)
	wide := (base - clear) / 4
	slant := min(2.5, wide/4)
	for i := range 4 {
		left := clear + float64(i)*wide
		d.Area("glue", at(left, 0), at(left+slant, -tabDepth), at(left+wide-slant, -tabDepth), at(left+wide, 0))
	}
	d.Line("style-edge", at(0, 0), at(base, height))
	d.Line("cut edge", at(base, height), at(base, 0))
	d.Line("fold", at(0, 0), at(base, 0))
	d.Line("cut edge", at(0, 0), at(clear, 0))
	for i := range 4 {
		left := clear + float64(i)*wide
		d.Line("cut edge", at(left, 0), at(left+slant, -tabDepth), at(left+wide-slant, -tabDepth), at(left+wide, 0))
	}
	middle := at(base*0.64, height*0.26)
	if height > 25 && base > 60 { // elsewhere the page says it
		d.Label("strong", middle, drawing.Middle, say.Number(g.Angle.Degrees(), "deg", 1))
		d.Label("small", drawing.Point{X: middle.X, Y: middle.Y + 4.5}, drawing.Middle, say.Words("dial-gnomon.lengths",
			say.Number(g.Base.Millimetres(), "mm", 0), say.Number(height, "mm", 0), say.Number(g.Style.Millimetres(), "mm", 0)))
		d.Label("small", drawing.Point{X: middle.X, Y: middle.Y + 11}, drawing.Middle, say.Words("dial-gnomon.group"))
	}
	above := at(base*0.55+4*g.Angle.Sin(), height*0.55-4*g.Angle.Cos())
	d.Shapes = append(d.Shapes, drawing.Shape{Role: "small", Points: []drawing.Point{above}, Anchor: drawing.Middle, Writing: &drawing.Writing{Turn: -side * up * g.Angle.Degrees(), Text: say.Words("dial-gnomon.style_here")}})
	if wide > 20 {
		middle := at(clear+1.5*wide, -tabDepth/2)
		d.Label("small", drawing.Point{X: middle.X, Y: middle.Y + 1}, drawing.Middle, say.Words("dial-gnomon.tabs"))
	}
}

// onSheet is how many gnomons a sheet holds.
func onSheet(v form.Values) int {
	face, paper := kindOfDial(v), drawing.PaperOf(school.Paper.Of(v))
	if face == dial.Polar {
		_, n := polarGnomons(v)
		return n
	}
	gnomon, err := dial.GnomonOfStyle(face.Latitude(school.Place(v).Latitude), quantity.Millimetres(school.StockStyleMM.Of(v)))
	switch {
	case err != nil:
		return 1
	case isRod(gnomon):
		_, n := paper.Repeated(rodGauge(gnomon, face, slopeOf(face, school.Place(v).Latitude)), 0)
		return n
	case argPieces.Of(v) == "single":
		return singlesOn(paper, gnomon)
	}
	return 1
}

// rodGauge is a strip as long as the rod stands out, and for a plate that
// slopes two props that hold it so.
func rodGauge(g dial.Gnomon, face dial.Face, slope quantity.Angle) drawing.Drawing {
	long := g.Style.Millimetres()
	d := drawing.Drawing{
		Name: "dial-gnomon", Width: long + 2*pieceEdge, Height: 16 + 2*pieceEdge,
		Title:       say.Line("dial-gnomon.rod_title", say.Number(long, "mm", 0)),
		Description: say.Line("dial-gnomon.rod_description"),
	}
	d.Area("cut", frame{pieceEdge, pieceEdge, pieceEdge + long, pieceEdge + 12}.corners()...)
	d.Label("small", drawing.Point{X: pieceEdge + long/2, Y: pieceEdge + 7}, drawing.Middle, say.Words("dial-gnomon.gauge", say.Number(long, "mm", 0)))
	if face == dial.Level || slope < quantity.Degrees(8) || slope > quantity.Degrees(82) {
		return d // the plate lies, or stands against something upright
	}
	prop, err := dial.GnomonOfStyle(slope, quantity.Millimetres(90))
	if err != nil {
		return d
	}
	top := d.Height
	wide, high := prop.Base.Millimetres(), prop.Height.Millimetres()
	d.Width = max(d.Width, 2*wide+pieceGap+2*pieceEdge)
	d.Height += high + tabDepth + pieceEdge + 5
	for _, one := range []struct{ x, side float64 }{{pieceEdge, 1}, {pieceEdge + 2*wide + pieceGap, -1}} {
		at := func(x, y float64) drawing.Point { return drawing.Point{X: one.x + one.side*x, Y: top + high - y} }
		d.Area("glue", at(0, 0), at(4, -tabDepth), at(wide-4, -tabDepth), at(wide, 0))
		d.Line("cut edge", at(0, 0), at(wide, high), at(wide, 0))
		d.Line("fold", at(0, 0), at(wide, 0))
		d.Line("cut edge", at(0, 0), at(4, -tabDepth), at(wide-4, -tabDepth), at(wide, 0))
		d.Label("small", at(wide*0.66, high*0.2), drawing.Middle, say.Words("dial-gnomon.prop", say.Number(slope.Degrees(), "deg", 1)))
	}
	return d
}
