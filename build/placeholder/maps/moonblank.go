package maps

import (
	"noonbook/build/drawing"
	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/globe"
)

// blankNames are the features that a class fills in, by their numbers: what the bare eye or
// binoculars find, mixed, so that no number gives its neighbour away.
var blankNames = []string{
	"Mare Crisium", "Tycho", "Mare Imbrium", "Grimaldi", "Mare Nectaris", "Copernicus", "Mare Frigoris", "Langrenus",
	"Mare Serenitatis", "Clavius", "Aristarchus", "Mare Humorum", "Plato", "Mare Tranquillitatis", "Ptolemaeus",
	"Sinus Iridum", "Mare Nubium", "Theophilus", "Kepler", "Mare Fecunditatis", "Montes Apenninus", "Petavius",
	"Oceanus Procellarum", "Posidonius", "Mare Vaporum",
}

func moonBlank() entry.Entry {
	return entry.Entry{
		Name:      "moon-blank",
		Summary:   "A map of the Moon's face with numbers in place of names, to fill in.",
		Printable: true, For: entry.EachPupil,
		Arguments: form.Form{turnField("north", "south")},
		Settings:  append(form.Keys{school.Paper}, school.Where()...),
		Facts: []entry.Fact{
			{Name: "count", Doc: "how many numbers are to be named"},
			{Name: "up", Doc: "what of the Moon is up on the sheet"},
		},
		Sources:  []string{sourceNames, sourceSketch},
		Harmless: "A sheet to fill in at a table, from the map.",
		Reckon: func(v form.Values) (result.Result, error) {
			m := meanView(turnedAs(v, school.Place(v), true))
			sheet := m.blank()
			return result.Result{
				Facts:  []result.Fact{{Name: "count", Value: say.Count(len(blankNames))}, {Name: "up", Value: m.upWord()}},
				Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(sheet),
				Notes:  []say.Phrase{say.Line("moon-blank.note", say.Count(len(blankNames)), m.upWord())},
			}, nil
		},
	}
}

func moonMapKey() entry.Entry {
	return keyOf("moon-map-key", "The names that belong to the numbers of moon-blank.", say.Line("moon-map-key.title"), globe.Moon, blankNames)
}

// Measures of the blank map in millimetres.
const (
	blankRadius  = 78.0
	blankTop     = 6.0
	blankColumns = 3
	blankRow     = 7.2
)

// blank is the map with numbers at its features, and a line for each below.
func (m *moonView) blank() drawing.Drawing {
	rows := (len(blankNames) + blankColumns - 1) / blankColumns
	const width = 186.0
	lines := blankTop + 2*(blankRadius+mapEdge)
	d := drawing.Drawing{
		Name: "moon-blank", Width: width, Height: lines + float64(rows)*blankRow + 2,
		Title: say.Line("moon-blank.title"), Description: say.Line("moon-blank.description"),
	}
	d.Label("small", drawing.Point{X: 0, Y: 3.5}, drawing.Start, say.Words("moon-blank.how"))
	d.Label("small", drawing.Point{X: width, Y: 3.5}, drawing.End, say.Words("moon-diary.name_line"))
	on := &moonPicture{moonView: m, d: &d, centre: drawing.Point{X: width / 2, Y: blankTop + mapEdge + blankRadius}, radius: blankRadius, mark: 0.7}
	on.ground()
	on.directions()
	for i, s := range numbered(globe.Moon, blankNames) {
		at, _ := on.at(s.At)
		places := []drawing.Place{{At: at, Anchor: drawing.Middle, Sits: drawing.Centred}}
		if !isSea(s) {
			places = drawing.Beside(at, min(on.reach(s), 3)+0.6)
		}
		d.Offer("number", drawing.Keep, say.Count(i+1), places...)
		x, y := width/blankColumns*float64(i/rows), lines+blankRow*float64(i%rows+1)
		writingLine(&d, i+1, drawing.Point{X: x, Y: y}, width/blankColumns)
	}
	return d
}
