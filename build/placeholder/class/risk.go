package class

import (
	"cmp"
	"slices"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/result"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/compute/classroom"
)

func riskNotes() entry.Entry {
	return entry.Entry{
		Name:      "risk-notes",
		Summary:   "What can hurt someone in a lesson or in the unit, what is done about it and who does it, gathered from the cautions of the lessons, with lines to sign. For staff alone.",
		ForStaff:  true,
		Lessons:   true,
		Arguments: form.Form{entry.OfLesson()},
		Settings:  school.CalendarSettings(),
		Facts: []entry.Fact{
			{Name: "hazards", Doc: "how many dangers are named"},
			{Name: "lessons", Doc: "how many lessons have one"},
			{Name: "own", Doc: "how many of them are in words of a lesson's own"},
		},
		Sources:  []string{"Dangers: the cautions of the lessons and their placeholders; who answers for what is the school's to say"},
		Harmless: "It repeats the cautions of the lessons, to read and to sign.",
		Reckon:   reckonRisk,
	}
}

// A danger is one row: what it is called, what is done about it, and where it is met.
type danger struct {
	names   []string
	words   string // of the lesson's own; "" for those of the names
	done    say.Value
	lessons []say.Value
	latest  int // of these, from 0
}

func reckonRisk(v form.Values) (result.Result, error) {
	lessons, only := entry.Lessons(v), entry.Lesson.Of(v)
	if _, err := taught(lessons, only); err != nil {
		return result.Result{}, err
	}
	var dangers []danger
	careful, own := 0, 0
	for i, l := range lessons {
		if only > 0 && i != only-1 {
			continue
		}
		met := false
		for _, c := range l.Care {
			if c.Words == "" && (len(c.Names) == 0 || toFamilies(c.Names[0])) {
				continue
			}
			met = true
			dangers = meet(dangers, dangerOf(c), i, numbered(i+1, l))
		}
		if met {
			careful++
		}
	}
	slices.SortStableFunc(dangers, func(a, b danger) int { return cmp.Compare(rank(a), rank(b)) })
	blank := say.Text("")
	table := result.Table{
		Name: "hazards", Title: say.Line("risk-notes.title"),
		Columns: []result.Column{{Name: "hazard"}, {Name: "done"}, {Name: "lessons"}, {Name: "who"}},
		Rows:    []result.Row{{Marked: true, Cells: []say.Value{say.Words("risk-notes.everything"), say.Words("risk-notes.rules"), say.Words("risk-notes.all"), blank}}},
	}
	for _, d := range dangers {
		if d.words != "" {
			own++
		}
		table.Rows = append(table.Rows, result.Row{Cells: []say.Value{d.called(), d.done, entry.Listed(d.lessons), blank}})
	}
	signed := result.Table{
		Name: "signed", Title: say.Line("risk-notes.signed_title"),
		Columns: []result.Column{{Name: "role"}, {Name: "name"}, {Name: "date"}, {Name: "signature"}},
	}
	for _, role := range []string{"risk-notes.teacher", "risk-notes.second", "risk-notes.school"} {
		signed.Rows = append(signed.Rows, result.Row{Cells: []say.Value{say.Words(role), blank, blank, blank}})
	}
	r := result.Result{
		Tables: []result.Table{table, signed},
		Facts: []result.Fact{
			{Name: "hazards", Value: say.Count(len(dangers))}, {Name: "lessons", Value: say.Count(careful)}, {Name: "own", Value: say.Count(own)},
		},
	}
	if len(dangers) == 0 {
		r.Notes = append(r.Notes, say.Line("risk-notes.none"))
	}
	r.Notes = append(r.Notes, say.Line("risk-notes.gathered"), say.Line("risk-notes.again"))
	return r, nil
}

// toFamilies reports whether a caution is for families, who read it in their note.
func toFamilies(name string) bool {
	return slices.Contains([]string{entry.CareFamilySun, entry.CareFamilyOutside, entry.CareFamilyEvening}, name)
}

// meet adds a danger, or to one that is there the lesson that has it too.
func meet(dangers []danger, d danger, number int, lesson say.Value) []danger {
	at := slices.IndexFunc(dangers, func(other danger) bool { return other.words == d.words && slices.Equal(other.names, d.names) })
	if at < 0 {
		at, dangers = len(dangers), append(dangers, d)
	}
	if met := &dangers[at]; len(met.lessons) == 0 || met.latest != number {
		met.lessons, met.latest = append(met.lessons, lesson), number
	}
	return dangers
}

// dangerOf is a danger in the words of its caution. Where those have numbers of the
// school, which the lesson's own block works out, there is a gap for them.
func dangerOf(c classroom.Care) danger {
	d := danger{names: c.Names, words: c.Words}
	switch {
	case c.Words != "":
		d.done = say.Text(c.Words)
	case entry.NeedsSchool(c.Names[0]):
		gap := say.Text("______")
		phrase := entry.Caution(c.Names[0], gap, gap)
		d.done = say.Words(phrase.Key, phrase.With...)
	default:
		phrase := entry.Caution(c.Names[0])
		d.done = say.Words(phrase.Key, phrase.With...)
	}
	return d
}

// called is the name of a danger.
func (d danger) called() say.Value {
	var names []say.Value
	for _, name := range d.names {
		if !toFamilies(name) {
			names = append(names, say.Words(HazardKey(name)))
		}
	}
	if len(names) == 0 {
		return say.Words("risk-notes.own")
	}
	return entry.Listed(names)
}

// HazardKey is the key of what the danger of a caution is called.
func HazardKey(caution string) string { return "risk-notes.hazard." + caution }

// rank puts dangers in the order of the cautions, and those without a name last.
func rank(d danger) int {
	if len(d.names) == 0 {
		return len(entry.Cautions())
	}
	return slices.Index(entry.Cautions(), d.names[0])
}
