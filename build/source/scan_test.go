package source

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
)

// What is scanned by hand, and what is asked before a pattern is tried, agrees with
// patterns that say the same slowly.
func TestScansAreTheirPatterns(t *testing.T) {
	var (
		containers = regexp.MustCompile(`^(?:[\s\p{Zs}\x{200b}\x{2060}\x{feff}>]|[-*+•·–][\s\p{Zs}]|\d{1,9}[.)][\s\p{Zs}])*`)
		aFact      = regexp.MustCompile(`^([\pL\d_-]+)\.([\pL\d_-]+)$`)
		aYear      = regexp.MustCompile(`\b[12]\d{3}\b`)
		aControl   = regexp.MustCompile(`[\x00-\x08\x0b-\x1f\x7f-\x{9f}]`)
	)
	pieces := []string{" ", "\t", "\u00a0", "\u2003", "\u200b", "\ufeff", ">", "-", "- ", "*", "+ ", "•", "– ", "1.", "12) ", "123456789. ", "1234567890. ", "7",
		"#", "＃", `\`, "`", "```", "~~~", "’’’", "''", ":", ":::", "answer", "Answer lines=3", "only", "unless", "only place-facts.south", "staff", "After", "teach", "class",
		": ", "(", "—", "[^1]", "[", "https://a.b", "www.a.b", "www", "://", "|", ".", "o\t", ".\\a", "é", "ſ", "x", "two words", "sun-day", "noon", "_", "1066", "2027", "3000", "2027-04-01", "19700",
		"\x01", "\x7f", "\u0085", "\u00a1", "°"}
	random := rand.New(rand.NewPCG(1, 2))
	for range 200000 {
		var b strings.Builder
		for range 1 + random.IntN(6) {
			b.WriteString(pieces[random.IntN(len(pieces))])
		}
		line := b.String()
		if got, want := led([]byte(line)), len(containers.FindString(line)); got != want {
			t.Fatalf("%q: %d bytes lead it, want %d", line, got, want)
		}
		name, fact, ok := factName(line)
		if m := aFact.FindStringSubmatch(line); ok != (m != nil) || ok && (name != m[1] || fact != m[2]) {
			t.Fatalf("%q is %q and %q, %v, want %q", line, name, fact, ok, m)
		}
		var years yearList
		years.add([]byte(line), 0, len(line))
		if want := aYear.FindAllString(line, -1); len(years.years) != len(want) {
			t.Fatalf("%q has the years %v, want %q", line, years.years, want)
		}
		at := -1
		if m := aControl.FindStringIndex(line); m != nil {
			at = m[0]
		}
		if got := controlIn([]byte(line)); got != at {
			t.Fatalf("%q has a control character at %d, want %d", line, got, at)
		}
		if likeOpening.MatchString(line) && !mayOpen([]byte(line)) {
			t.Fatalf("%q is not looked at as an opening", line)
		}
		rest := line[led([]byte(line)):]
		if !mayFence(rest) && (ticks.MatchString(rest) || midLine.MatchString(rest) || bare.MatchString(rest) || bareStanding.MatchString(strings.TrimSpace(rest))) {
			t.Fatalf("%q is not looked at as a fence", line)
		}
		for _, p := range pastes {
			if p.begin == "" || !p.found.MatchString(line) {
				continue
			}
			if first := []rune(strings.TrimLeft(line, spaces))[0]; !strings.ContainsRune(p.begin, first) {
				t.Fatalf("%q is not looked at for %s", line, p.found)
			}
		}
		if bareAddress.MatchString(line) && !strings.Contains(line, "://") && !strings.Contains(line, "www.") || inCells.MatchString(line) && !strings.Contains(line, "\t") {
			t.Fatalf("%q is not looked at", line)
		}
	}
}
