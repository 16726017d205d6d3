package dial

import (
	"math"

	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/dial"
)

// couple is how two single pieces lie head to foot, their styles side by side: it says how
// far the second one, turned by half a turn, is from the first, and what both need.
type couple struct {
	toe, turned   drawing.Point // of the first, of the second
	width, height float64
}

const styleGap = 8.0 // mm between the two styles, across them

func coupled(g dial.Gnomon) couple {
	base, height := g.Base.Millimetres(), g.Height.Millimetres()
	right, up := styleGap*g.Angle.Sin(), styleGap*g.Angle.Cos()
	return couple{
		toe:    drawing.Point{X: right, Y: tabDepth + up + height},
		turned: drawing.Point{X: base, Y: tabDepth},
		width:  base + right, height: 2*tabDepth + up + height,
	}
}

// couplesOn returns how many couples the paper holds beside and below each other: upright,
// which leaves room for the pictures, and across only where none fits so.
func couplesOn(paper drawing.Paper, g dial.Gnomon) (across, down int) {
	c := coupled(g)
	for _, on := range []drawing.Paper{paper, paper.Across()} {
		width, height := on.Area()
		columns, rows := int((width-2*pieceEdge+pieceGap)/(c.width+pieceGap)), int((height-2*pieceEdge+pieceGap)/(c.height+pieceGap))
		if columns*rows > 0 {
			return columns, rows
		}
	}
	return 0, 0
}

// singlesOn returns how many single pieces a sheet holds: couples, or one where the paper
// holds none.
func singlesOn(paper drawing.Paper, g dial.Gnomon) int {
	across, down := couplesOn(paper, g)
	return max(1, 2*across*down)
}

// filled lays single pieces out on one sheet, as many as it holds head to foot, and beside
// them how one of them is put together.
func filled(paper drawing.Paper, g dial.Gnomon) []drawing.Sheet {
	across, down := couplesOn(paper, g)
	if across*down == 0 {
		return fewest(paper, gnomonPieces(g, false))
	}
	d := gnomonDrawing(g, 0, 0)
	c := coupled(g)
	for row := range down {
		for column := range across {
			left, top := pieceEdge+float64(column)*(c.width+pieceGap), pieceEdge+float64(row)*(c.height+pieceGap)
			triangle(&d, g, drawing.Point{X: left + c.toe.X, Y: top + c.toe.Y}, 1, 1)
			triangle(&d, g, drawing.Point{X: left + c.turned.X, Y: top + c.turned.Y}, -1, -1)
		}
	}
	d.Width = 2*pieceEdge + float64(across)*(c.width+pieceGap) - pieceGap
	d.Height = 2*pieceEdge + float64(down)*(c.height+pieceGap) - pieceGap
	completed(&d, paper, g, false)
	return paper.Sheets(d)
}

// Measures of the pictures that show how a gnomon is put together, in millimetres.
const (
	howWidth  = 58.0
	howLeast  = 52.0 // height of a picture with its words
	howMost   = 78.0
	howGap    = 8.0
	howLine   = 3.4
	howWords  = 12.0 // room for three lines of words
	checkRow  = 9.0  // from one thing to check to the next
	checkWide = 100.0
)

// A how is one picture of the three, in its corner of the sheet.
type how struct {
	d      *drawing.Drawing
	at     drawing.Point
	height float64
	gnomon dial.Gnomon
	pair   bool
}

// completed draws the three steps where the paper has room for them, in a column to the right
// of the pieces or in a row below them, and what to measure before cutting in what is left
// below the pieces.
func completed(d *drawing.Drawing, paper drawing.Paper, g dial.Gnomon, pair bool) {
	steps := []func(how){how.glue, how.fold, how.stand}
	for _, on := range []drawing.Paper{paper, paper.Across()} {
		width, height := on.Area()
		switch {
		case d.Width > width || d.Height > height:
		case width-d.Width >= howGap+howWidth && height >= 3*howLeast:
			left, each := d.Width+howGap, min(howMost, height/3)
			if height-d.Height >= checkRow*6 && d.Width >= checkWide {
				checkList(d, drawing.Point{X: pieceEdge, Y: d.Height + 2*checkRow}, g)
			}
			d.Width, d.Height = left+howWidth, max(d.Height, 3*each)
			for i, step := range steps {
				step(how{d, drawing.Point{X: left, Y: float64(i) * each}, each, g, pair})
			}
			return
		case height-d.Height >= howGap+howLeast && width >= 3*howWidth+2*howGap:
			top := d.Height + howGap
			d.Width, d.Height = max(d.Width, 3*howWidth+2*howGap), top+howLeast
			for i, step := range steps {
				step(how{d, drawing.Point{X: float64(i) * (howWidth + howGap), Y: top}, howLeast, g, pair})
			}
			return
		}
	}
}

