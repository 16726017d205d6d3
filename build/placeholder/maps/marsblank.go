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

// marsBlankNames are what a class fills in, by their numbers, mixed, so that no number gives
// its neighbour away.
var marsBlankNames = []string{
	"Hellas Planitia", "Olympus Mons", "Gale", "Argyre Planitia", "Valles Marineris", "Utopia Planitia", "Elysium Mons",
	"Chryse Planitia", "Schiaparelli", "Isidis Planitia", "Ascraeus Mons", "Planum Australe", "Syrtis Major Planum",
	"Amazonis Planitia", "Jezero", "Acidalia Planitia", "Huygens", "Alba Mons", "Arabia Terra", "Gusev", "Arsia Mons",
	"Cassini", "Kasei Valles", "Noctis Labyrinthus", "Pavonis Mons",
}

func marsBlank() entry.Entry {
	return entry.Entry{
		Name:      "mars-blank",
		Summary:   "A map of Mars with numbers in place of names, to fill in and to measure on.",
		Printable: true, For: entry.EachPupil,
		Arguments: form.Form{},
		Settings:  append(form.Keys{school.Paper}, entry.KnownWaySettings()...),
		Facts:     []entry.Fact{{Name: "count", Doc: "how many numbers are to be named"}},
		Sources:   []string{sourceNames, sourceMarsFlat, sourceMarsHand},
		Harmless:  "A sheet to fill in at a table, from the map.",
		Reckon: func(v form.Values) (result.Result, error) {
			sheet := marsSheet(entry.KnownWayOf(v))
			return result.Result{
				Facts:  []result.Fact{{Name: "count", Value: say.Count(len(marsBlankNames))}},
				Sheets: drawing.PaperOf(school.Paper.Of(v)).Sheets(sheet),
				Notes:  []say.Phrase{say.Line("mars-blank.note", say.Count(len(marsBlankNames)))},
			}, nil
		},
	}
}

func marsMapKey() entry.Entry {
	return keyOf("mars-map-key", "The names that belong to the numbers of mars-blank.", say.Line("mars-map-key.title"), globe.Mars, marsBlankNames)
}

// Measures of the blank map in millimetres: it fits both papers laid on their long sides.
const (
	marsSheetWidth   = 256.0
	marsSheetHeight  = 166.0
	marsSheetScale   = 0.66 // mm a degree
	marsSheetLeft    = 15.5
	marsSheetTop     = 7.0
	marsSheetColumns = 5
	marsSheetRow     = 5.6
)

// marsSheet is the map with numbers at its features, a scale, and a line for each below.
func marsSheet(known entry.KnownWay) drawing.Drawing {
	d := drawing.Drawing{
		Name: "mars-blank", Width: marsSheetWidth, Height: marsSheetHeight,
		Title: say.Line("mars-blank.title"), Description: say.Line("mars-blank.description"),
	}
	d.Label("small", drawing.Point{X: 0, Y: 4}, drawing.Start, say.Words("mars-blank.how"))
	d.Label("small", drawing.Point{X: d.Width, Y: 4}, drawing.End, say.Words("moon-diary.name_line"))
	m := marsPicture{d: &d, corner: drawing.Point{X: marsSheetLeft, Y: marsSheetTop}, scale: marsSheetScale, mark: 0.9}
	m.ground()
	m.figures()
	foot := marsSheetTop + m.height()
	m.scales(known, drawing.Point{X: marsSheetLeft, Y: foot + 6}, 110, 0)
	for i, s := range numbered(globe.Mars, marsBlankNames) {
		d.Offer("number", drawing.Keep, say.Count(i+1), m.numberPlaces(s)...)
		rows := (len(marsBlankNames) + marsSheetColumns - 1) / marsSheetColumns
		wide := d.Width / marsSheetColumns
		x, y := wide*float64(i/rows), foot+10+marsSheetRow*float64(i%rows+1)
		writingLine(&d, i+1, drawing.Point{X: x, Y: y}, wide)
	}
	return d
}

// numberPlaces are where the number of a feature stands: in its middle, or beside it where
// it is small or long.
func (m *marsPicture) numberPlaces(s globe.Spot) []drawing.Place {
	at := m.at(s.At)
	if stroke, ok := marsStrokes[s.Name]; ok {
		at = m.on(stroke[len(stroke)/2])
	} else if m.reach(s) > 2.5 {
		return drawing.Over(at)[:1]
	}
	return drawing.Beside(at, min(m.reach(s), 2.5)+0.6)
}
