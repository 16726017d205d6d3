package plan

import (
	"math"
	"strconv"
	"strings"

	"noonbook/build/form"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
)

// documented is what the reference page shows.
type documented struct {
	Settings, Lesson []key
	Placeholders     []documentedEntry
}

type documentedEntry struct {
	Name, Summary string
	Arguments     []key
	Settings      form.Keys
	Facts         []factKey
}

type key struct{ Name, Allowed, Default, Doc string }

type factKey struct{ Name, Unit, Doc string }

func (p *Plan) reference() documented {
	doc := documented{Settings: p.keys(school.Settings()), Lesson: p.keys(source.LessonBlock())}
	for _, e := range p.catalogue {
		entry := documentedEntry{Name: e.Name, Summary: p.words.Explain(e.Summary), Arguments: p.keys(e.Arguments), Settings: e.Settings}
		for _, f := range e.Facts {
			entry.Facts = append(entry.Facts, factKey{f.Name, f.Unit, p.words.Explain(f.Doc)})
		}
		doc.Placeholders = append(doc.Placeholders, entry)
	}
	return doc
}

func (p *Plan) keys(f form.Form) []key {
	var list []key
	for _, field := range f {
		list = append(list, p.key(field.Name(), field))
		for _, inner := range field.Fields {
			list = append(list, p.key(field.Name()+"."+inner.Name(), inner))
		}
	}
	return list
}

func (p *Plan) key(name string, f form.Field) key {
	return key{name, p.words.Text(allowed(f)), p.missing(f), p.words.Explain(f.Doc)}
}

// allowed says what a key takes, in words of the language; form.Field.Allowed
// says it in English for the terminal.
func allowed(f form.Field) say.Value {
	names := say.Text(strings.Join(f.Fields.Names(), ", "))
	switch f.Kind() {
	case form.Number, form.Whole:
		whole := f.Kind() == form.Whole
		switch {
		case f.Min != f.Max && whole:
			return say.Words("reference.whole_between", bound(f, f.Min), bound(f, f.Max))
		case f.Min != f.Max:
			return say.Words("reference.number_between", bound(f, f.Min), bound(f, f.Max))
		case whole:
			return say.Words("reference.whole")
		case f.Unit != "":
			return say.Words("reference.number_of", say.Text(f.Unit))
		}
		return say.Words("reference.number")
	case form.Flag:
		return say.Words("reference.flag")
	case form.Date:
		if f.Choices != nil {
			return say.Words("reference.date_or", oneOf(f.Choices))
		}
		return say.Words("reference.date")
	case form.Month:
		return say.Words("reference.month")
	case form.Clock:
		return say.Words("reference.clock")
	case form.Span:
		return say.Words("reference.span")
	case form.Zone:
		return say.Words("reference.zone")
	case form.Texts:
		if f.Choices != nil {
			return say.Words("reference.list_of", oneOf(f.Choices))
		}
		return say.Words("reference.texts")
	case form.Dates:
		return say.Words("reference.dates")
	case form.Spans:
		return say.Words("reference.spans")
	case form.Tables:
		return say.Words("reference.tables", names)
	case form.CSV:
		if f.Max > 0 && !math.IsInf(f.Max, 1) {
			return say.Words("reference.csv_rows", names, say.Count(int(f.Max)))
		}
		return say.Words("reference.csv", names)
	}
	if f.Choices != nil {
		return oneOf(f.Choices)
	}
	return say.Words("reference.text")
}

// bound writes a bound of a number with its unit, as it is named in keys.
func bound(f form.Field, x float64) say.Value {
	v := say.Number(x, "", decimals(x))
	switch f.Unit {
	case "":
		return v
	case "deg", "percent":
		v.Unit = f.Unit
		return v.InMetric()
	}
	return say.Words("reference.bound", v, say.Text(f.Unit))
}

// decimals are those that a number needs.
func decimals(x float64) int {
	_, fraction, _ := strings.Cut(strconv.FormatFloat(x, 'f', -1, 64), ".")
	return len(fraction)
}

// oneOf writes choices in quotes, as a file holds them.
func oneOf(choices []string) say.Value {
	quoted := make([]string, len(choices))
	for i, c := range choices {
		quoted[i] = `"` + c + `"`
	}
	last := len(quoted) - 1
	if last < 1 {
		return say.Text(strings.Join(quoted, ""))
	}
	return say.Words("reference.or", say.Text(strings.Join(quoted[:last], ", ")), say.Text(quoted[last]))
}

// missing says what holds where a key is not written.
func (p *Plan) missing(f form.Field) string {
	switch x := f.Default.(type) {
	case nil:
		switch {
		case f.Required:
			return p.words.Say("reference.must")
		case f.Assumed != "":
			return p.words.Explain(f.Assumed)
		}
		return p.words.Say("reference.none")
	case string:
		if x == "" {
			return p.words.Say("reference.none")
		}
	case bool:
		return strconv.FormatBool(x)
	case float64:
		return p.words.Text(bound(f, x))
	case int:
		return p.words.Text(bound(f, float64(x)))
	}
	return f.Missing()
}
