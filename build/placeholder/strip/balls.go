package strip

import (
	"cmp"
	"math"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

const sourceBalls = "Balls: table tennis ITTF 2.3.1; golf, squash, tennis, cricket, football by their rules, the middle of what these allow; basketball size 7, volleyball, baseball, softball, croquet, billiards and snooker by theirs, British marbles"

func stripBalls() entry.Entry {
	facts := []entry.Fact{
		{Name: "ball_shrunk", Doc: "how many times smaller than in space the balls are"},
		{Name: "ball_scale", Unit: "km", Doc: "what a millimetre of the balls' scale stands for"},
		{Name: "strip_scale", Unit: "km", Doc: "what a millimetre of the strip stands for"},
		{Name: "scales_apart", Doc: "how many times larger the balls' scale is than the strip's"},
		{Name: "played", Doc: "how many of the Sun and the eight planets have a ball"},
		{Name: "without", Doc: "those for which no ball at hand will do"},
		{Name: "worst_error", Unit: "percent", Doc: "the largest error of a ball, without its sign"},
		{Name: "sun_model", Unit: "m", Doc: "diameter of the Sun at the balls' scale"},
		{Name: "earth_model", Unit: "mm", Doc: "diameter of the Earth at that scale"},
		{Name: "earth_ball", Doc: "the ball that plays the Earth"},
		{Name: "jupiter_ball", Doc: "the ball that plays Jupiter"},
		{Name: "earth_away", Unit: "m", Doc: "how far from the Sun the Earth would be at the balls' scale"},
		{Name: "neptune_away", Unit: "km", Doc: "how far from the Sun Neptune would be at that scale"},
		{Name: "earth_on_strip", Unit: "mm", Doc: "diameter of the Earth at the scale of the strip"},
		{Name: "sun_on_strip", Unit: "mm", Doc: "diameter of the Sun at that scale"},
	}
	return entry.Entry{
		Name:      "strip-balls",
		Summary:   "Which of the balls at hand plays which planet, at the scale that fits all of them best, and why the strip needs another scale.",
		Arguments: stripArguments(),
		Settings:  slices.Concat(roll, form.Keys{school.StockBalls}),
		Facts:     facts,
		Sources:   []string{sourceSizes, sourceOrbits, sourceBalls},
		Cautions:  []string{entry.CareSmallParts},
		Reckon:    reckonBalls,
	}
}

// A namedBall is a ball with the value that names it.
type namedBall struct {
	strip.Ball
	name say.Value
}

// ballsOf returns the balls of the school, or two of each of the usual ones.
func ballsOf(v form.Values) []namedBall {
	var balls []namedBall
	add := func(name say.Value, mm float64, count int) {
		for range count {
			balls = append(balls, namedBall{strip.Ball{Name: name.Plain, Diameter: quantity.Millimetres(mm)}, name})
		}
	}
	if school.StockBalls.In(v) {
		for _, b := range school.StockBalls.Of(v) {
			add(say.Text(school.BallsName.Of(b)), school.BallsDiameterMM.Of(b), school.BallsCount.Of(b))
		}
		return balls
	}
	for _, b := range usualBalls() {
		add(b.name, b.mm, 2)
	}
	return balls
}

type usualBall struct {
	name say.Value
	mm   float64
}

// usualBalls are those of games, at the middle of what their rules allow. Where
// a rule gives the way round, it is divided by π.
func usualBalls() []usualBall {
	inch, round := 25.4, math.Pi
	return []usualBall{
		{say.Words("ball.target_marble"), 12.7},                 // British marbles: about half an inch; from memory
		{say.Words("ball.tolley"), 19},                          // three quarters of an inch; from memory
		{say.Words("ball.table_tennis"), 40},                    // ITTF 2.3.1
		{say.Words("ball.squash"), 40},                          // 39.5 to 40.5
		{say.Words("ball.golf"), 42.67},                         // at least
		{say.Words("ball.snooker"), 52.5},                       // from memory
		{say.Words("ball.billiard"), 57.15},                     // 2¼ in; from memory
		{say.Words("ball.tennis"), (65.41 + 68.58) / 2},         // as seen in the rules
		{say.Words("ball.cricket"), (71.3 + 72.9) / 2},          // men's
		{say.Words("ball.baseball"), 9.125 * inch / round},      // 9 to 9¼ in round; from memory
		{say.Words("ball.croquet"), 3.625 * inch},               // 3⅝ in; from memory
		{say.Words("ball.softball"), 12 * inch / round},         // 11⅞ to 12⅛ in round; from memory
		{say.Words("ball.volleyball"), 660 / round},             // 65 to 67 cm round; from memory
		{say.Words("ball.football"), (216.5 + 222.8) / 2},       // size 5
		{say.Words("ball.basketball"), (750 + 770) / 2 / round}, // size 7, 75 to 77 cm round; from memory
	}
}

// stars of the cast: the Sun and the eight planets.
func sunAndPlanets() []strip.Body {
	return slices.DeleteFunc(strip.Bodies(), func(b strip.Body) bool { return b.Name == "ceres" || b.Name == "pluto" })
}

func reckonBalls(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	balls := ballsOf(v)
	if len(balls) == 0 {
		return noBalls(s), nil
	}
	plain := make([]strip.Ball, len(balls))
	for i, b := range balls {
		plain[i] = b.Ball
	}
	cast, err := strip.CastBalls(sunAndPlanets(), plain)
	if err != nil {
		return result.Result{}, err
	}
	r := result.Result{Tables: []result.Table{castTable(s, cast, balls)}}
	var without []say.Value
	played, worst := map[string]say.Value{}, 0.0
	for _, p := range cast.Parts {
		if p.Ball < 0 {
			without = append(without, say.Words("body."+p.Name))
			continue
		}
		played[p.Name], worst = balls[p.Ball].name, max(worst, math.Abs(p.Excess))
	}
	r.Facts = append(scaleFacts(s, cast.Shrunk),
		result.Fact{Name: "played", Value: say.Count(len(played))},
		result.Fact{Name: "without", Value: entry.Listed(without)},
		result.Fact{Name: "worst_error", Value: say.Number(worst, "percent", 0)},
		result.Fact{Name: "earth_ball", Value: ballOr(played["earth"])},
		result.Fact{Name: "jupiter_ball", Value: ballOr(played["jupiter"])},
	)
	if len(balls) == 1 {
		r.Warnings = append(r.Warnings, say.Line("strip-balls.one_ball", balls[0].name))
	}
	r.Notes = scaleNotes(s, cast.Shrunk)
	r.Working = castWorking(cast, balls)
	return r, nil
}

func ballOr(v say.Value) say.Value {
	if v.Phrase.Key == "" && v.Plain == "" {
		return say.None("strip-balls.none")
	}
	return v
}

func castTable(s strip.Strip, cast strip.Cast, balls []namedBall) result.Table {
	table := result.Table{
		Name:  "cast",
		Title: say.Line("strip-balls.title", say.Number(cast.Shrunk/1e6, "km", 0)),
		Columns: []result.Column{
			{Name: "body"}, {Name: "diameter_km", Unit: "km"}, {Name: "model_mm", Unit: "mm"},
			{Name: "ball"}, {Name: "ball_mm", Unit: "mm"}, {Name: "error", Unit: "percent"}, {Name: "on_strip_mm", Unit: "mm"},
		},
	}
	for _, p := range cast.Parts {
		ball, mm, off := say.None("strip-balls.none"), say.None("sky.dash"), say.None("sky.dash")
		if p.Ball >= 0 {
			ball = balls[p.Ball].name
			mm = say.Number(balls[p.Ball].Diameter.Millimetres(), "mm", 1)
			off = say.Number(p.Excess, "percent", 0)
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{
			say.Words("body." + p.Name), say.Number(p.Diameter.Kilometres(), "km", 0), say.Number(p.Model.Millimetres(), "mm", 1),
			ball, mm, off, thickness(s.OnPaper(p.Diameter)),
		}})
	}
	return table
}

