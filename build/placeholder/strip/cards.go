package strip

import (
	"slices"

	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/quantity"
	"noonbook/compute/strip"
)

// What the entry takes.
const argCard form.Key[string] = "card"

func stripCards() entry.Entry {
	return entry.Entry{
		Name: "strip-cards", Printable: true,
		Summary: "Index cards to print and cut: a body or a job for every pupil, with its place on the strip and a line for a note.",
		Arguments: append(stripArguments(),
			form.Field{Key: argCard, Choices: []string{"3x5", "A6"}, Default: "3x5", Doc: "Size of a card: 3 × 5 inches, or A6."}),
		Settings: slices.Concat(roll, form.Keys{school.ClassPupils, school.Paper}),
		Facts: []entry.Fact{
			{Name: "cards", Doc: "cards of the class set"},
			{Name: "bodies", Doc: "how many of them are bodies"},
			{Name: "jobs", Doc: "how many are jobs of their own"},
			{Name: "checkers", Doc: "how many are for pupils who count again"},
			{Name: "sheets", Doc: "sheets of paper that they take"},
			{Name: "a_sheet", Doc: "cards on a sheet"},
			{Name: "card_width", Unit: "mm", Doc: "width of a card"},
			{Name: "card_height", Unit: "mm", Doc: "height of a card"},
		},
		Sources:  []string{sourceOrbits, "Asteroid belt: 2.1 to 3.3 au, common practice; Halley's comet: 0.59 to 35.1 au (JPL Small-Body Database)", "Index card 3 × 5 in; A6 105 × 148 mm (ISO 216)"},
		Cautions: []string{entry.CareScissors},
		Reckon:   reckonCards,
	}
}

// A card has a name, up to two lines that say where it stands or what to do, and
// one thing to notice.
type card struct {
	name    say.Value
	squares say.Value
	lines   []say.Value
	notice  say.Value
}

func reckonCards(v form.Values) (result.Result, error) {
	s, err := stripOf(v)
	if err != nil {
		return result.Result{}, err
	}
	pupils := school.ClassPupils.Of(v)
	bodies, jobs := bodyCards(s), jobCards(s)
	set := slices.Clone(bodies)
	if pupils > len(bodies) {
		set = append(set, jobs[:min(len(jobs), pupils-len(bodies))]...)
	}
	own := len(set)
	for i := 0; len(set) < pupils; i++ { // whoever is left counts a body again
		b := bodies[(1+i%(len(bodies)-1))%len(bodies)] // not the Sun: it is the edge
		set = append(set, checkerCard(b))
	}
	size := cardSize(argCard.Of(v))
	paper := drawing.PaperOf(school.Paper.Of(v))
	columns, rows := cardsOn(paper, size)
	r := result.Result{Tables: []result.Table{cardTable(set[:own], len(set))}, Notes: []say.Phrase{say.Line("strip-cards.note")}}
	for _, some := range chunks(set, columns*rows) {
		r.Sheets = append(r.Sheets, paper.Sheets(cardSheet(some, size, columns, rows))...)
	}
	r.Facts = []result.Fact{
		{Name: "cards", Value: say.Count(len(set))},
		{Name: "bodies", Value: say.Count(len(bodies))},
		{Name: "jobs", Value: say.Count(own - len(bodies))},
		{Name: "checkers", Value: say.Count(len(set) - own)},
		{Name: "sheets", Value: say.Count(len(r.Sheets))},
		{Name: "a_sheet", Value: say.Count(columns * rows)},
		{Name: "card_width", Value: say.Number(size.X, "mm", 0)},
		{Name: "card_height", Value: say.Number(size.Y, "mm", 0)},
	}
	return r, nil
}

func chunks(set []card, size int) [][]card { return slices.Collect(slices.Chunk(set, size)) }

// bodyCards are the Sun, the planets, Ceres and Pluto, in order from the Sun.
func bodyCards(s strip.Strip) []card {
	u := stripUse{Strip: s}
	notices := map[string]say.Value{
		"sun": say.Words("card.sun"), "mercury": say.Words("card.mercury"), "venus": say.Words("card.venus"), "earth": say.Words("card.earth"),
		"mars": say.Words("card.mars"), "ceres": say.Words("card.ceres"), "jupiter": say.Words("card.jupiter"), "saturn": say.Words("card.saturn"),
		"uranus": say.Words("card.uranus"), "neptune": say.Words("card.neptune"), "pluto": say.Words("card.pluto"),
	}
	var cards []card
	for _, m := range s.Marks() {
		c := card{name: say.Words("body." + m.Name), squares: say.Number(m.Squares, "", 1), notice: notices[m.Name]}
		seam, past := u.seam(m.Squares)
		switch {
		case m.Orbit == 0:
			c.lines = []say.Value{say.Words("strip-cards.at_start")}
		case m.Fits:
			c.lines = []say.Value{
				say.Words("strip-cards.away", say.Number(m.AU(), "au", 2), say.Number(m.Orbit.Kilometres()/1e6, "million_km", 0)),
				say.Words("strip-cards.place", say.Number(m.Squares, "", 1), say.Count(seam), say.Number(past.Millimetres()/10, "cm", 1)),
			}
		default:
			c.lines = []say.Value{
				say.Words("strip-cards.away", say.Number(m.AU(), "au", 2), say.Number(m.Orbit.Kilometres()/1e6, "million_km", 0)),
				say.Words("strip-cards.outside", say.Number(m.Squares, "", 1), say.Number((m.Paper-s.Length()).Metres(), "m", 1)),
			}
		}
		cards = append(cards, c)
	}
	return cards
}

