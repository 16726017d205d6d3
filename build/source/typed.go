package source

import (
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/yuin/goldmark/ast"
	extension "github.com/yuin/goldmark/extension/ast"

	"noonbook/build/form"
	"noonbook/build/problem"
	"noonbook/compute/place"
)

// A TypedDate is a date or a month that a lesson types, in its prose or in an argument.
// It does not travel to another term.
type TypedDate struct {
	Text        string // as it was written
	First, Last place.Date
	At          problem.Place
	Among       []int // the years in its list or table
}

// Outside reports whether the date was meant to lie in the term and does not: of a year
// near the term's, and not in a list of history, which has other years.
func (t TypedDate) Outside(first, last place.Date) bool {
	far := func(year int) bool { return year < first.Year-nearYears || year > last.Year+nearYears }
	if far(t.First.Year) || slices.ContainsFunc(t.Among, far) {
		return false
	}
	return t.Last.Before(first) || t.First.After(last)
}

// nearYears is how many years from the term's a date is still meant for a class.
const nearYears = 3

// typedIn notes the dates among the arguments of a placeholder.
func (v *visitor) typedIn(given form.Values, at func(key string) problem.Place) {
	note := func(key, text string, first, last place.Date) {
		v.lesson.Typed = append(v.lesson.Typed, TypedDate{Text: key + " = " + text, First: first, Last: last, At: at(key)})
	}
	for _, key := range slices.Sorted(maps.Keys(given)) {
		if strings.Contains(key, ".") { // a setting, which is a term's own
			continue
		}
		switch x := given[key].(type) {
		case place.Date:
			note(key, x.String(), x, x)
		case form.YearMonth:
			note(key, x.First.String()[:len("2027-04")], x.First, lastOfMonth(x.First))
		case []place.Date:
			for _, d := range x {
				note(key, d.String(), d, d)
			}
		}
	}
}

func lastOfMonth(first place.Date) place.Date {
	next := first.Add(31)
	next.Day = 1
	return next.Add(-1)
}

// Between the parts of a date is a space, or the end of a line.
const (
	between = `(?: {1,3}|\x{a0}|\x{202f}| ?\n {0,4})`
	months  = `(January|February|March|April|May|June|July|August|September|October|November|December|` +
		`janvier|février|mars|avril|mai|juin|juillet|août|septembre|octobre|novembre|décembre)`
)

// monthNames are those of months, in English and French.
var monthNames = strings.Split(strings.Trim(months, "()"), "|")

// typedDates finds dates as people write them. The groups of each are day, month, year in
// the order that it says.
var typedDates = []struct {
	pattern          *regexp.Regexp
	day, month, year int
}{
	{regexp.MustCompile(`(?i)(\d{1,2})(?:st|nd|rd|th|er)?` + between + months + `,?` + between + `(\d{4})`), 1, 2, 3},
	{regexp.MustCompile(`(?i)` + months + between + `(\d{1,2})(?:st|nd|rd|th)?,` + between + `(\d{4})`), 2, 1, 3},
	{regexp.MustCompile(`(\d{4})-(\d{2})-(\d{2})`), 3, 2, 1},
	{regexp.MustCompile(`(?i)` + months + between + `(\d{4})`), 0, 1, 2},
}

// asOf ends before a date that says how old a fact is: "as of 31 December 2024".
var asOf = regexp.MustCompile(`(?i)\b(?:as of|en date du|état au)` + between + `$`)

// typedInProse notes the dates in the lesson's sentences. Code, targets of links and
// what stands in braces are none.
func (v *visitor) typedInProse() {
	prose, lists := v.prose()
	near := nearYearsIn(prose)
	for _, form := range typedDates {
		for _, m := range matches(form.pattern, prose, near) {
			if m[0] > 0 && isDigit(prose[m[0]-1]) || m[1] < len(prose) && isDigit(prose[m[1]]) {
				continue
			}
			group := func(n int) string { return string(prose[m[2*n]:m[2*n+1]]) }
			year, _ := strconv.Atoi(group(form.year))
			month := monthOf(group(form.month))
			first := place.Date{Year: year, Month: month, Day: 1}
			last := lastOfMonth(first)
			if form.day > 0 {
				day, _ := strconv.Atoi(group(form.day))
				if month < 1 || month > 12 || day < 1 || day > last.Day {
					continue
				}
				first.Day = day
				last = first
			}
			text := strings.Join(strings.Fields(string(prose[m[0]:m[1]])), " ")
			for i := m[0]; i < m[1]; i++ { // a month within a date is no other
				prose[i] = 0
			}
			if !asOf.Match(prose[max(0, m[0]-30):m[0]]) {
				v.lesson.Typed = append(v.lesson.Typed, TypedDate{text, first, last, v.at(m[0]), years(lists, m[0])})
			}
		}
	}
}

