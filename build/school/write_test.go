package school_test

import (
	"bytes"
	"maps"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"noonbook/build/form"
	"noonbook/build/school"
)

// The new file says every key once: set where it has a value, else in a remark.
func TestWriteHasEveryKeyOnce(t *testing.T) {
	for _, v := range []form.Values{{}, everyKey(t)} {
		file := string(school.Write(v))
		values, faults, _ := school.Settings().Read([]byte(file))
		if len(v) > 0 && len(faults) > 0 {
			t.Errorf("%v\n%s", faults, file)
		}
		if !same(values, v) {
			t.Errorf("it holds\n%v\nwant\n%v", values, v)
		}
		for _, field := range school.Settings() {
			dot := strings.LastIndexByte(field.Name(), '.')
			table, key := field.Name()[:dot], field.Name()[dot+1:]
			_, below, ok := strings.Cut(file, "\n["+table+"]\n")
			below, _, _ = strings.Cut(below, "\n[")
			line := regexp.MustCompile(`(?m)^(?:# )?` + key + ` = .+$|^# \[\[` + table + `\.` + key + `\]\]$`)
			if n := len(line.FindAllString(below, -1)); !ok || n != 1 {
				t.Errorf("%s is there %d times below [%s]", field.Name(), n, table)
			}
			if word := strings.Fields(field.Doc)[0]; !strings.Contains(below, "# "+word) {
				t.Errorf("%s is not explained", field.Name())
			}
		}
		for line := range strings.Lines(file) {
			if remark := strings.HasPrefix(line, "# ") && !strings.Contains(line, " = "); remark && utf8.RuneCountInString(line) > 110 {
				t.Errorf("a long remark: %s", line)
			}
		}
	}
}

// What is written in a remark is an example that may be set as it is: the file with
// every remark of a key made to count has no fault, lists of tables among them.
func TestExamplesMayBeSet(t *testing.T) {
	file := school.Write(nil)
	sentence := regexp.MustCompile(`(?m)^#(?: {3}# .*|)$`)
	key := regexp.MustCompile(`(?m)^# {1,3}([a-z0-9_]+ = .*|\[\[.*\]\])$`)
	set := key.ReplaceAll(sentence.ReplaceAll(file, nil), []byte("$1"))
	values, faults, _ := school.Settings().Read(set)
	if len(faults) > 0 {
		t.Errorf("%v\n%s", faults, set)
	}
	for _, field := range school.Settings() {
		if values[field.Name()] == nil {
			t.Errorf("%s has no example", field.Name())
		}
	}
}

// Rewrite sets every key of a new file, uncommenting its line: no line is added, and
// the explanations stay. It gives the same bytes as Write of those values.
func TestRewriteSetsEveryKeyOfANewFile(t *testing.T) {
	want := everyKey(t)
	got, err := school.Rewrite(school.Write(nil), want)
	if err != nil {
		t.Fatal(err)
	}
	if whole := school.Write(want); !bytes.Equal(got, whole) {
		t.Errorf("got\n%s\nwant\n%s", got, whole)
	}
	for name, x := range want { // and one by one, beside the required ones
		got, err := school.Rewrite(school.Write(required(want)), form.Values{name: x})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		values, faults, _ := school.Settings().Read(got)
		if len(faults) > 0 || !same(values, required(want).With(form.Values{name: x})) {
			t.Errorf("%s: %v %v", name, faults, values)
		}
	}
}

func required(v form.Values) form.Values {
	r := form.Values{}
	for _, field := range school.Settings() {
		if field.Required {
			r[field.Name()] = v[field.Name()]
		}
	}
	return r
}

// everyKey has a value for each key that takes one, by its own description: a bound
// or a choice, so that each is accepted.
func everyKey(t *testing.T) form.Values {
	t.Helper()
	v := form.Values{}
	texts := map[form.Kind]string{
		form.Text: `a "word" \ # with é`, form.Flag: "true", form.Date: "2028-02-07", form.Month: "2028-02", form.Clock: "8:05", form.Span: "8:05-9:00",
		form.Zone: "Pacific/Auckland", form.Texts: "a,b", form.Dates: "2028-02-07,2028-02-08", form.Spans: "8:05-9:00,9:10-10:00", form.CSV: "mine.csv",
	}
	for _, field := range school.Settings() {
		text := texts[field.Kind()]
		switch {
		case field.Kind() == form.Tables:
			continue
		case field.Kind() == form.Number:
			v[field.Name()] = field.Max - 0.0625
			continue
		case field.Kind() == form.Whole:
			v[field.Name()] = int(field.Max)
			continue
		case len(field.Choices) > 0:
			text = field.Choices[len(field.Choices)-1]
		}
		x, complaint := field.ParseText(text)
		if complaint != "" {
			t.Errorf("%s %s; a new kind of key wants a value here", field.Name(), complaint)
		}
		v[field.Name()] = x
	}
	return v
}

func same(a, b form.Values) bool {
	text := func(v form.Values) (all []string) {
		for _, name := range slices.Sorted(maps.Keys(v)) {
			if zone, ok := v[name].(*time.Location); ok {
				all = append(all, name+zone.String())
			}
		}
		return all
	}
	without := func(v form.Values) form.Values {
		v = v.With(nil)
		maps.DeleteFunc(v, func(_ string, x any) bool { _, zone := x.(*time.Location); return zone })
		return v
	}
	return slices.Equal(text(a), text(b)) && reflect.DeepEqual(without(a), without(b))
}

// Lists of tables are set below their example, and no key of their table is below them.
func TestWriteSetsLists(t *testing.T) {
	v := everyKey(t)
	for _, list := range []form.Key[[]form.Values]{school.StockBalls, school.FieldOutline} {
		field, _ := school.Settings().Field(list.Name())
		var rows []form.Values
		for n := range 2 {
			row := form.Values{}
			for _, inner := range field.Fields {
				switch inner.Kind() {
				case form.Number:
					row[inner.Name()] = inner.Min + float64(n)
				case form.Whole:
					row[inner.Name()] = int(inner.Max) - n
				default:
					row[inner.Name()] = `a "ball"`
				}
			}
			rows = append(rows, row)
		}
		v = v.With(list.Is(rows))
	}
	file := school.Write(v)
	values, faults, _ := school.Settings().Read(file)
	if len(faults) > 0 || !same(values, v) {
		t.Errorf("%v\n%v\nwant\n%v\n%s", faults, values, v, file)
	}
}
