package form_test

import (
	"reflect"
	"testing"
	"time"

	"noonbook/build/form"
	"noonbook/compute/place"
)

// Of many values, of every type that a key can have and easily mistaken for one another, no
// two have the same bytes unless they are equal; and those of equal values are the same,
// whatever the order in which a map is walked.
func TestAppend(t *testing.T) {
	day := func(s string) form.Values {
		values, faults, _ := form.Form{form.ADay()}.Read([]byte("date = \"" + s + "\"\n"))
		if len(faults) > 0 {
			t.Fatal(faults)
		}
		return values
	}
	zone := func(name string) *time.Location {
		z, err := time.LoadLocation(name)
		if err != nil {
			t.Fatal(err)
		}
		return z
	}
	april := place.Date{Year: 2027, Month: 4, Day: 1}
	var all []form.Values
	for _, x := range []any{
		"", "a", "1", "y", 0.0, 1.0, 1.5, 0, 1, -1, 300, true, false,
		april, april.Add(1), form.YearMonth{First: april}, time.Duration(0), time.Hour,
		form.TimeSpan{To: time.Hour}, form.TimeSpan{From: time.Hour, To: time.Hour},
		time.UTC, zone("Europe/Berlin"), zone("Europe/Paris"),
		[]string{}, []string{""}, []string{"a", "b"}, []string{"ab"}, []string{"a", "", "b"},
		[]place.Date{}, []place.Date{april}, []place.Date{april, april.Add(1)},
		[]form.TimeSpan{}, []form.TimeSpan{{To: time.Hour}},
		[]form.Values{}, []form.Values{{}}, []form.Values{{"x": 1}}, []form.Values{{"x": 1}, {}}, []form.Values{{}, {"x": 1}}, []form.Values{{"x": 1.0}},
		form.Records{}, form.Records{File: "a.csv"}, form.Records{File: "a.csv", Line: []int{2}, Rows: []form.Values{{"x": 1}}},
		form.Records{File: "a.csv", Line: []int{3}, Rows: []form.Values{{"x": 1}}}, form.Records{File: "a.csv", Line: []int{2}, Rows: []form.Values{{"x": 2}}},
	} {
		all = append(all, form.Values{"k": x}, form.Values{"k": x, "l": 1.0}, form.Values{"l": 1.0, "m": x})
	}
	all = append(all, form.Values{}, day("this lesson"), day("2 days after this lesson"), day("3 days after this lesson"), form.Values{"date": "this lesson"})
	seen := map[string]form.Values{}
	for _, v := range all {
		key := string(v.Append(nil))
		if other, ok := seen[key]; ok {
			t.Errorf("%#v and %#v have the same bytes", v, other)
		}
		seen[key] = v
		for range 5 {
			again := form.Values{}
			for name, x := range v {
				again[name] = x
			}
			if got := string(again.With(form.Values{"none": nil}).Append([]byte("before"))); got != "before"+key {
				t.Errorf("%#v has now %q, now %q", v, key, got)
			}
		}
	}
	for name, x := range map[string]any{"month": form.Key[form.YearMonth]("date"), "dates": form.Key[[]place.Date]("date")} {
		f := form.Form{{Key: x.(form.AnyKey), Named: true, Max: 9}}
		texts := []string{`"this lesson"`, `"next full Moon"`}
		if name == "dates" {
			texts = []string{`["this lesson"]`, `["this lesson", 2027-04-01]`}
		}
		keys := map[string]bool{}
		for _, text := range texts {
			values, faults, _ := f.Read([]byte("date = " + text + "\n"))
			if len(faults) > 0 {
				t.Fatal(faults)
			}
			keys[string(values.Append(nil))] = true
		}
		if len(keys) != len(texts) {
			t.Errorf("%s by name: %d keys of %d", name, len(keys), len(texts))
		}
	}
}

// What cannot be written is a fault of the program, not a key that others have too.
func TestAppendOfAnotherType(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a value of a type that no key has is written")
		}
	}()
	form.Values{"k": reflect.ValueOf(1)}.Append(nil)
}
