package encode

import (
	"encoding/json"
	"io"
	"math"
	"strings"
	"time"

	"noonbook/build/say"
	"noonbook/build/typeset"
)

// An object is an answer in JSON. Other programs rely on the names of its fields.
type object struct {
	Placeholder string          `json:"placeholder"`
	Date        *string         `json:"date"`  // null where none counts
	Place       *Place          `json:"place"` // null where none counts
	Facts       map[string]fact `json:"facts"`
	Tables      []table         `json:"tables"`
	Working     []string        `json:"working"`
	Sources     []string        `json:"sources"`
	Warnings    []string        `json:"warnings"`
	Cautions    []string        `json:"cautions"`
	Notes       []string        `json:"notes"`
	Walks       []walk          `json:"walks,omitempty"` // where there are any
}

type fact struct {
	Value any    `json:"value"`
	Unit  string `json:"unit"`
	Text  string `json:"text"`
}

type table struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Columns []column `json:"columns"`
	Rows    [][]any  `json:"rows"`
}

type walk struct {
	Drawing string `json:"drawing"`
	Stops   []stop `json:"stops"`
}

type stop struct {
	Key  string   `json:"key"`
	Name string   `json:"name"`
	Says []string `json:"says"`
}

type column struct {
	Name string `json:"name"`
	Unit string `json:"unit"`
}

// JSON writes one result as one JSON object, with the day and the place that it is
// for: numbers at full precision in the stated unit, moments in ISO 8601 with
// offset, dates as dates, null where there is no value, a list where a day has two.
func JSON(out io.Writer, a Answer, w *typeset.Words) error {
	w = w.For(a.Result)
	o := object{
		Placeholder: a.Placeholder,
		Place:       a.Place,
		Facts:       map[string]fact{},
		Tables:      []table{},
		Working:     w.Working(a.Working),
		Sources:     append([]string{}, a.Sources...),
		Warnings:    phrases(a.Warnings, w),
		Cautions:    phrases(a.Cautions, w),
		Notes:       phrases(a.Notes, w),
	}
	if a.Date != "" {
		o.Date = &a.Date
	}
	for _, f := range a.Facts {
		o.Facts[f.Name] = fact{bare(f.Value, w), f.Value.Unit, text(f.Value, w)}
	}
	for _, t := range a.Tables {
		one := table{Name: t.Name, Title: w.Line(t.Title), Columns: []column{}, Rows: [][]any{}}
		for _, c := range t.Columns {
			one.Columns = append(one.Columns, column{c.Name, c.Unit})
		}
		for _, row := range t.Rows {
			var cells []any
			for _, cell := range row.Cells {
				cells = append(cells, bare(cell, w))
			}
			one.Rows = append(one.Rows, cells)
		}
		o.Tables = append(o.Tables, one)
	}
	for _, through := range a.Walks {
		one := walk{Drawing: through.Drawing, Stops: []stop{}}
		for _, s := range through.Stops {
			one.Stops = append(one.Stops, stop{s.Key, text(s.Name, w), phrases(s.Says, w)})
		}
		o.Walks = append(o.Walks, one)
	}
	var b strings.Builder
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(o); err != nil {
		return err
	}
	_, err := io.WriteString(out, escaped(b.String()))
	return err
}

// bare returns a value as JSON and CSV carry it: a list where there is more than one.
func bare(v say.Value, w *typeset.Words) any {
	if more := v.Also; len(more) > 0 && v.Kind != say.Wording {
		v.Also = nil
		list := []any{bare(v, w)}
		for _, other := range more {
			list = append(list, bare(other, w))
		}
		return list
	}
	switch v.Kind {
	case say.Quantity, say.Lasting:
		if math.IsNaN(v.Number) || math.IsInf(v.Number, 0) {
			return nil
		}
		return v.Number
	case say.TimeOfDay:
		return say.OnItsDay(v.Time, time.Second).Format(time.RFC3339)
	case say.CalendarDay:
		return v.Time.Format(time.DateOnly)
	case say.Truth:
		return v.Number == 1
	case say.Nothing:
		return nil
	}
	return text(v, w)
}

// text writes a value for another program: as a page does, and a name as it was typed.
func text(v say.Value, w *typeset.Words) string {
	if v.Kind == say.Name {
		return v.Plain
	}
	return w.Text(v)
}

func phrases(list []say.Phrase, w *typeset.Words) []string {
	lines := []string{}
	for _, p := range list {
		lines = append(lines, w.Line(p))
	}
	return lines
}
