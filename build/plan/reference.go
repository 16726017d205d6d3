package plan

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

	"noonbook/build/form"
	"noonbook/build/placeholder/entry"
	"noonbook/build/say"
	"noonbook/build/school"
	"noonbook/build/source"
	"noonbook/build/typeset"
)

// gaps are where a caution has numbers of the school.
var gaps = regexp.MustCompile(`\{\d\}`)

func (p *Plan) reference() typeset.Reference {
	doc := typeset.Reference{
		Settings: keyGroups("nb-", "", p.keys(school.Settings())),
		Lesson:   keyGroups("nb-lesson-", p.words.Say("reference.lesson_own"), p.keys(source.LessonBlock())),
	}
	doc.Days = p.namedDays()
	for _, name := range entry.Cautions() {
		words := p.words.Line(entry.Caution(name))
		if entry.NeedsSchool(name) {
			words = gaps.ReplaceAllString(p.words.Raw(entry.Caution(name).Key), "…")
		}
		doc.Cautions = append(doc.Cautions, typeset.Fact{Name: name, Doc: words})
	}
	var all []typeset.Placeholder
	for _, e := range p.catalogue {
		all = append(all, p.placeholder(e))
	}
	doc.Shared = shareArguments(all)
	doc.Topics = p.topics(all)
	return doc
}

func (p *Plan) placeholder(e entry.Entry) typeset.Placeholder {
	one := typeset.Placeholder{Name: e.Name, Summary: p.words.Explain(e.Summary), Arguments: p.keys(e.Arguments), Settings: e.Settings.Names(), Cautions: e.Cautions}
	for _, f := range e.Facts {
		unit := f.Unit
		if f.Truth {
			unit = p.words.Say("reference.yes_or_no")
		}
		one.Facts = append(one.Facts, typeset.Fact{Name: f.Name, Unit: unit, Doc: p.words.Explain(f.Doc)})
	}
	return one
}

// topics puts placeholders, in the order of the catalogue, under their topics.
func (p *Plan) topics(all []typeset.Placeholder) []typeset.Topic {
	var list []typeset.Topic
	at := map[string]int{}
	for i, e := range p.catalogue {
		n, known := at[e.Topic]
		if !known {
			n = len(list)
			at[e.Topic] = n
			list = append(list, typeset.Topic{Title: p.words.Say("reference.topic." + e.Topic), Anchor: "nb-topic-" + e.Topic})
		}
		list[n].Placeholders = append(list[n].Placeholders, all[i])
	}
	slices.SortFunc(list, func(a, b typeset.Topic) int { return strings.Compare(plainLetters(a.Title), plainLetters(b.Title)) })
	return list
}

// keyGroups divides the keys of a file by their tables, in the order of the file; those
// outside any table have a title of their own.
func keyGroups(anchor, own string, keys []typeset.Key) []typeset.KeyGroup {
	var list []typeset.KeyGroup
	at := map[string]int{}
	for _, key := range keys {
		table, name, ok := strings.Cut(key.Name, ".")
		if !ok {
			table, name = "", key.Name
		}
		n, known := at[table]
		if !known {
			n = len(list)
			at[table] = n
			group := typeset.KeyGroup{Title: table, Anchor: anchor + table}
			if table == "" {
				group = typeset.KeyGroup{Title: own, Anchor: anchor + "own"}
			}
			list = append(list, group)
		}
		if !strings.Contains(name, ".") {
			list[n].Names = append(list[n].Names, name)
		}
		list[n].Keys = append(list[n].Keys, key)
	}
	return list
}

// widely is how many placeholders take an argument that is explained once, before them.
const widely = 5

// shareArguments returns the arguments that many placeholders take alike, and leaves of
// them their names.
func shareArguments(all []typeset.Placeholder) (shared []typeset.Key) {
	takers := map[typeset.Key]int{}
	for _, one := range all {
		for _, argument := range one.Arguments {
			if takers[argument]++; takers[argument] == widely {
				shared = append(shared, argument)
			}
		}
	}
	for i := range all {
		one := &all[i]
		for _, argument := range one.Arguments {
			if takers[argument] >= widely {
				one.Shared = append(one.Shared, argument.Name)
			}
		}
		one.Arguments = slices.DeleteFunc(one.Arguments, func(argument typeset.Key) bool { return takers[argument] >= widely })
	}
	return shared
}

// namedDays are the ways to name a day, an example each; every event is among them.
func (p *Plan) namedDays() []typeset.Fact {
	return []typeset.Fact{
		{Name: "this lesson", Doc: p.words.Say("reference.named_this")},
		{Name: "first day of term", Doc: p.words.Say("reference.named_first")},
		{Name: "last day of term", Doc: p.words.Say("reference.named_last")},
		{Name: "3-paper-strip", Doc: p.words.Say("reference.named_file")},
		{Name: "13 weeks after this lesson", Doc: p.words.Say("reference.named_count")},
		{Name: "next full Moon", Doc: p.words.Say("reference.named_next")},
		{Name: "last full Moon", Doc: p.words.Say("reference.named_before")},
		{Name: "next full Moon after last day of term", Doc: p.words.Say("reference.named_from")},
		{Name: strings.Join(form.DayEvents(), ", "), Doc: p.words.Say("reference.named_events")},
	}
}

func (p *Plan) keys(f form.Form) []typeset.Key {
	var list []typeset.Key
	for _, field := range f {
		list = append(list, p.key(field.Name(), field))
		for _, inner := range field.Fields {
			list = append(list, p.key(field.Name()+"."+inner.Name(), inner))
		}
	}
	return list
}

func (p *Plan) key(name string, f form.Field) typeset.Key {
	return typeset.Key{Name: name, Allowed: p.words.Text(allowed(f)), Default: p.missing(f), Doc: p.words.Explain(f.Doc)}
}

// allowed says what a key takes, in words of the language.
func allowed(f form.Field) say.Value {
	takes := f.Takes()
	var gaps []say.Value
	for _, gap := range takes.Gaps {
		gaps = append(gaps, inGap(f, gap))
	}
	if takes.Key == "" {
		return gaps[0]
	}
	return say.Words(takes.Key, gaps...)
}

// inGap writes what fills a gap of a form.Phrase.
func inGap(f form.Field, gap any) say.Value {
	switch gap := gap.(type) {
	case form.Bound:
		return bound(f, float64(gap))
	case form.Choices:
		return oneOf(gap)
	case int:
		return say.Count(gap)
	}
	return say.Sample(gap.(string))
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
		return say.Sample(strings.Join(quoted, ""))
	}
	return say.Words("reference.or", say.Sample(strings.Join(quoted[:last], ", ")), say.Sample(quoted[last]))
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
