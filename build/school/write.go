package school

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// Rewrite returns a unit.toml with the values set in it, and everything else as it
// was; a value that is nil comments its key out (see form.Form.Rewrite).
func Rewrite(file []byte, v form.Values) ([]byte, error) { return Settings().Rewrite(file, v) }

// Write returns a new unit.toml: every key of Settings in its table, below what it
// means, what it takes and what holds without it. Those of the values are set; the
// others are commented out, with an example. A list of tables has its example, and
// below it those of the values.
func Write(v form.Values) []byte {
	var b strings.Builder
	b.WriteString(intro)
	for _, table := range tables() {
		fmt.Fprintf(&b, "\n[%s]\n", table.name)
		for _, field := range table.fields {
			b.WriteString(explained(field))
			key := strings.TrimPrefix(field.Name(), table.name+".")
			if text, ok := field.Literal(v[field.Name()]); ok {
				fmt.Fprintf(&b, "%s = %s\n", key, text)
			} else {
				text, _ := field.Literal(example(field))
				fmt.Fprintf(&b, "# %s = %s\n", key, text)
			}
		}
		for _, field := range table.lists {
			b.WriteString(explained(field))
			fmt.Fprintf(&b, "#\n# [[%s]]\n", field.Name())
			for _, inner := range field.Fields {
				text, _ := inner.Literal(example(inner))
				b.WriteString(fold("#   # ", explanation(inner)))
				fmt.Fprintf(&b, "#   %s = %s\n", inner.Name(), text)
			}
			rows, _ := v[field.Name()].([]form.Values)
			for _, row := range rows {
				fmt.Fprintf(&b, "\n[[%s]]\n", field.Name())
				for _, inner := range field.Fields {
					if text, ok := inner.Literal(row[inner.Name()]); ok {
						fmt.Fprintf(&b, "%s = %s\n", inner.Name(), text)
					}
				}
			}
		}
	}
	return []byte(b.String())
}

const intro = `# What is true of your school. Change a value, save, press again, and every page
# that depends on it follows. A line that begins with # is a remark; to set a key
# that is written in one, take its # away. A key that is spelled wrong, or a value
# that cannot be, is reported with its line.
`

// A table is a table of unit.toml. Its lists of tables come last, because a key below
// one would belong to it.
type table struct {
	name          string
	fields, lists form.Form
}

func tables() (all []table) {
	for _, field := range Settings() {
		name := field.Name()[:strings.LastIndexByte(field.Name(), '.')]
		at := slices.IndexFunc(all, func(t table) bool { return t.name == name })
		if at < 0 {
			at, all = len(all), append(all, table{name: name})
		}
		if field.Kind() == form.Tables {
			all[at].lists = append(all[at].lists, field)
		} else {
			all[at].fields = append(all[at].fields, field)
		}
	}
	return all
}

// explained is the remark above a key.
func explained(f form.Field) string { return "\n" + fold("# ", explanation(f)) }

func explanation(f form.Field) string {
	takes := f.Allowed()
	if f.Unit != "" && !strings.Contains(takes, " "+f.Unit) && f.Unit != "deg" {
		takes += ", in " + f.Unit
	}
	if f.Kind() == form.Tables {
		takes = "a list of tables"
	}
	first, size := utf8.DecodeRuneInString(takes)
	takes = strings.ToUpper(string(first)) + takes[size:]
	switch missing := f.Missing(); {
	case f.Required:
		return f.Doc + " " + takes + "; it must be there."
	case missing == "none":
		return f.Doc + " " + takes + "; may be left out."
	default:
		return f.Doc + " " + takes + "; if left out: " + missing + "."
	}
}

// fold breaks a text into lines of 80 letters behind a mark. None of them may look
// like a key that is commented out, which is why a remark is above its key: what a
// line says is a sentence.
func fold(mark, text string) string {
	const wide = 80
	var b strings.Builder
	line := ""
	for word := range strings.FieldsSeq(text) {
		if line != "" && utf8.RuneCountInString(mark+line+" "+word) > wide {
			b.WriteString(mark + line + "\n")
			line = ""
		}
		line = strings.TrimPrefix(line+" "+word, " ")
	}
	b.WriteString(mark + line + "\n")
	return b.String()
}

// examples are for keys whose default is nothing or would explain little. They are no
// school's own.
var examples = map[string]any{
	UnitTitle.Name():                "Our sky",
	UnitSummary.Name():              "What we do in this unit, in a sentence or two.",
	Name.Name():                     "Our School",
	Colour.Name():                   "#1a5c3a",
	Crest.Name():                    "crest.svg",
	WayTo.Name():                    "the next city",
	WayKm.Name():                    100.0,
	ClassName.Name():                "class 5B",
	ClassPupils.Name():              24,
	SuppliesCurrency.Name():         "dollars",
	StockTenSquaresMM.Name():        1100.0,
	StockFrontLensFocalMM.Name():    250.0,
	StockEyeLensFocalMM.Name():      50.0,
	StockFrontLensDiameterMM.Name(): 50.0,
	StockEyeLensDiameterMM.Name():   30.0,
	BallsName.Name():                "netball",
	LensesLabel.Name():              "on the bag",
	TubesLengthMM.Name():            330.0,
	TubesInsideMM.Name():            50.0,
	TubesOutsideMM.Name():           53.0,
}

// example is a value for a key that is commented out: that which holds without it
// where there is one.
func example(f form.Field) any {
	if x, ok := examples[f.Name()]; ok {
		return x
	}
	if f.Default != nil && f.Default != "" {
		return f.Default
	}
	day := place.Date{Year: 2027, Month: time.April, Day: 20}
	lesson := form.TimeSpan{From: 9 * time.Hour, To: 9*time.Hour + 50*time.Minute}
	switch f.Kind() {
	case form.Number:
		return between(f)
	case form.Whole:
		return int(between(f))
	case form.Flag:
		return true
	case form.Date:
		return day
	case form.Month:
		return form.YearMonth{First: place.Date{Year: 2027, Month: time.April, Day: 1}}
	case form.Clock:
		return lesson.From
	case form.Span:
		return lesson
	case form.Zone:
		return time.UTC
	case form.Texts:
		return slices.Clone(f.Choices[:min(1, len(f.Choices))])
	case form.Dates:
		return []place.Date{day}
	case form.Spans:
		return []form.TimeSpan{lesson, {From: lesson.From + time.Hour, To: lesson.To + time.Hour}}
	case form.CSV:
		return form.Records{File: RecordsFile(f)}
	case form.Text:
		if len(f.Choices) > 0 {
			return f.Choices[0]
		}
	}
	return "as you call it"
}

// between is a round number within the bounds: nothing, where they allow it, else one
// half of the way by proportion.
func between(f form.Field) float64 {
	switch {
	case f.Min <= 0 && f.Max >= 0:
		return 0
	case f.Min < 0:
		return f.Max
	}
	middle := math.Sqrt(f.Min * f.Max)
	step := math.Pow(10, math.Floor(math.Log10(middle)))
	return min(max(math.Round(middle/step)*step, f.Min), f.Max)
}

// RecordsFile names the file of a setting that holds records: records.moon_log is
// moon-log.csv.
func RecordsFile(f form.Field) string {
	name := f.Name()
	return strings.ReplaceAll(name[strings.LastIndexByte(name, '.')+1:], "_", "-") + ".csv"
}
