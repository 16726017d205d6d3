package rocket

import (
	"noonbook/build/drawing"
	"noonbook/build/say"
	"noonbook/compute/rocket"
)

// Measures of the picture, the first five in millimetres of the drawing, the others in those
// of the launcher. A two-litre bottle, a shoe and a board: common practice, no source.
const (
	launcherWide   = 150.0
	launcherTall   = 66.0 // above the ground
	launcherBorder = 5.0
	launcherName   = 9.5 // from the ground down to the names
	twoLines       = 36.0
	bottleAxis     = bottleThick / 2
	neckThick      = 28.0
	pipeMiddle     = 30.0  // of the level pipe at the elbow, which lies on the board
	mostRun        = 430.0 // of the level pipe that is drawn; a longer one has a break
	runBreak       = 26.0
	boardLong      = 400.0
	boardThick     = 18.0
	footAbove      = 36.0 // the bottle, before the stamp
	legTop         = 250.0
)

// shoe is the outline of a shoe with the lower leg, from the calf down round the heel and
// along the sole; it is open above.
var shoe = []drawing.Point{{X: 52, Y: legTop}, {X: 54, Y: 150}, {X: 48, Y: 88}, {X: 6, Y: 60}, {X: -4, Y: 28}, {X: 0, Y: 6}, {X: 8, Y: 0}, {X: 280, Y: 0}, {X: 290, Y: 10}, {X: 284, Y: 34}, {X: 262, Y: 48}, {X: 206, Y: 62}, {X: 164, Y: 96}, {X: 154, Y: 150}, {X: 160, Y: legTop}}

// bottle is the outline of a bottle that lies on the ground, from its bottom along the ground.
var bottle = []drawing.Point{{X: 0, Y: 8}, {X: 8, Y: 0}, {X: 235, Y: 0}, {X: 266, Y: 12}, {X: 298, Y: bottleAxis - neckThick/2}, {X: bottleLong, Y: bottleAxis - neckThick/2},
	{X: bottleLong, Y: bottleAxis + neckThick/2}, {X: 298, Y: bottleAxis + neckThick/2}, {X: 266, Y: bottleThick - 12}, {X: 235, Y: bottleThick}, {X: 8, Y: bottleThick}, {X: 0, Y: bottleThick - 8}}

// A launcherView maps the launcher, seen from the side, to the drawing.
type launcherView struct {
	drawing.Drawing
	scale, left, ground float64
}

func (w *launcherView) at(x, up float64) drawing.Point {
	return drawing.Point{X: w.left + x*w.scale, Y: w.ground - up*w.scale}
}

func (w *launcherView) box(role string, x, low, wide, high float64) {
	w.Area(role, w.at(x, low), w.at(x+wide, low), w.at(x+wide, low+high), w.at(x, low+high))
}

func (w *launcherView) moved(x, up float64, points []drawing.Point) []drawing.Point {
	moved := make([]drawing.Point, len(points))
	for i, p := range points {
		moved[i] = w.at(x+p.X, up+p.Y)
	}
	return moved
}

// rounded cuts each corner of a line off: Chaikin, Computer Graphics and Image Processing 3
// (1974), 346.
func rounded(line []drawing.Point) []drawing.Point {
	cut := []drawing.Point{line[0]}
	for i, a := range line[:len(line)-1] {
		b := line[i+1]
		cut = append(cut, drawing.Point{X: a.X*0.75 + b.X*0.25, Y: a.Y*0.75 + b.Y*0.25}, drawing.Point{X: a.X*0.25 + b.X*0.75, Y: a.Y*0.25 + b.Y*0.75})
	}
	return append(cut, line[len(line)-1])
}

// label names a part, with a line to it.
func (w *launcherView) label(at, part drawing.Point, anchor drawing.Anchor, key string) {
	from := drawing.Point{X: at.X, Y: at.Y - 1.2}
	switch {
	case anchor == drawing.End:
		from.X += 1.2
	case anchor == drawing.Start:
		from.X -= 1.2
	default:
		from.Y = at.Y - 4.2
	}
	w.Line("leader", from, part)
	w.Disc("dot", part, 0.5)
	if anchor == drawing.End { // towards the shoe, and in two lines where one would touch it
		w.Offer("name", drawing.Keep, say.Words(key), drawing.Place{At: at, Anchor: anchor}, drawing.Place{At: at, Anchor: anchor, Wide: twoLines})
		return
	}
	w.Label("name", at, anchor, say.Words(key))
}

