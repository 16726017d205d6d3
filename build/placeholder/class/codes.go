package class

import (
	"cmp"
	"slices"
	"strings"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

// argWanted are the codes that the unit should cover.
const argWanted form.Key[[]string] = "wanted"

func codeList() entry.Entry {
	return entry.Entry{
		Name:    "code-list",
		Summary: "What the unit covers of the school's own curriculum: each code with its lessons, how often it comes, and lessons without a code.",
		Lessons: true,
		Arguments: form.Form{
			{Key: argWanted, Assumed: "those that some lesson has", Doc: "Codes that the unit should cover; one that no lesson has is listed with 0 lessons."},
		},
		Settings: school.CalendarSettings(),
		Facts: []entry.Fact{
			{Name: "codes", Doc: "how many codes some lesson has"},
			{Name: "missing", Doc: "how many of the wanted codes no lesson has"},
			{Name: "once", Doc: "how many codes one lesson alone has"},
			{Name: "lessons", Doc: "how many lessons have a code"},
			{Name: "without", Doc: "how many lessons have none"},
		},
		Sources:  []string{"Codes: the school's own, as its lessons have them; noonbook knows no curriculum"},
		Harmless: "A list of codes, to read.",
		Reckon:   reckonCodes,
	}
}

func reckonCodes(v form.Values) (result.Result, error) {
	lessons, in := entry.Lessons(v), map[string][]say.Value{}
	codes := slices.Clone(argWanted.Of(v))
	bare := result.Table{
		Name: "without", Title: say.Line("code-list.without_title"),
		Columns: []result.Column{{Name: "lesson"}, {Name: "codes"}},
	}
	for i, l := range lessons {
		for _, code := range codesOf(l) {
			in[code] = append(in[code], numbered(i+1, l))
			codes = append(codes, code)
		}
		if len(codesOf(l)) == 0 {
			bare.Rows = append(bare.Rows, result.Row{Cells: []say.Value{numbered(i+1, l), say.Text("")}})
		}
	}
	slices.SortFunc(codes, byNumbers)
	codes = slices.Compact(codes)
	list := result.Table{
		Name: "codes", Title: say.Line("code-list.title"),
		Columns: []result.Column{{Name: "code"}, {Name: "times"}, {Name: "lessons"}},
	}
	missing, once := 0, 0
	for _, code := range codes {
		where := say.None("code-list.no_lesson")
		switch n := len(in[code]); n {
		case 0:
			missing++
		case 1:
			once++
			fallthrough
		default:
			where = entry.Listed(in[code])
		}
		list.Rows = append(list.Rows, result.Row{Cells: []say.Value{say.Text(code), say.Count(len(in[code])), where}, Marked: len(in[code]) == 0})
	}
	r := result.Result{Facts: []result.Fact{
		{Name: "codes", Value: say.Count(len(in))}, {Name: "missing", Value: say.Count(missing)}, {Name: "once", Value: say.Count(once)},
		{Name: "lessons", Value: say.Count(len(lessons) - len(bare.Rows))}, {Name: "without", Value: say.Count(len(bare.Rows))},
	}}
	for _, table := range []result.Table{list, bare} {
		if len(table.Rows) > 0 {
			r.Tables = append(r.Tables, table)
		}
	}
	switch {
	case len(lessons) == 0:
		r.Notes = []say.Phrase{say.Line("code-list.no_lessons")}
	case len(bare.Rows) > 0:
		r.Notes = []say.Phrase{say.Line("code-list.write")}
	}
	return r, nil
}

// codesOf are the codes of a lesson, each once.
func codesOf(l classroom.Lesson) []string {
	var codes []string
	for _, code := range l.Codes {
		if code = strings.TrimSpace(code); code != "" && !slices.Contains(codes, code) {
			codes = append(codes, code)
		}
	}
	return codes
}

// byNumbers compares codes as people sort them: S 6.2 comes before S 6.10.
func byNumbers(a, b string) int {
	restA, restB := a, b
	for restA != "" && restB != "" {
		var x, y string
		x, restA = leading(restA)
		y, restB = leading(restB)
		if c := compared(x, y); c != 0 {
			return c
		}
	}
	return cmp.Or(cmp.Compare(len(restA), len(restB)), cmp.Compare(a, b))
}

// leading splits off the digits that a text begins with, or else what is before its
// first digit.
func leading(text string) (first, rest string) {
	digit := func(c rune) bool { return '0' <= c && c <= '9' }
	end := strings.IndexFunc(text, func(c rune) bool { return digit(c) != digit(rune(text[0])) })
	if end < 0 {
		end = len(text)
	}
	return text[:end], text[end:]
}

// compared compares two numbers by their size, 2 and 02 alike, and anything else as
// texts.
func compared(x, y string) int {
	if x[0] < '0' || x[0] > '9' || y[0] < '0' || y[0] > '9' {
		return cmp.Compare(x, y)
	}
	x, y = strings.TrimLeft(x, "0"), strings.TrimLeft(y, "0")
	return cmp.Or(cmp.Compare(len(x), len(y)), cmp.Compare(x, y))
}