// scaleFacts says what the scale of the balls makes of sizes and distances, and
// what the strip's does.
func scaleFacts(s strip.Strip, shrunk float64) []result.Fact {
	onStrip := float64(s.Scale / s.Square) // times smaller than in space
	at := func(l quantity.Length) quantity.Length { return l / quantity.Length(shrunk) }
	body := map[string]strip.Body{}
	for _, b := range strip.Bodies() {
		body[b.Name] = b
	}
	return []result.Fact{
		{Name: "ball_shrunk", Value: say.Number(shrunk, "", 0)},
		{Name: "ball_scale", Value: say.Number(shrunk/1e6, "km", 0)},
		{Name: "strip_scale", Value: say.Number(onStrip/1e6, "km", 0)},
		{Name: "scales_apart", Value: say.Number(onStrip/shrunk, "", 0)},
		{Name: "sun_model", Value: say.Number(at(body["sun"].Diameter).Metres(), "m", 1)},
		{Name: "earth_model", Value: say.Number(at(body["earth"].Diameter).Millimetres(), "mm", 1)},
		{Name: "earth_away", Value: say.Number(at(body["earth"].Orbit).Metres(), "m", 0)},
		{Name: "neptune_away", Value: say.Number(at(body["neptune"].Orbit).Kilometres(), "km", 1)},
		{Name: "earth_on_strip", Value: thickness(s.OnPaper(body["earth"].Diameter))},
		{Name: "sun_on_strip", Value: thickness(s.OnPaper(body["sun"].Diameter))},
	}
}

