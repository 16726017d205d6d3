package rocket

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/compute/quantity"
)

// What the entry takes.
const (
	argRunMM    form.Key[float64] = "run_mm"
	argSocketMM form.Key[float64] = "socket_mm"
	argNeckMM   form.Key[float64] = "neck_mm"
)

func rocketParts() entry.Entry {
	return entry.Entry{
		Name:    "rocket-parts",
		Summary: "Parts of the launcher from the bottle to the upright pipe, with lengths to cut and how they are joined.",
		Arguments: append(form.Form{
			showParts,
			{Key: argRunMM, Unit: "mm", Min: 800, Max: 3000, Default: 1200.0, Doc: "Level pipe that is seen between bottle and elbow; it keeps whoever stamps away from the nose."},
			{Key: argSocketMM, Unit: "mm", Min: 5, Max: 60, Default: 20.0, Doc: "How deep a pipe goes into the elbow."},
			{Key: argNeckMM, Unit: "mm", Min: 20, Max: 100, Default: 40.0, Doc: "How much of the level pipe the sleeve on the bottle's neck takes."},
		}, designArguments()...),
		Settings: tubeSettings,
		Facts: []entry.Fact{
			{Name: "pipe", Unit: "mm", Doc: "outside diameter of the pipe"},
			{Name: "upright", Unit: "mm", Doc: "length to cut for the upright pipe"},
			{Name: "run", Unit: "mm", Doc: "length to cut for the level pipe"},
			{Name: "pipe_total", Unit: "mm", Doc: "pipe to buy for one launcher"},
			{Name: "away", Unit: "mm", Doc: "distance from the middle of the bottle to the upright pipe"},
			{Name: "pipe_end", Unit: "mm", Doc: "height of the upright pipe's end above the ground"},
		},
		Sources:  []string{"Two-litre bottle, sleeve, pipe and 90° elbow: common practice, no source", sourceASTM},
		Cautions: []string{entry.CareLauncher},
		Reckon:   reckonRocketParts,
	}
}

// Measures of the launcher in millimetres that the page does not ask for: a
// two-litre bottle, and room below the rocket for fins and fingers. Common
// practice, no source.
const (
	bottleLong  = 330.0
	bottleThick = 110.0
	finRoom     = 40.0
	noseRoom    = 10.0 // from the pipe's end to the teeth of the nose
	elbowRise   = 25.0 // from the level pipe's middle to the socket of the upright
)

func reckonRocketParts(v form.Values) (result.Result, error) {
	d, err := designOf(v)
	if err != nil {
		return result.Result{}, err
	}
	socket, run := argSocketMM.Of(v), argRunMM.Of(v)
	seen := d.Body.Millimetres() - noseRoom + finRoom
	upright, level := seen+socket, run+socket+argNeckMM.Of(v)
	end := quantity.Millimetres(seen + elbowRise + d.Pipe.Millimetres()/2)
	long := func(x float64) say.Value { return say.Number(x, "mm", 0) }
	pipe := say.Millimetres(d.Pipe, 1)
	table := result.Table{
		Name: "parts", Title: say.Line("rocket-parts.title"),
		Columns: []result.Column{{Name: "part"}, {Name: "count"}, {Name: "length", Unit: "mm"}, {Name: "joint"}},
	}
	none := say.None("rocket-parts.whole")
	for _, row := range [][]say.Value{
		{say.Words("rocket-parts.bottle"), say.Count(1), none, say.Words("rocket-parts.bottle_joint")},
		{say.Words("rocket-parts.sleeve"), say.Count(1), long(2*argNeckMM.Of(v) + 20), say.Words("rocket-parts.sleeve_joint")},
		{say.Words("rocket-parts.level", pipe), say.Count(1), long(level), say.Words("rocket-parts.level_joint", long(socket))},
		{say.Words("rocket-parts.elbow"), say.Count(1), none, say.Words("rocket-parts.elbow_joint")},
		{say.Words("rocket-parts.upright", pipe), say.Count(1), long(upright), say.Words("rocket-parts.upright_joint", long(socket))},
		{say.Words("rocket-parts.board"), say.Count(1), long(400), say.Words("rocket-parts.board_joint")},
		{say.Words("rocket-parts.clips"), say.Count(4), none, say.Words("rocket-parts.clips_joint")},
		{say.Words("rocket-parts.brace"), say.Count(1), long(seen * 0.6), say.Words("rocket-parts.brace_joint")},
	} {
		table.Rows = append(table.Rows, result.Row{Cells: row})
	}
	return shown(result.Result{
		Facts: []result.Fact{
			{Name: "pipe", Value: pipe},
			{Name: "upright", Value: long(upright)},
			{Name: "run", Value: long(level)},
			{Name: "pipe_total", Value: long(upright + level)},
			{Name: "away", Value: long(run + bottleLong/2)},
			{Name: "pipe_end", Value: say.Millimetres(end, 0)},
		},
		Tables:   []result.Table{table},
		Drawings: []drawing.Drawing{launcherDrawing(run, seen, d.Body.Millimetres(), d.Nose.Millimetres(), d.Pipe.Millimetres())},
		Notes:    []say.Phrase{say.Line("rocket-parts.note")},
		Working: []say.Phrase{
			say.Line("rocket-parts.working_upright", append(entry.Enough(long(upright), func(x []float64) float64 { return x[0] - x[1] + x[2] + x[3] },
				say.Millimetres(d.Body, 0), long(noseRoom), long(finRoom), long(socket)), long(upright))...),
			say.Line("rocket-parts.working_run", append(entry.Enough(long(level), func(x []float64) float64 { return x[0] + x[1] + x[2] },
				long(run), long(socket), long(argNeckMM.Of(v))), long(level))...),
		},
	}, v), nil
}