// A stretch is some bytes of a text.
type stretch struct{ from, to int }

// nearYearsIn are the stretches of a text in which a date can stand: each has a year in
// it, or near it, and a month. Looking for dates in them alone takes a fiftieth of the time.
func nearYearsIn(prose []byte) []stretch {
	const before, after = 48, 16 // longer than any day and month, and than what follows a year
	var all []stretch
	for i := 0; i+4 <= len(prose); i++ {
		if !isDigit(prose[i]) || !isDigit(prose[i+1]) || !isDigit(prose[i+2]) || !isDigit(prose[i+3]) {
			continue
		}
		s := stretch{max(0, i-before), min(len(prose), i+after)}
		if n := len(all); n > 0 && s.from <= all[n-1].to {
			all[n-1].to = s.to
		} else {
			all = append(all, s)
		}
	}
	return slices.DeleteFunc(all, func(s stretch) bool { return !hasMonth(prose[s.from:s.to]) })
}

// hasMonth reports whether a text has the name of a month, or its number between hyphens.
func hasMonth(text []byte) bool {
	for i, c := range text {
		switch {
		case c == '-' && i+3 < len(text) && text[i+3] == '-':
			return true
		case strings.IndexByte("jfmasondJFMASOND", c) < 0:
		case slices.ContainsFunc(monthNames, func(name string) bool {
			return i+len(name) <= len(text) && strings.EqualFold(string(text[i:i+len(name)]), name)
		}):
			return true
		}
	}
	return false
}

// matches are those of a pattern within the stretches of a text.
func matches(pattern *regexp.Regexp, text []byte, within []stretch) [][]int {
	var all [][]int
	for _, s := range within {
		for _, m := range pattern.FindAllSubmatchIndex(text[s.from:s.to], -1) {
			for i := range m {
				if m[i] >= 0 {
					m[i] += s.from
				}
			}
			all = append(all, m)
		}
	}
	return all
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// monthOf reads a month by its English or French name or its number; 0 for none.
func monthOf(s string) time.Month {
	if n, err := strconv.Atoi(s); err == nil {
		return time.Month(n)
	}
	for i, name := range monthNames {
		if strings.EqualFold(name, s) {
			return time.Month(i%12 + 1)
		}
	}
	return 0
}

// A yearList is a list or a table with the years that it tells of.
type yearList struct {
	from, to int // bytes of the source
	years    []int
}

// years are those of the lists that hold a place.
func years(lists []yearList, at int) []int {
	var all []int
	for _, l := range lists {
		if l.from <= at && at < l.to {
			all = append(all, l.years...)
		}
	}
	return all
}

// add notes the years of a stretch of text: words of four digits, from 1000 to 2999.
func (l *yearList) add(src []byte, from, to int) {
	if l.to == 0 {
		l.from = from
	}
	l.to = to
	for i := from; i < to; i++ {
		begin := i
		for i < to && isWordByte(src[i]) {
			i++
		}
		if word := src[begin:i]; len(word) == 4 && (word[0] == '1' || word[0] == '2') {
			if n, err := strconv.Atoi(string(word)); err == nil {
				l.years = append(l.years, n)
			}
		}
	}
}

func isWordByte(c byte) bool {
	return isDigit(c) || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c == '_'
}

// prose returns the lesson's source with zeros for whatever is no sentence; line ends
// stay. It finds the lists and tables on the way.
func (v *visitor) prose() ([]byte, []yearList) {
	var lists []yearList
	var open []int // of these, the ones that the walk is in
	prose := make([]byte, len(v.lesson.Source))
	// The walk has no error: none of its steps has.
	_ = ast.Walk(v.lesson.Tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		isList := n.Kind() == ast.KindList || n.Kind() == extension.KindTable
		switch {
		case isList && entering:
			open = append(open, len(lists))
			lists = append(lists, yearList{})
		case isList:
			open = open[:len(open)-1]
		}
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.CodeSpan:
			return ast.WalkSkipChildren, nil
		case *ast.Text:
			copy(prose[n.Segment.Start:n.Segment.Stop], v.lesson.Source[n.Segment.Start:n.Segment.Stop])
			for _, i := range open {
				lists[i].add(v.lesson.Source, n.Segment.Start, n.Segment.Stop)
			}
			if n.SoftLineBreak() {
				for i := n.Segment.Stop; i < len(prose); i++ { // the line end, and what leads the next line in
					c := v.lesson.Source[i]
					if c == '\n' {
						prose[i] = c
					} else if c == ' ' || c == '\t' || c == '>' {
						prose[i] = ' '
					} else {
						break
					}
				}
			}
		}
		return ast.WalkContinue, nil
	})
	return prose, lists
}
