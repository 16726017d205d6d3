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
		Plate:   true,
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
	blockLong   = 100.0
	blockHigh   = 40.0 // of the blocks beside the elbow, which end below the fins
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
		{say.Words("rocket-parts.clips"), say.Count(2), none, say.Words("rocket-parts.clips_joint")},
		{say.Words("rocket-parts.blocks", long(blockHigh)), say.Count(2), long(blockLong), say.Words("rocket-parts.blocks_joint")},
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
		Drawings: []drawing.Drawing{launcherDrawing(d, run, seen)},
		Notes:    []say.Phrase{say.Line("rocket-parts.note")},
		Working: []say.Phrase{
			say.Line("rocket-parts.working_upright", append(entry.Enough(long(upright), func(x []float64) float64 { return x[0] - x[1] + x[2] + x[3] },
				say.Millimetres(d.Body, 0), long(noseRoom), long(finRoom), long(socket)), long(upright))...),
			say.Line("rocket-parts.working_run", append(entry.Enough(long(level), func(x []float64) float64 { return x[0] + x[1] + x[2] },
				long(run), long(socket), long(argNeckMM.Of(v))), long(level))...),
		},
	}, v), nil
}