// launcherDrawing shows the launcher from the side, to scale, with a rocket on it.
func launcherDrawing(run, seen, body, nose, pipe float64) drawing.Drawing {
	const border = 8.0
	whole := bottleLong + run + elbowRise + 120
	tall := elbowRise + pipe/2 + seen + noseRoom + nose + 40
	scale := min((entry.PictureWidth-2*border)/whole, 90/tall)
	ground := border + tall*scale
	left := (entry.PictureWidth - whole*scale) / 2
	at := func(x, up float64) drawing.Point { return drawing.Point{X: left + x*scale, Y: ground - up*scale} }
	d := drawing.Drawing{
		Name: "launcher", Width: entry.PictureWidth, Height: ground + 14,
		Title:       say.Line("rocket-parts.drawing"),
		Description: say.Line("rocket-parts.description"),
	}
	box := func(role string, x, low, wide, high float64) {
		d.Area(role, at(x, low), at(x+wide, low), at(x+wide, low+high), at(x, low+high))
	}
	middle := 30.0 // height of the level pipe's middle
	neck, thick := bottleLong-70, bottleThick
	d.Area("bottle", at(0, 0), at(neck, 0), at(bottleLong, middle-14), at(bottleLong, middle+14), at(neck, thick), at(0, thick))
	box("sleeve", bottleLong-25, middle-18, 70, 36)
	box("pipe", bottleLong+20, middle-pipe/2, run-20, pipe)
	corner := bottleLong + run
	d.Area("elbow", at(corner-20, middle-pipe*0.8), at(corner+pipe*1.3, middle-pipe*0.8), at(corner+pipe*1.3, middle+elbowRise+10), at(corner-pipe*0.3, middle+elbowRise+10), at(corner-pipe*0.3, middle+pipe*0.8), at(corner-20, middle+pipe*0.8))
	up := middle + elbowRise
	x := corner
	box("pipe", x, up, pipe, seen)
	low := up + seen + noseRoom - body
	box("rocket", x-1, low, pipe+2, body)
	top := low + body
	d.Area("rocket", at(x-1, top), at(x+pipe+1, top), at(x+pipe/2, top+nose))
	for _, side := range []float64{-1, 1} {
		edge := x + pipe/2 + side*(pipe/2+1)
		d.Area("rocket", at(edge, low+52), at(edge, low), at(edge+side*34, low-4), at(edge+side*34, low+24))
	}
	d.Line("ground", drawing.Point{X: border / 2, Y: ground}, drawing.Point{X: entry.PictureWidth - border/2, Y: ground})
	label := func(x float64, key string) {
		d.Label("name", drawing.Point{X: at(x, 0).X, Y: ground + 5}, drawing.Middle, say.Words(key))
	}
	label(bottleLong*0.4, "rocket-parts.bottle_label")
	label(bottleLong+10, "rocket-parts.sleeve_label")
	label(bottleLong+run/2, "rocket-parts.level_label")
	label(corner+10, "rocket-parts.elbow_label")
	d.Label("name", shifted(at(x, top-body/2), -3, 0), drawing.End, say.Words("rocket-parts.upright_label"))
	d.Label("name", shifted(at(bottleLong*0.4, thick), 0, -3), drawing.Middle, say.Words("rocket-parts.stamp_label"))
	return d
}