// jobCards are for the pupils left over when every body has one.
func jobCards(s strip.Strip) []card {
	squares := func(au float64) say.Value {
		x := s.SquaresTo(quantity.Length(au) * quantity.AstronomicalUnit)
		return say.Number(x, "", 1)
	}
	far := say.Words("strip-cards.the_end")
	if out := squares(35.1); out.Number <= float64(s.Squares) {
		far = say.Words("strip-cards.from_square", out)
	}
	none := say.None("sky.dash")
	step := quantity.Metres(60 * 299792458)
	job := func(name string, lines ...say.Value) card {
		return card{name: say.Words(name), squares: none, lines: lines}
	}
	cards := []card{
		job("card.belt", say.Words("strip-cards.belt", squares(2.1), squares(3.3))),
		job("card.comet", say.Words("strip-cards.comet", squares(0.59), far)),
		job("card.light", say.Words("strip-cards.light", thickness(s.OnPaper(step)))),
		job("card.timekeeper", say.Words("strip-cards.timekeeper", say.Seconds(strip.LightTime(quantity.AstronomicalUnit)))),
		job("card.photographer", say.Words("strip-cards.photographer")),
	}
	for i, notice := range []say.Value{
		say.Words("card.belt_notice"), say.Words("card.comet_notice"), say.Words("card.light_notice"),
		say.Words("card.timekeeper_notice"), say.Words("card.photographer_notice"),
	} {
		cards[i].notice = notice
	}
	return cards
}

func checkerCard(body card) card {
	return card{
		name: say.Words("strip-cards.checker", body.name), squares: body.squares,
		lines:  []say.Value{say.Words("strip-cards.check", body.name, body.squares)},
		notice: say.Words("card.checker_notice"),
	}
}

// cardTable lists the cards without those of the checkers, which repeat bodies.
func cardTable(set []card, all int) result.Table {
	table := result.Table{
		Name: "set", Title: say.Line("strip-cards.title", say.Count(all)),
		Columns: []result.Column{{Name: "card"}, {Name: "squares"}, {Name: "notice"}},
	}
	for _, c := range set {
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{c.name, c.squares, c.notice}})
	}
	return table
}

// cardSize returns width and height in millimetres.
func cardSize(name string) drawing.Point {
	if name == "A6" {
		return drawing.Point{X: 148, Y: 105}
	}
	return drawing.Point{X: 5 * 25.4, Y: 3 * 25.4}
}

// cardsOn returns how many cards, laid across, a sheet holds, on whichever side
// of the paper holds more.
func cardsOn(paper drawing.Paper, size drawing.Point) (columns, rows int) {
	for _, p := range []drawing.Paper{paper, paper.Across()} {
		w, h := p.Area()
		c, r := int((w-entry.CutMark)/size.X), int((h-entry.CutMark)/size.Y)
		if c*r > columns*rows {
			columns, rows = c, r
		}
	}
	return columns, rows
}

// cardSheet draws cards edge to edge, so that one cut parts two of them, with
// marks at the ends of every cut.
func cardSheet(set []card, size drawing.Point, columns, rows int) drawing.Drawing {
	d := drawing.Drawing{
		Name: "cards", Width: entry.CutMark + float64(columns)*size.X, Height: entry.CutMark + float64(rows)*size.Y,
		Title: say.Line("strip-cards.sheet", set[0].name), Description: say.Line("strip-cards.description"),
	}
	at := func(column, row int) drawing.Point {
		return drawing.Point{X: entry.CutMark + float64(column)*size.X, Y: entry.CutMark + float64(row)*size.Y}
	}
	for c := range columns + 1 {
		x := at(c, 0).X
		d.Line("check", drawing.Point{X: x, Y: 0}, drawing.Point{X: x, Y: entry.CutMark - 1})
	}
	for r := range rows + 1 {
		y := at(0, r).Y
		d.Line("check", drawing.Point{X: 0, Y: y}, drawing.Point{X: entry.CutMark - 1, Y: y})
	}
	for i, c := range set {
		drawCard(&d, c, at(i%columns, i/columns), size)
	}
	return d
}

func drawCard(d *drawing.Drawing, c card, at, size drawing.Point) {
	right, bottom := at.X+size.X, at.Y+size.Y
	d.Area("cut", at, drawing.Point{X: right, Y: at.Y}, drawing.Point{X: right, Y: bottom}, drawing.Point{X: at.X, Y: bottom})
	const inset = 6.0
	x, y := at.X+inset, at.Y+11
	d.Label("numeral", drawing.Point{X: x, Y: y}, drawing.Start, c.name)
	for _, line := range c.lines {
		y += 7
		d.Paragraph("cell", drawing.Point{X: x, Y: y}, size.X-2*inset, 4.2, line)
	}
	y += 9
	d.Label("strong", drawing.Point{X: x, Y: y}, drawing.Start, say.Words("strip-cards.notice"))
	d.Paragraph("cell", drawing.Point{X: x, Y: y + 6}, size.X-2*inset, 4.2, c.notice)
	y += 16
	d.Label("strong", drawing.Point{X: x, Y: y}, drawing.Start, say.Words("strip-cards.own"))
	for y += 9; y < bottom-5; y += 9 {
		d.Line("rim", drawing.Point{X: x, Y: y}, drawing.Point{X: right - inset, Y: y})
	}
}
