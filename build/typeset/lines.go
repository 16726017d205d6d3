package typeset

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"noonbook/build/say"
)

// A line of a words file, cut at its gaps.
//
//	{1}              the first value
//	{1|sheet|sheets} a word in the number of the first value: the forms in the
//	                 order of the language's plurals
//	{1:the}          the first value in another form: where the value is the
//	                 phrase body.earth, the line the.body.earth if there is one
//	{1:before}       the first value, a time by the clock, before the second: of
//	                 9:10 a.m. and 10:00 a.m., which share their half of the day, 9:10
//	{1:short}        a time by the clock without its half of the day, where there is
//	                 no room and the line says which it is
type line []piece

// A piece is text, or a gap that stands for a value.
type piece struct {
	text  string
	gap   int      // 1 for {1}; 0 for text
	form  string   // of {1:the}
	words []string // of {1|sheet|sheets}
}

var gapPattern = regexp.MustCompile(`\{([1-9])(?::([a-z]+)|((?:\|[^|{}]*)+))?\}`)

func parseLine(s string) (line, error) {
	if !strings.ContainsAny(s, "{}") {
		return line{{text: s}}, nil
	}
	var l line
	last := 0
	text := func(end int) error {
		if strings.ContainsAny(s[last:end], "{}") {
			return fmt.Errorf("a brace that opens or closes no gap in %q", s)
		}
		if last < end {
			l = append(l, piece{text: s[last:end]})
		}
		return nil
	}
	for _, m := range gapPattern.FindAllStringSubmatchIndex(s, -1) {
		if err := text(m[0]); err != nil {
			return nil, err
		}
		p := piece{gap: int(s[m[2]] - '0')}
		if m[4] >= 0 {
			p.form = s[m[4]:m[5]]
		}
		if m[6] >= 0 {
			p.words = strings.Split(s[m[6]+1:m[7]], "|")
		}
		l = append(l, p)
		last = m[1]
	}
	if err := text(len(s)); err != nil {
		return nil, err
	}
	return l, nil
}

// Gaps returns the values that a line of the words file names, each once, and
// those that it only takes the plural of.
func (w *Words) Gaps(key string) (filled, counted map[int]bool) {
	filled, counted = map[int]bool{}, map[int]bool{}
	for _, p := range w.lines[key] {
		switch {
		case p.gap > 0 && p.words == nil:
			filled[p.gap] = true
		case p.gap > 0:
			counted[p.gap] = true
		}
	}
	return filled, counted
}

// Forms returns the names of forms that a line asks for, as "the" in {1:the}.
func (w *Words) Forms(key string) []string {
	var forms []string
	for _, p := range w.lines[key] {
		if p.form != "" {
			forms = append(forms, p.form)
		}
	}
	return forms
}

// append appends a gap, filled with its value.
func (w *Words) append(dst []byte, p piece, with []say.Value) []byte {
	if p.gap > len(with) {
		return append(dst, "⟦"+strconv.Itoa(p.gap)+"⟧"...)
	}
	v := with[p.gap-1]
	switch {
	case p.words != nil:
		return append(dst, p.words[min(w.plural(v), len(p.words)-1)]...)
	case p.form == "before" && p.gap < len(with):
		return append(dst, w.before(v, with[p.gap])...)
	case p.form == "short" && v.Kind == say.TimeOfDay && v.Phrase.Key == "":
		return append(dst, w.ShortClock(v.Time)...)
	case p.form != "" && w.Has(p.form+"."+v.Phrase.Key):
		v = say.Words(p.form+"."+v.Phrase.Key, v.Phrase.With...)
	}
	return w.join(dst, w.Text(v))
}

// plural returns which of the forms of a word goes with a value: that of one
// thing, or the last. It looks at the number as it is printed.
//
// Unicode CLDR 48, cardinal plural rules (testdata/reference/plural-rules.csv):
// English, "one" for 1 without visible decimals; French, "one" for what begins
// with 0 or 1 (0,5 and 1,9), "many" for whole millions, which take "de"
// (3 000 000 de carrés). The forms of French are one, many, other; where a line
// gives two they are one and other.
func (w *Words) plural(v say.Value) int {
	const other = 99
	digits := v.Plain
	if v.Kind == say.Quantity {
		v = w.measured(v)
		digits = strconv.FormatFloat(max(v.Number, -v.Number), 'f', v.Decimals, 64)
	}
	whole, fraction, decimals := strings.Cut(digits, ".")
	if w.Code != "fr" {
		if whole == "1" && !decimals {
			return 0
		}
		return other
	}
	switch {
	case whole == "0" || whole == "1":
		return 0
	case len(whole) > 6 && strings.HasSuffix(whole, "000000") && fraction == "":
		return 1
	}
	return other
}

// Raw returns a line as it is written, with its gaps, for lists of what is to be
// translated.
func (w *Words) Raw(key string) string {
	var b strings.Builder
	for _, p := range w.lines[key] {
		b.WriteString(p.text)
		if p.gap > 0 {
			b.WriteString("{" + strconv.Itoa(p.gap) + "}")
		}
	}
	return b.String()
}
