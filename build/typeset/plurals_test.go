package typeset_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"noonbook/build/say"
)

// A pluralRule is a row of testdata/reference/plural-rules.csv: CLDR 48, cardinal
// plural rules, from the npm package cldr-core 48.2.0.
type pluralRule struct{ language, form, rule, examples string }

func pluralRules(t *testing.T) []pluralRule {
	t.Helper()
	f, err := os.Open("../../testdata/reference/plural-rules.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil || len(rows) != 6 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	var rules []pluralRule
	for _, row := range rows[1:] {
		rules = append(rules, pluralRule{row[0], row[1], row[2], row[3] + ", " + row[4]})
	}
	return rules
}

// holds evaluates a rule, "i = 0,1" or "e != 0..5", for a number as it is printed
// without its sign. Operands, Unicode Technical Standard 35, part 3, "Plural Operand
// Meanings": i is the whole part, v the number of visible decimals, e the exponent of
// a compact number, which is 0 here.
func holds(t *testing.T, rule, printed string) bool {
	t.Helper()
	whole, decimals, _ := strings.Cut(printed, ".")
	i, err := strconv.Atoi(whole)
	if err != nil {
		t.Fatal(err)
	}
	operands := map[string]int{"i": i, "v": len(decimals), "e": 0}
	for alternative := range strings.SplitSeq(rule, " or ") {
		all := true
		for condition := range strings.SplitSeq(alternative, " and ") {
			all = all && conditionHolds(t, condition, operands)
		}
		if all {
			return true
		}
	}
	return false
}

func conditionHolds(t *testing.T, condition string, operands map[string]int) bool {
	t.Helper()
	words := strings.Fields(condition)
	value, known := operands[words[0]]
	if len(words) == 5 && words[1] == "%" {
		value %= atoi(t, words[2])
		words = words[2:]
	}
	if !known || len(words) != 3 || words[1] != "=" && words[1] != "!=" {
		t.Fatalf("a condition of a kind that this test cannot read: %q", condition)
	}
	in := false
	for span := range strings.SplitSeq(words[2], ",") {
		first, last, isSpan := strings.Cut(span, "..")
		if !isSpan {
			last = first
		}
		in = in || atoi(t, first) <= value && value <= atoi(t, last)
	}
	return in == (words[1] == "=")
}

func atoi(t *testing.T, s string) int {
	t.Helper()
	n, err := strconv.Atoi(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// formPrinted returns the form of "days" that a number is printed with, and the text.
func formPrinted(t *testing.T, code, printed string) (form, text string) {
	t.Helper()
	x, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatal(err)
	}
	_, decimals, _ := strings.Cut(printed, ".")
	text = language(t, code, false).Text(say.Number(x, "days", len(decimals)))
	_, word, ok := strings.Cut(text, "\u00a0")
	for strings.ContainsAny(word, "0123456789") && ok { // a space between digits
		_, word, ok = strings.Cut(word, "\u00a0")
	}
	forms := map[string]string{"day": "one", "days": "other", "jour": "one", "jours": "other", "de jours": "many", "de\u00a0jours": "many"}
	return forms[word], text
}

// Every example of CLDR is printed in the form that CLDR gives it.
func TestPluralsOfExamples(t *testing.T) {
	checked := 0
	for _, rule := range pluralRules(t) {
		for example := range strings.SplitSeq(rule.examples, ", ") {
			if example == "" || example == "…" || strings.Contains(example, "c") {
				continue // no number, or a compact one, which noonbook does not write
			}
			first, last, isSpan := strings.Cut(example, "~")
			numbers := []string{first}
			if isSpan {
				numbers = append(numbers, last)
			}
			for _, n := range numbers {
				checked++
				if got, text := formPrinted(t, rule.language, n); got != rule.form {
					t.Errorf("%s: %q has the form %q, CLDR %q", rule.language, text, got, rule.form)
				}
			}
		}
	}
	if checked < 35 {
		t.Errorf("%d examples: too few to tell", checked)
	}
}

// Numbers round the borders against the rules themselves, with the words in full.
func TestPluralsOfBorders(t *testing.T) {
	want := map[string][]string{ // as they are printed, in the order of numbers
		"en": {"0 days", "0.5 days", "1 day", "1.0 days", "1.5 days", "1.99 days", "2 days", "2.0 days", "999 999 days", "1 000 000 days", "1 000 000.0 days", "2 000 000 days", "−1 day"},
		"fr": {"0 jour", "0,5 jour", "1 jour", "1,0 jour", "1,5 jour", "1,99 jour", "2 jours", "2,0 jours", "999 999 jours", "1 000 000 de jours", "1 000 000,0 jours", "2 000 000 de jours", "−1 jour"},
	}
	numbers := []string{"0", "0.5", "1", "1.0", "1.5", "1.99", "2", "2.0", "999999", "1000000", "1000000.0", "2000000", "-1"}
	plain := strings.NewReplacer("\u00a0", " ", "\u202f", " ")
	rules := pluralRules(t)
	for code, texts := range want {
		for k, n := range numbers {
			form, text := formPrinted(t, code, n)
			if got := plain.Replace(text); got != texts[k] {
				t.Errorf("%s: %q, want %q", code, got, texts[k])
			}
			i := slices.IndexFunc(rules, func(r pluralRule) bool {
				return r.language == code && (r.rule == "" || holds(t, r.rule, strings.TrimPrefix(n, "-")))
			})
			if form != rules[i].form {
				t.Errorf("%s: %q has the form %q, CLDR %q", code, text, form, rules[i].form)
			}
		}
	}
}