// checkList is what to measure before cutting, a box for each, and room for a name.
func checkList(d *drawing.Drawing, at drawing.Point, g dial.Gnomon) {
	const box = 3.6
	d.Label("strong", at, drawing.Start, say.Words("dial-gnomon.check"))
	for i, line := range []say.Value{
		say.Words("dial-gnomon.check_base", say.Number(g.Base.Millimetres(), "mm", 0)), say.Words("dial-gnomon.check_height", say.Number(g.Height.Millimetres(), "mm", 0)),
		say.Words("dial-gnomon.check_style", say.Number(g.Style.Millimetres(), "mm", 0)), say.Words("dial-gnomon.check_angle", say.Number(g.Angle.Degrees(), "deg", 1)),
	} {
		y := at.Y + checkRow*(0.9+0.75*float64(i))
		d.Area("tick-box", frame{at.X, y - box + 0.5, at.X + box, y + 0.5}.corners()...)
		d.Label("how-words", drawing.Point{X: at.X + box + 2, Y: y}, drawing.Start, line)
	}
	y := at.Y + checkRow*4.1
	d.Label("how-words", drawing.Point{X: at.X, Y: y}, drawing.Start, say.Words("dial-gnomon.check_by"))
	d.Line("how-thin", drawing.Point{X: at.X + 36, Y: y + 0.8}, drawing.Point{X: at.X + checkWide - pieceEdge, Y: y + 0.8})
	d.Height = max(d.Height, y+2)
}

// words writes what the step asks for.
func (h how) words(key string) {
	h.d.Paragraph("how-words", drawing.Point{X: h.at.X, Y: h.at.Y + 4}, howWidth-2, howLine, say.Words(key))
}

// small returns the gnomon of the pictures, its toe at a point; it is no wider and no higher
// than its room.
func (h how) small(toe drawing.Point, wide, high float64) (heel, tip drawing.Point) {
	style := min(wide/max(h.gnomon.Angle.Cos(), 0.01), high/max(h.gnomon.Angle.Sin(), 0.01), 44)
	heel = drawing.Point{X: toe.X + style*h.gnomon.Angle.Cos(), Y: toe.Y}
	return heel, drawing.Point{X: heel.X, Y: toe.Y - style*h.gnomon.Angle.Sin()}
}

// glue shows a pair glued back to back, or one piece on its card.
func (h how) glue() {
	toe := drawing.Point{X: h.at.X + 8, Y: h.at.Y + h.height - 8}
	heel, tip := h.small(toe, howWidth-20, h.height-howWords-16)
	if h.pair {
		h.words("dial-gnomon.how_pair")
		const aside = 4.0
		h.d.Area("how-glue", drawing.Point{X: toe.X + aside, Y: toe.Y - aside}, drawing.Point{X: heel.X + aside, Y: heel.Y - aside}, drawing.Point{X: tip.X + aside, Y: tip.Y - aside})
		h.d.Area("how-face", toe, heel, tip)
		return
	}
	h.words("dial-gnomon.how_card")
	h.d.Area("how-face", frame{toe.X - 5, tip.Y - 3, heel.X + 5, toe.Y + 4}.corners()...)
	h.d.Area("how-glue", toe, heel, tip)
}

// fold shows the tabs from the end of the base, folded to both sides.
func (h how) fold() {
	h.words("dial-gnomon.how_fold")
	foot := drawing.Point{X: h.at.X + howWidth/2, Y: h.at.Y + h.height - 12}
	h.d.Line("how-style", foot, drawing.Point{X: foot.X, Y: foot.Y - min(30, h.height-howWords-16)})
	h.d.Area("how-glue", frame{foot.X - 16, foot.Y + 0.6, foot.X + 16, foot.Y + 2}.corners()...)
	h.d.Line("how-edge", drawing.Point{X: foot.X - 16, Y: foot.Y}, drawing.Point{X: foot.X + 16, Y: foot.Y})
	for _, side := range []float64{-1, 1} {
		var bend []drawing.Point
		for i := range 9 { // a quarter of an ellipse, from beside the foot out to the tab's end
			a := math.Pi / 2 * float64(i) / 8
			bend = append(bend, drawing.Point{X: foot.X + side*(2+11*math.Sin(a)), Y: foot.Y - 2 - 7*math.Cos(a)})
		}
		h.d.Line("how-thin", bend...)
		end := bend[len(bend)-1]
		h.d.Line("how-thin", drawing.Point{X: end.X - side*1.6, Y: end.Y - 1.6}, end, drawing.Point{X: end.X + side*1.2, Y: end.Y - 2})
	}
}

// stand shows the gnomon on its plate from above, a little aside: east to the right and
// away, the noon line to the left and away.
func (h how) stand() {
	h.words("dial-gnomon.how_stand")
	toe := drawing.Point{X: h.at.X + 35, Y: h.at.Y + h.height - 13}
	const style = 34.0
	on := func(east, north, up float64) drawing.Point { // millimetres of the small gnomon
		const scale = 0.84
		return drawing.Point{X: toe.X + scale*(0.72*east-0.8*north), Y: toe.Y - scale*(0.5*east+0.35*north+0.85*up)}
	}
	base, height := style*h.gnomon.Angle.Cos(), style*h.gnomon.Angle.Sin()
	ahead := max(base+3, 18)
	h.d.Area("how-face", on(-19, -12, 0), on(19, -12, 0), on(19, ahead, 0), on(-19, ahead, 0))
	h.d.Line("how-thin", on(0, 0, 0), on(0, ahead, 0))
	h.d.Area("how-glue", on(0, 0, 0), on(0, base, 0), on(0, base, height))
	h.d.Line("how-style", on(0, 0, 0), on(0, base, height))
	h.d.Disc("toe", toe, 0.7)
}