func scaleNotes(s strip.Strip, shrunk float64) []say.Phrase {
	facts := result.Result{Facts: scaleFacts(s, shrunk)}
	with := func(names ...string) []say.Value {
		values := make([]say.Value, len(names))
		for i, name := range names {
			values[i], _ = facts.Fact(name)
		}
		return values
	}
	return []say.Phrase{
		say.Line("strip-balls.two_scales", with("ball_scale", "strip_scale", "scales_apart")...),
		say.Line("strip-balls.why_two", with("earth_on_strip", "earth_away", "neptune_away")...),
		say.Line("strip-balls.sun", with("sun_model")...),
	}
}

// castWorking shows the sums for the ball that is most wrong.
func castWorking(cast strip.Cast, balls []namedBall) []say.Phrase {
	worst := slices.MaxFunc(cast.Parts, func(a, b strip.Part) int {
		return cmp.Or(cmp.Compare(min(a.Ball, 0), min(b.Ball, 0)), cmp.Compare(math.Abs(a.Excess), math.Abs(b.Excess)))
	})
	if worst.Ball < 0 {
		return nil
	}
	ball := balls[worst.Ball]
	off := say.Number(worst.Excess, "percent", 1)
	e := entry.Enough(off, func(x []float64) float64 { return (x[0] - x[1]) / x[1] * 100 },
		say.Number(ball.Diameter.Millimetres(), "mm", 1), say.Number(worst.Model.Millimetres(), "mm", 1))
	m := entry.Enough(e[1], func(x []float64) float64 { return x[0] / x[1] }, say.Number(worst.Diameter.Kilometres(), "km", 0), say.Number(cast.Shrunk/1e6, "km", 1))
	return []say.Phrase{
		say.Line("strip-balls.working_model", say.Words("body."+worst.Name), m[0], m[1], e[1]),
		say.Line("strip-balls.working_error", ball.name, e[0], e[1], off),
		say.Line("strip-balls.working_best", say.Number(100*(strip.MostExcess-1), "percent", 0)),
	}
}

// noBalls answers for a school without a ball: the scale at which the Earth is a
// ball of clay one centimetre across.
func noBalls(s strip.Strip) result.Result {
	bodies := sunAndPlanets()
	earth := bodies[slices.IndexFunc(bodies, func(b strip.Body) bool { return b.Name == "earth" })]
	cast := strip.Cast{Shrunk: float64(earth.Diameter / quantity.Millimetres(10))}
	var without []say.Value
	for _, b := range bodies {
		cast.Parts = append(cast.Parts, strip.Part{Body: b, Model: b.Diameter / quantity.Length(cast.Shrunk), Ball: -1})
		without = append(without, say.Words("body."+b.Name))
	}
	return result.Result{
		Facts: append(scaleFacts(s, cast.Shrunk),
			result.Fact{Name: "played", Value: say.Count(0)},
			result.Fact{Name: "without", Value: entry.Listed(without)},
			result.Fact{Name: "worst_error", Value: say.None("strip-balls.none")},
			result.Fact{Name: "earth_ball", Value: say.None("strip-balls.none")},
			result.Fact{Name: "jupiter_ball", Value: say.None("strip-balls.none")},
		),
		Tables:   []result.Table{castTable(s, cast, nil)},
		Notes:    scaleNotes(s, cast.Shrunk),
		Warnings: []say.Phrase{say.Line("strip-balls.no_balls")},
	}
}