// launcherDrawing shows the launcher from the side, to scale, with a rocket on it and a foot
// above the bottle. run is the level pipe that is seen, seen the upright one; a long level
// pipe is drawn with a break.
func launcherDrawing(r rocket.Design, run, seen float64) drawing.Drawing {
	body, nose, pipe := r.Body.Millimetres(), r.Nose.Millimetres(), r.Pipe.Millimetres()
	drawn := min(run, mostRun)
	corner := bottleLong + drawn
	up := pipeMiddle + elbowRise
	low := up + seen + noseRoom - body // of the rocket
	whole, tall := corner+boardLong*0.62, max(low+body+nose, bottleThick+footAbove+legTop)
	w := &launcherView{scale: min((launcherWide-2*launcherBorder)/whole, launcherTall/tall)}
	w.left, w.ground = (launcherWide-whole*w.scale)/2, launcherBorder+tall*w.scale
	w.Drawing = drawing.Drawing{
		Name: "launcher", Width: launcherWide, Height: w.ground + launcherName + 3,
		Title: say.Line("rocket-parts.drawing"), Description: say.Line("rocket-parts.description"),
	}
	w.Line("ground", drawing.Point{X: launcherBorder / 2, Y: w.ground}, drawing.Point{X: launcherWide - launcherBorder/2, Y: w.ground})
	w.Area("bottle", w.moved(0, 0, bottle)...)
	w.box("card block", corner+pipe/2-blockLong/2, boardThick, blockLong, blockHigh) // the one behind; the one in front would hide the elbow
	w.level(corner, drawn, pipe, run > drawn)
	w.Area("rubber", w.at(300, bottleAxis-18), w.at(346, bottleAxis-18), w.at(374, bottleAxis-pipe/2-4), w.at(374, bottleAxis+pipe/2+3), w.at(346, bottleAxis+18), w.at(300, bottleAxis+18))
	w.stand(corner, pipe, seen)
	w.rocket(corner, low, body, nose, pipe, up+seen)
	w.Line("foot", w.moved(22, bottleThick+footAbove, rounded(rounded(shoe)))...)
	stamp := w.at(152, bottleThick+footAbove-4)
	to := w.at(152, bottleThick+4)
	w.Line("accent", stamp, drawing.Point{X: to.X, Y: to.Y - 1.6})
	w.Area("arrow", to, drawing.Point{X: to.X - 1.3, Y: to.Y - 2.2}, drawing.Point{X: to.X + 1.3, Y: to.Y - 2.2})
	w.names(corner, drawn, low, body, pipe)
	return w.Drawing
}

// level draws the level pipe, from the neck of the bottle, which is as high as its axis, down
// to the elbow.
func (w *launcherView) level(corner, run, pipe float64, broken bool) {
	from := bottleLong + 14
	middle := func(x float64) float64 {
		return bottleAxis + (pipeMiddle-bottleAxis)*(x-from)/(corner-from)
	}
	piece := func(a, b float64) {
		w.Area("pipe", w.at(a, middle(a)-pipe/2), w.at(b, middle(b)-pipe/2), w.at(b, middle(b)+pipe/2), w.at(a, middle(a)+pipe/2))
	}
	if !broken {
		piece(from, corner)
		return
	}
	cut := bottleLong + run*0.3
	piece(from, cut)
	piece(cut+runBreak, corner)
	for _, x := range []float64{cut, cut + runBreak} { // a wave across each end
		m := middle(x)
		w.Line("ink", w.at(x-4, m+pipe*1.1), w.at(x+5, m+pipe*0.4), w.at(x-5, m-pipe*0.4), w.at(x+4, m-pipe*1.1))
	}
}

// stand draws the board with its weights, the elbow and the upright pipe.
func (w *launcherView) stand(corner, pipe, seen float64) {
	board := corner + pipe/2 - boardLong*0.45
	w.box("card", board, 0, boardLong, boardThick)
	for _, x := range []float64{board + 8, board + boardLong - 62} {
		w.box("stone", x, boardThick, 54, 40)
	}
	up := pipeMiddle + elbowRise
	w.box("pipe upright", corner, up, pipe, seen)
	w.Area("elbow", w.at(corner-20, pipeMiddle-pipe*0.56), w.at(corner+pipe*1.3, pipeMiddle-pipe*0.56), w.at(corner+pipe*1.3, up+10), w.at(corner-pipe*0.3, up+10), w.at(corner-pipe*0.3, pipeMiddle+pipe*0.8), w.at(corner-20, pipeMiddle+pipe*0.8))
}

// rocket draws the rocket over the upright pipe, whose end is seen through the paper.
func (w *launcherView) rocket(x, low, body, nose, pipe, end float64) {
	for _, side := range []float64{-1, 1} {
		edge := x + pipe/2 + side*(pipe/2+1)
		w.Area("rocket fin", w.at(edge, low+52), w.at(edge, low), w.at(edge+side*34, low-4), w.at(edge+side*34, low+24))
	}
	w.box("rocket body", x-1, low, pipe+2, body)
	top := low + body
	w.Area("rocket nose", w.at(x-1, top), w.at(x+pipe+1, top), w.at(x+pipe/2, top+nose))
	w.Line("broken", w.at(x+3, low), w.at(x+3, end), w.at(x+pipe-3, end), w.at(x+pipe-3, low))
}

// names writes the names below the ground and beside the rocket.
func (w *launcherView) names(corner, run, low, body, pipe float64) {
	under := func(x, up float64, key string) {
		part := w.at(x, up)
		w.label(drawing.Point{X: part.X, Y: w.ground + launcherName}, part, drawing.Middle, key)
	}
	under(110, 30, "rocket-parts.bottle_label")
	under(338, bottleAxis-10, "rocket-parts.sleeve_label")
	under(bottleLong+run*0.48, pipeMiddle+12, "rocket-parts.level_label")
	under(corner+boardLong*0.2, boardThick/2, "rocket-parts.board_label")
	beside := w.at(corner-70, low+body*0.6)
	w.label(beside, w.at(corner+2, low+body*0.5), drawing.End, "rocket-parts.upright_label")
	w.label(w.at(corner+pipe+70, 150), w.at(corner+pipe, pipeMiddle+elbowRise-6), drawing.Start, "rocket-parts.elbow_label")
	here := w.at(0, bottleThick+footAbove/2)
	w.label(drawing.Point{X: w.at(342, 0).X, Y: here.Y + 1.2}, w.at(170, bottleThick+footAbove/2), drawing.Start, "rocket-parts.stamp_label")
}
